import { additionsOf, componentsOf } from '@barwright/bar';
import type { State } from '@barwright/chain';
import type { BandLeaving, BandPart, BandSpec, BandStation, BandStream } from '@barwright/drawing';
import { inWords, presentation, stationsByUse, type PlantChain } from '@barwright/line';
import { formatNumber } from '@barwright/plant';
import { at as component } from '@barwright/science';
import { bandTimes, clockWords, dayAtCutter, layOrder, type BandTimes } from './band-times.js';
import type { Engine } from './engine.js';
import { materialOf } from './materials.js';
import type { BandMeasure, BandPicture } from './protocol.js';
import { capital, digitsOf, quantityOf, wordsOf } from './words.js';

interface Measured {
  readonly unit: string;
  readonly decimals: number;
  /** From kg/h of a component or material to the unit of the band. */
  readonly of: (slug: string, kilograms: number) => number;
  readonly whole: (kilograms: number) => number;
}

/** The line as a ribbon: what the drawing needs, in the measure asked for. Nothing where the bar has no line. */
export function bandPicture(engine: Engine, measure: BandMeasure, width: number, height: number): BandPicture | undefined {
  const { from, session: state } = engine;
  const { line, chain } = from;
  if (!line || !state.status('line.rate').ok || !state.status('bar.mass').ok) return undefined;
  const number = (id: string) => (chain.index.has(id) && state.status(id).ok ? state.number(id) : 0);
  const rate = number('line.rate');
  const measured = measureOf(from, state, measure, engine.shownUnits);
  const order = layOrder(from);
  const slugs = order.map((layer) => from.plant.components.get(layer.component)!.slug);
  const times = bandTimes(from, state, order.length, slugs);
  const opens: Record<string, string> = {};
  const text = (value: number) => `${formatNumber(value, measured.decimals)} ${measured.unit}`;

  const streams = order.map((layer, i): BandStream => {
    const made = from.plant.components.get(layer.component)!;
    const flow = 60 * rate * number(`layer.${layer.slug}.gross`);
    const share = number(`flow.${made.slug}.out`) > 0 ? flow / number(`flow.${made.slug}.out`) : 1;
    const start = times.laid(0) - times.lead(made.slug);
    const vapour = number(`flow.${made.slug}.vapour`) * share * massOf(engine.shownUnits)[1];
    const shown = measured.of(made.slug, flow);
    const id = `layer.${layer.slug}`;
    opens[id] = `flow.${made.slug}.out`;
    opens[`${id}.vapour`] = `flow.${made.slug}.vapour`;
    const vapourShown = measure === 'kg' || measure === 'water' ? vapour : 0;
    const parts = partsOf(from, state, made.slug, share, measured, opens);
    return {
      id,
      label: `${capital(layer.name)} ${text(shown)}`,
      ...noteOf(from, state, made.slug, engine.shownUnits),
      material: materialOf(made.name, made.texture),
      flow: shown,
      startsAt: start,
      mixedAt: start + 5,
      joinsAt: times.laid(i),
      ...(parts.length > 0 && measure !== 'bars' ? { parts } : {}),
      ...(vapourShown > 0
        ? {
            vapours: [
              {
                id: `${id}.vapour`,
                from: start + 8,
                to: start + 10,
                flow: vapourShown,
                text: `water ${formatNumber(vapour, 0)} ${massOf(engine.shownUnits)[0]}/h`,
              },
            ],
          }
        : {}),
    };
  });
  const spec = assemble(from, state, { streams, times, measured, measure, opens, text, rate, width, height, engine });
  return {
    spec,
    opens,
    scaleWords: `10 px across the band is ${formatNumber(10 * spec.flowPerPx, measured.decimals === 0 ? 0 : 1)} ${measured.unit}`,
    rows: rowsOf(engine, streams, measured),
  };
}

interface Assembly {
  readonly streams: readonly BandStream[];
  readonly times: BandTimes;
  readonly measured: Measured;
  readonly measure: BandMeasure;
  readonly opens: Record<string, string>;
  readonly text: (value: number) => string;
  readonly rate: number;
  readonly width: number;
  readonly height: number;
  readonly engine: Engine;
}

