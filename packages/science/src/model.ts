import { BadInput, NoSolution, OutOfRange } from './errors.js';
import { sources, type Source, type SourceKey, type Standing } from './sources.js';

/** A number, a series (a logged curve, a table's column), a word out of a list, or yes/no. */
export type ModelValue = number | readonly number[] | string | boolean;

/** One input of a published model. Keys carry the unit: `temperature_c`, `pressure_pa`; fractions are 0 to 1. */
export interface InputSpec {
  readonly key: string;
  /** Canonical unit in words a person writes: '°C', 'Pa', '1', 'kg/kg', 'min'. */
  readonly unit: string;
  readonly meaning: string;
  /** Default 'number'. A series is an array of numbers, each within `possible`. */
  readonly kind?: 'number' | 'series' | 'choice' | 'flag';
  /** Physics: outside it, or NaN, the model refuses. */
  readonly possible?: readonly [number, number];
  /** What the source covers: outside it the value stands and the answer says so. Left out: equal to `possible`. */
  readonly fitted?: readonly [number, number];
  readonly choices?: readonly string[];
  /** Taken when the key is left out. Without it the key must be given. */
  readonly default?: ModelValue;
}

export interface OutputSpec {
  readonly key: string;
  readonly unit: string;
  readonly meaning: string;
}

/** One answer with the interval in which the true value is expected (about 95 %), where a source allows to say. */
export interface Estimate {
  readonly value: number | readonly number[] | string | boolean | null;
  readonly low?: number;
  readonly high?: number;
}

/** Something to tell beside the numbers: a code, and a sentence. */
export interface ModelFinding {
  readonly code: string;
  readonly message: string;
}

type Kind<I extends InputSpec> = I extends { kind: 'series' }
  ? readonly number[]
  : I extends { kind: 'choice' }
    ? string
    : I extends { kind: 'flag' }
      ? boolean
      : number;
export type InputsOf<Specs extends readonly InputSpec[]> = { readonly [S in Specs[number] as S['key']]: Kind<S> };

/** One published model behind the one door: what goes in, over what range, what comes out, from which works. */
export interface Model {
  /** Dotted, stable: 'sucrose.boiling_point'. */
  readonly id: string;
  readonly title: string;
  /** The equation or the idea, in a line or two. */
  readonly about: string;
  readonly inputs: readonly InputSpec[];
  readonly outputs: readonly OutputSpec[];
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  readonly run: (x: never) => Readonly<Record<string, Estimate | number>> & { readonly findings?: never };
  /** Sentences to add for these inputs, beyond the range check. */
  readonly remarks?: (x: never) => readonly ModelFinding[];
}

/** Declares a model so that the compiler knows each input by its key. */
export function defineModel<const I extends readonly InputSpec[]>(
  model: Omit<Model, 'inputs' | 'run' | 'remarks'> & {
    readonly inputs: I;
    readonly run: (x: InputsOf<I>) => Readonly<Record<string, Estimate | number>>;
    readonly remarks?: (x: InputsOf<I>) => readonly ModelFinding[];
  },
): Model {
  return model as unknown as Model;
}

/** What the door gives back, in the shape that `barwright model --json` prints. */
export interface ModelAnswer {
  readonly id: string;
  readonly outputs: Readonly<Record<string, Estimate & { readonly unit: string }>>;
  /** False where an input lies outside what the source covers. */
  readonly fitted: boolean;
  readonly findings: readonly ModelFinding[];
  readonly sources: readonly string[];
}

/**
 * Runs a model on untrusted input.
 * @throws BadInput for an unknown or missing key or a wrong kind; OutOfRange outside the possible range; NoSolution where the model has no answer
 */
export function runModel(model: Model, raw: Readonly<Record<string, unknown>>): ModelAnswer {
  const known = model.inputs.map((i) => i.key);
  for (const key of Object.keys(raw)) {
    if (!known.includes(key)) throw new BadInput(`${model.id} has no input '${key}'; it takes ${known.join(', ')}`);
  }
  const findings: ModelFinding[] = [];
  let fitted = true;
  const x: Record<string, ModelValue> = {};
  for (const spec of model.inputs) {
    const value = readInput(model.id, spec, raw[spec.key]);
    x[spec.key] = value;
    const outside = spec.fitted && outsideOf(value, spec.fitted);
    if (outside !== undefined) {
      fitted = false;
      findings.push({
        code: 'OUTSIDE_FITTED_RANGE',
        message: `${spec.key} is ${outside}; the source covers ${spec.fitted![0]} to ${spec.fitted![1]}${unitOf(spec)}`,
      });
    }
  }
  const result = model.run(x as never) as Readonly<Record<string, Estimate | number>>;
  if (model.remarks) findings.push(...model.remarks(x as never));
  // A remark may know of a range that one input alone does not show, such as the temperatures of a chosen study.
  fitted &&= !findings.some((f) => f.code === 'OUTSIDE_FITTED_RANGE');
  const outputs: Record<string, Estimate & { unit: string }> = {};
  for (const spec of model.outputs) {
    const got = result[spec.key];
    if (got === undefined) continue;
    const estimate: Estimate = typeof got === 'number' ? { value: got } : got;
    if (notANumber(estimate.value)) throw new NoSolution(`${model.id} has no answer for these inputs: ${spec.key} is not a number`);
    outputs[spec.key] = { ...(fitted ? estimate : widened(estimate, spec)), unit: spec.unit };
  }
  return {
    id: model.id,
    outputs,
    fitted,
    findings,
    sources: model.sources.map((key) => `${key}: ${(sources as Record<string, Source>)[key]!.title}`),
  };
}

