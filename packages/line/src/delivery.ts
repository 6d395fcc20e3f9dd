import { additionsOf } from '@barwright/bar';
import { brokenWindows, Session } from '@barwright/chain';
import type { Component, Material } from '@barwright/plant';
import { cookedComponents, drivenByTemperature } from './drive.js';
import type { PlantChain } from './plant-chain.js';

/** The material cannot be judged as a syrup; the sentence says which can. */
export class NoSyrup extends RangeError {
  readonly code = 'NO_SYRUP';
}

export interface Delivered {
  readonly solids?: number;
  readonly dextroseEquivalent?: number;
  /** Mass of the load, kg. */
  readonly mass?: number;
}

/** One quantity with the syrup of the definition and with the one delivered, the cook held by its end temperature. */
export interface DeliveryEffect {
  readonly id: string;
  readonly meaning: string;
  readonly before: number;
  readonly after: number;
  /** The share of the room to the nearer end of its window that the change takes: 1 reaches it. Undefined without a window. */
  readonly ofRoom?: number;
}

export interface DeliveryAnswer {
  readonly material: string;
  readonly given: {
    readonly solids: { readonly before: number; readonly after: number };
    readonly dextroseEquivalent: { readonly before: number; readonly after: number };
  };
  /** By component that it goes into. */
  readonly components: readonly {
    readonly component: string;
    readonly share: number;
    /** kg of dry matter per 100 kg charge, and kg of water to boil away more per 100 kg charge at the old moisture. */
    readonly solidsPerCharge: number;
    readonly moreWater: number;
    readonly effects: readonly DeliveryEffect[];
    /** End temperature that would hold the old moisture, less the one set now, K. */
    readonly correction: number;
  }[];
  /** Limits of the intake that the delivery breaks. */
  readonly outsideIntake: readonly string[];
  readonly verdict: 'do nothing' | 'adjust' | 'refuse' | 'cannot tell';
  /** Dry matter that is short of what is paid for, kg of syrup and money, for the load. */
  readonly short?: { readonly mass: number; readonly money: number };
  readonly sentences: readonly string[];
}

const watched = ['moisture', 'water_activity', 'viscosity', 'refractometer', 'sucrose_supersaturation', 'cost'];
/** A change that takes less than this share of the room to a limit needs no hand: common practice, no source. */
const smallShare = 0.25;

/**
 * What a tanker of syrup that is not quite as ordered does, all cooks held by their present end temperatures, and whether to act.
 * The session is left as it was.
 * @throws NoSyrup
 */
export function deliveryAnswer(from: PlantChain, session: Session, name: string, delivered: Delivered): DeliveryAnswer {
  const material = syrupNamed(from, name);
  const m = `material.${material.slug}`;
  const users = cookedComponents(from).filter((one) => additionsOf(one).some(({ addition }) => addition.name === material.name));
  const held = drivenByTemperature(from, session, users);
  const before = held.session.snapshot();
  const changes = {
    ...(delivered.solids === undefined ? {} : { [`${m}.solids`]: delivered.solids }),
    ...(delivered.dextroseEquivalent === undefined ? {} : { [`${m}.dextrose_equivalent`]: delivered.dextroseEquivalent }),
  };
  if (Object.keys(changes).length === 0) throw new NoSyrup(`Give what was delivered of ${material.name}: solids, DE or both`);
  const after = new Session(held.from.chain, held.session.overrides());
  after.set(changes);
  const moistureHeld = new Session(from.chain, session.overrides());
  moistureHeld.set(changes);
  const given = {
    solids: { before: before.number(`${m}.solids`), after: after.number(`${m}.solids`) },
    dextroseEquivalent: { before: before.number(`${m}.dextrose_equivalent`), after: after.number(`${m}.dextrose_equivalent`) },
  };
  const components = users.map((component) => effectsOn(held.from, component, material, before, after, session, moistureHeld));
  const outsideIntake = intakeBroken(from, material, delivered);
  const broken = new Set(brokenWindows(before).map(({ id }) => id));
  const newly = brokenWindows(after).filter(({ id }) => !broken.has(id) && users.some(({ slug }) => id.startsWith(`${slug}.`)));
  const act = newly.length > 0 || components.some(({ effects }) => effects.some(({ ofRoom }) => (ofRoom ?? 0) > smallShare));
  const judged = components.some(({ effects }) => effects.some(({ ofRoom }) => ofRoom !== undefined));
  const verdict: DeliveryAnswer['verdict'] = outsideIntake.length > 0 ? 'refuse' : act ? 'adjust' : judged ? 'do nothing' : 'cannot tell';
  const short = shortOf(session, material, given.solids, delivered.mass);
  const answer = { material: material.name, given, components, outsideIntake, verdict, ...(short ? { short } : {}) };
  return { ...answer, sentences: sentencesOn(answer) };
}

function syrupNamed(from: PlantChain, name: string): Material {
  const syrups = [...from.plant.materials.values()].filter(({ syrup, slug }) => syrup && from.chain.index.has(`material.${slug}.solids`));
  const wanted = name.toLowerCase();
  const found = syrups.find((one) => one.name.toLowerCase() === wanted || one.slug === wanted);
  if (found) return found;
  const list = syrups.map((one) => one.name).join(', ');
  throw new NoSyrup(`${from.bar.name} uses no syrup "${name}" written by solids and DE; it uses ${list || 'none'}`);
}

