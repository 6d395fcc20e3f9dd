import { requireRange } from '../../errors.js';
import { bessel, scaledErfc } from './special.js';
import { semiInfiniteConvection } from './semi-infinite.js';

/** Slab between two equal faces (or on an insulated one), long cylinder, sphere. */
export type Shape = 'slab' | 'cylinder' | 'sphere';

/** Fourier number from which the series is worth its length; sooner, heat has hardly left the surface and the half-space holds. */
const seriesFrom: Readonly<Record<Shape, number>> = { slab: 0.005, cylinder: 1e-4, sphere: 1e-4 };
/** Surface by volume, times the length; and how the disturbance gathers towards the middle. */
const gathering: Readonly<Record<Shape, number>> = { slab: 1, cylinder: 2, sphere: 3 };
/** exp of less than this is nothing. */
const negligible = 40;

/**
 * Root n (from 0) of the characteristic equation: slab λ tan λ = Bi, cylinder λ J1/J0 = Bi, sphere 1 - λ cot λ = Bi.
 *
 * @param biot - h L / k with L the half thickness or the radius; above 0, Infinity for a fixed surface temperature
 * @throws OutOfRange for a Biot number that is not positive
 * @see cengel-4 table 4-2
 * @example eigenvalue('slab', 1, 0) // 0.8603
 */
export function eigenvalue(shape: Shape, biot: number, n: number): number {
  requireRange('Biot number', biot, [1e-300, Infinity], 'carslaw-jaeger-1959');
  let [low, high]: [number, number] = bracket(shape, n);
  if (biot === Infinity) return high;
  // The residual changes sign once between the ends: false position after Illinois, with the middle where it stalls.
  let atLow = residual(shape, biot, low + 1e-12 * (high - low));
  let atHigh = residual(shape, biot, high);
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = i % 4 === 3 ? 0.5 * (low + high) : (low * atHigh - high * atLow) / (atHigh - atLow);
    if (!(middle > low && middle < high)) break;
    const value = residual(shape, biot, middle);
    if (value === 0) return middle;
    if (value * atHigh < 0) {
      low = middle;
      atLow = value;
      atHigh /= 2;
    } else {
      high = middle;
      atHigh = value;
      atLow /= 2;
    }
  }
  return 0.5 * (low + high);
}

function bracket(shape: Shape, n: number): [number, number] {
  if (shape === 'slab') return [n * Math.PI, (n + 0.5) * Math.PI];
  if (shape === 'sphere') return [n * Math.PI, (n + 1) * Math.PI];
  return [n === 0 ? 0 : besselZero(1, n), besselZero(0, n + 1)];
}

/** McMahon's expansion and two Newton steps: zero number n (from 1) of J0 or J1. */
function besselZero(order: 0 | 1, n: number): number {
  const beta = (n + (order === 0 ? -0.25 : 0.25)) * Math.PI;
  const mu = 4 * order * order;
  let x = beta - (mu - 1) / (8 * beta);
  for (let i = 0; i < 4; i++) {
    const slope = order === 0 ? -bessel(1, x) : bessel(0, x) - bessel(1, x) / x;
    x -= bessel(order, x) / slope;
  }
  return x;
}

/** The characteristic equation free of poles; divided by Bi where that is large, so that Infinity is a plain case. */
function residual(shape: Shape, biot: number, x: number): number {
  const inner = shape === 'slab' ? x * Math.sin(x) : shape === 'cylinder' ? x * bessel(1, x) : Math.sin(x) - x * Math.cos(x);
  const outer = shape === 'slab' ? Math.cos(x) : shape === 'cylinder' ? bessel(0, x) : Math.sin(x);
  return biot > 1 ? inner / biot - outer : inner - biot * outer;
}

/** Coefficient A of the series for a root λ. */
export function seriesCoefficient(shape: Shape, root: number): number {
  const sine = Math.sin(root);
  if (shape === 'slab') return (4 * sine) / (2 * root + Math.sin(2 * root));
  if (shape === 'sphere') return (4 * (sine - root * Math.cos(root))) / (2 * root - Math.sin(2 * root));
  const j0 = bessel(0, root);
  const j1 = bessel(1, root);
  return (2 * j1) / (root * (j0 * j0 + j1 * j1));
}

