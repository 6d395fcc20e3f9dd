import { formatNumber } from '@barwright/plant';
import type { Affected, AffectedSet } from './affected.js';
import type { Counted } from './count.js';
import type { PalletLog, Pallet } from './pallet-log.js';
import type { Span } from './spans.js';

/** What goes with every list of pallets to hold. */
export const holdCautions: readonly string[] = [
  'A list to hold is advice: only a named person may release, and a hold is never closed by time.',
  'Where food safety is in question the plant’s qualified HACCP team decides; local codes stand above this list.',
];

const n = (value: number): string => formatNumber(Math.round(value), 0);
const minutes = (seconds: number): string => `${+(seconds / 60).toFixed(1)} min`;

/** '17 Mar 11:39 to 13:56': the day is written once where both ends have it. */
export function spanWords(words: (seconds: number) => string, { from, to }: Span): string {
  const [a, b] = [words(from), words(to)];
  const cut = a.lastIndexOf(' ');
  return cut > 0 && b.startsWith(a.slice(0, cut + 1)) ? `${a} to ${b.slice(cut + 1)}` : `${a} to ${b}`;
}

/** '113 674 bars (112 411 to 114 730)'; 'at least' where counts are missing, 'so far' where only what comes after the end of the logs is. */
export function barWords({ value, low, high, missing }: Counted, end = Infinity): string {
  const later = missing.length > 0 && missing.every(({ from }) => from >= end);
  if (missing.length > 0 && !later) return `at least ${n(low)} bars`;
  const far = later ? ' so far' : '';
  return n(low) === n(high) ? `${n(value)} bars${far}` : `${n(value)} bars${far} (${n(low)} to ${n(high)})`;
}

/** 'P018 to P029, P031': pallets that follow each other in the log as one run. */
export function palletWords(log: PalletLog | undefined, pallets: readonly Pallet[]): string {
  const runs: Pallet[][] = [];
  for (const pallet of pallets) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && log && before && log.pallets.indexOf(pallet) === log.pallets.indexOf(before) + 1) run.push(pallet);
    else runs.push([pallet]);
  }
  return runs.map((run) => (run.length > 2 ? `${run[0]!.name} to ${run.at(-1)!.name}` : run.map(({ name }) => name).join(', '))).join(', ');
}

/** A set in words: 'packed 11:39 to 13:56: 113 674 bars on 12 pallets, P018 to P029.' */
export function setWords({ words, logs, end }: Affected, set: AffectedSet): string {
  const packed = listed(
    set.packed.map((span) => spanWords(words, span)),
    'more stretches',
  );
  const bars = set.bars ? barWords(set.bars, end) : 'how many bars cannot be told';
  const found = set.pallets?.pallets ?? [];
  const pallets = !set.pallets
    ? 'which pallets cannot be told'
    : found.length === 0
      ? 'on no pallet of the log'
      : `on ${found.length === 1 ? 'one pallet' : `${found.length} pallets`}, ${palletWords(logs.pallets, found)}`;
  const held = set.pallets?.bars;
  const all = held !== undefined && found.length > 0 ? ` (${n(held)} bars with those from outside the window)` : '';
  return `packed ${packed}: ${bars}${set.pallets && set.bars ? ' ' : '; '}${pallets}${all}.`;
}

/** The first few, and how many there are beside. */
function listed(texts: readonly string[], more: string, between = ' and '): string {
  const shown = 6;
  if (texts.length <= shown) return texts.join(between);
  return `${texts.slice(0, shown - 1).join(between)}${between}${texts.length - shown + 1} ${more}`;
}

/** The answer in sentences: what is touched for certain, then what more to be safe, then what both leave open. */
export function affectedWords(answer: Affected): readonly string[] {
  const { windows, proven, safe, twice, words } = answer;
  const of = windows.map(({ place, what, here }) => `${what === undefined ? '' : `${what}: `}${place.done} ${spanWords(words, here)}`);
  const same = setWords(answer, proven) === setWords(answer, safe);
  return [
    `${capital(listed(of, 'more windows', '; '))}.`,
    `For certain: ${setWords(answer, proven)}`,
    ...(twice !== undefined && twice >= 1 ? [`${n(twice)} bars lie in more than one of the windows; they are counted once.`] : []),
    ...(proven.onTheWay
      ? [`${barWords(proven.onTheWay)} more were between cutter and wrapper when the log of counts ends, and are on no pallet yet.`]
      : []),
    same ? 'To be safe: the same set.' : `To be safe: ${setWords(answer, safe)}`,
    ...(safe.onTheWay && !proven.onTheWay
      ? [`${barWords(safe.onTheWay)} more of those to be safe were between cutter and wrapper when the log of counts ends.`]
      : []),
    ...neighbourWords(proven),
  ];
}

