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

/** The decimal sign of a column: a comma only where commas part the last digits and no point stands anywhere. */
export function decimalOf(cells: readonly string[]): Decimal {
  const commas = cells.filter((cell) => /^\s*[+\-−]?\d{1,6},\d+\s*\D*$/.test(cell));
  const points = cells.filter((cell) => /\d\.\d/.test(cell));
  if (commas.length === 0 || points.length > 0) return 'point';
  // '1,050' in every cell is a thousand; '163,2' or '0,85' is not.
  return commas.every((cell) => /^\s*[+\-−]?[1-9]\d{0,2},\d{3}\s*\D*$/.test(cell)) ? 'point' : 'comma';
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
