import { Builder } from '@barwright/bar';
import type { State } from '@barwright/chain';
import { firstBelow, share, slabRun, type Composition, type SlabLayer, type SlabRun } from '@barwright/science';
import { layerThermal } from './layer-thermal.js';
import type { PlantChain } from './plant-chain.js';
import { slabRoots, type SlabIds } from './slab-roots.js';

/** The slab cannot be followed; the sentence says what is missing. */
export class NoSlab extends RangeError {
  readonly code = 'NO_SLAB';
}

export interface SlabOptions {
  /** Another air temperature, °C, or another rate, bars/min. */
  readonly air?: number;
  readonly rate?: number;
  readonly cells?: number;
}

/** Of a core under the knives; 'cannot tell' where a quarter of heat transfer decides. */
export type SlitState = 'ready' | 'too warm' | 'too cold' | 'cannot tell';

/** The slab along the belt of its cooler. Temperatures in °C, places in m. */
export interface SlabAnswer {
  readonly station: string;
  readonly length: number;
  /** m/s and s. */
  readonly speed: number;
  readonly dwell: number;
  readonly air: number;
  readonly layers: readonly { readonly name: string; readonly height: number; readonly start: number }[];
  readonly along: {
    readonly place: readonly number[];
    readonly top: readonly number[];
    readonly bottom: readonly number[];
    readonly hottest: readonly number[];
    readonly coldest: readonly number[];
    readonly mean: readonly number[];
    /** Whether the core could be slit there. */
    readonly state: readonly SlitState[];
  };
  /** Height above the belt of each row of a profile, m, and temperatures there at each place. */
  readonly heights: readonly number[];
  readonly profiles: readonly (readonly number[])[];
  readonly exit: {
    readonly top: number;
    readonly bottom: number;
    readonly hottest: number;
    readonly coldest: number;
    readonly mean: number;
  };
  /** W taken out at this rate, and how much of it is heat of setting fat. */
  readonly load: number;
  readonly fatLoad: number;
  /** How much colder the core would leave if no fat set, K. */
  readonly fatKeepsWarm: number;
  /** Of the bed or drum below, °C. */
  readonly bed: number;
  readonly slit: {
    readonly from: number;
    readonly below: number;
    /** Where the core reaches the upper and the lower end, m from the start of the belt; Infinity where it does not on this belt. */
    readonly opens: number;
    readonly closes: number;
    /** Of the core as it leaves. */
    readonly state: SlitState;
  };
  /**
   * Seconds on the belt until a place is no warmer than the upper end of the slitting window, above which it smears and
   * strings at the knives; Infinity where that does not happen on this belt.
   */
  readonly sticky: {
    readonly top: number;
    readonly bottom: number;
    readonly core: number;
    /** Of the core with heat transfer a quarter stronger and weaker. */
    readonly coreBetween: readonly [stronger: number, weaker: number];
  };
  /** Exit of the hottest place with heat transfer a quarter stronger and weaker. */
  readonly hottestBetween: readonly [low: number, high: number];
  /** Temperatures as in `profiles` with heat transfer a quarter stronger and weaker: between them the model cannot tell. */
  readonly doubt: { readonly stronger: readonly (readonly number[])[]; readonly weaker: readonly (readonly number[])[] };
  readonly sentences: readonly string[];
}

/**
 * The slab through its cooler: conduction through the thickness, on demand, well under a millisecond a run.
 * @throws NoSlab where the line has no slab cooler with a length
 */
