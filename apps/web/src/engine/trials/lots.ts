import { curve, whiskers } from '@barwright/drawing';
import { planAcceptance } from '@barwright/science';
import { lotAnswer, NotOnLine, type LotAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { capital, cautions, choiceField, n, saying, sentences } from './words.js';

/** Lots at intake: grade, results against the control plan, worth in money against a reference, what one aflatoxin result leaves open. */
export function lotsSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const lots = from.plant.plans.flatMap((plan) => plan.lots).filter(({ results }) => (results?.length ?? 0) > 0);
  if (lots.length === 0) throw new NotOnLine(`The plan of ${from.plant.name} has no lot with results; write them under its lots`);
  const material = lots.some((lot) => lot.material === asked.material)
    ? asked.material!
    : (lots.find((lot) => /bean/i.test(lot.material)) ?? lots[0]!).material;
  const ofMaterial = lots.filter((lot) => lot.material === material);
  const answers = ofMaterial.map(({ lot }) => lotAnswer(from, session, lot, { material }));
  const lot = ofMaterial.find((one) => one.lot === asked.lot)?.lot ?? worst(answers).lot;
  const reference = ofMaterial.find((one) => one.lot === asked.against && one.lot !== lot)?.lot;
  const answer = lotAnswer(from, session, lot, { material, ...(reference ? { reference } : {}) });
  const outside = answer.results.filter(({ verdict }) => verdict === 'outside');
  return {
    part: 'lots',
    ...(outside.length > 0 ? { mark: 'act' as const } : {}),
    title: titleOf(answer),
    sub: sentences(
      answer.worth &&
        `${n(100 * answer.worth.yieldLot, 2)} kg of ${answer.worth.component} from 100 kg instead of ${n(100 * answer.worth.yieldReference, 2)}; fair price ${answer.worth.currency} ${n(answer.worth.fairPrice, 3)}/kg, asked ${n(answer.worth.price, 3)}`,
      ...answer.reactions,
    ),
    fields: [
      ...choiceField('material', 'Material', material, [...new Set(lots.map((one) => one.material))].map((name) => ({ value: name, text: name }))), // prettier-ignore
      ...choiceField('lot', 'Lot', lot, ofMaterial.map((one) => ({ value: one.lot, text: one.lot }))), // prettier-ignore
      ...(answer.worth
        ? choiceField('against', 'Against', reference ?? '', [
            { value: '', text: 'the recipe as costed' },
            ...ofMaterial.filter((one) => one.lot !== lot).map((one) => ({ value: one.lot, text: `lot ${one.lot}` })),
          ])
        : []),
    ],
    knobs: [],
    plates: [...cutPlate(answers, width), ...worthPlate(answer, width), ...oddsPlate(answer, width)],
    tables: [resultTable(engine, answers), ...worthTable(answer), ...gradeTable(answers)],
    said: [
      ...saying('What the control plan says', answer.reactions, true),
      ...saying('Grade', gradeWords(answers)),
      ...saying('What one aflatoxin result leaves open', oddsWords(answer)),
      ...saying('Kill step', answer.killStep),
      ...saying('Not reported', answers.filter(({ missing }) => missing.length > 0).map(({ lot: of, missing }) => `${of}: ${missing.join(', ')}. A missing check is not a good one.`)), // prettier-ignore
      ...cautions(answer.cautions),
    ],
  };
}

/** The lot that a person should look at: most results outside, then worth least. */
function worst(answers: readonly LotAnswer[]): LotAnswer {
  const out = ({ results }: LotAnswer) => results.filter(({ verdict }) => verdict === 'outside').length;
  return [...answers].sort((a, b) => out(b) - out(a) || (b.worth?.discount ?? 0) - (a.worth?.discount ?? 0))[0]!;
}

function titleOf({ lot, material, results, worth }: LotAnswer): string {
  const outside = results.filter(({ verdict }) => verdict === 'outside');
  const inside =
    outside.length === 0
      ? 'every result is inside the control plan'
      : `${outside.map(({ name }) => name).join(' and ')} ${outside.length === 1 ? 'is' : 'are'} outside the control plan`;
  if (!worth) return `${lot}, ${material}: ${inside}.`;
  const tonne = 1000 * (worth.price - worth.fairPrice);
  const money = `${worth.currency} ${n(Math.abs(tonne), 0)}`;
  const words =
    Math.abs(tonne) < 0.5
      ? `is worth as much as ${worth.against}`
      : `is worth ${money} a tonne ${tonne > 0 ? 'less' : 'more'} than ${worth.against}`;
  return `${lot}, ${material}, ${words}; ${inside}.`;
}

