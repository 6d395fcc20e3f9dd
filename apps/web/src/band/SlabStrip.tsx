import { through, throughCut, type BandDrawing, type ThroughDrawing } from '@barwright/drawing';
import { useMemo } from 'react';
import { Marks, Picture } from '../drawing/Marks.js';
import type { SlabStretch } from '../engine/along-protocol.js';
import { isIn, minuteIn } from '../engine/along/reading.js';
import { useCut, type Cut } from './cut.js';
import { Readings } from './Readings.js';
import { StripSlider } from './StripSlider.js';

interface SlabStripProps {
  readonly cut: Cut;
  readonly stretch: SlabStretch;
  readonly width: number;
  readonly ribbon: BandDrawing | undefined;
}

/** Below this the strip scrolls at its scale instead of being squeezed. */
const least = 640;

/** The slab cut through its thickness along the belt of its cooler. */
export function SlabStrip({ cut, stretch, width, ribbon }: SlabStripProps) {
  const wide = Math.max(least, width);
  const narrow = wide < 1000;
  // Where the ribbon lies straight above, hairs open from its stretch to the strip.
  const [a, b] = ribbon && ribbon.width <= width ? [ribbon.x(stretch.from), ribbon.x(stretch.to)] : [undefined, undefined];
  const drawn = useMemo(() => {
    const thick = stretch.spec.field.y.at(-1)!;
    return through({
      ...stretch.spec,
      width: wide,
      pxPerMm: Math.max(1, Math.min(14, 124 / thick)),
      left: narrow ? 104 : 170,
      cutWidth: narrow ? 150 : 240,
      ...(a === undefined || b === undefined ? {} : { opensFrom: [a, b] as const }),
    });
  }, [stretch, wide, narrow, a, b]);
  return (
    <>
      <div className="strip-room">
        <StripSlider cut={cut} stretch={stretch} minuteAt={drawn.minuteAt}>
          <Picture
            marks={drawn.marks}
            width={drawn.width}
            height={drawn.height}
            name={`The slab cut through its thickness along the ${stretch.station}; the same numbers stand in the table below`}
          />
          <Moving cut={cut} stretch={stretch} drawn={drawn} />
        </StripSlider>
      </div>
      <Readings cut={cut} stretch={stretch} />
      <p className="caption along-scale">
        Drawn {drawn.timesLifeSize.toFixed(1)} times life size through the thickness; a minute is {drawn.pxPerMinute.toFixed(0)} px
        {ribbon ? `, on the ribbon ${((ribbon.x(stretch.to) - ribbon.x(stretch.from)) / (stretch.to - stretch.from)).toFixed(0)}` : ''}.
        Lines join equal temperatures, {stretch.spec.unit}. Slanted: where a quarter of heat transfer decides, the model cannot tell.
      </p>
    </>
  );
}

function Moving({ cut, stretch, drawn }: { readonly cut: Cut; readonly stretch: SlabStretch; readonly drawn: ThroughDrawing }) {
  useCut(cut);
  const minute = cut.from + cut.minute;
  if (cut.length === 0 || !isIn(stretch, minute)) return null;
  const at = Math.min(stretch.minutes.at(-1)!, Math.max(0, minuteIn(stretch, minute)));
  return (
    <svg className="strip-cut" width={drawn.width} height={drawn.height} aria-hidden="true" data-minute={at.toFixed(3)}>
      <Marks marks={throughCut(drawn, at)} />
    </svg>
  );
}
