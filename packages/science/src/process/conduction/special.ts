import { erfc } from '../../statistics/normal.js';

/** exp(x²) erfc(x) for x >= 0, without overflow: the continued fraction of erfc where the exponential would run away. */
export function scaledErfc(x: number): number {
  if (x < 5) return Math.exp(x * x) * erfc(x);
  let fraction = x;
  for (let n = 60; n >= 1; n--) fraction = x + n / 2 / fraction;
  return 1 / (fraction * Math.sqrt(Math.PI));
}

/**
 * Bessel function of the first kind, order 0 or 1: its integral by the trapezium rule, which converges faster than any power of its
 * step, and Hankel's asymptotic series above 25.
 */
export function bessel(order: 0 | 1, x: number): number {
  if (x > 25) return hankel(order, x);
  const steps = 24 + Math.ceil(Math.abs(x));
  let sum = 0.5 * (1 + (order === 0 ? 1 : -1));
  for (let i = 1; i < steps; i++) {
    const theta = (Math.PI * i) / steps;
    sum += Math.cos(order * theta - x * Math.sin(theta));
  }
  return sum / steps;
}

function hankel(order: 0 | 1, x: number): number {
  const mu = 4 * order * order;
  let term = 1;
  let p = 1;
  let q = 0;
  for (let k = 1; k <= 16; k++) {
    term *= (mu - (2 * k - 1) ** 2) / (k * 8 * x);
    if (k % 2 === 1) q += (k % 4 === 1 ? 1 : -1) * term;
    else p += (k % 4 === 0 ? 1 : -1) * term;
  }
  const chi = x - (order / 2 + 0.25) * Math.PI;
  return Math.sqrt(2 / (Math.PI * x)) * (p * Math.cos(chi) - q * Math.sin(chi));
}
