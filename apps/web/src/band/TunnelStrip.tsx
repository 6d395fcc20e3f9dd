import { belt } from '@barwright/drawing';
import { useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { TunnelStretch } from '../engine/along-protocol.js';
import { isIn, minuteIn, readAt } from '../engine/along/reading.js';
import { useCut, type Cut } from './cut.js';
import { Readings } from './Readings.js';
import { StripSlider } from './StripSlider.js';

const least = 640;
const height = 330;

/** The bar through the tunnel: coat, middle and mean over its time there, and how much of the coat's fat is solid. */
export function TunnelStrip({ cut, stretch, width }: { readonly cut: Cut; readonly stretch: TunnelStretch; readonly width: number }) {
  const wide = Math.max(least, width);
  const drawn = useMemo(() => belt({ ...stretch.spec, width: wide, height }), [stretch, wide]);
  const end = stretch.minutes.at(-1)!;
  const [x0, x1] = [drawn.atX(0), drawn.atX(end)];
  return (
    <>
      <div className="strip-room">
        <StripSlider cut={cut} stretch={stretch} minuteAt={(px) => ((px - x0) / (x1 - x0)) * end}>
          <Picture
            marks={drawn.marks}
            width={drawn.width}
            height={drawn.height}
            name={`Temperatures of a bar along the ${stretch.station}; the same numbers stand in the table below`}
          />
          <Moving cut={cut} stretch={stretch} atX={drawn.atX} atY={drawn.atY} width={wide} />
        </StripSlider>
      </div>
      <Readings cut={cut} stretch={stretch} />
      <p className="caption along-scale">
        The bar at the end: what the top may be off by with a fifth of heat transfer, beside its window. Slanted below: the solid share of
        the fat of the coat, computed.
      </p>
    </>
  );
}

interface MovingProps {
  readonly cut: Cut;
  readonly stretch: TunnelStretch;
  readonly atX: (minute: number) => number;
  readonly atY: (value: number) => number;
  readonly width: number;
}

function Moving({ cut, stretch, atX, atY, width }: MovingProps) {
  useCut(cut);
  const minute = cut.from + cut.minute;
  if (cut.length === 0 || !isIn(stretch, minute)) return null;
  const at = Math.max(0, minuteIn(stretch, minute));
  const x = atX(at);
  return (
    <svg className="strip-cut" width={width} height={height} aria-hidden="true" data-minute={at.toFixed(3)}>
      <line x1={x} x2={x} y1={20} y2={height - 40} />
      <circle cx={x} cy={atY(readAt(stretch.minutes, stretch.lines[0]!.values, at))} r={5} />
    </svg>
  );
}