function assemble(from: PlantChain, state: State, a: Assembly): BandSpec {
  const { bar, plant, chain } = from;
  const units = a.engine.shownUnits;
  const number = (id: string) => (chain.index.has(id) && state.status(id).ok ? state.number(id) : 0);
  const coating = bar.coat && plant.components.get(bar.coat.component)!;
  const coat = coating ? a.measured.of(coating.slug, 60 * a.rate * number('coat.gross')) : 0;
  const total = a.streams.reduce((sum, { flow }) => sum + flow, 0) + coat;
  // Where much of what is charged leaves again, the lanes need the room, not the ribbon.
  const charged = a.streams.reduce(
    (sum, { flow, parts }) =>
      sum +
      Math.max(
        flow,
        (parts ?? []).reduce((all, part) => all + part.flow, 0),
      ),
    0,
  );
  const flowPerPx = Math.max(total / Math.max(90, Math.min(190, a.height * 0.26)), charged / (a.height * 0.3));
  const under = bar.coat?.covers === 'without underside' ? 0 : 0.42;
  const leaving: BandLeaving[] = [];
  const trim = a.measured.whole(number('line.trim_flow'));
  if (trim > 0) {
    const into = from.line?.trimGoesTo ? plant.components.get(from.line.trimGoesTo) : undefined;
    const stream =
      into &&
      a.streams.find(({ id }) => plant.components.get(bar.layers.find((layer) => `layer.${layer.slug}` === id)!.component) === into);
    a.opens.trim = 'line.trim_flow';
    const share = wordsOf(chain, state, 'rework.share', units);
    leaving.push({
      id: 'trim',
      at: -0.2,
      flow: trim,
      text: `edge trim ${a.text(trim)}`,
      ...(stream
        ? { backTo: stream.id, backText: share ? `used again in ${into.name}, ${share} of it` : `used again in ${into.name}` }
        : {}),
    });
  }
  const scrap = a.measured.whole(number('line.scrap_flow'));
  if (scrap > 0) {
    a.opens.scrap = 'line.scrap_flow';
    leaving.push({ id: 'scrap', at: a.times.end - 1.4, flow: scrap, text: `scrap ${a.text(scrap)}` });
  }
  const given = a.measured.whole(number('line.giveaway_flow'));
  a.opens.giveaway = 'line.giveaway_flow';
  const stations = framesOf(from, state, a, total);
  const [first] = stationsByUse(from, state);
  const narrow =
    first && stations.some(({ id }) => id === first.id) ? { ...narrowNote(from, state, first, units), station: first.id } : undefined;
  if (coating) a.opens.coat = `flow.${coating.slug}.out`;
  return {
    width: a.width,
    height: a.height,
    flowPerPx,
    clock: a.times.pieces,
    ticks: ticksOf(a, clockWords(dayAtCutter(from, state, a.times))),
    streams: a.streams,
    ...(coating && coat > 0
      ? {
          coat: {
            id: 'coat',
            label: `${capital(coating.name)} ${a.text(coat)}`,
            ...noteOf(from, state, coating.slug, units),
            material: materialOf(coating.name, coating.texture),
            over: coat * (1 - under),
            under: coat * under,
            joinsAt: a.times.coatAt,
          },
        }
      : {}),
    leaving,
    stations,
    ...(narrow ? { narrowest: narrow } : {}),
    ...(given > 0 && a.measure !== 'bars'
      ? {
          giveaway: {
            at: a.times.end - 1.1,
            flow: given,
            text: `given away ${wordsOf(chain, state, 'bar.giveaway', units) ?? ''}`,
            note: a.text(given),
          },
        }
      : {}),
    left: Math.min(170, a.width * 0.16),
    right: 96,
  };
}

function ticksOf({ streams, times }: Assembly, words: (minute: number) => string): BandSpec['ticks'] {
  const starts = [...new Set(streams.map(({ startsAt }) => startsAt))].map((at) => ({ at, word: 'made' }));
  return [...starts, ...times.named].map(({ at, word }) => ({ at, text: words(at), word }));
}

/** Frames behind the ribbon: what each machine could do at this mix. */
function framesOf(from: PlantChain, state: State, a: Assembly, total: number): BandStation[] {
  const found: BandStation[] = [];
  const joined = a.streams.reduce((sum, { flow }) => sum + flow, 0);
  for (const { slug, from: start, to } of a.times.stations) {
    const id = `station.${slug}.utilisation`;
    if (!from.chain.index.has(id) || !state.status(id).ok) continue;
    const flow = start >= a.times.coatAt ? total : joined;
    a.opens[id] = id;
    found.push({ id, from: start, to: Math.max(to, start + 0.5), capacity: flow / Math.max(0.02, state.number(id)) });
  }
  for (const stream of a.streams) {
    const layer = from.bar.layers.find((other) => `layer.${other.slug}` === stream.id)!;
    const narrow = narrowestOf(from, state, layer.component);
    if (!narrow || a.measure === 'bars') continue;
    a.opens[narrow.id] = narrow.id;
    found.push({
      id: narrow.id,
      from: stream.startsAt + 5.5,
      to: stream.startsAt + 13,
      capacity: stream.flow / Math.max(0.02, narrow.utilisation),
      stream: stream.id,
    });
  }
  return found;
}

