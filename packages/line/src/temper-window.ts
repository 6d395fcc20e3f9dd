import type { PlantChain } from './plant-chain.js';
import type { Clock } from './tables/index.js';
import type { BesideTemper } from './temper-log.js';

/** A stretch of time whose end may be open, s. */
export interface OpenSpan {
  readonly from?: number;
  readonly to?: number;
}

/** When the enrobed bars are meant: what must be held, and what the other logs leave of it. */
export interface TemperWindow {
  /** From the last good test to the first good one after: nothing outside it can be meant. */
  readonly conservative: readonly [from: string, to: string];
  /** What is left when the tunnel and the stops are laid beside it; the same where there is nothing beside. */
  readonly enrobed: readonly [from: string, to: string];
  /** The same ends, s on the clock of the log; left out where no test bounds them. */
  readonly at: { readonly conservative: OpenSpan; readonly enrobed: OpenSpan };
  /** min; of an open window until the last test */
  readonly minutes: number;
  /** Why the narrower window may be believed. */
  readonly narrowedBy: readonly string[];
}

/**
 * The window of a temper incident at the enrober. Belt marks and warm bars at the tunnel exit show temper too: a reading there that is still
 * good clears what was enrobed one transit earlier. A stop of the line during which temper was put right ends it.
 */
export function temperWindow(
  from: PlantChain,
  clock: Clock,
  lastGood: number | undefined,
  nextGood: number | undefined,
  out: { readonly from: number; readonly to: number; readonly known: number },
  { tunnel, stops }: BesideTemper,
): TemperWindow {
  const words = clock.words;
  let start = lastGood ?? -Infinity;
  let end = nextGood ?? Infinity;
  const narrowedBy: string[] = [];
  const transit = transitToExit(from);
  if (tunnel?.marks && transit !== undefined && tunnel.clock.calendar === clock.calendar) {
    const bad = markedOver(tunnel.marks, tunnel.clock.seconds, {
      from: (lastGood ?? out.from) - transit,
      to: (nextGood ?? out.to) + transit,
    });
    const { seconds } = tunnel.clock;
    for (let i = 0; i < seconds.length; i++) {
      const enrobed = seconds[i]! - transit;
      const good = tunnel.marks[i]! <= bad;
      if (good && enrobed > start && enrobed < out.from) {
        start = enrobed;
        narrowedBy[0] = `The tunnel exit was still good at ${words(seconds[i]!)}: bars enrobed until ${words(enrobed)}, ${(transit / 60).toFixed(1)} min earlier, are clear.`;
      }
      if (good && enrobed > out.to && enrobed < end) {
        end = enrobed;
        narrowedBy[1] = `The tunnel exit was good again at ${words(seconds[i]!)}: bars enrobed from ${words(enrobed)} on are clear.`;
      }
    }
  }
  const putRight = stops
    ?.filter((stop) => /\btemper(?!at)/i.test(stop.reason) && stop.to > out.from && stop.to <= end)
    .sort((a, b) => a.to - b.to)
    .at(-1);
  if (putRight && putRight.to >= out.to) {
    end = putRight.to;
    narrowedBy[1] = `The ${putRight.machine} stood until ${words(putRight.to)} (${putRight.reason}).`;
  }
  const open = { start: Number.isFinite(start), end: Number.isFinite(end) };
  return {
    conservative: [
      lastGood === undefined ? 'start of the log' : words(lastGood),
      nextGood === undefined ? 'end of the log, still open' : words(nextGood),
    ],
    enrobed: [open.start ? words(down(start)) : 'start of the log', open.end ? words(up(end)) : 'still open'],
    at: { conservative: spanOf(lastGood, nextGood), enrobed: spanOf(open.start ? down(start) : undefined, open.end ? up(end) : undefined) },
    minutes: (Math.min(end, out.known) - Math.max(start, clock.seconds[0]!)) / 60,
    narrowedBy: narrowedBy.filter(Boolean),
  };
}

// Ends are told in full minutes, the start earlier and the end later.
const down = (seconds: number): number => Math.floor(seconds / 60) * 60;
const up = (seconds: number): number => Math.ceil(seconds / 60) * 60;

function spanOf(from: number | undefined, to: number | undefined): OpenSpan {
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

/** s from the enrober to the tunnel exit, by the transits that the plant wrote; undefined where one is missing. */
function transitToExit(from: PlantChain): number | undefined {
  const time = (name: RegExp) => from.line?.transit.find(({ to }) => name.test(to))?.time.value;
  const [coated, left] = [time(/enrob/i), time(/tunnel out|tunnel exit/i)];
  return coated === undefined || left === undefined ? undefined : left - coated;
}

/** Marks that count as usual: twice the median of the readings outside the time in question, at least 2 of 100. */
function markedOver(marks: Float64Array, seconds: Float64Array, within: { readonly from: number; readonly to: number }): number {
  const usual = Array.from(marks)
    .filter((value, i) => Number.isFinite(value) && (seconds[i]! < within.from || seconds[i]! > within.to))
    .sort((a, b) => a - b);
  return Math.max(2, 2 * (usual[Math.floor(usual.length / 2)] ?? 0));
}
