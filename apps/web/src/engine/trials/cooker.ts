import { curve } from '@barwright/drawing';
import { cookChoices, cookerAnswers, cookerCautions, cookTable, type CookerAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { percent } from './cook-words.js';
import { filesOf } from './files.js';
import { askedNumber, capital, cautions, choiceField, looks, n, numberField, saying, sentences, Words } from './words.js';

/** One cooker: duty, steam, time, spread, and what a probe does that reads wrong. */
export function cookerSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const cooks = cookChoices(from);
  const component = cooks.find(({ slug }) => slug === asked.cook) ?? cooks[0]!;
  const error = askedNumber(asked, 'probe');
  const file = filesOf('cooks').find((one) => one.component === component.slug);
  const [answer] = cookerAnswers(from, session, {
    component: component.name,
    probe: error === undefined ? 1 : words.inside(error, looks.kelvin),
    ...(file ? { log: cookTable(file.cells, file.name) } : {}),
  });
  const { probe, advice, needs, notes } = answer!;
  const c = component.slug;
  const act = over(session, c) || probe!.changes.some(({ broken, wasBroken }) => broken && !wasBroken);
  return {
    part: 'cooker',
    ...(over(session, c) ? { mark: 'act' as const } : act ? { mark: 'seen' as const } : {}),
    title: titleOf(words, answer!, c),
    sub: sentences(...advice.slice(0, 2)),
    fields: [
      ...choiceField('cook', 'Cook', c, cooks.map((one) => ({ value: one.slug, text: one.name }))), // prettier-ignore
      numberField(asked, 'probe', 'Its probe shows too much', words.unit(looks.kelvin), words.shown(probe!.kelvin, looks.kelvin), 1),
    ],
    knobs: [`${c}.steam_pressure`, `${c}.heating_surface`, `${c}.heat_transfer`].filter((id) => from.chain.index.has(id)),
    plates: [plate(words, answer!, c, width)],
    tables: [numbersTable(words, answer!), probeTable(words, answer!)],
    said: [
      ...saying('So', advice.slice(2)),
      ...saying('Cannot tell yet', needs),
      ...saying('What it rests on', notes),
      ...cautions(cookerCautions),
    ],
  };
}

/** One kettle, or the wall of one film, is not enough. */
function over(session: Engine['session'], c: string): boolean {
  return [`${c}.kettles_needed`, `${c}.wall_use`].some(
    (id) => session.chain.index.has(id) && session.status(id).ok && session.number(id) > 1,
  );
}

function titleOf(words: Words, { component, ids, kind }: CookerAnswer, c: string): string {
  const { session } = words.engine;
  const told = (name: string) =>
    ids.includes(`${c}.${name}`) && session.status(`${c}.${name}`).ok ? words.chainCell(`${c}.${name}`, session).text : undefined;
  const duty = told('cook_duty');
  const [steam, boil] = [told('steam_flow'), told('boil_time')];
  if (duty === undefined) return `${capital(component)}: without a line there is no duty to tell.`;
  const at = `${capital(component)} asks ${duty} of its ${kind ?? 'cooker'}`;
  if (boil !== undefined) return `${at}${steam === undefined ? '' : `, ${steam} of steam`}; a batch boils ${boil}.`;
  return steam === undefined ? `${at} to drive off ${told('cook_evaporation') ?? 'its water'}.` : `${at}, ${steam} of steam.`;
}

