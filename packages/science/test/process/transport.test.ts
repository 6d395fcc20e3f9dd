import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { temperatureRatio } from '../../src/process/conduction/solid.js';
import { logMeanDifference, effectiveness, mixedTemperature } from '../../src/process/heat/exchange.js';
import { equivalentTime } from '../../src/process/kinetics/history.js';
import { activationEnergy, q10, timeToLimit, valueAfter } from '../../src/process/kinetics/rate.js';
import { fitArrhenius, fitLine } from '../../src/process/kinetics/regression.js';
import { commonActivity, contactActivity, gabIsotherm, linearIsotherm, tableIsotherm } from '../../src/process/migration/isotherm.js';
import { migrate, type MoistureLayer } from '../../src/process/migration/layers.js';
import { packActivity, packGain, packLife, packLifeSimple, packTimeConstant } from '../../src/process/package/film.js';
import { slabRun, slitWindow } from '../../src/process/slab/cooling.js';

const day = 86_400;

describe('slab cooling', () => {
  const butter = { thickness: 0.0462, density: 998, specificHeat: 2300, conductivity: 0.197, start: 4.45 };
  const warm = { duration: 18_000, topTemperature: 23.95, topCoefficient: 8.52, bottomTemperature: 0, bottomCoefficient: 0 };

  it('follows the exact series at every time and both faces', () => {
    const run = slabRun([butter]).run([warm]);
    const biot = (8.52 * 0.0462) / 0.197;
    for (let i = 3; i < run.time.length; i++) {
      const fourier = (0.197 / (998 * 2300)) * (run.time[i]! / 0.0462 ** 2);
      expect(Math.abs((23.95 - run.top[i]!) / 19.5 - temperatureRatio('slab', biot, fourier, 1))).toBeLessThan(1.5e-3);
      expect(Math.abs((23.95 - run.bottom[i]!) / 19.5 - temperatureRatio('slab', biot, fourier, 0))).toBeLessThan(1.5e-3);
    }
  });
  it('converges with cells and steps', () => {
    const exact = temperatureRatio('slab', (8.52 * 0.0462) / 0.197, (0.197 / (998 * 2300)) * (18_000 / 0.0462 ** 2), 0);
    const error = (cells: number, steps: number) =>
      Math.abs((23.95 - slabRun([butter], cells, steps).run([warm]).bottom.at(-1)!) / 19.5 - exact);
    expect(error(200, 100)).toBeLessThan(error(40, 20));
    expect(error(400, 400)).toBeLessThan(5e-6);
  });

  const layers = [
    { thickness: 0.0064, density: 920, specificHeat: 2000, conductivity: 0.2, start: 42 },
    {
      thickness: 0.0071,
      density: 1250,
      specificHeat: 2100,
      conductivity: 0.25,
      start: 70,
      melting: { heat: 15_000, temperature: 28, halfWidth: 6 },
    },
  ];
  const belt = [
    { duration: 60, topTemperature: 15, topCoefficient: 20, bottomTemperature: 12, bottomCoefficient: 200 },
    { duration: 420, topTemperature: 10, topCoefficient: 40, bottomTemperature: 12, bottomCoefficient: 30 },
  ];
  it('loses through its faces exactly the heat its layers give up, melting included', () => {
    const run = slabRun(layers).run(belt);
    const n = run.position.length;
    const lower = run.position.filter((z) => z < 0.0064).length;
    const liquid = (t: number) => {
      const x = Math.min(1, Math.max(0, 0.5 + (t - 28) / 12));
      return x * x * (3 - 2 * x);
    };
    let given = 0;
    run.temperature.forEach((t, i) => {
      if (i < lower) given += (920 * 2000 * (42 - t) * 0.0064) / lower;
      else given += ((1250 * 0.0071) / (n - lower)) * (2100 * (70 - t) + 15_000 * (liquid(70) - liquid(t)));
    });
    expect(run.heat.at(-1)! / given).toBeCloseTo(1, 5);
  });
  it('cools slower when fat sets on the way', () => {
    const plain = slabRun(layers.map(({ melting: _, ...layer }) => layer)).run(belt);
    expect(slabRun(layers).run(belt).mean.at(-1)!).toBeGreaterThan(plain.mean.at(-1)!);
  });
  it('gives the same again when run again', () => {
    const run = slabRun(layers);
    const first = run.run(belt).mean.at(-1);
    run.run([belt[0]!]);
    expect(run.run(belt).mean.at(-1)).toBe(first);
  });
  it('never leaves the range of starts and media, and finds the slitting window on its way', () => {
    const run = slabRun(layers, 100, 100).run([{ ...belt[1]!, duration: 1800 }]);
    for (let i = 0; i < run.time.length; i++) {
      expect(run.hottest[i]!).toBeLessThanOrEqual(70 + 1e-6);
      expect(run.coldest[i]!).toBeGreaterThanOrEqual(10 - 1e-6);
    }
    const window = slitWindow(run, 18, 28);
    expect(window.opens).toBeGreaterThan(0);
    expect(window.opens).toBeLessThan(1800);
    expect(slitWindow(run, -5, 28).closes).toBe(Infinity);
  });
  it('an insulated slab keeps its heat', () => {
    const run = slabRun(layers).run([{ duration: 3600, topTemperature: 0, topCoefficient: 0, bottomTemperature: 0, bottomCoefficient: 0 }]);
    expect(run.heat.at(-1)).toBe(0);
    expect(run.hottest.at(-1)! - run.coldest.at(-1)!).toBeLessThan(0.5);
  });
  it('refuses a slab of nothing and a layer without thickness', () => {
    expect(() => slabRun([])).toThrow(BadInput);
    expect(() => slabRun([{ ...butter, thickness: 0 }])).toThrow(OutOfRange);
    expect(() => slabRun([butter]).run([])).toThrow(BadInput);
  });
});

