import { knob, type KnobPost } from '@barwright/drawing';
import { useMemo, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
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
  const held = useRef(false);
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
  if (!shown) return null;
  const { meta } = shown;
  const locked = meta.bend === undefined;
  const place = (event: PointerEvent<HTMLElement>) => drawn!.valueAt(event.clientX - event.currentTarget.getBoundingClientRect().left);
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (!drawn || locked || event.button !== 0) return;
    held.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    engine.pull({ [id]: place(event) }, false);
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    if (held.current && drawn) engine.pull({ [id]: place(event) }, false);
  };
  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    if (!held.current || !drawn) return;
    held.current = false;
    engine.pull({ [id]: place(event) }, true);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (way === undefined || locked || !drawn) return;
    event.preventDefault();
    const next = shown.value + way * stepOf(meta, shown.value) * (event.shiftKey ? 5 : 1);
    engine.pull({ [id]: drawn.valueAt(drawn.at(next)) }, true);
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
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={onPointerUp}
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
