import type { Root } from '@barwright/chain';
import { fromInside, type Entered, type Plant } from '@barwright/plant';
import { withOthersGivingWay } from './charge.js';
import type { Engine } from './engine.js';
import type { Edits, FileEdit } from './protocol.js';
import { capital } from './words.js';

/** What was pulled, as it would be written into the files of the definition: the number changes, tolerance and unit stay. */
export function editsOf(engine: Engine): Edits {
  const { from, truth } = engine;
  const written = enteredByPlace(from.plant);
  const edits: FileEdit[] = [];
  const left: string[] = [];
  for (const [id, value] of [...withOthersGivingWay(from, truth, engine.changes), ...aimThatFollows(engine)]) {
    const root = from.chain.roots[from.chain.index.get(id)!];
    if (!root) continue;
    const entered = root.place === undefined ? undefined : find(written.get(root.place) ?? [], root);
    const text = entered && rewritten(entered, value, truth.number(id));
    if (!entered?.path || text === undefined) left.push(`${capital(root.meaning)} has no place of its own in the files.`);
    else
      edits.push({ file: entered.place.replace(/:\d+$/, ''), path: entered.path, value: text, was: entered.text, meaning: root.meaning });
  }
  return { edits, left };
}

/** A definition whose layers make another mass than the one aimed at is refused: the aim goes with the mass that was pulled. */
function aimThatFollows({ from, truth, session, changes, knobs }: Engine): readonly (readonly [id: string, value: number])[] {
  const rest = [...from.bar.layers, ...(from.bar.coat ? [from.bar.coat] : [])].some(({ amount }) => amount.by === 'rest');
  if (rest || changes.has('bar.target') || ![...changes.keys()].some((id) => knobs.moves(id, 'bar.mass'))) return [];
  const followed = Math.abs(truth.number('bar.mass') - truth.number('bar.target')) < 1e-6;
  return followed && session.status('bar.mass').ok ? [['bar.target', session.number('bar.mass')]] : [];
}

/** Every number the plant wrote down, by file and line. */
function enteredByPlace(plant: Plant): ReadonlyMap<string, readonly Entered[]> {
  const found = new Map<string, Entered[]>();
  const seen = new Set<object>();
  const walk = (value: unknown) => {
    if (typeof value !== 'object' || value === null || value instanceof Float64Array || seen.has(value)) return;
    seen.add(value);
    if (value instanceof Map) return void [...value.values()].forEach(walk);
    if (Array.isArray(value)) return void value.forEach(walk);
    const entered = value as Partial<Entered>;
    if (typeof entered.value === 'number' && typeof entered.text === 'string' && entered.place !== undefined) {
      found.set(entered.place, [...(found.get(entered.place) ?? []), entered as Entered]);
    }
    Object.values(value).forEach(walk);
  };
  walk(plant);
  return found;
}

/** The number behind a root: the one on its line with its value; of several, the one whose key the id names. */
function find(there: readonly Entered[], root: Root): Entered | undefined {
  const equal = there.filter(({ value }) => value === root.value);
  if (equal.length < 2) return equal[0];
  const words = new Set(root.id.split(/[._]/));
  const score = ({ path }: Entered) =>
    (path ?? []).filter((key) =>
      String(key)
        .split(/[ -]/)
        .some((word) => words.has(word)),
    ).length;
  return [...equal].sort((a, b) => score(b) - score(a))[0];
}

/**
 * The text of an entered number with another value: '9.5 % ± 0.4 %' becomes '9.3 % ± 0.4 %'. Limits and ranges, which state no
 * aim, become the plain value.
 * @returns undefined where the value cannot be written in the unit of the text
 */
export function rewritten(entered: Entered, value: number, was: number): string | undefined {
  const { text, unit, dimension, form } = entered;
  const shown =
    scaled(text, entered, value, was) ?? (dimension && !dimension.startsWith('money') ? fromInside(value, dimension, unit) : undefined);
  if (shown === undefined || !Number.isFinite(shown)) return undefined;
  const number = plain(shown);
  const keepsTail = form === undefined || form === 'value' || form === 'plus-minus';
  return keepsTail ? text.replace(leading, number) : `${number}${unit === '' ? '' : ` ${unit}`}`;
}

const leading = /[-−+]?\d[\d,\u2009\u202f]*(?:\.\d+)?/;

/** Most units are a factor: the written number changes as the value does. Temperatures have an offset and are converted instead. */
function scaled(text: string, { dimension }: Entered, value: number, was: number): number | undefined {
  if (dimension === 'temperature' || was === 0) return undefined;
  const number = Number(
    leading
      .exec(text)?.[0]
      ?.replace(/[,\u2009\u202f]/g, '')
      .replace('−', '-'),
  );
  return Number.isFinite(number) ? (number * value) / was : undefined;
}

/** Six significant digits, without zeros at the end and without an exponent. */
function plain(value: number): string {
  const digits = Math.max(0, Math.min(9, 5 - Math.floor(Math.log10(Math.abs(value) || 1))));
  return String(Number(value.toFixed(digits)));
}
