import { calibrate, type Estimated, type Session } from '@barwright/chain';
import { batchAnswer, type BatchAnswer, type BatchReadings } from './cook-batch.js';
import { between, cookCurve, cookOf, knobFor, viscosityAlong, type CookCurve } from './cook-curve.js';
import type { PlantChain } from './plant-chain.js';
import type { CookTable } from './tables/index.js';

type Reading = 'laboratory' | 'refractometer' | 'viscosity' | 'temperature';

/** What is held of one batch. */
export interface JudgedBatch {
  readonly name: string;
  readonly ended: string;
  readonly laid?: string;
  /** Moisture each reading stands for, aligned so that most batches agree. */
  readonly says: Readonly<Partial<Record<Reading, number>>>;
  /** What the readings but the temperature agree on. */
  readonly moisture: number;
  /**
   * good; wet or dry: the moisture is outside and the temperature says so too; probe: temperature and the rest contradict;
   * unconfirmed: the laboratory stands alone; repeat: a second result of a batch above; cannot tell: too few readings.
   */
  readonly verdict: 'good' | 'wet' | 'dry' | 'probe' | 'unconfirmed' | 'repeat' | 'cannot tell';
  readonly why: string;
  /** Clock at which the first reading that tells was there. */
  readonly known: string;
}

/** A constant of the plant, learned from the good batches. */
export interface LearnedOffset extends Estimated {
  /** Scatter of one batch about it. */
  readonly sd: number;
  readonly batches: number;
  /** What to write into the definition. */
  readonly write: string;
}

/** When batches were laid, s on the clock of that column, and the good batches either side. */
export interface LaidSpan {
  readonly from: number;
  readonly to: number;
  /** End of the last good batch laid before, start of the first good one after; left out where there is none. */
  readonly lastGood?: number;
  readonly nextGood?: number;
}

/** What a log of cooks says. */
export interface CookLogAnswer {
  readonly component: string;
  readonly batches: readonly JudgedBatch[];
  readonly good: number;
  /** Runs of batches that call for an answer, first one first. */
  readonly incidents: readonly { readonly batches: readonly string[]; readonly verdict: JudgedBatch['verdict']; readonly known: string; readonly laid?: string; readonly at?: LaidSpan; readonly answer: BatchAnswer }[]; // prettier-ignore
  readonly offsets: readonly LearnedOffset[];
  readonly said: readonly string[];
}

/** Least scatter that a reading is believed to have, as moisture: no titration repeats better. */
const floor = 0.0008;
const median = (values: readonly number[]): number => {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  const n = sorted.length;
  return n === 0 ? NaN : (sorted[(n - 1) >> 1]! + sorted[n >> 1]!) / 2;
};

/**
 * Judges every batch of a log: do temperature, refractometer, laboratory and viscosity tell one story? The good ones set the plant's
 * own corrections, with their scatter. Nothing is written; the session is left as it was.
 * @throws NoCook
 */
export function judgeCooks(from: PlantChain, session: Session, log: CookTable, name?: string): CookLogAnswer {
  const component = cookOf(from, name);
  const curve = cookCurve(from, session, component);
  const said = [...log.said];
  const says = aligned(from, session, curve, log);
  const count = log.names.length;
  const consensus = Array.from({ length: count }, (_, i) =>
    median((['laboratory', 'refractometer', 'viscosity'] as const).map((r) => says[r]?.[i] ?? NaN)),
  );
  const scatter = (r: Reading) => {
    const list = says[r];
    return list ? Math.max(floor, 1.4826 * median(list.map((x, i) => Math.abs(x - consensus[i]!)))) : NaN;
  };
  const sd = { laboratory: scatter('laboratory'), refractometer: scatter('refractometer'), viscosity: scatter('viscosity'), temperature: scatter('temperature') }; // prettier-ignore
  const batches = log.names.map((_, i) => judge(curve, log, says, consensus, sd, i));
  const good = batches.flatMap((batch, i) => (batch.verdict === 'good' ? [i] : []));
  if (good.length < 5) said.push(`Only ${good.length} good batches: too few to set the plant's own corrections from; five at least.`);
  const offsets = good.length < 5 ? [] : learn(from, session, curve, log, good);
  return {
    component: component.name,
    batches,
    good: good.length,
    incidents: incidentsOf(from, session, log, batches, component.name),
    offsets,
    said,
  };
}

