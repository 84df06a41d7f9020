"""Interference fits against closed forms, scipy, and finite elements of whole hubs."""

import numpy as np
import pytest
from scipy.optimize import brentq

from asking import ask, metres
from whole_hub import DENSITY, POISSON, YOUNG, Hub, normal_force

FRICTION = 0.14


def case(hub, interference, speed=0.0):
    asked = {
        "reckon": "press-fit",
        "interference": metres(interference),
        "joint": metres(hub.joint),
        "outside": metres(hub.outside),
        "length": metres(hub.length),
        "friction_least": str(FRICTION),
        "friction_greatest": str(FRICTION),
        "speed": f"{speed!r} rad/s",
    }
    if hub.flange_length:
        asked["flange_outside"] = metres(hub.flange_outside)
        asked["flange_length"] = metres(hub.flange_length)
    return asked


def compare(hubs, interference, speed):
    """Torque by finite elements over torque by slices."""
    answers = ask([case(hub, interference, speed) for hub in hubs])
    ratios = []
    for hub, answer in zip(hubs, answers):
        force, least = normal_force(hub, interference, speed)
        # Contact holds: nowhere would the joint have to pull.
        assert least > -1e-3 * force
        ratios.append(FRICTION * force * hub.joint / 2 / answer["torque_least"])
    return np.array(ratios)


PLAIN = [Hub(0.08, 0.12, 0.09), Hub(0.06, 0.18, 0.06), Hub(0.1, 0.16, 0.11)]


@pytest.mark.parametrize("speed", [0.0, 400.0])
def test_plain_hubs_flush_with_their_shaft(speed):
    """A plain ring flush with its shaft is Lamé's case itself; 0.1 % is left to the mesh."""
    np.testing.assert_allclose(compare(PLAIN, 5e-5, speed), 1.0, atol=1e-3)


FLANGED = [
    Hub(0.08, 0.12, 0.12, 0.22, 0.03),
    Hub(0.1, 0.15, 0.11, 0.3, 0.025),
    Hub(0.06, 0.1, 0.09, 0.16, 0.04),
]


@pytest.mark.parametrize("speed", [0.0, 300.0])
def test_flanged_hubs_flush_with_their_shaft(speed):
    """Slices do not bear on each other; whole hubs hold up to 1.5 % more than they say."""
    ratios = compare(FLANGED, 6e-5, speed)
    assert np.all(ratios > 0.999)
    assert np.all(ratios < 1.015)


def test_shafts_that_run_on_hold_more():
    """Where the shaft runs on beyond the hub, slices say a little too little: the safe side."""
    beyond = [Hub(0.08, 0.12, 0.09, beyond=0.12), Hub(0.08, 0.12, 0.12, 0.22, 0.03, beyond=0.12)]
    ratios = compare(beyond, 6e-5, 0.0)
    assert np.all(ratios > 1.0)
    assert np.all(ratios < 1.03)


def test_the_mesh_is_fine_enough():
    """Half the element size moves the force by less than a tenth of the 1.5 % allowed above."""
    hub = Hub(0.08, 0.12, 0.12, 0.22, 0.03)
    coarse, fine = (normal_force(hub, 6e-5, step=step)[0] for step in (0.0025, 0.00125))
    assert abs(fine / coarse - 1) < 1.5e-3


def rings(hub, interference, speed):
    """Lamé with turning, slice by slice, written again in numpy: all that presses."""
    slices = [(hub.length - hub.flange_length, hub.outside)]
    if hub.flange_length:
        slices.append((hub.flange_length, hub.flange_outside))
    d, total = hub.joint, 0.0
    for length, outside in slices:
        turn = DENSITY * speed**2 * d / (16 * YOUNG)
        grows = turn * ((3 + POISSON) * outside**2 + (1 - POISSON) * d**2)
        shaft_grows = turn * (1 - POISSON) * d**2
        left = interference - grows + shaft_grows
        give = (outside**2 + d**2) / (outside**2 - d**2) + 1
        total += max(left, 0.0) / (d * give / YOUNG) * np.pi * d * length
    return total


def test_slices_in_double_precision():
    """The same rings in numpy, random sizes and speeds; only rounding may differ."""
    rng = np.random.default_rng(3)
    hubs, given = [], []
    for _ in range(60):
        joint = rng.uniform(0.02, 0.3)
        outside, length = joint * rng.uniform(1.3, 2.5), joint * rng.uniform(0.6, 1.8)
        flange = (outside * rng.uniform(1.1, 2.0), length * rng.uniform(0.1, 0.5))
        hubs.append(Hub(joint, outside, length, *(flange if rng.random() < 0.7 else (0.0, 0.0))))
        given.append((joint * rng.uniform(3e-4, 1.5e-3), rng.uniform(0, 600)))
    answers = ask([case(hub, *each) for hub, each in zip(hubs, given)])
    torques = [FRICTION * rings(hub, *each) * hub.joint / 2 for hub, each in zip(hubs, given)]
    np.testing.assert_allclose([answer["torque_least"] for answer in answers], torques, rtol=1e-9)


def test_speed_at_which_a_hub_lets_go():
    """scipy's brentq on the rings above."""
    hubs = [Hub(0.08, 0.12, 0.12, 0.22, 0.03), Hub(0.1, 0.2, 0.1)]
    torques = [1500.0, 4000.0]
    cases = []
    for hub, torque in zip(hubs, torques):
        asked = case(hub, 6e-5)
        del asked["friction_least"], asked["friction_greatest"]
        asked |= {"reckon": "hub-lets-go", "friction": str(FRICTION), "torque": f"{torque!r} N·m"}
        cases.append(asked)
    for answer, hub, torque in zip(ask(cases), hubs, torques):
        spare = lambda speed: FRICTION * rings(hub, 6e-5, speed) * hub.joint / 2 - torque
        # The program stops at a relative 1e-9 or so of its bracket; 1e-6 leaves room for that.
        assert answer["at_speed"] == pytest.approx(brentq(spare, 0, 1e4, xtol=1e-9), rel=1e-6)


def test_windows_of_interference():
    """Both ends by brentq: the least that holds, and the greatest that the bore bears."""
    hub, torque, safety, allowed = Hub(0.08, 0.13, 0.11), 2200.0, 2.0, 220e6
    asked = case(hub, 1.0)
    for name in ("interference", "friction_least", "friction_greatest"):
        del asked[name]
    asked |= {
        "reckon": "interference-window",
        "torque": f"{torque!r} N·m",
        "safety": str(safety),
        "friction": str(FRICTION),
        "hub_stress": f"{allowed!r} Pa",
        "shaft_stress": "1 GPa",
    }
    (answer,) = ask([asked])

    def equivalent(interference):
        d, outside = hub.joint, hub.outside
        shape = (outside**2 + d**2) / (outside**2 - d**2)
        pressure = interference * YOUNG / (d * (shape + 1))
        hoop, radial = pressure * shape, -pressure
        return np.sqrt(hoop**2 - hoop * radial + radial**2)

    holds = lambda i: FRICTION * rings(hub, i, 0.0) * hub.joint / 2 - safety * torque
    assert answer["least"] == pytest.approx(brentq(holds, 1e-9, 1e-3, xtol=1e-15), rel=1e-6)
    bears = lambda i: equivalent(i) - allowed
    assert answer["greatest"] == pytest.approx(brentq(bears, 1e-9, 1e-3, xtol=1e-15), rel=1e-6)
