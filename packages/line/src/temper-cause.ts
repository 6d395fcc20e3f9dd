import type { State } from '@barwright/chain';
import { chocolateSpecificHeat, tempererCause, type TempererCause } from '@barwright/science';
import type { TempererIds } from './temper.js';
import type { Clock, CountsTable } from './tables/index.js';

/** What the cutter took between the last good test and the first that was out, against the hour before: throughput by another log. */
export function takenOf(clock: Clock, counts: CountsTable | undefined, lastGood: number | undefined, firstOut: number): string | undefined {
  if (!counts || lastGood === undefined || counts.clock.calendar !== clock.calendar) return undefined;
  const step = (counts.clock.seconds[1]! - counts.clock.seconds[0]!) / 60;
  /** Speed while it ran: the median of the intervals in which bars were cut. */
  const running = (from: number, to: number): number | undefined => {
    const list = Array.from(counts.bars)
      .filter((bars, i) => bars > 0 && counts.clock.seconds[i]! >= from && counts.clock.seconds[i]! < to)
      .sort((a, b) => a - b);
    return list.length > 0 && step > 0 ? list[Math.floor(list.length / 2)]! / step : undefined;
  };
  const [before, meanwhile] = [running(lastGood - 3600, lastGood), running(lastGood, firstOut)];
  if (before === undefined || meanwhile === undefined) return undefined;
  const alike = Math.abs(meanwhile / before - 1) <= 0.05;
  return `The line ran at ${before.toFixed(0)} bars/min in the hour before and at ${meanwhile.toFixed(0)} while the temper went: what it took ${alike ? 'did not change' : 'changed too'}.`;
}

/** Coolant, throughput or inlet: which change alone explains the crystals that are missing, with the exchanger as it was when good. */
export function causeOf(
  state: State,
  ids: TempererIds,
  before: Readonly<Record<string, number>>,
  during: Readonly<Record<string, number>>,
): { readonly cause?: TempererCause['cause'] | 'coolant supply'; readonly why: readonly string[] } {
  const why: string[] = [];
  if (before['coolant'] === undefined || during['coolant'] === undefined)
    return {
      why: ['The log has no coolant temperature before or during it: whether coolant or throughput moved the temper cannot be told.'],
    };
  const [hot, cold] = [before['inlet'] ?? state.number(ids.inlet), state.number(ids.coldest)];
  const fat = state.number(`${ids.chocolate}.fat`);
  const flow = before['throughput'] ?? state.number(ids.throughput);
  const good = {
    throughput: flow,
    inlet: hot,
    coldest: cold,
    fat,
    crystals: state.number(`${ids.chocolate}.temper_crystals`),
    specificHeat: chocolateSpecificHeat(fat, state.number(`${ids.chocolate}.sugars`), (hot + cold) / 2, 0),
    shaftPower: 0,
    coolantIn: before['coolant'],
  };
  const now = { throughput: during['throughput'] ?? flow, coolantIn: during['coolant'], inlet: during['inlet'] ?? hot };
  const result = tempererCause(good, now, state.number(ids.coolantFlow));
  const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
  const n = (x: number) => x.toFixed(1);
  why.push(
    `Coolant ${n(good.coolantIn)} → ${n(now.coolantIn)} °C alone would leave ${percent(Math.max(0, result.coolantAlone))} of the fat in crystals, ${percent(good.crystals)} when good${result.coolantAlone < 0 ? ' (none, and the mass warmer than set)' : ''}.`,
  );
  if (during['throughput'] !== undefined && before['throughput'] !== undefined)
    why.push(
      `Throughput ${before['throughput'].toFixed(0)} → ${during['throughput'].toFixed(0)} kg/h alone would leave ${percent(Math.max(0, result.throughputAlone))}.`,
    );
  else why.push('Throughput is not in the log and counts as constant.');
  if (during['inlet'] !== undefined)
    why.push(`Inlet ${n(hot)} → ${n(during['inlet'])} °C alone would leave ${percent(Math.max(0, result.inletAlone))}.`);
  return { cause: result.cause === 'coolant' ? 'coolant supply' : result.cause, why };
}
