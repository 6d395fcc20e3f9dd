import { windowsOfTemper } from '@barwright/day';
import { traces, type Trace } from '@barwright/drawing';
import {
  countsTable,
  judgeTemper,
  NotOnLine,
  stopsTable,
  temperTable,
  tunnelTable,
  type BesideTemper,
  type TemperAnswer,
  type TemperIncident,
  type TemperTable,
} from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { clockEnds, clockTicks, inOrder, withGaps } from './clock-ticks.js';
import { fileOf, filesOf, keyOf, type HeldFile } from './files.js';
import { followedParts, logsBeside } from './followed.js';
import { curveSheet } from './temper-curve.js';
import { capital, cautions, choiceField, looks, n, saying, sentences, span, Words } from './words.js';

type Tests = Extract<TemperTable, { kind: 'tests' }>;

/** The temper tests of a day: what went out, whether coolant or throughput moved it, which bars, minutes to a limit. */
export function temperSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const file = fileOf('temper', asked.file);
  if (!file) throw new NotOnLine('There is no temper log yet. Drop one here: time, slope or index, and coolant where there is one');
  const read = temperTable(file.cells, file.name);
  const files = choiceField('file', 'Log', keyOf(file), filesOf('temper').map((one) => ({ value: keyOf(one), text: keyOf(one) }))); // prettier-ignore
  if (read.kind === 'curve') return curveSheet(engine, read, file, files, width);
  const words = new Words(engine);
  const { beside, used } = besideOf(file);
  const until = untilOf(read, asked.until);
  const answer = judgeTemper(engine.from, engine.session, read, { beside, ...(until === undefined ? {} : { until }) });
  const last = answer.incidents.at(-1);
  const bars = followedParts(engine, windowsOfTemper(answer), logsBeside(file), width, until);
  return {
    part: 'temper',
    ...(last ? { mark: 'act' as const } : {}),
    title: titleOf(answer),
    sub: sentences(
      last &&
        `${enrobedWords(last)}${last.narrowedBy.length > 0 ? ` (${n(last.minutes, 0)} min)` : ''}; by the tests alone ${span(last.conservative[0], last.conservative[1])}: hold that until someone signs for less`,
      bars.sub,
      trendWords(answer),
    ),
    fields: [
      ...files,
      ...choiceField('until', 'As one stood there at', asked.until ?? '', [
        { value: '', text: 'the end of the log' },
        ...inOrder(read.clock.seconds).map((i) => {
          const text = read.clock.words(read.clock.seconds[i]!);
          return { value: text, text };
        }),
      ]),
    ],
    knobs: [],
    plates: [plate(words, read, answer, beside, width, until), ...bars.plates],
    tables: [...bars.tables, trendTable(answer), ...incidentTable(words, answer)],
    said: [
      ...answer.incidents.flatMap(({ firstOut, why, narrowedBy }) => [
        ...saying(`Why, from ${firstOut} on`, why),
        ...saying('When they were enrobed', narrowedBy),
      ]),
      ...bars.said,
      ...saying('How the log was read', [...answer.said, ...(used.length > 0 ? [`Laid beside it: ${used.join(', ')}.`] : [])]),
      ...cautions(answer.cautions),
    ],
  };
}

function titleOf({ incidents, tests }: TemperAnswer): string {
  const last = incidents.at(-1);
  if (!last) return `Temper held in all ${tests} tests.`;
  const state = { out: 'Out of its limits', under: 'Under-tempered', over: 'Over-tempered' }[last.state];
  const cause = {
    'coolant supply': 'the coolant supply moved it, not the throughput',
    throughput: 'the throughput moved it, not the coolant',
    'inlet temperature': 'the inlet moved it, not the coolant',
    none: 'neither coolant nor throughput explains it',
  } as Readonly<Record<string, string>>;
  const why = last.cause ? (cause[last.cause] ?? `cause: ${last.cause}`) : 'the log does not tell what moved it';
  const more = incidents.length > 1 ? ` ${capital(String(incidents.length - 1))} earlier.` : '';
  return `${state} from ${span(last.firstOut, last.lastOut)}: ${why}.${more}`;
}

