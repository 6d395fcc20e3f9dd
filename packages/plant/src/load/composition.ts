import { at, composition as vectorOf, constituents, fats, share, type Composition, type CompositionKey } from '@barwright/science';
import type * as z from 'zod';
import type { Path, Tree } from '../read/tree.js';
import { compositionWords, type composition } from '../schema/parts.js';
import type { Reading } from '../schema/leaf.js';
import type { Book } from './book.js';

type Written = z.output<typeof composition>;

/** Mean molar mass of what has one reducing end per molecule, at a DE of 100 (glucose; atomic weights of IUPAC 2021). */
const glucose = 180.156;
const disaccharide = 342.297;
/** Three glucose units: nothing counted as a higher saccharide is lighter. */
const trisaccharide = 504.438;

/** The vector of a written composition, normalised to 1; undefined where it cannot be one. */
export function readComposition(book: Book, tree: Tree, path: Path, written: Written): Composition | undefined {
  const parts: Partial<Record<CompositionKey, number>> = {};
  for (const [word, key] of compositionWords) {
    const reading = (written as Record<string, Reading | undefined>)[word];
    if (reading) parts[key] = book.entered(tree, [...path, word], reading).value;
  }
  const vector = vectorOf(parts);
  const sum = share(vector, constituents);
  if (Math.abs(sum - 1) > 0.002 + 1e-12) {
    book.complain(tree, path, {
      code: 'COMPOSITION_SUM',
      message: `The composition sums to ${(sum * 100).toFixed(2)} %`,
      expected: '100 % ± 0.2 %',
      advice: "Put what is not known under 'other'",
    });
    return undefined;
  }
  for (const key of constituents) vector[at[key]]! /= sum;
  const fat = share(vector, fats);
  if (vector[at.saturates]! > fat + 0.002) {
    book.complain(tree, [...path, 'saturates'], {
      code: 'IMPOSSIBLE',
      message: `${percent(vector[at.saturates]!)} saturates in ${percent(fat)} fat`,
      expected: 'saturates as a share of the whole, no more than the fat',
    });
  }
  const moles = higherSaccharideMoles(book, tree, path, written, vector);
  if (moles === undefined) return undefined;
  vector[at.higher_saccharides_mol] = moles;
  return vector;
}

/** Moles of higher saccharides per kg of the whole, from their mean molar mass or from the dextrose equivalent. */
function higherSaccharideMoles(book: Book, tree: Tree, path: Path, written: Written, vector: Composition): number | undefined {
  const higher = vector[at.higher_saccharides]!;
  if (higher === 0) return 0;
  const { DE: equivalent, 'mean molar mass': molar } = written;
  const here = [...path, 'higher saccharides'];
  if (molar) {
    if (molar.measure.value >= trisaccharide) return (higher * 1000) / molar.measure.value;
    book.complain(tree, [...path, 'mean molar mass'], {
      code: 'HIGHER_SACCHARIDES',
      message: `A mean molar mass of ${molar.measure.text} is below that of three glucose units`,
      expected: `${trisaccharide} g/mol or more`,
    });
    return undefined;
  }
  if (!equivalent) {
    book.complain(tree, here, {
      code: 'HIGHER_SACCHARIDES',
      message: 'Higher saccharides need to be counted, not only weighed',
      expected: "'DE: 42' or 'mean molar mass: 900 g/mol' beside them",
    });
    return undefined;
  }
  // DE = 100 · 180.16 · (reducing ends, mol) / (dry substance, g); one end per molecule, sucrose has none.
  const dry = 1 - vector[at.water]!;
  const simple = (vector[at.glucose]! + vector[at.fructose]!) / glucose + (vector[at.maltose]! + vector[at.lactose]!) / disaccharide;
  const moles = (equivalent.measure.value / 100 / glucose) * dry - simple;
  if (moles > 0 && higher / moles >= trisaccharide) return moles * 1000;
  book.complain(tree, [...path, 'DE'], {
    code: 'HIGHER_SACCHARIDES',
    message: `A DE of ${equivalent.measure.text} does not fit these sugars`,
    expected: 'a DE that leaves higher saccharides at least three units long',
  });
  return undefined;
}

function percent(value: number): string {
  return `${(value * 100).toFixed(1)} %`;
}