/** The fullest station that works on a component alone. */
function narrowestOf(
  from: PlantChain,
  state: State,
  name: string,
): { readonly id: string; readonly name: string; readonly utilisation: number } | undefined {
  const own = new Set((from.line?.stations ?? []).filter(({ works }) => works === name).map(({ name: station }) => station));
  return stationsByUse(from, state).find((station) => own.has(station.name));
}

function noteOf(from: PlantChain, state: State, slug: string, units: Engine['shownUnits']): { readonly note?: string } {
  const made = [...from.plant.components.values()].find((other) => other.slug === slug);
  const narrow = made && narrowestOf(from, state, made.name);
  const rate = narrow && quantityOf(from.chain, narrow.id.replace('.utilisation', '.rate'));
  return narrow && rate ? { note: `${narrow.name}: ${inWords(rate, state.number(rate.id), units)}` } : {};
}

function narrowNote(
  from: PlantChain,
  state: State,
  first: { readonly name: string; readonly id: string },
  units: Engine['shownUnits'],
): { text: string; note?: string } {
  const [flow, rate] = ['flow', 'rate'].map((which) => quantityOf(from.chain, first.id.replace('utilisation', which)));
  if (!flow || !rate) return { text: `narrowest: ${first.name}` };
  const [now, can] = [state.number(flow.id), state.number(rate.id)];
  const spare = digitsOf(rate, Math.abs(can - now), units);
  const over = now > can * (1 + 1e-9);
  return {
    text: over ? `too narrow: ${first.name}` : `narrowest: ${first.name}`,
    note: `${digitsOf(flow, now, units)} of ${inWords(rate, can, units)}; ${spare} ${over ? 'too many' : 'to spare'}`,
  };
}

/** What goes into a component, largest at the bottom; what is less than a thirtieth of it stands together. */
function partsOf(
  from: PlantChain,
  state: State,
  slug: string,
  share: number,
  measured: Measured,
  opens: Record<string, string>,
): BandPart[] {
  const made = componentsOf(from.plant, from.bar).find((other) => other.slug === slug)!;
  const charged = state.number(`flow.${slug}.in`) * share;
  const total = state.number(`${slug}.charge_sum`);
  const byName = new Map<string, { flow: number; id: string }>();
  for (const { addition, id } of additionsOf(made)) {
    const inner = from.plant.components.get(addition.name)?.slug ?? from.plant.materials.get(addition.name)!.slug;
    const flow = measured.of(inner, (charged * state.number(id)) / total);
    const known = byName.get(addition.name);
    byName.set(addition.name, { flow: (known?.flow ?? 0) + flow, id });
  }
  const all = [...byName].sort((x, y) => y[1].flow - x[1].flow);
  const sum = all.reduce((each, [, { flow }]) => each + flow, 0);
  const large = all.filter(([, { flow }]) => flow >= sum / 30);
  const small = all.filter(([, { flow }]) => flow < sum / 30 && flow > 0);
  const parts = large.map(([name, { flow, id }]): BandPart => {
    opens[id] = id;
    return { id, label: shortName(name), material: materialOf(name, from.plant.components.get(name)?.texture), flow };
  });
  if (small.length > 0) {
    const names = small.map(([name]) => shortName(name));
    parts.push({
      id: `${slug}.small`,
      label: names.length > 2 ? `${names.length} small ones` : names.join(', '),
      material: 'dry',
      flow: small.reduce((each, [, { flow }]) => each + flow, 0),
    });
    opens[`${slug}.small`] = `${slug}.charge_sum`;
  }
  return parts.reverse();
}

const shortName = (name: string): string =>
  name
    .replace(/^sweetened condensed .*milk$/, 'condensed milk')
    .replace(/ powder$/, '')
    .replace(/ \d+ DE$/, '');

/** The unit of mass a person reads, and how many of it are a kilogram. */
const massOf = (units: Engine['shownUnits']): readonly [string, number] => (units === 'us' ? ['lb', 1 / 0.45359237] : ['kg', 1]);