export function slabHistory(from: PlantChain, state: State, options: SlabOptions = {}): SlabAnswer {
  const ids = slabRoots(new Builder(), from.plant, from.bar, from.line);
  if (!ids) throw new NoSlab(`${from.line?.name ?? from.bar.name} has no slab cooler with a length; the slab cannot be followed`);
  const length = state.number(`station.${ids.station.slug}.length`);
  const speed = state.number('line.slab_speed') * (options.rate === undefined ? 1 : options.rate / state.number('line.rate'));
  const dwell = length / speed;
  const air = options.air ?? state.number(ids.air);
  const bed = ids.bed === undefined ? air : state.number(ids.bed);
  const layers = layersOf(from, state, ids);
  const steps = 96;
  const solver = slabRun(layers, options.cells ?? 200, steps);
  const section = (factor: number) => ({
    duration: dwell,
    topTemperature: air,
    topCoefficient: factor * state.number(ids.top),
    bottomTemperature: bed,
    bottomCoefficient: factor * state.number(ids.bottom),
  });
  const [low, high] = [state.number(ids.low), state.number(ids.high)];
  const cells = solver.position.length;
  const every = Math.max(1, Math.floor(cells / 40));
  const picked = Array.from({ length: Math.floor(cells / every) }, (_, i) => i * every + (every >> 1));
  const pick = ({ time, profiles }: SlabRun) => Array.from(time, (_, row) => picked.map((cell) => profiles[row * cells + cell]!));
  // A run refills its arrays: what is kept of one is copied before the next.
  const ended = (factor: number) => {
    const end = solver.run([section(factor)]);
    return { hottest: [...end.hottest], sticky: firstBelow(end.time, end.hottest, high), profiles: pick(end) };
  };
  const [stronger, weaker] = [ended(1.25), ended(0.75)];
  const ends: readonly [number, number] = [stronger.hottest[steps]!, weaker.hottest[steps]!];
  const run = solver.run([section(1)]);
  const core = firstBelow(run.time, run.hottest, high);
  const dry = slabRun(
    layers.map(({ melting: _, ...layer }) => layer),
    cells,
    steps,
  ).run([section(1)]);
  const width = from.chain.index.has('line.slab_width') ? state.number('line.slab_width') : NaN;
  const answer = {
    station: ids.station.name,
    length,
    speed,
    dwell,
    air,
    layers: layers.map(({ thickness, start }, i) => ({ name: hosts(from)[i]!.name, height: thickness, start })),
    along: {
      place: Array.from(run.time, (t) => t * speed),
      top: [...run.top],
      bottom: [...run.bottom],
      hottest: [...run.hottest],
      coldest: [...run.coldest],
      mean: [...run.mean],
      state: Array.from(run.hottest, (t, row) => judge(t, [stronger.hottest[row]!, weaker.hottest[row]!], low, high)),
    },
    heights: picked.map((cell) => run.position[cell]!),
    profiles: pick(run),
    exit: {
      top: run.top[steps]!,
      bottom: run.bottom[steps]!,
      hottest: run.hottest[steps]!,
      coldest: run.coldest[steps]!,
      mean: run.mean[steps]!,
    },
    load: run.heat[steps]! * width * speed,
    fatLoad: fatHeat(layers, run) * width * speed,
    fatKeepsWarm: run.hottest[steps]! - dry.hottest[steps]!,
    bed,
    slit: {
      from: low,
      below: high,
      opens: core * speed,
      closes: firstBelow(run.time, run.hottest, low) * speed,
      state: judge(run.hottest[steps]!, ends, low, high),
    },
    sticky: {
      top: firstBelow(run.time, run.top, high),
      bottom: firstBelow(run.time, run.bottom, high),
      core,
      coreBetween: [stronger.sticky, weaker.sticky] as readonly [number, number],
    },
    hottestBetween: ends,
    doubt: { stronger: stronger.profiles, weaker: weaker.profiles },
  };
  return { ...answer, sentences: sentencesOn(answer) };
}

/** Fats that set on a slab cooler; nut oil does not, and lecithin is no fat that freezes. */
const settingFats = ['milk_fat', 'cocoa_butter', 'vegetable_fat'] as const;

/** Heat of the fat that has set by the end, J/m²: what was taken out beyond what cooling alone gives. */
function fatHeat(layers: readonly SlabLayer[], run: SlabRun): number {
  let bottom = 0;
  let sensible = 0;
  for (const { thickness, density, specificHeat, start } of layers) {
    const top = bottom + thickness;
    const cells = run.position.reduce<number[]>((list, z, i) => (z > bottom && z < top ? [...list, i] : list), []);
    const mean = cells.reduce((sum, i) => sum + run.temperature[i]!, 0) / cells.length;
    sensible += thickness * density * specificHeat * (start - mean);
    bottom = top;
  }
  return Math.max(0, run.heat.at(-1)! - sensible);
}

function hosts(from: PlantChain) {
  return from.bar.layers.filter((layer) => layer.sunkInto === undefined);
}

