import { brokenWindows, Session, type BrokenWindow } from '@barwright/chain';
import type { Station } from '@barwright/plant';
import { NoTunnel, tunnelHistory, type TunnelRun } from './tunnel.js';
import { NotOnLine } from './not-on-line.js';
import type { PlantChain } from './plant-chain.js';

/** A station at the present speed and at another. */
export interface StationAtSpeed {
  readonly name: string;
  readonly id: string;
  /** Share used: 1 is full. */
  readonly before: number;
  readonly after: number;
  /** What it can do and what is asked, in its own unit. */
  readonly can: number;
  readonly asked: number;
  readonly unit: string;
  /** Bars a minute at which it is full. */
  readonly fullAt: number;
  /** 'cannot' above 1, 'no catch-up' above the share that a house keeps free, else 'can'. */
  readonly verdict: 'cannot' | 'no catch-up' | 'can';
}

/** How long the accumulation bears machines of a group standing still, s; Infinity where the others take it all. */
export interface BufferAtSpeed {
  readonly station: string;
  readonly oneDown: { readonly before: number; readonly after: number };
}

/** What another line speed does. */
export interface SpeedAnswer {
  readonly before: number;
  readonly after: number;
  /** Fullest first: the order in which stations give out. */
  readonly stations: readonly StationAtSpeed[];
  /** The first that cannot, and the highest rate at which every station still can. */
  readonly first?: StationAtSpeed;
  readonly mostPossible: number;
  /** The highest rate that leaves every station the share that a house keeps free. */
  readonly mostWithMargin: number;
  readonly buffers: readonly BufferAtSpeed[];
  readonly tunnel?: { readonly before: TunnelRun; readonly after: TunnelRun };
  /** Chocolate that bars carry away, kg/h, and what the temperer is asked. */
  readonly beltSpeed: { readonly before: number; readonly after: number };
  readonly broken: readonly BrokenWindow[];
  /** Sentences to act on. */
  readonly advice: readonly string[];
  readonly cautions: readonly string[];
}

export interface SpeedOptions {
  /** Share of each station that the house keeps free to catch up; common practice 0.05, no source. */
  readonly margin?: number;
}

/**
 * What breaks first at another rate: the slab speed is set to give it, everything else follows from the chain.
 * The session is left as it was.
 * @param rate - bars/min
 * @throws NotOnLine where the bar has no line; RangeError where the rate is not above 0
 */
export function atSpeed(from: PlantChain, session: Session, rate: number, options: SpeedOptions = {}): SpeedAnswer {
  if (!from.line) throw new NotOnLine(`${from.bar.name} has no line; a speed means nothing without one`);
  if (!(rate > 0)) throw new RangeError(`the rate is ${rate} bars/min, but a rate above 0 is expected`);
  const margin = options.margin ?? 0.05;
  const before = session.snapshot();
  const now = before.number('line.rate');
  const after = new Session(from.chain, session.overrides());
  after.set('line.slab_speed', (before.number('line.slab_speed') * rate) / now);
  // A rate that was put in place by hand does not follow the slab.
  if (Math.abs(after.number('line.rate') / rate - 1) > 1e-9) after.set('line.rate', rate);
  const stations = from.line.stations
    .filter((station) => from.chain.index.has(`station.${station.slug}.utilisation`))
    .map((station): StationAtSpeed => {
      const s = `station.${station.slug}`;
      const used = after.number(`${s}.utilisation`);
      const quantity = from.chain.quantities[from.chain.index.get(`${s}.flow`)!]!;
      return {
        name: station.name,
        id: `${s}.utilisation`,
        before: before.number(`${s}.utilisation`),
        after: used,
        asked: after.number(`${s}.flow`),
        can: after.number(`${s}.rate`),
        unit: quantity.show ?? quantity.unit,
        fullAt: rate / used,
        verdict: used > 1 + 1e-9 ? 'cannot' : used > 1 - margin + 1e-9 ? 'no catch-up' : 'can',
      };
    })
    .sort((a, b) => b.after - a.after);
  const fullest = stations[0];
  const brokenBefore = new Set(brokenWindows(before).map(({ id }) => id));
  const broken = brokenWindows(after).filter(({ id }) => !brokenBefore.has(id) && !/\.utilisation$/.test(id));
  const tunnel = tunnelAt(from, before, rate);
  const answer = {
    before: now,
    after: rate,
    stations,
    ...(fullest?.verdict === 'cannot' ? { first: fullest } : {}),
    mostPossible: fullest ? fullest.fullAt : Infinity,
    mostWithMargin: fullest ? fullest.fullAt * (1 - margin) : Infinity,
    buffers: buffersOf(from.line.stations, from, before, after),
    ...(tunnel ? { tunnel } : {}),
    beltSpeed: { before: before.number('line.belt_speed'), after: after.number('line.belt_speed') },
    broken,
  };
  return { ...answer, advice: adviceOn(from, answer), cautions: cautionsOn(from, answer) };
}

