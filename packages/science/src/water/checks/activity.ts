import type { Check } from '../../check.js';

type Inputs = Check['inputs'];

/** Freezing points in a handbook's table, 20 g of solute in 100 g of solution and so on; none was used in fitting unless said. */
function frozen(solute: string, solids: number, depression: number, note = 'not used in fitting'): Check {
  return {
    id: `solution.freezing_point.${solute}_${Math.round(100 * solids)}`,
    model: 'solution.freezing_point',
    inputs: { solute, solids },
    output: 'depression_k',
    expected: depression,
    tolerance: depression > 4 ? 0.12 : 0.06,
    kind: 'measured',
    source: 'crc-102-solutions',
    standing: 'found',
    note,
  };
}

/** The same depressions turned into an activity at the freezing point, with the heat of fusion. */
function frozenActivity(solute: string, solids: number, temperature_c: number, expected: number): Check {
  return {
    id: `solution.water_activity.frozen_${solute}_${Math.round(100 * solids)}`,
    model: 'solution.water_activity',
    inputs: { solute, solids, temperature_c },
    output: 'water_activity',
    expected,
    tolerance: 0.0015,
    kind: 'measured',
    source: 'crc-102-solutions',
    standing: 'found',
    note: 'computed from the measured freezing point',
  };
}

function at25(
  model: string,
  id: string,
  inputs: Inputs,
  expected: Check['expected'],
  tolerance: number,
  rest: Pick<Check, 'kind' | 'source' | 'standing' | 'note'>,
): Check {
  return { id: `${model}.${id}`, model, inputs: { ...inputs, temperature_c: 25 }, output: 'water_activity', expected, tolerance, ...rest };
}

const code = { kind: 'code', source: 'starzak-peacock-1997', standing: 'found', note: 'computed from the same equation' } as const;
const isopiestic = {
  kind: 'measured',
  source: 'robinson-stokes-1959',
  standing: 'memory',
  note: 'isopiestic osmotic coefficients',
} as const;
const saturated = { kind: 'measured', source: 'saturated-solutions', standing: 'memory' } as const;
const sucroseModel = 'sucrose.water_activity';
const single = 'solution.water_activity';
const syrup = 'syrup.water_activity';
const honeys = { kind: 'measured', source: 'flower-honeys', standing: 'found' } as const;

/** Moisture (per 100 g of solids) held at an activity, as a check of the inverse. */
function sorbed(id: string, inputs: Inputs, water_activity: number, grams: number, tolerance: number): Check {
  return {
    id: `syrup.moisture_from_water_activity.${id}`,
    model: 'syrup.moisture_from_water_activity',
    inputs: { ...inputs, water_activity },
    output: 'water',
    expected: grams,
    tolerance,
    kind: 'measured',
    source: 'sloan-labuza-1975',
    standing: 'found',
    note: 'amorphous column of a table that scatters by a third; tolerance set after seeing that',
  };
}