describe('moisture migration', () => {
  const linear = (thickness: number, diffusivity: number, capacity: number, start: number): MoistureLayer => ({
    thickness,
    dryDensity: 1000,
    isotherm: linearIsotherm(capacity / 1000),
    diffusivity,
    start,
  });
  it('keeps the water and ends at the common activity', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: -13, max: -9, noNaN: true }),
        fc.double({ min: 0.02, max: 0.12, noNaN: true }),
        (a, b, logD, monolayer) => {
          const layers: MoistureLayer[] = [
            {
              thickness: 0.005,
              dryDensity: 800,
              isotherm: gabIsotherm([monolayer, 8, 0.95]),
              diffusivity: (aw) => 10 ** (logD + 2 * aw),
              start: a,
            },
            { thickness: 0.008, dryDensity: 1200, isotherm: gabIsotherm([0.05, 20, 0.8]), diffusivity: 10 ** logD, start: b },
          ];
          const water = (m: Float64Array, row: number) => 0.005 * 800 * m[2 * row]! + 0.008 * 1200 * m[2 * row + 1]!;
          const result = migrate(layers, [], {}, 20, [0, 10 * day, 1e6 * day]);
          expect(water(result.meanMoisture, 1) / water(result.meanMoisture, 0)).toBeCloseTo(1, 8);
          const end = commonActivity(layers.map((l) => ({ dryMass: l.thickness * l.dryDensity, isotherm: l.isotherm, start: l.start })));
          expect(result.meanActivity[4]!).toBeCloseTo(end, 3);
          expect(result.meanActivity[5]!).toBeCloseTo(end, 3);
        },
      ),
      { numRuns: 25 },
    );
  });
  it('into one layer through no resistance is the uptake series of Crank', () => {
    const open = { permeance: Infinity, waterActivity: 0.8 };
    for (const fourier of [0.05, 0.3, 1]) {
      const time = (fourier * 0.001 ** 2) / 1e-11;
      const result = migrate([linear(0.002, 1e-11, 200, 0.2)], [], { first: open, last: open }, 20, [time], 60);
      let sum = 0;
      for (let n = 0; n < 200; n++)
        sum += (8 / ((2 * n + 1) ** 2 * Math.PI ** 2)) * Math.exp((-((2 * n + 1) ** 2) * Math.PI ** 2 * fourier) / 4);
      expect(Math.abs((result.meanActivity[0]! - 0.2) / 0.6 - (1 - sum))).toBeLessThan(1.5e-3);
    }
  });
  it('through a tight film is the exponential of the pack', () => {
    const permeance = 1e-12;
    const result = migrate([linear(0.002, 1e-8, 200, 0.2)], [], { last: { permeance, waterActivity: 0.7 } }, 20, [60 * day]);
    const pack = { film: permeance, leak: 0, capacity: 0.002 * 200, temperature: 20, start: 0.2, outside: 0.7 };
    expect(result.meanActivity[0]!).toBeCloseTo(packActivity(pack, 60 * day), 4);
    expect(result.gained[0]!).toBeCloseTo(packGain(pack, 60 * day), 5);
  });
  it('starts at the contact activity of two half-spaces', () => {
    const a = { capacity: 220, diffusivity: 2e-12, start: 0.55 };
    const b = { capacity: 60, diffusivity: 4e-12, start: 0.2 };
    const result = migrate([linear(0.005, 2e-12, 220, 0.55), linear(0.005, 4e-12, 60, 0.2)], [], {}, 20, [0.2 * day]);
    expect(result.contactActivity[0]!).toBeCloseTo(contactActivity(a, b), 3);
  });
  it('a perfect film between layers stops it, a poor one slows it', () => {
    const layers = [linear(0.005, 2e-12, 220, 0.55), linear(0.005, 4e-12, 60, 0.2)];
    const at = (films: number[]) => migrate(layers, films, {}, 20, [30 * day]).meanActivity[1]!;
    expect(at([0])).toBeCloseTo(0.2, 12);
    expect(at([1e-13])).toBeLessThan(at([]));
    expect(at([1e-13])).toBeGreaterThan(0.2);
  });
  it('does not hang on the order of the layers', () => {
    const layers = [linear(0.005, 2e-12, 220, 0.55), linear(0.003, 4e-12, 60, 0.2), linear(0.004, 1e-11, 100, 0.4)];
    const forward = migrate(layers, [], {}, 20, [30 * day]).meanActivity;
    const back = migrate([...layers].reverse(), [], {}, 20, [30 * day]).meanActivity;
    for (let i = 0; i < 3; i++) expect(forward[i]!).toBeCloseTo(back[2 - i]!, 9);
  });
  it('refuses missing layers, times that fall, and an activity above 1', () => {
    expect(() => migrate([], [], {}, 20, [1])).toThrow(BadInput);
    expect(() => migrate([linear(0.005, 2e-12, 220, 0.5)], [], {}, 20, [2, 1])).toThrow(BadInput);
    expect(() => migrate([linear(0.005, 2e-12, 220, 1.2)], [], {}, 20, [1])).toThrow(OutOfRange);
  });
  it('tables of points are undone by their inverse, and must rise', () => {
    const table = tableIsotherm([0.1, 0.5, 0.9], [0.02, 0.05, 0.2]);
    for (const aw of [0.1, 0.3, 0.7, 0.9]) expect(table.activity(table.moisture(aw))).toBeCloseTo(aw, 12);
    expect(() => tableIsotherm([0.1, 0.1], [0, 1])).toThrow(OutOfRange);
    expect(() => tableIsotherm([0.1, 0.2], [1, 0])).toThrow(OutOfRange);
  });
});

