import { defineModel, type Model } from '../../model.js';
import { flatPlateCoefficient, radiationCoefficient, sphereCoefficient } from '../convection.js';
import { coolBar } from '../tunnel.js';
import { celsius, nonNegative, positive, share } from './inputs.js';

export const heatTransferModel: Model = defineModel({
  id: 'tunnel.heat_transfer',
  title: 'Heat transfer of tunnel air',
  about:
    'Flat plate Nu = 0.664 Re^½ Pr^⅓ (turbulent 0.0366 Re^0.8 Pr^⅓), sphere Nu = 2 + 0.6 Re^½ Pr^⅓, and radiation 4εσT³. Bars in rows on a belt see more or less by tens of percent: calibrate on a logged bar.',
  inputs: [
    nonNegative('air_speed_m_s', 'm/s', 'air over the product', { possible: [0, 100], fitted: [0.5, 15] }),
    positive('length_m', 'm', 'length along the air, or diameter', { default: 0.1 }),
    positive('air_density_kg_m3', 'kg/m³', 'air at film temperature', { default: 1.23 }),
    positive('air_viscosity_pa_s', 'Pa·s', 'air at film temperature', { default: 1.79e-5 }),
    positive('air_conductivity_w_m_k', 'W/(m K)', 'air at film temperature', { default: 0.0246 }),
    positive('prandtl', '1', 'air at film temperature', { default: 0.715 }),
    celsius('wall_temperature_c', 'walls, for radiation', { default: 13 }),
    share('emissivity', 'of the product', { default: 0.9 }),
  ],
  outputs: [
    { key: 'flat_plate_w_m2_k', unit: 'W/(m² K)', meaning: 'along a flat plate' },
    { key: 'sphere_w_m2_k', unit: 'W/(m² K)', meaning: 'past a sphere' },
    { key: 'radiation_w_m2_k', unit: 'W/(m² K)', meaning: 'radiation to the walls' },
    { key: 'heat_transfer_coefficient_w_m2_k', unit: 'W/(m² K)', meaning: 'flat plate and radiation' },
  ],
  sources: ['geankoplis-transport'],
  standing: 'secondhand',
  run: (x) => {
    const air = {
      density: x.air_density_kg_m3,
      viscosity: x.air_viscosity_pa_s,
      conductivity: x.air_conductivity_w_m_k,
      prandtl: x.prandtl,
    };
    const plate = flatPlateCoefficient(x.air_speed_m_s, x.length_m, air);
    const radiation = radiationCoefficient(x.wall_temperature_c, x.emissivity);
    const total = plate + radiation;
    return {
      flat_plate_w_m2_k: plate,
      sphere_w_m2_k: sphereCoefficient(x.air_speed_m_s, x.length_m, air),
      radiation_w_m2_k: radiation,
      heat_transfer_coefficient_w_m2_k: { value: total, low: 0.7 * total, high: 1.5 * total },
    };
  },
});

