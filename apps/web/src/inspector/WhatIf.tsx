import { curve, niceTicks } from '@barwright/drawing';
import { useEffect, useMemo, useState, type KeyboardEvent } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useSheet, useShown } from '../engine/sheet.js';
import type { CurveData, KnobLine } from '../engine/protocol.js';
import { arrowSteps, useDrag, type Point } from '../lib/useDrag.js';
import { useSize } from '../lib/useSize.js';
import { digits, stepOf, withUnit } from '../number/words.js';

const tall = 176;

/** The number over the knob that moves it most; the knob can be pulled here, and another one chosen. */
export function WhatIf({ id, knobs }: { readonly id: string; readonly knobs: readonly KnobLine[] }) {
  const [chosen, choose] = useState(knobs[0]!.id);
  const knob = knobs.find((each) => each.id === chosen) ?? knobs[0]!;
  return (
    <>
      <p className="choices">
        {knobs.slice(0, 4).map((each) => (
          <button key={each.id} type="button" className="choice" aria-pressed={each.id === knob.id} onClick={() => choose(each.id)}>
            {each.meaning.replace(', wet basis', '')}
          </button>
        ))}
      </p>
      <Curve id={id} knob={knob.id} />
    </>
  );
}

function Curve({ id, knob }: { readonly id: string; readonly knob: string }) {
  const sheet = useSheet();
  const shown = useShown(id)!;
  const turned = useShown(knob);
  const [data, setData] = useState<CurveData>();
  const [ref, { width }] = useSize<HTMLDivElement>();
  // The curve belongs to everything else as it stands: it is asked anew when this knob rests and the number is off it.
  const rest = useRest(turned?.value);
  useEffect(() => {
    let dropped = false;
    void sheet.engine.ask('curve', { id, knob }).then((next) => !dropped && setData(next));
    return () => {
      dropped = true;
    };
  }, [sheet, id, knob, rest]);
  const drawn = useMemo(() => {
    if (!data || data.knob !== knob || width < 160 || !turned || Number.isNaN(shown.value)) return undefined;
    const { low, high } = shown.meta.window ?? {};
    const limits = [low, high].filter((limit) => limit !== undefined);
    const [least, most] = [Math.min(...data.lo, ...limits), Math.max(...data.hi, ...limits)];
    const room = (most - least || Math.abs(most) || 1) * 0.06;
    const x = [data.x[0]!, data.x.at(-1)!] as const;
    const at = Math.min(x[1], Math.max(x[0], turned.value));
    return curve({
      width,
      height: tall,
      x,
      y: [least - room, most + room],
      yTicks: niceTicks(least, most, 3),
      points: data.x.map((value, i) => [value, data.y[i]!] as const),
      ...(data.lo.some((value, i) => value !== data.hi[i])
        ? { band: data.x.map((value, i) => ({ x: value, lo: data.lo[i]!, hi: data.hi[i]! })) }
        : {}),
      ...(limits.length > 0
        ? {
            limits: {
              ...(low === undefined ? {} : { lo: low, loText: `least ${digits(low, shown.meta)}` }),
              ...(high === undefined ? {} : { hi: high, hiText: `limit ${digits(high, shown.meta)}` }),
            },
          }
        : {}),
      now: [at, shown.value],
      knob: at,
      xLabel: `${turned.meta.meaning}${turned.meta.unit === '' ? '' : `, ${turned.meta.unit}`}`,
    });
  }, [data, knob, width, shown, turned]);
  const pull = (value: number, end: boolean) => sheet.engine.pull({ [knob]: value }, end);
  const pullTo = ({ x, box }: Point): number | undefined => {
    if (!drawn || !data) return undefined;
    const [left, , right] = drawn.plot;
    const [from, to] = [data.x[0]!, data.x.at(-1)!];
    const value = from + Math.min(1, Math.max(0, (x - box().left - left) / (right - left))) * (to - from);
    pull(value, false);
    return value;
  };
  const onPointerDown = useDrag<{ last: number | undefined }>({
    take: (at) => ({ last: pullTo(at) }),
    move: (hand, at) => {
      hand.last = pullTo(at) ?? hand.last;
    },
    drop: ({ last }) => {
      if (last !== undefined) pull(last, true);
    },
  });
  if (!turned) return null;
  const { meta } = turned;
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = arrowSteps(event);
    if (way === undefined) return;
    event.preventDefault();
    pull(turned.value + way * stepOf(meta, turned.value), true);
  };
  return (
    <div
      className="curve"
      ref={ref}
      role="slider"
      tabIndex={0}
      aria-label={`${meta.meaning}, which moves ${shown.meta.meaning}`}
      aria-valuemin={Number((data?.x[0] ?? 0).toFixed(meta.decimals + 1))}
      aria-valuemax={Number((data?.x.at(-1) ?? 1).toFixed(meta.decimals + 1))}
      aria-valuenow={Number(turned.value.toFixed(meta.decimals + 1))}
      aria-valuetext={`${withUnit(turned.value, meta)} gives ${withUnit(shown.value, shown.meta)}`}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
    >
      {drawn ? <Picture marks={drawn.marks} width={drawn.width} height={drawn.height} /> : <div className="curve-waiting" />}
      {drawn && data && data.lo.some((value, i) => value !== data.hi[i]) ? (
        <span className="caption curve-caption">slanted: how far the model may be off</span>
      ) : null}
    </div>
  );
}

/** A value that follows when it has not moved for a while. */
function useRest(value: number | undefined): number | undefined {
  const [rest, setRest] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRest(value), 250);
    return () => clearTimeout(timer);
  }, [value]);
  return rest;
}
