import type * as z from 'zod';
import type { ProblemCode } from '../codes.js';
import { describe, missingOrWrong, notOneOf, unknownKey } from '../schema/leaf.js';
import type { Problem } from '../types.js';
import { clip } from '../units/numbers.js';
import type { Fault } from '../units/quantity.js';
import type { Path, Tree } from './tree.js';

/**
 * Reads a tree through a schema and says everything that is wrong with its shape. What is wrong is cut out and the rest is read again,
 * so that the faults behind it (sums, names) are found in the same pass; the value must not be used as a definition unless `problems` is empty.
 */
export function readShape<T extends z.ZodType>(schema: T, whole: Tree): Shape<z.output<T>> {
  const problems: Problem[] = [];
  let tree = whole;
  for (let round = 0; round < 8; round++) {
    const parsed = schema.safeParse(tree.root);
    if (parsed.success) return { value: parsed.data, tree, problems };
    const cuts: Path[] = [];
    for (const issue of parsed.error.issues) {
      for (const { path, fault } of faultsOf(issue, schema, tree.root)) {
        const at = path.map((key) => (typeof key === 'symbol' ? String(key) : key)) as Path;
        // What was cut makes its parent incomplete: that is no fault of the file.
        if (!(round > 0 && fault.code === 'MISSING_KEY')) problems.push(problemAt(tree, at, fault));
        const parent = at.slice(0, -1);
        cuts.push(at.length > 0 && valueAt(tree.root, at) === undefined ? parent : at);
      }
    }
    const rest = tree.without(cuts);
    if (!rest) return { value: undefined, tree, problems };
    tree = rest;
  }
  return { value: undefined, tree, problems };
}

export interface Shape<T> {
  /** Undefined where nothing could be read. */
  readonly value: T | undefined;
  /** The tree that the value was read from: the whole one, or what is left of it. */
  readonly tree: Tree;
  readonly problems: Problem[];
}

export function problemAt(tree: Tree, path: Path, fault: Fault): Problem {
  const { code, message, expected, advice } = fault;
  const where = path.filter((key) => typeof key === 'string').at(-1);
  const named = where === undefined || message.startsWith(`'${clip(where)}'`) ? message : `${where}: ${message}`;
  return {
    code,
    file: tree.file,
    line: tree.line(path),
    message: named,
    ...(expected === undefined ? {} : { expected }),
    ...(advice === undefined ? {} : { advice }),
  };
}

interface Located {
  readonly path: readonly PropertyKey[];
  readonly fault: Fault;
}

function faultsOf(issue: z.core.$ZodIssue, schema: z.ZodType, root: unknown): Located[] {
  const came = valueAt(root, issue.path);
  if (issue.code === 'custom') return [{ path: issue.path, fault: issue.params as unknown as Fault }];
  if (issue.code === 'unrecognized_keys') {
    const known = keysOf(schemaAt(schema, issue.path));
    return issue.keys.map((key) => ({ path: [...issue.path, key], fault: unknownKey(key, known, valueAt(came, [key])) }));
  }
  if (issue.code === 'invalid_type')
    return [{ path: issue.path, fault: missingOrWrong(came, typeWords[issue.expected] ?? issue.expected) }];
  if (issue.code === 'invalid_value') return [{ path: issue.path, fault: notOneOf(came, issue.values.map(String)) }];
  const code: ProblemCode = 'WRONG_TYPE';
  return [{ path: issue.path, fault: { code, message: `Got ${describe(came)}`, expected: issue.message.toLowerCase() } }];
}

const typeWords: Readonly<Record<string, string>> = {
  object: 'a mapping of keys and values',
  record: 'a mapping of names and values',
  array: 'a list',
  tuple: 'a list of three',
  boolean: 'true or false',
};

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** The schema that stands at a path: through optional, lists and records. */
function schemaAt(schema: z.ZodType, path: readonly PropertyKey[]): z.core.$ZodTypeDef | undefined {
  let def = bare(schema);
  for (const key of path) {
    const inner = inside(def, key);
    if (!inner) return undefined;
    def = bare(inner);
  }
  return def;
}

function bare(schema: z.ZodType): z.core.$ZodTypeDef {
  let def = schema._zod.def as z.core.$ZodTypeDef & { innerType?: z.ZodType };
  while (def.innerType) def = def.innerType._zod.def as typeof def;
  return def;
}

function inside(def: z.core.$ZodTypeDef, key: PropertyKey): z.ZodType | undefined {
  const any = def as { shape?: Record<PropertyKey, z.ZodType>; element?: z.ZodType; valueType?: z.ZodType };
  return any.shape && Object.hasOwn(any.shape, key) ? any.shape[key] : (any.element ?? any.valueType);
}

function keysOf(def: z.core.$ZodTypeDef | undefined): readonly string[] {
  return Object.keys((def as { shape?: object } | undefined)?.shape ?? {});
}
