import { at, type Composition } from '../../composition.js';
import { OutOfRange, requireRange } from '../../errors.js';
import { molarMasses } from '../../water/data/binary.js';
import { assumedChain, saccharideMolarMass } from '../../water/solution.js';
import { chainSeries, glassTable } from '../data/glass-transition.js';
import type { PhaseState } from '../thermal.js';
import { fox, gordonTaylorMixture, type GlassPart } from './rules.js';
import type { Celsius } from '../../units.js';

export const glassRules = ['gordon_taylor', 'fox'] as const;
export type GlassRule = (typeof glassRules)[number];

const [waterTg, waterK] = glassTable.values.water;

/**
 * Dry glass transition and Gordon-Taylor k of glucose chains by dextrose equivalent, piecewise straight between the tabled ones.
 *
 * @param dextroseEquivalent - 18016 by number-average molar mass in g/mol: 100 glucose, 52.6 maltose, 42 common syrup; 0 to 100
 * @throws OutOfRange outside 0 to 100
 * @example chainGlass(20).tg // 141
 */
export function chainGlass(dextroseEquivalent: number): { readonly tg: Celsius; readonly k: number } {
  requireRange('dextrose equivalent', dextroseEquivalent, [0, 100 + 1e-9], chainSeries.source);
  const { dextrose_equivalent: de, tg, k } = chainSeries.values;
  let i = 0;
  while (i < de.length - 2 && dextroseEquivalent > de[i + 1]!) i++;
  const share = (dextroseEquivalent - de[i]!) / (de[i + 1]! - de[i]!);
  return { tg: tg[i]! + share * (tg[i + 1]! - tg[i]!), k: k[i]! + share * (k[i + 1]! - k[i]!) };
}

/** Glass formers of the syrup phase: each sugar, and glucose, maltose and higher saccharides together as one series of chains. */
export function glassParts(of: Composition, state?: PhaseState): GlassPart[] {
  const parts: GlassPart[] = [];
  const add = (mass: number, tg: number, k: number) => {
    if (mass > 0) parts.push({ mass, tg, k });
  };
  const { sucrose, fructose, lactose, polyols } = glassTable.values;
  add(of[at.water]!, waterTg, waterK);
  add(of[at.sucrose]! * (1 - (state?.crystallineSucrose ?? 0)), sucrose[0], sucrose[1]);
  add(of[at.fructose]!, fructose[0], fructose[1]);
  add(of[at.lactose]!, lactose[0], lactose[1]);
  add(of[at.polyols]!, polyols[0], polyols[1]);
  const higher = of[at.higher_saccharides]!;
  const chains = of[at.glucose]! + of[at.maltose]! + higher;
  if (chains > 0) {
    const given = of[at.higher_saccharides_mol]! / 1000; // kmol, as the masses are kg
    const higherMoles = given > 0 ? given : higher / saccharideMolarMass(assumedChain);
    const { glucose: glucoseMass, maltose: maltoseMass } = molarMasses.values;
    const moles = of[at.glucose]! / glucoseMass + of[at.maltose]! / maltoseMass + higherMoles;
    const { tg, k } = chainGlass(Math.min(100, (100 * glucoseMass * moles) / chains));
    add(chains, tg, k);
  }
  return parts;
}

/**
 * Glass transition of the syrup phase (water and dissolved sugars) of a composition, °C. Fat, protein, starch and crystals are left
 * out: they lie beside the phase and neither soften nor harden it.
 *
 * @param of - composition with some sugar or water
 * @param rule - Gordon-Taylor over all components (default) or Fox
 * @returns °C; falls about 6 K for each per cent of water
 * @throws OutOfRange when there is neither sugar nor water
 * @see gordon-taylor-table-2016; about ±8 K
 */
export function glassTransition(of: Composition, rule: GlassRule = 'gordon_taylor', state?: PhaseState): Celsius {
  const parts = glassParts(of, state);
  return rule === 'fox' ? fox(parts) : gordonTaylorMixture(parts);
}

/**
 * Water that brings the glass transition of the syrup phase to a temperature, kg per kg of water and dissolved sugars.
 *
 * @param of - composition whose sugars count; its own water does not
 * @param t - °C, above that of water as a glass
 * @returns 0 to 1
 * @throws OutOfRange when even the dry sugars are soft at t, or t is not above -135 °C
 */
export function waterAtGlassTransition(of: Composition, t: Celsius, state?: PhaseState): number {
  const solids = glassParts(of, state).filter((part) => part.tg !== waterTg);
  const dryTg = gordonTaylorMixture(solids);
  if (!(t > waterTg && t <= dryTg)) throw new OutOfRange('temperature', t, [waterTg, dryTg], 'gordon-taylor');
  let mass = 0;
  let weight = 0;
  for (const part of solids) {
    mass += part.mass;
    weight += part.mass / part.k;
  }
  const waterBySolids = ((weight / mass) * (dryTg - t)) / (t - waterTg);
  return waterBySolids / (1 + waterBySolids);
}
