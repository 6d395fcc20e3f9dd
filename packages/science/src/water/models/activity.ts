import { defineModel } from '../../model.js';
import { waterActivity, waterForActivity } from '../activity.js';
import { groverActivity, moneyBornActivity, norrishActivity, rossActivity } from '../firstEstimates.js';
import { brineBeyond, dissolvedInputs, driedBeyond, mixtureOf, singleSolution, soluteInput, waterInput } from '../mixture.js';
import { dissolvedSolids } from '../solution.js';
import { activityEstimate } from '../spread.js';

const activity = { key: 'water_activity', unit: '1', meaning: 'vapour pressure over the solution by that of pure water' } as const;
const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature',
  possible: [-40, 200],
  fitted: [-15, 150],
  default: 25,
} as const;
const single = { key: 'solids', unit: '1', meaning: 'dissolved solids, mass fraction of the solution', possible: [0, 1] } as const;

export const sucroseActivityModel = defineModel({
  id: 'sucrose.water_activity',
  title: 'Water activity of a sucrose solution',
  about: 'ln γw = (Q/RT) x² (1 + a x + b x²), fitted by its authors to a century of boiling, freezing and vapour pressure data.',
  inputs: [{ ...single, fitted: [0, 0.95] }, temperature],
  outputs: [activity],
  sources: ['starzak-peacock-1997'],
  standing: 'found',
  run: ({ solids, temperature_c }) => ({
    water_activity: activityEstimate(waterActivity({ water: 1 - solids, sucrose: solids }, temperature_c), 'sucrose'),
  }),
});

export const soluteActivityModel = defineModel({
  id: 'solution.water_activity',
  title: 'Water activity of one sugar, polyol or salt in water',
  about:
    'ln γw = -k g(T) x² (1 + a x) per solute, sucrose and lactose by the sucrose equation, salt by an extended Debye-Hückel equation, potassium and ' +
    'calcium chloride by tables of their osmotic coefficients at 25 °C.',
  inputs: [soluteInput, { ...single, fitted: [0, 0.9] }, { ...temperature, fitted: [-15, 130] }],
  outputs: [activity],
  sources: ['starzak-peacock-1997', 'norrish-1966', 'miner-dalton-1953', 'tang-1986', 'robinson-stokes-1959'],
  standing: 'memory',
  run: ({ solute, solids, temperature_c }) => ({
    water_activity: activityEstimate(waterActivity(singleSolution(solute, solids), temperature_c), 'one solute'),
  }),
  remarks: ({ solute, solids }) => brineBeyond(solute, solids),
});

export const syrupActivityModel = defineModel({
  id: 'syrup.water_activity',
  title: 'Water activity of a mixed syrup',
  about:
    'At a common activity each solute holds the water it would hold alone (Zdanovskii, Stokes, Robinson). Masses of the dissolved phase in any ' +
    'one unit: leave out fat, protein and crystals.',
  inputs: [waterInput, ...dissolvedInputs, { ...temperature, fitted: [-15, 130] }],
  outputs: [activity, { key: 'solids', unit: '1', meaning: 'dissolved solids, mass fraction of the solution' }],
  sources: ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'pancoast-junk-1980', 'miner-dalton-1953', 'tang-1986', 'walstra-2006'],
  standing: 'memory',
  run: (x) => {
    const solution = mixtureOf(x);
    const solids = dissolvedSolids(solution);
    return {
      water_activity: activityEstimate(waterActivity(solution, x.temperature_c), 'mixture'),
      solids: solids / (solids + solution.water),
    };
  },
  remarks: (x) => driedBeyond(mixtureOf(x), 0.97),
});

export const syrupWaterModel = defineModel({
  id: 'syrup.moisture_from_water_activity',
  title: 'Water that a mixed syrup holds at a water activity',
  about: 'The inverse of syrup.water_activity: what a syrup takes up or keeps in air of that relative humidity.',
  inputs: [
    { key: 'water_activity', unit: '1', meaning: 'water activity to stand at', possible: [0.01, 0.9999], fitted: [0.3, 0.99] },
    ...dissolvedInputs,
    { ...temperature, fitted: [-15, 130] },
  ],
  outputs: [
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the solution' },
    { key: 'water', unit: 'kg', meaning: 'water, in the unit of the solids given' },
  ],
  sources: ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'pancoast-junk-1980'],
  standing: 'memory',
  run: (x) => {
    const solution = mixtureOf(x);
    const solids = dissolvedSolids(solution);
    const at = (aw: number): number => waterForActivity(solution, Math.min(0.99999, Math.max(1e-4, aw)), x.temperature_c);
    const water = at(x.water_activity);
    const { low, high } = activityEstimate(x.water_activity, 'mixture');
    // Tables of sorbed water differ by a seventh beyond what the activity leaves open.
    const [less, more] = [at(low!) / 1.15, at(high!) * 1.15];
    return {
      moisture: { value: water / (water + solids), low: less / (less + solids), high: more / (more + solids) },
      water: { value: water, low: less, high: more },
    };
  },
});

export const firstEstimatesModel = defineModel({
  id: 'water_activity.first_estimates',
  title: 'Water activity by the short formulas, side by side',
  about:
    'Grover, Norrish (many solutes), Money and Born, Ross, all at 25 °C, beside syrup.water_activity. Each is good in its own narrow range; a short ' +
    'formula that has no answer is left out.',
  inputs: [
    waterInput,
    ...dissolvedInputs,
    { key: 'protein', unit: 'kg', meaning: 'protein, for Grover only', possible: [0, 1e9], default: 0 },
  ],
  outputs: [
    { key: 'grover', unit: '1', meaning: 'aw = 1.04 - 0.10 E + 0.0045 E²; 0.65 to 0.9' },
    { key: 'norrish', unit: '1', meaning: 'aw = xw exp(-(Σ √k x)²); above 0.75' },
    { key: 'money_born', unit: '1', meaning: 'aw = 1/(1 + 0.27 n); jams' },
    { key: 'ross', unit: '1', meaning: 'product of the single solutes; above 0.8' },
    { key: 'syrup', unit: '1', meaning: 'syrup.water_activity at 25 °C' },
  ],
  sources: ['grover-1947', 'norrish-1966', 'money-born-1951', 'ross-1975', 'zsr'],
  standing: 'memory',
  run: (x) => {
    const solution = mixtureOf(x);
    if (solution.water === 0) return { syrup: 0 };
    const short = {
      norrish: norrishActivity(solution),
      money_born: moneyBornActivity(solution),
      ross: rossActivity(solution),
      syrup: activityEstimate(waterActivity(solution, 25), 'mixture'),
    };
    try {
      return { grover: groverActivity(solution, x.protein), ...short };
    } catch {
      return short;
    }
  },
  remarks: (x) => {
    const solution = mixtureOf(x);
    const aw = waterActivity(solution, 25);
    return aw < 0.65
      ? [
          {
            code: 'SHORT_FORMULAS_OUTSIDE_RANGE',
            message: `at an activity near ${aw.toFixed(2)} none of the short formulas was meant to hold`,
          },
        ]
      : [];
  },
});
