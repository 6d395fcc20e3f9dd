import type { Table } from '../../sources.js';

/** Water vapour transmission at 38 °C and 90 % relative humidity, g/(m² d), of films of a stated thickness in µm: [WVTR, thickness]. */
export const filmTransmission = {
  source: 'film-maker-table',
  standing: 'found',
  note: 'Film makers’ table in g per 100 square inches and day, times 15.5. Another laboratory found 9.5 for 60 µm of LDPE: films differ by a factor of 2.',
  valid: { temperature_c: [37, 39] },
  values: { opp: [5.1, 25], ldpe: [13.9, 25], hdpe: [5.7, 25], opet: [23.2, 25], foil: [0.03, 9] },
} as const satisfies Table;

/** Water vapour permeability of edible barriers, kg m/(m² s Pa). */
export const ediblePermeability = {
  source: 'biquet-labuza-1988',
  standing: 'placeholder',
  note:
    'No printed value of chocolate was found. That 0.6 mm of dark chocolate beats 25 µm of LDPE bounds it below 1.6e-14; 3e-15 is a placeholder ' +
    'between that and 5e-16. Measure the weight gain of a plate over a salt solution.',
  valid: { temperature_c: [20, 25] },
  values: { chocolate: 3e-15, chocolate_low: 5e-16, chocolate_high: 1.6e-14 },
} as const satisfies Table;

/** Activation energy of permeation, J/mol. */
export const permeationEnergy = {
  source: 'film-maker-table',
  standing: 'memory',
  note: 'Oriented polypropylene 35 to 50 kJ/mol, from memory.',
  valid: { temperature_c: [5, 40] },
  values: { opp: 42_000 },
} as const satisfies Table;
