import { defineModel, type Model } from '../../model.js';
import { coatCalibration, coatOfBar, enroberFlows, footWidth, lateDrainage, tailLength, type CoatTask } from '../coat.js';
import { laneMap } from '../lanes.js';
import { density, plastic, yieldValue } from './film.js';
import { nonNegative, positive, series } from './inputs.js';

const barInputs = [
  yieldValue,
  plastic,
  density,
  positive('length_mm', 'mm', 'centre', { default: 100 }),
  positive('width_mm', 'mm', 'centre', { default: 24 }),
  positive('height_mm', 'mm', 'centre', { default: 13.6 }),
  positive('centre_mass_g', 'g', 'centre', { default: 33.8 }),
  positive('first_thickness_mm', 'mm', 'what curtain and flow pan leave at first', { default: 4 }),
  positive('drain_time_s', 's', 'curtain to closed belt or setting', { default: 12 }),
  nonNegative('belt_speed_m_s', 'm/s', 'mesh', { default: 0.065 }),
  nonNegative('blower_speed_m_s', 'm/s', 'air at the bar; 0: off', { default: 20, possible: [0, 200], fitted: [0, 40] }),
  positive('jet_width_mm', 'mm', 'over which the jet pressure falls', { default: 6 }),
  nonNegative('shaker_amplitude_mm', 'mm', 'mesh', { default: 1, possible: [0, 100] }),
  nonNegative('shaker_frequency_hz', 'Hz', 'mesh', { default: 10, possible: [0, 500] }),
  nonNegative('shaker_time_s', 's', 'on the shaken part', { default: 5 }),
  positive('calibration', '1', 'measured over computed coat of this plant; 1: none measured', { default: 1, possible: [0.01, 100] }),
] as const;

interface BarInput {
  readonly yield_value_pa: number;
  readonly plastic_viscosity_pa_s: number;
  readonly density_kg_m3: number;
  readonly length_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly centre_mass_g: number;
  readonly first_thickness_mm: number;
  readonly drain_time_s: number;
  readonly belt_speed_m_s: number;
  readonly blower_speed_m_s: number;
  readonly jet_width_mm: number;
  readonly shaker_amplitude_mm: number;
  readonly shaker_frequency_hz: number;
  readonly shaker_time_s: number;
  readonly calibration: number;
}
function taskOf(x: BarInput): CoatTask {
  return {
    length: x.length_mm / 1000,
    width: x.width_mm / 1000,
    height: x.height_mm / 1000,
    centreMass: x.centre_mass_g / 1000,
    yieldValue: x.yield_value_pa,
    plasticViscosity: x.plastic_viscosity_pa_s,
    density: x.density_kg_m3,
    firstThickness: x.first_thickness_mm / 1000,
    drainTime: x.drain_time_s,
    beltSpeed: x.belt_speed_m_s,
    blowerSpeed: x.blower_speed_m_s,
    jetWidth: x.jet_width_mm / 1000,
    shakerAmplitude: x.shaker_amplitude_mm / 1000,
    shakerFrequency: x.shaker_frequency_hz,
    shakerTime: x.shaker_time_s,
    calibration: x.calibration,
  };
}

export const barCoatModel: Model = defineModel({
  id: 'coating.bar_coat',
  title: 'Coat of an enrobed bar',
  about:
    'Sides: Casson film drained under gravity and shaking. Top: the thinner of jet wiping and of levelling over the edges. Bottom: squeezed between bar and mesh until the yield value carries it. No constant is fitted and no measured pair of yield value and thickness could be found: use a plant calibration, and trust the direction more than the number.',
  inputs: [
    ...barInputs,
    nonNegative('measured_coat_g', 'g', 'measured coat, to get the calibration; 0: none', { default: 0 }),
    nonNegative('bars_per_minute', '1/min', 'for the flows', { default: 960 }),
    positive('curtain_multiple', '1', 'curtain over coat, 3 to 5 in practice', { default: 4, possible: [1, 100], fitted: [3, 5] }),
  ],
  outputs: [
    { key: 'coat_g', unit: 'g', meaning: 'coat mass' },
    { key: 'top_mm', unit: 'mm', meaning: 'top' },
    { key: 'side_mm', unit: 'mm', meaning: 'sides and ends, mean over the height' },
    { key: 'bottom_mm', unit: 'mm', meaning: 'bottom' },
    { key: 'mean_mm', unit: 'mm', meaning: 'coat volume over the six faces of the centre' },
    { key: 'pick_up', unit: '1', meaning: 'coat over finished bar' },
    { key: 'top_set_by', unit: '-', meaning: 'blower, levelling or curtain' },
    { key: 'calibration_needed', unit: '1', meaning: 'calibration that gives the measured coat' },
    { key: 'coat_flow_kg_h', unit: 'kg/h', meaning: 'chocolate carried off by bars' },
    { key: 'curtain_flow_kg_h', unit: 'kg/h', meaning: 'to pump over the belt' },
    { key: 'return_flow_kg_h', unit: 'kg/h', meaning: 'that comes back and is melted again' },
  ],
  sources: ['plane-films', 'jet-wiping', 'liu-mei-1989', 'covey-stanmore-1981', 'wichchukit-2005', 'enrober-practice'],
  standing: 'memory',
  run: (x) => {
    const task = taskOf(x);
    const coat = coatOfBar(task);
    const flows = enroberFlows(coat.mass, x.bars_per_minute, x.curtain_multiple);
    const wide = (value: number) =>
      x.calibration === 1 ? { value, low: 0.5 * value, high: 2 * value } : { value, low: 0.85 * value, high: 1.15 * value };
    return {
      coat_g: wide(1000 * coat.mass),
      top_mm: wide(1000 * coat.top),
      side_mm: wide(1000 * coat.side),
      bottom_mm: wide(1000 * coat.bottom),
      mean_mm: wide(1000 * coat.mean),
      pick_up: coat.pickUp,
      top_set_by: { value: coat.topSetBy },
      ...(x.measured_coat_g > 0 && { calibration_needed: coatCalibration({ ...task, calibration: 1 }, x.measured_coat_g / 1000) }),
      coat_flow_kg_h: flows.coatFlow,
      curtain_flow_kg_h: flows.curtainFlow,
      return_flow_kg_h: flows.returnFlow,
    };
  },
  remarks: (x) =>
    x.calibration === 1
      ? [{ code: 'NOT_CALIBRATED', message: 'no coat of this plant was measured: the interval is a factor of two, an estimate of ours' }]
      : [],
});

