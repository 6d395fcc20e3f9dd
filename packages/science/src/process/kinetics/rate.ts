import { requireRange } from '../../errors.js';
import { arrheniusFactor, gasConstant } from '../flow/temperature.js';
import type { Celsius, Second } from '../../units.js';

/** Order of a reaction: 0 runs in a straight line, 1 in proportion to what is left (or has formed). */
export type Order = 0 | 1;

/**
 * Factor by which a rate rises over ten kelvin from a temperature.
 *
 * @param energy - activation energy, J/mol
 * @example q10(101_800, 110) // 2.254
 */
export function q10(energy: number, from: Celsius): number {
  return arrheniusFactor(energy, from, from + 10);
}

/** Activation energy, J/mol, that gives a factor between two temperatures; undoes `arrheniusFactor`. */
export function activationEnergy(factor: number, from: Celsius, to: Celsius): number {
  requireRange('factor', factor, [1e-300, Infinity], 'arrhenius');
  return (gasConstant * Math.log(factor)) / (1 / (from + 273.15) - 1 / (to + 273.15));
}

/** A value after a time: order 0 start + k t, order 1 start exp(k t). A loss has a negative rate. */
export function valueAfter(order: Order, start: number, rate: number, time: Second): number {
  return order === 0 ? start + rate * time : start * Math.exp(rate * time);
}

/**
 * Time until a value reaches a limit, in the unit of the rate. A rising value has its limit above, a falling one below.
 *
 * @returns 0 where it is already beyond, Infinity where the value stands still
 */
export function timeToLimit(order: Order, start: number, limit: number, rate: number): number {
  if (order === 1) {
    requireRange('start', start, [1e-300, Infinity], 'first-order kinetics');
    requireRange('limit', limit, [1e-300, Infinity], 'first-order kinetics');
  }
  const way = order === 0 ? limit - start : Math.log(limit / start);
  if (rate === 0) return way === 0 ? 0 : Infinity;
  return Math.max(0, way / rate);
}
