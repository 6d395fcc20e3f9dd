import { requireRange } from '../../errors.js';

export interface BeanRoute {
  /** kg kept per kg received. */ readonly cleaning: number;
  /** Raw bean, wet basis. */ readonly rawMoisture: number;
  /** After roasting, wet basis. */ readonly roastedMoisture: number;
  /** Dry matter lost in the roaster (volatiles, dust), share. */ readonly organicLoss: number;
  /** Shell and germ, share of the roasted bean. */ readonly shell: number;
  /** Nib recovered, share of the nib present. */ readonly nibRecovery: number;
  /** Liquor got, share of the nib fed. */ readonly grinding: number;
}

/**
 * Liquor per kg of raw bean: cleaning × (1 - m0)/(1 - m1) × (1 - organic loss) × (1 - shell) × nib recovery × grinding yield.
 *
 * @returns kg/kg, 0 to 1; falls with raw moisture and shell
 * @throws OutOfRange for a share outside 0 to 1, a moisture of 1, or NaN
 */
export function liquorYield(route: BeanRoute): number {
  for (const [key, value] of Object.entries(route)) requireRange(key, value, [0, key.endsWith('Moisture') ? 0.99 : 1], 'a share of mass');
  const dried = (1 - route.rawMoisture) / (1 - route.roastedMoisture);
  return route.cleaning * dried * (1 - route.organicLoss) * (1 - route.shell) * route.nibRecovery * route.grinding;
}

export interface LotValue {
  /** Price at which both lots give liquor at the same bean cost, money per kg raw bean. */ readonly fairPrice: number;
  /** (reference - fair) / reference; negative where the lot is worth more. */ readonly discount: number;
  /** Bean cost of a kg of liquor from the lot at the price asked. */ readonly costPerLiquor: number;
  /** Raw beans needed beyond the reference for a mass of liquor, kg. */ readonly extraBeans: number;
  /** Money lost on that mass of liquor when the lot is bought at the reference price. */ readonly extraCost: number;
}

/**
 * What a lot is worth against a reference lot, in money, by its liquor yield alone. Flavour, fat and defects are not in it.
 *
 * @param price - of the reference, money per kg raw bean
 * @param liquor - mass of liquor that the comparison is made for, kg
 */
export function lotValue(lotYield: number, referenceYield: number, price: number, liquor: number): LotValue {
  requireRange('lot yield', lotYield, [1e-6, 1], 'a liquor yield');
  requireRange('reference yield', referenceYield, [1e-6, 1], 'a liquor yield');
  const extraBeans = liquor / lotYield - liquor / referenceYield;
  const fairPrice = (price * lotYield) / referenceYield;
  return { fairPrice, discount: 1 - lotYield / referenceYield, costPerLiquor: price / lotYield, extraBeans, extraCost: extraBeans * price };
}

/**
 * Nib stream from a winnower by mass balance: dry nib kept, with its moisture and the shell that went along.
 *
 * @param bean - kg of raw bean at `moistureIn`
 * @param shellDry - shell share of the dry bean
 * @param nibLoss - nib that leaves with the shell, share of the nib
 * @param shellInNib - shell in the nib stream, share of the stream
 * @returns kg of nib stream at `moistureOut`
 */
export function nibStream(
  bean: number,
  moistureIn: number,
  moistureOut: number,
  shellDry: number,
  nibLoss: number,
  shellInNib: number,
): number {
  requireRange('moisture_out', moistureOut, [0, 0.99], 'a share of mass');
  requireRange('shell_in_nib', shellInNib, [0, 0.99], 'a share of mass');
  return (bean * (1 - moistureIn) * (1 - shellDry) * (1 - nibLoss)) / (1 - moistureOut) / (1 - shellInNib);
}