function neighbourWords({ pallets, packed }: AffectedSet): readonly string[] {
  if (!pallets || pallets.pallets.length === 0 || packed.length !== 1) return [];
  const { before, after } = pallets;
  const parts = [
    ...(before ? [`${before.name} ended ${minutes(before.gap)} before`] : []),
    ...(after ? [`${after.name} began ${minutes(after.gap)} after`] : []),
  ];
  return parts.length === 0 ? [] : [`Next to these: ${parts.join(', ')}.`];
}

/** What the logs leave open; empty where they tell all of it. */
export function openWords({ logs, proven, safe, words, end, windows }: Affected): readonly string[] {
  const because = (key: 'flow' | 'pallets', none: string) =>
    logs.unread[key] === undefined ? none : `${logs.unread[key]!.replace(/\.$/, '')}.`;
  const missing = (safe.bars?.missing ?? []).map((span) => ({ ...span, later: end !== undefined && span.from >= end }));
  const gaps = missing.filter(({ later }) => !later);
  const unsure = safe.pallets?.unsure ?? [];
  const over = end === undefined ? [] : safe.packed.filter(({ to }) => to > end);
  const outside = end !== undefined && windows.every(({ here }) => here.from > end);
  return [
    ...(proven.bars
      ? []
      : [`How many bars cannot be told: ${because('flow', 'there is no log of counts (time, bars cut, packs of each wrapper).')}`]),
    ...(proven.pallets
      ? []
      : [`Which pallets cannot be told: ${because('pallets', 'there is no log of pallets (pallet, first pack, last pack).')}`]),
    ...(gaps.length > 0 ? [`Counts are missing ${gaps.slice(0, 4).map((span) => spanWords(words, span)).join(', ')}${gaps.length > 4 ? ` and ${gaps.length - 4} times more` : ''}: how many bars were packed then cannot be told.`] : []), // prettier-ignore
    ...(outside ? ['The logs end before the window begins: nothing can be told of it yet.'] : []),
    ...(over.length > 0 ? [`The logs end at ${words(end!)}: what is packed later, until ${words(Math.max(...over.map(({ to }) => to)))}, belongs to it too.`] : []), // prettier-ignore
    ...(unsure.length > 0 ? [`${unsure.map(({ name }) => name).join(', ')}: no time of packing can be read, so nothing excludes ${unsure.length === 1 ? 'it' : 'them'}; hold ${unsure.length === 1 ? 'it' : 'them'} too.`] : []), // prettier-ignore
    ...safe.loose.map((span) => `At least ${n(span.bars)} bars packed ${spanWords(words, span)} are on no pallet of the log: find them.`),
  ];
}

/** How it was computed: resolution, transit, what the safe set adds. */
export function howWords({ windows, counted, logs }: Affected): readonly string[] {
  const places = [...new Map(windows.map(({ place }) => [place.name, place])).values()];
  const waits = Math.max(0, ...places.map(({ waits: wait }) => wait));
  const transit = places
    .filter(({ toWrapper }) => toWrapper.value > 0)
    .map(({ name, toWrapper: { value, low, high } }) => {
      const range = high > low ? `, ${minutes(low)} to ${minutes(high)}` : '';
      return `From the ${name} to the wrapper ${minutes(value)}${range}, as the plant writes it.`;
    });
  const stood = windows.flatMap(({ place, safeHere, safePacked }) => {
    const extra = safePacked.to - safeHere.to - place.toWrapper.high - place.waits;
    return extra >= 60 ? [`It ends ${minutes(extra)} later still for bars from the ${place.name}: machines in the way stood.`] : [];
  });
  const most = counted?.fastest === undefined ? '' : ` at most ${n(60 * counted.fastest)} packs a minute and wrapper`;
  const { said: ofPallets } = logs.pallets ?? { said: [] };
  const sentences = [
    ...places.flatMap(({ said }) => said),
    ...transit,
    counted &&
      `Bars are counted at the ${counted.at} in intervals of ${minutes(counted.interval)}; one that the window cuts counts with its share of the time, and the two numbers behind are what it allows${most}.`,
    'A window is a stretch of time: bars that stood in it while the line was stopped belong to it, and stops are not taken off.',
    waits > 0 && `To be safe it ends ${minutes(waits)} later: so long may a bar wait in a full accumulation.`,
    ...stood,
    waits > 0 && !logs.stops && 'No log of stops lies beside: how long bars stood on the way cannot be told, and nothing is added for it.',
    logs.pallets &&
      'A pallet counts where its packing touches the window, ends included; its bars from outside the window are held with it.',
    ...ofPallets,
    ...(logs.flow?.said ?? []),
    logs.unread.stops !== undefined && `Stops were not read: ${logs.unread.stops}.`,
    logs.used.length > 0 && `Laid beside: ${logs.used.join(', ')}.`,
  ];
  return [...new Set(sentences.filter((text): text is string => typeof text === 'string'))];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
