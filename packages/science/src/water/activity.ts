import { OutOfRange, requireRange } from '../errors.js';
import type { Celsius, WaterActivity } from '../units.js';
import { binaryAt, sugarExcess, waterPerSolute, type Binary } from './binary.js';
import { chainHydration, milkSalts, molarMasses } from './data/binary.js';
import { calciumChloride, potassiumChloride, saltGain, waterPerElectrolyte, waterPerSalt, type Electrolyte } from './electrolytes.js';
import { higherSaccharides, molecules, type Solution } from './solution.js';

/** Where the equations of the solutes mean something, °C. */
export const activityTemperatures = [-40, 200] as const;
const waterMass = molarMasses.values.water;

interface OtherSalt {
  readonly moles: number;
  readonly electrolyte: Electrolyte;
}
const noElectrolytes: readonly OtherSalt[] = [];

function electrolytesOf(of: Solution): readonly OtherSalt[] {
  const list: OtherSalt[] = [];
  const add = (key: 'potassiumChloride' | 'calciumChloride', electrolyte: Electrolyte): void => {
    const mass = of[key] ?? 0;
    requireMass(key, mass);
    if (mass > 0) list.push({ moles: mass / molarMasses.values[key], electrolyte });
  };
  add('potassiumChloride', potassiumChloride);
  add('calciumChloride', calciumChloride);
  return list;
}

interface Part {
  readonly moles: number;
  readonly binary: Binary;
}

/**
 * The solids of a solution at one temperature, ready to be asked how much water they hold at a water activity.
 *
 * Solutes hold water side by side: at a common activity the water of the mixture is the sum of what each solute would hold alone
 * (Zdanovskii, Stokes, Robinson). Of that, aw/(1 - aw) moles per molecule are its ideal share, the rest is bound. A glucose chain binds
 * what maltose binds plus a fixed part of it for every further unit.
 */
export interface Solids {
  /** All but maltose; lactose with sucrose, whose equation it has. */
  readonly parts: readonly Part[];
  readonly salt: number;
  /** What its osmotic coefficient has gained since 25 °C. */
  readonly saltGained: number;
  readonly electrolytes: readonly OtherSalt[];
  readonly chains: number;
  readonly chainUnits: number;
  readonly maltose: Part;
  readonly moles: number;
}

/**
 * @param near - the same solids at another temperature, where there are some: looks at the water held begin where theirs ended
 * @throws OutOfRange for a temperature outside -40 to 200 °C or a mass below 0
 */
export function solidsAt(of: Solution, t: Celsius, near?: Solids): Solids {
  requireRange('temperature_c', t, activityTemperatures, 'starzak-peacock-1997');
  const excess = sugarExcess(t);
  const parts: Part[] = [];
  let maltose = 0;
  let moles = 0;
  for (const [key, solute, molarMass] of molecules) {
    const mass = of[key] ?? 0;
    requireMass(key, mass);
    const amount = mass / molarMass + (key === 'sucrose' ? (of.lactose ?? 0) / molarMasses.values.lactose : 0);
    if (amount === 0 || key === 'lactose') continue;
    moles += amount;
    if (key === 'maltose') maltose = amount;
    else parts.push({ moles: amount, binary: binaryAt(solute, t, excess) });
  }
  requireMass('salt', of.salt ?? 0);
  requireMass('ash', of.ash ?? 0);
  requireMass('higher_saccharides', of.higherSaccharides ?? 0);
  const salt = ((of.salt ?? 0) + milkSalts.values.chlorideEquivalent * (of.ash ?? 0)) / molarMasses.values.sodiumChloride;
  const electrolytes = of.potassiumChloride || of.calciumChloride ? electrolytesOf(of) : noElectrolytes;
  let ions = 2 * salt;
  for (let i = 0; i < electrolytes.length; i++) ions += electrolytes[i]!.moles * electrolytes[i]!.electrolyte.ions;
  const chains = higherSaccharides(of);
  const solids: Solids = {
    parts,
    salt,
    saltGained: salt > 0 ? saltGain(t, (of.salt ?? 0) / molarMasses.values.sodiumChloride / salt) : 0,
    electrolytes,
    chains: chains.moles,
    chainUnits: chains.units,
    maltose: { moles: maltose, binary: binaryAt('maltose', t, excess) },
    moles: moles + ions + chains.moles,
  };
  if (near) {
    for (let i = 0; i < parts.length; i++) parts[i]!.binary.near = near.parts[i]!.binary.near;
    solids.maltose.binary.near = near.maltose.binary.near;
  }
  return solids;
}