export const heatLoadModel: Model = defineModel({
  id: 'tunnel.heat_load',
  title: 'Heat to take from coat and centre',
  about:
    'Coat: cp ΔT + share crystallised × latent heat; centre: cp ΔT. Times the flows: the cold that the tunnel must supply, without its own losses.',
  inputs: [
    celsius('coat_in_c', 'coat into the tunnel', { default: 30 }),
    celsius('coat_out_c', 'coat out of it', { default: 15 }),
    positive('specific_heat_j_kg_k', 'J/(kg K)', 'coat', { default: 1590 }),
    nonNegative('latent_heat_j_kg', 'J/kg', 'of the whole chocolate', { default: 44_000 }),
    share('share_crystallised', 'part of it released in the tunnel', { default: 0.9 }),
    nonNegative('coat_flow_kg_h', 'kg/h', 'chocolate through the tunnel', { default: 0 }),
    nonNegative('centre_flow_kg_h', 'kg/h', 'centres through the tunnel', { default: 0 }),
    celsius('centre_in_c', 'centre in', { default: 24 }),
    celsius('centre_out_c', 'centre out', { default: 18 }),
    positive('centre_specific_heat_j_kg_k', 'J/(kg K)', 'centre', { default: 2000 }),
  ],
  outputs: [
    { key: 'coat_heat_j_kg', unit: 'J/kg', meaning: 'per kg of coat' },
    { key: 'coat_load_w', unit: 'W', meaning: 'coat' },
    { key: 'centre_load_w', unit: 'W', meaning: 'centre' },
    { key: 'load_w', unit: 'W', meaning: 'both' },
  ],
  sources: ['beckett-constants-2009'],
  standing: 'found',
  run: (x) => {
    const heat = x.specific_heat_j_kg_k * (x.coat_in_c - x.coat_out_c) + x.share_crystallised * x.latent_heat_j_kg;
    const coat = (x.coat_flow_kg_h / 3600) * heat;
    const centre = (x.centre_flow_kg_h / 3600) * x.centre_specific_heat_j_kg_k * (x.centre_in_c - x.centre_out_c);
    return { coat_heat_j_kg: heat, coat_load_w: coat, centre_load_w: centre, load_w: coat + centre };
  },
});

export const slabModel: Model = defineModel({
  id: 'tunnel.slab',
  title: 'Slab cooled or warmed from one or both faces, by the tunnel solver',
  about: 'The tunnel solver on one plain layer without coat and without sides: to be compared with the exact series.',
  inputs: [
    positive('thickness_m', 'm', 'thickness'),
    celsius('start_temperature_c', 'start', { possible: [-60, 120] }),
    celsius('medium_temperature_c', 'medium', { possible: [-60, 120] }),
    nonNegative('top_coefficient_w_m2_k', 'W/(m² K)', 'upper face'),
    nonNegative('bottom_coefficient_w_m2_k', 'W/(m² K)', 'lower face; 0: insulated', { default: 0 }),
    positive('density_kg_m3', 'kg/m³', 'density'),
    positive('specific_heat_j_kg_k', 'J/(kg K)', 'specific heat'),
    positive('thermal_conductivity_w_m_k', 'W/(m K)', 'conductivity'),
    positive('time_s', 's', 'time'),
  ],
  outputs: [
    { key: 'surface_temperature_c', unit: '°C', meaning: 'upper face' },
    { key: 'bottom_temperature_c', unit: '°C', meaning: 'lower face' },
    { key: 'mean_temperature_c', unit: '°C', meaning: 'mean' },
    { key: 'heat_j_m2', unit: 'J/m²', meaning: 'heat given up per area' },
  ],
  sources: ['geankoplis-transport'],
  standing: 'found',
  run: (x) => {
    const width = 1;
    const r = coolBar({
      width,
      length: 1,
      centre: [
        {
          height: x.thickness_m,
          density: x.density_kg_m3,
          specificHeat: x.specific_heat_j_kg_k,
          conductivity: x.thermal_conductivity_w_m_k,
        },
      ],
      coat: {
        top: 0,
        side: 0,
        bottom: 0,
        density: 1000,
        specificHeat: 1000,
        conductivity: 1,
        fat: 0,
        blend: { milkFat: 0, oil: 0 },
        crystals: 0,
      },
      coatStart: x.start_temperature_c,
      centreStart: x.start_temperature_c,
      zones: [
        {
          length: 1,
          air: x.medium_temperature_c,
          belt: x.medium_temperature_c,
          topCoefficient: x.top_coefficient_w_m2_k,
          sideCoefficient: 0,
          bottomCoefficient: x.bottom_coefficient_w_m2_k,
        },
      ],
      beltSpeed: 1 / x.time_s,
      mode: 'equilibrium',
      step: x.time_s / 400,
    });
    return {
      surface_temperature_c: r.exit.topSurface,
      bottom_temperature_c: r.exit.bottomSurface,
      mean_temperature_c: r.exit.mean,
      heat_j_m2: r.heat / width,
    };
  },
});
