import type { PlantChain } from '@barwright/line';
import { inWords, presentation, windowInWords } from '@barwright/line';
import type { Chain, Quantity, State } from '@barwright/chain';
import { formatNumber } from '@barwright/plant';
import type { Units } from './protocol.js';

/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const quantityOf = (chain: Chain, id: string): Quantity | undefined => {
  const index = chain.index.get(id);
  return index === undefined ? undefined : chain.quantities[index];
};

/** '48.80 g' of a state; nothing where the chain has no such number or no value. */
export function wordsOf(chain: Chain, state: State, id: string, units: Units): string | undefined {
  const quantity = quantityOf(chain, id);
  if (!quantity || !state.status(id).ok) return undefined;
  const value = state.value(id);
  return typeof value === 'number' ? whole(inWords(quantity, value, units)) : undefined;
}

/** A number does not break at the end of a line. */
export const whole = (text: string): string => text.replaceAll('\u2009', '\u202f');

/** The same without its unit. */
export function digitsOf(quantity: Quantity, value: number, units: Units): string {
  const { decimals, toShown } = presentation(quantity, units);
  return whole(formatNumber(toShown(value), decimals));
}

/** 'limit 0.050', 'window 9.10 to 9.90 %'. */
export function limitWords(quantity: Quantity, units: Units): string {
  const words = windowInWords(quantity, units);
  if (words.startsWith('at most ')) return `limit ${words.slice(8)}`;
  if (words.startsWith('at least ')) return `least ${words.slice(9)}`;
  return words === '' ? '' : `window ${words}`;
}

/** 'The slab former is the narrowest: 960 of 1 000 bars/min.' */
export function narrowestWords(
  from: PlantChain,
  state: State,
  first: { readonly name: string; readonly id: string } | undefined,
  units: Units,
): string {
  if (!first) return '';
  const base = first.id.replace('.utilisation', '');
  const flow = quantityOf(from.chain, `${base}.flow`);
  const rate = quantityOf(from.chain, `${base}.rate`);
  if (!flow || !rate || !state.status(rate.id).ok) return '';
  const used = digitsOf(flow, state.number(flow.id), units);
  return `The ${first.name} is the narrowest: ${used} of ${whole(inWords(rate, state.number(rate.id), units))}.`;
}
