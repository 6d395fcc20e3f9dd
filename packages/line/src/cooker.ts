import { Session, type State } from '@barwright/chain';
import { filmCoefficient, kettleCoefficient } from '@barwright/science';
import { cookCurve, cookOf, between, knobFor, NoCook } from './cook-curve.js';
import { judgeCooks } from './cook-log.js';
import { cookPlaces, type CookPlace } from './cooker-steps.js';
import { cookerAdvice, cookerNotes } from './cooker-words.js';
import { changesOf } from './foam.js';
import type { Change } from './cook-batch.js';
import type { PlantChain } from './plant-chain.js';
import type { CookTable } from './tables/index.js';

/** What the cooker of one component asks for and scatters by. */
export interface CookerAnswer {
  readonly component: string;
  readonly stage: string;
  readonly kind: 'kettle' | 'film' | undefined;
  /** Quantities of the chain there are, in the order in which one reads them. */
  readonly ids: readonly string[];
  /** What cannot be told, and what must be written for it. */
  readonly needs: readonly string[];
  /** Overall heat transfer that is published for such a cooker, W/m²/K; the plant's own is entered. */
  readonly usual: readonly { readonly kind: 'kettle' | 'film'; readonly range: readonly [number, number]; readonly source: string }[];
  readonly probe?: ProbeError;
  readonly spread?: CookSpread;
  readonly advice: readonly string[];
  readonly notes: readonly string[];
}

/** A probe that reads too high ends the cook too early, by as much. */
export interface ProbeError {
  /** K shown too much. */
  readonly kelvin: number;
  readonly moisture: { readonly before: number; readonly after: number };
  /** Water more on a bar, kg, where a layer of the bar is made of it. */
  readonly water?: number;
  /** Money that the bars of the order cost more; below 0 where water takes the place of what is paid for. */
  readonly money?: number;
  readonly changes: readonly Change[];
  /** End temperature as the probe shows it, °C, and the moisture of the finished component; temperature falling. */
  readonly along: readonly (readonly [shown: number, moisture: number])[];
}

/** Scatter of the end temperature and what it makes of the moisture, beside what the laboratory saw. */
export interface CookSpread {
  readonly batches: number;
  readonly kelvin: number;
  readonly moisture: number;
  /** Standard deviation of the laboratory's moistures of the same batches. */
  readonly seen?: number;
}

export interface CookerAsked {
  readonly component?: string;
  /** K that the probe shows too much; 1 where nobody says. */
  readonly probe?: number;
  /** A log of cooks of this component. */
  readonly log?: CookTable;
}

const shown = [
  'cook_duty',
  'cook_fuel',
  'cook_evaporation',
  'steam_temperature',
  'steam_flow',
  'steam_batch',
  'warm_time',
  'boil_time',
  'boil_rate',
  'kettles_needed',
  'conductance_needed',
  'wall_use',
  'residence',
  'moisture_per_kelvin',
  'moisture_sd',
];

/**
 * Duty, steam, time and spread of the cooks of a bar, and what a wrong probe does. The session is left as it was.
 * @throws NoCook where nothing is cooked, or no cook makes what was asked for
 */
export function cookerAnswers(from: PlantChain, session: Session, asked: CookerAsked = {}): readonly CookerAnswer[] {
  const main = cookOf(from, asked.component);
  const places = cookPlaces(from.plant, from.bar).filter(({ component }) => asked.component === undefined || component === main);
  const state = session.snapshot();
  return places
    .sort((a, b) => Number(b.component === main) - Number(a.component === main))
    .map((place) => answerOf(from, session, state, place, asked));
}

function answerOf(from: PlantChain, session: Session, state: State, place: CookPlace, asked: CookerAsked): CookerAnswer {
  const { component, stage, k } = place;
  const kind = stage.cook!.cooker?.kind;
  const ids = shown.map((name) => `${k}.${name}`).filter((id) => from.chain.index.has(id));
  const first = k === component.slug;
  const probe = first ? probeError(from, session, place, asked.probe ?? 1) : undefined;
  const spread = first && asked.log ? spreadOf(from, session, place, asked.log) : undefined;
  const answer = {
    component: component.name,
    stage: stage.name,
    kind,
    ids,
    needs: needsOf(from, state, place),
    usual: usualFor(kind),
    ...(probe ? { probe } : {}),
    ...(spread ? { spread } : {}),
  };
  const numbers = (name: string) => (state.status(`${k}.${name}`).ok ? state.number(`${k}.${name}`) : undefined);
  return {
    ...answer,
    advice: cookerAdvice(answer, (name) => (ids.includes(`${k}.${name}`) ? numbers(name) : undefined)),
    notes: cookerNotes(answer),
  };
}

function usualFor(kind: CookerAnswer['kind']): CookerAnswer['usual'] {
  const of = (one: 'kettle' | 'film') => {
    const table = one === 'kettle' ? kettleCoefficient : filmCoefficient;
    return { kind: one, range: table.values.heat_transfer, source: table.source };
  };
  return kind === undefined ? [of('kettle'), of('film')] : [of(kind)];
}

