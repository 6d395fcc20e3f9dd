import { defineModel, type Estimate, type Model } from '../../model.js';
import { glassTable, otherGlassFormers } from '../data/glass-transition.js';
import { chainGlass, glassRules, glassTransition, waterAtGlassTransition, type GlassRule } from '../glass/mixture.js';
import { couchmanKarasz, fox, gordonTaylor } from '../glass/rules.js';
import { gabIsotherm } from '../migration/isotherm.js';
import { compositionInputs, compositionOf, scaled, stateOf } from './composition.js';
import { fraction, nonNegative, positive, temperature } from './inputs.js';

const tgOutput = {
  key: 'glass_transition_c',
  unit: '°C',
  meaning: 'glass transition by calorimetry, onset (the midpoint lies 3 to 8 K higher)',
} as const;
/** The published tables differ by up to 10 K for one sugar, and those that give the midpoint lie above ours, which give the onset. */
export const glassEstimate = (value: number, spread: number): Estimate => ({ value, low: value - spread, high: value + spread + 4 });

const tables = {
  sucrose: glassTable.values.sucrose,
  glucose: glassTable.values.glucose,
  fructose: glassTable.values.fructose,
  maltose: glassTable.values.maltose,
  lactose: glassTable.values.lactose,
  sorbitol: glassTable.values.polyols,
  maltodextrin_de36: glassTable.values.maltodextrin_de36,
  maltodextrin_de25: glassTable.values.maltodextrin_de25,
  maltodextrin_de20: glassTable.values.maltodextrin_de20,
  maltodextrin_de10: glassTable.values.maltodextrin_de10,
  maltodextrin_de5: glassTable.values.maltodextrin_de5,
  starch: glassTable.values.starch,
  ...otherGlassFormers.values,
} as const;

