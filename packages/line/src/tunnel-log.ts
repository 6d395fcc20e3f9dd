import type { State } from '@barwright/chain';
import { coolBar, studentQuantile } from '@barwright/science';
import { tunnelTask } from './tunnel.js';
import type { PlantChain } from './plant-chain.js';
import { BadTable, type TunnelTable } from './tables/index.js';

/** What a tunnel log asks of the model: the offset that brings the computed exit to the measured one. */
export interface TunnelFit {
  /** Readings used, and left out because marks of the belt said that temper or setting was off. */
  readonly readings: number;
  readonly leftOut: number;
  /** Means over the readings used, °C. */
  readonly measured: number;
  readonly computed: number;
  /** Offset to enter, K, with 95 % limits of its mean. */
  readonly offset: number;
  readonly low: number;
  readonly high: number;
  /** Standard deviation of one reading about it, K. */
  readonly sd: number;
  readonly said: readonly string[];
}

/** Marks of 100 bars above which a reading says that the coat did not set: not a reading of a good tunnel. Common practice, no source. */
const mostMarks = 4;

/**
 * Offset of the tunnel model from a log of zones and exit temperatures, at the speed and bar of the state.
 * @throws BadTable where the log has no exit temperature or fewer than three usable readings; NoTunnel
 */
export function tunnelOffset(from: PlantChain, state: State, table: TunnelTable, name: string): TunnelFit {
  const { exit, zones, marks } = table;
  if (!exit) throw new BadTable(`${name} has no exit temperature of bars; a column such as "bar exit (°C)" is expected`);
  const task = tunnelTask(from, state);
  const said = [...table.said];
  const usable = zones.length === task.zones.length;
  if (!usable)
    said.push(`${name} has ${zones.length} zones, the line ${task.zones.length}; the set points of the line are used for each reading.`);
  let leftOut = 0;
  const pairs: { measured: number; computed: number }[] = [];
  for (let i = 0; i < exit.length; i++) {
    const air = usable ? zones.map((zone) => zone[i]!) : task.zones.map((zone) => zone.air);
    if (!Number.isFinite(exit[i]) || air.some((t) => !Number.isFinite(t))) continue;
    if (marks && marks[i]! > mostMarks) {
      leftOut++;
      continue;
    }
    const run = coolBar({ ...task, zones: task.zones.map((zone, k) => ({ ...zone, air: air[k]!, belt: air[k]! })) });
    pairs.push({ measured: exit[i]!, computed: run.exit.topSurface });
  }
  if (pairs.length < 3)
    throw new BadTable(`${name} has ${pairs.length} usable readings; at least 3 with zones and exit temperature are needed`);
  const n = pairs.length;
  const mean = (of: (pair: (typeof pairs)[number]) => number) => pairs.reduce((sum, pair) => sum + of(pair), 0) / n;
  const offset = mean((pair) => pair.measured - pair.computed);
  const sd = Math.sqrt(pairs.reduce((sum, pair) => sum + (pair.measured - pair.computed - offset) ** 2, 0) / (n - 1));
  const half = (studentQuantile(0.975, n - 1) * sd) / Math.sqrt(n);
  return {
    readings: n,
    leftOut,
    measured: mean((pair) => pair.measured),
    computed: mean((pair) => pair.computed),
    offset,
    low: offset - half,
    high: offset + half,
    sd,
    said,
  };
}
