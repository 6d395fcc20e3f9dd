import * as z from 'zod';
import type { ProblemCode } from '../codes.js';
import { nearest } from '../nearest.js';
import { clip } from '../units/numbers.js';
import { parseQuantity, type Fault, type Measure, type ParseContext } from '../units/quantity.js';
import { dimensions, type Dimension } from '../units/table.js';

/** A quantity as it stands in a file: its measure and what was noted beside it. */
export interface Reading {
  readonly measure: Measure;
  readonly source?: string;
  readonly standing?: string;
  readonly note?: string;
  readonly reaction?: string;
}

export const standings = ['found', 'secondhand', 'memory', 'plant', 'placeholder', 'entered'] as const;

export interface QuantityOptions {
  /** May be below zero although the dimension is not. */
  readonly signed?: boolean;
  /** Must be above zero. */
  readonly positive?: boolean;
  /** Whole numbers only. */
  readonly whole?: boolean;
  /** Least and greatest possible value, inside unit. */
  readonly possible?: readonly [number, number];
  /** The upper end itself is not possible. */
  readonly below?: boolean;
  /** Further keys of the object form. */
  readonly keys?: readonly string[];
}

/** The part of zod's context that a leaf uses. */
interface LeafContext {
  readonly issues: unknown[];
}

/** Adds an issue that carries our code; `path` is relative to the leaf. */
export function complain(ctx: LeafContext, fault: Fault, path: readonly (string | number)[] = []): void {
  ctx.issues.push({ code: 'custom', input: undefined, message: fault.message, path: [...path], params: fault });
}

const noteKeys = ['source', 'standing', 'note'] as const;
export const windowKeys = ['value', 'aim', 'low', 'high', ...noteKeys] as const;

/** Plain string or number, or `{ value, low, high, source, standing, note }`. What comes out is the Reading. */
export function quantity(dimension: Dimension | 'any', options: QuantityOptions = {}) {
  return z
    .unknown()
    .transform((input, ctx): Reading => readQuantity(input, dimension, options, ctx) ?? (z.NEVER as never))
    .meta(quantityDocument(dimension, options));
}

export function readQuantity(
  input: unknown,
  dimension: Dimension | 'any',
  options: QuantityOptions,
  ctx: LeafContext,
  context: ParseContext = {},
): Reading | undefined {
  if (typeof input === 'string' || typeof input === 'number') {
    const measure = readMeasure(input, dimension, options, ctx, context, []);
    return measure && { measure };
  }
  if (!isMapping(input)) {
    const label = dimension === 'any' ? 'a quantity' : dimensions[dimension].label;
    complain(ctx, missingOrWrong(input, `${label} with its unit, or { value: …, source: … }`));
    return undefined;
  }
  return readWindow(input, dimension, options, ctx, context);
}

