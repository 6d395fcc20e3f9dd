import type { BandLeaving, BandSpec, BandStream } from './band-spec.js';
import { clock, type Clock } from './clock-axis.js';
import { stepTrack, straightTrack, type Track } from './textures/track.js';

/** A stretch of one layer of the joined ribbon between two events, px. */
export interface LayerRun {
  readonly id: string;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}
/** Height of the joined ribbon over a stretch. */
export interface RibbonRun {
  readonly from: number;
  readonly to: number;
  readonly x0: number;
  readonly x1: number;
  readonly top: number;
  readonly bottom: number;
  readonly layers: readonly LayerRun[];
}
/** A stream before it joins: level on its lane, then bending to its place. */
export interface Lane {
  readonly stream: BandStream;
  readonly bottom: number;
  /** Widths along the lane, one for each stretch between vapours. */
  readonly runs: readonly { readonly x0: number; readonly x1: number; readonly width: number }[];
  readonly vapours: readonly {
    readonly id: string;
    readonly text: string;
    readonly x0: number;
    readonly x1: number;
    readonly before: number;
    readonly after: number;
    readonly width: number;
  }[];
  readonly parts: readonly { readonly id: string; readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number }[];
  /** From the last stretch into the ribbon. */
  readonly bend: Track;
  readonly charged: number;
}
export interface BandLayout {
  readonly scale: Clock;
  readonly clockY: number;
  readonly lanes: readonly Lane[];
  readonly runs: readonly RibbonRun[];
  /** Top of the layers, without coat. */
  readonly shoulder: number;
  readonly end: number;
}

export function layOut(spec: BandSpec): BandLayout {
  const left = spec.left ?? 150;
  const scale = clock(spec.clock, left, spec.width - (spec.right ?? 130));
  const clockY = spec.height - 58;
  const px = (flow: number): number => flow / spec.flowPerPx;
  const end = spec.clock[spec.clock.length - 1]!.to;
  const core = spec.streams.reduce((sum, stream) => sum + px(stream.flow), 0);
  const under = px(spec.coat?.under ?? 0);
  const over = px(spec.coat?.over ?? 0);
  const rim = slackBelow(spec, core + under + over);
  const below = Math.max(under + rim + 34, (spec.leaving ?? []).length > 0 ? under + rim + 88 : 0, 60);
  const floor = clockY - below;
  const shoulder = floor - core;

  const places = stack(spec, shoulder, px);
  const lanes = spec.streams.map((stream, at) => lane(spec, stream, at, scale, px, { shoulder, floor, places: places.before }));
  return { scale, clockY, lanes, runs: ribbonRuns(spec, scale, shoulder, px, end), shoulder, end };
}

function slackBelow(spec: BandSpec, full: number): number {
  const most = Math.max(
    0,
    ...(spec.stations ?? []).filter((station) => station.stream === undefined).map((station) => station.capacity / spec.flowPerPx),
  );
  return Math.max(0, (most - full) / 2);
}

/** Where each layer lies before anything leaves. */
function stack(spec: BandSpec, shoulder: number, px: (flow: number) => number): { before: ReadonlyMap<string, readonly [number, number]> } {
  const before = new Map<string, readonly [number, number]>();
  let y = shoulder;
  for (const stream of spec.streams.slice().reverse()) {
    before.set(stream.id, [y, y + px(stream.flow)]);
    y += px(stream.flow);
  }
  return { before };
}

