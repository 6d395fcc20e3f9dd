import { crystalId } from '@barwright/bar';
import { brokenWindows, Session, type State } from '@barwright/chain';
import type { Component, Layer, Station } from '@barwright/plant';
import { caramelViscosity, sharedActivity, type Composition } from '@barwright/science';
import { adviceOnBatch, notesOnBatch } from './cook-advice.js';
import { between, cookCurve, cookOf, knobFor, moistureOfViscosity, NoCook, type CookCurve } from './cook-curve.js';
import type { PlantChain } from './plant-chain.js';
import { layerSlump, type LayerSlump } from './slump.js';

/** What is known of one batch; at least one of them. */
export interface BatchReadings {
  /** Water by the laboratory, wet basis. */
  readonly moisture?: number;
  /** End temperature as the probe showed it, °C. */
  readonly temperature?: number;
  /** Refractometer, share. */
  readonly refractometer?: number;
  /** Viscosity as it was laid, Pa·s, at the deposit temperature of the chain unless told. */
  readonly viscosity?: number;
  readonly depositTemperature?: number;
}

/** What one reading alone says the moisture is. */
export interface ReadingSays {
  readonly reading: 'laboratory' | 'temperature' | 'refractometer' | 'viscosity';
  readonly moisture: number;
}

/** A number before and after. */
export interface Change {
  readonly id: string;
  readonly meaning: string;
  readonly before: number;
  readonly after: number;
  /** Outside its window after, and whether it was so before. */
  readonly broken: boolean;
  readonly wasBroken: boolean;
}

/** Two layers that touch, and where they come to rest, alone with each other. */
export interface Neighbours {
  readonly other: string;
  readonly step: { readonly before: number; readonly after: number; readonly limit: number | undefined };
  readonly rest: {
    readonly before: { readonly activity: number; readonly own: number; readonly other: number };
    readonly after: { readonly activity: number; readonly own: number; readonly other: number };
  };
}

/** One batch of a cook against what it should be. */
export interface BatchAnswer {
  readonly component: string;
  readonly aim: number;
  readonly moisture: number;
  readonly window: { readonly low?: number; readonly high?: number };
  /** What is turned to make such a batch, and the line's own set points at the aim: temperature as shown, °C, and refractometer. */
  readonly knob: { readonly id: string; readonly value: number };
  readonly setPoint: number;
  readonly refractometerSet: number;
  /** What each reading says, on the plant's own scale: the reading at the aim is taken to be the set point of the line. */
  readonly says: readonly ReadingSays[];
  /** Where temperature and the rest contradict: what the probe shows too much, K, and the pressure that would explain it as well, Pa. */
  readonly probe?: {
    readonly shown: number;
    readonly boilsAt: number;
    readonly error: number;
    readonly pressure: number;
    readonly contradicts: boolean;
    /** What the probe must show to make the aim until it is checked, °C. */
    readonly indicated: number;
  };
  readonly changes: readonly Change[];
  readonly neighbours: readonly Neighbours[];
  readonly slump?: { readonly before: LayerSlump; readonly after: LayerSlump };
  /** Deposit temperature that gives the viscosity aimed at, °C, and whether it lies in its window. */
  readonly deposit?: { readonly now: number; readonly wanted: number; readonly inWindow: boolean };
  /** Whether anything can grow in it: 'cannot tell' where the band of the activity reaches the limit. */
  readonly grows: 'nothing' | 'cannot tell' | 'may';
  readonly advice: readonly string[];
  readonly notes: readonly string[];
}

/** Nothing grows below this water activity. Common knowledge of food microbiology; first stated at 0.60 by Scott (1957), from memory. */
export const noGrowth = 0.6;

/** K between what was shown and what the solids ask for, above which two good readings no longer agree: common practice, no source. */
const contradiction = 0.8;

function growthAt(activity: number, half: number): BatchAnswer['grows'] {
  if (activity >= noGrowth) return 'may';
  return activity + half < noGrowth ? 'nothing' : 'cannot tell';
}

const judged = [
  'water_activity',
  'viscosity',
  'stretch',
  'viscosity_stored',
  'glass_transition',
  'sucrose_supersaturation',
  'yield',
  'cost',
];

/**
 * What a batch that came out wet or dry does to the bar, what its readings say of each other, and what to set now.
 * The session is left as it was.
 * @throws NoCook where no reading came, or they lie beyond what the cook's curve reaches
 */
