import { describe, expect, it } from 'vitest';
import { slabRun } from '../../src/process/slab/cooling.js';

/** Error function by its Taylor series; to 1e-14 below 3. */
function erf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 80; n++) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

function root(f: (x: number) => number, low: number, high: number): number {
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

describe('a slab that freezes from one face', () => {
  // Thick enough that the far face feels nothing; 1000 kg/m³, 2000 J/(kg K), 0.2 W/(m K): 1e-7 m²/s.
  const diffusivity = 1e-7;
  const freezing = (heat: number, start: number, halfWidth: number) =>
    slabRun(
      [
        {
          thickness: 0.05,
          density: 1000,
          specificHeat: 2000,
          conductivity: 0.2,
          start,
          melting: { heat, temperature: 20, halfWidth },
        },
      ],
      500,
      600,
    ).run([{ duration: 600, topTemperature: 0, topCoefficient: 0, bottomTemperature: 0, bottomCoefficient: 1e6 }]);

  it('sets as far as the exact solution of one phase says', () => {
    // Carslaw and Jaeger 1959, 11.2 (from memory): front at 2 λ √(αt), λ exp(λ²) erf(λ) = St / √π; λ = 0.6201 for St = 1.
    const lambda = root((x) => x * Math.exp(x * x) * erf(x) - 1 / Math.sqrt(Math.PI), 0.1, 2);
    expect(lambda).toBeCloseTo(0.6201, 4);
    const run = freezing(40_000, 20.1, 0.1);
    const front = 2 * lambda * Math.sqrt(diffusivity * 600);
    run.position.forEach((z, i) => {
      const exact = z < front ? (20 * erf(z / (2 * Math.sqrt(diffusivity * 600)))) / erf(lambda) : 20;
      expect(Math.abs(run.temperature[i]! - exact)).toBeLessThan(0.2);
    });
    // Heat out of the face: k ΔT / (erf λ √(παt)), over the time.
    const exact = (2 * 0.2 * 20 * Math.sqrt(600)) / (erf(lambda) * Math.sqrt(Math.PI * diffusivity));
    expect(Math.abs(run.heat.at(-1)! / exact - 1)).toBeLessThan(0.01);
  });

  it.each([
    [20_000, 40],
    [60_000, 30],
    [8000, 60],
  ])('follows the solution of Neumann with %d J/kg from %d °C', (heat, start) => {
    // Carslaw and Jaeger 1959, 11.2 (from memory), both phases alike.
    const lambda = root(
      (x) =>
        Math.exp(-x * x) / erf(x) - (((start - 20) / 20) * Math.exp(-x * x)) / (1 - erf(x)) - (x * Math.sqrt(Math.PI) * heat) / (2000 * 20),
      1e-3,
      2,
    );
    const errors = [2, 0.5].map((halfWidth) => {
      const run = freezing(heat, start, halfWidth);
      const root4 = 2 * Math.sqrt(diffusivity * 600);
      return Math.max(
        ...Array.from(run.position, (z, i) => {
          const x = z / root4;
          const exact =
            x < lambda ? (20 * erf(x)) / erf(lambda) : x < 3 ? start - ((start - 20) * (1 - erf(x))) / (1 - erf(lambda)) : start;
          return Math.abs(run.temperature[i]! - exact);
        }),
      );
    });
    expect(errors[1]!).toBeLessThan(errors[0]!); // towards a sharp front
    expect(errors[1]!).toBeLessThan(0.3);
  });

  it.each([0.1, 0.5, 1, 2, 5, 10, 27])('keeps its energy over a range of ± %d K, little heat or much', (halfWidth) => {
    const liquid = (t: number) => {
      const x = Math.min(1, Math.max(0, 0.5 + (t - 20) / (2 * halfWidth)));
      return x * x * (3 - 2 * x);
    };
    for (const heat of [2000, 15_000, 60_000, 200_000]) {
      const run = freezing(heat, 30, halfWidth);
      const each = (1000 * 0.05) / run.temperature.length;
      const given = run.temperature.reduce((sum, t) => sum + each * (2000 * (30 - t) + heat * (liquid(30) - liquid(t))), 0);
      expect(Math.abs(run.heat.at(-1)! / given - 1), `${heat} J/kg`).toBeLessThan(1e-4);
    }
  });

  it('is the slab without melting when its heat goes to nothing', () => {
    const belt = [{ duration: 480, topTemperature: 10, topCoefficient: 40, bottomTemperature: 4, bottomCoefficient: 60 }];
    const layer = { thickness: 0.013, density: 1200, specificHeat: 2000, conductivity: 0.25, start: 55 };
    const melting = (heat: number) => ({ ...layer, melting: { heat, temperature: 25, halfWidth: 10 } });
    const plain = [...slabRun([layer]).run(belt).temperature];
    const most = (heat: number) => {
      const { temperature } = slabRun([melting(heat)]).run(belt);
      return Math.max(...plain.map((t, i) => Math.abs(t - temperature[i]!)));
    };
    expect(most(0)).toBeLessThan(1e-12);
    expect(most(1e-9)).toBeLessThan(1e-11);
    expect(most(10)).toBeLessThan(0.01);
  });
});
