import type { ClockPiece, ClockTick } from './clock-axis.js';
import { DrawingError, requireBetween } from './errors.js';
import type { Material } from './textures/strip.js';

/** Something that enters a stream and loses its own face at `mixedAt`. */
export interface BandPart {
  readonly id: string;
  readonly label: string;
  readonly material: Material;
  readonly flow: number;
}
/** Vapour leaving a stream over a stretch of time. */
export interface BandVapour {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly flow: number;
  readonly text: string;
}
/** One layer on its way into the bar. Times in minutes on the clock; flows in one unit, kg/h unless the page shows another. */
export interface BandStream {
  readonly id: string;
  readonly label: string;
  /** Second line of the label. */
  readonly note?: string;
  readonly material: Material;
  /** Flow where it joins the others. */
  readonly flow: number;
  /** What it is made of, from below; empty for one material. Parts, less vapour, make the flow. */
  readonly parts?: readonly BandPart[];
  readonly startsAt: number;
  /** Where the parts become one; default `startsAt`. */
  readonly mixedAt?: number;
  readonly joinsAt: number;
  readonly vapours?: readonly BandVapour[];
  /** Held from one minute to another: straps on this layer. */
  readonly held?: readonly (readonly [number, number])[];
}
/** The coat: falls from above and splits over and under. */
export interface BandCoat {
  readonly id: string;
  readonly label: string;
  readonly note?: string;
  readonly material: Material;
  readonly over: number;
  /** 0 for an open underside. */
  readonly under: number;
  readonly joinsAt: number;
  readonly held?: readonly (readonly [number, number])[];
}
/** What leaves below: trim, scrap. */
export interface BandLeaving {
  readonly id: string;
  readonly at: number;
  readonly flow: number;
  readonly text: string;
  /** It goes back into a stream, at its mixing. */
  readonly backTo?: string;
  /** Nothing goes back now: the way back is dashed. */
  readonly idle?: boolean;
  readonly backText?: string;
}
/** A machine: how much it could do, as a frame behind the ribbon. */
export interface BandStation {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly capacity: number;
  /** Stream it works on before joining; without it the whole ribbon. */
  readonly stream?: string;
}
export interface BandNote {
  readonly id: string;
  readonly at: number;
  readonly text: string;
  readonly note?: string;
  /** Layer it points to; without it the top of the ribbon. */
  readonly layer?: string;
  readonly ink?: 'ink' | 'act' | 'held';
}
export interface BandSpec {
  readonly width: number;
  readonly height: number;
  /** Flow that one px across the band stands for. */
  readonly flowPerPx: number;
  readonly clock: readonly ClockPiece[];
  readonly ticks: readonly ClockTick[];
  /** From below, as in the bar. */
  readonly streams: readonly BandStream[];
  readonly coat?: BandCoat;
  readonly leaving?: readonly BandLeaving[];
  readonly stations?: readonly BandStation[];
  /** The station with the least room: a pin and words. */
  readonly narrowest?: { readonly station: string; readonly text: string; readonly note?: string };
  /** Given away: a solid sliver on top from a minute on. */
  readonly giveaway?: { readonly at: number; readonly flow: number; readonly text: string; readonly note?: string };
  readonly notes?: readonly BandNote[];
  /** The moment looked at: a plumb through ribbon and clock. */
  readonly plumb?: number;
  /** Room for names at the left, px; default 150. */
  readonly left?: number;
  /** Room at the right, for notes and for what the page puts there, px; default 130. */
  readonly right?: number;
}

/** Throws DrawingError naming the first thing that cannot be drawn. */
export function checkBand(spec: BandSpec): void {
  requireBetween('width', spec.width, 320, 20_000, 'px');
  requireBetween('height', spec.height, 200, 20_000, 'px');
  requireBetween('flowPerPx', spec.flowPerPx, 1e-6, Infinity);
  if (spec.streams.length === 0) throw new DrawingError('streams', 'empty', 'at least one stream');
  spec.streams.forEach((stream, at) => {
    const place = `streams[${at}] (${stream.id})`;
    requireBetween(`${place}.flow`, stream.flow, 0, Infinity);
    for (const part of stream.parts ?? []) requireBetween(`${place}.parts (${part.id}).flow`, part.flow, 0, Infinity);
    for (const vapour of stream.vapours ?? []) requireBetween(`${place}.vapours (${vapour.id}).flow`, vapour.flow, 0, Infinity);
    if (!(stream.joinsAt >= stream.startsAt))
      throw new DrawingError(`${place}.joinsAt`, stream.joinsAt, `a time not before its start at ${stream.startsAt}`);
  });
  for (const leaving of spec.leaving ?? []) {
    requireBetween(`leaving (${leaving.id}).flow`, leaving.flow, 0, Infinity);
    if (leaving.backTo !== undefined && !spec.streams.some((stream) => stream.id === leaving.backTo))
      throw new DrawingError(`leaving (${leaving.id}).backTo`, leaving.backTo, 'the id of a stream');
  }
  for (const station of spec.stations ?? []) {
    requireBetween(`stations (${station.id}).capacity`, station.capacity, 0, Infinity);
    if (station.stream !== undefined && !spec.streams.some((stream) => stream.id === station.stream))
      throw new DrawingError(`stations (${station.id}).stream`, station.stream, 'the id of a stream');
  }
  if (spec.narrowest !== undefined && !(spec.stations ?? []).some((station) => station.id === spec.narrowest?.station))
    throw new DrawingError('narrowest.station', spec.narrowest.station, 'the id of a station');
}
