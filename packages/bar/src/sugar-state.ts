import type { Component } from '@barwright/plant';
import { at, glassTransition, grainAtEquilibrium, solutionOf, supersaturation, type Composition } from '@barwright/science';
import { celsius, percent, type Builder, type Look } from './builder.js';
import { crystalId } from './activity.js';

/** Temperature at which grain is judged: a store, °C. */
const storedAt = 20;
const ratio: Look = { unit: '1', decimals: 2 };

/** Glass transition of the syrup phase and how far sucrose and lactose stand above their solubility in it. */
export function sugarStateSteps(b: Builder, component: Component): void {
  if (!component.stages.some((stage) => stage.cook)) return;
  const c = component.slug;
  const crystals = b.has(crystalId(component)) ? [crystalId(component)] : [];
  b.step({
    title: 'Glass transition of the syrup phase',
    inputs: [`${c}.composition`, ...crystals],
    outputs: [
      { id: `${c}.glass_transition`, meaning: `glass transition of the syrup phase of ${component.name}`, ...celsius, decimals: 0 },
    ],
    equation: 'Tg = Σ w·Tg/k / Σ w/k over water and the dissolved sugars; fat, protein and crystals lie beside it',
    sources: ['gordon-taylor-table-2016'],
    run: (x: Composition, crystal = 0) => glassTransition(x, 'gordon_taylor', { crystallineSucrose: crystal }),
    uncertainty: () => [8],
  });
  b.step({
    title: 'Sucrose beside the other solids, as it stands in the store',
    inputs: [`${c}.composition`],
    outputs: [
      {
        id: `${c}.sucrose_supersaturation`,
        meaning: `sucrose per water in ${component.name} over what stays dissolved at ${storedAt} °C`,
        ...ratio,
      },
      {
        id: `${c}.sucrose_crystal`,
        meaning: `sucrose that ${component.name} can throw as grain at ${storedAt} °C`,
        ...percent,
        decimals: 1,
      },
    ],
    equation: 'supersaturation = (sucrose / water) / (solubility alone · effect of the other solids); grain = what lies above it',
    sources: ['wiklund-vavrinecz'],
    note: 'Above 1 it can grain; whether it does, and how soon, is a matter of seed, stirring and viscosity. Crystals in the recipe count as sucrose here. Half-widths are our estimate.',
    run: (x: Composition) => {
      const { supersaturation, crystal } = grainAtEquilibrium(solutionOf(x), 'sucrose', storedAt);
      return [supersaturation, crystal];
    },
    uncertainty: (_, [s, x]) => [0.2 * (s as number), 0.1 * (x as number)],
  });
  b.step({
    title: 'Lactose beside the other solids, as it stands in the store',
    inputs: [`${c}.composition`],
    outputs: [
      {
        id: `${c}.lactose_supersaturation`,
        meaning: `lactose per water in ${component.name} over what stays dissolved at ${storedAt} °C`,
        ...ratio,
      },
    ],
    equation: 'supersaturation = (lactose / water) / (solubility alone · effect of the other solids)',
    sources: ['wiklund-vavrinecz'],
    note: 'Lactose grains as a fine sandiness, slowly and with the same conditions as sucrose.',
    run: (x: Composition) => (x[at.lactose]! > 0 ? supersaturation(solutionOf(x), 'lactose', storedAt) : 0),
    uncertainty: (_, [s]) => [0.3 * (s as number)],
  });
}
