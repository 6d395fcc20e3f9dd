import type { KeyboardEvent } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
import { arrowSteps, useDrag } from '../lib/useDrag.js';
import { spoken, stepOf, withUnit } from '../number/words.js';
import type { EdgePlace } from './layout.js';

/** Thinner than this is no layer, in the unit shown. */
const least = 0.05;

/** A boundary of the bar: pulled up or down it makes a layer thicker or thinner, and everything answers. */
export function Edge({ edge, left, width }: { readonly edge: EdgePlace; readonly left: number; readonly width: number }) {
  const shown = useShown(edge.id);
  const { engine } = useSheet();
  const onPointerDown = useDrag<{ readonly y: number; readonly value: number; readonly perMm: number; last: number }>({
    take: ({ y }) => shown && { y, value: shown.value, last: shown.value, perMm: edge.pxPerMm * (shown.meta.unit === 'in' ? 25.4 : 1) },
    move: (hand, { y }) => {
      hand.last = Math.max(least, hand.value - (y - hand.y) / hand.perMm);
      engine.pull({ [edge.id]: hand.last }, false);
    },
    drop: ({ last, value }) => {
      if (last !== value) engine.pull({ [edge.id]: last }, true);
    },
  });
  if (!shown?.meta.bend || Number.isNaN(shown.value)) return null;
  const { meta, value } = shown;
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = arrowSteps(event);
    if (way === undefined) return;
    event.preventDefault();
    engine.pull({ [edge.id]: Math.max(least, value + way * 2 * stepOf(meta, value)) }, true);
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
      style={{ top: edge.grip, left, width }}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
    >
      <svg className="edge-ear" width="18" height="16" viewBox="0 0 18 16" aria-hidden="true">
        <path d="M1 8 8 1.500H17V14.500H8Z" />
      </svg>
    </div>
  );
}
