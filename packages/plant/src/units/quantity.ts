import type { ProblemCode } from '../codes.js';
import { nearest } from '../nearest.js';
import { clip, readNumber } from './numbers.js';
import { currencies } from './currencies.js';
import {
  dimensions,
  dimensionNames,
  dimensionsOf,
  factorOf,
  inward,
  priceThings,
  spellingsOf,
  tidyUnit,
  type Dimension,
  type UnitFactor,
} from './table.js';

/** How the quantity was written: '≤' and '≥' give no aim, a range gives its middle as the value. */
export type Form = 'value' | 'plus-minus' | 'at most' | 'at least' | 'range';

/** A quantity read from text, in the unit used inside. */
export interface Measure {
  readonly dimension: Dimension;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly form: Form;
  readonly text: string;
  /** As written, tidied: '°C', 'g/m²'. */
  readonly unit: string;
  /** ISO 4217 code, where it is money. */
  readonly currency?: string;
  /** 'drum' in '210 EUR/drum', when no mass of it was given: the value is still per drum. */
  readonly per?: string;
}

export interface Fault {
  readonly code: ProblemCode;
  readonly message: string;
  readonly expected?: string;
  readonly advice?: string;
}

export type Parsed = { readonly ok: true; readonly measure: Measure } | { readonly ok: false; readonly fault: Fault };

export interface ParseContext {
  /** The plant's currency; money in another is a fault. Left out: any. */
  readonly currency?: string;
  /** Mass in a package, kg: { drum: 300 }. */
  readonly packages?: Readonly<Record<string, number>>;
}

const prefixes: readonly (readonly [RegExp, 'at most' | 'at least'])[] = [
  [/^(≤|<=|=<|<|at most |max\.? |maximum |up to |not above )\s*/i, 'at most'],
  [/^(≥|>=|=>|>|at least |min\.? |minimum |not below )\s*/i, 'at least'],
];
const plusMinus = /\s*(?:±|\+\s?\/?\s?[-−])\s*/;
const mayBeRange = /\sto\s|[–…]|\.\./;
const rangeSign = /\s+to\s+|\s*[–…]\s*|\s*\.\.\.?\s*/;

/**
 * Reads a quantity as people write it: '118 °C', '9.5 % ± 0.4 %', '≤ 0.05', '124 °C to 142 °C', '1,050 bars/min'.
 * A plain number is taken only where the dimension is a count or plain. Never throws.
 * @param dimension - what it must be; 'any' takes whatever the unit says
 * @example parseQuantity('244 °F', 'temperature') // value 117.78, unit '°F'
 */
export function parseQuantity(written: string | number, dimension: Dimension | 'any', context: ParseContext = {}): Parsed {
  const text = typeof written === 'number' ? String(written) : written.trim();
  if (text === '') return fault('NOT_A_NUMBER', 'Nothing came', expectedOf(dimension));
  if (text.length > 200) return fault('NOT_A_NUMBER', `'${clip(text)}' is too long for a quantity`, expectedOf(dimension));
  const startsWithNumber = text.charCodeAt(0) <= 57 && text[0] !== '.';
  for (const [sign, form] of startsWithNumber ? [] : prefixes) {
    const found = sign.exec(text);
    if (!found) continue;
    const end = readPart(text.slice(found[0].length), dimension, context);
    if ('code' in end) return { ok: false, fault: end };
    return measure(end, { text, form, value: end.value, ...(form === 'at most' ? { high: end.value } : { low: end.value }) });
  }
  const around = text.includes('±') || text.includes('+', 1) ? text.split(plusMinus) : [];
  if (around.length === 2) return readPlusMinus(text, around as [string, string], dimension, context);
  const ends = mayBeRange.test(text) ? text.split(rangeSign) : [];
  if (ends.length === 2 && ends[0] !== '') return readRange(text, ends as [string, string], dimension, context);
  const part = readPart(text, dimension, context);
  return 'code' in part ? { ok: false, fault: part } : measure(part, { text, form: 'value', value: part.value });
}

interface Part {
  readonly dimension: Dimension;
  readonly number: number;
  readonly value: number;
  readonly unit: string;
  readonly factor: UnitFactor;
  readonly currency?: string;
  readonly per?: string;
}

function measure(part: Part, rest: { text: string; form: Form; value: number; low?: number; high?: number }): Parsed {
  const money = {
    ...(part.currency === undefined ? {} : { currency: part.currency }),
    ...(part.per === undefined ? {} : { per: part.per }),
  };
  return { ok: true, measure: { dimension: part.dimension, unit: part.unit, ...rest, ...money } };
}

