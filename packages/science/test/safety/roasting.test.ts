import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, NoSolution, OutOfRange } from '../../src/errors.js';
import { runModel } from '../../src/model.js';
import { cocoaBed, endMoisture, peanutBed, roastBed } from '../../src/safety/roasting/bed.js';
import { lightnessRate, roastDegree, timeToLightness } from '../../src/safety/roasting/colour.js';
import { cooling, degree, roastLog } from '../../src/safety/roasting/curve-models.js';
import { wetBasis } from '../../src/water/isotherm.js';
import { cocoaMoisture, cocoaMoistureStep, dryBasis, peanutMoisture, slabDryingTime } from '../../src/safety/roasting/drying.js';
import { roastDrum } from '../../src/safety/roasting/drum.js';
import { airBalance, cooledTo, coolingTime, heatDemand } from '../../src/safety/roasting/heat.js';
import { roastCurve } from '../../src/safety/roasting/log.js';
import { airBalanceModel } from '../../src/safety/roasting/models.js';

describe('drying', () => {
  it('in steps of changing length is the closed curve at one temperature', () => {
    let x = 0.044;
    for (const dt of [1, 3, 0.5, 7.5, 8]) x = cocoaMoistureStep(0.044, x, 140, dt);
    expect(x).toBeCloseTo(cocoaMoisture(0.044, 140, 20), 12);
  });
  it('falls with time and temperature, never below 0', () => {
    fc.assert(
      fc.property(fc.double({ min: 110, max: 170, noNaN: true }), fc.double({ min: 0, max: 60, noNaN: true }), (t, min) => {
        for (const f of [cocoaMoisture, peanutMoisture]) {
          expect(f(0.06, t, min + 1)).toBeLessThan(f(0.06, t, min));
          expect(f(0.06, t + 5, min + 1)).toBeLessThan(f(0.06, t, min + 1));
          expect(f(0.06, t, min)).toBeGreaterThan(0);
        }
      }),
    );
    expect(wetBasis(dryBasis(0.07))).toBeCloseTo(0.07, 14);
  });
  it('refuses what cannot be', () => {
    expect(() => cocoaMoisture(0.05, NaN, 10)).toThrow(OutOfRange);
    expect(() => cocoaMoisture(0.05, 140, -1)).toThrow(OutOfRange);
    expect(() => slabDryingTime(0.2, 0.03, 0.04, 0.01, 1e-9)).toThrow(NoSolution);
  });
});

describe('heat', () => {
  const charge = { mass: 1000, moistureIn: 0.07, moistureOut: 0.02, temperatureIn: 25, temperatureOut: 130 };
  it('keeps water and dry matter', () => {
    const d = heatDemand(charge);
    expect(d.evaporated + d.product).toBeCloseTo(1000, 9);
    expect(d.product * 0.98).toBeCloseTo(930, 9);
    expect(d.heat).toBeCloseTo(d.solids + d.water, 6);
    expect(() => heatDemand({ ...charge, moistureOut: 0.08 })).toThrow(BadInput);
  });
  it('the air gives what the product takes, or it is told that it cannot', () => {
    const balance = airBalance(50_000, 1, 160, 20);
    expect((160 - balance.outlet) * 1017).toBeCloseTo(50_000, 6);
    expect(() => airBalance(500_000, 1, 160, 20)).toThrow('cannot give 500000 W');
    const door = runModel(airBalanceModel, { flow_kg_h: 1000, air_flow_kg_h: 9000, air_temperature_c: 165 }).outputs;
    expect(door.efficiency!.value).toBeGreaterThan(0.2);
    expect(door.efficiency!.value).toBeLessThan(1);
  });
  it('cooling is undone by the time it takes', () => {
    expect(cooledTo(150, 20, 0.01, coolingTime(150, 35, 20, 0.01))).toBeCloseTo(35, 9);
    expect(() => coolingTime(150, 35, 36, 0.01)).toThrow(NoSolution);
    expect(runModel(cooling, { temperature_c: 150 }).outputs.time_min!.value).toBeLessThan(15);
  });
});

