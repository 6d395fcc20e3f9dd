import { BadInput } from '../errors.js';
import { defineModel, type InputSpec, type Model } from '../model.js';
import { chocolateLaw, chocolatePart, liquorUs, onBasis, whatToChange, type ChocolateContents } from './chocolate.js';
import {
  chocolateLaws,
  chocolateQuantities,
  filledChocolateShare,
  type ChocolateMarket,
  type ChocolateQuantity,
} from './chocolate-rules.js';

const markets = Object.keys(chocolateLaws) as ChocolateMarket[];
const names = [...new Set(markets.flatMap((market) => chocolateLaws[market].names.map((n) => n.name)))];
const fraction = { unit: '1', possible: [0, 1] } as const satisfies Partial<InputSpec>;
const market = {
  key: 'market',
  unit: '-',
  kind: 'choice',
  choices: markets,
  default: 'eu',
  meaning: 'whose law: eu 2000/36/EC, codex 87-1981, us 21 CFR 163',
} as const;
const sources = ['eu-2000-36', 'codex-87-1981', 'us-21cfr163'] as const;
const keyOf = (name: string) => `margin_${name.replaceAll(' ', '_')}`;

/** Sales names that a composition allows. */
export const chocolateNamesModel: Model = defineModel({
  id: 'law.chocolate_names',
  title: 'Sales names a chocolate may bear',
  about:
    'Each name of the law is a list of limits on cocoa, milk and fat. Input fractions are of the finished chocolate with its additions; they are carried to the basis of the market: EU less other edible matter; Codex the same on dry matter; US finished food, liquor = fat-free cocoa x 2.2. Margins are on that basis; total fat counts cocoa butter and milk fat only.',
  inputs: [
    { key: 'cocoa_solids', meaning: 'total dry cocoa solids, cocoa butter in it', ...fraction },
    { key: 'fat_free_cocoa_solids', meaning: 'dry cocoa solids without fat', ...fraction },
    { key: 'milk_solids', meaning: 'dry milk solids, milk fat in it', default: 0, ...fraction },
    { key: 'milk_fat', meaning: 'milk fat', default: 0, ...fraction },
    { key: 'total_fat', meaning: 'all fat; 0 where unknown: cocoa butter + milk fat + vegetable fat', default: 0, ...fraction },
    { key: 'vegetable_fat', meaning: 'vegetable fat other than cocoa butter', default: 0, ...fraction },
    {
      key: 'other_edible',
      meaning: 'nut pieces, cereals and the like in the chocolate itself; not the filling',
      default: 0,
      unit: '1',
      possible: [0, 0.99],
    },
    {
      key: 'moisture',
      meaning: 'water, wet basis; counts for the Codex basis',
      default: 0,
      unit: '1',
      possible: [0, 0.5],
      fitted: [0, 0.03],
    },
    { key: 'sweetener', meaning: 'nutritive sweetener; asked for by US white chocolate only', default: 0, ...fraction },
    market,
    {
      key: 'name',
      unit: '-',
      kind: 'choice',
      choices: names,
      default: 'milk chocolate',
      meaning: 'the name whose requirements are listed one by one',
    },
  ],
  outputs: [
    { key: 'allowed_names', unit: '-', meaning: 'names whose every limit is met' },
    { key: 'allowed', unit: '-', meaning: 'whether `name` is among them' },
    { key: 'what_to_change', unit: '-', meaning: 'what `name` still lacks' },
    { key: 'tightest_margin', unit: '1', meaning: 'smallest margin of `name`, negative where a limit is broken' },
    { key: 'us_chocolate_liquor', unit: '1', meaning: 'chocolate liquor as the US rule counts it' },
    ...chocolateQuantities.map((q) => ({
      key: `margin_${q}`,
      unit: '1',
      meaning: `distance of ${q.replaceAll('_', ' ')} to the limit of \`name\`, on the allowed side`,
    })),
    ...chocolateQuantities.map((q) => ({ key: `basis_${q}`, unit: '1', meaning: `${q.replaceAll('_', ' ')} on the basis of the market` })),
    ...names.map((n) => ({ key: keyOf(n), unit: '1', meaning: `smallest margin of the name '${n}'` })),
  ],
  sources,
  standing: 'memory',
  run: (x) => {
    const contents = contentsOf(x);
    const results = chocolateLaw(contents, x.market as ChocolateMarket);
    const basis = onBasis(contents, x.market as ChocolateMarket);
    const chosen = results.find((r) => r.name === x.name);
    const allowed = results.filter((r) => r.allowed).map((r) => r.name);
    return {
      allowed_names: { value: allowed.length > 0 ? allowed.join(', ') : 'none' },
      allowed: { value: chosen?.allowed ?? false },
      what_to_change: { value: chosen ? whatToChange(chosen).join('; ') || 'nothing' : `${x.market} has no name '${x.name}'` },
      us_chocolate_liquor: liquorUs(x.fat_free_cocoa_solids),
      ...(chosen && { tightest_margin: chosen.tightest.margin }),
      ...Object.fromEntries(chosen?.requirements.map((r) => [`margin_${r.quantity}`, r.margin]) ?? []),
      ...Object.fromEntries(chocolateQuantities.map((q) => [`basis_${q}`, basis[q]])),
      ...Object.fromEntries(results.map((r) => [keyOf(r.name), r.tightest.margin])),
    };
  },
  remarks: (x) => {
    const law = chocolateLaws[x.market as ChocolateMarket];
    const findings = [
      { code: 'LEGAL_BASIS', message: `${law.edition}: ${law.basis}. Have the text in force confirmed before printing a name.` },
    ];
    const named = x.cocoa_solids - x.fat_free_cocoa_solids + x.milk_fat + x.vegetable_fat;
    if (x.total_fat > 0 && Math.abs(x.total_fat - named) > 0.01) {
      findings.push({
        code: 'FAT_DOES_NOT_ADD_UP',
        message: `total_fat is ${x.total_fat}, but cocoa butter + milk fat + vegetable fat make ${named.toFixed(4)}; the smaller is used for the total fat rule`,
      });
    }
    const chosen = law.names.find((n) => n.name === x.name);
    if (chosen?.condition) findings.push({ code: 'NAME_CONDITION', message: `${chosen.name}: ${chosen.condition}` });
    if (x.vegetable_fat > 0 && x.market !== 'us') {
      findings.push({
        code: 'VEGETABLE_FAT_STATEMENT',
        message: "EU label: 'contains vegetable fats in addition to cocoa butter', in the same field of vision as the ingredients",
      });
    }
    return findings;
  },
});