function readPart(text: string, dimension: Dimension | 'any', context: ParseContext): Part | Fault {
  const read = readNumber(text.trim());
  if (!read.ok)
    return {
      code: read.code,
      message: read.message,
      ...expectedOf(dimension),
      ...(read.advice === undefined ? {} : { advice: read.advice }),
    };
  const unit = unitOf(tidyUnit(read.rest), dimension, context, read.value);
  if ('code' in unit) return unit;
  return { ...unit, number: read.value, value: inward(read.value, unit.factor) };
}

function readPlusMinus(text: string, [middle, spread]: [string, string], dimension: Dimension | 'any', context: ParseContext): Parsed {
  const tail = readNumber(spread);
  if (!tail.ok)
    return {
      ok: false,
      fault: { code: tail.code, message: `After ±: ${tail.message}`, ...(tail.advice === undefined ? {} : { advice: tail.advice }) },
    };
  const head = readNumber(middle);
  const inherits = head.ok && head.rest === '' && tail.rest !== '';
  const part = readPart(inherits ? `${middle} ${tail.rest}` : middle, dimension, context);
  if ('code' in part) return { ok: false, fault: part };
  const unit = tidyUnit(tail.rest);
  if (tail.value < 0) return fault('IMPOSSIBLE', `± ${tail.value} is below zero`, { expected: 'a tolerance of 0 or more' });
  if (unit === '' || unit === part.unit) {
    // Added up as written: 9.5 % + 0.4 % is 9.9 %, not 9.899999999999999 %.
    const end = (number: number): number => inward(Number(number.toPrecision(14)), part.factor);
    return measure(part, {
      text,
      form: 'plus-minus',
      value: part.value,
      low: end(part.number - tail.value),
      high: end(part.number + tail.value),
    });
  }
  const size = spreadOf(part, tail.value, unit);
  if (typeof size !== 'number') return { ok: false, fault: size };
  return measure(part, { text, form: 'plus-minus', value: part.value, low: part.value - size, high: part.value + size });
}

/** Half-width in the inside unit; of a temperature it is a difference; '±5 %' of what is no share is relative. */
function spreadOf(part: Part, size: number, unit: string): number | Fault {
  const temperature = part.dimension === 'temperature';
  const found = factorOf(temperature ? 'temperature difference' : part.dimension, unit);
  if (found) return inward(size, found.factor);
  if (unit === '%' && !temperature) return Math.abs(part.value) * (size / 100);
  if (part.currency !== undefined && unit.startsWith(part.currency)) return inward(size, { ...part.factor, offset: 0 });
  return unitFault(unit, temperature ? 'temperature difference' : part.dimension);
}

function readRange(text: string, [from, to]: [string, string], dimension: Dimension | 'any', context: ParseContext): Parsed {
  const upper = readPart(to, dimension, context);
  if ('code' in upper) return { ok: false, fault: upper };
  const head = readNumber(from.trim());
  const lower = readPart(head.ok && head.rest === '' ? `${from.trim()} ${upper.unit}` : from, upper.dimension, context);
  if ('code' in lower) return { ok: false, fault: lower };
  if (lower.value > upper.value) return fault('LOW_ABOVE_HIGH', `'${clip(text)}' runs downwards`, { expected: 'the lower end first' });
  return measure(lower, { text, form: 'range', value: (lower.value + upper.value) / 2, low: lower.value, high: upper.value });
}

type UnitFound = Omit<Part, 'number' | 'value'>;

function unitOf(unit: string, dimension: Dimension | 'any', context: ParseContext, number: number): UnitFound | Fault {
  if (dimension === 'money' || dimension === 'money per mass') return moneyUnit(unit, dimension, context);
  if (dimension === 'any') return anyUnit(unit, context);
  const found = factorOf(dimension, unit);
  if (found) return { dimension, unit: unit === '' ? '' : found.name, factor: found.factor };
  if (unit === '') {
    const like = dimensions[dimension].metric[0] ?? dimensions[dimension].inside;
    return {
      code: 'UNIT_MISSING',
      message: `${number} stands without a unit`,
      expected: dimensions[dimension].label,
      advice: `Write the unit, such as '${number} ${like}'`,
    };
  }
  return unitFault(unit, dimension);
}

function anyUnit(unit: string, context: ParseContext): UnitFound | Fault {
  const preferred: Dimension | undefined = unit === '' ? 'plain' : unit === 'K' ? 'temperature difference' : undefined;
  for (const dimension of preferred ? [preferred] : dimensionNames) {
    const found = factorOf(dimension, unit);
    if (found) return { dimension, unit: found.name, factor: found.factor };
  }
  if (currencies.has(unit.slice(0, 3)))
    return moneyUnit(unit, unit.includes('/') && !priceThings.has(unit.slice(4)) ? 'money per mass' : 'money', context);
  return unitFault(unit, 'any');
}

