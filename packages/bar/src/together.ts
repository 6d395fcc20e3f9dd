import type { Value } from '@barwright/chain';
import type { Bar, Plant } from '@barwright/plant';
import { sharedActivity, type Composition } from '@barwright/science';
import { activityAt, crystalId } from './activity.js';
import { fraction, percent, type Builder } from './builder.js';

/** Where the layers inside the coat come to rest: one water activity, and the moisture of each there. */
export function togetherSteps(b: Builder, plant: Plant, bar: Bar): void {
  const layers = bar.layers
    .map((layer) => ({ layer, component: plant.components.get(layer.component)! }))
    .filter(({ component }) => b.has(`${component.slug}.water_activity`) && b.has(`${component.slug}.composition`));
  if (layers.length < 2) return;
  const ids = layers.flatMap(({ layer, component }) => [
    `layer.${layer.slug}.mass`,
    `${component.slug}.composition`,
    `${component.slug}.water_activity`,
  ]);
  // Where the activity with sorption is computed for comparison, it is the one that the isotherm is shifted from.
  const sorbed = layers.flatMap(({ component }, i) => {
    const id = `${component.slug}.water_activity_with_sorption`;
    return b.has(id) ? [{ i, id }] : [];
  });
  const seeded = layers.flatMap(({ component }, i) => (b.has(crystalId(component)) ? [{ i, id: crystalId(component) }] : []));
  const names = layers.map(({ layer }) => layer.name);
  b.step({
    title: 'Where the layers come to rest',
    inputs: [...ids, ...seeded.map(({ id }) => id), ...sorbed.map(({ id }) => id)],
    outputs: [
      { id: 'bar.equilibrium_activity', meaning: `water activity at which ${names.join(', ')} come to rest`, ...fraction },
      ...layers.map(({ layer }) => ({
        id: `layer.${layer.slug}.equilibrium_moisture`,
        meaning: `moisture of ${layer.name} when the layers have come to rest, wet basis`,
        ...percent,
        decimals: 1,
      })),
    ],
    equation:
      'one aw at which the layers hold the water they brought: Σ m · w(aw) = Σ m · w now; the coat and the wrapper let none through',
    sources: ['zsr', 'gab'],
    note: 'Says where, not when: weeks in a bar. Half-widths are our estimate.',
    run: (...values: Value[]) => {
      const crystal = new Map(seeded.map(({ i }, k) => [i, values[ids.length + k] as number]));
      const computed = new Map(sorbed.map(({ i }, k) => [i, values[ids.length + seeded.length + k] as number]));
      const { activity, moisture } = sharedActivity(
        layers.map((_, i) => ({
          mass: values[3 * i] as number,
          composition: values[3 * i + 1] as Composition,
          activity: values[3 * i + 2] as number,
          crystallineSucrose: crystal.get(i) ?? 0,
          ...(computed.has(i) ? { computed: computed.get(i)! } : {}),
        })),
        activityAt,
      );
      return [activity, ...moisture];
    },
    uncertainty: () => [0.04, ...layers.map(() => 0.006)],
  });
}
