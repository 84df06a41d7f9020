"""Sweeps of dials and positions of machines against numpy's least squares."""

import numpy as np
import pytest
from scipy import stats

from asking import ask, metres

DIVISION = 1e-5
# A division is a rectangle: its standard deviation is its width over √12 (JCGM 100:2008, 4.3.7).
SIGMA = DIVISION / np.sqrt(12)
# Both sides are double precision on well-conditioned sweeps; what is left is rounding.
ROUNDING = 1e-9


def sweeps():
    """Sweeps at odd positions: full turns, arcs of half a turn and more, repeats."""
    rng = np.random.default_rng(20_240_311)
    for count in (3, 4, 5, 8, 12, 17):
        for span in (180, 270, 360):
            degrees = np.sort(rng.uniform(0, span, count)) + rng.uniform(0, 360)
            degrees[-1] = degrees[0] if count > 4 else degrees[-1]
            c, a, b = rng.uniform(-4e-4, 4e-4, 3)
            t = np.radians(degrees)
            readings = c + a * np.cos(t) + b * np.sin(t) + rng.normal(0, 4e-6, count)
            yield degrees % 360, readings


def case(degrees, readings):
    return {
        "reckon": "dial-sweep",
        "readings": [metres(reading) for reading in readings],
        "positions": [f"{float(degree)!r}°" for degree in degrees],
        "division": metres(DIVISION),
    }


def design(degrees):
    t = np.radians(degrees)
    return np.column_stack([np.ones_like(t), np.cos(t), np.sin(t)])


def test_circles_and_their_covariance():
    """numpy.linalg.lstsq finds the circle; (AᵀA)⁻¹σ² is its covariance."""
    every = list(sweeps())
    for answer, (degrees, readings) in zip(ask([case(*sweep) for sweep in every]), every):
        matrix = design(degrees)
        circle, *_ = np.linalg.lstsq(matrix, readings, rcond=None)
        covariance = np.linalg.inv(matrix.T @ matrix) * SIGMA**2
        found = [answer[name] for name in ("constant", "cosine", "sine")]
        np.testing.assert_allclose(found, circle, rtol=0, atol=ROUNDING * np.abs(readings).max() * 1e3)
        u = [answer[name] for name in ("u_constant", "u_cosine", "u_sine")]
        np.testing.assert_allclose(u, np.sqrt(np.diag(covariance)), rtol=1e-7)
        correlation = covariance[0, 1] / np.sqrt(covariance[0, 0] * covariance[1, 1])
        assert answer["correlation"] == pytest.approx(correlation, abs=1e-7)
        squares = np.sum((readings - matrix @ circle) ** 2)
        assert answer["chi_squared"] == pytest.approx(squares / SIGMA**2, rel=1e-6, abs=1e-9)
        assert answer["spare"] == len(readings) - 3
        if len(readings) > 3:
            deviation = np.sqrt(squares / (len(readings) - 3))
            assert answer["scatter"] == pytest.approx(deviation, rel=1e-6)


def coverage(scatter, spare_readings, disagreement, spare):
    """Student's factor for what was added to the stated uncertainty (JCGM 100:2008, G.4)."""
    few = (scatter**2 - 1) ** 2 / max(spare_readings, 1)
    few += (scatter**2 * (disagreement**2 - 1)) ** 2 / max(spare, 1)
    if few == 0:
        return 2.0
    freedom = max(1, np.floor((scatter * disagreement) ** 4 / few))
    return max(2.0, stats.t.ppf(0.975, freedom))


def positions():
    """Two rim dials on each other's shafts, with sag and noise, and feet beyond."""
    rng = np.random.default_rng(7)
    for count in (4, 6, 8, 11):
        for noise in (0.0, 2e-6, 2e-5):
            degrees = np.arange(count) * 360 / count
            t = np.radians(degrees)
            offset, slope = rng.uniform(-3e-4, 3e-4, 2), rng.uniform(-1e-3, 1e-3, 2)
            planes, sags = np.array([0.12, 0.0]), rng.uniform(0, 5e-5, 2)
            readings = []
            for sign, x, sag in zip((1, -1), planes, sags):
                up, right = sign * (offset + slope * x)
                # Zeroed at 12 o'clock: a constant takes that up.
                wave = (up + sag) * np.cos(t) + right * np.sin(t)
                readings.append(wave - wave[0] + rng.normal(0, noise, count) * (noise > 0))
            yield degrees, planes, sags, readings


def position_case(degrees, planes, sags, readings):
    on_driven, on_driver = ([metres(value) for value in each] for each in readings)
    return {
        "reckon": "reverse-rim",
        "moving": "driven",
        "on_driven": on_driven,
        "at_driven": metres(planes[0]),
        "on_driver": on_driver,
        "at_driver": metres(planes[1]),
        "positions": [f"{float(degree)!r}°" for degree in degrees],
        "sag_on_driven": metres(sags[0]),
        "sag_on_driver": metres(sags[1]),
        "division": metres(DIVISION),
        "reference": "0.06 m",
        "feet": ["0.31 m", "0.76 m"],
    }


