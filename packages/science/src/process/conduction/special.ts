import { erfc } from '../../statistics/normal.js';

/** exp(x²) erfc(x) for x >= 0, without overflow: the continued fraction of erfc where the exponential would run away. */
export function scaledErfc(x: number): number {
  if (x < 5) return Math.exp(x * x) * erfc(x);
  let fraction = x;
  for (let n = 60; n >= 1; n--) fraction = x + n / 2 / fraction;
  return 1 / (fraction * Math.sqrt(Math.PI));
}

/** Bessel function of the first kind, order 0 or 1, by its integral; the trapezium rule converges faster than any power of its step. */
export function bessel(order: 0 | 1, x: number): number {
  const steps = 24 + Math.ceil(Math.abs(x));
  let sum = 0.5 * (1 + (order === 0 ? 1 : -1));
  for (let i = 1; i < steps; i++) {
    const theta = (Math.PI * i) / steps;
    sum += Math.cos(order * theta - x * Math.sin(theta));
  }
  return sum / steps;
}
