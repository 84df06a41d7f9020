"""Measured sizes and uncertainties against numpy's random numbers and scipy's distributions."""

import itertools

import numpy as np
import pytest
from scipy import stats

from asking import ask, metres

DRAWS = 400_000
# The standard deviation of a standard deviation from N draws is 1/√(2N): 0.11 % here. Five of them.
OF_A_SPREAD = 5 / np.sqrt(2 * DRAWS)


def test_mean_and_spread_of_many_readings():
    """Readings, temperatures, expansions and a setting ring drawn at random, and the mean of each set.

    The ± of the program is twice the standard deviation of those means. To first order: the terms of
    second order, expansion times temperature, are below 1e-4 of it.
    """
    rng = np.random.default_rng(20_240_312)
    readings = 0.08 + np.array([2e-6, -3e-6, 1e-6, 4e-6, 0.0])
    spread, u_temperature, u_expansion, u_ring = 3e-6, 0.5, 0.5e-6, 1e-6
    part, instrument, of_part, of_instrument = 31.0, 24.0, 11.5e-6, 9.5e-6
    ring, on_ring = 0.079995, 0.079998
    (answer,) = ask([{
        "reckon": "size",
        "readings": [metres(reading) for reading in readings],
        "spread": metres(2 * spread),
        "part_temperature": f"{part} degC",
        "instrument_temperature": f"{instrument} degC",
        "temperature_spread": f"{2 * u_temperature} K",
        "part_expansion": "11.5 µm/m/K",
        "instrument_expansion": "9.5 µm/m/K",
        "expansion_spread": "1.0 µm/m/K",
        "standard": metres(ring, 2 * u_ring),
        "read_on_standard": metres(on_ring),
    }])
    shape = (DRAWS, len(readings))
    read = readings + spread * rng.normal(size=shape)
    t, u = (each - 20 + u_temperature * rng.normal(size=(DRAWS, 1)) for each in (instrument, part))
    a, b = (each + u_expansion * rng.normal(size=(DRAWS, 1)) for each in (of_instrument, of_part))
    true_ring = ring + u_ring * rng.normal(size=(DRAWS, 1))
    means = ((read + true_ring - on_ring) * (1 + a * t) / (1 + b * u)).mean(axis=1)
    assert answer["mean"] == pytest.approx(means.mean(), abs=5 * means.std() / np.sqrt(DRAWS) + 1e-10)
    assert answer.plus_minus("mean") == pytest.approx(2 * means.std(), rel=OF_A_SPREAD + 1e-3)


def test_taper_bow_and_roundness():
    """numpy's least squares on readings at five stations in three directions."""
    rng = np.random.default_rng(5)
    stations = np.repeat(np.linspace(0.01, 0.09, 5), 3)
    degrees = np.tile([0.0, 60.0, 120.0], 5)
    sizes = 0.08 + 2e-4 * stations + 4e-6 * np.cos(2 * np.radians(degrees - 20))
    sizes += 1e-6 * rng.normal(size=15)
    (answer,) = ask([{
        "reckon": "size-form",
        "readings": [metres(size) for size in sizes],
        "stations": [metres(station) for station in stations],
        "directions": [f"{degree} deg" for degree in degrees],
        "spread": "0.002 mm",
    }])
    blocks = np.column_stack([degrees == degree for degree in (0.0, 60.0, 120.0)]).astype(float)
    taper, *_ = np.linalg.lstsq(np.column_stack([blocks, stations]), sizes, rcond=None)
    assert answer["taper"] == pytest.approx(taper[-1], rel=1e-7)
    assert answer["over_span"] == pytest.approx(taper[-1] * 0.08, rel=1e-7)
    centred = stations - stations.mean()
    bow, *_ = np.linalg.lstsq(np.column_stack([blocks, centred, centred**2]), sizes, rcond=None)
    # The parabola's middle over its ends: minus its curvature times the half span squared.
    assert answer["middle_over_ends"] == pytest.approx(-bow[-1] * 0.04**2, abs=1e-14)
    rows = np.column_stack([stations == station for station in stations[::3]]).astype(float)
    turn = 2 * np.radians(degrees)
    lobes, *_ = np.linalg.lstsq(np.column_stack([rows, np.cos(turn), np.sin(turn)]), sizes, rcond=None)
    assert answer["out_of_round"] == pytest.approx(2 * np.hypot(*lobes[-2:]), rel=1e-7)


def test_students_factor():
    """scipy's t at 97.5 %; the program halves its bracket to about 1e-15 of it."""
    freedoms = [1, 2, 3, 4, 5, 7, 9, 10, 16, 25, 50, 100, 400]
    answers = ask([{"reckon": "student-factor", "freedom": str(nu)} for nu in freedoms])
    np.testing.assert_allclose(
        [answer["factor"] for answer in answers], stats.t.ppf(0.975, freedoms), rtol=1e-9
    )


def test_parts_of_a_reading():
    """Root of squares, degrees of freedom by Welch and Satterthwaite, Student's factor by scipy."""
    for deviation, repeats, division in itertools.product((2e-6, 9e-6), (3, 6, 20), (1e-6, 1e-5)):
        (answer,) = ask([{
            "reckon": "reading-uncertainty",
            "division": metres(division),
            "bounds": [metres(3e-6)],
            "standard": [metres(1e-6)],
            "repeat_deviation": metres(deviation),
            "repeats": str(repeats),
        }])
        repeated = deviation / np.sqrt(repeats)
        u = np.sqrt(division**2 / 12 + 3e-6**2 / 3 + 1e-6**2 + repeated**2)
        freedom = u**4 / (repeated**4 / (repeats - 1))
        factor = max(2.0, stats.t.ppf(0.975, np.floor(min(freedom, 1000.0))))
        assert answer["standard"] == pytest.approx(u, rel=1e-12)
        assert answer["freedom"] == pytest.approx(freedom, rel=1e-9)
        assert answer["plus_minus"] == pytest.approx(factor * u, rel=1e-7)


def test_chance_of_lying_inside():
    """scipy's normal distribution; the program sums a series to double precision."""
    least, greatest = 0.080002, 0.080051
    values = np.linspace(0.07999, 0.08006, 15)
    cases = [
        {
            "reckon": "inside-limits",
            "value": metres(value, 8e-6),
            "least": metres(least),
            "greatest": metres(greatest),
        }
        for value in values
    ]
    found = [answer["likely"] for answer in ask(cases)]
    wanted = stats.norm.cdf(greatest, values, 4e-6) - stats.norm.cdf(least, values, 4e-6)
    np.testing.assert_allclose(found, wanted, atol=1e-9)


def test_feet_out_of_their_plane():
    """numpy's plane of least squares through six feet."""
    rng = np.random.default_rng(9)
    x, z = np.repeat([0.0, 0.7, 1.4], 2), np.tile([0.0, 0.5], 3)
    for _ in range(5):
        gaps = rng.uniform(0, 3e-4, 6)
        (answer,) = ask([{
            "reckon": "feet-out-of-plane",
            "x": [metres(each) for each in x],
            "z": [metres(each) for each in z],
            "gaps": [metres(each) for each in gaps],
        }])
        matrix = np.column_stack([np.ones(6), x, z])
        plane, *_ = np.linalg.lstsq(matrix, gaps, rcond=None)
        np.testing.assert_allclose(answer["out"], gaps - matrix @ plane, atol=1e-15)
