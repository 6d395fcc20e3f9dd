import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colour, DrawingError, flatten, through, throughCut, toSvg, valueAt, type Field, type ThroughSpec } from '../src/index.js';
import { contours, hatchWhere } from '../src/geometry/field.js';
import { pathPoints } from './path-points.js';

const steps = (from: number, to: number, count: number) => Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1));
const fieldOf = (of: (x: number, y: number) => number, x = steps(0, 8, 33), y = steps(0, 13.5, 28)): Field => ({
  x,
  y,
  rows: x.map((a) => y.map((b) => of(a, b))),
});
/** Cools from both faces, the middle last. */
const cooling = (speed: number) => (minute: number, height: number) =>
  10 + 50 * Math.exp(-speed * minute * (0.4 + ((height - 6.75) / 6.75) ** 2));
const field = fieldOf(cooling(0.3));
const spec: ThroughSpec = {
  width: 1200,
  pxPerMm: 9,
  field,
  layers: [
    { name: 'nougat', from: 0, to: 6.4, material: 'nougat' },
    { name: 'caramel', from: 6.4, to: 13.5, material: 'caramel' },
  ],
  levels: [{ at: 40, text: '40' }, { at: 24, text: '24 °C', bold: true }, { at: 28, text: '28 °C', bold: true }],
  window: { lo: 24, hi: 28, text: 'slits well, 24 to 28 °C' },
  doubt: { cooler: fieldOf(cooling(0.36)).rows, warmer: fieldOf(cooling(0.25)).rows },
  spans: [{ from: 0, to: 8, text: 'sticks' }],
  ends: ['06:46', '06:54'],
  xLabel: 'minutes',
  unit: '°C',
}; // prettier-ignore

describe('a field', () => {
  it('gives back what is linear, anywhere', () => {
    const plane = fieldOf((x, y) => 3 * x - 2 * y + 1);
    const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
    fc.assert(
      fc.property(number(8), number(13.5), (x, y) => {
        expect(valueAt(plane, x, y)).toBeCloseTo(3 * x - 2 * y + 1, 9);
      }),
    );
  });

  it('has its level everywhere on a contour', () => {
    fc.assert(
      fc.property(fc.double({ min: 12, max: 58, noNaN: true }), (level) => {
        for (const line of contours(field, level))
          for (const [x, y] of line) expect(Math.abs(valueAt(field, x, y) - level)).toBeLessThan(1e-6);
      }),
    );
  });

  it('closes a contour round a hill, and ends an open one at the rim', () => {
    const hill = fieldOf((x, y) => -((x - 4) ** 2) - ((y - 7) / 2) ** 2);
    const [ring, ...none] = contours(hill, -2);
    expect(none).toEqual([]);
    expect(ring!.at(-1)).toEqual(ring![0]);
    // x²/2 + y²/8 = 1 holds π √2 √8 = 4π; the polygon lies inside it.
    const area = Math.abs(ring!.slice(1).reduce((sum, [x, y], i) => sum + (ring![i]![0] * y - x * ring![i]![1]) / 2, 0));
    expect(area).toBeGreaterThan(4 * Math.PI * 0.98);
    expect(area).toBeLessThan(4 * Math.PI);
    const slope = contours(fieldOf((x) => x), 3.1); // prettier-ignore
    expect(slope).toHaveLength(1);
    expect([slope[0]![0]![1], slope[0]!.at(-1)![1]].sort((a, b) => a - b)).toEqual([0, 13.5]);
  });

  it('joins a saddle into two lines that do not cross', () => {
    expect(contours({ x: [0, 1], y: [0, 1], rows: [[1, -1], [-1, 1]] }, 0.1)).toHaveLength(2); // prettier-ignore
  });

  it('is hatched only where it is asked for, in the share that it covers', () => {
    const box = { x0: 0, y0: 0, x1: 200, y1: 100 };
    const length = (d: string) => {
      const points = pathPoints(d);
      let sum = 0;
      for (let i = 0; i + 1 < points.length; i += 2)
        sum += Math.hypot(points[i + 1]![0] - points[i]![0], points[i + 1]![1] - points[i]![1]);
      return sum;
    };
    const half = hatchWhere(box, (x) => x < 100);
    for (const [x] of pathPoints(half)) expect(x).toBeLessThan(102);
    expect(length(half) / length(hatchWhere(box, () => true))).toBeCloseTo(0.5, 1);
    expect(hatchWhere(box, () => false)).toBe('');
  });
});

