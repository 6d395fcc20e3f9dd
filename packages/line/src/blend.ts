import { additionsOf, flowsAsCaramel } from '@barwright/bar';
import type { Session, State } from '@barwright/chain';
import type { Component, Material } from '@barwright/plant';
import {
  at,
  atMoisture,
  caramelViscosity,
  dissolvedSolids,
  fats,
  mix,
  share,
  solutionOf,
  supersaturation,
  waterActivity,
  type Composition,
} from '@barwright/science';
import { cookOf } from './cook-curve.js';
import type { PlantChain } from './plant-chain.js';

/** The blend cannot be designed; the sentence says why. */
export class NoBlend extends RangeError {
  readonly code = 'NO_BLEND';
}

/** A limit on a property of the finished component. */
export interface BlendLimit {
  readonly property: BlendProperty;
  readonly low?: number;
  readonly high?: number;
}

export type BlendProperty =
  'water_activity' | 'viscosity' | 'sucrose_supersaturation' | 'lactose_supersaturation' | 'fat' | 'milk_solids' | 'moisture' | 'sweetness';

/** Something that may go in, kg per kg finished. */
export interface Candidate {
  readonly name: string;
  readonly composition: Composition;
  /** Money per kg. */
  readonly price: number;
  /** kg in a kg finished now; 0 where it is not in the recipe. */
  readonly now: number;
  readonly low: number;
  readonly high: number;
  /** Held at what it is. */
  readonly fixed: boolean;
}

export interface BlendTask {
  readonly component: Component;
  readonly candidates: readonly Candidate[];
  readonly limits: readonly BlendLimit[];
  /** °C at which viscosity and grain are judged, and the plant's factor. */
  readonly laidAt: number;
  readonly storedAt: number;
  readonly factor: number;
  readonly currency: string;
}

export interface BlendOptions {
  readonly component?: string;
  /** Materials of the plant that may come in beside those of the recipe, by name. */
  readonly also?: readonly string[];
  /** Limits in place of the usual ones, by property. */
  readonly limits?: readonly BlendLimit[];
  /** Most and least of an ingredient, share of the finished component. */
  readonly bounds?: Readonly<Record<string, { readonly low?: number; readonly high?: number }>>;
}

const properties: Readonly<Record<BlendProperty, (of: Composition, task: Pick<BlendTask, 'laidAt' | 'storedAt' | 'factor'>) => number>> = {
  water_activity: (of) => waterActivity(solutionOf(of), 25),
  viscosity: (of, { laidAt, factor }) => caramelViscosity(of, laidAt, factor),
  sucrose_supersaturation: (of, { storedAt }) => (of[at.sucrose]! > 0 ? supersaturation(solutionOf(of), 'sucrose', storedAt) : 0),
  lactose_supersaturation: (of, { storedAt }) => (of[at.lactose]! > 0 ? supersaturation(solutionOf(of), 'lactose', storedAt) : 0),
  fat: (of) => share(of, fats),
  milk_solids: (of) => share(of, ['milk_fat', 'nonfat_milk_solids']),
  moisture: (of) => of[at.water]!,
  // Relative sweetness against sucrose = 1; textbook means, from memory.
  sweetness: (of) => of[at.sucrose]! + 0.7 * of[at.glucose]! + 1.2 * of[at.fructose]! + 0.4 * of[at.maltose]! + 0.3 * of[at.lactose]!,
};

export function propertyOf(property: BlendProperty, of: Composition, task: Pick<BlendTask, 'laidAt' | 'storedAt' | 'factor'>): number {
  return properties[property](of, task);
}

/** Composition of amounts (kg per kg finished) with moisture as the water that is left; sugars, fats and the rest come along. */
export function blended(amounts: readonly number[], candidates: readonly Candidate[], moisture: number): Composition {
  return atMoisture(mix(amounts.map((amount, i) => [Math.max(amount, 1e-12), candidates[i]!.composition] as const)), moisture);
}

/**
 * The task: what is in the recipe and what may come in, with the limits that keep the bar what it is: activity, viscosity and grain
 * as now, fat and milk solids as now, moisture in its window.
 * @throws NoBlend, NoCook
 */
