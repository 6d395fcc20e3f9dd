import type { Session } from '@barwright/chain';
import { holdUpFor, studentQuantile, whippedDensity } from '@barwright/science';
import { densityWindow, foamAnswer, foamOf, gasPlaces, NoFoam, type FoamAnswer } from './foam.js';
import type { PlantChain } from './plant-chain.js';
import type { CookTable } from './tables/index.js';

/** What is held of one whipped batch. */
export interface WhippedBatch {
  readonly name: string;
  readonly ended: string;
  readonly laid?: string;
  /** kg/m³; NaN where nobody weighed a cup. */
  readonly density: number;
  /** By the pressure of the batch and the gas that the good ones hold, kg/m³. */
  readonly expected: number;
  /** Gas by volume inside the whip. */
  readonly held: number;
  readonly lot?: string;
  readonly verdict: 'good' | 'too dense' | 'too light' | 'cannot tell';
  readonly cause: 'pressure' | 'gas' | 'moisture' | 'cannot tell' | '';
  readonly why: string;
}

/** Mean of some batches with its 95 % limits. */
export interface MeanOf {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly sd: number;
  readonly batches: number;
}

export interface FoamLogAnswer {
  readonly component: string;
  readonly batches: readonly WhippedBatch[];
  readonly good: number;
  /** Gas that the good batches hold in the whip; undefined with fewer than five. */
  readonly held?: MeanOf;
  /** What to write at the stage of the whip. */
  readonly write?: string;
  /** The same by lot of albumen, of every batch that was weighed; more than one lot. */
  readonly lots: readonly (MeanOf & { readonly lot: string; readonly differs: boolean })[];
  /** Runs of batches outside, with the mean of their densities answered. */
  readonly incidents: readonly { readonly batches: readonly string[]; readonly verdict: WhippedBatch['verdict']; readonly laid?: string; readonly answer: FoamAnswer }[]; // prettier-ignore
  readonly said: readonly string[];
}

/**
 * Judges every whipped batch of a log by its density cup: inside its window or not, and whether pressure, moisture or the gas that the
 * mass holds explains it. The good ones teach the plant's own hold-up. The session is left as it was.
 *
 * @throws NoFoam where nothing is whipped, or the log holds no density
 */
export function judgeFoam(from: PlantChain, session: Session, log: CookTable, name?: string): FoamLogAnswer {
  const component = foamOf(from, name);
  const c = component.slug;
  const state = session.snapshot();
  if (!log.density) throw new NoFoam(`The log holds no density of ${component.name}; a column such as "density (g/cm³)" is expected`);
  const { density } = log;
  const { whip, after, kept, free } = gasPlaces(state, c);
  const { low = 0, high = Infinity } = densityWindow(component);
  const wet = moistureWindow(c, from);
  const at = (i: number) => {
    const pressure = log.whipPressure?.[i] ?? NaN;
    const laid = log.sheetTemperature?.[i] ?? NaN;
    return {
      whip: { ...whip, pressure: Number.isFinite(pressure) ? pressure : whip.pressure },
      after: { ...after, temperature: Number.isFinite(laid) ? laid : after.temperature },
    };
  };
  const said = [...log.said];
  if (!log.whipPressure)
    said.push('The log has no whipping pressure: that of the plan is taken for every batch, so it cannot be the cause that is found.');
  const held = Array.from(density, (rho, i) => {
    if (!(rho > 0 && rho <= free)) return NaN;
    const { whip: there, after: here } = at(i);
    return holdUpFor(rho, free, there, here, kept);
  });
  const inside = (i: number) => density[i]! >= low && density[i]! <= high;
  const dryEnough = (i: number) => !(log.moisture && Number.isFinite(log.moisture[i]!)) || !wet || (log.moisture[i]! >= wet.low && log.moisture[i]! <= wet.high); // prettier-ignore
  const good = held.flatMap((h, i) => (Number.isFinite(h) && inside(i) && dryEnough(i) ? [i] : []));
  const learned = good.length >= 5 ? meanOf(good.map((i) => held[i]!)) : undefined;
  if (!learned) said.push(`Only ${good.length} good batches: too few to learn what the whip holds; five at least.`);
  const usual = learned?.mean ?? state.number(`${c}.gas_held`);
  const expected = Array.from(density, (_, i) => whippedDensity(usual, free, at(i).whip, at(i).after, kept).density);
  const residuals = good.map((i) => density[i]! - expected[i]!);
  const sd = learned ? Math.max(2, Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / (residuals.length - 1))) : NaN;
  const planned = whippedDensity(usual, free, whip, after, kept).density;
  const batches = log.names.map((batch, i): WhippedBatch => {
    const rho = density[i]!;
    const lot = log.foamerLots?.[i];
    const laid = log.laidFrom && log.laidTo ? `${log.laidFrom.words(log.laidFrom.seconds[i]!)} to ${log.laidTo.words(log.laidTo.seconds[i]!)}` : undefined; // prettier-ignore
    const told = (verdict: WhippedBatch['verdict'], cause: WhippedBatch['cause'], why: string): WhippedBatch => ({
      name: batch,
      ended: log.clock.words(log.clock.seconds[i]!),
      ...(laid ? { laid } : {}),
      density: rho,
      expected: expected[i]!,
      held: held[i]!,
      ...(lot ? { lot } : {}),
      verdict,
      cause,
      why,
    });
    if (!(rho > 0)) return told('cannot tell', 'cannot tell', 'no density was written');
    if (!(rho <= free)) return told('cannot tell', 'cannot tell', `${(rho / 1000).toFixed(3)} g/cm³ is denser than the mass without gas (${(free / 1000).toFixed(3)}): another unit, or no foam`); // prettier-ignore
    if (low === 0 && high === Infinity) return told('cannot tell', 'cannot tell', 'the density is written without a tolerance');
    if (inside(i)) return told('good', '', '');
    const verdict = rho > high ? 'too dense' : 'too light';
    if (!learned) return told(verdict, 'cannot tell', 'too few good batches to tell the cause');
    const byPressure = expected[i]! - planned;
    const apart = rho - expected[i]!;
    if (Math.abs(apart) <= 2.5 * sd && Math.sign(byPressure) === Math.sign(rho - planned) && Math.abs(byPressure) > sd)
      return told(verdict, 'pressure', `${bar(at(i).whip.pressure)} in the whip explains it: ${cup(expected[i]!)} is expected there`);
    if (!dryEnough(i)) return told(verdict, 'moisture', `its moisture (${(100 * log.moisture![i]!).toFixed(1)} %) is outside too: look at the cook first`); // prettier-ignore
    if (Math.abs(apart) > 2.5 * sd)
      return told(verdict, 'gas', `it holds ${(100 * ratio(held[i]!, usual)).toFixed(0)} % of the gas that good batches hold: albumen${lot ? ` ${lot}` : ''}, speed, time, or when the fat went in`); // prettier-ignore
    return told(verdict, 'cannot tell', 'within the scatter of the good batches: weigh another cup');
  });
  return {
    component: component.name,
    batches,
    good: good.length,
    ...(learned ? { held: learned, write: `hold-up: ${(100 * learned.mean).toFixed(1)} % ± ${(100 * learned.sd).toFixed(1)} %` } : {}),
    lots: lotsOf(batches),
    incidents: runsOf(from, session, log, batches, component.name),
    said,
  };
}

