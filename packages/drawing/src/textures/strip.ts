import { Kept } from '../geometry/cache.js';
import type { Point } from '../geometry/polygon.js';
import { seeded } from '../geometry/random.js';
import { path, type Mark } from '../mark.js';
import { Pen } from '../pen.js';
import { ringField } from './ring-field.js';
import { straightTrack, type Track } from './track.js';

/** Small textures for ribbons and stacks: one for each kind of material. */
export type Material =
  | 'milk-chocolate'
  | 'dark-chocolate'
  | 'white-chocolate'
  | 'caramel'
  | 'nougat'
  | 'nut'
  | 'cocoa-bean'
  | 'sugar'
  | 'syrup'
  | 'milk'
  | 'fat'
  | 'water'
  | 'dry'
  | 'film'
  | 'wafer'
  | 'biscuit'
  | 'jelly'
  | 'paste'
  | 'plain';

/** What a texture writes on: places (s, v) of a ribbon of a length and width. */
interface Sheet {
  readonly length: number;
  readonly width: number;
  /** A line through places; `smooth` for curves. */
  readonly line: (points: readonly Point[], smooth?: boolean) => void;
  readonly ring: (s: number, v: number, r: number) => void;
  /** An oval turned by `turn` radians, and whatever lines lie in it, in half lengths. */
  readonly oval: (s: number, v: number, a: number, b: number, turn: number, inner?: readonly Point[]) => void;
  readonly dot: (s: number, v: number) => void;
}
interface Style {
  readonly width: number;
  readonly dash?: readonly number[];
  readonly round?: boolean;
  readonly draw: (sheet: Sheet, random: () => number) => void;
}

const rows = (width: number, pitch: number): readonly number[] => {
  const count = Math.max(1, Math.round(width / pitch));
  return Array.from({ length: count }, (_, k) => ((k + 0.5) / count) * width);
};

/** Parallel strokes from edge to edge; `slope` is how far along they lean over the whole width. */
function slants(sheet: Sheet, pitch: number, lean: number): void {
  for (let s = Math.min(0, -lean) + pitch / 2; s < sheet.length + Math.max(0, -lean); s += pitch) {
    // from (s + lean, 0) at the upper edge to (s, width) at the lower, cut to the ribbon's ends
    const at = (v: number): number => s + lean * (1 - v / sheet.width);
    let v0 = 0;
    let v1 = sheet.width;
    const vAt = (target: number): number => (1 - (target - s) / lean) * sheet.width;
    if (lean > 0) {
      if (at(0) > sheet.length) v0 = vAt(sheet.length);
      if (at(sheet.width) < 0) v1 = vAt(0);
    } else {
      if (at(0) < 0) v0 = vAt(0);
      if (at(sheet.width) > sheet.length) v1 = vAt(sheet.length);
    }
    if (v1 - v0 > 0.4)
      sheet.line([
        [at(v0), v0],
        [at(v1), v1],
      ]);
  }
}

function levels(sheet: Sheet, pitch: number): void {
  for (const v of rows(sheet.width, pitch))
    sheet.line([
      [0, v],
      [sheet.length, v],
    ]);
}

function chords(sheet: Sheet, random: () => number, pitch: number): void {
  for (const v of rows(sheet.width, pitch)) {
    for (let s = pitch / 2; s < sheet.length - pitch / 2; s += pitch) {
      const half = Math.min(pitch * 0.42, sheet.width * 0.3);
      const turn = (random() - 0.5) * Math.PI;
      const dv = Math.sin(turn) * half;
      const ds = Math.cos(turn) * half;
      const mid = Math.min(sheet.width - Math.abs(dv), Math.max(Math.abs(dv), v + (random() - 0.5) * pitch * 0.5));
      sheet.line([
        [s - ds, mid - dv],
        [s + ds, mid + dv],
      ]);
    }
  }
}

