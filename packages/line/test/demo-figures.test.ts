import { beforeAll, describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import { presentation, plantChain, stationsByUse, ingredientList, type PlantChain } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

/**
 * Figures of the invented demo plant, worked out by hand from its definition. They prove arithmetic, not truth.
 * Tolerance: half a percent, or half a unit of the last digit given.
 */
describe('Kestrowan on line 2', () => {
  let from: PlantChain;
  let session: Session;
  beforeAll(async () => {
    from = plantChain(await examplePlant('pellamoor'));
    session = new Session(from.chain);
  });
  const shown = (id: string) => {
    const quantity = from.chain.quantities[from.chain.index.get(id)!]!;
    return presentation(quantity).toShown(session.number(id));
  };

  it.each([
    // id, figure, half a unit of its last digit
    ['caramel.yield', 85.74, 0.005],
    ['nougat.yield', 91.12, 0.005],
    ['caramel.cost', 1.424, 0.0005],
    ['nougat.cost', 1.083, 0.0005],
    ['milk_chocolate.cost', 4.892, 0.0005],
    ['roasted_peanuts.cost', 2.377, 0.0005],
    ['roasted_peanuts.yield', 93.05, 0.005],
    ['cocoa_liquor.yield', 80.54, 0.005],
    ['bar.cost', 13.3, 0.005],
    ['bar.cost_with_credit', 13.25, 0.005],
    ['bar.cost_ingredients', 12.6, 0.005],
    ['bar.cost_film', 0.29, 0.005],
    ['bar.cost_case', 0.42, 0.005],
    ['milk_chocolate.cocoa_solids', 31.3, 0.05],
    ['milk_chocolate.milk_solids', 22.8, 0.05],
    ['milk_chocolate.nonfat_cocoa_solids', 5.3, 0.05],
    ['milk_chocolate.fat', 33.7, 0.05],
    ['milk_chocolate.milk_fat', 7.2, 0.05],
    ['caramel.fat', 17.3, 0.05],
    ['nougat.fat', 6.8, 0.05],
    ['bar.mass', 48.8, 0.05],
    ['bar.mass_sd', 1.01, 0.005],
    ['variance.coat', 45, 0.5],
    ['variance.peanuts', 25, 0.5],
    ['variance.caramel', 12, 0.5],
    ['variance.nougat', 10, 0.5],
    ['layer.nougat.thickness', 6.43, 0.005],
    ['layer.caramel.thickness', 7.14, 0.005],
    ['bar.centre_height', 13.57, 0.005],
    ['coat.area', 81.6, 0.05],
    ['coat.thickness', 1.41, 0.005],
    ['line.rate', 960, 0.5],
    ['line.slab_width', 779, 0.5],
    ['line.trim_share', 1.41, 0.005],
    ['line.slab_flow', 1975, 0.5],
    ['line.centre_flow', 1947, 0.5],
    ['line.bar_flow', 2811, 0.5],
    ['line.belt_speed', 3.9, 0.05],
    ['station.cooling_tunnel.dwell', 9.23, 0.005],
    ['station.slab_cooler.dwell', 8, 0.5],
    ['station.flow_wrappers.one_down', 24, 0.5],
    ['order.bars_to_cut', 867_097, 0.5],
    ['order.duration', 1134, 0.5],
    ['order.milk_chocolate', 13_060, 5],
    ['order.caramel', 10_340, 5],
    ['order.nougat', 12_400, 5],
    ['order.roasted_peanuts', 6860, 5],
    ['order.cocoa_liquor', 1567, 0.5],
    ['order.material.cocoa_beans', 1946, 0.5],
    ['order.material.blanched_peanuts', 7372, 5],
    ['order.caramel.batches', 23, 0],
    ['order.nougat.batches', 45, 0],
    ['order.milk_chocolate.batches', 5, 0],
    ['pack.packs_per_reel', 17_142, 0],
    ['pack.film_mass', 0.612, 0.0005],
    ['label.energy_kj', 2056, 10],
    ['label.energy_kcal', 491, 2.5],
    ['label.fat', 24.5, 0.4],
    ['label.protein', 8.1, 0.1],
    ['label.salt', 0.4, 0.005],
  ])('%s is %d', (id, figure, half) => {
    expect(Math.abs(shown(id) - figure)).toBeLessThanOrEqual(Math.max(half, 0.005 * figure) * 1.0001);
  });

  it('declares all peanuts together, roasted and paste: 16.9 %', () => {
    expect(shown('label.share.peanuts') + shown('label.share.peanut_paste')).toBeCloseTo(16.9, 1);
  });

  it('needs 7.81 t of raw peanuts where the paste is made in house too', () => {
    const paste = session.number('order.material.roasted_peanut_paste');
    const raw = session.number('order.material.blanched_peanuts') + paste / session.number('roasted_peanuts.yield');
    expect(raw).toBeCloseTo(7811, -1);
  });

  it('moves by 0.385 ct when cocoa butter costs 10 % more', () => {
    const before = session.number('bar.cost');
    session.set('material.cocoa_butter.price', 14.3);
    expect(100 * (session.number('bar.cost') - before)).toBeCloseTo(0.385, 3);
    session.undo();
    expect(session.number('bar.cost')).toBe(before);
  });

  it('at 1,050 bars a minute the slab former is the first that cannot', () => {
    session.set('line.slab_speed', (3 / 60) * (1050 / 960));
    const [first] = stationsByUse(from, session);
    expect(first!.name).toBe('slab former');
    expect(first!.utilisation).toBeCloseTo(1.05, 6);
    const overloaded = session.findings().filter((finding) => finding.code === 'STATION_OVERLOADED');
    expect(overloaded).toHaveLength(1);
    expect(overloaded[0]!.message).toMatch(/^Slab former cannot: 1.050 bars\/min asked, 1.000 possible\.$/);
    expect(shown('station.cooling_tunnel.dwell')).toBeCloseTo(8.44, 2);
    expect(shown('station.nougat_line.flow')).toBeCloseTo(908, 0);
    expect(shown('station.caramel_line.flow')).toBeCloseTo(757, 0);
    expect(shown('station.peanut_spreader.flow')).toBeCloseTo(502, 0);
    expect(shown('station.flow_wrappers.one_down')).toBeCloseTo(13.8, 1);
    session.undo();
  });

  it('names sugar, glucose syrup and peanuts first on the label', () => {
    expect(
      ingredientList(from, session)
        .slice(0, 3)
        .map(({ label }) => label),
    ).toEqual(['sugar', 'glucose syrup', 'peanuts']);
  });

  it('has nothing to say about the bar as defined', () => {
    expect(session.findings()).toEqual([]);
  });

  it('answers 0.8 % more water in the caramel: less dense in solids, higher activity, same mass', () => {
    const before = {
      aw: session.number('caramel.water_activity'),
      step: session.number('step.caramel_nougat'),
      t: session.number('caramel.cook_temperature'),
    };
    session.observe('caramel.moisture', { value: 0.103, note: 'titration' });
    expect(session.origin('caramel.moisture')).toBe('measured');
    expect(session.number('bar.mass')).toBeCloseTo(0.0488, 9);
    expect(session.number('caramel.water_activity') - before.aw).toBeGreaterThan(0.015);
    expect(session.number('step.caramel_nougat')).toBeGreaterThan(before.step);
    // published cooks of milk caramel fall by about 2.1 K for each per cent of water near 9.5 %
    expect((session.number('caramel.cook_temperature') - before.t) / 0.8).toBeGreaterThan(-2.9);
    expect((session.number('caramel.cook_temperature') - before.t) / 0.8).toBeLessThan(-1.6);
    session.undo();
  });
});