describe('pack', () => {
  const pack = { film: 1e-13, leak: 2e-14, capacity: 0.002, temperature: 20, start: 0.2, outside: 0.75 };
  it('reaches the critical activity when it says', () => {
    expect(packActivity(pack, packLife(pack, 0.45))).toBeCloseTo(0.45, 12);
    expect(packLifeSimple(pack, 0.45) / packLife(pack, 0.45)).toBeGreaterThan(0.9);
    expect(packLifeSimple(pack, 0.45)).toBeLessThan(packLife(pack, 0.45));
  });
  it('never gets where the outside does not lead, nor through a perfect seal', () => {
    expect(packLife(pack, 0.8)).toBe(Infinity);
    expect(packLife(pack, 0.1)).toBe(Infinity);
    expect(packTimeConstant({ ...pack, film: 0, leak: 0 })).toBe(Infinity);
    expect(packActivity({ ...pack, film: 0, leak: 0 }, 1e9)).toBeCloseTo(0.2, 12);
  });
});

describe('kinetics', () => {
  it('a constant history is worth its own time, ten kelvin more Q10 times that', () => {
    expect(equivalentTime([0, 4, 10], [118, 118, 118], 1e5, 118)).toBeCloseTo(10, 9);
    expect(equivalentTime([0, 10], [128, 128], 1e5, 118)).toBeCloseTo(10 * q10(1e5, 118), 9);
  });
  it('a ramp is the same in one piece or in many', () => {
    const times = Array.from({ length: 101 }, (_, i) => i / 10);
    const fine = equivalentTime(
      times,
      times.map((t) => 20 + 10 * t),
      1.2e5,
      118,
    );
    expect(equivalentTime([0, 10], [20, 120], 1.2e5, 118) / fine).toBeCloseTo(1, 5);
  });
  it('refuses lists that do not match or run backwards', () => {
    expect(() => equivalentTime([0], [20], 1e5, 118)).toThrow(BadInput);
    expect(() => equivalentTime([0, 1], [20], 1e5, 118)).toThrow(BadInput);
    expect(() => equivalentTime([1, 0], [20, 20], 1e5, 118)).toThrow(BadInput);
  });
  it('energy and factor undo each other; time and value too', () => {
    expect(activationEnergy(q10(85_000, 25), 25, 35)).toBeCloseTo(85_000, 6);
    for (const order of [0, 1] as const) {
      const time = timeToLimit(order, 2, 7, 0.3);
      expect(valueAfter(order, 2, 0.3, time)).toBeCloseTo(7, 9);
    }
    expect(timeToLimit(0, 2, 7, 0)).toBe(Infinity);
    expect(timeToLimit(0, 8, 7, 0.3)).toBe(0);
    expect(timeToLimit(0, 2, 7, -0.3)).toBe(0);
    expect(timeToLimit(1, 8, 4, -0.1)).toBeCloseTo(Math.log(2) / 0.1, 9);
  });
  it('a fit finds the line it was given', () => {
    const line = fitLine([0, 1, 2, 3], [1, 3, 5, 7]);
    expect(line.slope).toBeCloseTo(2, 12);
    expect(line.intercept).toBeCloseTo(1, 12);
    expect(line.slopeHalfWidth).toBeCloseTo(0, 6);
    const fit = fitArrhenius([20, 30, 40], [1, q10(9e4, 20), q10(9e4, 20) * q10(9e4, 30)]);
    expect(fit.energy).toBeCloseTo(9e4, 3);
    expect(() => fitLine([1, 1], [1, 2])).toThrow(BadInput);
    expect(() => fitArrhenius([1, 2], [1, -1])).toThrow(BadInput);
  });
});

