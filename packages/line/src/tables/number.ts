/** How the numbers of a column are written. */
export type Decimal = 'point' | 'comma';

const missing = /^(|[-–—]+|n\/?a|nan|null|none|#n\/a|\.\.\.?)$/i;

/** A cell that says that there is no value. */
export function isMissing(cell: string): boolean {
  return missing.test(cell);
}

/** Whether a cell holds a number, its unit maybe behind it. */
export function isNumberLike(cell: string): boolean {
  return (
    /^[<>≤≥]?\s*[+\-−]?(\d[\d\s.,\u202f]*|[.,]\d+)([eE][+-]?\d+)?\s*(%|°?[a-zA-ZµΩ·/²³°]{0,8})?$/.test(cell) &&
    !/^\d+[-/.:]\d+[-/.:]\d+/.test(cell)
  );
}

const commaOnly = /^\s*[+\-−]?\d{1,6},\d+\s*[^\d]*$/;
/** '1,050' may be a thousand or one and a bit; '163,2', '0,850' and '12345,678' cannot be thousands. */
const eitherWay = /^\s*[+\-−]?[1-9]\d{0,2},\d{3}\s*[^\d]*$/;

/**
 * The decimal sign of some cells: a point where one stands between digits, else a comma where commas cannot part thousands.
 * @returns undefined where the cells do not tell: no sign at all, or only commas that could be either
 */
export function decimalOf(cells: readonly string[]): Decimal | undefined {
  if (hasPoint(cells)) return 'point';
  return hasComma(cells) ? 'comma' : undefined;
}

const powers = Array.from({ length: 16 }, (_, k) => 10 ** k);

/**
 * A number written as sign, digits and perhaps a point with digits behind it; NaN for anything else, and for more than 15 digits.
 * Up to 15 digits a whole number and a power of ten are exact, so their quotient is the number that the text stands for, as `Number` gives it.
 */
export function plainNumber(cell: string): number {
  const length = cell.length;
  const sign = cell.charCodeAt(0);
  const start = sign === 45 || sign === 43 ? 1 : 0;
  let value = 0;
  let point = -1;
  for (let i = start; i < length; i++) {
    const digit = cell.charCodeAt(i) - 48;
    if (digit >= 0 && digit <= 9) value = 10 * value + digit;
    else if (digit === -2 && point < 0 && i > start && i < length - 1) point = i;
    else return NaN;
  }
  const digits = length - start - (point < 0 ? 0 : 1);
  if (digits < 1 || digits > 15) return NaN;
  const of = point < 0 ? value : value / powers[length - 1 - point]!;
  return sign === 45 ? -of : of;
}

/** The same for several lists together: a point in one of them speaks for all. */
export function decimalOfAll(lists: readonly (readonly string[])[]): Decimal | undefined {
  if (lists.some(hasPoint)) return 'point';
  return lists.some(hasComma) ? 'comma' : undefined;
}

// Most cells hold no sign at all: looking for the letter first is quicker than a pattern.
const hasPoint = (cells: readonly string[]): boolean =>
  cells.some((cell) => cell.includes('.') && /\d\.\d/.test(cell) && isNumberLike(cell));
const hasComma = (cells: readonly string[]): boolean =>
  cells.some((cell) => cell.includes(',') && commaOnly.test(cell) && !eitherWay.test(cell));

/** Whether cells hold a comma that could be a decimal sign or part thousands. */
export function unclearComma(cells: readonly string[]): boolean {
  return cells.some((cell) => cell.includes(',') && eitherWay.test(cell));
}

/**
 * The number in a cell and what stands behind it, such as a unit.
 * @returns NaN with the cell's own text as rest where it is no number
 */
export function numberIn(cell: string, decimal: Decimal): { readonly value: number; readonly rest: string; readonly below: boolean } {
  const found = /^([<>≤≥]?)\s*([+\-−]?)((?:\d[\d\s.,\u202f]*|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/.exec(cell);
  if (!found) return { value: NaN, rest: cell, below: false };
  const digits = found[3]!.replace(/[\s\u202f]/g, '');
  const plain = decimal === 'comma' ? digits.replace(/\./g, '').replace(',', '.') : digits.replace(/,/g, '');
  const value = Number(plain) * (found[2] === '-' || found[2] === '−' ? -1 : 1);
  return { value: Number.isFinite(value) ? value : NaN, rest: found[4]!.trim(), below: found[1] !== '' };
}