/** What is missing, each with what it would tell. */
function needsOf(from: PlantChain, state: State, { component, stage, k }: CookPlace): readonly string[] {
  const cooker = stage.cook!.cooker;
  const has = (name: string) => from.chain.index.has(`${k}.${name}`);
  const needs: string[] = [];
  if (!has('cook_duty')) needs.push('Duty and water driven off per hour need a line that the bar runs on.');
  if (!cooker) needs.push('Steam and time need the cooker: "cooker: { kind: kettle, steam: 7 bar }" or "kind: film" at the stage.');
  else {
    if (!cooker.steam) needs.push('Steam needs the absolute pressure of the steam: "steam" under "cooker".');
    const wall = [
      ...(cooker.surface ? [] : ['"heating surface"']),
      ...(cooker.heatTransfer ? [] : ['"heat transfer"']),
      ...(cooker.steam ? [] : ['"steam"']),
    ];
    const what = cooker.kind === 'kettle' ? 'The time of a batch' : 'How much of the wall is used';
    if (wall.length > 0) needs.push(`${what} needs ${wall.join(' and ')} under "cooker".`);
    else if (cooker.kind === 'kettle' && !from.chain.index.has(`${component.slug}.batch_charge`))
      needs.push('The time of a batch needs its size: "batch" of the component, and a plan.');
    if (cooker.kind === 'film' && !cooker.holds) needs.push('The time in the film needs the mass it holds: "holds" under "cooker".');
  }
  if (!cooker?.boilerEfficiency) needs.push('Heat in the fuel needs "boiler efficiency" under "cooker".');
  if (!cooker?.temperatureSpread)
    needs.push('The spread of the moisture needs "temperature spread" under "cooker", a standard deviation; a log of cooks tells it.');
  else if (cooker.kind === 'film' && !cooker.levelSpread)
    needs.push('What the level does to the moisture of a film needs "level spread" under "cooker".');
  for (const name of shown) {
    const status = has(name) ? state.status(`${k}.${name}`) : undefined;
    if (status && !status.ok && !needs.includes(status.reason)) needs.push(status.reason);
  }
  return needs;
}

/** The bar with a cook that ends as many kelvin too cold as its probe shows too much. */
function probeError(from: PlantChain, session: Session, { component }: CookPlace, kelvin: number): ProbeError {
  const curve = cookCurve(from, session, component);
  const c = component.slug;
  const before = session.snapshot();
  const moisture = between(curve.indicated, curve.moisture, before.number(`${c}.cook_indicated`) - kelvin);
  if (!Number.isFinite(moisture))
    throw new NoCook(`A probe ${kelvin} K off lies beyond what the cook of ${component.name} is followed over; give one of a few kelvin`);
  const after = new Session(from.chain, session.overrides());
  after.set(curve.knob, knobFor(curve, moisture));
  const was = before.number(`${c}.moisture`);
  const layers = from.bar.layers.filter((layer) => from.plant.components.get(layer.component) === component);
  const on = layers.reduce((sum, { slug }) => sum + before.number(`layer.${slug}.mass`), 0);
  const cost = ['bar.cost', 'order.bars'].every((id) => from.chain.index.has(id) && before.status(id).ok && after.status(id).ok);
  return {
    kelvin,
    moisture: { before: was, after: moisture },
    ...(layers.length > 0 ? { water: on * (moisture - was) } : {}),
    ...(cost ? { money: (after.number('bar.cost') - before.number('bar.cost')) * before.number('order.bars') } : {}),
    along: curve.indicated.map((t, i) => [t, curve.moisture[i]!] as const),
    changes: changesOf(from, before, after, [
      `${c}.moisture`,
      `${c}.water_activity`,
      `${c}.viscosity`,
      `${c}.refractometer`,
      `${c}.yield`,
      ...layers.map(({ slug }) => `layer.${slug}.thickness`),
      'bar.cost',
    ]),
  };
}

/** Scatter of the good batches of a log about their own mean; undefined with fewer than five. */
function spreadOf(from: PlantChain, session: Session, { component, k }: CookPlace, log: CookTable): CookSpread | undefined {
  const { batches } = judgeCooks(from, session, log, component.name);
  const sd = (list: Float64Array | undefined) => {
    const values = [...(list ?? [])].filter((x, i) => Number.isFinite(x) && batches[i]!.verdict === 'good');
    if (values.length < 5) return undefined;
    const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
    return { n: values.length, sd: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1)) };
  };
  const temperature = sd(log.temperature);
  if (!temperature) return undefined;
  const seen = sd(log.moisture);
  return {
    batches: temperature.n,
    kelvin: temperature.sd,
    moisture: Math.abs(session.number(`${k}.moisture_per_kelvin`)) * temperature.sd,
    ...(seen ? { seen: seen.sd } : {}),
  };
}
