import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { storeErrorCodes } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { serverErrorCodes } from '../src/errors.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/errors.md'), 'utf8');
const beyondDefinitions = page.slice(page.indexOf('## The chain'));
const listed = new Set([...beyondDefinitions.matchAll(/`([A-Z][A-Z_]+)`/g)].map((match) => match[1]!));

/** Codes as the sources of a package write them. */
function written(folder: string): string[] {
  const files = readdirSync(join(root, folder), { recursive: true, withFileTypes: true }).filter(
    (entry) => entry.isFile() && /\.ts$/.test(entry.name),
  );
  return files.flatMap((entry) =>
    [...readFileSync(join(entry.parentPath, entry.name), 'utf8').matchAll(/\bcode(?:: | = )'([A-Z][A-Z_]+)'/g)].map((match) => match[1]!),
  );
}
const chainUnion = [...readFileSync(join(root, 'packages/chain/src/errors.ts'), 'utf8').matchAll(/\| '([A-Z_]+)'/g)].map(
  (match) => match[1]!,
);
const ours = new Set([
  ...chainUnion,
  ...storeErrorCodes,
  ...serverErrorCodes,
  ...['chain', 'bar', 'line', 'drawing'].flatMap((name) => written(`packages/${name}/src`)),
]);

describe('docs/errors.md', () => {
  it('lists every code of chain, bar, line, drawing, store and server', () => {
    expect([...ours].filter((code) => !page.includes(`\`${code}\``))).toEqual([]);
  });

  it('lists no code that the sources do not have', () => {
    const sources = ['packages', 'apps'].flatMap((top) =>
      readdirSync(join(root, top)).flatMap((name) => (name === 'web' ? [] : [`${top}/${name}/src`])),
    );
    const text = sources
      .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
      .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))
      .join('\n');
    expect([...listed].filter((code) => !text.includes(code))).toEqual([]);
  });
});
