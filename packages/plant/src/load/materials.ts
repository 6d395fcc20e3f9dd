import { composition as vectorOf, glucoseSyrup, type Composition } from '@barwright/science';
import type * as z from 'zod';
import type { Path, Tree } from '../read/tree.js';
import { packageWords, type materialsFile } from '../schema/files.js';
import type { Reading } from '../schema/leaf.js';
import type { Conversion, Entered, Material } from '../types.js';
import { present, type Book, type Page } from './book.js';
import { readComposition } from './composition.js';

type MaterialsFile = z.output<typeof materialsFile>;
type Written = MaterialsFile['materials'][string];

/** Everything bought, by name. */
export function readMaterials(book: Book, page: Page<MaterialsFile>): Map<string, Material> {
  const { tree, value } = page;
  const made = new Map<string, Material>();
  for (const [name, written] of Object.entries(value.materials)) {
    const path = ['materials', name];
    const what = substance(book, tree, path, written);
    if (!what) continue;
    made.set(name, {
      name,
      slug: book.slug(tree, path, name),
      label: written.label ?? name,
      allergens: written.allergens ?? [],
      crystalline: written.crystalline ?? false,
      ...(written.quoted ? { quoted: true } : {}),
      place: tree.place(path),
      ...what,
      ...present({
        price: priceOf(book, tree, path, written),
        density: written.density && book.entered(tree, [...path, 'density'], written.density),
        category: written.category,
        texture: written.texture,
      }),
    });
  }
  return made;
}

type Substance = Pick<Material, 'composition' | 'compositionSource' | 'compositionStanding' | 'dextroseEquivalent' | 'syrup'>;

function substance(book: Book, tree: Tree, path: Path, written: Written): Substance | undefined {
  const { composition, syrup } = written;
  if (composition && syrup) {
    book.complain(tree, [...path, 'syrup'], {
      code: 'NOT_ONE_OF',
      message: "Both 'composition' and 'syrup' stand here",
      expected: 'one of them',
    });
    return undefined;
  }
  if (composition) {
    const vector = readComposition(book, tree, [...path, 'composition'], composition);
    const dextroseEquivalent = composition.DE && book.entered(tree, [...path, 'composition', 'DE'], composition.DE);
    return (
      vector && {
        composition: vector,
        ...present({ compositionSource: composition.source, compositionStanding: composition.standing, dextroseEquivalent }),
      }
    );
  }
  if (syrup) return syrupOf(book, tree, [...path, 'syrup'], syrup);
  book.complain(tree, path, {
    code: 'COMPOSITION_MISSING',
    message: `'${path.at(-1)}' has no composition`,
    expected: "'composition: { water: …, … }' or 'syrup: { solids: 80 %, DE: 42 }'",
  });
  return undefined;
}

function syrupOf(book: Book, tree: Tree, path: Path, syrup: NonNullable<Written['syrup']>): Substance | undefined {
  const solids = book.entered(tree, [...path, 'solids'], syrup.solids);
  const dextroseEquivalent = book.entered(tree, [...path, 'DE'], syrup.DE);
  const conversion = syrup.conversion?.replace(' ', '_') as Conversion | undefined;
  const composition: Composition = vectorOf(glucoseSyrup(solids.value, dextroseEquivalent.value, conversion));
  return {
    composition,
    dextroseEquivalent,
    syrup: { solids, dextroseEquivalent, ...present({ conversion }) },
    ...present({ compositionSource: syrup.source, compositionStanding: syrup.standing }),
  };
}

/** A price per mass; '210 EUR/drum' is divided by 'drum: 300 kg'. */
function priceOf(book: Book, tree: Tree, path: Path, written: Written): Entered | undefined {
  if (!written.price) return undefined;
  const at = [...path, 'price'];
  const { measure } = written.price;
  const inPackage = measure.per === undefined ? undefined : (written as Record<string, unknown>)[measure.per];
  if (inPackage === undefined || !(packageWords as readonly string[]).includes(measure.per!)) return book.entered(tree, at, written.price);
  const mass = (inPackage as Reading).measure.value;
  const { per: _per, low, high, ...rest } = measure;
  const perMass = {
    ...rest,
    value: measure.value / mass,
    ...(low === undefined ? {} : { low: low / mass }),
    ...(high === undefined ? {} : { high: high / mass }),
  };
  return book.entered(tree, at, { ...written.price, measure: perMass });
}
