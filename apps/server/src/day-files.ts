import { lstat, readdir, readFile, realpath } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { idFromName } from '@barwright/store';
import { ServerError } from './errors.js';

/** Files of one day, as they lie in `days/<date>` of a plant's folder. */
export interface Day {
  /** ISO 8601 date. */
  readonly date: string;
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
}

/** What instruments and people left on a day; read only. */
export interface DayFiles {
  /** Newest day first; empty for a plant that has no folder here. */
  readonly days: (plant: string) => Promise<readonly Day[]>;
  /** @throws ServerError NOT_FOUND */
  readonly read: (plant: string, date: string, name: string) => Promise<Buffer>;
}

/** Nothing larger is sent to a screen. */
const largest = 50_000_000;
const isDate = (name: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(name);
const isTable = (name: string): boolean => /^[\w-][\w .-]*\.(csv|tsv|xlsx)$/i.test(name);

/**
 * Days of the plants whose folders are known. Only tables directly inside a day are listed and read; a link is not followed.
 * @param folders - plant folders, each named as its plant
 */
export function openDayFiles(folders: readonly string[]): DayFiles {
  const byPlant = new Map(folders.map((folder) => [idFromName(basename(folder)), join(folder, 'days')]));
  const filesOf = async (folder: string, date: string): Promise<Day['files']> => {
    const names = (await entries(join(folder, date))).filter(isTable).sort();
    const found = await Promise.all(names.map(async (name) => ({ name, about: await lstat(join(folder, date, name)) })));
    return found.flatMap(({ name, about }) => (about.isFile() && about.size <= largest ? [{ name, bytes: about.size }] : []));
  };
  return {
    days: async (plant) => {
      const folder = byPlant.get(plant);
      if (folder === undefined) return [];
      const dates = (await entries(folder)).filter(isDate).sort().reverse();
      const days = await Promise.all(dates.map(async (date) => ({ date, files: await filesOf(folder, date) })));
      return days.filter(({ files }) => files.length > 0);
    },
    read: async (plant, date, name) => {
      const folder = byPlant.get(plant);
      const known = folder !== undefined && isDate(date) && (await filesOf(folder, date)).some((file) => file.name === name);
      if (!known) throw new ServerError('NOT_FOUND', `${plant} has no file '${name}' on the day ${date}`);
      return readFile(join(folder, date, name));
    },
  };
}

/** Names in a folder that is no link; nothing where it is missing. */
async function entries(folder: string): Promise<string[]> {
  const about = await lstat(folder).catch(() => undefined);
  if (!about?.isDirectory()) return [];
  return readdir(await realpath(folder));
}
