import { defineModel, type Model } from '../../model.js';
import { palate } from '../data/grinding.js';
import { ballMillRun, fatDemand, millRate, rollThroughput, tellsApart } from './refining.js';
import { bondEnergy, largestFeed, sizeConstant, sizeEnergy, type SizeLaw } from './energy.js';
import { fitLogNormal, fitRosinRammler, logNormal, rosinRammler, specificSurface, type SizeDistribution } from './sizes.js';

const sizeOutputs = [
  { key: 'd10_um', unit: 'µm', meaning: '10 % of the volume below' },
  { key: 'd50_um', unit: 'µm', meaning: '50 % of the volume below' },
  { key: 'd90_um', unit: 'µm', meaning: '90 % of the volume below' },
  { key: 'span', unit: '1', meaning: '(d90 - d10)/d50' },
  { key: 'sauter_um', unit: 'µm', meaning: 'Sauter mean d(3,2); empty where the law gives no bound' },
  { key: 'volume_mean_um', unit: 'µm', meaning: 'd(4,3)' },
  { key: 'specific_surface_m2_kg', unit: 'm²/kg', meaning: '6 / (Sauter mean × density), spheres' },
  { key: 'share_below', unit: '1', meaning: 'Volume below the size asked' },
] as const;
const sizeInputs = [
  { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the particles', possible: [100, 25000], default: 1500 },
  { key: 'size_um', unit: 'µm', meaning: 'Size for the share below', possible: [0, 1e9], default: 25 },
] as const;

function sizeAnswer(law: SizeDistribution, density: number, size: number) {
  const [d10, d50, d90] = [law.percentile(0.1), law.percentile(0.5), law.percentile(0.9)];
  return {
    d10_um: d10,
    d50_um: d50,
    d90_um: d90,
    span: (d90 - d10) / d50,
    sauter_um: { value: law.sauter > 0 ? law.sauter : null },
    volume_mean_um: law.volumeMean,
    specific_surface_m2_kg: { value: law.sauter > 0 ? specificSurface(law.sauter * 1e-6, density) : null },
    share_below: law.below(size),
  };
}

export const rosinRammlerModel = defineModel({
  id: 'grinding.rosin_rammler',
  title: 'Rosin-Rammler size distribution',
  about: 'Share below = 1 - exp(-(x/x′)^n).',
  inputs: [
    { key: 'characteristic_size_um', unit: 'µm', meaning: 'Size with 63.2 % below', possible: [1e-6, 1e9] },
    { key: 'spread', unit: '1', meaning: 'n; larger is narrower', possible: [0.05, 50], fitted: [0.5, 5] },
    ...sizeInputs,
  ],
  outputs: sizeOutputs,
  sources: ['rosin-rammler-1933'],
  standing: 'memory',
  run: (x) => sizeAnswer(rosinRammler(x.characteristic_size_um, x.spread), x.density_kg_m3, x.size_um),
});

export const logNormalModel = defineModel({
  id: 'grinding.log_normal',
  title: 'Log-normal size distribution',
  about: 'Share below = Φ(ln(x/d50)/ln σg), in volume.',
  inputs: [
    { key: 'median_size_um', unit: 'µm', meaning: 'd50 by volume', possible: [1e-6, 1e9] },
    { key: 'geometric_deviation', unit: '1', meaning: 'σg', possible: [1.000001, 100], fitted: [1.1, 5] },
    ...sizeInputs,
  ],
  outputs: sizeOutputs,
  sources: ['hatch-choate-1929'],
  standing: 'memory',
  run: (x) => sizeAnswer(logNormal(x.median_size_um, x.geometric_deviation), x.density_kg_m3, x.size_um),
});

export const sizeFit = defineModel({
  id: 'grinding.size_fit',
  title: 'Size distribution through sieve or laser points',
  about: 'Straight line of the transformed shares over ln size (Rosin-Rammler or log-normal).',
  inputs: [
    { key: 'size_series_um', unit: 'µm', meaning: 'Sizes', kind: 'series', possible: [0, 1e9] },
    { key: 'share_below_series', unit: '1', meaning: 'Share of volume or mass below each', kind: 'series', possible: [0, 1] },
    { key: 'law', unit: '', meaning: 'Law', kind: 'choice', choices: ['rosin-rammler', 'log-normal'], default: 'rosin-rammler' },
    ...sizeInputs,
  ],
  outputs: [
    { key: 'characteristic_size_um', unit: 'µm', meaning: 'x′ or d50' },
    { key: 'spread', unit: '1', meaning: 'n or σg' },
    { key: 'r_squared', unit: '1', meaning: 'Of the straightened points' },
    ...sizeOutputs,
  ],
  sources: ['rosin-rammler-1933', 'hatch-choate-1929'],
  standing: 'memory',
  run: (x) => {
    const weibull = x.law === 'rosin-rammler';
    const fit = (weibull ? fitRosinRammler : fitLogNormal)(x.size_series_um, x.share_below_series);
    const law = weibull ? rosinRammler(fit.characteristic, fit.spread) : logNormal(fit.characteristic, fit.spread);
    return {
      characteristic_size_um: fit.characteristic,
      spread: fit.spread,
      r_squared: fit.r2,
      ...sizeAnswer(law, x.density_kg_m3, x.size_um),
    };
  },
});

export const energyLaw = defineModel({
  id: 'grinding.energy_law',
  title: 'Grinding energy for another size reduction, from a known one',
  about: 'Rittinger 1/x, Bond 1/√x, Kick ln x: constant from the known case, applied to the new one.',
  inputs: [
    { key: 'law', unit: '', meaning: 'Law', kind: 'choice', choices: ['rittinger', 'bond', 'kick'], default: 'rittinger' },
    { key: 'known_energy_kj_kg', unit: 'kJ/kg', meaning: 'Of the known case', possible: [0, 1e9] },
    { key: 'known_from_um', unit: 'µm', meaning: 'Feed size', possible: [1e-6, 1e9] },
    { key: 'known_to_um', unit: 'µm', meaning: 'Product size', possible: [1e-6, 1e9] },
    { key: 'from_um', unit: 'µm', meaning: 'Feed size of the new case', possible: [1e-6, 1e9] },
    { key: 'to_um', unit: 'µm', meaning: 'Product size of the new case', possible: [1e-6, 1e9] },
  ],
  outputs: [{ key: 'energy_kj_kg', unit: 'kJ/kg', meaning: 'Of the new case' }],
  sources: ['coulson-richardson-2'],
  standing: 'secondhand',
  run: (x) => {
    const law = x.law as SizeLaw;
    const constant = sizeConstant(law, x.known_energy_kj_kg, x.known_from_um, x.known_to_um);
    return { energy_kj_kg: sizeEnergy(law, constant, x.from_um, x.to_um) };
  },
});

export const bond = defineModel({
  id: 'grinding.bond',
  title: 'Bond’s grinding energy from a work index',
  about: 'W = 10 Wi (1/√P80 - 1/√F80), kWh/t, sizes in µm.',
  inputs: [
    { key: 'work_index_kwh_t', unit: 'kWh/t', meaning: 'Work index', possible: [0, 1000] },
    { key: 'feed_80_um', unit: 'µm', meaning: '80 % passing, feed', possible: [1e-3, 1e9] },
    { key: 'product_80_um', unit: 'µm', meaning: '80 % passing, product', possible: [1e-3, 1e9] },
  ],
  outputs: [{ key: 'energy_kwh_t', unit: 'kWh/t', meaning: 'Energy' }],
  sources: ['bond-1952'],
  standing: 'memory',
  run: (x) => ({ energy_kwh_t: bondEnergy(x.work_index_kwh_t, x.feed_80_um, x.product_80_um) }),
});

export const rollNip = defineModel({
  id: 'grinding.roll_nip',
  title: 'Largest piece that a pair of rolls nips, and the flow of a film',
  about: 'cos(angle/2) = (r + gap/2)/(r + x/2); flow = film × width × speed × density × cover.',
  inputs: [
    { key: 'roll_diameter_mm', unit: 'mm', meaning: 'Of each roll', possible: [1, 10000] },
    { key: 'gap_mm', unit: 'mm', meaning: 'Between the rolls', possible: [0, 1000] },
    { key: 'nip_angle_deg', unit: '°', meaning: 'Full angle', possible: [0, 120], default: 31 },
    { key: 'film_um', unit: 'µm', meaning: 'On the last roll', possible: [0, 1e5], default: 25 },
    { key: 'width_m', unit: 'm', meaning: 'Of the roll', possible: [0, 10], default: 1.3 },
    { key: 'speed_m_s', unit: 'm/s', meaning: 'Of its surface', possible: [0, 50], default: 5 },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the film', possible: [100, 3000], default: 1300 },
    { key: 'covered', unit: '1', meaning: 'Share of the film that is there', possible: [0, 1], default: 0.6 },
  ],
  outputs: [
    { key: 'largest_feed_mm', unit: 'mm', meaning: 'Diameter of the sphere that is still drawn in' },
    { key: 'largest_feed_radius_mm', unit: 'mm', meaning: 'Its radius' },
    { key: 'flow_kg_h', unit: 'kg/h', meaning: 'Of the film' },
  ],
  sources: ['coulson-richardson-2', 'common-practice'],
  standing: 'secondhand',
  run: (x) => ({
    largest_feed_mm: largestFeed(x.roll_diameter_mm, x.gap_mm, x.nip_angle_deg),
    largest_feed_radius_mm: largestFeed(x.roll_diameter_mm, x.gap_mm, x.nip_angle_deg) / 2,
    flow_kg_h: rollThroughput(x.film_um * 1e-6, x.width_m, x.speed_m_s, x.density_kg_m3, x.covered),
  }),
});

export const ballMillModel = defineModel({
  id: 'grinding.ball_mill',
  title: 'Ball-mill refiner: fineness, flow and energy by time and speed',
  about: 'Quadratic regression of a published composite design; throughput inverse to time from 109 kg/h at 55 min.',
  inputs: [
    { key: 'time_min', unit: 'min', meaning: 'Refining time', possible: [1, 1e4], fitted: [33.7, 76.2] },
    { key: 'agitator_rpm', unit: 'rpm', meaning: 'Agitator speed', possible: [1, 1e4], fitted: [41.7, 98.3] },
  ],
  outputs: [
    { key: 'd90_um', unit: 'µm', meaning: 'Fineness' },
    { key: 'plastic_viscosity_pa_s', unit: 'Pa·s', meaning: 'Casson' },
    { key: 'yield_value_pa', unit: 'Pa', meaning: 'Casson' },
    { key: 'energy', unit: 'data set', meaning: 'Energy in the unit of the data set, which is not stated' },
    { key: 'flow_kg_h', unit: 'kg/h', meaning: 'Throughput' },
  ],
  sources: ['alamprese-2007'],
  standing: 'secondhand',
  run: (x) => {
    const r = ballMillRun(x.time_min, x.agitator_rpm);
    const about = (value: number, spread: number) => ({ value, low: value - spread, high: value + spread });
    return {
      d90_um: about(r.d90, 4.5),
      plastic_viscosity_pa_s: about(r.viscosity, 0.12),
      yield_value_pa: about(r.yieldValue, 2.4),
      energy: about(r.energy, 0.5),
      flow_kg_h: millRate(x.time_min),
    };
  },
});

export const gritModel = defineModel({
  id: 'grinding.grit',
  title: 'Whether a taster tells two finenesses apart',
  about: 'Normal psychometric curve, 75 % right at the just noticeable difference; the palate is said to feel particles above about 25 µm.',
  inputs: [
    { key: 'size_um', unit: 'µm', meaning: 'd90 of one mass', possible: [0.1, 1000], fitted: [15, 60] },
    { key: 'reference_size_um', unit: 'µm', meaning: 'd90 of the other', possible: [0.1, 1000], fitted: [15, 60], default: 25 },
    { key: 'just_noticeable_um', unit: 'µm', meaning: 'Difference told by three in four', possible: [0.01, 1000], default: 5 },
  ],
  outputs: [
    { key: 'probability_right', unit: '1', meaning: 'In a choice of two; 0.5 is guessing' },
    { key: 'above_palate_threshold', unit: '', meaning: 'True above about 25 µm' },
  ],
  sources: ['breen-2019', 'talbot-2008', 'de-pelsmaeker-2020'],
  standing: 'found',
  run: (x) => ({
    probability_right: tellsApart(x.size_um, x.reference_size_um, x.just_noticeable_um),
    above_palate_threshold: { value: x.size_um > palate.values.threshold },
  }),
});

export const fatDemandModel = defineModel({
  id: 'grinding.fat_demand',
  title: 'Fat that a fineness asks for',
  about:
    'Particles clothed in a film of bound fat stay at a share of the packing limit: φ(1 + h S) = load × packing. To be fitted to the plant’s masses.',
  inputs: [
    { key: 'd90_um', unit: 'µm', meaning: 'Fineness', possible: [1, 1000], fitted: [12, 60] },
    { key: 'geometric_deviation', unit: '1', meaning: 'Of a log-normal size law', possible: [1.000001, 20], default: 2.2 },
    { key: 'packing_load', unit: '1', meaning: 'Share of the packing limit taken up', possible: [0.01, 1], default: 0.9 },
    { key: 'film_nm', unit: 'nm', meaning: 'Bound fat on a particle', possible: [0, 10000], default: 10 },
    { key: 'particle_density_kg_m3', unit: 'kg/m³', meaning: 'Of the particles', possible: [500, 5000], default: 1500 },
  ],
  outputs: [
    { key: 'fat', unit: '1', meaning: 'Mass fraction' },
    { key: 'surface_m2_cm3', unit: 'm²/cm³', meaning: 'Surface per volume of particles' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => {
    const unit = logNormal(1, x.geometric_deviation);
    const sauter = (x.d90_um * 1e-6 * unit.sauter) / unit.percentile(0.9);
    const surface = 6 / sauter;
    const fat = fatDemand(surface, x.packing_load, x.film_nm * 1e-9, x.particle_density_kg_m3);
    // Packing of real particles and film are known to some tenth: three points of fat each way until the plant fits its own.
    return { fat: { value: fat, low: Math.max(0, fat - 0.03), high: Math.min(1, fat + 0.03) }, surface_m2_cm3: surface / 1e6 };
  },
});

export const grindingModels: readonly Model[] = [
  rosinRammlerModel,
  logNormalModel,
  sizeFit,
  energyLaw,
  bond,
  rollNip,
  ballMillModel,
  gritModel,
  fatDemandModel,
];
