import { BadInput, requireRange } from '../errors.js';
import { choiOkosConductivity, choiOkosDensity, choiOkosSpecificHeat } from './data/choi-okos.js';
import { polynomial } from './polynomial.js';
import type { Celsius, JoulePerKilogramKelvin, KilogramPerCubicMetre, WattPerMetreKelvin } from '../units.js';

/** The constituents of a food as a label or a proximate analysis gives them; masses in any one unit. */
export const proximateKeys = ['water', 'protein', 'fat', 'carbohydrate', 'fibre', 'ash'] as const;
export type Proximate = Readonly<Record<(typeof proximateKeys)[number], number>>;

const range = [-40, 200] as const;

function shares(of: Proximate, t: Celsius): number {
  requireRange('temperature', t, range, 'choi-okos-1986');
  let sum = 0;
  for (const key of proximateKeys) {
    requireRange(key, of[key], [0, Infinity], 'choi-okos-1986');
    sum += of[key];
  }
  if (!(sum > 0)) throw new BadInput('every constituent is 0; give the mass of at least one');
  return sum;
}

/**
 * Density of a food without gas or ice, kg/m³: 1 / sum(x / rho_i), Choi-Okos.
 *
 * @param of - masses; normalised to 1
 * @param t - °C, -40 to 200; fitted to 150; water taken as liquid
 * @throws OutOfRange for a negative mass or a temperature outside; BadInput for nothing at all
 */
export function foodDensity(of: Proximate, t: Celsius): KilogramPerCubicMetre {
  const sum = shares(of, t);
  let volume = 0;
  for (const key of proximateKeys) volume += of[key] / polynomial(choiOkosDensity.values[key], t);
  return sum / volume;
}

/** Specific heat, J/(kg K): mass-weighted Choi-Okos; no heat of melting. Arguments and errors as `foodDensity`. */
export function foodSpecificHeat(of: Proximate, t: Celsius): JoulePerKilogramKelvin {
  const sum = shares(of, t);
  let cp = 0;
  for (const key of proximateKeys) cp += of[key] * polynomial(choiOkosSpecificHeat.values[key], t);
  return cp / sum;
}

/** Conductivity, W/(m K): Choi-Okos weighted by volume (parallel). Arguments and errors as `foodDensity`. */
export function foodConductivity(of: Proximate, t: Celsius): WattPerMetreKelvin {
  shares(of, t);
  let volume = 0;
  let k = 0;
  for (const key of proximateKeys) {
    const part = of[key] / polynomial(choiOkosDensity.values[key], t);
    volume += part;
    k += part * polynomial(choiOkosConductivity.values[key], t);
  }
  return k / volume;
}
