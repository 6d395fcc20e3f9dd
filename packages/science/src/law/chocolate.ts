import { requireRange } from '../errors.js';
import {
  chocolateLaws,
  liquorFactorUs,
  type ChocolateMarket,
  type ChocolateName,
  type ChocolateQuantity,
  type ChocolateRule,
} from './chocolate-rules.js';
import { at, share, type Composition } from '../composition.js';
import type { MassFraction } from '../units.js';

/** What the laws ask of a chocolate, as fractions of the finished chocolate (additions such as nuts in it included). */
export interface ChocolateContents {
  /** Total dry cocoa solids, cocoa butter included. */
  readonly cocoaSolids: MassFraction;
  readonly fatFreeCocoaSolids: MassFraction;
  /** Dry milk solids, milk fat included. */
  readonly milkSolids: MassFraction;
  readonly milkFat: MassFraction;
  /** Fat of any kind. Left out: cocoa butter + milk fat + vegetable fat. */
  readonly totalFat?: MassFraction;
  /** Vegetable fat other than cocoa butter. */
  readonly vegetableFat?: MassFraction;
  /** Other edible foodstuffs in the chocolate itself: nut pieces, crisp rice. Not the filling of a bar. */
  readonly otherEdible?: MassFraction;
  readonly moisture?: MassFraction;
  /** Nutritive carbohydrate sweeteners; asked for by one US name only. */
  readonly sweetener?: MassFraction;
}

export interface RequirementResult {
  readonly quantity: ChocolateQuantity;
  readonly bound: ChocolateRule['bound'];
  readonly limit: MassFraction;
  /** On the basis of the market. */
  readonly actual: MassFraction;
  /** Distance to the limit on the allowed side; negative where the rule is broken. */
  readonly margin: number;
  readonly met: boolean;
  readonly standing: ChocolateRule['standing'];
}

export interface NameResult {
  readonly name: string;
  readonly reference: string;
  readonly allowed: boolean;
  readonly requirements: readonly RequirementResult[];
  /** The requirement closest to, or furthest beyond, its limit. */
  readonly tightest: RequirementResult;
  readonly condition?: string;
}

const slack = 1e-9; // rounding of sums of fractions

/**
 * Which sales names the composition of a chocolate allows in a market, requirement by requirement.
 * Basis: EU finished chocolate less other edible matter; Codex the same on dry matter; US the finished food.
 * "Total fat" of a rule is cocoa butter + milk fat, so vegetable fat and nut oil do not count towards it.
 *
 * @throws OutOfRange for a fraction outside 0 to 1, or fat-free cocoa above cocoa solids, or milk fat above milk solids
 * @see eu-2000-36, codex-87-1981, us-21cfr163; each rule carries its own standing
 */
export function chocolateLaw(contents: ChocolateContents, market: ChocolateMarket): readonly NameResult[] {
  const actual = onBasis(contents, market);
  return chocolateLaws[market].names.map((name) => judge(name, actual));
}

/** The quantities of the rules on the basis of a market. */
export function onBasis(contents: ChocolateContents, market: ChocolateMarket): Readonly<Record<ChocolateQuantity, number>> {
  const { cocoaSolids, fatFreeCocoaSolids, milkSolids, milkFat, vegetableFat = 0, otherEdible = 0, moisture = 0, sweetener = 0 } = contents;
  const one = [0, 1] as const;
  requireRange('cocoa_solids', cocoaSolids, one, 'physics');
  requireRange('fat_free_cocoa_solids', fatFreeCocoaSolids, [0, cocoaSolids], 'physics');
  requireRange('milk_solids', milkSolids, [0, 1 - cocoaSolids + slack], 'physics');
  requireRange('milk_fat', milkFat, [0, milkSolids], 'physics');
  requireRange('vegetable_fat', vegetableFat, one, 'physics');
  requireRange('other_edible', otherEdible, [0, 0.99], 'physics');
  requireRange('moisture', moisture, [0, 0.5], 'physics');
  requireRange('sweetener', sweetener, one, 'physics');
  const cocoaButter = cocoaSolids - fatFreeCocoaSolids;
  const namedFat = cocoaButter + milkFat;
  if (contents.totalFat !== undefined) requireRange('total_fat', contents.totalFat, [vegetableFat, 1], 'physics');
  const totalFat = contents.totalFat === undefined ? namedFat : Math.min(namedFat, contents.totalFat - vegetableFat);
  const whole = market === 'us' ? 1 : 1 - otherEdible;
  const base = market === 'codex' ? whole - moisture : whole;
  return {
    cocoa_solids: cocoaSolids / base,
    fat_free_cocoa_solids: fatFreeCocoaSolids / base,
    cocoa_butter: cocoaButter / base,
    milk_solids: milkSolids / base,
    milk_fat: milkFat / base,
    total_fat: totalFat / base,
    vegetable_fat: vegetableFat / whole, // finished product in all three texts
    chocolate_liquor: liquorUs(fatFreeCocoaSolids),
    sweetener: sweetener / whole,
    other_edible: otherEdible,
  };
}

