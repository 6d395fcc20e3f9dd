import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { fileURLToPath } from 'node:url';
import { Session } from '@barwright/chain';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import {
  BadTable,
  batchAnswer,
  blendTask,
  cheapestBlend,
  cookElsewhere,
  cookTable,
  deliveryAnswer,
  judgeCooks,
  layerSlump,
  loadOptimiser,
  NoBlend,
  NoCook,
  NoSlab,
  NoSyrup,
  plantChain,
  slabHistory,
  type Optimiser,
  type PlantChain,
} from '../src/index.js';
import { demoDay } from './day.js';
import { examplePlant } from './pellamoor.js';

const plants: Record<string, { from: PlantChain; session: Session }> = {};
beforeAll(async () => {
  for (const name of ['pellamoor', 'tollhythe', 'highmark']) {
    const from = plantChain(await examplePlant(name));
    plants[name] = { from, session: new Session(from.chain) };
  }
});
const demo = () => plants['pellamoor']!;

describe('a log of cooks', () => {
  const judged = () => judgeCooks(demo().from, demo().session, cookTable(demoDay('caramel_batches.csv'), 'caramel_batches.csv'));

  it('finds the wet run from the first refractometer on, and holds nothing on one titration', () => {
    const { batches, good, incidents } = judged();
    expect(good).toBe(19);
    expect(batches.filter(({ verdict }) => verdict === 'probe').map(({ name }) => name)).toEqual(['C06', 'C07', 'C08']);
    expect(incidents.map((one) => [one.batches.join(' '), one.verdict])).toEqual([
      ['C06 C07 C08', 'probe'],
      ['C14', 'unconfirmed'],
    ]);
    expect(incidents[0]!.known).toContain('10:31');
    expect(incidents[0]!.laid).toBe('17 Mar 11:26 to 17 Mar 13:43');
    const { indicated } = incidents[0]!.answer.probe!;
    expect(indicated - 117.7).toBeGreaterThan(1.3);
    expect(indicated - 117.7).toBeLessThan(1.9);
  });

  it('learns corrections that bring the chain onto the good cooks', () => {
    const { offsets } = judged();
    expect(offsets.map(({ id }) => id)).toEqual(['caramel.cook_model_offset', 'caramel.refractometer_offset', 'caramel.viscosity_factor']);
    const session = new Session(demo().from.chain);
    session.set(Object.fromEntries(offsets.map(({ id, estimate }) => [id, estimate])));
    session.set('caramel.moisture', 0.0957); // about the mean of the good ones
    expect(Math.abs(session.number('caramel.cook_indicated') - 117.75)).toBeLessThan(0.25);
    expect(session.number('caramel.refractometer')).toBeCloseTo(0.901, 2);
    for (const { estimate, low, high, sd } of offsets) {
      expect(low).toBeLessThan(estimate);
      expect(high).toBeGreaterThan(estimate);
      expect(sd).toBeGreaterThan(0);
    }
  });

  it('judges temperature and solids alone where nothing else was read, and a temperature alone not at all', () => {
    const rows = [
      ['batch', 'cook end', 'cook temp (°C)', 'solids (%)'],
      ...Array.from({ length: 8 }, (_, i) => [`B${i}`, `0${i}:10`, '117.7', i === 5 ? '89.2' : '90.1']),
    ];
    const { batches } = judgeCooks(demo().from, demo().session, cookTable(rows, 'short.csv'));
    expect(batches.map(({ verdict }) => verdict)).toEqual(['good', 'good', 'good', 'good', 'good', 'probe', 'good', 'good']);
    const bare = rows.map((row) => row.slice(0, 3));
    expect(
      judgeCooks(demo().from, demo().session, cookTable(bare, 'bare.csv')).batches.every(({ verdict }) => verdict === 'cannot tell'),
    ).toBe(true);
  });

  it('refuses a table that is no log of cooks in one sentence', () => {
    expect(() =>
      cookTable(
        [
          ['a', 'b'],
          ['1', '2'],
        ],
        'x.csv',
      ),
    ).toThrow(BadTable);
    expect(() => cookTable([], 'empty.csv')).toThrow(/empty/);
    expect(() =>
      cookTable(
        [
          ['batch', 'cook end', 'colour'],
          ['1', '06:00', '41'],
        ],
        'y.csv',
      ),
    ).toThrow(/a moisture or a density is expected/);
  });
});

