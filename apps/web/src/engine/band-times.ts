import type { State } from '@barwright/chain';
import type { ClockPiece } from '@barwright/drawing';
import type { PlantChain } from '@barwright/line';
import { planTimes } from './plan-times.js';

type Station = NonNullable<PlantChain['line']>['stations'][number];

/** Where things are along the line, minutes from the cutter. */
export interface BandTimes {
  /** A station that what has been laid up passes. */
  readonly stations: readonly { readonly slug: string; readonly name: string; readonly from: number; readonly to: number }[];
  /** When a layer is laid, by its place from below. */
  readonly laid: (at: number) => number;
  readonly coatAt: number;
  readonly pieces: readonly ClockPiece[];
  readonly named: readonly { readonly at: number; readonly word: string; readonly id?: string }[];
  readonly end: number;
  readonly lead: (component: string) => number;
}

const layUp = 1.6;

/** Layers from below, each followed by what sinks into it. */
export function layOrder({ bar }: PlantChain): PlantChain['bar']['layers'] {
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined);
  return hosts.flatMap((host) => [host, ...bar.layers.filter((layer) => layer.sunkInto === host.name)]);
}

/** Minutes of the day at which the first bar is at the cutter; nothing where no plan tells it. */
export function dayAtCutter(from: PlantChain, state: State, times: BandTimes): number | undefined {
  const plan = planTimes(from, state);
  return plan && plan.firstSlab - (times.stations[0]?.from ?? 0);
}

/** The clock as words: the time of day of the first bar where a plan tells it, else minutes from the cutter. */
export function clockWords(offset: number | undefined): (minute: number) => string {
  if (offset === undefined)
    return (minute) => `${minute < 0 ? '−' : minute > 0 ? '+' : ''}${Math.abs(minute).toFixed(minute % 1 === 0 ? 0 : 1)}`;
  return (minute) => {
    const day = (((Math.round(minute + offset) % 1440) + 1440) % 1440) | 0;
    return `${String(Math.floor(day / 60)).padStart(2, '0')}:${String(day % 60).padStart(2, '0')}`;
  };
}

/**
 * Times from what the plant entered: transit times from the cutter, belts by length and speed, leads of components. Between
 * entered times stations stand evenly.
 */
export function bandTimes({ line, plant, chain }: PlantChain, state: State, layers: number, components: readonly string[]): BandTimes {
  const on = (line?.stations ?? []).filter((station) => station.works === 'bar');
  const cut = on.findIndex(({ name }) => /guillotine|cutter|knife/i.test(name));
  const cutter = cut < 0 ? 0 : cut;
  const minutes = (id: string) => (chain.index.has(id) && state.status(id).ok ? state.number(id) / 60 : undefined);
  const dwell = (station: Station) => minutes(`station.${station.slug}.dwell`);
  const before = on.slice(0, cutter).reduce((sum, station) => sum + (dwell(station) ?? 0.5), 0);
  const known = (station: Station, which: 'in' | 'out') => {
    const points = (line?.transit ?? []).filter(({ to }) => shareWord(to, station.name));
    const exact = points.find(({ to }) => new RegExp(`\\b${which}\\b`).test(to)) ?? (which === 'in' ? points[0] : points.at(-1));
    return exact && minutes(`transit.${exact.slug}`);
  };

  const places: { slug: string; name: string; from: number; to: number }[] = [];
  let at = -before;
  on.slice(0, cutter).forEach((station) => {
    const length = dwell(station) ?? 0.5;
    places.push({ slug: station.slug, name: station.name, from: at, to: at + length });
    at += length;
  });
  at = 0;
  on.slice(cutter).forEach((station, i) => {
    const from = i === 0 ? 0 : Math.max(at, known(station, 'in') ?? at + 0.4);
    const out = known(station, 'out');
    const to = out !== undefined && out > from ? out : from + (dwell(station) ?? 0.7);
    places.push({ slug: station.slug, name: station.name, from, to });
    at = to;
  });
  const end = at + 1.5;
  const first = -before - layUp * layers - 1;
  const coat = places.find(({ name }) => /enrob|coat/i.test(name));
  const lead = (name: string) => {
    const component = [...plant.components.values()].find(({ slug }) => slug === name);
    const station = (line?.transit ?? []).find(({ to, time }) => time.value < 0 && component?.stages.length && shareWord(to, name));
    return component?.lead ? component.lead.value / 60 : station ? -(minutes(`transit.${station.slug}`) ?? -30) : 30;
  };
  const leads = components.map(lead);
  const far = Math.min(...leads.map((each) => first - each)) - 6;
  const near = Math.max(...leads.map((each) => first - each)) + 14;
  const pieces: ClockPiece[] =
    leads.length > 0 && near < first - 4
      ? [
          { from: far, to: near, share: 0.29 },
          { from: first - 3.5, to: end, share: 0.71 },
        ]
      : [{ from: Math.min(far, first - 3.5), to: end, share: 1 }];
  const named = [
    { at: first, word: 'first layer' },
    ...places
      .filter(({ name }) => /former|guillotine|enrob|wrap|case/i.test(name))
      .map(({ name, from, slug }) => ({ at: from, word: short(name), id: `station.${slug}.utilisation` })),
  ];
  const tunnel = places.find(({ name }) => /tunnel/i.test(name));
  if (tunnel) named.push({ at: tunnel.to, word: 'tunnel out' });
  return {
    stations: places,
    laid: (layer) => first + layUp * layer,
    coatAt: coat?.from ?? 1,
    pieces,
    named: named.sort((a, b) => a.at - b.at),
    end,
    lead,
  };
}

function shareWord(a: string, b: string): boolean {
  const words = (text: string) => text.toLowerCase().match(/[a-z]{4,}/g) ?? [];
  return words(a).some((word) => words(b).some((other) => other.startsWith(word.slice(0, 5)) || word.startsWith(other.slice(0, 5))));
}

function short(name: string): string {
  if (/former/i.test(name)) return 'slab';
  if (/guillotine/i.test(name)) return 'cut';
  if (/enrob/i.test(name)) return 'coat';
  return /wrap/i.test(name) ? 'wrapper' : name.split(' ')[0]!;
}
