import { flowsAsCaramel } from '@barwright/bar';
import { Session } from '@barwright/chain';
import type { Component } from '@barwright/plant';
import { caramelViscosity, type Composition } from '@barwright/science';
import { cookedComponents, isRoot } from './drive.js';
import type { PlantChain } from './plant-chain.js';

/** There is no such cooked component in the bar, or its cook cannot be followed; the sentence says what there is. */
export class NoCook extends RangeError {
  readonly code = 'NO_COOK';
}

/** A cooked component by name or slug; without a name the one that flows as a caramel, else the first. @throws NoCook */
export function cookOf(from: PlantChain, name?: string): Component {
  const cooked = cookedComponents(from);
  if (cooked.length === 0) throw new NoCook(`Nothing in ${from.bar.name} is cooked`);
  if (name === undefined) return cooked.find(flowsAsCaramel) ?? cooked[0]!;
  const wanted = name.toLowerCase();
  const found = cooked.find((one) => one.name.toLowerCase() === wanted || one.slug === wanted);
  if (!found) throw new NoCook(`No cook of ${from.bar.name} makes "${name}"; it cooks ${cooked.map((one) => one.name).join(' and ')}`);
  return found;
}

/** The cooks of a bar, the one that flows as a caramel first. @throws NoCook where nothing is cooked */
export function cookChoices(from: PlantChain): readonly Component[] {
  const first = cookOf(from);
  return [first, ...cookedComponents(from).filter((one) => one !== first)];
}

/** What is turned to move the moisture of a cook: whatever the definition ends it by. */
export function cookKnob(from: PlantChain, component: Component): string {
  const stage = component.stages.find((one) => one.cook)!;
  const known = [`${component.slug}.moisture`, `${component.slug}.stage.${stage.slug}.to_moisture`, `${component.slug}.cook_temperature`];
  const knob = known.find((id) => isRoot(from, id));
  if (knob === undefined) throw new NoCook(`The cook of ${component.name} has no end that could be moved`);
  return knob;
}

/** How a cook's readings move with the moisture of what it makes, everything else as in a state. */
export interface CookCurve {
  readonly component: Component;
  readonly knob: string;
  /** Rising; wet basis on the finished component. */
  readonly moisture: readonly number[];
  readonly knobs: readonly number[];
  /** End temperature as the probe shows it, °C, with the plant's corrections. */
  readonly indicated: readonly number[];
  readonly refractometer: readonly number[];
  readonly compositions: readonly Composition[];
  /** The plant's own factor of the viscosity; undefined where it does not flow as a caramel. */
  readonly factor: number | undefined;
}

const points = 33;
const halfWidth = 0.03;

/** Follows a cook from three points drier to three points wetter, in steps that the readings run straight between. */
export function cookCurve(from: PlantChain, session: Session, component: Component): CookCurve {
  const c = component.slug;
  const knob = cookKnob(from, component);
  const trial = new Session(from.chain, session.overrides());
  const now = trial.number(knob);
  const temperature = knob.endsWith('cook_temperature');
  const [low, high] = temperature ? [now - 8, now + 8] : [Math.max(0.02, now - halfWidth), Math.min(0.4, now + halfWidth)];
  const rows = Array.from({ length: points }, (_, i) => {
    const at = low + ((high - low) * i) / (points - 1);
    trial.set(knob, at);
    return {
      knob: at,
      moisture: trial.number(`${c}.moisture`),
      indicated: trial.number(`${c}.cook_indicated`),
      refractometer: trial.number(`${c}.refractometer`),
      composition: (trial.value(`${c}.composition`) as Composition).slice(),
    };
  })
    .filter(({ moisture, indicated }) => Number.isFinite(moisture) && Number.isFinite(indicated))
    .sort((a, b) => a.moisture - b.moisture);
  if (rows.length < 3) throw new NoCook(`The cook of ${component.name} cannot be followed on either side of where it ends now`);
  return {
    component,
    knob,
    moisture: rows.map((row) => row.moisture),
    knobs: rows.map((row) => row.knob),
    indicated: rows.map((row) => row.indicated),
    refractometer: rows.map((row) => row.refractometer),
    compositions: rows.map((row) => row.composition),
    factor: from.chain.index.has(`${c}.viscosity_factor`) ? session.number(`${c}.viscosity_factor`) : undefined,
  };
}

/** Straight between the points; NaN beyond them. `x` may rise or fall. */
export function between(x: readonly number[], y: readonly number[], at: number): number {
  const falls = x[0]! > x.at(-1)!;
  for (let i = 1; i < x.length; i++) {
    const [a, b] = [x[i - 1]!, x[i]!];
    if (falls ? at <= a && at >= b : at >= a && at <= b) return b === a ? y[i]! : y[i - 1]! + ((y[i]! - y[i - 1]!) * (at - a)) / (b - a);
  }
  return NaN;
}

/** Viscosity along the curve at a temperature, Pa·s. */
export function viscosityAlong(curve: CookCurve, t: number): readonly number[] {
  return curve.compositions.map((of) => caramelViscosity(of, t, curve.factor ?? 1));
}

/** The moisture at which a caramel flows so at a temperature; NaN beyond the curve. */
export function moistureOfViscosity(curve: CookCurve, viscosity: number, t: number): number {
  return between(viscosityAlong(curve, t).map(Math.log), curve.moisture, Math.log(viscosity));
}

/** The knob that gives a moisture. @throws NoCook beyond the curve */
export function knobFor(curve: CookCurve, moisture: number): number {
  const knob = between(curve.moisture, curve.knobs, moisture);
  if (Number.isFinite(knob)) return knob;
  const [low, high] = [curve.moisture[0]!, curve.moisture.at(-1)!].map((x) => (100 * x).toFixed(1));
  throw new NoCook(
    `${curve.component.name} at ${(100 * moisture).toFixed(2)} % lies beyond the ${low} to ${high} % that its cook is followed over; look for a mistyped reading`,
  );
}
