export { betaIncomplete, betaQuantile, logBeta } from './beta.js';
export { chiSquareCdf, chiSquareQuantile, fisherCdf, fisherQuantile, gammaQuantile } from './chi-square.js';
export {
  binomialCdf,
  binomialPmf,
  clopperPearson,
  hypergeometricCdf,
  hypergeometricPmf,
  negativeBinomialCdf,
  poissonCdf,
  poissonInterval,
  poissonPmf,
  type Interval,
} from './counts.js';
export { gammaIncomplete, gammaIncompleteUpper, logChoose, logGamma } from './gamma.js';
export { erf, erfc, normalCdf, normalPdf, normalQuantile } from './normal.js';
export { studentCdf, studentQuantile } from './student.js';
