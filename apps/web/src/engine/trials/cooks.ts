import { windowsOfCooks } from '@barwright/day';
import { traces, type Trace } from '@barwright/drawing';
import { cookChoices, cookTable, judgeCooks, NotOnLine, type CookLogAnswer, type CookTable } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { clockEnds, clockTicks, inOrder } from './clock-ticks.js';
import { percent, slumpPlate } from './cook-words.js';
import { fileOf, filesOf, keyOf } from './files.js';
import { followedParts, logsBeside } from './followed.js';
import { capital, cautions, choiceField, looks, n, saying, sentences, span, Words } from './words.js';

/** A log of cooks: which batches were not what they should be, by which reading, and what the good ones teach. */
export function cooksSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  // The caramel's log comes first where several lie in the folder of a day: it is the cook that a bar feels most.
  const [main] = cookChoices(engine.from);
  const file =
    asked.file === undefined
      ? (filesOf('cooks').find(({ component }) => component === main?.slug) ?? fileOf('cooks', undefined))
      : fileOf('cooks', asked.file);
  if (!file)
    throw new NotOnLine(
      'There is no log of cooks yet. Drop one here: batch, end of the cook, and a temperature, refractometer reading or moisture',
    );
  const words = new Words(engine);
  const log = cookTable(file.cells, file.name);
  const answer = judgeCooks(engine.from, engine.session, log, file.component);
  const held = answer.incidents.filter(({ verdict }) => verdict !== 'unconfirmed');
  const lone = answer.incidents.filter(({ verdict }) => verdict === 'unconfirmed');
  const [first] = held;
  const bars = followedParts(engine, windowsOfCooks(answer), logsBeside(file), width);
  return {
    part: 'cooks',
    ...(first ? { mark: 'act' as const } : lone.length > 0 ? { mark: 'seen' as const } : {}),
    title: titleOf(answer),
    sub: sentences(
      bars.sub,
      first?.laid !== undefined && `Laid ${spanOf(first.laid)}; the first reading that tells was there at ${first.known}`,
      first?.answer.probe?.contradicts === true &&
        `Cook to ${words.amount(first.answer.probe.indicated, looks.celsius)} as the probe shows it until it is checked`,
      ...lone.map(({ batches }) => `${batches.join(', ')}: one result of the laboratory that nothing confirms; it holds no bars`),
    ),
    fields: choiceField('file', 'Log', keyOf(file), filesOf('cooks').map((one) => ({ value: keyOf(one), text: keyOf(one) }))), // prettier-ignore
    knobs: [],
    plates: [plate(words, log, answer, width), ...bars.plates, ...slumpPlate(first?.answer.slump, width)],
    tables: [...bars.tables, batchTable(answer), ...offsetTable(words, answer)],
    said: [
      ...answer.incidents.flatMap(({ batches, verdict, answer: one }) => saying(`${batches.join(', ')}: ${verdict}`, one.advice)),
      ...bars.said,
      ...saying('How the log was read', answer.said),
      ...cautions(['Hot mass above 110 °C sticks and burns deep; samples and probe checks by trained people only.', 'Barwright advises; release and hold stay with the people whose name stands for them.']), // prettier-ignore
    ],
  };
}

const spanOf = (text: string): string => {
  const [from = '', to = ''] = text.split(' to ');
  return span(from, to);
};

function titleOf({ component, good, batches, incidents }: CookLogAnswer): string {
  const bad = incidents.filter(({ verdict }) => verdict !== 'unconfirmed');
  const count = batches.filter(({ verdict }) => verdict !== 'repeat').length;
  if (bad.length === 0) return `${good} of ${count} cooks of ${component} are good, and none calls for a hold.`;
  const words = { probe: 'temperature and solids contradict', wet: 'too wet', dry: 'too dry' } as Readonly<Record<string, string>>;
  return `${capital(component)}, ${bad.map(({ batches: names, verdict }) => `${names.length > 1 ? `${names[0]} to ${names.at(-1)}` : names[0]}: ${words[verdict] ?? verdict}`).join('; ')}.`;
}

