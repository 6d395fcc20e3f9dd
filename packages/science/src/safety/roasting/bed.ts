import { BadInput, requireRange } from '../../errors.js';
import { roastHeat } from '../data/roasting.js';
import { cocoaMoistureStep, dryBasis, peanutRates, peanutSpeed, wetBasis } from './drying.js';
import { AIR_HEAT, airAt, bedCoefficient } from './heat.js';
import { peanutDrying } from '../data/roasting.js';

export type RoastProduct = 'peanut' | 'cocoa bean';

export interface BedRoast {
  readonly product: RoastProduct;
  /** °C of the air entering the bed. */ readonly air: number;
  /** m/s, superficial, at the air's own temperature. */ readonly velocity: number;
  /** m; the air crosses it. */ readonly depth: number;
  /** s on the belt. */ readonly residence: number;
  /** Wet basis. */ readonly moisture: number;
  /** °C at the start. */ readonly start: number;
  /** m, sphere of equal volume. */ readonly diameter: number;
  /** kg/m³ of the bed as fed. */ readonly bulkDensity: number;
  /** Void share of the bed. */ readonly porosity: number;
  /** J/(kg K) of dry matter. */ readonly dryHeatCapacity: number;
}

/** Peanuts on a belt: sizes of Ex-Dakar kernels and a measured porosity; bed density common practice. */
export const peanutBed: BedRoast = {
  product: 'peanut',
  air: 163,
  velocity: 1.3,
  depth: 0.075,
  residence: 960,
  moisture: 0.06,
  start: 20,
  diameter: 0.0107,
  bulkDensity: 640,
  porosity: 0.364,
  dryHeatCapacity: 1900,
};
/** Cocoa beans: geometric mean and bulk density of category B beans. */
export const cocoaBed: BedRoast = {
  ...peanutBed,
  product: 'cocoa bean',
  air: 140,
  residence: 1800,
  moisture: 0.07,
  diameter: 0.0126,
  bulkDensity: 560,
  porosity: 0.4,
};

export interface BedHistory {
  /** s */ readonly time: Float64Array;
  /** °C of the layer the air enters. */ readonly first: Float64Array;
  /** °C of the layer the air leaves: the coldest while heating. */ readonly last: Float64Array;
  /** °C, mean over the bed. */ readonly mean: Float64Array;
  /** °C of the air that leaves. */ readonly airOut: Float64Array;
  /** Dry basis, mean over the bed. */ readonly moisture: Float64Array;
  /** kg water per kg fed. */ readonly evaporated: number;
  /** J per kg fed that the air gave up. */ readonly heat: number;
}

const LAYERS = 12;
const STEP = 2;

/**
 * Temperatures and moisture of a bed of pieces crossed by hot air: air quasi-steady through layers, pieces lumped, drying by
 * the kinetics of the product with its heat of evaporation. Air flows one way throughout; no mixing, no wall loss.
 *
 * @param x - the bed; see `peanutBed`
 * @param air - inlet temperature over time, °C; left out: constant `x.air`
 * @returns one point per 10 s and the end
 * @throws OutOfRange outside what is possible
 */
export function roastBed(x: BedRoast, air?: (time: number) => number): BedHistory {
  check(x);
  const steps = Math.max(1, Math.ceil(x.residence / STEP));
  const dt = x.residence / steps;
  const every = Math.max(1, Math.round(10 / dt));
  const points = Math.floor(steps / every) + 1 + (steps % every === 0 ? 0 : 1);
  const out = Array.from({ length: 6 }, () => new Float64Array(points));
  const temperature = new Float64Array(LAYERS).fill(x.start);
  const raw = dryBasis(x.moisture);
  const moisture = new Float64Array(LAYERS).fill(raw);
  const dryPerArea = (x.bulkDensity * (1 - x.moisture) * x.depth) / LAYERS;
  const flux = airAt(x.air).density * x.velocity;
  const area = (6 * (1 - x.porosity) * x.depth) / x.diameter / LAYERS;
  const transfer = (bedCoefficient(x.diameter, x.velocity, x.air) * area) / (flux * AIR_HEAT || 1e-12);
  const share = 1 - Math.exp(-transfer);
  let heat = 0;
  let row = 0;
  let leaving = x.start;
  const write = (time: number): void => {
    out[0]![row] = time;
    out[1]![row] = temperature[0]!;
    out[2]![row] = temperature[LAYERS - 1]!;
    out[3]![row] = meanOf(temperature);
    out[4]![row] = leaving;
    out[5]![row] = meanOf(moisture);
    row++;
  };
  for (let n = 0; n <= steps; n++) {
    if (n % every === 0 || n === steps) write(n * dt);
    if (n === steps) break;
    let passing = air ? air(n * dt) : x.air;
    for (let j = 0; j < LAYERS; j++) {
      const t = temperature[j]!;
      const given = flux * AIR_HEAT * (passing - t) * share * dt;
      passing -= (passing - t) * share;
      const before = moisture[j]!;
      const after = dried(x.product, raw, before, t, dt / 60);
      const capacity = dryPerArea * (x.dryHeatCapacity + before * roastHeat.values.water);
      // Evaporation cannot take more than the air gives and the layer holds above the wet bulb of dry hot air (about 45 °C).
      const wanted = dryPerArea * (before - after) * roastHeat.values.evaporation;
      const allowed = Math.max(0, given + capacity * (t - 45));
      const taken = Math.min(wanted, allowed);
      moisture[j] = before - taken / (dryPerArea * roastHeat.values.evaporation);
      temperature[j] = t + (given - taken) / capacity;
      heat += given;
    }
    leaving = passing;
  }
  const fed = x.bulkDensity * x.depth;
  return {
    time: out[0]!,
    first: out[1]!,
    last: out[2]!,
    mean: out[3]!,
    airOut: out[4]!,
    moisture: out[5]!,
    evaporated: (1 - x.moisture) * (raw - meanOf(moisture)),
    heat: heat / fed,
  };
}

/** End moisture of a bed, wet basis. */
export function endMoisture(history: BedHistory): number {
  return wetBasis(history.moisture.at(-1)!);
}

function dried(product: RoastProduct, raw: number, moisture: number, temperature: number, minutes: number): number {
  if (temperature < 60) return moisture;
  if (product === 'cocoa bean') return cocoaMoistureStep(raw, moisture, temperature, minutes);
  const rate = moisture > peanutDrying.values.critical ? peanutRates.above : peanutRates.below;
  return moisture * Math.exp(-rate * peanutSpeed(temperature) * minutes);
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

function check(x: BedRoast): void {
  requireRange('air_temperature_c', x.air, [0, 400], 'a roaster bed');
  requireRange('air_velocity_m_s', x.velocity, [0.01, 20], 'a roaster bed');
  requireRange('bed_depth', x.depth, [0.001, 2], 'a roaster bed');
  requireRange('residence', x.residence, [1, 36_000], 'a roaster bed');
  requireRange('moisture', x.moisture, [0, 0.5], 'a roaster bed');
  requireRange('porosity', x.porosity, [0.05, 0.95], 'a roaster bed');
  if (!(x.bulkDensity > 0 && x.dryHeatCapacity > 0)) throw new BadInput('Bulk density and heat capacity of a bed must be above 0');
}
