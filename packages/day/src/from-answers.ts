import type { State } from '@barwright/chain';
import type { CookLogAnswer, PlantChain, RoastAnswer, TemperAnswer } from '@barwright/line';
import type { AskedWindow } from './affected.js';
import { hasDates, type DayLogs } from './day-logs.js';
import { placeOf } from './places.js';
import type { Span } from './spans.js';
import { arrival } from './standing.js';

/** Windows that another answer asks about, and what it leaves open. */
export interface Asking {
  readonly windows: readonly AskedWindow[];
  readonly cannotTell: readonly string[];
  readonly said: readonly string[];
}

const nothing: Asking = { windows: [], cannotTell: [], said: [] };

/** Bars laid with batches that call for a hold; a result that nothing confirms holds none. */
export function windowsOfCooks({ incidents }: CookLogAnswer): Asking {
  const held = incidents.filter(({ verdict }) => verdict !== 'unconfirmed');
  return {
    windows: held.flatMap(({ at, batches }): AskedWindow[] =>
      at
        ? [
            {
              at: 'slab',
              what: batches.join(', '),
              span: { from: at.from, to: at.to },
              safe: {
                ...(at.lastGood === undefined ? {} : { from: at.lastGood }),
                ...(at.nextGood === undefined ? {} : { to: at.nextGood }),
              },
            },
          ]
        : [],
    ),
    cannotTell: held
      .filter(({ at }) => !at)
      .map(
        ({ batches }) =>
          `Which bars carry ${batches.join(', ')} cannot be told: the log does not say from when to when they were laid; record the start and the end of use of each batch.`,
      ),
    said: held.some(({ at }) => at)
      ? ['Where two batches meet they may mix: the plant writes no mass that stays in the hopper, so no minute is added for it.']
      : [],
  };
}

/** Bars enrobed while temper was out: as narrowed by the other logs, and from the last good test to the next. */
export function windowsOfTemper({ incidents }: TemperAnswer): Asking {
  return {
    ...nothing,
    windows: incidents.map(({ at, firstOut, state }) => ({ at: 'enrober', what: `${state === 'out' ? 'temper out' : `${state}-tempered`} from ${firstOut}`, span: at.enrobed, safe: at.conservative })), // prettier-ignore
  };
}

/**
 * Bars with product of a roast that is not proven, in the order of use: the quickest and the slowest way to the cutter that the plant wrote.
 * To be safe such product may have rested until the longest age that the plant permits at use, and longer while the line stood.
 */
export function windowsOfRoast(from: PlantChain, state: State, { station, stretches }: RoastAnswer, { stops = [] }: DayLogs): Asking {
  const open = stretches.filter(({ verdict }) => verdict !== 'proven');
  const made = from.line?.stations.find(({ name }) => name === station)?.works;
  if (open.length === 0) return nothing;
  if (!from.line?.transit.some(({ to }) => to === station))
    return {
      ...nothing,
      cannotTell: [
        `Which bars carry ${made ?? 'that product'} cannot be told: the plant writes no time from the ${station} to the cutter ("transit"). Write it, with its least and its most, and record of each bin or tank when it was filled and when it was emptied onto the line.`,
      ],
    };
  const { fromCutter, between } = placeOf(from, state, station);
  const [quick, slow] = [-fromCutter.high, -fromCutter.low];
  const age = made === undefined ? undefined : from.plant.components.get(made)?.maxAge?.value;
  const hours = (seconds: number) => `${+(seconds / 3600).toFixed(1)} h`;
  const followed = open.map(({ at, verdict, from: first, to: last }) => {
    const onClock = stops.filter((stop) => hasDates(stop.from) === hasDates(at.exitTo));
    const late = arrival(at.exitTo, slow, onClock, between);
    return {
      verdict,
      words: [first, last] as const,
      span: { from: at.from + quick, to: at.exitTo + slow },
      safe: { from: at.from + quick, to: Math.max(late, age === undefined ? late : at.exitTo + age) },
    };
  });
  return {
    windows: joined(followed).map(({ verdict, words: [first, last], span, safe }) => ({
      at: 'cutter',
      what: `${made ?? station}, ${verdict}, in at ${first} to ${last}`,
      span,
      safe,
    })),
    cannotTell:
      age === undefined
        ? [
            `How long ${made ?? 'that product'} may have rested before use cannot be told: the plant writes no "max age" of it. The safe set takes the slowest way and the stops alone; write the age, and record when each bin was filled and emptied.`,
          ]
        : [],
    said: [
      `In the order of use, nothing set aside: ${+(quick / 60).toFixed(1)} to ${+(slow / 60).toFixed(1)} min from the ${station} to the cutter, as the plant writes it.`,
      ...(age === undefined
        ? []
        : [
            `To be safe, what was set aside may have been used until it was ${hours(age)} old, the longest age that the plant permits, counted to the cutter. A record of when each bin was filled and emptied narrows this to the order of use.`,
          ]),
    ],
  };
}

interface Stretch {
  readonly verdict: string;
  readonly words: readonly [from: string, to: string];
  readonly span: Span;
  readonly safe: Span;
}

/** Stretches whose product may lie on the same bars become one window. */
function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const out: Stretch[] = [];
  for (const next of [...stretches].sort((a, b) => a.span.from - b.span.from)) {
    const last = out.at(-1);
    if (!last || next.span.from > last.span.to) {
      out.push(next);
      continue;
    }
    out[out.length - 1] = {
      verdict: last.verdict.includes(next.verdict) ? last.verdict : `${last.verdict} or ${next.verdict}`,
      words: [last.words[0], next.span.to > last.span.to ? next.words[1] : last.words[1]],
      span: { from: last.span.from, to: Math.max(last.span.to, next.span.to) },
      safe: { from: last.safe.from, to: Math.max(last.safe.to, next.safe.to) },
    };
  }
  return out;
}
