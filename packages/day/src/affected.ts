import type { State } from '@barwright/chain';
import type { OpenSpan, PlantChain } from '@barwright/line';
import { countIn, summed, type Counted } from './count.js';
import { covered, daysLater, hasDates, type DayLogs } from './day-logs.js';
import { onNoPallet, palletsIn, type PalletsIn } from './pallets-in.js';
import { cutterToWrapper, placeOf, type Place } from './places.js';
import { merged, moved, type Span } from './spans.js';
import { arrival } from './standing.js';

/** A window at a place of the line. An end that is left out is open: the start or the end of the logs. */
export interface AskedWindow {
  readonly at: string;
  readonly span: OpenSpan;
  /** From the last good reading before to the first good one after; left out: the window itself. */
  readonly safe?: OpenSpan;
  /** What it is about: 'C06, C07, C08'. */
  readonly what?: string;
}

/** One window, followed to the wrapper. */
export interface FollowedWindow {
  readonly place: Place;
  readonly what?: string;
  readonly here: Span;
  readonly packed: Span;
  /** The same to be safe. */
  readonly safeHere: Span;
  readonly safePacked: Span;
  readonly bars?: Counted;
}

/** Bars and pallets of one or several windows, each bar counted once. */
export interface AffectedSet {
  readonly packed: readonly Span[];
  /** Left out where nothing counts them. */
  readonly bars?: Counted;
  readonly byWrapper: readonly { readonly wrapper: string; readonly bars: Counted }[];
  /** Bars cut in the window that the end of the log finds between cutter and wrapper; left out where there are none. */
  readonly onTheWay?: Counted;
  /** Left out where no log of pallets can be read. */
  readonly pallets?: PalletsIn;
  /** Stretches in which packs were counted that are on no pallet of the log, and how many. */
  readonly loose: readonly (Span & { readonly bars: number })[];
}

export interface Affected {
  readonly windows: readonly FollowedWindow[];
  /** The smallest set that can be proven: the windows as told, moved by the transit of the plant. */
  readonly proven: AffectedSet;
  /** From the last to the next good reading, with everything that may delay a bar. */
  readonly safe: AffectedSet;
  /** Bars that lie in more than one window; they are counted once. */
  readonly twice?: number;
  /** Where bars were counted, and how long an interval is, s. */
  readonly counted?: { readonly at: 'wrapper' | 'cutter'; readonly interval: number; readonly fastest?: number };
  readonly logs: DayLogs;
  readonly words: (seconds: number) => string;
  /** End of what the logs cover, s. */
  readonly end?: number;
}

/**
 * Which bars and pallets one or several windows touch: each window is moved to the wrapper by the plant's transit, bars are counted there in
 * the intervals of the log, pallets by the time they were packed. The safe set begins at the last good reading and ends at the next, takes
 * the quickest and the slowest transit, the wait in a full accumulation, and the time that machines in the way stood.
 * @param words - a time in words; default: the clock of the logs
 * @throws NotOnLine where the line lacks a place or its transit; NoWindow where a window ends before it begins or has other dates than the logs
 */
export function affected(
  from: PlantChain,
  state: State,
  logs: DayLogs,
  windows: readonly AskedWindow[],
  words: (seconds: number) => string = logs.flow?.clock.words ?? logs.pallets?.words ?? timeOfDay,
): Affected {
  if (windows.length === 0) throw new NoWindow('No window was asked for; one at least is expected, such as enrober from 13:05 to 14:34');
  const reach = covered(logs);
  const counter = counterOf(from, state, logs);
  const setOf = (spans: readonly Span[]) => setIn(from, state, logs, counter, spans, reach?.to);
  const followed = windows.map((asked): FollowedWindow => {
    const place = placeOf(from, state, asked.at);
    const lag = place.toWrapper;
    const here = closed(asked.span, reach, asked, words);
    const safe = closed(asked.safe ?? asked.span, reach, asked, words);
    const safeHere = { from: Math.min(safe.from, here.from), to: Math.max(safe.to, here.to) };
    const packed = { from: here.from + lag.value, to: here.to + lag.value };
    const late = arrival(safeHere.to, lag.high + place.waits, stopsOf(logs, safeHere.to), place.between);
    const bars = counter?.count([packed]);
    return {
      place,
      ...(asked.what === undefined ? {} : { what: asked.what }),
      here,
      packed,
      safeHere,
      safePacked: { from: safeHere.from + lag.low, to: lag.high > 0 ? 60 * Math.ceil(late / 60) : late },
      ...(bars ? { bars } : {}),
    };
  });
  const proven = setOf(merged(followed.map(({ packed }) => packed)));
  const single = followed.reduce((sum, { bars }) => sum + (bars?.value ?? 0), 0);
  return {
    windows: followed,
    proven,
    safe: setOf(merged(followed.map(({ safePacked }) => safePacked))),
    ...(followed.length > 1 && proven.bars ? { twice: Math.max(0, single - proven.bars.value) } : {}),
    ...(counter ? { counted: counter.told } : {}),
    logs,
    words,
    ...(reach ? { end: reach.to } : {}),
  };
}

