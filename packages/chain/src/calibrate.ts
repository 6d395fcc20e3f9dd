import type { Chain } from './build.js';
import type { Engine } from './engine.js';
import { ChainError } from './errors.js';
import { invert, normalMatrix } from './fit/cholesky.js';
import { fit, type Fit } from './fit/least-squares.js';
import type { Selected } from './names.js';
import { inWords, numberAt, pokeNumber } from './probe.js';
import { studentQuantile } from './sampling/student.js';
import { rangeOf, scalar } from './solve.js';
import { engineOf, Reading, type State } from './state.js';

/** A constant to be learned, and between which limits; left out: start is its value in the state, limits its window. */
export interface CalibrateParameter {
  readonly id: string;
  readonly start?: number;
  readonly low?: number;
  readonly high?: number;
}

/** One set of readings: what was set, and what was found. Values in the units of the quantities; `id[label]` names an element. */
export interface Datum {
  readonly inputs: Readonly<Record<string, number>>;
  readonly observed: Readonly<Record<string, number>>;
  /** Standard deviation of a reading, where known; only the ratios among readings count. Stated for all or for none. */
  readonly sd?: Readonly<Record<string, number>>;
}

export interface CalibrateRequest {
  readonly parameters: readonly CalibrateParameter[];
  readonly data: readonly Datum[];
}

export interface Estimated {
  readonly id: string;
  readonly estimate: number;
  readonly standardError: number;
  /** 95 % confidence limits, by Student's t. They may lie outside the limits of the search. */
  readonly low: number;
  readonly high: number;
  readonly start: number;
  /** The estimate lies at a limit of the search: the readings ask for more, and errors say little. */
  readonly atLimit?: 'low' | 'high';
}

export interface Residual {
  /** Place in `data`. */
  readonly datum: number;
  readonly id: string;
  readonly observed: number;
  readonly computed: number;
  /** Observed less computed. */
  readonly residual: number;
}

export interface Calibrated {
  readonly found: true;
  readonly parameters: readonly Estimated[];
  /** Correlation of the estimates, in the order of the parameters. */
  readonly correlation: readonly (readonly number[])[];
  readonly residuals: readonly Residual[];
  /** Residual standard deviation of each observed quantity, in its unit; the parameters are counted off in proportion. */
  readonly residualSd: Readonly<Record<string, number>>;
  /** Readings less parameters. */
  readonly freedom: number;
  readonly iterations: number;
}

export interface NotCalibrated {
  readonly found: false;
  readonly code: 'CANNOT_TELL';
  /** A sentence. */
  readonly reason: string;
}

interface OneReading {
  readonly datum: number;
  readonly name: Selected;
  readonly observed: number;
  readonly sd: number | undefined;
}

/** A pivot below this: two parameters do the same to within what differences can show. */
const SAME = 1e-9;

/**
 * Fits constants to logs by least squares. Readings of several quantities are weighed by their stated deviations, else each
 * quantity by its own scatter about the fit. Refuses, with a sentence, where the data cannot tell.
 *
 * @throws ChainError for unknown names, NO_RANGE, BAD_REQUEST
 */
export function calibrate(chain: Chain, state: State, request: CalibrateRequest): Calibrated | NotCalibrated {
  const base = engineOf(state);
  const knobs = request.parameters.map((parameter) => {
    const name = scalar(chain, state, parameter.id);
    const { low, high } = rangeOf(chain, name, parameter);
    const start = parameter.start ?? numberAt(base, name);
    if (!(start >= low && start <= high)) throw bad(`${name.name} starts at ${start}, outside ${low} to ${high}`, name.id);
    return { name, low, high, start };
  });
  if (knobs.length === 0) throw bad('No parameter was named; name at least one');
  const refuse = (reason: string): NotCalibrated => ({ found: false, code: 'CANNOT_TELL', reason });
  const readings = readingsOf(chain, state, request.data);
  const freedom = readings.length - knobs.length;
  if (freedom < 1) {
    return refuse(
      `${counted(readings.length, 'reading')} cannot tell ${counted(knobs.length, 'parameter')} and how sure they are; at least ${knobs.length + 1} are needed`,
    );
  }
  const engines = request.data.map((datum, d) => prepared(chain, state, base, datum, d, knobs));
  const answer = (parameters: readonly number[]): number[] => {
    for (const engine of engines) {
      knobs.forEach(({ name, low, high }, k) => pokeNumber(engine, name, low + (high - low) * parameters[k]!));
      engine.settle();
    }
    return readings.map(({ datum, name }) => numberAt(engines[datum]!, name));
  };
  const start = knobs.map(({ low, high, start: s }) => (s - low) / (high - low));
  const silent = answer(start).findIndex(Number.isNaN);
  if (silent >= 0) {
    const { datum, name } = readings[silent]!;
    const status = new Reading(engines[datum]!).status(name.id);
    return refuse(`At the start values datum ${datum + 1} has no ${name.name}: ${status.ok ? 'no such element' : status.cause.message}`);
  }

  let scales = firstScales(readings);
  let result = fitWith(readings, scales, answer, start);
  const ids = new Set(readings.map(({ name }) => name.name));
  const weighed = readings.every(({ sd }) => sd !== undefined);
  for (let pass = 0; pass < 3 && ids.size > 1 && !weighed; pass++) {
    scales = scatterOf(readings, result, scales);
    result = fitWith(readings, scales, answer, result.parameters);
  }
  const rows = result.slopes;
  const flat = knobs.findIndex((_, k) => !(Math.hypot(...rows.map((row) => row[k]!)) > 1e-9 * Math.sqrt(readings.length)));
  if (flat >= 0) return refuse(`The readings do not change with ${knobs[flat]!.name.name}; other readings are needed to tell it`);
  const inverse = invert(normalMatrix(rows, knobs.length), SAME);
  if (!inverse.ok) {
    const names = knobs.slice(0, inverse.row + 1).map(({ name }) => name.name);
    return refuse(`Only a combination of ${names.join(' and ')} can be told from these readings: one can make up for another`);
  }
  const variance = result.sumOfSquares / freedom;
  const t = studentQuantile(0.975, freedom);
  const parameters = knobs.map(({ name, low, high, start: s }, k): Estimated => {
    const part = result.parameters[k]!;
    const estimate = low + (high - low) * part;
    const standardError = (high - low) * Math.sqrt(variance * inverse.inverse[k]![k]!);
    const limits = {
      id: name.name,
      estimate,
      standardError,
      low: estimate - t * standardError,
      high: estimate + t * standardError,
      start: s,
    };
    return part <= 0 ? { ...limits, atLimit: 'low' } : part >= 1 ? { ...limits, atLimit: 'high' } : limits;
  });
  const correlation = inverse.inverse.map((row, i) => row.map((x, j) => x / Math.sqrt(inverse.inverse[i]![i]! * inverse.inverse[j]![j]!)));
  const residuals = readings.map(({ datum, name, observed }, i): Residual => {
    const computed = result.answers[i]! * scales[i]!;
    return { datum, id: name.name, observed, computed, residual: observed - computed };
  });
  const residualSd = Object.fromEntries(
    [...ids].map((id) => {
      const own = residuals.filter((residual) => residual.id === id);
      const sum = own.reduce((total, { residual }) => total + residual * residual, 0);
      return [id, Math.sqrt(sum / ((own.length * freedom) / readings.length))];
    }),
  );
  return { found: true, parameters, correlation, residuals, residualSd, freedom, iterations: result.iterations };
}

