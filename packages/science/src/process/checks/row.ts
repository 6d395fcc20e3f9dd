import type { Check } from '../../check.js';

/** What several checks of one table have in common. */
export type Common = Pick<Check, 'model' | 'kind' | 'source' | 'standing'>;
/** id, inputs, output, expected, tolerance, note. */
export type Row = readonly [
  id: string,
  inputs: Check['inputs'],
  output: string,
  expected: Check['expected'],
  tolerance: number,
  note?: string,
];

/** Checks of one model against one source, a row each. */
export function rows(common: Common, list: readonly Row[]): Check[] {
  return list.map(([id, inputs, output, expected, tolerance, note]) => ({
    ...common,
    id,
    inputs,
    output,
    expected,
    tolerance,
    ...(note === undefined ? {} : { note }),
  }));
}
