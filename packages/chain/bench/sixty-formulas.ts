import type { Quantity, Root, Step } from '../src/index.js';

/*
 * Sixty-four formulas of the usual kinds (shares, exponentials, products, limits) for racing, gathered into six steps as a
 * plant would: caramel, nougat, cooking, masses and money, nutrition, keeping. What only one step needs stays inside it. Every constant is illustrative: the figures stand for no recipe, and nothing outside this folder may use them.
 */

type Columns<I extends readonly string[]> = { readonly [K in keyof I]: Float64Array };

/** A step written once, for columns; a single value is a column of one. */
function formulas<const O extends readonly string[], const I extends readonly string[]>(
  outputs: O,
  inputs: I,
  block: (x: Columns<I>, y: Columns<O>, count: number) => void,
): Step {
  const quantity = (id: string): Quantity => ({ id, unit: '1', meaning: id });
  const id = `make ${outputs.join(' ')}`;
  const run = (...x: number[]) => {
    const y = outputs.map(() => new Float64Array(1));
    block(x.map((value) => Float64Array.of(value)) as never, y as never, 1);
    return y.length === 1 ? y[0]![0]! : y.map((column) => column[0]!);
  };
  return { id, title: id, inputs, outputs: outputs.map(quantity), run: run as never, block: block as never, equation: '' };
}

/** Name, mean and standard deviation of each input. */
export const sixtyInputs: readonly (readonly [string, number, number])[] = [
  ['cs', 40, 0.8],
  ['cg', 28, 0.6],
  ['cf', 24, 0.6],
  ['cw', 8, 0.3],
  ['ns', 45, 0.9],
  ['ng', 20, 0.5],
  ['nw', 15, 0.4],
  ['ne', 12, 0.4],
  ['nf', 8, 0.25],
  ['pk', 30, 0.8],
  ['chs', 25, 0.7],
  ['chm', 25, 0.7],
  ['tb', 118, 0.6],
  ['rhoSet', 0.22, 0.01],
  ['t1', 1.2, 0.06],
  ['t2', 5, 0.15],
  ['t3', 9, 0.25],
  ['t4', 1.2, 0.06],
  ['wd', 32, 0.4],
  ['wc', 18, 0.3],
  ['ln', 100, 0.5],
  ['target', 52, 0.4],
  ['temperature', 20, 0.5],
  ['ws', 3.5, 0.1],
];

export const sixtyRoots: readonly Root[] = sixtyInputs.map(([id, value, sd]) => ({
  id,
  unit: '1',
  meaning: id,
  value,
  sd,
  origin: 'assumed',
}));

/** The twenty-two results that are summed up. */
export const sixtyOutputs: readonly string[] = [
  'awC',
  'awN',
  'mass',
  'kj',
  'kj100',
  'sugar100',
  'fat100',
  'keeping',
  'keepingWarm',
  'total',
  'cooling',
  'risk',
  'viscosity',
  'overrun',
  'endWater',
  'fill',
  'saturates',
  'salt',
  'fibre',
  'kcal',
  'aspect',
  'step',
];

/** ln of 101.325 kPa in mmHg. */
const atmosphere = Math.log(101.325 / 0.13332);

