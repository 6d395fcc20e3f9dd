import type { InputSpec } from '../../model.js';

/** Input specifications that several models share, so that a key means the same everywhere. */
type Spec<K extends string> = InputSpec & { readonly key: K };
type Extra = Partial<Omit<InputSpec, 'key' | 'unit' | 'meaning' | 'kind'>>;
type Series<K extends string> = InputSpec & { readonly key: K; readonly kind: 'series' };

/** A quantity above 0, within what anything in a plant could be. */
export function positive<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [1e-9, 1e9], ...extra };
}

/** A quantity that is 0 or more, likewise. */
export function nonNegative<const K extends string>(key: K, unit: string, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit, meaning, possible: [0, 1e9], ...extra };
}

/** A share, 0 to 1. */
export function share<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '1', meaning, possible: [0, 1], ...extra };
}

/** A temperature in °C, of product or air. */
export function celsius<const K extends string>(key: K, meaning: string, extra: Extra = {}): Spec<K> {
  return { key, unit: '°C', meaning, possible: [-60, 200], ...extra };
}

/** A list of numbers. */
export function series<const K extends string>(
  key: K,
  unit: string,
  meaning: string,
  extra: Pick<InputSpec, 'possible' | 'fitted' | 'default'> = {},
): Series<K> {
  return { key, unit, meaning, kind: 'series', ...extra };
}

export const pressure = positive('pressure_pa', 'Pa', 'absolute air pressure', {
  possible: [10_000, 1_000_000],
  fitted: [60_000, 120_000],
  default: 101_325,
});
export const relativeHumidity = share('relative_humidity', 'vapour pressure over saturation', { possible: [1e-6, 1] });
export const heatTransfer = nonNegative('heat_transfer_coefficient_w_m2_k', 'W/(m² K)', 'between surface and air', {
  possible: [0, 10_000],
  fitted: [2, 100],
  default: 8,
});
