import { sill, type NumberStanding } from '@barwright/drawing';
import type { Quantity, State } from '@barwright/chain';
import { inWords, presentation, shownWindow } from '@barwright/line';
import { formatNumber } from '@barwright/plant';
import type { Engine } from '../engine.js';
import type { AskedFor, Cell, Field, FigureTable, Said } from '../trial-protocol.js';
import { quantityOf, whole } from '../words.js';

export { capital } from '../words.js';

/** A number and its unit stay on one line: a thin space before a sign, a whole one before a word. */
export const tight = (text: string): string =>
  whole(text)
    .replaceAll(/(\d) (?=(%|°C|K|Pa|g|kg|kW|mm|m|s|h|µg)(?![\p{L}]))/gu, '$1\u202f')
    .replaceAll(/(\d) (?=(min|log|points|bars|readings)(?![\p{L}]))/gu, '$1\u00a0');

/** '17 Mar 13:30 to 14:30': a day that both ends share is said once. */
export function span(from: string, to: string): string {
  const day = /^(\d+ \p{L}+) \d/u.exec(from)?.[1];
  return `${from} to ${day !== undefined && to.startsWith(`${day} `) ? to.slice(day.length + 1) : to}`;
}

/** How a number that is no quantity of the chain is written: the unit inside, the one shown, digits. */
export type Look = Pick<Quantity, 'unit' | 'show' | 'decimals'>;
export const looks = {
  celsius: { unit: '°C', decimals: 1 },
  kelvin: { unit: 'K', decimals: 1 },
  density: { unit: 'kg/m³', show: 'g/cm³', decimals: 3 },
  gram: { unit: 'kg', show: 'g', decimals: 1 },
  millimetre: { unit: 'm', show: 'mm', decimals: 2 },
  kilowatt: { unit: 'W', show: 'kW', decimals: 1 },
  perHour: { unit: 'kg/h', decimals: 0 },
  pascal: { unit: 'Pa', decimals: 1 },
  pascalSecond: { unit: 'Pa·s', decimals: 2 },
  metrePerSecond: { unit: 'm/s', decimals: 1 },
  metre: { unit: 'm', decimals: 0 },
  belt: { unit: 'm/s', show: 'm/min', decimals: 2 },
} as const satisfies Record<string, Look>;

/** A number with fixed digits, a true minus and thin spaces that do not break. */
export const n = (value: number, digits: number): string => whole(formatNumber(value, digits));

const asQuantity = (look: Look): Quantity => ({ id: '', meaning: '', ...look }) as Quantity;

/** Writes numbers as this person reads them, and the numbers of the chain with their windows. */
export class Words {
  constructor(readonly engine: Engine) {}

  get units() {
    return this.engine.shownUnits;
  }

  /** '20.5 °C' */
  amount(value: number, look: Look): string {
    return whole(inWords(asQuantity(look), value, this.units));
  }

  /** From the unit inside to the one shown. */
  shown(value: number, look: Look): number {
    return presentation(asQuantity(look), this.units).toShown(value);
  }

  unit(look: Look): string {
    return presentation(asQuantity(look), this.units).unit;
  }

  inside(shown: number, look: Look): number {
    return presentation(asQuantity(look), this.units).toInside(shown);
  }

  range(low: number, high: number, look: Look): string {
    const { decimals, toShown } = presentation(asQuantity(look), this.units);
    return `${n(toShown(low), decimals)} to ${n(toShown(high), decimals)}`;
  }

  cell(value: number, look: Look, rest: Omit<Cell, 'text'> = {}): Cell {
    return { text: Number.isFinite(value) ? this.amount(value, look) : '–', ...rest };
  }

  /** A number of the chain in a state, on its window; nothing where the chain lacks it. */
  chainCell(id: string, state: State): Cell {
    const quantity = quantityOf(this.engine.from.chain, id);
    if (!quantity || !state.status(id).ok) return { text: '–' };
    const value = state.number(id);
    const window = shownWindow(quantity, this.units);
    const shown = presentation(quantity, this.units).toShown(value);
    const out =
      window && ((window.low !== undefined && shown < window.low - 1e-9) || (window.high !== undefined && shown > window.high + 1e-9));
    return {
      text: whole(inWords(quantity, value, this.units)),
      id,
      ...(out ? { act: true } : {}),
      ...(window && (window.low !== undefined || window.high !== undefined)
        ? { sill: sillOf(shown, window, standingOf(state.origin(id))) }
        : {}),
    };
  }

  /** A row of the chain, before and after. */
  chainRow(id: string, before: State, after: State, name?: string): FigureTable['rows'] {
    const quantity = quantityOf(this.engine.from.chain, id);
    if (!quantity) return [];
    return [{ name: name ?? quantity.meaning, id, cells: [this.chainCell(id, before), this.chainCell(id, after)] }];
  }
}

const standingOf = (origin: string): NumberStanding =>
  origin === 'computed' ? 'computed' : origin === 'assumed' ? 'assumed' : origin === 'default' ? 'default' : 'measured';

/** A number on its window, as wide as in a list. */
export function sillOf(
  value: number,
  window: { readonly low?: number | undefined; readonly high?: number | undefined; readonly aim?: number | undefined },
  standing: NumberStanding,
): NonNullable<Cell['sill']> {
  const { low, high, aim } = window;
  const drawn = sill({
    width: 64,
    standing,
    window: { ...(low === undefined ? {} : { lo: low }), ...(high === undefined ? {} : { hi: high }) },
    ...(aim === undefined ? {} : { aim }),
    value,
  });
  return { marks: drawn.marks, width: 64, height: drawn.height };
}

/** A number that was asked for, in the unit shown; NaN where it is none. */
export function askedNumber(asked: AskedFor, key: string): number | undefined {
  const text = asked[key];
  if (text === undefined || text === '') return undefined;
  const value = Number(text.replace(',', '.').replaceAll(/[\s\u2009\u202f]/g, ''));
  return Number.isFinite(value) ? value : undefined;
}

/** A field for a number; what it stands at is what was asked, else what is so now. */
export function numberField(asked: AskedFor, key: string, label: string, unit: string, now: number, digits: number): Field {
  const given = askedNumber(asked, key);
  return {
    kind: 'number',
    key,
    label,
    unit,
    value: given === undefined ? String(+now.toFixed(digits)) : asked[key]!,
    given: given !== undefined,
  };
}

export function choiceField(
  key: string,
  label: string,
  value: string,
  choices: readonly { readonly value: string; readonly text: string }[],
): readonly Field[] {
  return choices.length > 1 ? [{ kind: 'choice', key, label, value, choices }] : [];
}

/** A sentence begins with a capital; the name of a file stays as it is. */
const capitalFirst = (text: string): string => (/^\S*\.\w/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1));

/** Sentences under a heading; nothing where there are none. */
export function saying(title: string, lines: readonly string[], act = false): readonly Said[] {
  return lines.length === 0
    ? []
    : [{ title, lines: lines.map((text) => ({ text: tight(capitalFirst(text)), ...(act ? { act: true } : {}) })) }];
}

export function cautions(lines: readonly string[]): readonly Said[] {
  return lines.length === 0 ? [] : [{ title: 'Mind', lines: lines.map((text) => ({ text: tight(text) })), caution: true }];
}

/** One sentence after another, each with its full stop. */
export const sentences = (...parts: readonly (string | undefined | false)[]): string =>
  parts
    .filter((part): part is string => typeof part === 'string' && part !== '')
    .map((part) => tight(capitalFirst(/[.?!]$/.test(part) ? part : `${part}.`)))
    .join(' ');
