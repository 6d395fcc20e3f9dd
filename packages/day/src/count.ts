import type { FlowLog } from './flow-log.js';
import { shared, type Span } from './spans.js';

/** A number of bars, with the least and the most that the intervals at the edges of a window allow. */
export interface Counted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Stretches of the window without a count; then the number is the part that is known. */
  readonly missing: readonly Span[];
}

/**
 * Bars in stretches of time. An interval that a stretch covers in part counts with its share of the time; the least and the most are what the
 * interval allows: all or nothing of it, narrowed by what the machine can do at most in the time.
 * @param spans - merged
 * @param perCount - bars for each count
 * @param fastest - counts per second that are possible; Infinity where nobody says
 */
export function countIn(log: FlowLog, counts: Float64Array, spans: readonly Span[], perCount = 1, fastest = Infinity): Counted {
  let [value, low, high] = [0, 0, 0];
  const known: Span[] = [];
  for (let i = 0; i < counts.length; i++) {
    const [from, length, count] = [log.start[i]!, log.length[i]!, counts[i]!];
    const inside = shared(spans, from, from + length);
    if (Number.isFinite(count)) known.push({ from, to: from + length });
    if (!(inside > 0) || !Number.isFinite(count)) continue;
    value += (count * inside) / length;
    if (inside >= length) {
      low += count;
      high += count;
      continue;
    }
    // A count above what the machine can do refutes the rate, not the count.
    const most = count > fastest * length ? Infinity : fastest;
    low += Math.max(0, count - most * (length - inside));
    high += Math.min(count, most * inside);
  }
  return { value: perCount * value, low: perCount * low, high: perCount * high, missing: missingIn(spans, known) };
}

/** Stretches of spans that no known stretch covers. */
function missingIn(spans: readonly Span[], known: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  for (const span of spans) {
    let at = span.from;
    for (const { from, to } of known) {
      if (to <= at) continue;
      if (from >= span.to) break;
      if (from > at) out.push({ from: at, to: from });
      at = Math.max(at, to);
    }
    if (at < span.to) out.push({ from: at, to: span.to });
  }
  return out;
}

/** Several numbers together. */
export function summed(parts: readonly Counted[]): Counted {
  const sum = (key: 'value' | 'low' | 'high') => parts.reduce((total, part) => total + part[key], 0);
  const missing = parts.flatMap((part) => part.missing);
  const unique = [...new Map(missing.map((span) => [`${span.from} ${span.to}`, span])).values()];
  return { value: sum('value'), low: sum('low'), high: sum('high'), missing: unique.sort((a, b) => a.from - b.from) };
}
