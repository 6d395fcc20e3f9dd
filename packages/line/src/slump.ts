import type { State } from '@barwright/chain';
import type { Layer } from '@barwright/plant';
import { caramelViscosity, slump, suspensionFactor, type Composition, type SlumpShape } from '@barwright/science';
import type { PlantChain } from './plant-chain.js';

/** Share of a layer's volume at which pieces touch and carry it: that of the suspension model, less a margin. */
const packed = 0.7;

/** How a layer would sag if nothing held it but its own viscosity. */
export interface LayerSlump {
  readonly layer: string;
  /** Pa·s of the layer with what has sunk into it, at `temperature` °C. */
  readonly viscosity: number;
  readonly temperature: number;
  /** s */
  readonly time: number;
  readonly start: { readonly height: number; readonly width: number };
  readonly shape: SlumpShape;
  /** How far the foot has run out on each side, m. */
  readonly runOut: number;
  /** s until the foot has run out one millimetre on each side. */
  readonly toOneMillimetre: number;
}

/**
 * Cold flow of a caramel layer with the nuts in it: a free-standing strip under its own weight, Newtonian, without coat, grain or
 * protein network. An upper bound, made to compare one batch with another.
 * @param days - in the store
 * @returns undefined where the layer does not flow as a caramel, or holds so many pieces that they stand on each other
 */
export function layerSlump(from: PlantChain, state: State, layer: Layer, days = 14, temperature = 20): LayerSlump | undefined {
  const component = from.plant.components.get(layer.component)!;
  const c = component.slug;
  if (!from.chain.index.has(`${c}.viscosity_factor`)) return undefined;
  const guests = from.bar.layers.filter((other) => other.sunkInto === layer.name);
  const height = state.number(`layer.${layer.slug}.thickness`);
  const width = state.number('bar.cut_width');
  const own = state.number(`layer.${layer.slug}.mass`);
  let mass = own;
  let guestVolume = 0;
  for (const guest of guests) {
    const heavy = state.number(`layer.${guest.slug}.mass`);
    mass += heavy;
    guestVolume += heavy / state.number(`${from.plant.components.get(guest.component)!.slug}.density`);
  }
  const volume = height * state.number('bar.area');
  const syrup = caramelViscosity(state.value(`${c}.composition`) as Composition, temperature, state.number(`${c}.viscosity_factor`));
  if (guestVolume / volume >= packed) return undefined;
  const viscosity = syrup * suspensionFactor(guestVolume / volume);
  const slab = { height, width, density: mass / volume, viscosity };
  const time = days * 86_400;
  const shape = slump(slab, time);
  return {
    layer: layer.name,
    viscosity,
    temperature,
    time,
    start: { height, width },
    shape,
    runOut: shape.front - width / 2,
    toOneMillimetre: timeToRunOut(slab, 0.001, time),
  };
}

/** The foot runs out ever more slowly, so the time is looked for on its logarithm. */
function timeToRunOut(slab: Parameters<typeof slump>[0], distance: number, guess: number): number {
  const out = (time: number) => slump(slab, time).front - slab.width / 2 - distance;
  let low = guess;
  while (out(low) > 0 && low > 1) low /= 8;
  let high = Math.max(low * 8, guess);
  for (let i = 0; out(high) < 0; i++, high *= 8) if (i > 20) return Infinity;
  for (let i = 0; i < 24; i++) {
    const middle = Math.sqrt(low * high);
    if (out(middle) < 0) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
