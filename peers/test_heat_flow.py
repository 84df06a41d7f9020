"""Seconds in hand and heat off against finite elements in scikit-fem, run anew on sizes at random.

`thermal_peer.py` has other elements, another scheme in time and another joint; its own mesh and
step carry a few tenths of a percent. A grab must agree within 1 %, an opening within 2 %.
"""

import numpy as np
import pytest

import thermal_peer as peer
from asking import ask, kelvins, metres


def asked(given, name):
    """The peer's case as the program is asked it: nothing is left to its defaults but Poisson's ratio
    of steel and the emissivity of the joint, which are the peer's."""
    metal, air = given["hub_metal"], given["films"][0]
    (length, outside), *flange = given["slices"]
    case = {
        "reckon": name,
        "bore": metres(given["bore"]),
        "outside": metres(outside),
        "length": metres(length + sum(part[0] for part in flange)),
        "shaft_behind": metres(given["behind"]),
        "interference": metres(given["interference"]),
        "conductivity": f"{metal['conductivity']!r} W/m/K",
        "heat_capacity": f"{metal['heat_capacity']!r} J/kg/K",
        "density": f"{metal['density']!r} kg/m3",
        "expansion": f"{1e6 * metal['expansion']!r} µm/m/K",
        "modulus": f"{metal['young']!r} Pa",
        "air": kelvins(air["air"]),
        "convection": f"{air['convection']!r} W/m2/K",
        "emissivity": str(air["emissivity"]),
        "touching": f"{given['touching']!r} W/m2/K",
        "pressed": f"{given['pressed']!r} W/m2/K",
        "gap_filling": f"{given['air']!r} W/m/K",
        "off_middle_least": str(given["eccentricity"]),
        "off_middle": str(given["eccentricity"]),
        "off_middle_greatest": str(given["eccentricity"]),
        "expansion_scatter": "0",
        "conductance_least": "1",
        "conductance_greatest": "1",
    }
    if flange:
        case["flange_length"], case["flange_outside"] = map(metres, flange[0])
    return case


def hub(rng, flanged):
    """A hub at random, its back face first."""
    bore = rng.uniform(0.05, 0.12)
    slices = [[bore * rng.uniform(0.8, 1.1), bore * rng.uniform(1.45, 1.7)]]
    if flanged:
        slices.append([bore * rng.uniform(0.2, 0.35), bore * rng.uniform(2.2, 2.8)])
    return {**peer.PLAIN, "bore": bore, "slices": slices, "behind": 2 * bore}


@pytest.mark.parametrize("flanged", [False, True])
def test_a_hot_hub_grabs(flanged):
    rng = np.random.default_rng([23, flanged])
    given = hub(rng, flanged)
    given |= {
        "interference": given["bore"] * rng.uniform(7e-4, 1.1e-3),
        "hub_start": rng.uniform(450.0, 490.0), "shaft_start": peer.COLD,
        "step": 0.5, "moments": [],
    }
    wanted = peer.on(given)["contact"]
    case = asked(given, "time-in-hand")
    case |= {
        "hub_temperature": kelvins(given["hub_start"]),
        "shaft_temperature": kelvins(given["shaft_start"]),
    }
    [answer] = ask([case])
    assert 5 < wanted < 500
    np.testing.assert_allclose(answer["likely"], wanted, rtol=0.01)


def test_a_heated_hub_opens():
    rng = np.random.default_rng(29)
    given = hub(rng, True)
    (length, _), (flange, _) = given["slices"]
    power, stop = rng.uniform(7e5, 9e5, 2) * given["bore"] ** 2, 120.0
    given |= {
        "interference": given["bore"] * 5e-4, "clearance": 20e-6, "hub_start": peer.COLD,
        "shaft_start": peer.COLD, "step": 0.5, "until": stop, "moments": [],
        "heats": [{"zone": [0.0, length], "power": power[0], "stop": stop},
                  {"zone": [length, length + flange], "power": power[1], "stop": stop}],
    }
    wanted = peer.off(given)["opens"]
    case = asked(given, "heat-off")
    case |= {
        "start": kelvins(peer.COLD),
        "body_power": f"{float(power[0])!r} W",
        "flange_power": f"{float(power[1])!r} W",
        "heated_for": f"{stop!r} s",
        "looked_for": f"{stop + 60!r} s",
        "clearance": metres(given["clearance"]),
    }
    [answer] = ask([case])
    np.testing.assert_allclose(answer["opens_likely"], wanted, rtol=0.02)
