import { calibrate, Session } from '@barwright/chain';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import fc from 'fast-check';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { cookTable, foamAnswer, judgeFoam, NoFoam, plantChain, rowsOfText, whippedComponents } from '../src/index.js';
import { demoDay } from './day.js';
import { examplePlant } from './pellamoor.js';

const from = plantChain(await examplePlant('pellamoor'));
const fresh = () => new Session(from.chain);
const of = (list: readonly { readonly id: string; readonly before: number; readonly after: number }[], id: string) =>
  list.find((one) => one.id === id)!;

describe('a whipped mass', () => {
  it('as planned asks for nothing, and rests on what the whip must hold', () => {
    const answer = foamAnswer(from, fresh());
    expect(answer).toMatchObject({ component: 'nougat', state: 'as planned' });
    expect(answer.density).toBeCloseTo(920, 6);
    expect(answer.advice[0]).toMatch(/^Do nothing/);
    expect(answer.restore.pressure).toBeCloseTo(350_000, 3);
    // Boyle alone, cold and dry: 3.5 bar press the overrun of 55 % into a third of its volume.
    expect(answer.held.now).toBeGreaterThan(0.12);
    expect(answer.held.now).toBeLessThan(0.17);
  });

  it('keeps every gram and every millimetre that it says it keeps', () => {
    fc.assert(
      fc.property(fc.double({ min: 700, max: 1300, noNaN: true }), (density) => {
        const answer = foamAnswer(from, fresh(), { density });
        expect(of(answer.constantWeight, 'bar.mass').after).toBeCloseTo(0.0488, 9);
        const thickness = of(answer.constantThickness, 'layer.nougat.thickness');
        expect(thickness.after).toBeCloseTo(thickness.before, 9);
        const mass = of(answer.constantThickness, 'layer.nougat.mass');
        expect(mass.after / mass.before).toBeCloseTo(density / 920, 9);
        const sheet = of(answer.constantWeight, 'layer.nougat.thickness');
        expect(sheet.after * density).toBeCloseTo(sheet.before * 920, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('falls with pressure, rises with a weaker albumen and a hotter whip, and is brought back by the pressure it names', () => {
    const session = fresh();
    const plain = foamAnswer(from, session).density;
    expect(foamAnswer(from, session, { pressure: 4e5 }).density).toBeLessThan(plain);
    expect(foamAnswer(from, session, { temperature: 90 }).density).toBeGreaterThan(plain);
    const weak = foamAnswer(from, session, { power: 0.8 });
    expect(weak.density).toBeGreaterThan(plain);
    expect(weak.power).toBeCloseTo(0.8, 9);
    expect(foamAnswer(from, session, { power: 0.8, pressure: weak.restore.pressure }).density).toBeCloseTo(920, 6);
    const measured = foamAnswer(from, session, { density: weak.density });
    expect(measured.power).toBeCloseTo(0.8, 9);
    expect(session.overrides()).toEqual({});
  });

  it('stays in its window between the two pressures that the chain names', () => {
    const session = fresh();
    const [least, most] = ['min', 'max'].map((end) => session.number(`nougat.whip_pressure_${end}`));
    expect(foamAnswer(from, session, { pressure: least! }).density).toBeCloseTo(940, 6);
    expect(foamAnswer(from, session, { pressure: most! }).density).toBeCloseTo(900, 6);
    expect(least!).toBeLessThan(350_000);
    expect(most!).toBeGreaterThan(350_000);
  });

  it('names what to do, and says so when no pressure can help', () => {
    const dense = foamAnswer(from, fresh(), { density: 965 });
    expect(dense.state).toBe('too dense');
    expect(dense.advice.join(' ')).toMatch(/sheet 6\.13 mm in place of 6\.43 mm/);
    expect(dense.advice.join(' ')).toMatch(/bar in the whip, absolute, would bring 0\.920 g\/cm³ back/);
    expect(foamAnswer(from, fresh(), { power: 0.3 }).advice.join(' ')).toMatch(/No pressure of this whip/);
    expect(foamAnswer(from, fresh(), { pressure: 3e5 }).advice.join(' ')).toMatch(/pressure or temperature, not the albumen/);
  });

  it('refuses a density that is no foam, a whip that boils, a component that nobody whips', () => {
    expect(() => foamAnswer(from, fresh(), { density: 1600 })).toThrow(
      '1.600 g/cm³ is no density of a foam of nougat, which without gas has',
    );
    expect(() => foamAnswer(from, fresh(), { density: -1 })).toThrow(/-0.001 g\/cm³ is no density/);
    expect(() => foamAnswer(from, fresh(), { power: -0.05 })).toThrow(/Gas held is -5 %/);
    expect(() => foamAnswer(from, fresh(), { pressure: 2000 })).toThrow(/boils|vapour/);
    expect(() => foamAnswer(from, fresh(), {}, 'caramel')).toThrow(NoFoam);
    expect(() => foamAnswer(from, fresh(), {}, 'caramel')).toThrow('No whip of Kestrowan makes "caramel"; it whips nougat');
  });
});

describe('the same on other bars', () => {
  it('a coat written as the rest to the bar’s mass does not shrink when the sheet becomes heavier', async () => {
    const other = plantChain(await examplePlant('highmark'));
    const answer = foamAnswer(other, new Session(other.chain), { density: 965 });
    expect(answer.state).toBe('too dense');
    const mass = of(answer.constantThickness, 'bar.mass');
    const layer = of(answer.constantThickness, 'layer.nougat.mass');
    expect(mass.after - mass.before).toBeCloseTo(layer.after - layer.before, 9);
  });
  it('a bar without foam says so', async () => {
    const other = plantChain(await examplePlant('tollhythe'));
    expect(whippedComponents(other)).toEqual([]);
    expect(() => foamAnswer(other, new Session(other.chain))).toThrow(/^Nothing in .+ is whipped$/);
  });
});

describe('a log of whipped batches', () => {
  const rows = () => demoDay('nougat_batches.csv');
  it('of the demo day: all good, one albumen, and what the whip holds', async () => {
    const answer = judgeFoam(from, fresh(), cookTable(await rows(), 'nougat_batches.csv'));
    expect(answer).toMatchObject({ component: 'nougat', good: 46, incidents: [], lots: [] });
    expect(answer.held!.low).toBeLessThan(answer.held!.mean);
    expect(answer.held!.batches).toBe(46);
  });

  const log = (change: (i: number) => { density?: number; pressure?: number; lot?: string; moisture?: number }) => {
    const lines = Array.from({ length: 20 }, (_, i) => {
      const wave = 0.004 * Math.sin(2.4 * i);
      const one = { density: 0.92 + wave, pressure: 3.5, lot: 'A1', moisture: 9, ...change(i) };
      return `B${i + 1},2026-03-17T${String(6 + (i >> 1)).padStart(2, '0')}:${i % 2 ? '30' : '00'},${one.moisture},${one.pressure},${one.lot},${one.density}`;
    });
    return cookTable(rowsOfText(`batch,cook end,moisture (%),whip pressure (bar),albumen lot,density (g/cm³)\n${lines.join('\n')}\n`, 'log'), 'log'); // prettier-ignore
  };
  it('a drop of pressure is the pressure’s, not the albumen’s', () => {
    const { density } = foamAnswer(from, fresh(), { pressure: 3e5 });
    const answer = judgeFoam(
      from,
      fresh(),
      log((i) => (i === 12 || i === 13 ? { pressure: 3, density: density / 1000 } : {})),
    );
    expect(answer.incidents.map(({ batches, verdict }) => [batches, verdict])).toEqual([[['B13', 'B14'], 'too dense']]);
    expect(answer.batches[12]).toMatchObject({ cause: 'pressure' });
  });
  it('a weak lot is told by its batches, and differs', () => {
    const { density } = foamAnswer(from, fresh(), { power: 0.85 });
    const answer = judgeFoam(
      from,
      fresh(),
      log((i) => (i >= 15 ? { lot: 'A2', density: density / 1000 + 0.001 * (i % 3) } : {})),
    );
    expect(answer.batches[16]).toMatchObject({ verdict: 'too dense', cause: 'gas' });
    expect(answer.batches[16]!.why).toMatch(/albumen A2/);
    expect(answer.lots.find(({ lot }) => lot === 'A2')).toMatchObject({ differs: true, batches: 5 });
  });
  it('a wet batch is sent to the cook first; a blank or impossible cup cannot tell', () => {
    const answer = judgeFoam(
      from,
      fresh(),
      log((i) => (i === 4 ? { moisture: 10.5, density: 0.99 } : i === 6 ? { density: 92 } : i === 8 ? { density: NaN } : {})),
    );
    expect(answer.batches[4]).toMatchObject({ cause: 'moisture' });
    expect(answer.batches[6]).toMatchObject({ verdict: 'cannot tell' });
    expect(answer.batches[8]).toMatchObject({ verdict: 'cannot tell', why: 'no density was written' });
  });
  it('without densities, or with too few, says what it lacks', () => {
    const none = cookTable(rowsOfText('batch,cook end,moisture (%)\nB1,2026-03-17T06:00,9\n', 'log'), 'log');
    expect(() => judgeFoam(from, fresh(), none)).toThrow('a column such as "density (g/cm³)" is expected');
    const two = cookTable(rowsOfText('batch,cook end,density (g/cm³)\nB1,2026-03-17T06:00,0.92\nB2,2026-03-17T07:00,0.93\n', 'log'), 'log'); // prettier-ignore
    expect(judgeFoam(from, fresh(), two).said.join(' ')).toMatch(/Only 2 good batches/);
  });
});

describe('the hold-up that the plant wrote', () => {
  const withWhip = async (before: string, after: string) => {
    const files = new Map(await readPlantFolder(fileURLToPath(new URL('../../../examples/pellamoor', import.meta.url))));
    files.set('components.yaml', files.get('components.yaml')!.replace(before, after));
    const loaded = loadPlant(files);
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
    return new Session(plantChain(loaded.plant).chain);
  };

  it('gives a density beside the one entered, which stays what the bar rests on', () => {
    const session = fresh();
    expect(session.number('nougat.foam_density')).toBeCloseTo(920, -1);
    expect(session.number('nougat.foam_ratio') * session.number('nougat.foam_density')).toBeCloseTo(session.number('nougat.density'), 6);
    const mass = session.number('bar.mass');
    const before = session.number('nougat.foam_density');
    session.set('nougat.whip_pressure', 4e5);
    expect(session.number('nougat.foam_density')).toBeLessThan(before);
    expect(session.number('bar.mass')).toBe(mass);
    // The hold-up that the entered density asks for gives that density back.
    const plain = fresh();
    plain.set('nougat.hold_up', plain.number('nougat.gas_held'));
    expect(plain.number('nougat.foam_density')).toBeCloseTo(plain.number('nougat.density'), 6);
  });

  it('is what the good batches of the demo day teach, and says how to write it', () => {
    const answer = judgeFoam(from, fresh(), cookTable(demoDay('nougat_batches.csv'), 'nougat'));
    expect(answer.write).toBe('hold-up: 14.9 % ± 0.4 %');
    expect(answer.held!.low).toBeLessThan(answer.held!.mean);
    const { estimate } = calibrated(answer.batches.map(({ density }) => density));
    expect(estimate).toBeGreaterThan(answer.held!.low - 0.002);
    expect(estimate).toBeLessThan(answer.held!.high + 0.002);
  });

  it('loses gas where a stage says so, one after another', async () => {
    const session = await withWhip('        does: blend\n', '        does: blend\n        air loss: 10 %\n');
    expect(session.number('nougat.gas_kept')).toBeCloseTo(0.9, 12);
    const gas = (one: Session) => one.number('nougat.gas_free_density') / one.number('nougat.foam_density') - 1;
    expect(gas(session) / gas(fresh())).toBeCloseTo(0.9, 9);
  });

  it('is not made up where nobody wrote one', async () => {
    const session = await withWhip('        hold-up: 14.9 % ± 0.4 %', '       ');
    expect(session.chain.index.has('nougat.foam_density')).toBe(false);
    expect(session.number('nougat.gas_held')).toBeGreaterThan(0.1);
  });

  function calibrated(densities: readonly number[]) {
    const result = calibrate(from.chain, fresh(), {
      parameters: [{ id: 'nougat.hold_up', low: 0.05, high: 0.4 }],
      data: densities.map((density) => ({ inputs: {}, observed: { 'nougat.foam_density': density } })),
    });
    if (!result.found) throw new Error(result.reason);
    return result.parameters[0]!;
  }
});
