import { beanClass, chanceLotExceeds, gradeCutTest, planAcceptance, type AflatoxinTest, type CutTestResult } from '@barwright/science';
import type { LotResult } from './lot-results.js';

/** Grade of a cocoa lot by its cut test, with what the sample leaves open. */
export interface BeanGrade {
  readonly beans: number;
  /** Best grade that the classes reported allow; with a class missing it is not settled. */
  readonly grade: CutTestResult['grade'];
  readonly settled: boolean;
  readonly doubtful: boolean;
  /** Share by count with its exact binomial interval (95 %). */
  readonly shares: readonly {
    readonly name: string;
    readonly counted: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  }[];
  readonly missing: readonly string[];
  /** Beans per 100 g, size class, g a bean. */
  readonly count?: number;
  readonly size?: 'large' | 'medium' | 'small';
  readonly beanMass?: number;
  readonly said: readonly string[];
}

const faults = [
  ['mouldy', /mould|mold/i, 'mouldy'],
  ['slaty', /slat/i, 'slaty'],
  ['defective', /insect|germinat|flat|defect|other/i, 'insect-damaged, germinated or flat'],
] as const;

/** Cut test and bean count of a lot; undefined where neither was reported. */
export function beanGrade(results: readonly LotResult[]): BeanGrade | undefined {
  const found = faults.map(([key, name, words]) => ({
    key,
    words,
    result: results.find((result) => name.test(result.name) && result.value.dimension === 'fraction'),
  }));
  const count = results.find(({ name, value }) => /count/i.test(name) && value.dimension === 'count per mass');
  if (!count && found.every(({ result }) => !result)) return undefined;
  const by = found.map(({ result }) => /(\d+) beans/.exec(result?.by ?? '')?.[1]).find(Boolean);
  const beans = by ? Number(by) : 300;
  const said: string[] = [];
  if (!by) said.push('The number of beans cut is not written; 300 is taken (ISO 1114).');
  const counted = found.map(({ result }) => Math.round((result?.value.value ?? 0) * beans));
  found.forEach(({ result, words }, i) => {
    if (result && Math.abs(counted[i]! / beans - result.value.value) > 0.0005)
      said.push(`${result.value.text} ${words} is no whole number of ${beans} beans; ${counted[i]} is the nearest.`);
  });
  const test = gradeCutTest({ beans, mouldy: counted[0]!, slaty: counted[1]!, defective: counted[2]! });
  const missing = found.filter(({ result }) => !result).map(({ words }) => words);
  const perHundred = count && count.value.value / 10;
  return {
    beans,
    grade: test.grade,
    settled: missing.length === 0,
    doubtful: test.doubtful,
    shares: found.flatMap(({ key, words, result }, i) => {
      if (!result) return [];
      const { share, interval } = test.shares[key];
      return [{ name: words, counted: counted[i]!, share, low: interval.low, high: interval.high }];
    }),
    missing,
    ...(perHundred ? { count: perHundred, size: beanClass(perHundred), beanMass: 100 / perHundred } : {}),
    said,
  };
}

/** What is assumed of an aflatoxin test and of lots before it. */
export interface AflatoxinBelief {
  /** g of the sample that is ground, and of the portion that is tested. */
  readonly sampleMass: number;
  readonly portionMass: number;
  /** Median of such lots, µg/kg, and spread (standard deviation of the logarithm), before the test. */
  readonly priorMedian: number;
  readonly priorSpread: number;
}

/** Large laboratory sample and a belief about lots of a careful supplier; both are assumptions, common practice, no source. */
export const usualBelief: AflatoxinBelief = { sampleMass: 20_000, portionMass: 100, priorMedian: 1, priorSpread: 1.5 };

/** What an aflatoxin result says about the whole lot. */
export interface AflatoxinOdds {
  readonly what: string;
  /** µg/kg */
  readonly result: number;
  readonly limit: number;
  /** Probability that the mean of the lot is above the limit, given result and belief. */
  readonly chanceAbove: number;
  /** The same where such lots are believed three times cleaner and three times dirtier: how much the answer rests on the belief. */
  readonly chanceRange: readonly [number, number];
  /** Probability that a lot of that true mean passes one such test: the operating characteristic. */
  readonly acceptance: readonly { readonly mean: number; readonly chance: number }[];
  readonly belief: AflatoxinBelief;
}

/** Odds for the total, whose scatter between samples is published; B1 alone where the total was not measured. */
export function aflatoxinOdds(results: readonly LotResult[], belief: AflatoxinBelief): readonly AflatoxinOdds[] {
  const measured = results.filter(({ name, limit }) => /aflatoxin/i.test(name) && limit?.high !== undefined);
  const used = measured.find(({ name }) => /total/i.test(name)) ?? measured[0];
  if (!used) return [];
  const [result, most] = [1e9 * used.value.value, 1e9 * used.limit!.high!];
  const test: AflatoxinTest = { sampleMass: belief.sampleMass, portionMass: belief.portionMass, analyses: 1, limit: most, samples: 1 };
  const chance = (times: number) => chanceLotExceeds('shelled peanut', result, test, most, times * belief.priorMedian, belief.priorSpread);
  return [
    {
      what: used.name,
      result,
      limit: most,
      chanceAbove: chance(1),
      chanceRange: [chance(1 / 3), chance(3)],
      acceptance: [0.5, 1, 2, 4].map((times) => ({ mean: times * most, chance: planAcceptance('shelled peanut', times * most, test) })),
      belief,
    },
  ];
}
