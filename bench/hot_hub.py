"""The other side of the rows about heat: a hot hub on its shaft up to first contact, in two ways.

`refactored`   scikit-fem, the whole matrix assembled and factored by scipy's splu at every step
`low_rank`     scipy alone once all is assembled: one factor, the joint as a change of low rank, the
               difference of the films on the right-hand side (the scheme of Hubwright)

Both are backward differences of second order with a fixed step, the joint and the films taken at
temperatures extrapolated from the two steps before. Bodies, mesh and elasticity are those of
`peers/thermal_peer.py`, the mesh scaled to as many unknowns as asked.
"""

import pathlib
import sys
import time

import numpy as np
import scipy.sparse as sp
from scipy.sparse.linalg import splu
from skfem import FacetBasis, LinearForm, ElementQuadS2

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "peers"))
from thermal_peer import SIGMA, Pair, Run  # noqa: E402

COLD = 293.15


class Ready(Pair):
    """The clearance as one matrix on the temperatures of each body."""

    def find_compliance(self):
        self.by_temperature = []
        for body, sign in ((self.hub, 1.0), (self.shaft, -1.0)):
            dofs = body.on_joint(body.vector, body.radial)
            load = np.zeros((len(body.free), len(dofs)))
            load[np.searchsorted(body.free, dofs), np.arange(len(dofs))] = 1.0
            answer = np.zeros((body.vector.N, len(dofs)))
            answer[body.free] = body.factor.solve(load)
            self.by_temperature.append(sign * body.metal["expansion"] * (body.S.T @ answer).T)
        facets = FacetBasis(self.hub.mesh, ElementQuadS2(), facets=self.hub.joint, intorder=6)
        weights = LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(facets)
        self.area = weights[self.hub.on_joint(self.hub.scalar)]

    def free_gap(self, temperatures):
        gap = -0.5 * self.given["interference"]
        for matrix, temperature in zip(self.by_temperature, temperatures):
            gap = gap + matrix @ (temperature - COLD)
        return gap


class Sized(Pair):
    """Only to count unknowns."""

    def find_compliance(self):
        self.unknowns = self.hub.scalar.N + self.shaft.scalar.N


def scale_for(given, unknowns):
    """The width of the meshes that gives about so many unknowns."""
    scale = 0.6
    for _ in range(4):
        have = Sized(given, scale).unknowns
        if abs(have / unknowns - 1) < 0.03:
            break
        scale *= (have / unknowns) ** 0.5
    return scale


def ready(given, scale):
    pair = Ready(given, scale)
    return pair, Run(pair, given)


def march(run, step, steps, solver):
    """Seconds to first contact; None when it comes later than the last step."""
    start = [run.given["hub_start"], run.given["shaft_start"]]
    sizes = [run.split_at, run.size - run.split_at]
    now = np.concatenate([k * np.ones(n) for k, n in zip(start, sizes)])
    before, last, contact = None, run.pair.free_gap(run.split(now)).min(), None
    for k in range(steps):
        guess = now if before is None else 2 * now - before
        lead = 1.0 if before is None else 1.5
        past = now if before is None else 2 * now - 0.5 * before
        new = solver(guess, lead, run.M @ past / step)
        before, now = now, new
        least = run.pair.free_gap(run.split(now)).min()
        if contact is None and least <= 0:
            contact = (k + last / (last - least)) * step
        last = least
    return contact


def refactored(given, scale, step, steps):
    pair, run = ready(given, scale)
    nothing = np.zeros(len(pair.area))

    def solver(guess, lead, right):
        parts = run.split(guess)
        films, load = run.films(parts)
        joint = run.coupling(pair.free_gap(parts), nothing, parts)
        return splu((lead / step * run.M + run.K + films + joint).tocsc()).solve(right + load)

    return march(run, step, steps, solver), run.size


def low_rank(given, scale, step, steps):
    pair, run = ready(given, scale)
    area = np.concatenate([
        LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(skin) for skin in run.skins])
    film = given["films"][0]
    air = film["air"]

    def film_at(k):
        return film["convection"] + film["emissivity"] * SIGMA * (k**2 + air**2) * (k + air)

    held = film_at(0.5 * (given["hub_start"] + given["shaft_start"]))
    hub, shaft = run.on_joint[0], run.on_joint[1] + run.split_at
    count = len(hub)
    across = np.zeros((run.size, count))
    across[hub, np.arange(count)], across[shaft, np.arange(count)] = 1.0, -1.0
    kept = {}

    def factored(lead):
        if lead not in kept:
            factor = splu((lead / step * run.M + run.K + sp.diags_array(held * area)).tocsc())
            z = factor.solve(across)
            kept[lead] = factor, z, z[hub] - z[shaft]
        return kept[lead]

    def solver(guess, lead, right):
        factor, z, between = factored(lead)
        parts = run.split(guess)
        h = run.conductance(pair.free_gap(parts), np.zeros(count), guess[hub], guess[shaft])
        flow = film_at(guess)
        smooth = factor.solve(right + area * (flow * air - (flow - held) * guess))
        w = pair.area * h
        inner = np.eye(count) + w[:, None] * between
        return smooth - z @ np.linalg.solve(inner, w * (smooth[hub] - smooth[shaft]))

    return march(run, step, steps, solver), run.size


def raced(row):
    """What came out of both ways: name, seconds to contact, unknowns, wall seconds. As many steps
    of the same length as ours; the width of the meshes is found beforehand and not timed."""
    given, scale = row["case"], scale_for(row["case"], row["nodes"])
    for name, way in (("scikit-fem, splu each step", refactored), ("scipy, low rank", low_rank)):
        start = time.perf_counter()
        contact, unknowns = way(given, scale, row["stride"], row["steps"])
        yield name, contact, unknowns, time.perf_counter() - start
