import type { Session } from '@barwright/chain';
import type { BatchAnswer, LayerSlump } from '@barwright/line';
import { sagging } from '@barwright/drawing';
import type { FigureTable, Plate } from '../trial-protocol.js';
import { n, type Words } from './words.js';

export const percent = (x: number, digits = 1): string => `${n(100 * x, digits)} %`;

/** '65 min', '5.2 h', '3.1 d' */
export function duration(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'never';
  if (seconds < 5400) return `${n(seconds / 60, 0)} min`;
  return seconds < 172_800 ? `${n(seconds / 3600, 1)} h` : `${n(seconds / 86_400, 1)} d`;
}

/** What a batch does, row by row. */
export function changesTable(words: Words, answer: BatchAnswer, before: Session, after: Session): FigureTable {
  return {
    caption: `What ${percent(answer.moisture, 2)} instead of ${percent(answer.aim, 2)} does`,
    head: ['as it should be', 'this batch'],
    rows: answer.changes.flatMap(({ id, meaning }) => words.chainRow(id, before, after, meaning)),
  };
}

/** Beside the layers it touches. */
export function neighboursTable({ neighbours, component }: BatchAnswer): readonly FigureTable[] {
  return neighbours.map(({ other, step, rest }) => ({
    caption: `Beside the ${other}, and at rest with it alone`,
    head: ['as it should be', 'this batch'],
    rows: [
      {
        name: `step in water activity${step.limit === undefined ? '' : `, at most ${n(step.limit, 3)}`}`,
        cells: [{ text: n(step.before, 3) }, { text: n(step.after, 3), act: step.limit !== undefined && step.after > step.limit }],
      },
      { name: 'water activity at rest', cells: [{ text: n(rest.before.activity, 3) }, { text: n(rest.after.activity, 3) }] },
      { name: `moisture of ${component} at rest`, cells: [{ text: percent(rest.before.own) }, { text: percent(rest.after.own) }] },
      { name: `moisture of ${other} at rest`, cells: [{ text: percent(rest.before.other) }, { text: percent(rest.after.other) }] },
    ],
  }));
}

/** How the layer would sag, before and after. */
export function slumpPlate(slump: BatchAnswer['slump'], width: number): readonly Plate[] {
  if (!slump) return [];
  const half = (one: LayerSlump, name: string) => ({
    name,
    edges: Array.from(one.shape.x, (x) => 1000 * x),
    heights: Array.from(one.shape.height, (h) => 1000 * h),
  });
  const days = n(slump.after.time / 86_400, 0);
  const drawn = sagging({
    width,
    start: { width: 1000 * slump.after.start.width, height: 1000 * slump.after.start.height },
    shapes: [half(slump.before, 'as it should be'), half(slump.after, 'this batch')],
  });
  return [
    {
      name: `The ${slump.after.layer} layer after ${days} days if nothing but its viscosity held it: the foot ${n(1000 * slump.before.runOut, 1)} mm out as it should be, ${n(1000 * slump.after.runOut, 1)} mm for this batch`,
      marks: drawn.marks,
      width: drawn.width,
      height: drawn.height,
      caption: `After ${days} days, nothing holding it but its viscosity: the first millimetre takes ${duration(slump.before.toOneMillimetre)} as it should be, ${duration(slump.after.toOneMillimetre)} for this batch. Coat, grain and network slow both; compare the two.`,
    },
  ];
}
