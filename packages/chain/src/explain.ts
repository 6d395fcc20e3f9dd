import { consumersOf, makerOf, type Chain } from './build.js';
import { select } from './names.js';
import type { State, Status } from './state.js';
import type { Origin, Quantity, Value } from './types.js';

/** Where one value comes from, and from what: a tree back to the roots, made from the chain when asked. */
export interface Explanation {
  readonly id: string;
  readonly quantity: Quantity;
  readonly value: Value;
  readonly origin: Origin;
  readonly status: Status;
  /** The step that gives it; also where an observation stands in its place. */
  readonly step?: { readonly id: string; readonly title: string };
  readonly equation?: string;
  readonly sources: readonly string[];
  readonly standing?: string;
  /** Half-width of the 95 % interval that the model states, in the unit of the quantity. */
  readonly uncertainty?: number;
  /** What the chain itself gives, where an observation stands in its place. */
  readonly computed?: Value;
  readonly place?: string;
  readonly note?: string;
  /** What it was computed from. Empty for a root, for an observation, at the depth asked for, and where `repeated`. */
  readonly inputs: readonly Explanation[];
  /** Its inputs are shown at another place in this tree, nearer the top. */
  readonly repeated?: true;
  /** It has inputs, but they lie below the depth asked for. */
  readonly cut?: true;
}

type Growing = { -readonly [K in keyof Explanation]: Explanation[K] } & { inputs: Growing[] };

/**
 * @param id - `id`, or `id[label]` for the vector that holds the element
 * @param depth - levels below the quantity itself; default: to the roots. Each quantity is unfolded once, where it is nearest
 * @throws ChainError UNKNOWN_QUANTITY
 */
export function explain(chain: Chain, state: State, id: string, depth = Infinity): Explanation {
  const top = select(chain, id);
  const root = nodeFor(chain, state, top.index);
  const unfolded = new Set<number>();
  let level: { index: number; node: Growing }[] = [{ index: top.index, node: root }];
  for (let d = 0; level.length > 0; d++) {
    const next: typeof level = [];
    for (const { index, node } of level) {
      const maker = makerOf(chain, index);
      if (maker < 0 || node.computed !== undefined || chain.inputStart[maker] === chain.inputStart[maker + 1]) continue;
      if (unfolded.has(index)) node.repeated = true;
      else if (d >= depth) node.cut = true;
      else {
        unfolded.add(index);
        for (let i = chain.inputStart[maker]!; i < chain.inputStart[maker + 1]!; i++) {
          const input = nodeFor(chain, state, chain.inputs[i]!);
          node.inputs.push(input);
          next.push({ index: chain.inputs[i]!, node: input });
        }
      }
    }
    level = next;
  }
  return root;
}

function nodeFor(chain: Chain, state: State, index: number): Growing {
  const quantity = chain.quantities[index]!;
  const { id } = quantity;
  const maker = makerOf(chain, index);
  const step = chain.steps[maker];
  const root = chain.roots[index];
  const observation = state.observation(id);
  const node: Growing = {
    id,
    quantity,
    value: state.value(id),
    origin: state.origin(id),
    status: state.status(id),
    sources: [],
    inputs: [],
  };
  if (step) {
    node.step = { id: step.id, title: step.title };
    node.equation = step.equation;
    node.sources = step.sources ?? [];
  } else if (root?.source !== undefined) node.sources = [root.source];
  const standing = step ? step.standing : root?.standing;
  if (standing !== undefined) node.standing = standing;
  const uncertainty = state.uncertainty(id);
  if (uncertainty !== undefined) node.uncertainty = uncertainty;
  if (observation) node.computed = state.computed(id);
  const place = step ? step.place : root?.place;
  if (place !== undefined) node.place = place;
  const note = observation ? observation.note : step ? step.note : root?.note;
  if (note !== undefined) node.note = note;
  return node;
}

/**
 * What a quantity bears upon.
 * @param reach - 'all' that lies downstream (default), or only what is computed 'direct'ly from it
 * @returns ids in the order of the chain
 * @throws ChainError UNKNOWN_QUANTITY
 */
export function uses(chain: Chain, id: string, reach: 'all' | 'direct' = 'all'): readonly string[] {
  const { start, steps } = consumersOf(chain);
  const found = new Set<number>();
  const from = [select(chain, id).index];
  for (const q of from) {
    for (let i = start[q]!; i < start[q + 1]!; i++) {
      const s = steps[i]!;
      for (let output = chain.outputStart[s]!; output < chain.outputStart[s + 1]!; output++) {
        if (found.has(output)) continue;
        found.add(output);
        if (reach === 'all') from.push(output);
      }
    }
  }
  return [...found].sort((a, b) => a - b).map((q) => chain.quantities[q]!.id);
}
