import { Session } from '@barwright/chain';
import { chocolateOf, flowOptions, type FlowAnswer } from './viscosity.js';
import { coatModel, type CoatChange, type CoatExpected } from './enrober-what-if.js';
import { NoTunnel, tunnelHistory } from './tunnel.js';
import { NotOnLine } from './not-on-line.js';
import type { PlantChain } from './plant-chain.js';

/** A number before and after, SI. */
export interface Moved {
  readonly before: number;
  readonly after: number;
}

/** What a change at the enrober does to coat, bar, money, tunnel and temperer, and the ways back. */
export interface EnroberAnswer {
  readonly currency: string;
  readonly before: CoatExpected;
  readonly after: CoatExpected;
  /** The coat aimed at, kg, and its window. */
  readonly target: number;
  readonly window: { readonly low?: number; readonly high?: number };
  readonly barMass: Moved;
  readonly giveaway: Moved;
  /** Money for a bar. */
  readonly cost?: Moved;
  /** kg/h through the temperer; tunnel exit °C and load W. */
  readonly throughput?: Moved;
  readonly tunnelExit?: Moved;
  readonly tunnelLoad?: Moved;
  /** Ways back to the coat aimed at. */
  readonly blower?: number;
  readonly correction?: FlowAnswer;
  readonly notes: readonly string[];
}

/**
 * What-if at the enrober: other flow or settings, the coat to be expected, what follows from it, and what brings it back.
 * The session is left as it was.
 * @throws NoChocolate where the bar has no chocolate coat; NotOnLine where the line has no enrober
 */
export function enroberAnswer(from: PlantChain, session: Session, change: CoatChange): EnroberAnswer {
  const component = chocolateOf(from);
  const state = session.snapshot();
  const coats = coatModel(from, state);
  if (!coats) throw new NotOnLine(`${from.line ? from.line.name : from.bar.name} has no enrober; a coat cannot be expected from it`);
  const before = coats.at();
  const after = coats.at(change);
  const target = state.number('coat.mass');
  const window = from.bar.coat!.amount.by === 'mass' ? from.bar.coat!.amount.mass : undefined;
  const heavier = new Session(from.chain, session.overrides());
  // The coat itself may follow from a thickness or a rest; it is put in place as a whole, and its faces with it.
  heavier.set('coat.mass', after.mass);
  const moved = (id: string): Moved | undefined =>
    from.chain.index.has(id) && state.status(id).ok ? { before: state.number(id), after: heavier.number(id) } : undefined;
  const tunnel = tunnelMoved(from, state, heavier);
  const own = {
    yieldValue: state.number(`${component.slug}.yield_value`),
    plasticViscosity: state.number(`${component.slug}.plastic_viscosity`),
  };
  const flowChanged = change.yieldValue !== undefined || change.plasticViscosity !== undefined;
  const correction = flowChanged
    ? flowOptions(from, state, component, {
        yieldValue: own.yieldValue,
        plasticViscosity: own.plasticViscosity,
        measured: { yieldValue: change.yieldValue ?? own.yieldValue, plasticViscosity: change.plasticViscosity ?? own.plasticViscosity },
      })
    : undefined;
  const blower = coats.blowerFor(target, change);
  const cost = moved('bar.cost');
  const throughput = from.chain.quantities.find(({ id }) => /^station\..*temper.*\.throughput$/.test(id));
  const through = throughput && moved(throughput.id);
  return {
    currency: from.plant.currency,
    before,
    after,
    target,
    window: { ...(window?.low === undefined ? {} : { low: window.low }), ...(window?.high === undefined ? {} : { high: window.high }) },
    barMass: moved('bar.mass')!,
    giveaway: moved('bar.giveaway')!,
    ...(cost ? { cost } : {}),
    ...(through ? { throughput: through } : {}),
    ...tunnel,
    ...(blower === undefined ? {} : { blower }),
    ...(correction ? { correction } : {}),
    notes: notesOn(after, target, blower),
  };
}

function tunnelMoved(
  from: PlantChain,
  before: ReturnType<Session['snapshot']>,
  after: Session,
): Pick<EnroberAnswer, 'tunnelExit' | 'tunnelLoad'> {
  try {
    const [a, z] = [tunnelHistory(from, before), tunnelHistory(from, after)];
    return {
      tunnelExit: { before: a.exitSurface.value, after: z.exitSurface.value },
      tunnelLoad: { before: a.load, after: z.load },
    };
  } catch (error) {
    if (error instanceof NoTunnel) return {};
    throw error;
  }
}

function notesOn(after: CoatExpected, target: number, blower: number | undefined): readonly string[] {
  const notes = [
    after.calibratedOn === 'plant'
      ? 'Film theory with the calibration of the plant.'
      : 'Film theory brought, face by face, to the coat as entered at the flow and settings as defined; directions are safe, sizes are not. Weigh centres and bars, lane by lane.',
  ];
  if (blower === undefined && Math.abs(after.mass - target) > 1e-6)
    notes.push('No blower speed from 0 to 40 m/s brings the coat back to the mass aimed at.');
  if (after.topSetBy === 'levelling')
    notes.push('The top is set by levelling over the edges: more blower does nothing until it is strong enough to be the thinner.');
  if (after.topSetBy === 'curtain') notes.push('The top is what the curtain lays on: the chocolate is too thick to drain.');
  notes.push(
    'Temper first: an over- or under-tempered mass changes the coat more than any setting. Barwright advises; it sets nothing on a machine.',
  );
  return notes;
}
