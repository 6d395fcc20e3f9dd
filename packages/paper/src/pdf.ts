import type { State } from '@barwright/chain';
import type { PlantChain } from '@barwright/line';
import { formatNumber } from '@barwright/plant';
import { runSheet, type ChargeList, type RunSheet, type SheetOptions, type SheetRow } from './content.js';
import { PagePen } from './pen.js';
import { pictureOf } from './picture.js';
import { placePicture } from './place-picture.js';

const left = 34;
const right = 561;
const bottom = 806;
const intake = /each lot|each tanker|weekly|daily/;

/** The run sheet as PDF, A4, made without a browser. */
export async function runSheetPdf(from: PlantChain, state: State, options: SheetOptions = {}): Promise<Buffer> {
  const sheet = runSheet(from, state, options);
  const { pen } = layOut(sheet, from, state);
  return pen.end();
}

/** Lays the pages out; apart from `runSheetPdf` so that a test can ask which letters no font has. */
export function layOut(sheet: RunSheet, from: PlantChain, state: State): { readonly pen: PagePen; readonly pages: number } {
  const pen = new PagePen({ title: sheet.title, subject: sheet.facts.join(' ') });
  const writer = new Writer(pen, sheet);
  writer.first(from, state);
  writer.rows(
    sheet.rows.filter((row) => row.writeIn !== 'none' && !intake.test(row.every)),
    'Checks',
    true,
  );
  writer.rows(
    sheet.rows.filter((row) => row.writeIn === 'none'),
    'Set points',
    false,
  );
  writer.charges();
  writer.compact(
    sheet.rows.filter((row) => row.writeIn !== 'none' && intake.test(row.every)),
    'At intake, by day and by week',
  );
  writer.end();
  return { pen, pages: writer.count };
}

class Writer {
  count = 0;
  private y = 0;

  constructor(
    private readonly pen: PagePen,
    private readonly sheet: RunSheet,
  ) {}

  private page(): void {
    if (this.count > 0) this.foot();
    this.pen.page();
    this.count++;
    this.y = 40;
  }

  private foot(): void {
    this.pen.text(left, 826, `Slanted or broken line: computed. Empty box: not yet measured. Bracket: window. ${this.sheet.version}.`, {
      size: 7.5,
      grey: 0.3,
    });
    this.pen.text(right, 826, `sheet ${this.count}`, { size: 7.5, align: 'right', grey: 0.3 });
  }

  private room(height: number): boolean {
    if (this.y + height <= bottom) return false;
    this.page();
    return true;
  }

  first(from: PlantChain, state: State): void {
    this.page();
    const { pen, sheet } = this;
    const picture = pictureOf(from, state, 5.6);
    placePicture(pen, picture, right - picture.width, 26);
    pen.text(right, 26 + picture.height + 11, 'twice life size', { size: 7.5, align: 'right', grey: 0.3 });
    pen.text(left, 50, sheet.title, { face: 'sentence strong', size: 21 });
    let y = 70;
    for (const fact of sheet.facts) y = pen.paragraph(left, y, fact, right - picture.width - 20 - left, { face: 'sentence', size: 9.5 });
    const at = Math.max(y + 2, 26 + picture.height + 20);
    this.y = at;
    for (const remark of sheet.remarks) this.y = pen.paragraph(left, this.y, remark, right - left, { face: 'sentence', size: 9.5 });
    if (sheet.times.length > 0) {
      const line = sheet.times.map(([what, when]) => `${what} ${when}`).join(' · ');
      this.y = pen.paragraph(left, this.y + 2, capital(line) + '.', right - left, { size: 9 });
    }
    this.y += 4;
  }

  rows(rows: readonly SheetRow[], title: string, writeIn: boolean): void {
    if (rows.length === 0) return;
    const { pen } = this;
    this.room(60);
    this.y += 10;
    pen.text(left, this.y, title, { face: 'sentence strong', size: 11 });
    this.y += 6;
    this.head(writeIn);
    let where = '';
    for (const row of rows) {
      const reaction = pen.wrap(row.reaction, writeIn ? 104 : 184, { size: 7.4 });
      const every = pen.wrap(row.every, 48, { size: 7.4 });
      const what = pen.wrap(`${row.what}, ${row.unit} (CCP)`, 98, { size: 8.4 });
      const height = Math.max(19, 6 + 8.2 * Math.max(reaction.length, every.length, what.length));
      if (this.room(height)) {
        this.head(writeIn);
        where = '';
      }
      if (row.where !== where) pen.rule(left, this.y, right, this.y, 0.6, 0.35);
      this.row(row, row.where === where ? '' : row.where, { reaction, every }, writeIn);
      where = row.where;
      this.y += height;
    }
    pen.rule(left, this.y, right, this.y, 1.2);
    this.y += 4;
  }

