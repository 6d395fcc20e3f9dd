import { at, type Composition } from '@barwright/science';
import { blended, hasSyrup, propertyOf, type BlendLimit, type BlendProperty, type BlendTask } from './blend.js';

/** A limit that holds the price up. */
export interface BindingLimit {
  readonly limit: string;
  readonly end: 'low' | 'high';
  readonly at: number;
  /** What a unit of it is worth, money per kg finished; of a share, one per cent; of the activity, 0.01; of other figures, one per cent of them. */
  readonly price: number;
  readonly per: string;
}

export interface BlendAnswer {
  readonly component: string;
  readonly currency: string;
  readonly found: boolean;
  /** Money per kg finished. */
  readonly cost: { readonly now: number; readonly best: number };
  /** kg per kg finished and share of the charge. */
  readonly amounts: readonly { readonly name: string; readonly now: number; readonly best: number; readonly shareNow: number; readonly share: number; readonly price: number }[]; // prettier-ignore
  readonly moisture: { readonly now: number; readonly best: number };
  readonly properties: readonly { readonly property: BlendProperty; readonly now: number; readonly best: number; readonly low?: number; readonly high?: number }[]; // prettier-ignore
  readonly binding: readonly BindingLimit[];
  readonly rounds: number;
  readonly sentences: readonly string[];
}

/** A linear optimiser, as the HiGHS library has it: text in, optimum with duals out. */
export interface Optimiser {
  solve(problem: string): {
    readonly Status: string;
    readonly ObjectiveValue?: number;
    readonly Columns: Readonly<Record<string, { readonly Primal?: number; readonly Dual?: number }>>;
    readonly Rows: readonly { readonly Name: string; readonly Dual?: number }[];
  };
}

/** Loads the optimiser: HiGHS, compiled, 3.5 MB, only when a blend is asked for. */
export async function loadOptimiser(options?: { readonly locateFile?: (file: string) => string }): Promise<Optimiser> {
  const { default: load } = await import('highs');
  return (await load(options as never)) as unknown as Optimiser;
}

const maxRounds = 40;
const costs = (amounts: readonly number[], task: BlendTask) => amounts.reduce((sum, x, i) => sum + x * task.candidates[i]!.price, 0);

/** The last letter keeps names unlike numbers. */
const column = (i: number) => `x${i}_`;

interface Point {
  readonly amounts: readonly number[];
  readonly moisture: number;
}

/**
 * The cheapest blend inside every limit. Masses, fat and milk solids run straight with the amounts; activity, viscosity and grain are
 * made straight about the present blend and solved again in an ever smaller neighbourhood, until they hold by the models themselves.
 */
export function cheapestBlend(task: BlendTask, optimiser: Optimiser): BlendAnswer {
  const n = task.candidates.length;
  const start: Point = { amounts: task.candidates.map(({ now }) => now), moisture: moistureNow(task) };
  let point = start;
  let reach = 0.15;
  let merit = meritOf(task, point);
  let last: ReturnType<Optimiser['solve']> | undefined;
  let rounds = 0;
  for (; rounds < maxRounds && reach > 1e-5; rounds++) {
    const solved = optimiser.solve(problemAbout(task, point, reach));
    if (solved.Status !== 'Optimal') {
      reach /= 2;
      continue;
    }
    const next: Point = {
      amounts: Array.from({ length: n }, (_, i) => Math.max(0, solved.Columns[column(i)]?.Primal ?? 0)),
      moisture: solved.Columns['m_']?.Primal ?? point.moisture,
    };
    const better = meritOf(task, next);
    if (better < merit - 1e-9) {
      const gain = merit - better;
      point = next;
      merit = better;
      last = solved;
      if (gain < 1e-7 && reach < 0.02) break;
      reach = Math.min(0.3, reach * 1.3);
    } else {
      last ??= solved;
      reach /= 3;
    }
  }
  return answerOf(task, start, point, last, rounds);
}

function moistureNow(task: BlendTask): number {
  const dry = task.candidates.reduce((sum, { now, composition }) => sum + now * (1 - composition[at.water]!), 0);
  return 1 - dry;
}

function composed(task: BlendTask, { amounts, moisture }: Point): Composition {
  return blended(amounts, task.candidates, moisture);
}

/** How far a value lies outside a limit, in units in which 1 is a lot. */
function excess({ low, high }: BlendLimit, value: number): number {
  const scale = Math.abs(low ?? high ?? 1) || 1;
  return Math.max(0, (low ?? -Infinity) - value, value - (high ?? Infinity)) / scale;
}

