import { evaluate } from '@barwright/chain';
import { band, section } from '@barwright/drawing';
import { plantChain, presentation } from '@barwright/line';
import { editPlant } from '@barwright/plant';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { bandPicture } from '../src/engine/band-picture.js';
import { compareVersions } from '../src/engine/compare-versions.js';
import { editsOf } from '../src/engine/edits.js';
import { Engine } from '../src/engine/engine.js';
import { curveOf, influences } from '../src/engine/influence.js';
import { inspect } from '../src/engine/inspect.js';
import { postsOf } from '../src/engine/posts.js';
import { remedyLines } from '../src/engine/remedy-lines.js';
import type { Frame } from '../src/engine/protocol.js';
import { exampleFiles, examplePlant, examples, load } from './plants.js';

const open = async (name: string) => new Engine(await examplePlant(name), undefined, 1, 'metric');
const shown = (engine: Engine, id: string) => {
  const { chain } = engine.from;
  return presentation(chain.quantities[chain.index.get(id)!]!).toShown(engine.session.number(id));
};

describe.each(examples)('the engine at work on %s', (name) => {
  let engine: Engine;
  let first: Frame;
  beforeAll(async () => {
    engine = await open(name);
    first = engine.frame();
  });

  it('sends every number once, and then only what changed', () => {
    expect(first.at.length).toBeGreaterThan(engine.from.chain.quantities.filter(({ labels }) => !labels).length * 0.9);
    expect(first.bent).toEqual([]);
    expect(engine.frame().at).toEqual([]);
  });

  it('draws the bar, and the line in every measure', () => {
    expect(section({ ...first.picture!, scale: 20 }).layers.length).toBeGreaterThan(0);
    for (const measure of ['kg', 'money', 'bars', 'water'] as const) {
      const picture = bandPicture(engine, measure, 1300, 600)!;
      expect(band(picture.spec).hits.length).toBeGreaterThan(5);
      for (const id of Object.values(picture.opens)) expect(engine.from.chain.index.has(id), `${measure}: ${id}`).toBe(true);
      for (const { id, what } of picture.rows) expect(engine.from.chain.index.has(id), `${what}: ${id}`).toBe(true);
    }
  });

  it('opens every number there is', () => {
    for (const { id } of engine.from.chain.quantities) {
      const about = inspect(engine, id);
      expect(about.standing).not.toBe('');
      if (!about.equation && about.inputs.length === 0) expect(about.place ?? about.note ?? about.standing).toBeTruthy();
    }
  });

  it('leaves everything as it was after looking', () => {
    const before = engine.session.overrides();
    influences(engine, 'bar.cost');
    curveOf(engine, 'bar.cost', influences(engine, 'bar.cost')[0]!.id);
    remedyLines(engine, 'bar.cost', 10, [influences(engine, 'bar.cost')[0]!.id]);
    expect(engine.session.overrides()).toEqual(before);
    expect(engine.frame().at).toEqual([]);
  });

  it('names the most influential knob first', () => {
    const effects = influences(engine, 'bar.mass').map(({ effect }) => Math.abs(effect));
    expect(effects.length).toBeGreaterThan(0);
    expect(effects[0]).toBe(Math.max(...effects));
  });

  it('writes what was pulled so that the saved files give the same numbers', async () => {
    const files = await exampleFiles(name);
    const pulled = new Engine(load(files), undefined, 1, 'metric');
    const roots = influences(pulled, 'bar.cost', 40).filter(({ id }) => !/composition/.test(id));
    for (const { id, value, low, high } of roots.slice(0, 5)) pulled.set({ [id]: value + 0.02 * (high - low) }, true);
    const { edits, left } = editsOf(pulled);
    expect(left).toEqual([]);
    expect(edits.length).toBeGreaterThanOrEqual(1);
    const again = evaluate(plantChain(load(editPlant(files, edits))).chain);
    for (const id of [
      'bar.mass',
      'bar.cost',
      ...pulled.from.chain.quantities.map((q) => q.id).filter((q) => /water_activity$|thickness$/.test(q)),
    ]) {
      expect(again.number(id) / pulled.session.number(id), id).toBeCloseTo(1, 4);
    }
  });
});