def all_at_once(degrees, planes, sags, readings):
    """One least squares over every reading: two constants, offset and slope in both planes."""
    t = np.radians(degrees)
    rows, values = [], []
    for k, (sign, x, sag, sweep) in enumerate(zip((1, -1), planes, sags, readings)):
        for angle, reading in zip(t, sweep):
            cos, sin, arm = np.cos(angle), np.sin(angle), x - 0.06
            row = [k == 0, k == 1, sign * cos, sign * arm * cos, sign * sin, sign * arm * sin]
            rows.append(np.array(row, float))
            values.append(reading - sag * cos)
    matrix, values = np.array(rows), np.array(values)
    found, *_ = np.linalg.lstsq(matrix, values, rcond=None)
    squares = np.sum((values - matrix @ found) ** 2) / SIGMA**2
    return found, np.linalg.inv(matrix.T @ matrix), squares, len(values) - 6


def test_positions_from_two_rims():
    """Fitting each sweep first loses nothing against one fit of all readings together."""
    every = list(positions())
    for answer, given in zip(ask([position_case(*each) for each in every]), every):
        found, inverse, squares, spare = all_at_once(*given)
        names = ("offset_up", "slope_up", "offset_right", "slope_right")
        np.testing.assert_allclose([answer[name] for name in names], found[2:], rtol=0, atol=1e-12)
        scatter = max(1.0, np.sqrt(squares / spare))
        assert answer["scatter"] == pytest.approx(scatter, rel=1e-6)
        factor = coverage(scatter, spare, 1.0, 0)
        assert answer["factor"] == pytest.approx(factor, rel=1e-6)
        half_widths = factor * SIGMA * scatter * np.sqrt(np.diag(inverse)[2:])
        np.testing.assert_allclose([answer.plus_minus(name) for name in names], half_widths, rtol=1e-6)
        for foot, x in enumerate((0.31, 0.76)):
            arm = np.array([1.0, x - 0.06])
            assert answer["move_up"][foot] == pytest.approx(-arm @ found[2:4], abs=1e-12)
            u = SIGMA * scatter * np.sqrt(arm @ inverse[2:4, 2:4] @ arm)
            assert answer.plus_minus("move_up")[foot] == pytest.approx(factor * u, rel=1e-6)


def test_offsets_and_slopes_weighted():
    """Three offsets and a slope of unlike weight: numpy's weighted least squares in each plane."""
    rng = np.random.default_rng(11)
    at = np.array([0.0, 0.15, 0.4])
    cases, wanted = [], []
    for _ in range(12):
        offset, slope = rng.uniform(-3e-4, 3e-4), rng.uniform(-1e-3, 1e-3)
        u = rng.uniform(4e-6, 2e-5, 3)
        u_slope = rng.uniform(3e-5, 1e-4)
        offsets = offset + slope * at + u * rng.normal(size=3)
        measured = slope + u_slope * rng.normal()
        up = [metres(value, 2 * each) for value, each in zip(offsets, u)]
        slopes = f"{float(measured)!r} ± {float(2 * u_slope)!r} rad"
        cases.append({
            "reckon": "position",
            "moving": "driven",
            "offsets_up": up,
            "offsets_right": up,
            "at": [metres(x) for x in at],
            "slopes_up": slopes,
            "slopes_right": slopes,
        })
        matrix = np.column_stack([np.append(np.ones(3), 0.0), np.append(at, 1.0)])
        weights = 1 / np.append(u, u_slope)
        values = np.append(offsets, measured)
        found, *_ = np.linalg.lstsq(matrix * weights[:, None], values * weights, rcond=None)
        inverse = np.linalg.inv((matrix * weights[:, None]).T @ (matrix * weights[:, None]))
        squares = np.sum(((values - matrix @ found) * weights) ** 2)
        wanted.append((found, inverse, squares))
    for answer, (found, inverse, squares) in zip(ask(cases), wanted):
        assert answer["offset_up"] == pytest.approx(found[0], abs=1e-12)
        assert answer["slope_right"] == pytest.approx(found[1], abs=1e-12)
        # Two planes with the same figures: twice the squares, twice the spare observations.
        assert answer["spare"] == 4
        assert answer["chi_squared"] == pytest.approx(2 * squares, rel=1e-6)
        disagreement = max(1.0, np.sqrt(2 * squares / 4))
        assert answer["disagreement"] == pytest.approx(disagreement, rel=1e-6)
        half_widths = coverage(1.0, 0, disagreement, 4) * disagreement * np.sqrt(np.diag(inverse))
        assert answer.plus_minus("offset_up") == pytest.approx(half_widths[0], rel=1e-6)
        assert answer.plus_minus("slope_up") == pytest.approx(half_widths[1], rel=1e-6)