describe('one batch', () => {
  it('answers a caramel that came in 0.8 % wet', () => {
    const answer = batchAnswer(demo().from, demo().session, { moisture: 0.103, temperature: 117.7, refractometer: 0.894 });
    const change = (id: string) => answer.changes.find((one) => one.id === id)!;
    expect(change('caramel.water_activity').after).toBeGreaterThan(change('caramel.water_activity').before + 0.02);
    // The plant's own readings of its wet batches: 25 to 28 Pa·s against 38.
    expect(change('caramel.viscosity').after / change('caramel.viscosity').before).toBeGreaterThan(0.55);
    expect(change('caramel.viscosity').after / change('caramel.viscosity').before).toBeLessThan(0.75);
    expect(change('bar.mass').after).toBeCloseTo(change('bar.mass').before, 9);
    expect(change('bar.cost').after).toBeLessThan(change('bar.cost').before);
    expect(answer.probe!.contradicts).toBe(true);
    const [nougat] = answer.neighbours;
    expect(nougat!.step.after).toBeGreaterThan(nougat!.step.limit!);
    expect(nougat!.rest.after.activity).toBeGreaterThan(nougat!.rest.before.activity);
    expect(nougat!.rest.after.other).toBeGreaterThan(0.09);
    expect(answer.slump!.after.runOut).toBeGreaterThan(answer.slump!.before.runOut);
    expect(answer.grows).toBe('nothing');
  });

  it('does not call a batch stable where the band of its activity reaches the limit', () => {
    const { from, session } = demo();
    const near = new Session(from.chain, session.overrides());
    near.set('caramel.water_activity_offset', 0.11);
    expect(batchAnswer(from, near, { moisture: 0.095 }).grows).toBe('cannot tell');
    expect(batchAnswer(from, near, { moisture: 0.095 }).advice.join(' ')).toMatch(/Hold the batch and measure/);
    near.set('caramel.water_activity_offset', 0.15);
    expect(batchAnswer(from, near, { moisture: 0.095 }).grows).toBe('may');
  });

  it('says to do nothing inside the window, and leaves the session as it was', () => {
    const before = demo().session.overrides();
    const { advice } = batchAnswer(demo().from, demo().session, { moisture: 0.0965, temperature: 117.6 });
    expect(advice[0]).toMatch(/^Do nothing/);
    expect(demo().session.overrides()).toEqual(before);
  });

  it('is told by a viscosity alone, for every cook of every example, and in both directions', () => {
    for (const { from, session } of Object.values(plants)) {
      const cooked = [...from.plant.components.values()].filter((one) => one.stages.some((stage) => stage.cook));
      for (const { name, slug } of cooked.filter((one) => from.chain.index.has(`${one.slug}.cook_indicated`))) {
        const now = session.number(`${slug}.moisture`);
        const wet = batchAnswer(from, session, { moisture: now + 0.006 }, name);
        const dry = batchAnswer(from, session, { moisture: now - 0.006 }, name);
        expect(wet.changes[1]!.after).toBeGreaterThan(dry.changes[1]!.after);
      }
    }
    const thin = batchAnswer(demo().from, demo().session, { viscosity: 25.3, depositTemperature: 78.2 });
    expect(thin.moisture).toBeGreaterThan(0.1);
    expect(thin.moisture).toBeLessThan(0.104);
  });

  it('refuses nothing, the impossible and the unknown in one sentence', () => {
    const { from, session } = demo();
    expect(() => batchAnswer(from, session, {})).toThrow(NoCook);
    expect(() => batchAnswer(from, session, { moisture: 0.35 })).toThrow(/mistyped/);
    expect(() => batchAnswer(from, session, { moisture: 0.1 }, 'toffee')).toThrow(/caramel/);
  });
});

describe('cooks elsewhere', () => {
  it('keeps the moisture and lowers the temperature with the pressure, and comes back', () => {
    const { from, session } = demo();
    const up = cookElsewhere(from, session, { altitude: 1600 });
    for (const { indicated, setPoint } of up.cooks) {
      expect(indicated.after - indicated.before).toBeLessThan(-4.5);
      expect(indicated.after - indicated.before).toBeGreaterThan(-7);
      expect(setPoint!.after - setPoint!.before).toBeCloseTo(indicated.after - indicated.before, 9);
    }
    const same = cookElsewhere(from, session, { altitude: 110 });
    for (const { indicated } of same.cooks) expect(indicated.after).toBeCloseTo(indicated.before, 6);
    const vacuum = cookElsewhere(from, session, { pressure: 40_000, component: 'caramel' });
    expect(vacuum.cooks).toHaveLength(1);
    expect(vacuum.cooks[0]!.indicated.after).toBeLessThan(100);
    expect(vacuum.notes.join(' ')).toMatch(/vacuum/);
  });

  it('turns a cook that ends by its temperature until it makes the same', () => {
    const { from, session } = plants['highmark']!;
    const [nougat] = cookElsewhere(from, session, { altitude: 0 }).cooks;
    expect(nougat!.refractometer.after).toBeCloseTo(nougat!.refractometer.before, 5);
    expect(nougat!.indicated.after).toBeGreaterThan(nougat!.indicated.before + 4);
    expect(cookElsewhere(plants['tollhythe']!.from, plants['tollhythe']!.session, { altitude: 1600 }).cooks).toEqual([]);
  });
});

