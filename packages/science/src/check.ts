import type { SourceKey, Standing } from './sources.js';
import { runModel, type Model } from './model.js';

/**
 * One comparison of a model with a value from outside.
 * measured: an experiment gave the value; published: a table, a standard or a worked example states it;
 * code: it was computed from the same equation and tests our typing only.
 */
export interface Check {
  readonly id: string;
  readonly model: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly output: string;
  /** A value, or a band that the answer must lie in. */
  readonly expected: number | readonly [number, number] | string;
  /** Absolute, in the unit of the output; set from the spread of sources or the rounding of the print, not from our result. */
  readonly tolerance: number;
  readonly kind: 'measured' | 'published' | 'code';
  readonly source: SourceKey;
  readonly standing: Standing;
  /** A frank word: what agrees, what does not, what was used in fitting. */
  readonly note?: string;
}

export interface CheckResult {
  readonly check: Check;
  readonly computed: number | string | null;
  readonly unit: string;
  /** Computed less expected; for a band the distance outside it, 0 inside. */
  readonly deviation: number;
  readonly inside: boolean;
  readonly error?: string;
}

/** Runs one check through the model's door; a refusal is a failed check with its sentence, never a crash. */
export function runCheck(check: Check, models: ReadonlyMap<string, Model>): CheckResult {
  const model = models.get(check.model);
  if (!model) return { check, computed: null, unit: '', deviation: NaN, inside: false, error: `no model ${check.model}` };
  try {
    const output = runModel(model, check.inputs).outputs[check.output];
    if (!output) return { check, computed: null, unit: '', deviation: NaN, inside: false, error: `no output ${check.output}` };
    const { value, unit } = output;
    if (typeof value === 'number' && typeof check.expected !== 'string') {
      const deviation = deviationFrom(value, check.expected);
      return { check, computed: value, unit, deviation, inside: Math.abs(deviation) <= check.tolerance };
    }
    const same = String(value) === String(check.expected);
    return { check, computed: String(value), unit, deviation: same ? 0 : NaN, inside: same };
  } catch (error) {
    return { check, computed: null, unit: '', deviation: NaN, inside: false, error: (error as Error).message };
  }
}

function deviationFrom(value: number, expected: number | readonly [number, number]): number {
  if (typeof expected === 'number') return value - expected;
  return value < expected[0] ? value - expected[0] : value > expected[1] ? value - expected[1] : 0;
}
