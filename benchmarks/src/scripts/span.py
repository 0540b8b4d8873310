"""The span of the bare kernel with SciPy: one solve by fsolve, and a batch of Newton steps vectorised in NumPy.

Usage: python3 span.py. Prints the answers, to be compared with the Java programs, and the time of one solve.
"""

import time

import numpy as np
from scipy.optimize import fsolve

SPAN, WEIGHT, STIFFNESS = 30.0, 4.0, 5e6
LENGTH = SPAN * 1.002


def piece(h, v, s):
    a, b = v / h, (v + WEIGHT * s) / h
    x = h * s / STIFFNESS + h / WEIGHT * (np.arcsinh(b) - np.arcsinh(a))
    z = s / STIFFNESS * (v + WEIGHT * s / 2) + h / WEIGHT * (np.sqrt(1 + b * b) - np.sqrt(1 + a * a))
    return x, z


def misfit(t, load, left):
    x1, z1 = piece(t[0], t[1], left)
    x2, z2 = piece(t[0], t[1] + WEIGHT * left + load, LENGTH - left)
    return [x1 + x2 - SPAN, z1 + z2]


def start(load, share):
    sag = np.sqrt(0.75 * (LENGTH - SPAN) * SPAN / 2)
    return [(load / 4 + WEIGHT * SPAN / 8) * SPAN / sag, -load * (1 - share) - WEIGHT * LENGTH / 2]


def solve(load, share):
    return fsolve(misfit, start(load, share), args=(load, share * LENGTH), xtol=1e-12)


def batch(load, share):
    """Newton's method on all rows at once, with the tangent of the catenary."""
    left = share * LENGTH
    h, v = start(load, share)
    h = np.full_like(load, 1.0) * h
    for _ in range(40):
        x, z, xx, xz, zz = 0, 0, 0, 0, 0
        for v1, s in ((v, left), (v + WEIGHT * left + load, LENGTH - left)):
            v2 = v1 + WEIGHT * s
            t1, t2 = np.sqrt(h * h + v1 * v1), np.sqrt(h * h + v2 * v2)
            q = WEIGHT * s / (t1 + t2)
            a = np.log1p(2 * q / (1 - q)) / WEIGHT
            c = s / STIFFNESS
            b = (v2 / t2 - v1 / t1) / (WEIGHT * h * h)
            x, z = x + h * (a + c), z + s * (v1 + v2) * (1 / (t1 + t2) + 0.5 / STIFFNESS)
            xx, zz = xx + a - h * h * b + c, zz + h * h * b + c
            xz = xz + h / WEIGHT * (1 / t2 - 1 / t1)
        det = xx * zz - xz * xz
        dh = (zz * (SPAN - x) + xz * z) / det
        dv = (-xx * z - xz * (SPAN - x)) / det
        share_of_step = np.minimum(1, 0.8 * h / np.maximum(-dh, 1e-300))
        h, v = h + share_of_step * dh, v + share_of_step * dv
        if np.max((abs(dh) + abs(dv)) / (h + abs(v))) < 1e-12:
            break
    return h, v


def timed(what, count):
    best = np.inf
    for _ in range(7):
        begin = time.perf_counter()
        what()
        best = min(best, (time.perf_counter() - begin) / count)
    return best * 1e9


if __name__ == "__main__":
    h, v = solve(6000.0, 0.37)
    print(f"fsolve: H = {h:.6f} N, V = {v:.6f} N")
    rng = np.random.default_rng(7)
    load, share = 1000 + 9000 * rng.random(10_000), 0.1 + 0.8 * rng.random(10_000)
    load[0], share[0] = 6000.0, 0.37
    rows = batch(load, share)
    print(f"batch:  H = {rows[0][0]:.6f} N, V = {rows[1][0]:.6f} N")
    print(f"fsolve {timed(lambda: [solve(6000.0, 0.37) for _ in range(50)], 50):.0f} ns a solve")
    print(f"batch  {timed(lambda: batch(load, share), load.size):.0f} ns a solve")
