import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { temperCurve, temperState, type TemperCurve } from '../temper-curve.js';
import { coolingCurve, fitGrowthRate } from '../temper-simulation.js';
import { crystalsFromCurve } from '../temperer.js';
import { blendOf, milkFatShare, oilShare } from './fat.js';
import { celsius, nonNegative, positive, series, share } from './inputs.js';

const band = [
  {
    key: 'slope_band_low_k_min',
    unit: 'K/min',
    possible: [-50, 50],
    default: -0.4,
    meaning: "lower end of the plant's band; below it over-tempered",
  },
  {
    key: 'slope_band_high_k_min',
    unit: 'K/min',
    possible: [-50, 50],
    default: 0.4,
    meaning: "upper end of the plant's band; above it under-tempered",
  },
] as const;
export const fat = share('fat', 'total fat', { default: 0.32, fitted: [0.24, 0.45] });
export const specificHeat = positive('specific_heat_j_kg_k', 'J/(kg K)', 'of liquid chocolate', { default: 1590, fitted: [1400, 1800] });

export const temperCurveModel: Model = defineModel({
  id: 'temper.curve',
  title: 'Inflection and slope of a temper curve',
  about:
    "A sample is cooled at constant conditions and logged. The reading is taken where the cooling is slowest after its steepest part (inflection: second derivative 0), from cubics fitted piecewise: temperature, slope in K/min and its limits from the scatter. Near 0 well tempered, positive under, negative over; the band is the plant's.",
  inputs: [
    series('time_s', 's', 'times, rising', { possible: [-1e7, 1e7] }),
    series('temperature_c', '°C', 'temperatures of the sample', { possible: [-40, 120] }),
    nonNegative('window_s', 's', 'half-width of the fit; 0: an eighth of the curve', { default: 0 }),
    ...band,
    celsius('coolant_c', 'coolant of the sample, for the crystals grown', { default: 0, possible: [-40, 60] }),
    nonNegative('cooling_rate_min', '1/min', 'loss rate hA/(m cp) of the sample in its jacket, for the crystals grown; 0: not known', {
      default: 0,
    }),
    fat,
    specificHeat,
  ],
  outputs: [
    { key: 'inflection_temperature_c', unit: '°C', meaning: 'temperature at the inflection' },
    { key: 'slope_k_min', unit: 'K/min', meaning: 'slope there' },
    { key: 'inflection_time_s', unit: 's', meaning: 'when' },
    { key: 'state', unit: '-', meaning: 'under, well or over against the band; cannot tell without an inflection' },
    { key: 'inflection_found', unit: '-', meaning: 'whether the curve has an inner inflection' },
    { key: 'temperature_rise_k', unit: 'K', meaning: 'rise after the lowest point; 0 where it never warms' },
    { key: 'steepest_k_min', unit: 'K/min', meaning: 'steepest cooling before' },
    { key: 'crystals_grown', unit: '1', meaning: 'share of the fat crystallised up to the last reading, by heat balance' },
  ],
  sources: ['temper-slope', 'beckett-constants-2009'],
  standing: 'secondhand',
  run: (x) => {
    const curve = temperCurve(x.time_s, x.temperature_c, x.window_s > 0 ? x.window_s : undefined);
    const grown =
      x.cooling_rate_min > 0
        ? crystalsFromCurve(x.time_s, x.temperature_c, x.coolant_c, x.cooling_rate_min / 60, x.fat, x.specific_heat_j_kg_k).at(-1)
        : undefined;
    return {
      inflection_temperature_c: curve.temperature,
      slope_k_min: { value: curve.slope, low: curve.slopeLow, high: curve.slopeHigh },
      inflection_time_s: curve.time,
      state: { value: curve.inflection ? temperState(curve.slope, x.slope_band_low_k_min, x.slope_band_high_k_min) : 'cannot tell' },
      inflection_found: { value: curve.inflection },
      temperature_rise_k: curve.rise,
      steepest_k_min: curve.steepest,
      ...(grown !== undefined && { crystals_grown: grown }),
    };
  },
  remarks: (x) => temperRemarks(x.time_s, temperCurve(x.time_s, x.temperature_c, x.window_s > 0 ? x.window_s : undefined)),
});

