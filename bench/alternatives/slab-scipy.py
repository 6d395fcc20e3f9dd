#!/usr/bin/env python3
"""The slab of packages/science/bench/slab.ts with numpy and scipy: same slab, same reports, same measure of error, three methods.

Finite volumes; stiff integrators with a banded matrix, and Crank-Nicolson with a matrix factored once. The constants are
illustrative. Prints one line of JSON for each method and grid. Needs numpy and scipy.
"""
import json
import time

import numpy as np
from scipy.integrate import odeint, solve_ivp
from scipy.linalg import lapack
from scipy.optimize import brentq
from scipy.sparse import diags

L, RHO, CP, K, START = 0.013, 1330.0, 2100.0, 0.28, 60.0
AIR, H, DURATION, REPORTS, FIRST = 12.0, 60.0, 480.0, 100, 5
TIMES = np.linspace(0, DURATION, REPORTS + 1)


def exact(x):
    """Carslaw and Jaeger's series, rows of times."""
    half, alpha = L / 2, K / (RHO * CP)
    biot = H * half / K
    total = np.zeros((len(TIMES), len(x)))
    for n in range(60):
        root = brentq(lambda z: z * np.sin(z) - biot * np.cos(z), n * np.pi, (n + 0.5) * np.pi, xtol=1e-15)
        amount = 4 * np.sin(root) / (2 * root + np.sin(2 * root))
        total += amount * np.exp(-root**2 * alpha * TIMES[:, None] / half**2) * np.cos(root * (x - half) / half)[None, :]
    return AIR + (START - AIR) * total


def bands(n):
    dx = L / n
    inner, outer, store = K / dx, 1 / (1 / H + dx / 2 / K), RHO * CP * dx
    diagonal = np.full(n, -2 * inner)
    diagonal[0] = diagonal[-1] = -(inner + outer)
    side = np.full(n - 1, inner / store)
    source = np.zeros(n)
    source[0] = source[-1] = outer * AIR / store
    return side, diagonal / store, source


def by_odeint(n, tolerance):
    side, diagonal, source = bands(n)

    def slope(_, t):
        out = diagonal * t + source
        out[:-1] += side * t[1:]
        out[1:] += side * t[:-1]
        return out

    return odeint(slope, np.full(n, START), TIMES, tfirst=True, ml=1, mu=1, rtol=tolerance, atol=tolerance, mxstep=10000)


def by_bdf(n, tolerance):
    side, diagonal, source = bands(n)
    matrix = diags([side, diagonal, side], [-1, 0, 1], format='csc')
    run = solve_ivp(lambda _, t: matrix @ t + source, (0, DURATION), np.full(n, START), 'BDF', t_eval=TIMES, jac=matrix, rtol=tolerance, atol=tolerance)
    return run.y.T


def by_crank_nicolson(n, finer):
    """Backward Euler in the first two reports, eight and four to a step, as a jump at the start asks; then Crank-Nicolson."""
    side, diagonal, source = bands(n)
    out = np.empty((REPORTS + 1, n))
    t = np.full(n, START)
    out[0] = t
    dt = TIMES[1] / finer

    def factor(step, theta):
        return lapack.dgttrf(-theta * step * side, 1 - theta * step * diagonal, -theta * step * side)[:5]

    factored = {pieces: factor(dt / pieces, 1) for pieces in (8, 4)}
    whole = factor(dt, 0.5)
    for row in range(REPORTS * finer):
        pieces = 8 if row == 0 else 4 if row == 1 else 1
        if pieces > 1:
            for _ in range(pieces):
                t = lapack.dgttrs(*factored[pieces], t + dt / pieces * source)[0]
        else:
            right = t + 0.5 * dt * diagonal * t + dt * source
            right[:-1] += 0.5 * dt * side * t[1:]
            right[1:] += 0.5 * dt * side * t[:-1]
            t = lapack.dgttrs(*whole, right)[0]
        if (row + 1) % finer == 0:
            out[(row + 1) // finer] = t
    return out


for name, method, settings in (
    ('odeint (LSODA)', by_odeint, (1e-4, 1e-5, 1e-6)),
    ('solve_ivp BDF', by_bdf, (1e-3, 1e-4, 1e-5)),
    ('Crank-Nicolson, LAPACK', by_crank_nicolson, (1, 2)),
):
    for n in (10, 20, 40, 80, 160):
        centres = (np.arange(n) + 0.5) * L / n
        truth = exact(centres)
        for setting in settings:
            error = float(np.abs(method(n, setting) - truth)[FIRST:].max())
            times = []
            for _ in range(9):
                started = time.perf_counter()
                method(n, setting)
                times.append((time.perf_counter() - started) * 1e3)
            print(json.dumps({'case': 'slab', 'method': name, 'cells': n, 'setting': setting, 'error_k': float('%.3g' % error), 'ms': float('%.3g' % np.median(times))}))
