import { BadInput, NoSolution, requireRange } from '../../errors.js';
import { lineThrough } from '../interpolate.js';
import { logGamma } from '../../statistics/gamma.js';
import { normalCdf, normalQuantile } from '../../statistics/normal.js';

/** A distribution of particle volume over size; sizes in one unit of length. */
export interface SizeDistribution {
  /** Share of volume below a size. */
  readonly below: (size: number) => number;
  /** Size below which a share of volume lies. */
  readonly percentile: (share: number) => number;
  /** Sauter mean diameter, 6 / (surface per volume). */
  readonly sauter: number;
  /** Volume mean diameter d(4,3). */
  readonly volumeMean: number;
}

/**
 * Rosin and Rammler: 1 - exp(-(x/x')^n), x' the size with 63.2 % below.
 *
 * @throws OutOfRange for x' or n at or below 0. The Sauter mean needs n above 1, else it is 0: the surface has no bound.
 */
export function rosinRammler(characteristic: number, spread: number): SizeDistribution {
  requireRange('characteristic_size', characteristic, [Number.MIN_VALUE, 1e12], 'rosin-rammler-1933');
  requireRange('spread', spread, [0.05, 50], 'rosin-rammler-1933');
  const gamma = (x: number): number => Math.exp(logGamma(x));
  return {
    below: (size) => (size <= 0 ? 0 : -Math.expm1(-((size / characteristic) ** spread))),
    percentile: (share) => characteristic * (-Math.log1p(-checked(share))) ** (1 / spread),
    sauter: spread > 1 ? characteristic / gamma(1 - 1 / spread) : 0,
    volumeMean: characteristic * gamma(1 + 1 / spread),
  };
}

/** Log-normal in volume: median d50 and geometric standard deviation above 1. */
export function logNormal(median: number, deviation: number): SizeDistribution {
  requireRange('median_size', median, [Number.MIN_VALUE, 1e12], 'a log-normal law');
  requireRange('geometric_deviation', deviation, [1 + 1e-9, 100], 'a log-normal law');
  const s = Math.log(deviation);
  return {
    below: (size) => (size <= 0 ? 0 : normalCdf(Math.log(size / median) / s)),
    percentile: (share) => median * Math.exp(s * normalQuantile(checked(share))),
    sauter: median * Math.exp(-0.5 * s * s),
    volumeMean: median * Math.exp(0.5 * s * s),
  };
}

function checked(share: number): number {
  requireRange('share', share, [0, 1], 'a share');
  return share;
}

/** Specific surface, m²/kg, from a Sauter mean in m and the density of the particles; a shape factor above 1 for rough ones. */
export function specificSurface(sauter: number, density: number, shape = 1): number {
  if (!(sauter > 0)) throw new NoSolution('The distribution has no Sauter mean, so its surface has no bound');
  return (6 * shape) / (sauter * density);
}

export interface FittedSizes {
  readonly characteristic: number;
  readonly spread: number;
  /** Correlation of the straightened points. */ readonly r2: number;
}

/**
 * Rosin-Rammler through sieve or laser points: straight line of ln(-ln(1 - below)) over ln size.
 *
 * @throws BadInput with fewer than two points strictly between 0 and 1
 */
export function fitRosinRammler(sizes: readonly number[], below: readonly number[]): FittedSizes {
  const { xs, ys } = straightened(sizes, below, (share) => Math.log(-Math.log1p(-share)));
  const { slope, intercept } = lineThrough(xs, ys);
  return { characteristic: Math.exp(-intercept / slope), spread: slope, r2: correlation(xs, ys) };
}

/** Log-normal through the points: line of the normal deviate over ln size; characteristic is the median, spread the geometric deviation. */
export function fitLogNormal(sizes: readonly number[], below: readonly number[]): FittedSizes {
  const { xs, ys } = straightened(sizes, below, normalQuantile);
  const { slope, intercept } = lineThrough(xs, ys);
  return { characteristic: Math.exp(-intercept / slope), spread: Math.exp(1 / slope), r2: correlation(xs, ys) };
}

function straightened(sizes: readonly number[], below: readonly number[], map: (share: number) => number) {
  if (sizes.length !== below.length) throw new BadInput(`There are ${sizes.length} sizes but ${below.length} shares below`);
  const xs: number[] = [];
  const ys: number[] = [];
  sizes.forEach((size, i) => {
    const share = below[i]!;
    if (size > 0 && share > 0 && share < 1) {
      xs.push(Math.log(size));
      ys.push(map(share));
    }
  });
  const order = xs.map((_, i) => i).sort((a, b) => xs[a]! - xs[b]!);
  const fall = order.findIndex((place, i) => i > 0 && ys[place]! < ys[order[i - 1]!]!);
  if (fall > 0)
    throw new BadInput(
      `The share below falls from size ${+Math.exp(xs[order[fall - 1]!]!).toPrecision(6)} to ${+Math.exp(xs[order[fall]!]!).toPrecision(6)}; shares below a size rise with it`,
    );
  if (new Set(xs).size < 2)
    throw new BadInput(`Only ${xs.length} points lie strictly between 0 and 1; at least two different sizes are expected`);
  return { xs, ys };
}

function correlation(xs: readonly number[], ys: readonly number[]): number {
  const forward = lineThrough(xs, ys).slope;
  const back = lineThrough(ys, xs).slope;
  return forward * back;
}