describe('heat exchange', () => {
  it('the log mean lies between geometric and arithmetic mean and is even', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), fc.double({ min: 0.1, max: 100, noNaN: true }), (a, b) => {
        const mean = logMeanDifference(a, b);
        expect(mean).toBeLessThanOrEqual(((a + b) / 2) * (1 + 1e-9));
        expect(mean).toBeGreaterThanOrEqual(Math.sqrt(a * b) * (1 - 1e-9));
        expect(logMeanDifference(b, a)).toBeCloseTo(mean, 9);
      }),
    );
    expect(() => logMeanDifference(0, 10)).toThrow(OutOfRange);
  });
  it('counterflow beats parallel flow, and both are 1 - exp(-N) against a condensing stream', () => {
    expect(effectiveness('counterflow', 2, 0.8)).toBeGreaterThan(effectiveness('parallel', 2, 0.8));
    for (const way of ['counterflow', 'parallel'] as const) expect(effectiveness(way, 2, 0)).toBeCloseTo(1 - Math.exp(-2), 12);
    expect(effectiveness('counterflow', 3, 1)).toBeCloseTo(0.75, 12);
    expect(effectiveness('counterflow', 3, 1 - 1e-6)).toBeCloseTo(0.75, 5);
  });
  it('a mix lies between its parts', () => {
    expect(
      mixedTemperature([
        { mass: 1, specificHeat: 2000, temperature: 20 },
        { mass: 1, specificHeat: 2000, temperature: 60 },
      ]),
    ).toBeCloseTo(40, 12);
    expect(() => mixedTemperature([])).toThrow(OutOfRange);
  });
});
