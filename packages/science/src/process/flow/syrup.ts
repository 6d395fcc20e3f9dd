import { at, type Composition } from '../../composition.js';
import { OutOfRange } from '../../errors.js';
import { syrupWlf } from '../data/syrup-viscosity.js';
import { glassParts } from '../glass/mixture.js';
import { gordonTaylorMixture } from '../glass/rules.js';
import type { PhaseState } from '../thermal.js';
import { wlfShift } from './temperature.js';
import type { Celsius, MassFraction, PascalSecond } from '../../units.js';

/** Water by water and dissolved sugars: how wet the syrup phase is. */
export function syrupWater(of: Composition, state?: PhaseState): MassFraction {
  let mass = 0;
  for (const part of glassParts(of, state)) mass += part.mass;
  if (!(mass > 0)) throw new OutOfRange('mass of water and sugars', mass, [1e-300, 1], 'mass balance');
  return of[at.water]! / mass;
}

/**
 * Viscosity of the syrup phase of a composition, Pa s: WLF from the glass transition of the mixture, with constants fitted to sucrose
 * solutions and one honey.
 *
 * @param of - composition with sugars; fat, protein and crystals are left out
 * @param t - °C, above the pole of the equation some 30 to 45 K below the glass transition
 * @returns Pa s; falls with temperature and water; about a factor 2 either way inside the fitted range, a decade near the glass
 * @throws OutOfRange without sugar or water, or below the pole
 * @see crc-102-solutions, gordon-taylor-table-2016
 */
export function concentratedSyrupViscosity(of: Composition, t: Celsius, state?: PhaseState): PascalSecond {
  const tg = gordonTaylorMixture(glassParts(of, state));
  const { c1, c2, glass_viscosity } = syrupWlf.values;
  return glass_viscosity * 10 ** wlfShift(t - tg, c1, c2[0] + c2[1] * syrupWater(of, state));
}
