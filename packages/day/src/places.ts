import type { State } from '@barwright/chain';
import { NotOnLine, type PlantChain } from '@barwright/line';
import type { Line } from '@barwright/plant';

/** A place on the line where a window is known, and the way from there to the wrapper. */
export interface Place {
  /** As it was asked for: 'enrober'. */
  readonly name: string;
  /** What happens to a bar there: 'enrobed', 'laid' … */
  readonly done: string;
  /** From the cutter, s; negative before it. */
  readonly fromCutter: Range;
  /** From here to the wrapper, s. */
  readonly toWrapper: Range;
  /** s that a bar may wait in a full accumulation at rated speed, where the plant wrote one; 0 at the wrapper. */
  readonly waits: number;
  /** Stations between here and the wrapper that stand alone in the way: while one of them stands, the bars behind it wait. */
  readonly between: readonly string[];
  readonly said: readonly string[];
}

export interface Range {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const zero: Range = { value: 0, low: 0, high: 0 };
const usual = ['slab', 'cutter', 'enrober', 'wrapper'] as const;

/**
 * A place by name: slab, cutter, enrober, wrapper, or any place to which the line writes a transit.
 * @param state - transits are read from it, so that a what-if counts
 * @throws NotOnLine where the line lacks the place or its transit, with what there is
 */
export function placeOf({ line, bar }: Pick<PlantChain, 'line' | 'bar'>, state: State, name: string): Place {
  if (!line) throw new NotOnLine(`${bar.name} has no line, so no window on one can be followed to the pallets`);
  const wrapper = transitTo(line, state, /wrap|pack/i);
  if (!wrapper)
    throw new NotOnLine(
      `${line.name} writes no transit to the wrapper; write it under "transit", such as "wrapper: 13 min", counted from the cutter`,
    );
  const wanted = name.trim().toLowerCase();
  const at = whereOf(line, state, wanted, wrapper);
  if (!at) {
    const names = [...new Set([...usual.slice(0, 2), ...line.transit.map(({ to }) => to)])];
    throw new NotOnLine(`${line.name} writes no transit to "${name}"; it can follow bars from ${names.join(', ')}`);
  }
  const toWrapper = { value: wrapper.value - at.range.value, low: wrapper.low - at.range.high, high: wrapper.high - at.range.low };
  if (toWrapper.high < 0) throw new NotOnLine(`The ${name} lies behind the wrapper; a window at the wrapper is expected there`);
  const rate = state.status('line.rate').ok ? state.number('line.rate') : NaN;
  const before = toWrapper.value > 0;
  const waits = before && line.accumulation && rate > 0 ? (60 * line.accumulation.value) / rate : 0;
  return {
    name: wanted,
    done: doneAt(wanted),
    fromCutter: at.range,
    toWrapper: before ? toWrapper : zero,
    waits,
    between: before ? stationsBetween(line, wanted) : [],
    said: at.said,
  };
}

/** s from the cutter to the wrapper. @throws NotOnLine */
export function cutterToWrapper(from: Pick<PlantChain, 'line' | 'bar'>, state: State): Range {
  return placeOf(from, state, 'cutter').toWrapper;
}

function whereOf(
  line: Line,
  state: State,
  wanted: string,
  wrapper: Range,
): { readonly range: Range; readonly said: readonly string[] } | undefined {
  const exact = transitTo(line, state, (to) => to.toLowerCase() === wanted);
  if (exact) return { range: exact, said: [] };
  if (/^(cutter|guillotine)$/.test(wanted)) return { range: zero, said: [] };
  if (/^(slab|laid|lay-?up)$/.test(wanted)) {
    const slab = transitTo(line, state, /slab|lay/i);
    if (slab) return { range: slab, said: [] };
    return { range: zero, said: ['A window at the slab is read on the clock of the cutter: the plant writes no transit to the slab.'] };
  }
  if (wanted === 'wrapper') return { range: wrapper, said: [] };
  const like = wanted === 'enrober' ? transitTo(line, state, /enrob|coat/i) : undefined;
  return like && { range: like, said: [] };
}

function transitTo(line: Line, state: State, match: RegExp | ((to: string) => boolean)): Range | undefined {
  const found = line.transit.find(({ to }) => (typeof match === 'function' ? match(to) : match.test(to)));
  if (!found) return undefined;
  const id = `transit.${found.slug}`;
  const value = state.status(id).ok ? state.number(id) : found.time.value;
  if (value !== found.time.value) return { value, low: value, high: value };
  return { value, low: Math.min(value, found.time.low ?? value), high: Math.max(value, found.time.high ?? value) };
}

/** Stations a bar still passes: those behind the place, up to the wrapper; machines side by side do not stop each other. */
function stationsBetween({ stations }: Line, wanted: string): readonly string[] {
  const index = (match: RegExp) => stations.findIndex(({ name }) => match.test(name));
  const wrapper = index(/wrap/i);
  const cutter = index(/guillotine|cutter/i);
  const first = /^(cutter|guillotine|slab|laid|lay-?up)$/.test(wanted)
    ? cutter + 1
    : /out|exit/.test(wanted)
      ? index(new RegExp(escaped(wanted.split(' ')[0]!), 'i')) + 1
      : Math.max(
          0,
          stations.findIndex(({ name }) => name.toLowerCase().includes(wanted.split(' ')[0]!)),
        );
  const before = cutter >= 0 && first <= cutter;
  return stations
    .slice(first, wrapper < 0 ? undefined : wrapper + 1)
    .filter(({ name, count }) => count === 1 && (!before || name.toLowerCase() !== wanted))
    .map(({ name }) => name);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function doneAt(wanted: string): string {
  if (/wrap|pack/.test(wanted)) return 'packed';
  if (/enrob|coat/.test(wanted)) return 'enrobed';
  if (/^(slab|laid|lay)/.test(wanted)) return 'laid';
  if (/cut|guillotine/.test(wanted)) return 'cut';
  return `at the ${wanted}`;
}
