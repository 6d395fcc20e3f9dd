import { formatNumber } from '@barwright/plant';
import type { Out } from './out.js';
import { wrap } from './text.js';

/** A number with its digits, and an interval. */
export const n = (value: number, digits: number): string => formatNumber(value, digits);
export const between = ({ low, high }: { readonly low: number; readonly high: number }, digits: number, factor = 1): string =>
  `${n(factor * low, digits)} to ${n(factor * high, digits)}`;

/** Sentences, one a line, broken at words. */
export function sentences(out: Out, list: readonly string[], indent = '  '): void {
  for (const sentence of list)
    wrap(sentence, Math.min(out.width, 110) - indent.length, '').forEach((line, i) => out.line(`${indent}${i === 0 ? '' : '  '}${line}`));
}

/** A heading with sentences below; nothing where there are none. */
export function section(out: Out, title: string, list: readonly string[]): void {
  if (list.length === 0) return;
  out.line();
  out.line(out.style.strong(title));
  sentences(out, list);
}