/** Cost, with what is broken made dearer than any ingredient. */
function meritOf(task: BlendTask, point: Point): number {
  const of = composed(task, point);
  if (!hasSyrup(of)) return Infinity;
  let broken = 0;
  for (const limit of task.limits) broken += Math.max(0, excess(limit, propertyOf(limit.property, of, task)) - 1e-6);
  return costs(point.amounts, task) + 50 * broken;
}

/** The linear problem about a point, in the text form that optimisers read. */
function problemAbout(task: BlendTask, point: Point, reach: number): string {
  const of = composed(task, point);
  const { candidates, limits } = task;
  const number = (x: number) => (Math.abs(x) < 1e-14 ? '0' : x.toPrecision(12));
  const sum = (coefficients: readonly number[]) =>
    coefficients.map((a, i) => `${a < 0 ? '-' : '+'} ${number(Math.abs(a))} ${column(i)}`).join(' ');
  const rows: string[] = [];
  const dry = candidates.map(({ composition }) => 1 - composition[at.water]!);
  rows.push(` mass: ${sum(dry)} + m_ = 1`);
  // Water charged must at least be what is left; a cook takes away and never adds.
  rows.push(` water: ${sum(candidates.map(({ composition }) => composition[at.water]!))} - m_ >= 0`);
  limits.forEach((limit, l) => {
    if (limit.property === 'moisture') return;
    const value = propertyOf(limit.property, of, task);
    const gradient = gradientOf(task, point, limit.property, value);
    const offset = value - gradient.amounts.reduce((total, g, i) => total + g * point.amounts[i]!, 0) - gradient.moisture * point.moisture;
    const left = `${sum(gradient.amounts)} ${gradient.moisture < 0 ? '-' : '+'} ${number(Math.abs(gradient.moisture))} m_`;
    if (limit.low !== undefined) rows.push(` low${l}: ${left} + s${l}_ >= ${number(limit.low - offset)}`);
    if (limit.high !== undefined) rows.push(` high${l}: ${left} - s${l}_ <= ${number(limit.high - offset)}`);
  });
  const slack = limits.map(({ low, high }, l) => `+ ${number(50 / (Math.abs(low ?? high ?? 1) || 1))} s${l}_`).join(' ');
  const moisture = limits.find(({ property }) => property === 'moisture');
  const bounds = candidates.map(({ low, high, fixed, now }, i) => {
    const [from, to] = fixed ? [now, now] : [Math.max(low, point.amounts[i]! - reach), Math.min(high, point.amounts[i]! + reach)];
    return ` ${number(Math.min(from, to))} <= ${column(i)} <= ${number(to)}`;
  });
  const wet = [Math.max(moisture?.low ?? 0.02, point.moisture - reach / 4), Math.min(moisture?.high ?? 0.3, point.moisture + reach / 4)];
  return [
    'Minimize',
    ` cost: ${sum(candidates.map(({ price }) => price))} ${slack}`,
    'Subject To',
    ...rows,
    'Bounds',
    ...bounds,
    ` ${number(Math.min(wet[0]!, wet[1]!))} <= m_ <= ${number(Math.max(wet[0]!, wet[1]!))}`,
    'End',
    '',
  ].join('\n');
}

/** How a property moves with each amount and with the moisture, by small steps. */
function gradientOf(task: BlendTask, point: Point, property: BlendProperty, value: number): { amounts: number[]; moisture: number } {
  const step = 1e-4;
  const amounts = point.amounts.map((amount, i) => {
    if (task.candidates[i]!.fixed) return 0;
    const moved = point.amounts.slice();
    moved[i] = amount + step;
    return (propertyOf(property, blended(moved, task.candidates, point.moisture), task) - value) / step;
  });
  const moisture = (propertyOf(property, blended(point.amounts, task.candidates, point.moisture + step), task) - value) / step;
  return { amounts, moisture };
}

const perOf = (property: BlendProperty): readonly [amount: number | 'relative', words: string] =>
  property === 'water_activity' ? [0.01, '0.01 of water activity'] : ['fat', 'milk_solids', 'moisture', 'sweetness'].includes(property) ? [0.01, 'one point of per cent'] : ['relative', 'one per cent of it']; // prettier-ignore

