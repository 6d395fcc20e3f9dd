import { niceTicks, tickText } from '@barwright/drawing';
import { slabHistory, type SlabAnswer } from '@barwright/line';
import type { AlongLine, SlabStretch } from '../along-protocol.js';
import type { Engine } from '../engine.js';
import { materialOf } from '../materials.js';
import { looks, n, sentences, tight, Words } from '../trials/words.js';
import type { OnClock } from './answer.js';
import { lineWords, readAt, stateAt, wholeMinutes } from './reading.js';

/** The slab through its cooler as the strip shows it. @throws NoSlab and what the chain refuses, with a sentence */
export function slabStretch(engine: Engine, clock: OnClock): SlabStretch {
  const { from } = engine;
  const words = new Words(engine);
  const answer = slabHistory(from, engine.session);
  const [start, end] = clock.spanOf(answer.station);
  const minutes = answer.along.place.map((place) => place / answer.speed / 60);
  const thick = answer.layers.reduce((sum, { height }) => sum + height, 0);
  const celsius = (name: string, values: readonly number[]): AlongLine => ({
    name,
    values: values.map((value) => words.shown(value, looks.celsius)),
    unit: words.unit(looks.celsius),
    decimals: 1,
  });
  const middle = answer.profiles.map((row) => readAt(answer.heights, row, thick / 2));
  const lines = [
    celsius('top', answer.along.top),
    celsius('middle', middle),
    celsius('bottom', answer.along.bottom),
    celsius('core, its hottest place', answer.along.hottest),
    celsius('evened out', answer.along.mean),
  ];
  const place: AlongLine = {
    name: 'along the belt',
    values: answer.along.place.map((each) => words.shown(each, looks.metre)),
    unit: words.unit(looks.metre),
    decimals: 1,
  };
  const [title, ...rest] = answer.sentences;
  const [stronger] = answer.sticky.coreBetween;
  const since = (minute: number) => clock.words(start + minute);
  const stretch = { minutes, states: answer.along.state, lines, place };
  return {
    kind: 'slab',
    station: answer.station,
    from: start,
    to: end,
    ...stretch,
    title: tight(`${title!.split(':')[0]!.replace(/\.$/, '')}.`),
    sub: sentences(
      title!.split(': ').slice(1).join(': '),
      answer.sticky.core > answer.dwell &&
        stronger <= answer.dwell &&
        `With a quarter more heat transfer it would be ready from ${whereabouts(words, stronger, answer.speed, since)} on`,
    ),
    act: answer.slit.state === 'too warm' || answer.slit.state === 'too cold',
    spec: specOf(words, answer, minutes, clock, [start, end], from),
    table: {
      caption: 'Through the slab, minute by minute',
      head: [place.name, ...lines.map(({ name }) => name), 'at a knife'],
      words: [lines.length + 1],
      rows: wholeMinutes(stretch).map((at) => ({
        name: minuteWords(at),
        cells: [...[place, ...lines].map((line) => ({ text: lineWords(line, minutes, at) })), { text: stateAt(stretch, at) }],
      })),
    },
    said: rest.map(tight),
  };
}

export const minuteWords = (minute: number): string => `${n(minute, minute % 1 === 0 ? 0 : 1)}\u202fmin`;

