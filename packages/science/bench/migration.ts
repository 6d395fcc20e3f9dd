/*
 * A year of moisture moving through chocolate, caramel, nougat and chocolate in a wrapper: weekly mean water activity of each
 * layer against a reference (JSON, rows of four), for a ladder of grids; one line of JSON each. The constants are illustrative.
 *
 *   python3 bench/alternatives/migration-scipy.py reference.json
 *   npx tsx packages/science/bench/migration.ts reference.json
 */
import { readFileSync } from 'node:fs';
import { gabIsotherm, migrate, saturationPressure, type MoistureLayer } from '../src/index.js';

const chocolate: MoistureLayer = {
  thickness: 1.2e-3,
  dryDensity: 1270,
  diffusivity: 1e-13,
  isotherm: gabIsotherm([0.011, 8, 0.9]),
  start: 0.35,
};
const layers: readonly MoistureLayer[] = [
  chocolate,
  { thickness: 5e-3, dryDensity: 1180, diffusivity: 2e-11, isotherm: gabIsotherm([0.06, 3, 0.985]), start: 0.48 },
  { thickness: 9e-3, dryDensity: 640, diffusivity: 5e-11, isotherm: gabIsotherm([0.075, 4, 0.97]), start: 0.6 },
  chocolate,
];
const temperature = 20;
/** kg/(m² s) per unit of water activity, of the wrapper on both faces. */
const wrapper = ((0.8e-3 / 86_400) * 2.339) / (0.9 * 6.632);
const face = { permeance: wrapper / saturationPressure(temperature), waterActivity: 0.65 };
const week = 7 * 86_400;
const times = Array.from({ length: 53 }, (_, i) => i * week);

const path = process.argv[2];
if (!path) throw new Error('Name the file of the reference');
const reference = (JSON.parse(readFileSync(path, 'utf8')) as number[][]).flat();

for (const cells of [4, 6, 8, 12, 16, 24, 32, 64]) {
  const run = () => migrate(layers, [], { first: face, last: face }, temperature, times, cells);
  const { meanActivity } = run();
  const error = Math.max(...reference.map((value, i) => Math.abs(meanActivity[i]! - value)));
  for (let i = 0; i < 20; i++) run();
  const taken = Array.from({ length: 41 }, () => {
    const started = performance.now();
    run();
    return performance.now() - started;
  }).sort((a, b) => a - b);
  console.log(
    JSON.stringify({ case: 'migration', cells: 4 * cells, error_aw: Number(error.toPrecision(3)), ms: Number(taken[20]!.toPrecision(3)) }),
  );
}
