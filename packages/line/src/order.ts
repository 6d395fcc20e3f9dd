import { componentsOf, kilogram, percent, type Builder } from '@barwright/bar';
import type { Bar, Component, Plan, Plant } from '@barwright/plant';

/** What the order takes: bars to cut, minutes, every component and raw material, without and with scrap, in batches. */
export function orderSteps(b: Builder, plant: Plant, bar: Bar, plan: Plan, materials: readonly string[]): void {
  const bars = { unit: '1', show: 'bars', decimals: 0 };
  b.entered('order.bars', 'bars ordered', plan.order, bars);
  if (b.has('line.scrap')) {
    b.step({
      title: 'Bars to cut',
      inputs: ['order.bars', 'line.scrap'],
      outputs: [{ id: 'order.bars_to_cut', meaning: 'bars to cut so that the order reaches its cases', ...bars }],
      equation: 'ordered / (1 − scrap)',
      run: (n: number, scrap: number) => n / (1 - scrap),
    });
  } else {
    b.step({
      title: 'Bars to cut',
      inputs: ['order.bars'],
      outputs: [{ id: 'order.bars_to_cut', meaning: 'bars to cut so that the order reaches its cases', ...bars }],
      equation: 'no scrap entered',
      run: (n: number) => n,
    });
  }
  if (plan.plannedOee) {
    b.entered('order.planned_oee', 'planned availability · performance · quality', plan.plannedOee, percent);
    b.step({
      title: 'Planned speed',
      inputs: ['line.rate', 'order.planned_oee'],
      outputs: [
        {
          id: 'line.planned_rate',
          meaning: 'bars per minute over the whole run, stops included',
          unit: '1/min',
          show: 'bars/min',
          decimals: 0,
        },
      ],
      equation: 'rate · planned share',
      run: (rate: number, oee: number) => rate * oee,
    });
    b.step({
      title: 'Running time of the order',
      inputs: ['order.bars', 'line.planned_rate'],
      outputs: [{ id: 'order.duration', meaning: 'time from the first slab to the last bar', unit: 's', show: 'min', decimals: 0 }],
      equation: 'ordered / planned speed',
      run: (n: number, rate: number) => (60 * n) / rate,
    });
  }
  packSteps(b, bar);
  for (const component of componentsOf(plant, bar)) componentOrder(b, component);
  for (const material of materials)
    both(
      b,
      `need.material.${material}`,
      `order.material.${material}`,
      `${[...plant.materials.values()].find((m) => m.slug === material)!.name} for the order`,
    );
}

function packSteps(b: Builder, bar: Bar): void {
  const perCase = bar.pack.barsPerPack * (bar.pack.case?.packs ?? 1);
  const pallet = bar.pack.pallet ? bar.pack.pallet.casesPerLayer * bar.pack.pallet.layers : undefined;
  if (bar.pack.case)
    b.step({
      title: 'Cases',
      inputs: ['order.bars'],
      outputs: [{ id: 'order.cases', meaning: 'cases of the order', unit: '1', show: 'cases', decimals: 0 }],
      equation: `bars / ${perCase}`,
      run: (n: number) => n / perCase,
    });
  if (bar.pack.case && pallet)
    b.step({
      title: 'Pallets',
      inputs: ['order.cases'],
      outputs: [{ id: 'order.pallets', meaning: 'pallets of the order', unit: '1', show: 'pallets', decimals: 2 }],
      equation: `cases / ${pallet}`,
      run: (n: number) => n / pallet,
    });
  if (bar.pack.film?.reelLength) {
    const reel = b.entered('pack.reel_length', 'film on a reel', bar.pack.film.reelLength, { unit: 'm', decimals: 0 });
    b.step({
      title: 'Packs of a reel',
      inputs: [reel, 'pack.film_cut_off'],
      outputs: [{ id: 'pack.packs_per_reel', meaning: 'packs of one reel', unit: '1', show: 'packs', decimals: 0 }],
      equation: 'whole packs of reel length / pack length',
      run: (l: number, cut: number) => Math.floor(l / cut + 1e-9),
    });
    b.step({
      title: 'Reels',
      inputs: ['order.bars_to_cut', 'pack.packs_per_reel'],
      outputs: [{ id: 'order.reels', meaning: 'reels of film for the order', unit: '1', show: 'reels', decimals: 1 }],
      equation: `bars to cut / ${bar.pack.barsPerPack} / packs of a reel`,
      run: (n: number, packs: number) => n / bar.pack.barsPerPack / packs,
    });
  }
}

function componentOrder(b: Builder, component: Component): void {
  const c = component.slug;
  both(b, `need.${c}`, `order.${c}`, `${component.name} to be made for the order`);
  const size = component.batch;
  if (!size) return;
  const finished = `${c}.batch_finished`;
  const charged = `${c}.batch_charge`;
  const made = { id: finished, meaning: `finished mass of a batch of ${component.name}`, ...kilogram };
  const charge = { id: charged, meaning: `charge of a batch of ${component.name}`, ...kilogram };
  if (size.by === 'finished') {
    b.entered(finished, made.meaning, size.mass, kilogram);
    b.step({
      title: 'Charge of a batch',
      inputs: [finished, `${c}.yield`],
      outputs: [charge],
      equation: 'finished / yield',
      run: (m: number, y: number) => m / y,
    });
  } else if (size.by === 'charge') {
    b.entered(charged, charge.meaning, size.mass, kilogram);
    b.step({
      title: 'A batch when finished',
      inputs: [charged, `${c}.yield`],
      outputs: [made],
      equation: 'charge · yield',
      run: (m: number, y: number) => m * y,
    });
  } else {
    const volume = b.entered(`${c}.batch_volume`, `volume of the vessel of ${component.name}`, size.volume, {
      unit: 'm³',
      show: 'L',
      decimals: 0,
    });
    b.step({
      title: 'A batch when finished',
      inputs: [volume, `${c}.density`],
      outputs: [made],
      equation: 'vessel volume · density of the finished component',
      run: (v: number, rho: number) => v * rho,
    });
    b.step({
      title: 'Charge of a batch',
      inputs: [finished, `${c}.yield`],
      outputs: [charge],
      equation: 'finished / yield',
      run: (m: number, y: number) => m / y,
    });
  }
  b.step({
    title: `Batches of ${component.name}`,
    inputs: [`order.${c}`, finished],
    outputs: [{ id: `order.${c}.batches`, meaning: `batches of ${component.name} for the order`, unit: '1', show: 'batches', decimals: 0 }],
    equation: 'order need / finished batch, rounded up',
    run: (need: number, batch: number) => Math.ceil(need / batch - 1e-9),
  });
}

/** Without scrap after the cutter (bars ordered are the bars cut) and with it. */
function both(b: Builder, need: string, id: string, meaning: string): void {
  b.step({
    title: meaning,
    inputs: [need, 'order.bars'],
    outputs: [{ id, meaning: `${meaning}, no scrap after the cutter`, ...kilogram }],
    equation: 'need per bar cut · bars',
    run: (m: number, n: number) => m * n,
  });
  b.step({
    title: `${meaning}, with scrap`,
    inputs: [need, 'order.bars_to_cut'],
    outputs: [{ id: `${id}_with_scrap`, meaning: `${meaning}, scrap after the cutter included`, ...kilogram }],
    equation: 'need per bar cut · bars to cut',
    run: (m: number, n: number) => m * n,
  });
}
