import { BadInput, requireRange } from '../../errors.js';
import { codeLetters, singleNormal } from '../data/attribute-plans.js';

const LETTERS = 'ABCDEFGHJKLMNPQR';
export type InspectionLevel = 'I' | 'II' | 'III';

export interface SinglePlan {
  /** Letter used after the arrows were followed. */
  readonly letter: string;
  readonly n: number;
  /** Accepted with at most so many. */
  readonly accept: number;
  /** Rejected with so many or more. */
  readonly reject: number;
}

/** Code letter of a lot size and a general inspection level. */
export function codeLetter(lot: number, level: InspectionLevel = 'II'): string {
  requireRange('lot', lot, [2, Number.MAX_SAFE_INTEGER], 'mil-std-105e');
  const row = codeLetters.values.upTo.findIndex((end) => lot <= end);
  const column = { I: codeLetters.values.levelI, II: codeLetters.values.levelII, III: codeLetters.values.levelIII }[level];
  return LETTERS[column[row]!]!;
}

/**
 * Single sampling plan of normal inspection for a code letter and an acceptable quality level, arrows followed.
 *
 * @param aql - acceptable quality level in per cent, one of the printed steps from 0.010 to 10
 * @throws BadInput for a letter or a level that the table does not have
 * @example singlePlan('J', 1) // n 80, accept 2, reject 3
 */
export function singlePlan(letter: string, aql: number): SinglePlan {
  const { n, aql: steps, diagonal } = singleNormal.values;
  const column = steps.findIndex((step) => Math.abs(step - aql) < 1e-9);
  if (column < 0) throw new BadInput(`AQL is ${aql} %, but the table has ${steps.join(', ')} %`);
  let row = LETTERS.indexOf(letter);
  if (row < 0 || letter.length !== 1)
    throw new BadInput(`Code letter is '${letter}', but one of ${LETTERS.split('').join(', ')} is expected`);
  for (;;) {
    const place = row + column - 14;
    const accept = place < 0 ? -2 : place > 10 ? -1 : diagonal[place]!;
    if (accept >= 0) return { letter: LETTERS[row]!, n: n[row]!, accept, reject: accept + 1 };
    row += accept === -1 ? -1 : 1;
    if (row < 0 || row >= LETTERS.length) throw new BadInput(`The table has no plan for letter ${letter} at AQL ${aql} %`);
  }
}
