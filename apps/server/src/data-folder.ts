import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { ServerError } from './errors.js';

/** Where this user's data live, by the custom of the system. `BARWRIGHT_DATA` names another folder. */
export function dataFolder(env: Readonly<Record<string, string | undefined>>, platform: NodeJS.Platform, home: string): string {
  if (env.BARWRIGHT_DATA) return resolve(env.BARWRIGHT_DATA);
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Barwright');
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'Barwright');
  // The standard for base directories ignores a relative path.
  const shared = env.XDG_DATA_HOME?.startsWith('/') ? env.XDG_DATA_HOME : join(home, '.local', 'share');
  return join(shared, 'barwright');
}

/**
 * A plant's history must not lie where a clean checkout would remove it.
 * @throws ServerError DATA_FOLDER_IN_SOURCE
 */
export function refuseSourceTree(folder: string): void {
  for (let at = resolve(folder); ; at = dirname(at)) {
    const manifest = join(at, 'package.json');
    if (existsSync(manifest) && /"name":\s*"barwright"/.test(readFileSync(manifest, 'utf8'))) {
      throw new ServerError(
        'DATA_FOLDER_IN_SOURCE',
        `The data folder ${folder} lies inside the program's own folder ${at}; name one outside`,
      );
    }
    if (at === dirname(at)) return;
  }
}
