import {
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  visit,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
} from 'yaml';
import { yamlOptions, type Path } from './read/tree.js';
import type { Place } from './types.js';

/** One value put in place of another: `value` as a person would write it, '9.3 % ± 0.4 %'. */
export interface Edit {
  readonly file: string;
  /** Keys from the root of the file, as in Entered.path. */
  readonly path: Path;
  readonly value: string;
}

/** An edit that names no file or no place in it. */
export class EditError extends Error {
  readonly code = 'EDIT_ERROR';
}

/** Where an object form keeps its number. */
const valueKeys = ['value', 'aim', 'amount', 'share'] as const;

/**
 * The files with some values changed; everything else, comments and columns included, stays as it was, to the letter.
 * A key that is not there yet is added at the end of its mapping. The result is not checked: load it before it is kept.
 *
 * @returns a new map; the given one is untouched
 * @throws EditError for a file that is not there, does not parse, or has no such place
 */
export function editPlant(files: ReadonlyMap<string, string>, edits: readonly Edit[]): ReadonlyMap<string, string> {
  const edited = new Map(files);
  for (const { file, path, value } of edits) {
    const text = edited.get(file);
    if (text === undefined) throw new EditError(`There is no file '${file}'`);
    edited.set(file, editText(file, text, path, value));
  }
  return edited;
}

function editText(file: string, text: string, path: Path, value: string): string {
  const where = `${file} at ${path.join(' › ')}`;
  const document = parsed(file, text);
  const found = document.getIn(path, true) as Node | null | undefined;
  const target = isMap(found) ? valueIn(found) : found;
  if (isAlias(target)) throw new EditError(`${where} repeats another value; edit that`);
  if (isScalar(target) && target.range) {
    const whole = `${value}${lossWords(String(target.value), value)}`;
    return replace(text, target.range[0], target.range[1], written(whole, insideFlow(document, target)));
  }
  if (target !== undefined && target !== null) throw new EditError(`${where} is not a single value`);
  const parent = path.length > 1 ? document.getIn(path.slice(0, -1), true) : document.contents;
  if (!isMap(parent) || parent.items.length === 0) throw new EditError(`${where} does not exist`);
  return add(text, document, parent, String(path.at(-1)), value);
}

function parsed(file: string, text: string): Document {
  const document = parseDocument(text, yamlOptions);
  if (document.errors[0]) throw new EditError(`${file} does not parse: ${document.errors[0].message}`);
  return document;
}

function valueIn(map: YAMLMap): Node | undefined {
  const key = valueKeys.find((name) => map.has(name));
  return key === undefined ? map : (map.get(key, true) as Node | undefined);
}

/** Of '1.5 % of made' the number is edited; what it is a share of stays. */
function lossWords(old: string, value: string): string {
  return / of /.test(value) ? '' : (/^[^a-z]+( of (?:made|on bars|what .*))$/.exec(old)?.[1] ?? '');
}

