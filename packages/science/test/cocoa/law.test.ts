import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chocolateContents, chocolateLaw, chocolatePart, whatToChange } from '../../src/law/chocolate.js';
import { chocolateLaws, type ChocolateMarket } from '../../src/law/chocolate-rules.js';
import { chocolateNamesModel } from '../../src/law/chocolate-models.js';
import { composition } from '../../src/composition.js';
import { OutOfRange } from '../../src/errors.js';
import { runModel } from '../../src/model.js';

const milk = { cocoaSolids: 0.3, fatFreeCocoaSolids: 0.06, milkSolids: 0.2, milkFat: 0.055, vegetableFat: 0, moisture: 0.01 };
const allowed = (contents: Parameters<typeof chocolateLaw>[0], market: ChocolateMarket) =>
  chocolateLaw(contents, market)
    .filter((r) => r.allowed)
    .map((r) => r.name);

describe('chocolateLaw', () => {
  it('lets a usual milk chocolate bear its name in all three markets', () => {
    for (const market of ['eu', 'codex', 'us'] as const) expect(allowed(milk, market)).toContain('milk chocolate');
  });
  it('refuses the name when one limit is missed by a hair, and says by how much', () => {
    const lean = chocolateLaw({ ...milk, milkFat: 0.0349 }, 'eu').find((r) => r.name === 'milk chocolate')!;
    expect(lean.allowed).toBe(false);
    expect(lean.tightest.quantity).toBe('milk_fat');
    expect(lean.tightest.margin).toBeCloseTo(-0.0001, 9);
    expect(whatToChange(lean)).toEqual(['milk chocolate: milk fat is 3.49 %, at least 3.5 % is asked: add 0.01 points']);
  });
  it('allows a value exactly on a limit', () => {
    const exact = { cocoaSolids: 0.25, fatFreeCocoaSolids: 0.025, milkSolids: 0.14, milkFat: 0.035, vegetableFat: 0.05 };
    expect(allowed(exact, 'eu')).toContain('milk chocolate');
  });
  it('knows that the same recipe can pass one law and fail another', () => {
    const pale = { ...milk, fatFreeCocoaSolids: 0.03 }; // 6.6 % liquor by the US count
    expect(allowed(pale, 'eu')).toContain('milk chocolate');
    expect(allowed(pale, 'us')).not.toContain('milk chocolate');
  });
  it('allows 5 % vegetable fat in the EU, none under the US name, any under the US coating', () => {
    const withFat = { ...milk, vegetableFat: 0.05 };
    expect(allowed(withFat, 'eu')).toContain('milk chocolate');
    expect(allowed({ ...withFat, vegetableFat: 0.051 }, 'eu')).not.toContain('milk chocolate');
    expect(allowed(withFat, 'us')).toEqual(['milk chocolate and vegetable fat coating']);
  });
  it('does not count vegetable fat towards the total fat rule', () => {
    const poor = { cocoaSolids: 0.25, fatFreeCocoaSolids: 0.06, milkSolids: 0.2, milkFat: 0.05, totalFat: 0.28, vegetableFat: 0.04 };
    const result = chocolateLaw(poor, 'eu').find((r) => r.name === 'milk chocolate')!;
    expect(result.tightest.quantity).toBe('total_fat');
    expect(result.tightest.actual).toBeCloseTo(0.24, 12);
  });
  it('deducts nut pieces in the EU and Codex, dry matter in Codex', () => {
    const nutted = { cocoaSolids: 0.21, fatFreeCocoaSolids: 0.042, milkSolids: 0.14, milkFat: 0.04, otherEdible: 0.2, moisture: 0.01 };
    const eu = chocolateLaw(nutted, 'eu').find((r) => r.name === 'milk chocolate')!;
    const codex = chocolateLaw(nutted, 'codex').find((r) => r.name === 'milk chocolate')!;
    expect(eu.requirements[0]!.actual).toBeCloseTo(0.21 / 0.8, 12);
    expect(codex.requirements[0]!.actual).toBeCloseTo(0.21 / 0.79, 12);
  });
  it('margin is linear: adding milk fat adds the same margin', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.05, noNaN: true }), (more) => {
        const before = chocolateLaw(milk, 'eu')[3]!.requirements[3]!;
        const after = chocolateLaw({ ...milk, milkFat: milk.milkFat + more }, 'eu')[3]!.requirements[3]!;
        expect(after.margin - before.margin).toBeCloseTo(more, 10);
      }),
    );
  });
  it.each([
    ['negative cocoa', { ...milk, cocoaSolids: -0.1 }],
    ['more fat-free cocoa than cocoa', { ...milk, fatFreeCocoaSolids: 0.31 }],
    ['more milk fat than milk', { ...milk, milkFat: 0.21 }],
    ['no number', { ...milk, cocoaSolids: NaN }],
    ['less fat than vegetable fat', { ...milk, vegetableFat: 0.05, totalFat: 0.01 }],
  ])('refuses %s', (_, contents) => expect(() => chocolateLaw(contents, 'eu')).toThrow(OutOfRange));
  it('reads a composition', () => {
    const of = composition({
      cocoa_butter: 0.24,
      nonfat_cocoa_solids: 0.06,
      milk_fat: 0.055,
      nonfat_milk_solids: 0.145,
      water: 0.01,
      sucrose: 0.48,
    });
    expect(chocolateContents(of)).toMatchObject({ cocoaSolids: 0.3, fatFreeCocoaSolids: 0.06, milkFat: 0.055, sweetener: 0.48 });
    expect(chocolateContents(of).milkSolids).toBeCloseTo(0.2, 12);
  });
  it('keeps every name of a market unique', () => {
    for (const law of Object.values(chocolateLaws)) expect(new Set(law.names.map((n) => n.name)).size).toBe(law.names.length);
  });
});

describe('law.chocolate_names', () => {
  it('tells basis, margins and what to change', () => {
    const answer = runModel(chocolateNamesModel, {
      cocoa_solids: 0.22,
      fat_free_cocoa_solids: 0.05,
      milk_solids: 0.21,
      milk_fat: 0.055,
      total_fat: 0.27,
    });
    expect(answer.outputs['allowed']!.value).toBe(false);
    expect(answer.outputs['what_to_change']!.value).toMatch(/cocoa solids is 22.00 %, at least 25 %/);
    expect(answer.outputs['margin_cocoa_solids']!.value).toBeCloseTo(-0.03, 12);
    expect(answer.findings.map((f) => f.code)).toEqual(['LEGAL_BASIS', 'FAT_DOES_NOT_ADD_UP']);
  });
});

describe('chocolatePart', () => {
  it('of a bar without filling or additions is the whole', () =>
    expect(chocolatePart({ mass: 50, filling: 0, additions: 0 }, 15)).toEqual({ share: 1, fraction: 0.3 }));
  it('refuses more filling than bar', () => expect(() => chocolatePart({ mass: 50, filling: 51, additions: 0 }, 1)).toThrow(OutOfRange));
});