function lane(
  spec: BandSpec,
  stream: BandStream,
  at: number,
  scale: Clock,
  px: (flow: number) => number,
  ribbon: { shoulder: number; floor: number; places: ReadonlyMap<string, readonly [number, number]> },
): Lane {
  const [top, low] = ribbon.places.get(stream.id)!;
  const lost = (stream.vapours ?? []).reduce((sum, vapour) => sum + vapour.flow, 0);
  const summed = (stream.parts ?? []).reduce((sum, part) => sum + part.flow, 0);
  const charged = px(summed > 0 ? summed : stream.flow + lost);
  const count = spec.streams.length;
  const ceiling = 78 + charged;
  // lowest layer level with the ribbon, the others evenly above it
  const bottom =
    at === 0
      ? low
      : count === 2
        ? (ceiling + ribbon.shoulder) / 2 - 20
        : ceiling + ((count - 1 - at) / (count - 1)) * (ribbon.floor - ceiling) * 0.94;
  const x0 = scale.x(stream.startsAt);
  const mixed = Math.max(x0, scale.x(stream.mixedAt ?? stream.startsAt));
  const join = scale.x(stream.joinsAt);
  const runs: { x0: number; x1: number; width: number }[] = [];
  const vapours: Lane['vapours'][number][] = [];
  let x = mixed;
  let width = charged;
  for (const vapour of stream.vapours ?? []) {
    const middle = (scale.x(vapour.from) + scale.x(vapour.to)) / 2;
    const half = Math.max(22, (scale.x(vapour.to) - scale.x(vapour.from)) / 2);
    const from = Math.max(x, middle - half);
    const to = from + 2 * half;
    runs.push({ x0: x, x1: from, width });
    const after = width - px(vapour.flow);
    vapours.push({ id: vapour.id, text: vapour.text, x0: from, x1: to, before: width, after, width: px(vapour.flow) });
    runs.push({ x0: from, x1: to, width: after });
    width = after;
    x = to;
  }
  const own = px(stream.flow);
  const middle = (top + low) / 2;
  const bend =
    Math.abs(bottom - low) < 0.5
      ? straightTrack(x, low - own, Math.max(1, join - x), own)
      : stepTrack(x, bottom - own / 2, join, middle, own, 6);
  let y = bottom;
  const parts = (stream.parts ?? []).map((part) => {
    const h = px(part.flow);
    y -= h;
    return { id: part.id, x0, x1: mixed, y0: y, y1: y + h };
  });
  return { stream, bottom, runs: runs.filter((run) => run.x1 - run.x0 > 0.5), vapours, parts, bend, charged };
}

/** The joined ribbon between events; what leaves takes its share of every layer, and the underside rises by its width. */
function ribbonRuns(spec: BandSpec, scale: Clock, shoulder: number, px: (flow: number) => number, end: number): RibbonRun[] {
  const joins = spec.streams.map((stream) => stream.joinsAt);
  const coatAt = spec.coat?.joinsAt ?? Infinity;
  const leaving = (spec.leaving ?? []).slice().sort((a, b) => a.at - b.at);
  const events = [...new Set([...joins, ...(spec.coat === undefined ? [] : [coatAt]), ...leaving.map((item) => item.at), end])]
    .filter((minute) => minute <= end)
    .sort((a, b) => a - b);
  const runs: RibbonRun[] = [];
  events.slice(0, -1).forEach((from, k) => {
    const to = events[k + 1]!;
    const kept = keptAt(spec, leaving, from);
    const layers: LayerRun[] = [];
    const x0 = scale.x(from);
    const x1 = scale.x(to);
    let y = shoulder;
    for (const stream of spec.streams.slice().reverse()) {
      const h = px(stream.flow) * kept(stream.id);
      if (stream.joinsAt <= from) layers.push({ id: stream.id, x0, x1, y0: y, y1: y + h });
      y += h;
    }
    const coated = coatAt <= from && spec.coat !== undefined;
    const over = coated ? px(spec.coat!.over) * kept(spec.coat!.id) : 0;
    const under = coated ? px(spec.coat!.under) * kept(spec.coat!.id) : 0;
    if (over > 0) layers.push({ id: `${spec.coat!.id}.over`, x0, x1, y0: shoulder - over, y1: shoulder });
    if (under > 0) layers.push({ id: `${spec.coat!.id}.under`, x0, x1, y0: y, y1: y + under });
    if (layers.length === 0) return;
    const tops = layers.map((layer) => layer.y0);
    const bottoms = layers.map((layer) => layer.y1);
    runs.push({ from, to, x0, x1, top: Math.min(...tops), bottom: Math.max(...bottoms), layers });
  });
  return runs;
}

/** Share of a layer still there at a minute, after what has left by then. */
function keptAt(spec: BandSpec, leaving: readonly BandLeaving[], minute: number): (id: string) => number {
  const members = [
    ...spec.streams.map((stream) => ({ id: stream.id, flow: stream.flow, joinsAt: stream.joinsAt })),
    ...(spec.coat === undefined ? [] : [{ id: spec.coat.id, flow: spec.coat.over + spec.coat.under, joinsAt: spec.coat.joinsAt }]),
  ];
  const share = new Map(members.map((member) => [member.id, 1]));
  for (const item of leaving) {
    if (item.at > minute) continue;
    const there = members.filter((member) => member.joinsAt <= item.at);
    const total = there.reduce((sum, member) => sum + member.flow * share.get(member.id)!, 0);
    if (total <= 0) continue;
    for (const member of there) share.set(member.id, share.get(member.id)! * Math.max(0, 1 - item.flow / total));
  }
  return (id) => share.get(id) ?? 1;
}
