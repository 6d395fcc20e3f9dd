import { evaluate, type State } from '@barwright/chain';
import type { Coat, CoatTask } from '@barwright/science';
import { coatOf, enroberTask } from './enrober.js';
import { stationNamed } from './given.js';
import type { PlantChain } from './plant-chain.js';

/** The coat that is to be expected when flow or settings change, brought to the coat that the plant entered. */
export interface CoatExpected {
  /** kg, m. */
  readonly mass: number;
  readonly top: number;
  readonly side: number;
  readonly bottom: number;
  /** About 95 %, as the film model is trusted once it is brought to a known coat: 15 % of the change and of the mass. */
  readonly low: number;
  readonly high: number;
  /** What sets the top: the blower, levelling over the edges, or the curtain. */
  readonly topSetBy: Coat['topSetBy'];
  /** Measured over film theory: one factor of the plant, or one for each face that brings theory to the coat as entered. */
  readonly calibration: { readonly top: number; readonly side: number; readonly bottom: number };
  readonly calibratedOn: 'plant' | 'coat as entered';
}

/** Flow or settings in place of those of the state; SI. */
export interface CoatChange {
  readonly yieldValue?: number;
  readonly plasticViscosity?: number;
  readonly blowerSpeed?: number;
  /** 1/s */
  readonly shakerFrequency?: number;
  readonly shakerAmplitude?: number;
  readonly beltSpeed?: number;
}

/** Coat by film theory, once known at one point, trusted to this relative half-width. */
const halfWidth = 0.15;

/** The coat of a bar as it answers to flow and settings. */
export interface CoatModel {
  readonly at: (change?: CoatChange) => CoatExpected;
  /** The blower speed that brings the coat to a mass at a flow, m/s; undefined where no speed from 0 to 40 m/s does. */
  readonly blowerFor: (mass: number, change?: CoatChange) => number | undefined;
}

const strongest = 40;

/**
 * The coat at other flow or settings. Film theory alone is good for directions; so it is brought to what is known: the plant's own
 * calibration where it has one, else, face by face, the coat as entered at the flow and settings as defined.
 * @returns undefined where there is no enrober or no chocolate coat
 */
export function coatModel(from: PlantChain, state: State): CoatModel | undefined {
  const task = enroberTask(from, state);
  const known = task && knownCoat(from, state);
  if (!task || !known) return undefined;
  const at = (change: CoatChange = {}): CoatExpected => {
    const defined = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
    const film = coatOf(from, { ...task, ...defined, calibration: known.on === 'plant' ? known.factor.top : 1 });
    const faces = { top: film.top * known.face.top, side: film.side * known.face.side, bottom: film.bottom * known.face.bottom };
    const mass = known.on === 'plant' ? film.mass : (known.mass * volume(from, task, faces)) / known.volume;
    const [low, high] = [mass * (1 - halfWidth), mass * (1 + halfWidth)];
    return { mass, ...faces, low, high, topSetBy: film.topSetBy, calibration: known.factor, calibratedOn: known.on };
  };
  const blowerFor = (mass: number, change: CoatChange = {}) => {
    const massAt = (blowerSpeed: number) => at({ ...change, blowerSpeed }).mass;
    return massAt(0) < mass || massAt(strongest) > mass ? undefined : halve(0, strongest, (speed) => massAt(speed) > mass);
  };
  return { at, blowerFor };
}

type Faces = { readonly top: number; readonly side: number; readonly bottom: number };

/** Coat on the faces of the centre, edges left out: only its ratio is used. */
function volume(from: PlantChain, { length, width, height }: CoatTask, { top, side, bottom }: Faces): number {
  const under = from.bar.coat?.covers === 'without underside' ? 0 : bottom;
  return length * width * (top + under) + 2 * (length + width) * height * side;
}

/** The place in a range where a test that holds below stops to hold. */
function halve(from: number, to: number, holds: (x: number) => boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

interface Known {
  readonly on: CoatExpected['calibratedOn'];
  readonly factor: Faces;
  /** What film faces are multiplied by on top of the factor that is in them already. */
  readonly face: Faces;
  readonly mass: number;
  readonly volume: number;
}

/** The calibration of the plant, else the factor of each face that meets the coat as entered at flow and settings as defined. */
function knownCoat(from: PlantChain, state: State): Known | undefined {
  const station = from.line && stationNamed(from.line, /enrob/i);
  if (!station) return undefined;
  const one = { top: 1, side: 1, bottom: 1 };
  const id = [`set.${station.slug}.coat_calibration`, `station.${station.slug}.coat_calibration`].find((name) =>
    from.chain.index.has(name),
  )!;
  if (state.origin(id) !== 'default') {
    const k = state.number(id);
    return { on: 'plant', factor: { top: k, side: k, bottom: k }, face: one, mass: NaN, volume: NaN };
  }
  const asDefined = evaluate(from.chain);
  const task = enroberTask(from, asDefined)!;
  const film = coatOf(from, { ...task, calibration: 1 });
  const entered = (face: 'top' | 'side' | 'bottom') =>
    from.chain.index.has(`coat.thickness_${face}`) ? asDefined.number(`coat.thickness_${face}`) : 0;
  const faces = { top: entered('top'), side: entered('side'), bottom: entered('bottom') };
  const factor = { top: faces.top / film.top, side: faces.side / film.side, bottom: faces.bottom / film.bottom };
  return { on: 'coat as entered', factor, face: factor, mass: asDefined.number('coat.mass'), volume: volume(from, task, faces) };
}
