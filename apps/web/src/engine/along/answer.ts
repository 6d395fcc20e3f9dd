import type { AlongAnswer, NoStretch } from '../along-protocol.js';
import { bandTimes, clockWords, dayAtCutter, layOrder } from '../band-times.js';
import type { Engine } from '../engine.js';
import { capital } from '../words.js';
import { slabStretch } from './slab.js';
import { tunnelStretch } from './tunnel.js';

/** Where a station lies on the ribbon, and its clock. */
export interface OnClock {
  readonly spanOf: (name: string) => readonly [from: number, to: number];
  readonly words: (minute: number) => string;
}

/** The stretches of the line in which the product changes its temperature, or why one cannot be drawn. */
export function alongAnswer(engine: Engine): AlongAnswer {
  const { from, session } = engine;
  const order = layOrder(from);
  const slugs = order.map((layer) => from.plant.components.get(layer.component)!.slug);
  const times = bandTimes(from, session, order.length, slugs);
  const day = dayAtCutter(from, session, times);
  const clock: OnClock = {
    spanOf: (name) => {
      const station = times.stations.find((other) => other.name === name);
      return station ? [station.from, station.to] : [0, 0];
    },
    words: clockWords(day),
  };
  return {
    ...(day === undefined ? {} : { dayAtCutter: day }),
    slab: orWhy(() => slabStretch(engine, clock)),
    tunnel: orWhy(() => tunnelStretch(engine, clock)),
  };
}

/** What a model or the chain refuses carries a code and a sentence; anything else is a fault of ours. */
function orWhy<T>(draw: () => T): T | NoStretch {
  try {
    return draw();
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    if (code === undefined) throw error;
    return { kind: 'none', sentence: `${capital(message)}${/[.?]$/.test(message) ? '' : '.'}` };
  }
}
