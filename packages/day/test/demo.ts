import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Session } from '@barwright/chain';
import { plantChain, rowsOfText, type PlantChain } from '@barwright/line';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { dayLogs, type DayLogs } from '../src/index.js';

const examples = new URL('../../../examples/', import.meta.url);

/** An example plant as the chain of its bar, and a session on it. */
export async function openExample(name: string): Promise<{ readonly from: PlantChain; readonly session: Session }> {
  const loaded = loadPlant(await readPlantFolder(fileURLToPath(new URL(name, examples))));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  const from = plantChain(loaded.plant);
  return { from, session: new Session(from.chain) };
}

/** Rows of a file of the demo day. */
export function demoRows(file: string): readonly (readonly string[])[] {
  return rowsOfText(readFileSync(new URL(`pellamoor/days/2026-03-17/${file}`, examples), 'utf8'), file);
}

export const demoFile = (name: string) => ({ name, rows: demoRows(name) });

/** Counts, pallets and stops of the demo day. */
export function demoLogs(): DayLogs {
  return dayLogs({ flow: demoFile('flow_5min.csv'), pallets: demoFile('pallets.csv'), stops: demoFile('stops.csv') });
}

/** A time of the demo day, s: '13:05'; hours above 23 are of the night after. */
export function at(text: string): number {
  const [hour, minute] = text.split(':').map(Number);
  return Date.UTC(2026, 2, 17, hour, minute) / 1000;
}

export const names = (pallets: readonly { readonly name: string }[]) => pallets.map(({ name }) => name);

/** P018 … P029 */
export const run = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => `P${String(from + i).padStart(3, '0')}`);