describe('bed of a belt roaster', () => {
  it('the layer the air leaves lags behind that it enters; slower air and a deeper bed lag more', () => {
    const base = roastBed(peanutBed);
    for (let i = 1; i < base.time.length; i++) expect(base.last[i]!).toBeLessThanOrEqual(base.first[i]! + 1e-9);
    const near = (h: typeof base) => h.time[h.last.findIndex((t) => t > 140)]!;
    expect(near(roastBed({ ...peanutBed, velocity: 1 }))).toBeGreaterThan(near(base));
    expect(near(roastBed({ ...peanutBed, depth: 0.1 }))).toBeGreaterThan(near(base));
  });
  it('never gets hotter than the air and dries only', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 180, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        (air, velocity, depth) => {
          for (const bed of [peanutBed, cocoaBed]) {
            const h = roastBed({ ...bed, air, velocity, depth });
            expect(Math.max(...h.first)).toBeLessThanOrEqual(air + 1e-6);
            expect(endMoisture(h)).toBeLessThanOrEqual(bed.moisture + 1e-12);
            expect(endMoisture(h)).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 15 },
    );
  });
  it('balances energy: heat of the air is in kernels and vapour', () => {
    const h = roastBed(peanutBed);
    const dry = 1 - peanutBed.moisture;
    const sensible = (h.mean.at(-1)! - 20) * dry * (1900 + 0.5 * (0.0638 + h.moisture.at(-1)!) * 4190);
    expect(h.heat / (sensible + h.evaporated * 2_257_000)).toBeCloseTo(1, 1);
    expect(() => roastBed({ ...peanutBed, depth: NaN })).toThrow(OutOfRange);
  });
});

describe('drum', () => {
  const x = {
    product: 'cocoa bean',
    mass: 400,
    moisture: 0.07,
    start: 25,
    drum: 160,
    transfer: 900,
    time: 1800,
    dryHeatCapacity: 1900,
  } as const;
  it('keeps dry matter and stays below the drum', () => {
    const r = roastDrum(x);
    expect(r.product + r.evaporated).toBeCloseTo(400, 6);
    expect(r.product * (1 - r.moisture)).toBeCloseTo(400 * 0.93, 6);
    expect(r.temperature).toBeLessThan(160);
    expect(roastDrum({ ...x, transfer: 1800 }).temperature).toBeGreaterThan(r.temperature);
    expect(roastDrum({ ...x, transfer: 0 }).temperature).toBeCloseTo(25, 9);
  });
});

describe('roast degree', () => {
  it('at the reference is the time itself, and ten kelvin more count more', () => {
    expect(roastDegree([0, 10], [150, 150], 150)).toBeCloseTo(10, 12);
    expect(roastDegree([0, 10], [160, 160], 150)).toBeGreaterThan(15);
    expect(roastDegree([0, 4, 10], [150, 150, 150], 150)).toBeCloseTo(10, 12);
  });
  it('a rate learnt from one roast finds its end again', () => {
    const d = roastDegree([0, 16], [155, 155], 150);
    const rate = lightnessRate(65, 50, d);
    expect(timeToLightness(65, 50, rate, 155, 150, 90_000)).toBeCloseTo(16, 9);
    const door = runModel(degree, { time_min: [0, 10], temperature_c: [155, 155], lightness_rate_per_min: rate }).outputs;
    expect(door.minutes_to_end!.value).toBeCloseTo(6, 6);
    expect(() => lightnessRate(65, 50, 0)).toThrow(NoSolution);
  });
});

describe('stages of a log', () => {
  const minutes = Array.from({ length: 301 }, (_, i) => i / 5);
  const shape = (m: number) => (m < 4 ? 180 - 25 * m : m < 24 ? 80 + 3 * (m - 4) : m < 44 ? 140 : 140 - 5 * (m - 44));
  it('finds charge, heating, hold and cooling with their rates', () => {
    const curve = roastCurve(
      minutes,
      minutes.map((m, i) => shape(m) + 0.2 * Math.sin(i * 2.1)),
    );
    expect(curve.stages.map((s) => s.name)).toEqual(['charging', 'heating', 'holding', 'cooling']);
    expect(curve.stages[1]!.rate).toBeCloseTo(3, 0);
    expect(curve.turning.time).toBeCloseTo(4, 0);
    expect(runModel(roastLog, { time_min: minutes, temperature_c: minutes.map(shape) }).outputs.heating_rate_k_min!.value).toBeCloseTo(
      3,
      1,
    );
  });
  it('leaves out rows that cannot be used and says so; refuses an empty log', () => {
    const curve = roastCurve([0, 1, 1, 2, NaN, 3], [20, 30, 31, 40, 50, NaN]);
    expect(curve.findings).toHaveLength(2);
    expect(() => roastCurve([], [])).toThrow(BadInput);
    expect(() => roastCurve([0, 1], [1])).toThrow('2 times but 1 temperatures');
  });
});