/** Each reading as a moisture, shifted so that its median meets that of the laboratory (or of the first there is). */
function aligned(from: PlantChain, session: Session, curve: CookCurve, log: CookTable): Partial<Record<Reading, number[]>> {
  const c = curve.component.slug;
  const raw: Partial<Record<Reading, number[]>> = {};
  if (log.moisture) raw.laboratory = [...log.moisture];
  if (log.refractometer) raw.refractometer = shifted(curve.refractometer, curve.moisture, log.refractometer);
  if (log.viscosity && curve.factor !== undefined) {
    const usual = from.chain.index.has(`${c}.deposit_temperature`) ? session.number(`${c}.deposit_temperature`) : NaN;
    raw.viscosity = Array.from(log.viscosity, (value, i) => {
      const t = log.depositTemperature?.[i] ?? usual;
      return value > 0
        ? between(viscosityAlong(curve, Number.isFinite(t) ? t : usual).map(Math.log), curve.moisture, Math.log(value))
        : NaN;
    });
  }
  if (log.temperature) raw.temperature = shifted(curve.indicated, curve.moisture, log.temperature);
  const reference = raw.laboratory ?? raw.refractometer ?? raw.viscosity ?? raw.temperature!;
  for (const key of Object.keys(raw) as Reading[]) {
    const shift = median(raw[key]!.map((x, i) => x - reference[i]!));
    if (Number.isFinite(shift)) raw[key] = raw[key]!.map((x) => x - shift);
  }
  return raw;
}

/** Readings along the curve as moistures, after the readings are shifted so that the median batch lies where the chain has it. */
function shifted(x: readonly number[], y: readonly number[], readings: Float64Array): number[] {
  const middle = x[x.length >> 1]!;
  const shift = median([...readings]) - middle;
  return Array.from(readings, (value) => (Number.isFinite(value) ? between(x, y, value - shift) : NaN));
}

function judge(
  curve: CookCurve,
  log: CookTable,
  says: Partial<Record<Reading, number[]>>,
  consensus: readonly number[],
  sd: Readonly<Record<Reading, number>>,
  i: number,
): JudgedBatch {
  const name = log.names[i]!;
  const ended = log.clock.words(log.clock.seconds[i]!);
  const laid = log.laidFrom && log.laidTo ? `${log.laidFrom.words(log.laidFrom.seconds[i]!)} to ${log.laidTo.words(log.laidTo.seconds[i]!)}` : undefined; // prettier-ignore
  const own = Object.fromEntries(Object.entries(says).flatMap(([key, list]) => (Number.isFinite(list[i]!) ? [[key, list[i]!]] : []))) as JudgedBatch['says']; // prettier-ignore
  const { low, high } = windowOf(curve);
  const told = (verdict: JudgedBatch['verdict'], why: string, moisture: number, known = ended): JudgedBatch => ({
    name,
    ended,
    ...(laid ? { laid } : {}),
    says: own,
    moisture,
    verdict,
    why,
    known,
  });
  const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
  const twin = log.names.findIndex(
    (other, k) => k < i && name !== other && name.startsWith(other) && log.clock.seconds[k] === log.clock.seconds[i],
  );
  if (twin >= 0) return told('repeat', `second result of ${log.names[twin]!}`, consensus[i]!);
  const lab = own.laboratory;
  const others = [own.refractometer, own.viscosity].filter((x): x is number => x !== undefined);
  const rest = others.length > 0 ? others.reduce((sum, x) => sum + x, 0) / others.length : NaN;
  const reported = log.reported ? log.reported.words(log.reported.seconds[i]!) : ended;
  if (lab === undefined && others.length === 0)
    return told('cannot tell', own.temperature === undefined ? 'no reading' : 'only a temperature, which cannot confirm itself', own.temperature ?? NaN); // prettier-ignore
  if (
    lab !== undefined &&
    others.length > 0 &&
    Math.abs(lab - rest) > 4 * Math.hypot(sd.laboratory, sd.refractometer) &&
    outside(lab, low, high) &&
    !outside(rest, low, high)
  ) {
    const repeat = log.names.findIndex((other, k) => k !== i && other.startsWith(name) && log.clock.seconds[k] === log.clock.seconds[i]);
    const second = repeat >= 0 ? says.laboratory?.[repeat] : undefined;
    const ends = second === undefined ? 'repeat it; one result holds no bars' : `the repeat says ${percent(second)}: ${Math.abs(second - rest) < Math.abs(second - lab) ? 'the first was wrong' : 'confirmed'}`; // prettier-ignore
    if (second === undefined || Math.abs(second - rest) < Math.abs(second - lab))
      return told('unconfirmed', `the laboratory alone says ${percent(lab)}, ${others.length > 1 ? 'refractometer and viscosity' : 'the other reading'} about ${percent(rest)}; ${ends}`, rest, reported); // prettier-ignore
  }
  const moisture = consensus[i]!;
  const early = own.refractometer !== undefined && outside(own.refractometer, low, high) ? ended : reported;
  if (!outside(moisture, low, high)) return told('good', '', moisture);
  const apart = own.temperature === undefined ? NaN : moisture - own.temperature;
  if (Math.abs(apart) > 3 * Math.hypot(sd.temperature, sd.refractometer) || (Number.isFinite(apart) && !outside(own.temperature!, low, high)))
    return told('probe', `the temperature says ${percent(own.temperature!)}, the rest ${percent(moisture)}: probe or pressure`, moisture, early); // prettier-ignore
  return told(moisture > high ? 'wet' : 'dry', `the readings agree on ${percent(moisture)}`, moisture, early);
}

