import { beforeAll, describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import { lotAnswer, plantChain, UnknownLot, type PlantChain } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

let from: PlantChain;
beforeAll(async () => {
  from = plantChain(await examplePlant('pellamoor'));
});
const answer = (lot: string, options = {}) => lotAnswer(from, new Session(from.chain), lot, options);

describe('a bean lot of count 112 and shell 14.5 %', () => {
  it('is worth 1.95 % less by its shell: 38.7 kg more beans a day, EUR 251, EUR 127 a tonne (worked out by hand)', () => {
    const { worth } = answer('CB-2614');
    const shell = worth!.effects.find(({ name }) => name === 'shell')!;
    expect(-100 * shell.yieldChange).toBeCloseTo(1.95, 2);
    expect(shell.extraForOrder!).toBeCloseTo(38.7, 1);
    expect(shell.extraMoney!).toBeCloseTo(251, -0.5);
    expect(-1000 * shell.priceChange).toBeCloseTo(127, 0);
    expect(worth!.yieldReference).toBeCloseTo(0.8054, 4);
  });

  it('and half a point of water more makes it 2.5 % in all', () => {
    const { worth } = answer('CB-2614');
    expect(100 * worth!.discount).toBeCloseTo(2.48, 2);
    expect(worth!.yieldLot).toBeCloseTo(0.8054 * ((1 - 0.145) / (1 - 0.128)) * ((1 - 0.074) / (1 - 0.069)), 4);
    expect(worth!.costAfter).toMatchObject({ stage: 'winnow' });
    expect(worth!.costAfter!.lot).toBeGreaterThan(worth!.costAfter!.reference);
  });

  it('at the fair price a bar costs what it costs from the reference', () => {
    const session = new Session(from.chain);
    const before = session.number('bar.cost');
    const { worth } = answer('CB-2614');
    const { sheet } = { sheet: new Session(from.chain) };
    sheet.set('cocoa_liquor.stage.winnow.loss.shell', 0.145);
    sheet.set('material.cocoa_beans.composition[water]', 0.069);
    sheet.set('material.cocoa_beans.price', worth!.price + worth!.effects.find(({ name }) => name === 'shell')!.priceChange);
    expect(sheet.number('bar.cost')).toBeCloseTo(before, 9);
  });

  it('passes the cut test as grade 1, but the sample leaves more open and a class is not reported', () => {
    const { grade } = answer('CB-2614');
    expect(grade).toMatchObject({ beans: 300, grade: '1', settled: false, doubtful: true, size: 'medium' });
    const [mould] = grade!.shares;
    // Clopper-Pearson for 8 of 300: 1.16 to 5.19 %
    expect(mould).toMatchObject({ name: 'mouldy', counted: 8 });
    expect(100 * mould!.low).toBeCloseTo(1.16, 2);
    expect(100 * mould!.high).toBeCloseTo(5.19, 2);
    expect(grade!.missing).toEqual(['insect-damaged, germinated or flat']);
    expect(grade!.beanMass).toBeCloseTo(0.893, 3);
  });

  it('breaks the count of the control plan and nothing else; what was not reported is named', () => {
    const { results, reactions, missing } = answer('CB-2614');
    expect(results.filter(({ verdict }) => verdict === 'outside').map(({ name }) => name)).toEqual(['count']);
    expect(reactions).toHaveLength(1);
    expect(reactions[0]).toMatch(/claim/);
    expect(missing).toEqual(['infestation', 'foreign matter']);
  });

  it('can be held against the other lot', () => {
    const { worth } = answer('CB-2614', { reference: 'CB-2609' });
    expect(worth!.against).toBe('lot CB-2609');
    expect(100 * worth!.discount).toBeCloseTo(2.48, 2);
  });
});

describe('the reference lot', () => {
  it('is worth its price', () => {
    const { worth, reactions } = answer('CB-2609');
    expect(worth!.discount).toBeCloseTo(0, 12);
    expect(reactions).toEqual([]);
  });
});

describe('peanut lots', () => {
  it.each(['PN-2207', 'PN-2211'])('%s: inside every limit, inside the validated raw moisture', (lot) => {
    const { results, reactions, killStep } = answer(lot);
    expect(results.every(({ verdict }) => verdict === 'inside')).toBe(true);
    expect(reactions).toEqual([]);
    expect(killStep.join(' ')).toMatch(/lies inside PV-07/);
  });

  it('a passing aflatoxin result leaves a chance that the lot is above: more for the dirtier lot, and the belief is shown', () => {
    const [clean] = answer('PN-2207').aflatoxin;
    const [dirtier] = answer('PN-2211').aflatoxin;
    expect(clean!.what).toBe('aflatoxin total');
    expect(clean!.chanceAbove).toBeGreaterThan(0);
    expect(dirtier!.chanceAbove).toBeGreaterThan(clean!.chanceAbove);
    expect(dirtier!.chanceRange[0]).toBeLessThan(dirtier!.chanceAbove);
    expect(dirtier!.chanceRange[1]).toBeGreaterThan(dirtier!.chanceAbove);
    expect(clean!.belief).toMatchObject({ sampleMass: 20_000 });
  });

  it('a larger sample tells a bad lot better from a good one', () => {
    const at = (sampleMass: number) => answer('PN-2211', { belief: { sampleMass } }).aflatoxin[0]!.acceptance;
    const [small, large] = [at(5000), at(60_000)];
    expect(large[0]!.chance).toBeGreaterThan(small[0]!.chance);
    expect(large[3]!.chance).toBeLessThan(small[3]!.chance);
  });

  it('wetter peanuts make less: PN-2211 costs more at its price', () => {
    const { worth } = answer('PN-2211');
    expect(worth!.effects.map(({ name }) => name)).toEqual(['moisture']);
    expect(worth!.discount).toBeCloseTo(1 - (1 - 0.066) / (1 - 0.06), 6);
  });

  it('too wet for the validation says that the kill step is not proven', async () => {
    const plant = await examplePlant('pellamoor');
    const [plan] = plant.plans;
    const wet = plan!.lots.map((lot) =>
      lot.lot === 'PN-2211'
        ? {
            ...lot,
            results: lot.results!.map((result) =>
              result.slug === 'moisture' ? { ...result, value: { ...result.value, value: 0.075, text: '7.5 %' } } : result,
            ),
          }
        : lot,
    );
    const chain = plantChain({ ...plant, plans: [{ ...plan!, lots: wet }] });
    const { killStep, reactions } = lotAnswer(chain, new Session(chain.chain), 'PN-2211');
    expect(killStep.join(' ')).toMatch(/lies outside PV-07 .* the kill step is not proven/);
    expect(reactions.join(' ')).toMatch(/refuse/);
  });
});

describe('other lots', () => {
  it('glucose syrup at 79.8 % solids: worth half a per cent less, nothing to do', () => {
    const { results, worth } = answer('GS-260316');
    expect(results.map(({ verdict }) => verdict)).toEqual(['inside', 'inside']);
    expect(worth!.discount).toBeGreaterThan(0);
    expect(worth!.discount).toBeLessThan(0.01);
    expect(worth!.stages).toEqual([]);
  });

  it('a lot with nothing that the chain can count has no worth, and its missing checks are named', () => {
    const { worth, missing } = answer('AL-77');
    expect(worth).toBeUndefined();
    expect(missing).toContain('Salmonella');
  });

  it('names the lots there are when asked for one that is not', () => {
    expect(() => answer('CB-1')).toThrow(UnknownLot);
    expect(() => answer('CB-1', { material: 'cocoa beans' })).toThrow(/it has CB-2609 \(cocoa beans\), CB-2614 \(cocoa beans\)$/);
  });
});
