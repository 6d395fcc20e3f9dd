import type { Bar, Loss, Plant } from '@barwright/plant';
import { percent, type Builder, type Look } from './builder.js';
import { barParts, sum } from './layers.js';

/** Gross need of each part, cost per bar without and with credit for the trim that is used again. */
export function costSteps(b: Builder, plant: Plant, bar: Bar): void {
  const cents: Look = { unit: plant.currency, show: 'ct', decimals: 2 };
  const parts = barParts(plant, bar);
  const costed: string[] = [];
  for (const part of parts) {
    grossStep(
      b,
      `${part.id}.mass`,
      `${part.id}.gross`,
      `${part.name} to be made for a bar, its losses included`,
      `${part.id}.loss`,
      part.name,
      part.loss,
    );
    const cost = `${part.component}.cost`;
    if (!b.has(cost)) continue;
    costed.push(
      b.step({
        title: `Cost of ${part.name} on a bar`,
        inputs: [`${part.id}.gross`, cost],
        outputs: [{ id: `${part.id}.cost`, meaning: `cost of ${part.name} for a bar`, ...cents }],
        equation: 'gross mass · cost per kg',
        run: (mass: number, price: number) => mass * price,
      }),
    );
  }
  b.step({
    title: 'Ingredients of a bar',
    inputs: costed,
    outputs: [{ id: 'bar.cost_ingredients', meaning: 'cost of the ingredients of a bar', ...cents }],
    equation: 'Σ parts',
    run: sum,
  });
  const packing = packCostSteps(b, plant, bar, cents);
  b.step({
    title: 'Cost of a bar',
    inputs: ['bar.cost_ingredients', ...packing],
    outputs: [{ id: 'bar.cost', meaning: 'cost of a bar, no credit for trim used again', ...cents }],
    equation: ['ingredients', ...packing.map((id) => id.replace('bar.cost_', ''))].join(' + '),
    run: sum,
  });
}

/** gross = net / (1 − loss) where the loss is a share of what is made; net · (1 + loss) where it is a share of what ends on bars. */
export function grossStep(
  b: Builder,
  net: string,
  gross: string,
  meaning: string,
  lossId: string,
  name: string,
  loss: Loss | undefined,
  look: Look = { unit: 'kg', show: 'g', decimals: 2 },
): string {
  const of = loss?.of ?? 'made';
  const id = loss
    ? b.entered(lossId, `loss of ${name}, share of what ${of === 'made' ? 'is made' : 'ends on bars'}`, loss.share, {
        ...percent,
        decimals: 1,
      })
    : b.byDefault(lossId, `loss of ${name}`, 0, { ...percent, decimals: 1 }, 'no loss entered');
  return b.step({
    title: `${name}: gross of its losses`,
    inputs: [net, id],
    outputs: [{ id: gross, meaning, ...look }],
    equation: of === 'made' ? 'gross = net / (1 − loss)' : 'gross = net · (1 + loss)',
    run: of === 'made' ? (mass: number, share: number) => mass / (1 - share) : (mass: number, share: number) => mass * (1 + share),
  });
}

function packCostSteps(b: Builder, plant: Plant, bar: Bar, cents: Look): string[] {
  const { film, case: box, barsPerPack } = bar.pack;
  const ids: string[] = [];
  if (film) {
    const web = b.entered('pack.film_web', 'width of the film', film.web, { unit: 'm', show: 'mm', decimals: 0 });
    const cut = b.entered('pack.film_cut_off', 'length of film for a pack', film.cutOff, { unit: 'm', show: 'mm', decimals: 0 });
    const area = b.entered('pack.film_mass_per_area', 'mass of the film per area', film.massPerArea, {
      unit: 'kg/m²',
      show: 'g/m²',
      decimals: 0,
    });
    b.step({
      title: 'Film of a bar',
      inputs: [web, cut, area],
      outputs: [{ id: 'pack.film_mass', meaning: 'film on a bar', unit: 'kg', show: 'g', decimals: 3 }],
      equation: barsPerPack === 1 ? 'width · length · mass per area' : `width · length · mass per area / ${barsPerPack} bars`,
      run: (w: number, l: number, m: number) => (w * l * m) / barsPerPack,
    });
    grossStep(b, 'pack.film_mass', 'pack.film_gross', 'film for a bar, its losses included', 'pack.film_loss', 'film', film.loss, {
      unit: 'kg',
      show: 'g',
      decimals: 3,
    });
    if (film.price) {
      const price = b.entered('pack.film_price', 'price of the film', film.price, { unit: `${plant.currency}/kg`, decimals: 2 });
      ids.push(
        b.step({
          title: 'Film cost of a bar',
          inputs: ['pack.film_gross', price],
          outputs: [{ id: 'bar.cost_film', meaning: 'cost of film for a bar', ...cents }],
          equation: 'gross film · price',
          run: (m: number, p: number) => m * p,
        }),
      );
    }
  }
  if (box?.price) {
    const money: Look = { unit: plant.currency, decimals: 3 };
    const price = b.entered('pack.case_price', 'price of a case', box.price, money);
    const extras = box.extras ? [b.entered('pack.case_extras', 'glue and tape for a case', box.extras, money)] : [];
    const bars = box.packs * barsPerPack;
    ids.push(
      b.step({
        title: 'Case cost of a bar',
        inputs: [price, ...extras],
        outputs: [{ id: 'bar.cost_case', meaning: 'cost of the case for a bar', ...cents }],
        equation: `(case + glue and tape) / ${bars} bars`,
        run: (...money_: number[]) => sum(...money_) / bars,
      }),
    );
  }
  return ids;
}