const symbols: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP', $: 'USD', '¥': 'JPY' };

function moneyUnit(unit: string, dimension: 'money' | 'money per mass', context: ParseContext): UnitFound | Fault {
  const example = dimension === 'money' ? `0.19 ${context.currency ?? 'EUR'}` : `0.85 ${context.currency ?? 'EUR'}/kg`;
  const expected = `${dimensions[dimension].label}, such as '${example}'`;
  const [currency = '', per, ...more] = unit.split('/');
  if (unit === '') return { code: 'UNIT_MISSING', message: 'A price stands without a unit', expected };
  if (!currencies.has(currency)) {
    const meant = symbols[currency] ?? nearest(currency, currencies);
    if (dimensionsOf(unit).length > 0) return unitFault(unit, dimension);
    return {
      code: 'UNKNOWN_CURRENCY',
      message: `'${clip(currency)}' is no ISO 4217 currency code`,
      expected,
      ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
    };
  }
  if (context.currency !== undefined && currency !== context.currency) {
    return {
      code: 'WRONG_CURRENCY',
      message: `The price is in ${currency}, the plant counts in ${context.currency}`,
      expected,
      advice: `Write the price in ${context.currency}`,
    };
  }
  if (more.length > 0) return { code: 'UNKNOWN_UNIT', message: `Unit '${clip(unit)}' is not known`, expected };
  const one: UnitFactor = { factor: 1, offset: 0 };
  if (dimension === 'money') {
    if (per === undefined || priceThings.has(per)) return { dimension, unit, factor: one, currency };
    return { code: 'WRONG_DIMENSION', message: `A sum of money expected, got a price per '${clip(per)}'`, expected };
  }
  if (per === undefined)
    return {
      code: 'WRONG_DIMENSION',
      message: 'A price per mass expected, got a sum of money',
      expected,
      advice: 'Say for how much: per kg, per lb, per drum',
    };
  const massUnit = factorOf('mass', per);
  if (massUnit)
    return {
      dimension,
      unit: `${currency}/${massUnit.name}`,
      factor: { factor: 1 / massUnit.factor.factor, offset: 0, divisor: massUnit.factor.factor },
      currency,
    };
  const inPackage = context.packages !== undefined && Object.hasOwn(context.packages, per) ? context.packages[per]! : undefined;
  if (inPackage !== undefined) return { dimension, unit, factor: { factor: 1 / inPackage, offset: 0, divisor: inPackage }, currency };
  if (/^[a-z][a-z ]{0,20}$/i.test(per)) return { dimension, unit, factor: one, currency, per };
  return { code: 'UNKNOWN_UNIT', message: `'${clip(per)}' is neither a mass nor a package`, expected };
}

function unitFault(unit: string, dimension: Dimension | 'any'): Fault {
  const elsewhere = dimensionsOf(unit);
  if (dimension !== 'any' && elsewhere.length > 0) {
    const { label } = dimensions[dimension];
    const subject = label.charAt(0).toUpperCase() + label.slice(1);
    return {
      code: 'WRONG_DIMENSION',
      message: `${subject} expected, got ${dimensions[elsewhere[0]!].label} ('${clip(unit)}')`,
      expected: unitsExpected(dimension),
    };
  }
  const known = new Map((dimension === 'any' ? dimensionNames : [dimension]).flatMap((name) => [...spellingsOf(name)]));
  const near = nearest(unit, known.keys());
  const meant = near === undefined ? undefined : known.get(near);
  const expected = dimension === 'any' ? 'a known unit' : unitsExpected(dimension);
  return {
    code: 'UNKNOWN_UNIT',
    message: `Unit '${clip(unit)}' is not known`,
    expected,
    ...(meant ? { advice: `Did you mean '${meant}'?` } : {}),
  };
}

function unitsExpected(dimension: Dimension): string {
  const { label, metric, us } = dimensions[dimension];
  const units = [...new Set([...metric, ...us])].filter((unit) => unit !== '');
  return units.length > 0 ? `${label} in ${units.slice(0, 8).join(', ')}` : label;
}

function expectedOf(dimension: Dimension | 'any'): { expected: string } {
  if (dimension === 'any') return { expected: "a number with its unit, such as '118 °C' or '9.5 % ± 0.4 %'" };
  const { label, metric } = dimensions[dimension];
  return { expected: metric[0] ? `${label}, such as '1 ${metric[0]}'` : label };
}

function fault(code: ProblemCode, message: string, more: { expected?: string; advice?: string } = {}): Parsed {
  return { ok: false, fault: { code, message, ...more } };
}
