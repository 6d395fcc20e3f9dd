import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  curve,
  dayLine,
  DrawingError,
  evidenceStrip,
  flatten,
  lanes,
  niceTicks,
  scatter,
  shares,
  stack,
  tickText,
  toSvg,
  windowMap,
  type Drawing,
  type Mark,
} from '../src/index.js';
import { caramelStack, charts, stepCurve, unbalanced, windowSpec } from '../bench/charts.js';
import { pathPoints } from './path-points.js';

const acts = (drawing: Drawing): number =>
  flatten(drawing.marks).filter((flat) =>
    flat.kind === 'path' ? flat.stroke === 'act' || flat.fill === 'act' : flat.spans.some((span) => span.fill === 'act'),
  ).length;
const byId = (drawing: Drawing, id: string): Mark | undefined => drawing.marks.find((mark) => 'id' in mark && mark.id === id);

describe('every chart', () => {
  it.each(charts())('%s: holds only finite geometry and no pattern', (_name, drawing) => {
    const svg = toSvg(drawing.marks, { width: drawing.width, height: drawing.height });
    expect(svg).not.toMatch(/NaN|Infinity|undefined|<(pattern|clipPath|mask|filter|defs)/);
  });
});

describe('a stack', () => {
  it('gives each part its true share of height', () => {
    const drawing = caramelStack();
    const box = (id: string): number => drawing.hits.find((hit) => hit.id === id)!.box.h;
    expect(box('milk') / box('syrup')).toBeCloseTo(24 / 36, 9);
    expect(box('boiled') + box('caramel')).toBeCloseTo(100 * drawing.pxPerUnit, 6);
  });
  it('shows what does not balance in act, and nothing when it does', () => {
    expect(caramelStack().gap).toBeCloseTo(0, 9);
    expect(acts(caramelStack())).toBe(0);
    expect(unbalanced().gap).toBeCloseTo(9, 9);
    expect(acts(unbalanced())).toBeGreaterThan(0);
  });
  it('refuses a negative mass', () => {
    expect(() =>
      stack({ width: 300, height: 300, charged: [{ id: 'water', label: '', material: 'water', amount: -1, text: '' }], left: [] }),
    ).toThrow(/stack \(water\)\.amount is -1/);
  });
});

describe('a what-if curve', () => {
  const spec = {
    width: 300,
    height: 200,
    x: [0, 10] as const,
    y: [0, 10] as const,
    points: [
      [0, 1],
      [10, 9],
    ] as const,
  };
  it('is solid exactly in the fitted range and dashed beyond', () => {
    const drawing = curve({ ...spec, fitted: [3, 7] });
    const fitted = byId(drawing, 'fitted');
    const xs = fitted?.tag === 'path' ? pathPoints(fitted.d).map(([x]) => x) : [];
    expect(Math.min(...xs)).toBeCloseTo(drawing.atX(3), 1);
    expect(Math.max(...xs)).toBeCloseTo(drawing.atX(7), 1);
    const beyond = byId(drawing, 'beyond');
    expect(beyond?.tag === 'path' && beyond.dash).toEqual([3, 4]);
    expect(byId(curve(spec), 'beyond')).toBeUndefined();
  });
  it('never leaves the plot', () => {
    const drawing = curve({
      ...spec,
      points: [
        [0, -40],
        [4, 60],
        [10, -9],
      ],
      band: [
        { x: 0, lo: -50, hi: 50 },
        { x: 10, lo: -50, hi: 50 },
      ],
    });
    const [left, top, right, bottom] = drawing.plot;
    for (const id of ['fitted', 'band']) {
      const mark = byId(drawing, id);
      for (const [x, y] of mark?.tag === 'path' ? pathPoints(mark.d) : []) {
        expect(x).toBeGreaterThanOrEqual(left - 0.1);
        expect(x).toBeLessThanOrEqual(right + 0.1);
        expect(y).toBeGreaterThanOrEqual(top - 0.1);
        expect(y).toBeLessThanOrEqual(bottom + 0.1);
      }
    }
  });
  it('puts a wedge on a value outside its limits', () => {
    expect(acts(stepCurve())).toBe(1);
    expect(acts(curve({ ...spec, limits: { hi: 8 }, now: [5, 5] }))).toBe(0);
  });
  it('refuses x that does not rise', () => {
    expect(() =>
      curve({
        ...spec,
        points: [
          [1, 1],
          [1, 2],
        ],
      }),
    ).toThrow(/points\[1\] x is 1, but a value above 1/);
  });
});

