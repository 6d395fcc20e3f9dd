import type * as z from 'zod';
import { readBar } from './load/bars.js';
import { Book, type Page } from './load/book.js';
import { readComponents } from './load/components.js';
import { readChecks, readPlans } from './load/days.js';
import { readLine } from './load/lines.js';
import { readMaterials } from './load/materials.js';
import { readPlant } from './load/plant.js';
import { checkTogether } from './load/together.js';
import { nearest } from './nearest.js';
import { readShape, type Shape } from './read/shape.js';
import { readTree, type Tree } from './read/tree.js';
import { fileKinds, kindOf, type FileKind } from './schema/files.js';
import type { Loaded, Problem } from './types.js';

/**
 * Reads a plant's definition files into one typed plant. Never throws, does no I/O; either everything is right or nothing is given back.
 *
 * @param files - path within the plant folder, with forward slashes → text: 'plant.yaml', 'bars/kestrowan.yaml'
 * @returns the plant with notes, or every problem found: file, line, what came, what was expected, what to do
 */
export function loadPlant(files: ReadonlyMap<string, string>): Loaded {
  return plantLoader()(files);
}

/**
 * A loader for a screen where one file changes at a time: it keeps what it read of the others. Answers as loadPlant does.
 * @example const load = plantLoader(); load(files); load(editPlant(files, [edit]))
 */
export function plantLoader(): (files: ReadonlyMap<string, string>) => Loaded {
  let read: ReadonlyMap<string, FileRead> = new Map();
  return (files) => {
    try {
      const loader = new Loader(files, read);
      const loaded = loader.load();
      read = loader.read;
      return loaded;
    } catch (thrown) {
      const said = thrown instanceof Error ? thrown.message : String(thrown);
      const message = `The files could not be read to the end: ${said.slice(0, 200)}`;
      return {
        ok: false,
        problems: [{ code: 'UNEXPECTED', file: 'plant.yaml', line: 1, message, advice: 'Please report this with the files' }],
      };
    }
  };
}

/** What one text gave, whatever stands in the other files. */
interface FileRead {
  readonly text: string;
  readonly tree: Tree;
  readonly shape: Shape<unknown> | undefined;
}

type Shaped = { readonly [K in FileKind]: Page<z.output<(typeof fileKinds)[K]>>[] };

class Loader {
  private readonly book = new Book();
  private readonly trees: { kind: FileKind; tree: Tree }[] = [];
  private readonly shaped: Shaped = { plant: [], materials: [], components: [], bar: [], line: [], plan: [], checks: [] };

  readonly read = new Map<string, FileRead>();

  constructor(
    private readonly files: ReadonlyMap<string, string>,
    private readonly before: ReadonlyMap<string, FileRead>,
  ) {}

  load(): Loaded {
    this.readFiles();
    const { book, shaped } = this;
    const plantPage = shaped.plant[0];
    const own = plantPage && readPlant(book, plantPage);
    const materials = shaped.materials[0] ? readMaterials(book, shaped.materials[0]) : new Map<never, never>();
    const components = shaped.components[0] ? readComponents(book, shaped.components[0]) : new Map<never, never>();
    const bars = shaped.bar.map((page) => ({ bar: readBar(book, page), tree: page.tree }));
    const lines = shaped.line.map((page) => ({ line: readLine(book, page), tree: page.tree }));
    const plans = shaped.plan[0] ? readPlans(book, shaped.plan[0]) : [];
    const checks = shaped.checks[0] ? readChecks(book, shaped.checks[0]) : [];
    // Where a file does not parse, names are missing that may well stand in it: what would follow from that is not said.
    if (this.trees.every(({ tree }) => !isBroken(tree)))
      checkTogether(book, {
        materials,
        components,
        bars,
        lines,
        plans,
        materialsTree: shaped.materials[0]?.tree,
        componentsTree: shaped.components[0]?.tree,
        planTree: shaped.plan[0]?.tree,
        declared: this.declared(),
      });
    if (book.problems.length > 0 || !own) return { ok: false, problems: sorted(book.problems) };
    return {
      ok: true,
      plant: {
        ...own,
        materials,
        components,
        bars: new Map(bars.map(({ bar }) => [bar.name, bar])),
        lines: new Map(lines.map(({ line }) => [line.name, line])),
        plans,
        checks,
      },
      notes: sorted(book.notes),
    };
  }