/** From the belt up; what has sunk in brings its own temperature along. */
function layersOf(from: PlantChain, state: State, ids: SlabIds): SlabLayer[] {
  return hosts(from).map((host) => {
    const { height, density, specificHeat, conductivity } = layerThermal(from, state, host);
    const together = [host, ...from.bar.layers.filter((layer) => layer.sunkInto === host.name)].map((layer) => {
      const slug = from.plant.components.get(layer.component)!.slug;
      const mass = state.number(`layer.${layer.slug}.mass`);
      const capacity = mass * state.number(`${slug}.specific_heat`);
      const laid = ids.starts.get(layer.slug)!;
      return { mass, capacity, t: state.number(laid), fat: share(state.value(`${slug}.composition`) as Composition, settingFats) };
    });
    const capacity = together.reduce((sum, part) => sum + part.capacity, 0);
    const start = together.reduce((sum, part) => sum + part.capacity * part.t, 0) / capacity;
    const mass = together.reduce((sum, part) => sum + part.mass, 0);
    const heat = (together.reduce((sum, part) => sum + part.mass * part.fat, 0) / mass) * state.number(ids.fatHeat);
    const melting = { heat, temperature: state.number(ids.fatMiddle), halfWidth: state.number(ids.fatHalf) };
    return { thickness: height, density, specificHeat, conductivity, start, ...(heat > 0 ? { melting } : {}) };
  });
}

function sentencesOn(answer: Omit<SlabAnswer, 'sentences'>): readonly string[] {
  const { slit, sticky, exit, length, hottestBetween, air, bed, dwell } = answer;
  const core = `its core leaves at ${exit.hottest.toFixed(1)} °C (${hottestBetween.map((t) => t.toFixed(1)).join(' to ')} with a quarter more or less heat transfer); ${slit.from.toFixed(0)} to ${slit.below.toFixed(0)} °C slit well`;
  const words = {
    ready: `The slab slits well: ${core}.${slit.opens <= length ? ` It is ready from ${slit.opens.toFixed(1)} m on.` : ''}`,
    'too warm': `The slab is too warm for the knives: ${core}. It smears and strings.`,
    'too cold': `The slab is too cold for the knives: ${core}. It cracks and nuts fall.`,
    'cannot tell': `Cannot tell whether the slab is ready: ${core}. Measure a core at the knives and fit the heat transfer.`,
  };
  const sentences: string[] = [words[slit.state]];
  sentences.push(
    `${(dwell / 60).toFixed(1)} min in air of ${air.toFixed(1)} °C${bed === air ? '' : ` on a bed of ${bed.toFixed(1)} °C`}; it leaves between ${exit.coldest.toFixed(1)} and ${exit.hottest.toFixed(1)} °C, ${exit.mean.toFixed(1)} °C when evened out.`,
    `Above ${slit.below.toFixed(0)} °C it sticks and strings at a knife: the top for ${minutes(sticky.top, dwell)}, the bottom for ${minutes(sticky.bottom, dwell)}, the core for ${minutes(sticky.core, dwell)} (${minutes(sticky.coreBetween[0], dwell)} to ${minutes(sticky.coreBetween[1], dwell)} with a quarter more or less heat transfer). The limit of the knives stands for touch too: common practice, no source.`,
    ...(answer.fatLoad > 1
      ? [
          `Setting fat gives ${(answer.fatLoad / 1000).toFixed(1)} of the ${(answer.load / 1000).toFixed(1)} kW and keeps the core ${answer.fatKeepsWarm.toFixed(1)} K warmer; how much of it sets so soon is from memory.`,
        ]
      : []),
    'Heat transfer is common practice until it is fitted on a logged core temperature.',
    'Before colder air: the dew point of the room, or the slab sweats. Knives and drums guarded; people lock off before they reach in.',
  );
  return sentences;
}

function minutes(seconds: number, dwell: number): string {
  return seconds <= dwell ? `${(seconds / 60).toFixed(1)} min` : 'the whole belt';
}

function judge(core: number, [strong, weak]: readonly [number, number], low: number, high: number): SlitState {
  if (strong > high) return 'too warm';
  if (weak < low) return 'too cold';
  return core <= high && core >= low && weak <= high && strong >= low ? 'ready' : 'cannot tell';
}
