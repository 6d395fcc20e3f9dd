import type { CompositionKey } from '../composition.js';
import { requireRange } from '../errors.js';
import type { GramPerMole, MassFraction } from '../units.js';
import { molarMasses } from './data/binary.js';
import { acidConverted, acidEnzyme, highMaltose } from './data/saccharides.js';
import { interpolate } from './interpolate.js';
import { saccharideMolarMass } from './solution.js';

/** How the starch was broken down. */
export type Conversion = 'acid' | 'acid_enzyme' | 'high_maltose';
export const conversions: readonly Conversion[] = ['acid', 'acid_enzyme', 'high_maltose'];
const spectra = { acid: acidConverted, acid_enzyme: acidEnzyme, high_maltose: highMaltose } as const;

/** From a maltodextrin to dextrose. */
export const dextroseEquivalents = [1, 100] as const;
const { glucose: glucoseMass, maltose: maltoseMass } = molarMasses.values;

/**
 * Number-average molar mass of a starch hydrolysate: one reducing end per molecule, so DE = 100 · 180.16 / Mn.
 * A copper titration reads oligomers some 10 % stronger than that.
 */
export function numberAverageMolarMass(dextroseEquivalent: number): GramPerMole {
  requireRange('dextrose_equivalent', dextroseEquivalent, dextroseEquivalents, 'dextrose-equivalent');
  return (100 * glucoseMass) / dextroseEquivalent;
}

/** The same relation the other way. */
export function dextroseEquivalentOf(molarMass: GramPerMole): number {
  return (100 * glucoseMass) / molarMass;
}

/**
 * Composition of a glucose syrup: glucose and maltose from published spectra, the rest as chains of three units and more whose
 * number makes up the dextrose equivalent exactly.
 *
 * @param solids - mass fraction of dry substance, 0 to 1
 * @param dextroseEquivalent - 1 to 100; spectra published for 20 to 67 (acid), 58 to 70 (acid and enzyme), 38 to 55 (high maltose)
 * @returns mass fractions of the syrup, and moles of chains per kg of syrup; sums to 1
 * @throws OutOfRange
 * @example glucoseSyrup(0.8, 42).glucose // 0.152
 */
export function glucoseSyrup(
  solids: MassFraction,
  dextroseEquivalent: number,
  conversion: Conversion = 'acid',
): Partial<Record<CompositionKey, number>> {
  requireRange('solids', solids, [0, 1], 'pancoast-junk-1980');
  const moles = 1 / numberAverageMolarMass(dextroseEquivalent); // mol per g of solids
  const table = spectra[conversion].values;
  let glucose = interpolate(dextroseEquivalent, table.dextrose_equivalent, table.glucose);
  let maltose = interpolate(dextroseEquivalent, table.dextrose_equivalent, table.maltose);
  let chains = 1 - glucose - maltose;
  let chainMoles = moles - glucose / glucoseMass - maltose / maltoseMass;
  const shortest = saccharideMolarMass(3);
  if (chains <= 1e-9 || chainMoles < chains / 1e5 || chains / chainMoles < shortest) {
    // Beyond the published spectra: glucose as published, maltose and trimer share the rest so that the moles come right.
    const rest = 1 - glucose;
    const wanted = moles - glucose / glucoseMass;
    maltose = Math.min(rest, Math.max(0, (wanted - rest / shortest) / (1 / maltoseMass - 1 / shortest)));
    chains = rest - maltose;
    if (chains < 1e-12 || wanted < rest / shortest) {
      // Only glucose can still give the number: glucose and maltose, or glucose and trimer.
      glucose = (moles - 1 / maltoseMass) / (1 / glucoseMass - 1 / maltoseMass);
      maltose = 1 - glucose;
      chains = 0;
    }
    chainMoles = chains / shortest;
  }
  return {
    water: 1 - solids,
    glucose: solids * glucose,
    maltose: solids * maltose,
    higher_saccharides: solids * chains,
    higher_saccharides_mol: solids * chainMoles * 1000,
  };
}
