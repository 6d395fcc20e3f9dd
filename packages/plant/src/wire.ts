import type { Loaded, Plant, Problem } from './types.js';

/**
 * A value as JSON carries it: a Map becomes the list of its entries, a vector the list of its numbers.
 * The compiler follows the types, so a new Map anywhere in a plant makes `decodePlant` incomplete and shows.
 */
export type Wire<T> = T extends Float64Array
  ? readonly number[]
  : T extends ReadonlyMap<infer Key, infer Value>
    ? readonly (readonly [Wire<Key>, Wire<Value>])[]
    : T extends object
      ? { readonly [K in keyof T]: Wire<T[K]> }
      : T;

export type WirePlant = Wire<Plant>;
export type WireLoaded =
  | { readonly ok: true; readonly plant: WirePlant; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * A plant as plain lists and objects, ready for JSON.
 * @throws TypeError naming the place of a number that JSON cannot carry (NaN, infinite)
 */
export function encodePlant(plant: Plant): WirePlant {
  return encode(plant, 'plant') as WirePlant;
}

/** The plant again, after JSON. The input is ours: it is not checked. */
export function decodePlant(wire: WirePlant): Plant {
  return {
    ...wire,
    materials: new Map(wire.materials.map(([name, m]) => [name, { ...m, composition: Float64Array.from(m.composition) }])),
    components: new Map(
      wire.components.map(([name, { composition, ...component }]) => [
        name,
        composition ? { ...component, composition: { ...composition, value: Float64Array.from(composition.value) } } : component,
      ]),
    ),
    bars: new Map(wire.bars),
    lines: new Map(wire.lines),
  };
}

/** What the loader said, plant or problems, ready for JSON. */
export function encodeLoaded(loaded: Loaded): WireLoaded {
  return loaded.ok ? { ok: true, plant: encodePlant(loaded.plant), notes: loaded.notes } : loaded;
}

/** The undoing of `encodeLoaded`. */
export function decodeLoaded(wire: WireLoaded): Loaded {
  return wire.ok ? { ok: true, plant: decodePlant(wire.plant), notes: wire.notes } : wire;
}

function encode(value: unknown, place: string): unknown {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${place} is ${value}, but a finite number is expected`);
    return value;
  }
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Float64Array) return Array.from(value, (number, index) => encode(number, `${place}[${index}]`));
  if (value instanceof Map) return [...value].map(([key, held]) => [key, encode(held, `${place}.${key}`)]);
  if (Array.isArray(value)) return value.map((held, index) => encode(held, `${place}[${index}]`));
  const object: Record<string, unknown> = {};
  for (const [key, held] of Object.entries(value)) if (held !== undefined) object[key] = encode(held, `${place}.${key}`);
  return object;
}
