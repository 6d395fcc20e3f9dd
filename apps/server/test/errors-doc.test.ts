import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { storeErrorCodes } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { serverErrorCodes } from '../src/errors.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/errors.md'), 'utf8');
/** Codes of definitions are compared by the package that says them; its two thrown ones stand below that table. */
const beyondDefinitions = page.slice(page.indexOf('Thrown by functions of the same package'));
const codesIn = (text: string) => new Set([...text.matchAll(/`([A-Z][A-Z_]{3,})`/g)].map((match) => match[1]!));
const listed = codesIn(beyondDefinitions);

/** Words in capitals that are no codes of ours. */
const others =
  /^(SQLITE_\w+|ENOENT|EISDIR|ENOTDIR|EACCES|EPERM|EADDRINUSE|EPIPE|SIGINT|SIGTERM|NO_COLOR|BARWRIGHT_DEBUG|HEAD|NFKD|SAMEORIGIN|ABCDEFGHJKLMNPQR)$/;

/** Codes as the sources of a package write them: words in capitals between quotes. */
function written(folder: string): string[] {
  const files = readdirSync(join(root, folder), { recursive: true, withFileTypes: true }).filter(
    (entry) => entry.isFile() && /\.tsx?$/.test(entry.name),
  );
  const words = files.flatMap((entry) =>
    [...readFileSync(join(entry.parentPath, entry.name), 'utf8').matchAll(/'([A-Z][A-Z_]{3,})'/g)].map((match) => match[1]!),
  );
  return words.filter((word) => !others.test(word));
}
const packages = ['chain', 'science', 'bar', 'line', 'drawing', 'paper', 'store'].map((name) => `packages/${name}/src`);
const ours = new Set([...storeErrorCodes, ...serverErrorCodes, ...[...packages, 'apps/server/src', 'apps/cli/src'].flatMap(written)]);
const definitions = new Set(written('packages/plant/src'));

describe('docs/errors.md', () => {
  it('lists every code of chain, models, bar, line, drawing, store and server', () => {
    expect(ours.size).toBeGreaterThan(80);
    expect([...ours].filter((code) => !listed.has(code))).toEqual([]);
  });

  it('lists no code that the sources do not have', () => {
    expect([...listed].filter((code) => !ours.has(code) && !definitions.has(code))).toEqual([]);
  });

  it('says of each code what it means and what to do', () => {
    const rows = [...page.matchAll(/^\| `[A-Z_]+` \|(.*)$/gm)].map((match) => match[1]!.split('|').map((cell) => cell.trim()));
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.filter(([meaning, advice]) => !meaning?.endsWith('.') || !advice?.endsWith('.'))).toEqual([]);
  });
});
