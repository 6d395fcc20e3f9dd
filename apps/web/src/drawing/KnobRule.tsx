import { knob, type KnobPost } from '@barwright/drawing';
import { useMemo, type KeyboardEvent } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
import { arrowSteps, useDrag, type Point } from '../lib/useDrag.js';
import { useSize } from '../lib/useSize.js';
import { digits, spoken, stepOf, withUnit } from '../number/words.js';
import { Picture } from './Marks.js';

export interface KnobRuleProps {
  readonly id: string;
  /** Ends of the rule, in the unit shown; left out: the window with as much again on either side, else a fifth. */
  readonly low?: number;
  readonly high?: number;
  readonly posts?: readonly KnobPost[];
}

/** A setting on its rule: the pointer is pulled along it, a ring stays at the truth, posts are limits it will not pass. */
export function KnobRule({ id, low, high, posts }: KnobRuleProps) {
  const shown = useShown(id);
  const { engine } = useSheet();
  const [ref, { width }] = useSize<HTMLDivElement>();
  const [min, max] = useEnds(shown?.truth ?? NaN, shown?.meta, low, high);
  const value = shown ? Math.min(max, Math.max(min, shown.value)) : NaN;
  const drawn = useMemo(() => {
    if (!shown || !(width > 80) || !(max > min) || Number.isNaN(value)) return undefined;
    const { meta, truth } = shown;
    const { window } = meta;
    return knob({
      width,
      min,
      max,
      value,
      text: withUnit(shown.value, meta),
      ...(digits(truth, meta) === digits(shown.value, meta) ? {} : { truth: Math.min(max, Math.max(min, truth)) }),
      ...(window && (window.low !== undefined || window.high !== undefined)
        ? { window: { ...(window.low === undefined ? {} : { lo: window.low }), ...(window.high === undefined ? {} : { hi: window.high }) } }
        : {}),
      ...(posts ? { posts } : {}),
    });
  }, [shown, width, min, max, value, posts]);
  const locked = shown?.meta.bend === undefined;
  const pullTo = ({ x, box }: Point, end: boolean): number | undefined => {
    const at = drawn?.valueAt(x - box().left);
    if (at !== undefined) engine.pull({ [id]: at }, end);
    return at;
  };
  const onPointerDown = useDrag<{ last: number | undefined }>({
    take: (at) => (locked ? undefined : { last: pullTo(at, false) }),
    move: (hand, at) => {
      hand.last = pullTo(at, false) ?? hand.last;
    },
    drop: ({ last }) => {
      if (last !== undefined) engine.pull({ [id]: last }, true);
    },
  });
  if (!shown) return null;
  const { meta } = shown;
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = arrowSteps(event);
    if (way === undefined || locked || !drawn) return;
    event.preventDefault();
    engine.pull({ [id]: drawn.valueAt(drawn.at(shown.value + way * stepOf(meta, shown.value))) }, true);
  };
  const post = drawn?.post === undefined ? undefined : posts?.[drawn.post];
  return (
    <div
      className="knob-rule"
      ref={ref}
      role="slider"
      tabIndex={locked ? -1 : 0}
      aria-label={spoken(shown)}
      aria-disabled={locked}
      aria-valuemin={Number(min.toFixed(meta.decimals + 1))}
      aria-valuemax={Number(max.toFixed(meta.decimals + 1))}
      aria-valuenow={Number(shown.value.toFixed(meta.decimals + 1))}
      aria-valuetext={`${withUnit(shown.value, meta)}${post?.text ? `, at the limit: ${post.text}` : ''}`}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
    >
      {drawn ? <Picture marks={drawn.marks} width={drawn.width} height={drawn.height} /> : null}
    </div>
  );
}

function useEnds(
  truth: number,
  meta: { readonly window?: { readonly low?: number; readonly high?: number }; readonly unit: string } | undefined,
  low: number | undefined,
  high: number | undefined,
): readonly [number, number] {
  return useMemo(() => {
    const window = meta?.window;
    const wide = window?.low !== undefined && window.high !== undefined ? window.high - window.low : undefined;
    const reach = meta?.unit === '°C' ? 10 : meta?.unit === '°F' ? 18 : Math.abs(truth) * 0.25 || 1;
    const least = low ?? (wide === undefined ? truth - reach : window!.low! - wide);
    const most = high ?? (wide === undefined ? truth + reach : window!.high! + wide);
    return [
      low ?? (truth >= 0 && meta?.unit !== '°C' && meta?.unit !== '°F' ? Math.max(0, Math.min(least, truth)) : Math.min(least, truth)),
      Math.max(most, truth),
    ];
  }, [truth, meta, low, high]);
}
