"""Common lines of trains of machines against scipy's linear programming."""

import numpy as np
import pytest
from scipy.optimize import linprog

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
