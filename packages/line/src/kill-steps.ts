import type { Entered, Plant, Station, Validation } from '@barwright/plant';
import type { KillStepQuantity, KillStepValidation, Limit } from '@barwright/science';

/** A validation of the plant in the words of the kill-step judge, with what could not be carried over. */
export interface CarriedValidation {
  readonly validation: KillStepValidation;
  /** Limits that name something no log is judged by: with one of them nothing can be proven. */
  readonly unread: readonly string[];
}

/** Which quantity a limit of the plant is about, by its name and what it measures. */
function quantityOf(name: string, value: Entered): KillStepQuantity | undefined {
  const { dimension } = value;
  if (dimension === 'temperature')
    return /air|zone|inlet|oven/i.test(name) && !/bed|nib|core|product|bean\b|kernel/i.test(name) ? 'airTemperature' : 'productTemperature';
  if (dimension === 'speed') return 'airVelocity';
  if (dimension === 'length') return /depth|height|bed|layer/i.test(name) ? 'bedDepth' : undefined;
  if (dimension === 'time') return 'residence';
  if (dimension === 'fraction') return /moist|water/i.test(name) ? 'rawMoisture' : undefined;
  return undefined;
}

/** A validation document as the judge takes it; all of its limits hold together. */
export function carryValidation({ id, step, claim, kind, limits }: Validation): CarriedValidation {
  const carried: { [Q in KillStepQuantity]?: Limit } = {};
  const unread: string[] = [];
  for (const { name, value } of limits) {
    const quantity = quantityOf(name, value);
    if (!quantity || carried[quantity] || (value.low === undefined && value.high === undefined)) unread.push(`${name} ${value.text}`);
    else
      carried[quantity] = {
        ...(value.low === undefined ? {} : { min: value.low }),
        ...(value.high === undefined ? {} : { max: value.high }),
      };
  }
  return { validation: { id, roaster: step, kind: /publish/i.test(kind) ? 'published' : 'plant', claim, limits: carried }, unread };
}

/** Every validation of one station. */
export function validationsOf(plant: Plant, station: Station): readonly CarriedValidation[] {
  return plant.validations.filter(({ step }) => step === station.name).map(carryValidation);
}
