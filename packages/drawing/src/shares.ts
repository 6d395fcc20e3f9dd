import { requireFinite } from './errors.js';
import { line, path, text, type Box, type Drawing, type Mark } from './mark.js';
import { slanted } from './signs.js';
import { textWidth } from './text-width.js';

export interface Share {
  readonly id: string;
  readonly label: string;
  /** Contribution, any one unit for all; may be negative. */
  readonly value: number;
  /** The contribution as words. */
  readonly text: string;
  /** Measured is a solid stroke, everything else slanted; default computed. */
  readonly standing?: 'measured' | 'computed';
}
export interface SharesSpec {
  readonly width: number;
  readonly shares: readonly Share[];
  /** Length that stands for the whole, in the unit of the shares; default the largest. */
  readonly whole?: number;
  /** Rows shown at most; the rest is summed into one. */
  readonly most?: number;
  readonly restLabel?: string;
  readonly restText?: (value: number, count: number) => string;
  readonly rowHeight?: number;
}
export interface SharesDrawing extends Drawing {
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
  readonly pxPerUnit: number;
}

/** What a number's uncertainty or cost comes from: ranked, each a stroke of its true length. */
export function shares(spec: SharesSpec): SharesDrawing {
  for (const share of spec.shares) requireFinite(`shares (${share.id}).value`, share.value);
  const ranked = spec.shares.slice().sort((a, b) => Math.abs(b.value) - Math.abs(a.value));
  const most = spec.most ?? ranked.length;
  const shown = ranked.slice(0, most);
  const rest = ranked.slice(most);
  if (rest.length > 0) {
    const value = rest.reduce((sum, share) => sum + share.value, 0);
    shown.push({ id: 'rest', label: spec.restLabel ?? `${rest.length} more`, value, text: spec.restText?.(value, rest.length) ?? '' });
  }
  const row = spec.rowHeight ?? 26;
  const labelWide = Math.max(0, ...shown.map((share) => textWidth(share.label, 15))) + 12;
  const textWide = Math.max(0, ...shown.map((share) => textWidth(share.text, 15, 560))) + 10;
  const below = Math.max(0, ...shown.map((share) => -share.value));
  const above = Math.max(0, ...shown.map((share) => share.value));
  const whole = Math.max(spec.whole ?? above + below, above + below, 1e-300);
  const room = Math.max(20, spec.width - labelWide - textWide);
  const scale = room / whole;
  const zero = labelWide + textWide + below * scale;
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  shown.forEach((share, at) => {
    const y = row * (at + 0.5);
    marks.push(text(labelWide - 12, y + 5, share.label, 15, { anchor: 'end', fill: share.id === 'rest' ? 'ink-2' : 'ink' }));
    marks.push(text(labelWide + textWide - 10, y + 5, share.text, 15, { weight: 560, anchor: 'end' }));
    const x0 = share.value < 0 ? zero + share.value * scale : zero;
    const length = Math.abs(share.value) * scale;
    if (length > 0.3)
      marks.push(
        share.standing === 'measured'
          ? line(x0, y, x0 + length, y, { stroke: 'ink', width: 5 })
          : path(slanted(x0, x0 + length, y, Math.min(7, length)), { stroke: 'ink', width: 1.3 }),
      );
    hits.push({ id: share.id, box: { x: 0, y: row * at, w: spec.width, h: row } });
  });
  marks.push(line(zero, 2, zero, row * shown.length - 2, { stroke: 'ink', width: 1.2 }));
  return { marks, width: spec.width, height: row * shown.length, hits, pxPerUnit: scale };
}
