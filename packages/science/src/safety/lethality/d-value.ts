import { NoSolution, requireRange } from '../../errors.js';
import { chocolateHistoric, dStudies, milkChocolateD, storeDecline, type DStudy, type DStudyKey } from '../data/d-values.js';
import { intervalOf, lineThrough, logLinearAt, requireCurve } from '../interpolate.js';

/** z: kelvins per decade of D, from a straight line of log10 D over temperature; Infinity where D does not fall. */
export function zValue(temperatures: readonly number[], d: readonly number[]): number {
  requireCurve('The D values', temperatures, d);
  const { slope } = lineThrough(temperatures, d.map(Math.log10));
  return slope < 0 ? -1 / slope : Infinity;
}

/** D at a temperature from that straight line. */
export function dOnLine(temperatures: readonly number[], d: readonly number[], temperature: number): number {
  requireCurve('The D values', temperatures, d);
  const { slope, intercept } = lineThrough(temperatures, d.map(Math.log10));
  return 10 ** (intercept + slope * temperature);
}

/** D at a temperature from D at a reference and z. */
export function dFromZ(reference: number, referenceTemperature: number, z: number, temperature: number): number {
  return reference * 10 ** ((referenceTemperature - temperature) / z);
}

/** Factor of about 95 % each way where a study prints no spread: D of replicate series differ by 10 to 15 % (common practice, no source). */
const unprinted = 1.3;

export interface DValue {
  /** min */ readonly d: number;
  /** About 95 %: by the printed spread, else by that of replicate series. */ readonly low?: number;
  readonly high?: number;
  /** Kelvins per decade of the piece used. */ readonly z: number;
  /** False outside the temperatures tested. */ readonly tested: boolean;
}

/**
 * D of a published study: log D straight between its temperatures, the end pieces continued beyond and told, with an interval that
 * widens by a quarter of each decade carried (z of replicate series differs by that much; our rule).
 *
 * @throws NoSolution for a study of one temperature asked elsewhere, or one whose D does not fall with temperature
 */
export function studyD(key: DStudyKey, temperature: number): DValue {
  requireRange('temperature_c', temperature, [-50, 400], dStudies[key].source);
  const study: DStudy = dStudies[key];
  const { temperature: ts, d: ds, sd } = study.values;
  const exact = ts.indexOf(temperature);
  if (exact >= 0) {
    const d = ds[exact]!;
    const spread = sd?.[exact];
    const z = ts.length > 1 ? pieceZ(ts, ds, temperature) : NaN;
    return spread === undefined
      ? { d, low: d / unprinted, high: d * unprinted, z, tested: true }
      : { d, low: d - 2 * spread, high: d + 2 * spread, z, tested: true };
  }
  if (ts.length < 2) throw new NoSolution(`${study.source} gives D at ${ts[0]} °C only; it cannot be carried to ${temperature} °C`);
  const z = pieceZ(ts, ds, temperature);
  if (!(z > 0)) throw new NoSolution(`D of ${study.source} does not fall with temperature, so none can be given at ${temperature} °C`);
  const d = logLinearAt(ts, ds, temperature);
  const tested = temperature >= ts[0]! && temperature <= ts.at(-1)!;
  if (tested) {
    const i = intervalOf(ts, temperature);
    const printed = sd ? 1 + 2 * Math.max(sd[i]! / ds[i]!, sd[i + 1]! / ds[i + 1]!) : unprinted;
    return { d, low: d / printed, high: d * printed, z, tested };
  }
  // Beyond the tests: z of one study and organism is known to about a quarter, so each decade carried is out by that much.
  const decades = Math.abs(temperature - (temperature < ts[0]! ? ts[0]! : ts.at(-1)!)) / z;
  const factor = 10 ** (0.25 * decades + 0.1);
  return { d, low: d / factor, high: d * factor, z, tested };
}

function pieceZ(ts: readonly number[], ds: readonly number[], temperature: number): number {
  const i = intervalOf(ts, temperature);
  return (ts[i + 1]! - ts[i]!) / Math.log10(ds[i]! / ds[i + 1]!);
}

/**
 * D of Salmonella in milk chocolate, min.
 *
 * @param temperature - °C; fitted 70 to 80
 * @param waterActivity - at 21 °C; fitted 0.23 to 0.43
 * @returns D of the recent work, and that of the slowest historic work carried by the same z
 */
export function milkChocolateDValue(temperature: number, waterActivity: number): { readonly d: number; readonly slowest: number } {
  requireRange('temperature_c', temperature, [0, 150], milkChocolateD.source);
  requireRange('water_activity', waterActivity, [0, 1], milkChocolateD.source);
  const v = milkChocolateD.values;
  const d = v.reference * 10 ** (-(temperature - v.temperature) / v.zTemperature - (waterActivity - v.waterActivity) / v.zWaterActivity);
  return { d, slowest: Math.max(d, dFromZ(chocolateHistoric.values.d, chocolateHistoric.values.temperature, v.zTemperature, temperature)) };
}

/** Decline of Salmonella in a dry powder in store, log10 per day. */
export function declinePerDay(temperature: number, waterActivity: number): number {
  requireRange('temperature_c', temperature, [-30, 80], storeDecline.source);
  requireRange('water_activity', waterActivity, [0, 0.9], storeDecline.source);
  const v = storeDecline.values;
  return v.reference * 10 ** ((temperature - v.temperature) / v.zTemperature + v.slope * (waterActivity - v.waterActivity));
}
