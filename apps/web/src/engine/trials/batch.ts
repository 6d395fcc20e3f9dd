import { Session } from '@barwright/chain';
import { batchAnswer, cookChoices, type BatchAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, TrialSheet } from '../trial-protocol.js';
import { changesTable, neighboursTable, percent, slumpPlate } from './cook-words.js';
import { askedNumber, capital, cautions, choiceField, looks, n, numberField, saying, sentences, Words } from './words.js';

/** One batch against what it should be: do its readings agree, what does it do, what to set now. */
export function batchSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const cooks = cookChoices(from);
  const component = cooks.find(({ slug }) => slug === asked.cook) ?? cooks[0]!;
  const c = component.slug;
  const inside = (key: string, turn: (x: number) => number) => {
    const value = askedNumber(asked, key);
    return value === undefined ? undefined : turn(value);
  };
  const share = (x: number) => x / 100;
  const readings = {
    moisture: inside('moisture', share),
    temperature: inside('temperature', (x) => words.inside(x, looks.celsius)),
    refractometer: inside('refractometer', share),
    viscosity: inside('viscosity', (x) => x),
    depositTemperature: inside('deposit', (x) => words.inside(x, looks.celsius)),
  };
  const given = Object.fromEntries(Object.entries(readings).filter(([, value]) => value !== undefined));
  const told = Object.keys(given).some((key) => key !== 'depositTemperature');
  // Nothing told yet: the batch that is as it should be.
  const answer = batchAnswer(from, session, told ? given : { moisture: session.number(`${c}.moisture`) }, component.name);
  const after = new Session(from.chain, session.overrides());
  after.set(answer.knob.id, answer.knob.value);
  const [first, ...rest] = answer.advice;
  const flows = from.chain.index.has(`${c}.viscosity`);
  const temperature = words.unit(looks.celsius);
  return {
    part: 'batch',
    ...(told && !/^Do nothing/.test(first!) ? { mark: 'act' as const } : {}),
    title: told ? capital(titleOf(answer)) : `Tell what is known of a batch of ${component.name}.`,
    sub: told
      ? sentences(first)
      : 'A moisture, an end temperature, a refractometer reading or a viscosity; two of them can contradict each other.',
    fields: [
      ...choiceField('cook', 'Cook', c, cooks.map((one) => ({ value: one.slug, text: one.name }))), // prettier-ignore
      numberField(asked, 'moisture', 'Water by the laboratory', '%', 100 * session.number(`${c}.moisture`), 2),
      numberField(
        asked,
        'temperature',
        'End temperature as the probe showed it',
        temperature,
        words.shown(answer.setPoint, looks.celsius),
        1,
      ),
      numberField(asked, 'refractometer', 'Refractometer', '%', 100 * answer.refractometerSet, 1),
      ...(flows
        ? [
            numberField(asked, 'viscosity', 'Viscosity as laid', 'Pa·s', session.number(`${c}.viscosity`), 1),
            numberField(
              asked,
              'deposit',
              'Laid at',
              temperature,
              words.shown(session.number(`${c}.deposit_temperature`), looks.celsius),
              1,
            ),
          ]
        : []),
    ],
    knobs: [],
    plates: told ? slumpPlate(answer.slump, width) : [],
    tables: told ? [...readingsTable(answer), changesTable(words, answer, session, after), ...neighboursTable(answer)] : [],
    said: told ? [...saying('So', rest), ...saying('What it rests on', answer.notes.slice(0, -1)), ...cautions(answer.notes.slice(-1))] : cautions(answer.notes.slice(-1)), // prettier-ignore
  };
}

function titleOf(answer: BatchAnswer): string {
  const { component, moisture, aim, probe } = answer;
  const off = moisture - aim;
  const start = `${component} at ${percent(moisture, 2)} instead of ${percent(aim, 2)}`;
  if (probe?.contradicts) return `${start}: temperature and solids contradict, the probe shows ${n(Math.abs(probe.error), 1)} K too ${probe.error > 0 ? 'much' : 'little'}.`; // prettier-ignore
  if (Math.abs(off) < 5e-5) return `${component} is as it should be.`;
  return `${start}: ${n(Math.abs(100 * off), 2)} points ${off > 0 ? 'wetter' : 'drier'}.`;
}

function readingsTable({ says, probe }: BatchAnswer): readonly FigureTable[] {
  if (says.length < 2) return [];
  return [
    {
      caption: 'What each reading says the moisture is, on the scale of the line’s set points',
      head: ['water'],
      rows: says.map(({ reading, moisture }) => ({
        name: reading,
        cells: [{ text: percent(moisture, 2), act: reading === 'temperature' && probe?.contradicts === true }],
      })),
    },
  ];
}
