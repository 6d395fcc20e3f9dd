import { requireRange } from '../errors.js';
import type { Pascal, PascalSecond } from '../units.js';

/** Shear rate, 1/s. */
export type ShearRate = number;

/** Flow laws of molten chocolate: stress τ(γ) above the yield value. */
export type FlowLaw =
  | { readonly law: 'casson'; readonly yieldValue: Pascal; readonly plasticViscosity: PascalSecond }
  | { readonly law: 'bingham'; readonly yieldValue: Pascal; readonly plasticViscosity: PascalSecond }
  | { readonly law: 'herschel-bulkley'; readonly yieldValue: Pascal; readonly consistency: number; readonly index: number }
  | {
      readonly law: 'windhab';
      readonly yieldValue: Pascal;
      /** Yield value extrapolated from the straight end of the curve. */
      readonly structuredYield: Pascal;
      /** Shear rate of structure breakdown, 1/s. */
      readonly breakdownRate: ShearRate;
      readonly endViscosity: PascalSecond;
    };

/** Casson: √τ = √τ0 + √(ηγ). @returns Pa; at 0 the yield value @see casson-1959 */
export function cassonStress(yieldValue: Pascal, plasticViscosity: PascalSecond, rate: ShearRate): Pascal {
  const root = Math.sqrt(yieldValue) + Math.sqrt(plasticViscosity * rate);
  return root * root;
}

/** Casson shear rate at a stress, 1/s; 0 at and below the yield value. */
export function cassonRate(yieldValue: Pascal, plasticViscosity: PascalSecond, stress: Pascal): ShearRate {
  if (!(stress > yieldValue)) return 0;
  const root = Math.sqrt(stress) - Math.sqrt(yieldValue);
  return (root * root) / plasticViscosity;
}

/** Stress of a flow law at a shear rate, Pa. @throws OutOfRange for a negative rate or NaN */
export function stressOf(law: FlowLaw, rate: ShearRate): Pascal {
  requireRange('shear_rate_s', rate, [0, Infinity], 'physics');
  switch (law.law) {
    case 'casson':
      return cassonStress(law.yieldValue, law.plasticViscosity, rate);
    case 'bingham':
      return law.yieldValue + law.plasticViscosity * rate;
    case 'herschel-bulkley':
      return law.yieldValue + law.consistency * rate ** law.index;
    case 'windhab':
      return law.yieldValue + (law.structuredYield - law.yieldValue) * (1 - Math.exp(-rate / law.breakdownRate)) + law.endViscosity * rate;
  }
}

/** Apparent viscosity τ/γ, Pa·s; Infinity at rest for a fluid with a yield value. */
export function apparentViscosity(law: FlowLaw, rate: ShearRate): PascalSecond {
  return stressOf(law, rate) / rate;
}