interface NamesInput {
  readonly cocoa_solids: number;
  readonly fat_free_cocoa_solids: number;
  readonly milk_solids: number;
  readonly milk_fat: number;
  readonly total_fat: number;
  readonly vegetable_fat: number;
  readonly other_edible: number;
  readonly moisture: number;
  readonly sweetener: number;
}

function contentsOf(x: NamesInput): ChocolateContents {
  const contents = {
    cocoaSolids: x.cocoa_solids,
    fatFreeCocoaSolids: x.fat_free_cocoa_solids,
    milkSolids: x.milk_solids,
    milkFat: x.milk_fat,
    vegetableFat: x.vegetable_fat,
    otherEdible: x.other_edible,
    moisture: x.moisture,
    sweetener: x.sweetener,
  };
  return x.total_fat > 0 ? { ...contents, totalFat: x.total_fat } : contents;
}

/** A limit looked up. */
export const chocolateLimitModel: Model = defineModel({
  id: 'law.chocolate_limit',
  title: 'Limit of a chocolate law',
  about: 'Looks a limit up in the dated tables: market, sales name and quantity.',
  inputs: [
    market,
    { key: 'name', unit: '-', kind: 'choice', choices: names, default: 'milk chocolate', meaning: 'sales name' },
    { key: 'quantity', unit: '-', kind: 'choice', choices: chocolateQuantities, meaning: 'what is limited' },
  ],
  outputs: [
    { key: 'limit', unit: '1', meaning: 'the limit, on the basis of the market' },
    { key: 'bound', unit: '-', meaning: 'at least, at most or below' },
    { key: 'limit_standing', unit: '-', meaning: 'how far this one limit may be trusted' },
    { key: 'reference', unit: '-', meaning: 'place in the text' },
    { key: 'edition', unit: '-', meaning: 'edition that was read' },
  ],
  sources,
  standing: 'memory',
  run: (x) => {
    const law = chocolateLaws[x.market as ChocolateMarket];
    const name = law.names.find((n) => n.name === x.name);
    if (!name) throw new BadInput(`${law.edition} has no name '${x.name}'; it has ${law.names.map((n) => n.name).join(', ')}`);
    const rule = name.rules.find((r) => r.quantity === (x.quantity as ChocolateQuantity));
    if (!rule)
      throw new BadInput(
        `'${x.name}' (${name.reference}) sets no limit on ${x.quantity}; it limits ${name.rules.map((r) => r.quantity).join(', ')}`,
      );
    return {
      limit: rule.limit,
      bound: { value: rule.bound },
      limit_standing: { value: rule.standing },
      reference: { value: name.reference },
      edition: { value: law.edition },
    };
  },
});

/** The chocolate part of a filled or coated bar. */
export const chocolatePartModel: Model = defineModel({
  id: 'law.chocolate_part',
  title: 'Chocolate part of a filled or coated bar',
  about:
    'EU minima hold for the chocolate after deduction of the filling and of other edible matter in the coat; share of chocolate is on the whole bar.',
  inputs: [
    { key: 'bar_mass_g', unit: 'g', possible: [0.01, 1e6], meaning: 'whole bar' },
    { key: 'filling_mass_g', unit: 'g', possible: [0, 1e6], meaning: 'filling or centre' },
    { key: 'additions_mass_g', unit: 'g', possible: [0, 1e6], default: 0, meaning: 'other edible matter in the chocolate coat' },
    {
      key: 'cocoa_solids_mass_g',
      unit: 'g',
      possible: [0, 1e6],
      default: 0,
      meaning: 'cocoa solids, or another part that a minimum is set for',
    },
  ],
  outputs: [
    { key: 'cocoa_solids', unit: '1', meaning: 'that part in the chocolate proper' },
    { key: 'chocolate_share', unit: '1', meaning: 'coat over whole bar' },
    { key: 'filled_chocolate', unit: '-', meaning: "whether the share allows the name 'filled chocolate' (at least 25 %)" },
  ],
  sources: ['eu-2000-36', 'at-chocolate-ordinance'],
  standing: 'secondhand',
  run: (x) => {
    const part = chocolatePart({ mass: x.bar_mass_g, filling: x.filling_mass_g, additions: x.additions_mass_g }, x.cocoa_solids_mass_g);
    return { cocoa_solids: part.fraction, chocolate_share: part.share, filled_chocolate: { value: part.share >= filledChocolateShare } };
  },
});
