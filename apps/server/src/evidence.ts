import type { CheckResult, Source } from '@barwright/science';
import { finite } from './json.js';

/** Every model, every check against a value from outside, and how they came out. Red ones stay in. */
export interface Evidence {
  readonly models: number;
  readonly checks: number;
  /** Checks within their tolerance. */
  readonly inside: number;
  readonly results: readonly EvidenceRow[];
}

export interface EvidenceRow {
  readonly id: string;
  readonly model: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly output: string;
  readonly unit: string;
  /** A value, or a band; null for an end that is infinite. */
  readonly expected: number | readonly (number | null)[] | string;
  readonly computed: number | string | null;
  readonly tolerance: number;
  /** Computed less expected; null where there is no number to compare. */
  readonly deviation: number | null;
  readonly inside: boolean;
  readonly kind: string;
  readonly source: SourceLine;
  readonly standing: string;
  readonly note?: string;
  readonly error?: string;
}

export interface SourceLine {
  readonly key: string;
  readonly title: string;
  readonly address?: string;
}

/** Milliseconds of computing before other requests get their turn. */
const turn = 15;

/** Runs every check. Takes a second or so in all, in short turns so that nobody else waits. */
export async function collectEvidence(): Promise<Evidence> {
  const { checks, modelById, models, runCheck, sources } = await import('@barwright/science');
  const results: EvidenceRow[] = [];
  let since = performance.now();
  for (const check of checks) {
    results.push(rowOf(runCheck(check, modelById), sources));
    if (performance.now() - since > turn) {
      await new Promise((resolve) => setImmediate(resolve));
      since = performance.now();
    }
  }
  return { models: models.length, checks: checks.length, inside: results.filter((row) => row.inside).length, results };
}

/** A work by its key. */
export function sourceLine(key: string, sources: Readonly<Record<string, Source>>): SourceLine {
  const source = sources[key];
  return { key, title: source?.title ?? key, ...(source?.address ? { address: source.address } : {}) };
}

function rowOf({ check, computed, unit, deviation, inside, error }: CheckResult, sources: Readonly<Record<string, Source>>): EvidenceRow {
  return {
    id: check.id,
    model: check.model,
    inputs: check.inputs,
    output: check.output,
    unit,
    expected: typeof check.expected === 'object' ? check.expected.map(finite) : check.expected,
    computed: typeof computed === 'number' ? finite(computed) : computed,
    tolerance: check.tolerance,
    deviation: finite(deviation),
    inside,
    kind: check.kind,
    source: sourceLine(check.source, sources),
    standing: check.standing,
    ...(check.note === undefined ? {} : { note: check.note }),
    ...(error === undefined ? {} : { error }),
  };
}
