import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { band, countMarks, DrawingError, flatten, placeNotes, sideLabels, spread, toSvg, type BandSpec } from '../src/index.js';
import { joined, stepTrack, straightTrack } from '../src/textures/track.js';
import { strip, type Material } from '../src/textures/strip.js';
import { classicLine, waferLine } from '../bench/lines.js';
import { pathPoints } from './path-points.js';

const apart = (boxes: readonly { x: number; y: number; w: number; h: number }[]): boolean =>
  boxes.every((a, i) => boxes.every((b, j) => j <= i || a.x >= b.x + b.w || b.x >= a.x + a.w || a.y >= b.y + b.h || b.y >= a.y + a.h));

describe('the band', () => {
  it('is as wide as its flow at every minute', () => {
    const drawing = band(classicLine);
    const width = (minute: number): number => drawing.at(minute)!.bottom - drawing.at(minute)!.top;
    expect(width(-25) * classicLine.flowPerPx).toBeCloseTo(814, 6);
    expect(width(-20) * classicLine.flowPerPx).toBeCloseTo(814 + 676 + 447, 6);
    expect(width(-13) * classicLine.flowPerPx).toBeCloseTo(814 + 676 + 447 - 27, 6);
    expect(width(-5) * classicLine.flowPerPx).toBeCloseTo(814 + 676 + 447 - 27 + 860, 6);
    expect(width(3) * classicLine.flowPerPx).toBeCloseTo(814 + 676 + 447 - 27 + 860 - 22, 6);
  });
  it('runs with the clock', () => {
    const { x } = band(classicLine);
    fc.assert(
      fc.property(
        fc.double({ min: -160, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (minute, more) => x(minute + more) >= x(minute),
      ),
    );
  });
  it('keeps notes apart and loses none', () => {
    const notes = band(classicLine).hits.filter((hit) => hit.id.endsWith('.note'));
    expect(notes).toHaveLength(4);
    expect(apart(notes.map((hit) => hit.box))).toBe(true);
  });
  it('opens numbers by streams, parts, vapour, layers, stations and losses', () => {
    const ids = new Set(band(classicLine).hits.map((hit) => hit.id));
    for (const id of ['nougat', 'c.sugar', 'p.vapour', 'caramel', 'coat.over', 'coat.under', 'tunnel', 'trim', 'scrap', 'giveaway'])
      expect(ids, id).toContain(id);
  });
  it('shows a station that gets more than it can do in act, and only then', () => {
    const acts = (spec: BandSpec): number =>
      flatten(band(spec).marks).filter((flat) => flat.kind === 'path' && flat.stroke === 'act').length;
    expect(acts(waferLine)).toBeGreaterThan(0);
    expect(acts({ ...waferLine, stations: waferLine.stations!.map((station) => ({ ...station, capacity: 2000 })) })).toBe(0);
  });
  it('stays light, repeatable and free of patterns', () => {
    const drawing = band(classicLine);
    const { elements } = countMarks(drawing.marks);
    expect(elements).toBeLessThan(260);
    const svg = toSvg(drawing.marks, { width: drawing.width, height: drawing.height });
    expect(svg).not.toMatch(/<(pattern|clipPath|mask|filter|defs)/);
    expect(svg).not.toContain('NaN');
    expect(band({ ...classicLine }).marks).toEqual(drawing.marks);
  });
  it('refuses an impossible line and names the place', () => {
    expect(() => band({ ...waferLine, streams: [] })).toThrow(/streams is empty/);
    expect(() => band({ ...waferLine, streams: [{ ...waferLine.streams[0]!, flow: -3 }] })).toThrow(/streams\[0\] \(caramel\)\.flow is -3/);
    expect(() => band({ ...waferLine, narrowest: { station: 'oven', text: '' } })).toThrow(DrawingError);
  });
});

describe('a track', () => {
  it('keeps its true width through a bend', () => {
    const track = stepTrack(0, 0, 300, 180, 38, 10);
    for (let s = 0; s <= track.length; s += 2.5) {
      const [x1, y1] = track.at(s, 0);
      const [x2, y2] = track.at(s, 38);
      expect(Math.hypot(x2 - x1, y2 - y1)).toBeCloseTo(38, 6);
    }
  });
  it('ends where it should, level', () => {
    fc.assert(
      fc.property(fc.double({ min: -300, max: 300, noNaN: true }), fc.double({ min: 2, max: 80, noNaN: true }), (drop, width) => {
        const track = stepTrack(0, 0, 700, drop, width, 0);
        const [x, y] = track.at(track.length, width / 2);
        return Math.abs(y - drop) < 1e-6 && Math.abs(x - 700) < 1e-6;
      }),
    );
  });
});

describe('a strip', () => {
  const materials: readonly Material[] = [
    'milk-chocolate',
    'dark-chocolate',
    'white-chocolate',
    'caramel',
    'nougat',
    'nut',
    'cocoa-bean',
    'sugar',
    'syrup',
    'milk',
    'fat',
    'water',
    'dry',
    'film',
    'wafer',
    'biscuit',
    'jelly',
    'paste',
  ];
  it.each(materials)('of %s stays within its box', (material) => {
    for (const [w, h] of [
      [100, 74],
      [240, 9],
      [31, 3],
      [7, 120],
    ] as const) {
      for (const mark of strip(material, straightTrack(10, 20, w, h))) {
        if (mark.tag !== 'path') continue;
        for (const [x, y] of pathPoints(mark.d)) {
          expect(x).toBeGreaterThanOrEqual(10 - 0.6);
          expect(x).toBeLessThanOrEqual(10 + w + 0.6);
          expect(y).toBeGreaterThanOrEqual(20 - 0.6);
          expect(y).toBeLessThanOrEqual(20 + h + 0.6);
        }
      }
    }
  });
  it('runs through joined pieces without a seam', () => {
    const whole = joined([straightTrack(0, 0, 60, 20), straightTrack(60, 0, 60, 20)], 20);
    expect(whole.at(60, 5)).toEqual([60, 5]);
    expect(whole.length).toBe(120);
  });
});

describe('labels', () => {
  it('are spread by at least their distance, in order, and not moved without need', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { minLength: 1, maxLength: 14 }), (wanted) => {
        const got = spread(wanted, 15);
        const order = wanted.map((_, at) => at).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
        for (let k = 1; k < order.length; k += 1) expect(got[order[k]!]! - got[order[k - 1]!]!).toBeGreaterThanOrEqual(15 - 1e-9);
        const free = order.every((at, k) => k === 0 || wanted[at]! - wanted[order[k - 1]!]! >= 15);
        if (free) got.forEach((value, at) => expect(value).toBeCloseTo(wanted[at]!, 9));
      }),
    );
  });
  it('at the side never overlap', () => {
    const { boxes } = sideLabels(
      [10, 11, 12, 13].map((y) => ({ id: String(y), text: 'sugar', figure: '18.0', y })),
      200,
      'left',
    );
    expect(apart(boxes)).toBe(true);
  });
  it('as notes never overlap, however crowded', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 40, max: 760, noNaN: true }), { minLength: 1, maxLength: 9 }), (xs) => {
        const notes = xs.map((x, at) => ({ id: String(at), x, y: 380, text: 'narrowest: slab former', note: '45 to spare', up: true }));
        const { boxes } = placeNotes(notes, [{ x: 0, y: 380, w: 800, h: 90 }], { x: 0, y: 0, w: 800, h: 500 });
        return boxes.length === xs.length && apart(boxes);
      }),
      { numRuns: 60 },
    );
  });
});
