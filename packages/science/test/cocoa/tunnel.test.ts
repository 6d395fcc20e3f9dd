import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BadInput, OutOfRange } from '../../src/errors.js';
import { airProperties, flatPlateCoefficient, radiationCoefficient } from '../../src/cocoa/convection.js';
import { coolBar } from '../../src/cocoa/tunnel.js';
import type { TunnelTask, TunnelZone } from '../../src/cocoa/tunnel-task.js';

const zone = (length: number, air: number, h = 25, bottom = 20): TunnelZone => ({
  length,
  air,
  belt: air,
  topCoefficient: h,
  sideCoefficient: h,
  bottomCoefficient: bottom,
});
const task: TunnelTask = {
  width: 0.024,
  length: 0.1,
  centre: [
    { height: 0.00643, density: 920, specificHeat: 2000, conductivity: 0.25 },
    { height: 0.00714, density: 1180, specificHeat: 2000, conductivity: 0.25 },
  ],
  coat: {
    top: 0.0013,
    side: 0.0014,
    bottom: 0.0012,
    density: 1290,
    specificHeat: 1590,
    conductivity: 0.25,
    fat: 0.337,
    blend: { milkFat: 0.21, oil: 0 },
    crystals: 0.012,
  },
  coatStart: 30.4,
  centreStart: 24,
  zones: [zone(12, 15), zone(12, 11.5), zone(12, 15.5)],
  beltSpeed: 0.065,
  mode: 'kinetics',
};

describe('coolBar', () => {
  it('keeps heat: what a bar gives up is what its temperatures and crystals lost', () => {
    const r = coolBar(task);
    const end = task.length + 2 * task.coat.side;
    const layers = task.centre.reduce((sum, l) => sum + l.height * l.density * l.specificHeat * task.width, 0);
    const height = task.centre.reduce((sum, l) => sum + l.height, 0) + task.coat.top + task.coat.bottom;
    const coatArea = (task.width + 2 * task.coat.side) * height - task.width * (height - task.coat.top - task.coat.bottom);
    const coat = coatArea * task.coat.density * task.coat.specificHeat;
    const start = layers * 24 + coat * 30.4;
    const latent = coatArea * task.coat.density * task.coat.fat * 157_000 * (r.exit.solids - task.coat.crystals);
    expect(r.heat / ((start - (layers + coat) * r.exit.mean + latent) * end)).toBeCloseTo(1, 9);
    expect(r.mass).toBeCloseTo(
      end * (task.width * task.centre.reduce((s, l) => s + l.height * l.density, 0) + coatArea * task.coat.density),
      12,
    );
  });
  it('gives up nothing in air of its own temperature once crystals are at rest', () => {
    const still = coolBar({ ...task, coat: { ...task.coat, fat: 0 }, coatStart: 20, centreStart: 20, zones: [zone(10, 20)] });
    expect(still.heat).toBeCloseTo(0, 9);
    expect(still.exit.mean).toBeCloseTo(20, 9);
  });
  it('ends at the air after a very long tunnel', () => {
    const r = coolBar({ ...task, zones: [zone(400, 14)] });
    expect(r.exit.mean).toBeCloseTo(14, 1);
    expect(r.exit.solids).toBeGreaterThan(0.6);
  });
  it('never leaves the span between air and start, without crystals', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 20, noNaN: true }), fc.double({ min: 1, max: 200, noNaN: true }), (air, h) => {
        const r = coolBar({ ...task, coat: { ...task.coat, fat: 0 }, zones: [zone(12, air, h, h)] });
        for (const t of [...r.mean, ...r.centre, ...r.topSurface]) {
          expect(t).toBeGreaterThanOrEqual(air - 1e-9);
          expect(t).toBeLessThanOrEqual(30.4 + 1e-9);
        }
      }),
      { numRuns: 25 },
    );
  });
  it('a faster belt and warmer air give a warmer bar; more wind a colder one', () => {
    const exit = (o: Partial<TunnelTask>) => coolBar({ ...task, ...o }).exit.mean;
    expect(exit({ beltSpeed: 0.075 })).toBeGreaterThan(exit({}));
    expect(exit({ zones: [zone(12, 17), zone(12, 13.5), zone(12, 17.5)] })).toBeGreaterThan(exit({}));
    expect(exit({ zones: [zone(12, 15, 35), zone(12, 11.5, 35), zone(12, 15.5, 35)] })).toBeLessThan(exit({}));
  });
  it('an under-tempered coat leaves with less solid and more heat still to come', () => {
    const exit = (crystals: number) => coolBar({ ...task, coat: { ...task.coat, crystals } }).exit;
    expect(exit(0.002).solids).toBeLessThan(exit(0.015).solids);
    expect(exit(0.002).latentLeft).toBeGreaterThan(exit(0.015).latentLeft);
  });
  it('does not hang on its time step', () => {
    expect(coolBar({ ...task, step: 0.5 }).exit.mean).toBeCloseTo(coolBar(task).exit.mean, 1);
    expect(coolBar({ ...task, step: 0.5 }).exit.solids).toBeCloseTo(coolBar(task).exit.solids, 2);
  });
  it('refuses a bar without centre, a tunnel without zone, a belt that stands', () => {
    expect(() => coolBar({ ...task, centre: [] })).toThrow(BadInput);
    expect(() => coolBar({ ...task, zones: [] })).toThrow(BadInput);
    expect(() => coolBar({ ...task, beltSpeed: 0 })).toThrow(OutOfRange);
    expect(() => coolBar({ ...task, coatStart: NaN })).toThrow(OutOfRange);
  });
});

describe('convection', () => {
  it('air properties are near those of tables at 20 °C', () => {
    const air = airProperties(20); // common tables: 1.204 kg/m³, 1.82e-5 Pa·s, 0.0257 W/(m K), 0.713; from memory
    expect(air.density / 1.204).toBeCloseTo(1, 2);
    expect(air.viscosity / 1.82e-5).toBeCloseTo(1, 1);
    expect(air.conductivity / 0.0257).toBeCloseTo(1, 1);
    expect(air.prandtl).toBeCloseTo(0.713, 1);
  });
  it('rises with wind; radiation at 13 °C is about 5', () => {
    const air = airProperties(13);
    expect(flatPlateCoefficient(4, 0.1, air)).toBeGreaterThan(flatPlateCoefficient(2, 0.1, air));
    expect(radiationCoefficient(13)).toBeCloseTo(4.8, 1);
  });
});