function fitWith(
  readings: readonly OneReading[],
  scales: readonly number[],
  answer: (p: readonly number[]) => readonly number[],
  start: readonly number[],
): Fit {
  return fit({
    readings: readings.map(({ observed }, i) => observed / scales[i]!),
    model: (p) => answer(p).map((y, i) => y / scales[i]!),
    start,
  });
}

function readingsOf(chain: Chain, state: State, data: readonly Datum[]): OneReading[] {
  const readings = data.flatMap((datum, d) =>
    Object.entries(datum.observed).map(([id, observed]) => {
      if (!Number.isFinite(observed)) throw bad(`Datum ${d + 1} has ${observed} for ${id}, but a finite value is expected`, id);
      const sd = datum.sd?.[id];
      if (sd !== undefined && !(sd > 0))
        throw bad(`Datum ${d + 1} has a standard deviation of ${sd} for ${id}, but one above 0 is expected`, id);
      return { datum: d, name: scalar(chain, state, id), observed, sd };
    }),
  );
  const stated = readings.filter(({ sd }) => sd !== undefined).length;
  if (stated !== 0 && stated !== readings.length)
    throw bad(`${stated} of ${readings.length} readings state a standard deviation; state all or none`);
  return readings;
}

/** The chain with what was set for one datum. */
function prepared(
  chain: Chain,
  state: State,
  base: Engine,
  datum: Datum,
  d: number,
  knobs: readonly { readonly name: Selected }[],
): Engine {
  const engine = base.clone();
  for (const [id, value] of Object.entries(datum.inputs)) {
    const name = scalar(chain, state, id);
    if (!Number.isFinite(value)) throw bad(`Datum ${d + 1} sets ${id} to ${value}, but a finite value is expected`, id);
    if (knobs.some((knob) => knob.name.name === name.name))
      throw bad(`Datum ${d + 1} sets ${id} to ${inWords(chain, name, value)}, but it is to be fitted`, id);
    pokeNumber(engine, name, value);
  }
  engine.settle();
  return engine;
}

/** Stated deviations; else the scatter of all readings of a quantity, so that kilograms do not outweigh fractions. */
function firstScales(readings: readonly OneReading[]): number[] {
  return readings.map(({ name, sd }) => {
    if (sd !== undefined) return sd;
    const own = readings.filter((other) => other.name.name === name.name).map(({ observed }) => observed);
    const mean = own.reduce((a, b) => a + b, 0) / own.length;
    return Math.hypot(...own.map((x) => x - mean)) / Math.sqrt(own.length) || Math.abs(mean) || 1;
  });
}

/** The scatter of each quantity about the fit; where it is nil, or too few readings show it, the scale before. */
function scatterOf(readings: readonly OneReading[], result: Fit, scales: readonly number[]): number[] {
  return readings.map(({ name }, i) => {
    const own = readings.flatMap((other, j) =>
      other.name.name === name.name ? [(other.observed / scales[j]! - result.answers[j]!) * scales[j]!] : [],
    );
    const scatter = Math.hypot(...own) / Math.sqrt(own.length);
    return own.length >= 3 && scatter > 1e-9 * scales[i]! ? scatter : scales[i]!;
  });
}

function counted(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

function bad(message: string, id?: string): ChainError {
  return new ChainError('BAD_REQUEST', message, id === undefined ? [] : [id]);
}
