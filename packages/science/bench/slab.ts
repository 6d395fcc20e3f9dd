/*
 * A slab cooled from both faces, against the analytical series: error (K) and time for a ladder of grids, one line of JSON each.
 * 13 mm thick, 60 °C into 12 °C air, eight minutes in 100 reports. The constants are illustrative.
 *
 *   npx tsx packages/science/bench/slab.ts
 */
import { slabRun, temperatureRatio } from '../src/index.js';

const slab = { thickness: 0.013, density: 1330, specificHeat: 2100, conductivity: 0.28, start: 60 };
const air = { duration: 480, topTemperature: 12, topCoefficient: 60, bottomTemperature: 12, bottomCoefficient: 60 };
const reports = 100;
/** The jump at the start is left out: from the fifth report on. */
const firstReport = 5;

const half = slab.thickness / 2;
const biot = (air.topCoefficient * half) / slab.conductivity;
const diffusivity = slab.conductivity / (slab.density * slab.specificHeat);
const exact = (seconds: number, height: number) =>
  air.topTemperature +
  (slab.start - air.topTemperature) *
    temperatureRatio('slab', biot, (diffusivity * seconds) / half ** 2, Math.min(1, Math.abs(height - half) / half));

/** Steps between reports are `finer`; each report is compared in every cell. */
function ladder(cells: number, finer: number): { cells: number; steps: number; error_k: number; ms: number } {
  const steps = reports * finer;
  const run = () => slabRun([slab], cells, steps).run([air]);
  const { time, position, profiles } = run();
  let error = 0;
  for (let row = firstReport * finer; row <= steps; row += finer) {
    for (let c = 0; c < position.length; c++) {
      const deviation = Math.abs(profiles[row * position.length + c]! - exact(time[row]!, position[c]!));
      if (deviation > error) error = deviation;
    }
  }
  for (let i = 0; i < 20; i++) run();
  const times = Array.from({ length: 41 }, () => {
    const started = performance.now();
    run();
    return performance.now() - started;
  }).sort((a, b) => a - b);
  return { cells, steps, error_k: Number(error.toPrecision(3)), ms: Number(times[20]!.toPrecision(3)) };
}

for (const [cells, finer] of [
  [10, 1],
  [20, 1],
  [40, 1],
  [80, 1],
  [80, 2],
  [160, 2],
  [320, 4],
] as const) {
  console.log(JSON.stringify({ case: 'slab', ...ladder(cells, finer) }));
}
