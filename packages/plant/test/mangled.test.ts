import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { loadPlant, plantLoader, problemCodes } from '../src/index.js';
import { exampleFiles } from './folder.js';
import { smallest } from './smallest.js';

/** Remembers the files that are whole, so that ten thousand mangled ones are read in seconds; load.test.ts shows that the answers are the same. */
const load = plantLoader();

/** Whatever stands in the files: an answer, never a throw; whole or not at all; every problem with a file and a line that are there. */
function mustAnswer(files: ReadonlyMap<string, string>): boolean {
  const loaded = load(files);
  if (loaded.ok) {
    expect(loaded.plant.materials).toBeInstanceOf(Map);
    for (const { stages } of loaded.plant.components.values())
      for (const { adds } of stages) for (const { share } of adds) expect(share.value).toBeGreaterThanOrEqual(0);
    return true;
  }
  expect(loaded.problems.length).toBeGreaterThan(0);
  for (const problem of loaded.problems) {
    expect(Object.keys(problemCodes)).toContain(problem.code);
    if (problem.code === 'UNEXPECTED') throw new Error(problem.message);
    expect(files.has(problem.file) || problem.code === 'PLANT_MISSING', problem.file).toBe(true);
    const lines = (files.get(problem.file) ?? '').split('\n').length;
    expect(problem.line >= 1 && problem.line <= lines, `${problem.file}:${problem.line} of ${lines}`).toBe(true);
    expect(problem.message).not.toMatch(/undefined|\[object|NaN %/);
  }
  return false;
}

const file = fc.constantFrom(...smallest.keys());
const odd = fc.constantFrom(
  '\t', '\u0000', '\ufffd', '\ufeff', '&a', '*a', '<<: *a', '- ', '? ', '{', '}', '[', ']', '"', "'", '#', '|', '>', '---', '...', '!!binary', '!x', '%', '@', ': ', '\r', '💥',
  '1e999', '99999999999999999999999', '-1', '.nan', '-.inf', '0x1F', '1_000', '48,7', 'null', '~', 'true', 'constructor', '__proto__: 1', 'g', '°C', ' ± ', ' to ', ' of made', 'rest', 'bar',
); // prettier-ignore

/** Changes of the text, line by line and letter by letter. */
const textChange = fc.record({
  kind: fc.constantFrom('delete line', 'double line', 'swap lines', 'insert', 'replace', 'cut off', 'indent', 'shuffle words'),
  at: fc.nat(),
  other: fc.nat(),
  put: fc.oneof(odd, fc.string({ maxLength: 8 }), fc.string({ unit: 'binary', maxLength: 4 })),
});
type TextChange = typeof textChange extends fc.Arbitrary<infer T> ? T : never;

function mangle(text: string, { kind, at, other, put }: TextChange): string {
  const lines = text.split('\n');
  const line = at % lines.length;
  const letter = at % (text.length + 1);
  if (kind === 'delete line') return lines.toSpliced(line, 1).join('\n');
  if (kind === 'double line') return lines.toSpliced(line, 0, lines[line]!).join('\n');
  if (kind === 'swap lines')
    return lines
      .map((one, index) => (index === line ? lines[other % lines.length]! : index === other % lines.length ? lines[line]! : one))
      .join('\n');
  if (kind === 'insert') return text.slice(0, letter) + put + text.slice(letter);
  if (kind === 'replace') return text.slice(0, letter) + put + text.slice(letter + (other % 6));
  if (kind === 'cut off') return text.slice(0, letter);
  if (kind === 'indent')
    return lines.with(line, `${' '.repeat(other % 5)}${other % 7 === 0 ? '\t' : ''}${lines[line]!.trimStart()}`).join('\n');
  const words = text.split(' ');
  return words.with(at % words.length, words[other % words.length]!).join(' ');
}

/** Values that a tree may carry where another was. */
const oddValue = fc.constantFrom<unknown>(
  null, true, -1, 0, 1e308, Number.NaN, Number.POSITIVE_INFINITY, '', ' ', 'NaN g', '-5 g', '5 °C', '5 %', '101 %', '1e300 kg', '5 parsec', '48,7 g', '≤ 5 g', '5 g ± 9 g', '9 g to 5 g', 'rest', 'fudge', 'sugar', 'bar', 'mix', 'boil',
  [], {}, [[]], [null], { value: '5 g' }, { aim: '5 g', low: '6 g' }, { value: null }, { low: '1 g', high: '2 g' }, { standing: 'rumour' }, 'x'.repeat(300), '__proto__', 'toString',
); // prettier-ignore

const treeChange = fc.record({
  kind: fc.constantFrom('remove', 'put', 'rename', 'double', 'wrap'),
  at: fc.nat(),
  value: oddValue,
  name: fc.constantFrom('fudge', 'sugar', 'constructor', 'name', 'of', 'x', '—', 'FUDGE'),
});
type TreeChange = typeof treeChange extends fc.Arbitrary<infer T> ? T : never;

/** Every place in a tree where something hangs on a mapping or a list. */
function places(tree: unknown): { parent: Record<string, unknown>; key: string }[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const parent = tree as Record<string, unknown>;
  return Object.keys(parent).flatMap((key) => [{ parent, key }, ...places(parent[key])]);
}

function mangleTree(text: string, changes: readonly TreeChange[]): string {
  const tree: unknown = parse(text);
  for (const { kind, at, value, name } of changes) {
    const all = places(tree);
    if (all.length === 0) break;
    const { parent, key } = all[at % all.length]!;
    const old = parent[key];
    if (kind === 'remove') delete parent[key];
    else if (kind === 'put') parent[key] = structuredClone(value);
    else if (kind === 'wrap') parent[key] = at % 2 === 0 ? [old] : { value: old };
    else if (Array.isArray(parent)) parent.push(structuredClone(old));
    else if (kind === 'rename') {
      delete parent[key];
      parent[name] = old;
    } else parent[name] = structuredClone(old);
  }
  return stringify(tree);
}

describe('mangled definitions', () => {
  it('are answered when their text is mangled: 5,000 of them', () => {
    let good = 0;
    fc.assert(
      fc.property(file, fc.array(textChange, { minLength: 1, maxLength: 3 }), (name, changes) => {
        const text = changes.reduce(mangle, smallest.get(name)!);
        if (mustAnswer(new Map(smallest).set(name, text))) good++;
      }),
      { numRuns: 5000 },
    );
    // Both answers must come, or the test would prove little.
    expect(good).toBeGreaterThan(50);
    expect(good).toBeLessThan(4500);
  }, 120_000);

  it('are answered when their trees are mangled: 5,000 of them', () => {
    let good = 0;
    fc.assert(
      fc.property(file, fc.array(treeChange, { minLength: 1, maxLength: 3 }), (name, changes) => {
        if (mustAnswer(new Map(smallest).set(name, mangleTree(smallest.get(name)!, changes)))) good++;
      }),
      { numRuns: 5000 },
    );
    expect(good).toBeGreaterThan(50);
    expect(good).toBeLessThan(4500);
  }, 120_000);

  it('are answered when files are missing, empty, or in each other’s place', () => {
    fc.assert(
      fc.property(fc.subarray([...smallest.keys()]), fc.subarray([...smallest.keys()]), file, (gone, empty, other) => {
        const files = new Map(smallest);
        for (const name of empty) files.set(name, files.get(other)!);
        for (const name of gone) files.delete(name);
        mustAnswer(files);
      }),
      { numRuns: 300 },
    );
  }, 120_000);

  it('are answered in the demo plant too', async () => {
    const files = await exampleFiles('pellamoor');
    fc.assert(
      fc.property(fc.constantFrom(...files.keys()), textChange, (name, change) => {
        mustAnswer(new Map(files).set(name, mangle(files.get(name)!, change)));
      }),
      { numRuns: 150 },
    );
  }, 120_000);

  it('with recipes in a ring of any length are refused', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (length) => {
        const ring = Array.from(
          { length },
          (_, i) => `  c${i}:\n    texture: x\n    stages: [{ stage: a, does: mix, add: { c${(i + 1) % length}: 100 % } }]\n`,
        ).join('');
        const loaded = loadPlant(new Map(smallest).set('components.yaml', `${smallest.get('components.yaml')}${ring}`));
        expect(loaded.ok ? [] : loaded.problems.filter(({ code }) => code === 'COMPONENT_CYCLE')).toHaveLength(1);
      }),
      { numRuns: 30 },
    );
  });

  it('do not hang: thousands of components in a chain, of keys, of items, of brackets', () => {
    const chain = Array.from(
      { length: 3000 },
      (_, i) => `  c${i}:\n    texture: x\n    stages: [{ stage: a, does: mix, add: { ${i === 0 ? 'sugar' : `c${i - 1}`}: 100 % } }]\n`,
    ).join('');
    expect(mustAnswer(new Map(smallest).set('components.yaml', `${smallest.get('components.yaml')}${chain}`))).toBe(true);
    const keys = Array.from({ length: 20_000 }, (_, i) => `k${i}: 1\n`).join('');
    expect(mustAnswer(new Map(smallest).set('checks.yaml', keys))).toBe(false);
    expect(mustAnswer(new Map(smallest).set('checks.yaml', `format: 1\nchecks:\n${'  - x\n'.repeat(20_000)}`))).toBe(false);
    expect(mustAnswer(new Map(smallest).set('checks.yaml', `format: 1\nchecks: ${'['.repeat(5000)}`))).toBe(false);
    expect(mustAnswer(new Map(smallest).set('checks.yaml', `format: 1\nchecks: ${'{a: '.repeat(5000)}`))).toBe(false);
    expect(mustAnswer(new Map(smallest).set('checks.yaml', `format: 1\nx: "${'\\u00e9'.repeat(100_000)}"`))).toBe(false);
  }, 120_000);
});
