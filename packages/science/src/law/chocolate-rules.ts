import type { SourceKey, Standing } from '../sources.js';

/** What a composition rule of a law may ask about; all as fractions, on the basis of its market. */
export const chocolateQuantities = [
  'cocoa_solids',
  'fat_free_cocoa_solids',
  'cocoa_butter',
  'milk_solids',
  'milk_fat',
  'total_fat',
  'vegetable_fat',
  'chocolate_liquor',
  'sweetener',
  'other_edible',
] as const;
export type ChocolateQuantity = (typeof chocolateQuantities)[number];

/** One line of a law: a quantity at least, at most, or below a limit. */
export interface ChocolateRule {
  readonly quantity: ChocolateQuantity;
  readonly bound: 'at least' | 'at most' | 'below';
  readonly limit: number;
  readonly standing: Standing;
}

/** A sales name and the composition it asks for. */
export interface ChocolateName {
  readonly name: string;
  readonly reference: string;
  readonly rules: readonly ChocolateRule[];
  /** What the name asks for beyond composition, or a statement that must go with it. */
  readonly condition?: string;
}

export type ChocolateMarket = 'eu' | 'codex' | 'us';

/** The names of one market, as dated. */
export interface ChocolateLaw {
  readonly market: ChocolateMarket;
  readonly source: SourceKey;
  /** Text in force from, and the edition that was read. */
  readonly inForceFrom: string;
  readonly edition: string;
  /** What the percentages are percentages of. */
  readonly basis: string;
  /** Rules that go with every name of the market that does not say otherwise. */
  readonly names: readonly ChocolateName[];
}

type Triple = readonly [ChocolateQuantity, number, Standing];
/** Minima in the order of the text. */
function least(...lines: readonly Triple[]): ChocolateRule[] {
  return lines.map(([quantity, limit, standing]) => ({ quantity, bound: 'at least', limit, standing }));
}
function most(quantity: ChocolateQuantity, limit: number, standing: Standing): ChocolateRule {
  return { quantity, bound: 'at most', limit, standing };
}
function below(quantity: ChocolateQuantity, limit: number, standing: Standing): ChocolateRule {
  return { quantity, bound: 'below', limit, standing };
}

const fiveAndForty = [most('vegetable_fat', 0.05, 'found'), most('other_edible', 0.4, 'found')];
const fiveAndFortyEu = [most('vegetable_fat', 0.05, 'found'), most('other_edible', 0.4, 'memory')];
const noVegetableFat = most('vegetable_fat', 0, 'found');

