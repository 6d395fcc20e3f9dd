import { blendTask, cheapestBlend, loadOptimiser, type BlendAnswer, type BlendLimit, type BlendProperty } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { quantityOption } from '../quantity-option.js';
import { Misused, type Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface BlendCommandOptions extends PlantOptions {
  readonly component?: string;
  readonly also?: readonly string[];
  readonly hold?: readonly string[];
  readonly least?: readonly string[];
  readonly most?: readonly string[];
}

const held: Readonly<Record<BlendProperty, readonly [dimension: 'plain' | 'viscosity' | 'fraction', slack: number, example: string]>> = {
  water_activity: ['plain', 0.002, 'water_activity=0.54'],
  viscosity: ['viscosity', 0, 'viscosity=36:40 Pa·s'],
  sucrose_supersaturation: ['plain', 0, 'sucrose_supersaturation=:3'],
  lactose_supersaturation: ['plain', 0, 'lactose_supersaturation=:6'],
  fat: ['fraction', 0.002, 'fat=17 %'],
  milk_solids: ['fraction', 0.002, 'milk_solids=10 %:'],
  moisture: ['fraction', 0.0005, 'moisture=9 %:12 %'],
  sweetness: ['plain', 0.005, 'sweetness=0.4:0.5'],
};

/** The cheapest blend inside every limit, and what each limit costs. */
export async function blendCommand(folder: string, options: BlendCommandOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const bounds: Record<string, { low?: number; high?: number }> = {};
  for (const [end, list] of [
    ['low', options.least ?? []],
    ['high', options.most ?? []],
  ] as const)
    // prettier-ignore
    for (const text of list) {
      const cut = text.lastIndexOf('=');
      if (cut < 1) throw new Misused(`"${text}" is no bound; write material=share, such as butter="3 %"`);
      const name = text.slice(0, cut).trim();
      bounds[name] = { ...bounds[name], [end]: quantityOption(end === 'low' ? '--least' : '--most', text.slice(cut + 1), 'fraction', '3 %') };
    }
  const task = blendTask(opened, opened.session, {
    ...(options.component === undefined ? {} : { component: options.component }),
    also: options.also ?? [],
    limits: (options.hold ?? []).map(limitOf),
    bounds,
  });
  const answer = cheapestBlend(task, await loadOptimiser());
  if (options.json) out.json(asJson(answer));
  else print(answer, out);
}

/** 'water_activity=0.54', 'moisture=9 %:12 %', 'milk_solids=10 %:' as a limit. */
function limitOf(text: string): BlendLimit {
  const [name = '', value = ''] = text.split(/=(.*)/s);
  const property = name.trim() as BlendProperty;
  const form = held[property];
  if (!form) throw new Misused(`--hold knows no "${name}"; it knows ${Object.keys(held).join(', ')}`);
  const [dimension, slack, example] = form;
  const read = (part: string) => (part.trim() === '' ? undefined : quantityOption('--hold', part, dimension, example));
  if (!value.includes(':')) {
    const aim = read(value);
    if (aim === undefined) throw new Misused(`--hold is "${text}"; write a value or two ends, such as ${example}`);
    const half = dimension === 'viscosity' ? 0.03 * aim : slack;
    return { property, low: aim - half, high: aim + half };
  }
  const [low, high] = value.split(':').map(read);
  return { property, ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
}

function asJson(answer: BlendAnswer): unknown {
  return {
    component: answer.component,
    found: answer.found,
    cost_now: answer.cost.now,
    cost: answer.cost.best,
    amounts: answer.amounts.map(({ name, now, best, shareNow, share, price }) => ({ name, kg_per_kg_now: now, kg_per_kg: best, share_of_charge_now: shareNow, share_of_charge: share, price })), // prettier-ignore
    moisture: answer.moisture,
    properties: answer.properties,
    binding: answer.binding,
    rounds: answer.rounds,
    sentences: answer.sentences,
  };
}

const shares: ReadonlySet<string> = new Set(['fat', 'milk_solids', 'moisture']);

function print(answer: BlendAnswer, out: Out): void {
  const [first, ...rest] = answer.sentences;
  out.line(out.style.strong(first!));
  out.line();
  const rows = [['', 'of the charge', '', 'price'].map((cell) => out.style.faint(cell))];
  for (const { name, shareNow, share, price } of answer.amounts)
    rows.push([`  ${name}`, `${n(100 * shareNow, 2)} %`, `→ ${n(100 * share, 2)} %`, `${n(price, 3)}`]);
  for (const line of table(rows, [false, true, true, true])) out.line(line);
  out.line();
  out.line(out.style.strong('Limits'));
  const words = (property: string, x: number) => (shares.has(property) ? `${n(100 * x, 2)} %` : n(x, property === 'viscosity' ? 1 : 3));
  const limits = answer.properties.map(({ property, now, best, low, high }) => [
    `  ${property.replaceAll('_', ' ')}`,
    words(property, now),
    `→ ${words(property, best)}`,
    low === undefined ? '' : `at least ${words(property, low)}`,
    high === undefined ? '' : `at most ${words(property, high)}`,
  ]);
  for (const line of table(limits, [false, true, true, true, true])) out.line(line);
  section(
    out,
    'What holds the price up',
    answer.binding.map(
      ({ limit, end, at, price, per }) =>
        `${limit.replaceAll('_', ' ')}, ${end === 'low' ? 'at least' : 'at most'} ${words(limit, at)}: ${per} more room saves ${answer.currency} ${n(price, 4)} a kg.`,
    ),
  );
  section(out, 'Mind', rest);
}
