import { DrawingError, requireBetween } from './errors.js';
import { line, path, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';

/** Half of a strip from its middle to its foot: edges of strips, mm, rising, and the height of each. */
export interface SaggedHalf {
  readonly name: string;
  readonly edges: readonly number[];
  readonly heights: readonly number[];
}

export interface SaggingSpec {
  readonly width: number;
  /** The strip as it is laid, mm. */
  readonly start: { readonly width: number; readonly height: number };
  /** The first dashed, for comparison; the last filled. */
  readonly shapes: readonly SaggedHalf[];
}

/** A strip that sags: as laid, as it would be, and as it would be otherwise, true to scale with heights as widths. */
export function sagging(spec: SaggingSpec): Drawing {
  requireBetween('shapes, number', spec.shapes.length, 1, 3);
  for (const { name, edges, heights } of spec.shapes)
    if (edges.length !== heights.length + 1) throw new DrawingError(`shape ${name}`, `${edges.length} edges`, `${heights.length + 1}`);
  const widest = Math.max(spec.start.width / 2, ...spec.shapes.map(({ edges }) => edges.at(-1)!));
  const scale = Math.min((spec.width - 40) / (2 * widest), 14);
  const tall = Math.max(spec.start.height, ...spec.shapes.flatMap(({ heights }) => heights));
  const ground = 34 + tall * scale;
  const middle = spec.width / 2;
  const outline = ({ edges, heights }: SaggedHalf): string => {
    const pen = new Pen();
    const side = (sign: 1 | -1) =>
      heights.map((h, i) => [middle + (sign * scale * (edges[i]! + edges[i + 1]!)) / 2, ground - h * scale] as const);
    const foot = edges.at(-1)! * scale;
    pen.move(middle - foot, ground);
    for (const [x, y] of side(-1).reverse()) pen.to(x, y);
    for (const [x, y] of side(1)) pen.to(x, y);
    pen.to(middle + foot, ground).close();
    return pen.d;
  };
  const marks: Mark[] = [];
  const last = spec.shapes.at(-1)!;
  marks.push(path(outline(last), { fill: 'shade-2', stroke: 'ink', width: 1.6 }));
  for (const shape of spec.shapes.slice(0, -1)) marks.push(path(outline(shape), { stroke: 'ink', width: 1, dash: [5, 4] }));
  const [half, high] = [(spec.start.width / 2) * scale, spec.start.height * scale];
  const laid = new Pen()
    .move(middle - half, ground)
    .to(middle - half, ground - high)
    .to(middle + half, ground - high)
    .to(middle + half, ground);
  marks.push(
    path(laid.d, { stroke: 'ink-2', width: 1, dash: [1.5, 3] }),
    line(10, ground, spec.width - 10, ground, { stroke: 'ink', width: 1.6 }),
  );
  marks.push(
    text(middle, ground - high - 8, 'as laid', 13, { fill: 'ink-2', anchor: 'middle' }),
    text(middle, ground + 20, `filled: ${last.name}${spec.shapes.length > 1 ? `; dashed: ${spec.shapes[0]!.name}` : ''}`, 13, { fill: 'ink-2', anchor: 'middle' }), // prettier-ignore
  );
  return { marks, width: spec.width, height: ground + 32 };
}
