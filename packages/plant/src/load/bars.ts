import type * as z from 'zod';
import type { Path, Tree } from '../read/tree.js';
import type { barFile } from '../schema/files.js';
import type { Reading } from '../schema/leaf.js';
import type { Bar, Coat, Entered, Layer, LayerAmount, Pack } from '../types.js';
import { present, type Book, type Page } from './book.js';

export type BarFile = z.output<typeof barFile>;
type WrittenBar = BarFile['bar'];
type WrittenPack = WrittenBar['pack'];

/** One bar. Names it refers to are checked when everything is read. */
export function readBar(book: Book, { tree, value }: Page<BarFile>): Bar {
  const path = ['bar'];
  const at = (...keys: (string | number)[]): Path => [...path, ...keys];
  const written = value.bar;
  const enter = (reading: Reading | undefined, ...keys: (string | number)[]): Entered | undefined =>
    reading && book.entered(tree, at(...keys), reading);
  const layers = written.layers.map((layer, index) => readLayer(book, tree, at('layers', index), layer));
  book.refuseTwins(
    tree,
    layers.map(({ name, slug }, index) => ({ name, slug, path: at('layers', index, 'layer') })),
  );
  if (!tree.cutWithin(at('layers'))) checkSinking(book, tree, at('layers'), layers);
  const bar: Bar = {
    name: written.name,
    slug: book.slug(tree, at('name'), written.name),
    format: written.format,
    nominal: enter(written.nominal, 'nominal')!,
    target: enter(written.target, 'target')!,
    cutLength: enter(written['cut length'], 'cut length')!,
    cutWidth: enter(written['cut width'], 'cut width')!,
    layers,
    pack: readPack(book, tree, at('pack'), written.pack),
    place: tree.place(path),
    ...present({
      maximum: enter(written.maximum, 'maximum'),
      cutLengthVariation: enter(written.varies?.['cut length'], 'varies', 'cut length'),
      cutWidthVariation: enter(written.varies?.['cut width'], 'varies', 'cut width'),
      coat: written.coat && readCoat(book, tree, at('coat'), written.coat),
      size: written.size && three(book, tree, at('size'), written.size),
      waterActivityStep: enter(written['water activity step'], 'water activity step'),
      bestBefore: enter(written['best before'], 'best before'),
      line: written.line,
    }),
  };
  const rests = [...layers, ...(bar.coat ? [bar.coat] : [])].filter(({ amount }) => amount.by === 'rest').length;
  if (rests > 1)
    book.complain(tree, at('layers'), {
      code: 'TWO_RESTS',
      message: `${rests} layers are 'rest'`,
      expected: "at most one 'rest': it is what is missing to the target",
      advice: 'Write a mass or a thickness for the others',
    });
  return bar;
}

function readLayer(book: Book, tree: Tree, path: Path, written: WrittenBar['layers'][number]): Layer {
  const at = (key: string): Path => [...path, key];
  return {
    name: written.layer,
    slug: book.slug(tree, at('layer'), written.layer),
    component: written.of,
    amount: amountOf(book, tree, path, written),
    place: tree.place(path),
    ...present({
      variation: written.varies && book.entered(tree, at('varies'), written.varies),
      loss: written.loss && book.loss(tree, at('loss'), written.loss),
      sunkInto: written['sunk into'],
      voids: written.voids && book.entered(tree, at('voids'), written.voids),
    }),
  };
}

function readCoat(book: Book, tree: Tree, path: Path, written: NonNullable<WrittenBar['coat']>): Coat {
  const at = (...keys: string[]): Path => [...path, ...keys];
  const { top, side, bottom } = written.minimum ?? {};
  return {
    component: written.of,
    amount: amountOf(book, tree, path, written),
    covers: written.covers,
    minimum: present({
      top: top && book.entered(tree, at('minimum', 'top'), top),
      side: side && book.entered(tree, at('minimum', 'side'), side),
      bottom: bottom && book.entered(tree, at('minimum', 'bottom'), bottom),
    }),
    place: tree.place(path),
    ...present({
      variation: written.varies && book.entered(tree, at('varies'), written.varies),
      loss: written.loss && book.loss(tree, at('loss'), written.loss),
    }),
  };
}

