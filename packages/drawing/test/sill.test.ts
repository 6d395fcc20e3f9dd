import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DrawingError, flatten, knob, sill, textWidth, waterSteps, wrap, type Drawing, type SillSpec } from '../src/index.js';

const inks = (drawing: Drawing): Set<string> =>
  new Set(
    flatten(drawing.marks).flatMap((flat) =>
      flat.kind === 'path' ? [flat.stroke ?? '', flat.fill ?? ''] : flat.spans.map((span) => span.fill),
    ),
  );
const base: SillSpec = { width: 84, standing: 'measured', window: { lo: 9.1, hi: 9.9 }, aim: 9.5, value: 9.45 };

describe('a sill', () => {
  it('gives the window the middle 60 % and keeps order along it', () => {
    const drawing = sill(base);
    expect(drawing.at(9.1)).toBeCloseTo(84 * 0.2, 9);
    expect(drawing.at(9.9)).toBeCloseTo(84 * 0.8, 9);
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        (value, more) => drawing.at(value + more) >= drawing.at(value),
      ),
    );
  });
  it('uses act only outside the window, on either side', () => {
    expect(inks(sill(base)).has('act')).toBe(false);
    for (const value of [9.0, 10.36]) {
      const drawing = sill({ ...base, value, figure: { text: String(value), unit: '%' } });
      expect(drawing.outside).toBe(true);
      expect(inks(drawing).has('act')).toBe(true);
    }
  });
  it('draws each standing differently', () => {
    const faces = (['measured', 'computed', 'assumed', 'default', 'missing'] as const).map((standing) =>
      JSON.stringify(sill({ ...base, standing }).marks),
    );
    expect(new Set(faces).size).toBe(5);
  });
  it('never draws digits for a missing number', () => {
    const drawing = sill({ ...base, standing: 'missing', figure: { text: '9.45', unit: '%' } });
    expect(flatten(drawing.marks).some((flat) => flat.kind === 'text')).toBe(false);
  });
  it('judges a trial, and keeps a ring at the truth', () => {
    expect(sill({ ...base, value: 10.2, bent: 9.5 }).outside).toBe(false);
    expect(sill({ ...base, value: 9.5, bent: 10.2 }).outside).toBe(true);
  });
  it('leaves the value off paper', () => {
    expect(sill({ ...base, print: true }).marks.some((mark) => mark.tag === 'circle')).toBe(false);
  });
  it('takes a window open at one end', () => {
    const drawing = sill({ width: 84, standing: 'computed', window: { hi: 0.05 }, aim: 0.036, value: 0.061 });
    expect(drawing.outside).toBe(true);
    expect(drawing.at(0.05)).toBeCloseTo(84 * 0.8, 9);
    expect(drawing.at(0.036)).toBeCloseTo(84 * 0.5, 9);
  });
  it('refuses a window upside down and values that are no numbers', () => {
    expect(() => sill({ ...base, window: { lo: 2, hi: 1 } })).toThrow(DrawingError);
    expect(() => sill({ ...base, value: NaN })).toThrow(/value is NaN/);
  });
});

describe('water steps', () => {
  const levels = [
    { id: 'caramel', y0: 0, y1: 80, level: 0.565, standing: 'computed' as const },
    { id: 'nougat', y0: 80, y1: 160, level: 0.504, standing: 'measured' as const },
  ];
  const spec = { width: 200, height: 180, scale: [0.4, 0.7] as const, levels, steps: [{ from: 'caramel', to: 'nougat', limit: 0.05 }] };
  it('flags a step over its limit', () => {
    expect(waterSteps(spec).over).toEqual(['caramel/nougat']);
    expect(waterSteps({ ...spec, steps: [{ from: 'caramel', to: 'nougat', limit: 0.07 }] }).over).toEqual([]);
  });
  it('refuses a step to a layer that is not there', () => {
    expect(() => waterSteps({ ...spec, steps: [{ from: 'caramel', to: 'wafer' }] })).toThrow(/steps is wafer, but one of caramel, nougat/);
  });
});

describe('a knob', () => {
  const spec = { width: 300, min: 0, max: 7, value: 2, posts: [{ at: 5, text: 'cap 5 %' }] };
  it('does not pass a post', () => {
    const drawing = knob(spec);
    expect(drawing.valueAt(1e4)).toBe(5);
    expect(drawing.valueAt(-1e4)).toBe(0);
  });
  it('reads back the value it is drawn at', () => {
    const drawing = knob(spec);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), (value) => Math.abs(drawing.valueAt(drawing.at(value)) - value) < 1e-9),
    );
  });
  it('says at which post it stands', () => {
    expect(knob({ ...spec, value: 5 }).post).toBe(0);
    expect(knob(spec).post).toBeUndefined();
  });
});

describe('text', () => {
  it('has even lining figures, so columns of numbers align', () => {
    expect(textWidth('111', 20)).toBeCloseTo(textWidth('888', 20), 9);
  });
  it('wraps without losing a word', () => {
    const words = 'Weights prove how much; where it sits is computed, since the blower trims the top only.';
    const rows = wrap(words, 220, 15);
    expect(rows.join(' ')).toBe(words);
    for (const row of rows) expect(textWidth(row, 15)).toBeLessThanOrEqual(220);
  });
});
