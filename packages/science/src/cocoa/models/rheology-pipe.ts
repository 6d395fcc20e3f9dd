import { defineModel, type Model } from '../../model.js';
import { cassonPipeDrop, powerLawPipeDrop, powerLawReynolds } from '../pipe.js';
import { nonNegative, positive } from './inputs.js';

export const pipeCassonModel: Model = defineModel({
  id: 'rheology.pipe_casson',
  title: 'Pressure drop of chocolate in a pipe',
  about: 'Laminar flow of a Casson fluid in a round pipe, solved for the pressure drop. Below the starting drop nothing flows.',
  inputs: [
    nonNegative('yield_value_pa', 'Pa', 'Casson yield value at pipe temperature'),
    positive('plastic_viscosity_pa_s', 'Pa·s', 'Casson plastic viscosity'),
    positive('diameter_m', 'm', 'inner diameter'),
    positive('length_m', 'm', 'length'),
    nonNegative('speed_m_s', 'm/s', 'mean speed', { possible: [0, 100] }),
    positive('available_pressure_pa', 'Pa', 'pressure at hand, to tell whether it flows', { default: 1e5 }),
  ],
  outputs: [
    { key: 'pressure_drop_pa', unit: 'Pa', meaning: 'drop at that speed' },
    { key: 'starting_drop_pa', unit: 'Pa', meaning: 'drop that just starts the flow' },
    { key: 'flows', unit: '-', meaning: 'whether the pressure at hand starts the flow' },
  ],
  sources: ['steffe-1996'],
  standing: 'memory',
  run: (x) => {
    const start = cassonPipeDrop(x.yield_value_pa, x.plastic_viscosity_pa_s, x.diameter_m, x.length_m, 0);
    return {
      pressure_drop_pa: cassonPipeDrop(x.yield_value_pa, x.plastic_viscosity_pa_s, x.diameter_m, x.length_m, x.speed_m_s),
      starting_drop_pa: start,
      flows: { value: x.available_pressure_pa > start },
    };
  },
});

export const pipePowerLawModel: Model = defineModel({
  id: 'rheology.pipe_power_law',
  title: 'Pressure drop of a power-law fluid in a pipe',
  about: "Laminar, Metzner and Reed: Δp = 4 K'(L/D)(8V/D)ⁿ with the generalised consistency K'.",
  inputs: [
    positive('generalised_consistency', 'Pa·sⁿ', "K' = K((3n + 1)/4n)ⁿ"),
    positive('flow_index', '1', 'n', { possible: [0.05, 3] }),
    positive('diameter_m', 'm', 'inner diameter'),
    positive('length_m', 'm', 'length'),
    nonNegative('speed_m_s', 'm/s', 'mean speed'),
    positive('density_kg_m3', 'kg/m³', 'density'),
  ],
  outputs: [
    { key: 'pressure_drop_pa', unit: 'Pa', meaning: 'drop' },
    { key: 'reynolds', unit: '1', meaning: 'generalised Reynolds number; laminar below about 2100' },
  ],
  sources: ['geankoplis-transport'],
  standing: 'secondhand',
  run: (x) => ({
    pressure_drop_pa: powerLawPipeDrop(x.generalised_consistency, x.flow_index, x.diameter_m, x.length_m, x.speed_m_s),
    reynolds: powerLawReynolds(x.generalised_consistency, x.flow_index, x.diameter_m, x.speed_m_s, x.density_kg_m3),
  }),
});
