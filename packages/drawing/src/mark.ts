/**
 * A picture as plain data. A mark is one shape or a group of shapes; it names inks, never colours, so that the same
 * picture serves the day sheet, the night sheet and black-and-white paper. Lengths are CSS pixels unless a name says mm;
 * x runs to the right, y runs down. Marks hold no clip, pattern, filter or gradient: what is drawn is already cut to shape.
 */

/** The inks of the drawn language. `draw` is the texture ink, `coat` the tone under chocolate, `paper` what lies beneath everything. */
export type Ink =
  'ink' | 'ink-2' | 'ink-3' | 'rule' | 'hair' | 'draw' | 'coat' | 'shade' | 'shade-2' | 'paper' | 'act' | 'act-wash' | 'held' | 'held-wash';

/** Line widths of the drawn language, px. */
export const lines = { hair: 0.6, fine: 1, ink: 1.6, bold: 3, strap: 5 } as const;

export interface Paint {
  readonly stroke?: Ink;
  readonly fill?: Ink;
  /** Stroke width, px. */
  readonly width?: number;
  /** Dash and gap lengths, px. */
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
  readonly join?: 'miter' | 'round';
  /** Fill holes where outlines overlap. */
  readonly evenOdd?: boolean;
  /** Name of the thing drawn, for hit areas and for keys. */
  readonly id?: string;
}

export interface PathMark extends Paint {
  readonly tag: 'path';
  /** Absolute M, L, C, Q, A, Z and relative a, as `Pen` writes them. */
  readonly d: string;
}
export interface LineMark extends Paint {
  readonly tag: 'line';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}
export interface RectMark extends Paint {
  readonly tag: 'rect';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
export interface CircleMark extends Paint {
  readonly tag: 'circle';
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}
/** A run of text inside a text mark that differs from its neighbours. */
export interface Span {
  readonly text: string;
  readonly size?: number;
  readonly weight?: number;
  readonly fill?: Ink;
  /** Baseline shift, px down. */
  readonly dy?: number;
}
export interface TextMark {
  readonly tag: 'text';
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly text: string | readonly Span[];
  readonly size: number;
  readonly weight?: number;
  /** `num`: numbers, names, units; `say`: sentences. */
  readonly font?: 'num' | 'say';
  readonly italic?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: Ink;
  readonly id?: string;
}
export interface GroupMark {
  readonly tag: 'g';
  readonly children: readonly Mark[];
  /** Shift, px, applied after scale and turn. */
  readonly at?: readonly [number, number];
  readonly scale?: number;
  /** Clockwise turn, degrees. */
  readonly turn?: number;
  readonly id?: string;
  /** Spoken name of the group. */
  readonly label?: string;
}
export type Mark = PathMark | LineMark | RectMark | CircleMark | TextMark | GroupMark;

/** A box on the page, px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** What every drawing gives: its marks and the size of its sheet, px. */
export interface Drawing {
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
}

export const path = (d: string, paint: Paint): PathMark => ({ tag: 'path', d, ...paint });
export const line = (x1: number, y1: number, x2: number, y2: number, paint: Paint): LineMark => ({ tag: 'line', x1, y1, x2, y2, ...paint });
export const rect = (x: number, y: number, w: number, h: number, paint: Paint): RectMark => ({ tag: 'rect', x, y, w, h, ...paint });
export const circle = (cx: number, cy: number, r: number, paint: Paint): CircleMark => ({ tag: 'circle', cx, cy, r, ...paint });
export const text = (
  x: number,
  y: number,
  words: string | readonly Span[],
  size: number,
  rest: Omit<TextMark, 'tag' | 'x' | 'y' | 'text' | 'size'> = {},
): TextMark => ({
  tag: 'text',
  x,
  y,
  text: words,
  size,
  ...rest,
});
export const group = (children: readonly Mark[], rest: Omit<GroupMark, 'tag' | 'children'> = {}): GroupMark => ({
  tag: 'g',
  children,
  ...rest,
});

/** Number of shapes in a picture, and of path pieces (subpaths) within them. */
export function countMarks(marks: readonly Mark[]): { readonly elements: number; readonly pieces: number } {
  let elements = 0;
  let pieces = 0;
  for (const mark of marks) {
    if (mark.tag === 'g') {
      const inner = countMarks(mark.children);
      elements += inner.elements;
      pieces += inner.pieces;
      continue;
    }
    elements += 1;
    pieces += mark.tag === 'path' ? (mark.d.match(/M/g)?.length ?? 0) : 1;
  }
  return { elements, pieces };
}
