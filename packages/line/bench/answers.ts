/* On-demand answers on the demo plant: a slab at 200 cells, a bar through the tunnel, a log of 100,000 lines. One line of JSON each. */
import { Session } from '@barwright/chain';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { slabRun } from '@barwright/science';
import { fileURLToPath } from 'node:url';
import { judgeRoast, plantChain, roasterNamed, roastTable, rowsOfText, slabHistory, tunnelHistory } from '../src/index.js';

const loaded = loadPlant(await readPlantFolder(fileURLToPath(new URL('../../../examples/pellamoor', import.meta.url))));
if (!loaded.ok) throw new Error('the example does not load');
const from = plantChain(loaded.plant);
const session = new Session(from.chain);

function median(work: () => unknown, runs: number): number {
  for (let i = 0; i < runs / 3; i++) work();
  const times = Array.from({ length: runs }, () => {
    const started = performance.now();
    work();
    return performance.now() - started;
  });
  return Number(times.sort((a, b) => a - b)[runs >> 1]!.toPrecision(3));
}
const print = (line: Record<string, unknown>) => console.log(JSON.stringify(line));

const slab = slabHistory(from, session);
const layers = slab.layers.map(({ height, start }) => ({
  thickness: height,
  density: 1200,
  specificHeat: 2000,
  conductivity: 0.2,
  start,
  melting: { heat: 8000, temperature: 25, halfWidth: 10 },
}));
const solver = slabRun(layers, 200, 100);
const section = { duration: slab.dwell, topTemperature: 10, topCoefficient: 40, bottomTemperature: 10, bottomCoefficient: 60 };
print({ case: 'slab history, 200 cells, fat setting', ms: median(() => solver.run([section]), 200) });
print({ case: 'slab answer, four runs and profiles', ms: median(() => slabHistory(from, session), 60) });
print({ case: 'tunnel history', ms: median(() => tunnelHistory(from, session), 30) });

const lines = Array.from({ length: 100_000 }, (_, i) => {
  const at = new Date(Date.UTC(2026, 2, 17) + 1000 * i).toISOString().slice(0, 19);
  return `${at},162.${i % 10},1.3,75,16,6.0`;
});
const text = `time,zone_air_C,air_velocity_m_s,bed_depth_mm,residence_min,raw_moisture_pct\n${lines.join('\n')}\n`;
const read = median(() => rowsOfText(text, 'long.csv'), 5);
const rows = rowsOfText(text, 'long.csv');
const station = roasterNamed(from, 'peanut roaster');
const table = median(() => roastTable(rows, 'long.csv', station.name), 5);
const log = roastTable(rows, 'long.csv', station.name);
const judged = median(() => judgeRoast(from, station, log), 5);
print({
  case: 'roast log of 100,000 lines',
  read_ms: read,
  table_ms: table,
  judge_ms: judged,
  ms: Number((read + table + judged).toPrecision(3)),
});
