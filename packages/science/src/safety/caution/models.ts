import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { burns, dusts, hardObjects, referenceDoses, roasterFire, testPieces, type Allergen, type DustKey } from '../data/hazards.js';
import { cautionsOn, type Caution } from './cautions.js';
import {
  actionLevel,
  burnTime,
  dustClass,
  efoldMass,
  flush,
  kst,
  kstGuess,
  layerOfCloud,
  pipeHoldup,
  referenceDose,
  surfaceMaterials,
  surfaceThreshold,
  type SurfaceMaterial,
} from './hazards.js';

const caution = (topic: Caution['topic']): ModelFinding[] =>
  cautionsOn(topic).map(({ text, defersTo }) => ({ code: 'CAUTION', message: `${text} Decides: ${defersTo}.` }));

export const dustClassModel = defineModel({
  id: 'dust.explosion_class',
  title: 'Dust explosion class, and the layer that feeds a cloud',
  about: 'Kst = (dP/dt)max V^(1/3); St 1 to 200, St 2 to 300, St 3 above 300 bar m/s. Layer = concentration × height / bulk density.',
  inputs: [
    {
      key: 'kst_bar_m_s',
      unit: 'bar m/s',
      meaning: 'Measured on the plant’s own dust; left out: from pressure rise and vessel',
      possible: [0, 5000],
      default: NaN,
    },
    { key: 'pressure_rise_bar_s', unit: 'bar/s', meaning: 'Steepest rise in the test', possible: [0, 1e5], default: 0 },
    { key: 'vessel_m3', unit: 'm³', meaning: 'Test vessel', possible: [1e-6, 1e3], default: 0.02 },
    {
      key: 'concentration_g_m3',
      unit: 'g/m³',
      meaning: 'Cloud that is feared, such as the least explosible',
      possible: [0, 1e5],
      default: 60,
    },
    { key: 'room_height_m', unit: 'm', meaning: 'Height filled', possible: [0, 100], default: 3 },
    { key: 'bulk_density_kg_m3', unit: 'kg/m³', meaning: 'Of the layer', possible: [10, 3000], default: 500 },
  ],
  outputs: [
    { key: 'kst_bar_m_s', unit: 'bar m/s', meaning: 'Used' },
    { key: 'class', unit: '', meaning: 'St class' },
    { key: 'layer_mm', unit: 'mm', meaning: 'Layer on the floor that, whirled up, gives that cloud' },
  ],
  sources: ['iso-6184-1', 'nfpa-68'],
  standing: 'memory',
  run: (x) => {
    const value = Number.isNaN(x.kst_bar_m_s) ? kst(x.pressure_rise_bar_s, x.vessel_m3) : x.kst_bar_m_s;
    return {
      kst_bar_m_s: value,
      class: { value: dustClass(value) },
      layer_mm: 1000 * layerOfCloud(x.concentration_g_m3 / 1000, x.room_height_m, x.bulk_density_kg_m3),
    };
  },
  remarks: () => caution('dust'),
});

export const dustData = defineModel({
  id: 'dust.published_data',
  title: 'Published dust explosion figures of food powders',
  about: 'One sample each; finer and drier is worse. Not for design.',
  inputs: [{ key: 'dust', unit: '', meaning: 'Sample', kind: 'choice', choices: Object.keys(dusts) }],
  outputs: [
    { key: 'pmax_bar', unit: 'bar', meaning: 'Highest pressure' },
    { key: 'kst_bar_m_s', unit: 'bar m/s', meaning: 'Kst' },
    { key: 'mec_g_m3', unit: 'g/m³', meaning: 'Least explosible concentration' },
    { key: 'mie_mj', unit: 'mJ', meaning: 'Least ignition energy' },
    { key: 'cloud_ignition_c', unit: '°C', meaning: 'Ignition of a cloud' },
    { key: 'median_um', unit: 'µm', meaning: 'Of the sample' },
    { key: 'standing', unit: '', meaning: 'How far the figures may be trusted' },
    { key: 'source', unit: '', meaning: 'Work' },
  ],
  sources: ['food-dust-2017', 'sucrose-dust-2022', 'nfpa-68', 'usbm-ri-5753'],
  standing: 'secondhand',
  run: (x) => {
    const table = dusts[x.dust as DustKey];
    const v: Readonly<Record<string, number>> = table.values;
    const of = (key: string) => ({ value: v[key] ?? null });
    return {
      pmax_bar: of('pmax'),
      kst_bar_m_s: of('kst'),
      mec_g_m3: of('mec'),
      mie_mj: of('mie'),
      cloud_ignition_c: of('cloudIgnition'),
      median_um: of('median'),
      standing: { value: table.standing },
      source: { value: table.source },
    };
  },
  remarks: () => caution('dust'),
});

