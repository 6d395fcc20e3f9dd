import { brokenWindows, uses, type Finding, type Origin, type Quantity, type Session, type State } from '@barwright/chain';
import { allergensOf, componentsOf, ingredientNames } from '@barwright/bar';
import type { PlantChain } from './plant-chain.js';
import { presentation, shownWindow, tidy, type ShownWindow, type Units } from './present.js';

/** A group of quantities that belong on one place of the sheet. */
export interface SheetSection {
  readonly title: string;
  readonly ids: readonly string[];
}

/** One quantity as `sheet --json` gives it. */
export interface SheetEntry {
  readonly value: number | Readonly<Record<string, number>> | readonly number[] | null;
  readonly unit: string;
  readonly origin: Origin;
  readonly meaning: string;
  readonly window?: ShownWindow;
  readonly uncertainty?: number;
  /** Why there is no value. */
  readonly reason?: string;
}

/** The sections of the sheet, in the order in which one walks from recipe to pallet. Every quantity of the chain stands in one. */
export function sheetSections(from: PlantChain): readonly SheetSection[] {
  const { chain, plant, bar } = from;
  const ids = chain.quantities.map((quantity) => quantity.id);
  const left = new Set(ids);
  const sections: SheetSection[] = [];
  const add = (title: string, test: (id: string) => boolean) => {
    const own = ids.filter((id) => left.has(id) && test(id));
    for (const id of own) left.delete(id);
    if (own.length > 0) sections.push({ title, ids: own });
  };
  add('Plant', (id) => id.startsWith('plant.'));
  for (const component of componentsOf(plant, bar)) add(capital(component.name), (id) => id.startsWith(`${component.slug}.`));
  add('Layers and coat', (id) => /^(layer|coat|step)\./.test(id));
  add('Bar', (id) => /^bar\.(?!cost|rework)/.test(id));
  add('What makes the mass vary', (id) => /^(variation|variance|deviation)\./.test(id));
  add('Cost', (id) => /^bar\.(cost|rework)/.test(id));
  add('Pack', (id) => id.startsWith('pack.'));
  add('Nutrition', (id) => id.startsWith('label.') && !/^label\.(input|share)\./.test(id));
  add('Ingredients as weighed in', (id) => id.startsWith('label.'));
  add('Line', (id) => id.startsWith('line.'));
  add('Flows at rated speed', (id) => /^(flow|rework)\./.test(id));
  add('Stations', (id) => id.startsWith('station.'));
  add('Set points', (id) => id.startsWith('set.'));
  add('Limits of checks', (id) => id.startsWith('check.'));
  add('Transit from the cutter', (id) => id.startsWith('transit.'));
  add('Order', (id) => id.startsWith('order.'));
  add('Need for one bar', (id) => id.startsWith('need.'));
  add('Materials', (id) => id.startsWith('material.'));
  add('Other', () => true);
  return sections;
}

/** One entry of the JSON sheet, in the unit in which a person reads it. */
export function sheetEntry(state: State, quantity: Quantity, units: Units = 'metric'): SheetEntry {
  const { id } = quantity;
  const { unit, toShown } = presentation(quantity, units);
  const window = shownWindow(quantity, units);
  const value = state.value(id);
  const status = state.status(id);
  const half = state.uncertainty(id);
  return {
    value: !status.ok ? null : typeof value === 'number' ? tidy(toShown(value)) : vectorOf(quantity, value, toShown),
    unit,
    origin: state.origin(id),
    meaning: quantity.meaning,
    ...(window ? { window } : {}),
    ...(half === undefined ? {} : { uncertainty: tidy(Math.abs(toShown(half) - toShown(0))) }),
    ...(status.ok ? {} : { reason: status.reason }),
  };
}

function vectorOf(quantity: Quantity, value: Float64Array, toShown: (x: number) => number): Record<string, number> | number[] {
  const numbers = Array.from(value, (x) => tidy(toShown(x)));
  return quantity.labels ? Object.fromEntries(quantity.labels.map((label, i) => [label, numbers[i]!])) : numbers;
}

/** Ingredients by mass as weighed in, largest first: the order of the label. */
export function ingredientList(
  from: PlantChain,
  state: State,
): readonly { readonly label: string; readonly quantity: string; readonly mass: number }[] {
  return ingredientNames(from.plant, from.bar)
    .map((entry) => ({ ...entry, mass: state.number(entry.quantity) }))
    .sort((a, b) => b.mass - a.mass);
}

