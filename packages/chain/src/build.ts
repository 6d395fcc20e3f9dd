import { ChainError } from './errors.js';
import { nearestName, unknownQuantity } from './names.js';
import { orderSteps } from './order.js';
import type { Quantity, Root, Step, Value } from './types.js';

/**
 * The steps in an order in which each finds its inputs, and every quantity by a small integer: roots first, then the
 * outputs step by step. Plain lists of integers, so that evaluation looks nothing up by name.
 */
export interface Chain {
  /** Roots first, in the order given; then outputs in the order of the steps. */
  readonly quantities: readonly Quantity[];
  readonly roots: readonly Root[];
  /** In the order of evaluation. */
  readonly steps: readonly Step[];
  /** Place of each quantity in `quantities`. */
  readonly index: ReadonlyMap<string, number>;
  /** Inputs of step s: `inputs[inputStart[s]]` up to, without, `inputs[inputStart[s + 1]]`. */
  readonly inputs: Int32Array;
  readonly inputStart: Int32Array;
  /** Outputs of step s are the quantities `outputStart[s]` up to, without, `outputStart[s + 1]`. */
  readonly outputStart: Int32Array;
}

/**
 * Puts roots and steps together into a chain.
 *
 * @param roots - quantities that nothing computes
 * @param steps - in any order; an order that already works is kept
 * @throws ChainError DUPLICATE_QUANTITY, DUPLICATE_STEP, UNIT_MISSING, MISSING_INPUT (naming step, input and the nearest
 * known name) or CYCLE (naming the way round)
 */
export function buildChain(roots: readonly Root[], steps: readonly Step[]): Chain {
  let entries = 0;
  for (const step of steps) entries += step.inputs.length;
  return number(roots, steps, entries) ?? number(roots, orderSteps(roots, steps), entries) ?? refuse(roots, steps);
}

/** Numbers quantities and inputs; undefined when a step comes before one that it needs, or something is amiss. */
function number(roots: readonly Root[], steps: readonly Step[], entries: number): Chain | undefined {
  const index = new Map<string, number>();
  const quantities: Quantity[] = [];
  let count = 0;
  for (const root of roots) {
    if (!root.unit) return undefined;
    quantities.push(root);
    index.set(root.id, count++);
  }
  const stepCount = steps.length;
  const inputs = new Int32Array(entries);
  const inputStart = new Int32Array(stepCount + 1);
  const outputStart = new Int32Array(stepCount + 1);
  const stepIds = new Set<string>();
  let at = 0;
  for (let s = 0; s < stepCount; s++) {
    const step = steps[s]!;
    stepIds.add(step.id);
    for (const id of step.inputs) {
      const found = index.get(id);
      if (found === undefined) return undefined;
      inputs[at++] = found;
    }
    inputStart[s + 1] = at;
    outputStart[s] = count;
    for (const output of step.outputs) {
      if (!output.unit) return undefined;
      quantities.push(output);
      index.set(output.id, count++);
    }
  }
  outputStart[stepCount] = count;
  if (index.size !== count || stepIds.size !== stepCount) return undefined;
  return { quantities, roots, steps, index, inputs, inputStart, outputStart };
}

/** Says why roots and steps make no chain; called only when numbering failed in every order, so the first fault is named. */
function refuse(roots: readonly Root[], steps: readonly Step[]): never {
  const makers = new Map<string, string>();
  const stepIds = new Set<string>();
  const add = (quantity: Quantity, maker: string) => {
    const earlier = makers.get(quantity.id);
    if (earlier) {
      const message = `Quantity '${quantity.id}' is given twice: by ${earlier} and by ${maker}; each needs one maker`;
      throw new ChainError('DUPLICATE_QUANTITY', message, [quantity.id]);
    }
    if (!quantity.unit) {
      const message = `Quantity '${quantity.id}' of ${maker} has no unit; a pure number has the unit '1'`;
      throw new ChainError('UNIT_MISSING', message, [quantity.id]);
    }
    makers.set(quantity.id, maker);
  };
  for (const root of roots) add(root, `a root${root.place ? ` (${root.place})` : ''}`);
  for (const step of steps) {
    if (stepIds.has(step.id)) throw new ChainError('DUPLICATE_STEP', `Two steps are called '${step.id}'; names must differ`, [step.id]);
    stepIds.add(step.id);
    for (const output of step.outputs) add(output, `step '${step.id}'`);
  }
  for (const step of steps) {
    for (const id of step.inputs) {
      if (makers.has(id)) continue;
      const near = nearestName(id, makers.keys());
      const hint = near ? `did you mean '${near}'?` : 'no root and no step gives it';
      const place = step.place ? ` (${step.place})` : '';
      throw new ChainError('MISSING_INPUT', `Step '${step.id}'${place} needs '${id}'; ${hint}`, [step.id, id, ...(near ? [near] : [])]);
    }
  }
  throw new ChainError('CYCLE', 'The steps cannot be put in order');
}

/**
 * Refuses a value whose unit is not the one in which the chain holds the quantity. Units are compared, never converted.
 * @throws ChainError UNIT_CLASH or UNKNOWN_QUANTITY
 */
export function requireUnit(chain: Chain, id: string, unit: string): void {
  const index = chain.index.get(id);
  if (index === undefined) throw unknownQuantity(chain, id);
  const expected = chain.quantities[index]!.unit;
  if (unit === expected) return;
  throw new ChainError('UNIT_CLASH', `${id} is held in ${expected}, but a value in ${unit} came; give it in ${expected}`, [id]);
}

/** The root with this id, or undefined when a step computes it or nobody knows it. */
export function rootOf(chain: Chain, id: string): Root | undefined {
  const index = chain.index.get(id);
  return index !== undefined ? chain.roots[index] : undefined;
}

/** The place in `chain.steps` of the step that computes quantity `index`; -1 for a root. */
export function makerOf(chain: Chain, index: number): number {
  const { outputStart } = chain;
  if (index < chain.roots.length) return -1;
  let low = 0;
  let high = chain.steps.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (outputStart[middle]! <= index) low = middle;
    else high = middle - 1;
  }
  return low;
}

const consumerLists = new WeakMap<Chain, { readonly start: Int32Array; readonly steps: Int32Array }>();

/** For each quantity the steps that take it, as one flat list; made once for a chain, when first asked for. */
export function consumersOf(chain: Chain): { readonly start: Int32Array; readonly steps: Int32Array } {
  const known = consumerLists.get(chain);
  if (known) return known;
  const { inputs, inputStart, quantities, steps } = chain;
  const start = new Int32Array(quantities.length + 1);
  for (const input of inputs) start[input + 1]!++;
  for (let q = 0; q < quantities.length; q++) start[q + 1]! += start[q]!;
  const fill = start.slice();
  const users = new Int32Array(inputs.length);
  for (let s = 0; s < steps.length; s++) {
    for (let i = inputStart[s]!; i < inputStart[s + 1]!; i++) users[fill[inputs[i]!]!++] = s;
  }
  const lists = { start, steps: users };
  consumerLists.set(chain, lists);
  return lists;
}

/** True for a vector or a profile. */
export function isVector(value: Value): value is Float64Array {
  return typeof value !== 'number';
}
