"""Bolts, keys and orders of tightening, written again in numpy over random cases."""

import numpy as np
import pytest

from asking import ask, metres

# The same arithmetic in double precision on both sides.
ROUNDING = 1e-9


def test_keys():
    rng = np.random.default_rng(41)
    cases, wanted = [], []
    for _ in range(40):
        shaft, torque = rng.uniform(0.02, 0.2), rng.uniform(10, 5e4)
        width = shaft * rng.uniform(0.2, 0.3)
        height, length = width * rng.uniform(0.6, 1.0), shaft * rng.uniform(1.0, 1.5)
        depth, ends = height * rng.uniform(0.45, 0.65), rng.integers(3)
        keys, friction = rng.choice([1.0, 1.5]), torque * rng.uniform(0, 0.9)
        key_yield, weakest = rng.uniform(2e8, 6e8), rng.uniform(2e8, 6e8)
        cases.append({
            "reckon": "key-load",
            "torque": f"{torque!r} N·m",
            "shaft": metres(shaft),
            "width": metres(width),
            "height": metres(height),
            "length": metres(length),
            "ends": ["square", "one round", "both round"][ends],
            "shaft_keyway": metres(depth),
            "keys": {1.0: "one", 1.5: "two"}[keys],
            "held_by_friction": f"{friction!r} N·m",
            "key_yield": f"{key_yield!r} Pa",
            "weakest_yield": f"{weakest!r} Pa",
            "rule": "distortion energy",
        })
        straight = length - ends * width / 2
        force = 2 * (torque - friction) / (shaft * keys)
        shear = force / (width * straight)
        bearing = force / (min(depth, height - depth) * straight)
        wanted.append((shear, bearing, key_yield / np.sqrt(3) / shear, weakest / bearing))
    for answer, (shear, bearing, *safeties) in zip(ask(cases), wanted):
        assert answer["shear"] == pytest.approx(shear, rel=ROUNDING)
        assert answer["bearing"] == pytest.approx(bearing, rel=ROUNDING)
        # Distortion energy is 0.577 in books of three digits, 1/√3 here.
        assert answer["shear_safety"] == pytest.approx(safeties[0], rel=1e-3)
        assert answer["bearing_safety"] == pytest.approx(safeties[1], rel=ROUNDING)


def test_flanges():
    rng = np.random.default_rng(43)
    for _ in range(5):
        bolts, circle = int(rng.integers(4, 24)), rng.uniform(0.1, 0.6)
        preload, friction = rng.uniform(1e4, 2e5), rng.uniform(0.1, 0.2)
        shank, shear = rng.uniform(0.01, 0.03), rng.uniform(4e7, 1.2e8)
        held, borne = ask([
            {
                "reckon": "flange-friction",
                "friction": repr(friction),
                "bolts": str(bolts),
                "preload": f"{preload!r} N",
                "bolt_circle": metres(circle),
            },
            {
                "reckon": "fitted-bolts",
                "bolts": str(bolts),
                "shank": metres(shank),
                "shear": f"{shear!r} Pa",
                "bolt_circle": metres(circle),
            },
        ])
        # Every bolt at its own angle: the couples of all add up.
        angles = 2 * np.pi * np.arange(bolts) / bolts
        places = circle / 2 * np.array([np.cos(angles), np.sin(angles)])
        around = np.array([-np.sin(angles), np.cos(angles)])
        arms = places[0] * around[1] - places[1] * around[0]
        assert held["torque"] == pytest.approx(np.sum(friction * preload * arms), rel=ROUNDING)
        cut = np.pi / 4 * shank**2 * shear
        assert borne["torque"] == pytest.approx(np.sum(cut * arms), rel=ROUNDING)


def test_orders_cross_the_circle():
    """Each bolt once; with an even number opposite pairs; no third of the circle waits for its first."""
    counts = [*range(2, 41), 64, 96]
    for count, answer in zip(
        counts, ask([{"reckon": "tightening-order", "bolts": str(count)} for count in counts])
    ):
        order = np.array(answer["order"], dtype=int)
        assert sorted(order) == list(range(1, count + 1))
        if count % 2 == 0:
            assert np.all(np.abs(order[0::2] - order[1::2]) == count // 2), count
        if count >= 8:
            first = np.sort(order[:4]) - 1
            gaps = np.diff(np.append(first, first[0] + count))
            assert gaps.max() <= np.ceil(count / 4) + 1, count
