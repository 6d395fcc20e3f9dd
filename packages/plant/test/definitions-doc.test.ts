import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { dimensionNames, dimensions, jsonSchemas, parseQuantity } from '../src/index.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/definitions.md'), 'utf8');
const prose = page.replaceAll(/```[^]*?```/g, '');
const excerpts = [...page.matchAll(/```yaml\n([^]*?)```/g)].map((match) => match[1]!);
const examples = readdirSync(join(root, 'examples'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.yaml'))
  .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'));

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema | readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly additionalProperties?: Schema | boolean;
}
/** Every key that may stand in a file, and whether it must. */
function keysOf(schema: Schema): { key: string; must: boolean }[] {
  const { properties = {}, required = [], items = [], anyOf = [], additionalProperties } = schema;
  const own = Object.keys(properties).map((key) => ({ key, must: required.includes(key) }));
  const named = typeof additionalProperties === 'object' ? [additionalProperties] : [];
  return [...own, ...[...Object.values(properties), ...[items].flat(), ...anyOf, ...named].flatMap(keysOf)];
}
const keys = Object.entries(jsonSchemas() as Record<string, Schema>).flatMap(([file, schema]) =>
  keysOf(schema).map(({ key, must }) => ({ file, key, must })),
);

describe('docs/definitions.md', () => {
  it('says what every key means', () => {
    expect(keys.length).toBeGreaterThan(150);
    expect(keys.filter(({ key }) => key !== 'format' && !prose.includes(`\`${key}\``))).toEqual([]);
  });

  it('stars each key that must stand', () => {
    expect(keys.filter(({ key, must }) => must && key !== 'format' && !prose.includes(`\`${key}\` *`))).toEqual([]);
  });

  it.each(excerpts.map((text) => [text.trim().split(/[:\n]/, 1)[0]!, text]))('shows %s as it stands in an example', (_, text) => {
    expect(examples.some((example) => example.includes(text))).toBe(true);
  });

  it('writes values that are read', () => {
    const table = prose.slice(prose.indexOf('| Written |'), prose.indexOf('In place of any value'));
    const written = [...table.matchAll(/^\| (.*?) \|/gm)].slice(2).flatMap(([, cell]) => [...cell!.matchAll(/`([^`]+)`/g)]);
    expect(written.length).toBeGreaterThan(12);
    expect(written.filter(([, value]) => !parseQuantity(value!, 'any').ok).map(([, value]) => value)).toEqual([]);
  });

  it('names units that there are', () => {
    const table = prose.slice(prose.indexOf('| Units of |'), prose.indexOf('## plant.yaml'));
    const cells = [...table.matchAll(/\| ([^|]*) \|$/gm)].map((match) => match[1]!).filter((cell) => !/^ *-|per time/.test(cell));
    const named = cells.flatMap((cell) => cell.match(/`[^`]+`|[^\s·,…]+(?:·s)?/g) ?? []).map((unit) => unit.replaceAll('`', ''));
    const words = new Set(['a', 'mass', 'per', 'volume', 'area']);
    const known = new Set(dimensionNames.flatMap((name) => [...dimensions[name].units.keys()]));
    expect(named.length).toBeGreaterThan(60);
    expect(named.filter((unit) => !words.has(unit) && !known.has(unit))).toEqual([]);
  });
});