/** A window is none; the sentence says what came and what was expected. */
export class NoWindow extends RangeError {
  readonly code = 'NO_WINDOW';
}

function closed(span: OpenSpan, reach: Span | undefined, { at }: AskedWindow, words: (s: number) => string): Span {
  const [from, to] = [span.from ?? reach?.from ?? span.to, span.to ?? reach?.to ?? span.from];
  if (from === undefined || to === undefined)
    throw new NoWindow(`The window at the ${at} has neither a start nor an end, and no log tells how far the day reaches`);
  if (!(to >= from))
    throw new NoWindow(`The window at the ${at} ends at ${words(to)}, before it begins at ${words(from)}; the earlier time comes first`);
  if (reach && hasDates(from) !== hasDates(reach.from))
    throw new NoWindow(
      `The window at the ${at} and the logs of counts and pallets are not on one clock: one has dates, the other has none; write dates into both`,
    );
  const by = reach ? daysLater([from, to], reach.from) : 0;
  return { from: from + by, to: to + by };
}

/** Stops on the same clock. */
const stopsOf = ({ stops = [] }: DayLogs, time: number) => stops.filter(({ from }) => hasDates(from) === hasDates(time));

interface Counter {
  readonly told: NonNullable<Affected['counted']>;
  readonly count: (spans: readonly Span[]) => Counted;
  readonly byWrapper: (spans: readonly Span[]) => AffectedSet['byWrapper'];
}

/** How bars are counted in packed time: at the wrappers where the log has them, else at the cutter one transit earlier. */
function counterOf(from: PlantChain, state: State, { flow }: DayLogs): Counter | undefined {
  if (!flow) return undefined;
  const perPack = from.bar.pack.barsPerPack;
  const stations = from.line?.stations ?? [];
  if (flow.packs.length > 0) {
    const wrapper = stations.find(({ rate }) => rate?.by === 'packs')?.rate;
    const fastest = wrapper?.by === 'packs' ? wrapper.rate.value / 60 : undefined;
    const one = (packs: Float64Array, spans: readonly Span[]) => countIn(flow, packs, spans, perPack, fastest);
    return {
      told: { at: 'wrapper', interval: flow.usual, ...(fastest === undefined ? {} : { fastest }) },
      count: (spans) => summed(flow.packs.map(({ packs }) => one(packs, spans))),
      byWrapper: (spans) => flow.packs.map(({ wrapper: name, packs }) => ({ wrapper: name, bars: one(packs, spans) })),
    };
  }
  const { value } = cutterToWrapper(from, state);
  return {
    told: { at: 'cutter', interval: flow.usual },
    count: (spans) => {
      const found = countIn(flow, flow.cut!, moved(spans, -value), 1, fastestCut(from));
      return { ...found, missing: moved(found.missing, value) };
    },
    byWrapper: () => [],
  };
}

function setIn(
  from: PlantChain,
  state: State,
  logs: DayLogs,
  counter: Counter | undefined,
  packed: readonly Span[],
  end: number | undefined,
): AffectedSet {
  const { flow, pallets } = logs;
  const onTheWay = flow?.cut && counter?.told.at === 'wrapper' ? wayAt(from, state, flow, packed) : undefined;
  const loose = pallets && counter ? onNoPallet(pallets, packed) : [];
  return {
    packed,
    ...(counter ? { bars: counter.count(packed) } : {}),
    byWrapper: counter?.byWrapper(packed) ?? [],
    ...(onTheWay && onTheWay.value > 0 ? { onTheWay } : {}),
    ...(pallets ? { pallets: palletsIn(pallets, packed, end ?? -Infinity) } : {}),
    // Only what was surely packed there: pallets are timed in full minutes, so a minute at the edge of one proves nothing.
    loose: loose
      .map(({ from: a, to: b }) => ({ from: a + 60, to: b - 60 }))
      .filter((span) => span.to > span.from)
      .map((span) => ({ ...span, bars: counter!.count([span]).low }))
      .filter(({ bars }) => bars > 0),
  };
}

/** Bars a second that the cutter can do at most, where the plant wrote its rate. */
function fastestCut({ line }: PlantChain): number | undefined {
  const rate = line?.stations.find(({ name }) => /guillotine|cutter/i.test(name))?.rate;
  return rate?.by === 'bars' ? rate.rate.value / 60 : undefined;
}

/** Bars of a window that were cut before the log ended and are packed after. */
function wayAt(from: PlantChain, state: State, flow: NonNullable<DayLogs['flow']>, packed: readonly Span[]): Counted | undefined {
  const end = (flow.start.at(-1) ?? NaN) + (flow.length.at(-1) ?? NaN);
  const later = packed.filter(({ to }) => to > end).map((span) => ({ from: Math.max(span.from, end), to: span.to }));
  if (later.length === 0) return undefined;
  const cut = moved(later, -cutterToWrapper(from, state).value)
    .map((span) => ({ from: span.from, to: Math.min(span.to, end) }))
    .filter((span) => span.to > span.from);
  return countIn(flow, flow.cut!, merged(cut), 1, fastestCut(from));
}

function timeOfDay(seconds: number): string {
  const within = ((Math.round(seconds / 60) % 1440) + 1440) % 1440;
  return `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
}