function answerOf(
  task: BlendTask,
  start: Point,
  best: Point,
  last: ReturnType<Optimiser['solve']> | undefined,
  rounds: number,
): BlendAnswer {
  const [was, is] = [composed(task, start), composed(task, best)];
  const properties = task.limits.map(({ property, low, high }) => ({
    property,
    now: propertyOf(property, was, task),
    best: propertyOf(property, is, task),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  }));
  const broken = properties.filter((one) => excess(one, one.best) > 1e-4);
  const total = (point: Point) => point.amounts.reduce((sum, x) => sum + x, 0);
  const binding: BindingLimit[] = [];
  for (const row of last?.Rows ?? []) {
    const found = /^(low|high)(\d+)$/.exec(row.Name);
    const dual = row.Dual ?? 0;
    if (!found || Math.abs(dual) < 1e-9) continue;
    const limit = task.limits[Number(found[2])]!;
    const end = found[1] as 'low' | 'high';
    const level = limit[end]!;
    const [amount, per] = perOf(limit.property);
    binding.push({
      limit: limit.property,
      end,
      at: level,
      price: Math.abs(dual) * (amount === 'relative' ? 0.01 * Math.abs(level) : amount),
      per,
    });
  }
  const moisture = task.limits.find(({ property }) => property === 'moisture');
  const dualMoisture = last?.Columns['m_']?.Dual ?? 0;
  if (moisture && Math.abs(dualMoisture) > 1e-9) {
    const end = Math.abs(best.moisture - (moisture.low ?? -1)) < Math.abs(best.moisture - (moisture.high ?? 2)) ? 'low' : 'high';
    if (Math.abs(best.moisture - moisture[end]!) < 1e-5)
      binding.push({ limit: 'moisture', end, at: moisture[end]!, price: 0.01 * Math.abs(dualMoisture), per: 'one point of per cent' });
  }
  task.candidates.forEach(({ name, low, high, fixed }, i) => {
    const dual = last?.Columns[column(i)]?.Dual ?? 0;
    const amount = best.amounts[i]!;
    if (fixed || Math.abs(dual) < 1e-9) return;
    if (low > 0 && Math.abs(amount - low) < 1e-6)
      binding.push({ limit: `least ${name}`, end: 'low', at: low, price: 0.01 * Math.abs(dual), per: 'one point of per cent' });
    if (Math.abs(amount - high) < 1e-6)
      binding.push({ limit: `most ${name}`, end: 'high', at: high, price: 0.01 * Math.abs(dual), per: 'one point of per cent' });
  });
  const answer = {
    component: task.component.name,
    currency: task.currency,
    found: broken.length === 0,
    cost: { now: costs(start.amounts, task), best: costs(best.amounts, task) },
    amounts: task.candidates.map(({ name, now, price }, i) => ({
      name,
      now,
      best: best.amounts[i]!,
      shareNow: now / total(start),
      share: best.amounts[i]! / total(best),
      price,
    })),
    moisture: { now: start.moisture, best: best.moisture },
    properties,
    // Without an answer the prices are those of breaking a limit, and say nothing.
    binding: broken.length > 0 ? [] : binding.filter(({ price }) => price >= 5e-5).sort((a, b) => b.price - a.price),
    rounds,
  };
  return { ...answer, sentences: sentencesOn(answer, broken) };
}

function sentencesOn(answer: Omit<BlendAnswer, 'sentences'>, broken: BlendAnswer['properties']): readonly string[] {
  const saved = answer.cost.now - answer.cost.best;
  const money = (x: number) => `${answer.currency} ${x.toFixed(3)}`;
  const words = (property: string) => property.replaceAll('_', ' ');
  if (broken.length > 0)
    return [
      `No blend of these holds every limit; the nearest breaks ${broken.map(({ property, best, low, high }) => `${words(property)} (${best.toPrecision(3)}, ${low === undefined ? '' : `at least ${low.toPrecision(3)} `}${high === undefined ? '' : `at most ${high.toPrecision(3)}`})`).join(', ')}. Widen one, or let another ingredient in.`,
    ];
  const held = answer.properties.every((one) => excess(one, one.now) <= 1e-4);
  const first = !held
    ? `The recipe of now does not hold these limits; the cheapest blend that does costs ${money(answer.cost.best)} a kg (now ${money(answer.cost.now)}).`
    : saved < 0.0005
      ? `Nothing cheaper holds every limit: the recipe costs ${money(answer.cost.now)} a kg, the cheapest ${money(answer.cost.best)}.`
      : `The cheapest blend costs ${money(answer.cost.best)} a kg instead of ${money(answer.cost.now)}: ${money(saved)} less.`;
  return [
    first,
    'Taste, colour, label, allergens and the behaviour in the cooker are not in these numbers: a blend is a proposal for the bench, then for a trial, then for a version with a reason.',
  ];
}
