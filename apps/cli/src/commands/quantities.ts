import { presentation } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import type { Out } from '../out.js';
import { table } from '../text.js';

interface QuantitiesOptions extends PlantOptions {
  readonly like?: string;
}

/** The ids that every other command takes. */
export async function quantitiesCommand(folder: string, options: QuantitiesOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const wanted = options.like?.toLowerCase();
  const list = opened.chain.quantities.filter(
    (quantity) => !wanted || quantity.id.includes(wanted) || quantity.meaning.toLowerCase().includes(wanted),
  );
  if (options.json) {
    out.json(
      list.map((quantity) => ({
        id: quantity.id,
        unit: presentation(quantity, opened.units).unit,
        meaning: quantity.meaning,
        origin: opened.session.origin(quantity.id),
        ...(quantity.labels ? { elements: quantity.labels } : {}),
      })),
    );
    return;
  }
  const rows = list.map((quantity) => [
    quantity.id,
    presentation(quantity, opened.units).unit,
    opened.session.origin(quantity.id),
    quantity.meaning,
  ]);
  for (const line of table(rows)) out.line(line);
  if (list.length === 0) out.line(`No quantity has "${options.like}" in its id or its meaning.`);
}
