import { componentsOf } from '@barwright/bar';
import { Session } from '@barwright/chain';
import type { Component } from '@barwright/plant';
import { plantChain, type PlantChain } from './plant-chain.js';

/** A chain with a session on it. */
export interface Driven {
  readonly from: PlantChain;
  readonly session: Session;
}

/**
 * The same bar with some cooks held by their end temperature instead of by their moisture, each at the temperature it has now.
 * What was put in place in the session is kept, but for the moistures that now follow.
 */
export function drivenByTemperature(from: PlantChain, session: Session, components: readonly Component[]): Driven {
  const held = components.filter(
    (one) => from.chain.index.has(`${one.slug}.cook_temperature`) && !isRoot(from, `${one.slug}.cook_temperature`),
  );
  if (held.length === 0) return { from, session: new Session(from.chain, session.overrides()) };
  const temperatures = Object.fromEntries(held.map(({ slug }) => [slug, session.number(`${slug}.cook_temperature`)]));
  const built = plantChain(from.plant, from.bar.name, { cookTemperature: temperatures });
  const follows = new Set(held.flatMap(({ slug }) => [`${slug}.moisture`, `${slug}.cook_temperature`]));
  const kept = Object.entries(session.overrides()).filter(([id]) => built.chain.index.has(id.replace(/\[.*\]$/, '')) && !follows.has(id));
  return { from: built, session: new Session(built.chain, Object.fromEntries(kept)) };
}

/** Whether a quantity is entered, not computed. */
export function isRoot(from: PlantChain, id: string): boolean {
  const index = from.chain.index.get(id);
  return index !== undefined && index < from.chain.roots.length;
}

/** Components of the bar that are cooked, in the order they are made. */
export function cookedComponents(from: PlantChain): readonly Component[] {
  return componentsOf(from.plant, from.bar).filter((one) => one.stages.some((stage) => stage.cook));
}
