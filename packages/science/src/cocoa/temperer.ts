import { NoSolution, requireRange } from '../errors.js';
import { butterLatentHeat } from './fat.js';
import type { Celsius, JoulePerKilogramKelvin, KilogramPerHour, MassFraction, Watt } from '../units.js';

/** Chocolate through a temperer: cooled from the kettle to the tempering temperature while a part of its fat crystallises. */
export interface TempererLoad {
  readonly throughput: KilogramPerHour;
  readonly inlet: Celsius;
  /** Coldest chocolate, before the last warming zone. */
  readonly coldest: Celsius;
  readonly fat: MassFraction;
  /** Share of the fat that is crystal at the outlet; 0.005 to 0.03 in practice. */
  readonly crystals: MassFraction;
  readonly specificHeat: JoulePerKilogramKelvin;
  /** Work of scrapers and pump that ends as heat, W. */
  readonly shaftPower: Watt;
}

/** Heat that the coolant must take, W: sensible + heat of crystals + work. */
export function tempererDuty(load: TempererLoad): Watt {
  checkLoad(load);
  const flow = load.throughput / 3600;
  return flow * (load.specificHeat * (load.inlet - load.coldest) + load.fat * load.crystals * butterLatentHeat) + load.shaftPower;
}

function checkLoad(load: TempererLoad): void {
  requireRange('throughput_kg_h', load.throughput, [Number.MIN_VALUE, 1e6], 'physics');
  requireRange('inlet_c', load.inlet, [load.coldest, 120], 'physics');
  requireRange('fat', load.fat, [0, 1], 'physics');
  requireRange('crystals', load.crystals, [0, 1], 'physics');
  requireRange('specific_heat_j_kg_k', load.specificHeat, [100, 6000], 'physics');
  requireRange('shaft_power_w', load.shaftPower, [0, Infinity], 'physics');
}

/** Mean logarithmic temperature difference in counter-flow, K. @throws NoSolution where coolant is not colder than chocolate at both ends */
export function logMeanDifference(hotIn: Celsius, hotOut: Celsius, coldIn: Celsius, coldOut: Celsius): number {
  const a = hotIn - coldOut;
  const b = hotOut - coldIn;
  if (!(a > 0 && b > 0)) throw new NoSolution(`coolant ${coldIn} to ${coldOut} °C cannot cool chocolate from ${hotIn} to ${hotOut} °C`);
  return Math.abs(a - b) < 1e-9 * a ? a : (a - b) / Math.log(a / b);
}

/** Crystal content (share of the fat) that closes the heat balance of a measured duty; below 0 the readings contradict each other. */
export function crystalsFromDuty(duty: Watt, load: Omit<TempererLoad, 'crystals'>): number {
  checkLoad({ ...load, crystals: 0 });
  requireRange('fat', load.fat, [0.001, 1], 'physics'); // crystals of no fat mean nothing
  const flow = load.throughput / 3600;
  const left = (duty - load.shaftPower) / flow - load.specificHeat * (load.inlet - load.coldest);
  return left / (load.fat * butterLatentHeat);
}

/** Coolant side: what it takes up, W. */
export function coolantDuty(
  massFlow: KilogramPerHour,
  coldIn: Celsius,
  coldOut: Celsius,
  specificHeat: JoulePerKilogramKelvin = 4190,
): Watt {
  requireRange('coolant_kg_h', massFlow, [0, 1e7], 'physics');
  return (massFlow / 3600) * specificHeat * (coldOut - coldIn);
}

export interface TempererPoint {
  readonly throughput: KilogramPerHour;
  readonly coolantIn: Celsius;
  readonly inlet: Celsius;
}

export interface TempererCause {
  /** Share of the fat that crystallises: in the good state, now, and with one change alone. */
  readonly base: MassFraction;
  readonly now: number;
  readonly coolantAlone: number;
  readonly throughputAlone: number;
  readonly inletAlone: number;
  readonly cause: 'coolant' | 'throughput' | 'inlet temperature' | 'none';
}