export const activityChecks: readonly Check[] = [
  at25(sucroseModel, '40', { solids: 0.4 }, 0.9585, 0.0002, code),
  at25(sucroseModel, '60', { solids: 0.6 }, 0.8947, 0.0002, code),
  at25(sucroseModel, '67', { solids: 0.67 }, 0.8511, 0.0002, code),
  at25(sucroseModel, '80', { solids: 0.8 }, 0.6928, 0.0002, code),
  at25(sucroseModel, '90', { solids: 0.9 }, 0.4202, 0.0002, code),
  at25(sucroseModel, '1_molal', { solids: 0.255 }, Math.exp(-0.018015 * 1 * 1.088), 0.001, isopiestic),
  at25(sucroseModel, '3_molal', { solids: 0.5066 }, Math.exp(-0.018015 * 3 * 1.288), 0.002, isopiestic),
  at25(sucroseModel, '6_molal', { solids: 0.6725 }, Math.exp(-0.018015 * 6 * 1.494), 0.003, isopiestic),
  frozenActivity('glucose', 0.2, -2.7, 0.9742),
  frozenActivity('fructose', 0.2, -2.64, 0.9747),
  frozenActivity('maltose', 0.3, -2.62, 0.9749),
  frozenActivity('maltose', 0.44, -5.35, 0.9494),
  frozenActivity('sucrose', 0.2, -1.47, 0.9859),
  frozenActivity('sucrose', 0.3, -2.64, 0.9747),
  frozenActivity('sucrose', 0.42, -4.93, 0.9533),
  frozenActivity('lactose', 0.05, -0.29, 0.9972),
  frozenActivity('glycerol', 0.1, -2.32, 0.9778),
  frozenActivity('glycerol', 0.2, -5.46, 0.9484),
  frozenActivity('glycerol', 0.4, -15.5, 0.8597),
  frozenActivity('mannitol', 0.1, -1.15, 0.9889),
  frozen('glucose', 0.2, 2.7),
  frozen('fructose', 0.2, 2.64, 'looked at when its constant was chosen'),
  frozen('maltose', 0.3, 2.62),
  frozen('maltose', 0.44, 5.35),
  frozen('sucrose', 0.2, 1.47),
  frozen('sucrose', 0.3, 2.64),
  frozen('sucrose', 0.42, 4.93),
  frozen('lactose', 0.05, 0.29),
  frozen('glycerol', 0.1, 2.32),
  frozen('glycerol', 0.2, 5.46),
  frozen('glycerol', 0.4, 15.5, 'used in fitting'),
  frozen('mannitol', 0.1, 1.15),
  at25(single, 'saturated_fructose', { solute: 'fructose', solids: 0.802 }, 0.634, 0.015, {
    ...saturated,
    note: 'looked at when its constant was chosen',
  }),
  at25(single, 'saturated_glucose', { solute: 'glucose', solids: 0.512 }, 0.89, 0.015, { ...saturated, note: 'glucose monohydrate' }),
  at25(single, 'saturated_xylitol', { solute: 'xylitol', solids: 0.64 }, 0.785, 0.015, { ...saturated, note: 'deliquescence' }),
  at25(single, 'saturated_erythritol', { solute: 'erythritol', solids: 0.37 }, 0.915, 0.01, { ...saturated, note: 'deliquescence' }),
  at25(single, 'saturated_salt', { solute: 'salt', solids: 0.2647 }, 0.753, 0.003, { ...saturated, note: 'calibration salt' }),
  at25(single, 'glycerol_51', { solute: 'glycerol', solids: 0.51 }, 0.8, 0.01, {
    kind: 'measured',
    source: 'miner-dalton-1953',
    standing: 'memory',
    note: 'not used in fitting',
  }),
  at25(syrup, 'honey_15', { water: 0.15, glucose: 0.41, fructose: 0.44 }, 0.47, 0.03, {
    ...honeys,
    note: 'taken as glucose and fructose only',
  }),
  at25(syrup, 'honey_20', { water: 0.204, glucose: 0.384, fructose: 0.412 }, 0.563, 0.03, {
    ...honeys,
    note: 'this series lies 0.04 below the line of the other honey works (next row) at its wet end',
  }),
  at25(
    syrup,
    'honey_line_17',
    { water: 0.172, glucose: 0.313, fructose: 0.382, maltose: 0.073, sucrose: 0.013, higher_saccharides: 0.015 },
    0.248 + 0.0175 * 17.2,
    0.025,
    {
      kind: 'measured',
      source: 'chirife-2006',
      standing: 'memory',
      note: 'regression over honeys of 15 to 21 % water; looked at when the glucose constant was chosen',
    },
  ),
  sorbed('sucrose_60', { sucrose: 100 }, 0.6, 14, 8),
  sorbed('sucrose_80', { sucrose: 100 }, 0.8, 35, 12.2),
  sorbed('fructose_70', { fructose: 100 }, 0.7, 30, 10.5),
  sorbed('fructose_90', { fructose: 100 }, 0.9, 80, 28),
  sorbed('glucose_syrup_60', { glucose_syrup_solids: 100 }, 0.6, 14, 8),
  sorbed('glucose_syrup_80', { glucose_syrup_solids: 100 }, 0.8, 30, 10.5),
  sorbed('sorbitol_60', { sorbitol: 100 }, 0.6, 25, 8.8),
  sorbed('sorbitol_80', { sorbitol: 100 }, 0.8, 55, 19.2),
  sorbed('maltodextrin_50', { glucose_syrup_solids: 100, dextrose_equivalent: 10 }, 0.5, 8.7, 1.2),
  ...[
    ['money_born', { sucrose: 203.9, water: 100 }, 0.8614],
    ['grover', { sucrose: 203.9, water: 100 }, 0.8548],
    ['ross', { sucrose: 1, glucose: 1, water: 1 }, 0.8341],
    ['norrish', { sucrose: 1, glucose: 1, water: 1 }, 0.8165],
  ].map(
    ([output, inputs, expected]) =>
      ({
        id: `water_activity.first_estimates.${output as string}`,
        model: 'water_activity.first_estimates',
        inputs: inputs as Inputs,
        output: output as string,
        expected: expected as number,
        tolerance: 0.0005,
        kind: 'code',
        source:
          output === 'money_born'
            ? 'money-born-1951'
            : output === 'grover'
              ? 'grover-1947'
              : output === 'ross'
                ? 'ross-1975'
                : 'norrish-1966',
        standing: 'memory',
        note: 'arithmetic of the same formula',
      }) as const,
  ),
];
