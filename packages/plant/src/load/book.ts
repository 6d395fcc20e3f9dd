import { nearest } from '../nearest.js';
import { problemAt } from '../read/shape.js';
import type { Path, Tree } from '../read/tree.js';
import type { Reading } from '../schema/leaf.js';
import type { LossReading } from '../schema/parts.js';
import type { Entered, Loss, Problem } from '../types.js';
import type { Fault, Measure } from '../units/quantity.js';

/** What has been read of one file: its values, and where they stand. */
export interface Page<T> {
  readonly value: T;
  readonly tree: Tree;
}

/** Collects problems while the plant is put together, and turns readings into entered values with their place. */
export class Book {
  readonly problems: Problem[] = [];
  readonly notes: Problem[] = [];
  /** ISO 4217 code of the plant; undefined while it is not known. */
  currency: string | undefined;

  /** Nothing is said of a place from which something faulty was cut: it would only follow from that. */
  complain(tree: Tree, path: Path, fault: Fault): void {
    if (tree.cutWithin(path)) return;
    this.problems.push(problemAt(tree, path, fault));
  }

  note(tree: Tree, path: Path, fault: Fault): void {
    this.notes.push(problemAt(tree, path, fault));
  }

  entered(tree: Tree, path: Path, reading: Reading): Entered {
    const { measure, ...notes } = reading;
    const { reaction: _reaction, ...kept } = notes;
    this.checkCurrency(tree, path, measure);
    return { ...inEntered(measure), ...kept, place: tree.place(path), path };
  }

  loss(tree: Tree, path: Path, reading: LossReading): Loss {
    return { share: this.entered(tree, path, reading.share), of: reading.of };
  }

  named(tree: Tree, path: Path, readings: Readonly<Record<string, Reading>> | undefined): { name: string; slug: string; value: Entered }[] {
    const made = Object.entries(readings ?? {}).map(([name, reading]) => {
      const at = [...path, name];
      return { name, slug: this.slug(tree, at, name), value: this.entered(tree, at, reading) };
    });
    this.refuseTwins(
      tree,
      made.map(({ name, slug }) => ({ name, slug, path: [...path, name] })),
    );
    return made;
  }

  slug(tree: Tree, path: Path, name: string): string {
    const slug = slugOf(name);
    if (slug === '')
      this.complain(tree, path, { code: 'BAD_NAME', message: `'${name.slice(0, 40)}' has no letter or digit`, expected: 'a name' });
    return slug;
  }

  /** Names that would be one in quantity ids. */
  refuseTwins(tree: Tree, all: readonly { name: string; slug: string; path: Path; tree?: Tree }[]): void {
    const seen = new Map<string, { name: string; tree: Tree; path: Path }>();
    for (const { name, slug, path, tree: own = tree } of all) {
      const first = slug === '' ? undefined : seen.get(slug);
      if (first) {
        const message = first.name === name ? `'${name}' is defined twice` : `'${name}' and '${first.name}' differ only in case or signs`;
        this.complain(own, path, {
          code: 'DUPLICATE_NAME',
          message: `${message}; first at ${first.tree.place(first.path)}`,
          advice: 'Give each its own name',
        });
      } else seen.set(slug, { name, tree: own, path });
    }
  }

  /** True where the name is known; otherwise complains, with the nearest. */
  known(
    tree: Tree,
    path: Path,
    name: string,
    names: ReadonlySet<string> | ReadonlyMap<string, unknown>,
    fault: Pick<Fault, 'code' | 'expected'> & { what: string },
  ): boolean {
    if (names.has(name)) return true;
    const meant = nearest(name, names.keys());
    const { code, what, expected } = fault;
    this.complain(tree, path, {
      code,
      message: `${what} '${name.slice(0, 60)}' is not known`,
      ...(expected === undefined ? {} : { expected }),
      ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
    });
    return false;
  }

  private checkCurrency(tree: Tree, path: Path, { currency, per, text }: Measure): void {
    if (currency !== undefined && this.currency !== undefined && currency !== this.currency) {
      this.complain(tree, path, {
        code: 'WRONG_CURRENCY',
        message: `'${text}' is in ${currency}, the plant counts in ${this.currency}`,
        expected: `a price in ${this.currency}`,
        advice: 'Convert it; this tool knows no exchange rates',
      });
    }
    if (per !== undefined) {
      this.complain(tree, path, {
        code: 'PACKAGE_MASS_MISSING',
        message: `'${text}' is a price per ${per}, whose mass is not known`,
        expected: 'a price per mass',
        advice: `Add '${per}: 300 kg' with what is in it`,
      });
    }
  }
}

function inEntered({ value, text, unit, low, high, dimension, form }: Measure): Omit<Entered, 'place'> {
  return { value, text, unit, ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), dimension, form };
}

/** Lower case, letters, digits and underscores: 'E476' → 'e476', 'crème brûlée' → 'creme_brulee'. */
export function slugOf(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '');
}

/** The properties that are there: `{ a: undefined }` has none. */
export function present<T extends object>(properties: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const made: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(properties)) if (value !== undefined) made[key] = value;
  return made as { [K in keyof T]?: Exclude<T[K], undefined> };
}
