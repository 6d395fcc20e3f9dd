import { waterSteps, type NumberStanding, type WaterStepsDrawing } from '@barwright/drawing';
import { useMemo, type KeyboardEvent } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useSheet, useShownAll, type Shown } from '../engine/sheet.js';
import type { StepInfo } from '../engine/protocol.js';
import { arrowSteps, useDrag } from '../lib/useDrag.js';
import { Figure } from '../number/Figure.js';
import { digits, spoken, withUnit } from '../number/words.js';
import { waterScale, type RowPlace } from './layout.js';

const standings: Readonly<Record<Shown['origin'], NumberStanding>> = {
  computed: 'computed',
  measured: 'measured',
  entered: 'measured',
  assumed: 'assumed',
  default: 'default',
};

/** Water activity as a level beside each layer; the step between two that touch is what drives water across. */
export function Water({
  rows,
  steps,
  width,
  height,
}: {
  readonly rows: readonly RowPlace[];
  readonly steps: readonly StepInfo[];
  readonly width: number;
  readonly height: number;
}) {
  const levels = useShownAll(rows.map(({ part }) => `${part.component}.water_activity`));
  const limits = useShownAll(steps.map(({ id }) => id));
  // Layers that touch set the scale. Pieces that have sunk into one may lie far off it: nuts are dry. Their number stands at the edge.
  const touching = useMemo(() => new Set(steps.flatMap(({ above, below }) => [above, below])), [steps]);
  const drawn = useMemo(() => {
    const known = levels.map((level, i) => (touching.size === 0 || touching.has(rows[i]!.part.slug) ? (level?.value ?? NaN) : NaN));
    const least = Math.min(...known.filter((level) => !Number.isNaN(level)));
    const axis = waterScale([...known, ...limits.map((limit) => least + (limit?.meta.window?.high ?? NaN))]);
    if (!axis || width < 60) return undefined;
    return waterSteps({
      width,
      height,
      scale: axis.scale,
      ticks: axis.ticks,
      levels: rows.flatMap(({ part, y0, y1 }, i) => {
        const level = levels[i];
        if (!level || Number.isNaN(level.value) || !(level.value >= axis.scale[0] && level.value <= axis.scale[1])) return [];
        return [{ id: part.slug, y0, y1, level: level.value, standing: standings[level.origin] }];
      }),
      steps: steps
        .flatMap(({ above, below }, i) => {
          const limit = limits[i]?.meta.window?.high;
          return [
            { from: above, to: below, ...(limit === undefined ? {} : { limit, limitText: `limit ${digits(limit, limits[i]!.meta)}` }) },
          ];
        })
        .filter(({ from, to }) =>
          [from, to].every((slug) => rows.some(({ part }, i) => part.slug === slug && levels[i] && !Number.isNaN(levels[i].value))),
        ),
    });
  }, [rows, steps, levels, limits, width, height, touching]);
  if (!drawn) return <p className="water-none">No layer has a water activity.</p>;
  return (
    <>
      <Picture marks={drawn.marks} width={drawn.width} height={drawn.height} />
      {rows.map(({ part, y0, y1 }, i) => {
        const level = levels[i];
        if (!level || Number.isNaN(level.value)) {
          return (
            <span key={part.id} className="caption water-not-given" style={{ top: (y0 + y1) / 2 }}>
              not given
            </span>
          );
        }
        const x = drawn.at(level.value);
        if (!(x >= 0 && x <= drawn.width))
          return (
            <span key={part.id} className="water-number" style={x < 0 ? { left: 0, top: (y0 + y1) / 2 } : { right: 0, top: (y0 + y1) / 2 }}>
              <Figure id={level.meta.id} size="plain" />
            </span>
          );
        const y = (y0 + y1) / 2;
        return (
          <span key={part.id}>
            <span className="water-number" style={{ left: x + 10, top: y }}>
              <Figure id={level.meta.id} size="plain" />
            </span>
            <Level level={level} drawn={drawn} top={y0} height={y1 - y0} />
          </span>
        );
      })}
      {steps.map(({ id, above, below }) => {
        const anchor = drawn.anchors.find((each) => each.id === `${above}/${below}`);
        return anchor ? (
          <span key={id} className="water-step" style={{ right: drawn.width - anchor.x, top: anchor.y }}>
            step <Figure id={id} size="plain" />
          </span>
        ) : null;
      })}
    </>
  );
}

/** A level a hand can pull sideways. */
function Level({
  level,
  drawn,
  top,
  height,
}: {
  readonly level: Shown;
  readonly drawn: WaterStepsDrawing;
  readonly top: number;
  readonly height: number;
}) {
  const { engine } = useSheet();
  const { meta, value } = level;
  const onPointerDown = useDrag<{ readonly x: number; readonly value: number; readonly per: number; last: number }>({
    take: ({ x }) => ({ x, value, per: drawn.at(value + 0.001) - drawn.at(value), last: value }),
    move: (hand, { x }) => {
      hand.last = Math.min(0.98, Math.max(0.05, hand.value + (0.001 * (x - hand.x)) / hand.per));
      engine.pull({ [meta.id]: hand.last }, false);
    },
    drop: (hand) => {
      if (hand.last !== hand.value) engine.pull({ [meta.id]: hand.last }, true);
    },
  });
  if (!meta.bend) return null;
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = arrowSteps(event);
    if (way === undefined) return;
    event.preventDefault();
    engine.pull({ [meta.id]: value + way * 0.002 }, true);
  };
  return (
    <div
      className="level"
      role="slider"
      tabIndex={0}
      aria-label={`Pull the level: ${spoken(level)}`}
      aria-valuenow={Number(value.toFixed(meta.decimals))}
      aria-valuemin={0}
      aria-valuemax={1}
      aria-valuetext={withUnit(value, meta)}
      style={{ left: drawn.at(value) - 14, top, height }}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
    />
  );
}