describe('a delivery of syrup', () => {
  it('needs no hand at 79.8 % and DE 42.6, with the proof', () => {
    const { from, session } = demo();
    const answer = deliveryAnswer(from, session, 'glucose syrup 42 DE', { solids: 0.798, dextroseEquivalent: 42.6, mass: 24_000 });
    expect(answer.verdict).toBe('do nothing');
    const caramel = answer.components.find(({ component }) => component === 'caramel')!;
    const moisture = caramel.effects.find(({ id }) => id === 'caramel.moisture')!;
    expect(moisture.after - moisture.before).toBeGreaterThan(0);
    expect(moisture.after - moisture.before).toBeLessThan(0.0005);
    expect(caramel.solidsPerCharge).toBeCloseTo(-0.072, 6);
    expect(answer.short!.mass).toBeCloseTo(60, 6);
  });

  it('cannot tell where nothing that the syrup moves has a limit', () => {
    const { from, session } = plants['highmark']!;
    const answer = deliveryAnswer(from, session, 'corn syrup 42 DE', { dextroseEquivalent: 43 });
    expect(answer.components[0]!.effects.every(({ ofRoom }) => ofRoom === undefined)).toBe(true);
    expect(answer.verdict).toBe('cannot tell');
  });

  it('is refused outside the intake check, and adjusted for where it takes the room', () => {
    const { from, session } = demo();
    expect(deliveryAnswer(from, session, 'glucose syrup 42 DE', { dextroseEquivalent: 36 }).verdict).toBe('refuse');
    expect(deliveryAnswer(from, session, 'glucose syrup 42 DE', { dextroseEquivalent: 43.9, solids: 0.796 }).verdict).toMatch(
      /adjust|do nothing/,
    );
    expect(() => deliveryAnswer(from, session, 'sugar', { solids: 0.9 })).toThrow(NoSyrup);
    expect(() => deliveryAnswer(from, session, 'glucose syrup 42 DE', {})).toThrow(/solids, DE or both/);
  });
});

