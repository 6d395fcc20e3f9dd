import type { SourceKey, Standing } from '../sources.js';

/** Markets of which limits are known here. */
export const contaminantMarkets = ['EU', 'UK', 'US', 'Codex', 'Canada', 'Australia', 'China', 'Japan', 'Brazil'] as const;
export type ContaminantMarket = (typeof contaminantMarkets)[number];

/** One legal or trade limit with its dates. Laws change: check the text in force before use. */
export interface ContaminantLimit {
  readonly market: ContaminantMarket;
  readonly contaminant: string;
  readonly product: string;
  /** Of what the limit is a share: the product as sold, or its fat. */
  readonly basis: 'product' | 'fat';
  readonly limit: number;
  readonly unit: 'µg/kg' | 'mg/kg' | '1' | '1/100 g';
  /** First day in force, as far as known. */
  readonly from: string;
  /** Last day in force; left out while it is. */
  readonly until?: string;
  readonly source: SourceKey;
  readonly standing: Standing;
  readonly note?: string;
}

/**
 * The limit in force on a day.
 *
 * @param day - ISO date
 * @returns undefined where none is recorded: that is not the same as none in law
 */
export function limitOn(
  limits: readonly ContaminantLimit[],
  market: ContaminantMarket,
  contaminant: string,
  product: string,
  day: string,
): ContaminantLimit | undefined {
  return limits.find(
    (l) =>
      l.market === market &&
      l.contaminant === contaminant &&
      l.product === product &&
      l.from <= day &&
      (l.until === undefined || day <= l.until),
  );
}