function outside(x: number, low: number, high: number): boolean {
  return x < low || x > high;
}

/** Window of the finished moisture; a point either way where the plant has none. */
function windowOf(curve: CookCurve): { low: number; high: number } {
  const end = curve.component.stages.find((stage) => stage.cook)!.cook!.end;
  const middle = curve.moisture[curve.moisture.length >> 1]!;
  const entered = end.by === 'temperature' ? undefined : end.moisture;
  return { low: entered?.low ?? middle - 0.005, high: entered?.high ?? middle + 0.005 };
}

/** Neighbouring batches of one verdict together, answered with the mean of their readings. */
function incidentsOf(
  from: PlantChain,
  session: Session,
  log: CookTable,
  batches: readonly JudgedBatch[],
  component: string,
): CookLogAnswer['incidents'] {
  const bad = (verdict: JudgedBatch['verdict']) =>
    verdict === 'probe' || verdict === 'wet' || verdict === 'dry' || verdict === 'unconfirmed';
  const runs: number[][] = [];
  let last = -1;
  batches.forEach(({ verdict }, i) => {
    if (verdict === 'repeat') return;
    if (bad(verdict)) {
      if (last >= 0 && batches[last]!.verdict === verdict) runs.at(-1)!.push(i);
      else runs.push([i]);
    }
    last = i;
  });
  return runs.map((run) => {
    const mean = (list: Float64Array | undefined) => {
      const values = run.map((i) => list?.[i] ?? NaN).filter(Number.isFinite);
      return values.length > 0 ? values.reduce((sum, x) => sum + x, 0) / values.length : undefined;
    };
    const readings = Object.fromEntries(
      Object.entries({
        moisture: mean(log.moisture),
        temperature: mean(log.temperature),
        refractometer: mean(log.refractometer),
        viscosity: mean(log.viscosity),
        depositTemperature: mean(log.depositTemperature),
      }).filter(([, value]) => value !== undefined),
    ) as BatchReadings;
    const [first, final] = [run[0]!, run.at(-1)!];
    const laid = log.laidFrom && log.laidTo ? `${log.laidFrom.words(log.laidFrom.seconds[first]!)} to ${log.laidTo.words(log.laidTo.seconds[final]!)}` : undefined; // prettier-ignore
    return {
      batches: run.map((i) => batches[i]!.name),
      verdict: batches[first]!.verdict,
      known: batches[first]!.known,
      ...(laid ? { laid } : {}),
      ...laidSpan(log, batches, run),
      answer: batchAnswer(from, session, readings, component),
    };
  });
}

