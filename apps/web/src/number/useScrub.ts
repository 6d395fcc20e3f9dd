import { useRef, type KeyboardEvent } from 'react';
import { arrowSteps, useDrag } from '../lib/useDrag.js';

/** Pixels a hand may tremble before a press becomes a pull. */
const tremble = 4;

interface Scrub {
  /** The value where the hand took hold. */
  readonly start: () => number;
  /** Change per px to the right, and one step of the arrow keys. */
  readonly perPx: number;
  readonly step: number;
  readonly pull: (value: number, end: boolean) => void;
  readonly off?: boolean;
}

/**
 * Pulling a thing sideways, or by the arrow keys. A press without a pull stays a press.
 * @returns handlers to spread, and whether the last press was a pull
 */
export function useScrub({ start, perPx, step, pull, off }: Scrub) {
  const wasPull = useRef(false);
  const onPointerDown = useDrag<{ readonly x: number; readonly value: number; last?: number }>({
    take: ({ x }) => {
      wasPull.current = false;
      return off ? undefined : { x, value: start() };
    },
    move: (hand, { x }) => {
      const way = x - hand.x;
      if (hand.last === undefined && Math.abs(way) < tremble) return;
      wasPull.current = true;
      hand.last = hand.value + way * perPx;
      pull(hand.last, false);
    },
    drop: ({ last }) => {
      if (last !== undefined) pull(last, true);
    },
  });
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (off || event.altKey || event.ctrlKey || event.metaKey) return;
    const way = arrowSteps(event);
    if (way === undefined) return;
    event.preventDefault();
    pull(start() + way * step, true);
  };
  return { handlers: { onPointerDown, onKeyDown }, wasPull };
}
