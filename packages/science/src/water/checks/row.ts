import type { Check } from '../../check.js';

/** What the rows of one source have in common. */
export type Origin = Pick<Check, 'kind' | 'source' | 'standing'> & { readonly note?: string };
export type Row = readonly [name: string, inputs: Check['inputs'], expected: Check['expected'], tolerance: number];

/** Checks of one output of one model from one source. */
export function checksOf(model: string, output: string, origin: Origin, rows: readonly Row[]): Check[] {
  return rows.map(([name, inputs, expected, tolerance]) => ({
    id: `${model}.${name}`,
    model,
    inputs,
    output,
    expected,
    tolerance,
    ...origin,
  }));
}
