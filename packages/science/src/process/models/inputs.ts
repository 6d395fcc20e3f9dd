import type { InputSpec } from '../../model.js';

/** Input specifications that several process models share, so that a key means the same everywhere. */

type Spec<K extends string> = InputSpec & { readonly key: K };
type Extra = Partial<Omit<InputSpec, 'key' | 'unit' | 'meaning'>>;

/** A share of mass, 0 to 1. */
export function massShare<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: 'kg/kg', meaning, possible: [0, 1], ...extra } as Spec<K>;
}

/** A temperature in °C. */
export function temperature<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '°C', meaning, possible: [-273.15, 3000], ...extra } as Spec<K>;
}

/** A quantity that must be above 0. */
export function positive<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [Number.MIN_VALUE, Number.MAX_VALUE], ...extra } as Spec<K>;
}

/** A quantity that is 0 or more. */
export function nonNegative<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [0, Number.MAX_VALUE], ...extra } as Spec<K>;
}

/** A share of volume, 0 to 1. */
export function volumeShare<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: 'm³/m³', meaning, possible: [0, 1], ...extra } as Spec<K>;
}
