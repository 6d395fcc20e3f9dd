import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import { componentsOf } from '@barwright/bar';
import { constituents } from '@barwright/science';
import { plantChain, sheetSections, wholeSheet, type PlantChain } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

const names = ['pellamoor', 'tollhythe', 'highmark'];
const plants = await Promise.all(names.map(async (name) => plantChain(await examplePlant(name))));
const every = names.map((name, i) => [name, plants[i]!] as const);

describe.each(every)('%s', (_, from: PlantChain) => {
  const fresh = () => new Session(from.chain);

  it('gives every quantity a finite value', () => {
    const session = fresh();
    const without = from.chain.quantities
      .filter((quantity) => !session.status(quantity.id).ok)
      .map((quantity) => [quantity.id, session.status(quantity.id)]);
    expect(without).toEqual([]);
  });

  it('balances each component to the gram: charged = made + driven off + lost', () => {
    const session = fresh();
    for (const component of componentsOf(from.plant, from.bar)) {
      const c = component.slug;
      let gone = 0;
      for (const stage of component.stages) {
        const id = `${c}.stage.${stage.slug}`;
        gone += session.number(`${id}.in_mass`) - session.number(`${id}.mass`);
      }
      const charged = session.number(`${c}.charge_sum`);
      expect(session.number(`${c}.yield`) * charged + gone, c).toBeCloseTo(charged, 9);
    }
  });

  it('keeps every composition a whole: constituents sum to 1, none negative', () => {
    const session = fresh();
    for (const quantity of from.chain.quantities.filter((other) => /composition$/.test(other.id))) {
      const value = session.value(quantity.id) as Float64Array;
      const whole = value.subarray(0, constituents.length);
      expect(
        whole.reduce((sum, x) => sum + x, 0),
        quantity.id,
      ).toBeCloseTo(1, 9);
      expect(Math.min(...value), quantity.id).toBeGreaterThanOrEqual(0);
    }
  });

  it('keeps dry matter: what boils away is water only', () => {
    const session = fresh();
    for (const component of componentsOf(from.plant, from.bar)) {
      if (component.composition || component.stages.some((stage) => stage.losses.length > 0)) continue;
      const c = component.slug;
      const dry = session.number(`${c}.charge_dry`) * session.number(`${c}.charge_sum`);
      expect(session.number(`${c}.yield`) * session.number(`${c}.charge_sum`) * (1 - session.number(`${c}.moisture`)), c).toBeCloseTo(
        dry,
        9,
      );
    }
  });

  it('weighs what its parts weigh, and its flows carry the same mass', () => {
    const session = fresh();
    const coat = from.bar.coat ? session.number('coat.mass') : 0;
    expect(session.number('bar.mass')).toBeCloseTo(session.number('bar.centre_mass') + coat, 12);
    expect(session.number('line.bar_flow')).toBeCloseTo(60 * session.number('line.rate') * session.number('bar.mass'), 6);
    expect(session.number('line.slab_flow') - session.number('line.trim_flow')).toBeCloseTo(session.number('line.centre_flow'), 6);
  });

  it('shows each quantity once on the sheet', () => {
    const ids = sheetSections(from).flatMap((section) => section.ids);
    expect([...ids].sort()).toEqual(from.chain.quantities.map((quantity) => quantity.id).sort());
    expect(sheetSections(from).map((section) => section.title)).not.toContain('Other');
  });

  it('leaves the session as it was after trying every price', () => {
    const session = fresh();
    const before = session.snapshot();
    const sheet = wholeSheet(from, session);
    expect(sheet.cost_moves.length).toBeGreaterThan(5);
    for (const quantity of from.chain.quantities) expect(session.value(quantity.id), quantity.id).toEqual(before.value(quantity.id));
    expect(session.canUndo).toBe(false);
  });

  it('costs more when anything costs more, whatever the prices are', () => {
    const prices = from.chain.quantities.map((quantity) => quantity.id).filter((id) => id.endsWith('.price'));
    fc.assert(
      fc.property(fc.constantFrom(...prices), fc.double({ min: 1.001, max: 5, noNaN: true }), (id, factor) => {
        const session = fresh();
        const before = session.number('bar.cost');
        session.set(id, session.number(id) * factor);
        return session.number('bar.cost') >= before;
      }),
      { numRuns: 60 },
    );
  });

  it('is undone by undo, whatever was changed', () => {
    const roots = from.chain.roots.filter((root) => typeof root.value === 'number' && root.value !== 0).map((root) => root.id);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...roots), fc.double({ min: 0.9, max: 1.1, noNaN: true })), { minLength: 1, maxLength: 6 }),
        (changes) => {
          const session = fresh();
          const before = session.snapshot();
          for (const [id, factor] of changes) session.set(id, session.number(id) * factor);
          while (session.undo()) continue;
          return from.chain.quantities.every(({ id }) => JSON.stringify(session.value(id)) === JSON.stringify(before.value(id)));
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('plants that are built differently', () => {
  const shown = (name: string) => new Session(plants[names.indexOf(name)]!.chain);

  it('a cooker under vacuum boils far below the same syrup in the open', () => {
    const session = shown('tollhythe');
    expect(session.number('soft_caramel.cook_pressure')).toBeCloseTo(40_000, 3);
    expect(session.number('soft_caramel.cook_temperature')).toBeGreaterThan(88);
    expect(session.number('soft_caramel.cook_temperature')).toBeLessThan(102);
  });

  it('a loss of what ends on bars multiplies, a loss of what is made divides', () => {
    const session = shown('tollhythe');
    expect(session.number('layer.caramel.gross')).toBeCloseTo(
      session.number('layer.caramel.mass') * (1 + session.number('layer.caramel.loss')),
      12,
    );
    const other = shown('highmark');
    expect(other.number('layer.nougat.gross')).toBeCloseTo(other.number('layer.nougat.mass') / (1 - other.number('layer.nougat.loss')), 12);
  });

  it('a coat that is the rest of the bar fills it to the mass aimed at', () => {
    const session = shown('highmark');
    expect(session.number('bar.mass')).toBeCloseTo(session.number('bar.target'), 12);
    session.set('layer.nougat.mass', 0.9 * session.number('layer.nougat.mass'));
    expect(session.number('bar.mass')).toBeCloseTo(session.number('bar.target'), 12);
  });

  it('at 1,600 m the pressure is that of the standard atmosphere and the cook is cooler for it', () => {
    const session = shown('highmark');
    // ISO 2533: 835.2 hPa at 1600 m
    expect(session.number('plant.pressure') / 100).toBeCloseTo(835.2, 0);
  });

  it('a coat without underside covers five faces', () => {
    const session = shown('tollhythe');
    const [l, w, h] = ['bar.cut_length', 'bar.cut_width', 'bar.centre_height'].map((id) => session.number(id)) as [number, number, number];
    expect(session.number('coat.area')).toBeCloseTo(l * w + 2 * (l + w) * h, 12);
  });

  it.each(['tollhythe', 'highmark'])('%s can do what is asked of it', (name) => {
    expect(
      shown(name)
        .findings()
        .filter((finding) => finding.level === 'incident'),
    ).toEqual([]);
  });
});
