/*
 * A synthetic chain of 600 steps and 60 roots: built and evaluated cold, and one input changed in a session. How much lies
 * downstream of a root differs; the roots with the least, a middling and the most downstream are printed, with how many quantities changed.
 *
 *   npx tsx packages/chain/bench/graph.ts
 *
 * Times are medians after warming up; `first_ms` is the first run of a fresh process, before anything was compiled.
 */
import { buildChain, evaluate, Session, type Root, type Step } from '../src/index.js';
import { randomBits } from '../src/sampling/random.js';

const ROOTS = 60;
const STEPS = 600;

function synthetic(seed: number): { roots: Root[]; steps: Step[] } {
  const bits = randomBits(seed);
  const below = (n: number) => bits() % n;
  const roots = Array.from({ length: ROOTS }, (_, i): Root => ({
    id: `root.${i}`,
    unit: '1',
    meaning: `root ${i}`,
    value: 1 + i / ROOTS,
    origin: 'entered',
  }));
  const ids = roots.map(({ id }) => id);
  const kinds = [
    (a: number, b: number) => a + 0.5 * b,
    (a: number, b: number) => a * b * 0.7,
    (a: number, b: number, c: number) => a / (1 + b * b) + c,
    (a: number) => Math.exp(-0.1 * a * a),
    (a: number, b: number, c: number, d: number) => Math.sqrt(a * a + b * b) + Math.min(c, d),
    (a: number, b: number) => Math.log(1 + a * a) - b,
  ];
  const steps = Array.from({ length: STEPS }, (_, i): Step => {
    const run = kinds[below(kinds.length)]!;
    // Mostly from what was computed lately, as stages of a process do, now and then from far back.
    const inputs = Array.from(
      { length: run.length },
      () => ids[below(5) === 0 ? below(ids.length) : ids.length - 1 - below(Math.min(ids.length, 80))]!,
    );
    const id = `step.${i}`;
    ids.push(id);
    return { id: `make ${id}`, title: id, inputs, outputs: [{ id, unit: '1', meaning: id }], run: run as never, equation: '' };
  });
  return { roots, steps };
}

function median(times: number[]): number {
  return times.sort((a, b) => a - b)[times.length >> 1]!;
}

function time(run: () => void): number {
  const started = performance.now();
  run();
  return performance.now() - started;
}

const print = (line: object) =>
  console.log(JSON.stringify(line, (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(4)) : value)));

const { roots, steps } = synthetic(1);
const shuffled = [...steps].sort((a, b) => (a.id < b.id ? -1 : 1));
for (const [name, order] of [
  ['in order', steps],
  ['out of order', shuffled],
] as const) {
  const cold = () => evaluate(buildChain(roots, order));
  const first = time(cold);
  const both = Array.from({ length: 2000 }, () => time(cold));
  const chain = buildChain(roots, order);
  const build = Array.from({ length: 1000 }, () => time(() => buildChain(roots, order)));
  const evaluation = Array.from({ length: 1000 }, () => time(() => evaluate(chain)));
  const figures = { build_ms: median(build), evaluate_ms: median(evaluation), build_and_evaluate_ms: median(both), first_ms: first };
  print({ case: `cold, steps ${name}`, steps: STEPS, quantities: chain.quantities.length, ...figures });
}

const chain = buildChain(roots, steps);
const session = new Session(chain);
const perRoot = roots.map(({ id, value }) => {
  let changed = 0;
  const times = Array.from({ length: 300 }, (_, i) =>
    time(() => (changed = session.set(id, (value as number) * (1 + ((i % 7) + 1) / 100)).length)),
  );
  return { changed, ms: median(times) };
});
perRoot.sort((a, b) => a.changed - b.changed);
for (const [name, { changed, ms }] of [
  ['least', perRoot[0]!],
  ['middle', perRoot[ROOTS >> 1]!],
  ['most', perRoot.at(-1)!],
] as const) {
  print({ case: `one input changed, ${name} downstream`, changed, ms });
}
