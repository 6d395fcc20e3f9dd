import type { Quantity, Root, Step, Value } from '../src/index.js';

/*
 * Sixty-four formulas of the usual kinds (shares, exponentials, products, limits) for racing. Every constant is illustrative:
 * the figures stand for no recipe, and nothing outside this folder may use them.
 */

type Numbers<I extends readonly string[]> = { readonly [K in keyof I]: number };
type Columns<I extends readonly string[]> = { readonly [K in keyof I]: Float64Array };

function formula<const O extends readonly string[], const I extends readonly string[]>(
  outputs: O,
  inputs: I,
  run: (...x: Numbers<I>) => Value | readonly Value[],
  block: (x: Columns<I>, y: Columns<O>, count: number) => void,
): Step {
  const quantity = (id: string): Quantity => ({ id, unit: '1', meaning: id });
  const id = `make ${outputs.join(' ')}`;
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

export const sixtySteps: readonly Step[] = [
  formula(
    ['st'],
    ['cs', 'cg', 'cf', 'cw'],
    (cs, cg, cf, cw) => cs + cg + cf + cw,
    ([cs, cg, cf, cw], [st], count) => {
      for (let i = 0; i < count; i++) {
        st[i] = cs[i]! + cg[i]! + cf[i]! + cw[i]!;
      }
    },
  ),
  formula(
    ['xs', 'xg', 'xf', 'xw'],
    ['cs', 'st', 'cg', 'cf', 'cw'],
    (cs, st, cg, cf, cw) => [cs / st, cg / st, cf / st, cw / st],
    ([cs, st, cg, cf, cw], [xs, xg, xf, xw], count) => {
      for (let i = 0; i < count; i++) {
        xs[i] = cs[i]! / st[i]!;
        xg[i] = cg[i]! / st[i]!;
        xf[i] = cf[i]! / st[i]!;
        xw[i] = cw[i]! / st[i]!;
      }
    },
  ),
  formula(
    ['nt'],
    ['ns', 'ng', 'nw', 'ne', 'nf'],
    (ns, ng, nw, ne, nf) => ns + ng + nw + ne + nf,
    ([ns, ng, nw, ne, nf], [nt], count) => {
      for (let i = 0; i < count; i++) {
        nt[i] = ns[i]! + ng[i]! + nw[i]! + ne[i]! + nf[i]!;
      }
    },
  ),
  formula(
    ['ys', 'yg', 'yw', 'ye', 'yf'],
    ['ns', 'nt', 'ng', 'nw', 'ne', 'nf'],
    (ns, nt, ng, nw, ne, nf) => [ns / nt, ng / nt, nw / nt, ne / nt, nf / nt],
    ([ns, nt, ng, nw, ne, nf], [ys, yg, yw, ye, yf], count) => {
      for (let i = 0; i < count; i++) {
        ys[i] = ns[i]! / nt[i]!;
        yg[i] = ng[i]! / nt[i]!;
        yw[i] = nw[i]! / nt[i]!;
        ye[i] = ne[i]! / nt[i]!;
        yf[i] = nf[i]! / nt[i]!;
      }
    },
  ),
  formula(
    ['ms'],
    ['xs'],
    (xs) => xs / 342.3,
    ([xs], [ms], count) => {
      for (let i = 0; i < count; i++) {
        ms[i] = xs[i]! / 342.3;
      }
    },
  ),
  formula(
    ['mg'],
    ['xg'],
    (xg) => (xg * 0.8) / 420,
    ([xg], [mg], count) => {
      for (let i = 0; i < count; i++) {
        mg[i] = (xg[i]! * 0.8) / 420;
      }
    },
  ),
  formula(
    ['mw'],
    ['xw', 'xg'],
    (xw, xg) => xw + xg * 0.2,
    ([xw, xg], [mw], count) => {
      for (let i = 0; i < count; i++) {
        mw[i] = xw[i]! + xg[i]! * 0.2;
      }
    },
  ),
  formula(
    ['mwm'],
    ['mw'],
    (mw) => mw / 18.015,
    ([mw], [mwm], count) => {
      for (let i = 0; i < count; i++) {
        mwm[i] = mw[i]! / 18.015;
      }
    },
  ),
  formula(
    ['sx'],
    ['ms', 'mg'],
    (ms, mg) => ms + mg,
    ([ms, mg], [sx], count) => {
      for (let i = 0; i < count; i++) {
        sx[i] = ms[i]! + mg[i]!;
      }
    },
  ),
  formula(
    ['xWater'],
    ['mwm', 'sx'],
    (mwm, sx) => mwm / (mwm + sx),
    ([mwm, sx], [xWater], count) => {
      for (let i = 0; i < count; i++) {
        xWater[i] = mwm[i]! / (mwm[i]! + sx[i]!);
      }
    },
  ),
  formula(
    ['awC'],
    ['xWater', 'ms', 'mg', 'sx'],
    (xWater, ms, mg, sx) => xWater * Math.exp((-(6.47 * ms + 2.8 * mg) / sx) * (1 - xWater) * (1 - xWater)),
    ([xWater, ms, mg, sx], [awC], count) => {
      for (let i = 0; i < count; i++) {
        awC[i] = xWater[i]! * Math.exp((-(6.47 * ms[i]! + 2.8 * mg[i]!) / sx[i]!) * (1 - xWater[i]!) * (1 - xWater[i]!));
      }
    },
  ),
  formula(
    ['ms2'],
    ['ys'],
    (ys) => ys / 342.3,
    ([ys], [ms2], count) => {
      for (let i = 0; i < count; i++) {
        ms2[i] = ys[i]! / 342.3;
      }
    },
  ),
  formula(
    ['mg2'],
    ['yg'],
    (yg) => (yg * 0.8) / 420,
    ([yg], [mg2], count) => {
      for (let i = 0; i < count; i++) {
        mg2[i] = (yg[i]! * 0.8) / 420;
      }
    },
  ),
  formula(
    ['mw2'],
    ['yw', 'yg'],
    (yw, yg) => yw + yg * 0.2,
    ([yw, yg], [mw2], count) => {
      for (let i = 0; i < count; i++) {
        mw2[i] = yw[i]! + yg[i]! * 0.2;
      }
    },
  ),
  formula(
    ['mwm2'],
    ['mw2'],
    (mw2) => mw2 / 18.015,
    ([mw2], [mwm2], count) => {
      for (let i = 0; i < count; i++) {
        mwm2[i] = mw2[i]! / 18.015;
      }
    },
  ),
  formula(
    ['sx2'],
    ['ms2', 'mg2'],
    (ms2, mg2) => ms2 + mg2,
    ([ms2, mg2], [sx2], count) => {
      for (let i = 0; i < count; i++) {
        sx2[i] = ms2[i]! + mg2[i]!;
      }
    },
  ),
  formula(
    ['xWater2'],
    ['mwm2', 'sx2'],
    (mwm2, sx2) => mwm2 / (mwm2 + sx2),
    ([mwm2, sx2], [xWater2], count) => {
      for (let i = 0; i < count; i++) {
        xWater2[i] = mwm2[i]! / (mwm2[i]! + sx2[i]!);
      }
    },
  ),
  formula(
    ['awN'],
    ['xWater2', 'ms2', 'mg2', 'sx2'],
    (xWater2, ms2, mg2, sx2) => xWater2 * Math.exp((-(6.47 * ms2 + 2.8 * mg2) / sx2) * (1 - xWater2) * (1 - xWater2)),
    ([xWater2, ms2, mg2, sx2], [awN], count) => {
      for (let i = 0; i < count; i++) {
        awN[i] = xWater2[i]! * Math.exp((-(6.47 * ms2[i]! + 2.8 * mg2[i]!) / sx2[i]!) * (1 - xWater2[i]!) * (1 - xWater2[i]!));
      }
    },
  ),
  formula(
    ['lnp'],
    ['awC'],
    (awC) => Math.log(101.325 / awC / 0.13332),
    ([awC], [lnp], count) => {
      for (let i = 0; i < count; i++) {
        lnp[i] = Math.log(101.325 / awC[i]! / 0.13332);
      }
    },
  ),
  formula(
    ['tbp'],
    ['lnp'],
    (lnp) => 1668.21 / (7.96681 - lnp * 0.4342944819) - 228,
    ([lnp], [tbp], count) => {
      for (let i = 0; i < count; i++) {
        tbp[i] = 1668.21 / (7.96681 - lnp[i]! * 0.4342944819) - 228;
      }
    },
  ),
  formula(
    ['above'],
    ['tb', 'tbp'],
    (tb, tbp) => tb - tbp,
    ([tb, tbp], [above], count) => {
      for (let i = 0; i < count; i++) {
        above[i] = tb[i]! - tbp[i]!;
      }
    },
  ),
  formula(
    ['solids'],
    ['xw', 'xg'],
    (xw, xg) => 1 - xw - xg * 0.2,
    ([xw, xg], [solids], count) => {
      for (let i = 0; i < count; i++) {
        solids[i] = 1 - xw[i]! - xg[i]! * 0.2;
      }
    },
  ),
  formula(
    ['endWater'],
    ['xw', 'above'],
    (xw, above) => Math.max(xw * Math.exp(-0.018 * Math.max(above, -40)), 0.01),
    ([xw, above], [endWater], count) => {
      for (let i = 0; i < count; i++) {
        endWater[i] = Math.max(xw[i]! * Math.exp(-0.018 * Math.max(above[i]!, -40)), 0.01);
      }
    },
  ),
  formula(
    ['viscosity'],
    ['solids', 'temperature'],
    (solids, temperature) => Math.exp(2.3 + (12 * solids * solids) / (temperature / 20)),
    ([solids, temperature], [viscosity], count) => {
      for (let i = 0; i < count; i++) {
        viscosity[i] = Math.exp(2.3 + (12 * solids[i]! * solids[i]!) / (temperature[i]! / 20));
      }
    },
  ),
  formula(
    ['rho0'],
    ['ys', 'yg', 'yw', 'ye', 'yf'],
    (ys, yg, yw, ye, yf) => 1 / (ys / 1.587 + yg / 1.42 + yw / 0.998 + ye / 1.3 + yf / 0.92),
    ([ys, yg, yw, ye, yf], [rho0], count) => {
      for (let i = 0; i < count; i++) {
        rho0[i] = 1 / (ys[i]! / 1.587 + yg[i]! / 1.42 + yw[i]! / 0.998 + ye[i]! / 1.3 + yf[i]! / 0.92);
      }
    },
  ),
  formula(
    ['phi'],
    ['rhoSet', 'rho0'],
    (rhoSet, rho0) => 1 - ((rhoSet * 4) / rho0) * 0.9,
    ([rhoSet, rho0], [phi], count) => {
      for (let i = 0; i < count; i++) {
        phi[i] = 1 - ((rhoSet[i]! * 4) / rho0[i]!) * 0.9;
      }
    },
  ),
  formula(
    ['rhoN'],
    ['rho0', 'phi'],
    (rho0, phi) => rho0 * (1 - Math.min(Math.max(phi, 0), 0.8)),
    ([rho0, phi], [rhoN], count) => {
      for (let i = 0; i < count; i++) {
        rhoN[i] = rho0[i]! * (1 - Math.min(Math.max(phi[i]!, 0), 0.8));
      }
    },
  ),
  formula(
    ['overrun'],
    ['rho0', 'rhoN'],
    (rho0, rhoN) => rho0 / rhoN - 1,
    ([rho0, rhoN], [overrun], count) => {
      for (let i = 0; i < count; i++) {
        overrun[i] = rho0[i]! / rhoN[i]! - 1;
      }
    },
  ),
  formula(
    ['rhoC'],
    ['xs', 'xg', 'xf', 'xw'],
    (xs, xg, xf, xw) => 1 / (xs / 1.587 + xg / 1.42 + xf / 0.92 + xw / 0.998),
    ([xs, xg, xf, xw], [rhoC], count) => {
      for (let i = 0; i < count; i++) {
        rhoC[i] = 1 / (xs[i]! / 1.587 + xg[i]! / 1.42 + xf[i]! / 0.92 + xw[i]! / 0.998);
      }
    },
  ),
  formula(
    ['vC'],
    ['wd', 'ln', 't2'],
    (wd, ln, t2) => wd * ln * t2 * 1e-3,
    ([wd, ln, t2], [vC], count) => {
      for (let i = 0; i < count; i++) {
        vC[i] = wd[i]! * ln[i]! * t2[i]! * 1e-3;
      }
    },
  ),
  formula(
    ['vN'],
    ['wd', 'ln', 't3'],
    (wd, ln, t3) => wd * ln * t3 * 1e-3,
    ([wd, ln, t3], [vN], count) => {
      for (let i = 0; i < count; i++) {
        vN[i] = wd[i]! * ln[i]! * t3[i]! * 1e-3;
      }
    },
  ),
  formula(
    ['vT'],
    ['wd', 't1', 't4', 'wc', 'ln'],
    (wd, t1, t4, wc, ln) => (wd * t1 + wd * t4 + 2 * wc * 0.9) * ln * 1e-3,
    ([wd, t1, t4, wc, ln], [vT], count) => {
      for (let i = 0; i < count; i++) {
        vT[i] = (wd[i]! * t1[i]! + wd[i]! * t4[i]! + 2 * wc[i]! * 0.9) * ln[i]! * 1e-3;
      }
    },
  ),
  formula(
    ['mC'],
    ['vC', 'rhoC'],
    (vC, rhoC) => vC * rhoC,
    ([vC, rhoC], [mC], count) => {
      for (let i = 0; i < count; i++) {
        mC[i] = vC[i]! * rhoC[i]!;
      }
    },
  ),
  formula(
    ['mN'],
    ['vN', 'rhoN'],
    (vN, rhoN) => vN * rhoN,
    ([vN, rhoN], [mN], count) => {
      for (let i = 0; i < count; i++) {
        mN[i] = vN[i]! * rhoN[i]!;
      }
    },
  ),
  formula(
    ['mP'],
    ['mC', 'pk'],
    (mC, pk) => mC * pk * 0.01 * 0.5,
    ([mC, pk], [mP], count) => {
      for (let i = 0; i < count; i++) {
        mP[i] = mC[i]! * pk[i]! * 0.01 * 0.5;
      }
    },
  ),
  formula(
    ['mH'],
    ['vT'],
    (vT) => vT * 1.27,
    ([vT], [mH], count) => {
      for (let i = 0; i < count; i++) {
        mH[i] = vT[i]! * 1.27;
      }
    },
  ),
  formula(
    ['mass'],
    ['mC', 'mN', 'mP', 'mH'],
    (mC, mN, mP, mH) => mC + mN + mP + mH,
    ([mC, mN, mP, mH], [mass], count) => {
      for (let i = 0; i < count; i++) {
        mass[i] = mC[i]! + mN[i]! + mP[i]! + mH[i]!;
      }
    },
  ),
  formula(
    ['over'],
    ['mass', 'target'],
    (mass, target) => mass - target,
    ([mass, target], [over], count) => {
      for (let i = 0; i < count; i++) {
        over[i] = mass[i]! - target[i]!;
      }
    },
  ),
  formula(
    ['fill'],
    ['mass', 'vC', 'vN', 'vT'],
    (mass, vC, vN, vT) => mass / (vC + vN + vT),
    ([mass, vC, vN, vT], [fill], count) => {
      for (let i = 0; i < count; i++) {
        fill[i] = mass[i]! / (vC[i]! + vN[i]! + vT[i]!);
      }
    },
  ),
  formula(
    ['fat'],
    ['mC', 'xf', 'mN', 'yf', 'mP', 'mH'],
    (mC, xf, mN, yf, mP, mH) => mC * xf + mN * yf + mP * 0.49 + mH * 0.3,
    ([mC, xf, mN, yf, mP, mH], [fat], count) => {
      for (let i = 0; i < count; i++) {
        fat[i] = mC[i]! * xf[i]! + mN[i]! * yf[i]! + mP[i]! * 0.49 + mH[i]! * 0.3;
      }
    },
  ),
  formula(
    ['sugar'],
    ['mC', 'xs', 'xg', 'mN', 'ys', 'yg', 'mP', 'mH'],
    (mC, xs, xg, mN, ys, yg, mP, mH) => mC * (xs + xg * 0.5) + mN * (ys + yg * 0.5) + mP * 0.045 + mH * 0.52,
    ([mC, xs, xg, mN, ys, yg, mP, mH], [sugar], count) => {
      for (let i = 0; i < count; i++) {
        sugar[i] = mC[i]! * (xs[i]! + xg[i]! * 0.5) + mN[i]! * (ys[i]! + yg[i]! * 0.5) + mP[i]! * 0.045 + mH[i]! * 0.52;
      }
    },
  ),
  formula(
    ['protein'],
    ['mC', 'mN', 'ye', 'mP', 'mH'],
    (mC, mN, ye, mP, mH) => mC * 0.02 + mN * ye * 0.8 + mP * 0.26 + mH * 0.07,
    ([mC, mN, ye, mP, mH], [protein], count) => {
      for (let i = 0; i < count; i++) {
        protein[i] = mC[i]! * 0.02 + mN[i]! * ye[i]! * 0.8 + mP[i]! * 0.26 + mH[i]! * 0.07;
      }
    },
  ),
  formula(
    ['carbohydrate'],
    ['sugar', 'mC', 'xg', 'mN', 'yg', 'mP', 'mH'],
    (sugar, mC, xg, mN, yg, mP, mH) => sugar + mC * xg * 0.3 + mN * yg * 0.3 + mP * 0.11 + mH * 0.05,
    ([sugar, mC, xg, mN, yg, mP, mH], [carbohydrate], count) => {
      for (let i = 0; i < count; i++) {
        carbohydrate[i] = sugar[i]! + mC[i]! * xg[i]! * 0.3 + mN[i]! * yg[i]! * 0.3 + mP[i]! * 0.11 + mH[i]! * 0.05;
      }
    },
  ),
  formula(
    ['kj'],
    ['fat', 'carbohydrate', 'protein'],
    (fat, carbohydrate, protein) => fat * 37 + carbohydrate * 17 + protein * 17,
    ([fat, carbohydrate, protein], [kj], count) => {
      for (let i = 0; i < count; i++) {
        kj[i] = fat[i]! * 37 + carbohydrate[i]! * 17 + protein[i]! * 17;
      }
    },
  ),
  formula(
    ['kcal'],
    ['kj'],
    (kj) => kj / 4.184,
    ([kj], [kcal], count) => {
      for (let i = 0; i < count; i++) {
        kcal[i] = kj[i]! / 4.184;
      }
    },
  ),
  formula(
    ['kj100'],
    ['kj', 'mass'],
    (kj, mass) => (kj / mass) * 100,
    ([kj, mass], [kj100], count) => {
      for (let i = 0; i < count; i++) {
        kj100[i] = (kj[i]! / mass[i]!) * 100;
      }
    },
  ),
  formula(
    ['sugar100'],
    ['sugar', 'mass'],
    (sugar, mass) => (sugar / mass) * 100,
    ([sugar, mass], [sugar100], count) => {
      for (let i = 0; i < count; i++) {
        sugar100[i] = (sugar[i]! / mass[i]!) * 100;
      }
    },
  ),
  formula(
    ['fat100'],
    ['fat', 'mass'],
    (fat, mass) => (fat / mass) * 100,
    ([fat, mass], [fat100], count) => {
      for (let i = 0; i < count; i++) {
        fat100[i] = (fat[i]! / mass[i]!) * 100;
      }
    },
  ),
  formula(
    ['saturates'],
    ['mC', 'xf', 'mN', 'yf', 'mP', 'mH'],
    (mC, xf, mN, yf, mP, mH) => mC * xf * 0.5 + mN * yf * 0.5 + mP * 0.07 + mH * 0.18,
    ([mC, xf, mN, yf, mP, mH], [saturates], count) => {
      for (let i = 0; i < count; i++) {
        saturates[i] = mC[i]! * xf[i]! * 0.5 + mN[i]! * yf[i]! * 0.5 + mP[i]! * 0.07 + mH[i]! * 0.18;
      }
    },
  ),
  formula(
    ['salt'],
    ['mC', 'mP'],
    (mC, mP) => mC * 0.004 + mP * 0.006,
    ([mC, mP], [salt], count) => {
      for (let i = 0; i < count; i++) {
        salt[i] = mC[i]! * 0.004 + mP[i]! * 0.006;
      }
    },
  ),
  formula(
    ['fibre'],
    ['mP', 'mH'],
    (mP, mH) => mP * 0.085 + mH * 0.018,
    ([mP, mH], [fibre], count) => {
      for (let i = 0; i < count; i++) {
        fibre[i] = mP[i]! * 0.085 + mH[i]! * 0.018;
      }
    },
  ),
  formula(
    ['step'],
    ['awN', 'awC'],
    (awN, awC) => awN - awC,
    ([awN, awC], [step], count) => {
      for (let i = 0; i < count; i++) {
        step[i] = awN[i]! - awC[i]!;
      }
    },
  ),
  formula(
    ['aw'],
    ['awC', 'mC', 'awN', 'mN'],
    (awC, mC, awN, mN) => (awC * mC * 0.1 + awN * mN * 0.12) / (mC * 0.1 + mN * 0.12),
    ([awC, mC, awN, mN], [aw], count) => {
      for (let i = 0; i < count; i++) {
        aw[i] = (awC[i]! * mC[i]! * 0.1 + awN[i]! * mN[i]! * 0.12) / (mC[i]! * 0.1 + mN[i]! * 0.12);
      }
    },
  ),
  formula(
    ['permeance'],
    ['ws', 'mass'],
    (ws, mass) => (ws * 0.8) / mass,
    ([ws, mass], [permeance], count) => {
      for (let i = 0; i < count; i++) {
        permeance[i] = (ws[i]! * 0.8) / mass[i]!;
      }
    },
  ),
  formula(
    ['keeping'],
    ['aw', 'permeance'],
    (aw, permeance) => (30 * (0.65 - Math.min(aw, 0.64))) / permeance / 0.02,
    ([aw, permeance], [keeping], count) => {
      for (let i = 0; i < count; i++) {
        keeping[i] = (30 * (0.65 - Math.min(aw[i]!, 0.64))) / permeance[i]! / 0.02;
      }
    },
  ),
  formula(
    ['keepingWarm'],
    ['keeping', 'temperature'],
    (keeping, temperature) => keeping * Math.exp(-0.0693 * (temperature - 20)),
    ([keeping, temperature], [keepingWarm], count) => {
      for (let i = 0; i < count; i++) {
        keepingWarm[i] = keeping[i]! * Math.exp(-0.0693 * (temperature[i]! - 20));
      }
    },
  ),
  formula(
    ['cost'],
    ['mC', 'mN', 'mP', 'mH'],
    (mC, mN, mP, mH) => mC * 0.0012 + mN * 0.001 + mP * 0.0022 + mH * 0.0061,
    ([mC, mN, mP, mH], [cost], count) => {
      for (let i = 0; i < count; i++) {
        cost[i] = mC[i]! * 0.0012 + mN[i]! * 0.001 + mP[i]! * 0.0022 + mH[i]! * 0.0061;
      }
    },
  ),
  formula(
    ['height'],
    ['t1', 't2', 't3', 't4'],
    (t1, t2, t3, t4) => t1 + t2 + t3 + t4,
    ([t1, t2, t3, t4], [height], count) => {
      for (let i = 0; i < count; i++) {
        height[i] = t1[i]! + t2[i]! + t3[i]! + t4[i]!;
      }
    },
  ),
  formula(
    ['aspect'],
    ['height', 'wd'],
    (height, wd) => height / wd,
    ([height, wd], [aspect], count) => {
      for (let i = 0; i < count; i++) {
        aspect[i] = height[i]! / wd[i]!;
      }
    },
  ),
  formula(
    ['smooth'],
    ['over'],
    (over) => Math.sqrt(over * over + 0.25),
    ([over], [smooth], count) => {
      for (let i = 0; i < count; i++) {
        smooth[i] = Math.sqrt(over[i]! * over[i]! + 0.25);
      }
    },
  ),
  formula(
    ['loss'],
    ['smooth'],
    (smooth) => smooth * 0.004,
    ([smooth], [loss], count) => {
      for (let i = 0; i < count; i++) {
        loss[i] = smooth[i]! * 0.004;
      }
    },
  ),
  formula(
    ['total'],
    ['cost', 'loss'],
    (cost, loss) => cost + loss,
    ([cost, loss], [total], count) => {
      for (let i = 0; i < count; i++) {
        total[i] = cost[i]! + loss[i]!;
      }
    },
  ),
  formula(
    ['cooling'],
    ['mass', 'temperature'],
    (mass, temperature) => (mass * (2.1 * (temperature + 8) + 45 * 0.3)) / 1000,
    ([mass, temperature], [cooling], count) => {
      for (let i = 0; i < count; i++) {
        cooling[i] = (mass[i]! * (2.1 * (temperature[i]! + 8) + 45 * 0.3)) / 1000;
      }
    },
  ),
  formula(
    ['risk'],
    ['aw'],
    (aw) => 1 / (1 + Math.exp(-(aw - 0.6) * 40)),
    ([aw], [risk], count) => {
      for (let i = 0; i < count; i++) {
        risk[i] = 1 / (1 + Math.exp(-(aw[i]! - 0.6) * 40));
      }
    },
  ),
];
