import type { State } from '@barwright/chain';
import type { PlantChain } from '@barwright/line';
import type { PlanTimes } from './protocol.js';

/** The hours of the order: start-up, first slab, and the end at the planned speed. Nothing where no start or duration is known. */
export function planTimes({ plan, plant, chain }: PlantChain, state: State): PlanTimes | undefined {
  const written = /^(\d{1,2}):(\d{2})$/.exec(plan?.start ?? '');
  if (!plan || !written || !chain.index.has('order.duration') || !state.status('order.duration').ok) return undefined;
  const startUp = 60 * Number(written[1]) + Number(written[2]);
  const firstSlab = startUp + (plant.startUp?.value ?? 0) / 60;
  return { ...(plan.date ? { date: plan.date } : {}), startUp, firstSlab, end: firstSlab + state.number('order.duration') / 60 };
}