const styles: Readonly<Record<Material, Style>> = {
  'milk-chocolate': { width: 1.7, draw: (sheet) => slants(sheet, 3.2 / Math.sin((52 * Math.PI) / 180), -sheet.width * 1.28) },
  'dark-chocolate': { width: 2.1, draw: (sheet) => slants(sheet, 3.2 / Math.sin((52 * Math.PI) / 180), -sheet.width * 1.28) },
  'white-chocolate': { width: 0.8, draw: (sheet) => slants(sheet, 4.6 / Math.sin((52 * Math.PI) / 180), -sheet.width * 1.28) },
  caramel: {
    width: 0.95,
    draw: (sheet) => {
      for (const v of rows(sheet.width, 4.2)) {
        const amplitude = Math.min(1.5, sheet.width * 0.12);
        const points: Point[] = [];
        for (let s = 0; s < sheet.length; s += 5.5) points.push([s, v + amplitude * Math.sin((s / 22) * 2 * Math.PI)]);
        points.push([sheet.length, v + amplitude * Math.sin((sheet.length / 22) * 2 * Math.PI)]);
        sheet.line(points, true);
      }
    },
  },
  nougat: {
    width: 0.8,
    draw: (sheet) => {
      const { w, h, rings } = ringField(5, 0, 4.4);
      const narrow = sheet.width < 12;
      for (let k = 0; k < rings.length; k += 3) {
        const r = Math.min(rings[k + 2]!, sheet.width * 0.34);
        for (let s = rings[k]!; s < sheet.length - r - 0.5; s += w) {
          // on a narrow ribbon a ring at the edge moves in, else the ribbon would stay bare
          for (let v = rings[k + 1]!; v < sheet.width + (narrow ? r : -r - 0.5); v += h) {
            if (s <= r + 0.5 || (!narrow && v < r + 0.5)) continue;
            sheet.ring(s, Math.min(sheet.width - r - 0.5, Math.max(r + 0.5, v)), r);
          }
        }
      }
    },
  },
  nut: { width: 0.95, draw: (sheet, random) => ovals(sheet, random, 8, 6.6, 3.1, 2, true) },
  'cocoa-bean': { width: 0.9, draw: (sheet, random) => ovals(sheet, random, 15, 11, 4.6, 2.8, true) },
  sugar: {
    width: 0.85,
    draw: (sheet) => {
      const size = Math.min(1.9, sheet.width * 0.28);
      rows(sheet.width, 4.9).forEach((v, k) => {
        for (let s = 3 + (k % 2) * 3.4; s < sheet.length - size - 0.4; s += 6.8) {
          if (v - size < 0.3 || v + size > sheet.width - 0.3) continue;
          sheet.line([
            [s - size, v],
            [s, v - size],
            [s + size, v],
            [s, v + size],
            [s - size, v],
          ]);
        }
      });
    },
  },
  syrup: { width: 0.8, draw: (sheet) => levels(sheet, 6) },
  milk: {
    width: 1.1,
    draw: (sheet) => {
      rows(sheet.width, 4.5).forEach((v, k) => {
        for (let s = k % 2 === 0 ? 2 : 8; s < sheet.length; s += 12)
          sheet.line([
            [s, v],
            [Math.min(s + 6, sheet.length), v],
          ]);
      });
    },
  },
  fat: { width: 0.7, draw: (sheet) => slants(sheet, 10, Math.max(sheet.width, 4)) },
  water: {
    width: 1.2,
    round: true,
    draw: (sheet) => {
      for (let s = 3; s < sheet.length - 1; s += 5) {
        for (let v = s % 10 < 5 ? 2 : 5; v < sheet.width - 1; v += 7)
          sheet.line([
            [s, v],
            [s, Math.min(v + 3, sheet.width - 1)],
          ]);
      }
    },
  },
  dry: {
    width: 1.6,
    round: true,
    draw: (sheet) => {
      rows(sheet.width, 5).forEach((v, k) => {
        for (let s = 2.5 + (k % 2) * 2.5; s < sheet.length - 1; s += 5) sheet.dot(s, v);
      });
    },
  },
  film: {
    width: 0.5,
    draw: (sheet) => {
      for (const shift of [0, 2.2]) slantsAt(sheet, 9, sheet.width * 0.58, shift);
    },
  },
  wafer: {
    width: 0.8,
    draw: (sheet, random) => {
      const sheets = rows(sheet.width, 7);
      const half = Math.min(1.8, sheet.width * 0.25);
      for (const v of sheets) {
        sheet.line([
          [0, v - half],
          [sheet.length, v - half],
        ]);
        sheet.line([
          [0, v + half],
          [sheet.length, v + half],
        ]);
        for (let s = 2; s < sheet.length - 2; s += 3.4) {
          const lean = (random() - 0.5) * 3;
          sheet.line([
            [s - lean / 2, v - half],
            [s + lean / 2, v + half],
          ]);
        }
      }
    },
  },
  biscuit: { width: 0.9, draw: (sheet, random) => chords(sheet, random, 5) },
  jelly: {
    width: 0.8,
    draw: (sheet) => {
      for (const v of rows(sheet.width, 4)) {
        for (let s = 0; s < sheet.length; s += 54) {
          // one slanting gap of light in every stretch of 54
          const light = s + 24 - ((v * 0.6) % 24);
          const end = Math.min(sheet.length, s + 54);
          sheet.line([
            [s, v],
            [Math.min(end, light), v],
          ]);
          if (light + 7 < end)
            sheet.line([
              [light + 7, v],
              [end, v],
            ]);
        }
      }
    },
  },
  paste: {
    width: 1.1,
    round: true,
    draw: (sheet, random) => {
      for (const v of rows(sheet.width, 3.6)) {
        for (let s = 1.5 + random() * 3; s < sheet.length - 1; s += 3 + random() * 2.4)
          sheet.dot(s, Math.min(sheet.width - 0.8, Math.max(0.8, v + (random() - 0.5) * 1.6)));
      }
    },
  },
  plain: { width: 0.8, draw: () => undefined },
};

