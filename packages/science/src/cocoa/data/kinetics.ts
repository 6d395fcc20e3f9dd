import type { Table } from '../../sources.js';

/** Growth of form V on the crystals of a tempered chocolate: dS/dt = k (Tm - T)/10 K · N^(1/3) S^(2/3) (1 - S/Seq). */
export const growth = {
  source: 'franke-1998',
  standing: 'placeholder',
  note: 'Form: a rate that depends on undercooling and on what has not crystallised (Franke), on the surface of a fixed number of crystals. The rate is chosen, not measured: a sample cooled at 0.4 /min towards 8 °C is then well tempered (slope 0) at about 1.5 % crystals with its inflection near 22 °C, as common practice has it. Fit it to a temper curve of the plant.',
  valid: { temperature_c: [5, 32] },
  values: { rate: 0.06, melting: 33.8, milkFatShift: 15, oilShift: 20, meltTime: 15, relaxTime: 30 },
} as const satisfies Table;
