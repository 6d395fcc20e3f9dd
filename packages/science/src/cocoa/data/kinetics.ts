import type { Table } from '../../sources.js';

/** Growth of form V on the crystals of a tempered chocolate: dS/dt = k (Tm - T)/10 K · S (1 - S/Seq). */
export const growth = {
  source: 'foubert-2002',
  standing: 'placeholder',
  note: 'Order 2 of the Foubert model with a rate proportional to undercooling. The rate is chosen, not measured: a milk chocolate with 1.5 % crystals half sets in about 3 min at 20 °C. Fit it to a temper curve of the plant.',
  valid: { temperature_c: [5, 32] },
  values: { rate: 0.0144, melting: 33.8, milkFatShift: 15, oilShift: 20, meltTime: 15, relaxTime: 30 },
} as const satisfies Table;