function requireMass(key: string, mass: number): void {
  if (!(mass >= 0 && mass < Infinity)) throw new OutOfRange(key, mass, [0, Infinity], 'a mass');
}

const scratch = { water: 0, gain: 0 };

/** Mass of water that the solids hold at a water activity (0 to below 1), in the unit of the solids, and its gain per unit of activity. */
export function waterHeld(of: Solids, aw: WaterActivity, out: { water: number; gain: number }, ln = Math.log(aw)): void {
  let water = 0;
  let gain = 0;
  for (const { moles, binary } of of.parts) {
    waterPerSolute(binary, aw, scratch, ln);
    water += moles * scratch.water;
    gain += moles * scratch.gain;
  }
  if (of.salt > 0) {
    waterPerSalt(of.saltGained, aw, scratch);
    water += of.salt * scratch.water;
    gain += of.salt * scratch.gain;
  }
  for (let i = 0; i < of.electrolytes.length; i++) {
    const { moles, electrolyte } = of.electrolytes[i]!;
    waterPerElectrolyte(electrolyte, aw, scratch);
    water += moles * scratch.water;
    gain += moles * scratch.gain;
  }
  const { maltose, chains } = of;
  if (maltose.moles > 0 || chains > 0) {
    waterPerSolute(maltose.binary, aw, scratch, ln);
    const dry = 1 - aw;
    const bound = chains > 0 ? chains * (1 + chainHydration.values.perUnit * (of.chainUnits - 2)) : 0;
    water += maltose.moles * scratch.water + chains * (aw / dry) + bound * (scratch.water - aw / dry);
    gain += maltose.moles * scratch.gain + chains / (dry * dry) + bound * (scratch.gain - 1 / (dry * dry));
  }
  out.water = water * waterMass;
  out.gain = gain * waterMass;
}

const held = { water: 0, gain: 0 };

/**
 * Water activity of a solution of sugars, polyols and salt.
 *
 * @param solution - masses of the dissolved phase, any common unit; fat, protein and crystals are not in it
 * @param t - temperature, °C, -40 to 200; fitted -15 to 130
 * @returns 0 to 1; 1 without solutes, 0 without water; rises with water
 * @throws OutOfRange for a mass below 0 or NaN, or a temperature outside the range
 * @see starzak-peacock-1997, norrish-1966, zsr
 * @example waterActivity({ water: 33, sucrose: 67 }, 25) // 0.851
 */
export function waterActivity(solution: Solution, t: Celsius): WaterActivity {
  const solids = solidsAt(solution, t);
  requireMass('water', solution.water);
  if (solids.moles === 0) return 1;
  if (solution.water === 0) return 0;
  return activityOver(solids, solution.water);
}

/**
 * Solves waterHeld = water. 1/water is nearly straight against -ln aw from the dilute to the dense end, so Newton is taken there.
 * `extra` adds water held by something else (proteins, starch).
 */
export function activityOver(of: Solids, water: number, extra?: (aw: number, out: { water: number; gain: number }) => void): WaterActivity {
  let y = (of.moles * waterMass) / water;
  y = y / (1 + 0.3 * y);
  let low = 0;
  let high = 40;
  const more = { water: 0, gain: 0 };
  for (let step = 0; step < 100; step++) {
    const aw = Math.exp(-y);
    waterHeld(of, aw, held, -y);
    if (extra) {
      extra(aw, more);
      held.water += more.water;
      held.gain += more.gain;
    }
    if (held.water > water) low = y;
    else high = y;
    const f = 1 / held.water - 1 / water;
    const fSlope = (held.gain * aw) / held.water ** 2;
    let next = y - f / fSlope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - y) <= 1e-9 * y) return Math.exp(-next);
    y = next;
  }
  return Math.exp(-y);
}

/**
 * Water with which the solids of a solution stand at a water activity: the inverse of waterActivity. `solution.water` is not read.
 *
 * @param aw - above 0, below 1
 * @returns mass of water, in the unit of the solids; rises with aw
 * @throws OutOfRange
 */
export function waterForActivity(solution: Solution, aw: WaterActivity, t: Celsius): number {
  if (!(aw > 0 && aw < 1)) throw new OutOfRange('water_activity', aw, [0, 1], 'zsr');
  waterHeld(solidsAt(solution, t), aw, held);
  return held.water;
}
