"""Common lines of trains of machines against scipy's linear programming, whole shims against HiGHS as
a mixed-integer program, and positions from random readings against the truth that made them."""

import numpy as np
import pytest
from scipy.optimize import LinearConstraint, linprog, milp

from asking import ask, metres

OFFSET_LIMIT, SLOPE_LIMIT = 5e-5, 5e-4
MILLI = 1e-3


def trains():
    """Trains of two to six machines, some held, with few shims, little room, and growth."""
    rng = np.random.default_rng(53)
    for count in (2, 2, 3, 3, 4, 5, 6, 6):
        starts = np.cumsum(rng.uniform(1.4, 2.0, count))
        feet = np.column_stack([starts, starts + rng.uniform(0.5, 0.9, count)])
        held = rng.random(count) < 0.3
        held[rng.integers(count)] = False
        yield {
            "feet": feet,
            "held": held,
            "couplings": (feet[:-1, 1] + feet[1:, 0]) / 2,
            "shims": rng.uniform(0, 4e-4, (count, 2)),
            "room": rng.uniform(0, 6e-4, (count, 2, 2)),
            "growth": rng.uniform(0, 3e-4, (count, 2)),
            "offset": rng.uniform(-4e-4, 4e-4, (count - 1, 2)),
            "slope": rng.uniform(-1e-3, 1e-3, (count - 1, 2)),
        }


def case(train):
    names = [f"machine {k + 1}" for k in range(len(train["held"]))]
    asked = {
        "reckon": "common-line",
        "machines": names,
        "held": [name for name, held in zip(names, train["held"]) if held],
        "feet": [metres(x) for x in train["feet"].ravel()],
        "shims": [metres(each) for each in train["shims"].ravel()],
        "room_right": [metres(each) for each in train["room"][:, :, 0].ravel()],
        "room_left": [metres(each) for each in train["room"][:, :, 1].ravel()],
        "growth": [metres(each) for each in train["growth"].ravel()],
        "couplings_at": [metres(x) for x in train["couplings"]],
        "offset_limit": metres(OFFSET_LIMIT),
        "slope_limit": f"{SLOPE_LIMIT!r} rad",
    }
    for way, name in enumerate(("up", "right")):
        asked[f"offsets_{name}"] = [metres(d, 1e-5) for d in train["offset"][:, way]]
        asked[f"slopes_{name}"] = [f"{float(q)!r} ± 1e-05 rad" for q in train["slope"][:, way]]
    if not asked["held"]:
        del asked["held"]
    return asked


def grown(train, machine, x):
    """Growth of a machine's line at x, and its slope."""
    (first, last), (low, high) = train["feet"][machine], train["growth"][machine]
    slope = (high - low) / (last - first)
    return low + slope * (x - first), slope


def least_ratio(train, way):
    """The least worst ratio: unknowns are each machine's moves at its two planes (mm), and the ratio."""
    count, feet = len(train["held"]), train["feet"]
    rows, limits = [], []
    for k, x in enumerate(train["couplings"]):
        offset, slope = train["offset"][k, way], train["slope"][k, way]
        if way == 0:
            (here, climb), (before, rise) = grown(train, k + 1, x), grown(train, k, x)
            offset, slope = offset + here - before, slope + climb - rise
        for constant, limit, of in ((offset, OFFSET_LIMIT, "offset"), (slope, SLOPE_LIMIT, "slope")):
            row = np.zeros(2 * count + 1)
            for machine, sign in ((k + 1, 1), (k, -1)):
                first, last = feet[machine]
                share = (x - first) / (last - first)
                on = (1 - share, share) if of == "offset" else np.array([-1, 1]) / (last - first)
                row[2 * machine : 2 * machine + 2] = sign * np.array(on) * MILLI / limit
            for turned in (1, -1):
                rows.append(turned * row)
                rows[-1][-1] = -1
                limits.append(-turned * constant / limit)
    bounds = []
    for machine in range(count):
        for foot in range(2):
            low, high = -train["shims"][machine, foot] / MILLI, None
            if way == 1:
                high, low = train["room"][machine, foot] / MILLI * [1, -1]
            bounds.append((0, 0) if train["held"][machine] else (low, high))
    cost = np.append(np.zeros(2 * count), 1.0)
    found = linprog(cost, A_ub=np.array(rows), b_ub=limits, bounds=[*bounds, (0, None)])
    assert found.status == 0
    return found.fun


def test_the_least_worst_ratio():
    """scipy's linprog in both planes. Both solvers work to about 1e-7 of their scaled numbers; the
    program leaves 1e-6 of room above the least ratio to choose among moves."""
    every = list(trains())
    answers = ask([case(train) for train in every])
    bound = 0
    for answer, train in zip(answers, every):
        for way, name in enumerate(("worst_ratio_up", "worst_ratio_right")):
            least = least_ratio(train, way)
            assert answer[name] == pytest.approx(least, abs=1e-5)
            bound += least > 0.01
        moves = np.array(answer["move_up"]).reshape(-1, 2)
        assert np.all(moves > -train["shims"] - 1e-9)
        assert np.all(moves[train["held"]] == 0)
    # The comparison is about trains that cannot be lined up wholly; some must be such.
    assert bound > 4


STOCK = np.array([0.05, 0.1, 0.2, 0.5]) * MILLI
MOST = 4


