import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/glossary.md'), 'utf8');
const words = [...page.matchAll(/^\| (?!word )([^|-][^|]*?) \|/gm)].flatMap((match) => match[1]!.split(', '));
const folders = ['packages', 'apps'].flatMap((top) => readdirSync(join(root, top)).map((name) => `${top}/${name}/src`));
const product = [...folders, 'examples']
  .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
  .filter((entry) => entry.isFile() && /\.(tsx?|ya?ml)$/.test(entry.name))
  .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))
  .join('\n')
  .toLowerCase()
  .replaceAll(/[\s_-]+/g, ' ');

describe('docs/glossary.md', () => {
  it('explains each word once', () => {
    expect(words.length).toBeGreaterThan(100);
    expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([]);
  });

  it('explains words that the product uses', () => {
    expect(words.filter((word) => !product.includes(word.toLowerCase().replaceAll(/[\s_-]+/g, ' ')))).toEqual([]);
  });

  it('has symbol, unit and meaning for each', () => {
    const rows = page.split('\n').filter((line) => line.startsWith('| '));
    expect(rows.filter((row) => row.split('|').length !== 6 || row.split('|')[4]!.trim() === '')).toEqual([]);
  });
});
