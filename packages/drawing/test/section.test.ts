import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countMarks, DrawingError, flatten, section, sideView, type Mark, type SectionSpec } from '../src/index.js';
import { biscuitBar, caramelBelow, classic, heavyTop, lopsided, marshmallow, naked, nougatOnly, waferBar } from '../bench/bars.js';
import { area } from '../src/geometry/polygon.js';
import { pathPoints } from './path-points.js';

const all: readonly (readonly [string, SectionSpec])[] = Object.entries({
  classic,
  heavyTop,
  lopsided,
  caramelBelow,
  waferBar,
  nougatOnly,
  biscuitBar,
  marshmallow,
  naked,
});

/** Summed area of the closed shapes of the paths that are not dashed: rings of two half circles, or many-sided cells, px². */
function ringArea(marks: readonly Mark[]): number {
  return flatten(marks).reduce((sum, flat) => {
    if (flat.kind !== 'path' || flat.dash !== undefined) return sum;
    const cells = [...flat.d.matchAll(/M([^MZa]*)Z/g)].reduce(
      (all, [, points]) => all + Math.abs(area(points!.split('L').map((pair) => pair.split(' ').map(Number) as [number, number]))),
      0,
    );
    return sum + cells + [...flat.d.matchAll(/M\S+ \S+?a(\d*\.?\d+)/g)].reduce((rings, [, r]) => rings + Math.PI * Number(r) ** 2, 0);
  }, 0);
}

const layerMarks = (spec: SectionSpec, id: string): readonly Mark[] => {
  const found = section(spec).marks.find((mark) => mark.tag === 'g' && mark.id === id);
  return found?.tag === 'g' ? found.children : [];
};

