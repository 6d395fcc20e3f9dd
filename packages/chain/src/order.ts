import { ChainError } from './errors.js';
import type { Root, Step } from './types.js';

/**
 * An order in which every step follows the steps it takes from; otherwise as given. Inputs that nobody makes are passed over.
 * @throws ChainError CYCLE, its ids the quantities on the way round
 */
export function orderSteps(roots: readonly Root[], steps: readonly Step[]): readonly Step[] {
  const makers = new Map<string, number>();
  steps.forEach((step, s) => step.outputs.forEach((output) => makers.set(output.id, s)));
  for (const root of roots) makers.delete(root.id);

  const ordered: Step[] = [];
  const [waiting, open, done] = [0, 1, 2];
  const mark = new Uint8Array(steps.length).fill(waiting);
  const nextInput = new Int32Array(steps.length);
  const trail: number[] = []; // depth first without recursion, so that a long chain cannot exhaust the stack
  for (let first = 0; first < steps.length; first++) {
    if (mark[first] !== waiting) continue;
    mark[first] = open;
    trail.push(first);
    while (trail.length > 0) {
      const s = trail[trail.length - 1]!;
      const input = steps[s]!.inputs[nextInput[s]!++];
      if (input === undefined) {
        mark[s] = done;
        ordered.push(steps[s]!);
        trail.pop();
        continue;
      }
      const maker = makers.get(input);
      if (maker === undefined || mark[maker] === done) continue;
      if (mark[maker] === open) throw cycle(steps, nextInput, trail.slice(trail.indexOf(maker)));
      mark[maker] = open;
      trail.push(maker);
    }
  }
  return ordered;
}

/** Each step on the trail waits for the input it asked for last; following those inputs leads round. */
function cycle(steps: readonly Step[], nextInput: Int32Array, trail: readonly number[]): ChainError {
  const ids = trail.map((s) => steps[s]!.inputs[nextInput[s]! - 1]!).reverse();
  const names = trail.map((s) => `'${steps[s]!.id}'`).reverse();
  const way = [...ids, ids[0]!].join(' → ');
  return new ChainError('CYCLE', `The steps ${names.join(', ')} wait for each other: ${way}; take one of them out of the circle`, ids);
}
