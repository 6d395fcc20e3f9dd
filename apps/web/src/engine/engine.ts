import { Session, type Origin, type State } from '@barwright/chain';
import { inWords, plantChain, presentation, sectionSpec, type PlantChain, type Presentation } from '@barwright/line';
import type { Plant } from '@barwright/plant';
import type { SectionSpec } from '@barwright/drawing';
import { catalogOf } from './catalog.js';
import { shareOf, withOthersGivingWay } from './charge.js';
import { consequencesOf } from './consequences.js';
import { bounds, Knobs } from './knobs.js';
import { planTimes } from './plan-times.js';
import type { Bent, Catalog, Frame, Units } from './protocol.js';
import { openingSentence, sayings } from './sentence.js';
import { turnUntil } from './solve-bend.js';
import { capital, quantityOf } from './words.js';

/** Roots that stand elsewhere than the plant entered them, in the unit inside. */
export type Changes = ReadonlyMap<string, number>;

/** One open version: its chain, its truth, and what a person has pulled. */
export class Engine {
  readonly from: PlantChain;
  readonly truth: State;
  session: Session;
  readonly knobs: Knobs;
  private readonly history: Changes[] = [new Map()];
  private place = 0;
  private steps = 0;
  /** Kept while the units stay: how each number is written, and what is to be said of the truth. */
  private looks: readonly Presentation[] | undefined;
  private before: ReturnType<typeof sayings> | undefined;
  private pulling: Changes | undefined;
  private sent: { readonly values: Float64Array; readonly reasons: Map<number, string> } | undefined;

  constructor(
    plant: Plant,
    bar: string | undefined,
    readonly version: number,
    private units: Units,
  ) {
    this.from = plantChain(plant, bar);
    this.session = new Session(this.from.chain);
    this.truth = this.session.snapshot();
    this.knobs = new Knobs(this.from.chain);
  }

  get shownUnits(): Units {
    return this.units;
  }

  catalog(): Catalog {
    return catalogOf(this.from, this.knobs, this.version, this.units);
  }

  /** Another habit of reading: every number goes out again. */
  read(units: Units): void {
    this.units = units;
    this.sent = undefined;
    this.looks = undefined;
    this.before = undefined;
  }

  /** Changes as an address keeps them: roots in metric units. Names that this version lacks are left out. */
  restore(metric: Readonly<Record<string, number>>): void {
    const changes = new Map<string, number>();
    for (const [id, value] of Object.entries(metric)) {
      const quantity = quantityOf(this.from.chain, id);
      if (quantity && this.knobs.of(id) === id && Number.isFinite(value))
        changes.set(id, this.bounded(id, presentation(quantity).toInside(value)));
    }
    if (changes.size === 0) return;
    this.apply(changes);
    this.keep(changes);
  }

  /**
   * Pulls numbers to values in the unit shown.
   * @param end - the hand has let go: one undo takes all of it back
   */
  set(values: Readonly<Record<string, number>>, end: boolean): void {
    let changes = new Map(this.pulling ?? this.now);
    for (const [id, shown] of Object.entries(values)) {
      const quantity = quantityOf(this.from.chain, id);
      const root = this.knobs.of(id);
      if (!quantity || root === undefined || !Number.isFinite(shown)) continue;
      changes = new Map(this.turned(changes, root, id, presentation(quantity, this.units).toInside(shown)));
    }
    this.apply(changes);
    this.pulling = end ? undefined : changes;
    if (!end) return;
    this.keep(changes);
    this.renew();
  }

  /** Takes back the last change; a hand still pulling is let go first. */
  undo(): void {
    if (this.pulling) this.pulling = undefined;
    else if (this.place > 0) this.place -= 1;
    this.apply(this.now);
  }

  redo(): void {
    if (this.place < this.history.length - 1) this.place += 1;
    this.apply(this.now);
  }

  /** Back to what the plant entered; undo brings the trial back. */
  toTruth(): void {
    this.pulling = undefined;
    this.apply(new Map());
    this.keep(new Map());
  }

  get changes(): Changes {
    return this.pulling ?? this.now;
  }

