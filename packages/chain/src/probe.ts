import { isVector, type Chain } from './build.js';
import type { Engine } from './engine.js';
import { OK } from './engine.js';
import type { Selected } from './names.js';

/** The number selected, NaN where it has no value. */
export function numberAt(engine: Engine, name: Selected): number {
  if (engine.status[name.index] !== OK) return NaN;
  const value = engine.values[name.index]!;
  return isVector(value) ? (value[name.element] ?? NaN) : value;
}

/** Puts one number in place, as a whole quantity or as one element of its vector; `settle` brings the rest up to date. */
export function pokeNumber(engine: Engine, name: Selected, x: number): void {
  if (name.element < 0) return engine.poke(name.index, x);
  const whole = engine.values[name.index]!;
  if (!isVector(whole)) return;
  const changed = whole.slice();
  changed[name.element] = x;
  engine.poke(name.index, changed);
}

/** A number with its unit, for a sentence. */
export function inWords(chain: Chain, name: Selected, x: number): string {
  const { unit } = chain.quantities[name.index]!;
  const digits = Number(x.toPrecision(6));
  return unit === '1' ? String(digits) : `${digits} ${unit}`;
}
