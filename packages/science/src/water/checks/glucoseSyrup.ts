import type { Check } from '../../check.js';

function row(
  id: string,
  inputs: Check['inputs'],
  output: string,
  expected: number,
  tolerance: number,
  rest: Pick<Check, 'kind' | 'source' | 'standing' | 'note'>,
): Check {
  return {
    id: `glucose_syrup.composition.${id}`,
    model: 'glucose_syrup.composition',
    inputs: { solids: 1, ...inputs },
    output,
    expected,
    tolerance,
    ...rest,
  };
}
const spectrum = {
  kind: 'published',
  source: 'syrup-42-composition',
  standing: 'found',
  note: 'per cent of solids; the row the table was completed with',
} as const;
const definition = { kind: 'published', source: 'dextrose-equivalent', standing: 'memory', note: 'number average 18016/DE' } as const;

export const glucoseSyrupChecks: readonly Check[] = [
  row('glucose_42', { dextrose_equivalent: 42 }, 'glucose', 0.19, 0.02, spectrum),
  row('maltose_42', { dextrose_equivalent: 42 }, 'maltose', 0.14, 0.02, spectrum),
  row('higher_42', { dextrose_equivalent: 42 }, 'higher_saccharides', 0.67, 0.02, spectrum),
  row('molar_mass_42', { dextrose_equivalent: 42 }, 'molar_mass', 429, 1, definition),
  row('molar_mass_100', { dextrose_equivalent: 100 }, 'molar_mass', 180.16, 0.1, definition),
];