function plate(words: Words, log: CookTable, answer: CookLogAnswer, width: number): Plate {
  const { seconds } = log.clock;
  const order = inOrder(seconds);
  const repeats = new Set(answer.batches.flatMap(({ verdict }, i) => (verdict === 'repeat' ? [i] : [])));
  const points = (values: Float64Array, scale: (x: number) => number) =>
    order.filter((i) => !repeats.has(i) && Number.isFinite(values[i]!)).map((i) => [seconds[i]!, scale(values[i]!)] as const);
  const made = [...words.engine.from.plant.components.values()].find(({ name }) => name === answer.component)!;
  const end = made.stages.find((stage) => stage.cook)!.cook!.end;
  const windowFrom = (of: { readonly low?: number; readonly high?: number } | undefined) => ({
    ...(of?.low === undefined ? {} : { low: of.low }),
    ...(of?.high === undefined ? {} : { high: of.high }),
  });
  const cook = windowFrom(end.by === 'temperature' ? undefined : end.moisture);
  const densityWindow = windowFrom(made.density);
  const rows: Trace[] = [];
  const add = (
    id: string,
    name: string,
    unit: string,
    values: Float64Array | undefined,
    scale: (x: number) => number,
    window?: { low?: number; high?: number },
  ) => {
    if (!values || points(values, scale).length < 2) return;
    rows.push({ id, name, unit, points: points(values, scale), ...(window?.low === undefined ? {} : { lo: scale(window.low) }), ...(window?.high === undefined ? {} : { hi: scale(window.high) }) }); // prettier-ignore
  };
  const shown = (x: number) => 100 * x;
  add('temperature', 'cook temperature', words.unit(looks.celsius), log.temperature, (x) => words.shown(x, looks.celsius));
  add('refractometer', 'refractometer', '%', log.refractometer, shown);
  add('moisture', 'water, laboratory', '%', log.moisture, shown, cook);
  add('viscosity', 'viscosity as laid', 'Pa·s', log.viscosity, (x) => x);
  add('density', 'density', words.unit(looks.density), log.density, (x) => words.shown(x, looks.density), densityWindow);
  const ends = clockEnds(seconds);
  const drawn = traces({
    width,
    x: ends,
    ticks: clockTicks(log.clock, width),
    rows,
    spans: answer.incidents.map(({ batches }) => {
      const at = batches.map((name) => seconds[log.names.indexOf(name)]!);
      const room = (ends[1] - ends[0]) / 90;
      return {
        from: Math.min(...at) - room,
        to: Math.max(...at) + room,
        text: batches.length > 1 ? `${batches[0]} to ${batches.at(-1)}` : batches[0]!,
      };
    }),
  });
  return {
    name: `Cooks by the time they ended: ${rows.map(({ name }) => name).join(', ')}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: 'By the time each cook ended. Hatched: batches that are not what they should be, or not confirmed.',
  };
}

function batchTable({ batches }: CookLogAnswer): FigureTable {
  const cell = (x: number | undefined) => ({ text: x === undefined ? '–' : percent(x, 2) });
  return {
    caption: 'Every batch, each reading as the moisture it stands for',
    head: ['ended', 'laboratory', 'refractometer', 'viscosity', 'temperature', ''],
    words: [0, 5],
    rows: batches.map(({ name, ended, says, verdict, why }) => ({
      name,
      cells: [
        { text: ended },
        cell(says.laboratory),
        cell(says.refractometer),
        cell(says.viscosity),
        cell(says.temperature),
        {
          text: verdict === 'good' ? '' : verdict === 'repeat' ? why : `${verdict}: ${why}`,
          act: verdict !== 'good' && verdict !== 'repeat',
        },
      ],
    })),
  };
}

function offsetTable(words: Words, { offsets }: CookLogAnswer): readonly FigureTable[] {
  if (offsets.length === 0) return [];
  const { chain } = words.engine.from;
  return [
    {
      caption: 'What the good cooks teach; write it into the definition to use it',
      head: ['estimate', '95 % limits', 'one batch', 'cooks', 'write'],
      words: [4],
      rows: offsets.map(({ id, estimate, low, high, sd, batches, write }) => {
        const look = chain.quantities[chain.index.get(id)!]!;
        return {
          name: look.meaning,
          id,
          cells: [
            { text: words.amount(estimate, look) },
            { text: words.range(low, high, look) },
            { text: `± ${id.endsWith('factor') ? `${n(sd, 1)} Pa·s` : words.amount(sd, look)}` },
            { text: String(batches) },
            { text: write },
          ],
        };
      }),
    },
  ];
}
