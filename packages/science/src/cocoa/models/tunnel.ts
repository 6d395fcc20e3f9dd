import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { BadInput } from '../../errors.js';
import { dewPoint } from '../air.js';
import { coolBar } from '../tunnel.js';
import type { CentreLayer, TunnelHistory, TunnelTask, TunnelZone } from '../tunnel-task.js';
import type { GrowthMode } from '../growth.js';
import { blendOf, milkFatShare, oilShare } from './fat.js';
import { celsius, nonNegative, positive, series, share } from './inputs.js';

const inputs = [
  series('zone_length_m', 'm', 'zones along the belt', { possible: [0.01, 1000], default: [12, 12, 12] }),
  series('zone_air_c', '°C', 'air in each zone', { possible: [-60, 60], default: [15, 11.5, 15.5] }),
  series('zone_belt_c', '°C', 'under the belt in each zone; empty: as the air', { possible: [-60, 60], default: [] }),
  series('zone_top_coefficient_w_m2_k', 'W/(m² K)', 'top and sides, one value or one per zone', {
    possible: [0, 1000],
    fitted: [5, 60],
    default: [25],
  }),
  series('zone_bottom_coefficient_w_m2_k', 'W/(m² K)', 'bottom through the belt, one value or one per zone', {
    possible: [0, 5000],
    fitted: [5, 300],
    default: [20],
  }),
  positive('belt_speed_m_min', 'm/min', 'belt', { default: 3.9, possible: [0.01, 100] }),
  positive('width_mm', 'mm', 'centre', { default: 24 }),
  positive('length_mm', 'mm', 'centre', { default: 100 }),
  series('layer_height_mm', 'mm', 'layers of the centre from the bottom', { possible: [0.05, 500], default: [6.43, 7.14] }),
  series('layer_density_kg_m3', 'kg/m³', 'one value or one per layer', { possible: [50, 3000], default: [920, 1180] }),
  series('layer_specific_heat_j_kg_k', 'J/(kg K)', 'one value or one per layer', { possible: [500, 5000], default: [2000] }),
  series('layer_conductivity_w_m_k', 'W/(m K)', 'one value or one per layer', { possible: [0.02, 5], default: [0.25] }),
  positive('coat_top_mm', 'mm', 'coat on top', { default: 1.4, possible: [0, 20] }),
  positive('coat_side_mm', 'mm', 'coat on the sides', { default: 1.4, possible: [0, 20] }),
  positive('coat_bottom_mm', 'mm', 'coat below', { default: 1.4, possible: [0, 20] }),
  celsius('coat_temperature_c', 'coat at the inlet', { default: 30, fitted: [26, 34], possible: [-20, 60] }),
  celsius('centre_temperature_c', 'centre at the inlet', { default: 24, fitted: [10, 35], possible: [-20, 60] }),
  positive('coat_density_kg_m3', 'kg/m³', 'coat', { default: 1290 }),
  positive('coat_specific_heat_j_kg_k', 'J/(kg K)', 'coat, without heat of crystals', { default: 1590 }),
  positive('coat_conductivity_w_m_k', 'W/(m K)', 'coat', { default: 0.25 }),
  share('fat', 'of the coat', { default: 0.32 }),
  milkFatShare,
  oilShare,
  share('crystals', 'temper: crystals at the inlet, share of the fat', { default: 0.015, fitted: [0.001, 0.05] }),
  positive('growth_rate_s', '1/s', 'crystal growth k at 10 K of undercooling; a placeholder until fitted', { default: 0.06 }),
  {
    key: 'crystallisation',
    unit: '-',
    kind: 'choice',
    choices: ['kinetics', 'equilibrium'],
    default: 'kinetics',
    meaning: 'crystals grow on the temper, or follow the temperature at once',
  },
  nonNegative('bars_per_minute', '1/min', 'for the heat load', { default: 960 }),
  celsius('room_temperature_c', 'packing room', { default: 20 }),
  share('relative_humidity', 'packing room', { default: 0.52, possible: [1e-6, 1] }),
] as const;

/** One value for all places, or one for each. */
function spreadOver(values: readonly number[], places: number, what: string, fallback?: readonly number[]): readonly number[] {
  if (values.length === places) return values;
  if (values.length === 0 && fallback) return fallback;
  if (values.length === 1) return new Array<number>(places).fill(values[0]!);
  throw new BadInput(`tunnel.cooling, ${what} has ${values.length} values; 1 or ${places} are due`);
}

type Input = Parameters<typeof taskOf>[0];
function taskOf(x: {
  readonly [K in (typeof inputs)[number] as K['key']]: K extends { kind: 'series' }
    ? readonly number[]
    : K extends { kind: 'choice' }
      ? string
      : number;
}): TunnelTask {
  const n = x.zone_length_m.length;
  const air = spreadOver(x.zone_air_c, n, 'zone_air_c');
  const belt = spreadOver(x.zone_belt_c, n, 'zone_belt_c', air);
  const top = spreadOver(x.zone_top_coefficient_w_m2_k, n, 'zone_top_coefficient_w_m2_k');
  const bottom = spreadOver(x.zone_bottom_coefficient_w_m2_k, n, 'zone_bottom_coefficient_w_m2_k');
  const layers = x.layer_height_mm.length;
  const rho = spreadOver(x.layer_density_kg_m3, layers, 'layer_density_kg_m3');
  const cp = spreadOver(x.layer_specific_heat_j_kg_k, layers, 'layer_specific_heat_j_kg_k');
  const k = spreadOver(x.layer_conductivity_w_m_k, layers, 'layer_conductivity_w_m_k');
  return {
    width: x.width_mm / 1000,
    length: x.length_mm / 1000,
    centre: x.layer_height_mm.map((height, i): CentreLayer => ({
      height: height / 1000,
      density: rho[i]!,
      specificHeat: cp[i]!,
      conductivity: k[i]!,
    })),
    coat: {
      top: x.coat_top_mm / 1000,
      side: x.coat_side_mm / 1000,
      bottom: x.coat_bottom_mm / 1000,
      density: x.coat_density_kg_m3,
      specificHeat: x.coat_specific_heat_j_kg_k,
      conductivity: x.coat_conductivity_w_m_k,
      fat: x.fat,
      blend: blendOf(x),
      crystals: x.crystals,
      growthRate: x.growth_rate_s,
    },
    coatStart: x.coat_temperature_c,
    centreStart: x.centre_temperature_c,
    zones: x.zone_length_m.map((length, i): TunnelZone => {
      return { length, air: air[i]!, belt: belt[i]!, topCoefficient: top[i]!, sideCoefficient: top[i]!, bottomCoefficient: bottom[i]! };
    }),
    beltSpeed: x.belt_speed_m_min / 60,
    mode: x.crystallisation as GrowthMode,
  };
}

