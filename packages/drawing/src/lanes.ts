import { requireBetween, requireFinite } from './errors.js';
import { group, line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import { boxTexture, type Material } from './textures/strip.js';

export interface LanesSpec {
  readonly width: number;
  readonly height: number;
  /** One value per lane, away from the target; missing lanes are left open. */
  readonly values: readonly (number | undefined)[];
  readonly material: Material;
  /** Hairs above and below the target, in the unit of the values. */
  readonly hairs: number;
  readonly hairText?: readonly [above: string, below: string];
  readonly targetText?: string;
  /** Lanes, from 0, that are outside by themselves, with a word each. */
  readonly outside?: readonly { readonly lane: number; readonly text: string }[];
  /** Machines behind the lanes: first and last lane, a name, and their mean drawn as act if guilty. */
  readonly groups?: readonly { readonly from: number; readonly to: number; readonly text: string; readonly guilty?: boolean }[];
}
export interface LanesDrawing extends Drawing {
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

/** The lanes side by side, each a column away from the target in the texture of what is measured. */
export function lanes(spec: LanesSpec): LanesDrawing {
  requireBetween('values, number of lanes', spec.values.length, 1, 400);
  requireBetween('hairs', spec.hairs, 1e-9, Infinity);
  const left = 54;
  const right = spec.width - 4;
  const foot = spec.groups === undefined ? 6 : 34;
  const most = Math.max(spec.hairs * 1.25, ...spec.values.map((value) => Math.abs(value ?? 0)));
  const top = (spec.outside ?? []).length > 0 ? 30 : 8;
  const zero = (top + spec.height - foot) / 2;
  const scale = (zero - top) / most;
  const pitch = (right - left) / spec.values.length;
  const w = Math.min(20, pitch * 0.5);
  const x = (lane: number): number => left + (lane + 0.5) * pitch;
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  for (const [side, words] of [
    [1, spec.hairText?.[0]],
    [-1, spec.hairText?.[1]],
  ] as const) {
    const y = zero - side * spec.hairs * scale;
    marks.push(line(left, y, right, y, { stroke: 'hair', width: 1 }));
    if (words !== undefined) marks.push(text(left - 10, y + 4.5, words, 13, { anchor: 'end', fill: 'ink-2' }));
  }
  spec.values.forEach((value, lane) => {
    hits.push({ id: String(lane), box: { x: x(lane) - pitch / 2, y: top, w: pitch, h: spec.height - foot - top } });
    if (value === undefined) {
      marks.push(rect(x(lane) - w / 2, zero - 8, w, 16, { stroke: 'ink-2', width: 1.1, dash: [3, 2.4] }));
      return;
    }
    requireFinite(`values[${lane}]`, value);
    const h = Math.abs(value) * scale;
    if (h < 0.4) return;
    const y = value > 0 ? zero - h : zero;
    marks.push(
      group([
        rect(x(lane) - w / 2, y, w, h, { fill: 'coat' }),
        ...boxTexture(spec.material, x(lane) - w / 2, y, w, h),
        rect(x(lane) - w / 2, y, w, h, { stroke: 'ink', width: 1 }),
      ]),
    );
  });
  marks.push(line(left, zero, right, zero, { stroke: 'ink', width: 1.2 }));
  if (spec.targetText !== undefined) marks.push(text(left - 10, zero + 5, spec.targetText, 14, { anchor: 'end', weight: 560 }));
  for (const out of spec.outside ?? []) {
    const value = spec.values[out.lane] ?? 0;
    const y = zero - Math.max(0, value) * scale - 3;
    marks.push(wedge(x(out.lane), y, 10), text(x(out.lane), y - 15, out.text, 14, { anchor: 'middle', weight: 560, fill: 'act' }));
  }
  for (const set of spec.groups ?? []) {
    const x0 = x(set.from) - pitch * 0.42;
    const x1 = x(set.to) + pitch * 0.42;
    const y = spec.height - foot + 4;
    marks.push(
      path(
        new Pen()
          .move(x0, y - 4)
          .to(x0, y + 2)
          .to(x1, y + 2)
          .to(x1, y - 4).d,
        { stroke: 'rule', width: 1.2 },
      ),
    );
    marks.push(text((x0 + x1) / 2, y + 20, set.text, 14, { anchor: 'middle', fill: 'ink-2' }));
    if (set.guilty !== true) continue;
    const own = spec.values.slice(set.from, set.to + 1).filter((value) => value !== undefined);
    const mean = own.reduce((sum, value) => sum + value, 0) / Math.max(1, own.length);
    marks.push(line(x0 - pitch * 0.2, zero - mean * scale, x1 + pitch * 0.2, zero - mean * scale, { stroke: 'act', width: 2 }));
  }
  return { marks, width: spec.width, height: spec.height, hits };
}