  /** Checks that are not for the shift's boxes: two columns of short lines. */
  compact(rows: readonly SheetRow[], title: string): void {
    if (rows.length === 0) return;
    const { pen } = this;
    this.room(80);
    this.y += 12;
    pen.text(left, this.y, title, { face: 'sentence strong', size: 11 });
    this.y += 12;
    const width = (right - left - 16) / 2;
    const lines = rows.map((row) => {
      const n = (value: number) => formatNumber(value, row.decimals);
      const limit =
        row.low !== undefined && row.high !== undefined
          ? `${n(row.low)} to ${n(row.high)} ${row.unit}`
          : row.low !== undefined
            ? `≥ ${n(row.low)} ${row.unit}`
            : row.high !== undefined
              ? `≤ ${n(row.high)} ${row.unit}`
              : (row.words ?? '');
      return pen.wrap(`${capital(row.where)}, ${row.what}: ${limit.trim()} (${row.every}). If outside: ${row.reaction}.`, width, {
        size: 7.6,
      });
    });
    const total = lines.reduce((sum, part) => sum + part.length, 0);
    let column = 0;
    let top = this.y;
    let used = 0;
    let y = top;
    let deepest = top;
    for (const part of lines) {
      if (y + 9 * part.length > bottom) {
        if (column === 1) {
          this.page();
          top = this.y;
        }
        column = 1 - column;
        y = top;
      } else if (column === 0 && used >= total / 2) {
        column = 1;
        y = top;
      }
      for (const line of part) {
        pen.text(left + column * (width + 16), y, line, { size: 7.6 });
        y += 9;
      }
      y += 1;
      used += part.length;
      deepest = Math.max(deepest, y);
    }
    this.y = deepest;
  }

  private head(writeIn: boolean): void {
    const { pen } = this;
    pen.rule(left, this.y, right, this.y, 1.2);
    const y = this.y + 9;
    const words: [number, string, ('right' | 'left')?][] = [
      [left, 'where'],
      [left + 72, 'what'],
      [left + 205, 'aim', 'right'],
      [left + 216, 'window'],
      [left + 288, 'how often'],
      [left + 338, 'if outside'],
    ];
    for (const [x, word, align] of words) pen.text(x, y, word, { size: 7.6, grey: 0.3, ...(align ? { align } : {}) });
    if (writeIn)
      this.sheet.shifts
        .slice(0, 3)
        .forEach((shift, i) => pen.text(right - 80 + 27 * i + 13, y, shift, { size: 7.6, grey: 0.3, align: 'center' }));
    this.y += 13;
  }

  private row(
    row: SheetRow,
    where: string,
    words: { readonly reaction: readonly string[]; readonly every: readonly string[] },
    writeIn: boolean,
  ): void {
    const { pen } = this;
    const y = this.y + 10;
    const mark = row.kind === 'critical' ? ' (CCP)' : row.kind === 'law' ? ' (law)' : '';
    if (where) pen.text(left, y, fit(pen, capital(where), 70, { face: 'number strong', size: 9 }), { face: 'number strong', size: 9 });
    const unit = row.unit && row.words === undefined ? `, ${row.unit}` : '';
    const numberless = row.words !== undefined && row.aim === undefined && row.low === undefined && row.high === undefined;
    pen
      .wrap(`${row.what}${unit}${mark}`, numberless ? 98 : 112, { size: 8.4 })
      .slice(0, 3)
      .forEach((line, i) => pen.text(left + 72, y + 8.6 * i, line, { size: 8.4 }));
    if (numberless) {
      pen
        .wrap(row.words, 125, { size: 7.8 })
        .slice(0, 2)
        .forEach((line, i) => pen.text(left + 216 - 44, y + 8.5 * i, line, { size: 7.8 }));
    } else {
      if (row.aim !== undefined)
        pen.text(left + 205, y, formatNumber(row.aim, row.decimals), { face: 'number strong', size: 9, align: 'right' });
      this.sill(row, left + 218, y - 3);
    }
    words.every.forEach((line, i) => pen.text(left + 288, y + 8 * i, line, { size: 7.4 }));
    words.reaction.forEach((line, i) => pen.text(left + 338, y + 8 * i, line, { size: 7.4 }));
    if (!writeIn) return;
    for (let i = 0; i < Math.max(1, Math.min(3, this.sheet.shifts.length)); i++) {
      const x = right - 80 + 27 * i;
      if (row.writeIn === 'pass') pen.ring(x + 13, this.y + 9.5, 8);
      else pen.box(x, this.y + 1, 26.9, 17);
    }
  }