export function batchAnswer(from: PlantChain, session: Session, readings: BatchReadings, name?: string): BatchAnswer {
  const component = cookOf(from, name);
  const curve = cookCurve(from, session, component);
  const before = session.snapshot();
  const says = whatReadingsSay(from, before, curve, readings);
  const moisture = readings.moisture ?? says.find(({ reading }) => reading !== 'temperature')?.moisture ?? says[0]?.moisture;
  if (moisture === undefined)
    throw new NoCook('Give at least one reading of the batch: moisture, refractometer, viscosity or end temperature');
  const after = new Session(from.chain, session.overrides());
  after.set(curve.knob, knobFor(curve, moisture));
  const c = component.slug;
  const aim = before.number(`${c}.moisture`);
  const window = moistureWindow(component);
  const layer = from.bar.layers.find((one) => from.plant.components.get(one.component) === component);
  const slumped = layer && slumpPair(from, before, after, layer);
  const probe = probeOf(from, before, curve, readings, moisture);
  const deposit = depositFor(from, before, after, component);
  const answer = {
    component: component.name,
    aim,
    moisture,
    window,
    knob: { id: curve.knob, value: knobFor(curve, moisture) },
    setPoint: before.number(`${c}.cook_indicated`) + offsetFrom(from, before, curve, 'temperature'),
    refractometerSet: before.number(`${c}.refractometer`) + offsetFrom(from, before, curve, 'refractometer'),
    says,
    ...(probe ? { probe } : {}),
    changes: changesOf(from, before, after, component, layer),
    neighbours: layer ? neighboursOf(from, before, after, layer) : [],
    ...(slumped ? { slump: slumped } : {}),
    ...(deposit ? { deposit } : {}),
    grows: growthAt(after.number(`${c}.water_activity`), after.uncertainty(`${c}.water_activity`) ?? 0),
  };
  return { ...answer, advice: adviceOnBatch(answer), notes: notesOnBatch(from, answer) };
}

/**
 * The moisture each reading stands for. Readings are taken relative to what the plant sets: a model that is off by a constant would
 * else blame every batch.
 */
function whatReadingsSay(from: PlantChain, state: State, curve: CookCurve, readings: BatchReadings): readonly ReadingSays[] {
  const c = curve.component.slug;
  const says: ReadingSays[] = [];
  const add = (reading: ReadingSays['reading'], moisture: number) => Number.isFinite(moisture) && says.push({ reading, moisture });
  const { moisture, temperature, refractometer, viscosity } = readings;
  if (moisture !== undefined) add('laboratory', moisture);
  if (refractometer !== undefined) {
    const shift = offsetFrom(from, state, curve, 'refractometer');
    add('refractometer', between(curve.refractometer, curve.moisture, refractometer - shift));
  }
  if (viscosity !== undefined && curve.factor !== undefined) {
    const laid =
      readings.depositTemperature ?? (from.chain.index.has(`${c}.deposit_temperature`) ? state.number(`${c}.deposit_temperature`) : NaN);
    add('viscosity', moistureOfViscosity(curve, viscosity, laid));
  }
  if (temperature !== undefined)
    add('temperature', between(curve.indicated, curve.moisture, temperature - offsetFrom(from, state, curve, 'temperature')));
  return says;
}

/** What the line's set point shows less what the model expects at the moisture aimed at; 0 where the line has no such set point. */
export function offsetFrom(from: PlantChain, state: State, curve: CookCurve, what: 'temperature' | 'refractometer'): number {
  const point = setPointOf(from, curve.component, what);
  if (point === undefined) return 0;
  const c = curve.component.slug;
  return state.number(point) - state.number(what === 'temperature' ? `${c}.cook_indicated` : `${c}.refractometer`);
}

/** Set point of the station that cooks it: 'cook temperature', 'solids by refractometer'. */
export function setPointOf(from: PlantChain, component: Component, what: 'temperature' | 'refractometer'): string | undefined {
  const station = from.line?.stations.find((one: Station) => one.works === component.name);
  const match = what === 'temperature' ? /cook|end temperature/i : /refractometer|solids/i;
  const dimension = what === 'temperature' ? 'temperature' : 'fraction';
  const point = station?.setPoints.find(({ name, value }) => match.test(name) && value.dimension === dimension);
  return station && point && `set.${station.slug}.${point.slug}`;
}

