import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aim, belt, reach, toSvg, traces, whiskers, type Mark } from '../src/index.js';

const flat = (marks: readonly Mark[]): readonly Mark[] => marks.flatMap((mark) => (mark.tag === 'g' ? flat(mark.children) : [mark]));
const words = (marks: readonly Mark[]) =>
  flat(marks).flatMap((mark) => (mark.tag === 'text' && typeof mark.text === 'string' ? [mark.text] : []));
const acts = (marks: readonly Mark[]) => flat(marks).filter((mark) => 'fill' in mark && mark.fill === 'act' && mark.tag === 'path').length;
const svg = (drawing: { readonly marks: readonly Mark[]; readonly width: number; readonly height: number }) =>
  toSvg(drawing.marks, { width: drawing.width, height: drawing.height, title: 'x', theme: 'day' });

describe('traces', () => {
  const ticks = [{ at: 0, text: '0' }];
  it('draws a wedge for each reading outside its rails, and writes the furthest', () => {
    const points = [0, 1, 2, 3].map((x) => [x, [1, 5, 9, 2][x]!] as const);
    const drawn = traces({ width: 900, x: [0, 3], ticks, rows: [{ id: 'a', name: 'A', points, lo: 0, hi: 4 }] });
    expect(acts(drawn.marks)).toBe(2);
    expect(words(drawn.marks)).toEqual(expect.arrayContaining(['A', '9', '0', '4']));
  });

  it('breaks the line where a reading is missing', () => {
    const path = (points: readonly (readonly [number, number])[]) => {
      const { marks } = traces({ width: 900, x: [0, 3], ticks, rows: [{ id: 'a', name: 'A', points }] });
      return flat(marks).find((mark) => mark.tag === 'path' && mark.stroke === 'ink') as { d: string };
    };
    expect(path([[0, 1], [1, 2], [2, 1], [3, 2]]).d.match(/M/g)).toHaveLength(1); // prettier-ignore
    expect(path([[0, 1], [1, NaN], [2, 1], [3, 2]]).d.match(/M/g)).toHaveLength(2); // prettier-ignore
  });

  it('thins a long log and keeps what is outside in sight', () => {
    const points = Array.from({ length: 100_000 }, (_, i) => [i, i === 54_321 ? 20 : 1 + Math.sin(i)] as const);
    const drawn = traces({ width: 900, x: [0, 99_999], ticks, rows: [{ id: 'a', name: 'A', points, hi: 4 }] });
    expect(acts(drawn.marks)).toBe(1);
    expect(svg(drawn).length).toBeLessThan(60_000);
  });

  it('holds any reading inside its strip', () => {
    const value = fc.oneof(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constant(NaN));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 40 }), fc.double({ min: -1e3, max: 1e3, noNaN: true }), (values, lo) => {
        const points = values.map((y, x) => [x, y] as const);
        const drawn = traces({ width: 700, x: [0, 40], ticks, rows: [{ id: 'a', name: 'A', points, lo }] });
        for (const mark of flat(drawn.marks)) {
          if (mark.tag === 'circle') expect(mark.cy).toBeGreaterThanOrEqual(0);
          if (mark.tag === 'circle') expect(mark.cy).toBeLessThanOrEqual(drawn.height);
        }
        expect(svg(drawn)).not.toMatch(/NaN|Infinity/);
      }),
    );
  });

  it('refuses no rows', () => expect(() => traces({ width: 700, x: [0, 1], ticks, rows: [] })).toThrow(/rows/));
});

describe('reach', () => {
  const rows = [
    { id: 'a', name: 'slab former', reach: 1000 },
    { id: 'b', name: 'guillotine', reach: 1050 },
    { id: 'c', name: 'bean cleaner', reach: 4000 },
  ];
  it('marks what falls short, and only that', () => {
    const drawn = reach({ width: 900, rows, asked: 1050, askedText: '1050', now: 960, unit: 'bars/min' });
    expect(acts(drawn.marks)).toBe(1);
    expect(drawn.hits.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    expect(drawn.atX(1050)).toBeGreaterThan(drawn.atX(1000));
    expect(svg(drawn)).not.toMatch(/NaN|Infinity/);
  });
  it('bears a reach without end', () => {
    expect(svg(reach({ width: 900, rows: [{ id: 'a', name: 'a', reach: Infinity }], asked: 10, askedText: '10', unit: '' }))).not.toMatch(
      /NaN|Infinity/,
    );
  });
});

describe('belt', () => {
  const spec = {
    width: 900,
    height: 470,
    zones: [{ name: 'zone 1', from: 0, to: 12, air: 15, airText: '15 °C' }],
    lines: [{ name: 'top', bold: true, points: [[0, 30], [12, 20.5]] as const }], // prettier-ignore
    xLabel: 'm',
    yLabel: '°C',
  };
  it('marks an end outside its window', () => {
    expect(acts(belt({ ...spec, endWindow: { lo: 17, hi: 19.5 } }).marks)).toBe(1);
    expect(acts(belt({ ...spec, endWindow: { lo: 17, hi: 21 } }).marks)).toBe(0);
  });
  it('is higher where it is warmer', () => {
    const { atY } = belt(spec);
    expect(atY(30)).toBeLessThan(atY(20));
  });
  it('refuses a line of one point', () => expect(() => belt({ ...spec, lines: [{ name: 'x', points: [[0, 1]] }] })).toThrow(/two points/));
});

describe('whiskers', () => {
  it('marks what lies beyond its own limit; what stands back is never marked', () => {
    const row = { id: 'a', name: 'count', value: 112, most: 105 };
    expect(acts(whiskers({ width: 900, rows: [row], unit: '' }).marks)).toBe(1);
    expect(acts(whiskers({ width: 900, rows: [{ ...row, pale: true }], unit: '' }).marks)).toBe(0);
    expect(acts(whiskers({ width: 900, rows: [{ ...row, value: 98 }], unit: '' }).marks)).toBe(0);
  });
  it('outlines what is not reported', () => {
    const { marks } = whiskers({ width: 900, rows: [{ id: 'a', name: 'a' }, { id: 'b', name: 'b', value: 2 }], unit: '' }); // prettier-ignore
    expect(flat(marks).filter((mark) => mark.tag === 'rect' && mark.dash !== undefined)).toHaveLength(1);
  });
});

describe('aim', () => {
  it('draws a filled dot for a way that gets there and a ring for one that does not', () => {
    const way = { x: 9, y: 2.2, xRange: [8, 10], yRange: [2, 2.4] } as const;
    const drawn = aim({
      width: 800,
      height: 320,
      now: { x: 12, y: 2.3, text: 'now' },
      target: { x: [8.5, 9.5], y: [2, 2.5], text: 'wanted' },
      ways: [
        { id: 'a', name: 'E476', ...way, meets: true },
        { id: 'b', name: 'butter', ...way, x: 11.4, meets: false },
      ],
      xLabel: 'Pa',
      yLabel: 'Pa·s',
    });
    const dots = flat(drawn.marks).filter((mark) => mark.tag === 'circle');
    expect(dots.filter((mark) => 'fill' in mark && mark.fill === 'ink')).toHaveLength(1);
    expect(words(drawn.marks)).toEqual(expect.arrayContaining(['E476', 'butter', 'now', 'wanted']));
    expect(svg(drawn)).not.toMatch(/NaN|Infinity/);
  });
});