/** From the first to the last minute in which batches of a run were laid. */
function laidSpan(log: CookTable, batches: readonly JudgedBatch[], run: readonly number[]): { readonly at?: LaidSpan } {
  if (!log.laidFrom || !log.laidTo) return {};
  const [starts, ends] = [log.laidFrom.seconds, log.laidTo.seconds];
  const from = Math.min(...run.map((i) => starts[i]!));
  const to = Math.max(...run.map((i) => ends[i]!));
  if (!(to >= from)) return {};
  const good = batches.flatMap(({ verdict }, i) => (verdict === 'good' ? [i] : []));
  const before = good.map((i) => ends[i]!).filter((end) => end <= from);
  const after = good.map((i) => starts[i]!).filter((start) => start >= to);
  return {
    at: {
      from,
      to,
      ...(before.length > 0 ? { lastGood: Math.max(...before) } : {}),
      ...(after.length > 0 ? { nextGood: Math.min(...after) } : {}),
    },
  };
}

/** The plant's corrections from its good batches: boiling point, refractometer, viscosity, each by least squares on its own readings. */
function learn(from: PlantChain, session: Session, curve: CookCurve, log: CookTable, good: readonly number[]): readonly LearnedOffset[] {
  const c = curve.component.slug;
  const found: LearnedOffset[] = [];
  const fit = (
    parameter: string,
    observed: string,
    list: Float64Array | undefined,
    write: (x: number, sd: number) => string,
    extra?: (i: number) => Record<string, number>,
  ) => {
    if (!list || !log.moisture || !from.chain.index.has(parameter) || !from.chain.index.has(observed)) return;
    const rows = good.filter((i) => Number.isFinite(list[i]!) && Number.isFinite(log.moisture![i]!));
    if (rows.length < 5) return;
    const span = Math.max(
      Math.abs(session.number(parameter)) * 4,
      parameter.endsWith('factor') ? 20 : parameter.endsWith('refractometer_offset') ? 0.05 : 15,
    );
    const data = rows.map((i) => ({
      inputs: { ...(extra?.(i) ?? {}), [curve.knob]: knobFor(curve, log.moisture![i]!) },
      observed: { [observed]: list[i]! },
    }));
    const low = parameter.endsWith('factor') ? 0.05 : -span;
    const result = calibrate(from.chain, session, { parameters: [{ id: parameter, low, high: span }], data });
    if (!result.found) return;
    found.push({
      ...result.parameters[0]!,
      sd: result.residualSd[observed]!,
      batches: rows.length,
      write: write(result.parameters[0]!.estimate, result.residualSd[observed]!),
    });
  };
  const signed = (x: number, digits: number) => `${x < 0 ? '-' : ''}${Math.abs(x).toFixed(digits)}`;
  fit(`${c}.cook_model_offset`, `${c}.cook_indicated`, log.temperature, (x, sd) => `model offset: ${signed(x, 2)} K ± ${sd.toFixed(2)} K`);
  fit(
    `${c}.refractometer_offset`,
    `${c}.refractometer`,
    log.refractometer,
    (x, sd) => `refractometer offset: ${signed(100 * x, 2)} % ± ${(100 * sd).toFixed(2)} %`,
  );
  const laid = (i: number) => {
    const t = log.depositTemperature?.[i] ?? NaN;
    return Number.isFinite(t) && from.chain.index.has(`${c}.deposit_temperature`)
      ? { [`${c}.deposit_temperature`]: t }
      : ({} as Record<string, number>);
  };
  fit(
    `${c}.viscosity_factor`,
    `${c}.viscosity`,
    log.viscosity,
    (x) => `viscosity factor ${x.toFixed(2)}: enter it as one measured viscosity`,
    laid,
  );
  return found;
}
