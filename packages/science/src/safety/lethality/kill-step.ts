import { studiesBeside, type StudyBeside } from './beside.js';
import { duration, INSIDE, markRows, OUTSIDE, UNKNOWN, type MarkOptions, type Rows } from './kill-step-rows.js';
import { clockFaults, type ClockFaults, type Gap } from './log-faults.js';
import {
  killStepQuantities,
  columnOf,
  say,
  scales,
  type KillStepQuantity,
  type KillStepValidation,
  type RoastLog,
} from './roast-record.js';

export type KillStepVerdict = 'proven' | 'not proven' | 'cannot tell';

/** A stretch of the log with one verdict. */
export interface KillStepStretch {
  readonly verdict: KillStepVerdict;
  /** s on the clock of the log: the stretch itself. */
  readonly from: number;
  readonly to: number;
  /** Product that leaves the roaster until then was inside during the stretch (continuous roasters). */
  readonly exitTo: number;
  readonly reason: string;
}

export interface KillStepJudgement {
  readonly verdict: KillStepVerdict;
  /** One sentence: why. */
  readonly reason: string;
  /** Every reason found, the deciding ones first; one sentence each. */
  readonly reasons: readonly string[];
  /** The validation judged against; the one that came nearest when there are several. */
  readonly validation?: string;
  readonly stretches: readonly KillStepStretch[];
  readonly rows: { readonly proven: number; readonly notProven: number; readonly cannotTell: number };
  /** Published studies with their own conditions, as plausibility. They do not enter the verdict. */
  readonly beside: readonly StudyBeside[];
}

export interface JudgeOptions extends MarkOptions {
  /** Longest interval allowed between readings, s. Left out: one and a half times the median, at least 30 s. */
  readonly longestInterval?: number;
}

/** What an air roaster must be validated by, all of it together. */
const airBasis: readonly KillStepQuantity[] = ['airTemperature', 'airVelocity', 'bedDepth', 'residence', 'rawMoisture'];
/** What a validation by the temperature of the coldest product must state. */
const productBasis: readonly KillStepQuantity[] = ['productTemperature', 'residence'];

/**
 * Whether a log proves the kill step of its roaster.
 *
 * proven: every reading lies inside every limit of one validation of this very roaster. not proven: there is no such document,
 * it does not name every limit, or one reading lies outside one limit. cannot tell: nothing lies outside, but the log has a gap,
 * a stuck sensor, a broken clock, a value that may be in another unit, or is empty. There is no credit for being close, none
 * for interpolating between validations, and none for colour or published studies.
 *
 * @param validations - one or several; undefined or [] when there is none
 * @throws BadInput where a column's length differs from the times
 */
export function judgeKillStep(
  validations: KillStepValidation | readonly KillStepValidation[] | undefined,
  log: RoastLog,
  options: JudgeOptions = {},
): KillStepJudgement {
  const all = validations === undefined ? [] : 'id' in validations ? [validations] : validations;
  const beside = studiesBeside(log);
  const document = usableDocuments(all, log);
  if (typeof document === 'string') return refusal(document, log, beside);
  if (log.time.length === 0)
    return { ...empty('cannot tell', 'The log is empty: no reading shows what this product met.'), beside, validation: document[0]!.id };
  const faults = clockFaults(log, options.longestInterval);
  const judged = document.map((validation) => summary(validation, log, faults, options));
  const rank = { proven: 0, 'cannot tell': 1, 'not proven': 2 } as const;
  const best = judged.reduce((a, b) =>
    rank[b.verdict] < rank[a.verdict] || (b.verdict === a.verdict && b.rows.proven > a.rows.proven) ? b : a,
  );
  return { ...best, beside };
}

function usableDocuments(all: readonly KillStepValidation[], log: RoastLog): readonly KillStepValidation[] | string {
  if (all.length === 0) return `There is no validation of roaster ${log.roaster}: a kill step without a document is not proven.`;
  const own = all.filter((v) => v.kind === 'plant');
  if (own.length === 0)
    return `${all[0]!.id} is a published study; only a validation of roaster ${log.roaster} itself can prove its kill step.`;
  const here = own.filter((v) => v.roaster === log.roaster);
  if (here.length === 0) return `${own[0]!.id} is a validation of roaster ${own[0]!.roaster}, not of ${log.roaster}.`;
  const whole = here.filter((v) => missingLimits(v).length === 0);
  if (whole.length === 0) {
    const names = missingLimits(here[0]!).map((q) => scales[q].name.toLowerCase());
    return `${here[0]!.id} names no limit for ${names.join(', ')}; all of its conditions must be stated together.`;
  }
  return whole;
}

/** Quantities for which a validation should state a limit but does not. */
export function missingLimits(validation: KillStepValidation): readonly KillStepQuantity[] {
  const basis = validation.limits.productTemperature ? productBasis : airBasis;
  return basis.filter((q) => {
    const limit = validation.limits[q];
    if (!limit) return true;
    if (q === 'bedDepth') return !(limit.max! > 0);
    return q === 'rawMoisture' ? limit.min === undefined && limit.max === undefined : limit.min === undefined;
  });
}