/**
 * Why the crystal content moved: with the exchange of heat (UA) and the chocolate outlet held as in a good state, the heat that is left
 * for crystals is worked out for the present coolant, throughput and inlet, together and one by one. The largest lone effect is the cause,
 * unless all are below a tenth of the good crystal content.
 *
 * UA is taken from the good state; coolant warms by the duty over its flow. Relative statements hold better than the numbers.
 */
export function tempererCause(good: TempererPoint & TempererLoad, now: TempererPoint, coolantFlow: KilogramPerHour): TempererCause {
  requireRange('fat', good.fat, [0.001, 1], 'physics');
  const capacity = (coolantFlow / 3600) * 4190;
  requireRange('coolant_kg_h', coolantFlow, [Number.MIN_VALUE, 1e7], 'physics');
  const duty = tempererDuty(good);
  const conductance = duty / logMeanDifference(good.inlet, good.coldest, good.coolantIn, good.coolantIn + duty / capacity);
  const crystals = (point: TempererPoint) => {
    const load = { ...good, throughput: point.throughput, inlet: point.inlet };
    return crystalsFromDuty(exchanged(conductance, capacity, point.inlet, good.coldest, point.coolantIn), load);
  };
  const base = { throughput: good.throughput, coolantIn: good.coolantIn, inlet: good.inlet };
  const alone = {
    coolant: crystals({ ...base, coolantIn: now.coolantIn }),
    throughput: crystals({ ...base, throughput: now.throughput }),
    'inlet temperature': crystals({ ...base, inlet: now.inlet }),
  };
  const changes = Object.entries(alone).map(([name, value]) => [name, Math.abs(value - good.crystals)] as const);
  const [name, size] = changes.reduce((a, b) => (b[1] > a[1] ? b : a));
  return {
    base: good.crystals,
    now: crystals(now),
    coolantAlone: alone.coolant,
    throughputAlone: alone.throughput,
    inletAlone: alone['inlet temperature'],
    cause: size > 0.1 * good.crystals ? (name as TempererCause['cause']) : 'none',
  };
}

/** Duty at a given UA with both chocolate ends fixed: Q = UA · LMTD(coolant out = in + Q / capacity), by bisection. */
function exchanged(conductance: number, capacity: number, hotIn: number, hotOut: number, coldIn: number): number {
  if (!(hotOut > coldIn)) throw new NoSolution(`coolant of ${coldIn} °C cannot cool chocolate to ${hotOut} °C`);
  let low = 0;
  let high = capacity * (hotIn - coldIn) * (1 - 1e-9);
  for (let i = 0; i < 80; i++) {
    const q = (low + high) / 2;
    const mean = logMeanDifference(hotIn, hotOut, coldIn, coldIn + q / capacity);
    if (conductance * mean > q) low = q;
    else high = q;
  }
  return (low + high) / 2;
}

/**
 * Crystals grown between two moments of a logged cooling curve, share of the fat: the heat that the loss to the coolant does not explain.
 * A sample at T in a jacket at Tc loses rate·(T - Tc); whatever it cooled less than that was heat of crystals.
 *
 * @param coolingRate - hA/(m cp), 1/s, from the steep start of the same curve where nothing crystallises yet
 * @returns running crystal content, one value per reading, 0 at the first
 */
export function crystalsFromCurve(
  time: readonly number[],
  temperature: readonly number[],
  coolant: Celsius,
  coolingRate: number,
  fat: MassFraction,
  specificHeat: JoulePerKilogramKelvin,
): number[] {
  requireRange('cooling_rate_s', coolingRate, [0, 10], 'physics');
  requireRange('fat', fat, [0.001, 1], 'physics');
  const crystals = [0];
  for (let i = 1; i < time.length; i++) {
    const dt = time[i]! - time[i - 1]!;
    const lost = coolingRate * ((temperature[i]! + temperature[i - 1]!) / 2 - coolant) * dt;
    const kept = temperature[i]! - temperature[i - 1]! + lost; // K that heat of crystals supplied
    crystals.push(crystals[i - 1]! + (kept * specificHeat) / (fat * butterLatentHeat));
  }
  return crystals;
}
