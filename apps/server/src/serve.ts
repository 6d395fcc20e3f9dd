import type { AddressInfo } from 'node:net';
import { homedir } from 'node:os';
import { closeStore, openStore } from '@barwright/store';
import type { FastifyInstance } from 'fastify';
import { dataFolder, refuseSourceTree } from './data-folder.js';
import { openDefinitions } from './definitions.js';
import { ServerError } from './errors.js';
import { importOnFirstRun } from './examples.js';
import { firstFrames } from './first-frame.js';
import { createServer, type ServerOptions } from './server.js';

export interface ServeOptions extends Omit<ServerOptions, 'store' | 'log'> {
  /** Left out: this user's data folder, or the one that BARWRIGHT_DATA names. */
  readonly dataDir?: string;
  /** The first port to try; 0 lets the system choose. */
  readonly port?: number;
  /** This machine only, unless the caller decides otherwise and protects it. */
  readonly host?: string;
  /** Folders of plants: to start with when the store is empty, and for the logs of their days. */
  readonly plants?: readonly string[];
  /** Where to tell the person at the terminal what happens. */
  readonly say?: (line: string) => void;
  readonly log?: (line: string) => void;
}

export interface Serving {
  readonly url: string;
  readonly port: number;
  readonly dataDir: string;
  /** Stops listening, ends open requests within half a second, closes the store. May be called twice. */
  readonly close: () => Promise<void>;
  /** Resolves when it has closed. */
  readonly closed: Promise<void>;
}

export const defaultPort = 4820;
/** Ports to try after the first. */
const further = 20;
/** Milliseconds that open requests have to end by themselves. */
const grace = 500;

/**
 * Opens the store, listens, and ends cleanly on Ctrl-C or a terminate signal.
 * @throws StoreError when the data folder cannot be used; ServerError NO_FREE_PORT, DATA_FOLDER_IN_SOURCE
 */
export async function serve(options: ServeOptions = {}): Promise<Serving> {
  const say = options.say ?? ((line: string) => console.log(line));
  const dataDir = options.dataDir ?? dataFolder(process.env, process.platform, homedir());
  refuseSourceTree(dataDir);
  const store = await openStore(dataDir);
  let app: FastifyInstance | undefined;
  try {
    const added = await importOnFirstRun(store, options.plants ?? [], say);
    if (added.length > 0) say(`First run: added the example plants ${added.join(', ')}`);
    const staticFirstFrame = options.staticFirstFrame ?? firstFrames(store, openDefinitions(store));
    app = await createServer({ ...options, store, staticFirstFrame });
    const port = await listen(app, options.host ?? '127.0.0.1', options.port ?? defaultPort, say);
    // While the browser opens, the loader comes into memory, so that the first definition does not wait for it.
    setImmediate(() => void import('@barwright/plant').catch(() => undefined));
    return running(app, port, dataDir, options.host ?? '127.0.0.1', () => closeStore(store));
  } catch (error) {
    await app?.close();
    await closeStore(store);
    throw error;
  }
}

/** Listens on the first free port from `first` on and tells when it was not the first. */
async function listen(app: FastifyInstance, host: string, first: number, say: (line: string) => void): Promise<number> {
  await app.ready();
  const last = first === 0 ? 0 : Math.min(first + further, 65_535);
  for (let port = first; port <= last; port++) {
    try {
      await app.listen({ host, port });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
      continue;
    }
    const taken = (app.server.address() as AddressInfo).port;
    if (first !== 0 && taken !== first) say(`Port ${first} is taken; using ${taken}`);
    return taken;
  }
  throw new ServerError('NO_FREE_PORT', `Ports ${first} to ${last} are all taken; name another one`);
}

function running(app: FastifyInstance, port: number, dataDir: string, host: string, closeData: () => Promise<void>): Serving {
  let closing: Promise<void> | undefined;
  let done!: () => void;
  const closed = new Promise<void>((resolve) => (done = resolve));
  const close = (): Promise<void> =>
    (closing ??= (async () => {
      for (const signal of signals) process.off(signal, onSignal);
      const cut = setTimeout(() => app.server.closeAllConnections(), grace);
      await app.close();
      clearTimeout(cut);
      await closeData();
      done();
    })());
  const onSignal = (): void => void close();
  for (const signal of signals) process.on(signal, onSignal);
  return { url: `http://${host.includes(':') ? `[${host}]` : host}:${port}`, port, dataDir, close, closed };
}

const signals = ['SIGINT', 'SIGTERM'] as const;
