import { spread, type SectionDrawing, type SectionSpec } from '@barwright/drawing';
import type { PartInfo } from '../engine/protocol.js';

/** A part's place beside the drawing, px from the top of the plate. */
export interface RowPlace {
  readonly part: PartInfo;
  /** Where the part itself lies, for its water level. */
  readonly y0: number;
  readonly y1: number;
  /** Middle of its row. */
  readonly y: number;
}

/** A boundary a hand can pull: which thickness it changes, and how many px up one mm more is. */
export interface EdgePlace {
  readonly id: string;
  readonly y: number;
  /** Where a hand takes it: apart from its neighbours. */
  readonly grip: number;
  readonly pxPerMm: number;
  readonly words: string;
}

const largest = 30;

/** Px per mm so that the bar fits the room it has, never more than about eight times life size. */
export function scaleFor(spec: SectionSpec, width: number, height: number): number {
  const tall = spec.layers.reduce((sum, layer) => sum + layer.thickness, 0) + (spec.coat?.top ?? 0) + (spec.coat?.bottom ?? 0);
  const fits = Math.min((width - 12) / spec.width, (height - 12) / tall, largest * Math.max(1, width / 700));
  return Math.max(1, Math.floor(fits * 20) / 20);
}

/** Rows of the parts: each beside its own place where there is room, pushed apart where there is not. */
export function rowPlaces(parts: readonly PartInfo[], drawn: SectionDrawing, top: number, apart: number): readonly RowPlace[] {
  const found = parts.map((part) => ({ part, ...placeOf(part, parts, drawn) }));
  const lowest = Math.max(drawn.height, apart * parts.length) - apart / 2;
  const ys = spread(
    found.map(({ y0, y1 }) => top + (y0 + y1) / 2),
    apart,
    apart * 0.42,
    top + lowest,
  );
  return found.map((row, i) => ({ ...row, y0: top + row.y0, y1: top + row.y1, y: ys[i]! }));
}

function placeOf(part: PartInfo, parts: readonly PartInfo[], drawn: SectionDrawing): { y0: number; y1: number } {
  if (part.slug === 'coat') return { y0: drawn.box.y, y1: drawn.core.y };
  const host = drawn.layers.find(({ id }) => id === (part.within ?? part.slug))!;
  // What has sunk into a layer shares its height: it is listed above it, in the upper part.
  const sharing = parts.filter((other) => (other.within ?? other.slug) === host.id);
  const at = sharing.indexOf(part);
  const each = (host.y1 - host.y0) / sharing.length;
  return { y0: host.y0 + at * each, y1: host.y0 + (at + 1) * each };
}

/** Boundaries from the top: the coat, then the top of each layer. */
export function edgePlaces(parts: readonly PartInfo[], drawn: SectionDrawing, spec: SectionSpec, top: number): readonly EdgePlace[] {
  const perMm = 1 / drawn.mmPerPx;
  const hosts = parts.filter((part) => part.slug !== 'coat' && part.within === undefined);
  const layers = hosts.map((host) => {
    const place = drawn.layers.find(({ id }) => id === host.slug)!;
    return { id: `layer.${host.slug}.thickness`, y: top + place.y0, pxPerMm: perMm, words: `top of the ${host.name}` };
  });
  if (!spec.coat) return apart(layers);
  const faces = spec.underside === 'open' ? 1 : 2;
  return apart([{ id: 'coat.thickness', y: top + drawn.box.y, pxPerMm: perMm * faces, words: 'edge of the coat' }, ...layers]);
}

/** Grips of boundaries that lie close together stand apart, so that a finger finds each. */
function apart(edges: readonly Omit<EdgePlace, 'grip'>[]): readonly EdgePlace[] {
  const grips = spread(
    edges.map(({ y }) => y),
    28,
  );
  return edges.map((edge, i) => ({ ...edge, grip: grips[i]! }));
}

/** Water activity from the left to the right end, in tenths around what there is. */
export function waterScale(
  levels: readonly number[],
): { readonly scale: readonly [number, number]; readonly ticks: readonly number[] } | undefined {
  const known = levels.filter((level) => Number.isFinite(level));
  if (known.length === 0) return undefined;
  const low = Math.max(0, Math.floor(10 * (Math.min(...known) - 0.05)) / 10);
  const high = Math.min(1, Math.ceil(10 * (Math.max(...known) + 0.05)) / 10);
  const tenths = Math.round((high - low) * 10);
  const every = tenths > 5 ? 2 : 1;
  const ticks = Array.from({ length: Math.floor(tenths / every) + 1 }, (_, i) => Math.round(10 * low + i * every) / 10);
  // Room for the outermost numbers.
  const room = 0.09 * (high - low);
  return { scale: [low - room, high + room], ticks };
}