describe('a window map', () => {
  it('measures the permitted share', () => {
    const xs = [0, 1, 2, 3, 4];
    const half = windowMap({
      width: 400,
      height: 300,
      xs,
      ys: xs,
      borders: [{ id: 'a', text: 'left half only', margin: xs.map(() => xs.map((x) => 2 - x)) }],
      xLabel: 'x',
      yLabel: 'y',
    });
    expect(half.open).toBeCloseTo(0.5, 9);
  });
  it('names what today breaks', () => {
    expect(windowMap(windowSpec).broken).toEqual([]);
    const out = windowMap({ ...windowSpec, now: [115.6, 80] });
    expect(out.broken).toEqual(['aw']);
    expect(acts(out)).toBe(1);
  });
  it('hatches only forbidden ground', () => {
    const drawing = windowMap(windowSpec);
    const mark = byId(drawing, 'forbidden');
    const inside = (x: number, y: number): boolean => x > 116.5 && x < 120.2 && y > 78 && y < 83;
    for (const [px, py] of mark?.tag === 'path' ? pathPoints(mark.d) : []) {
      const x = 114 + ((px - drawing.atX(114)) / (drawing.atX(122) - drawing.atX(114))) * 8;
      const y = 68 + ((py - drawing.atY(68)) / (drawing.atY(92) - drawing.atY(68))) * 24;
      expect(inside(x, y)).toBe(false);
    }
  });
  it('says so when nothing is permitted', () => {
    const none = windowMap({
      ...windowSpec,
      borders: [{ id: 'no', text: 'never', margin: windowSpec.ys.map(() => windowSpec.xs.map(() => -1)) }],
      emptyText: 'No setting keeps every rule.',
    });
    expect(none.open).toBe(0);
    expect(flatten(none.marks).some((flat) => flat.kind === 'text' && flat.spans[0]!.text.startsWith('No setting'))).toBe(true);
  });
  it('refuses a grid that does not fit', () => {
    expect(() => windowMap({ ...windowSpec, borders: [{ id: 'a', text: '', margin: [[1]] }] })).toThrow(DrawingError);
  });
});

describe('shares', () => {
  it('rank by size, true in length, and sum the rest', () => {
    const drawing = shares({
      width: 400,
      most: 2,
      shares: [1, 5, 3, 0.5].map((value) => ({ id: String(value), label: 'x', value, text: '' })),
    });
    expect(drawing.hits.map((hit) => hit.id)).toEqual(['5', '3', 'rest']);
  });
});

describe('evidence', () => {
  const row = { id: 'a', label: 'a', expected: 10, tolerance: 0.5, expectedText: '10', computedText: '' };
  it('is red exactly outside the stated uncertainty', () => {
    expect(
      evidenceStrip({
        width: 600,
        rows: [
          { ...row, computed: 10.5 },
          { ...row, id: 'b', computed: 10.51 },
          { ...row, id: 'c', computed: 9.4 },
        ],
      }).red,
    ).toEqual(['b', 'c']);
  });
  it('refuses an uncertainty of nothing', () => {
    expect(() => evidenceStrip({ width: 600, rows: [{ ...row, computed: 10, tolerance: 0 }] })).toThrow(/tolerance is 0/);
  });
  it('scatters points in their place', () => {
    const drawing = scatter({
      width: 300,
      height: 200,
      x: [0, 10],
      y: [0, 10],
      points: [{ x: 5, y: 5 }],
      line: [
        [0, 0],
        [10, 10],
      ],
      xLabel: '',
      yLabel: '',
    });
    expect(drawing.marks.find((mark) => mark.tag === 'circle')).toMatchObject({ cx: drawing.atX(5), cy: drawing.atY(5) });
  });
});

describe('the day line', () => {
  const spec = { width: 1000, from: 360, to: 1600, plumb: 775, runs: [[405, 480]] as const };
  it('reads back the minute it points at', () => {
    const drawing = dayLine(spec);
    fc.assert(
      fc.property(
        fc.double({ min: 360, max: 1600, noNaN: true }),
        (minute) => Math.abs(drawing.minuteAt(drawing.at(minute)) - minute) < 1e-6,
      ),
    );
  });
  it('inks runs only', () => {
    const mark = byId(dayLine(spec), 'ran');
    expect(mark?.tag === 'path' ? pathPoints(mark.d).map(([x]) => x) : []).toEqual(
      [dayLine(spec).at(405), dayLine(spec).at(480)].map((x) => Math.round(x * 100) / 100),
    );
  });
  it('writes the hour past midnight as a clock does', () => {
    const words = flatten(dayLine({ ...spec, plumb: 1500 }).marks).flatMap((flat) => (flat.kind === 'text' ? [flat.spans[0]!.text] : []));
    expect(words).toContain('01:00');
  });
});

describe('lanes', () => {
  it('leave a missing lane open, as a dashed outline', () => {
    const drawing = lanes({ width: 400, height: 120, values: [1, undefined, -1], hairs: 2, material: 'milk-chocolate' });
    expect(drawing.marks.filter((mark) => mark.tag === 'rect' && mark.dash !== undefined)).toHaveLength(1);
    expect(acts(drawing)).toBe(0);
  });
});

describe('ticks', () => {
  it('are round, in range and written with the same decimals', () => {
    expect(niceTicks(8.8, 11, 4)).toEqual([9, 9.5, 10, 10.5, 11]);
    expect(tickText([9, 9.5, -1])).toEqual(['9.0', '9.5', '\u22121.0']);
  });
});