/** Puts text in place of text; a comment behind it keeps its column where there is room. */
function replace(text: string, from: number, to: number, put: string): string {
  const behind = text.slice(to);
  const grown = put.length - (to - from);
  const gap = /^( {2,})(?=#)/.exec(behind)?.[1]?.length;
  if (gap === undefined) return text.slice(0, from) + put + behind;
  return text.slice(0, from) + put + ' '.repeat(Math.max(2, gap - grown)) + behind.slice(gap);
}

function add(text: string, document: Document, parent: YAMLMap, key: string, value: string): string {
  const last = parent.items.at(-1) as Pair<Node, Node | null>;
  const name = written(key, true);
  if (parent.flow) {
    const end = last.value?.range?.[1] ?? last.key.range![1];
    return `${text.slice(0, end)}, ${name}: ${written(value, true)}${text.slice(end)}`;
  }
  const start = (parent.items[0] as Pair<Node, Node | null>).key.range![0];
  const indent = start - (text.lastIndexOf('\n', start - 1) + 1);
  const after = last.value?.range?.[1] ?? last.key.range![1];
  // A block value ends at the start of the next line; a plain one before the comment and the end of its own.
  const lineEnd = text[after - 1] === '\n' ? after : text.indexOf('\n', after) + 1 || text.length;
  const before = lineEnd > 0 && text[lineEnd - 1] !== '\n' ? '\n' : '';
  const line = `${' '.repeat(indent)}${name}: ${written(value, insideFlow(document, parent))}\n`;
  return text.slice(0, lineEnd) + before + line + text.slice(lineEnd);
}

/** Within { } or [ ] a comma ends a value. */
function insideFlow(document: Document, node: Node): boolean {
  let flow = false;
  visit(document, {
    Node(_key, one, ancestors) {
      if (one !== node) return undefined;
      flow = ancestors.some((above) => (isMap(above) || isSeq(above)) && above.flow === true);
      return visit.BREAK;
    },
  });
  return flow;
}

/** The value as YAML: plain where that reads back as the same words, in quotes otherwise. */
function written(value: string, flow: boolean): string {
  const tidy = value.trim();
  const trial = parseDocument(flow ? `{ a: ${tidy} }` : `a: ${tidy}\n`, yamlOptions);
  const contents = trial.contents;
  const node = isMap(contents) && contents.items.length === 1 ? contents.get('a', true) : undefined;
  const plain =
    tidy !== '' &&
    trial.errors.length === 0 &&
    isScalar(node) &&
    node.type === 'PLAIN' &&
    node.source === tidy &&
    !trial.comment &&
    !node.comment &&
    (typeof node.value === 'string' || typeof node.value === 'number');
  return plain ? tidy : JSON.stringify(value);
}

/** Where a place lies in its file, and the path to what begins on that line. */
export interface Located {
  readonly file: string;
  readonly line: number;
  /** Path of the outermost key or item that begins on the line; the last one before it where none does. */
  readonly path: Path;
  /** What stands there, as written, up to the end of its first line. */
  readonly text: string;
}

/**
 * Finds a place such as 'bars/kestrowan.yaml:12' in the files, so that a screen can show and edit it.
 * @returns undefined where the file is not there, does not parse, or has no such line
 */
export function locate(files: ReadonlyMap<string, string>, place: Place): Located | undefined {
  const colon = place.lastIndexOf(':');
  const file = place.slice(0, colon);
  const line = Number(place.slice(colon + 1));
  const text = files.get(file);
  if (text === undefined || !(line >= 1)) return undefined;
  const lines = new LineCounter();
  const document = parseDocument(text, { ...yamlOptions, lineCounter: lines });
  if (document.errors.length > 0 || line > lines.lineStarts.length) return undefined;
  let found: { path: Path; at: number } | undefined;
  visit(document, {
    Pair(_key, pair, ancestors) {
      const at = (pair.key as Node | null)?.range?.[0];
      found = later(found, at, line, lines, () => pathOf([...ancestors, pair]));
    },
    Node(key, node, ancestors) {
      if (isSeq(ancestors.at(-1))) found = later(found, node.range?.[0], line, lines, () => [...pathOf(ancestors), Number(key)]);
    },
  });
  if (!found) return undefined;
  const end = text.indexOf('\n', found.at);
  return { file, line, path: found.path, text: text.slice(found.at, end < 0 ? undefined : end).trimEnd() };
}

type Candidate = { path: Path; at: number } | undefined;

/** The first on the line wins; until one is met, the last before it. */
function later(found: Candidate, at: number | undefined, line: number, lines: LineCounter, path: () => Path): Candidate {
  if (at === undefined) return found;
  const here = lines.linePos(at).line;
  if (here > line || (found && lines.linePos(found.at).line === line)) return found;
  return { path: path(), at };
}

function pathOf(ancestors: readonly unknown[]): Path {
  return ancestors.flatMap((one, index): (string | number)[] => {
    if (isPair(one)) return [String((one.key as { value?: unknown } | null)?.value)];
    const next = ancestors[index + 1];
    return isSeq(one) && next !== undefined ? [one.items.indexOf(next)] : [];
  });
}
