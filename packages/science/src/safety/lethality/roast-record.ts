import { BadInput } from '../../errors.js';

/** What a kill step is validated and logged by. SI: °C, m/s, m, s, mass fraction (wet basis). */
export const killStepQuantities = ['airTemperature', 'airVelocity', 'bedDepth', 'residence', 'rawMoisture', 'productTemperature'] as const;
export type KillStepQuantity = (typeof killStepQuantities)[number];

/** A logged column, or one value entered for the whole log. NaN marks a missing cell. */
export type Column = number | ArrayLike<number>;

/** A roast log: one row per reading; a row stands for the time until the next. */
export type RoastLog = { readonly [Q in KillStepQuantity]?: Column } & {
  /** Name of the roaster, as in the validation. */
  readonly roaster: string;
  /** s, on any clock. */
  readonly time: ArrayLike<number>;
  /** Hunter L or the like. It is never used in the verdict. */
  readonly colour?: Column;
};

export interface Limit {
  readonly min?: number;
  readonly max?: number;
}

/** A plant's own study of one roaster, or a published one. Only a plant's own study can prove anything. */
export interface KillStepValidation {
  readonly id: string;
  readonly roaster: string;
  readonly kind: 'plant' | 'published';
  /** What it claims, in words: '≥ 5 log10 at the middle of the bed'. */
  readonly claim: string;
  /** All must hold together. */
  readonly limits: { readonly [Q in KillStepQuantity]?: Limit };
  /** s on the clock of the log. */
  readonly validFrom?: number;
  readonly validUntil?: number;
}

interface Scale {
  readonly name: string;
  readonly unit: string;
  /** Displayed value = factor × SI value. */
  readonly factor: number;
  readonly digits: number;
  /** Values that a reading can have. */
  readonly possible: readonly [number, number];
  /** True where a single entered value is not enough: it is an instrument's reading over time. */
  readonly logged: boolean;
}

export const scales: Readonly<Record<KillStepQuantity, Scale>> = {
  airTemperature: { name: 'Air temperature', unit: '°C', factor: 1, digits: 1, possible: [-40, 400], logged: true },
  airVelocity: { name: 'Air velocity', unit: 'm/s', factor: 1, digits: 2, possible: [0, 20], logged: true },
  bedDepth: { name: 'Bed depth', unit: 'mm', factor: 1000, digits: 1, possible: [0.005, 1], logged: false },
  residence: { name: 'Residence time', unit: 'min', factor: 1 / 60, digits: 2, possible: [0, 86_400], logged: false },
  rawMoisture: { name: 'Raw moisture', unit: '%', factor: 100, digits: 2, possible: [0, 0.5], logged: false },
  productTemperature: { name: 'Product temperature', unit: '°C', factor: 1, digits: 1, possible: [-40, 400], logged: true },
};

/** A value with its unit, for a sentence. */
export function say(quantity: KillStepQuantity, value: number): string {
  const { factor, digits, unit } = scales[quantity];
  return `${Number((value * factor).toFixed(digits))} ${unit}`;
}

/**
 * A column as numbers, one per row; undefined where the log has no such column. One kind of array for every reader keeps the
 * passes over long logs quick.
 *
 * @throws BadInput where its length is neither 1 nor that of the times
 */
export function columnOf(log: RoastLog, quantity: KillStepQuantity): Float64Array | undefined {
  const column = log[quantity];
  const n = log.time.length;
  if (column === undefined) return undefined;
  if (typeof column === 'number') return new Float64Array(n).fill(column);
  if (column.length === 1 && n > 1) return new Float64Array(n).fill(column[0]!);
  if (column.length !== n) {
    throw new BadInput(`Roast log, ${quantity} has ${column.length} values but there are ${n} times; give one value or as many as times`);
  }
  return column instanceof Float64Array ? column : new Float64Array(column);
}

/** True where a quantity was entered once although the log has several readings. */
export function enteredOnce(log: RoastLog, quantity: KillStepQuantity): boolean {
  const column = log[quantity];
  return log.time.length > 1 && column !== undefined && (typeof column === 'number' || column.length === 1);
}

/**
 * A sentence when a value looks like one in another unit, judged against the limit it is compared with.
 *
 * @param value - as logged, taken to be SI
 */
export function suspectedUnit(quantity: KillStepQuantity, value: number, limit: Limit): string | undefined {
  const name = scales[quantity].name;
  const number = Number(value.toPrecision(5));
  switch (quantity) {
    case 'airTemperature':
    case 'productTemperature': {
      const floor = limit.min ?? 100;
      if (value <= floor + 50) return undefined;
      const fromFahrenheit = (value - 32) / 1.8;
      const fromKelvin = value - 273.15;
      if (value > 373 && Math.abs(fromKelvin - floor) <= 60)
        return `${name} reads ${number}, which looks like kelvin (${fromKelvin.toFixed(0)} °C)`;
      if (fromFahrenheit >= 60 && fromFahrenheit <= floor + 60)
        return `${name} reads ${number}, which looks like °F (${fromFahrenheit.toFixed(0)} °C)`;
      return undefined;
    }
    case 'airVelocity':
      return value > 20 && value / 196.85 < 20
        ? `${name} reads ${number}, which looks like feet per minute (${(value / 196.85).toFixed(2)} m/s) or another column`
        : undefined;
    case 'bedDepth':
      return value > 1 ? `${name} reads ${number} m, which looks like millimetres or another column` : undefined;
    case 'residence':
      return limit.min !== undefined && value > 0 && value < 0.2 * limit.min && value * 60 >= 0.5 * limit.min
        ? `${name} reads ${number} s, which looks like minutes`
        : undefined;
    case 'rawMoisture':
      return value > 0.5 && value <= 50 ? `${name} reads ${number}, which looks like per cent where a fraction is due` : undefined;
  }
}
