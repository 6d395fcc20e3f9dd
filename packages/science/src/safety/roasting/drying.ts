export { wetBasis } from '../../water/isotherm.js';
import { NoSolution, requireRange } from '../../errors.js';
import { cocoaAcidity, cocoaDiffusivity, cocoaPage, peanutDrying, peanutRate } from '../data/roasting.js';

const GAS = 8.314462618;
const KELVIN = 273.15;

/** Factor by which an Arrhenius rate at T exceeds that at the reference; both in °C, energy in J/mol. */
export function arrhenius(temperature: number, reference: number, energy: number): number {
  return Math.exp((-energy / GAS) * (1 / (temperature + KELVIN) - 1 / (reference + KELVIN)));
}

/** Moisture per dry matter from wet-basis moisture. */
export const dryBasis = (wet: number): number => wet / (1 - wet);

/**
 * Moisture (dry basis) of cocoa beans held at one roaster temperature.
 *
 * @param raw - dry basis at the start
 * @param temperature - of the roaster, °C; fitted 110 to 170
 * @param minutes - 0 or more; fitted 5 to 65
 */
export function cocoaMoisture(raw: number, temperature: number, minutes: number): number {
  requireRange('time_min', minutes, [0, 1e6], cocoaPage.source);
  return raw * Math.exp(-pageRate(temperature) * minutes ** cocoaPage.values.exponent);
}

function pageRate(temperature: number): number {
  requireRange('temperature_c', temperature, [0, 400], cocoaPage.source);
  return cocoaPage.values.k140 * arrhenius(temperature, 140, cocoaPage.values.activationEnergy);
}

/**
 * Page's law followed through a changing temperature: from `moisture`, by the time that would have led there at the present
 * temperature, `minutes` further.
 */
export function cocoaMoistureStep(raw: number, moisture: number, temperature: number, minutes: number): number {
  const k = pageRate(temperature);
  const n = cocoaPage.values.exponent;
  const equivalent = moisture < raw ? (-Math.log(moisture / raw) / k) ** (1 / n) : 0;
  return raw * Math.exp(-k * (equivalent + minutes) ** n);
}

/** Titratable acid of cocoa nib after some minutes of roasting, mL NaOH per g. */
export function cocoaAcid(minutes: number, raw: number = cocoaAcidity.values.raw): number {
  requireRange('time_min', minutes, [0, 1e6], cocoaAcidity.source);
  const { level, rate } = cocoaAcidity.values;
  return raw <= level ? raw : level + (raw - level) * Math.exp(-rate * minutes);
}

const peanut = peanutDrying.values;
/** Rates per min above and below the critical moisture, at the reference temperature. */
export const peanutRates = {
  above: Math.log(peanut.raw / peanut.critical) / peanut.criticalTime,
  below: Math.log(peanut.critical / peanut.last) / (peanut.lastTime - peanut.criticalTime),
} as const;

/** Moisture (dry basis) of peanuts after `minutes` at one temperature: fast to the critical moisture, then slow. */
export function peanutMoisture(raw: number, temperature: number, minutes: number): number {
  requireRange('time_min', minutes, [0, 1e6], peanutDrying.source);
  const speed = peanutSpeed(temperature);
  const fast = raw > peanut.critical ? Math.log(raw / peanut.critical) / (peanutRates.above * speed) : 0;
  if (minutes <= fast) return raw * Math.exp(-peanutRates.above * speed * minutes);
  return Math.min(raw, peanut.critical) * Math.exp(-peanutRates.below * speed * (minutes - fast));
}

/** Rate factor of peanut drying against the reference temperature. */
export function peanutSpeed(temperature: number): number {
  requireRange('temperature_c', temperature, [0, 400], peanutRate.source);
  return arrhenius(temperature, peanutRate.values.referenceTemperature, peanutRate.values.activationEnergy);
}

const diffusion = cocoaDiffusivity.values;
/** Activation energy through two diffusivities, J/mol. */
export function activationEnergy(t1: number, d1: number, t2: number, d2: number): number {
  if (!(t1 !== t2)) throw new NoSolution('An activation energy needs two different temperatures');
  return (-GAS * Math.log(d2 / d1)) / (1 / (t2 + KELVIN) - 1 / (t1 + KELVIN));
}

/** Moisture diffusivity of drying cocoa beans, m²/s, through the printed end points at 55 and 81 °C. */
export function beanDiffusivity(temperature: number): number {
  requireRange('temperature_c', temperature, [0, 200], cocoaDiffusivity.source);
  const [t1, t2] = diffusion.temperatures;
  const [d1, d2] = diffusion.diffusivity;
  return d1 * arrhenius(temperature, t1, activationEnergy(t1, d1, t2, d2));
}

/**
 * Time for a slab dried from both faces to go from x0 to x, first term of Fick's series: t = 4 L² / (π² D) ln(8 X1 / (π² X)).
 *
 * @param half - half thickness, m
 * @param diffusivity - m²/s
 * @returns s
 * @throws NoSolution where x is not between equilibrium and the start, or so near the start that the first term says less than 0
 */
export function slabDryingTime(x0: number, x: number, equilibrium: number, half: number, diffusivity: number): number {
  if (!(x > equilibrium && x < x0))
    throw new NoSolution(`Moisture ${x} does not lie between equilibrium ${equilibrium} and the start ${x0}`);
  const time = ((4 * half * half) / (Math.PI ** 2 * diffusivity)) * Math.log((8 * (x0 - equilibrium)) / (Math.PI ** 2 * (x - equilibrium)));
  if (!(time >= 0)) throw new NoSolution('The change is too small for the first term of the series');
  return time;
}
