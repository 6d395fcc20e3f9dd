import type { TableKind } from '@barwright/line';
import { trialParts, type TrialPart } from '../engine/trial-protocol.js';

/** The questions by the words of the trade. */
export const partWords: Readonly<Record<TrialPart, string>> = {
  speed: 'Speed',
  cooks: 'Cooks',
  batch: 'One batch',
  window: 'Window',
  syrup: 'Syrup',
  pressure: 'Pressure',
  blend: 'Blend',
  cooker: 'Cooker',
  foam: 'Foam',
  slab: 'Slab',
  lots: 'Lots',
  roasts: 'Roasts',
  flow: 'Flow',
  names: 'Names in law',
  temper: 'Temper',
  coat: 'Coat',
  tunnel: 'Tunnel',
};

export const kindWords: Readonly<Record<TableKind, string>> = {
  viscometer: 'the table of a viscometer',
  roast: 'a roast log',
  temper: 'a temper log',
  tunnel: 'a tunnel log',
  lanes: 'weights lane by lane',
  stops: 'stops of the line',
  counts: 'counts of the cutter and the wrappers',
  pallets: 'a list of pallets',
  cooks: 'a log of cooks',
};

export const partOf = (word: string | undefined): TrialPart | undefined => trialParts.find((part) => part === word);

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** '17 March 2026' */
export function dayWords(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `${day} ${months[(month ?? 1) - 1] ?? ''} ${year}`;
}
