import { BadInput, requireRange } from '../errors.js';
import type { FatBlend } from './fat.js';
import type { GrowthMode } from './growth.js';
import type { Celsius, Kilogram, Metre, MetrePerSecond, Second } from '../units.js';

/** One layer of the centre, from the bottom up. */
export interface CentreLayer {
  readonly height: Metre;
  readonly density: number;
  readonly specificHeat: number;
  readonly conductivity: number;
}

/** The coat round the centre. */
export interface CoatLayer {
  readonly top: Metre;
  readonly side: Metre;
  readonly bottom: Metre;
  readonly density: number;
  /** Without heat of crystallisation. */
  readonly specificHeat: number;
  readonly conductivity: number;
  readonly fat: number;
  readonly blend: FatBlend;
  /** Crystals at the start, share of the fat: the temper. */
  readonly crystals: number;
  readonly growthRate?: number;
  /** Latent heat per kg of solid fat; left out: 157 kJ/kg. */
  readonly latentHeat?: number;
}

/** A zone of the tunnel along the belt. */
export interface TunnelZone {
  readonly length: Metre;
  readonly air: Celsius;
  /** Under the belt: cooled plate, bottom air, or the air itself. */
  readonly belt: Celsius;
  /** W/(m² K): top, sides, and bottom through the belt. */
  readonly topCoefficient: number;
  readonly sideCoefficient: number;
  readonly bottomCoefficient: number;
}

export interface TunnelTask {
  readonly width: Metre;
  readonly length: Metre;
  readonly centre: readonly CentreLayer[];
  readonly coat: CoatLayer;
  readonly coatStart: Celsius;
  readonly centreStart: Celsius;
  readonly zones: readonly TunnelZone[];
  readonly beltSpeed: MetrePerSecond;
  readonly mode: GrowthMode;
  /** Time step, s; left out: 2.5. */
  readonly step?: Second;
}

export interface TunnelHistory {
  /** s from the inlet, and along with it: */
  readonly time: readonly number[];
  readonly topSurface: readonly number[];
  readonly centre: readonly number[];
  readonly mean: readonly number[];
  /** Solid share of the fat in the coat, mean. */
  readonly solids: readonly number[];
  readonly exit: {
    readonly topSurface: Celsius;
    readonly sideSurface: Celsius;
    readonly bottomSurface: Celsius;
    readonly coldestSurface: Celsius;
    readonly centre: Celsius;
    /** Of the whole bar, by heat content. */
    readonly mean: Celsius;
    readonly coatMean: Celsius;
    readonly solids: number;
    readonly leastSolids: number;
    /** Heat of crystals still to come at 20 °C, J per kg coat. */
    readonly latentLeft: number;
  };
  readonly dwell: Second;
  /** Heat given up by a bar, J, and per zone. */
  readonly heat: number;
  readonly heatByZone: readonly number[];
  readonly mass: Kilogram;
}

/** @throws BadInput for no layer or no zone; OutOfRange for sizes and properties outside physics */
export function checkTask(task: TunnelTask): void {
  if (task.centre.length === 0) throw new BadInput('the bar has no centre layer; at least one is needed');
  if (task.zones.length === 0) throw new BadInput('the tunnel has no zone; at least one is needed');
  const above = [1e-9, Infinity] as const;
  requireRange('width_m', task.width, above, 'physics');
  requireRange('length_m', task.length, above, 'physics');
  requireRange('belt_speed_m_s', task.beltSpeed, [1e-6, 100], 'physics');
  requireRange('coat_temperature_c', task.coatStart, [-60, 120], 'physics');
  requireRange('centre_temperature_c', task.centreStart, [-60, 120], 'physics');
  for (const layer of [...task.centre, task.coat]) {
    requireRange('density_kg_m3', layer.density, [10, 5000], 'physics');
    requireRange('specific_heat_j_kg_k', layer.specificHeat, [100, 6000], 'physics');
    requireRange('thermal_conductivity_w_m_k', layer.conductivity, [0.005, 10], 'physics');
  }
  for (const layer of task.centre) requireRange('layer_height_m', layer.height, above, 'physics');
  for (const thickness of [task.coat.top, task.coat.side, task.coat.bottom]) requireRange('coat_thickness_m', thickness, [0, 1], 'physics');
  requireRange('fat', task.coat.fat, [0, 1], 'physics');
  requireRange('crystals', task.coat.crystals, [0, 1], 'physics');
  for (const zone of task.zones) {
    requireRange('zone_length_m', zone.length, above, 'physics');
    requireRange('zone_air_c', zone.air, [-60, 120], 'physics');
    requireRange('zone_belt_c', zone.belt, [-60, 120], 'physics');
    for (const h of [zone.topCoefficient, zone.sideCoefficient, zone.bottomCoefficient]) {
      requireRange('heat_transfer_coefficient_w_m2_k', h, [0, 10_000], 'physics');
    }
  }
}