/**
 * Outside what the source covers the interval is taken half as wide again, in kind: a factor either way stays a factor, a distance a distance.
 * It does not leave the sign of the low end, nor a share 1, and a factor grows by ten at most.
 */
function widened(estimate: Estimate, spec: OutputSpec): Estimate {
  const { value, low, high } = estimate;
  if (typeof value !== 'number' || low === undefined || high === undefined) return estimate;
  const byFactor = low > 0 && high > 1.5 * value;
  const below = byFactor ? Math.max(value * (low / value) ** 1.5, low / 10) : low + 0.5 * (low - value);
  const above = byFactor ? Math.min(value * (high / value) ** 1.5, high * 10) : high + 0.5 * (high - value);
  return {
    value,
    low: low >= 0 ? Math.max(0, below) : below,
    high: spec.unit === '1' && high <= 1 ? Math.min(1, above) : above,
  };
}

/** A unit behind a number; nothing where there is none. */
function unitOf({ unit }: InputSpec): string {
  return unit === '1' ? '' : ` ${unit}`;
}

function notANumber(value: Estimate['value']): boolean {
  return typeof value === 'number' ? Number.isNaN(value) : Array.isArray(value) && value.some((x) => Number.isNaN(x));
}

function outsideOf(value: ModelValue, range: readonly [number, number]): number | undefined {
  const numbers = typeof value === 'number' ? [value] : Array.isArray(value) ? (value as readonly number[]) : [];
  return numbers.find((n) => !(n >= range[0] && n <= range[1]));
}

function readInput(id: string, spec: InputSpec, given: unknown): ModelValue {
  const place = `${id}, ${spec.key}`;
  if (given === undefined || given === null) {
    if (spec.default !== undefined) return spec.default;
    throw new BadInput(`${place} is missing: ${spec.meaning}${spec.unit === '1' ? '' : `, in ${spec.unit}`}`);
  }
  switch (spec.kind ?? 'number') {
    case 'flag':
      if (typeof given !== 'boolean') throw new BadInput(`${place} is ${JSON.stringify(given)}, but true or false is expected`);
      return given;
    case 'choice':
      if (typeof given !== 'string' || (spec.choices && !spec.choices.includes(given))) {
        throw new BadInput(`${place} is ${JSON.stringify(given)}, but one of ${spec.choices?.join(', ')} is expected`);
      }
      return given;
    case 'series':
      if (!Array.isArray(given)) throw new BadInput(`${place} is ${JSON.stringify(given)}, but a list of numbers is expected`);
      return given.map((n) => readNumber(place, spec, n));
    default:
      return readNumber(place, spec, given);
  }
}

function readNumber(place: string, spec: InputSpec, given: unknown): number {
  if (typeof given !== 'number' || Number.isNaN(given)) {
    throw new BadInput(`${place} is ${JSON.stringify(given)}, but a number${spec.unit === '1' ? '' : ` in ${spec.unit}`} is expected`);
  }
  if (spec.possible && outsideOf(given, spec.possible) !== undefined) {
    throw new OutOfRange(spec.key, given, spec.possible, place.split(',')[0]!, unitHint(spec, given));
  }
  return given;
}

/** Percent for a share and kelvins for °C are the usual slips; where the value would fit so, the refusal says it. */
function unitHint({ unit, possible }: InputSpec, given: number): string {
  const [low, high] = possible!;
  if ((unit === '1' || unit === 'kg/kg') && high <= 1 && given > 1 && given / 100 >= low && given / 100 <= high) {
    return `a share is due, and ${given} % is ${+(given / 100).toPrecision(6)}`;
  }
  if (unit === '°C' && given > 200 && given - 273.15 >= low && given - 273.15 <= high) {
    return `°C is due, and ${given} K is ${+(given - 273.15).toFixed(2)} °C`;
  }
  return '';
}
