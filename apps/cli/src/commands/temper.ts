import { access } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import {
  countsTable,
  judgeTemper,
  NotOnLine,
  stopsTable,
  temperTable,
  tunnelTable,
  type BesideTemper,
  type TemperAnswer,
  type TemperTable,
} from '@barwright/line';
import { temperCurve, temperState } from '@barwright/science';
import { logsUntil, windowsOfTemper } from '@barwright/day';
import { follow, followedJson, logsBeside, printFollowed, type BesideOptions } from '../affected.js';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { readRows } from '../rows.js';
import { Refused, type Out } from '../out.js';
import { n, section } from '../say.js';

interface TemperOptions extends PlantOptions, BesideOptions {
  readonly tunnel?: string;
  readonly until?: string;
}

/** Why temper moved, which bars, how long is left; or the slope of one cooling curve. */
export async function temperCommand(folder: string, file: string, options: TemperOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const { name, rows } = await readRows(file);
  const read = temperTable(rows, name);
  if (read.kind === 'curve') return curve(opened, read, options, out);
  const { beside, used } = await besideOf(file, options);
  const until = options.until === undefined ? undefined : untilOf(read, options.until);
  const answer = judgeTemper(opened, opened.session, read, { beside, ...(until === undefined ? {} : { until }) });
  const logs = await logsBeside(file, options);
  const followed = follow(opened, until === undefined ? logs : logsUntil(logs, until), windowsOfTemper(answer));
  if (options.json) out.json({ ...asJson(answer, used), affected: followedJson(followed) });
  else print(answer, used, followed, out);
}

/** Logs beside the temper log: those named, else those that lie in its folder under their usual names. */
async function besideOf(file: string, options: TemperOptions): Promise<{ beside: BesideTemper; used: readonly string[] }> {
  const used: string[] = [];
  const find = async (named: string | undefined, usual: string) => {
    if (named !== undefined) return named;
    if (options.alone) return undefined;
    const path = join(dirname(file), usual);
    return access(path).then(
      () => path,
      () => undefined,
    );
  };
  const read = async <T>(
    named: string | undefined,
    usual: string,
    as: (rows: readonly (readonly string[])[], name: string) => T,
  ): Promise<T | undefined> => {
    const path = await find(named, usual);
    if (path === undefined) return undefined;
    const { name, rows } = await readRows(path);
    used.push(name);
    return as(rows, name);
  };
  const tunnel = await read(options.tunnel, 'tunnel.csv', tunnelTable);
  const stops = await read(options.stops, 'stops.csv', stopsTable);
  const counts = await read(options.counts, 'flow_5min.csv', countsTable);
  return { beside: { ...(tunnel ? { tunnel } : {}), ...(stops ? { stops } : {}), ...(counts ? { counts } : {}) }, used };
}

/** '13:30' as the last time of the log that reads so, seconds on its clock. */
function untilOf(read: Extract<TemperTable, { kind: 'tests' }>, text: string): number {
  const { seconds, words } = read.clock;
  const at = Array.from(seconds).findLast((s) => Number.isFinite(s) && words(s).endsWith(text.trim()));
  if (at === undefined) throw new Refused(`No test of the log was at "${text}"; write a time as it stands there, such as 13:30`);
  return at;
}

