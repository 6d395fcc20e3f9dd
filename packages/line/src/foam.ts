import { brokenWindows, Session, type State } from '@barwright/chain';
import type { Component } from '@barwright/plant';
import { holdUpFor, OutOfRange, overrun, stiffnessRatio, whippedDensity, whippingPressure, type GasState } from '@barwright/science';
import type { Change } from './cook-batch.js';
import { isRoot } from './drive.js';
import { foamSentences, foamNotes } from './foam-words.js';
import type { PlantChain } from './plant-chain.js';

/** Nothing in the bar is whipped, or its foam cannot be followed; the sentence says what is missing. */
export class NoFoam extends RangeError {
  readonly code = 'NO_FOAM';
}

/** What is otherwise in the whip; what is left out stays as the plant wrote it. */
export interface FoamAsked {
  /** Measured density of the mass, kg/m³, in place of what pressure, temperature and albumen would give. */
  readonly density?: number;
  /** Absolute pressure in the whip, Pa, and its temperature, °C. */
  readonly pressure?: number;
  readonly temperature?: number;
  /** Gas that the albumen holds over what a good lot holds, 1 for a good one: the plant's own whip test. */
  readonly power?: number;
  /** Share of the gas that fat and shear leave, 0 to 1. */
  readonly kept?: number;
}

/** A whipped component against what it should be. Densities in kg/m³, pressures in Pa absolute. */
export interface FoamAnswer {
  readonly component: string;
  readonly aim: number;
  readonly window: { readonly low?: number; readonly high?: number };
  readonly density: number;
  /** Whether it was measured or follows from the whip. */
  readonly measured: boolean;
  readonly state: 'as planned' | 'inside' | 'too dense' | 'too light' | 'no window';
  readonly air: { readonly before: number; readonly after: number };
  readonly overrun: { readonly before: number; readonly after: number };
  /** Gas by volume inside the whip: as the plan asks, and as it is now. */
  readonly held: { readonly plan: number; readonly now: number };
  /** Gas held over what the plan asks, pressure and temperature taken out. */
  readonly power: number;
  readonly whip: { readonly pressure: number; readonly temperature: number };
  /** Whipping pressure that would bring the aim back with the gas held now. */
  readonly restore: { readonly pressure: number };
  /** Resistance to being pressed flat over that of the aim; undefined where it holds no shape or is no foam. */
  readonly stiffness?: number;
  /** What the bar becomes when the sheet keeps its thickness, and when the bar keeps its weight. */
  readonly constantThickness: readonly Change[];
  readonly constantWeight: readonly Change[];
  readonly advice: readonly string[];
  readonly notes: readonly string[];
}

/** Whipped components of the bar whose whip is written with a pressure. */
export function whippedComponents(from: PlantChain): readonly Component[] {
  return [...from.plant.components.values()].filter(({ slug }) => from.chain.index.has(`${slug}.gas_held`));
}

/** A whipped component by name or slug; without a name the first. @throws NoFoam */
export function foamOf(from: PlantChain, name?: string): Component {
  const all = whippedComponents(from);
  const wanted = name?.toLowerCase();
  const found = wanted === undefined ? all[0] : all.find((one) => one.name.toLowerCase() === wanted || one.slug === wanted);
  if (found) return found;
  if (all.length === 0) {
    const whipped = [...from.plant.components.values()].find(
      ({ slug, stages }) => from.chain.index.has(`${slug}.composition`) && stages.some(({ does }) => does === 'whip'),
    );
    throw new NoFoam(
      whipped
        ? `The whip of ${whipped.name} has no pressure; write it at the stage, such as "pressure: 3.5 bar"`
        : `Nothing in ${from.bar.name} is whipped`,
    );
  }
  throw new NoFoam(`No whip of ${from.bar.name} makes "${name}"; it whips ${all.map((one) => one.name).join(' and ')}`);
}

/** The two places of the gas and what the plant says of them. */
export function gasPlaces(
  state: State,
  c: string,
): { readonly whip: GasState; readonly after: GasState; readonly kept: number; readonly free: number } {
  const waterActivity = state.number(`${c}.water_activity`);
  return {
    whip: { pressure: state.number(`${c}.whip_pressure`), temperature: state.number(`${c}.whip_temperature`), waterActivity },
    after: { pressure: state.number('plant.pressure'), temperature: state.number(`${c}.foam_laid_temperature`), waterActivity },
    kept: state.number(`${c}.gas_kept`),
    free: state.number(`${c}.gas_free_density`),
  };
}

/**
 * Density of a whipped component from its whip, or a measured one, and what it does to the bar at constant thickness and at constant
 * weight. The session is left as it was.
 *
 * @throws NoFoam; OutOfRange for a density that is no foam of this mass, or a pressure under which it boils
 */
