import type { Quantity, Value, Window } from '@barwright/chain';
import { dimensionNames, dimensions, formatNumber, fromInside, toInside } from '@barwright/plant';

/** Which units a person reads. */
export type Units = 'metric' | 'us';

/** How one quantity is written: its unit, the digits, and the factor from the unit inside. */
export interface Presentation {
  readonly unit: string;
  readonly decimals: number;
  readonly toShown: (inside: number) => number;
  readonly toInside: (shown: number) => number;
}

const american: Readonly<Record<string, readonly [unit: string, decimals: number]>> = {
  g: ['oz', 3],
  kg: ['lb', 1],
  mm: ['in', 3],
  m: ['ft', 1],
  '°C': ['°F', 1],
  'kg/h': ['lb/h', 0],
  'm/min': ['ft/min', 2],
  'cm²': ['in²', 2],
  L: ['gal', 1],
};

/** Words behind a plain number, and scales that are no unit of their own. */
const scales: Readonly<Record<string, number>> = { '%': 100, '%/K': 100, DE: 1, 'kg per 100 kg charge': 100, ct: 100, 'kJ/kg': 1e-3 };

export function presentation(quantity: Quantity, units: Units = 'metric'): Presentation {
  const metric = quantity.show ?? quantity.unit;
  const decimals = quantity.decimals ?? 2;
  const swap = units === 'us' ? american[metric] : undefined;
  const price = units === 'us' && /^[A-Z]{3}\/kg$/.test(metric) ? ([metric.replace('/kg', '/lb'), decimals] as const) : undefined;
  const [unit, digits] = swap ?? price ?? [metric, decimals];
  const scale = scales[unit];
  if (scale !== undefined) return { unit, decimals: digits, toShown: (x) => x * scale, toInside: (x) => x / scale };
  if (price) return { unit, decimals: digits, toShown: (x) => x * 0.45359237, toInside: (x) => x / 0.45359237 };
  const dimension =
    unit === quantity.unit
      ? undefined
      : dimensionNames.find((name) => dimensions[name].inside === quantity.unit && dimensions[name].units.has(unit));
  if (dimension)
    return { unit, decimals: digits, toShown: (x) => fromInside(x, dimension, unit), toInside: (x) => toInside(x, dimension, unit) };
  return { unit: unit === '1' ? '' : unit, decimals: digits, toShown: (x) => x, toInside: (x) => x };
}

/** '48.80 g', '–' where there is no value. */
export function inWords(quantity: Quantity, value: Value, units: Units = 'metric'): string {
  const { unit, decimals, toShown } = presentation(quantity, units);
  if (typeof value !== 'number') return `${value.length} values`;
  if (Number.isNaN(value)) return '–';
  const number = formatNumber(toShown(value), decimals);
  return unit === '' ? number : `${number}\u202f${unit}`;
}

export interface ShownWindow {
  readonly low?: number;
  readonly high?: number;
  readonly aim?: number;
  readonly reason?: string;
  readonly source?: string;
}

/** A window in the unit in which the quantity is shown. */
export function shownWindow(quantity: Quantity, units: Units = 'metric'): ShownWindow | undefined {
  const { window } = quantity;
  if (!window) return undefined;
  const { toShown } = presentation(quantity, units);
  const ends = (['low', 'high', 'aim'] as const).flatMap((end) =>
    window[end] === undefined ? [] : [[end, tidy(toShown(window[end]))] as const],
  );
  return {
    ...Object.fromEntries(ends),
    ...(window.reason ? { reason: window.reason } : {}),
    ...(window.source ? { source: window.source } : {}),
  };
}

/** Rounding noise off: 12 significant digits. */
export function tidy(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}

/** 'aim 9.5, 9.1 to 9.9 %', 'at most 0.05'. */
export function windowInWords(quantity: Quantity, units: Units = 'metric'): string {
  const window: Window | undefined = quantity.window;
  if (!window) return '';
  const { unit, decimals, toShown } = presentation(quantity, units);
  const n = (x: number) => formatNumber(toShown(x), decimals);
  const tail = unit === '' ? '' : `\u202f${unit}`;
  if (window.low !== undefined && window.high !== undefined) return `${n(window.low)} to ${n(window.high)}${tail}`;
  if (window.low !== undefined) return `at least ${n(window.low)}${tail}`;
  if (window.high !== undefined) return `at most ${n(window.high)}${tail}`;
  return '';
}