  /** A window to mark by pencil: stops, and the aim as a triangle. */
  private sill(row: SheetRow, x: number, y: number): void {
    const { pen } = this;
    const [a, z] = [x + 6, x + 54];
    const n = (value: number) => formatNumber(value, row.decimals);
    if (row.low === undefined && row.high === undefined) return;
    pen.rule(
      row.low === undefined ? x - 4 : a,
      y,
      row.high === undefined ? z + 8 : z,
      y,
      row.origin === 'computed' ? 1 : 1.6,
      0,
      row.origin === 'computed' ? [2, 1.6] : undefined,
    );
    if (row.low !== undefined) {
      pen.rule(a, y - 3.6, a, y + 3.6, 1);
      pen.text(a, y + 10.6, n(row.low), { size: 6.8, align: 'center' });
    }
    if (row.high !== undefined) {
      pen.rule(z, y - 3.6, z, y + 3.6, 1);
      pen.text(z, y + 10.6, n(row.high), { size: 6.8, align: 'center' });
    }
    if (row.aim !== undefined && row.low !== undefined && row.high !== undefined)
      pen.triangle(a + ((z - a) * (row.aim - row.low)) / (row.high - row.low), y + 1.5, 2.2);
  }

  charges(): void {
    const lists = this.sheet.charges;
    if (lists.length === 0) return;
    const tall = (list: ChargeList) =>
      44 + 11 * list.rows.length + 9.5 * new Set(list.rows.map((row) => row.stage)).size + 30 + 17 * list.notes.length;
    this.room(22 + Math.max(...lists.slice(0, 3).map(tall)));
    this.y += 14;
    this.pen.text(left, this.y, 'Charges of one batch, in weighing order', { face: 'sentence strong', size: 11 });
    this.y += 8;
    let column = 0;
    let top = this.y;
    let deepest = top;
    const width = 168;
    for (const list of lists) {
      if (column === 0 && top + Math.max(...lists.slice(lists.indexOf(list), lists.indexOf(list) + 3).map(tall)) > bottom) {
        this.page();
        top = this.y;
        deepest = top;
      }
      const end = this.charge(list, left + column * (width + 11), top, width);
      deepest = Math.max(deepest, end);
      column = (column + 1) % 3;
      if (column === 0) {
        top = deepest + 8;
        deepest = top;
      }
    }
    this.y = Math.max(deepest, top);
    this.rework();
  }

  private charge(list: ChargeList, x: number, top: number, width: number): number {
    const { pen } = this;
    let y = top + 10;
    pen.text(x, y, capital(list.component), { face: 'number strong', size: 9.5 });
    pen.text(x + width, y, list.batches === undefined ? '' : `${formatNumber(list.batches, 0)} batches`, { size: 8.4, align: 'right' });
    y += 11;
    pen.text(x, y, `${formatNumber(list.charged, 1)} kg charged, ${formatNumber(list.finished, 1)} kg finished`, { size: 8, grey: 0.25 });
    y += 5;
    pen.rule(x, y, x + width, y, 0.8);
    let stage = '';
    for (const row of list.rows) {
      if (row.stage !== stage) {
        stage = row.stage;
        y += 9.5;
        pen.text(x, y, fit(pen, stage, width, { size: 7.4 }), { size: 7.4, grey: 0.35 });
      }
      y += 11;
      const size = pen.width(row.name, { size: 8.4 }) > width - 62 ? 7.4 : 8.4;
      pen.text(x, y, fit(pen, row.name, width - 58, { size }), { size });
      pen.text(x + width - 26, y, formatNumber(row.mass, decimalsOf(row.division)), { face: 'number strong', size: 8.6, align: 'right' });
      pen.box(x + width - 22, y - 7.6, 22, 9.4, 0.5, 0.5);
    }
    y += 5;
    pen.rule(x, y, x + width, y, 0.6);
    y += 10;
    const weighed = list.rows.reduce((sum, row) => sum + row.mass, 0);
    pen.text(x, y, `weighed ${formatNumber(weighed, 3)} kg; rounding leaves ${signed(list.residual, 3)} kg`, { size: 7.6 });
    y += 3;
    for (const note of list.notes) y = pen.paragraph(x, y + 8, note, width, { size: 7.4, leading: 8.6 }) - 8;
    return y + 10;
  }