export const dustGuess = defineModel({
  id: 'dust.kst_screening',
  title: 'Screening guess of Kst from the highest pressure',
  about: 'Kst = 2.13 P² - 5.96 P - 4.75, a printed correlation. Never for design.',
  inputs: [{ key: 'pmax_bar', unit: 'bar', meaning: 'Highest pressure', possible: [3.5, 12], fitted: [5, 10] }],
  outputs: [{ key: 'kst_bar_m_s', unit: 'bar m/s', meaning: 'Guess' }],
  sources: ['kst-screening-page'],
  standing: 'secondhand',
  run: (x) => ({ kst_bar_m_s: { value: kstGuess(x.pmax_bar), low: 0.5 * kstGuess(x.pmax_bar), high: 2 * kstGuess(x.pmax_bar) } }),
  remarks: () => caution('dust'),
});

export const burn = defineModel({
  id: 'burn.contact_time',
  title: 'Contact time to irreversible skin injury',
  about: 'Log time straight between 6 h at 44 °C, 30 s at 54 °C and about a second at 70 °C.',
  inputs: [{ key: 'temperature_c', unit: '°C', meaning: 'Of the surface or mass', possible: [43, 500], fitted: [44, 500] }],
  outputs: [
    { key: 'time_s', unit: 's', meaning: 'To injury; 0 stands for below a second' },
    { key: 'at_once', unit: '', meaning: 'True from 70 °C on' },
  ],
  sources: ['moritz-henriques-1947'],
  standing: 'secondhand',
  // Skin, thickness and supply of blood: a factor of two each way.
  run: (x) => {
    const time = burnTime(x.temperature_c);
    return { time_s: { value: time, low: time / 2, high: 2 * time }, at_once: { value: x.temperature_c >= burns.values.instant } };
  },
  remarks: () => caution('burn'),
});

export const burnThreshold = defineModel({
  id: 'burn.surface_threshold',
  title: 'Surface temperature from which a touch burns',
  about:
    'Burn thresholds of touchable surfaces by material and contact: 43 °C from 8 h, 48 °C from 10 min, then by material; log time straight between. A guard or lagging keeps below it.',
  inputs: [
    { key: 'material', unit: '', meaning: 'Surface', kind: 'choice', choices: surfaceMaterials, default: 'bare metal' },
    {
      key: 'contact_s',
      unit: 's',
      meaning: 'Contact; 1 s unintended, 10 s or more where one may be held',
      possible: [0.5, 1e6],
      fitted: [1, 28_800],
    },
    { key: 'temperature_c', unit: '°C', meaning: 'Surface to judge', possible: [-60, 1000], default: NaN },
  ],
  outputs: [
    { key: 'threshold_c', unit: '°C', meaning: 'Burn threshold' },
    { key: 'burns', unit: '', meaning: 'True at or above it; empty without a temperature' },
  ],
  sources: ['iso-13732-1'],
  standing: 'memory',
  run: (x) => {
    const threshold = surfaceThreshold(x.material as SurfaceMaterial, x.contact_s);
    const spread = x.contact_s < 60 ? 5 : 1;
    return {
      threshold_c: { value: threshold, low: threshold - spread, high: threshold + spread },
      burns: { value: Number.isNaN(x.temperature_c) ? null : x.temperature_c >= threshold },
    };
  },
  remarks: () => caution('burn'),
});

