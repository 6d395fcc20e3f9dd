import { at, type Composition } from '../../composition.js';
import { NoSolution } from '../../errors.js';
import { molarMasses } from '../../water/data/binary.js';
import { assumedChain, solutionOf } from '../../water/solution.js';
import { sucroseEquivalent, sucroseViscosityBeyond } from '../../water/viscosity.js';
import { chainThickening, syrupWlf } from '../data/syrup-viscosity.js';
import { glassParts } from '../glass/mixture.js';
import { gordonTaylorMixture } from '../glass/rules.js';
import type { PhaseState } from '../thermal.js';
import { wlfShift } from './temperature.js';
import type { Celsius, MassFraction, PascalSecond } from '../../units.js';

/** Longer chains count as this: the table ends at 28 DE, some six units, and melts of long chains thicken no faster. */
const longestChain = 16;

function syrupMass(of: Composition, state?: PhaseState): number {
  let mass = 0;
  for (const part of glassParts(of, state)) mass += part.mass;
  if (!(mass > 0)) throw new NoSolution('There is neither water nor dissolved sugar, so no syrup that could flow');
  return mass;
}

/** Water by water and dissolved sugars: how wet the syrup phase is. */
export function syrupWater(of: Composition, state?: PhaseState): MassFraction {
  return of[at.water]! / syrupMass(of, state);
}

/** Mean number of glucose units in the saccharides of three and more. */
function chainLength(of: Composition): number {
  const moles = of[at.higher_saccharides_mol]! / 1000;
  if (!(moles > 0)) return assumedChain;
  return (of[at.higher_saccharides]! / moles - molarMasses.values.water) / molarMasses.values.anhydroglucose;
}

/** Water of the syrup phase from which thin-syrup viscosities take over, and above which they stand alone. */
const thin = [0.2, 0.35] as const;

/**
 * Viscosity of the syrup phase of a composition, Pa s. Thick: WLF from the glass transition of the mixture, with constants fitted to
 * sucrose solutions and one honey; chains of glucose thicken it further, in proportion to their share and the logarithm of their length.
 * Thin: the sucrose solution of equal thickness. Between 20 and 35 % water the logarithms of the two are mixed, because the glass
 * transition of monosaccharides with much water lies too high for their fluidity.
 *
 * @param of - composition with sugars; fat, protein and crystals are left out
 * @param t - °C, above the pole of the equation some 30 to 45 K below the glass transition
 * @returns Pa s; falls with temperature and water; about a factor 2 either way inside the fitted range, a decade near the glass
 * @throws NoSolution without sugar or water; OutOfRange below the pole
 * @see crc-102-solutions, gordon-taylor-table-2016, corn-syrup-viscosities (from memory), genotelle-bubnik
 */
export function concentratedSyrupViscosity(of: Composition, t: Celsius, state?: PhaseState): PascalSecond {
  const mass = syrupMass(of, state);
  const water = of[at.water]! / mass;
  const share = Math.min(1, Math.max(0, (water - thin[0]) / (thin[1] - thin[0])));
  if (share === 0) return thickViscosity(of, t, mass, state);
  const solution = solutionOf(of);
  const crystal = state?.crystallineSucrose ?? 0;
  const dissolved = crystal > 0 ? { ...solution, sucrose: solution.sucrose! * (1 - crystal) } : solution;
  const diluted = sucroseViscosityBeyond(sucroseEquivalent(dissolved), t);
  return share === 1 ? diluted : thickViscosity(of, t, mass, state) ** (1 - share) * diluted ** share;
}

function thickViscosity(of: Composition, t: Celsius, mass: number, state?: PhaseState): PascalSecond {
  const tg = gordonTaylorMixture(glassParts(of, state));
  const { c1, c2, glass_viscosity } = syrupWlf.values;
  const chains = of[at.higher_saccharides]! / mass;
  const longer =
    chains > 0 ? chainThickening.values.per_doubling * chains * Math.log2(Math.min(Math.max(chainLength(of), 2), longestChain) / 2) : 0;
  const shift = wlfShift(t - tg, c1, c2[0] + (c2[1] * of[at.water]!) / mass);
  // At the glass transition every syrup has the viscosity of a glass: the chains count in full 50 K above it.
  const freed = Math.min(1, Math.max(0, (t - tg) / 50));
  return glass_viscosity * 10 ** (shift + freed * longer);
}