export function blendTask(from: PlantChain, session: Session | State, options: BlendOptions = {}): BlendTask {
  const component = cookOf(from, options.component);
  if (!flowsAsCaramel(component))
    throw new NoBlend(`${component.name} is whipped; only a cook that flows as a caramel can be blended to a viscosity`);
  const c = component.slug;
  const state = session;
  const yielded = state.number(`${c}.yield`) * state.number(`${c}.charge_sum`);
  const additions = additionsOf(component);
  const inside = additions.map(({ addition, id }) => candidateOf(from, state, c, addition.name, state.number(id) / yielded));
  const also = (options.also ?? []).map((name) => {
    const material = [...from.plant.materials.values()].find((one) => one.name.toLowerCase() === name.toLowerCase());
    if (!material) throw new NoBlend(`${from.plant.name} has no material "${name}"; it has ${[...from.plant.materials.keys()].join(', ')}`);
    return newcomer(from.plant.currency, material);
  });
  const known = new Set(inside.map(({ name }) => name));
  const candidates = [...inside, ...also.filter(({ name }) => !known.has(name))].map((one) => {
    const bound = options.bounds?.[one.name];
    if (!bound) return one;
    return { ...one, low: bound.low ?? 0, high: bound.high ?? one.high, fixed: false };
  });
  for (const name of Object.keys(options.bounds ?? {}))
    if (!candidates.some((one) => one.name === name))
      throw new NoBlend(`"${name}" is neither in ${component.name} nor among what may come in`);
  const task = {
    component,
    candidates,
    laidAt: from.chain.index.has(`${c}.deposit_temperature`) ? state.number(`${c}.deposit_temperature`) : 78,
    storedAt: 20,
    factor: state.number(`${c}.viscosity_factor`),
    currency: from.plant.currency,
  };
  return { ...task, limits: limitsOf(state, component, task, options.limits ?? []) };
}

function candidateOf(from: PlantChain, state: State, c: string, name: string, now: number): Candidate {
  const inner = from.plant.components.get(name);
  const slug = inner?.slug ?? from.plant.materials.get(name)!.slug;
  // A syrup used at other solids than its own has a composition as delivered.
  const delivered = `${c}.solids.${slug}.composition`;
  const id = inner ? `${slug}.composition` : from.chain.index.has(delivered) ? delivered : `material.${slug}.composition`;
  const composition = state.value(id) as Composition;
  const price = inner ? `${slug}.cost` : `material.${slug}.price`;
  // What makes taste or does its work in tenths stays; what is there for body may move.
  // Water is there to dissolve the sugar; the cook takes it away again.
  const body = now >= 0.02 && composition[at.water]! < 0.99;
  return {
    name,
    composition,
    price: from.chain.index.has(price) ? state.number(price) : 0,
    now,
    low: body ? 0 : now,
    high: body ? Math.min(1, Math.max(2 * now, now + 0.1)) : now,
    fixed: !body,
  };
}

function newcomer(currency: string, material: Material): Candidate {
  if (!material.price) throw new NoBlend(`${material.name} has no price in ${currency}; a cheapest blend needs one`);
  return { name: material.name, composition: material.composition, price: material.price.value, now: 0, low: 0, high: 0.5, fixed: false };
}

function limitsOf(
  state: State,
  component: Component,
  task: Omit<BlendTask, 'limits'>,
  asked: readonly BlendLimit[],
): readonly BlendLimit[] {
  const c = component.slug;
  const now = state.value(`${c}.composition`) as Composition;
  const value = (property: BlendProperty) => propertyOf(property, now, task);
  const end = component.stages.find((stage) => stage.cook)!.cook!.end;
  const moisture = state.number(`${c}.moisture`);
  const window = end.by === 'finished moisture' ? end.moisture : undefined;
  const usual: BlendLimit[] = [
    { property: 'water_activity', low: value('water_activity') - 0.002, high: value('water_activity') + 0.002 },
    { property: 'viscosity', low: 0.97 * value('viscosity'), high: 1.03 * value('viscosity') },
    { property: 'sucrose_supersaturation', high: value('sucrose_supersaturation') },
    { property: 'lactose_supersaturation', high: value('lactose_supersaturation') },
    { property: 'fat', low: value('fat') - 0.01, high: value('fat') + 0.01 },
    { property: 'milk_solids', low: value('milk_solids') },
    { property: 'moisture', low: window?.low ?? moisture - 0.004, high: window?.high ?? moisture + 0.004 },
  ];
  const replaced = new Set(asked.map(({ property }) => property));
  return [...usual.filter(({ property }) => !replaced.has(property)), ...asked];
}

/** Dissolved solids there must be: a blend of fat alone has no syrup to be judged. */
export function hasSyrup(of: Composition): boolean {
  return dissolvedSolids(solutionOf(of)) > 0.05;
}
