import { curve, traces } from '@barwright/drawing';
import {
  cookTable,
  foamAnswer,
  judgeFoam,
  whippedComponents,
  type CookTable,
  type FoamAnswer,
  type FoamAsked,
  type FoamLogAnswer,
} from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { clockEnds, clockTicks, inOrder } from './clock-ticks.js';
import { percent } from './cook-words.js';
import { filesOf, keyOf } from './files.js';
import { askedNumber, capital, cautions, choiceField, looks, n, numberField, saying, sentences, Words, type Look } from './words.js';

const bar: Look = { unit: 'Pa', show: 'bar', decimals: 2 };

/** A whipped mass by its whip or its cup: what it does at constant thickness and at constant weight, and what the log of a day tells. */
export function foamSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const whipped = whippedComponents(from);
  const component = whipped.find(({ slug }) => slug === asked.component) ?? whipped[0];
  const inside = (key: string, turn: (x: number) => number) => {
    const value = askedNumber(asked, key);
    return value === undefined ? undefined : turn(value);
  };
  const told = {
    density: inside('density', (x) => words.inside(x, looks.density)),
    pressure: inside('pressure', (x) => words.inside(x, bar)),
    temperature: inside('temperature', (x) => words.inside(x, looks.celsius)),
    // A cup tells what the albumen holds; then it cannot be asked for too.
    power: askedNumber(asked, 'density') === undefined ? inside('power', (x) => x / 100) : undefined,
  };
  const given: FoamAsked = Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
  const answer = foamAnswer(from, session, given, component?.name);
  const c = component!.slug;
  const log = logOf(engine, asked, answer.component);
  const out = answer.state === 'too dense' || answer.state === 'too light';
  const [first, ...rest] = answer.advice;
  return {
    part: 'foam',
    ...(out || log?.answer.incidents.length ? { mark: 'act' as const } : answer.state === 'no window' ? { mark: 'seen' as const } : {}),
    title: titleOf(words, answer),
    sub: sentences(first, log && logLine(log.answer)),
    fields: [
      ...choiceField('component', 'Whipped', c, whipped.map(({ slug, name }) => ({ value: slug, text: name }))), // prettier-ignore
      numberField(asked, 'density', 'Density by the cup', words.unit(looks.density), words.shown(answer.density, looks.density), 3),
      numberField(asked, 'pressure', 'In the whip, absolute', words.unit(bar), words.shown(answer.whip.pressure, bar), 2),
      numberField(asked, 'temperature', 'Temperature in the whip', words.unit(looks.celsius), words.shown(answer.whip.temperature, looks.celsius), 1), // prettier-ignore
      numberField(asked, 'power', 'Gas held, of a good lot', '%', 100 * answer.power, 0),
    ],
    knobs: [],
    plates: [plate(engine, words, answer, given, width), ...(log ? logPlate(words, log, width) : [])],
    tables: [changesTable(words, answer), gasTable(words, answer, c), ...(log ? lotsTable(log.answer) : [])],
    said: [
      ...saying('So', rest),
      ...(log?.answer.incidents ?? []).flatMap(({ batches, verdict, answer: one }) =>
        saying(`${batches.join(', ')}: ${verdict}`, one.advice),
      ),
      ...saying('What it rests on', answer.notes),
      ...saying('How the log was read', log?.answer.said ?? []),
      ...cautions([
        'Albumen is an allergen (egg) and may carry Salmonella: only lots with a positive release.',
        'A whip is a pressure vessel: vent it before it is opened; only trained people work on it.',
      ]),
    ],
  };
}

function titleOf(words: Words, answer: FoamAnswer): string {
  const at = `${capital(answer.component)} at ${words.amount(answer.density, looks.density)}`;
  const end = `${percent(answer.air.after, 0)} air`;
  if (answer.state === 'as planned') return `${at} holds ${end}, as it is meant to.`;
  if (answer.state === 'inside') return `${at} is inside its window; ${end}.`;
  if (answer.state === 'no window') return `${at}: ${end}; cannot tell whether that will do.`;
  return `${at} is ${answer.state}: ${end} in place of ${percent(answer.air.before, 0)}.`;
}

