import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  at,
  atMoisture,
  boilingPoint,
  boilingSensitivity,
  boilingSensitivityAt,
  composition,
  equilibriumMoisture,
  OutOfRange,
  sharedActivity,
  waterActivityOf,
} from '../../src/index.js';

const caramel = composition({ water: 0.095, sucrose: 0.34, glucose: 0.06, maltose: 0.05, higher_saccharides: 0.18, lactose: 0.03, milk_protein: 0.02, milk_fat: 0.045, vegetable_fat: 0.18 }); // prettier-ignore
const nougat = composition({ water: 0.09, sucrose: 0.48, glucose: 0.05, maltose: 0.05, higher_saccharides: 0.2, egg_protein: 0.01, milk_protein: 0.02, vegetable_fat: 0.1 }); // prettier-ignore

describe('sharedActivity', () => {
  it('leaves one layer alone as it is', () => {
    const { activity, moisture, gain } = sharedActivity([{ mass: 0.012, composition: caramel }], 25);
    expect(activity).toBeCloseTo(waterActivityOf(caramel, 25), 9);
    expect(moisture[0]).toBeCloseTo(0.095, 9);
    expect(gain[0]).toBeCloseTo(0, 12);
  });

  it('brings each layer to the moisture it would have in air of that humidity', () => {
    const { activity, moisture } = sharedActivity([{ mass: 0.0118, composition: caramel }, { mass: 0.0142, composition: nougat }], 25); // prettier-ignore
    expect(moisture[0]).toBeCloseTo(equilibriumMoisture(caramel, activity, 25), 7);
    expect(moisture[1]).toBeCloseTo(equilibriumMoisture(nougat, activity, 25), 7);
  });

  it('keeps the water, whatever the masses and moistures, and ends between the activities it began with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        fc.double({ min: 0.05, max: 0.2, noNaN: true }),
        fc.double({ min: 0.05, max: 0.2, noNaN: true }),
        (a, b, wet, dry) => {
          const layers = [
            { mass: a, composition: atMoisture(caramel, wet) },
            { mass: b, composition: atMoisture(nougat, dry) },
          ];
          const { activity, gain } = sharedActivity(layers, 25);
          expect(Math.abs(gain[0]! + gain[1]!)).toBeLessThan(1e-9 * (a + b));
          const [p, q] = layers.map((layer) => waterActivityOf(layer.composition, 25)) as [number, number];
          expect(activity).toBeGreaterThanOrEqual(Math.min(p, q) - 1e-9);
          expect(activity).toBeLessThanOrEqual(Math.max(p, q) + 1e-9);
          expect(layers[0]!.composition[at.water]).toBeCloseTo(wet, 12);
        },
      ),
    );
  });

  it('shifts the isotherm of a layer to its measured activity', () => {
    const { activity } = sharedActivity([{ mass: 1, composition: caramel, activity: 0.54 }], 25);
    expect(activity).toBeCloseTo(0.54, 9);
  });

  it('refuses no layers, no mass and an activity that is none', () => {
    expect(() => sharedActivity([], 25)).toThrow(OutOfRange);
    expect(() => sharedActivity([{ mass: 0, composition: caramel }], 25)).toThrow(OutOfRange);
    expect(() => sharedActivity([{ mass: 1, composition: caramel, activity: 1.2 }], 25)).toThrow(OutOfRange);
  });
});

describe('boilingSensitivityAt', () => {
  it('is the slope of two solves, from one', () => {
    for (const pressure of [20_000, 60_000, 101_325])
      for (const water of [8, 12, 25, 60]) {
        const solution = { water, sucrose: 40, glucose: 10, maltose: 10, higherSaccharides: 25, higherSaccharidesMol: 0.03 };
        const t = boilingPoint(solution, pressure);
        expect(boilingSensitivityAt(solution, t, pressure) / boilingSensitivity(solution, pressure)).toBeCloseTo(1, 2);
      }
  });
});
