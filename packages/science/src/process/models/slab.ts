import { BadInput } from '../../errors.js';
import { defineModel, type Model } from '../../model.js';
import { slabRanges, slabRun, slitWindow, type CoolingSection, type SlabLayer } from '../slab/cooling.js';
import { positive, series, temperature } from './inputs.js';

function at(list: readonly number[], i: number, key: string): number {
  const value = list.length === 1 ? list[0] : list[i];
  if (value === undefined) throw new BadInput(`${key} has ${list.length} values, but one for each (or one for all) is expected`);
  return value;
}

export const slabModels: readonly Model[] = [
  defineModel({
    id: 'slab.cooling',
    title: 'Cooling of a layered slab on a belt, with chilled drum or air on either face',
    about:
      'Conduction through the thickness by finite volumes, implicit; fat that sets by its enthalpy over a range; sections of the belt with their own ' +
      'coefficients. Layers and sections are lists, from the belt upwards and in the order of travel.',
    inputs: [
      series('thicknesses_m', 'm', 'thickness of each layer', { possible: slabRanges.thickness }),
      series('densities_kg_m3', 'kg/m³', 'density of each layer, gas included', { possible: slabRanges.density }),
      series('specific_heats_j_kg_k', 'J/(kg K)', 'specific heat of each layer', { possible: slabRanges.specificHeat }),
      series('thermal_conductivities_w_m_k', 'W/(m K)', 'conductivity of each layer, gas included', { possible: slabRanges.conductivity }),
      series('start_temperatures_c', '°C', 'temperature of each layer at the start', { possible: [-50, 200] }),
      series('melting_heats_j_kg', 'J/kg', 'heat of the fat that sets, per kg of layer; 0 for none', { default: [0], possible: [0, 4e5] }),
      series('melting_temperatures_c', '°C', 'middle of the range in which it sets', { default: [25], possible: [-50, 200] }),
      series('melting_half_widths_k', 'K', 'half the width of that range', { default: [6], possible: [0.1, 50] }),
      series('section_times_s', 's', 'time in each section', { possible: [0, 1e6] }),
      series('top_temperatures_c', '°C', 'air or drum above, each section', { possible: [-100, 200] }),
      series('top_coefficients_w_m2_k', 'W/(m² K)', 'coefficient above, each section; 0 insulates', { possible: [0, 1e5] }),
      series('bottom_temperatures_c', '°C', 'belt, drum or air below, each section', { possible: [-100, 200] }),
      series('bottom_coefficients_w_m2_k', 'W/(m² K)', 'coefficient below, each section; 0 insulates', { possible: [0, 1e5] }),
      temperature('slit_low_c', 'coldest that can be slit without cracking', { default: 18 }),
      temperature('slit_high_c', 'hottest that can be slit without smearing', { default: 28 }),
      positive('cells', '1', 'cells through the thickness', { default: 200, possible: [4, 1000] }),
      positive('steps', '1', 'time steps', { default: 100, possible: [10, 5000] }),
    ],
    outputs: [
      { key: 'mean_temperature_c', unit: '°C', meaning: 'mean at the end, weighted by heat capacity' },
      { key: 'top_temperature_c', unit: '°C', meaning: 'upper face at the end' },
      { key: 'bottom_temperature_c', unit: '°C', meaning: 'lower face at the end' },
      { key: 'hottest_c', unit: '°C', meaning: 'hottest place at the end' },
      { key: 'coldest_c', unit: '°C', meaning: 'coldest place at the end' },
      { key: 'heat_removed_j_m2', unit: 'J/m²', meaning: 'heat taken out' },
      { key: 'window_opens_s', unit: 's', meaning: 'time at which the hottest place can be slit; no value if not on this belt' },
      { key: 'window_closes_s', unit: 's', meaning: 'time at which the coldest place is too cold; no value if not on this belt' },
      { key: 'profile_x_m', unit: 'm', meaning: 'places above the belt' },
      { key: 'profile_temperature_c', unit: '°C', meaning: 'temperature there at the end' },
      { key: 'history_time_s', unit: 's', meaning: 'times along the belt' },
      { key: 'history_mean_c', unit: '°C', meaning: 'mean temperature at those times' },
      { key: 'history_hottest_c', unit: '°C', meaning: 'hottest place at those times' },
      { key: 'history_coldest_c', unit: '°C', meaning: 'coldest place at those times' },
    ],
    sources: ['carslaw-jaeger-1959', 'incropera-5'],
    standing: 'memory',
    run: (x) => {
      const layers = x.thicknesses_m.map((thickness, i): SlabLayer => {
        const heat = at(x.melting_heats_j_kg, i, 'melting_heats_j_kg');
        return {
          thickness,
          density: at(x.densities_kg_m3, i, 'densities_kg_m3'),
          specificHeat: at(x.specific_heats_j_kg_k, i, 'specific_heats_j_kg_k'),
          conductivity: at(x.thermal_conductivities_w_m_k, i, 'thermal_conductivities_w_m_k'),
          start: at(x.start_temperatures_c, i, 'start_temperatures_c'),
          ...(heat > 0
            ? {
                melting: {
                  heat,
                  temperature: at(x.melting_temperatures_c, i, 'melting_temperatures_c'),
                  halfWidth: at(x.melting_half_widths_k, i, 'melting_half_widths_k'),
                },
              }
            : {}),
        };
      });
      const sections = x.section_times_s.map((duration, i): CoolingSection => ({
        duration,
        topTemperature: at(x.top_temperatures_c, i, 'top_temperatures_c'),
        topCoefficient: at(x.top_coefficients_w_m2_k, i, 'top_coefficients_w_m2_k'),
        bottomTemperature: at(x.bottom_temperatures_c, i, 'bottom_temperatures_c'),
        bottomCoefficient: at(x.bottom_coefficients_w_m2_k, i, 'bottom_coefficients_w_m2_k'),
      }));
      const run = slabRun(layers, Math.round(x.cells), Math.round(x.steps)).run(sections);
      const window = slitWindow(run, x.slit_low_c, x.slit_high_c);
      const finite = (value: number) => ({ value: value < Infinity ? value : null });
      return {
        mean_temperature_c: run.mean.at(-1)!,
        top_temperature_c: run.top.at(-1)!,
        bottom_temperature_c: run.bottom.at(-1)!,
        hottest_c: run.hottest.at(-1)!,
        coldest_c: run.coldest.at(-1)!,
        heat_removed_j_m2: run.heat.at(-1)!,
        window_opens_s: finite(window.opens),
        window_closes_s: finite(window.closes),
        profile_x_m: { value: Array.from(run.position) },
        profile_temperature_c: { value: Array.from(run.temperature) },
        history_time_s: { value: Array.from(run.time) },
        history_mean_c: { value: Array.from(run.mean) },
        history_hottest_c: { value: Array.from(run.hottest) },
        history_coldest_c: { value: Array.from(run.coldest) },
      };
    },
  }),
];
