import { marginOf, type State } from '@barwright/chain';
import { inWords, type PlantChain } from '@barwright/line';
import type { Consequence, Units } from './protocol.js';
import { limitWords } from './words.js';

/** Numbers a technologist asks for first; the others count for less unless they have a window. */
export const askedFirst =
  /^bar\.(mass|cost|height|giveaway)$|^step\.|\.(water_activity|cook_indicated)$|^(layer|coat)[^.]*\.?[^.]*\.thickness$|^line\.(rate|max_rate)$|^rework\.share$|^label\.(energy_kcal|sugars|fat)_per_bar$|^order\.duration$|\.viscosity/;
/** What lies between the lines, or says the same twice. */
export const seldomAsked =
  /\.stage\.|^need\.|^label\.(?!energy_kcal_per_bar|sugars_per_bar|fat_per_bar)|composition$|_with_sorption$|moisture_per_kelvin$|cook_(heat|duty|fuel|evaporation)$|steam_(flow|batch)$|boil_rate$|conductance_needed$|moisture_sd$|foam_(density|ratio)$|gas_held$|density_per_\w+$|overrun$|viscosity_stored$|stretch$|_supersaturation$|sucrose_crystal$|glass_transition$|refractometer$|equilibrium_moisture$|charge_(dry|sum)$|\.share$|\.gross$|_first_estimate$|^variance\.|_flow$|^flow\.|^order\.(?!duration)|^bar\.(centre|cost_ingredients|cost_with|rework)|thickness_(side|bottom|top)$|\.rate$|\.utilisation$|cook_(solids|per_kpa|temperature)$|gas_free|specific_heat|^pack\.|\.(cook_temperature|whip_pressure)_(min|max)$/;

/**
 * What a change does, largest first: by how far a number moves over its window, or over itself where it has none.
 * @param count - how many to say
 */
export function consequencesOf(
  from: PlantChain,
  truth: State,
  now: State,
  bent: ReadonlySet<string>,
  units: Units,
  count = 6,
): readonly Consequence[] {
  const found: { readonly score: number; readonly line: Consequence }[] = [];
  for (const quantity of from.chain.quantities) {
    const { id, window } = quantity;
    if (bent.has(id)) continue;
    const [before, after] = [truth.value(id), now.value(id)];
    if (typeof before !== 'number' || typeof after !== 'number' || before === after) continue;
    const broke = window !== undefined && marginOf(after, window).margin < -1e-9;
    const wasBroken = window !== undefined && marginOf(before, window).margin < -1e-9;
    if (seldomAsked.test(id) && broke === wasBroken) continue;
    const [was, is] = [inWords(quantity, before, units), inWords(quantity, after, units)];
    if (was === is && broke === wasBroken) continue;
    const { low, high } = window ?? {};
    const span = low !== undefined && high !== undefined ? high - low : Math.abs(before) || 1;
    let score = Math.abs(after - before) / span;
    if (Number.isNaN(score)) score = 10;
    if (askedFirst.test(id)) score *= 4;
    if (broke !== wasBroken) score += 1000;
    found.push({
      score,
      line: {
        id,
        meaning: quantity.meaning,
        truth: was,
        now: Number.isNaN(after) ? 'cannot tell' : is,
        rises: after > before,
        ...(broke && !wasBroken ? { breaks: limitWords(quantity, units) } : {}),
        ...(!broke && wasBroken && !Number.isNaN(after) ? { mends: true as const } : {}),
      },
    });
  }
  return found
    .sort((a, b) => b.score - a.score)
    .slice(0, count)
    .map(({ line }) => line);
}
