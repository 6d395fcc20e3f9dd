import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import { runModel } from '../../src/model.js';
import { bondEnergy, largestFeed, sizeConstant, sizeEnergy, surfaceEnergy } from '../../src/safety/grinding/energy.js';
import { fatDemandModel, rosinRammlerModel, sizeFit } from '../../src/safety/grinding/models.js';
import { fatDemand, millRate, rollThroughput, tellsApart } from '../../src/safety/grinding/refining.js';
import {
  fitLogNormal,
  fitRosinRammler,
  logNormal,
  rosinRammler,
  specificSurface,
  type SizeDistribution,
} from '../../src/safety/grinding/sizes.js';

/** Sauter mean and volume mean by counting many slices. */
function byCounting(law: SizeDistribution): { sauter: number; volumeMean: number } {
  let surface = 0;
  let mean = 0;
  const n = 200_000;
  for (let i = 0; i < n; i++) {
    const x = law.percentile((i + 0.5) / n);
    surface += 1 / x / n;
    mean += x / n;
  }
  return { sauter: 1 / surface, volumeMean: mean };
}

describe('size distributions', () => {
  it('63.2 % lie below the characteristic size, half below the median', () => {
    expect(rosinRammler(20, 1.3).below(20)).toBeCloseTo(1 - Math.exp(-1), 12);
    expect(logNormal(12, 2).below(12)).toBeCloseTo(0.5, 12);
  });
  it('means agree with counting', () => {
    for (const law of [rosinRammler(20, 2.5), logNormal(12, 2)]) {
      const counted = byCounting(law);
      expect(law.sauter / counted.sauter).toBeCloseTo(1, 2);
      expect(law.volumeMean / counted.volumeMean).toBeCloseTo(1, 2);
    }
  });
  it('percentiles undo the shares below, and are found again by the fit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 100, noNaN: true }),
        fc.double({ min: 1.1, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (size, spread, share) => {
          for (const law of [rosinRammler(size, spread), logNormal(size, spread)])
            expect(law.below(law.percentile(share))).toBeCloseTo(share, 9);
          const shares = [0.1, 0.3, 0.5, 0.7, 0.9];
          const rr = fitRosinRammler(shares.map(rosinRammler(size, spread).percentile), shares);
          expect(rr.characteristic).toBeCloseTo(size, 6);
          expect(rr.spread).toBeCloseTo(spread, 6);
          expect(fitLogNormal(shares.map(logNormal(size, spread).percentile), shares).spread).toBeCloseTo(spread, 5);
        },
      ),
      { numRuns: 50 },
    );
  });
  it('a spread of 1 or less has no Sauter mean: empty, not zero', () => {
    expect(runModel(rosinRammlerModel, { characteristic_size_um: 20, spread: 0.9 }).outputs.sauter_um!.value).toBeNull();
    expect(() => specificSurface(0, 1500)).toThrow(NoSolution);
    expect(specificSurface(6e-6, 1500)).toBeCloseTo(666.7, 1);
  });
  it('refuses too few points and impossible sizes', () => {
    expect(() => fitRosinRammler([10], [0.5])).toThrow(BadInput);
    expect(() => fitRosinRammler([10, 20], [0, 1])).toThrow('strictly between 0 and 1');
    expect(() => rosinRammler(NaN, 1)).toThrow(OutOfRange);
    expect(runModel(sizeFit, { size_series_um: [10, 20, 40], share_below_series: [0.3, 0.6, 0.9] }).outputs.d90_um!.value).toBeGreaterThan(
      30,
    );
  });
});

describe('energy laws', () => {
  it('add over stages and come back to the known case', () => {
    for (const law of ['rittinger', 'bond', 'kick'] as const) {
      const c = sizeConstant(law, 13, 50, 10);
      expect(sizeEnergy(law, c, 50, 10)).toBeCloseTo(13, 10);
      expect(sizeEnergy(law, c, 80, 40) + sizeEnergy(law, c, 40, 20)).toBeCloseTo(sizeEnergy(law, c, 80, 20), 10);
    }
    expect(sizeEnergy('kick', sizeConstant('kick', 10, 100, 50), 20, 10)).toBeCloseTo(10, 10);
    expect(bondEnergy(10, 1000, 1000)).toBe(0);
    expect(() => sizeConstant('bond', 13, 10, 50)).toThrow(NoSolution);
    expect(surfaceEnergy(100, 10, 20)).toBe(10);
  });
  it('a pair of rolls draws in larger pieces the wider the gap', () => {
    expect(largestFeed(1000, 12.5, 0)).toBeCloseTo(12.5, 9);
    expect(largestFeed(1000, 20, 31)).toBeGreaterThan(largestFeed(1000, 12.5, 31));
    expect(rollThroughput(25e-6, 1.3, 5, 1300, 1)).toBeCloseTo(760.5, 6);
    expect(millRate(55)).toBe(109);
  });
});

describe('fineness', () => {
  it('finer asks for more fat, a looser packing too', () => {
    expect(fatDemand(2e6, 0.9)).toBeGreaterThan(fatDemand(1e6, 0.9));
    expect(fatDemand(1e6, 0.7)).toBeGreaterThan(fatDemand(1e6, 0.9));
    const at = (d90_um: number) => runModel(fatDemandModel, { d90_um }).outputs.fat!.value as number;
    expect(at(20)).toBeGreaterThan(at(30));
    expect(at(22)).toBeGreaterThan(0.2);
    expect(at(22)).toBeLessThan(0.45);
  });
  it('equal sizes are guessed at, a difference of the threshold is told by three in four', () => {
    expect(tellsApart(20, 20)).toBe(0.5);
    expect(tellsApart(20, 25)).toBeCloseTo(0.75, 12);
  });
});