function curve(opened: Opened, read: Extract<TemperTable, { kind: 'curve' }>, options: TemperOptions, out: Out): void {
  const found = temperCurve([...read.time], [...read.temperature]);
  const band = opened.line?.stations.find(({ name }) => /temper/i.test(name))?.setPoints.find(({ name }) => /slope/i.test(name))?.value;
  if (!band || band.low === undefined || band.high === undefined)
    throw new NotOnLine('The temperer has no set point "slope" with two ends to read the curve against');
  const [low, high] = [60 * band.low, 60 * band.high];
  const state = temperState(found.slope, low, high);
  const words = { under: 'under-tempered', well: 'well tempered', over: 'over-tempered' }[state];
  if (options.json)
    return out.json({
      state,
      slope_k_per_min: found.slope,
      slope_low_k_per_min: found.slopeLow,
      slope_high_k_per_min: found.slopeHigh,
      inflection_s: found.time,
      inflection_c: found.temperature,
      inflection: found.inflection,
      rise_k: found.rise,
      band_k_per_min: [low, high],
      said: read.said,
    });
  out.line(
    out.style.strong(
      `${words.charAt(0).toUpperCase()}${words.slice(1)}: slope ${n(found.slope, 2)} K/min at the inflection, band ${n(low, 2)} to ${n(high, 2)}.`,
    ),
  );
  section(out, 'The curve', [
    `95 % limits of the slope ${n(found.slopeLow, 2)} to ${n(found.slopeHigh, 2)} K/min. Inflection after ${n(found.time, 0)} s at ${n(found.temperature, 1)} °C${found.inflection ? '' : '; no inner inflection was found, the flattest place is read and means little'}.`,
    `The sample warmed by ${n(found.rise, 2)} K by the heat of its crystals.`,
    ...read.said,
  ]);
  section(out, 'Mind', [
    'The slope is read where cooling is slowest (second derivative 0). The index is on the scale of each instrument; compare readings of one instrument only.',
  ]);
}

function asJson(answer: TemperAnswer, used: readonly string[]): object {
  return {
    tests: answer.tests,
    beside: used,
    incidents: answer.incidents.map(
      ({ firstOut, lastOut, state, cause, why, before, during, conservative, enrobed, minutes, narrowedBy }) => ({
        first_out: firstOut,
        last_out: lastOut,
        state,
        cause: cause ?? null,
        why,
        before,
        during,
        enrobed_conservative: conservative,
        enrobed,
        minutes,
        narrowed_by: narrowedBy,
      }),
    ),
    trends: answer.trends.map(({ what, limit, outside, perHour, minutesToLimit, earliest, latest, sure }) => ({
      what,
      limit,
      outside,
      per_hour: perHour ?? null,
      minutes_to_limit: minutesToLimit ?? null,
      earliest_min: earliest ?? null,
      latest_min: latest ?? null,
      trend: sure,
    })),
    said: answer.said,
    cautions: answer.cautions,
  };
}

function print(answer: TemperAnswer, used: readonly string[], followed: ReturnType<typeof follow>, out: Out): void {
  if (answer.incidents.length === 0) out.line(out.style.strong(`Temper held in all ${answer.tests} tests.`));
  for (const one of answer.incidents) {
    const state = one.state === 'out' ? 'Out of its limits' : one.state === 'under' ? 'Under-tempered' : 'Over-tempered';
    out.line(out.style.act(`${state} in the tests from ${one.firstOut} to ${one.lastOut}${one.cause ? `; cause: ${one.cause}` : ''}.`));
    section(out, 'Why', one.why);
    section(out, 'When they were enrobed', [
      `Enrobed ${one.enrobed[1] === 'still open' ? `from ${one.enrobed[0]} on, still open` : `${one.enrobed[0]} to ${one.enrobed[1]}`}${one.narrowedBy.length > 0 ? ` (${n(one.minutes, 0)} min)` : ''}. By the tests alone ${one.conservative[0]} to ${one.conservative[1]}: hold that until someone signs for less.`,
      ...one.narrowedBy,
    ]);
  }
  printFollowed(followed, out);
  section(
    out,
    'Where it is heading, by the last tests',
    answer.trends.map(({ what, limit, perHour, minutesToLimit, earliest, latest, sure }) => {
      if (perHour === undefined) return `${what}: too few tests for a trend (limits ${limit}).`;
      if (minutesToLimit === 0) return `${what}: past its limit already (${limit}).`;
      if (!sure || minutesToLimit === undefined) return `${what}: no trend (limits ${limit}).`;
      return `${what}: ${n(minutesToLimit, 0)} min to its limit (${n(earliest ?? 0, 0)} to ${latest === undefined ? '…' : n(latest, 0)}), ${n(perHour, 2)} an hour (limits ${limit}).`;
    }),
  );
  section(out, 'How the log was read', [...answer.said, ...(used.length > 0 ? [`Laid beside it: ${used.join(', ')}.`] : [])]);
  section(out, 'Mind', answer.cautions);
}
