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
import { readShape } from './read/shape.js';
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
  try {
    return new Loader(files).load();
  } catch (thrown) {
    const said = thrown instanceof Error ? thrown.message : String(thrown);
    const message = `The files could not be read to the end: ${said.slice(0, 200)}`;
    return { ok: false, problems: [{ code: 'UNEXPECTED', file: 'plant.yaml', line: 1, message, advice: 'Please report this with the files' }] };
  }
}

type Shaped = { readonly [K in FileKind]: Page<z.output<(typeof fileKinds)[K]>>[] };

class Loader {
  private readonly book = new Book();
  private readonly trees: { kind: FileKind; tree: Tree }[] = [];
  private readonly shaped: Shaped = { plant: [], materials: [], components: [], bar: [], line: [], plan: [], checks: [] };

  constructor(private readonly files: ReadonlyMap<string, string>) {}

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
      problems.push({ code: 'PLANT_MISSING', file: 'plant.yaml', line: 1, message: 'There is no plant.yaml', expected: 'a file plant.yaml at the top of the folder' });
    }
    const taken = new Map<string, string>();
    for (const [file, text] of this.files) {
      const kind = kindOf(file);
      if (!kind) {
        problems.push(unknownFile(file));
        continue;
      }
      const base = file.replace(/\.ya?ml$/i, '');
      if (taken.has(base)) problems.push({ code: 'DUPLICATE_NAME', file, line: 1, message: `'${file}' and '${taken.get(base)}' are the same definition file`, advice: 'Keep one of them' });
      taken.set(base, file);
      this.readFile(kind, readTree(file, text));
    }
  }

  private readFile(kind: FileKind, tree: Tree): void {
    const { problems } = this.book;
    this.trees.push({ kind, tree });
    problems.push(...tree.problems);
    if (tree.root === null && tree.problems.length > 0) return;
    const shape = readShape(fileKinds[kind], tree);
    problems.push(...shape.problems);
    if (shape.value) (this.shaped[kind] as Page<unknown>[]).push({ value: shape.value, tree: shape.tree });
    else if (shape.problems.length === 0) problems.push({ code: 'WRONG_TYPE', file: tree.file, line: 1, message: 'Nothing in the file can be read' });
  }

  /** Names as they stand in the whole trees, before anything faulty was cut out. */
  private declared() {
    const keys = (kind: FileKind, of: string): Set<string> => new Set(this.roots(kind).flatMap((root) => Object.keys(mapping(root[of]))));
    const names = (kind: FileKind, of: string): Set<string> => new Set(this.roots(kind).map((root) => String(mapping(root[of])['name'])));
    return { materials: keys('materials', 'materials'), components: keys('components', 'components'), bars: names('bar', 'bar'), lines: names('line', 'line') };
  }

  private roots(kind: FileKind): Record<string, unknown>[] {
    return this.trees.filter((one) => one.kind === kind).map(({ tree }) => mapping(tree.root));
  }
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

function sorted(problems: readonly Problem[]): Problem[] {
  return [...problems].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line));
}
