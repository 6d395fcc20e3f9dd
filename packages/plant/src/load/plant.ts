import type * as z from 'zod';
import { nearest } from '../nearest.js';
import type { Tree } from '../read/tree.js';
import type { plantFile } from '../schema/files.js';
import type { Plant, Validation } from '../types.js';
import { currencies } from '../units/currencies.js';
import { present, type Book, type Page } from './book.js';

export type PlantFile = z.output<typeof plantFile>;

type Own = Omit<Plant, 'materials' | 'components' | 'bars' | 'lines' | 'plans' | 'checks'>;

/** What plant.yaml itself says. Sets the currency of the book: read it before anything with a price. */
export function readPlant(book: Book, { tree, value }: Page<PlantFile>): Own {
  const { plant } = value;
  book.currency = currencyOf(book, tree, plant.currency);
  checkTimeZone(book, tree, plant['time zone']);
  return {
    name: plant.name,
    altitude: book.entered(tree, ['plant', 'altitude'], plant.altitude),
    currency: plant.currency,
    timeZone: plant['time zone'],
    market: plant.market,
    shifts: value.shifts ?? [],
    scales: scalesOf(book, tree, value.scales ?? []),
    validations: validationsOf(book, tree, value.validations ?? []),
    changeover: value.changeover ?? [],
    ...present({
      barometer: plant.barometer && book.entered(tree, ['plant', 'barometer'], plant.barometer),
      startUp: value['start-up'] && book.entered(tree, ['start-up'], value['start-up']),
      shutDown: value['shut-down and clean'] && book.entered(tree, ['shut-down and clean'], value['shut-down and clean']),
    }),
  };
}

function currencyOf(book: Book, tree: Tree, code: string): string | undefined {
  if (currencies.has(code)) return code;
  const meant = nearest(code, currencies);
  book.complain(tree, ['plant', 'currency'], {
    code: 'UNKNOWN_CURRENCY',
    message: `'${code.slice(0, 20)}' is no ISO 4217 currency code`,
    expected: 'three letters, such as EUR',
    ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
  });
  return undefined;
}

/** Names that were asked for and are good: asking takes as long as reading a small file. */
const goodZones = new Set<string>();

function checkTimeZone(book: Book, tree: Tree, zone: string): void {
  if (goodZones.has(zone)) return;
  try {
    if (zone.length > 60) throw new RangeError(zone);
    new Intl.DateTimeFormat('en', { timeZone: zone });
    goodZones.add(zone);
  } catch {
    const meant = nearest(zone, Intl.supportedValuesOf('timeZone'));
    book.complain(tree, ['plant', 'time zone'], {
      code: 'UNKNOWN_TIME_ZONE',
      message: `'${zone.slice(0, 40)}' is no IANA time zone`,
      expected: 'a name such as Europe/London',
      ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
    });
  }
}

function scalesOf(book: Book, tree: Tree, written: NonNullable<PlantFile['scales']>): Plant['scales'] {
  const scales = written.map((scale) => ({ upTo: scale['up to'].measure.value, division: scale.division.measure.value }));
  scales.forEach(({ upTo, division }, index) => {
    if (division > upTo)
      book.complain(tree, ['scales', index, 'division'], {
        code: 'IMPOSSIBLE',
        message: 'The division is larger than the scale',
        expected: `a division below ${upTo} kg`,
      });
    if (index > 0 && upTo <= scales[index - 1]!.upTo)
      book.complain(tree, ['scales', index], {
        code: 'IMPOSSIBLE',
        message: 'The scales are not in ascending order',
        expected: 'the smallest scale first',
      });
  });
  return scales;
}

function validationsOf(book: Book, tree: Tree, written: NonNullable<PlantFile['validations']>): Validation[] {
  const made = written.map(({ id, step, claim, kind, 'holds for': holds }, index): Validation => {
    const path = ['validations', index];
    return { id, step, claim, kind, limits: book.named(tree, [...path, 'holds for'], holds), place: tree.place(path) };
  });
  book.refuseTwins(
    tree,
    made.map(({ id }, index) => ({
      name: id,
      slug: book.slug(tree, ['validations', index, 'id'], id),
      path: ['validations', index, 'id'],
    })),
  );
  return made;
}
