import type { Table } from '../../sources.js';

/** Stages of sugar boiling at sea level, °C: lowest and highest end temperature. Bands differ between books; gaps belong to none. */
export const boilingStageTable = {
  source: 'sugar-boiling-stages',
  standing: 'secondhand',
  note: 'Soft ball, hard ball and hard crack found; the others from memory of the same kind of table.',
  valid: { temperature_c: [106, 170] },
  values: {
    thread: [106, 112],
    soft_ball: [113, 116],
    firm_ball: [118, 120],
    hard_ball: [121, 130],
    soft_crack: [132, 143],
    hard_crack: [149, 154],
    caramel: [160, 170],
  },
} as const satisfies Table;
