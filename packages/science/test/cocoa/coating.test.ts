import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { coatCalibration, coatOfBar, enroberFlows, footWidth, lateDrainage, tailLength } from '../../src/cocoa/coat.js';
import {
  binghamFilmFlow,
  drainedThickness,
  filmFlow,
  gravity,
  meanDrainedThickness,
  staticThickness,
  wallRate,
  wipedThickness,
} from '../../src/cocoa/film.js';
import { laneMap } from '../../src/cocoa/lanes.js';

const force = 1270 * gravity;
const tau = fc.double({ min: 0.5, max: 30, noNaN: true });
const eta = fc.double({ min: 0.5, max: 15, noNaN: true });

describe('film', () => {
  it('flow is the integral of the law, and its slope is thickness times wall rate', () => {
    fc.assert(
      fc.property(tau, eta, fc.double({ min: 1.05, max: 4, noNaN: true }), (t, e, over) => {
        const h = over * staticThickness(t, force);
        const d = 1e-6 * h;
        const slope = (filmFlow(h + d, t, e, force) - filmFlow(h - d, t, e, force)) / (2 * d);
        expect(slope / (h * wallRate(h, t, e, force))).toBeCloseTo(1, 3);
      }),
    );
  });
  it('does not move below the static thickness', () => {
    const still = staticThickness(10, force);
    expect(filmFlow(still, 10, 2, force)).toBe(0);
    expect(binghamFilmFlow(0.9 * still, 10, 2, force)).toBe(0);
  });
  it('drains towards the static thickness, never past it', () => {
    expect(drainedThickness(0.02, 1e9, 10, 2, force)).toBeCloseTo(staticThickness(10, force), 5);
    fc.assert(
      fc.property(tau, eta, fc.double({ min: 0.1, max: 1000, noNaN: true }), (t, e, time) => {
        const h = drainedThickness(0.02, time, t, e, force);
        expect(h).toBeGreaterThanOrEqual(staticThickness(t, force) * (1 - 1e-9));
        expect(h * wallRate(h, t, e, force)).toBeCloseTo(0.02 / time, 6);
      }),
    );
  });
  it('keeps mass: what left over the lower edge is what is missing', () => {
    // dm/dt of the mean equals the flow at the lower edge.
    const mean = (t: number) => meanDrainedThickness(0.0136, t, 0.004, 9.5, 2.3, force);
    const d = 0.001;
    const lost = (-(mean(12 + d) - mean(12 - d)) / (2 * d)) * 0.0136;
    expect(lost / filmFlow(drainedThickness(0.0136, 12, 9.5, 2.3, force), 9.5, 2.3, force)).toBeCloseTo(1, 4);
    const early = (-(mean(0.2 + 1e-4) - mean(0.2 - 1e-4)) / 2e-4) * 0.0136;
    expect(early / filmFlow(0.004, 9.5, 2.3, force)).toBeCloseTo(1, 4);
  });
  it('wiping is (2/3)√(μV/G) without a yield value, and the static thickness at rest', () => {
    expect(wipedThickness(0.065, 0, 2, 30_000)).toBeCloseTo((2 / 3) * Math.sqrt((2 * 0.065) / 30_000), 9);
    expect(wipedThickness(0, 9, 2, 30_000)).toBe(9 / 30_000);
  });
});

const bar = {
  length: 0.1,
  width: 0.024,
  height: 0.01357,
  centreMass: 0.0338,
  yieldValue: 9.5,
  plasticViscosity: 2.3,
  density: 1270,
  firstThickness: 0.004,
  drainTime: 12,
  beltSpeed: 0.065,
  blowerSpeed: 20,
  jetWidth: 0.006,
  shakerAmplitude: 0.001,
  shakerFrequency: 10,
  shakerTime: 5,
  calibration: 1,
};

