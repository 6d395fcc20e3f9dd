import type * as z from 'zod';
import type { Path, Tree } from '../read/tree.js';
import type { lineFile } from '../schema/files.js';
import type { Line, Rate, SetPoint, Station } from '../types.js';
import { present, type Book, type Page } from './book.js';

export type LineFile = z.output<typeof lineFile>;
type WrittenStation = LineFile['line']['stations'][number];

/** One line with its stations. Names it refers to are checked when everything is read. */
export function readLine(book: Book, { tree, value }: Page<LineFile>): Line {
  const path = ['line'];
  const at = (...keys: (string | number)[]): Path => [...path, ...keys];
  const written = value.line;
  const stations = written.stations.map((station, index) => readStation(book, tree, at('stations', index), station));
  book.refuseTwins(
    tree,
    stations.map(({ name, slug }, index) => ({ name, slug, path: at('stations', index, 'station') })),
  );
  return {
    name: written.name,
    slug: book.slug(tree, at('name'), written.name),
    lanes: book.entered(tree, at('lanes'), written.lanes),
    edgeTrim: book.entered(tree, at('edge trim'), written['edge trim']),
    slabSpeed: book.entered(tree, at('slab speed'), written['slab speed']),
    gap: book.entered(tree, at('gap'), written.gap),
    stations,
    transit: book.named(tree, at('transit'), written.transit).map(({ name, slug, value: time }) => ({ to: name, slug, time })),
    place: tree.place(path),
    ...present({
      accumulation: written.accumulation && book.entered(tree, at('accumulation'), written.accumulation),
      scrap: written.scrap && book.entered(tree, at('scrap'), written.scrap),
      trimGoesTo: written['trim goes to'],
    }),
  };
}

function readStation(book: Book, tree: Tree, path: Path, written: WrittenStation): Station {
  const at = (key: string): Path => [...path, key];
  const enter = (key: 'holds' | 'length' | 'width' | 'time between stops' | 'time to repair') => {
    const reading = written[key];
    return reading && book.entered(tree, at(key), reading);
  };
  return {
    name: written.station,
    slug: book.slug(tree, at('station'), written.station),
    counts: written.counts ?? 'out',
    count: written.count?.measure.value ?? 1,
    setPoints: setPointsOf(book, tree, at('set points'), written),
    cautions: written.cautions ?? [],
    place: tree.place(path),
    ...present({
      works: written.works,
      stage: written.stage,
      rate: rateOf(book, tree, path, written),
      usedElsewhere: elsewhere(book, tree, path, written),
      holds: enter('holds'),
      length: enter('length'),
      width: enter('width'),
      meanTimeBetweenStops: enter('time between stops'),
      meanTimeToRepair: enter('time to repair'),
    }),
  };
}

function setPointsOf(book: Book, tree: Tree, path: Path, written: WrittenStation): SetPoint[] {
  const readings = written['set points'];
  return book.named(tree, path, readings).map((point) => ({ ...point, ...present({ reaction: readings?.[point.name]?.reaction }) }));
}

const counted = { bars: 'bars', packs: 'packs', cases: 'cases' } as const;

/** What the rate counts follows from its unit; a load has its mass and its cycle. */
function rateOf(book: Book, tree: Tree, path: Path, { rate, load, cycle }: WrittenStation): Rate | undefined {
  if (rate && (load || cycle)) {
    book.complain(tree, path, {
      code: 'NOT_ONE_OF',
      message: 'Both a rate and a load are written',
      expected: "'rate', or 'load' and 'cycle'",
    });
    return undefined;
  }
  if (load || cycle) {
    if (load && cycle)
      return { by: 'loads', load: book.entered(tree, [...path, 'load'], load), cycle: book.entered(tree, [...path, 'cycle'], cycle) };
    book.complain(tree, path, {
      code: 'MISSING_KEY',
      message: `'${load ? 'cycle' : 'load'}' is missing beside '${load ? 'load' : 'cycle'}'`,
      expected: "both 'load: 3000 kg' and 'cycle: 8 h'",
    });
    return undefined;
  }
  if (!rate) return undefined;
  const entered = book.entered(tree, [...path, 'rate'], rate);
  if (rate.measure.dimension === 'mass rate') return { by: 'mass', rate: entered };
  const word = rate.measure.dimension === 'count rate' ? rate.measure.unit.split('/')[0]! : undefined;
  if (word !== undefined && Object.hasOwn(counted, word)) return { by: counted[word as keyof typeof counted], rate: entered };
  book.complain(tree, [...path, 'rate'], {
    code: 'WRONG_DIMENSION',
    message: `'${rate.measure.text}' is no rate of a station`,
    expected: 'a mass rate (kg/h, lb/h), or bars/min, packs/min, cases/min',
  });
  return undefined;
}

function elsewhere(book: Book, tree: Tree, path: Path, { rate, load, 'used elsewhere': used }: WrittenStation): Station['usedElsewhere'] {
  if (!used) return undefined;
  const at = [...path, 'used elsewhere'];
  const of = load ? 'mass rate' : rate?.measure.dimension;
  if (of === undefined || used.measure.dimension === of) return book.entered(tree, at, used);
  book.complain(tree, at, {
    code: 'WRONG_DIMENSION',
    message: `'${used.measure.text}' is not of the kind of the station's rate`,
    expected: load ? 'a mass rate, such as 200 kg/h' : `a rate like '${rate!.measure.text}'`,
  });
  return undefined;
}
