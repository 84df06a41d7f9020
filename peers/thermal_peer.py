"""The other road for heat on and heat off, written on its own with scikit-fem and scipy.

Prints JSON: for each case what was given (SI units) and what was found, so that a test can give
the same to Hubwright and compare. Nothing here is shared with it but the physics:

  conduction   rho c dT/dt = div(k grad T) in two bodies of revolution, eight-node elements here,
               backward differences of second order with a fixed step, the joint as an integral
               over its facets (Hubwright: nine-node elements, TR-BDF2, the joint at its nodes)
  elasticity   u_r, u_z, thermal strain alpha (T - 20 C), one-sided contact at the nodes of the
               bore by an active set on the compliance of the joint
  joint        h = k / sqrt((g + s)^2 - (e g)^2) + grey sigma (..) + pressed (p / 10 MPa)^0.95
  outside      convection and radiation; heat evenly over a zone of the outside

Needs numpy 2.4, scipy 1.17, scikit-fem 12.0. Run: python thermal_peer.py [case ...]
"""

import json
import sys

import numpy as np
import scipy.sparse as sp
from scipy.sparse.linalg import splu
from skfem import (Basis, BilinearForm, ElementQuadS2, ElementVector, FacetBasis, LinearForm,
                   MeshQuad)

SIGMA = 5.670374419e-8
COLD = 293.15


def lines(breaks, fine, size, growth, largest):
    """Lines through every break, `size` apart at the fine places and wider with the distance."""
    out = [breaks[0]]
    for start, end in zip(breaks, breaks[1:]):
        x = np.linspace(start, end, 2001)
        near = np.min([abs(x - f) for f in fine], axis=0)
        density = 1.0 / np.minimum(size + growth * near, largest)
        total = np.concatenate([[0.0], np.cumsum(0.5 * (density[1:] + density[:-1]) * np.diff(x))])
        count = max(1, int(np.ceil(total[-1] - 1e-6)))
        out += list(np.interp(total[-1] * np.arange(1, count) / count, total, x)) + [end]
    return np.array(out)


