import type { Bar, Layer, Plant } from '@barwright/plant';
import { activityEstimate } from '@barwright/science';
import { fraction, type Builder } from './builder.js';

/** Layers that touch, from below: each layer with the next one that has not sunk into another. */
export function touchingLayers(bar: Bar): readonly (readonly [Layer, Layer])[] {
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined);
  return hosts.slice(1).map((layer, i) => [hosts[i]!, layer] as const);
}

/** Both activities come from one model, so most of its error cancels in their difference. Assumed, not measured. */
const sharedError = 0.8;

function halfWidth(aw: number): number {
  const { low, high } = activityEstimate(aw, 'mixture');
  return (high! - low!) / 2;
}

/** Difference of water activity between layers that touch: it drives water from one to the other. */
export function stepSteps(b: Builder, plant: Plant, bar: Bar): void {
  for (const [below, above] of touchingLayers(bar)) {
    const [lower, upper] = [below, above].map((layer) => `${plant.components.get(layer.component)!.slug}.water_activity`) as [
      string,
      string,
    ];
    if (!b.has(lower) || !b.has(upper)) continue;
    const limit = bar.waterActivityStep;
    b.step({
      title: `Step in water activity, ${above.name} to ${below.name}`,
      inputs: [upper, lower],
      outputs: [
        {
          id: `step.${above.slug}_${below.slug}`,
          meaning: `step in water activity from ${above.name} to ${below.name}`,
          ...fraction,
          ...(limit ? { window: { high: limit.high ?? limit.value, reason: 'largest step the plant permits', source: limit.place } } : {}),
        },
      ],
      equation: 'step = |aw above − aw below|',
      run: (a: number, z: number) => Math.abs(a - z),
      uncertainty: ([a, z]) => {
        const [above, below] = [a, z].map((aw) => halfWidth(aw as number)) as [number, number];
        return [Math.sqrt(above ** 2 + below ** 2 - 2 * sharedError * above * below)];
      },
    });
  }
}