function shapeFactor(shape: Shape, root: number, position: number): number {
  const z = root * position;
  if (shape === 'slab') return Math.cos(z);
  if (shape === 'sphere') return z < 1e-8 ? 1 : Math.sin(z) / z;
  return bessel(0, z);
}

function meanFactor(shape: Shape, root: number): number {
  if (shape === 'slab') return Math.sin(root) / root;
  if (shape === 'sphere') return (3 * (Math.sin(root) - root * Math.cos(root))) / root ** 3;
  return (2 * bessel(1, root)) / root;
}

/**
 * Unaccomplished temperature change (T - T∞)/(T0 - T∞) in a body put into a medium of constant temperature; the same number for
 * moisture or salt by analogy. Full series, and the half-space with convection while heat has not reached the middle.
 *
 * @param biot - h L / k, L half thickness or radius; above 0, Infinity for a fixed surface
 * @param fourier - α t / L², 0 or more
 * @param position - distance from the centre (or insulated face) by L, 0 to 1
 * @returns 1 at the start, falling to 0
 * @throws OutOfRange outside these ranges
 * @see carslaw-jaeger-1959, cengel-4
 * @example temperatureRatio('slab', 1, 0.5, 0) // 0.7725
 */
export function temperatureRatio(shape: Shape, biot: number, fourier: number, position: number): number {
  requireRange('position', position, [0, 1], 'carslaw-jaeger-1959');
  requireRange('Fourier number', fourier, [0, Infinity], 'carslaw-jaeger-1959');
  if (fourier === 0) return 1;
  if (fourier < seriesFrom[shape]) {
    const gathered = Math.max(position, 0.5) ** ((1 - gathering[shape]) / 2);
    return 1 - gathered * (1 - semiInfiniteConvection(1 - position, fourier, biot));
  }
  return series(shape, biot, fourier, (root) => shapeFactor(shape, root, position));
}

/** Mean over the volume of the same ratio; 1 less the fractional uptake. Arguments as above. */
export function meanTemperatureRatio(shape: Shape, biot: number, fourier: number): number {
  requireRange('Fourier number', fourier, [0, Infinity], 'carslaw-jaeger-1959');
  if (fourier < seriesFrom[shape]) return 1 - gathering[shape] * halfSpaceUptake(biot, fourier);
  return series(shape, biot, fourier, (root) => meanFactor(shape, root));
}

/** Heat taken up by a half-space, over the heat of a layer of the length: 2√(Fo/π) - (1 - e^(Bi²Fo) erfc(Bi√Fo))/Bi. */
function halfSpaceUptake(biot: number, fourier: number): number {
  requireRange('Biot number', biot, [1e-300, Infinity], 'carslaw-jaeger-1959');
  const root = Math.sqrt(fourier);
  const z = biot * root;
  // The terms of first order cancel where the coefficient still rules.
  if (z < 1e-2) return biot * fourier * (1 - (4 * z) / (3 * Math.sqrt(Math.PI)) + (z * z) / 2);
  return (2 * root) / Math.sqrt(Math.PI) - (biot === Infinity ? 0 : (1 - scaledErfc(z)) / biot);
}

function series(shape: Shape, biot: number, fourier: number, factor: (root: number) => number): number {
  let sum = 0;
  for (let n = 0; n < 5000; n++) {
    const root = eigenvalue(shape, biot, n);
    const exponent = root * root * fourier;
    if (exponent > negligible && n > 0) break;
    sum += seriesCoefficient(shape, root) * Math.exp(-exponent) * factor(root);
  }
  return sum;
}

/**
 * Fourier number at which a place reaches a given ratio; undoes `temperatureRatio`.
 *
 * @param ratio - above 0, below 1
 * @throws OutOfRange for a ratio outside 0 to 1
 */
export function fourierAtRatio(shape: Shape, biot: number, ratio: number, position: number): number {
  requireRange('temperature ratio', ratio, [1e-12, 1 - 1e-12], 'carslaw-jaeger-1959');
  let low = Math.log(1e-9);
  let high = Math.log(1e9 * Math.max(1, 1 / biot));
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high);
    if (temperatureRatio(shape, biot, Math.exp(middle), position) > ratio) low = middle;
    else high = middle;
  }
  return Math.exp(0.5 * (low + high));
}
