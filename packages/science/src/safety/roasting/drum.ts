import { requireRange } from '../../errors.js';
import { roastHeat } from '../data/roasting.js';
import type { RoastProduct } from './bed.js';
import { cocoaMoistureStep, dryBasis, peanutMoisture, wetBasis } from './drying.js';

export interface DrumRoast {
  readonly product: RoastProduct;
  /** kg charged. */ readonly mass: number;
  /** Wet basis. */ readonly moisture: number;
  /** °C of the charge. */ readonly start: number;
  /** °C of drum and air. */ readonly drum: number;
  /** W/K from drum and air to the charge: the plant fits it to its own log. */ readonly transfer: number;
  /** s */ readonly time: number;
  /** J/(kg K) of dry matter. */ readonly dryHeatCapacity: number;
}

export interface DrumResult {
  /** °C of the charge at the end. */ readonly temperature: number;
  /** Wet basis, at the end. */ readonly moisture: number;
  /** J taken up. */ readonly heat: number;
  /** kg evaporated. */ readonly evaporated: number;
  /** kg out. */ readonly product: number;
  /** s and °C, one point per 10 s. */ readonly curve: { readonly time: readonly number[]; readonly temperature: readonly number[] };
}

/**
 * A mixed charge in a drum of one temperature: heat by transfer × difference, drying by the kinetics of the product.
 *
 * @throws OutOfRange outside what is possible
 */
export function roastDrum(x: DrumRoast): DrumResult {
  requireRange('mass_kg', x.mass, [1e-6, 1e6], 'a drum roaster');
  requireRange('moisture', x.moisture, [0, 0.5], 'a drum roaster');
  requireRange('drum_temperature_c', x.drum, [20, 500], 'a drum roaster');
  requireRange('heat_transfer_w_k', x.transfer, [0, 1e7], 'a drum roaster');
  requireRange('time_s', x.time, [1, 86_400], 'a drum roaster');
  const dry = x.mass * (1 - x.moisture);
  const raw = dryBasis(x.moisture);
  const steps = Math.ceil(x.time / 2);
  const dt = x.time / steps;
  let temperature = x.start;
  let moisture = raw;
  let heat = 0;
  const time: number[] = [];
  const curve: number[] = [];
  for (let n = 0; n <= steps; n++) {
    if (n % 5 === 0 || n === steps) {
      time.push(n * dt);
      curve.push(temperature);
    }
    if (n === steps) break;
    const capacity = dry * (x.dryHeatCapacity + moisture * roastHeat.values.water);
    // The exact step of an exponential approach, so that a strong transfer does not overshoot.
    const given = capacity * (x.drum - temperature) * (1 - Math.exp((-x.transfer * dt) / capacity));
    const next = temperature < 60 ? moisture : step(x.product, raw, moisture, temperature, dt / 60);
    const wanted = dry * (moisture - next) * roastHeat.values.evaporation;
    const taken = Math.min(wanted, Math.max(0, given + capacity * (temperature - 45)));
    moisture -= taken / (dry * roastHeat.values.evaporation);
    temperature += (given - taken) / capacity;
    heat += given;
  }
  return {
    temperature,
    moisture: wetBasis(moisture),
    heat,
    evaporated: dry * (raw - moisture),
    product: dry * (1 + moisture),
    curve: { time, temperature: curve },
  };
}

function step(product: RoastProduct, raw: number, moisture: number, temperature: number, minutes: number): number {
  return product === 'cocoa bean' ? cocoaMoistureStep(raw, moisture, temperature, minutes) : peanutMoisture(moisture, temperature, minutes);
}

/** Gas or electric energy per kg of roasted product, kWh/kg: heat over efficiency, plus what is lost standing by. */
export function energyPerKilogram(heat: number, product: number, efficiency: number): number {
  requireRange('efficiency', efficiency, [0.01, 1], 'a roaster');
  return heat / efficiency / product / 3.6e6;
}
