import * as z from 'zod';
import { constituents, mixingProperties, type CompositionKey } from '@barwright/science';
import { parseQuantity } from '../units/quantity.js';
import {
  complain,
  describe,
  isMapping,
  missingOrWrong,
  oneOf,
  quantity,
  readNotes,
  readQuantity,
  refuseUnknown,
  standings,
  windowKeys,
  words,
  type Reading,
} from './leaf.js';

/** Leaves and small shapes that several files share. */
export const format = z
  .unknown()
  .transform((input, ctx): 1 => {
    if (input === 1) return 1;
    complain(
      ctx,
      input === undefined
        ? missingOrWrong(input, 'format: 1')
        : { code: 'FORMAT_VERSION', message: `Format ${describe(input)} is not known`, expected: 'format: 1' },
    );
    return z.NEVER;
  })
  .meta({ description: 'Version of the file format', const: 1 });

export const mass = quantity('mass', { positive: true });
export const share = quantity('fraction', { possible: [0, 1] });
/** Wet basis on total mass; nothing can be all water and still be cooked. */
export const moisture = quantity('fraction', { possible: [0, 1], below: true });
export const lossShare = quantity('fraction', { possible: [0, 1], below: true });
export const variation = quantity('fraction', { possible: [0, 1] });
export const length = quantity('length', { positive: true });
export const time = quantity('time');
export const duration = quantity('time', { positive: true });
export const temperature = quantity('temperature');
export const density = quantity('density', { positive: true });
export const anything = quantity('any');
export const money = quantity('money');

export const text = words;
export const texts = (description: string) => z.array(words(description));
/** Name → value, in the order of the file. */
export const named = <T extends z.ZodType>(value: T) => z.record(z.string(), value);

export interface LossReading {
  readonly share: Reading;
  readonly of: 'made' | 'on bars';
}

const lossOf = ['made', 'on bars'] as const;

/** '1.5 % of made', '2 % of what ends on bars', or { share, of, source … }. */
export const loss = z
  .unknown()
  .transform((input, ctx): LossReading => {
    const expected = "'1.5 % of made' or '1.5 % of what ends on bars'";
    const mapping = isMapping(input);
    const written = mapping ? input['share'] : input;
    let of: unknown = mapping ? input['of'] : undefined;
    let amount: unknown = written;
    if (!mapping && typeof written === 'string') {
      const found = /^(.*?)\s+of\s+(?:what (?:is|ends) )?(.*)$/.exec(written.trim());
      amount = found?.[1] ?? written;
      of = found?.[2];
    }
    if (mapping) refuseUnknown(input, ['share', 'of', 'source', 'standing', 'note'], ctx);
    const read = readQuantity(amount, 'fraction', { possible: [0, 1], below: true }, ctx);
    if (of !== 'made' && of !== 'on bars') {
      complain(ctx, {
        code: 'NOT_ALLOWED',
        message: `A loss is a share of what is made or of what ends on bars; got ${of === undefined ? 'neither' : `'${describe(of)}'`}`,
        expected,
      });
      return z.NEVER;
    }
    if (!read) return z.NEVER;
    return { share: mapping ? { ...read, ...readNotes(input, ctx) } : read, of };
  })
  .meta({
    description: 'A share of what is made (gross = net / (1 − loss)) or of what ends on bars (gross = net · (1 + loss))',
    anyOf: [
      { type: 'string', pattern: ' of (made|on bars|what is made|what ends on bars)$' },
      {
        type: 'object',
        properties: { share: {}, of: { enum: [...lossOf] }, source: {}, standing: { enum: [...standings] }, note: {} },
        required: ['share', 'of'],
        additionalProperties: false,
      },
    ],
  });

export interface AmountReading {
  /** A share in per cent, or a mass to be divided by the sum. */
  readonly amount: Reading;
  readonly solids?: Reading;
}

