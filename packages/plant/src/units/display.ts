import { formatNumber } from './numbers.js';
import { dimensionNames, dimensions, factorOf, inward, outward, tidyUnit, type Dimension, type UnitFactor } from './table.js';

/** A unit that is not known, or two that do not measure the same thing. */
export class UnitError extends TypeError {
  readonly code = 'UNIT_ERROR';
}

export type UnitSystem = 'metric' | 'US';

function need(dimension: Dimension, unit: string): UnitFactor {
  const found = factorOf(dimension, tidyUnit(unit));
  if (!found)
    throw new UnitError(
      `'${unit}' is no unit of ${dimensions[dimension].label}; known: ${[...dimensions[dimension].units.keys()].join(', ')}`,
    );
  return found.factor;
}

/** From a written unit to the unit used inside. @throws UnitError for a unit that the dimension does not know */
export function toInside(value: number, dimension: Dimension, unit: string): number {
  return inward(value, need(dimension, unit));
}

/** The same for many values: the unit is looked up once. @throws UnitError for a unit that the dimension does not know */
export function inwardFrom(dimension: Dimension, unit: string): (value: number) => number {
  const factor = need(dimension, unit);
  return (value) => inward(value, factor);
}

/** From the unit used inside to one for showing. @throws UnitError for a unit that the dimension does not know */
export function fromInside(value: number, dimension: Dimension, unit: string): number {
  return outward(value, need(dimension, unit));
}

/**
 * A value in another unit. '°C' and '°F' are taken as temperatures, with their offsets, unless the dimension says 'temperature difference'.
 * @throws UnitError for an unknown unit or two units that do not measure the same thing
 * @example convert(1, 'lb', 'g') // 453.59237
 */
export function convert(value: number, from: string, to: string, dimension?: Dimension): number {
  const names = [tidyUnit(from), tidyUnit(to)] as const;
  const of = dimension ?? dimensionNames.find((name) => names.every((unit) => factorOf(name, unit) !== undefined));
  if (of === undefined) throw new UnitError(`'${from}' cannot be turned into '${to}'`);
  return fromInside(toInside(value, of, from), of, to);
}

/** Units in which a dimension may be shown, the preferred one first. */
export function unitsOf(dimension: Dimension, system?: UnitSystem): readonly string[] {
  const { metric, us } = dimensions[dimension];
  if (system === 'metric') return metric;
  if (system === 'US') return us;
  return [...new Set([...metric, ...us])];
}

/**
 * The unit that a person of that habit reads most easily, by size where it matters: 48 g, 460 kg, 12.4 t; 1.69 oz, 350 lb.
 * @param size - the value in the inside unit; left out: the dimension's first choice
 */
export function displayUnit(dimension: Dimension, system: UnitSystem, size?: number): string {
  const units = unitsOf(dimension, system);
  const first = units[0] ?? dimensions[dimension].inside;
  if (size === undefined || !Number.isFinite(size)) return first;
  const steps = ladders[dimension]?.[system];
  if (!steps) return first;
  for (const unit of steps) if (Math.abs(fromInside(size, dimension, unit)) >= 1) return unit;
  return steps.at(-1) ?? first;
}

/** From large to small: the first in which the value is 1 or more is shown. */
const ladders: Partial<Record<Dimension, Record<UnitSystem, readonly string[]>>> = {
  mass: { metric: ['t', 'kg', 'g', 'mg'], US: ['lb', 'oz'] },
  length: { metric: ['m', 'mm', 'µm'], US: ['ft', 'in'] },
  volume: { metric: ['m³', 'L', 'mL'], US: ['gal', 'fl oz'] },
  time: { metric: ['d', 'h', 'min', 's'], US: ['d', 'h', 'min', 's'] },
  pressure: { metric: ['bar', 'mbar', 'Pa'], US: ['psi'] },
  area: { metric: ['m²', 'cm²', 'mm²'], US: ['ft²', 'in²'] },
};

/** Value and unit for people: '1 947 kg/h'. A percent sign, too, stands after a space. @throws UnitError as fromInside */
export function showQuantity(value: number, dimension: Dimension, unit: string, decimals = 1): string {
  const text = formatNumber(fromInside(value, dimension, unit), decimals);
  return unit === '' ? text : `${text}\u00a0${unit}`;
}