function effectsOn(
  from: PlantChain,
  component: Component,
  material: Material,
  before: Session | ReturnType<Session['snapshot']>,
  after: Session,
  today: Session,
  moistureHeld: Session,
): DeliveryAnswer['components'][number] {
  const c = component.slug;
  const share = additionsOf(component)
    .filter(({ addition }) => addition.name === material.name)
    .reduce((sum, { id }) => sum + before.number(id), 0);
  const effects = watched
    .map((name) => `${c}.${name}`)
    .filter((id) => from.chain.index.has(id))
    .map((id): DeliveryEffect => {
      const quantity = from.chain.quantities[from.chain.index.get(id)!]!;
      const [was, is] = [before.number(id), after.number(id)];
      const window = quantity.window ?? (id.endsWith('.moisture') ? finishedWindow(component) : undefined);
      const end = is > was ? window?.high : window?.low;
      const room = end === undefined ? undefined : Math.abs(end - was);
      return { id, meaning: quantity.meaning, before: was, after: is, ...(room ? { ofRoom: Math.abs(is - was) / room } : {}) };
    });
  const dry = (state: { number(id: string): number }) => state.number(`${c}.charge_dry`) * state.number(`${c}.charge_sum`);
  const cooked = component.stages.find((stage) => stage.cook)!;
  const away = (state: { number(id: string): number }) => state.number(`${c}.stage.${cooked.slug}.evaporated`);
  return {
    component: component.name,
    share,
    solidsPerCharge: 100 * (dry(after) - dry(before)),
    moreWater: 100 * (away(moistureHeld) - away(today)),
    effects,
    correction: moistureHeld.number(`${c}.cook_indicated`) - today.number(`${c}.cook_indicated`),
  };
}

function finishedWindow(component: Component): { low?: number; high?: number } | undefined {
  const end = component.stages.find((stage) => stage.cook)?.cook?.end;
  if (!end || end.by === 'temperature') return undefined;
  const { low, high } = end.moisture;
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
}

/** Checks of the plan at this material's intake whose limits the delivery breaks. */
function intakeBroken(from: PlantChain, material: Material, delivered: Delivered): readonly string[] {
  const words = material.name.toLowerCase();
  return from.plant.checks.flatMap((check) => {
    if (!words.includes(check.at.toLowerCase()) || !check.limit) return [];
    const value = /solid/i.test(check.what)
      ? delivered.solids
      : /\bDE\b|dextrose/i.test(check.what)
        ? delivered.dextroseEquivalent
        : undefined;
    const { low, high, text } = check.limit;
    if (value === undefined || !(value < (low ?? -Infinity) - 1e-9 || value > (high ?? Infinity) + 1e-9)) return [];
    return [`${check.what} is outside the ${text} of the intake check`];
  });
}

/** Dry matter paid for and not delivered, as syrup of the ordered solids. */
function shortOf(
  session: Session,
  material: Material,
  solids: { before: number; after: number },
  mass: number | undefined,
): DeliveryAnswer['short'] {
  if (mass === undefined) return undefined;
  const missing = mass * (1 - solids.after / solids.before);
  const price = `material.${material.slug}.price`;
  return { mass: missing, money: material.price ? missing * session.number(price) : NaN };
}

function sentencesOn(answer: Omit<DeliveryAnswer, 'sentences'>): readonly string[] {
  const { material, verdict, components, outsideIntake, short } = answer;
  const worst = components
    .flatMap(({ effects, component }) =>
      effects.flatMap((effect) => (effect.ofRoom === undefined ? [] : [{ component, ...effect, ofRoom: effect.ofRoom }])),
    )
    .sort((a, b) => b.ofRoom - a.ofRoom)[0];
  const sentences: string[] = [];
  if (verdict === 'do nothing')
    sentences.push(
      `Do nothing. At the end temperatures set now the largest effect of this ${material} is on the ${worst ? `${worst.meaning}: it takes ${(100 * worst.ofRoom).toFixed(0)} % of the room to its limit` : 'numbers below'}.`,
    );
  if (verdict === 'cannot tell')
    sentences.push('Cannot tell whether to act: no number that this syrup moves has a limit in the definition. The changes are below.');
  if (verdict === 'adjust' && worst)
    sentences.push(`Adjust: the ${worst.meaning} would take ${(100 * worst.ofRoom).toFixed(0)} % of the room to its limit.`);
  if (verdict === 'refuse')
    sentences.push(`Outside what the plant accepts: ${outsideIntake.join('; ')}. Quality decides before it is unloaded.`);
  for (const { component, correction, moreWater } of components)
    sentences.push(
      `${component}: ${moreWater >= 0 ? '+' : '−'}${Math.abs(moreWater).toFixed(2)} kg of water to boil away per 100 kg charged; the end temperature that would hold the moisture exactly moves by ${correction >= 0 ? '+' : '−'}${Math.abs(correction).toFixed(2)} K${Math.abs(correction) < 0.3 ? ', less than a probe repeats to' : ''}.`,
    );
  if (short && Number.isFinite(short.money))
    sentences.push(
      short.mass > 0
        ? `The load is short of ${short.mass.toFixed(0)} kg of syrup at the ordered solids.`
        : `The load brings ${Math.abs(short.mass).toFixed(0)} kg more of syrup at the ordered solids than ordered.`,
    );
  sentences.push(
    'A different supplier or conversion, colour, SO₂ and temperature are not in these two numbers: the certificate and the nose still count.',
  );
  return sentences;
}