export const sixtySteps: readonly Step[] = [
  formulas(
    ['xs', 'xg', 'xf', 'xw', 'awC', 'rhoC'],
    ['cs', 'cg', 'cf', 'cw'],
    ([csIn, cgIn, cfIn, cwIn], [xsOut, xgOut, xfOut, xwOut, awCOut, rhoCOut], count) => {
      for (let i = 0; i < count; i++) {
        const cs = csIn[i]!;
        const cg = cgIn[i]!;
        const cf = cfIn[i]!;
        const cw = cwIn[i]!;
        const perTotal = 1 / (cs + cg + cf + cw);
        const xs = cs * perTotal;
        const xg = cg * perTotal;
        const xf = cf * perTotal;
        const xw = cw * perTotal;
        xsOut[i] = xs;
        xgOut[i] = xg;
        xfOut[i] = xf;
        xwOut[i] = xw;
        rhoCOut[i] = 1 / (xs * (1 / 1.587) + xg * (1 / 1.42) + xf * (1 / 0.92) + xw * (1 / 0.998));
        const sucrose = xs * (1 / 342.3);
        const syrup = xg * (0.8 / 420);
        const water = (xw + xg * 0.2) * (1 / 18.015);
        const sugars = sucrose + syrup;
        const perAll = 1 / (water + sugars);
        const dry = sugars * perAll;
        // (a / sugars) · dry² is a · dry / all
        awCOut[i] = (1 - dry) * Math.exp(-(6.47 * sucrose + 2.8 * syrup) * perAll * dry);
      }
    },
  ),
  formulas(
    ['ys', 'yg', 'ye', 'yf', 'awN', 'rhoN', 'overrun'],
    ['ns', 'ng', 'nw', 'ne', 'nf', 'rhoSet'],
    ([nsIn, ngIn, nwIn, neIn, nfIn, rhoSetIn], [ysOut, ygOut, yeOut, yfOut, awNOut, rhoNOut, overrunOut], count) => {
      for (let i = 0; i < count; i++) {
        const ns = nsIn[i]!;
        const ng = ngIn[i]!;
        const nw = nwIn[i]!;
        const ne = neIn[i]!;
        const nf = nfIn[i]!;
        const perTotal = 1 / (ns + ng + nw + ne + nf);
        const ys = ns * perTotal;
        const yg = ng * perTotal;
        const yw = nw * perTotal;
        const ye = ne * perTotal;
        const yf = nf * perTotal;
        ysOut[i] = ys;
        ygOut[i] = yg;
        yeOut[i] = ye;
        yfOut[i] = yf;
        const volume = ys * (1 / 1.587) + yg * (1 / 1.42) + yw * (1 / 0.998) + ye * (1 / 1.3) + yf * (1 / 0.92);
        const phi = 1 - rhoSetIn[i]! * 4 * volume * 0.9;
        const kept = 1 - Math.min(Math.max(phi, 0), 0.8);
        rhoNOut[i] = kept / volume;
        overrunOut[i] = 1 / kept - 1;
        const sucrose = ys * (1 / 342.3);
        const syrup = yg * (0.8 / 420);
        const water = (yw + yg * 0.2) * (1 / 18.015);
        const sugars = sucrose + syrup;
        const perAll = 1 / (water + sugars);
        const dry = sugars * perAll;
        awNOut[i] = (1 - dry) * Math.exp(-(6.47 * sucrose + 2.8 * syrup) * perAll * dry);
      }
    },
  ),
  formulas(
    ['endWater', 'viscosity'],
    ['awC', 'xg', 'xw', 'tb', 'temperature'],
    ([awCIn, xgIn, xwIn, tbIn, temperatureIn], [endWaterOut, viscosityOut], count) => {
      for (let i = 0; i < count; i++) {
        const awC = awCIn[i]!;
        const xg = xgIn[i]!;
        const xw = xwIn[i]!;
        const tb = tbIn[i]!;
        const temperature = temperatureIn[i]!;
        const lnp = atmosphere - Math.log(awC);
        const tbp = 1668.21 / (7.96681 - lnp * 0.4342944819) - 228;
        const above = tb - tbp;
        const solids = 1 - xw - xg * 0.2;
        const endWater = Math.max(xw * Math.exp(-0.018 * Math.max(above, -40)), 0.01);
        const viscosity = Math.exp(2.3 + (240 * solids * solids) / temperature);
        endWaterOut[i] = endWater;
        viscosityOut[i] = viscosity;
      }
    },
  ),
  formulas(
    ['mC', 'mN', 'mP', 'mH', 'mass', 'fill', 'aspect', 'total', 'cooling'],
    ['rhoC', 'rhoN', 'wd', 'wc', 'ln', 't1', 't2', 't3', 't4', 'pk', 'target', 'temperature'],
    (
      [rhoCIn, rhoNIn, wdIn, wcIn, lnIn, t1In, t2In, t3In, t4In, pkIn, targetIn, temperatureIn],
      [mCOut, mNOut, mPOut, mHOut, massOut, fillOut, aspectOut, totalOut, coolingOut],
      count,
    ) => {
      for (let i = 0; i < count; i++) {
        const rhoC = rhoCIn[i]!;
        const rhoN = rhoNIn[i]!;
        const wd = wdIn[i]!;
        const wc = wcIn[i]!;
        const ln = lnIn[i]!;
        const t1 = t1In[i]!;
        const t2 = t2In[i]!;
        const t3 = t3In[i]!;
        const t4 = t4In[i]!;
        const pk = pkIn[i]!;
        const vC = wd * ln * t2 * 1e-3;
        const vN = wd * ln * t3 * 1e-3;
        const vT = (wd * t1 + wd * t4 + 2 * wc * 0.9) * ln * 1e-3;
        const mC = vC * rhoC;
        const mN = vN * rhoN;
        const mP = mC * pk * 0.01 * 0.5;
        const mH = vT * 1.27;
        const mass = mC + mN + mP + mH;
        const fill = mass / (vC + vN + vT);
        const height = t1 + t2 + t3 + t4;
        const aspect = height / wd;
        const over = mass - targetIn[i]!;
        const cost = mC * 0.0012 + mN * 0.001 + mP * 0.0022 + mH * 0.0061;
        const smooth = Math.sqrt(over * over + 0.25);
        const loss = smooth * 0.004;
        const total = cost + loss;
        const cooling = mass * (2.1 * (temperatureIn[i]! + 8) + 45 * 0.3) * 0.001;
        aspectOut[i] = aspect;
        totalOut[i] = total;
        coolingOut[i] = cooling;
        mCOut[i] = mC;
        mNOut[i] = mN;
        mPOut[i] = mP;
        mHOut[i] = mH;
        massOut[i] = mass;
        fillOut[i] = fill;
      }
    },
  ),
  formulas(
    ['kj', 'kcal', 'kj100', 'sugar100', 'fat100', 'saturates', 'salt', 'fibre'],
    ['mC', 'mN', 'mP', 'mH', 'mass', 'xs', 'xg', 'xf', 'ys', 'yg', 'ye', 'yf'],
    (
      [mCIn, mNIn, mPIn, mHIn, massIn, xsIn, xgIn, xfIn, ysIn, ygIn, yeIn, yfIn],
      [kjOut, kcalOut, kj100Out, sugar100Out, fat100Out, saturatesOut, saltOut, fibreOut],
      count,
    ) => {
      for (let i = 0; i < count; i++) {
        const mC = mCIn[i]!;
        const mN = mNIn[i]!;
        const mP = mPIn[i]!;
        const mH = mHIn[i]!;
        const mass = massIn[i]!;
        const xs = xsIn[i]!;
        const xg = xgIn[i]!;
        const xf = xfIn[i]!;
        const ys = ysIn[i]!;
        const yg = ygIn[i]!;
        const ye = yeIn[i]!;
        const yf = yfIn[i]!;
        const fat = mC * xf + mN * yf + mP * 0.49 + mH * 0.3;
        const sugar = mC * (xs + xg * 0.5) + mN * (ys + yg * 0.5) + mP * 0.045 + mH * 0.52;
        const protein = mC * 0.02 + mN * ye * 0.8 + mP * 0.26 + mH * 0.07;
        const carbohydrate = sugar + mC * xg * 0.3 + mN * yg * 0.3 + mP * 0.11 + mH * 0.05;
        const kj = fat * 37 + carbohydrate * 17 + protein * 17;
        const kcal = kj * (1 / 4.184);
        const per100 = 100 / mass;
        const kj100 = kj * per100;
        const sugar100 = sugar * per100;
        const fat100 = fat * per100;
        const saturates = mC * xf * 0.5 + mN * yf * 0.5 + mP * 0.07 + mH * 0.18;
        const salt = mC * 0.004 + mP * 0.006;
        const fibre = mP * 0.085 + mH * 0.018;
        kjOut[i] = kj;
        kcalOut[i] = kcal;
        kj100Out[i] = kj100;
        sugar100Out[i] = sugar100;
        fat100Out[i] = fat100;
        saturatesOut[i] = saturates;
        saltOut[i] = salt;
        fibreOut[i] = fibre;
      }
    },
  ),
  formulas(
    ['step', 'keeping', 'keepingWarm', 'risk'],
    ['awC', 'awN', 'mC', 'mN', 'mass', 'ws', 'temperature'],
    ([awCIn, awNIn, mCIn, mNIn, massIn, wsIn, temperatureIn], [stepOut, keepingOut, keepingWarmOut, riskOut], count) => {
      for (let i = 0; i < count; i++) {
        const awC = awCIn[i]!;
        const awN = awNIn[i]!;
        const mC = mCIn[i]!;
        const mN = mNIn[i]!;
        const mass = massIn[i]!;
        const ws = wsIn[i]!;
        const temperature = temperatureIn[i]!;
        const step = awN - awC;
        const aw = (awC * mC * 0.1 + awN * mN * 0.12) / (mC * 0.1 + mN * 0.12);
        const keeping = ((30 / 0.02 / 0.8) * (0.65 - Math.min(aw, 0.64)) * mass) / ws; // permeance is ws · 0.8 / mass
        const keepingWarm = keeping * Math.exp(-0.0693 * (temperature - 20));
        const risk = 1 / (1 + Math.exp(-(aw - 0.6) * 40));
        stepOut[i] = step;
        keepingOut[i] = keeping;
        keepingWarmOut[i] = keepingWarm;
        riskOut[i] = risk;
      }
    },
  ),
];