function readWindow(
  input: Record<string, unknown>,
  dimension: Dimension | 'any',
  options: QuantityOptions,
  ctx: LeafContext,
  context: ParseContext,
): Reading | undefined {
  const before = ctx.issues.length;
  refuseUnknown(input, [...windowKeys, ...(options.keys ?? [])], ctx);
  const notes = readNotes(input, ctx);
  const aimKey = Object.hasOwn(input, 'aim') ? 'aim' : 'value';
  if (Object.hasOwn(input, 'aim') && Object.hasOwn(input, 'value'))
    complain(ctx, { code: 'NOT_ONE_OF', message: "Both 'aim' and 'value' stand here", expected: 'one of them' });
  const parts: Partial<Record<'aim' | 'low' | 'high', Measure>> = {};
  for (const key of ['aim', 'low', 'high'] as const) {
    const name = key === 'aim' ? aimKey : key;
    if (!Object.hasOwn(input, name)) continue;
    const value = input[name];
    const of = key === 'aim' ? dimension : (parts.aim?.dimension ?? dimension);
    const read = typeof value === 'string' || typeof value === 'number' ? readMeasure(value, of, options, ctx, context, [name]) : undefined;
    if (read) parts[key] = read;
    else if (typeof value !== 'string' && typeof value !== 'number') complain(ctx, missingOrWrong(value, 'a number with its unit'), [name]);
  }
  if (ctx.issues.length > before) return undefined;
  const { aim, low, high } = parts;
  const any = aim ?? low ?? high;
  if (!any) {
    complain(ctx, { code: 'MISSING_KEY', message: "'value' is missing", expected: 'value, or low and high' });
    return undefined;
  }
  const lowest = low?.value ?? aim?.low;
  const highest = high?.value ?? aim?.high;
  if (lowest !== undefined && highest !== undefined && lowest > highest) {
    complain(ctx, {
      code: 'LOW_ABOVE_HIGH',
      message: `The lower end '${low?.text ?? aim?.text}' lies above the upper end '${high?.text ?? aim?.text}'`,
    });
    return undefined;
  }
  const value = aim?.value ?? (low && high ? (low.value + high.value) / 2 : any.value);
  if ((lowest !== undefined && value < lowest) || (highest !== undefined && value > highest)) {
    complain(
      ctx,
      { code: 'AIM_OUTSIDE', message: `'${any.text}' lies outside its own window`, expected: 'low ≤ value ≤ high' },
      aim ? [aimKey] : [],
    );
    return undefined;
  }
  const ends = `${low?.text ?? '…'} to ${high?.text ?? '…'}`;
  const text = low || high ? (aim ? `${aim.text} (${ends})` : ends) : any.text;
  const form = aim ? aim.form : low && high ? 'range' : low ? 'at least' : 'at most';
  const measure: Measure = {
    ...any,
    value,
    text,
    form,
    ...(lowest === undefined ? {} : { low: lowest }),
    ...(highest === undefined ? {} : { high: highest }),
  };
  return { measure, ...notes };
}

function readMeasure(
  input: string | number,
  dimension: Dimension | 'any',
  options: QuantityOptions,
  ctx: LeafContext,
  context: ParseContext,
  path: string[],
): Measure | undefined {
  const parsed = parseQuantity(input, dimension, context);
  if (!parsed.ok) {
    complain(ctx, parsed.fault, path);
    return undefined;
  }
  const wrong = impossible(parsed.measure, options);
  if (wrong) complain(ctx, wrong, path);
  return wrong ? undefined : parsed.measure;
}

/** A fault where the value cannot be. Lower ends of a tolerance may fall below zero: '0.1 ± 0.2' is a poor figure, not a wrong one. */
function impossible(measure: Measure, options: QuantityOptions): Fault | undefined {
  const { value, text, dimension } = measure;
  const spec = dimensions[dimension];
  const what = clip(text);
  if (!Number.isFinite(value)) return { code: 'NOT_FINITE', message: `'${what}' is not a finite number` };
  if (dimension === 'temperature' && value < -273.15) return { code: 'IMPOSSIBLE', message: `'${what}' is below absolute zero` };
  if (!(options.signed ?? spec.signed) && value < 0)
    return { code: 'IMPOSSIBLE', message: `'${what}' is negative`, expected: `${spec.label} of 0 or more` };
  if (options.positive && !(value > 0))
    return { code: 'IMPOSSIBLE', message: `'${what}' is not above 0`, expected: `${spec.label} above 0` };
  if (options.whole && !Number.isInteger(value))
    return { code: 'IMPOSSIBLE', message: `'${what}' is not a whole number`, expected: 'a whole number' };
  if (options.possible) {
    const [least, most] = options.possible;
    const ends = [value, measure.low ?? value, measure.high ?? value];
    if (value < least || ends.some((end) => end > most) || (options.below && value >= most)) {
      return {
        code: 'IMPOSSIBLE',
        message: `'${what}' cannot be`,
        expected: `${show(least, dimension)} to ${options.below ? 'below ' : ''}${show(most, dimension)}`,
      };
    }
  }
  return undefined;
}

function show(value: number, dimension: Dimension): string {
  return dimension === 'fraction' ? `${value * 100} %` : `${value} ${dimensions[dimension].inside}`;
}

