/** A number, or a vector or profile of numbers. NaN means "no value"; never use it for anything else. */
export type Value = number | Float64Array;

/** Where a value comes from. Computed is never shown as measured. */
export type Origin = 'computed' | 'measured' | 'entered' | 'assumed' | 'default';

/** The permitted range of a quantity, with the reason and the source of each end. */
export interface Window {
  readonly low?: number;
  readonly high?: number;
  readonly aim?: number;
  /** Why: 'house limit', 'validated', '2000/36/EC annex I' … */
  readonly reason?: string;
  readonly source?: string;
}

/** What a name stands for. */
export interface Quantity {
  /** Dotted, lower case, stable: 'caramel.water_activity'. */
  readonly id: string;
  /** Unit of the value inside: '°C', 'Pa', 'kg', 's', '1' for fractions, '€/kg' … */
  readonly unit: string;
  /** Unit in which a person reads it: '%', 'g', 'mm', 'ct'. Left out: `unit`. */
  readonly show?: string;
  /** Digits after the point in the shown unit. */
  readonly decimals?: number;
  /** A short noun phrase: 'water activity of the caramel'. */
  readonly meaning: string;
  readonly window?: Window;
  /** Names of the elements of a vector, or positions of a profile in `axisUnit`. */
  readonly labels?: readonly string[];
  readonly axis?: readonly number[];
  readonly axisUnit?: string;
}

/** A quantity that nothing computes: what the plant entered, assumed, or took by default. */
export interface Root extends Quantity {
  readonly value: Value;
  readonly origin: Exclude<Origin, 'computed'>;
  /** Citation key, or the plant's own word for it: 'supplier specification'. */
  readonly source?: string;
  readonly standing?: string;
  /** File and line of the definition, for the inspector. */
  readonly place?: string;
  readonly note?: string;
  /** Standard deviation, if the quantity varies; used by `vary` when no other spread is given. */
  readonly sd?: number;
}

export type Level = 'incident' | 'query' | 'note';

/** Something a person should see. */
export interface Finding {
  readonly code: string;
  readonly level: Level;
  readonly message: string;
  /** The quantity it is about. */
  readonly quantity?: string;
  /** The step that said so; the chain fills it in. */
  readonly step?: string;
  /** File and line of the definition, where the step or the root names one; the chain fills it in. */
  readonly place?: string;
}

/** One unit operation, one property, one rule: a pure function from quantities to quantities. */
export interface Step {
  readonly id: string;
  readonly title: string;
  readonly inputs: readonly string[];
  readonly outputs: readonly Quantity[];
  /**
   * Positional: one argument for each input, one value back (or an array with one for each output when there are several).
   * Pure; may throw, and then its outputs have no value and the message becomes a finding.
   */
  readonly run: (...inputs: never[]) => Value | readonly Value[];
  /**
   * The same for `count` samples at once, all scalar: reads columns, writes columns. Only for steps where speed in `vary` matters.
   */
  readonly block?: (inputs: readonly Float64Array[], outputs: readonly Float64Array[], count: number) => void;
  /** As a person would write it: 'aw = x₁ · exp(−Σ…)'. */
  readonly equation: string;
  /** Citation keys. */
  readonly sources?: readonly string[];
  readonly standing?: string;
  /** File and line of the definition that called for this step, for findings and the inspector. */
  readonly place?: string;
  readonly note?: string;
  /** What to say about these inputs and outputs: outside the fitted range, a contradiction. Never called in sampling. */
  readonly findings?: (inputs: readonly Value[], outputs: readonly Value[]) => readonly Finding[];
  /** Half-width of the 95 % interval of each output that the model itself carries, absolute; 0 or left out: none stated. */
  readonly uncertainty?: (inputs: readonly Value[], outputs: readonly Value[]) => readonly number[];
}

/** A measurement put in place of a value. */
export interface Observation {
  readonly value: Value;
  /** Unit of the value. Only a check: another unit than the quantity's is refused, never converted. */
  readonly unit?: string;
  /** How and when: 'titration, 12:08'. */
  readonly note?: string;
  /** Default 'measured'. 'entered' for a what-if. */
  readonly origin?: 'measured' | 'entered' | 'assumed';
}
