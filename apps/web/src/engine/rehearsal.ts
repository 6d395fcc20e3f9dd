import { presentation } from '@barwright/line';
import type { Engine } from './engine.js';
import { quantityOf } from './words.js';

/** How often each number is moved, and how far a move goes, as a share of the number. */
const moves = 12;
const reach = 0.001;

/**
 * The motions of a hand before one comes: every edge, mass and water level is pulled a little, on an engine of its own. Code that
 * has run is compiled, so the first pull is answered as quickly as the hundredth.
 * @returns turns of a few milliseconds each; between two of them a request may be answered
 */
export function* rehearsal(engine: Engine): Generator<void, void> {
  const { parts } = engine.catalog();
  yield;
  const ids = parts.flatMap(({ id, component }) => [`${id}.thickness`, `${component}.water_activity`, `${id}.mass`]);
  for (const id of new Set(ids)) {
    const quantity = quantityOf(engine.from.chain, id);
    const value = quantity && engine.session.value(id);
    if (!quantity || typeof value !== 'number' || Number.isNaN(value) || engine.knobs.of(id) === undefined) continue;
    const start = presentation(quantity, engine.shownUnits).toShown(value);
    for (let move = 1; move <= moves; move += 1) {
      engine.set({ [id]: start * (1 + reach * move) }, false);
      engine.frame();
      yield;
    }
    engine.undo();
    engine.frame();
  }
}
