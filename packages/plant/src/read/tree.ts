import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, type Document, type Node, type Scalar } from 'yaml';
import type { ProblemCode } from '../codes.js';
import type { Place, Problem } from '../types.js';
import { clip } from '../units/numbers.js';

export type Path = readonly (string | number)[];

/** The plain values of one definition file, with the line of each. */
export interface Tree {
  readonly file: string;
  readonly root: unknown;
  /** Line (from 1) of a path; of the deepest part of it that is there. */
  readonly line: (path: Path) => number;
  readonly place: (path: Path) => Place;
  /** What the parser found wrong; the tree holds what could be read. */
  readonly problems: readonly Problem[];
  /** A copy in which these paths are cut out, lines kept; undefined where nothing is left. */
  readonly without: (paths: readonly Path[]) => Tree | undefined;
  /** Whether something was cut out at or below a path: what is missing there is no further fault. */
  readonly cutWithin: (path: Path) => boolean;
}

/** No definition is larger, nested deeper, or unfolds into more than this. */
export const limits = { characters: 5_000_000, depth: 24, nodes: 200_000, aliases: 100 };

type Marks = Map<string | number, number>;

/** Options of every parse: YAML 1.2 core, no custom tags; double keys are found here, in one pass, with the line of each. */
export const yamlOptions = {
  version: '1.2',
  schema: 'core',
  uniqueKeys: false,
  prettyErrors: false,
  strict: true,
  logLevel: 'silent',
  resolveKnownTags: false,
} as const;

/** Reads one YAML text. Never throws: whatever is wrong stands in `problems`. */
export function readTree(file: string, text: string): Tree {
  const reader = new TreeReader(file);
  return reader.tree(reader.read(text));
}

class TreeReader {
  readonly problems: Problem[] = [];
  private readonly lines = new LineCounter();
  private readonly marks = new WeakMap<object, Marks>();
  private readonly made = new Map<Node, { value: unknown; size: number }>();
  private readonly open = new Set<Node>();
  private rootOffset = 0;
  private nodes = 0;
  private aliases = 0;
  private document: Document | undefined;
  private stopped = false;

  constructor(private readonly file: string) {}

  tree(root: unknown, cuts: readonly Path[] = []): Tree {
    const line = (path: Path): number => this.line(root, path);
    const without = (paths: readonly Path[]): Tree | undefined => {
      const gone = new Set(paths.map((path) => JSON.stringify(path)));
      return gone.has('[]') ? undefined : this.tree(this.copy(root, [], gone), [...cuts, ...paths]);
    };
    const cutWithin = (path: Path): boolean => cuts.some((cut) => path.every((key, index) => cut[index] === key));
    return { file: this.file, root, line, place: (path) => `${this.file}:${line(path)}`, problems: this.problems, without, cutWithin };
  }

  read(text: string): unknown {
    const wrong = wrongText(text);
    if (wrong) {
      this.problems.push({ file: this.file, line: 1, ...wrong });
      return null;
    }
    try {
      const document = parseDocument(text, { ...yamlOptions, lineCounter: this.lines });
      this.document = document;
      for (const { message, pos } of [...document.errors, ...document.warnings].slice(0, 20))
        this.complain('YAML_SYNTAX', pos[0], clip(message, 200), syntaxAdvice(message));
      if (document.contents === null) {
        if (document.errors.length === 0) this.complain('EMPTY_FILE', 0, 'The file holds nothing');
        return null;
      }
      this.rootOffset = document.contents.range?.[0] ?? 0;
      return this.convert(document.contents as Node, 0);
    } catch (thrown) {
      if (!(thrown instanceof RangeError)) throw thrown;
      this.complain('TOO_DEEP', 0, 'The file is nested too deep to be read');
      return null;
    }
  }

  private line(root: unknown, path: Path): number {
    let offset = this.rootOffset;
    let value: unknown = root;
    for (const key of path) {
      if (typeof value !== 'object' || value === null) break;
      const mark = this.marks.get(value)?.get(key);
      if (mark === undefined) break;
      offset = mark;
      value = (value as Record<string | number, unknown>)[key];
    }
    return this.lines.linePos(offset).line || 1;
  }

  private copy(value: unknown, path: Path, gone: ReadonlySet<string>): unknown {
    if (typeof value !== 'object' || value === null) return value;
    const old = this.marks.get(value);
    const marks: Marks = new Map();
    const list: unknown[] = [];
    const map: Record<string, unknown> = {};
    for (const [key, item] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
      const at = [...path, key];
      if (gone.has(JSON.stringify(at))) continue;
      marks.set(Array.isArray(value) ? list.length : key, old?.get(key) ?? 0);
      const copied = this.copy(item, at, gone);
      if (Array.isArray(value)) list.push(copied);
      else map[key] = copied;
    }
    const made = Array.isArray(value) ? list : map;
    this.marks.set(made, marks);
    return made;
  }