export const laneModel: Model = defineModel({
  id: 'coating.lane_map',
  title: 'Coat lane by lane',
  about:
    'Coat = finished - centre for each lane, lanes outside a band around the median, and the best cut into two sides with its step, tested with correction for the cuts tried. Says whether coat or centre carries it.',
  inputs: [
    series('centre_mass_g', 'g', 'centre per lane, first lane first', { possible: [0.001, 1e5] }),
    series('finished_mass_g', 'g', 'finished bar per lane', { possible: [0.001, 1e5] }),
    positive('band_g', 'g', 'half-width around the median', { default: 1.2 }),
  ],
  outputs: [
    { key: 'coat_g', unit: 'g', meaning: 'coat per lane' },
    { key: 'mean_g', unit: 'g', meaning: 'mean coat' },
    { key: 'sd_g', unit: 'g', meaning: 'standard deviation between lanes' },
    { key: 'lanes_outside', unit: '-', meaning: 'lanes outside the band' },
    { key: 'step_after_lane', unit: '1', meaning: 'best cut: after this lane' },
    { key: 'step_g', unit: 'g', meaning: 'coat of the far side less the near side' },
    { key: 'step_significant', unit: '-', meaning: 'whether the step stands' },
    { key: 'carried_by', unit: '-', meaning: 'coat, centre or neither' },
  ],
  sources: ['enrober-practice'],
  standing: 'memory',
  run: (x) => {
    const map = laneMap(x.centre_mass_g, x.finished_mass_g, x.band_g);
    const step = map.step!;
    return {
      coat_g: { value: map.coat },
      mean_g: map.mean,
      sd_g: map.sd,
      lanes_outside: { value: map.outside },
      step_after_lane: step.after,
      step_g: { value: step.coat, low: step.low, high: step.high },
      step_significant: { value: step.significant },
      carried_by: { value: step.carriedBy },
    };
  },
});

export const defectModel: Model = defineModel({
  id: 'coating.tails_and_feet',
  title: 'Tails and feet of an enrobed bar',
  about:
    'Foot: what drains off the sides after the mesh spreads until the yield value holds it, h² = 2τ0x/(ρg). Tail: a thread of radius R breaks after 14.1 Rη/σ, and never if √3 τ0 exceeds σ/R. Low yield value makes feet, high yield value tails.',
  inputs: [
    ...barInputs,
    nonNegative('late_time_s', 's', 'draining on the closed belt before the coat sets', { default: 20 }),
    positive('thread_radius_mm', 'mm', 'thread drawn at the mesh', { default: 1 }),
    positive('surface_tension_n_m', 'N/m', 'from memory', { default: 0.03, fitted: [0.02, 0.04] }),
  ],
  outputs: [
    { key: 'foot_mm', unit: 'mm', meaning: 'width of the foot' },
    { key: 'tail_breaks', unit: '-', meaning: 'whether the thread breaks by itself' },
    { key: 'tail_mm', unit: 'mm', meaning: 'length drawn until it breaks' },
  ],
  sources: ['liu-mei-1989', 'papageorgiou-1995'],
  standing: 'memory',
  run: (x) => {
    const task = taskOf(x);
    const tail = tailLength(
      x.thread_radius_mm / 1000,
      x.belt_speed_m_s,
      Math.max(x.yield_value_pa, 0),
      x.plastic_viscosity_pa_s,
      x.surface_tension_n_m,
    );
    return {
      foot_mm:
        1000 * footWidth(x.late_time_s > 0 ? lateDrainage(task, x.late_time_s) : 0, Math.max(x.yield_value_pa, 1e-6), x.density_kg_m3),
      tail_breaks: { value: tail.breaks },
      ...(tail.breaks && { tail_mm: 1000 * tail.length }),
    };
  },
});
