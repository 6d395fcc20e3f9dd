import { lstat, readdir, readFile, realpath, stat } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import type { ProblemCode } from './codes.js';

/** Nothing larger is a plant. */
export const folderLimits = { bytes: 5_000_000, files: 500 };

/** A folder that cannot be read as a plant; `file` is the path within it. */
export class PlantFolderError extends Error {
  constructor(
    readonly code: ProblemCode,
    readonly file: string,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Reads the definition files of a plant folder: *.yaml and *.yml at the top, in bars/ and in lines/. Nothing else is opened.
 * @returns path within the folder, with forward slashes → text, ready for loadPlant
 * @throws PlantFolderError with code PLANT_MISSING, NOT_READABLE, FILE_TOO_LARGE, TOO_MANY_FILES, NOT_UTF8 or LINK_OUTSIDE
 */
export async function readPlantFolder(dir: string): Promise<ReadonlyMap<string, string>> {
  const root = await readable('', () => realpath(resolve(dir)), `The folder '${dir}' cannot be read`);
  if (!(await stat(root)).isDirectory()) throw new PlantFolderError('NOT_READABLE', '', `'${dir}' is not a folder`);
  const names: string[] = [];
  for (const folder of ['', 'bars', 'lines']) {
    for (const name of await yamlNames(root, folder)) names.push(folder === '' ? name : `${folder}/${name}`);
    if (names.length > folderLimits.files)
      throw new PlantFolderError('TOO_MANY_FILES', folder, `More than ${folderLimits.files} definition files in '${dir}'`);
  }
  if (!names.some((name) => /^plant\.ya?ml$/.test(name)))
    throw new PlantFolderError('PLANT_MISSING', 'plant.yaml', `'${dir}' is not a plant: it has no plant.yaml`);
  const files = new Map<string, string>();
  for (const name of names) files.set(name, await readText(root, name));
  return files;
}

async function yamlNames(root: string, folder: string): Promise<string[]> {
  const at = join(root, folder);
  if (folder !== '') {
    const found = await lstat(at).catch(() => undefined);
    if (!found) return [];
    await refuseOutside(root, folder);
    if (!(await stat(at)).isDirectory()) return [];
  }
  const entries = await readable(folder, () => readdir(at), `The folder '${folder || '.'}' cannot be read`);
  return entries.filter((name) => /\.ya?ml$/i.test(name)).sort();
}

async function readText(root: string, name: string): Promise<string> {
  await refuseOutside(root, name);
  const path = join(root, name);
  const found = await readable(name, () => stat(path), `'${name}' cannot be read`);
  if (!found.isFile()) throw new PlantFolderError('NOT_READABLE', name, `'${name}' is not a file`);
  if (found.size > folderLimits.bytes)
    throw new PlantFolderError('FILE_TOO_LARGE', name, `'${name}' has ${found.size} bytes; a definition has at most ${folderLimits.bytes}`);
  const bytes = await readable(name, () => readFile(path), `'${name}' cannot be read`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new PlantFolderError('NOT_UTF8', name, `'${name}' is not UTF-8 text; save it as UTF-8`);
  }
}

/** A link may point within the plant folder, never out of it. */
async function refuseOutside(root: string, name: string): Promise<void> {
  const real = await readable(name, () => realpath(join(root, name)), `'${name}' leads nowhere`);
  const within = relative(root, real);
  if (within === '..' || within.startsWith(`..${sep}`) || resolve(within) === within)
    throw new PlantFolderError('LINK_OUTSIDE', name, `'${name}' is a link out of the plant folder; copy the file instead`);
}

async function readable<T>(file: string, act: () => Promise<T>, message: string): Promise<T> {
  try {
    return await act();
  } catch (cause) {
    const why = cause instanceof Error && 'code' in cause ? ` (${String(cause.code)})` : '';
    throw new PlantFolderError('NOT_READABLE', file, `${message}${why}`);
  }
}

export { schemaTexts, writeJsonSchemas } from './schemas.js';
