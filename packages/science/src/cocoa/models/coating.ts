import { defineModel, type Model } from '../../model.js';
import { coatCalibration, coatOfBar, enroberFlows, footWidth, lateDrainage, tailLength, type CoatTask } from '../coat.js';
import {
  binghamFilmFlow,
  curtainSpeed,
  drainedThickness,
  filmFlow,
  gravity,
  leastCurtainFlow,
  meanDrainedThickness,
  newtonianFilmMassFlow,
  settingLimitedThickness,
  staticThickness,
  wipedThickness,
} from '../film.js';
import { laneMap } from '../lanes.js';
import { nonNegative, positive, series } from './inputs.js';

const yieldValue = nonNegative('yield_value_pa', 'Pa', 'Casson yield value of the tempered chocolate', { fitted: [1, 40] });
const plastic = positive('plastic_viscosity_pa_s', 'Pa·s', 'Casson plastic viscosity', { fitted: [0.5, 15] });
const density = positive('density_kg_m3', 'kg/m³', 'density', { default: 1270, fitted: [800, 1350] });

export const filmModel: Model = defineModel({
  id: 'coating.drainage',
  title: 'Draining film of a yield-stress fluid on a wall',
  about:
    'Casson film under ρ g sin a: static limit τ0/(ρ g sin a); thickness at a distance x from the upper edge after t from x/t = h γw(h); mean over the height from a first thickness. Without yield value this is Jeffreys, √(μ x/(ρ g t)). Kinematic: no surface tension, no edge.',
  inputs: [
    yieldValue,
    plastic,
    density,
    positive('distance_m', 'm', 'from the upper edge', { default: 0.015 }),
    positive('time_s', 's', 'draining time', { default: 10 }),
    positive('angle_deg', '°', 'wall against the horizontal', { default: 90, possible: [0.1, 90] }),
    positive('first_thickness_m', 'm', 'thickness at the start', { default: 0.004 }),
    positive('film_thickness_m', 'm', 'thickness at which the flows are given', { default: 0.001 }),
  ],
  outputs: [
    { key: 'thickness_m', unit: 'm', meaning: 'at the distance, after the time' },
    { key: 'mean_thickness_m', unit: 'm', meaning: 'mean from the edge to the distance' },
    { key: 'static_thickness_m', unit: 'm', meaning: 'below which nothing moves' },
    { key: 'flow_per_width_m2_s', unit: 'm²/s', meaning: 'Casson flow at the given thickness' },
    { key: 'bingham_flow_per_width_m2_s', unit: 'm²/s', meaning: 'Bingham flow at the given thickness with the same values' },
    { key: 'newtonian_mass_flow_kg_s_m', unit: 'kg/(s m)', meaning: 'flow at the given thickness without yield value' },
    { key: 'reynolds', unit: '1', meaning: '4 × mass flow per width over viscosity' },
  ],
  sources: ['plane-films', 'casson-1959', 'geankoplis-transport'],
  standing: 'memory',
  run: (x) => {
    const force = x.density_kg_m3 * gravity * Math.sin((x.angle_deg * Math.PI) / 180);
    const newtonian = newtonianFilmMassFlow(x.film_thickness_m, x.density_kg_m3, x.plastic_viscosity_pa_s, x.angle_deg);
    return {
      thickness_m: Math.min(
        x.first_thickness_m,
        drainedThickness(x.distance_m, x.time_s, x.yield_value_pa, x.plastic_viscosity_pa_s, force),
      ),
      mean_thickness_m: meanDrainedThickness(
        x.distance_m,
        x.time_s,
        x.first_thickness_m,
        x.yield_value_pa,
        x.plastic_viscosity_pa_s,
        force,
      ),
      static_thickness_m: staticThickness(x.yield_value_pa, force),
      flow_per_width_m2_s: filmFlow(x.film_thickness_m, x.yield_value_pa, x.plastic_viscosity_pa_s, force),
      bingham_flow_per_width_m2_s: binghamFilmFlow(x.film_thickness_m, x.yield_value_pa, x.plastic_viscosity_pa_s, force),
      newtonian_mass_flow_kg_s_m: newtonian,
      reynolds: (4 * newtonian) / x.plastic_viscosity_pa_s,
    };
  },
});

