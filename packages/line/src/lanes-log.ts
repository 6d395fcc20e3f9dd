import { laneMap, type LaneStep } from '@barwright/science';
import { stationNamed } from './given.js';
import { NotOnLine } from './not-on-line.js';
import type { PlantChain } from './plant-chain.js';
import type { LanesHour } from './tables/index.js';

/** One round of weighing, judged. Masses in kg. */
export interface LanesRound extends LanesHour {
  /** Coat of each lane; NaN where a weight is missing. */
  readonly coat: readonly number[];
  readonly mean: number;
  readonly sd: number;
  /** Lanes outside the window of the coat. */
  readonly outside: readonly number[];
  /** The step along the lanes where it stands; masses in kg. */
  readonly step?: LaneStep;
  /** Why the round cannot be judged. */
  readonly reason?: string;
}

/** What the weights say of the coat across the lanes. */
export interface LanesAnswer {
  /** kg */
  readonly aim: number;
  readonly window: { readonly low: number; readonly high: number };
  readonly rounds: readonly LanesRound[];
  /** Consecutive rounds with a step of the same side that stands, the longest run first. */
  readonly runs: readonly { readonly from: number; readonly to: number }[];
  readonly said: readonly string[];
}

/**
 * Coat = finished − centre, lane by lane and round by round. Centre and finished are of neighbouring bars, so the scatter of centres is in it.
 * @throws NotOnLine where the bar has no coat with a window
 */
export function judgeLanes(from: PlantChain, rounds: readonly LanesHour[]): LanesAnswer {
  const station = from.line && stationNamed(from.line, /enrob/i);
  const window =
    station?.setPoints.find(({ name, value }) => /coat/i.test(name) && value.dimension === 'mass')?.value ??
    (from.bar.coat?.amount.by === 'mass' ? from.bar.coat.amount.mass : undefined);
  if (window?.low === undefined || window.high === undefined)
    throw new NotOnLine(`${from.bar.name} has no coat with a window; a set point "coat" of the enrober such as 15.0 g ± 1.2 g is expected`);
  const { low, high } = window;
  const judged = rounds.map((round) => judge(round, low, high));
  const runs = runsOf(judged);
  return { aim: window.value, window: { low, high }, rounds: judged, runs, said: saidOf(judged) };
}

function judge(round: LanesHour, low: number, high: number): LanesRound {
  const coat = round.finished.map((finished, i) => finished - round.centre[i]!);
  const whole = coat.flatMap((mass, i) => (Number.isFinite(mass) ? [i] : []));
  const none = { ...round, coat, mean: NaN, sd: NaN, outside: [] };
  try {
    const gram = (of: readonly number[]) => whole.map((i) => 1000 * of[i]!);
    const { mean, sd, step } = laneMap(gram(round.centre), gram(round.finished), 500 * (high - low));
    const outside = whole.filter((i) => coat[i]! < low || coat[i]! > high).map((i) => round.lanes[i]!);
    const inKg = step?.significant
      ? {
          ...step,
          after: whole[step.after - 1]! + 1,
          coat: step.coat / 1000,
          low: step.low / 1000,
          high: step.high / 1000,
          centre: step.centre / 1000,
        }
      : undefined;
    return { ...round, coat, mean: mean / 1000, sd: sd / 1000, outside, ...(inKg ? { step: inKg } : {}) };
  } catch (error) {
    return { ...none, reason: (error as Error).message };
  }
}

function runsOf(rounds: readonly LanesRound[]): LanesAnswer['runs'] {
  const runs: { from: number; to: number }[] = [];
  const side = (round: LanesRound | undefined) => (round?.step?.carriedBy === 'coat' ? Math.sign(round.step.coat) : 0);
  rounds.forEach((round, i) => {
    if (side(round) === 0) return;
    const last = runs.at(-1);
    if (last && last.to === i - 1 && side(rounds[i - 1]) === side(round)) last.to = i;
    else runs.push({ from: i, to: i });
  });
  return runs.sort((a, b) => b.to - b.from - (a.to - a.from));
}

function saidOf(rounds: readonly LanesRound[]): readonly string[] {
  const bad = rounds.filter(({ reason }) => reason !== undefined);
  const gaps = rounds.reduce((sum, { coat }) => sum + coat.filter((mass) => !Number.isFinite(mass)).length, 0);
  return [
    ...(bad.length > 0
      ? [`${bad.length === 1 ? 'One round' : `${bad.length} rounds`} cannot be judged: ${bad[0]!.time} ${bad[0]!.reason!}.`]
      : []),
    ...(gaps > 0 ? [`${gaps} bars have no centre or no finished weight and count as missing.`] : []),
    'Centre and finished are of neighbouring bars: the scatter of centres is in each coat.',
  ];
}
