import { requireRange } from '../errors.js';
import { emulsifierLimits } from './data/rheology.js';
import { flowRatio, flowShift, usualEffects, type Factor, type FlowEffects, type FlowRecipe } from './flow-shift.js';
import type { Pascal, PascalSecond } from '../units.js';

/** What is measured, what is wanted, and what may be added. Masses as kg per kg of the present chocolate. */
export interface CorrectionTask {
  readonly recipe: FlowRecipe;
  readonly yieldValue: Pascal;
  readonly plasticViscosity: PascalSecond;
  readonly targetYield: Pascal;
  readonly targetPlastic: PascalSecond;
  /** Relative half-widths within which the targets count as met. */
  readonly yieldTolerance: number;
  readonly plasticTolerance: number;
  /** Prices per kg, in one currency. What is added displaces chocolate at its own price. */
  readonly price: { readonly cocoaButter: number; readonly lecithin: number; readonly pgpr: number; readonly chocolate: number };
  readonly most: { readonly cocoaButter: number; readonly lecithin: number; readonly pgpr: number };
}

export interface Correction {
  readonly cocoaButter: number;
  readonly lecithin: number;
  readonly pgpr: number;
  readonly yieldValue: Pascal;
  readonly plasticViscosity: PascalSecond;
  readonly yieldFactor: Factor;
  readonly plasticFactor: Factor;
  /** Price of what is added, per kg of present chocolate. */
  readonly bought: number;
  /** Extra cost per kg of corrected chocolate: what is added less the chocolate it displaces. */
  readonly cost: number;
  readonly meets: boolean;
  /** Logarithmic distance outside the wanted band; 0 where both are met. */
  readonly miss: number;
}

/** E476 as Regulation (EC) 1333/2008 allows it; from memory. */
export const pgprLimit = emulsifierLimits.values.pgpr;

/** Recipe after additions to one kg. */
export function withAdditions(r: FlowRecipe, cocoaButter: number, lecithin: number, pgpr: number): FlowRecipe {
  const total = 1 + cocoaButter + lecithin + pgpr;
  return {
    fat: (r.fat + cocoaButter + lecithin + pgpr) / total,
    lecithin: (r.lecithin + lecithin) / total,
    pgpr: (r.pgpr + pgpr) / total,
    moisture: r.moisture / total,
    d90: r.d90,
  };
}

/**
 * The cheapest additions of cocoa butter, lecithin and E476 that bring yield value and plastic viscosity to target: all steps of a
 * grid are tried (0.1 % butter, 0.02 % lecithin, 0.01 % E476). Nothing is added where nothing is needed, however cheap it were. Where no combination meets both, the nearest.
 * Nothing can be taken out: a chocolate that is too thin cannot be corrected this way.
 */
export function cheapestCorrection(task: CorrectionTask, effects: Partial<FlowEffects> = {}): Correction {
  requireRange('target_yield_pa', task.targetYield, [1e-6, 1e6], 'physics');
  requireRange('target_plastic_pa_s', task.targetPlastic, [1e-6, 1e6], 'physics');
  requireRange('yield_value_pa', task.yieldValue, [1e-6, 1e6], 'physics');
  requireRange('plastic_viscosity_pa_s', task.plasticViscosity, [1e-6, 1e6], 'physics');
  const roomForPgpr = Math.max(0, Math.min(task.most.pgpr, pgprLimit) - task.recipe.pgpr);
  const roomForLecithin = Math.max(0, task.most.lecithin - task.recipe.lecithin);
  // The mean effects alone steer the search; their ranges are reported for the result.
  const steer = { ...usualEffects, ...effects };
  const nothing = judge(task, 0, 0, 0, 1, 1);
  if (nothing.meets) return { ...nothing, yieldFactor: unchanged, plasticFactor: unchanged };
  let nearest: Tried = nothing;
  const meeting: Tried[] = [];
  for (const butter of steps(task.most.cocoaButter, 0.001)) {
    for (const lecithin of steps(roomForLecithin, 0.0002)) {
      for (const pgpr of steps(roomForPgpr, 0.0001)) {
        const ratio = flowRatio(task.recipe, withAdditions(task.recipe, butter, lecithin, pgpr), steer);
        const tried = judge(task, butter, lecithin, pgpr, ratio.yieldValue, ratio.plastic);
        if (tried.meets) meeting.push(tried);
        else if (tried.miss < nearest.miss - 1e-9) nearest = tried;
      }
    }
  }
  const found = meeting.length > 0 ? choose(meeting) : nearest;
  const shift = flowShift(task.recipe, withAdditions(task.recipe, found.cocoaButter, found.lecithin, found.pgpr), effects);
  return { ...found, yieldFactor: shift.yieldValue, plasticFactor: shift.plastic };
}

const unchanged: Factor = { value: 1, low: 1, high: 1 };

type Tried = Omit<Correction, 'yieldFactor' | 'plasticFactor'>;

function steps(most: number, step: number): number[] {
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** The cheapest to buy; among those within a thousandth per kg of it, the fewest kinds, then the least. */
function choose(meeting: readonly Tried[]): Tried {
  const least = Math.min(...meeting.map((t) => t.bought));
  const kinds = (t: Tried) => [t.cocoaButter, t.lecithin, t.pgpr].filter((x) => x > 0).length;
  return meeting
    .filter((t) => t.bought <= least + 0.001)
    .reduce((a, b) => (kinds(b) < kinds(a) || (kinds(b) === kinds(a) && b.bought < a.bought) ? b : a));
}

function judge(task: CorrectionTask, butter: number, lecithin: number, pgpr: number, onYield: number, onPlastic: number): Tried {
  const yieldValue = task.yieldValue * onYield;
  const plasticViscosity = task.plasticViscosity * onPlastic;
  const yieldMiss = Math.max(0, Math.abs(Math.log(yieldValue / task.targetYield)) - Math.log1p(task.yieldTolerance));
  const plasticMiss = Math.max(0, Math.abs(Math.log(plasticViscosity / task.targetPlastic)) - Math.log1p(task.plasticTolerance));
  const added = butter + lecithin + pgpr;
  const bought = butter * task.price.cocoaButter + lecithin * task.price.lecithin + pgpr * task.price.pgpr;
  return {
    cocoaButter: butter,
    lecithin,
    pgpr,
    yieldValue,
    plasticViscosity,
    bought,
    cost: (bought - added * task.price.chocolate) / (1 + added),
    meets: yieldMiss === 0 && plasticMiss === 0,
    miss: yieldMiss + plasticMiss,
  };
}
