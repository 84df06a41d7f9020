"""Shim packs against every combination, moves against scipy's optimisers."""

from itertools import combinations_with_replacement

import numpy as np
import pytest
from scipy.optimize import LinearConstraint, milp, nnls

from asking import ask, metres

STOCKS = {
    "metric": [0.025, 0.05, 0.1, 0.2, 0.25, 0.4, 0.5, 0.7, 1.0, 2.0, 3.0],
    "odd": [0.07, 0.13, 0.29, 0.41, 0.83, 1.7],
}


def best(stock, wanted, most):
    """Least deviation, fewest shims, among every combination, in whole micrometres."""
    microns = [round(1000 * size) for size in stock]
    target = wanted * 1000
    packs = (pack for n in range(most + 1) for pack in combinations_with_replacement(microns, n))
    return min((abs(sum(pack) - target), len(pack)) for pack in packs)


@pytest.mark.parametrize("name", STOCKS)
def test_packs_by_every_combination(name):
    stock, rng = STOCKS[name], np.random.default_rng(23)
    for most in (3, 5):
        wanted = np.round(rng.uniform(0.02, 6.0, 12), 4)
        answers = ask([
            {
                "reckon": "shim-pack",
                "wanted": f"{thickness} mm",
                "stock": [f"{size} mm" for size in stock],
                "most": str(most),
            }
            for thickness in wanted
        ])
        for answer, thickness in zip(answers, wanted):
            deviation, count = best(stock, thickness, most)
            # Whole nanometres on one side, whole micrometres on the other: 1e-6 mm is rounding.
            assert abs(answer["deviation"]) * 1e6 == pytest.approx(deviation, abs=1e-3)
            assert len(answer["pack"]) == count
            assert sum(answer["pack"]) == pytest.approx(answer["total"], abs=1e-12)


def test_packs_by_integer_programming():
    """scipy's milp: least deviation of a sum of at most five shims."""
    stock = np.array(STOCKS["metric"])
    for wanted in (0.777, 1.234, 2.345, 4.56):
        count = len(stock)
        cost = np.append(np.zeros(count), 1.0)
        sums = np.vstack([np.append(stock, -1.0), np.append(stock, 1.0), np.append(np.ones(count), 0.0)])
        bounds = LinearConstraint(sums, [-np.inf, wanted, -np.inf], [wanted, np.inf, 5])
        found = milp(cost, constraints=bounds, integrality=np.append(np.ones(count), 0))
        (answer,) = ask([{"reckon": "shim-pack", "wanted": f"{wanted} mm"}])
        # milp stops at a gap of 1e-6 or so.
        assert abs(answer["deviation"]) * 1e3 == pytest.approx(found.fun, abs=1e-5)


def bounded(rng):
    """A machine that is high and askew, with little to take out under some feet."""
    offset, slope = rng.uniform(-3e-4, 3e-4), rng.uniform(-1e-3, 1e-3)
    feet = np.sort(rng.uniform(0.2, 1.2, rng.integers(2, 4)))
    shims = rng.uniform(0, 3e-4, len(feet))
    return offset, slope, feet, shims


def nearest(planes, heights):
    """The point nearest to the origin with planes·w ≥ heights, by scipy's nnls (Lawson and Hanson's LDP)."""
    system = np.vstack([planes.T, heights])
    multipliers, _ = nnls(system, np.array([0.0, 0.0, 1.0]))
    left = system @ multipliers - np.array([0.0, 0.0, 1.0])
    return -left[:2] / left[2]


def test_best_moves_within_the_room():
    """Least sum of squared ratios, no foot lower than its shims let it; both are exact but for rounding."""
    rng, limits = np.random.default_rng(31), (5e-5, 5e-4)
    givens = [bounded(rng) for _ in range(30)]
    answers = ask([
        {
            "reckon": "best-move",
            "moving": "driven",
            "at": ["0 m", "1 m"],
            "up": [metres(offset), metres(offset + slope)],
            "feet": [metres(x) for x in feet],
            "shims": [metres(each) for each in shims],
            "offset_limit": metres(limits[0]),
            "slope_limit": f"{limits[1]!r} rad",
        }
        for offset, slope, feet, shims in givens
    ])
    bound = 0
    for answer, (offset, slope, feet, shims) in zip(answers, givens):
        # The ratios left, w, put a foot so high above where it was; no lower than its shims allow.
        planes = np.column_stack([np.full(len(feet), limits[0]), limits[1] * feet])
        was = offset + slope * feet
        found = nearest(planes * 1e4, (was - shims) * 1e4)
        np.testing.assert_allclose(answer["move_up"], planes @ found - was, atol=1e-12)
        assert answer["worst_ratio"] == pytest.approx(np.abs(found).max(), abs=1e-8)
        bound += bool(answer["obstacles"])
    # The comparison is about feet that are bound; some of these must be.
    assert 5 < bound < 30
