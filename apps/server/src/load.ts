import type { Edit, Loaded, Plant, Problem } from '@barwright/plant';
import { ServerError } from './errors.js';

/**
 * Reads files as a plant.
 * @throws ServerError DEFINITION_INVALID with the list of problems
 */
export async function requirePlantFiles(files: ReadonlyMap<string, string>): Promise<{ plant: Plant; notes: readonly Problem[] }> {
  const { loadPlant } = await import('@barwright/plant');
  return requireLoaded(loadPlant(files));
}

/** @throws ServerError DEFINITION_INVALID with the list of problems */
export function requireLoaded(loaded: Loaded): { plant: Plant; notes: readonly Problem[] } {
  if (loaded.ok) return loaded;
  const { problems } = loaded;
  const first = problems[0];
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
  const detail = first ? `${first.file}:${first.line}: ${first.message}${more}` : 'The files are not a plant';
  throw new ServerError('DEFINITION_INVALID', `Nothing was saved. ${detail}`, { problems });
}

/** Single values put into the texts, the rest to the letter. @throws EditError for a file or place that is not there */
export async function editedFiles(files: ReadonlyMap<string, string>, edits: readonly Edit[]): Promise<ReadonlyMap<string, string>> {
  const { editPlant } = await import('@barwright/plant');
  return editPlant(files, edits);
}