function specOf(
  words: Words,
  answer: SlabAnswer,
  minutes: readonly number[],
  clock: OnClock,
  [start, end]: readonly [number, number],
  from: Engine['from'],
): SlabStretch['spec'] {
  const t = (value: number) => words.shown(value, looks.celsius);
  const unit = words.unit(looks.celsius);
  const thick = answer.layers.reduce((sum, { height }) => sum + height, 0);
  const mm = (metres: number) => metres * 1000;
  // The faces belong to the picture: the rows of the model end half a cell inside them.
  const rows = answer.profiles.map((row, i) => [answer.along.bottom[i]!, ...row, answer.along.top[i]!].map(t));
  const widened = (profiles: SlabAnswer['profiles']) => profiles.map((row) => [row[0]!, ...row, row.at(-1)!].map(t));
  const { slit, sticky } = answer;
  const [lo, hi] = [t(slit.from), t(slit.below)];
  const [low, high] = [Math.min(...rows.flat()), Math.max(...rows.flat())];
  const rounds = niceTicks(low, high, 6).filter((at) => at > low && at < high && Math.abs(at - lo) > 1 && Math.abs(at - hi) > 1);
  const roundWords = tickText(rounds);
  let above = 0;
  return {
    field: { x: minutes, y: [0, ...answer.heights.map(mm), mm(thick)], rows },
    doubt: { cooler: widened(answer.doubt.stronger), warmer: widened(answer.doubt.weaker) },
    layers: answer.layers.map(({ name, height }) => {
      const layer = from.bar.layers.find((other) => other.name === name)!;
      const made = from.plant.components.get(layer.component)!;
      const bottom = above;
      above += mm(height);
      return { name, from: bottom, to: above, material: materialOf(made.name, made.texture) };
    }),
    levels: [
      ...rounds.map((at, i) => ({ at, text: roundWords[i]! })),
      { at: lo, text: `${n(lo, 0)}\u202f${unit}`, bold: true },
      { at: hi, text: `${n(hi, 0)}\u202f${unit}`, bold: true },
    ],
    window: { lo, hi, text: `slits well, ${n(lo, 0)} to ${n(hi, 0)}\u202f${unit}` },
    ...faceNote('top', 'top', sticky.top, answer.dwell),
    ...faceNote('bottom', 'bottom', sticky.bottom, answer.dwell),
    ...spansOf(words, answer, (minute) => clock.words(start + minute)),
    ends: [`${clock.words(start)} into the ${answer.station}`, `${clock.words(end)} out, to the knives`],
    xLabel: 'minutes',
    unit,
  };
}

function faceNote(
  which: 'top' | 'bottom',
  name: string,
  seconds: number,
  dwell: number,
): Partial<Pick<SlabStretch['spec'], 'top' | 'bottom'>> {
  if (!(seconds <= dwell)) return { [which]: { at: dwell / 60, text: `the ${name} still sticks at the end` } };
  return { [which]: { at: seconds / 60, text: `the ${name} no longer sticks, ${minuteWords(Number((seconds / 60).toFixed(1)))}` } };
}

/** '6.2 min, 10.0 m (06:47)' */
function whereabouts(words: Words, seconds: number, speed: number, clock: (minute: number) => string): string {
  const place = words.amount(seconds * speed, { unit: 'm', decimals: 1 });
  return `${minuteWords(Number((seconds / 60).toFixed(1)))}, ${place} (${clock(seconds / 60)})`;
}

/** Sticky, ready, brittle: what may be done with the core, and between which minutes it may become ready. */
function spansOf(
  words: Words,
  { slit, sticky, dwell, speed }: SlabAnswer,
  clock: (minute: number) => string,
): Pick<SlabStretch['spec'], 'spans' | 'spansBetween'> {
  const min = (seconds: number) => Math.min(seconds, dwell) / 60;
  const at = (seconds: number) => whereabouts(words, seconds, speed, clock);
  const [opens, closes] = [sticky.core, slit.closes / speed];
  const [strong, weak] = sticky.coreBetween;
  const spans: { from: number; to: number; text: string }[] = [];
  if (opens > dwell) spans.push({ from: 0, to: min(dwell), text: 'the core sticks at a knife to the end' });
  else if (opens > 0) spans.push({ from: 0, to: min(opens), text: `the core sticks at a knife until ${at(opens)}` });
  if (opens < dwell && closes > opens)
    spans.push({ from: min(opens), to: min(closes), text: opens > 0 ? 'then slits well' : 'slits well from the start' });
  if (closes < dwell) spans.push({ from: min(closes), to: min(dwell), text: `cracks from ${at(closes)}` });
  return strong <= dwell ? { spans, spansBetween: [min(strong), min(weak)] } : { spans };
}
