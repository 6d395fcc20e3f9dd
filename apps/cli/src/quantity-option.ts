import { dimensions, parseQuantity, type Dimension } from '@barwright/plant';
import { Misused } from './out.js';

/** An option written with its unit, in the unit used inside. @throws Misused with an example */
export function quantityOption(name: string, text: string, dimension: Dimension, example: string): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok)
    throw new Misused(`${name} is "${text}": ${parsed.fault.message}; write ${dimensions[dimension].label} such as ${name} "${example}"`);
  return parsed.measure.value;
}

/** The same where the option may be left out. */
export function maybeQuantity(name: string, text: string | undefined, dimension: Dimension, example: string): number | undefined {
  return text === undefined ? undefined : quantityOption(name, text, dimension, example);
}
