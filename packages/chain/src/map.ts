import type { Chain } from './build.js';
import { OK, type Engine } from './engine.js';
import { ChainError } from './errors.js';
import { uses } from './explain.js';
import type { Selected } from './names.js';
import { numberAt, pokeNumber } from './probe.js';
import { wantedOutputs } from './sampling/inputs.js';
import { rangeOf, scalar } from './solve.js';
import { engineOf, type State } from './state.js';
import type { Window } from './types.js';
import { marginOf, scaleOf, windowedQuantities } from './windows.js';

/** One side of a map: a knob, and where to look; without a range the window of the knob. */
export interface MapAxis {
  readonly id: string;
  readonly low?: number;
  readonly high?: number;
  /** Points along the side, both ends included; default 25. */
  readonly steps?: number;
}

export interface MapRequest {
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly outputs: readonly string[];
  /** Limits to hold beside the windows of the chain, or in place of a window, by id. */
  readonly within?: Readonly<Record<string, Pick<Window, 'low' | 'high'>>>;
}

/** A window, seen over the whole map. */
export interface MappedWindow {
  readonly id: string;
  /** At each cell the distance to the nearer end over the width of the window (or over its end); negative outside, NaN without a value. */
  readonly margin: Float64Array;
  /** The nearer end: 0 low, 1 high. */
  readonly side: Uint8Array;
}

/** Outputs and windows over two knobs. The cell at column i and row j has the place `j * x.values.length + i`. */
export interface WindowMap {
  readonly x: { readonly id: string; readonly values: Float64Array };
  readonly y: { readonly id: string; readonly values: Float64Array };
  /** By name; NaN where there is no value. */
  readonly outputs: Readonly<Record<string, Float64Array>>;
  /** The windows that either knob can break, those of the knobs among them. */
  readonly windows: readonly MappedWindow[];
  /** 1 where all these windows hold, 0 where one is broken, 2 where none is known to be broken but one cannot be told. */
  readonly holds: Uint8Array;
  /** Place in `windows` of the one with the least margin: the limit that binds; -1 where there is none. */
  readonly binding: Int16Array;
  /** Where the knobs stand now, with the outputs; NaN for a value that is missing. */
  readonly today: { readonly x: number; readonly y: number; readonly outputs: Readonly<Record<string, number>> };
}

/**
 * Windows that are broken now whatever the two knobs do are not on the map; `brokenWindows` of the state names them.
 * @throws ChainError for unknown names, NO_RANGE, BAD_REQUEST
 */
export function map(chain: Chain, state: State, { x, y, outputs, within = {} }: MapRequest): WindowMap {
  const engine = engineOf(state).clone();
  const [across, up] = [axisOf(chain, state, x), axisOf(chain, state, y)];
  if (across.knob.name === up.knob.name) throw new ChainError('BAD_REQUEST', `Both sides of the map are ${x.id}; name two knobs`, [x.id]);
  const wanted = wantedOutputs(chain, state, outputs);
  const today = {
    x: numberAt(engine, across.knob),
    y: numberAt(engine, up.knob),
    outputs: Object.fromEntries(wanted.map((output) => [output.name, numberAt(engine, output)])),
  };
  const moved = new Set([across.knob.id, up.knob.id, ...uses(chain, across.knob.id), ...uses(chain, up.knob.id)]);
  const asked = Object.entries(within).map(([name, { low, high }]) => {
    const { id, index } = scalar(chain, state, name);
    const window: Window = { reason: 'asked for', ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
    if (low === undefined && high === undefined)
      throw new ChainError('BAD_REQUEST', `${name} is to be held within nothing; give an end`, [id]);
    return { id, index, window };
  });
  const replaced = new Set(asked.map(({ id }) => id));
  const watched = [...windowedQuantities(chain).filter(({ id }) => moved.has(id) && !replaced.has(id)), ...asked];
  const cells = across.values.length * up.values.length;
  const grids = wanted.map(() => new Float64Array(cells));
  const windows = watched.map(({ id }) => ({ id, margin: new Float64Array(cells), side: new Uint8Array(cells) }));
  const holds = new Uint8Array(cells);
  const binding = new Int16Array(cells);
  let cell = 0;
  for (const row of up.values) {
    pokeNumber(engine, up.knob, row);
    for (const column of across.values) {
      pokeNumber(engine, across.knob, column);
      engine.settle();
      wanted.forEach((output, o) => (grids[o]![cell] = numberAt(engine, output)));
      judge(engine, watched, windows, holds, binding, cell++);
    }
  }
  return {
    x: { id: across.knob.name, values: across.values },
    y: { id: up.knob.name, values: up.values },
    outputs: Object.fromEntries(wanted.map(({ name }, o) => [name, grids[o]!])),
    windows,
    holds,
    binding,
    today,
  };
}

function judge(
  engine: Engine,
  watched: ReturnType<typeof windowedQuantities>,
  windows: readonly MappedWindow[],
  holds: Uint8Array,
  binding: Int16Array,
  cell: number,
): void {
  let least = Infinity;
  let unknown = false;
  binding[cell] = -1;
  watched.forEach(({ index, window }, w) => {
    const value = engine.values[index]!;
    const { margin, side } = engine.status[index] === OK ? marginOf(value, window) : { margin: NaN, side: 'low' };
    const relative = margin / scaleOf(window, typeof value === 'number' ? value : 0);
    windows[w]!.margin[cell] = relative;
    windows[w]!.side[cell] = side === 'low' ? 0 : 1;
    if (Number.isNaN(relative)) unknown = true;
    else if (relative < least) {
      least = relative;
      binding[cell] = w;
    }
  });
  holds[cell] = least < 0 ? 0 : unknown ? 2 : 1;
}

function axisOf(chain: Chain, state: State, axis: MapAxis): { knob: Selected; values: Float64Array } {
  const knob = scalar(chain, state, axis.id);
  const { low, high } = rangeOf(chain, knob, axis);
  const steps = axis.steps ?? 25;
  if (!Number.isInteger(steps) || steps < 2 || steps > 1000) {
    throw new ChainError('BAD_REQUEST', `${axis.id} is to have ${steps} points, but a whole number from 2 to 1000 is expected`, [knob.id]);
  }
  return {
    knob,
    values: Float64Array.from({ length: steps }, (_, i) => (i === steps - 1 ? high : low + ((high - low) * i) / (steps - 1))),
  };
}
