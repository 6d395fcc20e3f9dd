import type { Cell } from './geometry/cell.js';
import { hatch } from './geometry/hatch.js';
import type { Point } from './geometry/polygon.js';
import { seedOf } from './geometry/random.js';
import { group, line, path, rect, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { apartFrom, between, outlinePath, outlinePoints, type Rounded } from './section-outline.js';
import { wedge } from './signs.js';
import { checkSection, type SectionCoat, type SectionLayer, type SectionSpec } from './section-spec.js';
import { contours, linings } from './textures/contours.js';
import { face, type Drawn } from './textures/face.js';

/** Where a layer lies on the sheet, px; y0 is its top. */
export interface LayerPlace {
  readonly id: string;
  readonly name: string;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  /** Areas really drawn, mm². */
  readonly drawn: Drawn;
}
export interface SectionDrawing extends Drawing {
  /** From below, as asked. */
  readonly layers: readonly LayerPlace[];
  /** The finished bar. */
  readonly box: Box;
  /** The layers without the coat. */
  readonly core: Box;
  /** Path data of the finished outline, and of the target if one was given. */
  readonly outline: string;
  readonly targetOutline?: string;
  readonly mmPerPx: number;
  /** Enlargement on a screen of 96 px to the inch (CSS pixel). */
  readonly timesLifeSize: number;
  /** Finished height, mm. */
  readonly heightMm: number;
}

const cssPxPerMm = 96 / 25.4;
const bare: Omit<SectionCoat, 'chocolate'> = { top: 0, left: 0, right: 0, bottom: 0 };

/**
 * The bar cut open, true to scale: layers from below in their textures, the coat with its own thickness on each side, the
 * target as a shade behind and a dotted outline over it.
 * @throws DrawingError naming the part that cannot be drawn
 */
export function section(spec: SectionSpec): SectionDrawing {
  checkSection(spec);
  const { scale } = spec;
  const margin = spec.margin ?? (spec.excess === undefined ? 6 : 18);
  const open = spec.underside === 'open';
  const coat = { ...(spec.coat ?? bare), ...(open ? { bottom: 0 } : {}) };
  const core = spec.layers.reduce((sum, layer) => sum + layer.thickness, 0);
  const heightMm = core + coat.top + coat.bottom;
  const target = spec.target;
  const sheetW = Math.max(spec.width, target?.width ?? 0) * scale + 2 * margin;
  const sheetH = Math.max(heightMm, target?.height ?? 0) * scale + 2 * margin;
  const middle = sheetW / 2;
  const floor = sheetH - margin;
  const grain = spec.grain ?? Math.max(1, 10 / scale);

  const corner = {
    ...coat,
    ...(target?.coat ?? {}),
    ...(target !== undefined && target.coat === undefined && spec.excess !== undefined ? aimed(spec, coat) : {}),
  };
  const outer = rounded(spec.width, heightMm, corner, middle, floor, scale, open);
  const inner: Rounded = {
    x0: outer.x0 + coat.left * scale,
    x1: outer.x1 - coat.right * scale,
    y0: outer.y0 + coat.top * scale,
    y1: floor - coat.bottom * scale,
    top: radius(0.5, Math.min(coat.top, coat.left, coat.right), spec) * scale,
    bottom: open ? 0 : radius(0.5, Math.min(coat.bottom, coat.left, coat.right), spec) * scale,
    open,
  };
  const marks: Mark[] = [];
  const targetForm = target === undefined ? undefined : rounded(target.width, target.height, corner, middle, floor, scale, open);
  if (targetForm !== undefined) marks.push(path(outlinePath(targetForm, true), { fill: 'shade', id: 'target' }));
  marks.push(path(outlinePath(outer, true), { fill: 'paper', id: 'bar' }));
  if (spec.coat !== undefined) marks.push(group(coatMarks(spec, coat, outer, inner), { id: 'coat' }));

  const places: LayerPlace[] = [];
  let y = inner.y1;
  spec.layers.forEach((layer, at) => {
    const h = layer.thickness * scale;
    const first = at === 0;
    const last = at === spec.layers.length - 1;
    const cell: Cell = {
      w: (inner.x1 - inner.x0) / scale,
      h: layer.thickness,
      top: last ? Math.min(inner.top / scale, layer.thickness / 2) : 0,
      bottom: first ? Math.min(inner.bottom / scale, layer.thickness / 2) : 0,
    };
    y -= h;
    const drawing = face(cell, layer, layer.seed ?? seedOf(layer.id), scale, grain);
    marks.push(group([...drawing.marks, ...layerSigns(layer, cell, scale)], { at: [inner.x0, y], id: layer.id, label: layer.name }));
    if (!last) marks.push(line(inner.x0, y, inner.x1, y, { stroke: 'ink', width: edge(scale) }));
    places.push({ id: layer.id, name: layer.name, x0: inner.x0, x1: inner.x1, y0: y, y1: y + h, drawn: drawing.drawn });
  });

  marks.push(path(outlinePath(inner), { stroke: 'ink', width: edge(scale) }));
  marks.push(path(outlinePath(outer), { stroke: 'ink', width: edge(scale) * 1.15 }));
  if (open) marks.push(line(outer.x0, floor, outer.x1, floor, { stroke: 'ink', width: edge(scale) }));
  if (targetForm !== undefined) marks.push(...targetLines(spec, targetForm, outer, inner, places));
  if (spec.excess !== undefined && targetForm !== undefined) {
    const d = apartFrom(outlinePoints(outer), outlinePoints(sound(spec, coat, outer)), 0.8, 'outside');
    if (d !== '') marks.push(path(d, { stroke: 'act', width: spec.excess.standing === 'measured' ? 3 : 2, id: 'excess-line' }));
    if (d !== '') marks.push(...spec.excess.sides.map((side) => excessWedge(side, outer)));
  }
  if (coat.held === true) marks.push(...straps(outer.x0, outer.x1, outer.y0 - 4, inner.y0 + 4));

  return {
    marks,
    width: sheetW,
    height: sheetH,
    layers: places,
    box: { x: outer.x0, y: outer.y0, w: outer.x1 - outer.x0, h: floor - outer.y0 },
    core: { x: inner.x0, y: inner.y0, w: inner.x1 - inner.x0, h: inner.y1 - inner.y0 },
    outline: outlinePath(outer),
    ...(targetForm === undefined ? {} : { targetOutline: outlinePath(targetForm) }),
    mmPerPx: 1 / scale,
    timesLifeSize: scale / cssPxPerMm,
    heightMm,
  };
}

/** The long side of the bar, cut along its middle: the same layers over `length` mm, `ends` mm of coat at each end. */
export function sideView(spec: SectionSpec, length: number, ends: number): SectionDrawing {
  const { target: _target, excess: _excess, ...rest } = spec;
  return section({
    ...rest,
    width: length,
    layers: spec.layers.map((layer) => ({ ...layer, seed: (layer.seed ?? seedOf(layer.id)) + 1 })),
    ...(spec.coat === undefined ? {} : { coat: { ...spec.coat, left: ends, right: ends } }),
  });
}

const edge = (scale: number): number => (scale >= 12 ? 1.6 : 1);

function radius(wanted: number, coat: number, spec: SectionSpec): number {
  if (coat <= 0) return 0;
  const core = spec.layers.reduce((sum, layer) => sum + layer.thickness, 0);
  return Math.min(wanted, core / 4, spec.width / 8);
}

/** The finished outline: corners are rounder the thicker the coat; a naked bar is cut square. */
function rounded(
  width: number,
  height: number,
  coat: Omit<SectionCoat, 'chocolate' | 'held'>,
  middle: number,
  floor: number,
  scale: number,
  open: boolean,
): Rounded {
  const most = Math.min(width / 4, height / 3);
  const side = Math.max(coat.left, coat.right);
  const top = coat.top > 0 && side > 0 ? Math.min(0.55 + 0.55 * (coat.top + side), most) : 0;
  const bottom = !open && coat.bottom > 0 && side > 0 ? Math.min(0.4 + 0.28 * (coat.bottom + side), most) : 0;
  return {
    x0: middle - (width / 2) * scale,
    x1: middle + (width / 2) * scale,
    y0: floor - height * scale,
    y1: floor,
    top: top * scale,
    bottom: bottom * scale,
    open,
  };
}

/** Coat the target asks for on each side, mm: given, or what its width and height leave. */
function aimed(spec: SectionSpec, coat: Omit<SectionCoat, 'chocolate'>): Record<'top' | 'left' | 'right' | 'bottom', number> {
  const target = spec.target!;
  const core = spec.layers.reduce((sum, layer) => sum + layer.thickness, 0);
  const side = (which: 'left' | 'right'): number => target.coat?.[which] ?? Math.max(0, (target.width - spec.width) / 2 + coat[which]);
  return {
    top: target.coat?.top ?? Math.max(0, target.height - core - coat.bottom),
    left: side('left'),
    right: side('right'),
    bottom: target.coat?.bottom ?? coat.bottom,
  };
}

/** The outline the bar would have without its excess on the named sides. */
function sound(spec: SectionSpec, coat: Omit<SectionCoat, 'chocolate'>, outer: Rounded): Rounded {
  const aim = aimed(spec, coat);
  const over = (side: 'top' | 'left' | 'right' | 'bottom'): number =>
    spec.excess?.sides.includes(side) === true ? Math.max(0, coat[side] - aim[side]) * spec.scale : 0;
  return { ...outer, x0: outer.x0 + over('left'), x1: outer.x1 - over('right'), y0: outer.y0 + over('top'), y1: outer.y1 - over('bottom') };
}

function coatMarks(spec: SectionSpec, coat: Omit<SectionCoat, 'chocolate'>, outer: Rounded, inner: Rounded): Mark[] {
  const kind = spec.coat!.chocolate;
  const lining = linings[kind];
  const hatched = spec.excess?.standing === 'computed' && spec.target !== undefined;
  const solid = hatched ? sound(spec, coat, outer) : outer;
  const outerPoints = outlinePoints(solid);
  const innerPoints = outlinePoints(inner);
  const marks: Mark[] = [];
  const ring = (points: readonly Point[]): string => new Pen().through([...points, ...innerPoints.slice().reverse()], true).d;
  if (kind !== 'white') marks.push(path(ring(outerPoints), { fill: 'coat' }));
  const thickest = Math.max(coat.top, coat.left, coat.right, coat.bottom) * spec.scale;
  const thinnest =
    Math.min(...[coat.top, coat.left, coat.right, ...(outer.open ? [] : [coat.bottom])].filter((thickness) => thickness > 0)) * spec.scale;
  // as many lines as the thickest side wants, but no more than the thinnest can show apart
  const count = Math.max(1, Math.min(Math.round(thickest / lining.pitch), Math.round(thinnest / (lining.pitch * 0.72))));
  const lines = contours(outerPoints, innerPoints, count, kind, 11);
  marks.push(path(lines.thin, { stroke: 'draw', width: lining.widths[0] * weight(spec.scale) }));
  if (lines.thick !== '') marks.push(path(lines.thick, { stroke: 'draw', width: lining.widths[1] * weight(spec.scale) }));
  if (hatched) {
    const excess = between(outlinePoints(outer), outerPoints)
      .map((region) => hatch(region, { pitch: 5.2 }))
      .join('');
    if (excess !== '') {
      marks.push(path(excess, { stroke: 'act', width: 1.3, id: 'excess' }));
      marks.push(path(apartFrom(outerPoints, outlinePoints(outer), 0.6), { stroke: 'ink', width: 1 }));
    }
  }
  return marks;
}

const weight = (scale: number): number => (scale >= 12 ? 1 : 0.72);

function layerSigns(layer: SectionLayer, cell: Cell, scale: number): Mark[] {
  const marks: Mark[] = [];
  if (layer.front !== undefined && layer.front.depth > 0) {
    const depth = layer.front.depth * scale;
    const y = layer.front.from === 'top' ? 0 : cell.h * scale - depth;
    const w = cell.w * scale;
    const box: Point[] = [
      [0, y],
      [w, y],
      [w, y + depth],
      [0, y + depth],
    ];
    const level = layer.front.from === 'top' ? y + depth : y;
    marks.push(path(hatch(box, { pitch: 7 }), { stroke: 'ink-3', width: 0.8, id: `${layer.id}.front` }));
    marks.push(line(0, level, w, level, { stroke: 'ink', width: 1, dash: [3, 4] }));
  }
  if (layer.held === true) marks.push(...straps(0, cell.w * scale, -2, cell.h * scale + 2));
  return marks;
}

/** The mark that says the excess wants a hand, since on paper its hue is gone. */
function excessWedge(side: 'top' | 'left' | 'right' | 'bottom', outer: Rounded): Mark {
  const cx = (outer.x0 + outer.x1) / 2;
  const cy = (outer.y0 + outer.y1) / 2;
  if (side === 'top') return wedge(cx, outer.y0 - 4, 11, 'down');
  if (side === 'bottom') return wedge(cx, outer.y1 + 4, 11, 'up');
  return side === 'left' ? wedge(outer.x0 - 4, cy, 11, 'right') : wedge(outer.x1 + 4, cy, 11, 'left');
}

/** Two straps across a thing: it is held. */
function straps(x0: number, x1: number, y0: number, y1: number): Mark[] {
  const inset = Math.min(26, (x1 - x0) * 0.12);
  return [x0 + inset, x1 - inset - 5].flatMap((x) => [
    rect(x - 1.5, y0, 8, y1 - y0, { fill: 'paper' }),
    rect(x, y0, 5, y1 - y0, { fill: 'held' }),
  ]);
}

function targetLines(spec: SectionSpec, form: Rounded, outer: Rounded, inner: Rounded, places: readonly LayerPlace[]): Mark[] {
  const marks: Mark[] = [];
  // a target the bar meets is the bar's own line: dots on it would only roughen it
  const d = apartFrom(outlinePoints(form), outlinePoints(outer), 0.9);
  if (d !== '') {
    marks.push(path(d, { stroke: 'paper', width: 3 }));
    marks.push(path(d, { stroke: 'ink', width: 1.5, dash: [0.1, 3.4], cap: 'round', id: 'target-line' }));
  }
  const thickness = spec.target?.thickness;
  if (thickness === undefined) return marks;
  let y = inner.y1;
  places.forEach((place, at) => {
    const aim = thickness[at];
    if (aim === undefined) return;
    y -= aim * spec.scale;
    if (Math.abs(y - place.y0) < 1.5 || at === places.length - 1) return;
    for (const x of [inner.x0, inner.x1 - 22])
      marks.push(line(x, y, x + 22, y, { stroke: 'ink', width: 1.8, dash: [0.1, 3.4], cap: 'round' }));
  });
  return marks;
}
