import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { afterEach } from 'vitest';
import { closeStore, openStore, type Store } from '../src/index.js';

const folders: string[] = [];
const stores: Store[] = [];

afterEach(async () => {
  for (const store of stores.splice(0)) await closeStore(store);
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** An empty folder that goes away after the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'barwright-store-'));
  folders.push(folder);
  return folder;
}

/** A real database in a temporary folder, closed after the test. */
export async function openTemporary(folder = emptyFolder()): Promise<Store> {
  const store = await openStore(folder);
  stores.push(store);
  return store;
}

/** Changes the database as a stranger with another tool would: past our code and without the triggers. */
export function tamper(store: Store, ...statements: string[]): void {
  const raw = new Database(store.file);
  raw.exec('pragma foreign_keys = off');
  const triggers = raw.prepare("select name, sql from sqlite_master where type = 'trigger'").all() as { name: string; sql: string }[];
  for (const { name } of triggers) raw.exec(`drop trigger ${name}`);
  for (const statement of statements) raw.exec(statement);
  for (const { sql } of triggers) raw.exec(sql);
  raw.close();
}

export const files = (entries: Record<string, string>): ReadonlyMap<string, string> => new Map(Object.entries(entries));
export const who = { author: 'A. Tester', reason: 'to see' };