  /** Everything that changed since the last frame. */
  frame(): Frame {
    const { chain } = this.from;
    const { session, units } = this;
    const sent = this.sent ?? { values: new Float64Array(chain.quantities.length).fill(Infinity), reasons: new Map<number, string>() };
    this.sent = sent;
    const at: number[] = [];
    const values: number[] = [];
    const truths: number[] = [];
    const origins: Origin[] = [];
    const reasons: Record<number, string> = {};
    const looks = (this.looks ??= chain.quantities.map((quantity) => presentation(quantity, units)));
    chain.quantities.forEach((quantity, index) => {
      const { toShown } = looks[index]!;
      const value = session.value(quantity.id);
      const shown = typeof value === 'number' ? toShown(value) : NaN;
      if (Object.is(shown, sent.values[index])) return;
      sent.values[index] = shown;
      at.push(index);
      values.push(shown);
      const truth = this.truth.value(quantity.id);
      truths.push(typeof truth === 'number' ? toShown(truth) : NaN);
      origins.push(session.origin(quantity.id));
      const status = session.status(quantity.id);
      if (!status.ok) reasons[index] = status.reason;
    });
    const bent = this.bent();
    const pulled = bent.map(({ meaning, truth, now }) => `${capital(meaning)} ${truth} → ${now}`);
    return {
      at,
      values,
      truths,
      origins,
      reasons,
      picture: this.picture(bent.length > 0),
      bent,
      consequences: bent.length > 0 ? consequencesOf(this.from, this.truth, session, new Set(bent.map(({ id }) => id)), units) : [],
      sentence: openingSentence(this.from, (this.before ??= sayings(this.from, this.truth, units)), session, pulled, units),
      plan: planTimes(this.from, session),
      pulling: this.pulling !== undefined,
      canUndo: this.pulling !== undefined || this.place > 0,
      canRedo: this.place < this.history.length - 1,
    };
  }

  /** The number that a state gives with one root turned; the session is left as it was. */
  probe(root: string, id: string): { readonly ask: (x: number) => number; readonly done: () => void } {
    const { session } = this;
    const before = this.changes;
    return {
      ask: (x) => {
        this.apply(new Map(before).set(root, x));
        const value = session.value(id);
        return typeof value === 'number' ? value : NaN;
      },
      done: () => this.apply(before),
    };
  }

  private get now(): Changes {
    return this.history[this.place]!;
  }

  private keep(changes: Changes): void {
    if (same(changes, this.now)) return;
    this.history.length = this.place + 1;
    this.history.push(changes);
    this.place += 1;
  }

  private turned(changes: Changes, root: string, id: string, wanted: number): Changes {
    const start = changes.get(root) ?? this.truth.number(root);
    let value: number | undefined = wanted;
    if (root !== id) {
      const { session } = this;
      value = turnUntil(
        (x) => {
          this.apply(new Map(changes).set(root, x));
          return session.number(id);
        },
        start,
        wanted,
        bounds(this.from.chain, root),
      );
    }
    if (value === undefined) return changes;
    const next = new Map(changes);
    const bounded = this.bounded(root, value);
    if (Math.abs(bounded - this.truth.number(root)) <= 1e-12 * Math.max(1, Math.abs(bounded))) next.delete(root);
    else next.set(root, bounded);
    return next;
  }

  private bounded(root: string, value: number): number {
    const [low, high] = shareOf(root) === undefined ? bounds(this.from.chain, root) : [0, 0.95];
    return Math.min(high, Math.max(low, value));
  }

  private apply(changes: Changes): void {
    const { session } = this;
    const wanted = withOthersGivingWay(this.from, this.truth, changes);
    const standing = session.overrides();
    const edits: Record<string, number | null> = {};
    for (const id of Object.keys(standing)) if (!wanted.has(id)) edits[id] = null;
    for (const [id, value] of wanted) if (standing[id]?.value !== value) edits[id] = value;
    if (Object.keys(edits).length === 0) return;
    session.change(edits);
    this.steps += 1;
  }

  /** A session remembers every step for its own undo; ours is kept here, so after a long day of pulling it begins anew. */
  private renew(): void {
    if (this.steps < 20_000) return;
    this.session = new Session(this.from.chain, this.session.overrides());
    this.steps = 0;
  }

  private bent(): Bent[] {
    return [...this.changes].map(([id, value]) => {
      const quantity = quantityOf(this.from.chain, id)!;
      return {
        id,
        meaning: quantity.meaning,
        truth: inWords(quantity, this.truth.number(id), this.units),
        now: inWords(quantity, value, this.units),
        metric: presentation(quantity).toShown(value),
      };
    });
  }

  private picture(withTruth: boolean): SectionSpec | undefined {
    try {
      return sectionSpec(this.from, this.session, 1, withTruth ? this.truth : undefined);
    } catch {
      return undefined;
    }
  }
}

function same(a: Changes, b: Changes): boolean {
  return a.size === b.size && [...a].every(([id, value]) => b.get(id) === value);
}