describe('the slab', () => {
  it('gives off the heat it loses, and cools faster in colder air', () => {
    const { from, session } = demo();
    const slab = slabHistory(from, session);
    expect(slab.layers.map(({ name }) => name)).toEqual(['nougat', 'caramel']);
    expect(slab.exit.hottest).toBeLessThan(slab.along.hottest[0]!);
    expect(slabHistory(from, session, { air: 4 }).exit.hottest).toBeLessThan(slab.exit.hottest);
    expect(slabHistory(from, session, { rate: 1050 }).exit.hottest).toBeGreaterThan(slab.exit.hottest);
    const [strong, weak] = slab.hottestBetween;
    expect(strong).toBeLessThan(slab.exit.hottest);
    expect(weak).toBeGreaterThan(slab.exit.hottest);
    // Heat out is heat lost: flow of the slab times its heat content between start and mean exit.
    const mean = slab.along.mean;
    const capacity = (slab.load - slab.fatLoad) / (mean[0]! - mean.at(-1)!) / (session.number('line.slab_flow') / 3600);
    expect(capacity).toBeGreaterThan(1700);
    expect(capacity).toBeLessThan(2300);
  });

  it('counts the heat of the fat that sets: warmer by it, and not at all without it', () => {
    const { from } = demo();
    const session = new Session(from.chain);
    const slab = slabHistory(from, session);
    // All the fat of the two layers, a kilogram of bar centres: no more than that can set.
    const fat = ['nougat', 'caramel'].map((c) => session.number(`${c}.fat`) * session.number(`layer.${c}.mass`));
    const most = (100_000 * (fat[0]! + fat[1]!) * session.number('line.rate')) / 60;
    expect(slab.fatLoad).toBeGreaterThan(0.15 * most);
    expect(slab.fatLoad).toBeLessThan(most);
    expect(slab.fatKeepsWarm).toBeGreaterThan(0.3);
    session.set('station.slab_cooler.fat_setting_heat', 0);
    const none = slabHistory(from, session);
    expect(none.fatLoad).toBeCloseTo(0, 6);
    expect(none.fatKeepsWarm).toBe(0);
    expect(none.exit.hottest).toBeCloseTo(slab.exit.hottest - slab.fatKeepsWarm, 9);
    expect(none.sentences.join(' ')).not.toMatch(/Setting fat/);
    expect(slab.sentences.join(' ')).toMatch(/Setting fat gives/);
  });

  it('takes the temperature of a chilled bed or drum where the plant wrote one', async () => {
    const plant = structuredClone(await examplePlant('pellamoor'));
    const cooler = [...plant.lines.values()].flatMap(({ stations }) => stations).find(({ slug }) => slug === 'slab_cooler')!;
    const air = cooler.setPoints.find(({ name }) => /air/.test(name))!;
    (cooler.setPoints as unknown[]).push({ ...air, name: 'bed temperature', slug: 'bed_temperature', value: { ...air.value, value: 4 } });
    const chilled = plantChain(plant);
    const slab = slabHistory(chilled, new Session(chilled.chain));
    const plain = slabHistory(demo().from, new Session(demo().from.chain));
    expect(slab.bed).toBe(4);
    expect(slab.exit.bottom).toBeLessThan(plain.exit.bottom - 2);
    expect(slab.sentences.join(' ')).toMatch(/in air of 10\.0 °C on a bed of 4\.0 °C/);
  });

  it('sticks until its core is in the window, in every place no longer than in the core', () => {
    const { from, session } = plants['highmark']!;
    const { sticky, slit, speed, along, dwell, doubt, profiles } = slabHistory(from, session);
    expect(sticky.core * speed).toBeCloseTo(slit.opens, 9);
    expect(sticky.top).toBeLessThan(sticky.core);
    expect(sticky.bottom).toBeLessThan(sticky.core);
    const [stronger, weaker] = sticky.coreBetween;
    expect(stronger).toBeLessThan(sticky.core);
    expect(weaker).toBeGreaterThan(sticky.core);
    const row = along.place.findIndex((place) => place / speed > sticky.core);
    expect(along.hottest[row]).toBeLessThanOrEqual(slit.below);
    expect(along.hottest[row - 1]).toBeGreaterThan(slit.below);
    expect(along.state[0]).toBe('too warm');
    expect(along.state.at(-1)).toBe(slit.state);
    expect(dwell).toBeGreaterThan(weaker);
    profiles.at(-1)!.forEach((t, cell) => {
      expect(doubt.stronger.at(-1)![cell]).toBeLessThan(t);
      expect(doubt.weaker.at(-1)![cell]).toBeGreaterThan(t);
    });
    // Air above the window never lets it set.
    expect(slabHistory(from, session, { air: 30 }).sticky).toMatchObject({
      core: Infinity,
      top: Infinity,
      coreBetween: [Infinity, Infinity],
    });
  });

  it('says where a line has no slab cooler', () => {
    const { from, session } = plants['tollhythe']!;
    const bare = { ...from, line: undefined };
    expect(() => slabHistory(bare, session)).toThrow(NoSlab);
  });

  it('sags more the wetter it is, and keeps its volume', () => {
    const { from, session } = demo();
    const layer = from.bar.layers.find(({ name }) => name === 'caramel')!;
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), (days) => {
        const { shape, start } = layerSlump(from, session, layer, days)!;
        let volume = 0;
        for (let i = 0; i < shape.height.length; i++) volume += shape.height[i]! * (shape.x[i + 1]! - shape.x[i]!);
        expect(volume).toBeCloseTo((start.height * start.width) / 2, 9);
      }),
      { numRuns: 10 },
    );
  });
});

