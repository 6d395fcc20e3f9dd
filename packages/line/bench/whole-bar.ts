// The whole bar on its whole line: loading apart, the chain cold (build and evaluate, then evaluate alone) and one input changed.
import { fileURLToPath } from 'node:url';
import { evaluate, Session } from '@barwright/chain';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { plantChain } from '../src/index.js';

const files = await readPlantFolder(fileURLToPath(new URL('../../../examples/pellamoor', import.meta.url)));
const loaded = loadPlant(files);
if (!loaded.ok) throw new Error('the example does not load');
const { plant } = loaded;
const { chain } = plantChain(plant);

function medianMs(work: () => void, runs: number): number {
  for (let i = 0; i < runs / 4; i++) work();
  const times = Array.from({ length: runs }, () => {
    const started = performance.now();
    work();
    return performance.now() - started;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

const session = new Session(chain);
let flip = 0;
const change = (id: string, value: number) => () => {
  session.set(id, value * (1 + 1e-6 * (flip = (flip + 1) % 100)));
};
const result = {
  case: 'whole bar on whole line',
  quantities: chain.quantities.length,
  load_ms: medianMs(() => loadPlant(files), 40),
  build_ms: medianMs(() => plantChain(plant), 200),
  evaluate_cold_ms: medianMs(() => evaluate(chain), 400),
  change_price_ms: medianMs(change('material.cocoa_butter.price', 13), 1000),
  change_moisture_ms: medianMs(change('caramel.moisture', 0.095), 1000),
  change_slab_speed_ms: medianMs(change('line.slab_speed', 0.05), 1000),
  change_coat_ms: medianMs(change('coat.mass', 0.015), 1000),
};
console.log(
  JSON.stringify(
    Object.fromEntries(
      Object.entries(result).map(([key, value]) => [key, typeof value === 'number' ? Number(value.toPrecision(3)) : value]),
    ),
  ),
);
