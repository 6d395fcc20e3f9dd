import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { existsSync } from 'node:fs';
import { Misused, type Out } from '../out.js';

interface ServeOptions {
  readonly port: string;
  readonly data?: string;
}

/** Serves until Ctrl-C. */
export async function serveCommand(options: ServeOptions, out: Out): Promise<void> {
  const port = Number(options.port);
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    throw new Misused(`--port is "${options.port}", but a number from 1 to 65535 is expected`);
  const root = projectRoot();
  const { plantFolders, serve } = await import('@barwright/server');
  const serving = await serve({
    port,
    ...(options.data ? { dataDir: options.data } : {}),
    webRoot: join(root, 'apps/web/dist'),
    plants: examples(join(root, 'examples'), plantFolders),
    say: out.line,
  });
  out.line(`Barwright is at ${serving.url}`);
  out.line(`Data are kept in ${serving.dataDir}. Ctrl-C ends it.`);
  await serving.closed;
}

/** The example plants, to start with when the store is empty; the demo plant last, since the screens open what was saved last. */
function examples(folder: string, find: (folder: string) => string[]): string[] {
  const demo = (path: string) => Number(path.endsWith('pellamoor'));
  return find(folder).sort((a, b) => demo(a) - demo(b));
}

/** The folder of the project, from wherever this file was built to. */
function projectRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'examples')) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}
