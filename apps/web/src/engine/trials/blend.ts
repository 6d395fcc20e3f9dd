import { blendTask, cheapestBlend, loadOptimiser, type BlendAnswer, type BlendLimit, type Optimiser } from '@barwright/line';
import wasm from 'highs/runtime?url';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, TrialSheet } from '../trial-protocol.js';
import { percent } from './cook-words.js';
import { askedNumber, cautions, choiceField, n, numberField, saying, sentences } from './words.js';

let optimiser: Promise<Optimiser> | undefined;

/** The cheapest blend inside every limit. The optimiser is fetched when it is first asked for. */
export async function blendSheet(engine: Engine, asked: AskedFor): Promise<TrialSheet> {
  const { from, session } = engine;
  const quoted = [...from.plant.materials.values()].filter((one) => one.quoted === true && one.price);
  const also = asked.also === 'none' ? [] : quoted.map(({ name }) => name);
  const limits: BlendLimit[] = [];
  const activity = askedNumber(asked, 'activity');
  const viscosity = askedNumber(asked, 'viscosity');
  const wettest = askedNumber(asked, 'wettest');
  if (activity !== undefined) limits.push({ property: 'water_activity', low: activity - 0.002, high: activity + 0.002 });
  if (viscosity !== undefined) limits.push({ property: 'viscosity', low: 0.97 * viscosity, high: 1.03 * viscosity });
  const task = blendTask(from, session, { also, limits });
  const usual = task.limits.find(({ property }) => property === 'moisture')!;
  const moved =
    wettest === undefined ? task : { ...task, limits: task.limits.map((one) => (one === usual ? { ...one, high: wettest / 100 } : one)) };
  optimiser ??= loadOptimiser({ locateFile: () => wasm });
  const answer = cheapestBlend(moved, await optimiser);
  const now = (name: string) => answer.properties.find(({ property }) => property === name)!.now;
  return {
    part: 'blend',
    ...(answer.found ? {} : { mark: 'act' as const }),
    title: answer.sentences[0]!,
    sub: sentences(...answer.sentences.slice(1)),
    fields: [
      numberField(asked, 'activity', 'Water activity to hold', '', now('water_activity'), 3),
      numberField(asked, 'viscosity', 'Viscosity as laid to hold', 'Pa·s', now('viscosity'), 1),
      numberField(asked, 'wettest', 'Wettest it may be', '%', 100 * (usual.high ?? answer.moisture.now), 1),
      ...(quoted.length > 0
        ? choiceField('also', 'May come in', also.length > 0 ? 'quoted' : 'none', [
            { value: 'quoted', text: quoted.map(({ name }) => name).join(', ') },
            { value: 'none', text: 'nothing new' },
          ])
        : []),
    ],
    knobs: [],
    plates: [],
    tables: [amountsTable(answer), limitsTable(answer)],
    said: [
      ...saying(
        'What holds the price up',
        answer.binding.map(
          ({ limit, end, at, price, per }) =>
            `${limit.replaceAll('_', ' ')}, ${end === 'low' ? 'at least' : 'at most'} ${limitWords(limit, at)}: ${per} more room saves ${answer.currency} ${n(price, 4)} a kg`,
        ),
      ),
      ...cautions(['A blend is a proposal. Allergens, label and behaviour in the cooker are judged by people before a trial.']),
    ],
  };
}

const shares: ReadonlySet<string> = new Set(['fat', 'milk_solids', 'moisture']);
const limitWords = (property: string, x: number): string => (shares.has(property) ? percent(x, 2) : n(x, property === 'viscosity' ? 1 : 3));

function amountsTable({ amounts, cost, currency }: BlendAnswer): FigureTable {
  return {
    caption: `The charge: ${currency} ${n(cost.now, 3)} a kg finished now, ${n(cost.best, 3)} then`,
    head: ['now', 'then', `${currency}/kg`],
    rows: amounts.map(({ name, shareNow, share, price }) => ({
      name,
      cells: [{ text: percent(shareNow, 2) }, { text: percent(share, 2) }, { text: n(price, 3) }],
    })),
  };
}

function limitsTable({ properties }: BlendAnswer): FigureTable {
  return {
    caption: 'Limits, by the models themselves',
    head: ['now', 'then', 'at least', 'at most'],
    rows: properties.map(({ property, now, best, low, high }) => ({
      name: property.replaceAll('_', ' '),
      cells: [
        { text: limitWords(property, now) },
        { text: limitWords(property, best) },
        { text: low === undefined ? '' : limitWords(property, low) },
        { text: high === undefined ? '' : limitWords(property, high) },
      ],
    })),
  };
}
