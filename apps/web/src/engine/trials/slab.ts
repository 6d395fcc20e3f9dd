import { belt, type Point } from '@barwright/drawing';
import { slabHistory, type SlabAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { askedNumber, cautions, looks, numberField, saying, sentences, Words } from './words.js';

/** The slab through its cooler: core and faces along the belt, and whether the knives can have it. */
export function slabSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const [air, rate] = [askedNumber(asked, 'air'), askedNumber(asked, 'rate')];
  const answer = slabHistory(from, session, {
    ...(air === undefined ? {} : { air: words.inside(air, looks.celsius) }),
    ...(rate === undefined ? {} : { rate }),
  });
  const [first, ...rest] = answer.sentences;
  const { state } = answer.slit;
  return {
    part: 'slab',
    ...(state === 'too warm' || state === 'too cold' ? { mark: 'act' as const } : state === 'cannot tell' ? { mark: 'seen' as const } : {}),
    title: first!.split(':')[0]!.replace(/\.?$/, '.'),
    sub: sentences(first!.split(': ').slice(1).join(': ')),
    fields: [
      numberField(asked, 'air', 'Air of the cooler', words.unit(looks.celsius), words.shown(answer.air, looks.celsius), 1),
      numberField(asked, 'rate', 'Rate', 'bars/min', rate ?? session.number('line.rate'), 0),
    ],
    knobs: [],
    plates: [plate(words, answer, width)],
    tables: [placesTable(words, answer)],
    said: [...saying('What the model says of itself', rest.slice(0, -1)), ...cautions(rest.slice(-1))],
  };
}

function plate(words: Words, answer: SlabAnswer, width: number): Plate {
  const t = (x: number) => words.shown(x, looks.celsius);
  const points = (values: readonly number[]): Point[] =>
    answer.along.place.map((place, i): Point => [words.shown(place, looks.metre), t(values[i]!)]);
  const { slit, hottestBetween } = answer;
  const drawn = belt({
    width,
    height: 420,
    zones: [
      {
        name: answer.station,
        from: 0,
        to: words.shown(answer.length, looks.metre),
        air: t(answer.air),
        airText: words.amount(answer.air, looks.celsius),
      },
    ],
    lines: [
      { name: 'core', points: points(answer.along.hottest), bold: true },
      { name: 'top', points: points(answer.along.top) },
      { name: 'evened out', points: points(answer.along.mean) },
      { name: 'bottom', points: points(answer.along.bottom) },
    ],
    endRange: [t(Math.min(...hottestBetween)), t(Math.max(...hottestBetween))],
    endWindow: { lo: t(slit.from), hi: t(slit.below) },
    xLabel: `along the belt, ${words.unit(looks.metre)}`,
    yLabel: words.unit(looks.celsius),
  });
  return {
    name: `Temperatures of the slab along its cooler: the core from ${words.amount(answer.along.hottest[0]!, looks.celsius)} to ${words.amount(answer.exit.hottest, looks.celsius)}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: 'The bar at the end: the core with a quarter more or less heat transfer, beside the window in which it slits.',
  };
}

function placesTable(words: Words, { along }: SlabAnswer): FigureTable {
  const last = along.place.length - 1;
  return {
    caption: 'Along the belt',
    head: ['core', 'coldest', 'top', 'bottom', 'evened out'],
    rows: Array.from({ length: 9 }, (_, i) => {
      const at = Math.round((i * last) / 8);
      return {
        name: words.amount(along.place[at]!, { unit: 'm', decimals: 1 }),
        cells: [along.hottest, along.coldest, along.top, along.bottom, along.mean].map((list) => words.cell(list[at]!, looks.celsius)),
      };
    }),
  };
}
