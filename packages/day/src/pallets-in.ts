import type { Pallet, PalletLog } from './pallet-log.js';
import { touches, type Span } from './spans.js';

/** Pallets that a window touches. */
export interface PalletsIn {
  readonly pallets: readonly Pallet[];
  /** Pallets without times: nothing excludes them. */
  readonly unsure: readonly Pallet[];
  /** Bars on all of them, those outside the window too; left out where the log does not count them. */
  readonly bars?: number;
  /** The nearest pallet before and after, and the s between. */
  readonly before?: { readonly name: string; readonly gap: number };
  readonly after?: { readonly name: string; readonly gap: number };
}

/**
 * Pallets whose time of packing touches a window, ends included: times are in full minutes, so a pallet that ends in the minute in which the
 * window begins may hold its first bar. A pallet without a last pack is still being filled.
 * @param now - end of what the logs cover, s: where an open pallet stands
 */
export function palletsIn({ pallets }: PalletLog, spans: readonly Span[], now: number): PalletsIn {
  const timed = pallets.map((pallet) => ({ pallet, ...endsOf(pallet, now) }));
  const within = timed.filter(({ from, to }) => to >= from && touches(spans, from, to)).map(({ pallet }) => pallet);
  const unsure = timed.filter(({ from, to }) => !(to >= from)).map(({ pallet }) => pallet);
  const sum = within.reduce((total, { bars }) => total + bars, 0);
  const rest = timed.filter(({ pallet, from, to }) => to >= from && !within.includes(pallet));
  const [first, last] = [spans[0], spans.at(-1)];
  const before =
    first &&
    greatest(
      rest.filter(({ to }) => to < first.from),
      ({ to }) => to,
    );
  const after =
    last &&
    greatest(
      rest.filter(({ from }) => from > last.to),
      ({ from }) => -from,
    );
  return {
    pallets: within,
    unsure,
    ...(Number.isFinite(sum) ? { bars: sum } : {}),
    ...(before ? { before: { name: before.pallet.name, gap: first.from - before.to } } : {}),
    ...(after ? { after: { name: after.pallet.name, gap: after.from - last.to } } : {}),
  };
}

function endsOf({ first, last }: Pallet, now: number): Span {
  if (Number.isNaN(first) && Number.isNaN(last)) return { from: NaN, to: NaN };
  if (Number.isNaN(last)) return { from: first, to: Math.max(first, now) };
  return { from: Number.isNaN(first) ? last : first, to: last };
}

function greatest<T>(list: readonly T[], by: (one: T) => number): T | undefined {
  return list.reduce<T | undefined>((best, one) => (best === undefined || by(one) > by(best) ? one : best), undefined);
}

/** Stretches of a window that lie before the first or after the last pallet of the log, or between two of them. */
export function onNoPallet({ pallets }: PalletLog, spans: readonly Span[]): readonly Span[] {
  const times = pallets
    .map(({ first, last }) => ({ from: first, to: Number.isNaN(last) ? Infinity : last }))
    .filter(({ from, to }) => to >= from)
    .sort((a, b) => a.from - b.from);
  const out: Span[] = [];
  for (const span of spans) {
    let at = span.from;
    for (const { from, to } of times) {
      if (to < at) continue;
      if (from > span.to) break;
      if (from > at) out.push({ from: at, to: from });
      at = to;
    }
    if (at < span.to) out.push({ from: at, to: span.to });
  }
  return out;
}
