import { slabHistory, tunnelHistory } from '@barwright/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Engine } from '../src/engine/engine.js';
import { alongAnswer } from '../src/engine/along/answer.js';
import { isIn, lineWords, minuteIn, onRibbon, readAt, readingWords, wholeMinutes } from '../src/engine/along/reading.js';
import type { SlabStretch, TunnelStretch } from '../src/engine/along-protocol.js';
import { belt, through, toSvg } from '@barwright/drawing';
import { examplePlant, examples } from './plants.js';

const open = async (name: string, units: 'metric' | 'us' = 'metric') => new Engine(await examplePlant(name), undefined, 1, units);
const slabOf = (engine: Engine): SlabStretch => {
  const { slab } = alongAnswer(engine);
  if (slab.kind === 'none') throw new Error(slab.sentence);
  return slab;
};

describe.each(examples)('along the line of %s', (name) => {
  it('everything can be drawn in both habits of units, or a sentence says why not', async () => {
    for (const units of ['metric', 'us'] as const) {
      const { slab, tunnel } = alongAnswer(await open(name, units));
      for (const one of [slab, tunnel]) {
        if (one.kind === 'none') {
          expect(one.sentence).toMatch(/^[A-Z].*\.$/);
          continue;
        }
        const drawn =
          one.kind === 'slab' ? through({ ...one.spec, width: 1000, pxPerMm: 9 }) : belt({ ...one.spec, width: 1000, height: 330 });
        const svg = toSvg(drawn.marks, { width: drawn.width, height: drawn.height, title: one.title, theme: 'day' });
        expect(`${svg} ${JSON.stringify(one.table)} ${one.title} ${one.sub}`).not.toMatch(/NaN|Infinity|undefined/);
        for (const line of [one.place, ...one.lines]) expect(line.values, line.name).toHaveLength(one.minutes.length);
        expect(one.to).toBeGreaterThan(one.from);
        for (const { cells } of one.table.rows) expect(cells).toHaveLength(one.table.head.length);
      }
    }
  });
});