describe('the strip through the thickness', () => {
  const drawn = through(spec);

  it('is true to scale in mm and even in minutes, and says so', () => {
    expect(drawn.y(0) - drawn.y(13.5)).toBeCloseTo(13.5 * 9, 9);
    expect(drawn.plot.h).toBeCloseTo(13.5 * 9, 9);
    expect(drawn.x(3) - drawn.x(2)).toBeCloseTo(drawn.pxPerMinute, 9);
    expect(drawn.timesLifeSize).toBeCloseTo(9 / (96 / 25.4), 9);
  });

  it('finds the minute under a place, and stays on the strip', () => {
    for (const minute of [0, 2.5, 8]) expect(drawn.minuteAt(drawn.x(minute))).toBeCloseTo(minute, 9);
    expect(drawn.minuteAt(-50)).toBe(0);
    expect(drawn.minuteAt(5000)).toBe(8);
  });

  it('draws a level where the field has it', () => {
    const levels = drawn.marks.find((mark) => mark.tag === 'g' && mark.id === 'levels');
    const bold = flatten([levels!]).filter((mark) => mark.kind === 'path' && mark.width === 2);
    expect(bold).toHaveLength(2);
    const { x, y, w, h } = drawn.plot;
    for (const mark of bold)
      for (const [px, py] of pathPoints((mark as { d: string }).d)) {
        const value = valueAt(field, ((px - x) / w) * 8, ((y + h - py) / h) * 13.5);
        expect(Math.min(Math.abs(value - 24), Math.abs(value - 28))).toBeLessThan(0.15);
      }
  });

  it('slants only what a quarter of heat transfer decides', () => {
    const doubt = flatten([drawn.marks.find((mark) => mark.tag === 'g' && mark.id === 'doubt')!]);
    const { x, y, w, h } = drawn.plot;
    const points = pathPoints((doubt[0] as { d: string }).d);
    expect(points.length).toBeGreaterThan(20);
    for (const [px, py] of points) {
      const at = [((px - x) / w) * 8, ((y + h - py) / h) * 13.5] as const;
      expect(valueAt({ ...field, rows: spec.doubt!.cooler }, ...at)).toBeLessThan(30);
      expect(valueAt({ ...field, rows: spec.doubt!.warmer }, ...at)).toBeGreaterThan(26);
    }
    const { doubt: _doubt, ...sure } = spec;
    const bare = through(sure).marks.find((mark) => mark.tag === 'g' && mark.id === 'doubt');
    expect(flatten([bare!])).toEqual([]);
  });

  it('cuts at a minute: the plumb stands there, and its ends are the faces', () => {
    const [plumb, , , top, bottom] = throughCut(drawn, 2.5);
    expect(plumb).toMatchObject({ tag: 'line', x1: drawn.x(2.5), x2: drawn.x(2.5) });
    expect(top).toMatchObject({ cx: drawn.atValue(valueAt(field, 2.5, 13.5)), cy: drawn.y(13.5) });
    expect(bottom).toMatchObject({ cx: drawn.atValue(valueAt(field, 2.5, 0)), cy: drawn.y(0) });
    expect(() => throughCut(drawn, 9)).toThrow(DrawingError);
    expect(() => throughCut(drawn, NaN)).toThrow(DrawingError);
  });

  it('uses no hue: a slab that is cooling asks for nobody', () => {
    const svg = toSvg([...drawn.marks, ...throughCut(drawn, 1)], { width: drawn.width, height: drawn.height, title: 'slab', theme: 'day' });
    for (const ink of ['act', 'held'] as const) expect(svg).not.toContain(colour(ink, 'day'));
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  }); // prettier-ignore

  it('never lets the words of its rail run out at the left: what has no room is left to the table', () => {
    const narrow = through({ ...spec, width: 620, left: 104, cutWidth: 150, spans: [{ from: 0, to: 8, text: 'x'.repeat(90) }] });
    for (const mark of flatten(narrow.marks.filter((each) => each.tag === 'g' && each.id === 'spans')))
      if (mark.kind === 'text') expect(mark.x).toBeGreaterThanOrEqual(narrow.plot.x);
    const rail = through({
      ...spec,
      spans: [
        { from: 0, to: 6, text: 'sticks' },
        { from: 6, to: 8, text: 'slits' },
      ],
    });
    const said = flatten(rail.marks.filter((each) => each.tag === 'g' && each.id === 'spans')).filter((mark) => mark.kind === 'text');
    expect(said.map((mark) => mark.kind === 'text' && mark.x >= rail.plot.x)).toEqual([true, true]);
  });

  it('opens from the ribbon above', () => {
    const opened = through({ ...spec, opensFrom: [600, 760] });
    const hairs = opened.marks.find((mark) => 'id' in mark && mark.id === 'opens-from') as { d: string };
    const xs = pathPoints(hairs.d).map(([x]) => x);
    expect(xs).toEqual(expect.arrayContaining([600, 760]));
    expect(opened.plot.y).toBeGreaterThan(drawn.plot.y);
  });

  it.each([
    ['a row too short', { field: { ...field, rows: field.rows.slice(1) } }, /rows is 32, but 33/],
    ['a hole', { field: fieldOf((x) => (x > 4 ? NaN : x)) }, /rows\[\d+\]\[0\] is NaN/],
    ['time that runs back', { field: { ...field, x: field.x.slice().reverse() } }, /field\.x\[1\]/],
    ['no layers', { layers: [] }, /layers is empty/],
    ['an empty window', { window: { lo: 28, hi: 24, text: '' } }, /window is 28 to 24/],
    ['doubt about nothing', { levels: [] }, /a bold level/],
    ['no room', { width: 420 }, /width left for the strip/],
  ] as const)('refuses %s', (_name, change, words) => expect(() => through({ ...spec, ...change })).toThrow(words));
});
