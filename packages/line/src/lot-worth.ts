import { additionsOf, componentsOf } from '@barwright/bar';
import { Session, type Observation } from '@barwright/chain';
import { slugOf, type Component } from '@barwright/plant';
import { atMoisture, type Composition } from '@barwright/science';
import type { NamedLot } from './lot-results.js';
import type { PlantChain } from './plant-chain.js';

/** What one result of a lot does, alone, to the component that takes the material. */
export interface LotEffect {
  readonly name: string;
  /** kg made per kg charged, against the reference. */
  readonly yieldChange: number;
  /** Money for a kg of material at which this result alone is made good; negative: worth less. */
  readonly priceChange: number;
  /** Raw material beyond the reference for the order, kg, and its money. */
  readonly extraForOrder?: number;
  readonly extraMoney?: number;
}

/** Worth of a lot against a reference, by what it makes; flavour and fat are not in it. */
export interface LotWorth {
  readonly component: string;
  /** 'the recipe as costed' or the other lot. */
  readonly against: string;
  readonly currency: string;
  readonly price: number;
  readonly yieldReference: number;
  readonly yieldLot: number;
  /** Money for a kg at which a bar costs the same as with the reference. */
  readonly fairPrice: number;
  /** (price − fair) / price; below 0 where the lot is worth more. */
  readonly discount: number;
  /** Raw material beyond the reference for the order, kg, and its money; undefined without an order. */
  readonly extraForOrder?: number;
  readonly extraMoney?: number;
  /** kg that leave each stage for a kg received, where nothing else goes in: beans after winnowing are usable nib. */
  readonly stages: readonly { readonly stage: string; readonly reference: number; readonly lot: number }[];
  /** Material cost of a kg that leaves the stage where losses end, at the price asked: beans to usable nib. */
  readonly costAfter?: { readonly stage: string; readonly reference: number; readonly lot: number };
  readonly effects: readonly LotEffect[];
  /** Results that the chain cannot take into account. */
  readonly notCounted: readonly string[];
}

/**
 * Sets the results of a lot into the chain (moisture, solids, named losses) and reads what follows.
 * @returns undefined where no component of the bar takes the material, it has no price, or no result has a place in the chain
 */
export function lotWorth(from: PlantChain, session: Session, lot: NamedLot, reference?: NamedLot): LotWorth | undefined {
  const material = from.plant.materials.get(lot.material);
  const component = componentsOf(from.plant, from.bar).find((other) =>
    additionsOf(other).some(({ addition }) => addition.name === lot.material),
  );
  const priceId = material && `material.${material.slug}.price`;
  if (!material || !component || !priceId || !from.chain.index.has(priceId) || !from.chain.index.has('bar.cost')) return undefined;
  const base = new Session(from.chain, session.overrides());
  if (reference) base.set(changesOf(from, base, component, reference).changes);
  const own = changesOf(from, base, component, lot);
  if (own.parts.length === 0) return undefined;
  const with_ = (changes: Readonly<Record<string, Observation['value']>>) => {
    const after = new Session(from.chain, base.overrides());
    if (Object.keys(changes).length > 0) after.set(changes);
    return after;
  };
  const after = with_(own.changes);
  const price = base.number(priceId);
  const c = component.slug;
  const fair = fairPrice(base, after, priceId, price);
  const order = `order.material.${material.slug}`;
  const extra = from.chain.index.has(order) ? after.number(order) - base.number(order) : undefined;
  const alone = additionsOf(component).length === 1;
  const stages = (alone ? component.stages : []).map((stage) => {
    const kept = (state: Session) => state.number(`${c}.stage.${stage.slug}.mass`) / state.number(`${c}.charge_sum`);
    return { stage: stage.name, reference: kept(base), lot: kept(after) };
  });
  const last = component.stages.findLastIndex((stage) => stage.losses.length > 0 && /winnow|sort|sieve|peel|blanch/i.test(stage.name));
  const end = last < 0 ? undefined : stages[last];
  return {
    component: component.name,
    against: reference ? `lot ${reference.lot}` : 'the recipe as costed',
    currency: from.plant.currency,
    price,
    yieldReference: base.number(`${c}.yield`),
    yieldLot: after.number(`${c}.yield`),
    fairPrice: fair,
    discount: 1 - fair / price,
    ...(extra === undefined ? {} : { extraForOrder: extra, extraMoney: extra * price }),
    stages,
    ...(end ? { costAfter: { stage: end.stage, reference: price / end.reference, lot: price / end.lot } } : {}),
    effects: own.parts.map(({ name, changes }) => {
      const one = with_(changes);
      const more = from.chain.index.has(order) ? one.number(order) - base.number(order) : undefined;
      return {
        name,
        yieldChange: one.number(`${c}.yield`) / base.number(`${c}.yield`) - 1,
        priceChange: fairPrice(base, one, priceId, price) - price,
        ...(more === undefined ? {} : { extraForOrder: more, extraMoney: more * price }),
      };
    }),
    notCounted: own.notCounted,
  };
}

/** Price at which a bar from the lot costs what it costs from the reference; the cost is straight in the price. */
function fairPrice(base: Session, after: Session, priceId: string, price: number): number {
  const [reference, now] = [base.number('bar.cost'), after.number('bar.cost')];
  if (now === reference) return price;
  const trial = new Session(after.chain, after.overrides());
  trial.set(priceId, 0.5 * price);
  const slope = (now - trial.number('bar.cost')) / (0.5 * price);
  return price - (now - reference) / slope;
}

type Changes = Record<string, Observation['value']>;

/** Results that the chain has a place for. */
function changesOf(
  from: PlantChain,
  state: Session,
  component: Component,
  lot: NamedLot,
): {
  readonly changes: Changes;
  readonly parts: readonly { readonly name: string; readonly changes: Changes }[];
  readonly notCounted: readonly string[];
} {
  const material = from.plant.materials.get(lot.material)!;
  const c = component.slug;
  const composition = `material.${material.slug}.composition`;
  const parts: { name: string; changes: Changes }[] = [];
  const notCounted: string[] = [];
  for (const { name, slug, value } of lot.results) {
    const loss = component.stages.flatMap((stage) => stage.losses.map((of) => ({ stage, of }))).find(({ of }) => slugOf(of.name) === slug);
    const solids = `${c}.solids.${material.slug}`;
    if (slug === 'moisture')
      parts.push({ name, changes: { [composition]: atMoisture(state.value(composition) as Composition, value.value) } });
    else if (slug === 'solids' && from.chain.index.has(solids)) parts.push({ name, changes: { [solids]: value.value } });
    else if (slug === 'solids')
      parts.push({ name, changes: { [composition]: atMoisture(state.value(composition) as Composition, 1 - value.value) } });
    else if (loss) parts.push({ name, changes: { [`${c}.stage.${loss.stage.slug}.loss.${slug}`]: value.value } });
    else notCounted.push(name);
  }
  return { changes: Object.assign({}, ...parts.map(({ changes }) => changes)) as Changes, parts, notCounted };
}
