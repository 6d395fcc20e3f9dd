import { layOut, type BandLayout, type Lane, type RibbonRun } from './band-layout.js';
import { checkBand, type BandSpec } from './band-spec.js';
import { clockAxis } from './clock-axis.js';
import { hatch } from './geometry/hatch.js';
import type { Point } from './geometry/polygon.js';
import { placeNotes, sideLabels, type Note } from './leaders.js';
import { circle, group, line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';
import { strip, type Material } from './textures/strip.js';
import { joined, ribbonPaths, straightTrack, TrackMaker, type Track } from './textures/track.js';

export interface BandDrawing extends Drawing {
  /** Things a press can open, in painting order: the last one that holds the point is meant. */
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
  /** Where labels may stand, px. */
  readonly anchors: readonly { readonly id: string; readonly x: number; readonly y: number }[];
  readonly x: (minute: number) => number;
  /** Top and bottom of the ribbon at a minute, px; nothing where nothing has joined. */
  readonly at: (minute: number) => { readonly top: number; readonly bottom: number } | undefined;
  readonly clockY: number;
  /** Flow that 10 px stand for. */
  readonly flowPer10Px: number;
}

/** The line as a ribbon along transit time, its width the flow: streams come in, vapour rises, trim falls, the frame behind is what machines could do. */
export function band(spec: BandSpec): BandDrawing {
  checkBand(spec);
  const layout = layOut(spec);
  const { scale, clockY, runs } = layout;
  const hits: { id: string; box: Box }[] = [];
  const anchors: { id: string; x: number; y: number }[] = [];
  const obstacles: Box[] = [];
  const marks: Mark[] = [];
  const at = (minute: number): RibbonRun | undefined =>
    runs.find((run) => minute >= run.from && minute < run.to) ?? (minute >= layout.end ? runs[runs.length - 1] : undefined);

  marks.push(group(frames(spec, layout, hits, obstacles), { id: 'capacity' }));
  if (spec.coat !== undefined) marks.push(group(coatFall(spec, layout, obstacles, anchors), { id: spec.coat.id, label: spec.coat.label }));
  marks.push(...returns(spec, layout, hits, anchors));
  for (const lane of layout.lanes)
    marks.push(
      group(laneMarks(lane, along(runs, lane.stream.id), hits, obstacles, anchors), { id: lane.stream.id, label: lane.stream.label }),
    );
  for (const run of runs) {
    for (const layer of run.layers) hits.push({ id: layer.id, box: boxOf(layer) });
    obstacles.push({ x: run.x0, y: run.top, w: run.x1 - run.x0, h: run.bottom - run.top });
  }
  const last = runs[runs.length - 1];
  if (last !== undefined) marks.push(line(last.x1, last.top, last.x1, last.bottom, { stroke: 'ink', width: 1 }));
  marks.push(...overloads(spec, layout));
  marks.push(...straps(spec, runs, scale.x));
  const notes: Note[] = [];
  if (spec.giveaway !== undefined && last !== undefined) {
    const h = spec.giveaway.flow / spec.flowPerPx;
    const x = scale.x(spec.giveaway.at);
    const top = at(spec.giveaway.at)?.top ?? last.top;
    marks.push(rect(x, top - h, scale.x1 - x, h, { fill: 'ink', id: 'giveaway' }));
    hits.push({ id: 'giveaway', box: { x, y: top - Math.max(h, 10), w: scale.x1 - x, h: Math.max(h, 10) } });
    notes.push({
      id: 'giveaway',
      x: x + 4,
      y: top - h,
      text: spec.giveaway.text,
      ...(spec.giveaway.note === undefined ? {} : { note: spec.giveaway.note }),
      up: true,
    });
  }
  notes.push(...pinned(spec, layout, at));
  for (const note of spec.notes ?? []) {
    const run = at(note.at);
    if (run === undefined) continue;
    const layer =
      note.layer === undefined ? undefined : run.layers.find((each) => each.id === note.layer || each.id === `${note.layer}.over`);
    const y = layer === undefined ? run.top : layer.y0;
    notes.push({
      id: note.id,
      x: scale.x(note.at),
      y,
      text: note.text,
      ...(note.note === undefined ? {} : { note: note.note }),
      up: true,
      ...(note.ink === undefined ? {} : { fill: note.ink }),
      strong: note.ink !== undefined,
    });
  }
  const words = laneWords(spec, layout, obstacles);
  marks.push(...words);
  const placed = placeNotes(notes, obstacles, { x: 0, y: 0, w: spec.width, h: clockY - 10 });
  marks.push(...placed.marks);
  for (const box of placed.boxes) hits.push({ id: `${box.id}.note`, box });
  marks.push(group(clockAxis(scale, spec.clock, spec.ticks, clockY), { id: 'clock' }));
  if (spec.plumb !== undefined) marks.push(...plumb(spec.plumb, at, scale.x, clockY));
  return {
    marks,
    width: spec.width,
    height: spec.height,
    hits,
    anchors,
    x: scale.x,
    at: (minute) => {
      const run = at(minute);
      return run === undefined ? undefined : { top: run.top, bottom: run.bottom };
    },
    clockY,
    flowPer10Px: spec.flowPerPx * 10,
  };
}

const boxOf = (layer: { x0: number; x1: number; y0: number; y1: number }): Box => ({
  x: layer.x0,
  y: layer.y0,
  w: layer.x1 - layer.x0,
  h: layer.y1 - layer.y0,
});

/** The straight pieces of one layer along the joined ribbon. */
function along(runs: readonly RibbonRun[], id: string): Track[] {
  return runs.flatMap((run) =>
    run.layers
      .filter((layer) => layer.id === id)
      .map((layer) => straightTrack(layer.x0, layer.y0, layer.x1 - layer.x0, layer.y1 - layer.y0)),
  );
}

/** A ribbon of one material through several pieces: paper faces, one texture without seams, inked edges; chocolate lies on its tone. */
function ribbon(pieces: readonly Track[], material: Material): Mark[] {
  const tracks = pieces.filter((track) => track.length > 0.01 && track.width > 0);
  const last = tracks[tracks.length - 1];
  if (last === undefined) return [];
  const paths = tracks.map(ribbonPaths);
  return [
    path(paths.map(({ face }) => face).join(''), {
      fill: material.endsWith('chocolate') && material !== 'white-chocolate' ? 'coat' : 'paper',
    }),
    ...strip(material, joined(tracks, last.width)),
    path(paths.map(({ edges }) => edges).join(''), { stroke: 'ink', width: 1 }),
  ];
}

function frames(spec: BandSpec, layout: BandLayout, hits: { id: string; box: Box }[], obstacles: Box[]): Mark[] {
  const marks: Mark[] = [];
  for (const station of spec.stations ?? []) {
    const box = frameBox(spec, layout, station.id);
    if (box === undefined) continue;
    marks.push(rect(box.x, box.y, box.w, box.h, { fill: 'shade', stroke: 'rule', width: 0.9, id: station.id }));
    hits.push({ id: station.id, box });
    obstacles.push(box);
  }
  return marks;
}

/** A station that gets more than it can do: its frame lies inside the ribbon, drawn over it in act. */
function overloads(spec: BandSpec, layout: BandLayout): Mark[] {
  return (spec.stations ?? []).flatMap((station) => {
    const box = frameBox(spec, layout, station.id);
    if (box === undefined || box.slack >= -0.01) return [];
    return [
      rect(box.x, box.y, box.w, box.h, { stroke: 'paper', width: 4 }),
      rect(box.x, box.y, box.w, box.h, { stroke: 'act', width: 2, id: `${station.id}.over` }),
    ];
  });
}

/** The frame of a station: as high as what it could do, its middle on the ribbon's. */
function frameBox(spec: BandSpec, layout: BandLayout, id: string): (Box & { slack: number }) | undefined {
  const station = (spec.stations ?? []).find((each) => each.id === id);
  if (station === undefined) return undefined;
  const x = layout.scale.x(station.from);
  const w = Math.max(8, layout.scale.x(station.to) - x);
  const h = station.capacity / spec.flowPerPx;
  if (station.stream !== undefined) {
    const lane = layout.lanes.find((each) => each.stream.id === station.stream)!;
    const own = lane.stream.flow / spec.flowPerPx;
    return { x, y: lane.bottom - own / 2 - h / 2, w, h, slack: h - own };
  }
  const run = layout.runs.find((each) => station.from >= each.from - 1e-9 && station.from < each.to) ?? layout.runs[0];
  if (run === undefined) return undefined;
  return { x, y: (run.top + run.bottom) / 2 - h / 2, w, h, slack: h - (run.bottom - run.top) };
}

function pinned(spec: BandSpec, layout: BandLayout, at: (minute: number) => RibbonRun | undefined): Note[] {
  const pin = spec.narrowest;
  const station = (spec.stations ?? []).find((each) => each.id === pin?.station);
  if (pin === undefined || station === undefined) return [];
  const box = frameBox(spec, layout, station.id);
  if (box === undefined) return [];
  const top = station.stream === undefined ? Math.min(box.y, at(station.from)?.top ?? box.y) : box.y;
  return [
    {
      id: `${station.id}.narrowest`,
      x: box.x + Math.min(box.w / 2, 24),
      y: top,
      text: pin.text,
      ...(pin.note === undefined ? {} : { note: pin.note }),
      up: true,
      ...(box.slack < -0.01 ? { fill: 'act' as const, strong: true } : {}),
    },
  ];
}

function laneMarks(
  lane: Lane,
  ribbonTracks: readonly Track[],
  hits: { id: string; box: Box }[],
  obstacles: Box[],
  anchors: { id: string; x: number; y: number }[],
): Mark[] {
  const { stream, bottom } = lane;
  const marks: Mark[] = [];
  for (const part of lane.parts) {
    const w = part.x1 - part.x0;
    const h = part.y1 - part.y0;
    if (w < 1) continue;
    const spec = stream.parts!.find((each) => each.id === part.id)!;
    marks.push(
      rect(part.x0, part.y0, w, h, { fill: 'paper' }),
      ...strip(spec.material, straightTrack(part.x0, part.y0, w, h)),
      rect(part.x0, part.y0, w, h, { stroke: 'ink', width: 0.9 }),
    );
    hits.push({ id: part.id, box: { x: part.x0, y: part.y0, w, h } });
    anchors.push({ id: part.id, x: part.x0, y: (part.y0 + part.y1) / 2 });
  }
  const own = lane.runs.map((run) => straightTrack(run.x0, bottom - run.width, run.x1 - run.x0, run.width));
  marks.push(...ribbon([...own, lane.bend, ...ribbonTracks], stream.material));
  for (const run of lane.runs) {
    marks.push(line(run.x0, bottom - run.width, run.x0, bottom, { stroke: 'ink', width: 0.9 }));
    hits.push({ id: stream.id, box: { x: run.x0, y: bottom - run.width, w: run.x1 - run.x0, h: run.width } });
    obstacles.push({ x: run.x0, y: bottom - run.width, w: run.x1 - run.x0, h: run.width });
  }
  for (let s = 0; s < lane.bend.length; s += 18) {
    const [x, y] = lane.bend.at(s, lane.bend.width / 2);
    const half = lane.bend.width / 2;
    obstacles.push({ x: x - half, y: y - half, w: 2 * half, h: 2 * half });
    hits.push({ id: stream.id, box: { x: x - half, y: y - half, w: 2 * half, h: 2 * half } });
  }
  for (const vapour of lane.vapours) {
    const { face, strokes, box } = plume(vapour, bottom);
    marks.push(
      path(face, { fill: 'paper' }),
      path(strokes, { stroke: 'draw', width: 1.2, dash: [3, 4], cap: 'round' }),
      path(face, { stroke: 'ink', width: 0.8 }),
    );
    hits.push({ id: vapour.id, box });
    obstacles.push(box);
    anchors.push({ id: vapour.id, x: box.x + box.w / 2, y: box.y });
  }
  return marks;
}

/** Vapour: gathers along the stretch where it leaves and rises as a strip of its true width. */
function plume(vapour: Lane['vapours'][number], bottom: number): { face: string; strokes: string; box: Box } {
  const high = 50;
  const middle = (vapour.x0 + vapour.x1) / 2;
  const half = Math.max(0.5, vapour.width / 2);
  const wide = bottom - vapour.before;
  const narrow = bottom - vapour.after;
  const left: Point[] = [];
  const right: Point[] = [];
  for (let k = 0; k <= 10; k += 1) {
    const t = k / 10;
    const lift = Math.pow(t, 2.2) * high;
    const ease = 1 - Math.pow(1 - t, 2.6);
    left.push([vapour.x0 + (middle - half - vapour.x0) * ease, wide - lift]);
    right.push([vapour.x1 + (middle + half - vapour.x1) * ease, narrow - lift - (narrow - wide) * t]);
  }
  const outline = [...left, ...right.slice().reverse(), [vapour.x0, narrow] as Point];
  return {
    face: new Pen().through(outline, true).d,
    strokes: hatch(outline, { pitch: 5, angle: 90 }),
    box: { x: vapour.x0, y: wide - high, w: vapour.x1 - vapour.x0, h: high + narrow - wide },
  };
}

/** The coat falls from above: one part turns onto the top, the other passes behind the bar and turns under it. */
function coatFall(spec: BandSpec, layout: BandLayout, obstacles: Box[], anchors: { id: string; x: number; y: number }[]): Mark[] {
  const coat = spec.coat!;
  const first = layout.runs.find((run) => run.from >= coat.joinsAt);
  if (first === undefined) return [];
  const join = layout.scale.x(coat.joinsAt);
  const over = coat.over / spec.flowPerPx;
  const under = coat.under / spec.flowPerPx;
  const start = 64;
  const radius = over / 2 + 40;
  const x = join - radius;
  const top = layout.shoulder - over / 2;
  const marks: Mark[] = [];
  if (under > 0) {
    const below = first.bottom - under / 2;
    const ux = x - over / 2 - under / 2;
    const turn = under / 2 + 12;
    const fall = new TrackMaker(ux, start, 90, under)
      .go(below - turn - start)
      .turn(-90, turn)
      .go(join - ux - turn)
      .done();
    marks.push(...ribbon([fall, ...along(layout.runs, `${coat.id}.under`)], coat.material));
    obstacles.push({ x: ux - under / 2, y: start, w: under, h: below - start });
  }
  if (over > 0) {
    const fall = new TrackMaker(x, start, 90, over)
      .go(top - radius - start)
      .turn(-90, radius)
      .done();
    marks.push(...ribbon([fall, ...along(layout.runs, `${coat.id}.over`)], coat.material));
    obstacles.push({ x: x - over / 2, y: start, w: over, h: top - start }, { x, y: top - radius * 0.45, w: radius, h: radius * 0.45 });
  }
  marks.push(line(x - over / 2 - under, start, x + over / 2, start, { stroke: 'ink', width: 1 }));
  anchors.push({ id: coat.id, x: x + over / 2 + 12, y: start + 12 });
  return marks;
}

/** What leaves: a strip of its true width down from the underside, and its way back. */
function returns(
  spec: BandSpec,
  layout: BandLayout,
  hits: { id: string; box: Box }[],
  anchors: { id: string; x: number; y: number }[],
): Mark[] {
  const marks: Mark[] = [];
  (spec.leaving ?? []).forEach((item) => {
    const before = layout.runs.filter((run) => run.from < item.at).pop() ?? layout.runs[0];
    if (before === undefined) return;
    const width = Math.max(0.8, item.flow / spec.flowPerPx);
    const x = layout.scale.x(item.at);
    const y = before.bottom - width / 2;
    const radius = 9 + width / 2;
    const low = layout.clockY - 44;
    const lane = layout.lanes.find((each) => each.stream.id === item.backTo);
    const maker = new TrackMaker(x, y, 0, width).turn(90, radius).go(Math.max(4, low - y - (lane === undefined ? radius : 2 * radius)));
    const words = { x: x + radius + 8, y: low - 4, anchor: 'start' as 'start' | 'end' };
    if (lane !== undefined) {
      const back = lane.runs[0]?.x0 ?? lane.bend.at(0, 0)[0];
      const half = (x - back) * 0.5;
      maker.turn(90, radius).go(item.idle === true ? half : x - back - radius);
      const from = item.idle === true ? x - half : back + radius;
      const up = new Pen()
        .move(from, low)
        .to(back + 26, low)
        .cubic(back + 6, low, back, low - 8, back, lane.bottom + 2);
      marks.push(
        path(up.d, {
          stroke: 'ink',
          width: item.idle === true ? 1.1 : Math.max(1.2, width),
          ...(item.idle === true ? { dash: [4, 3] } : {}),
          id: `${item.id}.back`,
        }),
      );
      words.x = x - 6;
      words.y = low - 7;
      words.anchor = 'end';
      if (item.backText !== undefined) marks.push(text(x - half + 8, low + 17, item.backText, 13, { fill: 'ink-2' }));
    }
    const { face } = ribbonPaths(maker.done());
    marks.push(path(face, { fill: 'ink', id: item.id }));
    marks.push(text(words.x, words.y, item.text, 14, { anchor: words.anchor, fill: 'ink-2' }));
    hits.push({ id: item.id, box: { x: x - 12, y, w: 24 + radius, h: low - y } });
    anchors.push({ id: item.id, x, y: low });
  });
  return marks;
}

function straps(spec: BandSpec, runs: readonly RibbonRun[], x: (minute: number) => number): Mark[] {
  const marks: Mark[] = [];
  const held = [
    ...spec.streams.map((stream) => ({ id: stream.id, spans: stream.held ?? [] })),
    ...(spec.coat === undefined ? [] : [{ id: spec.coat.id, spans: spec.coat.held ?? [] }]),
  ];
  for (const { id, spans } of held) {
    for (const [from, to] of spans) {
      const pen = new Pen();
      const end = x(to);
      for (let at = x(from), k = 0; at <= end + 0.5; at += k === 0 ? 8 : 26, k += 1) {
        for (const run of runs) {
          if (at < run.x0 || at + 4 > run.x1) continue;
          for (const layer of run.layers)
            if (layer.id === id || layer.id.startsWith(`${id}.`)) pen.rect(at, layer.y0 + 0.5, 4, layer.y1 - layer.y0 - 1);
        }
      }
      // a rim of paper keeps a strap apart from a dark texture, above all on black-and-white paper
      if (!pen.empty) marks.push(path(pen.d, { stroke: 'paper', width: 3 }), path(pen.d, { fill: 'held', id: `${id}.held` }));
    }
  }
  return marks;
}

/** Names of parts at the left, of streams under their lanes, of vapour beside it, of the coat beside its fall. */
function laneWords(spec: BandSpec, layout: BandLayout, obstacles: Box[]): Mark[] {
  const marks: Mark[] = [];
  const label = (x: number, y: number, words: string, note: string | undefined): void => {
    marks.push(text(x, y, words, 16, { weight: 560 }));
    if (note !== undefined) marks.push(text(x, y + 18, note, 13, { fill: 'ink-2' }));
    obstacles.push({ x, y: y - 14, w: Math.max(textWidth(words, 16, 560), textWidth(note ?? '', 13)), h: note === undefined ? 18 : 36 });
  };
  for (const lane of layout.lanes) {
    const parts = lane.parts.map((part) => ({
      id: part.id,
      text: lane.stream.parts!.find((each) => each.id === part.id)!.label,
      y: (part.y0 + part.y1) / 2,
    }));
    if (parts.length > 0) marks.push(...sideLabels(parts, lane.parts[0]!.x0, 'left', 13).marks);
    const x = lane.runs[0]?.x0 ?? lane.bend.at(0, 0)[0];
    label(x + 8, lane.bottom + 21, lane.stream.label, lane.stream.note);
    for (const vapour of lane.vapours) {
      const tx = (vapour.x0 + vapour.x1) / 2 + vapour.width / 2 + 9;
      const ty = lane.bottom - vapour.before - 42;
      marks.push(text(tx, ty, vapour.text, 13, { fill: 'ink-2' }));
      obstacles.push({ x: tx, y: ty - 12, w: textWidth(vapour.text, 13), h: 16 });
    }
  }
  const coat = spec.coat;
  if (coat !== undefined) {
    const over = coat.over / spec.flowPerPx;
    const x = layout.scale.x(coat.joinsAt) - (over / 2 + 40) + over / 2 + 12;
    label(x, 78, coat.label, coat.note);
  }
  return marks;
}

function plumb(minute: number, at: (minute: number) => RibbonRun | undefined, x: (minute: number) => number, clockY: number): Mark[] {
  const run = at(minute);
  const px = x(minute);
  if (run === undefined) return [line(px, 40, px, clockY, { stroke: 'ink', width: 1.6, dash: [1.6, 4] })];
  return [
    line(px, run.top - 14, px, clockY, { stroke: 'ink', width: 1.8, dash: [1.8, 4], id: 'plumb' }),
    circle(px, (run.top + run.bottom) / 2, 6.5, { fill: 'ink', stroke: 'paper', width: 2 }),
  ];
}
