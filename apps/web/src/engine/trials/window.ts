import { map } from '@barwright/chain';
import { windowMap } from '@barwright/drawing';
import { cookChoices, drivenByTemperature, NoCook } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, Plate, TrialSheet } from '../trial-protocol.js';
import { capital, quantityOf } from '../words.js';
import { askedNumber, cautions, choiceField, looks, n, numberField, saying, sentences, Words } from './words.js';

const steps = 27;

/** Cook temperature against the dextrose equivalent of a syrup: where activity, stickiness, grain and viscosity all hold. */
export function windowSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const words = new Words(engine);
  const cooks = cookChoices(engine.from);
  const component = cooks.find(({ slug }) => slug === asked.cook) ?? cooks[0]!;
  const c = component.slug;
  const { from, session } = drivenByTemperature(engine.from, engine.session, [component]);
  const syrup = [...from.plant.materials.values()].find(
    ({ syrup: one, slug, name }) =>
      one &&
      from.chain.index.has(`material.${slug}.dextrose_equivalent`) &&
      component.stages.some((stage) => stage.adds.some((addition) => addition.name === name)),
  );
  if (!syrup) throw new NoCook(`${component.name} holds no syrup that is written by solids and DE: there is no second knob for the window`);
  const x = `${c}.cook_temperature`;
  const y = `material.${syrup.slug}.dextrose_equivalent`;
  const t = session.number(x);
  const aw = askedNumber(asked, 'activity') ?? +(session.number(`${c}.water_activity`) + 0.025).toFixed(3);
  const soft = askedNumber(asked, 'soft') ?? Math.round(session.number(`${c}.glass_transition`)) - 4;
  const hard = askedNumber(asked, 'hard') ?? Math.round(session.number(`${c}.glass_transition`)) + 5;
  const grain = askedNumber(asked, 'grain') ?? +(session.number(`${c}.sucrose_supersaturation`) + 0.15).toFixed(2);
  const drawn = map(from.chain, session, {
    x: { id: x, low: t - 5, high: t + 5, steps },
    y: { id: y, low: 28, high: 62, steps },
    outputs: [`${c}.water_activity`],
    within: {
      [`${c}.water_activity`]: { high: aw },
      [`${c}.glass_transition`]: { low: words.inside(soft, looks.celsius), high: words.inside(hard, looks.celsius) },
      [`${c}.sucrose_supersaturation`]: { high: grain },
    },
  });
  const open = drawn.holds.filter((cell) => cell === 1).length / drawn.holds.length;
  const broken = new Set(drawn.windows.flatMap(({ id, margin }) => (nearest(drawn, margin) < 0 ? [id] : [])));
  const meaning = (id: string) => quantityOf(from.chain, id)?.meaning ?? id;
  return {
    part: 'window',
    ...(broken.size > 0 ? { mark: 'act' as const } : {}),
    title:
      open === 0
        ? `No cook temperature and no DE hold every limit of ${component.name}.`
        : broken.size === 0
          ? `Every limit of ${component.name} holds where it is cooked now; ${n(100 * open, 0)} % of the map is open.`
          : `Where it is cooked now ${capital([...broken].map(meaning).join(', '))} ${broken.size > 1 ? 'are' : 'is'} outside.`,
    sub: sentences('Upwards the DE of the syrup, to the right the end temperature. Each border has its name; the dot is today'),
    fields: [
      ...choiceField('cook', 'Cook', c, cooks.map((one) => ({ value: one.slug, text: one.name }))), // prettier-ignore
      numberField(asked, 'activity', 'Water activity at most', '', aw, 3),
      numberField(asked, 'soft', 'Glass transition at least (below: sticky)', words.unit(looks.celsius), soft, 0),
      numberField(asked, 'hard', 'Glass transition at most (above: hard)', words.unit(looks.celsius), hard, 0),
      numberField(asked, 'grain', 'Sucrose over its solubility at most', '', grain, 2),
    ],
    knobs: [],
    plates: [plate(words, drawn, { x: t, y: session.number(y) }, meaning, component.name, syrup.name, width)],
    tables: [],
    said: [
      ...saying('Limits on the map', drawn.windows.filter(({ id }) => !id.startsWith('station.')).map(({ id }) => capital(meaning(id)))), // prettier-ignore
      ...cautions([
        'The four limits in the fields are set about today and belong to no standard: stickiness, grain and activity of your own good and bad batches should take their place.',
        'Barwright advises; it sets nothing on a machine.',
      ]),
    ],
  };
}

type Mapped = ReturnType<typeof map>;

/** Margin at the cell nearest to today. */
function nearest({ x, y, today }: Mapped, margin: Float64Array): number {
  const at = (values: Float64Array, value: number) =>
    values.reduce((best, here, i) => (Math.abs(here - value) < Math.abs(values[best]! - value) ? i : best), 0);
  return margin[at(y.values, today.y) * x.values.length + at(x.values, today.x)]!;
}

function plate(
  words: Words,
  drawn: Mapped,
  now: { x: number; y: number },
  meaning: (id: string) => string,
  cook: string,
  syrup: string,
  width: number,
): Plate {
  const columns = drawn.x.values.length;
  const rows = (values: Float64Array) =>
    Array.from({ length: drawn.y.values.length }, (_, j) => Array.from(values.subarray(j * columns, (j + 1) * columns)));
  const picture = windowMap({
    width: Math.min(width, 760),
    height: 470,
    xs: Array.from(drawn.x.values, (x) => words.shown(x, looks.celsius)),
    ys: Array.from(drawn.y.values),
    borders: drawn.windows
      .filter(({ margin }) => margin.some((value) => value < 0) && margin.some((value) => value >= 0))
      .map(({ id, margin }) => ({ id, text: short(meaning(id)), margin: rows(margin) })),
    now: [words.shown(now.x, looks.celsius), now.y],
    xLabel: `${cook}, end temperature, ${words.unit(looks.celsius)}`,
    yLabel: `DE of ${syrup}`,
    emptyText: 'nowhere do all limits hold',
  });
  return {
    name: `Where every limit of ${cook} holds over its end temperature and the DE of ${syrup}`,
    marks: picture.marks,
    width: picture.width,
    height: picture.height,
    caption: 'Hatched: some limit is broken. The end temperature is the model’s, before the probe’s own error.',
  };
}

const short = (meaning: string): string =>
  meaning
    .replace(/^step in water activity from .*/, 'step to the next layer')
    .replace(/^water in .*/, 'moisture')
    .replace(/^water activity of .*/, 'water activity')
    .replace(/^viscosity of .* as it is laid$/, 'viscosity')
    .replace(/^glass transition.*/, 'sticky or hard')
    .replace(/^sucrose per water.*/, 'grain');
