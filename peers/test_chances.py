"""Chances by trials against numpy doing the same trials its own way: every input drawn by itself, the
position by numpy's least squares or by geometry, a million times."""

import numpy as np

from asking import ask, metres

TRIALS = 1_000_000
CLOCKS = np.arange(0, 360, 45)
DIVISION, SPREAD, SAG = 1e-5, 1.2e-5, 8e-6
OFFSET_LIMIT, SLOPE_LIMIT = 5e-5, 5e-4
FEET = np.array([[-0.9, -0.3], [0.4, 1.1]])


def cases():
    """Two rims, places known to so much, growth known so, of which the last is bounds."""
    rng = np.random.default_rng(101)
    for place, grown, between in ((0, 2e-5, False), (3e-3, 3e-5, False), (1e-3, 6e-5, True)):
        yield {
            "planes": np.array([0.07, -0.05]) + rng.uniform(-0.01, 0.01, 2),
            "circles": rng.uniform(-3e-5, 3e-5, (2, 2)),
            "place": place,
            "growth": rng.uniform(0, 3e-5, (2, 2)),
            "grown": grown,
            "between": between,
        }


def sweeps(case):
    t = np.radians(CLOCKS)
    return [up * np.cos(t) + right * np.sin(t) for up, right in case["circles"]]


def asked(case):
    return {
        "reckon": "line-up-chance",
        "dial_rides_on": ["driver", "driven"],
        "dial_reads": ["rim", "rim"],
        "dial_at": [metres(x, case["place"] or None) for x in case["planes"]],
        "dial_sag": [metres(0, SAG)] * 2,
        "readings": [metres(reading) for sweep in sweeps(case) for reading in sweep],
        "positions": [f"{degrees}°" for degrees in CLOCKS],
        "division": metres(DIVISION),
        "spread": metres(SPREAD),
        "growth_at": [metres(x) for x in FEET.ravel()],
        "growth": [metres(each, case["grown"]) for each in case["growth"].ravel()],
        "growth_is": "between" if case["between"] else "normal",
        "offset_limits": [metres(OFFSET_LIMIT)],
        "slope_limits": [f"{SLOPE_LIMIT!r} rad"],
        "trials": str(TRIALS),
    }


def tried(case, rng):
    """Offset up and right, slope up and right, running, for every trial."""
    t = np.radians(CLOCKS)
    fit = np.linalg.pinv(np.column_stack([np.ones_like(t), np.cos(t), np.sin(t)]))
    seen = []
    for sweep, x, sign in zip(sweeps(case), case["planes"], (1, -1)):
        readings = sweep[:, None] + rng.uniform(-DIVISION / 2, DIVISION / 2, (len(t), TRIALS))
        readings += rng.normal(0, SPREAD / 2, (len(t), TRIALS))
        _, up, right = fit @ readings
        up = up - rng.normal(0, SAG / 2, TRIALS)
        seen.append((sign * up, sign * right, x + rng.normal(0, case["place"] / 2, TRIALS)))
    (up1, right1, x1), (up2, right2, x2) = seen
    climb, bear = (up1 - up2) / (x1 - x2), (right1 - right2) / (x1 - x2)
    up, right = up2 - climb * x2, right2 - bear * x2
    for (first, last), mean, sign in zip(FEET, case["growth"], (-1, 1)):
        half = case["grown"]
        draw = rng.uniform(-half, half, (2, TRIALS)) if case["between"] else rng.normal(0, half / 2, (2, TRIALS))
        low, high = mean[:, None] + draw
        slope = (high - low) / (last - first)
        up = up + sign * (low - slope * first)
        climb = climb + sign * slope
    return up, right, climb, bear


def test_chances_and_spreads():
    """Both sides are counts of random trials: they agree within four standard deviations of their
    difference. Standard deviations of a million are good to 1/√(2n) each, quantiles to about 3/√n."""
    rng = np.random.Generator(np.random.SFC64(3))
    every = list(cases())
    chances = []
    for answer, case in zip(ask([asked(case) for case in every]), every):
        up, right, climb, bear = tried(case, rng)
        ratios = np.abs([up / OFFSET_LIMIT, climb / SLOPE_LIMIT, right / OFFSET_LIMIT, bear / SLOPE_LIMIT])
        agree = lambda found, share: abs(found - share) < 4 * np.sqrt(2 * max(share * (1 - share), 1e-6) / TRIALS)
        chance = np.mean(np.all(ratios <= 1, axis=0))
        chances.append(chance)
        assert agree(answer["chance"], chance)
        assert all(agree(found, share) for found, share in zip(answer["inside"], np.mean(ratios <= 1, axis=1)))
        wanted = [np.std(up), np.std(right), np.std(climb), np.std(bear)]
        found = [*answer["offset_deviation"], *answer["slope_deviation"]]
        np.testing.assert_allclose(found, wanted, rtol=4 / np.sqrt(TRIALS))
        found, halves = answer["offsets"], answer.plus_minus("offsets")
        for mean, half, trial in zip(found, halves, (up, right)):
            low, high = np.quantile(trial, [0.025, 0.975])
            assert abs(mean - np.mean(trial)) < 4 * np.sqrt(2 / TRIALS) * np.std(trial)
            assert abs(half - (high - low) / 2) < 4 * 3 / np.sqrt(TRIALS) * np.std(trial)
        assert abs(answer["worst_ratio"] - np.quantile(np.max(ratios, axis=0), 0.95)) < 0.01
        # What adding squares only bounds from below. Bounds as normal errors may go either way.
        if not case["between"]:
            assert answer["by_squares"] < chance + 0.003
    # Nothing would be compared where all were inside, or nothing.
    assert all(0.02 < chance < 0.98 for chance in chances)
