import { defineModel, type Model } from '../../model.js';
import { beanWishes, cutTestGrades, nibShell } from '../data/cocoa-beans.js';
import { beanClass, beanCount, beanProperties, blendMean, brokenMassLimits, massLimits } from './bean-lot.js';
import { chanceAbove, gradeCutTest } from './cut-test.js';
import { liquorYield, lotValue, nibStream } from './nib-yield.js';
import { carriedSizeStokes, equalSettlingRatio, hinderedSettling, liftedShare, terminalVelocity } from './settling.js';

export const cutTest = defineModel({
  id: 'intake.cut_test',
  title: 'Cut test of cocoa beans with intervals and grade',
  about: 'Grade is the best of which all limits by count hold. Shares carry exact binomial (Clopper-Pearson) intervals.',
  inputs: [
    { key: 'beans_cut', unit: '1', meaning: 'Beans cut', possible: [1, 1e6], fitted: [100, 1e6], default: 300 },
    { key: 'mouldy', unit: '1', meaning: 'Mouldy beans (each bean once, in its worst class)', possible: [0, 1e6] },
    { key: 'slaty', unit: '1', meaning: 'Slaty beans', possible: [0, 1e6] },
    { key: 'defective', unit: '1', meaning: 'Insect-damaged, germinated or flat beans', possible: [0, 1e6], default: 0 },
    { key: 'confidence', unit: '1', meaning: 'Of the intervals', possible: [0.5, 0.9999], default: 0.95 },
  ],
  outputs: [
    { key: 'grade', unit: '', meaning: "'1', '2' or 'substandard'" },
    { key: 'mouldy_share', unit: '1', meaning: 'Share by count' },
    { key: 'slaty_share', unit: '1', meaning: 'Share by count' },
    { key: 'defective_share', unit: '1', meaning: 'Share by count' },
    { key: 'mouldy_limit', unit: '1', meaning: 'Limit of the grade found (of grade 2 for a substandard lot)' },
    { key: 'slaty_limit', unit: '1', meaning: 'As above' },
    { key: 'defective_limit', unit: '1', meaning: 'As above' },
    { key: 'doubtful', unit: '', meaning: 'True where an interval crosses a limit' },
    { key: 'chance_above_at_limit', unit: '1', meaning: 'Probability that a lot truly at 3 % mouldy shows more than 3 %' },
  ],
  sources: ['cocoa-grade-standard', 'iso-1114-1977', 'clopper-pearson-1934'],
  standing: 'secondhand',
  run: (x) => {
    const r = gradeCutTest({ beans: x.beans_cut, mouldy: x.mouldy, slaty: x.slaty, defective: x.defective }, x.confidence);
    const of = (key: 'mouldy' | 'slaty' | 'defective') => ({
      value: r.shares[key].share,
      low: r.shares[key].interval.low,
      high: r.shares[key].interval.high,
    });
    const row = r.grade === '1' ? 0 : 1;
    const { mouldy, slaty, defective } = cutTestGrades.values;
    return {
      grade: { value: r.grade },
      mouldy_share: of('mouldy'),
      slaty_share: of('slaty'),
      defective_share: of('defective'),
      mouldy_limit: mouldy[row],
      slaty_limit: slaty[row],
      defective_limit: defective[row],
      doubtful: { value: r.doubtful },
      chance_above_at_limit: chanceAbove(mouldy[0], mouldy[0], x.beans_cut),
    };
  },
});

export const beanCountModel = defineModel({
  id: 'intake.bean_count',
  title: 'Bean count per 100 g and size class',
  about: 'Count = 100 g over the mean mass of a bean; classes of ISO 2451:2014.',
  inputs: [{ key: 'bean_mass_g', unit: 'g', meaning: 'Mean mass of a bean', possible: [0.05, 10], fitted: [0.5, 2.5] }],
  outputs: [
    { key: 'beans_per_100_g', unit: '1/100 g', meaning: 'Count' },
    { key: 'size_class', unit: '', meaning: 'large (to 100), medium (101 to 120), small (above 120)' },
    { key: 'meets_one_gram', unit: '', meaning: 'Mean bean of at least 1.0 g, as makers ask' },
  ],
  sources: ['iso-2451-2014', 'cocoa-quality-guide'],
  standing: 'found',
  run: (x) => {
    const count = beanCount(x.bean_mass_g);
    return {
      beans_per_100_g: count,
      size_class: { value: beanClass(count) },
      meets_one_gram: { value: x.bean_mass_g >= beanWishes.values.beanMass_g },
    };
  },
});