/** Density against whipping pressure with the gas held as it is now. */
function plate(engine: Engine, words: Words, answer: FoamAnswer, given: FoamAsked, width: number): Plate {
  const { density: _, ...rest } = given;
  const { pressure: now } = answer.whip;
  const [low, high] = [Math.max(0.5 * now, 1.3e5), 1.6 * now];
  const points = Array.from({ length: 41 }, (__, i) => {
    const pressure = low + ((high - low) * i) / 40;
    const { density } = foamAnswer(engine.from, engine.session, { ...rest, pressure, power: answer.power }, answer.component);
    return [words.shown(pressure, bar), words.shown(density, looks.density)] as const;
  });
  const values = points.map(([, y]) => y);
  const { window, aim, restore } = answer;
  const shown = (x: number) => words.shown(x, looks.density);
  const [least, most] = [Math.min(...values, shown(window.low ?? aim)), Math.max(...values, shown(window.high ?? aim))];
  const step = most - least > 0.4 ? 0.1 : most - least > 0.15 ? 0.05 : 0.02;
  const wanted = restore.pressure > low && restore.pressure < high && answer.state !== 'as planned';
  const drawn = curve({
    width,
    height: 300,
    x: [words.shown(low, bar), words.shown(high, bar)],
    y: [least - 0.03 * (most - least), most + 0.03 * (most - least)],
    points,
    limits: {
      ...(window.low === undefined ? {} : { lo: shown(window.low), loText: words.amount(window.low, looks.density) }),
      ...(window.high === undefined ? {} : { hi: shown(window.high), hiText: words.amount(window.high, looks.density) }),
    },
    now: [words.shown(now, bar), shown(answer.density)],
    ...(wanted ? { wanted: [words.shown(restore.pressure, bar), shown(aim)] as const } : {}),
    xLabel: `absolute pressure in the whip, ${words.unit(bar)}`,
    yLabel: `density of ${answer.component}, ${words.unit(looks.density)}`,
    xTicks: ticks(words.shown(low, bar), words.shown(high, bar)),
    yTicks: Array.from({ length: 40 }, (__, i) => +(Math.ceil(least / step) * step + i * step).toFixed(3)).filter((y) => y < most),
  });
  return {
    name: `Density of ${answer.component} against whipping pressure, the gas held as it is now; ${words.amount(answer.density, looks.density)} at ${words.amount(now, bar)}`,
    marks: drawn.marks,
    width,
    height: drawn.height,
    caption: 'The same gas, pressed more or less: a whip that is turned up does not hold more of it by itself.',
  };
}

function ticks(low: number, high: number): readonly number[] {
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20].find((one) => (high - low) / one <= 8) ?? 50;
  return Array.from({ length: 12 }, (_, i) => +(Math.ceil(low / step) * step + i * step).toFixed(2)).filter((x) => x <= high);
}

function changesTable(words: Words, answer: FoamAnswer): FigureTable {
  const { chain } = words.engine.from;
  const look = (id: string) => chain.quantities[chain.index.get(id)!]!;
  return {
    caption: 'What it does to the bar',
    head: ['as planned', 'the sheet as thick', 'the bar as heavy'],
    rows: answer.constantThickness.map(({ id, meaning, before, after, broken }, i) => ({
      name: meaning,
      id,
      cells: [
        { text: words.amount(before, look(id)), id },
        { text: words.amount(after, look(id)), act: broken },
        { text: words.amount(answer.constantWeight[i]!.after, look(id)), act: answer.constantWeight[i]!.broken },
      ],
    })),
  };
}

function gasTable(words: Words, answer: FoamAnswer, c: string): FigureTable {
  const { session } = words.engine;
  return {
    caption: 'The gas',
    head: ['as planned', 'now'],
    rows: [
      { name: 'overrun', id: `${c}.overrun`, cells: [{ text: percent(answer.overrun.before, 0), id: `${c}.overrun` }, { text: percent(answer.overrun.after, 0) }] }, // prettier-ignore
      { name: 'gas inside the whip, share of volume', id: `${c}.gas_held`, cells: [words.chainCell(`${c}.gas_held`, session), { text: percent(answer.held.now) }] }, // prettier-ignore
      ...words
        .chainRow(`${c}.density_per_tenth_bar`, session, session)
        .map(({ cells, ...row }) => ({ ...row, cells: [cells[0]!, { text: '' }] })),
      ...words
        .chainRow(`${c}.density_per_ten_kelvin`, session, session)
        .map(({ cells, ...row }) => ({ ...row, cells: [cells[0]!, { text: '' }] })),
      ...words.chainRow(`${c}.foam_density`, session, session).map(({ cells, ...row }) => ({ ...row, cells: [cells[0]!, { text: '' }] })),
      { name: 'pressure that would bring the aim', cells: [{ text: '–' }, { text: words.amount(answer.restore.pressure, bar) }] },
    ],
  };
}

