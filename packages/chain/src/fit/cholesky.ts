/** The inverse of a symmetric positive matrix, or the row at which it turns out (nearly) singular. */
export type Inverse = { readonly ok: true; readonly inverse: number[][] } | { readonly ok: false; readonly row: number };

/**
 * By Cholesky's factors, after scaling to ones on the diagonal.
 * @param least - a squared pivot below this share of its diagonal counts as singular
 */
export function invert(matrix: readonly (readonly number[])[], least: number): Inverse {
  const n = matrix.length;
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i]!));
  const lower = matrix.map(() => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]! * scale[i]! * scale[j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i !== j) lower[i]![j] = sum / lower[j]![j]!;
      else if (sum > least) lower[i]![i] = Math.sqrt(sum);
      else return { ok: false, row: i };
    }
  }
  const columns = matrix.map((_, c) => {
    const x = matrix.map((__, i) => (i === c ? 1 : 0));
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) x[i]! -= lower[i]![k]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      for (let k = i + 1; k < n; k++) x[i]! -= lower[k]![i]! * x[k]!;
      x[i]! /= lower[i]![i]!;
    }
    return x;
  });
  return { ok: true, inverse: columns.map((column, c) => column.map((x, i) => x * scale[i]! * scale[c]!)) };
}

/** AᵀA of a matrix given by its rows. */
export function normalMatrix(rows: readonly (readonly number[])[], size: number): number[][] {
  const result = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const row of rows) for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) result[i]![j]! += row[i]! * row[j]!;
  return result;
}
