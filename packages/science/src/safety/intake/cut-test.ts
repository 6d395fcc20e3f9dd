import { BadInput } from '../../errors.js';
import { binomialCdf, clopperPearson, type Interval } from '../../statistics/counts.js';
import { cutTestGrades } from '../data/cocoa-beans.js';

export interface CutTest {
  /** Beans cut: 300 in the standard (iso-1114-1977). */
  readonly beans: number;
  /** Each bean is counted once, in its worst class: mouldy before slaty before the rest. */
  readonly mouldy: number;
  readonly slaty: number;
  /** Insect-damaged, germinated or flat. */
  readonly defective: number;
}

export type CutTestClass = 'mouldy' | 'slaty' | 'defective';
const classes: readonly CutTestClass[] = ['mouldy', 'slaty', 'defective'];

export interface CutTestResult {
  /** Best grade of which all three limits hold; 'substandard' when neither does. */
  readonly grade: '1' | '2' | 'substandard';
  /** Share by count and its exact interval. */
  readonly shares: Readonly<Record<CutTestClass, { readonly share: number; readonly interval: Interval }>>;
  /** True where an interval crosses the limit of a better or the same grade: another sample may grade differently. */
  readonly doubtful: boolean;
}

/**
 * Grade of a cocoa lot by its cut test, with exact (Clopper-Pearson) intervals of the shares.
 *
 * @throws BadInput when counts are not whole, negative, or exceed the beans cut
 */
export function gradeCutTest(test: CutTest, confidence = 0.95): CutTestResult {
  const total = test.mouldy + test.slaty + test.defective;
  for (const key of ['beans', ...classes] as const) {
    if (!Number.isInteger(test[key]) || test[key] < 0)
      throw new BadInput(`Cut test, ${key} is ${test[key]}, but a whole number of beans is expected`);
  }
  if (test.beans < 1 || total > test.beans)
    throw new BadInput(`Cut test counts ${total} faulty beans among ${test.beans} cut; each bean counts once`);
  const share = (key: CutTestClass) => ({ share: test[key] / test.beans, interval: clopperPearson(test[key], test.beans, confidence) });
  const shares = { mouldy: share('mouldy'), slaty: share('slaty'), defective: share('defective') };
  const holds = (grade: 0 | 1): boolean => classes.every((key) => shares[key].share <= cutTestGrades.values[key][grade] + 1e-12);
  const grade = holds(0) ? '1' : holds(1) ? '2' : 'substandard';
  const doubtful = classes.some((key) =>
    cutTestGrades.values[key].some((limit) => shares[key].interval.low <= limit && shares[key].interval.high > limit),
  );
  return { grade, shares, doubtful };
}

/** Probability that a lot of true share p shows more than `limit` (share) in a sample of n beans. */
export function chanceAbove(limit: number, p: number, n = 300): number {
  return 1 - binomialCdf(Math.floor(limit * n + 1e-9), n, p);
}
