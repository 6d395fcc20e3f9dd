import type { State } from '@barwright/chain';
import type { Layer } from '@barwright/plant';
import { foamConductivity, thermalConductivity, type CentreLayer, type Composition } from '@barwright/science';
import type { PlantChain } from './plant-chain.js';

/** A layer with what has sunk into it: masses add, heat by mass, conduction by what it is made of. */
export function layerThermal(from: PlantChain, state: State, host: Layer): CentreLayer {
  const together = [host, ...from.bar.layers.filter((layer) => layer.sunkInto === host.name)].map((layer) => {
    const slug = from.plant.components.get(layer.component)!.slug;
    const mass = state.number(`layer.${layer.slug}.mass`);
    // A density above the gas-free one gives air below 0: no air then.
    const air = from.chain.index.has(`${slug}.air`) ? Math.max(0, state.number(`${slug}.air`)) : 0;
    const solid = thermalConductivity(state.value(`${slug}.composition`) as Composition, 20);
    return { mass, heat: state.number(`${slug}.specific_heat`), conductivity: foamConductivity(solid, air) };
  });
  const mass = together.reduce((sum, part) => sum + part.mass, 0);
  const mean = (of: (part: (typeof together)[number]) => number) => together.reduce((sum, part) => sum + part.mass * of(part), 0) / mass;
  const height = state.number(`layer.${host.slug}.thickness`);
  return {
    height,
    density: mass / (state.number('bar.area') * height),
    specificHeat: mean((part) => part.heat),
    conductivity: mean((part) => part.conductivity),
  };
}