describe('the cheapest blend', () => {
  let optimiser: Optimiser;
  beforeAll(async () => {
    optimiser = await loadOptimiser();
  });

  it('holds every limit by the models themselves and names what holds the price up', () => {
    const { from, session } = demo();
    const answer = cheapestBlend(blendTask(from, session, { also: ['glucose syrup 60 DE'] }), optimiser);
    expect(answer.found).toBe(true);
    expect(answer.cost.now).toBeCloseTo(session.number('caramel.cost'), 9);
    expect(answer.cost.best).toBeLessThan(answer.cost.now - 0.01);
    for (const { best, low, high } of answer.properties) {
      expect(best).toBeGreaterThan((low ?? -Infinity) - 1e-4 * Math.abs(low ?? 1));
      expect(best).toBeLessThan((high ?? Infinity) + 1e-4 * Math.abs(high ?? 1));
    }
    expect(answer.binding.length).toBeGreaterThan(2);
    expect(answer.amounts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  it('finds nothing cheaper than a straight problem can be solved to by hand', () => {
    // Only fat may move, between vegetable fat and butter, with fat and milk solids held: nothing is left to win.
    const { from, session } = demo();
    const names = ['glucose syrup 42 DE', 'sweetened condensed whole milk', 'sugar'];
    const inside = blendTask(from, session);
    const bounds = Object.fromEntries(
      names.map((name) => {
        const { now } = inside.candidates.find((one) => one.name === name)!;
        return [name, { low: now, high: now }];
      }),
    );
    const free = (property: 'water_activity' | 'viscosity' | 'sucrose_supersaturation' | 'lactose_supersaturation') => ({
      property,
      low: 0,
    });
    const limits = [free('water_activity'), free('viscosity'), free('sucrose_supersaturation'), free('lactose_supersaturation'), { property: 'fat' as const, low: 0, high: 1 }]; // prettier-ignore
    const answer = cheapestBlend(blendTask(from, session, { bounds, limits }), optimiser);
    const butter = answer.amounts.find(({ name }) => name === 'butter')!;
    // Milk solids are at least as now and only butter can bring them beside the milk that is held.
    expect(butter.best).toBeCloseTo(butter.now, 5);
  });

  it('stays where it is when it begins from its own answer', () => {
    const { from, session } = demo();
    const task = blendTask(from, session, { also: ['glucose syrup 60 DE'] });
    const answer = cheapestBlend(task, optimiser);
    expect(answer.binding.every(({ price }) => price >= 0)).toBe(true);
    const again = cheapestBlend({ ...task, candidates: task.candidates.map((one) => ({ ...one, now: answer.amounts.find(({ name }) => name === one.name)!.best })) }, optimiser); // prettier-ignore
    expect(again.cost.best).toBeGreaterThan(answer.cost.best - 0.002);
  });

  it('says when there is no answer, and refuses what it does not know', () => {
    const { from, session } = demo();
    const none = cheapestBlend(blendTask(from, session, { limits: [{ property: 'water_activity', high: 0.2 }] }), optimiser);
    expect(none.found).toBe(false);
    expect(none.sentences[0]).toMatch(/No blend .* water activity/);
    expect(none.binding).toEqual([]);
    expect(() => blendTask(from, session, { also: ['pixie dust'] })).toThrow(NoBlend);
    expect(() => blendTask(from, session, { component: 'nougat' })).toThrow(/whipped/);
  });
});

describe('what a definition says of its own cooks', () => {
  const edited = async (from: string, to: string) => {
    const files = new Map(await readPlantFolder(fileURLToPath(new URL('../../../examples/pellamoor', import.meta.url))));
    const [name, text] = [...files].find(([, content]) => content.includes(from))!;
    files.set(name, text.replace(from, to));
    const loaded = loadPlant(files);
    if (!loaded.ok) throw new Error(loaded.problems[0]!.message);
    return new Session(plantChain(loaded.plant).chain);
  };

  it('narrows the interval to what the plant has measured', async () => {
    const session = await edited('model offset: 0 K ', 'model offset: -1.8 K ± 0.4 K ');
    expect(session.number('caramel.cook_temperature')).toBeCloseTo(demo().session.number('caramel.cook_temperature') - 1.8, 9);
    expect(session.uncertainty('caramel.cook_temperature')).toBeCloseTo(0.4, 9);
    expect(demo().session.uncertainty('caramel.cook_temperature')).toBeGreaterThan(2);
    const meter = await edited('activity offset: 0 ', 'activity offset: 0.05 ± 0.01 ');
    expect(meter.uncertainty('caramel.water_activity')).toBeCloseTo(0.01, 9);
  });

  it('browns with a hold, more the hotter and the longer', async () => {
    const session = await edited('        refractometer offset: 0 %', '        hold: 6 min\n        refractometer offset: 0 %');
    const minutes = session.number('caramel.browning') / 60;
    expect(minutes).toBeGreaterThan(6); // hotter than 118 °C
    expect(minutes).toBeLessThan(8);
    session.set('caramel.cook_hold', 12 * 60);
    expect(session.number('caramel.browning') / 60).toBeCloseTo(2 * minutes, 9);
  });
});