const amountKeys = ['mass', 'thickness', 'mass per area'] as const;

function amountOf(
  book: Book,
  tree: Tree,
  path: Path,
  written: Pick<WrittenBar['layers'][number], (typeof amountKeys)[number]>,
): LayerAmount {
  const keys = amountKeys.filter((key) => written[key] !== undefined);
  const { mass, thickness, 'mass per area': massPerArea } = written;
  if (keys.length !== 1) {
    const message = keys.length === 0 ? 'No amount is written' : `${keys.join(' and ')} are both written`;
    book.complain(tree, path, {
      code: 'NOT_ONE_OF',
      message,
      expected: "one of: mass, thickness, mass per area ('mass: rest' for what is missing to the target)",
    });
  }
  if (mass !== undefined) return mass === 'rest' ? { by: 'rest' } : { by: 'mass', mass: book.entered(tree, [...path, 'mass'], mass) };
  if (thickness) return { by: 'thickness', thickness: book.entered(tree, [...path, 'thickness'], thickness) };
  if (massPerArea) return { by: 'mass per area', massPerArea: book.entered(tree, [...path, 'mass per area'], massPerArea) };
  return { by: 'rest' };
}

function checkSinking(book: Book, tree: Tree, path: Path, layers: readonly Layer[]): void {
  const names = new Set(layers.map(({ name }) => name));
  layers.forEach(({ name, sunkInto }, index) => {
    const here = [...path, index, 'sunk into'];
    if (sunkInto === undefined) return;
    if (!book.known(tree, here, sunkInto, names, { code: 'UNKNOWN_LAYER', what: 'Layer', expected: `one of: ${[...names].join(', ')}` }))
      return;
    const under = layers.find((layer) => layer.name === sunkInto);
    if (sunkInto === name || under?.sunkInto !== undefined) {
      book.complain(tree, here, {
        code: 'UNKNOWN_LAYER',
        message: `'${name}' cannot sink into '${sunkInto}'`,
        expected: 'another layer that sinks into none itself',
      });
    }
  });
}

function three(book: Book, tree: Tree, path: Path, written: readonly [Reading, Reading, Reading]): [Entered, Entered, Entered] {
  const [a, b, c] = written;
  return [book.entered(tree, [...path, 0], a), book.entered(tree, [...path, 1], b), book.entered(tree, [...path, 2], c)];
}

function readPack(book: Book, tree: Tree, path: Path, written: WrittenPack): Pack {
  const at = (...keys: string[]): Path => [...path, ...keys];
  const { film, case: box, pallet, code } = written;
  return {
    barsPerPack: written['bars per pack'].measure.value,
    ...present({
      film: film && {
        name: film.name,
        web: book.entered(tree, at('film', 'web'), film.web),
        cutOff: book.entered(tree, at('film', 'cut-off'), film['cut-off']),
        massPerArea: book.entered(tree, at('film', 'weight'), film.weight),
        ...present({
          price: film.price && book.entered(tree, at('film', 'price'), film.price),
          loss: film.loss && book.loss(tree, at('film', 'loss'), film.loss),
          reelLength: film.reel && book.entered(tree, at('film', 'reel'), film.reel),
          waterVapourTransmission:
            film['water vapour transmission'] &&
            book.entered(tree, at('film', 'water vapour transmission'), film['water vapour transmission']),
          window: film['seal window'] && book.entered(tree, at('film', 'seal window'), film['seal window']),
        }),
      },
      code: code === undefined ? undefined : { text: code, place: tree.place(at('code')) },
      case: box && {
        packs: box.packs.measure.value,
        ...present({
          tare: box.tare && book.entered(tree, at('case', 'tare'), box.tare),
          price: box.price && book.entered(tree, at('case', 'price'), box.price),
          extras: box['glue and tape'] && book.entered(tree, at('case', 'glue and tape'), box['glue and tape']),
          size: box.size && three(book, tree, at('case', 'size'), box.size),
        }),
      },
      pallet: pallet && {
        casesPerLayer: pallet['cases per layer'].measure.value,
        layers: pallet.layers.measure.value,
        ...present({ tare: pallet.tare && book.entered(tree, at('pallet', 'tare'), pallet.tare) }),
      },
    }),
  };
}
