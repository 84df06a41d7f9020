"""The other side of every row: numpy, scipy and HiGHS on the same input, compared and timed.

Reads what `race` prints; prints one line a row: what, ours, theirs, ratio.
"""

import json
import sys
import time

import numpy as np
from scipy.optimize import LinearConstraint, brentq, milp

import hot_hub


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


def circles_at_once(_, sweeps):
    t = np.array([sweep["angles"] for sweep in sweeps])
    readings = np.array([sweep["readings"] for sweep in sweeps])

    def work():
        matrix = np.stack([np.ones_like(t), np.cos(t), np.sin(t)], axis=2)
        turned = matrix.transpose(0, 2, 1)
        covariance = np.linalg.inv(turned @ matrix)
        return (covariance @ (turned @ readings[:, :, None]))[:, 1:, 0]

    return "numpy inv, all at once", work


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


def trains(given, every):
    """The least worst ratio in height, whole shims and renewed packs, and sideways; moves in mm."""
    stock, (offset, slope) = np.array(given["stock"]) * 1e3, given["limits"]
    count = len(stock)

    def ratios(train, way, on, width):
        """Rows |ratio| - worst <= 0; `on(machine, foot)` is the row of a move at a foot."""
        rows, limits = [], []
        for k, x in enumerate(train["couplings"]):
            for constant, limit, slopes in (
                (train["offsets"][k][way], offset, False),
                (train["slopes"][k][way], slope, True),
            ):
                row = np.zeros(width)
                for machine, sign in ((k + 1, 1), (k, -1)):
                    if machine == train["held"]:
                        continue
                    first, last = train["feet"][machine]
                    share = (x - first) / (last - first)
                    parts = np.array([-1, 1]) / (last - first) if slopes else (1 - share, share)
                    for foot in (0, 1):
                        row += sign * parts[foot] * 1e-3 / limit * on(machine, foot)
                for turned in (1, -1):
                    rows.append(turned * row)
                    rows[-1][-1] -= 1
                    limits.append(-turned * constant / limit)
        return rows, limits

    def upright(train):
        feet = [(m, f) for m in range(5) if m != train["held"] for f in (0, 1)]
        width = len(feet) * (count + 1) + 1

        def on(machine, foot):
            row, at = np.zeros(width), feet.index((machine, foot)) * (count + 1)
            row[at : at + count] = stock
            row[at + count] = -1e3 * train["shims"][machine][foot]
            return row

        rows, limits = ratios(train, 0, on, width)
        for k in range(len(feet)):
            row = np.zeros(width)
            row[k * (count + 1) : k * (count + 1) + count] = 1
            rows.append(row)
            limits.append(given["most"])
        most = np.append(np.tile(np.append(np.full(count, given["most"]), 1), len(feet)), np.inf)
        cost = np.append(np.zeros(width - 1), 1.0)
        options = {"mip_rel_gap": 1e-7, "time_limit": 20.0}
        found = milp(cost, constraints=LinearConstraint(np.array(rows), -np.inf, limits),
                     bounds=(0, most), integrality=np.append(np.ones(width - 1), 0), options=options)
        return found.fun, found.mip_gap

    def aside(train):
        width, room = 11, 1e3 * train["room"]
        on = lambda machine, foot: np.eye(width)[2 * machine + foot]
        rows, limits = ratios(train, 1, on, width)
        least, most = np.full(width, -room), np.full(width, room)
        least[-1], most[-1] = 0, np.inf
        cost = np.append(np.zeros(width - 1), 1.0)
        return milp(cost, constraints=LinearConstraint(np.array(rows), -np.inf, limits),
                    bounds=(least, most)).fun

    def one(train):
        worst, gap = upright(train)
        return worst, aside(train), gap

    return "HiGHS, one by one, 20 s at most", lambda: [one(train) for train in every]


