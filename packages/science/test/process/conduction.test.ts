import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../src/errors.js';
import { semiInfiniteConvection, semiInfiniteFlux, semiInfiniteStep } from '../../src/process/conduction/semi-infinite.js';
import { eigenvalue, fourierAtRatio, meanTemperatureRatio, temperatureRatio, type Shape } from '../../src/process/conduction/solid.js';
import { bessel, scaledErfc } from '../../src/process/conduction/special.js';

const shapes: readonly Shape[] = ['slab', 'cylinder', 'sphere'];

describe('eigenvalues', () => {
  it.each(shapes)('of the %s meet their equation', (shape) => {
    for (const biot of [0.01, 0.7, 3, 50]) {
      for (let n = 0; n < 6; n++) {
        const x = eigenvalue(shape, biot, n);
        const left = shape === 'slab' ? x * Math.tan(x) : shape === 'sphere' ? 1 - x / Math.tan(x) : (x * bessel(1, x)) / bessel(0, x);
        expect(left / biot).toBeCloseTo(1, 6);
      }
    }
  });
  it('reach π/2, 2.4048 and π for a fixed surface', () => {
    expect(eigenvalue('slab', Infinity, 0)).toBeCloseTo(Math.PI / 2, 12);
    expect(eigenvalue('cylinder', Infinity, 0)).toBeCloseTo(2.404825557695773, 10);
    expect(eigenvalue('sphere', Infinity, 0)).toBeCloseTo(Math.PI, 12);
  });
});

describe('temperature ratio', () => {
  it('is 1 at the start and falls with time, towards the surface and with Bi', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        fc.double({ min: 0.05, max: 100, noNaN: true }),
        fc.double({ min: 1e-3, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (shape, biot, fourier, position) => {
          const here = temperatureRatio(shape, biot, fourier, position);
          expect(here).toBeLessThanOrEqual(1 + 1e-9);
          expect(here).toBeGreaterThanOrEqual(-1e-9);
          expect(temperatureRatio(shape, biot, fourier * 1.2, position)).toBeLessThanOrEqual(here + 1e-9);
          expect(temperatureRatio(shape, biot, fourier, position + 0.1)).toBeLessThanOrEqual(here + 1e-9);
        },
      ),
      { numRuns: 60 },
    );
    expect(temperatureRatio('slab', 1, 0, 0.5)).toBe(1);
  });
  it('joins the half-space without a step', () => {
    for (const biot of [0.2, 5, Infinity]) {
      const before = temperatureRatio('slab', biot, 0.00499999, 0.93);
      const after = temperatureRatio('slab', biot, 0.00500001, 0.93);
      expect(Math.abs(before - after)).toBeLessThan(2e-5);
    }
  });
  it('of a thin body is the lumped one', () => {
    expect(temperatureRatio('slab', 0.001, 500, 0)).toBeCloseTo(Math.exp(-0.5), 3);
    expect(temperatureRatio('sphere', 0.001, 500, 0)).toBeCloseTo(Math.exp(-1.5), 3);
  });
  it('averages to the mean ratio', () => {
    let sum = 0;
    for (let i = 0; i < 400; i++) sum += temperatureRatio('slab', 2, 0.3, (i + 0.5) / 400) / 400;
    expect(sum).toBeCloseTo(meanTemperatureRatio('slab', 2, 0.3), 5);
  });
  it('is undone by fourierAtRatio', () => {
    for (const shape of shapes) expect(temperatureRatio(shape, 2, fourierAtRatio(shape, 2, 0.4, 0.3), 0.3)).toBeCloseTo(0.4, 8);
  });
  it.each([
    [0, 1, 0],
    [NaN, 1, 0],
    [1, -1, 0],
    [1, 1, 1.1],
  ])('refuses Bi %d, Fo %d, position %d', (biot, fourier, position) => {
    expect(() => temperatureRatio('slab', biot, fourier, position)).toThrow(OutOfRange);
  });
});

describe('half-space', () => {
  it('with a strong coefficient is the jump of the surface', () => {
    expect(semiInfiniteConvection(0.01, 1e-7 * 600, 1e9)).toBeCloseTo(semiInfiniteStep(0.01, 1e-7, 600), 5);
  });
  it('under a flux warms its surface as 2 q √(αt/π)/k', () => {
    expect(semiInfiniteFlux(0, 1e-7, 100, 50, 0.3)).toBeCloseTo((100 * Math.sqrt(1e-5 / Math.PI)) / 0.3, 10);
  });
  it('scaled erfc joins its two branches', () => {
    expect(scaledErfc(4.9999999) / scaledErfc(5.0000001)).toBeCloseTo(1, 6);
  });
});