/** Water of the finished component against the end temperature that the probe shows. */
function plate(words: Words, { component, probe }: CookerAnswer, c: string, width: number): Plate {
  const { session, from } = words.engine;
  const { along, moisture, kelvin } = probe!;
  const shown = (t: number) => words.shown(t, looks.celsius);
  const now = session.number(`${c}.cook_indicated`);
  const reach = Math.max(4, Math.abs(kelvin) + 1.5);
  const near = along.filter(([t]) => Math.abs(t - now) <= reach);
  const points = (near.length > 2 ? near : along).map(([t, w]) => [shown(t), 100 * w] as const).sort((a, b) => a[0] - b[0]);
  const window = from.chain.quantities[from.chain.index.get(`${c}.moisture`)!]!.window;
  const [low, high] = [window?.low, window?.high].map((x) => (x === undefined ? undefined : 100 * x));
  const ys = [...points.map(([, y]) => y), ...[low, high].filter((y): y is number => y !== undefined)];
  const [least, most] = [Math.min(...ys), Math.max(...ys)];
  const [left, right] = [points[0]![0], points.at(-1)![0]];
  const drawn = curve({
    width,
    height: 280,
    x: [left, right],
    y: [least - 0.05 * (most - least), most + 0.05 * (most - least)],
    points,
    limits: {
      ...(low === undefined ? {} : { lo: low, loText: `${n(low, 1)} %` }),
      ...(high === undefined ? {} : { hi: high, hiText: `${n(high, 1)} %` }),
    },
    now: [shown(now), 100 * moisture.before],
    wanted: [shown(now - kelvin), 100 * moisture.after],
    xLabel: `true end of the cook on the scale of its probe, ${words.unit(looks.celsius)}`,
    yLabel: `water in ${component}, %`,
    xTicks: ticks(left, right),
    yTicks: ticks(least, most),
  });
  return {
    name: `Water in ${component} against its end temperature: ${percent(moisture.before, 2)} where it ends now, ${percent(moisture.after, 2)} with the probe off`,
    marks: drawn.marks,
    width,
    height: drawn.height,
    caption: 'The dot: as it ends now. The ring: where it really ends when the probe is off by that much and nobody sees it.',
  };
}

function ticks(low: number, high: number): readonly number[] {
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10].find((one) => (high - low) / one <= 8) ?? 20;
  return Array.from({ length: 20 }, (_, i) => +(Math.ceil(low / step) * step + i * step).toFixed(2)).filter((x) => x <= high);
}

function numbersTable(words: Words, { ids, spread }: CookerAnswer): FigureTable {
  const { session, from } = words.engine;
  return {
    caption: 'The cooker at rated speed',
    head: [''],
    rows: [
      ...ids.map((id) => ({ name: from.chain.quantities[from.chain.index.get(id)!]!.meaning, id, cells: [words.chainCell(id, session)] })),
      ...(spread
        ? [
            {
              name: `scatter of the end temperature, ${spread.batches} good cooks of the log`,
              cells: [{ text: `${n(spread.kelvin, 2)} K` }],
            },
            { name: 'scatter of the moisture that follows from it', cells: [{ text: percent(spread.moisture, 2) }] },
          ]
        : []),
    ],
  };
}

function probeTable(words: Words, { probe }: CookerAnswer): FigureTable {
  const { chain, plant } = words.engine.from;
  const { changes, water, money } = probe!;
  return {
    caption: 'With the probe off by that much',
    head: ['as it should be', 'then'],
    rows: [
      ...changes.map(({ id, meaning, before, after, broken }) => {
        const look = chain.quantities[chain.index.get(id)!]!;
        return {
          name: meaning,
          id,
          cells: [
            { text: words.amount(before, look), id },
            { text: words.amount(after, look), act: broken },
          ],
        };
      }),
      ...(water === undefined
        ? []
        : [
            {
              name: `water ${water < 0 ? 'less' : 'more'} on a bar of the same mass`,
              cells: [{ text: '' }, { text: `${n(1000 * Math.abs(water), 3)} g` }],
            },
          ]),
      ...(money === undefined
        ? []
        : [
            {
              name: `ingredients of the order ${money < 0 ? 'cheaper' : 'dearer'} by`,
              cells: [{ text: '' }, { text: `${n(Math.abs(money), 0)} ${plant.currency}` }],
            },
          ]),
    ],
  };
}
