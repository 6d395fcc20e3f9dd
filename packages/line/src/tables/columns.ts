import { dimensions, inwardFrom, type Dimension } from '@barwright/plant';
import { BadTable } from './bad-table.js';
import { type DataTable, type TableColumn } from './table.js';
import { decimalOf, isMissing, numberIn, plainNumber, unclearComma } from './number.js';
import { unitNamed } from './header.js';

/** A quantity that is looked for in a table. */
export interface Wanted {
  /** For sentences: 'air velocity'. */
  readonly what: string;
  readonly match: RegExp;
  /** Words that rule a column out. */
  readonly not?: RegExp;
  readonly dimension: Dimension;
  /** Unit taken where the header has none; with `strict` only the example of one. */
  readonly unit: string;
  /** A cell without a unit counts as missing: nothing may rest on a unit that was assumed. */
  readonly strict?: boolean;
  /** What several columns of it become, row by row; left out: the first is taken and told. */
  readonly several?: 'least' | 'greatest';
}

/** A column as numbers in the unit used inside. */
export interface Numbers {
  readonly values: Float64Array;
  readonly headers: readonly string[];
}

/**
 * Finds a quantity in a table by the words of its header, and reads it in the unit used inside.
 * Cells that are empty or no number become NaN: missing, never 0.
 * @param said - sentences on what was assumed, chosen or cannot be read are added here
 * @returns undefined where no column fits
 */
export function readNumbers(table: DataTable, wanted: Wanted, said: string[]): Numbers | undefined {
  const found = columnsFor(table, wanted, said);
  if (found.length === 0) return undefined;
  const used = wanted.several ? found : found.slice(0, 1);
  if (found.length > 1) {
    const names = found.map(({ header }) => `"${header}"`).join(', ');
    said.push(
      wanted.several
        ? `${found.length} columns give the ${wanted.what} (${names}); the ${wanted.several === 'least' ? 'lowest' : 'highest'} of each line counts.`
        : `${found.length} columns could be the ${wanted.what} (${names}); "${found[0]!.header}" is taken.`,
    );
  }
  const lists = used.map((column) => numbersOf(table, column, wanted, said));
  const values = lists[0]!;
  for (const list of lists.slice(1)) {
    for (let i = 0; i < values.length; i++) {
      const [a, b] = [values[i]!, list[i]!];
      values[i] = Number.isNaN(a) || Number.isNaN(b) ? NaN : wanted.several === 'least' ? Math.min(a, b) : Math.max(a, b);
    }
  }
  return { values, headers: used.map(({ header }) => header) };
}

/** Columns whose words fit; where some of them have a fitting unit, only those. */
function columnsFor(table: DataTable, wanted: Wanted, said: string[]): readonly TableColumn[] {
  const named = table.columns.filter(({ words }) => wanted.match.test(words) && !wanted.not?.test(words));
  const fitting = named.filter(({ unit }) => unit !== undefined && factorIn(unit, wanted.dimension) !== undefined);
  if (fitting.length > 0) return fitting;
  const bare = named.filter(({ unit }) => unit === undefined);
  if (bare.length > 0) return bare;
  const [other] = named;
  if (other)
    said.push(
      `"${other.header}" is in ${other.unit}, but the ${wanted.what} is ${dimensions[wanted.dimension].label}${wanted.unit ? ` such as ${wanted.unit}` : ''}; it is not taken for it.`,
    );
  return [];
}

/** From a unit to the one inside, where the dimension knows it. Shear rates are counted per second. */
function factorIn(unit: string, dimension: Dimension): ((value: number) => number) | undefined {
  const name = unitNamed(unit) ?? unit;
  if (dimension === 'pressure' && name === 'dyn/cm²') return (value) => 0.1 * value;
  return dimensions[dimension].units.has(name) ? inwardFrom(dimension, name) : undefined;
}

function numbersOf(table: DataTable, column: TableColumn, wanted: Wanted, said: string[]): Float64Array {
  const values = new Float64Array(column.cells.length).fill(NaN);
  const known = decimalOf(column.cells) ?? table.decimal;
  if (!known && unclearComma(column.cells)) {
    const example = column.cells.find((cell) => cell.includes(','))!;
    said.push(
      `Whether the comma in "${example}" of "${column.header}" is a decimal sign or parts thousands cannot be told: the column counts as missing. Write decimals with a point.`,
    );
    return values;
  }
  const decimal = known ?? 'point';
  if (decimal === 'comma' && column.cells.some((cell) => cell.includes(',')))
    said.push(`The numbers of "${column.header}" are read with a decimal comma.`);
  let assumed = false;
  let bare = false;
  const strange: string[] = [];
  const usual = factorIn(column.unit ?? wanted.unit, wanted.dimension);
  const simple = decimal === 'point' && usual !== undefined && (column.unit !== undefined || !wanted.strict);
  // Nearly every cell of a long log is a plain number in the unit of its header, and many repeat the one above.
  let above = '';
  let asAbove = NaN;
  column.cells.forEach((cell, i) => {
    if (simple) {
      const value = cell === above ? asAbove : usual(plainNumber(cell));
      if (value === value) {
        values[i] = value;
        above = cell;
        asAbove = value;
        if (column.unit === undefined && wanted.unit !== '') assumed = true;
        return;
      }
    }
    if (isMissing(cell)) return;
    const { value, rest, below } = numberIn(cell, decimal);
    const unit = rest === '' ? column.unit : rest;
    if (unit === undefined && wanted.strict) {
      bare = true;
      return;
    }
    const turn = unit === undefined ? factorIn(wanted.unit, wanted.dimension) : factorIn(unit, wanted.dimension);
    if (Number.isNaN(value) || !turn || below) {
      strange.push(`line ${table.rowNumbers[i]}: "${cell}"`);
      return;
    }
    if (unit === undefined && wanted.unit !== '') assumed = true;
    values[i] = turn(value);
  });
  if (bare) said.push(`"${column.header}" has no unit and counts as missing: write the unit into its header, such as (${wanted.unit}).`);
  if (assumed) said.push(`"${column.header}" has no unit; ${wanted.unit} is assumed.`);
  if (strange.length > 0)
    said.push(
      `${strange.length === 1 ? 'One cell' : `${strange.length} cells`} of "${column.header}" ${strange.length === 1 ? 'is' : 'are'} no number and count${strange.length === 1 ? 's' : ''} as missing (${strange[0]}).`,
    );
  return values;
}

/** The column of times: 'time', 'date', 'clock', with a separate date in front of it where there is one. */
export function timeCells(table: DataTable): { readonly cells: readonly string[]; readonly unit: string | undefined } {
  const time =
    table.columns.find(({ words }) => /^(time|timestamp|date ?time|clock|zeit|uhrzeit|t|elapsed|elapsed time)$/.test(words)) ??
    table.columns.find(({ words }) => /\b(time|timestamp)\b/.test(words) && !/residence|dwell/.test(words));
  const date = table.columns.find(({ words }) => /^(date|datum|day)$/.test(words));
  if (!time && !date) {
    const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
    throw new BadTable(`${table.name} has no column of times among ${names}; one headed "time" is expected`);
  }
  if (time && date && time !== date)
    return { cells: time.cells.map((cell, i) => (date.cells[i] ? `${date.cells[i]} ${cell}` : cell)), unit: undefined };
  const { cells, unit } = (time ?? date)!;
  return { cells, unit };
}

/** Text of a column, where there is one. */
export function textColumn(table: DataTable, match: RegExp): readonly string[] | undefined {
  return table.columns.find(({ words }) => match.test(words))?.cells;
}
