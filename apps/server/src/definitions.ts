import type { Loaded } from '@barwright/plant';
import { getVersion, type Store, type Version } from '@barwright/store';
import { sha256 } from './hash.js';

/** One version of a plant as the loader reads it. */
export interface Definition {
  readonly version: Version;
  readonly loaded: Loaded;
  /** The loader's answer for the browser, JSON, made once. */
  readonly json: () => Promise<{ readonly text: string; readonly etag: string }>;
}

export interface Definitions {
  /** @throws StoreError PLANT_NOT_FOUND, VERSION_NOT_FOUND */
  readonly get: (plant: string, number: number | 'latest') => Promise<Definition>;
}

/** How many versions stay parsed. A version never changes, so nothing has to be forgotten but the oldest. */
const kept = 16;

/** Definitions of a store, parsed when first asked for. */
export function openDefinitions(store: Store): Definitions {
  const parsed = new Map<string, Definition>();
  return {
    get: async (plant, number) => {
      const version = await getVersion(store, plant, number);
      // By what the files are now: a text altered behind the store's back is read as it stands, and said to be altered.
      const key = `${plant}/${version.number}/${version.hash}/${version.intact}`;
      const known = parsed.get(key);
      if (known) return known;
      const { loadPlant } = await import('@barwright/plant');
      const definition = definitionOf(version, loadPlant(version.files));
      parsed.set(key, definition);
      if (parsed.size > kept) parsed.delete(parsed.keys().next().value!);
      return definition;
    },
  };
}

function definitionOf(version: Version, loaded: Loaded): Definition {
  let made: Promise<{ text: string; etag: string }> | undefined;
  const make = async () => {
    const { encodeLoaded } = await import('@barwright/plant/wire');
    const { plant, number, name, hash, intact } = version;
    const text = JSON.stringify({ version: { plant, number, name, hash, intact }, ...encodeLoaded(loaded) });
    return { text, etag: `"${sha256(text).slice(0, 32)}"` };
  };
  return { version, loaded, json: () => (made ??= make()) };
}