/** Cut test of every lot of the material with what a sample of that size leaves open, against the control plan. */
function cutPlate(answers: readonly LotAnswer[], width: number): readonly Plate[] {
  const rows = answers.flatMap(({ lot, grade, results }) =>
    (grade?.shares ?? []).map(({ name, share, low, high, counted }) => {
      const limit = results.find((result) => new RegExp(name.slice(0, 4), 'i').test(result.name))?.limit?.high;
      return {
        id: `${lot} ${name}`,
        name: `${lot}, ${name}`,
        value: 100 * share,
        low: 100 * low,
        high: 100 * high,
        ...(limit === undefined ? {} : { most: 100 * limit }),
        note: `${counted} of ${grade!.beans} beans`,
      };
    }),
  );
  if (rows.length === 0) return [];
  const drawn = whiskers({ width, rows, unit: 'share of beans by count, %' });
  return [{ name: 'Cut test of each lot with its interval and limit', marks: drawn.marks, width: drawn.width, height: drawn.height, caption: 'Whiskers: exact binomial 95 % interval of the share in the lot. Stop: limit of the control plan.' }]; // prettier-ignore
}

/** Money a tonne, result by result. */
function worthPlate({ worth, lot }: LotAnswer, width: number): readonly Plate[] {
  if (!worth || worth.effects.length === 0) return [];
  const rows = [
    ...worth.effects.map(({ name, priceChange }) => ({
      id: name,
      name: `${name} alone`,
      value: 1000 * priceChange,
      note: `${worth.currency} ${n(1000 * priceChange, 0)} a tonne`,
    })),
    {
      id: 'all',
      name: 'all together',
      value: 1000 * (worth.fairPrice - worth.price),
      note: `${worth.currency} ${n(1000 * (worth.fairPrice - worth.price), 0)} a tonne`,
    },
  ];
  if (rows.every(({ value }) => Math.abs(value) < 0.5)) return [];
  const drawn = whiskers({
    width,
    rows,
    zero: `price asked, ${worth.currency} ${n(1000 * worth.price, 0)} a tonne`,
    unit: `${worth.currency} a tonne`,
  });
  return [{ name: `What each result of ${lot} is worth`, marks: drawn.marks, width: drawn.width, height: drawn.height, caption: `At the fair price a bar from ${lot} costs what it costs from ${worth.against}.` }]; // prettier-ignore
}

function oddsPlate({ aflatoxin }: LotAnswer, width: number): readonly Plate[] {
  const [odds] = aflatoxin;
  if (!odds) return [];
  const { sampleMass, portionMass } = odds.belief;
  const test = { sampleMass, portionMass, analyses: 1, limit: odds.limit, samples: 1 };
  const chance = (mean: number) => 100 * planAcceptance('shelled peanut', mean, test);
  const points = Array.from({ length: 40 }, (_, k) => (4 * odds.limit * (k + 1)) / 40).map((mean) => [mean, chance(mean)] as const);
  const drawn = curve({
    width: Math.min(width, 760),
    height: 260,
    x: [0, points.at(-1)![0]],
    y: [0, 105],
    points: [[0, 100], ...points],
    xLabel: `true mean of the lot, ${odds.what}, µg/kg`,
    yLabel: 'lots accepted, %',
    yTicks: [0, 50, 100],
    wanted: [odds.limit, chance(odds.limit)],
  });
  return [{ name: 'Chance that one such test accepts a lot', marks: drawn.marks, width: drawn.width, height: drawn.height, caption: `Ring: a lot exactly at the limit of ${n(odds.limit, 0)} µg/kg is accepted that often.` }]; // prettier-ignore
}

