import { excessOverTemperature, glycerolActivity, molarMasses, saltActivity, soluteActivity, sucroseActivity } from './data/binary.js';

/** Solutes with an equation of their own. */
export type Solute =
  | 'sucrose'
  | 'lactose'
  | 'glucose'
  | 'fructose'
  | 'maltose'
  | 'glycerol'
  | 'erythritol'
  | 'xylitol'
  | 'sorbitol'
  | 'mannitol'
  | 'maltitol'
  | 'organic_acids';

const R = 8.314462618;
const { Q, a: sucroseA, b: sucroseB } = sucroseActivity.values;
const { reference, sugars } = excessOverTemperature.values;

/** Share of the excess at 25 °C that remains at T (kelvin). */
function excessAt(T: number, s: number, r: number): number {
  const x = reference / T - 1;
  return 1 + s * x + r * (Math.log(T / reference) + x);
}

/** One solute in water at one temperature: ln γw = -k x² (1 + a x + b x²), or exp(-c x) in place of the bracket. */
export interface Binary {
  readonly k: number;
  readonly a: number;
  readonly b: number;
  /** 0 for the polynomial. */
  readonly c: number;
  /** Mole fraction above which hydration follows the water activity in proportion: keeps the curve rising to the dry end. */
  readonly end: number;
  readonly endActivity: number;
  readonly endHydration: number;
}

/** Dilute and dense ends of the polynomial: it is trusted to 97 % sucrose, 96 % of the others. */
const ends: Readonly<Partial<Record<Solute, number>>> = { sucrose: 0.65, lactose: 0.65 };

/** The equation of a solute at a temperature, °C. */
export function binaryAt(solute: Solute, t: number): Binary {
  const T = t + 273.15;
  const [s, r] = sugars;
  let k: number;
  let a = 0;
  let b = 0;
  let c = 0;
  if (solute === 'sucrose' || solute === 'lactose') {
    k = -Q / (R * T);
    a = sucroseA;
    b = sucroseB;
  } else if (solute === 'glycerol') {
    const own = glycerolActivity.values;
    k = own.k * excessAt(T, own.s, own.r);
    c = own.c;
  } else {
    const [constant, slope] = soluteActivity.values[solute];
    k = constant * excessAt(T, s, r);
    a = slope;
  }
  const end = ends[solute] ?? 0.75;
  const open = { k, a, b, c, end, endActivity: 0, endHydration: 0 };
  const endActivity = Math.exp(lnActivity(open, end));
  return { ...open, endActivity, endHydration: 1 / end - 1 - endActivity / (1 - endActivity) };
}

/** ln aw at mole fraction x of the solute, by the equation alone. */
export function lnActivity(of: Binary, x: number): number {
  const bracket = of.c === 0 ? 1 + x * (of.a + x * of.b) : Math.exp(-of.c * x);
  return Math.log1p(-x) - of.k * x * x * bracket;
}

function slope(of: Binary, x: number): number {
  const excess = of.c === 0 ? x * (2 + x * (3 * of.a + x * 4 * of.b)) : x * (2 - of.c * x) * Math.exp(-of.c * x);
  return -1 / (1 - x) - of.k * excess;
}

/**
 * Moles of water per mole of solute that stand at a water activity (0 to below 1), and what they gain per unit of activity.
 * Below the dense end hydration falls in proportion to the activity.
 */
export function waterPerSolute(of: Binary, aw: number, out: { water: number; gain: number }): void {
  if (aw <= of.endActivity) {
    const dry = 1 - aw;
    const perActivity = of.endHydration / of.endActivity;
    out.water = aw / dry + perActivity * aw;
    out.gain = 1 / (dry * dry) + perActivity;
    return;
  }
  const ln = Math.log(aw);
  let x = Math.min(of.end, -ln / (1 - of.k * ln * 0.5));
  for (let step = 0; step < 40; step++) {
    const change = (lnActivity(of, x) - ln) / slope(of, x);
    const next = x - change;
    x = next <= 0 ? x / 2 : next >= 1 ? (x + 1) / 2 : next;
    if (Math.abs(change) <= 1e-8 * x) break; // the step after that is below the last digit
  }
  out.water = 1 / x - 1;
  out.gain = -1 / (x * x * slope(of, x) * aw);
}

const salt = saltActivity.values;
const perMole = molarMasses.values.water / 1000;

/** m φ of sodium chloride at molality m, and its slope. */
function osmoticMolality(m: number): readonly [value: number, slope: number] {
  const root = Math.sqrt(m);
  const b = 1 + salt.B * root;
  const ln10 = Math.LN10;
  const electric = (salt.A / salt.B ** 3) * (b - 2 * Math.log(b) - 1 / b);
  const rest = m * m * (-salt.beta / 2 - m * ((2 / 3) * salt.C + 0.75 * salt.D * m));
  const electricSlope = root === 0 ? 0 : ((salt.A / salt.B ** 2) * (1 - 1 / b) ** 2) / (2 * root);
  const restSlope = -m * (salt.beta + m * (2 * salt.C + 3 * salt.D * m));
  return [m - ln10 * (electric + rest), 1 - ln10 * (electricSlope + restSlope)];
}

/** Molality at which the sodium chloride equation ends. */
const saltEnd = saltActivity.valid.molality[1];
const saltEndActivity = Math.exp(-2 * perMole * osmoticMolality(saltEnd)[0]);
const saltEndWater = 1 / (perMole * saltEnd);

/** As waterPerSolute, per mole of sodium chloride; below the last activity of the equation water is held in proportion to aw/(1 - aw). */
export function waterPerSalt(aw: number, out: { water: number; gain: number }): void {
  if (aw <= saltEndActivity) {
    const scale = saltEndWater / (saltEndActivity / (1 - saltEndActivity));
    out.water = (scale * aw) / (1 - aw);
    out.gain = scale / (1 - aw) ** 2;
    return;
  }
  const target = -Math.log(aw) / (2 * perMole);
  let low = 0;
  let high: number = saltEnd;
  let m = Math.min(target, saltEnd);
  let gradient = 1;
  for (let step = 0; step < 60; step++) {
    const [value, derivative] = osmoticMolality(m);
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
