import type { InputSpec } from '../../model.js';

/** Input specifications that several process models share, so that a key means the same everywhere. */

type Spec<K extends string> = InputSpec & { readonly key: K };
type Extra = Partial<Omit<InputSpec, 'key' | 'unit' | 'meaning' | 'kind'>>;
type Series<K extends string> = InputSpec & { readonly key: K; readonly kind: 'series' };

/** A share of mass or volume, 0 or more; masses in any one unit serve where the model scales them. */
export function massShare<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '1', meaning, possible: [0, 1e9], ...extra };
}

/** A share, 0 to 1. */
export function fraction<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '1', meaning, possible: [0, 1], ...extra };
}

/** A temperature in °C. */
export function temperature<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '°C', meaning, possible: [-273.15, 3000], ...extra };
}

/** A quantity that must be above 0. */
export function positive<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [1e-30, 1e30], ...extra };
}

/** A quantity that is 0 or more. */
export function nonNegative<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [0, 1e30], ...extra };
}

/** A list of numbers. */
export function series<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Series<K> {
  return { key, unit, meaning, kind: 'series', ...extra };
}
