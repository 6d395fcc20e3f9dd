import { BadTable } from './bad-table.js';
import { headerOf } from './header.js';
import { decimalOfAll, isNumberLike, type Decimal } from './number.js';
import { isClockLike } from './clock.js';
import { mayBeTrimmed } from './separated.js';

/** One column of a table as it came. */
export interface TableColumn {
  readonly header: string;
  /** The header in lower-case words, its unit taken off: 'zone air'. */
  readonly words: string;
  /** Unit as it stands in the header or in the row below it; undefined where none does. */
  readonly unit: string | undefined;
  /** One cell for each row, trimmed. */
  readonly cells: readonly string[];
}

/** Rows of text with a header, from any instrument or spreadsheet. */
export interface DataTable {
  readonly name: string;
  readonly columns: readonly TableColumn[];
  /** Number of each data row as a spreadsheet counts, from 1. */
  readonly rowNumbers: readonly number[];
  /** Decimal sign by every cell of the table; undefined where none tells. */
  readonly decimal: Decimal | undefined;
  /** Sentences on what was skipped. */
  readonly said: readonly string[];
}

/**
 * Finds the header of a table, takes blank rows and titles away, and reads units from the header or a row of units below it.
 * @param rows - cells as text, in order; rows may differ in length
 * @throws BadTable for an empty table, one without a header, or a header without readings
 */
export function tableOf(rows: readonly (readonly string[])[], name: string): DataTable {
  // Two lists side by side, not one of pairs: a log may have a hundred thousand lines.
  const filled: (readonly string[])[] = [];
  const numbers: number[] = [];
  for (let i = 0; i < rows.length; i++) {
    const cells = tidied(rows[i]!);
    if (!cells.some((cell) => cell !== '')) continue;
    filled.push(cells);
    numbers.push(i + 1);
  }
  if (filled.length === 0) throw new BadTable(`${name} is empty; a line of headers and a line for each reading are expected`);
  const at = filled.findIndex((cells, i) => isHeader(cells, filled.slice(i + 1, i + 3)));
  if (at < 0) {
    const first = filled[0]!.slice(0, 3).join(', ');
    throw new BadTable(
      `${name} has no line of headers: its first line is "${first}"; words with units such as "zone air (°C)" are expected above the readings`,
    );
  }
  const said: string[] = [];
  if (at > 0) said.push(`${at === 1 ? 'One line' : `${at} lines`} above the headers of ${name} ${at === 1 ? 'was' : 'were'} skipped.`);
  const headers = filled[at]!;
  const next = filled[at + 1];
  const units = next && isUnitRow(next) ? next : undefined;
  const start = at + (units ? 2 : 1);
  const body = filled.slice(start);
  if (body.length === 0) throw new BadTable(`${name} has headers (${headers.filter(Boolean).join(', ')}) but no reading below them`);
  const seen = new Set<string>();
  const columns = headers.flatMap((text, i): TableColumn[] => {
    if (text === '') return [];
    const { words, unit } = headerOf(text);
    if (seen.has(words)) said.push(`Two columns of ${name} are called "${text}"; the first is taken.`);
    seen.add(words);
    return [
      {
        header: text,
        words,
        unit: unit ?? (units?.[i] ? headerOf(`x (${units[i]})`).unit : undefined),
        cells: body.map((cells) => cells[i] ?? ''),
      },
    ];
  });
  const decimal = decimalOfAll(columns.map(({ cells }) => cells));
  return { name, columns, rowNumbers: numbers.slice(start), decimal, said };
}

/** Cells without spaces around them and without the mark of a byte order; most rows come so and stay as they are. */
function tidied(cells: readonly string[]): readonly string[] {
  return cells.some(mayBeTrimmed) ? cells.map((one) => (one.startsWith('\ufeff') ? one.slice(1) : one).trim()) : cells;
}

/** Words above numbers: no cell is a number, and in a line or two below at least one is a number or a time. */
function isHeader(cells: readonly string[], below: readonly (readonly string[])[]): boolean {
  const words = cells.filter((cell) => cell !== '');
  if (words.some((cell) => isNumberLike(cell) || isClockLike(cell))) return false;
  const carries = (row: readonly string[]) => row.filter((cell) => isNumberLike(cell) || isClockLike(cell)).length;
  if (below.length === 0) return words.length >= 2;
  return below.some((row) => carries(row) >= 1) && words.length >= Math.min(2, Math.max(...below.map(carries)));
}

/** A row of units alone: '°C', 'm/s', '(mm)', '%' or nothing. */
function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '' && cell !== '-');
  return (
    filled.length > 0 &&
    filled.every((cell) => !isNumberLike(cell) && !isClockLike(cell) && headerOf(`x (${cell.replace(/^[[(]|[\])]$/g, '')})`).known)
  );
}