class Body:
    """One body: mesh, bases and matrices."""

    def __init__(self, r, z, inside, metal, bore, length, hub):
        full = MeshQuad.init_tensor(r, z)
        middle = full.p[:, full.t].mean(axis=1)
        outside = np.flatnonzero(~inside(*middle))
        self.mesh = full.remove_elements(outside) if len(outside) else full
        self.metal = metal
        self.scalar = Basis(self.mesh, ElementQuadS2(), intorder=6)
        self.vector = Basis(self.mesh, ElementVector(ElementQuadS2()), intorder=6)
        self.middles = self.mesh.p[:, self.mesh.facets].mean(axis=1)
        r_mid, z_mid = self.middles
        free = self.mesh.boundary_facets()
        on_joint = [f for f in free
                    if abs(r_mid[f] - bore) < 1e-9 and -1e-9 < z_mid[f] < length + 1e-9]
        self.joint = np.array(sorted(on_joint, key=lambda f: z_mid[f]))
        self.skin = np.array([f for f in free if f not in set(on_joint)
                              and (hub or abs(r_mid[f] - r[0]) > 1e-9)])
        self.assemble()

    def assemble(self):
        k, c = self.metal["conductivity"], self.metal["density"] * self.metal["heat_capacity"]
        young, nu = self.metal["young"], self.metal["poisson"]
        lam, mu = young * nu / (1 + nu) / (1 - 2 * nu), young / 2 / (1 + nu)
        held = young / (1 - 2 * nu)

        @BilinearForm
        def conduct(u, v, w):
            return k * (u.grad[0] * v.grad[0] + u.grad[1] * v.grad[1]) * 2 * np.pi * w.x[0]

        @BilinearForm
        def store(u, v, w):
            return c * u * v * 2 * np.pi * w.x[0]

        @BilinearForm
        def stiff(u, v, w):
            def strain(f):
                return (f.grad[0][0], f[0] / w.x[0], f.grad[1][1], f.grad[0][1] + f.grad[1][0])
            (a, b, d, s), (e, f, g, h) = strain(u), strain(v)
            return (lam * (a + b + d) * (e + f + g) + 2 * mu * (a * e + b * f + d * g)
                    + mu * s * h) * 2 * np.pi * w.x[0]

        @BilinearForm
        def swell(u, v, w):
            return held * u * (v.grad[0][0] + v[0] / w.x[0] + v.grad[1][1]) * 2 * np.pi * w.x[0]

        self.K, self.M = conduct.assemble(self.scalar), store.assemble(self.scalar)
        self.S = swell.assemble(self.scalar, self.vector)
        stiffness = stiff.assemble(self.vector).tocsc()
        self.radial = self.vector.get_dofs(elements=True).all("u^1")
        axial = np.setdiff1d(np.arange(self.vector.N), self.radial)
        on_axis = self.radial[abs(self.vector.doflocs[0][self.radial]) < 1e-12]
        fixed = np.append(on_axis, axial[len(axial) // 2])
        self.free = np.setdiff1d(np.arange(self.vector.N), fixed)
        self.factor = splu(stiffness[self.free][:, self.free].tocsc())

    def on_joint(self, basis, among=None):
        """Degrees of freedom on the joint, in order of z."""
        found = basis.get_dofs(self.joint).all()
        found = found if among is None else np.intersect1d(found, among)
        return found[np.argsort(basis.doflocs[1][found], kind="stable")]

    def displacement(self, load):
        out = np.zeros(self.vector.N)
        out[self.free] = self.factor.solve(load[self.free])
        return out


class Pair:
    """A hub on a shaft."""

    def __init__(self, given, scale=1.0):
        self.given = given
        a, length = given["bore"] / 2, sum(s[0] for s in given["slices"])
        steps = np.cumsum([0.0] + [s[0] for s in given["slices"]])
        radii = [s[1] / 2 for s in given["slices"]]
        marks = [z for heat in given.get("heats", []) for z in heat["zone"]]
        breaks = np.unique(np.round(np.concatenate([steps, marks]), 9))
        fine, growth, widest = 0.05 * a * scale, 0.30 * scale, 0.30 * a * scale
        bore_z = lines(breaks, list(steps), fine, growth, widest)
        hub_r = lines(np.unique([a] + radii), [a], fine, growth, widest)
        shaft_r = lines([given["hollow"] / 2, a], [a], fine, growth, widest)
        shaft_z = bore_z
        if given["behind"] > 0:
            behind = lines([-given["behind"], 0.0], [0.0], fine, growth, widest)
            shaft_z = np.concatenate([behind[:-1], shaft_z])
        if given["ahead"] > 0:
            ahead = lines([length, length + given["ahead"]], [length], fine, growth, widest)
            shaft_z = np.concatenate([shaft_z, ahead[1:]])

        def in_hub(r, z):
            outside = np.zeros_like(r)
            for start, end, radius in zip(steps, steps[1:], radii):
                outside = np.where((start < z) & (z < end), radius, outside)
            return r < outside

        self.hub = Body(hub_r, bore_z, in_hub, given["hub_metal"], a, length, True)
        self.shaft = Body(shaft_r, shaft_z, lambda r, z: r > 0, given["shaft_metal"], a, length,
                          False)
        self.a, self.length = a, length
        self.find_compliance()

    def find_compliance(self):
        """How the clearance at the nodes of the joint answers a force there."""
        self.sides, self.C = [], 0.0
        for body, sign in ((self.hub, 1.0), (self.shaft, -1.0)):
            dofs = body.on_joint(body.vector, body.radial)
            self.sides.append((body, dofs, sign))
            columns = []
            for dof in dofs:
                load = np.zeros(body.vector.N)
                load[dof] = 1.0
                columns.append(body.displacement(load)[dofs])
            self.C = self.C + np.array(columns).T
        facets = FacetBasis(self.hub.mesh, ElementQuadS2(), facets=self.hub.joint, intorder=6)
        weights = LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(facets)
        nodes = self.hub.on_joint(self.hub.scalar)
        self.area, self.z = weights[nodes], self.hub.scalar.doflocs[1][nodes]

    def free_gap(self, temperatures):
        """Clearance on the radius if nothing touched."""
        gap = -0.5 * self.given["interference"] * np.ones(len(self.C))
        for (body, dofs, sign), temperature in zip(self.sides, temperatures):
            strain = body.metal["expansion"] * (temperature - COLD)
            gap = gap + sign * body.displacement(body.S @ strain)[dofs]
        return gap

    def contact(self, gap):
        """Clearance and force at the nodes of the joint."""
        closed = gap < 0
        for _ in range(200):
            force = np.zeros_like(gap)
            if closed.any():
                force[closed] = np.linalg.solve(self.C[np.ix_(closed, closed)], -gap[closed])
            opened = gap + self.C @ force
            wrong = (closed & (force < 0)) | (~closed & (opened < -1e-14))
            if not wrong.any():
                return np.maximum(opened, 0.0), force
            closed = closed ^ wrong
        raise RuntimeError("contact does not settle")


class Run:
    """A run in time with a fixed step."""

    def __init__(self, pair, given):
        self.pair, self.given = pair, given
        bodies = (pair.hub, pair.shaft)
        self.split_at = pair.hub.scalar.N
        self.size = self.split_at + pair.shaft.scalar.N
        self.K = sp.block_diag([body.K for body in bodies]).tocsc()
        self.M = sp.block_diag([body.M for body in bodies]).tocsc()
        self.sides = [FacetBasis(b.mesh, ElementQuadS2(), facets=b.joint, intorder=6)
                      for b in bodies]
        x = [np.asarray(side.global_coordinates()) for side in self.sides]
        assert np.allclose(x[0], x[1]), "the two sides of the joint do not match"
        self.skins = [FacetBasis(b.mesh, ElementQuadS2(), facets=b.skin, intorder=6)
                      for b in bodies]
        self.on_joint = [b.on_joint(b.scalar) for b in bodies]
        self.heats = [(self.zone(heat), heat["stop"]) for heat in given.get("heats", [])]

    def zone(self, heat):
        body, (low, high) = self.pair.hub, heat["zone"]
        upright = abs(np.diff(body.mesh.p[0, body.mesh.facets], axis=0)[0]) < 1e-12
        z = body.middles[1]
        facets = [f for f in body.skin if upright[f] and low - 1e-9 < z[f] < high + 1e-9]
        side = FacetBasis(body.mesh, ElementQuadS2(), facets=np.array(facets), intorder=6)
        share = LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(side)
        out = np.zeros(self.size)
        out[:self.split_at] = heat["power"] * share / share.sum()
        return out

    def conductance(self, gap, pressure, hub_k, shaft_k):
        g = self.given
        gap = np.maximum(gap, 0.0)
        wide, off = gap + g["air"] / g["touching"], g["eccentricity"] * gap
        grey = g["joint_emissivity"] / (2 - g["joint_emissivity"])
        radiated = grey * SIGMA * (hub_k**2 + shaft_k**2) * (hub_k + shaft_k)
        pressed = g["pressed"] * (np.maximum(pressure, 0) / 10e6) ** 0.95
        return g["air"] / np.sqrt(wide**2 - off**2) + radiated + pressed

    def coupling(self, gap, force, temperatures):
        """The joint as a matrix over both bodies."""
        at_facets = []
        for values in (gap, force / self.pair.area):
            full = np.zeros(self.split_at)
            full[self.on_joint[0]] = values
            at_facets.append(np.asarray(self.sides[0].interpolate(full)))
        hub_k, shaft_k = (np.asarray(side.interpolate(temperature))
                          for side, temperature in zip(self.sides, temperatures))
        h = self.conductance(*at_facets, hub_k, shaft_k)
        form = BilinearForm(lambda u, v, w: w.h * u * v * 2 * np.pi * w.x[0])
        a, b = self.sides
        return sp.bmat([[form.assemble(a, a, h=h), -form.assemble(b, a, h=h)],
                        [-form.assemble(a, b, h=h), form.assemble(b, b, h=h)]]).tocsc()

    def films(self, temperatures):
        """Films as a matrix and a load."""
        form = BilinearForm(lambda u, v, w: w.h * u * v * 2 * np.pi * w.x[0])
        load = LinearForm(lambda v, w: w.h * w.air * v * 2 * np.pi * w.x[0])
        matrices, loads = [], []
        for skin, temperature, film in zip(self.skins, temperatures, self.given["films"]):
            k, air = np.asarray(skin.interpolate(temperature)), film["air"]
            h = film["convection"] + film["emissivity"] * SIGMA * (k**2 + air**2) * (k + air)
            matrices.append(form.assemble(skin, h=h))
            loads.append(load.assemble(skin, h=h, air=air * np.ones_like(k)))
        return sp.block_diag(matrices).tocsc(), np.concatenate(loads)

    def split(self, temperature):
        return temperature[:self.split_at], temperature[self.split_at:]

    def march(self, step, until, watch):
        """Backward differences of second order, begun anew where heat switches; joint and films
        are iterated three times a step."""
        now = np.concatenate([self.given["hub_start"] * np.ones(self.split_at),
                              self.given["shaft_start"] * np.ones(self.size - self.split_at)])
        before, time, last_on = None, 0.0, None
        watch(time, self, now, self.pair.free_gap(self.split(now)))
        while time < until - 1e-9:
            on = [time < stop - 1e-9 for _, stop in self.heats]
            heat = sum((load for (load, _), is_on in zip(self.heats, on) if is_on),
                       np.zeros(self.size))
            before = before if on == last_on else None
            last_on = on
            guess = now if before is None else 2 * now - before
            for _ in range(3):
                parts = self.split(guess)
                clear, force = self.pair.contact(self.pair.free_gap(parts))
                films, load = self.films(parts)
                rates = self.K + films + self.coupling(clear, force, parts)
                if before is None:
                    left, right = self.M / step, self.M @ now / step
                else:
                    left, right = 1.5 * self.M / step, self.M @ (2 * now - 0.5 * before) / step
                guess = splu((left + rates).tocsc()).solve(right + load + heat)
            before, now, time = now, guess, time + step
            if watch(time, self, now, self.pair.free_gap(self.split(now))):
                break


STEEL = {"conductivity": 51.0, "heat_capacity": 470.0, "density": 7800.0, "expansion": 11.52e-6,
         "young": 207e9, "poisson": 0.292}
IRON = {"conductivity": 36.0, "heat_capacity": 490.0, "density": 7100.0, "expansion": 11.0e-6,
        "young": 170e9, "poisson": 0.29}
STILL = {"air": COLD, "convection": 7.0, "emissivity": 0.6}
JOINT = {"air": 0.032, "touching": 5000.0, "pressed": 20000.0, "joint_emissivity": 0.3,
         "eccentricity": 0.7}

PLAIN = {"bore": 0.080, "slices": [[0.090, 0.130]], "hollow": 0.0, "behind": 0.160, "ahead": 0.0,
         "interference": 60e-6, "hub_metal": STEEL, "shaft_metal": STEEL, "films": [STILL, STILL],
         **JOINT}
FLANGED = {"bore": 0.100, "slices": [[0.090, 0.150], [0.030, 0.280]], "hollow": 0.0,
           "behind": 0.200, "ahead": 0.0, "interference": 80e-6, "hub_metal": STEEL,
           "shaft_metal": STEEL, "films": [STILL, STILL], **JOINT}


def press(given):
    """All at 20 C: what the joint carries, its torque at a friction of 0.15, and the pressure at
    mid-length."""
    pair = Pair(given, 0.7)
    _, force = pair.contact(-0.5 * given["interference"] * np.ones(len(pair.C)))
    middle = np.argmin(abs(pair.z - pair.length / 2))
    return {"normal_force": force.sum(), "torque_at_0_15": 0.15 * force.sum() * pair.a,
            "pressure_mid": force[middle] / pair.area[middle]}


def on(given):
    """Seconds to first contact, and mean temperatures of the joint at some moments."""
    found, state = {"at": []}, {}

    def watch(time, run, now, gap):
        least = gap.min()
        if any(abs(time - moment) < 1e-6 for moment in given["moments"]):
            share = run.pair.area / run.pair.area.sum()
            hub, shaft = run.split(now)
            found["at"].append({"time": time, "bore": share @ hub[run.on_joint[0]],
                                "seat": share @ shaft[run.on_joint[1]], "clearance": 2 * least})
        if least <= 0:
            part = state["least"] / (state["least"] - least)
            found["contact"] = state["time"] + part * (time - state["time"])
        state.update(time=time, least=least)
        return least <= 0

    Run(Pair(given), given).march(given["step"], 600.0, watch)
    return found


def off(given):
    """The normal force in the joint at some moments, when it opens, and when it shuts."""
    found, state = {"at": []}, {}

    def watch(time, run, now, gap):
        spare = gap.min() - 0.5 * given["clearance"]
        if any(abs(time - moment) < 1e-6 for moment in given["moments"]):
            _, force = run.pair.contact(gap)
            found["at"].append({"time": time, "normal_force": force.sum(),
                                "hottest": run.split(now)[0].max()})
        wanted = "shuts" if "opens" in found else "opens"
        if state and wanted not in found and (spare >= 0) != (state["spare"] >= 0):
            part = state["spare"] / (state["spare"] - spare)
            found[wanted] = state["time"] + part * (time - state["time"])
        state.update(time=time, spare=spare)
        return False

    Run(Pair(given), given).march(given["step"], given["until"], watch)
    return found


CASES = {
    "press_plain_flush": (press, {**PLAIN, "behind": 0.0}),
    "press_plain": (press, PLAIN),
    "press_flanged": (press, FLANGED),
    "press_flanged_hollow_iron": (press, {**FLANGED, "hollow": 0.040, "ahead": 0.050,
                                          "hub_metal": IRON}),
    "on_plain": (on, {**PLAIN, "hub_start": 453.15, "shaft_start": COLD, "step": 0.125,
                      "moments": [5.0, 15.0]}),
    "on_flanged": (on, {**FLANGED, "interference": 100e-6, "hub_start": 473.15,
                        "shaft_start": COLD, "step": 0.125, "moments": [5.0, 20.0]}),
    "off_flanged": (off, {**FLANGED, "interference": 50e-6, "clearance": 20e-6,
                          "hub_start": COLD, "shaft_start": COLD, "step": 0.25, "until": 120.0,
                          "moments": [10.0, 20.0, 40.0],
                          "heats": [{"zone": [0.0, 0.090], "power": 8000.0, "stop": 80.0},
                                    {"zone": [0.090, 0.120], "power": 8000.0, "stop": 80.0}]}),
    "off_body_alone": (off, {**FLANGED, "clearance": 20e-6, "hub_start": COLD,
                             "shaft_start": COLD, "step": 0.5, "until": 60.0,
                             "moments": [20.0, 40.0, 60.0],
                             "heats": [{"zone": [0.0, 0.090], "power": 8000.0, "stop": 60.0}]}),
}


def main():
    out = []
    for name in sys.argv[1:] or CASES:
        solve, given = CASES[name]
        out.append({"case": name, "given": given, "found": solve(given)})
    json.dump(out, sys.stdout, indent=1, default=float)
    print()


if __name__ == "__main__":
    main()
