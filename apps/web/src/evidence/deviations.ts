import { circle, line, slanted, path, wedge, type Mark } from '@barwright/drawing';
import type { EvidenceRow } from '../lib/api.js';

/** Deviation over tolerance, signed; nothing where there is no number to compare. */
export function strain({ deviation, tolerance, expected, computed }: EvidenceRow): number | undefined {
  if (deviation === null || typeof expected === 'string' || typeof computed === 'string') return undefined;
  if (deviation === 0) return 0;
  return tolerance > 0 ? deviation / tolerance : Math.sign(deviation) * 2;
}

const reach = 1.7;

/** The checks of one model on the window of what their sources state: a ring for each, a wedge for what lies outside. */
export function deviationStrip(rows: readonly EvidenceRow[], width: number): readonly Mark[] {
  const y = 12;
  const at = (x: number) => width / 2 + (Math.max(-reach, Math.min(reach, x)) / reach) * (width / 2 - 8);
  const marks: Mark[] = [
    path(slanted(at(-1), at(1), y), { stroke: 'rule', width: 1 }),
    line(at(-1), y - 6, at(-1), y + 6, { stroke: 'ink', width: 1.6 }),
    line(at(1), y - 6, at(1), y + 6, { stroke: 'ink', width: 1.6 }),
  ];
  const out: Mark[] = [];
  for (const row of rows) {
    const x = strain(row);
    if (x === undefined) continue;
    if (row.inside) marks.push(circle(at(x), y, 3.4, { stroke: 'ink', fill: 'paper', width: 1.3 }));
    else out.push(wedge(at(x), y + 4, 10));
  }
  return [...marks, ...out];
}
