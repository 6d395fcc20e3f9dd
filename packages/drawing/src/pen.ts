import type { Point } from './geometry/polygon.js';

const hundredths = Array.from({ length: 100 }, (_, k) => (k === 0 ? '' : k % 10 === 0 ? `.${k / 10}` : k < 10 ? `.0${k}` : `.${k}`));

/** A number as written into a path: two decimals, no trailing noise, no negative zero. Whole numbers turn into text much faster than fractions. */
export function n(value: number): string {
  const scaled = Math.round(value * 100);
  if (!(scaled < 1e9 && scaled > -1e9)) return String(scaled / 100);
  const size = scaled < 0 ? -scaled : scaled;
  const whole = (size / 100) | 0;
  const text = whole + hundredths[size - whole * 100]!;
  return scaled < 0 ? `-${text}` : text;
}

/** Writes path data; several shapes in one pen make one path, which is what keeps a picture light. */
export class Pen {
  private readonly parts: string[] = [];
  /** Shapes begun so far. */
  pieces = 0;

  get d(): string {
    return this.parts.join('');
  }
  get empty(): boolean {
    return this.parts.length === 0;
  }
  move(x: number, y: number): this {
    this.parts.push(`M${n(x)} ${n(y)}`);
    this.pieces += 1;
    return this;
  }
  to(x: number, y: number): this {
    this.parts.push(`L${n(x)} ${n(y)}`);
    return this;
  }
  cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this {
    this.parts.push(`C${n(x1)} ${n(y1)} ${n(x2)} ${n(y2)} ${n(x)} ${n(y)}`);
    return this;
  }
  /** Circular arc of radius r to (x, y); `clockwise` as seen on the page. */
  arc(r: number, x: number, y: number, clockwise = true, large = false): this {
    this.parts.push(`A${n(r)} ${n(r)} 0 ${large ? 1 : 0} ${clockwise ? 1 : 0} ${n(x)} ${n(y)}`);
    return this;
  }
  close(): this {
    this.parts.push('Z');
    return this;
  }
  segment(x1: number, y1: number, x2: number, y2: number): this {
    return this.move(x1, y1).to(x2, y2);
  }
  ring(cx: number, cy: number, r: number): this {
    this.move(cx - r, cy);
    const size = n(r);
    const across = n(2 * r);
    this.parts.push(`a${size} ${size} 0 1 0 ${across} 0a${size} ${size} 0 1 0 -${across} 0Z`);
    return this;
  }
  rect(x: number, y: number, w: number, h: number): this {
    return this.move(x, y)
      .to(x + w, y)
      .to(x + w, y + h)
      .to(x, y + h)
      .close();
  }
  through(points: readonly Point[], closed = false): this {
    const first = points[0];
    if (first === undefined) return this;
    this.move(first[0], first[1]);
    let run = '';
    for (let i = 1; i < points.length; i += 1) {
      const p = points[i]!;
      run += `L${n(p[0])} ${n(p[1])}`;
    }
    this.parts.push(closed ? `${run}Z` : run);
    return this;
  }
  /** A smooth open line through the points (Catmull-Rom as cubics). */
  smooth(points: readonly Point[]): this {
    if (points.length < 3) return this.through(points);
    const first = points[0]!;
    this.move(first[0], first[1]);
    for (let i = 0; i + 1 < points.length; i += 1) {
      const p0 = points[i - 1] ?? points[i]!;
      const p1 = points[i]!;
      const p2 = points[i + 1]!;
      const p3 = points[i + 2] ?? p2;
      this.cubic(
        p1[0] + (p2[0] - p0[0]) / 6,
        p1[1] + (p2[1] - p0[1]) / 6,
        p2[0] - (p3[0] - p1[0]) / 6,
        p2[1] - (p3[1] - p1[1]) / 6,
        p2[0],
        p2[1],
      );
    }
    return this;
  }
}
