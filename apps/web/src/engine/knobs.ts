import { rootOf, uses, type Chain } from '@barwright/chain';

/**
 * Which root moves when a person pulls a number. A root moves itself; of a computed number it is the setting that a plant
 * would turn for it: the dose of a layer for its thickness, the moisture of a cook for its temperature.
 */
export class Knobs {
  private readonly reach = new Map<string, ReadonlySet<string>>();

  constructor(private readonly chain: Chain) {}

  /** @returns undefined where pulling makes no sense */
  of(id: string): string | undefined {
    const root = rootOf(this.chain, id);
    if (root) return typeof root.value === 'number' && !fixed.test(id) ? id : undefined;
    return this.candidates(id).find((candidate) => this.moves(candidate, id));
  }

  /** Whether the root bears upon the quantity. */
  moves(root: string, id: string): boolean {
    if (!rootOf(this.chain, root)) return false;
    let reached = this.reach.get(root);
    if (!reached) {
      reached = new Set(uses(this.chain, root));
      this.reach.set(root, reached);
    }
    return reached.has(id);
  }

  private candidates(id: string): readonly string[] {
    const [first = '', second = ''] = id.split('.');
    if (first === 'layer') return [`layer.${second}.mass`, `layer.${second}.mass_per_area`, `layer.${second}.thickness`, 'bar.target'];
    if (first === 'coat') return ['coat.mass', 'coat.mass_per_area', 'coat.thickness', 'bar.target'];
    if (first === 'step') {
      const component = this.chain.steps.find((step) => step.outputs.some((output) => output.id === id))?.inputs[0]?.split('.')[0] ?? '';
      return moistures(component, this.chain);
    }
    if (id === 'bar.mass' || id === 'bar.giveaway') return ['bar.target', 'coat.mass', 'coat.mass_per_area'];
    if (id === 'bar.area' || id === 'bar.length') return ['bar.cut_length'];
    if (id === 'bar.width') return ['bar.cut_width'];
    if (first === 'line' || first === 'flow' || id.endsWith('.utilisation') || id.endsWith('.flow')) return ['line.slab_speed'];
    if (second === 'foam_density') return [`${first}.whip_pressure`];
    if (/^(warm_time|boil_time|boil_rate|kettles_needed|wall_use|steam_temperature)$/.test(second)) return [`${first}.steam_pressure`];
    if (/^(cook_duty|cook_evaporation|cook_fuel|steam_flow|residence)$/.test(second)) return ['line.slab_speed'];
    if (first === 'plant' && second === 'pressure') return ['plant.altitude'];
    if (
      /^(moisture|water_activity|cook_temperature|cook_indicated|cook_solids|refractometer|viscosity|stretch|glass_transition|\w+_supersaturation|sucrose_crystal)$/.test(
        second,
      )
    )
      return moistures(first, this.chain);
    return [];
  }
}

/** Counts and limits are facts of the place, not settings. */
const fixed = /\.(count|composition)$|^(deviation|variation)\.|_entered$|\.moisture_(wettest|driest)$/;

function moistures(component: string, chain: Chain): readonly string[] {
  const stages = chain.roots.map((root) => root.id).filter((id) => id.startsWith(`${component}.stage.`) && id.endsWith('.to_moisture'));
  return [`${component}.moisture`, `${component}.cook_temperature`, ...stages];
}

/** Where a root may sensibly be turned, in its own unit: its window with some room beyond, else a fifth either way. */
export function rangeOf(chain: Chain, id: string, now: number): readonly [low: number, high: number] {
  const { window, unit } = chain.quantities[chain.index.get(id)!]!;
  const { low, high } = window ?? {};
  let range: readonly [number, number];
  if (low !== undefined && high !== undefined) range = [low - (high - low), high + (high - low)];
  else if (unit === '°C') range = [now - 10, now + 10];
  else if (unit === 'K') range = [now - 3, now + 3];
  else range = now === 0 ? [0, 0.01] : [now - 0.2 * Math.abs(now), now + 0.2 * Math.abs(now)];
  const [least, most] = bounds(chain, id);
  return [Math.max(least, Math.min(range[0], now)), Math.min(most, Math.max(range[1], now))];
}

/** What a number can be at all: shares from 0 to 1, masses and prices not below 0. */
export function bounds(chain: Chain, id: string): readonly [number, number] {
  const { unit, show } = chain.quantities[chain.index.get(id)!]!;
  if (unit === '1' && show === '%') return [0, 0.999];
  if (unit === '°C') return [-50, 250];
  if (unit === 'K') return [-20, 20];
  return [0, Infinity];
}
