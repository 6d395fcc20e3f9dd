import { excessOverTemperature, glycerolActivity, soluteActivity, sucroseActivity } from './data/binary.js';

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

/** Share of the excess at 25 °C that remains at a temperature (°C) for every sugar and polyol but sucrose, lactose and glycerol. */
export function sugarExcess(t: number): number {
  return excessAt(t + 273.15, ...sugars);
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
  /** ln aw there. */
  readonly lnEnd: number;
  /** Mole fraction of the last look, where the next begins: looks at one mixture lie near each other. It does not change the answer. */
  near: number;
}

/** Dilute and dense ends of the polynomial: it is trusted to 97 % sucrose, 96 % of the others. */
const ends: Readonly<Partial<Record<Solute, number>>> = { sucrose: 0.65, lactose: 0.65 };

/**
 * The equation of a solute at a temperature, °C.
 *
 * @param excess - `sugarExcess` of that temperature, where it is known already
 */
export function binaryAt(solute: Solute, t: number, excess = sugarExcess(t)): Binary {
  const T = t + 273.15;
  const end = ends[solute] ?? 0.75;
  if (solute === 'sucrose' || solute === 'lactose') return ended(-Q / (R * T), sucroseA, sucroseB, 0, end);
  if (solute === 'glycerol') {
    const { k, s, r, c } = glycerolActivity.values;
    return ended(k * excessAt(T, s, r), 0, 0, c, end);
  }
  const [constant, slope] = soluteActivity.values[solute];
  return ended(constant * excess, slope, 0, 0, end);
}

/** One place that makes them, so that all have one shape; a field that is always a fraction stays a plain double. */
function ended(k: number, a: number, b: number, c: number, end: number): Binary {
  const binary = { k, a, b, c, end, lnEnd: NaN, near: NaN };
  binary.lnEnd = lnActivity(binary, end);
  return binary;
}

/** ln aw at mole fraction x of the solute, by the equation alone. */
export function lnActivity(of: Binary, x: number): number {
  const bracket = of.c === 0 ? 1 + x * (of.a + x * of.b) : Math.exp(-of.c * x);
  return Math.log1p(-x) - of.k * x * x * bracket;
}

/** Slope of ln aw against x. */
function slope(of: Binary, x: number): number {
  const excess = of.c === 0 ? x * (2 + x * (3 * of.a + x * 4 * of.b)) : x * (2 - of.c * x) * Math.exp(-of.c * x);
  return -1 / (1 - x) - of.k * excess;
}

/** Half the second derivative of ln aw against x. */
function halfBend(of: Binary, x: number): number {
  const { a, b, c } = of;
  const excess = c === 0 ? 1 + x * (3 * a + x * 6 * b) : (1 - c * x * (2 - 0.5 * c * x)) * Math.exp(-c * x);
  return -0.5 / ((1 - x) * (1 - x)) - of.k * excess;
}

/**
 * Moles of water per mole of solute that stand at a water activity (0 to below 1), and what they gain per unit of activity.
 * Below the dense end hydration falls in proportion to the activity.
 *
 * @param ln - ln aw, where it is known already
 */
export function waterPerSolute(of: Binary, aw: number, out: { water: number; gain: number }, ln = Math.log(aw)): void {
  if (ln <= of.lnEnd) {
    const dry = 1 - aw;
    const endActivity = Math.exp(of.lnEnd);
    const perActivity = (1 / of.end - 1) / endActivity - 1 / (1 - endActivity);
    out.water = aw / dry + perActivity * aw;
    out.gain = 1 / (dry * dry) + perActivity;
    return;
  }
  let x = of.near > 0 ? of.near : Math.min(of.end, -ln / (1 - of.k * ln * 0.5));
  // Halley's steps: three times as many digits each.
  for (let step = 0; step < 40; step++) {
    const newton = (lnActivity(of, x) - ln) / slope(of, x);
    const change = newton / (1 - (newton * halfBend(of, x)) / slope(of, x));
    const next = x - (Math.abs(change) < 2 * Math.abs(newton) ? change : newton);
    const moved = Math.abs(next - x);
    x = next <= 0 ? x / 2 : next >= 1 ? (x + 1) / 2 : next;
    if (moved <= 1e-5 * x) break; // what a further step would move is below the last digit
  }
  of.near = x;
  out.water = 1 / x - 1;
  out.gain = -1 / (x * x * slope(of, x) * aw);
}
