"""The other side of every row: numpy and scipy on the same input, compared and timed.

Reads what `race` prints; prints one line a row: what, ours, theirs, ratio.
"""

import json
import sys
import time

import numpy as np
from scipy.optimize import LinearConstraint, brentq, milp


def timed(times, work):
    """The best of several runs, and what came out."""
    best = np.inf
    for _ in range(times):
        start = time.perf_counter()
        found = work()
        best = min(best, time.perf_counter() - start)
    return best, found


def columns(hubs, *names):
    return [np.array([hub[name] for hub in hubs]) for name in names]


def pressing(given, joint, outside, length, interference, speed):
    """All that presses on slices, Lamé with turning; works on numbers and on arrays."""
    young, poisson, density = given["young"], given["poisson"], given["density"]
    turn = density * speed**2 * joint / (16 * young)
    left = interference - turn * (3 + poisson) * outside**2
    give = (outside**2 + joint**2) / (outside**2 - joint**2) + 1
    return np.maximum(left, 0) * young / (joint * give) * np.pi * joint * length


def torques(given, hubs):
    names = ("joint", "interference", "speed", "outside", "barrel", "flange", "flange_length")
    joint, i, speed, outside, barrel, flange, part = columns(hubs, *names)

    def work():
        force = pressing(given, joint, outside, barrel, i, speed)
        force = force + pressing(given, joint, flange, part, i, speed)
        return given["friction"] * force * joint / 2

    return "numpy, all hubs at once", work


def torques_apart(given, hubs):
    def one(hub):
        d, i, speed = hub["joint"], hub["interference"], hub["speed"]
        force = pressing(given, d, hub["outside"], hub["barrel"], i, speed)
        force += pressing(given, d, hub["flange"], hub["flange_length"], i, speed)
        return given["friction"] * force * d / 2

    return "numpy, one by one", lambda: [one(hub) for hub in hubs]


def windows(given, hubs):
    def one(hub):
        d, parts = hub["joint"], [(hub["outside"], hub["barrel"]), (hub["flange"], hub["flange_length"])]
        force = lambda i: sum(pressing(given, d, outside, length, i, 0.0) for outside, length in parts)
        holds = lambda i: given["friction"] * force(i) * d / 2 - 1.5 * hub["torque"]

        def stress(i):
            shapes = [(outside**2 + d**2) / (outside**2 - d**2) for outside, _ in parts]
            pressures = [i * given["young"] / (d * (shape + 1)) for shape in shapes]
            bores = [p * np.sqrt(shape**2 + shape + 1) for p, shape in zip(pressures, shapes)]
            return max(bores) - given["allowed"]

        return [brentq(end, 0, 0.02 * d, xtol=1e-12) for end in (holds, stress)]

    return "scipy brentq, one by one", lambda: [one(hub) for hub in hubs]


def circles(_, sweeps):
    def one(sweep):
        t = np.array(sweep["angles"])
        matrix = np.column_stack([np.ones_like(t), np.cos(t), np.sin(t)])
        found, *_ = np.linalg.lstsq(matrix, np.array(sweep["readings"]), rcond=None)
        # The program gives the covariance with it.
        np.linalg.inv(matrix.T @ matrix)
        return found[1:]

    return "numpy lstsq and inv, one by one", lambda: [one(sweep) for sweep in sweeps]


def positions(given, pairs):
    middle = sum(given["planes"]) / 2

    def one(pair):
        rows, values = [], []
        for k, (sign, x, sweep) in enumerate(zip((1, -1), given["planes"], pair)):
            t, arm = np.array(sweep["angles"]), x - middle
            cos, sin, nothing = sign * np.cos(t), sign * np.sin(t), np.zeros_like(t)
            own = [nothing + (k == 0), nothing + (k == 1)]
            rows.append(np.column_stack([*own, cos, arm * cos, sin, arm * sin]))
            values.append(sweep["readings"])
        matrix = np.concatenate(rows)
        found, *_ = np.linalg.lstsq(matrix, np.concatenate(values), rcond=None)
        np.linalg.inv(matrix.T @ matrix)
        return found[2:]

    return "numpy lstsq and inv, one by one", lambda: [one(pair) for pair in pairs]


def packs(given, thicknesses):
    stock = np.array(given["stock"]) * 1e3
    count = len(stock)
    cost = np.append(np.zeros(count), 1.0)
    sums = np.vstack([np.append(stock, -1.0), np.append(stock, 1.0), np.append(np.ones(count), 0.0)])
    whole = np.append(np.ones(count), 0)

    def one(wanted):
        bounds = LinearConstraint(sums, [-np.inf, wanted, -np.inf], [wanted, np.inf, 5])
        return milp(cost, constraints=bounds, integrality=whole).fun / 1e3

    return "scipy milp, one by one", lambda: [one(wanted * 1e3) for wanted in thicknesses]


# Relative to the largest: rounding for closed forms, the roots' tolerance for brentq, milp's gap.
ROWS = [
    [(torques, 1e-9), (torques_apart, 1e-9)],
    [(windows, 1e-5)],
    [(circles, 1e-9)],
    [(positions, 1e-9)],
    [(packs, 1e-5)],
]


def compare(given, row, peer, tolerance):
    """Prints one line; false when the two do not find the same."""
    beside, work = peer(given, row["inputs"])
    theirs, found = timed(given["times"], work)
    ours, count = row["seconds"], len(row["inputs"])
    mine, other = np.array(row["found"], float), np.array(found, float)
    # A pack that fits leaves nothing to be relative to: the thickest of them instead.
    scale = 6e-3 if peer is packs else np.abs(mine).max()
    agree = np.allclose(mine, other, rtol=0, atol=tolerance * scale)
    remark = "" if agree else f"  DIFFER by {np.abs(mine - other).max():.3g}"
    apiece = [f"{1e6 * seconds / count:.3g} µs" for seconds in (ours, theirs)]
    times = f"{apiece[0]:>10} {apiece[1]:>12} {theirs / ours:>8.2g}"
    print(f"{row['what']:<46} {count:>6} {times}  {beside}{remark}", flush=True)
    return agree


def main():
    run = json.load(sys.stdin)
    print(f"{'what':<46} {'cases':>6} {'ours':>10} {'peer':>12} {'ratio':>8}  peer")
    agree = [
        compare(run["given"], row, *peer)
        for row, peers in zip(run["rows"], ROWS, strict=True)
        for peer in peers
    ]
    print("times are for one case, best of several runs; ratio above 1: ours is faster")
    sys.exit(0 if all(agree) else "bench/run: the two sides differ")


if __name__ == "__main__":
    main()