def drawn(given, line_up, count, rng):
    """Every input of a line-up drawn by itself: readings, sags, places, growths."""
    spread, place, sag, grown = np.array(given["spreads"]) / 2
    found, width = [], given["division"]
    for sweep, x, sign in zip(line_up["rims"], given["planes"], (1, -1)):
        t = np.array(sweep["angles"])
        fit = np.linalg.pinv(np.column_stack([np.ones_like(t), np.cos(t), np.sin(t)]))[1:]
        readings = rng.random((len(t), count))
        readings -= 0.5
        readings *= width
        noise = rng.standard_normal((len(t), count))
        noise *= spread
        readings += noise
        readings += np.array(sweep["readings"])[:, None]
        up, right = fit @ readings
        up += sag * rng.standard_normal(count)
        found.append((sign * up, sign * right, x + place * rng.standard_normal(count)))
    growth = [
        [grown * rng.standard_normal(count) + each for each in machine] for machine in line_up["growth"]
    ]
    return found, growth


def summed(given, line_up, count, rng):
    """The same with what is normal and adds up drawn as one, as the program does."""
    spread, place, sag, grown = np.array(given["spreads"]) / 2
    found = []
    for sweep, x, sign in zip(line_up["rims"], given["planes"], (1, -1)):
        t = np.array(sweep["angles"])
        fit = np.linalg.pinv(np.column_stack([np.ones_like(t), np.cos(t), np.sin(t)]))[1:]
        readings = rng.random((len(t), count))
        readings -= 0.5
        up, right = (fit * given["division"]) @ readings
        middle = fit @ np.array(sweep["readings"])
        # A full turn: cosine and sine are not correlated.
        widths = np.sqrt(np.sum(fit**2, axis=1)) * spread
        up += np.hypot(widths[0], sag) * rng.standard_normal(count) + middle[0]
        right += widths[1] * rng.standard_normal(count) + middle[1]
        found.append((sign * up, sign * right, x + place * rng.standard_normal(count)))
    return found, None


def judged(given, found, lines):
    """Chance that all is inside, standard deviations of offset and slope upwards over their limits."""
    (up1, right1, x1), (up2, right2, x2) = found
    middle = sum(given["planes"]) / 2
    reach, arm = 1 / (x1 - x2), middle - x2
    climb, bear = (up1 - up2) * reach, (right1 - right2) * reach
    up, right = up2 + arm * climb, right2 + arm * bear
    up += lines[0]
    climb += lines[1]
    offset, slope = given["limits"]
    inside = (np.abs(up) <= offset) & (np.abs(climb) <= slope)
    inside &= (np.abs(right) <= offset) & (np.abs(bear) <= slope)
    return np.mean(inside), np.std(up) / offset, np.std(climb) / slope


def grown_lines(given, growth, middle):
    """Offset and slope that the driven grows more than the driver."""
    lines = [0.0, 0.0]
    for (first, last), (low, high), sign in zip(given["feet"], growth, (-1, 1)):
        slope = (high - low) / (last - first)
        lines[0] = lines[0] + sign * (low + slope * (middle - first))
        lines[1] = lines[1] + sign * slope
    return lines


def chances(given, line_ups):
    rng, middle = np.random.Generator(np.random.SFC64(1)), sum(given["planes"]) / 2

    def one(line_up):
        found, growth = drawn(given, line_up, given["trials"], rng)
        return judged(given, found, grown_lines(given, growth, middle))

    return "numpy, every input drawn", lambda: [one(line_up) for line_up in line_ups]


def chances_summed(given, line_ups):
    rng, middle = np.random.Generator(np.random.SFC64(1)), sum(given["planes"]) / 2
    # What one metre at each foot adds to offset and slope.
    on = []
    for machine in (0, 1):
        for foot in (0, 1):
            growth = np.zeros((2, 2))
            growth[machine, foot] = 1
            on.append(grown_lines(given, growth, middle))
    on = np.array(on)
    factor = np.linalg.cholesky(on.T @ on * (given["spreads"][3] / 2) ** 2)

    def one(line_up):
        found, _ = summed(given, line_up, given["trials"], rng)
        mean = grown_lines(given, line_up["growth"], middle)
        lines = factor @ rng.standard_normal((2, given["trials"]))
        lines += np.array(mean)[:, None]
        return judged(given, found, lines)

    return "numpy, normal errors drawn as one", lambda: [one(line_up) for line_up in line_ups]