describe('the slab on the band', () => {
  it('is the slab of the model, its faces included', async () => {
    const engine = await open('pellamoor');
    const slab = slabOf(engine);
    const answer = slabHistory(engine.from, engine.session);
    expect(slab.minutes.at(-1)).toBeCloseTo(answer.dwell / 60, 9);
    expect(slab.to - slab.from).toBeCloseTo(answer.dwell / 60, 6); // the ribbon keeps the same time in the cooler
    const { field } = slab.spec;
    expect(field.rows.at(-1)![0]).toBeCloseTo(answer.exit.bottom, 9);
    expect(field.rows.at(-1)!.at(-1)).toBeCloseTo(answer.exit.top, 9);
    expect(field.y.at(-1)).toBeCloseTo(1000 * answer.layers.reduce((sum, { height }) => sum + height, 0), 9);
  });

  it('says in its table what stands at the cut', async () => {
    const slab = slabOf(await open('pellamoor'));
    const minutes = wholeMinutes(slab);
    slab.table.rows.forEach(({ cells }, row) => {
      const read = readingWords(slab, minutes[row]!);
      for (const { text } of cells.slice(1)) expect(read).toContain(text);
    });
  });

  it('is ready at the same minute but farther along when the slab runs faster, and not at all on a belt too short for it', async () => {
    const engine = await open('highmark');
    const answer = () => slabHistory(engine.from, engine.session);
    const faster = (times: number) => engine.set({ 'line.slab_speed': engine.session.number('line.slab_speed') * 60 * times }, true);
    const [before, end] = [answer(), slabOf(engine).minutes.at(-1)!];
    expect(slabOf(engine).spec.spans.map(({ text }) => text.replace(/[\d.]+/g, 'n'))).toEqual([
      'the core sticks at a knife until n\u202fmin, n\u202fm (n:n)',
      'then slits well',
    ]);
    faster(1.1);
    // Only the steps of time differ, which end where the belt does.
    expect(answer().sticky.core / before.sticky.core).toBeCloseTo(1, 3);
    expect(answer().slit.opens / before.slit.opens).toBeCloseTo(1.1, 3);
    faster(1.5 / 1.1);
    const slab = slabOf(engine);
    expect(slab.minutes.at(-1)).toBeCloseTo(end / 1.5, 6);
    expect(answer().sticky.core).toBe(Infinity);
    expect(slab.spec.spans).toHaveLength(1);
    expect(slab.sub).not.toContain('would be ready'); // no quarter of heat transfer would do
    expect(slab.states.at(-1)).not.toBe('ready');
  });

  it('says from where on it would be ready, were heat transfer better', async () => {
    const { sub } = slabOf(await open('pellamoor'));
    expect(sub).toMatch(/With a quarter more heat transfer it would be ready from [\d.]+.min, [\d.]+.m \(06:\d\d\) on\.$/);
  });

  it('is ready later when it is thicker, or laid warmer', async () => {
    const engine = await open('highmark');
    const core = () => slabHistory(engine.from, engine.session).sticky.core;
    const before = core();
    const layer = engine.from.bar.layers[0]!.slug;
    engine.set({ [`layer.${layer}.laid_at`]: engine.session.number(`layer.${layer}.laid_at`) + 3 }, true);
    expect(core()).toBeGreaterThan(before);
    engine.toTruth();
    engine.set({ [`layer.${layer}.thickness`]: 1000 * engine.session.number(`layer.${layer}.thickness`) * 1.04 }, true);
    expect(core()).toBeGreaterThan(before);
  });

  it('cannot be told only between the two ends of its heat transfer', async () => {
    const { states, spec } = slabOf(await open('highmark'));
    // It is ready only once a quarter less heat transfer would do too; the fat that sets keeps it so to the end.
    expect(states.filter((state, i) => state !== states[i - 1])).toEqual(['too warm', 'cannot tell', 'ready']);
    const [soonest, latest] = spec.spansBetween!;
    expect(soonest).toBeLessThan(spec.spans[0]!.to);
    expect(latest).toBeGreaterThan(spec.spans[0]!.to);
  });
});

describe('the tunnel on the band', () => {
  it('is the tunnel of the model, moved by the plant’s own offset', async () => {
    const engine = await open('pellamoor');
    const tunnel = alongAnswer(engine).tunnel as TunnelStretch;
    const run = tunnelHistory(engine.from, engine.session);
    expect(tunnel.lines[0]!.values.at(-1)).toBeCloseTo(run.exitSurface.value, 9);
    expect(tunnel.lines[3]!.values.at(-1)).toBeCloseTo(100 * run.solids, 9);
    expect(tunnel.minutes.at(-1)).toBeCloseTo(run.dwell / 60, 6);
  });
});

describe('reading along a stretch', () => {
  it('finds what is linear, and holds at the ends', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 12, noNaN: true }), (at) => {
        const x = [0, 0.5, 2, 7, 9];
        const inside = Math.min(9, Math.max(0, at));
        expect(readAt(x, x.map((each) => 4 - 3 * each), at)).toBeCloseTo(4 - 3 * inside, 9);
      }),
    ); // prettier-ignore
  });
  it('goes to the ribbon and back', async () => {
    const tunnel = alongAnswer(await open('pellamoor')).tunnel as TunnelStretch;
    fc.assert(
      fc.property(fc.double({ min: 0, max: tunnel.minutes.at(-1)!, noNaN: true }), (at) => {
        const there = onRibbon(tunnel, at);
        expect(isIn(tunnel, there)).toBe(true);
        expect(minuteIn(tunnel, there)).toBeCloseTo(at, 9);
      }),
    );
  });
  it('writes a true minus, and none before nothing', () => {
    const line = { name: 'x', unit: '°C', decimals: 1 };
    expect(lineWords({ ...line, values: [-3.2, -3.2] }, [0, 1], 0)).toBe('−3.2\u202f°C');
    expect(lineWords({ ...line, values: [-0.01, -0.01] }, [0, 1], 0)).toBe('0.0\u202f°C');
  });
});