export const settingModel: Model = defineModel({
  id: 'coating.setting_limited',
  title: 'Film that sets while it drains',
  about: 'h = √(μ R/(ρ g t)) on a sphere of radius R that sets in t: order of magnitude, prefactor left out.',
  inputs: [
    positive('viscosity_pa_s', 'Pa·s', 'viscosity'),
    positive('radius_m', 'm', 'radius'),
    density,
    positive('set_time_s', 's', 'time to set'),
  ],
  outputs: [{ key: 'thickness_m', unit: 'm', meaning: 'thickness' }],
  sources: ['lee-2016'],
  standing: 'secondhand',
  run: (x) => ({ thickness_m: settingLimitedThickness(x.viscosity_pa_s, x.radius_m, x.density_kg_m3, x.set_time_s) }),
});

export const wipingModel: Model = defineModel({
  id: 'coating.air_wiping',
  title: 'Film left by an air jet or a withdrawal',
  about:
    'Largest flow V h - q(h) that passes a force against the motion, over V: Newtonian (2/3)√(μV/G). G is ρu²/2 over the width of the jet, or ρ g for a withdrawn plate.',
  inputs: [
    yieldValue,
    plastic,
    nonNegative('belt_speed_m_s', 'm/s', 'speed of the wall', { default: 0.065 }),
    nonNegative('air_speed_m_s', 'm/s', 'jet at the bar; 0: withdrawal against gravity', { default: 18, possible: [0, 200] }),
    positive('jet_width_m', 'm', 'over which the pressure falls', { default: 0.006 }),
    density,
  ],
  outputs: [
    { key: 'thickness_m', unit: 'm', meaning: 'film left' },
    { key: 'body_force_pa_m', unit: 'Pa/m', meaning: 'force against the motion' },
  ],
  sources: ['jet-wiping', 'plane-films'],
  standing: 'memory',
  run: (x) => {
    const force = x.air_speed_m_s > 0 ? (0.5 * 1.19 * x.air_speed_m_s ** 2) / x.jet_width_m : x.density_kg_m3 * gravity;
    return { thickness_m: wipedThickness(x.belt_speed_m_s, x.yield_value_pa, x.plastic_viscosity_pa_s, force), body_force_pa_m: force };
  },
});

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

export const curtainModel: Model = defineModel({
  id: 'coating.curtain',
  title: 'Curtain that stays closed',
  about:
    'Weber number ρ q u/σ of at least 2, u after free fall: q = 2σ/(ρu). A thick fluid falls more slowly, so the real limit is higher.',
  inputs: [
    positive('drop_m', 'm', 'height of fall', { possible: [1e-4, 5] }),
    density,
    positive('surface_tension_n_m', 'N/m', 'surface tension, from memory', { default: 0.03, fitted: [0.02, 0.04] }),
    nonNegative('start_speed_m_s', 'm/s', 'speed at the slot', { default: 0 }),
    positive('belt_width_m', 'm', 'width of the curtain', { default: 1.25 }),
    nonNegative('curtain_flow_kg_h', 'kg/h', 'flow at hand; 0: not given', { default: 0 }),
  ],
  outputs: [
    { key: 'least_flow_per_width_m2_s', unit: 'm²/s', meaning: 'smallest flow per width' },
    { key: 'least_flow_kg_h', unit: 'kg/h', meaning: 'smallest flow over the belt' },
    { key: 'curtain_thickness_mm', unit: 'mm', meaning: 'thickness at the foot for the flow at hand, or the smallest' },
    { key: 'weber', unit: '1', meaning: 'Weber number of the flow at hand' },
  ],
  sources: ['curtain-weber'],
  standing: 'secondhand',
  run: (x) => {
    const least = leastCurtainFlow(x.density_kg_m3, x.surface_tension_n_m, x.drop_m, x.start_speed_m_s);
    const u = curtainSpeed(x.drop_m, x.start_speed_m_s);
    const given = x.curtain_flow_kg_h / 3600 / (x.density_kg_m3 * x.belt_width_m);
    return {
      least_flow_per_width_m2_s: least,
      least_flow_kg_h: least * x.belt_width_m * x.density_kg_m3 * 3600,
      curtain_thickness_mm: (1000 * (given > 0 ? given : least)) / u,
      ...(given > 0 && { weber: (x.density_kg_m3 * given * u) / x.surface_tension_n_m }),
    };
  },
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
