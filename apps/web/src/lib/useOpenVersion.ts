import { useCallback, useEffect, useState } from 'react';
import type { Sheet } from '../engine/sheet.js';
import type { Address } from './address.js';
import { getDefinition, getPlant, listPlants, type PlantDetail, type PlantLine, Refused } from './api.js';
import { currentPrefs } from './prefs.js';
import type { Go } from './useAddress.js';

export type Opened =
  | { readonly state: 'opening' }
  | { readonly state: 'open'; readonly plant: PlantDetail; readonly version: number; readonly wire: unknown }
  | { readonly state: 'refused'; readonly message: string };

/** The plant that was saved last. */
function newestOf(plants: readonly PlantLine[]): PlantLine | undefined {
  return [...plants].sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1))[0];
}

/** Opens what the address names: without a plant the one saved last, without a bar its first, without a version the latest. */
export function useOpenVersion(sheet: Sheet, address: Address, go: Go): readonly [opened: Opened, openAgain: () => void, waiting: boolean] {
  const [opened, setOpened] = useState<Opened>({ state: 'opening' });
  const [again, setAgain] = useState(0);
  const [waiting, setWaiting] = useState(false);
  const { plant, bar, version } = address;
  useEffect(() => {
    let dropped = false;
    const slow = setTimeout(() => setWaiting(true), 400);
    const say = (next: Opened) => {
      clearTimeout(slow);
      if (dropped) return;
      setWaiting(false);
      setOpened(next);
    };
    const run = async () => {
      if (!plant) {
        const first = newestOf(await listPlants());
        if (!first)
          return say({
            state: 'refused',
            message: 'There is no plant yet. Start Barwright with an empty data folder and it brings the examples.',
          });
        const { bars } = await getPlant(first.id);
        if (!dropped) go({ plant: first.id, bar: bars[0]?.slug ?? 'bar' }, true);
        return;
      }
      if (!bar) {
        const { bars } = await getPlant(plant);
        if (!dropped) go({ bar: bars[0]?.slug ?? 'bar' }, true);
        return;
      }
      const [detail, definition] = await Promise.all([getPlant(plant), getDefinition(plant, version ?? 'latest')]);
      if (dropped) return;
      const { changes } = address;
      await sheet.open(definition.wire, definition.version, bar, currentPrefs().units, changes);
      say({ state: 'open', plant: detail, version: definition.version, wire: definition.wire });
    };
    run().catch((error: Error) =>
      say({ state: 'refused', message: error instanceof Refused || 'code' in error ? error.message : `Cannot open it: ${error.message}` }),
    );
    return () => {
      clearTimeout(slow);
      dropped = true;
    };
    // The changes of an address count when it is opened, not while a hand pulls.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [sheet, plant, bar, version, again]);
  return [opened, useCallback(() => setAgain((n) => n + 1), []), waiting];
}