function measureOf(from: PlantChain, state: State, measure: BandMeasure, units: Engine['shownUnits']): Measured {
  const [unit, per] = massOf(units);
  const { chain, plant } = from;
  const number = (id: string) => (chain.index.has(id) && state.status(id).ok ? state.number(id) : 0);
  const mass = number('bar.mass');
  if (measure === 'money') {
    const price = (slug: string) => (chain.index.has(`${slug}.cost`) ? number(`${slug}.cost`) : number(`material.${slug}.price`));
    const each = number('bar.cost_ingredients') / mass;
    return {
      unit: `${plant.currency}/h`,
      decimals: 0,
      of: (slug, kilograms) => kilograms * price(slug),
      whole: (kilograms) => kilograms * each,
    };
  }
  if (measure === 'water') {
    const wet = (slug: string) => {
      const id = chain.index.has(`${slug}.composition`) ? `${slug}.composition` : `material.${slug}.composition`;
      const composition = chain.index.has(id) ? state.value(id) : undefined;
      return composition instanceof Float64Array ? composition[component.water]! : 0;
    };
    const whole = state.value('bar.composition');
    const share = whole instanceof Float64Array ? whole[component.water]! : 0;
    return {
      unit: `${unit}/h`,
      decimals: 1,
      of: (slug, kilograms) => kilograms * wet(slug) * per,
      whole: (kilograms) => kilograms * share * per,
    };
  }
  if (measure === 'bars') {
    const gross = grossOf(from, state);
    const each = gross > 0 ? number('line.rate') / (60 * number('line.rate') * gross) : 0;
    return {
      unit: 'bars/min',
      decimals: 0,
      of: (_slug, kilograms) => kilograms * each,
      whole: (kilograms) => (mass > 0 ? kilograms / (60 * mass) : 0),
    };
  }
  return { unit: `${unit}/h`, decimals: 0, of: (_slug, kilograms) => kilograms * per, whole: (kilograms) => kilograms * per };
}

function grossOf({ chain, bar }: PlantChain, state: State): number {
  return [...bar.layers.map(({ slug }) => `layer.${slug}.gross`), 'coat.gross'].reduce(
    (sum, id) => sum + (chain.index.has(id) && state.status(id).ok ? state.number(id) : 0),
    0,
  );
}

/** The same numbers as a table: what flows, what leaves, then stations from the fullest. */
function rowsOf(
  { from, session: state, shownUnits: units }: Engine,
  streams: readonly BandStream[],
  measured: Measured,
): BandPicture['rows'] {
  const { chain } = from;
  const text = (value: number) => `${formatNumber(value, measured.decimals)} ${measured.unit}`;
  const flows = streams.map(({ id, flow }) => {
    const layer = from.bar.layers.find(({ slug }) => `layer.${slug}` === id)!;
    return { what: `${layer.name}, made`, id: `flow.${from.plant.components.get(layer.component)!.slug}.out`, value: text(flow) };
  });
  const vapours = streams.flatMap(({ vapours = [] }) =>
    vapours.map(({ id, text: words }) => ({
      what: words.replace(/ [\d\u2009]+ .*$/, ' driven off'),
      id,
      value: words.replace(/^water /, ''),
    })),
  );
  const named = [
    ['line.slab_flow', 'slab before trimming'],
    ['line.trim_flow', 'edge trim'],
    ['line.bar_flow', 'finished bars'],
    ['line.scrap_flow', 'scrap'],
    ['line.giveaway_flow', 'given away'],
  ] as const;
  const whole = named.flatMap(([id, what]) =>
    chain.index.has(id) && state.status(id).ok ? [{ what, id, value: text(measured.whole(state.number(id))) }] : [],
  );
  const stations = stationsByUse(from, state).map(({ name, id }) => {
    const rate = quantityOf(chain, id.replace('.utilisation', '.rate'))!;
    const { unit } = presentation(rate, units);
    const room = state.number(rate.id) - state.number(id.replace('.utilisation', '.flow'));
    return { what: name, id, value: wordsOf(chain, state, id, units) ?? '–', room: `${digitsOf(rate, room, units)} ${unit}` };
  });
  return [...flows, ...vapours.map((row) => ({ ...row, id: vapourOf(from, row.id) })), ...whole, ...stations];
}

function vapourOf({ bar, plant }: PlantChain, id: string): string {
  const layer = bar.layers.find(({ slug }) => `layer.${slug}.vapour` === id)!;
  return `flow.${plant.components.get(layer.component)!.slug}.vapour`;
}