function trendWords({ trends }: TemperAnswer): string {
  const near = trends
    .filter(({ sure, minutesToLimit }) => sure && minutesToLimit !== undefined && minutesToLimit > 0)
    .sort((a, b) => a.minutesToLimit! - b.minutesToLimit!)[0];
  return near
    ? `${capital(near.what)} reaches its limit in ${n(near.minutesToLimit!, 0)} min (${n(near.earliest ?? 0, 0)} to ${near.latest === undefined ? 'never' : n(near.latest, 0)})`
    : 'By the last tests nothing runs towards a limit';
}

function enrobedWords({ enrobed: [from, to] }: TemperIncident): string {
  return to === 'still open' ? `Enrobed from ${from} on, still open` : `Enrobed ${span(from, to)}`;
}

/** Logs of the same day that narrow the window: tunnel, stops and counts. */
function besideOf({ day }: HeldFile): { readonly beside: BesideTemper; readonly used: readonly string[] } {
  const used: string[] = [];
  const read = <T>(kind: 'tunnel' | 'stops' | 'counts', as: (rows: HeldFile['cells'], name: string) => T): T | undefined => {
    const candidates = filesOf(kind).filter((file) => file.day === day);
    // Several tables have a start and an end; stops name a reason.
    const file = kind === 'stops' ? candidates.find(({ name }) => /stop/i.test(name)) : candidates[0];
    if (!file) return undefined;
    try {
      const table = as(file.cells, file.name);
      used.push(file.name);
      return table;
    } catch {
      return undefined;
    }
  };
  const tunnel = read('tunnel', tunnelTable);
  const stops = read('stops', stopsTable);
  const counts = read('counts', countsTable);
  return { beside: { ...(tunnel ? { tunnel } : {}), ...(stops ? { stops } : {}), ...(counts ? { counts } : {}) }, used };
}

function untilOf({ clock }: Tests, text: string | undefined): number | undefined {
  if (!text) return undefined;
  return Array.from(clock.seconds).findLast((s) => Number.isFinite(s) && clock.words(s).endsWith(text.trim()));
}

