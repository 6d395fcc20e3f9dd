import { requireRange } from '../../errors.js';
import { kernelPractice, usOutgoing } from '../data/peanut-quality.js';

export interface KernelTest {
  /** Wet basis. */ readonly moisture: number;
  /** meq O2 per kg oil */ readonly peroxide: number;
  /** Share of the oil, as oleic acid. */ readonly freeFattyAcids: number;
}

/** Sentences on what a kernel lot breaks, raw or roasted; empty where nothing. */
export function kernelFaults(test: KernelTest, state: 'raw' | 'roasted'): readonly string[] {
  requireRange('moisture', test.moisture, [0, 1], 'a share of mass');
  requireRange('peroxide_meq_kg', test.peroxide, [0, 1000], 'a peroxide value');
  requireRange('free_fatty_acids', test.freeFattyAcids, [0, 1], 'a share of oil');
  const v = kernelPractice.values;
  const faults: string[] = [];
  const peroxide = state === 'raw' ? v.peroxideRaw : v.peroxideRoasted;
  if (test.peroxide > peroxide) faults.push(`Peroxide value ${test.peroxide} meq/kg is above ${peroxide}`);
  if (test.freeFattyAcids > v.freeFattyAcids)
    faults.push(`Free fatty acids are ${percent(test.freeFattyAcids)} of the oil, above ${percent(v.freeFattyAcids)}`);
  if (state === 'raw') {
    if (test.moisture > usOutgoing.values.moisture)
      faults.push(`Moisture ${percent(test.moisture)} is above the outgoing limit of ${percent(usOutgoing.values.moisture)}`);
    else if (test.moisture > v.moisture[1]) faults.push(`Moisture ${percent(test.moisture)} is above the usual ${percent(v.moisture[1])}`);
    else if (test.moisture < v.moisture[0])
      faults.push(`Moisture ${percent(test.moisture)} is below the usual ${percent(v.moisture[0])}: skins and splits`);
  }
  return faults;
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}

/** Coefficient of variation of nut mass per bar when pieces fall at random: CV² = (1 + cv²) / λ. */
export function piecesVariation(pieces: number, pieceVariation: number): number {
  requireRange('pieces', pieces, [1e-6, 1e9], 'a compound Poisson law');
  requireRange('piece_cv', pieceVariation, [0, 10], 'a compound Poisson law');
  return Math.sqrt((1 + pieceVariation ** 2) / pieces);
}