/** What is added of a material: '36.0 %', '36 kg', or { amount: 36 %, solids: 79.8 % }. */
export const ingredient = z
  .unknown()
  .transform((input, ctx): AmountReading => {
    const object = isMapping(input) && Object.hasOwn(input, 'amount') ? input : undefined;
    if (object) refuseUnknown(object, ['amount', 'solids', 'source', 'standing', 'note'], ctx);
    const notes = object ? readNotes(object, ctx) : {};
    const written = object ? object['amount'] : input;
    const measured = isMapping(written) ? (written['value'] ?? written['aim']) : written;
    const parsed = typeof measured === 'string' ? parseQuantity(measured, 'any') : undefined;
    const dimension = parsed?.ok && parsed.measure.dimension === 'mass' ? 'mass' : 'fraction';
    if (parsed?.ok && parsed.measure.dimension !== 'mass' && parsed.measure.dimension !== 'fraction') {
      complain(ctx, {
        code: 'WRONG_DIMENSION',
        message: `An amount in per cent or a mass expected, got '${measured as string}'`,
        expected: "'36.0 %' or '36 kg'",
      });
      return z.NEVER;
    }
    const amount = readQuantity(written, dimension, dimension === 'fraction' ? { possible: [0, 1] } : {}, ctx);
    const solids =
      object && Object.hasOwn(object, 'solids') ? readQuantity(object['solids'], 'fraction', { possible: [0, 1] }, ctx) : undefined;
    if (!amount) return z.NEVER;
    return { amount: { ...amount, ...notes }, ...(solids ? { solids } : {}) };
  })
  .meta({
    description: 'Share of the raw charge in per cent, or a mass; { amount, solids } for a syrup of other solids',
    anyOf: [
      { type: 'string' },
      {
        type: 'object',
        properties: Object.fromEntries([...windowKeys, 'amount', 'solids'].map((key) => [key, {}])),
        additionalProperties: false,
      },
    ],
  });

/** 'atmosphere', or an absolute pressure. */
export const cookPressure = z
  .unknown()
  .transform((input, ctx): 'atmosphere' | Reading => {
    if (input === 'atmosphere') return input;
    const read = readQuantity(input, 'pressure', { positive: true }, ctx);
    return read ?? (z.NEVER as never);
  })
  .meta({
    description: "'atmosphere', or an absolute pressure such as '400 mbar'",
    anyOf: [{ const: 'atmosphere' }, { type: 'string' }, { type: 'object' }],
  });

/** 'rest' where a layer is what is missing to the target mass; otherwise a mass. */
export const layerMass = z
  .unknown()
  .transform((input, ctx): 'rest' | Reading => {
    if (input === 'rest') return input;
    return readQuantity(input, 'mass', { positive: true }, ctx) ?? (z.NEVER as never);
  })
  .meta({ description: "a mass on the bar, or 'rest'", anyOf: [{ const: 'rest' }, { type: 'string' }, { type: 'object' }] });

/** Keys of a composition as they are written: with spaces. */
export const compositionWords: ReadonlyMap<string, CompositionKey> = new Map(
  [...constituents, ...mixingProperties].filter((key) => key !== 'higher_saccharides_mol').map((key) => [key.replaceAll('_', ' '), key]),
);

const compositionShape = Object.fromEntries([...compositionWords.keys()].map((word) => [word, share.optional()]));

export const composition = z.strictObject({
  ...(compositionShape as Record<string, z.ZodOptional<typeof share>>),
  'mean molar mass': quantity('molar mass', { positive: true }).optional(),
  DE: quantity('plain', { possible: [0, 100] }).optional(),
  source: words('where the figures come from').optional(),
  standing: oneOf(standings, 'how far they may be trusted').optional(),
  note: words('what was changed').optional(),
});

export const clock = z
  .unknown()
  .transform((input, ctx): string => {
    if (typeof input === 'string' && /^([01]\d|2[0-3]):[0-5]\d$/.test(input)) return input;
    complain(
      ctx,
      input === undefined
        ? missingOrWrong(input, '"HH:MM"')
        : { code: 'BAD_TIME', message: `'${describe(input)}' is no time of day`, expected: '"HH:MM", 00:00 to 23:59' },
    );
    return z.NEVER;
  })
  .meta({ description: 'Local time of day, HH:MM', type: 'string', pattern: '^([01]\\d|2[0-3]):[0-5]\\d$' });

export const date = z
  .unknown()
  .transform((input, ctx): string => {
    if (typeof input === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(input) && isDay(input)) return input;
    complain(ctx, { code: 'BAD_TIME', message: `'${describe(input)}' is no date`, expected: 'YYYY-MM-DD' });
    return z.NEVER;
  })
  .meta({ description: 'Calendar day, YYYY-MM-DD', type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' });

function isDay(written: string): boolean {
  const day = new Date(`${written}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(written);
}
