import type { State } from '@barwright/chain';
import type { Component } from '@barwright/plant';
import { chocolateMarket } from '@barwright/bar';
import {
  chocolateContents,
  chocolateLaw,
  chocolateLaws,
  whatToChange,
  type ChocolateMarket,
  type Composition,
  type NameResult,
} from '@barwright/science';
import type { PlantChain } from './plant-chain.js';

/** The names that one market allows for a composition. */
export interface MarketNames {
  readonly market: ChocolateMarket;
  readonly source: string;
  readonly edition: string;
  readonly inForceFrom: string;
  /** What the percentages are percentages of. */
  readonly basis: string;
  readonly allowed: readonly NameResult[];
  readonly refused: readonly (NameResult & { readonly change: readonly string[] })[];
}

/** The names of a chocolate in the markets whose dated rules we hold. */
export interface ChocolateNames {
  readonly component: string;
  /** The name that the label wants, and whether the plant's own market allows it. */
  readonly wanted?: { readonly name: string; readonly market: ChocolateMarket; readonly result?: NameResult };
  readonly markets: readonly MarketNames[];
  readonly cautions: readonly string[];
}

const markets: readonly ChocolateMarket[] = ['eu', 'codex', 'us'];

/**
 * Names that the composition of a component allows in each market, with margins, and what the others lack.
 * @throws RangeError where the component is not in the plant; OutOfRange for a composition that cannot be
 */
export function chocolateNames(from: PlantChain, state: State, component: Component): ChocolateNames {
  return namesOf(component, from.plant.market, state.value(`${component.slug}.composition`) as Composition);
}

/** The same for any composition of a component, as after an addition. */
export function namesOf(component: Component, market: string, composition: Composition): ChocolateNames {
  const contents = chocolateContents(composition);
  const list = markets.map((of): MarketNames => {
    const { source, edition, inForceFrom, basis } = chocolateLaws[of];
    const results = chocolateLaw(contents, of);
    return {
      market: of,
      source,
      edition,
      inForceFrom,
      basis,
      allowed: results.filter((result) => result.allowed).sort((a, b) => a.tightest.margin - b.tightest.margin),
      refused: results
        .filter((result) => !result.allowed)
        .sort((a, b) => b.tightest.margin - a.tightest.margin)
        .map((result) => ({ ...result, change: whatToChange(result) })),
    };
  });
  const own = chocolateMarket(market);
  const wanted = component.legalName && wantedOf(component.legalName, own, list);
  return {
    component: component.name,
    ...(wanted ? { wanted } : {}),
    markets: list,
    cautions: [
      'Counted from the recipe: laboratories and authorities judge the finished chocolate. Rules are dated; check the text in force.',
      'A name also asks for what composition does not show (statements, flavouring, additives). The qualified person decides.',
    ],
  };
}

function wantedOf(name: string, market: ChocolateMarket, list: readonly MarketNames[]): ChocolateNames['wanted'] {
  const { allowed, refused } = list.find((of) => of.market === market)!;
  const result = [...allowed, ...refused].find((other) => other.name.toLowerCase() === name.toLowerCase());
  return { name, market, ...(result ? { result } : {}) };
}
