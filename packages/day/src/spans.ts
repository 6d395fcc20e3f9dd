/** A stretch of time, s on the clock of a log; both ends belong to it. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The union: sorted, no two of them touching. */
export function merged(spans: readonly Span[]): readonly Span[] {
  const out: { from: number; to: number }[] = [];
  for (const { from, to } of [...spans].sort((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last && from <= last.to) last.to = Math.max(last.to, to);
    else out.push({ from, to });
  }
  return out;
}

/** s that a stretch shares with stretches that do not overlap each other. */
export function shared(spans: readonly Span[], from: number, to: number): number {
  let sum = 0;
  for (const span of spans) sum += Math.max(0, Math.min(span.to, to) - Math.max(span.from, from));
  return sum;
}

/** Whether a stretch touches one of several, ends included. */
export function touches(spans: readonly Span[], from: number, to: number): boolean {
  return spans.some((span) => from <= span.to && to >= span.from);
}

/** Each moved by the same time. */
export function moved(spans: readonly Span[], by: number): readonly Span[] {
  return spans.map(({ from, to }) => ({ from: from + by, to: to + by }));
}