function resultTable(engine: Engine, answers: readonly LotAnswer[]): FigureTable {
  const names = [...new Set(answers.flatMap(({ results }) => results.map(({ name }) => name)))];
  return {
    caption: `Results of ${answers[0]!.material} against the control plan of ${engine.from.plant.name}`,
    head: [...answers.map(({ lot }) => lot), 'limit', 'by'],
    words: [answers.length + 1],
    rows: names.map((name) => {
      const found = answers.map(({ results }) => results.find((result) => result.name === name));
      const first = found.find(Boolean);
      return {
        name,
        cells: [
          ...found.map((result) => ({ text: result?.value.text ?? 'not reported', act: result?.verdict === 'outside' })),
          { text: `${first?.limit?.text ?? 'none'}${first?.kind === 'law' ? ' (law)' : ''}` },
          { text: first?.by ?? '' },
        ],
      };
    }),
  };
}

function worthTable({ worth, lot, material }: LotAnswer): readonly FigureTable[] {
  if (!worth) return [];
  const money = (value: number, digits: number) => `${worth.currency} ${n(value, digits)}`;
  const row = (name: string, reference: string, own: string) => ({ name, cells: [{ text: reference }, { text: own }] });
  return [
    {
      caption: `Worth of ${lot}; not in it: ${worth.notCounted.join(', ') || 'nothing'}`,
      head: [worth.against, lot],
      rows: [
        row(`${worth.component} from 100 kg`, `${n(100 * worth.yieldReference, 2)} kg`, `${n(100 * worth.yieldLot, 2)} kg`),
        row('fair price a kg', money(worth.price, 3), money(worth.fairPrice, 3)),
        row('discount', '–', `${n(100 * worth.discount, 2)} %`),
        ...(worth.costAfter
          ? [row(`a usable kg after ${worth.costAfter.stage}`, money(worth.costAfter.reference, 2), money(worth.costAfter.lot, 2))]
          : []),
        ...(worth.extraForOrder === undefined
          ? []
          : [row(`more ${material} for the order`, '–', `${n(worth.extraForOrder, 1)} kg, ${money(worth.extraMoney ?? 0, 0)}`)]),
        ...worth.stages.map(({ stage, reference, lot: own }) =>
          row(`kg after ${stage} from 100 kg`, n(100 * reference, 2), n(100 * own, 2)),
        ),
      ],
    },
  ];
}

function gradeTable(answers: readonly LotAnswer[]): readonly FigureTable[] {
  const graded = answers.filter(({ grade }) => grade);
  if (graded.length === 0) return [];
  return [
    {
      caption: 'Grade of each lot',
      head: ['grade', 'beans per 100 g', 'g a bean', 'size'],
      words: [3],
      rows: graded.map(({ lot, grade }) => ({
        name: lot,
        cells: [
          { text: `${grade!.grade}${grade!.settled ? '' : ', as far as reported'}` },
          { text: grade!.count === undefined ? '–' : n(grade!.count, 0) },
          { text: grade!.beanMass === undefined ? '–' : n(grade!.beanMass, 2) },
          { text: grade!.size ?? '–' },
        ],
      })),
    },
  ];
}

function gradeWords(answers: readonly LotAnswer[]): readonly string[] {
  return answers.flatMap(({ lot, grade }) =>
    grade
      ? [
          `${lot}: grade ${grade.grade}${grade.settled ? '' : `; ${grade.missing.join(', ')} beans are not reported`}.${grade.doubtful ? ' Another sample of this size may grade otherwise.' : ''}${grade.size ? ` ${capital(grade.size)} beans: roast by size.` : ''}`,
          ...grade.said,
        ]
      : [],
  );
}

function oddsWords({ aflatoxin }: LotAnswer): readonly string[] {
  return aflatoxin.flatMap(({ what, result, limit, chanceAbove, chanceRange, belief }) => [
    `${capital(what)} ${n(result, 1)} µg/kg, limit ${n(limit, 0)}: the chance that the mean of the lot is above is ${n(100 * chanceAbove, 0)} % (${n(100 * chanceRange[0], 0)} to ${n(100 * chanceRange[1], 0)} % where such lots are three times cleaner or dirtier than believed).`,
    `Assumed: ${n(belief.sampleMass / 1000, 0)} kg sample, ${n(belief.portionMass, 0)} g portion, such lots around ${n(belief.priorMedian, 1)} µg/kg. Scatter between samples of shelled peanuts from memory of Whitaker 1974.`,
  ]);
}
