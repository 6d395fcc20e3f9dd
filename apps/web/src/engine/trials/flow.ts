import { aim } from '@barwright/drawing';
import { isChocolate } from '@barwright/bar';
import { chocolateOf, flowOptions, type FlowAnswer, type FlowOption } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { fileOf, filesOf, fileWords, keyOf } from './files.js';
import { curveOf, curvePlate, curveSaid, curveTables } from './flow-curve.js';
import { askedNumber, capital, cautions, choiceField, looks, n, numberField, saying, sentences, Words } from './words.js';

/** The flow of a chocolate: the table of a viscometer fitted, and the cheapest lawful way to a yield value and a plastic viscosity. */
export function flowSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const component = chocolateOf(from, asked.component);
  const words = new Words(engine);
  const file = fileOf('viscometer', asked.file);
  const curve = file && curveOf(file);
  const own = { yield: session.number(`${component.slug}.yield_value`), plastic: session.number(`${component.slug}.plastic_viscosity`) };
  const now = {
    yield: askedNumber(asked, 'measured') ?? curve?.casson.yieldValue ?? own.yield,
    plastic: askedNumber(asked, 'measured_plastic') ?? curve?.casson.plasticViscosity ?? own.plastic,
  };
  const wanted = {
    yield: askedNumber(asked, 'yield') ?? setPoint(engine, /yield/i) ?? own.yield,
    plastic: askedNumber(asked, 'plastic') ?? now.plastic,
  };
  const answer = flowOptions(from, session, component, {
    yieldValue: wanted.yield,
    plasticViscosity: wanted.plastic,
    measured: { yieldValue: now.yield, plasticViscosity: now.plastic },
  });
  const { best } = answer;
  const chocolates = [...from.plant.components.values()].filter(
    (other) => isChocolate(other) && from.chain.index.has(`${other.slug}.yield_value`),
  );
  return {
    part: 'flow',
    ...(best ? {} : { mark: 'act' as const }),
    title: !best
      ? `No lawful addition brings ${answer.component} to ${words.amount(wanted.yield, looks.pascal)} and ${words.amount(wanted.plastic, looks.pascalSecond)}.`
      : best.name === 'nothing'
        ? `${capital(answer.component)} is where it should be: nothing to add.`
        : `${additions(best)} brings ${answer.component} from ${words.amount(now.yield, looks.pascal)} to ${words.amount(best.yieldValue.value, looks.pascal)} for ${answer.currency} ${n(best.cost, 4)} a kg.`, // prettier-ignore
    sub: sentences(
      best &&
        best.name !== 'nothing' &&
        `${words.range(best.yieldValue.low, best.yieldValue.high, looks.pascal)} Pa by the published trends; plastic viscosity ${words.amount(best.plasticViscosity.value, looks.pascalSecond)}`,
      best?.coat &&
        answer.coatNow &&
        best.name !== 'nothing' &&
        `The coat would go from ${words.amount(answer.coatNow.mass, looks.gram)} to ${words.amount(best.coat.mass, looks.gram)} with the enrober as it is set`,
      curve &&
        `${fileWords(file!)} reads ${words.amount(curve.casson.yieldValue, looks.pascal)} and ${words.amount(curve.casson.plasticViscosity, looks.pascalSecond)} by Casson`,
      !curve && 'Drop the table of a viscometer to begin from what was measured',
    ),
    fields: [
      numberField(asked, 'measured', 'Yield value now', 'Pa', now.yield, 1),
      numberField(asked, 'measured_plastic', 'Plastic viscosity now', 'Pa·s', now.plastic, 2),
      numberField(asked, 'yield', 'Yield value wanted', 'Pa', wanted.yield, 1),
      numberField(asked, 'plastic', 'Plastic viscosity wanted', 'Pa·s', wanted.plastic, 2),
      ...choiceField('component', 'Chocolate', component.slug, chocolates.map(({ slug, name }) => ({ value: slug, text: name }))), // prettier-ignore
      ...choiceField('file', 'Table', file ? keyOf(file) : '', filesOf('viscometer').map((one) => ({ value: keyOf(one), text: keyOf(one) }))), // prettier-ignore
    ],
    knobs: [],
    plates: [
      ...(curve ? [curvePlate(words, curve, width)] : []),
      ...(answer.options.some(({ name }) => name !== 'nothing') ? [aimPlate(words, answer, width)] : []),
    ],
    tables: [...(curve ? curveTables(words, curve) : []), optionTable(words, answer), stepTable(answer)],
    said: [
      ...saying('In law', best?.law ?? []),
      ...(curve ? curveSaid(curve) : []),
      ...cautions([
        ...answer.notes,
        ...(answer.assumed.length > 0
          ? [
              `${answer.assumed.length} sizes of the ladder are not measured by the plant yet and are taken from published trends; enter them into the chocolate’s definition.`,
            ]
          : []),
        'Measure again after each addition; correct in the kettle, not on the belt. Barwright advises; it sets nothing on a machine.',
      ]),
    ],
  };
}