export const fire = defineModel({
  id: 'roaster.fire_alarm',
  title: 'Exhaust temperature at which a roaster alarm should sound',
  about: 'Set point + 15 K, common practice.',
  inputs: [
    { key: 'exhaust_set_c', unit: '°C', meaning: 'Exhaust set point', possible: [0, 500] },
    { key: 'exhaust_c', unit: '°C', meaning: 'Exhaust now', possible: [-40, 1500] },
  ],
  outputs: [
    { key: 'alarm_c', unit: '°C', meaning: 'Alarm' },
    { key: 'alarm', unit: '', meaning: 'True above it' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => ({
    alarm_c: x.exhaust_set_c + roasterFire.values.exhaustAlarm,
    alarm: { value: x.exhaust_c > x.exhaust_set_c + roasterFire.values.exhaustAlarm },
  }),
  remarks: () => caution('roaster fire'),
});

export const metal = defineModel({
  id: 'metal.test_pieces',
  title: 'Test pieces of a metal detector and sizes of hard objects',
  about: 'Typical critical limits, spheres; the plant’s own limit is what its detector finds in its own pack, worst place and attitude.',
  inputs: [{ key: 'object_length_mm', unit: 'mm', meaning: 'Length of a hard or sharp object found', possible: [0, 10000], default: 0 }],
  outputs: [
    { key: 'iron_mm', unit: 'mm', meaning: 'Sphere' },
    { key: 'non_iron_mm', unit: 'mm', meaning: 'Sphere' },
    { key: 'stainless_mm', unit: 'mm', meaning: 'Sphere' },
    { key: 'test_interval_low_min', unit: 'min', meaning: 'Typical' },
    { key: 'test_interval_high_min', unit: 'min', meaning: 'Typical' },
    { key: 'hard_object_from_mm', unit: 'mm', meaning: 'US guide, least length that makes ready-to-eat food unfit' },
    { key: 'hard_object_verdict', unit: '', meaning: 'How the US guide sees the object' },
  ],
  sources: ['fda-cpg-555-425', 'common-practice'],
  standing: 'secondhand',
  run: (x) => {
    const length = x.object_length_mm;
    const { from, to } = hardObjects.values;
    const size =
      length < from
        ? `below ${from} mm: only special risk groups, by expert judgement`
        : length <= to
          ? `${from} to ${to} mm: unfit`
          : `above ${to} mm: by expert judgement`;
    const verdict = length === 0 ? 'none given' : size;
    return {
      iron_mm: testPieces.values.iron,
      non_iron_mm: testPieces.values.nonIron,
      stainless_mm: testPieces.values.stainless,
      test_interval_low_min: testPieces.values.intervalMinutes[0],
      test_interval_high_min: testPieces.values.intervalMinutes[1],
      hard_object_from_mm: hardObjects.values.from,
      hard_object_verdict: { value: verdict },
    };
  },
  remarks: () => caution('metal'),
});

export const allergenLevel = defineModel({
  id: 'allergen.action_level',
  title: 'Action level of an allergen in a portion',
  about: 'Reference dose (mg protein) over portion. Reference doses are expert advice, not law.',
  inputs: [
    { key: 'allergen', unit: '', meaning: 'Allergen', kind: 'choice', choices: Object.keys(referenceDoses.values), default: 'peanut' },
    { key: 'portion_g', unit: 'g', meaning: 'Eaten at once', possible: [0.1, 5000], default: 50 },
    { key: 'reference_dose_mg', unit: 'mg', meaning: 'Other dose to use; left out: FAO/WHO 2022', possible: [0, 10000], default: NaN },
  ],
  outputs: [
    { key: 'action_level_mg_kg', unit: 'mg/kg', meaning: 'Protein of the allergen per kg of food' },
    { key: 'reference_dose_mg', unit: 'mg', meaning: 'Used' },
  ],
  sources: ['fao-who-2022-allergens', 'fasfc-2017-allergens'],
  standing: 'found',
  run: (x) => {
    const dose = Number.isNaN(x.reference_dose_mg) ? referenceDose(x.allergen as Allergen) : x.reference_dose_mg;
    return { action_level_mg_kg: actionLevel(dose, x.portion_g), reference_dose_mg: dose };
  },
  remarks: () => caution('allergen'),
});

export const allergenFlush = defineModel({
  id: 'allergen.flush',
  title: 'Clean mass to push an allergen out of a pipe',
  about: 'C = C0 exp(-m/mr), mr = 5.6 × hold-up at least (one measurement); the well-mixed pipe (mr = hold-up) is wrong by that factor.',
  inputs: [
    { key: 'start_mg_kg', unit: 'mg/kg', meaning: 'In the first mass', possible: [0, 1e6], default: 6070 },
    { key: 'target_mg_kg', unit: 'mg/kg', meaning: 'Wanted', possible: [1e-9, 1e6], default: 2.5 },
    { key: 'mass_kg', unit: 'kg', meaning: 'Pushed through', possible: [0, 1e9], default: 0 },
    { key: 'pipe_length_m', unit: 'm', meaning: 'Section', possible: [1e-3, 1e5], default: 0.305 },
    { key: 'pipe_bore_mm', unit: 'mm', meaning: 'Inside', possible: [1, 2000], default: 34.8 },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the mass', possible: [500, 2000], default: 1270 },
    { key: 'efold_ratio', unit: '1', meaning: 'e-fold mass over hold-up', possible: [0.5, 1000], fitted: [5, 7], default: 5.6 },
  ],
  outputs: [
    { key: 'mass_to_target_kg', unit: 'kg', meaning: 'At least' },
    { key: 'after_mg_kg', unit: 'mg/kg', meaning: 'After the mass pushed' },
    { key: 'holdup_kg', unit: 'kg', meaning: 'In the section' },
    { key: 'efold_kg', unit: 'kg', meaning: 'Per e-fold' },
  ],
  sources: ['zhang-2024', 'zhang-thesis'],
  standing: 'found',
  run: (x) => {
    const holdup = pipeHoldup(x.pipe_length_m, x.pipe_bore_mm / 1000, x.density_kg_m3);
    const r = flush(x.start_mg_kg, x.target_mg_kg, x.mass_kg, holdup, x.efold_ratio);
    return { mass_to_target_kg: r.massToTarget, after_mg_kg: r.after, holdup_kg: holdup, efold_kg: r.efold };
  },
  remarks: () => caution('allergen'),
});

export const allergenEfold = defineModel({
  id: 'allergen.efold_mass',
  title: 'e-fold mass of a flush from two concentrations',
  about: 'mr = m / ln(C0/C): the plant’s own flush test gives its own figure.',
  inputs: [
    { key: 'start_mg_kg', unit: 'mg/kg', meaning: 'First', possible: [0, 1e6] },
    { key: 'after_mg_kg', unit: 'mg/kg', meaning: 'After the mass', possible: [0, 1e6] },
    { key: 'mass_kg', unit: 'kg', meaning: 'Pushed through', possible: [0, 1e9] },
  ],
  outputs: [{ key: 'efold_kg', unit: 'kg', meaning: 'Per e-fold' }],
  sources: ['zhang-2024', 'zhang-thesis'],
  standing: 'found',
  run: (x) => ({ efold_kg: efoldMass(x.start_mg_kg, x.after_mg_kg, x.mass_kg) }),
  remarks: () => caution('allergen'),
});

export const cautionModels: readonly Model[] = [
  dustClassModel,
  dustData,
  dustGuess,
  burn,
  burnThreshold,
  fire,
  metal,
  allergenLevel,
  allergenFlush,
  allergenEfold,
];