describe('coatOfBar', () => {
  it('is thicker with yield value and viscosity, thinner with blower, shaking and time', () => {
    fc.assert(
      fc.property(tau, eta, fc.double({ min: 1.01, max: 2, noNaN: true }), (yieldValue, plasticViscosity, more) => {
        const here = { ...bar, yieldValue, plasticViscosity };
        const mass = coatOfBar(here).mass;
        const slack = 1e-9;
        expect(coatOfBar({ ...here, yieldValue: yieldValue * more }).mass).toBeGreaterThanOrEqual(mass - slack);
        expect(coatOfBar({ ...here, plasticViscosity: plasticViscosity * more }).mass).toBeGreaterThanOrEqual(mass - slack);
        expect(coatOfBar({ ...here, blowerSpeed: 20 * more }).mass).toBeLessThanOrEqual(mass + slack);
        expect(coatOfBar({ ...here, shakerAmplitude: 0.001 * more }).mass).toBeLessThanOrEqual(mass + slack);
        expect(coatOfBar({ ...here, drainTime: 12 * more }).mass).toBeLessThanOrEqual(mass + slack);
        expect(coatOfBar({ ...here, beltSpeed: 0.065 * more }).mass).toBeGreaterThanOrEqual(mass - slack);
      }),
    );
  });
  it('without a blower the top levels or keeps the curtain', () => {
    expect(coatOfBar({ ...bar, blowerSpeed: 0 }).topSetBy).not.toBe('blower');
  });
  it('calibration meets a measured coat', () => {
    const k = coatCalibration(bar, 0.015);
    expect(coatOfBar({ ...bar, calibration: k }).mass).toBeCloseTo(0.015, 9);
  });
  it('mean thickness times the faces of the centre is the volume', () => {
    const c = coatOfBar(bar);
    const area = 2 * (0.1 * 0.024 + 0.1 * 0.01357 + 0.024 * 0.01357);
    expect(c.mean * area * 1270).toBeCloseTo(c.mass, 12);
    expect(c.pickUp).toBeCloseTo(c.mass / (c.mass + 0.0338), 12);
  });
  it.each(['length', 'plasticViscosity', 'drainTime'] as const)('refuses %s of 0 and NaN', (key) => {
    expect(() => coatOfBar({ ...bar, [key]: 0 })).toThrow(OutOfRange);
    expect(() => coatOfBar({ ...bar, [key]: NaN })).toThrow(OutOfRange);
  });
});

describe('flows, feet and tails', () => {
  it('curtain = coat + return', () => {
    const f = enroberFlows(0.015, 960, 4);
    expect(f.coatFlow).toBeCloseTo(864, 9);
    expect(f.curtainFlow).toBeCloseTo(f.coatFlow + f.returnFlow, 9);
  });
  it('a foot holds the volume that drained', () => {
    const width = footWidth(3e-6, 9.5, 1270);
    const k = Math.sqrt((2 * 9.5) / (1270 * gravity));
    expect((2 / 3) * k * width ** 1.5).toBeCloseTo(3e-6, 12); // ∫ √(2τ0 x/ρg) dx
  });
  it('a stiffer chocolate has smaller feet', () => {
    const foot = (yieldValue: number) => footWidth(lateDrainage({ ...bar, yieldValue }, 20), yieldValue, 1270);
    expect(foot(15)).toBeLessThanOrEqual(foot(5));
  });
  it('a thread with too high a yield value does not break', () => {
    expect(tailLength(0.001, 0.065, 20, 2.3, 0.03).breaks).toBe(false);
    expect(tailLength(0.001, 0.065, 9, 2.3, 0.03)).toMatchObject({ breaks: true });
  });
});

describe('laneMap', () => {
  const lanes = Array.from({ length: 32 }, (_, i) => i);
  const wave = (i: number, a: number) => a * Math.sin(2.7 * i) + a * Math.cos(9.1 * i);
  it('finds a step in the coat after any lane, and calls it coat', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 28 }), (after) => {
        const centre = lanes.map((i) => 33.8 + wave(i, 0.3));
        const finished = lanes.map((i) => centre[i]! + 15 + wave(i + 50, 0.2) + (i >= after ? 1.6 : 0));
        expect(laneMap(centre, finished, 1.2).step).toMatchObject({ after, significant: true, carriedBy: 'coat' });
      }),
    );
  });
  it('calls a step of the centres centre', () => {
    const centre = lanes.map((i) => 33.8 + wave(i, 0.2) + (i >= 20 ? 1.5 : 0));
    const finished = lanes.map((i) => centre[i]! + 15 + wave(i + 50, 0.2));
    expect(laneMap(centre, finished, 1.2).step!.carriedBy).toBe('centre');
  });
  it('sees no step in even lanes, and names a lone lane', () => {
    const centre = lanes.map((i) => 33.8 + wave(i, 0.2));
    const finished = lanes.map((i) => centre[i]! + 15 + wave(i + 50, 0.2) + (i === 6 ? 3 : 0));
    const map = laneMap(centre, finished, 1.2);
    expect(map.step!.significant).toBe(false);
    expect(map.outside).toEqual([7]);
  });
  it('refuses unlike lists and few lanes', () => {
    expect(() => laneMap([1, 2], [3], 1)).toThrow(BadInput);
    expect(() => laneMap([1, 2, 3], [2, 3, 4], 1)).toThrow(BadInput);
  });
});