/** What the conche is asked to give. */
function setPoint(engine: Engine, name: RegExp): number | undefined {
  return engine.from.line?.stations
    .flatMap(({ setPoints }) => setPoints)
    .find((point) => name.test(point.name) && point.value.dimension === 'pressure')?.value.value;
}

function additions({ add }: FlowOption): string {
  const parts = [
    ['cocoa butter', add.cocoaButter],
    ['lecithin', add.lecithin],
    ['E476', add.e476],
  ] as const;
  return parts.flatMap(([name, share]) => (share > 0 ? [`+${+(100 * share).toFixed(2)} % ${name}`] : [])).join(', ') || 'nothing';
}

function aimPlate(words: Words, answer: FlowAnswer, width: number): Plate {
  const { now, target, options } = answer;
  const drawn = aim({
    width: Math.min(width, 860),
    height: 330,
    now: { x: now.yieldValue, y: now.plasticViscosity, text: 'now' },
    target: {
      x: [target.yieldValue * 0.95, target.yieldValue * 1.05],
      y: [target.plasticViscosity * 0.9, target.plasticViscosity * 1.1],
      text: 'wanted',
    },
    ways: options
      .filter(({ name }) => name !== 'nothing')
      .map(({ name, yieldValue, plasticViscosity, meets, lawful }) => ({
        id: name,
        name: lawful ? name : `${name}, not lawful`,
        x: yieldValue.value,
        y: plasticViscosity.value,
        xRange: [yieldValue.low, yieldValue.high],
        yRange: [plasticViscosity.low, plasticViscosity.high],
        meets: meets && lawful,
      })),
    xLabel: 'yield value, Pa',
    yLabel: 'plastic viscosity, Pa·s',
  });
  return {
    name: 'Ways from the flow now to the flow wanted; the same numbers stand in the table below',
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: `Box: within 5 % of the yield value and 10 % of the plastic viscosity. Crosses: what the published trends may be off by${words.units === 'us' ? '; Pa and Pa·s in both habits of units' : ''}.`,
  };
}

function optionTable(words: Words, { options, currency }: FlowAnswer): FigureTable {
  const { pascal, pascalSecond, gram } = looks;
  return {
    caption: 'Ways, the cheapest lawful one that gets there first',
    head: ['add', 'yield value', 'plastic viscosity', 'cost a kg', 'coat', ''],
    words: [0, 5],
    rows: options.map((option) => ({
      name: option.name,
      cells: [
        { text: additions(option) },
        {
          text: `${words.amount(option.yieldValue.value, pascal)} (${words.range(option.yieldValue.low, option.yieldValue.high, pascal)})`,
        },
        {
          text: `${words.amount(option.plasticViscosity.value, pascalSecond)} (${words.range(option.plasticViscosity.low, option.plasticViscosity.high, pascalSecond)})`,
        },
        { text: `${currency} ${n(option.cost, 4)}` },
        { text: option.coat ? words.amount(option.coat.mass, gram) : '–' },
        { text: !option.lawful ? 'not lawful' : option.meets ? 'gets there' : 'does not get there', act: !option.lawful },
      ],
    })),
  };
}

function stepTable({ steps, currency }: FlowAnswer): FigureTable {
  const change = ({ value, low, high }: { value: number; low: number; high: number }) =>
    `${n(100 * (value - 1), 1)} % (${n(100 * (low - 1), 1)} to ${n(100 * (high - 1), 1)})`;
  return {
    caption: 'One step of each, alone',
    head: ['yield value', 'plastic viscosity', 'cost a kg'],
    rows: steps.map(({ name, share, yieldFactor, plasticFactor, cost }) => ({
      name: `${name} +${+(100 * share).toFixed(2)} %`,
      cells: [{ text: change(yieldFactor) }, { text: change(plasticFactor) }, { text: `${currency} ${n(cost, 4)}` }],
    })),
  };
}