export const sizeClass = defineModel({
  id: 'intake.size_class',
  title: 'Size class of a bean count',
  about: 'Classes of ISO 2451:2014: large to 100, medium 101 to 120, small above 120 beans per 100 g.',
  inputs: [{ key: 'beans_per_100_g', unit: '1/100 g', meaning: 'Count', possible: [10, 2000], fitted: [60, 300] }],
  outputs: [{ key: 'size_class', unit: '', meaning: 'large, medium or small' }],
  sources: ['iso-2451-2014'],
  standing: 'found',
  run: (x) => ({ size_class: { value: beanClass(x.beans_per_100_g) } }),
});

export const massLimitModel = defineModel({
  id: 'intake.mass_limits',
  title: 'Limits by mass of a cocoa lot, by edition of the standard',
  about: 'ISO 2451: moisture, cocoa-related matter, flat beans, sieving; the edition is an input because its limits differ.',
  inputs: [
    { key: 'edition', unit: '', meaning: 'Edition of ISO 2451', kind: 'choice', choices: ['2014', '2016'], default: '2016' },
    { key: 'point', unit: '', meaning: 'Where the lot is judged', kind: 'choice', choices: ['loading', 'discharge'], default: 'discharge' },
    { key: 'moisture', unit: '1', meaning: 'Wet basis', possible: [0, 1] },
    { key: 'related_matter', unit: '1', meaning: 'Cocoa-related matter, share of mass', possible: [0, 1], default: 0 },
    { key: 'flat_beans', unit: '1', meaning: 'Share of mass', possible: [0, 1], default: 0 },
    { key: 'sieving', unit: '1', meaning: 'Material through the sieve, share of mass', possible: [0, 1], default: 0 },
  ],
  outputs: [
    { key: 'verdict', unit: '', meaning: "'within' or the names of the limits broken" },
    { key: 'moisture_limit', unit: '1', meaning: 'Limit' },
    { key: 'related_matter_limit', unit: '1', meaning: 'Limit, where the edition read gives one' },
    { key: 'flat_beans_limit', unit: '1', meaning: 'Limit, where the edition read gives one' },
    { key: 'sieving_limit', unit: '1', meaning: 'Limit, where the edition read gives one' },
  ],
  sources: ['iso-2451-2014', 'iso-2451-2016'],
  standing: 'found',
  run: (x) => {
    const limits = massLimits(x.edition as '2014' | '2016', x.point as 'loading' | 'discharge');
    const test = { moisture: x.moisture, relatedMatter: x.related_matter, flatBeans: x.flat_beans, sieving: x.sieving };
    const broken = brokenMassLimits(test, limits);
    return {
      verdict: { value: broken.length === 0 ? 'within' : broken.join(', ') },
      moisture_limit: { value: limits.moisture ?? null },
      related_matter_limit: { value: limits.relatedMatter ?? null },
      flat_beans_limit: { value: limits.flatBeans ?? null },
      sieving_limit: { value: limits.sieving ?? null },
    };
  },
});

const routeInputs = [
  { key: 'cleaning_yield', unit: '1', meaning: 'kg kept per kg received', possible: [0, 1], fitted: [0.9, 1], default: 0.988 },
  { key: 'moisture', unit: '1', meaning: 'Raw bean, wet basis', possible: [0, 0.99], fitted: [0.03, 0.12] },
  { key: 'roasted_moisture', unit: '1', meaning: 'After roasting, wet basis', possible: [0, 0.99], fitted: [0.005, 0.05], default: 0.018 },
  { key: 'organic_loss', unit: '1', meaning: 'Dry matter lost in the roaster', possible: [0, 1], fitted: [0, 0.03], default: 0.005 },
  { key: 'shell', unit: '1', meaning: 'Shell share of the roasted bean', possible: [0, 1], fitted: [0.08, 0.2] },
  { key: 'nib_recovery', unit: '1', meaning: 'Nib recovered by the winnower', possible: [0, 1], fitted: [0.7, 1], default: 0.994 },
  { key: 'grinding_yield', unit: '1', meaning: 'Liquor per nib fed', possible: [0, 1], fitted: [0.95, 1], default: 0.997 },
] as const;