export function readNotes(
  input: Record<string, unknown>,
  ctx: LeafContext,
): { source?: string; standing?: string; note?: string; reaction?: string } {
  const notes: { source?: string; standing?: string; note?: string; reaction?: string } = {};
  for (const key of ['source', 'note', 'reaction'] as const) {
    const value = input[key];
    if (value === undefined) continue;
    if (typeof value === 'string' || typeof value === 'number') notes[key] = String(value);
    else complain(ctx, missingOrWrong(value, 'words'), [key]);
  }
  const standing = input['standing'];
  if (standing !== undefined) {
    if (typeof standing === 'string' && (standings as readonly string[]).includes(standing)) notes.standing = standing;
    else complain(ctx, notOneOf(standing, standings), ['standing']);
  }
  return notes;
}

export function refuseUnknown(input: Record<string, unknown>, known: readonly string[], ctx: LeafContext): void {
  for (const key of Object.keys(input)) if (!known.includes(key)) complain(ctx, unknownKey(key, known, input[key]), [key]);
}

/** `value` null betrays a sentence with a comma inside { }: YAML begins a new key there. */
export function unknownKey(key: string, known: readonly string[], value?: unknown): Fault {
  const meant = nearest(key, known);
  const comma = value === null && !meant ? { advice: 'A comma inside { } begins a new key: put the sentence in quotes' } : {};
  return {
    code: 'UNKNOWN_KEY',
    message: `'${clip(key)}' is not known here`,
    expected: known.length > 0 ? `one of: ${known.join(', ')}` : 'no key',
    ...comma,
    ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
  };
}

export function notOneOf(came: unknown, allowed: readonly (string | number)[]): Fault {
  if (came === undefined || came === null) return missingOrWrong(came, `one of: ${allowed.join(', ')}`);
  const meant = typeof came === 'string' ? nearest(came, allowed.map(String)) : undefined;
  const code: ProblemCode = 'NOT_ALLOWED';
  return {
    code,
    message: `'${describe(came)}' is not allowed here`,
    expected: `one of: ${allowed.join(', ')}`,
    ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
  };
}

export function missingOrWrong(came: unknown, expected: string): Fault {
  if (came === undefined) return { code: 'MISSING_KEY', message: 'Nothing stands here', expected };
  return { code: 'WRONG_TYPE', message: `Got ${describe(came)}`, expected };
}

export function describe(came: unknown): string {
  if (came === null || came === undefined) return 'nothing';
  if (Array.isArray(came)) return 'a list';
  if (typeof came === 'object') return 'a mapping';
  return clip(String(came));
}

export function isMapping(input: unknown): input is Record<string, unknown> {
  return typeof input === 'object' && input !== null && !Array.isArray(input);
}

/** Words; a bare number is taken as it was written. */
export function words(description: string) {
  return z
    .unknown()
    .transform((input, ctx): string => {
      if ((typeof input === 'string' && input.trim() !== '') || (typeof input === 'number' && Number.isFinite(input)))
        return String(input).trim();
      complain(ctx, missingOrWrong(input === '' ? null : input, `words: ${description}`));
      return z.NEVER;
    })
    .meta({ description, anyOf: [{ type: 'string', minLength: 1 }, { type: 'number' }] });
}

/** One of a few words. */
export function oneOf<const T extends string>(allowed: readonly T[], description: string) {
  return z
    .unknown()
    .transform((input, ctx): T => {
      if (typeof input === 'string' && (allowed as readonly string[]).includes(input)) return input as T;
      complain(ctx, notOneOf(input, allowed));
      return z.NEVER;
    })
    .meta({ description, enum: [...allowed] });
}

function quantityDocument(dimension: Dimension | 'any', options: QuantityOptions) {
  const spec = dimension === 'any' ? undefined : dimensions[dimension];
  const units = spec ? [...spec.metric, ...spec.us].filter((unit) => unit !== '') : [];
  const description = `${spec?.label ?? 'a quantity of any kind'}${units.length > 0 ? `: ${units.slice(0, 6).join(', ')}` : ''}`;
  const plain = [{ type: 'string' }, { type: 'number' }] as const;
  const keys = Object.fromEntries(
    [...windowKeys, ...(options.keys ?? [])].map((key) => [key, key === 'standing' ? { enum: [...standings] } : { anyOf: plain }]),
  );
  return { description, anyOf: [...plain, { type: 'object', properties: keys, additionalProperties: false }] };
}
