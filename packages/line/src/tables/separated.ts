import { BadTable } from './bad-table.js';

/** Text of a file: UTF-8, or what older loggers write: UTF-16 with its mark, else Windows Latin. */
export function textOfFile(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** What the first bytes of a file say it is: every XLSX file is a ZIP archive, whatever it is called. */
export function fileKind(bytes: Uint8Array): 'text' | 'xlsx' | 'old spreadsheet' {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return 'xlsx';
  return bytes[0] === 0xd0 && bytes[1] === 0xcf ? 'old spreadsheet' : 'text';
}

/**
 * Cells of a text whose columns are parted by semicolons, tabs or commas (RFC 4180), trimmed; every line is a row, empty ones too,
 * so that a row keeps its line number unless a quoted cell holds a line break.
 * @throws BadTable where a quotation mark is opened and never closed
 */
export function rowsOfText(text: string, name: string): string[][] {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  const delimiter = delimiterOf(body);
  const rows = body.includes('"') ? quoted(body, delimiter, name) : plain(body, delimiter);
  return delimiter === ';' ? withPoints(rows) : rows;
}

/** A semicolon or a tab parts columns before a comma does: the comma may be the decimal sign. */
function delimiterOf(text: string): string {
  const start = text.split(/\r\n?|\n/, 20).join('\n');
  return start.includes(';') ? ';' : start.includes('\t') ? '\t' : ',';
}

function plain(text: string, delimiter: string): string[][] {
  const lines = text.split(/\r\n?|\n/);
  if (lines.at(-1) === '') lines.pop();
  const rows: string[][] = new Array<string[]>(lines.length);
  for (let i = 0; i < lines.length; i++) {
    const cells = lines[i]!.split(delimiter);
    // Loggers write no spaces, so most cells stay as they were cut.
    for (let k = 0; k < cells.length; k++) {
      const cell = cells[k]!;
      if (mayBeTrimmed(cell)) cells[k] = cell.trim();
    }
    rows[i] = cells;
  }
  return rows;
}

/** Whether a cell begins or ends with what may be a space of some kind; the signs of degrees and of a millionth are none. */
export function mayBeTrimmed(cell: string): boolean {
  if (cell === '') return false;
  const [first, last] = [cell.charCodeAt(0), cell.charCodeAt(cell.length - 1)];
  return spacious(first) || spacious(last);
}

function spacious(code: number): boolean {
  return code <= 32 || (code >= 0xa0 && code !== 0xb0 && code !== 0xb5);
}

/** Cell by cell: a cell that begins with a quotation mark runs to the next single one; marks inside other cells are text. */
function quoted(text: string, delimiter: string, name: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  let line = 1;
  const end = text.length;
  const stop = new RegExp(`[\\r\\n${delimiter === '\t' ? '\\t' : delimiter}]`, 'g');
  while (at < end) {
    let start = at;
    while (text[start] === ' ') start++;
    let cell: string;
    if (text[start] === '"') {
      const began = line;
      let close = start + 1;
      for (;;) {
        close = text.indexOf('"', close);
        if (close < 0) throw new BadTable(`${name}, line ${began}: a quotation mark is opened and never closed`);
        if (text[close + 1] !== '"') break;
        close += 2;
      }
      cell = text.slice(start + 1, close).replaceAll('""', '"');
      for (const _ of cell.matchAll(/\n|\r(?!\n)/g)) line++;
      at = close + 1;
    } else cell = '';
    stop.lastIndex = at;
    const next = stop.exec(text)?.index ?? end;
    row.push(`${cell}${text.slice(at, next)}`.trim());
    at = next;
    if (text[at] === delimiter) {
      at++;
      if (at < end) continue;
      row.push('');
    }
    if (text[at] === '\r' && text[at + 1] === '\n') at++;
    at++;
    line++;
    rows.push(row);
    row = [];
  }
  return rows;
}

/** Where semicolons part the columns and no number has a point, a comma in a number is its decimal sign. */
function withPoints(rows: string[][]): string[][] {
  if (rows.some((row) => row.some((cell) => /^[+-]?\d+\.\d+$/.test(cell)))) return rows;
  return rows.map((row) => row.map((cell) => (/^[+-]?\d+,\d+$/.test(cell) ? cell.replace(',', '.') : cell)));
}

/** A cell of a spreadsheet as text. A date is wall-clock time; a time of day alone lies on the first day of its calendar. */
export function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) {
    const text = cell.toISOString().slice(0, 19);
    return cell.getUTCFullYear() < 1901 ? text.slice(11) : text;
  }
  return String(cell);
}