const outputs = [
  { key: 'exit_mean_c', unit: '°C', meaning: 'mean of the bar by heat content: what it evens out to' },
  { key: 'exit_surface_c', unit: '°C', meaning: 'middle of the top at the exit' },
  { key: 'exit_coldest_surface_c', unit: '°C', meaning: 'coldest of top, side and bottom at the exit' },
  { key: 'exit_centre_c', unit: '°C', meaning: 'middle of the section' },
  { key: 'solid_fat_content', unit: '1', meaning: 'solid share of the fat in the coat at the exit, mean' },
  { key: 'least_solid_fat', unit: '1', meaning: 'solid share where it is least' },
  { key: 'latent_left_j_kg', unit: 'J/kg', meaning: 'heat of crystals still to come at 20 °C, per kg coat' },
  { key: 'dwell_s', unit: 's', meaning: 'time in the tunnel' },
  { key: 'heat_per_bar_j', unit: 'J', meaning: 'heat taken from a bar' },
  { key: 'heat_load_w', unit: 'W', meaning: 'at the bars per minute' },
  { key: 'zone_load_w', unit: 'W', meaning: 'by zone' },
  { key: 'dew_margin_k', unit: 'K', meaning: 'coldest surface less the dew point of the room' },
  { key: 'bar_mass_g', unit: 'g', meaning: 'of the section times the finished length' },
  { key: 'time_s', unit: 's', meaning: 'times of the history' },
  { key: 'surface_c', unit: '°C', meaning: 'top surface along it' },
  { key: 'centre_c', unit: '°C', meaning: 'centre along it' },
  { key: 'mean_c', unit: '°C', meaning: 'mean along it' },
  { key: 'solids', unit: '1', meaning: 'solid share of the fat along it' },
] as const;

export const tunnelModel: Model = defineModel({
  id: 'tunnel.cooling',
  title: 'Cooling of an enrobed bar through a tunnel',
  about:
    'Conduction in the cross-section (half width by height) with heat of crystallisation in the coat, implicit finite volumes; zones along the belt with their own air, belt and coefficients. Ends of the bar left out. Heat transfer and growth rate are to be fitted on a logged bar; the interval of the exit is what ±20 % of heat transfer does.',
  inputs,
  outputs,
  sources: ['franke-1998', 'beckett-constants-2009', 'cocoa-butter-sfc'],
  standing: 'placeholder',
  run: (x) => {
    const task = taskOf(x as Input);
    const r = coolBar(task);
    const [weak, strong] = [0.8, 1.2].map((factor) => coolBar(scaled(task, factor))) as [TunnelHistory, TunnelHistory];
    const between = (of: (r: TunnelHistory) => number) => ({
      value: of(r),
      low: Math.min(of(weak), of(strong)),
      high: Math.max(of(weak), of(strong)),
    });
    const perSecond = x.bars_per_minute / 60;
    return {
      exit_mean_c: between((h) => h.exit.mean),
      exit_surface_c: between((h) => h.exit.topSurface),
      exit_coldest_surface_c: between((h) => h.exit.coldestSurface),
      exit_centre_c: between((h) => h.exit.centre),
      solid_fat_content: between((h) => h.exit.solids),
      least_solid_fat: r.exit.leastSolids,
      latent_left_j_kg: r.exit.latentLeft,
      dwell_s: r.dwell,
      heat_per_bar_j: between((h) => h.heat),
      heat_load_w: between((h) => h.heat * perSecond),
      zone_load_w: { value: r.heatByZone.map((heat) => heat * perSecond) },
      dew_margin_k: between((h) => h.exit.coldestSurface - dewPoint(x.room_temperature_c, x.relative_humidity)),
      bar_mass_g: 1000 * r.mass,
      time_s: { value: r.time },
      surface_c: { value: r.topSurface },
      centre_c: { value: r.centre },
      mean_c: { value: r.mean },
      solids: { value: r.solids },
    };
  },
  remarks: (x): ModelFinding[] =>
    x.crystallisation === 'kinetics'
      ? [
          {
            code: 'GROWTH_RATE_IS_A_PLACEHOLDER',
            message: 'the growth rate is chosen, not measured: fit it to a temper curve or a logged bar of the plant',
          },
        ]
      : [],
});

function scaled(task: TunnelTask, factor: number): TunnelTask {
  const zones = task.zones.map((z) => ({
    ...z,
    topCoefficient: factor * z.topCoefficient,
    sideCoefficient: factor * z.sideCoefficient,
    bottomCoefficient: factor * z.bottomCoefficient,
  }));
  return { ...task, zones };
}
