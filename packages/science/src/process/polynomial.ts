/** a + b x + c x² + … by Horner's rule. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let y = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) y = y * x + coefficients[i]!;
  return y;
}
