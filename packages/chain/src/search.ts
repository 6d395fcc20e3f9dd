import { brent, type Point } from './brent.js';

/** The end of a search: a zero, or the nearest that was met. */
export interface SearchResult {
  readonly found: boolean;
  /** Undefined when the function had no value anywhere. */
  readonly nearest: Point | undefined;
  /** Largest less smallest value met. */
  readonly spread: number;
  readonly iterations: number;
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * Looks for the zero of a function that lies nearest to `start`, within `low` to `high`. The function need be neither
 * monotone nor continuous, and may have no value (NaN) in places: the range is scanned outward from `start`, each change of
 * sign is closed in by Brent's method, and without one the edges of gaps and the places of least |f| are looked at closely.
 *
 * @param points - how finely the range is scanned; two zeros between neighbours can be missed
 * @param tolerance - |f| up to this counts as zero
 */
export function searchZero(
  ask: (x: number) => number,
  start: number,
  low: number,
  high: number,
  points: number,
  tolerance: number,
): SearchResult {
  let nearest: Point | undefined;
  let [least, most, iterations] = [Infinity, -Infinity, 0];
  const probe = (x: number): Point => {
    const f = ask(x);
    iterations++;
    if (f < least) least = f;
    if (f > most) most = f;
    if (!Number.isNaN(f) && (!nearest || Math.abs(f) < Math.abs(nearest.f))) nearest = { x, f };
    return { x, f };
  };
  const done = () => nearest !== undefined && Math.abs(nearest.f) <= tolerance;
  const between = (a: Point, b: Point): boolean => {
    if (a.f > 0 !== b.f > 0 && !Number.isNaN(a.f) && !Number.isNaN(b.f)) brent((x) => probe(x).f, a, b, tolerance * 1e-3);
    return done();
  };
  const result = (): SearchResult => ({ found: done(), nearest, spread: most >= least ? most - least : 0, iterations });

  const scanned = [probe(Math.min(high, Math.max(low, start)))];
  for (const x of outward(scanned[0]!.x, low, high, points)) {
    if (done()) return result();
    const right = x > scanned[0]!.x;
    const neighbour = right ? scanned[scanned.length - 1]! : scanned[0]!;
    const point = probe(x);
    if (right) scanned.push(point);
    else scanned.unshift(point);
    if (between(neighbour, point)) return result();
  }
  if (done()) return result();
  for (let i = 1; i < scanned.length; i++) if (edge(probe, between, scanned[i - 1]!, scanned[i]!)) return result();
  const hollows = scanned.flatMap((point, i) => {
    const [left, right] = [scanned[i - 1] ?? point, scanned[i + 1] ?? point];
    const size = Math.abs(point.f);
    return size <= Math.abs(left.f) && size <= Math.abs(right.f) ? [{ left, point, right, size }] : [];
  });
  hollows.sort((a, b) => a.size - b.size);
  for (const { left, point, right } of hollows.slice(0, 4)) if (hollow(probe, between, left, point, right)) return result();
  return result();
}

/** Scan points in order of their distance from the start. */
function outward(start: number, low: number, high: number, points: number): readonly number[] {
  const list = Array.from({ length: points }, (_, i) => (i === points - 1 ? high : low + ((high - low) * i) / (points - 1)));
  return list.filter((x) => x !== start).sort((a, b) => Math.abs(a - start) - Math.abs(b - start) || a - b);
}

type Probe = (x: number) => Point;
type Between = (a: Point, b: Point) => boolean;

/** Halves the way from a point with a value to one without, up to the edge of the gap. */
function edge(probe: Probe, between: Between, one: Point, other: Point): boolean {
  if (Number.isNaN(one.f) === Number.isNaN(other.f)) return false;
  let [inside, outside] = Number.isNaN(one.f) ? [other, one.x] : [one, other.x];
  for (let i = 0; i < 40; i++) {
    const point = probe((inside.x + outside) / 2);
    if (Number.isNaN(point.f)) outside = point.x;
    else if (between(inside, point)) return true;
    else inside = point;
  }
  return false;
}

/** Golden section towards the least |f|; stops where the sign changes. */
function hollow(probe: Probe, between: Between, left: Point, point: Point, right: Point): boolean {
  let [a, middle, b] = [left.x, point, right.x];
  for (let i = 0; i < 60 && b - a > 1e-12 * (Math.abs(a) + Math.abs(b)); i++) {
    const towardsLeft = middle.x - a > b - middle.x;
    const next = probe(middle.x + (towardsLeft ? a - middle.x : b - middle.x) * GOLDEN);
    if (between(middle, next)) return true;
    if (Math.abs(next.f) < Math.abs(middle.f)) {
      if (towardsLeft) b = middle.x;
      else a = middle.x;
      middle = next;
    } else if (towardsLeft) a = next.x;
    else b = next.x;
  }
  return false;
}