function empty(verdict: KillStepVerdict, reason: string): KillStepJudgement {
  return { verdict, reason, reasons: [reason], stretches: [], rows: { proven: 0, notProven: 0, cannotTell: 0 }, beside: [] };
}

function refusal(reason: string, log: RoastLog, beside: readonly StudyBeside[]): KillStepJudgement {
  const n = log.time.length;
  const stretches: KillStepStretch[] =
    n === 0 ? [] : [{ verdict: 'not proven', from: log.time[0]!, to: log.time[n - 1]!, exitTo: log.time[n - 1]!, reason }];
  return { ...empty('not proven', reason), stretches, rows: { proven: 0, notProven: n, cannotTell: 0 }, beside };
}

function summary(validation: KillStepValidation, log: RoastLog, faults: ClockFaults, options: JudgeOptions): KillStepJudgement {
  const { rows, gapsMatter, held } = markRows(validation, log, faults, options);
  const mattering = gapsMatter ? faults.gaps : [];
  const stretches = stretchesOf(rows, log, mattering, longestStay(log, validation));
  const count = [0, 0, 0];
  for (let i = 0; i < rows.n; i++) count[rows.state[i]!]!++;
  const gaps = mattering.map((gap) => gapText(gap.length, gap.before));
  const outside = [...rows.hits].filter((c) => rows.levels[c] === OUTSIDE).map((c) => rows.texts[c]!);
  const unknown = [...rows.hits].filter((c) => rows.levels[c] === UNKNOWN).map((c) => rows.texts[c]!);
  if (gaps.length > 0) unknown.unshift(gaps.length === 1 ? gaps[0]! : `${gaps.length} gaps in the log; the first: ${gaps[0]!}`);
  const verdict: KillStepVerdict = outside.length > 0 ? 'not proven' : unknown.length > 0 ? 'cannot tell' : 'proven';
  const reasons = verdict === 'proven' ? [provenText(rows.n, validation, held)] : [...outside, ...unknown];
  return {
    verdict,
    reason: reasons[0]!,
    reasons,
    validation: validation.id,
    stretches,
    rows: { proven: count[INSIDE]!, notProven: count[OUTSIDE]!, cannotTell: count[UNKNOWN]! },
    beside: [],
  };
}

function provenText(n: number, validation: KillStepValidation, held: number | undefined): string {
  const names = killStepQuantities.filter((q) => validation.limits[q]).map((q) => scales[q].name.toLowerCase());
  if (held !== undefined) {
    const { productTemperature, residence } = validation.limits;
    const hold = `${say('productTemperature', productTemperature!.min!)} for ${duration(residence!.min!)}`;
    return `The product stayed hot for ${duration(held)} without a break, as ${validation.id} of this roaster asks (${hold}); its other limits hold in every reading.`;
  }
  const which = n === 1 ? 'The one reading lies' : `All ${n} readings lie`;
  return `${which} inside every limit of ${validation.id} of this roaster (${names.join(', ')}).`;
}

/** Longest time in the roaster that the log shows, for the product caught inside a bad stretch. */
function longestStay(log: RoastLog, validation: KillStepValidation): number {
  const column = columnOf(log, 'residence');
  const least = validation.limits.residence?.min ?? 0;
  if (!column) return 0;
  let longest = least;
  for (let i = 0; i < log.time.length; i++) if (column[i]! > longest && column[i]! <= scales.residence.possible[1]) longest = column[i]!;
  return longest;
}

function stretchesOf(rows: Rows, log: RoastLog, gaps: readonly Gap[], stay: number): KillStepStretch[] {
  const words: readonly KillStepVerdict[] = ['proven', 'cannot tell', 'not proven'];
  const stretches: KillStepStretch[] = [];
  const { time } = log;
  let gap = 0;
  let from = 0;
  const close = (to: number, end: number): void => {
    const state = rows.state[from]!;
    const cause = rows.cause[from]!;
    const reason = state === INSIDE ? '' : rows.texts[cause]!;
    stretches.push({ verdict: words[state]!, from: time[from]!, to: end, exitTo: end + (state === INSIDE ? 0 : stay), reason });
    from = to + 1;
  };
  for (let i = 0; i < rows.n; i++) {
    const isGap = gap < gaps.length && gaps[gap]!.before === i;
    const last = i === rows.n - 1;
    if (isGap || last || rows.state[i + 1] !== rows.state[i] || (rows.state[i] !== INSIDE && rows.cause[i + 1] !== rows.cause[i])) {
      close(i, last || isGap ? time[i]! : time[i + 1]!);
    }
    if (isGap) {
      const { length, before, after } = gaps[gap++]!;
      stretches.push({
        verdict: 'cannot tell',
        from: time[before]!,
        to: time[after]!,
        exitTo: time[after]! + stay,
        reason: gapText(length, before),
      });
    }
  }
  return stretches;
}

function gapText(length: number, before: number): string {
  const hour = Math.abs(length - 3600) < 120 ? '; an hour may be a change of the clock' : '';
  return `No reading for ${duration(length)} after reading ${before + 1}${hour}.`;
}
