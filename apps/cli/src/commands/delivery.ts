import { deliveryAnswer, type DeliveryAnswer } from '@barwright/line';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import type { Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface DeliveryOptions extends PlantOptions {
  readonly material: string;
  readonly solids?: string;
  readonly de?: string;
  readonly load?: string;
}

/** A tanker of syrup that is not quite as ordered: act or do nothing. */
export async function deliveryCommand(folder: string, options: DeliveryOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const solids = maybeQuantity('--solids', options.solids, 'fraction', '79.8 %');
  const dextroseEquivalent = maybeQuantity('--de', options.de, 'plain', '42.6');
  const mass = maybeQuantity('--load', options.load, 'mass', '24 t');
  const answer = deliveryAnswer(opened, opened.session, options.material, {
    ...(solids === undefined ? {} : { solids }),
    ...(dextroseEquivalent === undefined ? {} : { dextroseEquivalent }),
    ...(mass === undefined ? {} : { mass }),
  });
  if (options.json) out.json(asJson(answer));
  else print(opened, answer, out);
}

function asJson(answer: DeliveryAnswer): unknown {
  return {
    material: answer.material,
    solids: answer.given.solids,
    dextrose_equivalent: answer.given.dextroseEquivalent,
    verdict: answer.verdict,
    components: answer.components.map((one) => ({
      component: one.component,
      share: one.share,
      dry_per_100_kg_charge: one.solidsPerCharge,
      more_water_per_100_kg_charge: one.moreWater,
      correction_k: one.correction,
      effects: one.effects.map(({ id, before, after, ofRoom }) => ({ id, before, after, of_room: ofRoom ?? null })),
    })),
    short_kg: answer.short?.mass ?? null,
    short_money: answer.short?.money ?? null,
    sentences: answer.sentences,
  };
}

function print(opened: Opened, answer: DeliveryAnswer, out: Out): void {
  const { given } = answer;
  out.line(
    out.style.strong(
      `${answer.material}: ${n(100 * given.solids.after, 1)} % solids and DE ${n(given.dextroseEquivalent.after, 1)} instead of ${n(100 * given.solids.before, 1)} % and ${n(given.dextroseEquivalent.before, 1)}: ${answer.verdict}.`,
    ),
  );
  section(out, 'So', answer.sentences);
  for (const { component, share, effects } of answer.components) {
    out.line();
    out.line(out.style.strong(`${component}, ${n(100 * share, 1)} % of the charge, the cook held at its end temperature`));
    const rows = effects.map(({ id, meaning, before, after, ofRoom }) => [
      `  ${meaning}`,
      opened.words(id, before, 1),
      '→',
      opened.words(id, after, 1),
      ofRoom === undefined ? '' : `${n(100 * ofRoom, 0)} % of the room`,
    ]);
    for (const line of table(rows, [false, true, false, true, true])) out.line(line);
  }
}
