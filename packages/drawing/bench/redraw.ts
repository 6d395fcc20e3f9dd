/** Times what a drag costs: every layer of every bar pulled in turn, and the band with another flow. Usage: npx tsx packages/drawing/bench/redraw.ts */
import { band, section, windowMap, type SectionSpec } from '../src/index.js';
import * as bars from './bars.js';
import { windowSpec } from './charts.js';
import { classicLine } from './lines.js';

function time(name: string, runs: number, draw: (k: number) => unknown): void {
  const first = performance.now();
  draw(0);
  const cold = performance.now() - first;
  const taken: number[] = [];
  for (let k = 1; k <= runs; k += 1) {
    const start = performance.now();
    draw(k);
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  const at = (share: number): string => taken[Math.floor(share * (taken.length - 1))]!.toFixed(2).padStart(7);
  console.log(`${name.padEnd(44)} first ${cold.toFixed(1).padStart(6)}  median${at(0.5)}  95 %${at(0.95)} ms`);
}

for (const [name, spec] of Object.entries(bars) as [string, SectionSpec][]) {
  spec.layers.forEach((pulled, at) => {
    const draw = (k: number): unknown =>
      section({
        ...spec,
        layers: spec.layers.map((layer, index) => (index === at ? { ...layer, thickness: layer.thickness * (1 + k * 0.001) } : layer)),
      });
    time(`${name}: ${pulled.name} thicker`, 120, draw);
  });
}
time('band: another flow', 40, (k) => band({ ...classicLine, flowPerPx: classicLine.flowPerPx * (1 + k * 0.001) }));
time('band: the plumb moves', 40, (k) => band({ ...classicLine, plumb: -20 + k * 0.5 }));
time('window map', 40, (k) => windowMap({ ...windowSpec, now: [116 + k * 0.1, 78] }));