/** A curve without an inflection, and one whose reading falls into a hole of the log. */
function temperRemarks(time: readonly number[], curve: TemperCurve): ModelFinding[] {
  const findings: ModelFinding[] = [];
  if (!curve.inflection) {
    findings.push({
      code: 'NO_INFLECTION',
      message: 'cooling never slows and quickens again within the log, so the curve tells no temper; the flattest place is read',
    });
  }
  const after = time.findIndex((t, i) => i > 0 && t - time[i - 1]! > (time.at(-1)! - time[0]!) / 4);
  if (after > 0) {
    findings.push({
      code: 'GAP_IN_LOG',
      message: `no reading from ${time[after - 1]} to ${time[after]} s; what the slope did there is not known`,
    });
  }
  return findings;
}

export const coolingCurveModel: Model = defineModel({
  id: 'temper.cooling_curve',
  title: 'Temper curve that a crystal content gives',
  about:
    'Lumped sample in a cold jacket: loses heat at a rate, gains heat of crystals that grow on the surface of those that are there, in proportion to undercooling. The growth rate is a placeholder: directions hold, numbers need a fit of the plant.',
  inputs: [
    share('crystals', 'crystals at the start, share of the fat', { fitted: [0.001, 0.05] }),
    celsius('start_temperature_c', 'chocolate at the start', { default: 30, possible: [0, 60] }),
    celsius('coolant_c', 'jacket', { default: 8, possible: [-40, 30] }),
    positive('cooling_rate_min', '1/min', 'hA/(m cp) of the sample', { default: 0.4 }),
    fat,
    milkFatShare,
    oilShare,
    specificHeat,
    positive('growth_rate_s', '1/s', 'growth rate k at 10 K of undercooling', { default: 0.06 }),
    positive('duration_s', 's', 'length of the curve', { default: 420, possible: [1, 7200] }),
    ...band,
  ],
  outputs: [
    { key: 'slope_k_min', unit: 'K/min', meaning: 'slope at the inflection' },
    { key: 'inflection_temperature_c', unit: '°C', meaning: 'temperature there' },
    { key: 'state', unit: '-', meaning: 'under, well or over against the band' },
    { key: 'time_s', unit: 's', meaning: 'times of the curve' },
    { key: 'temperature_c', unit: '°C', meaning: 'temperatures of the curve' },
  ],
  sources: ['franke-1998', 'temper-slope'],
  standing: 'placeholder',
  run: (x) => {
    const made = coolingCurve(
      {
        start: x.start_temperature_c,
        coolant: x.coolant_c,
        coolingRate: x.cooling_rate_min / 60,
        crystals: x.crystals,
        fat: x.fat,
        blend: blendOf(x),
        specificHeat: x.specific_heat_j_kg_k,
        growthRate: x.growth_rate_s,
      },
      x.duration_s,
      Math.max(0.5, x.duration_s / 200),
    );
    const read = temperCurve(made.time, made.temperature);
    return {
      slope_k_min: read.slope,
      inflection_temperature_c: read.temperature,
      state: { value: temperState(read.slope, x.slope_band_low_k_min, x.slope_band_high_k_min) },
      time_s: { value: made.time },
      temperature_c: { value: made.temperature },
    };
  },
});

export const growthFitModel: Model = defineModel({
  id: 'temper.growth_fit',
  title: 'Crystal growth rate from a logged temper curve',
  about:
    'Finds the growth rate with which the simulated curve meets the logged one; for use in the tunnel. The crystal content must be known or assumed: only rate × cube root of the seed is seen in one curve.',
  inputs: [
    series('time_s', 's', 'times, rising', { possible: [-1e7, 1e7] }),
    series('temperature_c', '°C', 'temperatures of the sample', { possible: [-40, 120] }),
    share('crystals', 'crystals at the start, share of the fat', { default: 0.015, possible: [1e-5, 1] }),
    celsius('coolant_c', 'jacket', { default: 8, possible: [-40, 30] }),
    positive('cooling_rate_min', '1/min', 'hA/(m cp) of the sample, from a curve of melted fat or the steep start'),
    fat,
    milkFatShare,
    oilShare,
    specificHeat,
  ],
  outputs: [
    { key: 'growth_rate_s', unit: '1/s', meaning: 'growth rate k at 10 K of undercooling' },
    { key: 'residual_k', unit: 'K', meaning: 'root mean square left' },
  ],
  sources: ['franke-1998'],
  standing: 'memory',
  run: (x) => {
    const fit = fitGrowthRate(x.time_s, x.temperature_c, {
      coolant: x.coolant_c,
      coolingRate: x.cooling_rate_min / 60,
      crystals: x.crystals,
      fat: x.fat,
      blend: blendOf(x),
      specificHeat: x.specific_heat_j_kg_k,
    });
    return { growth_rate_s: fit.rate, residual_k: fit.residual };
  },
});