interface FoamLog {
  readonly log: CookTable;
  readonly answer: FoamLogAnswer;
}

/** A log of cooks that holds densities: of this component, where its name tells. */
function logOf(engine: Engine, asked: AskedFor, component: string): FoamLog | undefined {
  const files = filesOf('cooks').filter((file) => asked.file === undefined || keyOf(file) === asked.file);
  for (const file of files) {
    const log = cookTable(file.cells, file.name);
    if (log.density) return { log, answer: judgeFoam(engine.from, engine.session, log, component) };
  }
  return undefined;
}

function logLine({ batches, good, incidents }: FoamLogAnswer): string {
  if (incidents.length === 0) return `Of the ${batches.length} batches of the log ${good} are good, and none is outside`;
  return `Of the ${batches.length} batches of the log ${good} are good; ${incidents.map(({ batches: names, verdict }) => `${names.length > 1 ? `${names[0]} to ${names.at(-1)}` : names[0]} ${verdict}`).join(', ')}`;
}

function logPlate(words: Words, { log, answer }: FoamLog, width: number): readonly Plate[] {
  const { seconds } = log.clock;
  const order = inOrder(seconds);
  if (order.length < 2) return [];
  const points = (of: (i: number) => number) => order.map((i) => [seconds[i]!, of(i)] as const).filter(([, y]) => Number.isFinite(y));
  const made = words.engine.from.plant.components;
  const component = [...made.values()].find(({ name }) => name === answer.component)!;
  const shown = (x: number) => words.shown(x, looks.density);
  const { low, high } = component.density ?? {};
  const rows = [
    { id: 'density', name: 'density', unit: words.unit(looks.density), points: points((i) => shown(answer.batches[i]!.density)), ...(low === undefined ? {} : { lo: shown(low) }), ...(high === undefined ? {} : { hi: shown(high) }) }, // prettier-ignore
    ...(log.whipPressure
      ? [
          {
            id: 'pressure',
            name: 'pressure in the whip',
            unit: words.unit(bar),
            points: points((i) => words.shown(log.whipPressure![i]!, bar)),
          },
        ]
      : []),
    { id: 'held', name: 'gas inside the whip', unit: '%', points: points((i) => 100 * answer.batches[i]!.held) },
  ].filter((row) => row.points.length > 1);
  if (rows.length === 0) return [];
  const ends = clockEnds(seconds);
  const drawn = traces({
    width,
    x: ends,
    ticks: clockTicks(log.clock, width),
    rows,
    spans: answer.incidents.map(({ batches }) => {
      const at = batches.map((name) => seconds[log.names.indexOf(name)]!);
      const room = (ends[1] - ends[0]) / 90;
      return { from: Math.min(...at) - room, to: Math.max(...at) + room, text: batches.length > 1 ? `${batches[0]} to ${batches.at(-1)}` : batches[0]! }; // prettier-ignore
    }),
  });
  return [
    {
      name: `Whipped batches of the log: ${rows.map(({ name }) => name).join(', ')}`,
      marks: drawn.marks,
      width: drawn.width,
      height: drawn.height,
      caption: 'By the time each cook ended. Hatched: batches outside their window.',
    },
  ];
}

function lotsTable({ held, write, lots }: FoamLogAnswer): readonly FigureTable[] {
  if (!held) return [];
  const row = (name: string, one: { mean: number; low: number; high: number; batches: number }, words: string) => ({
    name,
    cells: [
      { text: percent(one.mean) },
      { text: `${n(100 * one.low, 1)} to ${n(100 * one.high, 1)} %` },
      { text: String(one.batches) },
      { text: words },
    ],
  });
  return [
    {
      caption: 'Gas that the whip holds, as the batches of the log teach',
      head: ['mean', '95 % limits', 'batches', ''],
      words: [3],
      rows: [
        row('good batches', held, write === undefined ? '' : `write "${write}" at the stage of the whip`),
        ...lots.map((lot) => row(`albumen ${lot.lot}`, lot, lot.differs ? 'differs from the others' : 'no difference proven')),
      ],
    },
  ];
}
