import { defineModel, type Model } from '../../model.js';
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
import { nonNegative, positive } from './inputs.js';

export const yieldValue = nonNegative('yield_value_pa', 'Pa', 'Casson yield value of the tempered chocolate', { fitted: [1, 40] });
export const plastic = positive('plastic_viscosity_pa_s', 'Pa·s', 'Casson plastic viscosity', { fitted: [0.5, 15] });
export const density = positive('density_kg_m3', 'kg/m³', 'density', { default: 1270, fitted: [800, 1350] });

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
