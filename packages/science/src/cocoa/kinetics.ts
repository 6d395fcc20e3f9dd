import { requireRange } from '../errors.js';
import type { MassFraction } from '../units.js';

/**
 * Foubert's model of isothermal crystallisation, dh/dt = K(hⁿ - h) with h = (a - f)/a, in closed form.
 *
 * @param a - solid fat in the end, same unit as the result
 * @param f0 - solid fat at the start, above 0 and below a
 * @param n - order, above 1; 2 is logistic growth
 * @param rate - K, per unit of time
 * @returns solid fat after a time
 * @throws OutOfRange
 * @see foubert-2002 (form; the inner bracket carries the exponent 1 - n)
 * @example foubert(100, 1, 3, 5, 0.25) // 10.46
 */
export function foubert(a: number, f0: number, n: number, rate: number, time: number): number {
  requireRange('final_solids', a, [Number.MIN_VALUE, Infinity], 'foubert-2002');
  requireRange('start_solids', f0, [a * 1e-12, a], 'foubert-2002');
  requireRange('order', n, [1.0001, 20], 'foubert-2002');
  requireRange('rate', rate, [0, Infinity], 'foubert-2002');
  requireRange('time', time, [0, Infinity], 'foubert-2002');
  const h0 = 1 - f0 / a;
  if (h0 <= 0) return a;
  const inside = 1 + (h0 ** (1 - n) - 1) * Math.exp((n - 1) * rate * time);
  return a * (1 - inside ** (1 / (1 - n)));
}

/** Avrami: crystallised share 1 - exp(-k tⁿ). */
export function avrami(k: number, n: number, time: number): MassFraction {
  requireRange('avrami_k', k, [0, Infinity], 'avrami-1940');
  requireRange('avrami_n', n, [0.1, 6], 'avrami-1940');
  requireRange('time', time, [0, Infinity], 'avrami-1940');
  return -Math.expm1(-k * time ** n);
}
