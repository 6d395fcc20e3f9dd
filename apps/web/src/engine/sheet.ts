import { createContext, useCallback, useContext, useRef, useSyncExternalStore } from 'react';
import type { Origin } from '@barwright/chain';
import { EngineClient } from './client.js';
import { Pace } from './pace.js';
import type { Catalog, Frame, Meta, Units } from './protocol.js';

/** One number as it is shown now. */
export interface Shown {
  readonly meta: Meta;
  /** In the unit shown; NaN where there is none. */
  readonly value: number;
  /** What it is when nothing is pulled. */
  readonly truth: number;
  readonly origin: Origin;
  /** Why there is none. */
  readonly reason?: string;
  /** Below its window, inside, above. */
  readonly outside: -1 | 0 | 1;
}

/** What the last frame said besides single numbers. */
export type View = Pick<Frame, 'picture' | 'bent' | 'consequences' | 'sentence' | 'plan' | 'canUndo' | 'canRedo'>;

type Listener = () => void;

/** The numbers on the page: each reader hears only of its own. */
export class Sheet {
  readonly engine: EngineClient;
  catalog: Catalog | undefined;
  view: View | undefined;
  /** The view as words and small drawings follow it: in step, except under a hand. */
  calm: View | undefined;
  private readonly index = new Map<string, number>();
  private shown: (Shown | undefined)[] = [];
  private readonly readers = new Map<string, Set<Listener>>();
  private readonly viewers = new Set<Listener>();
  private readonly calmViewers = new Set<Listener>();
  private readonly pace = new Pace(() => {
    this.calm = this.view;
    for (const listener of this.calmViewers) listener();
  });

  constructor() {
    this.engine = new EngineClient((frame) => this.take(frame));
  }

  /** Opens a version; numbers of the one before stay until it has come. */
  async open(
    wire: unknown,
    version: number,
    bar: string | undefined,
    units: Units,
    changes: Readonly<Record<string, number>>,
  ): Promise<Catalog> {
    const { catalog, frame } = await this.engine.ask('open', { wire, bar, version, units, changes });
    this.begin(catalog, frame);
    return catalog;
  }

  /** Another habit of reading. */
  async read(units: Units): Promise<void> {
    const { catalog, frame } = await this.engine.ask('units', { units });
    this.begin(catalog, frame);
  }

  get(id: string): Shown | undefined {
    const at = this.index.get(id);
    return at === undefined ? undefined : this.shown[at];
  }

  subscribe(id: string, listener: Listener): () => void {
    let set = this.readers.get(id);
    if (!set) {
      set = new Set();
      this.readers.set(id, set);
    }
    set.add(listener);
    return () => set.delete(listener);
  }

  subscribeView(listener: Listener): () => void {
    this.viewers.add(listener);
    return () => this.viewers.delete(listener);
  }

  subscribeCalm(listener: Listener): () => void {
    this.calmViewers.add(listener);
    return () => this.calmViewers.delete(listener);
  }

  /** Shows the frame that stands once more, every number as if it were new. */
  repeat(): void {
    const { view } = this;
    if (!view) return;
    this.shown = this.shown.map((shown) => shown && { ...shown });
    this.view = { ...view };
    for (const set of this.readers.values()) for (const listener of set) listener();
    for (const listener of this.viewers) listener();
    this.pace.changed(false);
  }

  private begin(catalog: Catalog, frame: Frame): void {
    this.catalog = catalog;
    this.index.clear();
    catalog.metas.forEach((meta, at) => this.index.set(meta.id, at));
    this.shown = [];
    this.take(frame);
    for (const set of this.readers.values()) for (const listener of set) listener();
  }

  private take(frame: Frame): void {
    const { catalog } = this;
    if (!catalog) return;
    frame.at.forEach((at, i) => {
      const meta = catalog.metas[at]!;
      const value = frame.values[i]!;
      const truth = frame.truths[i]!;
      const reason = frame.reasons[at];
      this.shown[at] = {
        meta,
        value,
        truth,
        origin: frame.origins[i]!,
        outside: outsideOf(meta, value),
        ...(reason === undefined ? {} : { reason }),
      };
    });
    const { picture, bent, consequences, sentence, plan, canUndo, canRedo } = frame;
    this.view = { picture, bent, consequences, sentence, plan, canUndo, canRedo };
    for (const at of frame.at) for (const listener of this.readers.get(catalog.metas[at]!.id) ?? []) listener();
    for (const listener of this.viewers) listener();
    this.pace.changed(frame.pulling);
  }
}

function outsideOf({ window, decimals }: Meta, value: number): Shown['outside'] {
  if (!window || Number.isNaN(value)) return 0;
  const slack = 1e-9 * 10 ** -decimals;
  if (window.low !== undefined && value < window.low - slack) return -1;
  return window.high !== undefined && value > window.high + slack ? 1 : 0;
}

export const SheetContext = createContext<Sheet | undefined>(undefined);

export function useSheet(): Sheet {
  const sheet = useContext(SheetContext);
  if (!sheet) throw new Error('A number stands outside its sheet');
  return sheet;
}

/** One number, as it changes. */
export function useShown(id: string): Shown | undefined {
  const sheet = useSheet();
  const subscribe = useCallback((listener: Listener) => sheet.subscribe(id, listener), [sheet, id]);
  return useSyncExternalStore(subscribe, () => sheet.get(id));
}

/** Several numbers at once, as they change; the same list while none of them does. */
export function useShownAll(ids: readonly string[]): readonly (Shown | undefined)[] {
  const sheet = useSheet();
  const names = ids.join(' ');
  const list = useRef<readonly (Shown | undefined)[]>([]);
  const subscribe = useCallback(
    (listener: Listener) => {
      const stops = names.split(' ').map((id) => sheet.subscribe(id, listener));
      return () => stops.forEach((stop) => stop());
    },
    [sheet, names],
  );
  return useSyncExternalStore(subscribe, () => {
    const next = ids.map((id) => sheet.get(id));
    if (next.length !== list.current.length || next.some((shown, i) => shown !== list.current[i])) list.current = next;
    return list.current;
  });
}

/** What the last frame said, as it changes. */
export function useView(): View | undefined {
  const sheet = useSheet();
  const subscribe = useCallback((listener: Listener) => sheet.subscribeView(listener), [sheet]);
  return useSyncExternalStore(subscribe, () => sheet.view);
}

/** The same for words and small drawings, which under a hand follow at a pace that can be read. */
export function useCalmView(): View | undefined {
  const sheet = useSheet();
  const subscribe = useCallback((listener: Listener) => sheet.subscribeCalm(listener), [sheet]);
  return useSyncExternalStore(subscribe, () => sheet.calm);
}