/** European Union: on the finished chocolate after deduction of the other edible matter in it. */
const eu: ChocolateLaw = {
  market: 'eu',
  source: 'eu-2000-36',
  inForceFrom: '2003-08-03',
  edition: 'consolidated 2013-11-18',
  basis: 'finished chocolate, after deduction of other edible matter added to it (Annex I C)',
  names: [
    {
      name: 'chocolate',
      reference: 'Annex I A 3(a)',
      rules: [
        ...least(['cocoa_solids', 0.35, 'secondhand'], ['cocoa_butter', 0.18, 'secondhand'], ['fat_free_cocoa_solids', 0.14, 'secondhand']),
        ...fiveAndFortyEu,
      ],
    },
    {
      name: 'chocolate vermicelli',
      reference: 'Annex I A 3(b)',
      rules: [
        ...least(['cocoa_solids', 0.32, 'memory'], ['cocoa_butter', 0.12, 'memory'], ['fat_free_cocoa_solids', 0.14, 'memory']),
        ...fiveAndFortyEu,
      ],
      condition: 'granules or flakes',
    },
    {
      name: 'couverture chocolate',
      reference: 'Annex I A 3(b)',
      rules: [
        ...least(['cocoa_solids', 0.35, 'memory'], ['cocoa_butter', 0.31, 'memory'], ['fat_free_cocoa_solids', 0.025, 'memory']),
        ...fiveAndFortyEu,
      ],
    },
    {
      name: 'milk chocolate',
      reference: 'Annex I A 4(a)',
      rules: [
        ...least(
          ['cocoa_solids', 0.25, 'secondhand'],
          ['milk_solids', 0.14, 'secondhand'],
          ['fat_free_cocoa_solids', 0.025, 'secondhand'],
          ['milk_fat', 0.035, 'secondhand'],
          ['total_fat', 0.25, 'secondhand'],
        ),
        ...fiveAndFortyEu,
      ],
    },
    {
      name: 'milk chocolate vermicelli',
      reference: 'Annex I A 4(b)',
      rules: [
        ...least(
          ['cocoa_solids', 0.2, 'memory'],
          ['milk_solids', 0.12, 'memory'],
          ['fat_free_cocoa_solids', 0.025, 'memory'],
          ['milk_fat', 0.035, 'memory'],
          ['total_fat', 0.12, 'memory'],
        ),
        ...fiveAndFortyEu,
      ],
      condition: 'granules or flakes',
    },
    {
      name: 'milk couverture chocolate',
      reference: 'Annex I A 4(b)',
      rules: [
        ...least(
          ['cocoa_solids', 0.25, 'memory'],
          ['milk_solids', 0.14, 'memory'],
          ['fat_free_cocoa_solids', 0.025, 'memory'],
          ['milk_fat', 0.035, 'memory'],
          ['total_fat', 0.31, 'memory'],
        ),
        ...fiveAndFortyEu,
      ],
    },
    {
      name: 'family milk chocolate',
      reference: 'Annex I A 5',
      rules: [
        ...least(
          ['cocoa_solids', 0.2, 'found'],
          ['milk_solids', 0.2, 'found'],
          ['fat_free_cocoa_solids', 0.025, 'found'],
          ['milk_fat', 0.05, 'found'],
          ['total_fat', 0.25, 'found'],
        ),
        ...fiveAndFortyEu,
      ],
      condition: "in the United Kingdom and Ireland also 'milk chocolate', with the milk solids stated",
    },
    {
      name: 'white chocolate',
      reference: 'Annex I A 6',
      rules: [
        ...least(['cocoa_butter', 0.2, 'memory'], ['milk_solids', 0.14, 'memory'], ['milk_fat', 0.035, 'memory']),
        most('fat_free_cocoa_solids', 0, 'memory'),
        ...fiveAndFortyEu,
      ],
      condition: 'made of cocoa butter, milk products and sugars',
    },
  ],
};

/** Codex: on the dry matter, after deduction of other edible foodstuffs. */
const codex: ChocolateLaw = {
  market: 'codex',
  source: 'codex-87-1981',
  inForceFrom: '2003-07-01',
  edition: 'CODEX STAN 87-1981, Rev. 1-2003',
  basis: 'dry matter of the chocolate, after deduction of other edible foodstuffs added to it',
  names: [
    {
      name: 'chocolate',
      reference: '2.1.1',
      rules: [
        ...least(['cocoa_solids', 0.35, 'found'], ['cocoa_butter', 0.18, 'found'], ['fat_free_cocoa_solids', 0.14, 'found']),
        ...fiveAndForty,
      ],
    },
    {
      name: 'sweet chocolate',
      reference: '2.1.2',
      rules: [
        ...least(['cocoa_solids', 0.3, 'found'], ['cocoa_butter', 0.18, 'found'], ['fat_free_cocoa_solids', 0.12, 'found']),
        ...fiveAndForty,
      ],
    },
    {
      name: 'couverture chocolate',
      reference: '2.1.3',
      rules: [
        ...least(['cocoa_solids', 0.35, 'found'], ['cocoa_butter', 0.31, 'found'], ['fat_free_cocoa_solids', 0.025, 'found']),
        ...fiveAndForty,
      ],
    },
    {
      name: 'milk chocolate',
      reference: '2.1.4',
      rules: [
        ...least(
          ['cocoa_solids', 0.25, 'memory'],
          ['fat_free_cocoa_solids', 0.025, 'memory'],
          ['milk_solids', 0.12, 'memory'],
          ['milk_fat', 0.025, 'memory'],
        ),
        ...fiveAndForty,
      ],
      condition:
        'the authority sets the minimum of milk solids between 12 and 14 % and of milk fat between 2.5 and 3.5 %; the lower ends are used here',
    },
    {
      name: 'family milk chocolate',
      reference: '2.1.5',
      rules: [
        ...least(
          ['cocoa_solids', 0.2, 'found'],
          ['fat_free_cocoa_solids', 0.025, 'found'],
          ['milk_solids', 0.2, 'found'],
          ['milk_fat', 0.05, 'found'],
        ),
        ...fiveAndForty,
      ],
    },
    {
      name: 'milk couverture chocolate',
      reference: '2.1.6',
      rules: [
        ...least(
          ['cocoa_solids', 0.25, 'found'],
          ['fat_free_cocoa_solids', 0.025, 'found'],
          ['milk_solids', 0.14, 'found'],
          ['milk_fat', 0.035, 'found'],
          ['total_fat', 0.31, 'found'],
        ),
        ...fiveAndForty,
      ],
    },
    {
      name: 'chocolate vermicelli',
      reference: '2.2.1',
      rules: [
        ...least(['cocoa_solids', 0.32, 'memory'], ['cocoa_butter', 0.12, 'memory'], ['fat_free_cocoa_solids', 0.14, 'memory']),
        ...fiveAndForty,
      ],
      condition: 'granules or flakes',
    },
    {
      name: 'milk chocolate vermicelli',
      reference: '2.2.1',
      rules: [
        ...least(
          ['cocoa_solids', 0.2, 'memory'],
          ['fat_free_cocoa_solids', 0.025, 'memory'],
          ['milk_solids', 0.12, 'memory'],
          ['milk_fat', 0.025, 'memory'],
        ),
        ...fiveAndForty,
      ],
      condition: 'granules or flakes; the authority sets the minimum of milk fat between 2.5 and 3.5 %, the lower end is used here',
    },
    {
      name: 'white chocolate',
      reference: '2.1.7.1',
      rules: [
        ...least(['cocoa_butter', 0.2, 'secondhand'], ['milk_solids', 0.14, 'secondhand'], ['milk_fat', 0.025, 'secondhand']),
        most('fat_free_cocoa_solids', 0, 'memory'),
        ...fiveAndForty,
      ],
      condition: 'the authority sets the minimum of milk fat between 2.5 and 3.5 %; the lower end is used here',
    },
  ],
};