export function foamAnswer(from: PlantChain, session: Session, asked: FoamAsked = {}, name?: string): FoamAnswer {
  const component = foamOf(from, name);
  const c = component.slug;
  const before = session.snapshot();
  const { whip, after, kept, free } = gasPlaces(before, c);
  const aim = before.number(`${c}.density`);
  const plan = before.number(`${c}.gas_held`);
  const here: GasState = { ...whip, pressure: asked.pressure ?? whip.pressure, temperature: asked.temperature ?? whip.temperature };
  const keeps = asked.kept ?? kept;
  const cup = (rho: number) => `${(rho / 1000).toFixed(3)} g/cm³`;
  if (asked.density !== undefined && !(asked.density > 0 && asked.density <= free))
    throw new NoFoam(
      `${cup(asked.density)} is no density of a foam of ${component.name}, which without gas has ${cup(free)}: look at the unit, or weigh the cup again`,
    );
  if (asked.power !== undefined && !(asked.power >= 0 && asked.power <= 10))
    throw new NoFoam(
      `Gas held is ${(100 * asked.power).toFixed(0)} % of what a good lot holds; 0 to 1000 % is expected, such as 85 % for a weak albumen`,
    );
  const strong = (plan / (1 - plan)) * (asked.power ?? 1);
  const now = asked.density === undefined ? strong / (1 + strong) : holdUpFor(asked.density, free, here, after, keeps);
  const density = asked.density ?? whippedDensity(now, free, here, after, keeps).density;
  const window = densityWindow(component);
  const both = (of: (rho: number) => number) => ({ before: of(aim), after: of(density) });
  const stiffness = stiffnessOf(density, aim, free);
  const answer = {
    component: component.name,
    aim,
    window,
    density,
    measured: asked.density !== undefined,
    state: stateOf(density, aim, window),
    air: both((rho) => 1 - rho / free),
    overrun: both((rho) => overrun(rho, free)),
    held: { plan, now },
    power: now / (1 - now) / (plan / (1 - plan)),
    whip: { pressure: here.pressure, temperature: here.temperature },
    restore: { pressure: whippingPressure(aim, now, free, here, after, keeps) },
    ...(stiffness === undefined ? {} : { stiffness }),
    ...consequences(from, session, component, density / aim),
  };
  return { ...answer, advice: foamSentences(answer), notes: foamNotes(before.origin(`${c}.whip_temperature`) === 'default', keeps) };
}

/** Window of the density: as it was written, else that of a target of that name. */
export function densityWindow({ density, targets }: Component): FoamAnswer['window'] {
  const written = [density, targets.find(({ name, value }) => /density/i.test(name) && value.dimension === 'density')?.value];
  const of = written.find((one) => one?.low !== undefined || one?.high !== undefined);
  return { ...(of?.low === undefined ? {} : { low: of.low }), ...(of?.high === undefined ? {} : { high: of.high }) };
}

function stateOf(density: number, aim: number, { low, high }: FoamAnswer['window']): FoamAnswer['state'] {
  if (Math.abs(density / aim - 1) < 1e-9) return 'as planned';
  if (low === undefined && high === undefined) return 'no window';
  if (density > (high ?? Infinity)) return 'too dense';
  return density < (low ?? 0) ? 'too light' : 'inside';
}

function stiffnessOf(density: number, aim: number, free: number): number | undefined {
  try {
    return stiffnessRatio(density, aim, free);
  } catch (error) {
    if (error instanceof OutOfRange) return undefined;
    throw error;
  }
}

/** The bar with a layer that is `ratio` times as dense: the sheet as thick as before, and the bar as heavy as before. */
function consequences(
  from: PlantChain,
  session: Session,
  component: Component,
  ratio: number,
): Pick<FoamAnswer, 'constantThickness' | 'constantWeight'> {
  const c = component.slug;
  const layers = from.bar.layers.filter((layer) => from.plant.components.get(layer.component) === component);
  const before = session.snapshot();
  const changed = (held: 'thickness' | 'mass'): readonly Change[] => {
    const after = new Session(from.chain, session.overrides());
    const density = before.number(`${c}.density`) * ratio;
    if (isRoot(from, `${c}.density`)) after.set(`${c}.density`, density);
    else after.observe(`${c}.density`, { value: density, origin: 'measured' });
    for (const { slug } of layers) {
      const [mass, thickness] = [`layer.${slug}.mass`, `layer.${slug}.thickness`];
      const [was, id, factor] =
        held === 'thickness' ? [before.number(thickness), mass, ratio] : [before.number(mass), thickness, 1 / ratio];
      // A layer that is written by the other of the two follows by itself.
      const kept = after.number(held === 'thickness' ? thickness : mass);
      if (Math.abs(kept / was - 1) > 1e-9 && isRoot(from, id)) after.set(id, before.number(id) * factor);
    }
    // What is written as the rest to the bar's mass does not shrink on the line because a sheet became heavier.
    for (const id of ['coat.mass', ...from.bar.layers.filter((layer) => !layers.includes(layer)).map(({ slug }) => `layer.${slug}.mass`)]) {
      if (!from.chain.index.has(id) || isRoot(from, id) || !(Math.abs(after.number(id) / before.number(id) - 1) > 1e-9)) continue;
      after.observe(id, { value: before.number(id), origin: 'assumed' });
    }
    return changesOf(from, before, after, [
      `${c}.air`,
      ...layers.flatMap(({ slug }) => [`layer.${slug}.mass`, `layer.${slug}.thickness`]),
      'bar.height',
      'bar.mass',
      'bar.cost',
    ]);
  };
  return { constantThickness: changed('thickness'), constantWeight: changed('mass') };
}

/** Numbers before and after, with the windows that broke. */
export function changesOf(from: PlantChain, before: State, after: State, ids: readonly string[]): readonly Change[] {
  const [was, is] = [before, after].map((state) => new Set(brokenWindows(state).map(({ id }) => id)));
  return ids
    .filter((id) => from.chain.index.has(id))
    .map((id) => ({
      id,
      meaning: from.chain.quantities[from.chain.index.get(id)!]!.meaning,
      before: before.number(id),
      after: after.number(id),
      broken: is!.has(id),
      wasBroken: was!.has(id),
    }));
}