function tunnelAt(from: PlantChain, state: ReturnType<Session['snapshot']>, rate: number): SpeedAnswer['tunnel'] {
  try {
    return { before: tunnelHistory(from, state), after: tunnelHistory(from, state, { rate }) };
  } catch (error) {
    if (error instanceof NoTunnel) return undefined;
    throw error;
  }
}

/** The chain counts a day where the others take it all; here that is Infinity. */
function buffersOf(
  stations: readonly Station[],
  from: PlantChain,
  before: { number(id: string): number },
  after: Session,
): readonly BufferAtSpeed[] {
  const time = (of: { number(id: string): number }, id: string) => (of.number(id) >= 86_400 ? Infinity : of.number(id));
  return stations
    .map((station) => ({ station: station.name, id: `station.${station.slug}.one_down` }))
    .filter(({ id }) => from.chain.index.has(id))
    .map(({ station, id }) => ({ station, oneDown: { before: time(before, id), after: time(after, id) } }));
}

type Facts = Omit<SpeedAnswer, 'advice' | 'cautions'>;

function adviceOn(from: PlantChain, facts: Facts): readonly string[] {
  const n = (x: number) => Math.floor(x + 1e-6);
  const list: string[] = [];
  const cannot = facts.stations.filter((station) => station.verdict === 'cannot');
  const tight = facts.stations.filter((station) => station.verdict === 'no catch-up');
  if (cannot.length > 0)
    list.push(
      `${capital(cannot[0]!.name)} gives out first, at ${n(cannot[0]!.fullAt)} bars/min; ${
        cannot.length === 1
          ? `everything else can do ${n(facts.after)}`
          : `${cannot
              .slice(1)
              .map(({ name }) => name)
              .join(', ')} cannot do ${n(facts.after)} either`
      }.`,
    );
  else list.push(`Every station can do ${n(facts.after)} bars/min.`);
  if (tight.length > 0) list.push(`${capital(tight.map(({ name }) => name).join(', '))}: no room to catch up after a stop.`);
  if (facts.after > facts.mostPossible)
    list.push(`At once at most ${n(facts.mostPossible)} bars/min; ${n(facts.after)} only after the ${cannot[0]!.name} can do more.`);
  if (facts.tunnel) {
    const { before, after } = facts.tunnel;
    const change = after.exitSurface.value - before.exitSurface.value;
    list.push(
      `Bars are ${(after.dwell / 60).toFixed(2)} min in the tunnel instead of ${(before.dwell / 60).toFixed(2)} and leave ${Math.abs(change).toFixed(1)} K ${change >= 0 ? 'warmer' : 'cooler'}, by the model.`,
    );
  }
  const belt = from
    .line!.stations.flatMap((station) => station.setPoints.map((point) => ({ station, point })))
    .find(({ point }) => /belt speed/i.test(point.name));
  if (belt && Math.abs(facts.beltSpeed.after - belt.point.value.value) > 0.01 * facts.beltSpeed.after)
    list.push(
      `Set the belt speed of the ${belt.station.name} to ${(60 * facts.beltSpeed.after).toFixed(2)} m/min, and blower and shaker with it.`,
    );
  return list;
}

function cautionsOn(from: PlantChain, facts: Facts): readonly string[] {
  const kills = from.plant.validations.filter((validation) => from.line!.stations.some((station) => station.name === validation.step));
  return [
    ...kills.map(
      ({ id, step }) =>
        `The ${step} is a kill step, proven only inside every limit of ${id}: more product may not come from less time, a deeper bed or less air. The qualified HACCP team decides.`,
    ),
    ...(facts.after > facts.before
      ? [
          'Guards, reject times of detectors and checkweighers, and jaw times are set for a speed: challenge each of them at the new one before product counts.',
        ]
      : []),
    'Barwright advises; it sets nothing on a machine.',
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