  private rework(): void {
    this.room(40);
    this.y += 4;
    for (const sentence of this.sheet.rework)
      this.y = this.pen.paragraph(left, this.y + 4, sentence, right - left - 170, { face: 'sentence', size: 8.8 });
    if (this.sheet.rework.length > 1) {
      const y = this.y - 24;
      ['lot', 'kg', 'age, h'].forEach((word, i) => {
        this.pen.text(right - 160 + 54 * i, y - 4, word, { size: 7.4, grey: 0.3 });
        this.pen.box(right - 160 + 54 * i, y, 52, 18);
      });
    }
  }

  end(): void {
    const { pen, sheet } = this;
    this.room(90);
    this.y += 14;
    this.heading('Lots in use');
    const columns = 3;
    const width = (right - left) / columns;
    sheet.lots.forEach((lot, i) => {
      const x = left + width * (i % columns);
      if (i % columns === 0 && i > 0) this.y += 23;
      if (i % columns === 0) this.room(24);
      pen.text(x, this.y, fit(pen, lot, width - 72, { size: 8 }), { size: 8 });
      pen.box(x + width - 68, this.y - 11, 62, 17);
    });
    this.y += 24;
    this.room(60);
    this.heading('Changeover');
    for (const sentence of sheet.changeover)
      this.y = pen.paragraph(left, this.y, sentence, right - left, { face: 'sentence', size: 8.8 }) + 1;
    this.y += 8;
    this.room(80);
    this.heading('Take care');
    this.cautions();
    this.y = pen.paragraph(
      left,
      this.y + 4,
      'Local codes, the maker’s manual and the qualified HACCP team decide. Barwright advises; it sets nothing on a machine.',
      right - left,
      { face: 'sentence', size: 8.8 },
    );
    this.room(50);
    this.y += 22;
    ['Made by', 'Freed for the line by', 'Taken over'].forEach((word, i) => {
      const x = left + ((right - left) / 3) * i;
      pen.text(x, this.y, word, { face: 'sentence', size: 8.8 });
      pen.rule(x + pen.width(word, { face: 'sentence', size: 8.8 }) + 6, this.y + 2, x + (right - left) / 3 - 12, this.y + 2, 0.7);
    });
    this.foot();
  }

  /** Cautions station by station, in two columns. */
  private cautions(): void {
    const { pen } = this;
    const width = (right - left - 16) / 2;
    const style = { face: 'sentence', size: 7.9 } as const;
    const blocks = this.sheet.cautions.map(({ station, sentences }) => ({ station, lines: pen.wrap(sentences.join(' '), width, style) }));
    const height = (count: number) => 9.6 * count + 12;
    const half = blocks.reduce((sum, block) => sum + height(block.lines.length), 0) / 2;
    let x = left;
    let top = this.y;
    let used = 0;
    let deepest = top;
    for (const { station, lines } of blocks) {
      if (x === left && used >= half) {
        x = left + width + 16;
        this.y = top;
      }
      if (this.y + height(lines.length) > bottom) {
        this.page();
        x = left;
        top = this.y;
        deepest = top;
        used = -Infinity;
      }
      pen.text(x, this.y, capital(station), { face: 'number strong', size: 8 });
      lines.forEach((line, i) => pen.text(x, this.y + 9.6 * (i + 1), line, style));
      this.y += height(lines.length);
      used += height(lines.length);
      deepest = Math.max(deepest, this.y);
    }
    this.y = deepest;
  }

  private heading(word: string): void {
    this.pen.text(left, this.y, word, { face: 'sentence strong', size: 10.5 });
    this.y += 16;
  }
}

function decimalsOf(division: number): number {
  return Math.max(0, -Math.floor(Math.log10(division) + 1e-9));
}

function signed(value: number, decimals: number): string {
  return Math.abs(value) < 0.5 * 10 ** -decimals ? formatNumber(0, decimals) : `${value > 0 ? '+' : ''}${formatNumber(value, decimals)}`;
}

/** Shortens a word that would run into its neighbour. */
function fit(pen: PagePen, text: string, width: number, style: Parameters<PagePen['width']>[1]): string {
  if (pen.width(text, style) <= width) return text;
  let cut = text;
  while (cut.length > 1 && pen.width(`${cut}…`, style) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