function probeOf(from: PlantChain, state: State, curve: CookCurve, readings: BatchReadings, moisture: number): BatchAnswer['probe'] {
  const { temperature } = readings;
  if (temperature === undefined || (readings.moisture ?? readings.refractometer ?? readings.viscosity) === undefined) return undefined;
  const c = curve.component.slug;
  const shift = offsetFrom(from, state, curve, 'temperature');
  const boilsAt = between(curve.moisture, curve.indicated, moisture) + shift;
  const error = temperature - boilsAt;
  const perPascal = state.number(`${c}.cook_per_kpa`) / 1000;
  return {
    shown: temperature,
    boilsAt,
    error,
    pressure: error / perPascal,
    contradicts: Math.abs(error) > contradiction,
    indicated: state.number(`${c}.cook_indicated`) + shift + error,
  };
}

function moistureWindow(component: Component): BatchAnswer['window'] {
  const end = component.stages.find((stage) => stage.cook)?.cook?.end;
  const entered = end && end.by !== 'temperature' ? end.moisture : undefined;
  return {
    ...(entered?.low === undefined ? {} : { low: entered.low }),
    ...(entered?.high === undefined ? {} : { high: entered.high }),
  };
}

function changesOf(from: PlantChain, before: State, after: State, component: Component, layer: Layer | undefined): readonly Change[] {
  const c = component.slug;
  const ids = [
    `${c}.moisture`,
    ...judged.map((name) => `${c}.${name}`),
    ...(layer ? [`layer.${layer.slug}.thickness`] : []),
    'bar.mass',
    'bar.cost',
  ].filter((id) => from.chain.index.has(id));
  const [was, is] = [before, after].map((state) => new Set(brokenWindows(state).map(({ id }) => id)));
  return ids.map((id) => ({
    id,
    meaning: from.chain.quantities[from.chain.index.get(id)!]!.meaning,
    before: before.number(id),
    after: after.number(id),
    broken: is!.has(id),
    wasBroken: was!.has(id),
  }));
}

function neighboursOf(from: PlantChain, before: State, after: State, layer: Layer): readonly Neighbours[] {
  const touching = from.chain.quantities.flatMap(({ id, window }) => {
    const found = /^step\.(.+)$/.exec(id);
    if (!found) return [];
    const other = from.bar.layers.find(
      (one) => one !== layer && [`${one.slug}_${layer.slug}`, `${layer.slug}_${one.slug}`].includes(found[1]!),
    );
    return other ? [{ id, other, limit: window?.high }] : [];
  });
  const rest = (state: State, other: Layer) => {
    const pair = [layer, other].map((one) => {
      const component = from.plant.components.get(one.component)!;
      const seed = crystalId(component);
      return {
        mass: state.number(`layer.${one.slug}.mass`),
        composition: state.value(`${component.slug}.composition`) as Composition,
        activity: state.number(`${component.slug}.water_activity`),
        crystallineSucrose: from.chain.index.has(seed) ? state.number(seed) : 0,
      };
    });
    const { activity, moisture } = sharedActivity(pair, 25);
    return { activity, own: moisture[0]!, other: moisture[1]! };
  };
  return touching.map(({ id, other, limit }) => ({
    other: other.name,
    step: { before: before.number(id), after: after.number(id), limit },
    rest: { before: rest(before, other), after: rest(after, other) },
  }));
}

function slumpPair(from: PlantChain, before: State, after: State, layer: Layer): BatchAnswer['slump'] {
  const [was, is] = [layerSlump(from, before, layer), layerSlump(from, after, layer)];
  return was && is ? { before: was, after: is } : undefined;
}

/** The temperature at which the batch flows as the aim does now. */
function depositFor(from: PlantChain, before: State, after: State, component: Component): BatchAnswer['deposit'] {
  const c = component.slug;
  if (!from.chain.index.has(`${c}.viscosity`)) return undefined;
  const [now, wanted] = [before.number(`${c}.deposit_temperature`), before.number(`${c}.viscosity`)];
  const composition = after.value(`${c}.composition`) as Composition;
  const factor = after.number(`${c}.viscosity_factor`);
  let [low, high] = [now - 25, now + 25];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (caramelViscosity(composition, middle, factor) > wanted) low = middle;
    else high = middle;
  }
  const t = (low + high) / 2;
  const window = from.chain.quantities[from.chain.index.get(`${c}.deposit_temperature`)!]!.window;
  return { now, wanted: t, inWindow: !(t < (window?.low ?? -Infinity) || t > (window?.high ?? Infinity)) };
}
