import type { State } from '@barwright/chain';
import {
  chocolateSpecificHeat,
  coolBar,
  fatBlend,
  fats,
  share,
  sugars,
  thermalConductivity,
  type Composition,
  type TunnelHistory,
  type TunnelTask,
  type TunnelZone,
} from '@barwright/science';
import { layerThermal } from './layer-thermal.js';
import type { PlantChain } from './plant-chain.js';
import { tunnelIds, type TunnelIds } from './tunnel-roots.js';

/** The tunnel cannot be computed for this bar on this line; the sentence says what is missing. */
export class NoTunnel extends RangeError {
  readonly code = 'NO_TUNNEL';
}

/** A number with what ±20 % of heat transfer does to it. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** How a bar passes the tunnel. Temperatures with the plant's own offset, °C. */
export interface TunnelRun {
  readonly station: string;
  /** bars/min and m/s of this run. */
  readonly rate: number;
  readonly beltSpeed: number;
  /** s in the tunnel. */
  readonly dwell: number;
  /** Top of the bar as it leaves: what an infrared probe at the exit sees. */
  readonly exitSurface: Ranged;
  /** What the bar evens out to. */
  readonly exitMean: Ranged;
  readonly exitCentre: number;
  readonly coldestSurface: Ranged;
  /** Solid share of the fat of the coat at the exit, mean and least, and what it would be at 20 °C. */
  readonly solids: number;
  readonly leastSolids: number;
  readonly solidsAt20: number;
  /** J/kg of coat that crystals still give off after the exit. */
  readonly heatLeft: number;
  /** W that the tunnel must take out of bars at this rate; by zone. Its own losses come on top. */
  readonly load: number;
  readonly loadByZone: readonly number[];
  /** Dew point of the room and the coldest surface of the leaving bar less it, K. */
  readonly dewPoint: number;
  readonly dewMargin: Ranged;
  readonly zones: readonly { readonly name: string; readonly air: number; readonly from: number; readonly to: number }[];
  /** Along the belt, m: top surface, centre, mean, °C, and solid share of the fat. */
  readonly along: {
    readonly place: readonly number[];
    readonly surface: readonly number[];
    readonly centre: readonly number[];
    readonly mean: readonly number[];
    readonly solids: readonly number[];
  };
  /** Sentences: what is assumed, what is out of its window. */
  readonly notes: readonly string[];
}

export interface TunnelOptions {
  /** Another rate, bars/min; the belt follows it. */
  readonly rate?: number;
}

/**
 * One bar through the tunnel at the settings of a state: on demand, about 3 ms, because it solves the section in time.
 * @throws NoTunnel where the line has no tunnel with zones and length or the bar no chocolate coat; OutOfRange from the model
 */
export function tunnelHistory(from: PlantChain, state: State, options: TunnelOptions = {}): TunnelRun {
  const ids = idsOf(from);
  const ratedNow = state.number('line.rate');
  const rate = options.rate ?? ratedNow;
  const task = taskOf(from, state, ids, (state.number('line.belt_speed') * rate) / ratedNow);
  const run = coolBar(task);
  const ends = [0.8, 1.2].map((factor) => coolBar(stronger(task, factor)));
  const offset = state.number(ids.offset);
  const ranged = (of: (history: TunnelHistory) => number, add: number): Ranged => {
    const values = ends.map(of);
    return { value: of(run) + add, low: Math.min(...values) + add, high: Math.max(...values) + add };
  };
  const dew = state.number(ids.dewPoint);
  const perSecond = rate / 60;
  const exitSurface = ranged((h) => h.exit.topSurface, offset);
  const coldest = ranged((h) => h.exit.coldestSurface, offset);
  const solidsAt20 = state.number(`${coatSlug(from)}.solid_fat_20`);
  const { zones } = spans(from, state, ids);
  const result: TunnelRun = {
    station: ids.station.name,
    rate,
    beltSpeed: task.beltSpeed,
    dwell: run.dwell,
    exitSurface,
    exitMean: ranged((h) => h.exit.mean, offset),
    exitCentre: run.exit.centre + offset,
    coldestSurface: coldest,
    solids: run.exit.solids,
    leastSolids: run.exit.leastSolids,
    solidsAt20,
    heatLeft: run.exit.latentLeft,
    load: run.heat * perSecond,
    loadByZone: run.heatByZone.map((heat) => heat * perSecond),
    dewPoint: dew,
    dewMargin: { value: coldest.value - dew, low: coldest.low - dew, high: coldest.high - dew },
    zones,
    along: {
      place: run.time.map((t) => t * task.beltSpeed),
      surface: run.topSurface,
      centre: run.centre,
      mean: run.mean,
      solids: run.solids,
    },
    notes: [],
  };
  return { ...result, notes: notesOn(state, ids, result) };
}

/** @throws NoTunnel */
function idsOf(from: PlantChain): TunnelIds {
  const ids = tunnelIds(from.plant, from.bar, from.line);
  if (!ids)
    throw new NoTunnel(
      `${from.line ? `${from.line.name} has no tunnel with a length and set points of its zones, or ${from.bar.name} no chocolate coat` : `${from.bar.name} has no line`}; the tunnel cannot be computed`,
    );
  return ids;
}

