import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readClock } from '../src/index.js';
import { plainNumber } from '../src/tables/number.js';

describe('numbers of a long log', () => {
  it('are those that JavaScript reads, to the last bit', () => {
    const digits = fc.stringMatching(/^[+-]?\d{1,9}(\.\d{1,6})?$/);
    fc.assert(
      fc.property(digits, (cell) => {
        expect(Object.is(plainNumber(cell), Number(cell))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });
  it('are left to the careful reader where anything else is written', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[-+ .,\dexE°%]{0,18}$/)), (cell) => {
        const plain = /^[+-]?\d+(?:\.\d+)?$/.test(cell) && cell.replace(/\D/g, '').length <= 15;
        expect(Number.isNaN(plainNumber(cell))).toBe(!plain);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('times of a long log', () => {
  const two = (most: number) => fc.integer({ min: 0, max: most }).map((n) => String(n).padStart(2, '0'));
  const cell = fc
    .tuple(
      fc.constantFrom('2026-03-17', '2026-03-18', '2026-3-17', '2026-02-31', '2026-13-01', '26-03-17'),
      fc.constantFrom('T', ' ', '  '),
      two(25),
      two(61),
      fc.oneof(
        fc.constant(''),
        two(99).map((s) => `:${s}`),
        fc.constantFrom(':07.5', ':x1', 'Z', ':07Z', ':07+01:00'),
      ),
    )
    .map((parts) => `${parts[0]}${parts[1]}${parts[2]}:${parts[3]}${parts[4]}`);
  it('are the same whatever stands above them', () => {
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 8 }), (cells) => {
        const alone = (one: string) => readClock(['2026-03-17T00:00', '2026-03-17T00:00', one], 'log', undefined, 'refuse').seconds[2]!;
        const calendar = Array.from(cells, () => '2026-03-17T00:00');
        const together = readClock([...calendar, ...cells, '2026-03-17T00:00'], 'log', undefined, 'refuse').seconds;
        expect([...together.slice(cells.length, -1)]).toEqual(cells.map(alone));
      }),
      { numRuns: 1000 },
    );
  });
  it('are those of the calendar', () => {
    const at = fc.integer({ min: 0, max: 4e9 });
    fc.assert(
      fc.property(fc.array(at, { minLength: 1, maxLength: 6 }), (list) => {
        const cells = list.map((s) => new Date(1000 * s).toISOString().slice(0, 19));
        expect([...readClock(cells, 'log', undefined, 'refuse').seconds]).toEqual(list);
      }),
    );
  });
});