describe('a section', () => {
  it.each(all)('draws every kind of bar with few enough shapes: %s', (_name, spec) => {
    const drawing = section(spec);
    const { elements, pieces } = countMarks(drawing.marks);
    expect(elements).toBeLessThan(80);
    expect(pieces).toBeLessThan(2500);
    expect(drawing.layers.map((layer) => layer.id)).toEqual(spec.layers.map((layer) => layer.id));
  });

  it('is true to scale and its layers lie on one another without gaps', () => {
    for (const [, spec] of all) {
      const drawing = section(spec);
      expect(drawing.box.w).toBeCloseTo(spec.width * spec.scale, 6);
      expect(drawing.box.h).toBeCloseTo(drawing.heightMm * spec.scale, 6);
      drawing.layers.forEach((layer, at) => {
        expect(layer.y1 - layer.y0).toBeCloseTo(spec.layers[at]!.thickness * spec.scale, 6);
        if (at > 0) expect(layer.y1).toBeCloseTo(drawing.layers[at - 1]!.y0, 6);
      });
    }
  });

  it('opens rings until they cover the share of air, within 2 %, as counted from the drawn path', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.54, noNaN: true }), fc.double({ min: 3, max: 14, noNaN: true }), (air, thickness) => {
        const spec: SectionSpec = { ...nougatOnly, layers: [{ ...nougatOnly.layers[0]!, air, thickness }] };
        const { drawn } = section(spec).layers[0]!;
        const asked = air * drawn.cell;
        expect(Math.abs(drawn.air / asked - 1)).toBeLessThan(0.02);
        expect(Math.abs(ringArea(layerMarks(spec, 'light')) / spec.scale ** 2 / asked - 1)).toBeLessThan(0.03); // the path has two decimals of a pixel
      }),
      { numRuns: 25 },
    );
  });

  it('draws a very light foam as cells that cover the share of air, within 2 %', () => {
    for (const air of [0.6, 0.72, 0.9]) {
      const { drawn } = section({ ...marshmallow, layers: [{ ...marshmallow.layers[1]!, air }] }).layers[0]!;
      expect(Math.abs(drawn.air / (air * drawn.cell) - 1)).toBeLessThan(0.02);
    }
  });

  it('draws kernels until they cover their share, within 2 %', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.04, max: 0.55, noNaN: true }),
        fc.constantFrom('peanut', 'almond', 'hazelnut', 'raisin', 'crisp'),
        (share, kind) => {
          const spec: SectionSpec = { ...classic, layers: [{ ...classic.layers[1]!, pieces: [{ kind, share }], voids: 0 }] };
          const { drawn } = section(spec).layers[0]!;
          expect(Math.abs(drawn.pieces / (share * drawn.cell) - 1)).toBeLessThan(0.02);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('draws nothing of a layer outside the layer', () => {
    for (const [name, spec] of all) {
      const drawing = section(spec);
      for (const layer of drawing.layers) {
        const marks = layerMarks(spec, layer.id).filter((mark) => !(mark.tag === 'rect')); // straps cross the edge on purpose
        for (const flat of flatten(marks)) {
          if (flat.kind !== 'path') continue;
          for (const [x, y] of pathPoints(flat.d)) {
            expect(x, name).toBeGreaterThan(-1.5);
            expect(x, name).toBeLessThan(layer.x1 - layer.x0 + 1.5);
            expect(y, name).toBeGreaterThan(-1.5);
            expect(y, name).toBeLessThan(layer.y1 - layer.y0 + 1.5);
          }
        }
      }
    }
  });

  it('is the same picture for the same bar, and moves without redrawing what lies above a changed layer', () => {
    expect(section(heavyTop)).toEqual(section({ ...heavyTop }));
    const before = layerMarks(classic, 'inlay');
    const [nougat, inlay] = classic.layers as [SectionSpec['layers'][number], SectionSpec['layers'][number]];
    const after = layerMarks({ ...classic, layers: [{ ...nougat, thickness: 7 }, inlay] }, 'inlay');
    after.forEach((mark, at) => expect(mark).toBe(before[at]));
  });

  it('keeps the bubbles a growing layer already has', () => {
    const rings = (thickness: number): string[] => {
      const spec: SectionSpec = { ...nougatOnly, layers: [{ ...nougatOnly.layers[0]!, air: 0.3, thickness }] };
      return layerMarks(spec, 'light').flatMap((mark) =>
        mark.tag === 'path' ? [...mark.d.matchAll(/M(\S+) \S+?a/g)].map(([, x]) => x!) : [],
      );
    };
    const now = new Set(rings(6.2));
    const kept = rings(6).filter((x) => now.has(x)).length;
    expect(kept / rings(6).length).toBeGreaterThan(0.9);
  });

  it('hatches a computed excess in act and draws a measured one as a solid line; without excess there is no act', () => {
    const inks = (spec: SectionSpec): { act: boolean; hatch: boolean } => {
      const act = flatten(section(spec).marks).filter((flat) => flat.kind === 'path' && (flat.stroke === 'act' || flat.fill === 'act'));
      return { act: act.length > 0, hatch: act.some((flat) => flat.kind === 'path' && (flat.d.match(/M/g)?.length ?? 0) > 20) };
    };
    expect(inks(heavyTop)).toEqual({ act: true, hatch: true });
    expect(inks(lopsided)).toEqual({ act: true, hatch: false });
    expect(inks(classic)).toEqual({ act: false, hatch: false });
  });

  it('tells how many times life size it is drawn', () => {
    expect(section(classic).timesLifeSize).toBeCloseTo(24 / (96 / 25.4), 6);
  });

  it('shows the long side with the same heights', () => {
    const side = sideView({ ...classic, scale: 6 }, 102.8, 1.41);
    expect(side.box.w).toBeCloseTo(102.8 * 6, 6);
    expect(side.heightMm).toBeCloseTo(section(classic).heightMm, 9);
    expect(countMarks(side.marks).pieces).toBeLessThan(2500);
  });

  it('refuses what cannot be drawn and names the place', () => {
    const first = classic.layers[0]!;
    expect(() => section({ ...classic, layers: [{ ...first, thickness: -1 }] })).toThrow(/layers\[0\] \(nougat\)\.thickness is -1/);
    expect(() => section({ ...classic, layers: [{ ...first, air: NaN }] })).toThrow(DrawingError);
    expect(() => section({ ...classic, layers: [] })).toThrow(/number of layers is 0/);
    expect(() => section({ ...classic, scale: Infinity })).toThrow(DrawingError);
  });
});
