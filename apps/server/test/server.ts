import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { closeStore, openStore, type Store } from '@barwright/store';
import type { FastifyInstance } from 'fastify';
import { afterEach } from 'vitest';
import { createServer, type ServerOptions } from '../src/index.js';

const undo: (() => Promise<void> | void)[] = [];

afterEach(async () => {
  for (const step of undo.splice(0).reverse()) await step();
});

/** Runs a step after the test, the last one first. */
export function afterwards(step: () => Promise<void> | void): void {
  undo.push(step);
}

/** An empty folder that goes away after the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'barwright-server-'));
  afterwards(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Running {
  readonly app: FastifyInstance;
  readonly store: Store;
  /** What went to the log. */
  readonly log: string[];
}

/** A server over a real database in a temporary folder; closed after the test. */
export async function start(options: Omit<ServerOptions, 'store' | 'log'> = {}): Promise<Running> {
  const store = await openStore(emptyFolder());
  afterwards(() => closeStore(store));
  const log: string[] = [];
  const app = await createServer({ ...options, store, log: (line) => log.push(line) });
  afterwards(() => app.close());
  return { app, store, log };
}