# Relative to the largest: rounding for closed forms, the roots' tolerance for brentq, milp's gap.
ROWS = [
    [(torques, 1e-9), (torques_apart, 1e-9)],
    [(windows, 1e-5)],
    [(circles, 1e-9), (circles_at_once, 1e-9)],
    [(positions, 1e-9)],
    [(packs, 1e-5)],
    [(trains, 1e-4)],
    # Two runs of a million trials differ by √2/2000 at most at one standard uncertainty.
    [(chances, 3e-3), (chances_summed, 3e-3)],
]


def compare(given, row, peer, tolerance):
    """Prints one line; false when the two do not find the same."""
    beside, work = peer(given, row["inputs"])
    theirs, found = timed(1 if peer is trains else given["times"], work)
    ours, count = row["seconds"], len(row["inputs"])
    mine, other = np.array(row["found"], float), np.array(found, float)
    # A pack that fits leaves nothing to be relative to: the thickest of them instead.
    scale = 6e-3 if peer is packs else np.abs(mine).max()
    if peer is trains:
        # Both state how far they may be from the best.
        print(f"  gaps left: ours {mine[:, 2].max():.2g}, HiGHS {other[:, 2].max():.2g}")
        print("  worst ratios in height: ours", mine[:, 0], "HiGHS", other[:, 0])
        loose = mine[:, 2] + other[:, 2] * np.abs(other[:, 0]) > 1e-6
        mine, other = mine[~loose, :2], other[~loose, :2]
    agree = np.allclose(mine, other, rtol=0, atol=tolerance * scale)
    remark = "" if agree else f"  DIFFER by {np.abs(mine - other).max():.3g}"
    apiece = [f"{1e6 * seconds / count:.3g} µs" for seconds in (ours, theirs)]
    times = f"{apiece[0]:>10} {apiece[1]:>12} {theirs / ours:>8.2g}"
    print(f"{row['what']:<46} {count:>6} {times}  {beside}{remark}", flush=True)
    return agree


def alone(rows):
    """Rows with no library beside them."""
    for row in rows:
        apiece = row["seconds"] / row["cases"]
        print(f"{row['what']:<46} {row['cases']:>6} {1e6 * apiece:>7.4g} µs  {1 / apiece:>9.0f} a second")


def heat(rows):
    """Hot hubs: how far from the finest answer, and the large one in three ways."""
    *ordinary, large = rows
    print(f"{'hot hub until first contact':<46} {'nodes':>6} {'steps':>6} {'ms':>8}  contact")
    finest = {row["hub"]: row["contact"] for row in ordinary}
    for row in rows:
        off = 100 * (row["contact"] / finest.get(row["hub"], row["contact"]) - 1)
        print(f"{row['what']:<46} {row['nodes']:>6} {row['steps']:>6} {1e3 * row['seconds']:>8.4g}"
              f"  {row['contact']:.3f} s, {off:+.2f} % from the finest")
    agree = []
    for name, contact, unknowns, seconds in hot_hub.raced(large):
        off = abs(contact / large["contact"] - 1) if contact else np.inf
        agree.append(off < 0.01)
        print(f"  {name:<44} {unknowns:>6} {large['steps']:>6} {1e3 * seconds:>8.4g}  {contact} s,"
              f" ratio {seconds / large['seconds']:.2g}{'' if agree[-1] else '  DIFFER'}", flush=True)
    return agree


def main():
    run = json.load(sys.stdin)
    print(f"{'what':<46} {'cases':>6} {'ours':>10} {'peer':>12} {'ratio':>8}  peer")
    agree = [
        compare(run["given"], row, *peer)
        for row, peers in zip(run["rows"], ROWS, strict=True)
        for peer in peers
    ]
    alone(run["alone"])
    agree += heat(run["heat"])
    print("times are for one case, best of several runs; ratio above 1: ours is faster")
    sys.exit(0 if all(agree) else "bench/run: the two sides differ")


if __name__ == "__main__":
    main()
