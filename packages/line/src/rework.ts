import type { Line, Plant } from '@barwright/plant';
import { percent, type Builder } from '@barwright/bar';

/** Edge trim that goes back: how much, how it sits under the cap, what it saves. */
export function reworkSteps(b: Builder, plant: Plant, line: Line): void {
  const into = line.trimGoesTo ? plant.components.get(line.trimGoesTo) : undefined;
  if (!into) return;
  b.step({
    title: 'Edge trim of a bar',
    inputs: ['bar.centre_mass', 'line.trim_share'],
    outputs: [{ id: 'rework.trim_per_bar', meaning: 'edge trim that falls for a bar', unit: 'kg', show: 'g', decimals: 3 }],
    equation: 'slab − centre = centre · share / (1 − share)',
    run: (centre: number, share: number) => (centre * share) / (1 - share),
  });
  b.step({
    title: `Trim as a share of ${into.name}`,
    inputs: ['rework.trim_per_bar', `need.${into.slug}`],
    outputs: [
      {
        id: 'rework.share',
        meaning: `edge trim used again, share of the ${into.name} made`,
        ...percent,
        ...(into.reworkCap
          ? { window: { high: into.reworkCap.high ?? into.reworkCap.value, reason: 'cap for own trim', source: into.reworkCap.place } }
          : {}),
      },
    ],
    equation: 'trim per bar / need per bar',
    run: (trim: number, need: number) => trim / need,
  });
  if (!b.has(`${into.slug}.cost`)) return;
  const cents = { unit: plant.currency, show: 'ct', decimals: 2 };
  b.step({
    title: 'Credit for trim used again',
    inputs: ['rework.trim_per_bar', `${into.slug}.cost`],
    outputs: [{ id: 'bar.rework_credit', meaning: `worth of the edge trim used again in ${into.name}`, ...cents }],
    equation: `trim · cost of ${into.name}`,
    run: (m: number, cost: number) => m * cost,
  });
  b.step({
    title: 'Cost of a bar with credit',
    inputs: ['bar.cost', 'bar.rework_credit'],
    outputs: [{ id: 'bar.cost_with_credit', meaning: 'cost of a bar, with credit for trim used again', ...cents }],
    equation: 'cost − credit',
    run: (cost: number, credit: number) => cost - credit,
  });
}