export const usableNibYield = defineModel({
  id: 'intake.usable_nib_yield',
  title: 'Liquor per kg of raw bean, and the worth of a lot against a reference',
  about: 'Cleaning × (1 - m0)/(1 - m1) × (1 - organic loss) × (1 - shell) × nib recovery × grinding. Fair price goes with the yield.',
  inputs: [
    ...routeInputs,
    { key: 'reference_yield', unit: 'kg/kg', meaning: 'Liquor yield of the reference lot', possible: [0.01, 1], default: 0.8 },
    { key: 'price_per_kg', unit: 'money/kg', meaning: 'Price of the reference, per kg raw bean', possible: [0, 1e6], default: 0 },
    { key: 'liquor_kg', unit: 'kg', meaning: 'Mass of liquor the comparison is for', possible: [0, 1e12], default: 1000 },
  ],
  outputs: [
    { key: 'liquor_yield', unit: 'kg/kg', meaning: 'Liquor per kg raw bean' },
    { key: 'beans_per_kg_liquor', unit: 'kg/kg', meaning: 'Raw beans per kg liquor' },
    { key: 'fair_price_per_kg', unit: 'money/kg', meaning: 'Price of equal bean cost per kg liquor' },
    { key: 'discount', unit: '1', meaning: 'Fair reduction against the reference price' },
    { key: 'extra_beans_kg', unit: 'kg', meaning: 'Raw beans beyond the reference for that liquor' },
    { key: 'extra_cost', unit: 'money', meaning: 'Loss when bought at the reference price' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => {
    const y = liquorYield({
      cleaning: x.cleaning_yield,
      rawMoisture: x.moisture,
      roastedMoisture: x.roasted_moisture,
      organicLoss: x.organic_loss,
      shell: x.shell,
      nibRecovery: x.nib_recovery,
      grinding: x.grinding_yield,
    });
    const value = lotValue(y, x.reference_yield, x.price_per_kg, x.liquor_kg);
    return {
      liquor_yield: y,
      beans_per_kg_liquor: 1 / y,
      fair_price_per_kg: value.fairPrice,
      discount: value.discount,
      extra_beans_kg: value.extraBeans,
      extra_cost: value.extraCost,
    };
  },
});

export const winnowing = defineModel({
  id: 'winnowing.nib_stream',
  title: 'Nib stream of a winnower by mass balance, with the money in the lost nib',
  about: 'Dry nib kept / (1 - moisture) / (1 - shell in nib). Shell limit of the US rule 1.75 % and action level 2 %, on alkali-free nib.',
  inputs: [
    { key: 'bean_kg', unit: 'kg', meaning: 'Raw bean fed', possible: [0, 1e9], default: 1000 },
    { key: 'moisture', unit: '1', meaning: 'Raw bean, wet basis', possible: [0, 0.99], default: 0.07 },
    { key: 'nib_moisture', unit: '1', meaning: 'Nib stream, wet basis', possible: [0, 0.99], default: 0.025 },
    { key: 'shell_dry', unit: '1', meaning: 'Shell share of the dry bean', possible: [0, 1], fitted: [0.1, 0.2], default: 0.125 },
    {
      key: 'nib_loss',
      unit: '1',
      meaning: 'Nib leaving with the shell, share of the nib',
      possible: [0, 1],
      fitted: [0, 0.25],
      default: 0.01,
    },
    { key: 'shell_in_nib', unit: '1', meaning: 'Shell in the nib stream', possible: [0, 0.99], fitted: [0, 0.1], default: 0.0175 },
    { key: 'nib_price_per_kg', unit: 'money/kg', meaning: 'Value of nib', possible: [0, 1e6], default: 0 },
  ],
  outputs: [
    { key: 'nib_stream_kg', unit: 'kg', meaning: 'Nib stream, with its water and shell' },
    { key: 'nib_lost_kg', unit: 'kg', meaning: 'Nib gone with the shell, at the moisture of the stream' },
    { key: 'nib_lost_value', unit: 'money', meaning: 'Value of it' },
    { key: 'shell_limit', unit: '1', meaning: 'Shell by weight of alkali-free nib allowed in the US' },
    { key: 'within_shell_limit', unit: '', meaning: 'True at or below that limit' },
  ],
  sources: ['cfr-21-163-110', 'fda-defect-levels'],
  standing: 'found',
  run: (x) => {
    const lost = (x.bean_kg * (1 - x.moisture) * (1 - x.shell_dry) * x.nib_loss) / (1 - x.nib_moisture);
    return {
      nib_stream_kg: nibStream(x.bean_kg, x.moisture, x.nib_moisture, x.shell_dry, x.nib_loss, x.shell_in_nib),
      nib_lost_kg: lost,
      nib_lost_value: lost * x.nib_price_per_kg,
      shell_limit: nibShell.values.limit,
      within_shell_limit: { value: x.shell_in_nib <= nibShell.values.limit },
    };
  },
});

export const beanPropertiesModel = defineModel({
  id: 'cocoa_bean.physical_properties',
  title: 'Size, mass, shell and density of cocoa beans by moisture',
  about: 'Straight lines between the end values measured on category B beans of Ghana.',
  inputs: [{ key: 'moisture', unit: '1', meaning: 'Wet basis', possible: [0, 0.6], fitted: [0.05, 0.24] }],
  outputs: [
    { key: 'length_mm', unit: 'mm', meaning: 'Mean' },
    { key: 'width_mm', unit: 'mm', meaning: 'Mean' },
    { key: 'thickness_mm', unit: 'mm', meaning: 'Mean' },
    { key: 'geometric_diameter_mm', unit: 'mm', meaning: 'Cube root of length, width and thickness' },
    { key: 'sphericity', unit: '1', meaning: 'Geometric diameter over length, as printed' },
    { key: 'surface_sphericity', unit: '1', meaning: 'Of the ellipsoid, for drag laws' },
    { key: 'bean_mass_g', unit: 'g', meaning: 'Mean' },
    { key: 'shell', unit: '1', meaning: 'Share of mass' },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the bean' },
    { key: 'bulk_density_kg_m3', unit: 'kg/m³', meaning: 'Of the bed' },
    { key: 'porosity', unit: '1', meaning: 'Void share of the bed' },
  ],
  sources: ['bart-plange-2003'],
  standing: 'found',
  run: (x) => {
    const p = beanProperties(x.moisture);
    return {
      length_mm: p.length,
      width_mm: p.width,
      thickness_mm: p.thickness,
      geometric_diameter_mm: p.geometricDiameter,
      sphericity: p.sphericity,
      surface_sphericity: p.surfaceSphericity,
      bean_mass_g: p.beanMass,
      shell: p.shell,
      density_kg_m3: p.density,
      bulk_density_kg_m3: p.bulkDensity,
      porosity: p.porosity,
    };
  },
});

export const terminalVelocityModel = defineModel({
  id: 'air.terminal_velocity',
  title: 'Terminal velocity of a particle in air or a liquid',
  about: 'Drag of Haider and Levenspiel by sphericity, solved against weight less buoyancy.',
  inputs: [
    { key: 'diameter_mm', unit: 'mm', meaning: 'Of the sphere of equal volume', possible: [1e-6, 1000] },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the particle', possible: [1, 25000] },
    {
      key: 'sphericity',
      unit: '1',
      meaning: 'Surface of the sphere of equal volume over that of the particle (not geometric diameter over length)',
      possible: [0.2, 1],
      fitted: [0.5, 1],
      default: 1,
    },
    { key: 'fluid_density_kg_m3', unit: 'kg/m³', meaning: 'Of the medium', possible: [0.01, 20000], default: 1.204 },
    { key: 'fluid_viscosity_pa_s', unit: 'Pa·s', meaning: 'Of the medium', possible: [1e-6, 1000], default: 1.82e-5 },
  ],
  outputs: [
    { key: 'terminal_velocity_m_s', unit: 'm/s', meaning: 'Downward positive' },
    { key: 'reynolds', unit: '1', meaning: 'Reynolds number' },
  ],
  sources: ['haider-levenspiel-1989'],
  standing: 'secondhand',
  run: (x) => {
    const medium = { density: x.fluid_density_kg_m3, viscosity: x.fluid_viscosity_pa_s };
    const v = terminalVelocity(x.diameter_mm / 1000, x.density_kg_m3, medium, x.sphericity);
    // The law of all shapes is up to 8 % slow for spheres (water drops); flat shapes scatter by about 25 % in drag, pieces of a lot by more.
    const spread = 0.08 + 0.5 * Math.max(0, 1 - x.sphericity);
    const [a, b] = [v * (1 - spread), v * (1 + spread)];
    return {
      terminal_velocity_m_s: { value: v, low: Math.min(a, b), high: Math.max(a, b) },
      reynolds: (medium.density * Math.abs(v) * x.diameter_mm) / 1000 / medium.viscosity,
    };
  },
});

export const settling = defineModel({
  id: 'fluid.settling',
  title: 'Stokes and hindered settling in a liquid',
  about: 'Largest sphere carried by an upward stream (Stokes), and settling of a crowd of spheres (Geankoplis).',
  inputs: [
    { key: 'diameter_mm', unit: 'mm', meaning: 'Of the spheres', possible: [1e-6, 10], default: 0.1 },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the spheres', possible: [1, 25000] },
    { key: 'fluid_density_kg_m3', unit: 'kg/m³', meaning: 'Of the liquid', possible: [0.01, 20000], default: 998 },
    { key: 'fluid_viscosity_pa_s', unit: 'Pa·s', meaning: 'Of the liquid', possible: [1e-6, 1000], default: 0.001005 },
    { key: 'solids', unit: '1', meaning: 'Mass share of solids', possible: [0, 0.95], default: 0 },
    { key: 'upward_velocity_m_s', unit: 'm/s', meaning: 'Of the stream that carries', possible: [0, 100], default: 0 },
  ],
  outputs: [
    { key: 'settling_velocity_m_s', unit: 'm/s', meaning: 'Of the crowd' },
    { key: 'carried_size_um', unit: 'µm', meaning: 'Largest sphere that the stream carries' },
  ],
  sources: ['geankoplis', 'coulson-richardson-2'],
  standing: 'secondhand',
  run: (x) => {
    const medium = { density: x.fluid_density_kg_m3, viscosity: x.fluid_viscosity_pa_s };
    return {
      settling_velocity_m_s: hinderedSettling(x.diameter_mm / 1000, x.density_kg_m3, medium, x.solids),
      carried_size_um: 1e6 * carriedSizeStokes(x.upward_velocity_m_s, x.density_kg_m3, medium),
    };
  },
});

export const airCleaning = defineModel({
  id: 'intake.air_cleaning',
  title: 'Air separation of light from heavy, and density separation of stones',
  about: 'Terminal velocities spread log-normally about their medians; the air lifts those below its own velocity.',
  inputs: [
    { key: 'air_velocity_m_s', unit: 'm/s', meaning: 'Upward air', possible: [0.01, 60] },
    {
      key: 'light_velocity_m_s',
      unit: 'm/s',
      meaning: 'Median terminal velocity of the light part (shell, dust)',
      possible: [0.01, 60],
      default: 3,
    },
    {
      key: 'heavy_velocity_m_s',
      unit: 'm/s',
      meaning: 'Median terminal velocity of the heavy part (nib, bean, kernel)',
      possible: [0.01, 60],
      default: 10,
    },
    {
      key: 'velocity_spread',
      unit: '1',
      meaning: 'Standard deviation of ln(terminal velocity) of each part',
      possible: [0.001, 3],
      default: 0.2,
    },
    { key: 'stone_density_kg_m3', unit: 'kg/m³', meaning: 'Of stones', possible: [10, 25000], default: 2500 },
    { key: 'product_density_kg_m3', unit: 'kg/m³', meaning: 'Of the product', possible: [10, 25000], default: 950 },
  ],
  outputs: [
    { key: 'light_removed', unit: '1', meaning: 'Share of the light part lifted' },
    { key: 'heavy_lost', unit: '1', meaning: 'Share of the heavy part lifted with it' },
    { key: 'equal_settling_size_ratio', unit: '1', meaning: 'A destoner needs stones larger than product size over this ratio to sink' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => ({
    light_removed: liftedShare(x.air_velocity_m_s, x.light_velocity_m_s, x.velocity_spread),
    heavy_lost: liftedShare(x.air_velocity_m_s, x.heavy_velocity_m_s, x.velocity_spread),
    equal_settling_size_ratio: equalSettlingRatio(x.stone_density_kg_m3, x.product_density_kg_m3),
  }),
});

export const blend = defineModel({
  id: 'intake.blend',
  title: 'Mass-weighted mean of a property over blended lots',
  about: 'Cadmium, free fatty acids, fat or moisture of a blend. Blending down a lot above a legal limit is forbidden in the EU.',
  inputs: [
    { key: 'mass_kg', unit: 'kg', meaning: 'Mass of each lot', kind: 'series', possible: [0, 1e12] },
    { key: 'value', unit: 'any', meaning: 'Value of each lot', kind: 'series' },
  ],
  outputs: [{ key: 'blend_value', unit: 'any', meaning: 'Mean of the blend' }],
  sources: ['eu-2023-915'],
  standing: 'found',
  run: (x) => ({ blend_value: blendMean(x.mass_kg, x.value) }),
  remarks: () => [
    {
      code: 'NO_DILUTION',
      message: 'Food above a maximum level may not be mixed with food that complies (Regulation (EU) 2023/915); check each lot first.',
    },
  ],
});

export const intakeModels: readonly Model[] = [
  cutTest,
  beanCountModel,
  sizeClass,
  massLimitModel,
  usableNibYield,
  winnowing,
  beanPropertiesModel,
  terminalVelocityModel,
  settling,
  airCleaning,
  blend,
];
