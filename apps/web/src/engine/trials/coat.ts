import { Session } from '@barwright/chain';
import { curve, niceTicks, type Point } from '@barwright/drawing';
import { coatModel, enroberAnswer, judgeLanes, lanesTable, NotOnLine, type CoatModel, type EnroberAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, Said, TrialSheet } from '../trial-protocol.js';
import { defectsOf, defectsTable } from './coat-defects.js';
import { fileOf, filesOf, keyOf } from './files.js';
import { calibrated } from './tunnel-log.js';
import { laneCause, laneWords, lanesPlate, roundsTable } from './coat-lanes.js';
import { askedNumber, capital, cautions, choiceField, looks, n, numberField, saying, sentences, sillOf, Words } from './words.js';

/** The enrober: coat lane by lane as weighed, coat to be expected at other flow or settings, tails and feet with their cause, ways back. */
export function coatSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const coats = coatModel(from, session);
  if (!coats)
    throw new NotOnLine(
      `${from.line ? from.line.name : from.bar.name} has no enrober with a chocolate coat; nothing can be expected from it`,
    );
  const words = new Words(engine);
  const id = (pattern: RegExp) => from.chain.quantities.find((quantity) => pattern.test(quantity.id))?.id;
  const now = {
    yield: session.number(id(/\.yield_value$/)!),
    plastic: session.number(id(/\.plastic_viscosity$/)!),
    blower: session.number(id(/^set\.enrob.*\.blower_speed$/)!),
    shaker: session.number(id(/^set\.enrob.*\.shaker_frequency$/)!),
  };
  const given = {
    yield: askedNumber(asked, 'yield'),
    plastic: askedNumber(asked, 'plastic'),
    blower: askedNumber(asked, 'blower'),
    shaker: askedNumber(asked, 'shaker'),
  };
  const own = new Session(from.chain, session.overrides());
  calibrated(engine, own);
  const answer = enroberAnswer(from, own, {
    ...(given.yield === undefined ? {} : { yieldValue: given.yield }),
    ...(given.plastic === undefined ? {} : { plasticViscosity: given.plastic }),
    ...(given.blower === undefined ? {} : { blowerSpeed: given.blower }),
    ...(given.shaker === undefined ? {} : { shakerFrequency: given.shaker / 60 }),
  });
  const changed = Object.values(given).some((value) => value !== undefined);
  const file = fileOf('lanes', asked.file);
  const weighed = file && lanesTable(file.cells, file.name);
  const judged = weighed && judgeLanes(from, weighed.rounds);
  const round =
    judged && (judged.rounds.find(({ time }) => time === asked.round) ?? judged.rounds[judged.runs[0]?.from ?? judged.rounds.length - 1]);
  const outside = isOutside(answer);
  const { gram } = looks;
  const expected = `Expect a coat of ${words.amount(answer.after.mass, gram)} (${words.range(answer.after.low, answer.after.high, gram)}) instead of ${words.amount(answer.before.mass, gram)}${outside ? ', outside its window' : ''}`;
  const act = changed ? outside : Boolean(judged?.runs.length);
  const defects = defectsOf(engine, given, answer);
  return {
    part: 'coat',
    ...(act ? { mark: 'act' as const } : {}),
    title: changed ? `${expected}.` : judged && round ? laneWords(words, judged) : `A coat of ${words.amount(answer.before.mass, gram)} is expected; no weights of lanes have been brought.`, // prettier-ignore
    sub: changed
      ? sentences(...waysBack(words, answer))
      : judged
        ? sentences(laneCause(words, judged), 'Below: what flow and settings do')
        : 'Ask for another flow or setting to see what it does.',
    fields: [
      numberField(asked, 'yield', 'Yield value', 'Pa', now.yield, 1),
      numberField(asked, 'plastic', 'Plastic viscosity', 'Pa·s', now.plastic, 2),
      numberField(asked, 'blower', 'Blower at the bar', 'm/s', now.blower, 1),
      numberField(asked, 'shaker', 'Shaker', '1/min', now.shaker, 0),
      ...(judged && round ? choiceField('round', 'Weighed at', round.time, judged.rounds.map(({ time }) => ({ value: time, text: time }))) : []), // prettier-ignore
      ...choiceField('file', 'Weights', file ? keyOf(file) : '', filesOf('lanes').map((one) => ({ value: keyOf(one), text: keyOf(one) }))), // prettier-ignore
    ],
    knobs: [],
    plates: [
      ...(judged && round ? [lanesPlate(words, judged, round, width)] : []),
      answerPlate(words, coats, answer, given.yield ?? now.yield, now.yield, width),
    ],
    tables: [movedTable(words, answer), defectsTable(words, defects), ...(judged ? [roundsTable(words, judged)] : [])],
    said: [
      ...saying(`Ways back to ${words.amount(answer.target, gram)}`, changed ? waysBack(words, answer).concat('Nothing: live with the coat, and with what it gives away.') : []), // prettier-ignore
      ...saying('Tails and feet', defects.said),
      ...saying('How the weights were read', [...(weighed?.said ?? []), ...(judged?.said ?? [])]),
      ...cautions([...answer.notes, 'Wire mesh and shafts draw in: guards closed, locked off before a hand goes in.']),
    ] satisfies Said[],
  };
}

