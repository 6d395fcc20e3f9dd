import { formatNumber } from '@barwright/plant';
import type { Shown } from '../engine/sheet.js';
import type { Meta, ShownWindow } from '../engine/protocol.js';

/** The digits of a number, '–' for none. */
export const digits = (value: number, { decimals }: Pick<Meta, 'decimals'>): string =>
  formatNumber(value, decimals).replaceAll('\u2009', '\u202f');

/** With its unit. */
export function withUnit(value: number, meta: Meta): string {
  return meta.unit === '' ? digits(value, meta) : `${digits(value, meta)}\u202f${meta.unit}`;
}

/** 'window 9.10 to 9.90', 'limit 0.050', 'least 0.90'. */
export function windowWords(window: ShownWindow | undefined, decimals: number): string {
  if (!window) return '';
  const { low, high } = window;
  if (low !== undefined && high !== undefined) return `window ${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}`;
  if (high !== undefined) return `limit ${formatNumber(high, decimals)}`;
  return low === undefined ? '' : `least ${formatNumber(low, decimals)}`;
}

/** Everything about a number in one line, for those who hear it. */
export function spoken({ meta, value, truth, origin, reason, outside }: Shown): string {
  const words = [
    `${meta.meaning}: ${Number.isNaN(value) ? `cannot tell, ${reason ?? 'no value'}` : withUnit(value, meta)}`,
    origin === 'entered' ? 'entered by the plant' : origin,
  ];
  const window = windowWords(meta.window, meta.decimals);
  if (window !== '') words.push(window);
  if (outside !== 0) words.push(`act: ${outside > 0 ? 'above' : 'below'} its window`);
  if (digits(value, meta) !== digits(truth, meta)) words.push(`if you do this; the truth is ${withUnit(truth, meta)}`);
  return words.join(', ');
}

/** How far one step of the arrow keys goes: the last digit, or a fiftieth of the window. */
export function stepOf({ window, decimals }: Meta, value: number): number {
  const last = 10 ** -decimals;
  const { low, high } = window ?? {};
  const wide = low !== undefined && high !== undefined ? (high - low) / 50 : Math.abs(value) / 200;
  return Math.max(last, Math.round(wide / last) * last);
}
