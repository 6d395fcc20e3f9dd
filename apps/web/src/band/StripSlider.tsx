import type { KeyboardEvent, ReactNode } from 'react';
import type { SlabStretch, TunnelStretch } from '../engine/along-protocol.js';
import { arrowSteps, useDrag, type Point } from '../lib/useDrag.js';
import { isIn, minuteIn, onRibbon, readingWords } from '../engine/along/reading.js';
import { useCut, type Cut } from './cut.js';

/** A minute a page, a tenth an arrow; Shift five of them. */
const arrow = 0.1;

interface StripSliderProps {
  readonly cut: Cut;
  readonly stretch: SlabStretch | TunnelStretch;
  /** Minutes in the station under a place of the drawing. */
  readonly minuteAt: (px: number) => number;
  readonly children: ReactNode;
}

/** The strip takes hold of the cut: pulled along it, stepped by the arrow keys, played and paused by the space bar. */
export function StripSlider({ cut, stretch, minuteAt, children }: StripSliderProps) {
  useCut(cut);
  const length = stretch.minutes.at(-1)!;
  const at = minuteIn(stretch, cut.from + cut.minute);
  const inside = isIn(stretch, cut.from + cut.minute);
  const to = (minute: number) => cut.moveTo(onRibbon(stretch, Math.min(length, Math.max(0, minute))) - cut.from);
  const pull = ({ x, box }: Point) => to(minuteAt(x - box().left));
  const onPointerDown = useDrag<true>({
    take: (point) => {
      cut.pause();
      pull(point);
      return true;
    },
    move: (_, point) => pull(point),
    drop: () => undefined,
  });
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = arrowSteps(event);
    const pages = { PageUp: 1, PageDown: -1 }[event.key];
    const now = Math.min(length, Math.max(0, at));
    if (event.key === ' ') cut.toggle();
    else if (event.key === 'Home') to(0);
    else if (event.key === 'End') to(length);
    else if (pages !== undefined) to(now + pages);
    else if (way !== undefined) to(Math.round((now + way * arrow) * 100) / 100);
    else return;
    event.preventDefault();
    if (event.key !== ' ') cut.pause();
  };
  return (
    <div
      className="strip-slider"
      role="slider"
      tabIndex={0}
      aria-label={`The cut in the ${stretch.station}, minutes since it came in`}
      aria-valuemin={0}
      aria-valuemax={Number(length.toFixed(2))}
      aria-valuenow={Number(Math.min(length, Math.max(0, at)).toFixed(2))}
      aria-valuetext={inside ? `${at.toFixed(1)} min: ${readingWords(stretch, at)}` : 'the cut is elsewhere on the line'}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
    >
      {children}
    </div>
  );
}