describe('pulling a number', () => {
  it('moves the dose behind a thickness, by its own formula', async () => {
    const engine = await open('pellamoor');
    engine.set({ 'layer.nougat.thickness': 7 }, true);
    const { session } = engine;
    expect(shown(engine, 'layer.nougat.thickness')).toBeCloseTo(7, 6);
    const voids = 1 - session.number('layer.nougat.voids');
    expect(session.number('layer.nougat.mass')).toBeCloseTo(
      0.007 * session.number('bar.area') * session.number('nougat.density') * voids,
      9,
    );
  });

  it('moves the moisture behind a cook temperature, as the probe shows it', async () => {
    const engine = await open('pellamoor');
    const dry = engine.session.number('caramel.moisture');
    engine.set({ 'caramel.cook_indicated': shown(engine, 'caramel.cook_indicated') + 1 }, true);
    expect(engine.session.number('caramel.moisture')).toBeLessThan(dry);
    expect([...engine.changes.keys()]).toEqual(['caramel.moisture']);
  });

  it('keeps a charge whole', async () => {
    const engine = await open('pellamoor');
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true }), (sugar, salt) => {
        engine.set({ 'caramel.charge.sugar': sugar, 'caramel.charge.salt': salt }, false);
        expect(engine.session.number('caramel.charge_sum')).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
    engine.toTruth();
    expect(engine.session.overrides()).toEqual({});
  });

  it('is taken back by one undo, however long the hand pulled', async () => {
    const engine = await open('pellamoor');
    const truth = engine.frame();
    for (let i = 1; i <= 20; i++) engine.set({ 'coat.mass': 15 + i / 100 }, i === 20);
    engine.set({ 'caramel.moisture': 9.8 }, true);
    expect(engine.frame().bent.map(({ id }) => id)).toEqual(['coat.mass', 'caramel.moisture']);
    engine.undo();
    expect([...engine.changes.keys()]).toEqual(['coat.mass']);
    engine.undo();
    const back = engine.frame();
    expect(back.bent).toEqual([]);
    expect(back.canUndo).toBe(false);
    expect(back.canRedo).toBe(true);
    engine.redo();
    engine.redo();
    expect([...engine.changes]).toHaveLength(2);
    engine.toTruth();
    expect(engine.frame().sentence.title).toBe(truth.sentence.title);
    engine.undo();
    expect([...engine.changes]).toHaveLength(2);
  });

  it('says the window it breaks first, and comes from the address as it went in', async () => {
    const engine = await open('pellamoor');
    engine.restore({ 'caramel.moisture': 9.9, 'no.such.number': 3, 'bar.mass': 50 });
    const frame = engine.frame();
    expect(frame.bent).toMatchObject([{ id: 'caramel.moisture', metric: 9.9 }]);
    expect(frame.sentence.mark).toBe('act');
    const broken = frame.consequences.filter(({ breaks }) => breaks !== undefined).map(({ id }) => id);
    expect(frame.consequences.slice(0, broken.length).map(({ id }) => id)).toEqual(broken);
    expect([...broken].sort()).toEqual(['caramel.viscosity', 'step.caramel_nougat']);
    expect(frame.consequences.find(({ id }) => id === 'step.caramel_nougat')).toMatchObject({ breaks: expect.stringContaining('0.050') });
    expect(frame.consequences.map(({ id }) => id)).not.toContain('caramel.moisture');
  });

  it('shows another habit of reading without moving anything', async () => {
    const engine = await open('pellamoor');
    const metric = engine.frame();
    engine.read('us');
    const us = engine.frame();
    const at = engine.from.chain.index.get('bar.mass')!;
    const value = (frame: Frame) => frame.values[frame.at.indexOf(at)]!;
    expect(value(metric) / value(us)).toBeCloseTo(28.349523125, 9); // ounce, exact by definition
    expect(us.bent).toEqual([]);
  });
});

describe('a post', () => {
  it('stands where its rule is just kept', async () => {
    const engine = await open('pellamoor');
    const [below] = postsOf(engine, 'coat.mass', 8, 22);
    expect(below?.text).toBe('declared mass');
    engine.set({ 'coat.mass': below!.at }, true);
    expect(shown(engine, 'bar.mass')).toBeCloseTo(48, 3);
  });

  it('is the full station for the speed of the slab', async () => {
    const engine = await open('pellamoor');
    const posts = postsOf(engine, 'line.slab_speed', 1.5, 4.5);
    expect(posts.at(-1)).toMatchObject({ text: 'slab former full' });
    expect(posts.at(-1)!.at).toBeCloseTo(3.125, 3); // 1 000 bars/min of 32 lanes, 100 mm each
  });
});

describe('what would make it', () => {
  it('names doing nothing and reaches what it promises', async () => {
    const engine = await open('pellamoor');
    const lines = remedyLines(engine, 'step.caramel_nougat', 0.03, ['caramel.moisture', 'nougat.moisture', 'coat.mass']);
    expect(lines.map(({ kind }) => kind)).toContain('nothing');
    expect(lines.at(-1)!.kind).toBe('unreachable');
    const first = lines.find(({ kind }) => kind === 'set')!;
    expect(first.title).toMatch(/^Cook [\d.]+ K (higher|lower): /);
    engine.set(first.set!, true);
    expect(engine.session.number('step.caramel_nougat')).toBeCloseTo(0.03, 6);
  });
});

describe('two versions side by side', () => {
  it('differ in nothing when they are the same, and name what was entered first', async () => {
    const engine = await open('pellamoor');
    expect(compareVersions(engine, await examplePlant('pellamoor')).differences).toEqual([]);
    engine.set({ 'caramel.moisture': 9.8 }, true);
    const { differences } = compareVersions(engine, await examplePlant('pellamoor'));
    expect(differences[0]).toMatchObject({ id: 'caramel.moisture', kind: 'entered' });
    expect(differences.map(({ id }) => id)).toContain('caramel.cost');
  });
});
