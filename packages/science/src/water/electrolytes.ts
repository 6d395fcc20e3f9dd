import { electrolyteTables, molarMasses, saltActivity, saltOverTemperature } from './data/binary.js';

const salt = saltActivity.values;
const perMole = molarMasses.values.water / 1000;

/** What temperature does is known to the saturated brine; beyond it is let go, and gone at the second molality. */
const [known, faded] = [saltOverTemperature.valid.molality[1], saltOverTemperature.values.gone];

/** m φ of sodium chloride at molality m, and its slope; `gain` is what φ has gained since 25 °C at m/(1 + b m) = 1. */
function osmoticMolality(m: number, gain: number): readonly [value: number, slope: number] {
  const root = Math.sqrt(m);
  const b = 1 + salt.B * root;
  const ln10 = Math.LN10;
  const electric = (salt.A / salt.B ** 3) * (b - 2 * Math.log(b) - 1 / b);
  const rest = m * m * (-salt.beta / 2 - m * ((2 / 3) * salt.C + 0.75 * salt.D * m));
  const electricSlope = root === 0 ? 0 : ((salt.A / salt.B ** 2) * (1 - 1 / b) ** 2) / (2 * root);
  const restSlope = -m * (salt.beta + m * (2 * salt.C + 3 * salt.D * m));
  const value = m - ln10 * (electric + rest);
  const slope = 1 - ln10 * (electricSlope + restSlope);
  if (gain === 0 || m >= faded) return [value, slope];
  const q = 1 + saltOverTemperature.values.b * m;
  const more = (gain * m * m) / q;
  const moreSlope = (gain * m * (q + 1)) / (q * q);
  if (m <= known) return [value + more, slope + moreSlope];
  const left = (faded - m) / (faded - known);
  return [value + left * more, slope + left * moreSlope - more / (faded - known)];
}

/**
 * What the osmotic coefficient of the salts has gained since 25 °C, before it is scaled by the molality.
 *
 * @param t - °C
 * @param share - sodium chloride among the salts that are counted as such; how milk salts change with temperature is not known, and left out
 */
export function saltGain(t: number, share: number): number {
  const { reference, s, r } = saltOverTemperature.values;
  const T = t + 273.15;
  const x = reference / T - 1;
  return -share * (s * x + r * (Math.log(T / reference) + x));
}

const saltEnd = saltActivity.valid.molality[1];
const saltEndActivity = Math.exp(-2 * perMole * osmoticMolality(saltEnd, 0)[0]);
const saltEndWater = 1 / (perMole * saltEnd);
const saltBeyond = saltEndWater / (saltEndActivity / (1 - saltEndActivity));

/** As waterPerSolute, per mole of sodium chloride; below the last activity of the equation water is held in proportion to aw/(1 - aw). */
export function waterPerSalt(saltGained: number, aw: number, out: { water: number; gain: number }): void {
  if (aw <= saltEndActivity) {
    out.water = (saltBeyond * aw) / (1 - aw);
    out.gain = saltBeyond / (1 - aw) ** 2;
    return;
  }
  const target = -Math.log(aw) / (2 * perMole);
  let low = 0;
  let high: number = saltEnd;
  let m = Math.min(target, saltEnd);
  let gradient = 1;
  for (let step = 0; step < 60; step++) {
    const [value, derivative] = osmoticMolality(m, saltGained);
    gradient = derivative;
    if (value > target) high = m;
    else low = m;
    const newton = m - (value - target) / derivative;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const change = Math.abs(next - m);
    m = next;
    if (change <= 1e-8 * m) break;
  }
  out.water = 1 / (perMole * m);
  out.gain = out.water / (m * gradient * 2 * perMole * aw);
}

/** A salt by a table of its osmotic coefficient. */
export interface Electrolyte {
  readonly ions: number;
  readonly molalities: readonly number[];
  readonly coefficients: readonly number[];
}

const tables = electrolyteTables.values;
export const potassiumChloride: Electrolyte = { ions: 2, molalities: tables.potassium_chloride_m, coefficients: tables.potassium_chloride };
export const calciumChloride: Electrolyte = { ions: 3, molalities: tables.calcium_chloride_m, coefficients: tables.calcium_chloride };

/** As waterPerSolute, per mole of the salt: -ln aw = ions · m φ, φ in straight pieces, each a square in m that is solved at once. */
export function waterPerElectrolyte(of: Electrolyte, aw: number, out: { water: number; gain: number }): void {
  const { ions, molalities, coefficients } = of;
  const target = -Math.log(aw) / (ions * perMole); // m φ
  const last = molalities.length - 1;
  let i = 0;
  while (i < last && molalities[i + 1]! * coefficients[i + 1]! < target) i++;
  const slope = i === last ? 0 : (coefficients[i + 1]! - coefficients[i]!) / (molalities[i + 1]! - molalities[i]!);
  const start = coefficients[i]! - slope * molalities[i]!; // φ = start + slope m
  const root = Math.sqrt(start * start + 4 * slope * target);
  const m = (2 * target) / (start + root);
  out.water = 1 / (perMole * m);
  out.gain = out.water / (m * root * ions * perMole * aw);
}
