#!/usr/bin/env python3
"""The numpy side of the race: the same formulas, vectorised over all samples, with the same summary.

Writes the draws as Float64, one input after another, so that both sides work on the same numbers:
  race-numpy.py DRAWS_FILE [SAMPLES] [REPEATS]
Constants are illustrative. Needs numpy. Prints one line of JSON.
"""
import json
import sys
import time

import numpy as np
from numpy import exp, log, sqrt
from numpy import maximum as fmax, minimum as fmin

INPUTS = ['cs', 'cg', 'cf', 'cw', 'ns', 'ng', 'nw', 'ne', 'nf', 'pk', 'chs', 'chm', 'tb', 'rhoSet', 't1', 't2', 't3', 't4', 'wd', 'wc', 'ln', 'target', 'temperature', 'ws']
MEAN = np.array([40.0, 28.0, 24.0, 8.0, 45.0, 20.0, 15.0, 12.0, 8.0, 30.0, 25.0, 25.0, 118.0, 0.22, 1.2, 5.0, 9.0, 1.2, 32.0, 18.0, 100.0, 52.0, 20.0, 3.5])
SD = np.array([0.8, 0.6, 0.6, 0.3, 0.9, 0.5, 0.4, 0.4, 0.25, 0.8, 0.7, 0.7, 0.6, 0.01, 0.06, 0.15, 0.25, 0.06, 0.4, 0.3, 0.5, 0.4, 0.5, 0.1])


def formulas(x):
    cs, cg, cf, cw, ns, ng, nw, ne, nf, pk, chs, chm, tb, rhoSet, t1, t2, t3, t4, wd, wc, ln, target, temperature, ws = x
    st = cs + cg + cf + cw
    xs, xg, xf, xw = cs / st, cg / st, cf / st, cw / st
    nt = ns + ng + nw + ne + nf
    ys, yg, yw, ye, yf = ns / nt, ng / nt, nw / nt, ne / nt, nf / nt
    ms = xs / 342.3
    mg = (xg * 0.8) / 420
    mw = xw + xg * 0.2
    mwm = mw / 18.015
    sx = ms + mg
    xWater = mwm / (mwm + sx)
    awC = xWater * exp((-(6.47 * ms + 2.8 * mg) / sx) * (1 - xWater) * (1 - xWater))
    ms2 = ys / 342.3
    mg2 = (yg * 0.8) / 420
    mw2 = yw + yg * 0.2
    mwm2 = mw2 / 18.015
    sx2 = ms2 + mg2
    xWater2 = mwm2 / (mwm2 + sx2)
    awN = xWater2 * exp((-(6.47 * ms2 + 2.8 * mg2) / sx2) * (1 - xWater2) * (1 - xWater2))
    lnp = log(101.325 / awC / 0.13332)
    tbp = 1668.21 / (7.96681 - lnp * 0.4342944819) - 228
    above = tb - tbp
    solids = 1 - xw - xg * 0.2
    endWater = fmax(xw * exp(-0.018 * fmax(above, -40)), 0.01)
    viscosity = exp(2.3 + (12 * solids * solids) / (temperature / 20))
    rho0 = 1 / (ys / 1.587 + yg / 1.42 + yw / 0.998 + ye / 1.3 + yf / 0.92)
    phi = 1 - ((rhoSet * 4) / rho0) * 0.9
    rhoN = rho0 * (1 - fmin(fmax(phi, 0), 0.8))
    overrun = rho0 / rhoN - 1
    rhoC = 1 / (xs / 1.587 + xg / 1.42 + xf / 0.92 + xw / 0.998)
    vC = wd * ln * t2 * 1e-3
    vN = wd * ln * t3 * 1e-3
    vT = (wd * t1 + wd * t4 + 2 * wc * 0.9) * ln * 1e-3
    mC = vC * rhoC
    mN = vN * rhoN
    mP = mC * pk * 0.01 * 0.5
    mH = vT * 1.27
    mass = mC + mN + mP + mH
    over = mass - target
    fill = mass / (vC + vN + vT)
    fat = mC * xf + mN * yf + mP * 0.49 + mH * 0.3
    sugar = mC * (xs + xg * 0.5) + mN * (ys + yg * 0.5) + mP * 0.045 + mH * 0.52
    protein = mC * 0.02 + mN * ye * 0.8 + mP * 0.26 + mH * 0.07
    carbohydrate = sugar + mC * xg * 0.3 + mN * yg * 0.3 + mP * 0.11 + mH * 0.05
    kj = fat * 37 + carbohydrate * 17 + protein * 17
    kcal = kj / 4.184
    kj100 = (kj / mass) * 100
    sugar100 = (sugar / mass) * 100
    fat100 = (fat / mass) * 100
    saturates = mC * xf * 0.5 + mN * yf * 0.5 + mP * 0.07 + mH * 0.18
    salt = mC * 0.004 + mP * 0.006
    fibre = mP * 0.085 + mH * 0.018
    step = awN - awC
    aw = (awC * mC * 0.1 + awN * mN * 0.12) / (mC * 0.1 + mN * 0.12)
    permeance = (ws * 0.8) / mass
    keeping = (30 * (0.65 - fmin(aw, 0.64))) / permeance / 0.02
    keepingWarm = keeping * exp(-0.0693 * (temperature - 20))
    cost = mC * 0.0012 + mN * 0.001 + mP * 0.0022 + mH * 0.0061
    height = t1 + t2 + t3 + t4
    aspect = height / wd
    smooth = sqrt(over * over + 0.25)
    loss = smooth * 0.004
    total = cost + loss
    cooling = (mass * (2.1 * (temperature + 8) + 45 * 0.3)) / 1000
    risk = 1 / (1 + exp(-(aw - 0.6) * 40))
    return awC, awN, mass, kj, kj100, sugar100, fat100, keeping, keepingWarm, total, cooling, risk, viscosity, overrun, endWater, fill, saturates, salt, fibre, kcal, aspect, step


def main():
    path = sys.argv[1]
    samples = int(sys.argv[2]) if len(sys.argv) > 2 else 100_000
    repeats = int(sys.argv[3]) if len(sys.argv) > 3 else 15
    rng = np.random.default_rng(1)
    started = time.perf_counter()
    draws = MEAN[:, None] + SD[:, None] * rng.standard_normal((len(INPUTS), samples))
    draw_ms = (time.perf_counter() - started) * 1e3
    draws.tofile(path)
    times, parts = [], []
    for _ in range(repeats):
        started = time.perf_counter()
        results = formulas(tuple(draws))
        evaluated = time.perf_counter()
        summary = [(y.mean(), y.std(ddof=1), np.percentile(y, [5, 50, 95])) for y in results]
        ended = time.perf_counter()
        times.append((ended - started) * 1e3)
        parts.append((evaluated - started) * 1e3)
    print(json.dumps({
        'case': 'sixty formulas, numpy', 'samples': samples, 'ms': round(float(np.median(times)), 2),
        'best_ms': round(min(times), 2), 'evaluate_ms': round(float(np.median(parts)), 2), 'draw_ms': round(draw_ms, 2),
        'means': [float(m) for m, _, _ in summary], 'sds': [float(s) for _, s, _ in summary],
        'p5': [float(p[0]) for _, _, p in summary], 'p50': [float(p[1]) for _, _, p in summary],
        'p95': [float(p[2]) for _, _, p in summary],
    }))


main()
