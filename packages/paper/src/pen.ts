import PDFDocument from 'pdfkit';
import { fontFiles, type Face } from './fonts.js';

interface Font {
  readonly name: string;
  readonly has: (point: number) => boolean;
}

export interface TextStyle {
  readonly face?: Face;
  readonly size?: number;
  readonly align?: 'left' | 'right' | 'center';
  /** 0 black to 1 white. */
  readonly grey?: number;
}

/** Draws on A4 pages in points from the top left: lines, boxes, paths and text that takes each letter from the first font that has it. */
export class PagePen {
  readonly doc: PDFKit.PDFDocument;
  private readonly faces: Readonly<Record<Face, readonly Font[]>>;
  private readonly chunks: Buffer[] = [];
  private readonly finished: Promise<Buffer>;
  private missing = new Set<string>();

  constructor(info: { readonly title: string; readonly subject: string }) {
    this.doc = new PDFDocument({
      size: 'A4',
      margin: 0,
      autoFirstPage: false,
      lang: 'en',
      tagged: true,
      displayTitle: true,
      info: { Title: info.title, Subject: info.subject, Creator: 'Barwright', Producer: 'Barwright' },
    });
    this.doc.on('data', (chunk: Buffer) => this.chunks.push(chunk));
    this.finished = new Promise((resolve, reject) => {
      this.doc.on('end', () => resolve(Buffer.concat(this.chunks)));
      this.doc.on('error', reject);
    });
    const files = fontFiles();
    this.faces = Object.fromEntries(
      Object.entries(files).map(([face, list]) => [face, list.map((file, i) => this.load(`${face} ${i}`, file))]),
    ) as unknown as Record<Face, Font[]>;
  }

  private load(name: string, file: string): Font {
    this.doc.registerFont(name, file);
    this.doc.font(name);
    const { font } = (this.doc as unknown as { _font: { font: { hasGlyphForCodePoint(point: number): boolean } } })._font;
    return { name, has: (point) => font.hasGlyphForCodePoint(point) };
  }

  page(): void {
    this.doc.addPage();
  }

  /** Letters that no font has, so that a test can refuse them. */
  missingLetters(): readonly string[] {
    return [...this.missing];
  }

  width(text: string, style: TextStyle = {}): number {
    let width = 0;
    for (const run of this.runs(text, style.face ?? 'number'))
      width += this.doc
        .font(run.font)
        .fontSize(style.size ?? 9)
        .widthOfString(run.text);
    return width;
  }

  /** One line, its baseline at y. */
  text(x: number, y: number, text: string, style: TextStyle = {}): void {
    const { face = 'number', size = 9, align = 'left', grey = 0 } = style;
    const whole = align === 'left' ? 0 : this.width(text, style);
    let at = x - (align === 'right' ? whole : align === 'center' ? whole / 2 : 0);
    this.doc.fillColor(shade(grey));
    for (const run of this.runs(text, face)) {
      this.doc.font(run.font).fontSize(size);
      this.doc.text(run.text, at, y, { lineBreak: false, baseline: 'alphabetic' });
      at += this.doc.widthOfString(run.text);
    }
  }

  /** A paragraph of a width; returns the y of the line after it. */
  paragraph(x: number, y: number, text: string, width: number, style: TextStyle & { readonly leading?: number } = {}): number {
    const leading = style.leading ?? (style.size ?? 9) * 1.32;
    let at = y;
    for (const line of this.wrap(text, width, style)) {
      this.text(x, at, line, style);
      at += leading;
    }
    return at;
  }

  wrap(text: string, width: number, style: TextStyle = {}): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(' ')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && this.width(longer, style) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    if (line !== '') lines.push(line);
    return lines;
  }

  rule(x1: number, y1: number, x2: number, y2: number, weight = 0.6, grey = 0, dash?: readonly [number, number]): void {
    this.doc.lineWidth(weight).strokeColor(shade(grey));
    if (dash) this.doc.dash(dash[0], { space: dash[1] });
    this.doc.moveTo(x1, y1).lineTo(x2, y2).stroke();
    if (dash) this.doc.undash();
  }

  box(x: number, y: number, width: number, height: number, weight = 0.7, grey = 0.35): void {
    this.doc.lineWidth(weight).strokeColor(shade(grey)).rect(x, y, width, height).stroke();
  }

  ring(x: number, y: number, radius: number, weight = 0.7, grey = 0.35): void {
    this.doc.lineWidth(weight).strokeColor(shade(grey)).circle(x, y, radius).stroke();
  }

  triangle(x: number, y: number, half = 2.6): void {
    this.doc
      .fillColor('#000')
      .moveTo(x, y)
      .lineTo(x - half, y + 1.7 * half)
      .lineTo(x + half, y + 1.7 * half)
      .fill();
  }

  async end(): Promise<Buffer> {
    this.doc.end();
    return this.finished;
  }

  private runs(text: string, face: Face): { font: string; text: string }[] {
    const fonts = this.faces[face];
    const runs: { font: string; text: string }[] = [];
    for (const letter of text.replaceAll('\u202f', '\u00a0')) {
      const point = letter.codePointAt(0)!;
      const found = fonts.find((font) => font.has(point));
      if (!found) this.missing.add(letter);
      const font = (found ?? fonts[0]!).name;
      const last = runs.at(-1);
      if (last?.font === font) last.text += letter;
      else runs.push({ font, text: letter });
    }
    return runs;
  }
}

function shade(grey: number): string {
  const level = Math.round(255 * grey)
    .toString(16)
    .padStart(2, '0');
  return `#${level}${level}${level}`;
}
