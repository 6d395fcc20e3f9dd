import { useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
import { spoken, stepOf, withUnit } from '../number/words.js';
import type { EdgePlace } from './layout.js';

/** A boundary of the bar: pulled up or down it makes a layer thicker or thinner, and everything answers. */
export function Edge({ edge, left, width }: { readonly edge: EdgePlace; readonly left: number; readonly width: number }) {
  const shown = useShown(edge.id);
  const { engine } = useSheet();
  const held = useRef<{ y: number; value: number; perMm: number; last: number } | undefined>(undefined);
  if (!shown?.meta.bend || Number.isNaN(shown.value)) return null;
  const { meta, value } = shown;
  const mm = meta.unit === 'in' ? 25.4 : 1;
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    held.current = { y: event.clientY, value, perMm: edge.pxPerMm * mm, last: value };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const hand = held.current;
    if (!hand) return;
    hand.last = Math.max(0.05, hand.value - (event.clientY - hand.y) / hand.perMm);
    engine.pull({ [edge.id]: hand.last }, false);
  };
  const onPointerUp = () => {
    const hand = held.current;
    held.current = undefined;
    if (hand && hand.last !== hand.value) engine.pull({ [edge.id]: hand.last }, true);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    engine.pull({ [edge.id]: Math.max(0.05, value + way * 2 * stepOf(meta, value) * (event.shiftKey ? 5 : 1)) }, true);
  };
  return (
    <div
      className="edge"
      role="slider"
      tabIndex={0}
      aria-label={`Pull the ${edge.words}: ${spoken(shown)}`}
      aria-orientation="vertical"
      aria-valuenow={Number(value.toFixed(meta.decimals))}
      aria-valuetext={withUnit(value, meta)}
      style={{ top: edge.y, left, width }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
      onKeyDown={onKeyDown}
    >
      <svg className="edge-ear" width="18" height="16" viewBox="0 0 18 16" aria-hidden="true">
        <path d="M1 8 8 1.500H17V14.500H8Z" />
      </svg>
    </div>
  );
}