function plate(words: Words, read: Tests, answer: TemperAnswer, beside: BesideTemper, width: number, until: number | undefined): Plate {
  const { seconds } = read.clock;
  const order = inOrder(seconds).filter((i) => until === undefined || seconds[i]! <= until);
  const limitsOf = (what: string) => {
    const found = answer.trends.find((trend) => trend.what === what)?.limit;
    const [lo, hi] = (/^(\S+) to (\S+)/.exec(found ?? '')?.slice(1, 3) ?? []).map(Number);
    return { ...(Number.isFinite(lo) ? { lo: lo! } : {}), ...(Number.isFinite(hi) ? { hi: hi! } : {}) };
  };
  const row = (id: string, name: string, values: Float64Array | undefined, rest: Partial<Trace>, turn = (x: number) => x): Trace[] =>
    values ? [{ id, name, points: order.map((i) => [seconds[i]!, turn(values[i]!)]), ...rest }] : [];
  const celsius = (value: number) => words.shown(value, looks.celsius);
  const warm = { unit: words.unit(looks.celsius) };
  const turned = ({ lo, hi }: { lo?: number; hi?: number }) => ({ ...(lo === undefined ? {} : { lo: celsius(lo) }), ...(hi === undefined ? {} : { hi: celsius(hi) }) }); // prettier-ignore
  const { slope, index, chocolate, coolant, throughput, inlet } = read.series;
  const tunnel = beside.tunnel?.clock.calendar === read.clock.calendar ? beside.tunnel : undefined;
  const marks = tunnel?.marks;
  const rows: Trace[] = [
    ...row('slope', 'Slope', slope, { unit: 'K/min', ...limitsOf('slope') }),
    ...row('index', 'Temper index', index, limitsOf('index')),
    ...row('chocolate', 'At the enrober', chocolate, { ...warm, ...turned(limitsOf('temperature at the enrober')) }, celsius),
    ...row('coolant', 'Coolant', coolant, warm, celsius),
    ...row('throughput', 'Throughput', throughput, { unit: 'kg/h' }),
    ...row('inlet', 'Inlet', inlet, warm, celsius),
    ...(marks && tunnel
      ? [{ id: 'marks', name: 'Belt marks', unit: 'of 100 bars', points: inOrder(tunnel.clock.seconds).filter((i) => until === undefined || tunnel.clock.seconds[i]! <= until).map((i) => [tunnel.clock.seconds[i]!, marks[i]!] as const) }] // prettier-ignore
      : []),
  ];
  const ends = clockEnds(seconds);
  const times = new Map(order.map((i) => [read.clock.words(seconds[i]!), seconds[i]!]));
  const drawn = traces({
    width,
    x: ends,
    ticks: clockTicks(read.clock, width),
    rows: rows.map((each) => ({ ...each, points: withGaps(each.points.filter(([x]) => x >= ends[0] && x <= ends[1])) })),
    spans: answer.incidents.flatMap(({ firstOut, lastOut, state }) => {
      const [from, to] = [times.get(firstOut), times.get(lastOut)];
      return from === undefined || to === undefined
        ? []
        : [{ from: from - 300, to: to + 300, text: state === 'out' ? 'out' : `${state}-tempered` }];
    }),
  });
  return {
    name: `Temper tests over the shift against their limits: ${rows.map(({ name }) => name.toLowerCase()).join(', ')}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption:
      'A dot for each test; pale bands are the windows of the set points; a wedge lies outside. What has no window is drawn without rails.',
  };
}

function trendTable({ trends }: TemperAnswer): FigureTable {
  return {
    caption: 'Where it is heading, by the last five tests',
    head: ['limits', 'tests outside', 'change an hour', 'minutes to the limit'],
    words: [3],
    rows: trends.map(({ what, limit, outside, perHour, minutesToLimit, earliest, latest, sure }) => ({
      name: what,
      cells: [
        { text: limit.replaceAll('-', '−') },
        { text: String(outside.length), act: outside.length > 0 },
        { text: perHour === undefined ? '–' : n(perHour, 2) },
        {
          text:
            perHour === undefined
              ? 'too few tests for a trend'
              : minutesToLimit === 0
                ? 'past it already'
                : !sure || minutesToLimit === undefined
                  ? 'no trend that stands'
                  : `${n(minutesToLimit, 0)} (${n(earliest ?? 0, 0)} to ${latest === undefined ? 'never' : n(latest, 0)})`,
          act: minutesToLimit !== undefined && sure && minutesToLimit < 60,
        },
      ],
    })),
  };
}

function incidentTable(words: Words, { incidents }: TemperAnswer): readonly FigureTable[] {
  const titles: Readonly<Record<string, readonly [string, (value: number) => string]>> = {
    slope: ['slope, K/min', (value) => n(value, 2)],
    index: ['temper index', (value) => n(value, 1)],
    chocolate: ['chocolate at the enrober', (value) => words.amount(value, looks.celsius)],
    coolant: ['coolant', (value) => words.amount(value, looks.celsius)],
    inlet: ['inlet', (value) => words.amount(value, looks.celsius)],
    throughput: ['throughput', (value) => words.amount(value, looks.perHour)],
    yieldValue: ['yield value', (value) => words.amount(value, looks.pascal)],
    plasticViscosity: ['plastic viscosity', (value) => words.amount(value, looks.pascalSecond)],
  };
  return incidents.map(({ firstOut, before, during }) => ({
    caption: `Medians before and during, from ${firstOut} on`,
    head: ['six tests before', 'while it was out'],
    rows: Object.entries(titles).flatMap(([key, [name, write]]) =>
      before[key] === undefined && during[key] === undefined
        ? []
        : [{ name, cells: [before[key], during[key]].map((value) => ({ text: value === undefined ? '–' : write(value) })) }],
    ),
  }));
}
