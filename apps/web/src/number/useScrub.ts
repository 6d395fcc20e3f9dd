import { useRef, type KeyboardEvent, type PointerEvent } from 'react';

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
  const held = useRef<{ x: number; value: number; moved: boolean; last: number } | undefined>(undefined);
  const wasPull = useRef(false);
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (off || event.button !== 0) return;
    const value = start();
    held.current = { x: event.clientX, value, moved: false, last: value };
    wasPull.current = false;
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const hand = held.current;
    if (!hand) return;
    const way = event.clientX - hand.x;
    if (!hand.moved && Math.abs(way) < tremble) return;
    hand.moved = true;
    wasPull.current = true;
    hand.last = hand.value + way * perPx;
    pull(hand.last, false);
  };
  const onPointerUp = () => {
    const hand = held.current;
    held.current = undefined;
    if (hand?.moved) pull(hand.last, true);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (off || event.altKey || event.ctrlKey || event.metaKey) return;
    const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    pull(start() + way * step * (event.shiftKey ? 5 : 1), true);
  };
  return { handlers: off ? {} : { onPointerDown, onPointerMove, onPointerUp, onPointerCancel: onPointerUp, onKeyDown }, wasPull };
}