function isOutside({ after, window }: EnroberAnswer): boolean {
  return (window.high !== undefined && after.mass > window.high) || (window.low !== undefined && after.mass < window.low);
}

function waysBack(words: Words, answer: EnroberAnswer): string[] {
  const best = answer.correction?.best;
  const ways: string[] = [];
  if (answer.blower !== undefined && Math.abs(answer.after.mass - answer.target) > 1e-5)
    ways.push(
      `Blower at ${words.amount(answer.blower, looks.metrePerSecond)} brings it back and costs nothing; look at the top and the tails.`,
    );
  if (best && best.name !== 'nothing') {
    const share = best.add.cocoaButter + best.add.lecithin + best.add.e476;
    ways.push(
      `${capital(best.name)}: ${n(100 * share, 2)} % more, ${answer.currency} ${n(best.cost, 4)} a kg of chocolate. ${best.law.join(' ')}`,
    );
  }
  return ways;
}

/** Coat against yield value, with its window: where one stands and where one would. */
function answerPlate(words: Words, coats: CoatModel, answer: EnroberAnswer, asked: number, now: number, width: number): Plate {
  const { gram } = looks;
  const [from, to] = [Math.min(now, asked) * 0.5, Math.max(now, asked) * 1.6];
  const atYield = (yieldValue: number) => coats.at({ yieldValue });
  const xs = Array.from({ length: 33 }, (_, k) => from + ((to - from) * k) / 32);
  const expected = xs.map(atYield);
  const mass = (value: number) => words.shown(value, gram);
  const points = xs.map((x, i): Point => [x, mass(expected[i]!.mass)]);
  const band = xs.map((x, i) => ({ x, lo: mass(expected[i]!.low), hi: mass(expected[i]!.high) }));
  const [low, high] = [Math.min(...band.map(({ lo }) => lo)) * 0.97, Math.max(...band.map(({ hi }) => hi)) * 1.02];
  const { window } = answer;
  const drawn = curve({
    width: Math.min(width, 760),
    height: 280,
    x: [from, to],
    y: [low, high],
    points,
    band,
    limits: {
      ...(window.low === undefined ? {} : { lo: mass(window.low), loText: words.amount(window.low, gram) }),
      ...(window.high === undefined ? {} : { hi: mass(window.high), hiText: words.amount(window.high, gram) }),
    },
    now: [asked, mass(answer.after.mass)],
    wanted: [now, mass(answer.before.mass)],
    xLabel: 'yield value, Pa; other settings as they are',
    yLabel: `coat, ${words.unit(gram)}`,
    yTicks: niceTicks(low, high, 4),
  });
  return {
    name: 'Coat to be expected against the yield value of the chocolate',
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: 'Ring: as entered. Dot or wedge: as asked. Slanted: what film theory may be off by, once brought to the coat as entered.',
  };
}

function movedTable(words: Words, answer: EnroberAnswer): FigureTable {
  const { before, after } = answer;
  const { gram, millimetre, celsius, kilowatt, perHour } = looks;
  const fine = { ...gram, decimals: 2 };
  type Row = FigureTable['rows'][number];
  const row = (name: string, of: { before: number; after: number } | undefined, write: (value: number) => string, id?: string): Row[] =>
    of
      ? [
          {
            name,
            ...(id && words.engine.from.chain.index.has(id) ? { id } : {}),
            cells: [{ text: write(of.before) }, { text: write(of.after) }],
          },
        ]
      : [];
  const amount = (look: Parameters<Words['amount']>[1]) => (value: number) => words.amount(value, look);
  const coat: Row = {
    name: 'coat of a bar',
    id: 'coat.mass',
    cells: [before, after].map((of) => ({
      text: `${words.amount(of.mass, gram)} (${words.range(of.low, of.high, gram)})`,
      sill: sillOf(of.mass, { ...answer.window, aim: answer.target }, 'computed'),
      act: isOutside({ ...answer, after: of }),
    })),
  };
  return {
    caption: 'Now, and if you do this',
    head: ['as entered', 'as asked'],
    rows: [
      coat,
      ...(['top', 'side', 'bottom'] as const).flatMap((face) =>
        before[face] > 0
          ? row(`coat, ${face}`, { before: before[face], after: after[face] }, amount(millimetre), `coat.thickness_${face}`)
          : [],
      ),
      ...row('mass of a bar', answer.barMass, amount(fine), 'bar.mass'),
      ...row('given away', answer.giveaway, amount(fine), 'bar.giveaway'),
      ...row('cost of a bar', answer.cost, (value) => `${n(100 * value, 3)} ct`, 'bar.cost'),
      ...row('through the temperer', answer.throughput, amount(perHour), words.engine.from.chain.quantities.find(({ id }) => /^station\..*temper.*\.throughput$/.test(id))?.id), // prettier-ignore
      ...row('bars leave the tunnel at', answer.tunnelExit, amount(celsius)),
      ...row('heat from bars in the tunnel', answer.tunnelLoad, amount(kilowatt)),
    ],
  };
}