export const glassModels: readonly Model[] = [
  defineModel({
    id: 'glass_transition.gordon_taylor',
    title: 'Glass transition of one solid with water, from its constants',
    about: 'Tg = (w1 Tg1 + k w2 Tg2)/(w1 + k w2).',
    inputs: [
      temperature('solid_glass_transition_c', 'glass transition of the dry solid'),
      positive('gordon_taylor_k', '1', 'Gordon-Taylor constant of the solid against water'),
      fraction('water', 'water, mass fraction of solid and water', { fitted: [0, 0.3] }),
      temperature('water_glass_transition_c', 'glass transition of water that belongs to k', { default: -135 }),
    ],
    outputs: [tgOutput],
    sources: ['gordon-taylor-1952', 'gordon-taylor-table-2016'],
    standing: 'found',
    run: (x) => ({
      glass_transition_c: gordonTaylor(x.solid_glass_transition_c, x.gordon_taylor_k, x.water, x.water_glass_transition_c),
    }),
  }),
  defineModel({
    id: 'glass_transition.fox',
    title: 'Glass transition of two components without constants',
    about: '1/Tg = w1/Tg1 + w2/Tg2 in kelvin.',
    inputs: [
      temperature('first_glass_transition_c', 'glass transition of the first component'),
      temperature('second_glass_transition_c', 'glass transition of the second component'),
      fraction('second_share', 'mass fraction of the second component'),
    ],
    outputs: [tgOutput],
    sources: ['fox-1956'],
    standing: 'memory',
    run: (x) => ({
      glass_transition_c: fox([
        { mass: 1 - x.second_share, tg: x.first_glass_transition_c },
        { mass: x.second_share, tg: x.second_glass_transition_c },
      ]),
    }),
  }),
  defineModel({
    id: 'glass_transition.couchman_karasz',
    title: 'Glass transition of two components from their heat capacity steps',
    about: 'ln Tg = (w1 ΔCp1 ln Tg1 + w2 ΔCp2 ln Tg2)/(w1 ΔCp1 + w2 ΔCp2); reported to underestimate sugar blends.',
    inputs: [
      temperature('first_glass_transition_c', 'glass transition of the first component'),
      positive('first_step_j_g_k', 'J/(g K)', 'heat capacity step of the first component'),
      temperature('second_glass_transition_c', 'glass transition of the second component', { default: -135 }),
      positive('second_step_j_g_k', 'J/(g K)', 'heat capacity step of the second component', { default: 1.94 }),
      fraction('second_share', 'mass fraction of the second component'),
    ],
    outputs: [tgOutput],
    sources: ['couchman-karasz-1978'],
    standing: 'memory',
    run: (x) => ({
      glass_transition_c: couchmanKarasz([
        { mass: 1 - x.second_share, tg: x.first_glass_transition_c, step: x.first_step_j_g_k },
        { mass: x.second_share, tg: x.second_glass_transition_c, step: x.second_step_j_g_k },
      ]),
    }),
  }),
  defineModel({
    id: 'glass_transition.solid',
    title: 'Glass transition of one sugar or starch product with water',
    about: 'Tabled dry glass transition and Gordon-Taylor k.',
    inputs: [
      {
        key: 'material',
        unit: '1',
        meaning: 'the dry solid',
        kind: 'choice',
        choices: Object.keys(tables),
        default: 'sucrose',
      },
      fraction('water', 'water, mass fraction of solid and water', { default: 0, fitted: [0, 0.3] }),
    ],
    outputs: [tgOutput, { key: 'gordon_taylor_k', unit: '1', meaning: 'Gordon-Taylor constant' }],
    sources: ['gordon-taylor-table-2016', 'roos-1993'],
    standing: 'found',
    run: (x) => {
      const [tg, k] = tables[x.material as keyof typeof tables];
      return { glass_transition_c: glassEstimate(gordonTaylor(tg, k, x.water), 10), gordon_taylor_k: k };
    },
  }),
  defineModel({
    id: 'glass_transition.syrup',
    title: 'Glass transition of a glucose syrup or maltodextrin by dextrose equivalent',
    about: 'One series of glucose chains from dextrose to long chains by number-average length, Gordon-Taylor with water.',
    inputs: [
      { key: 'dextrose_equivalent', unit: '1', meaning: '18016 by number-average molar mass', possible: [0, 100], fitted: [5, 100] },
      fraction('water', 'water, mass fraction of the syrup', { default: 0, fitted: [0, 0.3] }),
    ],
    outputs: [tgOutput, { key: 'gordon_taylor_k', unit: '1', meaning: 'Gordon-Taylor constant' }],
    sources: ['gordon-taylor-table-2016'],
    standing: 'secondhand',
    run: (x) => {
      const { tg, k } = chainGlass(x.dextrose_equivalent);
      return { glass_transition_c: glassEstimate(gordonTaylor(tg, k, x.water), 10), gordon_taylor_k: k };
    },
  }),
  defineModel({
    id: 'glass_transition.mixture',
    title: 'Glass transition of the syrup phase of a confectionery mass',
    about:
      'Water and dissolved sugars by Gordon-Taylor over all components (weights w/k), glucose chains as one series; fat, protein, starch and ' +
      'crystals stand aside.',
    inputs: [
      ...compositionInputs,
      { key: 'rule', unit: '1', meaning: 'mixing rule', kind: 'choice', choices: glassRules, default: 'gordon_taylor' },
    ],
    outputs: [tgOutput],
    sources: ['gordon-taylor-table-2016', 'gordon-taylor-1952', 'fox-1956'],
    standing: 'secondhand',
    run: (x) => ({ glass_transition_c: glassEstimate(glassTransition(compositionOf(x), x.rule as GlassRule, stateOf(x)), 10) }),
    remarks: scaled,
  }),
  defineModel({
    id: 'glass_transition.critical_water',
    title: 'Water at which the syrup phase turns from glass to rubber at a temperature',
    about: 'The Gordon-Taylor mixture solved for the water; with GAB constants also the water activity of that point.',
    inputs: [
      ...compositionInputs,
      temperature('temperature_c', 'storage temperature', { default: 20 }),
      nonNegative('gab_monolayer', 'kg/kg', 'GAB monolayer on dry solids; 0 to leave the activity out', { default: 0 }),
      nonNegative('gab_c', '1', 'GAB C', { default: 0 }),
      nonNegative('gab_k', '1', 'GAB K', { default: 0 }),
    ],
    outputs: [
      { key: 'moisture', unit: '1', meaning: 'water by water and dissolved sugars' },
      { key: 'moisture_dry_basis', unit: 'kg/kg', meaning: 'water by dissolved sugars' },
      { key: 'water_activity', unit: '1', meaning: 'activity of that water, where GAB constants were given' },
    ],
    sources: ['gordon-taylor-table-2016'],
    standing: 'secondhand',
    run: (x) => {
      const moisture = waterAtGlassTransition(compositionOf(x), x.temperature_c, stateOf(x));
      const dry = moisture / (1 - moisture);
      const aw = x.gab_monolayer > 0 ? gabIsotherm([x.gab_monolayer, x.gab_c, x.gab_k]).activity(dry) : undefined;
      return { moisture, moisture_dry_basis: dry, ...(aw === undefined ? {} : { water_activity: aw }) };
    },
  }),
];