function slantsAt(sheet: Sheet, pitch: number, lean: number, shift: number): void {
  const moved: Sheet = {
    ...sheet,
    line: (points) => sheet.line(points.map(([s, v]): Point => [Math.min(sheet.length, Math.max(0, s + shift)), v])),
  };
  slants(moved, pitch, Math.max(lean, 2));
}

function ovals(sheet: Sheet, random: () => number, along: number, across: number, a: number, b: number, cleft: boolean): void {
  const lanes = rows(sheet.width, across);
  const size = Math.min(1, (sheet.width * 0.44) / b);
  lanes.forEach((v, k) => {
    for (let s = along * (0.6 + 0.5 * (k % 2)); s < sheet.length - a * size - 0.5; s += along) {
      const turn = (random() - 0.5) * 1.1;
      const grow = size * (0.82 + 0.3 * random());
      const reach = Math.hypot(a * grow * Math.sin(turn), b * grow * Math.cos(turn));
      const room = Math.max(0, Math.min(v, sheet.width - v) - reach - 0.3);
      const at =
        reach + 0.3 > Math.min(v, sheet.width - v)
          ? Math.min(sheet.width - reach - 0.3, Math.max(reach + 0.3, v))
          : v + (random() - 0.5) * Math.min(room, 1.6) * 2;
      sheet.oval(
        s,
        at,
        a * grow,
        b * grow,
        turn,
        cleft && random() < 0.6
          ? [
              [-0.8, 0.12],
              [0, -0.2],
              [0.8, 0.05],
            ]
          : undefined,
      );
    }
  });
}

const drawn = new Kept<string>(160);

/** The texture of a material on a ribbon, as one path already cut to it; nothing for `plain`. */
export function strip(material: Material, track: Track, id?: string): Mark[] {
  const style = styles[material];
  if (material === 'plain' || track.width < 1.2 || track.length < 1.5) return [];
  const key = `${material}/${track.width}/${track.length}/${JSON.stringify(track.parts)}`;
  const d = drawn.get(key, () => write(style, track));
  if (d === '') return [];
  return [
    path(d, { stroke: 'draw', width: style.width, ...(style.round === true ? { cap: 'round' } : {}), ...(id === undefined ? {} : { id }) }),
  ];
}

/** The texture of a material in an upright box. */
export function boxTexture(material: Material, x: number, y: number, w: number, h: number, id?: string): Mark[] {
  return strip(material, straightTrack(x, y, w, h), id);
}

function write(style: Style, track: Track): string {
  const pen = new Pen();
  const on = (points: readonly Point[]): Point[] => points.map(([s, v]) => track.at(s, v));
  const dense = (points: readonly Point[]): Point[] => {
    if (track.straight) return on(points);
    const out: Point[] = [];
    points.forEach((p, i) => {
      const before = points[i - 1];
      if (before !== undefined) {
        const steps = Math.ceil(Math.abs(p[0] - before[0]) / 6);
        for (let k = 1; k < steps; k += 1)
          out.push([before[0] + ((p[0] - before[0]) * k) / steps, before[1] + ((p[1] - before[1]) * k) / steps]);
      }
      out.push(p);
    });
    return on(out);
  };
  const sheet: Sheet = {
    length: track.length,
    width: track.width,
    line: (points, smooth = false) => (smooth ? pen.smooth(on(points)) : pen.through(dense(points))),
    ring: (s, v, r) => {
      const [x, y] = track.at(s, v);
      pen.ring(x, y, r);
    },
    dot: (s, v) => {
      const [x, y] = track.at(s, v);
      pen.segment(x, y, x + 0.01, y);
    },
    oval: (s, v, a, b, turn, inner) => {
      const [x, y] = track.at(s, v);
      const [x2, y2] = track.at(Math.min(track.length, s + 0.1), v);
      const heading = Math.atan2(y2 - y, x2 - x) + turn;
      const cos = Math.cos(heading);
      const sin = Math.sin(heading);
      const at = (u: number, w: number): Point => [x + u * a * cos - w * b * sin, y + u * a * sin + w * b * cos];
      const k = 0.5523;
      const p = [
        at(-1, 0),
        at(-1, -k),
        at(-k, -1),
        at(0, -1),
        at(k, -1),
        at(1, -k),
        at(1, 0),
        at(1, k),
        at(k, 1),
        at(0, 1),
        at(-k, 1),
        at(-1, k),
      ] as const;
      pen.move(...p[0]);
      pen
        .cubic(...p[1], ...p[2], ...p[3])
        .cubic(...p[4], ...p[5], ...p[6])
        .cubic(...p[7], ...p[8], ...p[9])
        .cubic(...p[10], ...p[11], ...p[0])
        .close();
      if (inner !== undefined) pen.smooth(inner.map(([u, w]) => at(u, w)));
    },
  };
  style.draw(sheet, seeded(23));
  return pen.d;
}
