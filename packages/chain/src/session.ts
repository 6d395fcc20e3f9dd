import type { Chain } from './build.js';
import { Engine, same } from './engine.js';
import { select, type Selected } from './names.js';
import { observationFor, Reading, type Overrides, type State } from './state.js';
import type { Observation, Value } from './types.js';

/** Values to put in place, or `null` to go back to what the chain itself gives. */
export type Changes = Readonly<Record<string, Observation | Value | null>>;

interface Edit {
  readonly index: number;
  readonly before: Observation | undefined;
  readonly after: Observation | undefined;
}

/**
 * A chain at work: put values in place, take them back, undo. Each change recomputes only what lies downstream of it.
 * It reads like a state, of this moment; `snapshot` gives one that stays.
 */
export class Session extends Reading {
  private readonly done: (readonly Edit[])[] = [];
  private readonly undone: (readonly Edit[])[] = [];
  private kept: State | undefined;

  /** @throws ChainError as `evaluate` does */
  constructor(chain: Chain, overrides: Overrides = {}) {
    super(new Engine(chain));
    this.engine.runAll();
    this.put(overrides, 'entered');
  }

  /** A what-if: one value, or several as one change. @returns ids of what changed, in the order of the chain */
  set(id: string, value: Value): readonly string[];
  set(values: Readonly<Record<string, Value>>): readonly string[];
  set(id: string | Readonly<Record<string, Value>>, value?: Value): readonly string[] {
    return this.commit(typeof id === 'string' ? { [id]: value! } : id, 'entered');
  }

  /** A measurement, or several as one change. @returns ids of what changed */
  observe(id: string, observation: Observation | Value): readonly string[];
  observe(observations: Overrides): readonly string[];
  observe(id: string | Overrides, observation?: Observation | Value): readonly string[] {
    return this.commit(typeof id === 'string' ? { [id]: observation! } : id, 'measured');
  }

  /** Back to what the chain itself gives; without ids, for everything. @returns ids of what changed */
  release(...ids: readonly string[]): readonly string[] {
    const names = ids.length > 0 ? ids : [...this.engine.observations.keys()].map((q) => this.chain.quantities[q]!.id);
    return this.commit(Object.fromEntries(names.map((id) => [id, null])), 'entered');
  }

  /** Values, observations and releases together, as one change that one undo takes back. @returns ids of what changed */
  change(changes: Changes): readonly string[] {
    return this.commit(changes, 'entered');
  }

  /** @returns ids of what changed; undefined when there is nothing to take back */
  undo(): readonly string[] | undefined {
    const edits = this.done.pop();
    if (!edits) return undefined;
    this.undone.push(edits);
    return this.apply(edits.map(({ index, before }) => [index, before]));
  }

  /** @returns ids of what changed; undefined when nothing was taken back */
  redo(): readonly string[] | undefined {
    const edits = this.undone.pop();
    if (!edits) return undefined;
    this.done.push(edits);
    return this.apply(edits.map(({ index, after }) => [index, after]));
  }

  get canUndo(): boolean {
    return this.done.length > 0;
  }

  get canRedo(): boolean {
    return this.undone.length > 0;
  }

  /** The values of this moment, as a state that does not change. */
  snapshot(): State {
    return (this.kept ??= new Reading(this.engine.clone()));
  }

  /** What stands in place of the chain's own values; `evaluate(chain, overrides)` gives the same state. */
  overrides(): Readonly<Record<string, Observation>> {
    return Object.fromEntries([...this.engine.observations].map(([q, observation]) => [this.chain.quantities[q]!.id, observation]));
  }

  private commit(changes: Changes, origin: 'measured' | 'entered'): readonly string[] {
    const { edits, changed } = this.put(changes, origin);
    if (edits.length === 0) return changed;
    this.done.push(edits);
    this.undone.length = 0;
    return changed;
  }

  /** All or nothing: a change that is refused leaves everything as it was. */
  private put(changes: Changes, origin: 'measured' | 'entered'): { edits: readonly Edit[]; changed: readonly string[] } {
    const { engine } = this;
    const names = Object.keys(changes).map((name) => select(this.chain, name));
    const before = new Map(names.map(({ index }) => [index, engine.observations.get(index)]));
    const touched = new Map<number, Value>([...before.keys()].map((index) => [index, engine.values[index]!]));
    const changed: number[] = [];
    try {
      const enter = (name: Selected) => {
        const given = changes[name.name]!;
        engine.override(name.index, given === null ? undefined : observationFor(engine, name, given, origin));
      };
      names.filter((name) => name.element < 0).forEach(enter);
      const elements = names.filter((name) => name.element >= 0);
      if (elements.length > 0) engine.settle(changed); // an element goes into the vector as it is after the other changes
      elements.forEach(enter);
    } catch (error) {
      for (const [index, observation] of before) engine.override(index, observation);
      engine.settle();
      throw error;
    }
    const edits: Edit[] = [];
    for (const [index, observation] of before) {
      const after = engine.observations.get(index);
      if (after !== observation) edits.push({ index, before: observation, after });
    }
    return { edits, changed: this.settle(touched, changed) };
  }

  private apply(overrides: readonly (readonly [number, Observation | undefined])[]): readonly string[] {
    const touched = new Map<number, Value>();
    for (const [index, observation] of overrides) {
      touched.set(index, this.engine.values[index]!);
      this.engine.override(index, observation);
    }
    return this.settle(touched);
  }

  private settle(touched: ReadonlyMap<number, Value>, changed: number[] = []): readonly string[] {
    this.engine.settle(changed);
    for (const [index, value] of touched) if (!same(this.engine.values[index]!, value)) changed.unshift(index);
    this.kept = undefined;
    return inOrder(changed).map((q) => this.chain.quantities[q]!.id);
  }
}

/** Sorted, each once. Steps run in the order of the chain, so that only what was put in place stands out of it. */
function inOrder(numbers: number[]): number[] {
  for (let i = 1; i < numbers.length; i++) {
    if (numbers[i]! <= numbers[i - 1]!) return [...new Set(numbers)].sort((a, b) => a - b);
  }
  return numbers;
}
