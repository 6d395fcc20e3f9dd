import type { Point } from '../geometry/polygon.js';
import { Pen } from '../pen.js';

/**
 * The middle line of a ribbon, made of straight parts and arcs. A place on the ribbon is (s, v): s along it, v across it from
 * its left edge (the upper one when it runs to the right); arcs keep the ribbon's true width.
 */
export interface Track {
  readonly width: number;
  readonly length: number;
  readonly straight: boolean;
  readonly at: (s: number, v: number) => Point;
  readonly parts: readonly Part[];
}

interface Part {
  readonly start: number;
  readonly length: number;
  readonly x: number;
  readonly y: number;
  /** Heading, radians, clockwise from the right on the page. */
  readonly heading: number;
  /** Radius of the arc, 0 for a straight part; positive turns clockwise (to the right hand). */
  readonly radius: number;
}

/** Builds a track step by step from a point and a heading in degrees (0 to the right, 90 down). */
export class TrackMaker {
  private readonly parts: Part[] = [];
  private x: number;
  private y: number;
  private heading: number;
  private s = 0;
  constructor(
    x: number,
    y: number,
    heading: number,
    private readonly width: number,
  ) {
    this.x = x;
    this.y = y;
    this.heading = (heading * Math.PI) / 180;
  }
  go(length: number): this {
    if (length <= 0) return this;
    this.parts.push({ start: this.s, length, x: this.x, y: this.y, heading: this.heading, radius: 0 });
    this.x += Math.cos(this.heading) * length;
    this.y += Math.sin(this.heading) * length;
    this.s += length;
    return this;
  }
  /** Turns by `degrees` (clockwise positive) on an arc of the given radius of the middle line. */
  turn(degrees: number, radius: number): this {
    if (Math.abs(degrees) < 1e-6) return this;
    const angle = (degrees * Math.PI) / 180;
    const signed = degrees > 0 ? radius : -radius;
    const length = Math.abs(angle) * radius;
    this.parts.push({ start: this.s, length, x: this.x, y: this.y, heading: this.heading, radius: signed });
    const cx = this.x - Math.sin(this.heading) * signed;
    const cy = this.y + Math.cos(this.heading) * signed;
    this.heading += angle;
    this.x = cx + Math.sin(this.heading) * signed;
    this.y = cy - Math.cos(this.heading) * signed;
    this.s += length;
    return this;
  }
  done(): Track {
    const { parts, width } = this;
    const place = (s: number, v: number): Point => {
      let part = parts[0]!;
      for (const next of parts) if (next.start <= s + 1e-9) part = next;
      return onPart(part, s - part.start, v - width / 2);
    };
    return { width, length: this.s, straight: parts.length === 1 && parts[0]!.radius === 0, at: place, parts };
  }
}

function onPart(part: Part, s: number, off: number): Point {
  if (part.radius === 0) {
    const cos = Math.cos(part.heading);
    const sin = Math.sin(part.heading);
    return [part.x + cos * s - sin * off, part.y + sin * s + cos * off];
  }
  const heading = part.heading + s / part.radius;
  const cx = part.x - Math.sin(part.heading) * part.radius;
  const cy = part.y + Math.cos(part.heading) * part.radius;
  return [cx + Math.sin(heading) * (part.radius - off), cy - Math.cos(heading) * (part.radius - off)];
}

/** A straight ribbon running to the right from its upper left corner. */
export function straightTrack(x: number, y: number, length: number, width: number): Track {
  return new TrackMaker(x, y + width / 2, 0, width).go(length).done();
}

/** An S from one level down (or up) to another, arc, straight, arc, so that the width stays true; ends heading right. */
export function stepTrack(x: number, y: number, endX: number, endY: number, width: number, lead: number): Track {
  const drop = endY - y;
  if (Math.abs(drop) < 1e-3) return new TrackMaker(x, endY, 0, width).go(Math.max(lead, endX - x)).done();
  const radius = width / 2 + Math.max(22, Math.min(46, Math.abs(drop) * 0.2));
  const down = Math.sign(drop);
  const steepest = 74;
  const cosine = 1 - Math.abs(drop) / (2 * radius);
  const angle = Math.min(steepest, (Math.acos(Math.max(-1, cosine)) * 180) / Math.PI);
  const turn = (angle * Math.PI) / 180;
  const slope = Math.max(0, (Math.abs(drop) - 2 * radius * (1 - Math.cos(turn))) / Math.sin(turn || 1));
  const wide = 2 * radius * Math.sin(turn) + slope * Math.cos(turn);
  const maker = new TrackMaker(x, y, 0, width).go(Math.max(lead, endX - wide - x));
  return maker
    .turn(down * angle, radius)
    .go(slope)
    .turn(-down * angle, radius)
    .done();
}

/** Both edges of a track, as points dense enough for a curve. */
export function edges(track: Track): readonly [Point[], Point[]] {
  const left: Point[] = [];
  const right: Point[] = [];
  for (const part of track.parts) {
    const steps = part.radius === 0 ? 1 : Math.max(2, Math.ceil(part.length / 5));
    for (let k = left.length === 0 ? 0 : 1; k <= steps; k += 1) {
      const s = (part.length * k) / steps;
      left.push(onPart(part, s, -track.width / 2));
      right.push(onPart(part, s, track.width / 2));
    }
  }
  return [left, right];
}

/** The outline of a ribbon: its face for filling and its two long edges for inking. */
export function ribbonPaths(track: Track): { readonly face: string; readonly edges: string } {
  const [left, right] = edges(track);
  const sides = new Pen().through(left).through(right);
  return { face: new Pen().through([...left, ...right.slice().reverse()], true).d, edges: sides.d };
}

/**
 * One ribbon out of several, end to end, each with its own width: a texture runs through them without a seam.
 * @param nominal - width the texture is laid out for; it is stretched across to each piece's own
 */
export function joined(tracks: readonly Track[], nominal: number): Track {
  const starts: number[] = [];
  let length = 0;
  for (const track of tracks) {
    starts.push(length);
    length += track.length;
  }
  return {
    width: nominal,
    length,
    straight: false,
    parts: tracks.flatMap((track) => track.parts.map((part) => ({ ...part, width: track.width }))),
    at: (s, v) => {
      let k = tracks.length - 1;
      while (k > 0 && starts[k]! > s) k -= 1;
      const track = tracks[k]!;
      return track.at(s - starts[k]!, (v / nominal) * track.width);
    },
  };
}