  private readFiles(): void {
    const { problems } = this.book;
    if (this.files.size > 500) {
      problems.push({ code: 'TOO_MANY_FILES', file: 'plant.yaml', line: 1, message: `${this.files.size} files`, expected: 'at most 500' });
      return;
    }
    if (![...this.files.keys()].some((file) => kindOf(file) === 'plant')) {
      problems.push({
        code: 'PLANT_MISSING',
        file: 'plant.yaml',
        line: 1,
        message: 'There is no plant.yaml',
        expected: 'a file plant.yaml at the top of the folder',
      });
    }
    const taken = new Map<string, string>();
    for (const [file, text] of this.files) {
      const kind = kindOf(file);
      if (!kind) {
        problems.push(unknownFile(file));
        continue;
      }
      const base = file.replace(/\.ya?ml$/i, '');
      if (taken.has(base))
        problems.push({
          code: 'DUPLICATE_NAME',
          file,
          line: 1,
          message: `'${file}' and '${taken.get(base)}' are the same definition file`,
          advice: 'Keep one of them',
        });
      taken.set(base, file);
      this.readFile(kind, file, text);
    }
  }

  private readFile(kind: FileKind, file: string, text: string): void {
    const { problems } = this.book;
    const known = this.before.get(file);
    const read = known?.text === text ? known : readOne(kind, file, text);
    this.read.set(file, read);
    const { tree, shape } = read;
    this.trees.push({ kind, tree });
    problems.push(...tree.problems, ...(shape?.problems ?? []));
    if (shape?.value !== undefined) (this.shaped[kind] as Page<unknown>[]).push({ value: shape.value, tree: shape.tree });
    else if (tree.problems.length === 0 && shape?.problems.length === 0)
      problems.push({ code: 'WRONG_TYPE', file, line: 1, message: 'Nothing in the file can be read' });
  }

  /** Names as they stand in the whole trees, before anything faulty was cut out. */
  private declared() {
    const keys = (kind: FileKind, of: string): Set<string> => new Set(this.roots(kind).flatMap((root) => Object.keys(mapping(root[of]))));
    const names = (kind: FileKind, of: string): Set<string> => new Set(this.roots(kind).map((root) => String(mapping(root[of])['name'])));
    return {
      materials: keys('materials', 'materials'),
      components: keys('components', 'components'),
      bars: names('bar', 'bar'),
      lines: names('line', 'line'),
    };
  }

  private roots(kind: FileKind): Record<string, unknown>[] {
    return this.trees.filter((one) => one.kind === kind).map(({ tree }) => mapping(tree.root));
  }
}

function readOne(kind: FileKind, file: string, text: string): FileRead {
  const tree = readTree(file, text);
  return { text, tree, shape: isBroken(tree) ? undefined : readShape(fileKinds[kind], tree) };
}

/** Text that could not be read to its end; double keys and the like leave a tree that is whole. */
function isBroken({ root, problems }: Tree): boolean {
  return problems.some(({ code }) => root === null || (code !== 'DUPLICATE_KEY' && code !== 'BAD_KEY'));
}

function mapping(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function unknownFile(file: string): Problem {
  const meant = nearest(file, ['plant.yaml', 'materials.yaml', 'components.yaml', 'plan.yaml', 'checks.yaml']);
  return {
    code: 'UNKNOWN_FILE',
    file,
    line: 1,
    message: `'${file.slice(0, 100)}' is no definition file`,
    expected: 'plant.yaml, materials.yaml, components.yaml, plan.yaml, checks.yaml, bars/*.yaml or lines/*.yaml',
    ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
  };
}

/** Nobody reads more of one file at once. */
const listed = 200;

/** By file and line; of a file that is wrong throughout, the first ones and how many more there are. */
function sorted(problems: readonly Problem[]): Problem[] {
  const byFile = new Map<string, Problem[]>();
  for (const problem of problems) {
    const own = byFile.get(problem.file);
    if (own) own.push(problem);
    else byFile.set(problem.file, [problem]);
  }
  return [...byFile.keys()].sort().flatMap((file) => {
    const own = byFile.get(file)!.sort((a, b) => a.line - b.line);
    if (own.length <= listed) return own;
    const message = `${own.length - listed} more problems in this file`;
    return [
      ...own.slice(0, listed),
      { code: 'MORE_PROBLEMS', file, line: own[listed]!.line, message, advice: 'Correct the first ones and load again' },
    ];
  });
}
