/*
 * Sixty formulas over 100,000 samples: evaluation and mean, standard deviation and the same three percentiles of twenty-two results, on draws
 * that numpy wrote (race-numpy.py), so that both sides see the same numbers; then how many even points are worth how many
 * random ones.
 *
 *   python3 packages/chain/bench/race-numpy.py draws.f64 100000
 *   npx tsx packages/chain/bench/vary.ts draws.f64
 *
 * Each case prints one line of JSON. Median of the repeats, after two to warm up; `first_ms` is the very first run.
 */
import { readFileSync } from 'node:fs';
import { buildChain, evaluate, Scratch, vary, varyWithDraws, type Variation } from '../src/index.js';
import { randomBits } from '../src/sampling/random.js';
import { sixtyInputs, sixtyOutputs, sixtyRoots, sixtySteps } from './sixty-formulas.js';

const chain = buildChain(sixtyRoots, sixtySteps);
const state = evaluate(chain);
const scratch = new Scratch();

function timed<T>(repeats: number, run: () => T): { result: T; ms: number; best: number; first: number } {
  const times: number[] = [];
  let result!: T;
  for (let i = 0; i < repeats + 2; i++) {
    const started = performance.now();
    result = run();
    times.push(performance.now() - started);
  }
  const warm = times.slice(2).sort((a, b) => a - b);
  return { result, ms: warm[warm.length >> 1]!, best: warm[0]!, first: times[0]! };
}

function print(name: string, { result, ms, best, first }: { result: Variation; ms: number; best: number; first: number }): void {
  const round = (x: number) => Number(x.toFixed(2));
  const column = (key: 'mean' | 'sd' | 'p05' | 'p50' | 'p95') => result.outputs.map((output) => output[key]);
  const line = { case: name, samples: result.samples, ms: round(ms), best_ms: round(best), first_ms: round(first) };
  console.log(
    JSON.stringify({ ...line, means: column('mean'), sds: column('sd'), p5: column('p05'), p50: column('p50'), p95: column('p95') }),
  );
}

function readDraws(path: string): Record<string, Float64Array> {
  const bytes = readFileSync(path);
  const all = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 8);
  const samples = all.length / sixtyInputs.length;
  return Object.fromEntries(sixtyInputs.map(([id], i) => [id, all.slice(i * samples, (i + 1) * samples)]));
}

const path = process.argv[2];
if (path) {
  const columns = readDraws(path);
  print(
    'sixty formulas, given draws',
    timed(25, () => varyWithDraws(chain, state, { columns, outputs: sixtyOutputs, outer: false, scratch })),
  );
}
const inputs = sixtyInputs.map(([id, , sd]) => ({ id, sd }));
print(
  'sixty formulas, even points drawn too',
  // Twenty-five scrambles of 4096 points: as many samples as the other side draws, near enough, and the same summary.
  timed(15, () =>
    vary(chain, state, { inputs, outputs: sixtyOutputs, samples: 100_000, scrambles: 25, shares: false, outer: false, scratch }),
  ),
);
const shared = timed(5, () => vary(chain, state, { inputs, outputs: sixtyOutputs }));
print('sixty formulas, with ranked shares', shared);

/** Normal draws from a generator of random bits (Box and Muller, 1958). */
function randomColumns(samples: number, seed: number): Record<string, Float64Array> {
  const bits = randomBits(seed);
  const even = () => (bits() + 0.5) / 2 ** 32;
  const draw = (mean: number, sd: number) => mean + sd * Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
  return Object.fromEntries(sixtyInputs.map(([id, mean, sd]) => [id, Float64Array.from({ length: samples }, () => draw(mean, sd))]));
}

const rootMeanSquare = (errors: readonly number[]) => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
const watched = ['mass', 'kj', 'keeping', 'total'];
const meansOf = (variation: Variation) => variation.outputs.map(({ mean }) => mean);
const even = (samples: number, seed: number) =>
  meansOf(vary(chain, state, { inputs, outputs: watched, samples, scrambles: 1, seed, shares: false }));
const random = (samples: number, seed: number) =>
  meansOf(varyWithDraws(chain, state, { columns: randomColumns(samples, seed), outputs: watched }));
const references = Array.from({ length: 4 }, (_, s) => even(2 ** 18, 900 + s));
const exact = watched.map((_, o) => references.reduce((sum, means) => sum + means[o]!, 0) / references.length);
for (const samples of [1024, 8192, 65_536]) {
  const errors = (draw: (samples: number, seed: number) => number[]) => {
    const runs = Array.from({ length: 24 }, (_, seed) => draw(samples, seed + 1));
    return watched.map((_, o) => rootMeanSquare(runs.map((means) => means[o]! / exact[o]! - 1)));
  };
  const [evenErrors, randomErrors] = [errors(even), errors(random)];
  // The error of random draws falls with the root of their number.
  const worth = watched.map((_, o) => Math.round((randomErrors[o]! / evenErrors[o]!) ** 2));
  const three = (numbers: readonly number[]) => numbers.map((x) => Number(x.toPrecision(3)));
  console.log(
    JSON.stringify({
      case: 'relative error of means',
      samples,
      outputs: watched,
      even: three(evenErrors),
      random: three(randomErrors),
      fewer_times: worth,
    }),
  );
}