export function allergens(from: PlantChain): ReadonlyMap<string, readonly string[]> {
  return allergensOf(from.plant, from.bar);
}

/** Stations by how much of them is used, fullest first: the first limits, the second is next. */
export function stationsByUse(
  from: PlantChain,
  state: State,
): readonly { readonly name: string; readonly id: string; readonly utilisation: number }[] {
  return (from.line?.stations ?? [])
    .map((station) => ({ name: station.name, id: `station.${station.slug}.utilisation` }))
    .filter(({ id }) => from.chain.index.has(id) && state.status(id).ok)
    .map((entry) => ({ ...entry, utilisation: state.number(entry.id) }))
    .sort((a, b) => b.utilisation - a.utilisation);
}

/** What ±10 % of one price, yield, loss or mass does to the cost of a bar, largest first. */
export interface CostMove {
  readonly id: string;
  readonly quantity: Quantity;
  /** Change of the cost of a bar, in money, when the root is 10 % larger. */
  readonly up: number;
  readonly down: number;
}

/** Tries each root that the cost rests on, 10 % up and down; the session is left as it was. */
export function costMoves(from: PlantChain, session: Session): readonly CostMove[] {
  const { chain } = from;
  if (!chain.index.has('bar.cost') || !session.status('bar.cost').ok) return [];
  const cost = session.number('bar.cost');
  const put = (id: string, value: number) => {
    session.set(id, value);
    const moved = session.number('bar.cost') - cost;
    session.undo();
    return Number.isFinite(moved) ? moved : 0;
  };
  const moves: CostMove[] = [];
  for (const quantity of chain.quantities) {
    const { id } = quantity;
    if (!/\.(price|loss|mass|conversion_cost|moisture|mass_per_area|thickness)$|^pack\.|\.loss\.|\.charge\./.test(id)) continue;
    if (session.origin(id) === 'computed' || typeof session.value(id) !== 'number') continue;
    if (!uses(chain, id).includes('bar.cost')) continue;
    const value = session.number(id);
    moves.push({ id, quantity, up: put(id, 1.1 * value), down: put(id, 0.9 * value) });
  }
  return moves.filter((move) => move.up !== 0 || move.down !== 0).sort((a, b) => Math.abs(b.up) - Math.abs(a.up));
}

/** The whole sheet, keyed by quantity, as `barwright sheet --json` and the server give it. */
export interface WholeSheet {
  readonly plant: string;
  readonly bar: string;
  readonly line: string | null;
  readonly quantities: Readonly<Record<string, SheetEntry>>;
  readonly findings: readonly Finding[];
  /** Ids of quantities outside their windows. */
  readonly outside: readonly string[];
  readonly ingredients: readonly { readonly label: string; readonly quantity: string }[];
  readonly allergens: Readonly<Record<string, readonly string[]>>;
  readonly stations_fullest_first: readonly { readonly name: string; readonly quantity: string; readonly utilisation: number }[];
  readonly cost_moves: readonly {
    readonly id: string;
    readonly change_if_10_percent_more: number;
    readonly change_if_10_percent_less: number;
    readonly unit: string;
  }[];
}

export function wholeSheet(from: PlantChain, session: Session, units: Units = 'metric'): WholeSheet {
  return {
    plant: from.plant.name,
    bar: from.bar.name,
    line: from.line?.name ?? null,
    quantities: Object.fromEntries(from.chain.quantities.map((quantity) => [quantity.id, sheetEntry(session, quantity, units)])),
    findings: session.findings(),
    outside: brokenWindows(session).map(({ id }) => id),
    ingredients: ingredientList(from, session).map(({ label, quantity }) => ({ label, quantity })),
    allergens: Object.fromEntries(allergens(from)),
    stations_fullest_first: stationsByUse(from, session).map(({ name, id, utilisation }) => ({
      name,
      quantity: id,
      utilisation: tidy(utilisation),
    })),
    cost_moves: costMoves(from, session).map(({ id, up, down }) => ({
      id,
      change_if_10_percent_more: tidy(up),
      change_if_10_percent_less: tidy(down),
      unit: from.plant.currency,
    })),
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
