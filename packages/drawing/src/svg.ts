import type { Mark, Paint, Span, TextMark } from './mark.js';
import { colour, family, type Theme } from './theme.js';
import { n } from './pen.js';

export interface SvgOptions {
  readonly width: number;
  readonly height: number;
  /** Default `variables`: colours follow the custom properties of the page. */
  readonly theme?: Theme;
  /** Spoken name of the picture. */
  readonly title?: string;
  /** What the picture says, in a sentence. */
  readonly desc?: string;
  /** Prefix that keeps names unique when several pictures share a page; default `drawing`. */
  readonly name?: string;
  /** Fill the sheet with paper first, for a file that stands alone. */
  readonly paper?: boolean;
  /** Part of the sheet to show, px; default all of it. */
  readonly view?: readonly [x: number, y: number, w: number, h: number];
}

/** Attribute names and values of one mark, as React spells them; `toSvg` spells them as SVG does. */
export type Attributes = Record<string, string | number>;

/** Attributes of a mark without its children or text. */
export function attributes(mark: Mark, theme: Theme = 'variables'): Attributes {
  switch (mark.tag) {
    case 'g':
      return { ...named(mark.id), ...moved(mark) };
    case 'path':
      return { ...named(mark.id), d: mark.d, ...paint(mark, theme) };
    case 'line':
      return { ...named(mark.id), x1: r(mark.x1), y1: r(mark.y1), x2: r(mark.x2), y2: r(mark.y2), ...paint(mark, theme) };
    case 'rect':
      return { ...named(mark.id), x: r(mark.x), y: r(mark.y), width: r(mark.w), height: r(mark.h), ...paint(mark, theme) };
    case 'circle':
      return { ...named(mark.id), cx: r(mark.cx), cy: r(mark.cy), r: r(mark.r), ...paint(mark, theme) };
    case 'text':
      return { ...named(mark.id), x: r(mark.x), y: r(mark.y), ...lettering(mark, theme) };
  }
}

/** Attributes of a run inside a text mark. */
export function spanAttributes(span: Span, theme: Theme = 'variables'): Attributes {
  const out: Attributes = {};
  if (span.size !== undefined) out.fontSize = r(span.size);
  if (span.weight !== undefined) out.fontWeight = span.weight;
  if (span.fill !== undefined) out.fill = colour(span.fill, theme);
  if (span.dy !== undefined) out.dy = r(span.dy);
  return out;
}

/** The picture as one SVG document. */
export function toSvg(marks: readonly Mark[], options: SvgOptions): string {
  const theme = options.theme ?? 'variables';
  const name = options.name ?? 'drawing';
  const view = options.view ?? [0, 0, options.width, options.height];
  const spoken = [options.title === undefined ? '' : `${name}-title`, options.desc === undefined ? '' : `${name}-desc`].filter(Boolean);
  const head = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(options.width)}" height="${n(options.height)}" viewBox="${view.map(n).join(' ')}"`,
    spoken.length > 0 ? ` role="img" aria-labelledby="${spoken.join(' ')}">` : ' aria-hidden="true">',
    options.title === undefined ? '' : `<title id="${name}-title">${escape(options.title)}</title>`,
    options.desc === undefined ? '' : `<desc id="${name}-desc">${escape(options.desc)}</desc>`,
    options.paper === true
      ? `<rect x="${n(view[0])}" y="${n(view[1])}" width="${n(view[2])}" height="${n(view[3])}" fill="${colour('paper', theme)}"/>`
      : '',
  ];
  return `${head.join('')}${marks.map((mark) => element(mark, theme)).join('')}</svg>`;
}

/** Marks as SVG elements, without the document around them. */
export function svgElements(marks: readonly Mark[], theme: Theme = 'variables'): string {
  return marks.map((mark) => element(mark, theme)).join('');
}

function element(mark: Mark, theme: Theme): string {
  const spelled = spell(attributes(mark, theme));
  if (mark.tag === 'g') {
    const label = mark.label === undefined ? '' : `<title>${escape(mark.label)}</title>`;
    return `<g${spelled}>${label}${mark.children.map((child) => element(child, theme)).join('')}</g>`;
  }
  if (mark.tag === 'text') {
    const words =
      typeof mark.text === 'string'
        ? escape(mark.text)
        : mark.text.map((span) => `<tspan${spell(spanAttributes(span, theme))}>${escape(span.text)}</tspan>`).join('');
    return `<text${spelled}>${words}</text>`;
  }
  return `<${mark.tag}${spelled}/>`;
}

function paint(mark: Paint, theme: Theme): Attributes {
  const out: Attributes = { fill: mark.fill === undefined ? 'none' : colour(mark.fill, theme) };
  if (mark.evenOdd === true) out.fillRule = 'evenodd';
  if (mark.stroke === undefined) return out;
  out.stroke = colour(mark.stroke, theme);
  out.strokeWidth = r(mark.width ?? 1);
  if (mark.dash !== undefined) out.strokeDasharray = mark.dash.map(n).join(' ');
  if (mark.cap === 'round') out.strokeLinecap = 'round';
  if (mark.join === 'round') out.strokeLinejoin = 'round';
  return out;
}

function lettering(mark: TextMark, theme: Theme): Attributes {
  const out: Attributes = {
    fontFamily: family(mark.font ?? 'num', theme),
    fontSize: r(mark.size),
    fontWeight: mark.weight ?? 520,
    fill: colour(mark.fill ?? 'ink', theme),
  };
  if (mark.anchor !== undefined && mark.anchor !== 'start') out.textAnchor = mark.anchor;
  if (mark.italic === true) out.fontStyle = 'italic';
  if ((mark.font ?? 'num') === 'num') out.fontFeatureSettings = "'tnum','lnum'";
  return out;
}

function moved(mark: Extract<Mark, { tag: 'g' }>): Attributes {
  const parts: string[] = [];
  if (mark.at !== undefined) parts.push(`translate(${n(mark.at[0])} ${n(mark.at[1])})`);
  if (mark.turn !== undefined) parts.push(`rotate(${n(mark.turn)})`);
  if (mark.scale !== undefined) parts.push(`scale(${mark.scale})`);
  return parts.length === 0 ? {} : { transform: parts.join(' ') };
}

const named = (id: string | undefined): Attributes => (id === undefined ? {} : { 'data-id': id });
const r = (value: number): number => Math.round(value * 100) / 100;
const kept = new Set(['viewBox']);

function spell(values: Attributes): string {
  let out = '';
  for (const [key, value] of Object.entries(values)) {
    if (key === 'fontFeatureSettings') {
      out += ` style="font-feature-settings:${String(value)}"`;
      continue;
    }
    const name = kept.has(key) ? key : key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    out += ` ${name}="${escape(String(value))}"`;
  }
  return out;
}

function escape(words: string): string {
  return words.replace(/[&<>"]/g, (sign) => (sign === '&' ? '&amp;' : sign === '<' ? '&lt;' : sign === '>' ? '&gt;' : '&quot;'));
}