const cup = (rho: number) => `${(rho / 1000).toFixed(3)} g/cm³`;
const bar = (pascal: number) => `${(pascal / 1e5).toFixed(2)} bar`;
/** Gas by liquid of one hold-up over another. */
const ratio = (h: number, of: number) => h / (1 - h) / (of / (1 - of));

function moistureWindow(c: string, from: PlantChain): { low: number; high: number } | undefined {
  const at = from.chain.index.get(`${c}.moisture`);
  const window = at === undefined ? undefined : from.chain.quantities[at]!.window;
  if (!window || (window.low === undefined && window.high === undefined)) return undefined;
  return { low: window.low ?? 0, high: window.high ?? 1 };
}

function meanOf(values: readonly number[]): MeanOf {
  const n = values.length;
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const sd = n > 1 ? Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1)) : NaN;
  const half = n > 1 ? (studentQuantile(0.975, n - 1) * sd) / Math.sqrt(n) : NaN;
  return { mean, low: mean - half, high: mean + half, sd, batches: n };
}

/** Lots of albumen side by side; one differs where its mean lies apart from that of all others by more than chance (Welch, 95 %). */
function lotsOf(batches: readonly WhippedBatch[]): FoamLogAnswer['lots'] {
  const byLot = new Map<string, number[]>();
  for (const { lot, held } of batches) if (lot && Number.isFinite(held)) byLot.set(lot, [...(byLot.get(lot) ?? []), held]);
  if (byLot.size < 2) return [];
  return [...byLot].map(([lot, values]) => {
    const own = meanOf(values);
    const others = meanOf([...byLot].flatMap(([other, list]) => (other === lot ? [] : list)));
    const [a, b] = [own.sd ** 2 / own.batches, others.sd ** 2 / others.batches];
    const freedom = (a + b) ** 2 / (a ** 2 / (own.batches - 1) + b ** 2 / (others.batches - 1));
    const differs = own.batches >= 3 && others.batches >= 3 && Math.abs(own.mean - others.mean) / Math.sqrt(a + b) > studentQuantile(0.975, freedom); // prettier-ignore
    return { lot, ...own, differs };
  });
}

/** Neighbouring batches of one verdict together. */
function runsOf(
  from: PlantChain,
  session: Session,
  log: CookTable,
  batches: readonly WhippedBatch[],
  component: string,
): FoamLogAnswer['incidents'] {
  const runs: number[][] = [];
  batches.forEach(({ verdict }, i) => {
    if (verdict !== 'too dense' && verdict !== 'too light') return;
    const last = runs.at(-1);
    if (last && last.at(-1) === i - 1 && batches[i - 1]!.verdict === verdict) last.push(i);
    else runs.push([i]);
  });
  return runs.map((run) => {
    const mean = (list: Float64Array | undefined) => {
      const values = run.map((i) => list?.[i] ?? NaN).filter(Number.isFinite);
      return values.length > 0 ? values.reduce((sum, x) => sum + x, 0) / values.length : undefined;
    };
    const pressure = mean(log.whipPressure);
    const [first, final] = [run[0]!, run.at(-1)!];
    const laid = log.laidFrom && log.laidTo ? `${log.laidFrom.words(log.laidFrom.seconds[first]!)} to ${log.laidTo.words(log.laidTo.seconds[final]!)}` : undefined; // prettier-ignore
    return {
      batches: run.map((i) => batches[i]!.name),
      verdict: batches[first]!.verdict,
      ...(laid ? { laid } : {}),
      answer: foamAnswer(from, session, { density: mean(log.density)!, ...(pressure === undefined ? {} : { pressure }) }, component),
    };
  });
}
