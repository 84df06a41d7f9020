"""Heat and growth against scipy: roots, Bessel functions, differential equations."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import j0, j1

from asking import ask, kelvins, metres

# ASME Boiler and Pressure Vessel Code, Section II, Part D (2001), Table TE-1, plain carbon steel:
# mean coefficient from 70 °F, 1e-6 per °F, from 70 °F on by 50 °F.
FAHRENHEIT = np.append([70.0], np.arange(100.0, 1001.0, 50.0))
MEAN = np.array([
    6.4, 6.5, 6.6, 6.7, 6.8, 6.9, 7.0, 7.1, 7.2, 7.3, 7.3, 7.4, 7.5, 7.6, 7.7, 7.8, 7.9, 7.9, 8.0, 8.1
]) * 1.8e-6


def steel(kelvin):
    """Mean expansion of steel from 20 °C, by straight lines between the rows of the table."""
    return np.interp(kelvin * 1.8 - 459.67, FAHRENHEIT, MEAN)


def grown(diameter, kelvin):
    return diameter * steel(kelvin) * (kelvin - 293.15)


def test_hub_temperatures():
    """The temperature at which a steel bore clears its shaft, by brentq; both keep 1e-9."""
    rng = np.random.default_rng(17)
    cases, wanted = [], []
    for _ in range(40):
        d = rng.uniform(0.02, 0.4)
        interference, clearance = d * rng.uniform(0, 1.5e-3), d * rng.uniform(5e-4, 1.5e-3)
        shaft, loss = rng.uniform(275, 320), rng.uniform(0, 30)
        cases.append({
            "reckon": "hub-temperature",
            "diameter": metres(d),
            "interference": metres(interference),
            "clearance": metres(clearance),
            "shaft_temperature": kelvins(shaft),
            "loss": f"{loss!r} K",
        })
        opens = lambda t: grown(d, t) - interference - clearance - grown(d, shaft)
        wanted.append((brentq(opens, 250, 800, xtol=1e-12), loss))
    for answer, (temperature, loss) in zip(ask(cases), wanted):
        # The program's bracket ends within a few microkelvins.
        assert answer["at_shaft"] == pytest.approx(temperature, abs=1e-4)
        assert answer["from_heater"] == pytest.approx(temperature + loss, abs=1e-4)


def test_growth_both_ways():
    """The table by numpy.interp; and what has grown so much is as hot as that."""
    temperatures = np.linspace(293.2, 790, 25)
    there = ask([
        {"reckon": "growth", "diameter": "0.1 m", "temperature": kelvins(t)} for t in temperatures
    ])
    growths = np.array([answer["growth"] for answer in there])
    np.testing.assert_allclose(growths, [grown(0.1, t) for t in temperatures], rtol=1e-9)
    back = ask([
        {"reckon": "growth-temperature", "diameter": "0.1 m", "growth": metres(g)} for g in growths
    ])
    np.testing.assert_allclose([answer["temperature"] for answer in back], temperatures, atol=1e-4)


def roots(biot, count):
    """Roots of ζ·J1(ζ) = Bi·J0(ζ), one in every stretch of π."""
    crossing = lambda z: z * j1(z) - biot * j0(z)
    edges = np.linspace(1e-9, (count + 1) * np.pi, 40 * (count + 1))
    signs = np.sign(crossing(edges))
    at = np.nonzero(signs[:-1] * signs[1:] < 0)[0]
    return np.array([brentq(crossing, edges[k], edges[k + 1], xtol=1e-14) for k in at[:count]])


def test_long_cylinders():
    """The series of forty terms with scipy's Bessel functions."""
    cases, wanted = [], []
    for biot in (0.02, 0.3, 1.0, 5.0, 60.0):
        z = roots(biot, 40)
        c = 2 / z * j1(z) / (j0(z) ** 2 + j1(z) ** 2)
        for fourier in (0.01, 0.05, 0.2, 1.0):
            for radius in (0.0, 0.4, 1.0):
                cases.append({
                    "reckon": "cylinder-cooling",
                    "biot": str(biot),
                    "fourier": str(fourier),
                    "radius": str(radius),
                    "terms": "40",
                })
                left = c * np.exp(-(z**2) * fourier)
                wanted.append((np.sum(left * j0(z * radius)), 1 - np.sum(2 * left * j1(z) / z), z[0]))
    for answer, (theta, heat, root) in zip(ask(cases), wanted):
        assert answer["left"] == pytest.approx(theta, abs=1e-9)
        assert answer["heat_gone"] == pytest.approx(heat, abs=1e-9)
        assert answer["first_root"] == pytest.approx(root, rel=1e-9)


def test_lumps():
    """scipy integrates the heat balance of a ring in time; its own tolerance is 1e-10."""
    outside, bore, length = 0.2, 0.1, 0.12
    density, capacity, film = 7850.0, 470.0, 12.0
    (answer,) = ask([{
        "reckon": "lump-cooling",
        "outside": metres(outside),
        "bore": metres(bore),
        "length": metres(length),
        "bore_surface": "covered",
        "density": f"{density} kg/m3",
        "heat_capacity": f"{capacity} J/kg/K",
        "conductivity": "50 W/m/K",
        "film": f"{film} W/m2/K",
        "from": "200 degC",
        "to": "60 degC",
        "surroundings": "20 degC",
    }])
    face = np.pi / 4 * (outside**2 - bore**2)
    mass, area = density * face * length, 2 * face + np.pi * outside * length
    cools = lambda _, t: -film * area * (t - 20) / (mass * capacity)
    reached = lambda _, t: t[0] - 60
    reached.terminal = True
    run = solve_ivp(cools, (0, 1e6), [200.0], events=reached, rtol=1e-10, atol=1e-10)
    assert answer["time"] == pytest.approx(run.t_events[0][0], rel=1e-7)
    assert answer["mass"] == pytest.approx(mass, rel=1e-12)