/** United States: on the finished food; liquor counted as its fat-free part times 2.2. */
const us: ChocolateLaw = {
  market: 'us',
  source: 'us-21cfr163',
  inForceFrom: '1993-05-21',
  edition: '21 CFR 163 as of 2024 (58 FR 29529)',
  basis: 'finished food; chocolate liquor = (liquor less its fat, alkali and seasoning) x 2.2',
  names: [
    {
      name: 'sweet chocolate',
      reference: '163.123',
      rules: [...least(['chocolate_liquor', 0.15, 'found']), below('milk_solids', 0.12, 'found'), noVegetableFat],
    },
    {
      name: 'semisweet or bittersweet chocolate',
      reference: '163.123',
      rules: [...least(['chocolate_liquor', 0.35, 'found']), below('milk_solids', 0.12, 'found'), noVegetableFat],
    },
    {
      name: 'milk chocolate',
      reference: '163.130',
      rules: [...least(['chocolate_liquor', 0.1, 'found'], ['milk_fat', 0.0339, 'found'], ['milk_solids', 0.12, 'found']), noVegetableFat],
    },
    {
      name: 'skim milk chocolate',
      reference: '163.140',
      rules: [
        ...least(['chocolate_liquor', 0.1, 'found'], ['milk_solids', 0.12, 'found']),
        below('milk_fat', 0.0339, 'found'),
        noVegetableFat,
      ],
      condition: 'dairy ingredients limited to skim milk products',
    },
    {
      name: 'white chocolate',
      reference: '163.124',
      rules: [
        ...least(['cocoa_butter', 0.2, 'found'], ['milk_fat', 0.035, 'found'], ['milk_solids', 0.14, 'found']),
        most('sweetener', 0.55, 'found'),
        most('fat_free_cocoa_solids', 0, 'memory'),
        noVegetableFat,
      ],
    },
    {
      name: 'milk chocolate and vegetable fat coating',
      reference: '163.155',
      rules: least(['chocolate_liquor', 0.1, 'found'], ['milk_fat', 0.0339, 'memory'], ['milk_solids', 0.12, 'memory']),
    },
    {
      name: 'sweet chocolate and vegetable fat coating',
      reference: '163.153',
      rules: [...least(['chocolate_liquor', 0.15, 'found']), below('milk_solids', 0.12, 'found')],
    },
  ],
};

export const chocolateLaws: Readonly<Record<ChocolateMarket, ChocolateLaw>> = { eu, codex, us };

/** Factor from fat-free liquor to liquor in 21 CFR 163.130(a)(2): a liquor of 54.5 % fat. */
export const liquorFactorUs = 2.2;

/** Share of chocolate in a filled chocolate, Directive 2000/36/EC Annex I A 7. From memory. */
export const filledChocolateShare = 0.25;