/** The task of the tunnel model at the speed of a state. @throws NoTunnel */
export function tunnelTask(from: PlantChain, state: State): TunnelTask {
  return taskOf(from, state, idsOf(from), state.number('line.belt_speed'));
}

function stronger(task: TunnelTask, factor: number): TunnelTask {
  const zones = task.zones.map((zone) => ({
    ...zone,
    topCoefficient: factor * zone.topCoefficient,
    sideCoefficient: factor * zone.sideCoefficient,
    bottomCoefficient: factor * zone.bottomCoefficient,
  }));
  return { ...task, zones };
}

const coatSlug = (from: PlantChain): string => from.plant.components.get(from.bar.coat!.component)!.slug;

/** The task of the tunnel model: section of the bar from the chain, zones of equal length. */
function taskOf(from: PlantChain, state: State, ids: TunnelIds, beltSpeed: number): TunnelTask {
  const { bar } = from;
  const c = coatSlug(from);
  const inside = state.value(`${c}.composition`) as Composition;
  const [top, bottom] = [state.number(ids.top), state.number(ids.bottom)];
  const face = (name: 'top' | 'side' | 'bottom') =>
    name === 'bottom' && bar.coat!.covers === 'without underside' ? 0 : state.number(`coat.thickness_${name}`);
  return {
    width: state.number('bar.cut_width'),
    length: state.number('bar.cut_length'),
    centre: bar.layers.filter((layer) => layer.sunkInto === undefined).map((layer) => layerThermal(from, state, layer)),
    coat: {
      top: face('top'),
      side: face('side'),
      bottom: face('bottom'),
      density: state.number(`${c}.density`),
      specificHeat: chocolateSpecificHeat(share(inside, fats), share(inside, sugars), 22, 0.5),
      conductivity: thermalConductivity(inside, 20, { crystallineSucrose: 1, fatContinuous: true }),
      fat: share(inside, fats),
      blend: fatBlend(inside),
      crystals: state.number(`${c}.temper_crystals`),
      growthRate: state.number(ids.growth),
    },
    coatStart: state.number(ids.chocolate),
    centreStart: state.number(ids.centre),
    zones: spans(from, state, ids).zones.map(({ air, from: start, to }): TunnelZone => ({
      length: to - start,
      air,
      belt: air,
      topCoefficient: top,
      sideCoefficient: top,
      bottomCoefficient: bottom,
    })),
    beltSpeed,
    mode: 'kinetics',
  };
}

/** Zones along the belt, m; of equal length, since their lengths are not written. */
function spans(from: PlantChain, state: State, ids: TunnelIds) {
  const length = state.number(`station.${ids.station.slug}.length`);
  const each = length / ids.zones.length;
  const zones = ids.zones.map((id, i) => ({
    name: from.chain.quantities[from.chain.index.get(id)!]!.meaning.replace(/ at the .*$/, ''),
    air: state.number(id),
    from: i * each,
    to: (i + 1) * each,
  }));
  return { zones };
}

function notesOn(state: State, ids: TunnelIds, run: TunnelRun): readonly string[] {
  const { setPoints, slug } = ids.station;
  const notes: string[] = [];
  const exit = setPoints.find((point) => /exit.*temperature|bar exit/i.test(point.name) && point.value.dimension === 'temperature');
  const n = (x: number) => x.toFixed(1);
  if (exit) {
    const { low, high } = exit.value;
    if (high !== undefined && run.exitSurface.value > high)
      notes.push(
        `Bars would leave at ${n(run.exitSurface.value)} °C, above the ${n(high)} °C of the set point: soft coats, smeared seals.`,
      );
    if (low !== undefined && run.exitSurface.value < low)
      notes.push(`Bars would leave at ${n(run.exitSurface.value)} °C, below the ${n(low)} °C of the set point.`);
  }
  const least = setPoints.find((point) => /dew/i.test(point.name))?.value.low ?? 0;
  if (run.dewMargin.value < least)
    notes.push(
      `The coldest surface leaves ${n(run.dewMargin.value)} K above the dew point of the room (${n(run.dewPoint)} °C); ${n(least)} K is asked: water may settle on bars (sugar bloom).`,
    );
  if (state.number(ids.offset) === 0)
    notes.push(
      `The exit is not calibrated: offset 0 K, heat transfer ${state.origin(ids.top)} (${state.number(ids.top).toFixed(0)} W/m²/K). Differences hold better than the numbers.`,
    );
  if (state.origin(ids.growth) === 'default')
    notes.push('The growth of crystals is a placeholder until it is fitted to a temper curve or a logged bar.');
  if (state.origin('plant.room_temperature') === 'default')
    notes.push(
      `The room is taken at ${n(state.number('plant.room_temperature'))} °C and ${(100 * state.number('plant.room_humidity')).toFixed(0)} %.`,
    );
  notes.push(
    `The ${ids.zones.length} zones are taken as equally long: their lengths are not in the definition of ${slug.replaceAll('_', ' ')}.`,
  );
  return notes;
}
