import { Builder, barSteps, type Drive } from '@barwright/bar';
import { buildChain, type Chain } from '@barwright/chain';
import type { Bar, Line, Plan, Plant } from '@barwright/plant';
import { checkSteps } from './checks.js';
import { cookerSteps } from './cooker-steps.js';
import { demandSteps } from './demand.js';
import { enroberSteps } from './enrober.js';
import { orderSteps } from './order.js';
import { rateSteps } from './rate.js';
import { reworkSteps } from './rework.js';
import { roasterSteps } from './roast.js';
import { slabRoots } from './slab-roots.js';
import { stationSteps } from './stations.js';
import { tempererSteps } from './temper.js';
import { tunnelSteps } from './tunnel-roots.js';

/** One bar on its line with its order, as a chain; line and order are left out where the plant has none. */
export interface PlantChain {
  readonly plant: Plant;
  readonly bar: Bar;
  readonly line: Line | undefined;
  readonly plan: Plan | undefined;
  readonly chain: Chain;
}

/** The bar asked for is not in the plant. */
export class UnknownBar extends RangeError {
  readonly code = 'UNKNOWN_BAR';
}

/**
 * Builds the chain of one bar.
 * @param barName - name as the plant writes it; the bar of the first plan, else the first bar, where nothing is said
 * @throws UnknownBar with the names there are
 */
export function plantChain(plant: Plant, barName?: string, drive: Drive = {}): PlantChain {
  const bar = findBar(plant, barName);
  const plan = plant.plans.find((other) => other.bar === bar.name);
  const line = plant.lines.get(bar.line ?? plan?.line ?? '');
  const b = new Builder();
  barSteps(b, plant, bar, drive);
  if (line) {
    rateSteps(b, line);
    const materials = demandSteps(b, plant, bar);
    stationSteps(b, plant, bar, line);
    reworkSteps(b, plant, line);
    roasterSteps(b, plant, line);
    tempererSteps(b, plant, bar, line);
    enroberSteps(b, plant, bar, line);
    slabRoots(b, plant, bar, line);
    tunnelSteps(b, plant, bar, line);
    if (plan) orderSteps(b, plant, bar, plan, materials);
  }
  cookerSteps(b, plant, bar);
  checkSteps(b, plant);
  return { plant, bar, line, plan, chain: buildChain(b.roots, b.steps) };
}

export function findBar(plant: Plant, name?: string): Bar {
  const bars = [...plant.bars.values()];
  if (name === undefined) {
    const first = plant.plans[0] ? plant.bars.get(plant.plans[0].bar) : undefined;
    return first ?? bars[0]!;
  }
  const wanted = name.toLowerCase();
  const found = bars.find((bar) => bar.name.toLowerCase() === wanted || bar.slug === wanted);
  if (!found) throw new UnknownBar(`${plant.name} has no bar "${name}"; it has ${bars.map((bar) => bar.name).join(', ')}`);
  return found;
}
