import { useEffect, useRef, type PointerEvent as ReactPointerEvent } from 'react';

/** Where the pointer is, px in the window; the place of what it took hold of is measured only when asked for. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly box: () => DOMRect;
}

interface Drag<Hand> {
  /** What the hand holds, or nothing where it may not. */
  readonly take: (at: Point) => Hand | undefined;
  readonly move: (hand: Hand, at: Point) => void;
  readonly drop: (hand: Hand) => void;
}

/** Moves as they come from the device, before the browser gathers them for a frame: the engine is at work earlier. */
const moved = 'onpointerrawupdate' in window ? 'pointerrawupdate' : 'pointermove';

/** Holding a thing and pulling it, by mouse, pen or finger. */
export function useDrag<Hand, T extends HTMLElement = HTMLElement>(drag: Drag<Hand>): (event: ReactPointerEvent<T>) => void {
  const latest = useRef(drag);
  useEffect(() => {
    latest.current = drag;
  });
  return (event) => {
    if (event.button !== 0) return;
    const element = event.currentTarget;
    const point = (at: { readonly clientX: number; readonly clientY: number }): Point => ({
      x: at.clientX,
      y: at.clientY,
      box: () => element.getBoundingClientRect(),
    });
    const hand = drag.take(point(event));
    if (hand === undefined) return;
    const { pointerId } = event;
    element.setPointerCapture(pointerId);
    const onMove = (next: Event) => {
      const at = next as PointerEvent;
      if (at.pointerId === pointerId) latest.current.move(hand, point(at));
    };
    const onEnd = (next: Event) => {
      if ((next as PointerEvent).pointerId !== pointerId) return;
      element.removeEventListener(moved, onMove);
      for (const name of ['pointerup', 'pointercancel', 'lostpointercapture']) element.removeEventListener(name, onEnd);
      latest.current.drop(hand);
    };
    element.addEventListener(moved, onMove);
    for (const name of ['pointerup', 'pointercancel', 'lostpointercapture']) element.addEventListener(name, onEnd);
  };
}

/** Which way an arrow key points: 1 for more, −1 for less; Shift goes five steps. */
export function arrowSteps(event: { readonly key: string; readonly shiftKey: boolean }): number | undefined {
  const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
  return way === undefined ? undefined : way * (event.shiftKey ? 5 : 1);
}