  private complain(code: ProblemCode, offset: number, message: string, advice?: string): void {
    const { line, col } = this.lines.linePos(offset);
    this.problems.push({ code, file: this.file, line: line || 1, column: col || 1, message, ...(advice === undefined ? {} : { advice }) });
  }

  private convert(node: Node | null | undefined, depth: number): unknown {
    if (this.stopped || node === null || node === undefined) return null;
    const at = node.range?.[0] ?? 0;
    if (isAlias(node)) return this.unfold(node, at, depth);
    if (isScalar(node)) {
      this.nodes++;
      const value = scalarValue(node);
      if (node.anchor !== undefined) this.made.set(node, { value, size: 1 });
      return value;
    }
    if (depth >= limits.depth) return this.stop('TOO_DEEP', at, `Nested deeper than ${limits.depth} levels`);
    const before = this.nodes;
    this.open.add(node);
    const value = isMap(node) ? this.convertMap(node.items, depth) : isSeq(node) ? this.convertList(node.items as Node[], depth) : null;
    this.open.delete(node);
    if (node.anchor !== undefined) this.made.set(node, { value, size: this.nodes - before + 1 });
    this.nodes++;
    if (this.nodes > limits.nodes) return this.stop('TOO_MANY_ALIASES', at, `The file unfolds into more than ${limits.nodes} values`);
    return value;
  }

  private convertMap(items: readonly { key: unknown; value: unknown }[], depth: number): unknown {
    const map: Record<string, unknown> = {};
    const marks: Marks = new Map();
    for (const { key: keyNode, value } of items) {
      const key = isScalar(keyNode) && keyNode.value !== null ? String(keyNode.value) : undefined;
      const at = (keyNode as Node | null)?.range?.[0] ?? (value as Node | null)?.range?.[0] ?? 0;
      if (key === undefined || key === '__proto__') this.complain('BAD_KEY', at, 'A key must be a word', 'Quote it, or write it out');
      else if (marks.has(key)) {
        const first = this.lines.linePos(marks.get(key)!).line;
        this.complain('DUPLICATE_KEY', at, `'${clip(key)}' stands here again; it is on line ${first} already`, 'Keep one of them');
      } else {
        marks.set(key, at);
        map[key] = this.convert(value as Node | null, depth + 1);
      }
    }
    this.marks.set(map, marks);
    return map;
  }

  private convertList(items: readonly Node[], depth: number): unknown {
    const list: unknown[] = [];
    const marks: Marks = new Map();
    items.forEach((item, index) => {
      marks.set(index, item?.range?.[0] ?? 0);
      list.push(this.convert(item, depth + 1));
    });
    this.marks.set(list, marks);
    return list;
  }

  /** An alias gives the very value of its anchor; what it would unfold into is counted, not built. */
  private unfold(alias: Node, at: number, depth: number): unknown {
    if (++this.aliases > limits.aliases) return this.stop('TOO_MANY_ALIASES', at, `More than ${limits.aliases} aliases`);
    const anchor = isAlias(alias) && this.document ? alias.resolve(this.document) : undefined;
    if (!anchor) return null;
    if (this.open.has(anchor)) return this.stop('TOO_MANY_ALIASES', at, 'An alias stands inside its own anchor');
    let known = this.made.get(anchor);
    if (!known) {
      this.convert(anchor, depth);
      known = this.made.get(anchor);
    }
    this.nodes += known?.size ?? 1;
    if (this.nodes > limits.nodes) return this.stop('TOO_MANY_ALIASES', at, `The file unfolds into more than ${limits.nodes} values`);
    return known?.value ?? null;
  }

  private stop(code: ProblemCode, offset: number, message: string): null {
    if (!this.stopped) this.complain(code, offset, message);
    this.stopped = true;
    return null;
  }
}

/** A number keeps what was written where that says more: '50.0', '1e400'. */
function scalarValue(node: Scalar): unknown {
  return typeof node.value === 'bigint' ? Number(node.value) : node.value;
}

function syntaxAdvice(message: string): string | undefined {
  if (/\btabs?\b/i.test(message)) return 'Indent with spaces';
  if (/nested mappings|implicit (map )?key/i.test(message)) return "Put a text that holds ': ' in quotes";
  if (/same column|indent/i.test(message)) return 'Keys of one mapping begin in the same column';
  return undefined;
}

function wrongText(text: string): { code: ProblemCode; message: string; advice?: string } | undefined {
  if (text.length > limits.characters) return { code: 'FILE_TOO_LARGE', message: `The file has more than ${limits.characters} characters` };
  if (text.includes('\ufffd'))
    return { code: 'NOT_UTF8', message: 'The file holds characters that are not UTF-8', advice: 'Save it as UTF-8 text' };
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/.test(text)) {
    return {
      code: 'NOT_UTF8',
      message: 'The file holds control characters; it may be another encoding or no text at all',
      advice: 'Save it as UTF-8 text',
    };
  }
  return undefined;
}
