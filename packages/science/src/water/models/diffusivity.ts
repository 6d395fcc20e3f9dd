import { defineModel } from '../../model.js';
import { waterActivity } from '../activity.js';
import {
  diffusingSugars,
  lienhardWaterDiffusivity,
  sugarDiffusivityInWater,
  waterDiffusivity,
  zobristWaterDiffusivity,
  type DiffusingSugar,
} from '../diffusivity.js';

const outputs = [
  { key: 'diffusivity_m2_s', unit: 'm²/s', meaning: 'diffusivity' },
  { key: 'log10_diffusivity', unit: '1', meaning: 'its decimal logarithm, m²/s' },
] as const;
const activity = {
  key: 'water_activity',
  unit: '1',
  meaning: 'water activity, not a mole fraction',
  possible: [0, 1],
  fitted: [0.25, 1],
} as const;
/** The published fits differ by up to 0.4 decade. */
function decades(value: number, half = 0.4) {
  return {
    diffusivity_m2_s: { value, low: value / 10 ** half, high: value * 10 ** half },
    log10_diffusivity: { value: Math.log10(value), low: Math.log10(value) - half, high: Math.log10(value) + half },
  };
}

export const waterDiffusivityModel = defineModel({
  id: 'sucrose.water_diffusivity',
  title: 'Diffusivity of water in amorphous sucrose or raffinose',
  about:
    'log10 D as a polynomial of the water activity near 23 °C (Price 2014; a second fit of fifth order). A lower bound for caramel and nougat.',
  inputs: [
    {
      key: 'fit',
      unit: '1',
      kind: 'choice',
      meaning: 'which published fit',
      choices: ['sucrose', 'sucrose_quintic', 'raffinose'],
      default: 'sucrose',
    },
    activity,
  ],
  outputs,
  sources: ['price-2014'],
  standing: 'found',
  run: ({ fit, water_activity }) =>
    decades(waterDiffusivity(fit === 'sucrose_quintic' ? 'sucroseQuintic' : (fit as 'sucrose' | 'raffinose'), water_activity)),
});

export const zobristModel = defineModel({
  id: 'sucrose.water_diffusivity_by_temperature',
  title: 'Diffusivity of water in sucrose by water activity and temperature',
  about: 'log10 D = -(a + b/(T - T0)), a, b and T0 functions of the water activity.',
  inputs: [activity, { key: 'temperature_c', unit: '°C', meaning: 'temperature', possible: [-110, 60], fitted: [-100, 40], default: 25 }],
  outputs,
  sources: ['zobrist-2011'],
  standing: 'found',
  run: ({ water_activity, temperature_c }) => decades(zobristWaterDiffusivity(water_activity, temperature_c), 0.5),
});

export const lienhardModel = defineModel({
  id: 'sucrose.water_diffusivity_by_mole_fraction',
  title: 'Diffusivity of water in sucrose by water mole fraction and temperature',
  about: 'Vignes mixing of a dry-glass and a pure-water end. Takes the MOLE fraction; a water activity fed in is wrong by decades.',
  inputs: [
    { key: 'water_mole_fraction', unit: '1', meaning: 'moles of water over moles of water and sucrose', possible: [0, 1] },
    { key: 'temperature_c', unit: '°C', meaning: 'temperature', possible: [-100, 60], fitted: [-60, 25], default: 25 },
    {
      key: 'weighting',
      unit: '1',
      kind: 'choice',
      meaning: 'vignes: weighted once, in line with the fits by activity; as_coded: weighted twice, as a public code has it',
      choices: ['vignes', 'as_coded'],
      default: 'vignes',
    },
  ],
  outputs: [...outputs, { key: 'water_activity', unit: '1', meaning: 'water activity of that sucrose solution' }],
  sources: ['lienhard-2015', 'starzak-peacock-1997'],
  standing: 'found',
  run: ({ water_mole_fraction: x, temperature_c, weighting }) => ({
    ...decades(lienhardWaterDiffusivity(x, temperature_c, weighting === 'vignes' ? 1 : 2), 0.6),
    ...(temperature_c >= -40 ? { water_activity: waterActivity({ water: x * 18.015, sucrose: (1 - x) * 342.3 }, temperature_c) } : {}),
  }),
});

export const sucroseDiffusivityModel = defineModel({
  id: 'sucrose.self_diffusivity',
  title: 'Diffusivity of sucrose in its own syrup',
  about: 'log10 D as a cubic of the water activity near 23 °C: what grain growth waits for.',
  inputs: [{ ...activity, fitted: [0.38, 1] }],
  outputs,
  sources: ['price-2014'],
  standing: 'found',
  run: ({ water_activity }) => decades(waterDiffusivity('sucroseSelf', water_activity)),
});

export const sugarDiffusivityModel = defineModel({
  id: 'sugar.diffusivity_in_water',
  title: 'Diffusivity of a sugar in much water',
  about: 'Measured limit at infinite dilution; other temperatures by Stokes and Einstein, D η/T constant.',
  inputs: [
    { key: 'sugar', unit: '1', kind: 'choice', meaning: 'what diffuses', choices: diffusingSugars, default: 'sucrose' },
    { key: 'temperature_c', unit: '°C', meaning: 'temperature', possible: [0, 100], fitted: [25, 55], default: 25 },
  ],
  outputs,
  sources: ['ribeiro-2006'],
  standing: 'found',
  run: ({ sugar, temperature_c }) => decades(sugarDiffusivityInWater(sugar as DiffusingSugar, temperature_c), 0.02),
});
