#!/usr/bin/env python3
"""The year of moisture of packages/science/bench/migration.ts with numpy and scipy: same layers, same measure of error.

GAB isotherms, Fick's law in each layer, water activity continuous at the contacts, a wrapper on both faces; finite volumes on
a uniform and a graded grid; stiff integrators with a banded Jacobian. The constants are illustrative.

  migration-scipy.py REFERENCE_FILE

Writes the reference, weekly mean water activities of a fine grid extrapolated (Richardson), and prints one line of JSON for
each method and grid. Needs numpy and scipy; with numba the right-hand side is compiled too.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import odeint, solve_ivp
from scipy.sparse import diags

try:
    import numba
except ImportError:
    numba = None

# thickness m, dry density kg/m3, diffusivity m2/s, GAB m0 C K, water activity at the start
LAYERS = np.array([
    (1.2e-3, 1270.0, 1.0e-13, 0.011, 8.0, 0.900, 0.35),
    (5.0e-3, 1180.0, 2.0e-11, 0.060, 3.0, 0.985, 0.48),
    (9.0e-3, 640.0, 5.0e-11, 0.075, 4.0, 0.970, 0.60),
    (1.2e-3, 1270.0, 1.0e-13, 0.011, 8.0, 0.900, 0.35),
])
OUTSIDE = 0.65
WRAPPER = 0.8e-3 / 86400 * 2.339 / (0.9 * 6.632)  # kg/(m2 s) per unit of water activity
TIMES = np.arange(53) * 7 * 86400.0


def grid(n, graded):
    """Cells of each layer: a uniform share by experience, or cosines that are fine at the contacts."""
    counts = [n // 4] * 4 if graded else [int(round(share * n)) for share in (0.1, 0.3, 0.5, 0.1)]
    widths = []
    for (thickness, *_), count in zip(LAYERS, counts):
        edges = np.linspace(0, 1, count + 1)
        if graded:
            edges = (1 - np.cos(np.pi * edges)) / 2
        widths.append(thickness * np.diff(edges))
    layer = np.repeat(np.arange(4), counts)
    return counts, np.concatenate(widths), layer


class Bar:
    def __init__(self, n, graded):
        self.counts, self.dx, layer = grid(n, graded)
        _, self.rho, self.d, self.m0, self.c, self.k, start = LAYERS[layer].T
        self.start = start.copy()
        self.n = len(self.dx)

    def slope_of_isotherm(self, a):
        u = self.k * a
        p, q = 1 - u, 1 - u + self.c * u
        return self.m0 * self.c * self.k * (1 + (self.c - 1) * u * u) / (p * p * q * q), u, p, q

    def rate(self, _, a):
        m, *_rest = self.slope_of_isotherm(a)
        r = self.dx / (2 * self.rho * self.d * m)
        flux = np.empty(self.n + 1)
        flux[1:-1] = (a[:-1] - a[1:]) / (r[:-1] + r[1:])
        flux[0] = (OUTSIDE - a[0]) / (1 / WRAPPER + r[0])
        flux[-1] = (a[-1] - OUTSIDE) / (1 / WRAPPER + r[-1])
        return (flux[:-1] - flux[1:]) / (self.dx * self.rho * m)

    def jacobian(self, _, a):
        m, u, p, q = self.slope_of_isotherm(a)
        g = self.k * (2 * (self.c - 1) * u / (1 + (self.c - 1) * u * u) + 2 / p - 2 * (self.c - 1) / q)  # d ln m / da
        r = self.dx / (2 * self.rho * self.d * m)
        s = r[:-1] + r[1:]
        inner = (a[:-1] - a[1:]) / s
        left, right = 1 / s + inner * r[:-1] * g[:-1] / s, -1 / s + inner * r[1:] * g[1:] / s
        s0, s1 = 1 / WRAPPER + r[0], 1 / WRAPPER + r[-1]
        f0, f1 = (OUTSIDE - a[0]) / s0, (a[-1] - OUTSIDE) / s1
        flux, store = np.concatenate(([f0], inner, [f1])), self.dx * self.rho * m
        diagonal = np.zeros(self.n)
        diagonal[1:] += right
        diagonal[:-1] -= left
        diagonal[0] += -1 / s0 + f0 * r[0] * g[0] / s0
        diagonal[-1] -= 1 / s1 + f1 * r[-1] * g[-1] / s1
        diagonal = diagonal / store - (flux[:-1] - flux[1:]) / store * g
        return diags([left / store[1:], diagonal, -right / store[:-1]], [-1, 0, 1], format='csc')

    def means(self, rows):
        ends = np.cumsum([0] + self.counts)
        return np.array([rows[:, i:j] @ self.dx[i:j] / self.dx[i:j].sum() for i, j in zip(ends[:-1], ends[1:])]).T

    def by_odeint(self, tolerance, rate=None):
        return self.means(odeint(rate or self.rate, self.start, TIMES, tfirst=True, ml=1, mu=1, rtol=tolerance, atol=tolerance * 0.1, mxstep=100000))

    def by_bdf(self, tolerance):
        run = solve_ivp(self.rate, (0, TIMES[-1]), self.start, 'BDF', t_eval=TIMES, jac=self.jacobian, rtol=tolerance, atol=tolerance * 0.1)
        return self.means(run.y.T)

    def compiled(self):
        @numba.njit
        def rate(a, dx, rho, d, m0, c, k):
            n = a.size
            out = np.empty(n)
            flux, r_old, m_old = 0.0, 0.0, 1.0
            for i in range(n):
                u = k[i] * a[i]
                p, q = 1 - u, 1 - u + c[i] * u
                m = m0[i] * c[i] * k[i] * (1 + (c[i] - 1) * u * u) / (p * p * q * q)
                r = dx[i] / (2 * rho[i] * d[i] * m)
                if i == 0:
                    now = (OUTSIDE - a[0]) / (1 / WRAPPER + r)
                else:
                    now = (a[i - 1] - a[i]) / (r_old + r)
                    out[i - 1] = (flux - now) / (dx[i - 1] * rho[i - 1] * m_old)
                flux, r_old, m_old = now, r, m
            now = (a[n - 1] - OUTSIDE) / (1 / WRAPPER + r_old)
            out[n - 1] = (flux - now) / (dx[n - 1] * rho[n - 1] * m_old)
            return out

        constants = (self.dx, self.rho, self.d, self.m0, self.c, self.k)
        rate(self.start, *constants)
        return lambda _, a: rate(a, *constants)


def reference():
    """Two fine graded grids, extrapolated; their difference bounds what is left."""
    coarse, fine = (Bar(n, True).by_odeint(1e-9) for n in (400, 800))
    return fine + (fine - coarse) / 3, float(np.abs(fine - coarse).max() / 3)


truth, doubt = reference()
with open(sys.argv[1], 'w') as file:
    json.dump(truth.tolist(), file)
print(json.dumps({'case': 'migration', 'reference_within_aw': float('%.2g' % doubt)}))

methods = [('odeint (LSODA)', lambda bar, tolerance: bar.by_odeint(tolerance)), ('solve_ivp BDF', lambda bar, tolerance: bar.by_bdf(tolerance))]
for graded in (False, True):
    for n in (40, 60, 100, 160):
        bar = Bar(n, graded)
        ways = list(methods)
        if numba:
            compiled = bar.compiled()
            ways.append(('odeint, numba', lambda b, tolerance: b.by_odeint(tolerance, compiled)))
        for name, run in ways:
            for tolerance in (1e-3, 1e-4, 1e-5):
                error = float(np.abs(run(bar, tolerance) - truth).max())
                times = []
                for _ in range(5):
                    started = time.perf_counter()
                    run(bar, tolerance)
                    times.append((time.perf_counter() - started) * 1e3)
                print(json.dumps({'case': 'migration', 'method': name + (', graded grid' if graded else ''), 'cells': n, 'setting': tolerance, 'error_aw': float('%.3g' % error), 'ms': float('%.3g' % np.median(times))}))