def whole_least_ratio(train):
    """The least worst ratio upwards in whole shims laid on the feet: HiGHS chooses how many of each."""
    count, feet, sizes = len(train["held"]), train["feet"], len(STOCK)
    width = 2 * count * sizes + 1
    rows, limits = [], []
    for k, x in enumerate(train["couplings"]):
        (here, climb), (before, rise) = grown(train, k + 1, x), grown(train, k, x)
        offset = train["offset"][k, 0] + here - before
        slope = train["slope"][k, 0] + climb - rise
        for constant, limit, of in ((offset, OFFSET_LIMIT, "offset"), (slope, SLOPE_LIMIT, "slope")):
            row = np.zeros(width)
            for machine, sign in ((k + 1, 1), (k, -1)):
                first, last = feet[machine]
                share = (x - first) / (last - first)
                on = (1 - share, share) if of == "offset" else np.array([-1, 1]) / (last - first)
                for foot in range(2):
                    start = (2 * machine + foot) * sizes
                    row[start : start + sizes] = sign * on[foot] * STOCK / limit
            for turned in (1, -1):
                rows.append(turned * row)
                rows[-1][-1] = -1
                limits.append(-turned * constant / limit)
    for plane in range(2 * count):
        row = np.zeros(width)
        row[plane * sizes : (plane + 1) * sizes] = 1
        rows.append(row)
        limits.append(0 if train["held"][plane // 2] else MOST)
    cost = np.zeros(width)
    cost[-1] = 1
    whole = np.append(np.ones(width - 1), 0)
    bounds = LinearConstraint(np.array(rows), -np.inf, limits)
    found = milp(cost, constraints=bounds, integrality=whole, options={"mip_rel_gap": 1e-9})
    assert found.status == 0
    return found.fun


def test_whole_shims():
    """HiGHS as MILP finds the same least worst ratio where the search says that it is proven, and one
    within the gap that it states elsewhere; nothing lies under the feet, so shims only go in."""
    every = [train for train in trains() if len(train["held"]) <= 4]
    cases = []
    for train in every:
        train["shims"] = np.zeros_like(train["shims"])
        asked = case(train) | {"reckon": "common-line-whole", "most": str(MOST)}
        cases.append(asked | {"stock": [metres(size) for size in STOCK]})
    proven = 0
    for answer, train in zip(ask(cases), every):
        least = whole_least_ratio(train)
        if answer["proof"] == "nothing better can be made of the stock":
            assert answer["worst_ratio_up"] == pytest.approx(least, abs=1e-5)
            proven += 1
        else:
            # The gap is printed to three decimals.
            gap = float(answer["proof"].split()[-4])
            assert -1e-5 < answer["worst_ratio_up"] - least < gap + 0.0005
    assert proven >= 4


def test_positions_scatter_as_they_say():
    """400 trains of three read with Gaussian scatter of a stated ±: off the truth by the covariance that
    comes back, chi-square per degree of freedom 1 within three standard errors. Where the sweeps
    scatter more than stated the program widens its covariance; that is taken out again, since it is
    the stated scatter that made the readings."""
    rng = np.random.default_rng(1955)
    sigma, places, planes = 4e-6, (0.0, 1.05), ((0.06, -0.06), (1.11, 0.99))
    clocks = np.arange(0, 360, 30)
    cos, sin = np.cos(np.radians(clocks)), np.sin(np.radians(clocks))
    cases, truths = [], []
    for _ in range(400):
        truth = [(rng.uniform(-3e-4, 3e-4, 2), rng.uniform(-1e-3, 1e-3, 2)) for _ in places]
        readings = []
        for (offset, slope), at, ends in zip(truth, places, planes):
            for sign, x in zip((1, -1), ends):
                up, right = sign * (offset + slope * (x - at))
                read = up * cos + right * sin + rng.normal(0, sigma, len(clocks))
                readings.extend(read)
        truths.append(truth)
        cases.append({
            "reckon": "train",
            "machines": ["motor", "gearbox", "pump"],
            "held": ["gearbox"],
            "feet": [metres(x) for x in (-0.9, -0.3, 0.3, 0.8, 1.3, 1.9)],
            "couplings_at": [metres(x) for x in places],
            "dial_at_coupling": ["1", "1", "2", "2"],
            "dial_rides_on": ["driver", "driven"] * 2,
            "dial_reads": ["rim"] * 4,
            "dial_at": [metres(x) for ends in planes for x in ends],
            "readings": [metres(reading) for reading in readings],
            "positions": [f"{degrees}°" for degrees in clocks],
            "division": metres(1e-10),
            "spread": metres(2 * sigma),
            "offset_limits": [metres(OFFSET_LIMIT)],
            "slope_limits": [f"{SLOPE_LIMIT!r} rad"],
        })
    squares, plain = [], np.linalg.inv(np.diag([12.0, 6.0, 6.0]))[1, 1] * sigma**2
    for answer, truth in zip(ask(cases), truths):
        covariances = np.array(answer["covariance"]).reshape(-1, 4, 4)
        for k, (offset, slope) in enumerate(truth):
            names = ("offset_up", "offset_right", "slope_up", "slope_right")
            off = np.array([answer[name][k] for name in names]) - np.concatenate([offset, slope])
            # A mean of two rims: half the variance of one; wider where the sweeps scattered more.
            widened = covariances[k][0, 0] / (plain / 2)
            assert widened > 1 - 1e-6
            squares.append(off @ np.linalg.inv(covariances[k] / widened) @ off)
    freedom = 4 * len(squares)
    assert abs(np.sum(squares) / freedom - 1) < 3 * np.sqrt(2 / freedom)