/** Chocolate liquor as 21 CFR 163.130 counts it: the fat-free cocoa of the liquor (alkali and seasoning taken off) times 2.2. */
export function liquorUs(fatFreeCocoaSolids: MassFraction): MassFraction {
  return fatFreeCocoaSolids * liquorFactorUs;
}

function judge(name: ChocolateName, actual: Readonly<Record<ChocolateQuantity, number>>): NameResult {
  const requirements = name.rules.map((rule): RequirementResult => {
    const value = actual[rule.quantity];
    const margin = rule.bound === 'at least' ? value - rule.limit : rule.limit - value;
    const met = rule.bound === 'below' ? margin > 0 : margin >= -slack;
    return { quantity: rule.quantity, bound: rule.bound, limit: rule.limit, actual: value, margin, met, standing: rule.standing };
  });
  const tightest = requirements.reduce((a, b) => (b.margin < a.margin ? b : a));
  const result = { name: name.name, reference: name.reference, allowed: requirements.every((r) => r.met), requirements, tightest };
  return name.condition === undefined ? result : { ...result, condition: name.condition };
}

/**
 * The quantities of the laws from a composition. Milk solids = non-fat milk solids + milk fat, cocoa solids = non-fat cocoa solids + cocoa butter;
 * nut oil is other edible matter and is not deducted here: give the chocolate without its nuts, or set otherEdible.
 */
export function chocolateContents(of: Composition, otherEdible: MassFraction = 0): ChocolateContents {
  const nonfatCocoa = of[at.nonfat_cocoa_solids]!;
  const milkFat = of[at.milk_fat]!;
  const sweetener = share(of, ['sucrose', 'glucose', 'fructose', 'maltose', 'higher_saccharides']);
  return {
    cocoaSolids: nonfatCocoa + of[at.cocoa_butter]!,
    fatFreeCocoaSolids: nonfatCocoa,
    milkSolids: of[at.nonfat_milk_solids]! + milkFat,
    milkFat,
    vegetableFat: of[at.vegetable_fat]!,
    otherEdible,
    moisture: of[at.water]!,
    sweetener,
  };
}

/** Sentences that say what a name still lacks, in percentage points on the basis of the market; empty where it is allowed. */
export function whatToChange(result: NameResult): readonly string[] {
  return result.requirements
    .filter((r) => !r.met)
    .map((r) => {
      const points = (Math.abs(r.margin) * 100).toFixed(2);
      const words = r.quantity.replaceAll('_', ' ');
      const limit = +(r.limit * 100).toFixed(2);
      return `${result.name}: ${words} is ${(r.actual * 100).toFixed(2)} %, ${r.bound} ${limit} % is asked: ${r.bound === 'at least' ? 'add' : 'take off'} ${points} points`;
    });
}

/**
 * The part of a bar that the EU rules look at: whole bar less filling less other edible matter in the coat.
 * @returns share of chocolate in the whole (additions in it included) and the fraction of `part` in the chocolate proper
 */
export function chocolatePart(
  bar: { readonly mass: number; readonly filling: number; readonly additions: number },
  part: number,
): { readonly share: MassFraction; readonly fraction: MassFraction } {
  requireRange('mass', bar.mass, [Number.MIN_VALUE, Infinity], 'physics');
  requireRange('filling', bar.filling, [0, bar.mass], 'physics');
  const coat = bar.mass - bar.filling;
  requireRange('additions', bar.additions, [0, coat], 'physics');
  const chocolate = coat - bar.additions;
  requireRange('part', part, [0, chocolate], 'physics');
  return { share: coat / bar.mass, fraction: chocolate > 0 ? part / chocolate : 0 };
}
