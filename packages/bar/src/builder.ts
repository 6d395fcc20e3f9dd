import type { Quantity, Root, Step, Window } from '@barwright/chain';
import { dimensionNames, dimensions, type Entered } from '@barwright/plant';

/** How a quantity is shown: unit inside, unit for people, digits. */
export interface Look {
  readonly unit: string;
  readonly show?: string;
  readonly decimals?: number;
}

export const percent: Look = { unit: '1', show: '%', decimals: 2 };
export const fraction: Look = { unit: '1', decimals: 3 };
export const gram: Look = { unit: 'kg', show: 'g', decimals: 2 };
export const kilogram: Look = { unit: 'kg', decimals: 1 };
export const millimetre: Look = { unit: 'm', show: 'mm', decimals: 2 };
export const celsius: Look = { unit: '°C', decimals: 1 };
export const kelvin: Look = { unit: 'K', decimals: 2 };
export const density: Look = { unit: 'kg/m³', show: 'g/cm³', decimals: 3 };
export const kilogramPerHour: Look = { unit: 'kg/h', decimals: 0 };
export const vector: Look = { unit: '1' };

/** Collects the roots and steps of one chain. */
export class Builder {
  readonly roots: Root[] = [];
  readonly steps: Step[] = [];
  private readonly ids = new Set<string>();

  has(id: string): boolean {
    return this.ids.has(id);
  }

  /** Adds a root unless it is there already. */
  root(root: Root): string {
    if (!this.ids.has(root.id)) {
      this.ids.add(root.id);
      this.roots.push(root);
    }
    return root.id;
  }

  /** A number of the definition as a root, with its window and its place; `sd` where it is known to vary. */
  entered(id: string, meaning: string, entered: Entered, look: Look, window?: Partial<Window>, sd?: number): string {
    return this.root({
      id,
      meaning,
      ...look,
      value: entered.value,
      origin: entered.standing === 'placeholder' ? 'assumed' : 'entered',
      place: entered.place,
      ...(entered.source ? { source: entered.source } : {}),
      ...(entered.standing ? { standing: entered.standing } : {}),
      ...(entered.note ? { note: entered.note } : {}),
      ...windowOf(entered, window),
      ...(sd === undefined ? {} : { sd }),
    });
  }

  /** Something nobody entered, taken by default. */
  byDefault(id: string, meaning: string, value: number, look: Look, note: string): string {
    return this.root({ id, meaning, ...look, value, origin: 'default', note });
  }

  step(step: Omit<Step, 'id' | 'outputs'> & { readonly outputs: readonly Quantity[] }): string {
    const id = step.outputs[0]!.id;
    for (const output of step.outputs) this.ids.add(output.id);
    this.steps.push({ id, ...step });
    return id;
  }
}

/** The window that a number was written with: '9.5 % ± 0.4 %'. */
export function windowOf(entered: Entered, extra: Partial<Window> = {}): { window?: Window } {
  const { low, high } = entered;
  if (low === undefined && high === undefined && extra.low === undefined && extra.high === undefined) return {};
  const oneSided = low === undefined || high === undefined;
  return {
    window: {
      ...(low === undefined ? {} : { low }),
      ...(high === undefined ? {} : { high }),
      ...(oneSided ? {} : { aim: entered.value }),
      reason: 'house limit',
      source: entered.place,
      ...extra,
    },
  };
}

/** A number is shown in the unit it was written in, with the digits it was written with. */
export function lookOfWritten({ text, unit }: Pick<Entered, 'text' | 'unit'>): Look {
  const decimals = Math.max(0, ...[...text.matchAll(/\d[\d, ]*\.(\d+)/g)].map((match) => match[1]!.length));
  const dimension =
    unit === 'K'
      ? ('temperature difference' as const)
      : dimensionNames.find((name) => !name.startsWith('money') && dimensions[name].units.has(unit));
  const inside = dimension && dimensions[dimension].inside;
  if (inside === undefined || dimension === 'plain' || dimension === 'count')
    return { unit: '1', ...(unit === '' ? {} : { show: unit }), decimals };
  return inside === unit ? { unit, decimals } : { unit: inside, show: unit, decimals };
}
