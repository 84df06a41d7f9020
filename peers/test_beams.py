"""Spacers that whirl and bars that sag, by beam elements of scikit-fem."""

import numpy as np
import pytest
from scipy.sparse.linalg import eigsh, spsolve
from skfem import Basis, BilinearForm, ElementLineHermite, LinearForm, MeshLine
from skfem.helpers import dd, ddot

from asking import ask, metres

GRAVITY = 9.80665


@BilinearForm
def bending(u, v, _):
    return ddot(dd(u), dd(v))


@BilinearForm
def inertia(u, v, _):
    return u * v


@LinearForm
def weight(v, _):
    return 1.0 * v


def beam(length, elements=32):
    return Basis(MeshLine(np.linspace(0, length, elements + 1)), ElementLineHermite())


def tube(outside, inside):
    return np.pi / 4 * (outside**2 - inside**2), np.pi / 64 * (outside**4 - inside**4)


def test_spacers_whirl():
    """The lowest bending frequency of a beam on two supports; 32 cubic elements give 1e-6 of it."""
    sizes = [(0.14, 0.12, 2.4), (0.06, 0.0, 1.1), (0.219, 0.203, 3.5)]
    young, density = 207e9, 7850.0
    answers = ask([
        {
            "reckon": "spacer-whirl",
            "outside": metres(outside),
            "inside": metres(inside),
            "length": metres(length),
            "young": f"{young} Pa",
            "density": f"{density} kg/m3",
        }
        for outside, inside, length in sizes
    ])
    for answer, (outside, inside, length) in zip(answers, sizes):
        basis, (area, second) = beam(length), tube(outside, inside)
        stiff, mass = (form.assemble(basis) for form in (bending, inertia))
        supported = basis.nodal_dofs[0][[0, -1]]
        free = np.setdiff1d(np.arange(basis.N), supported)
        stiff, mass = (matrix[free][:, free].tocsc() for matrix in (stiff, mass))
        (squared,) = eigsh(stiff, k=1, M=mass, sigma=0, return_eigenvectors=False)
        frequency = np.sqrt(squared * young * second / (density * area))
        assert answer["critical"] == pytest.approx(frequency, rel=1e-5)
        assert answer["run_below"] == pytest.approx(0.7 * frequency, rel=1e-5)


def test_bars_sag():
    """A clamped beam under its weight and a mass at its end; cubic elements are exact at nodes."""
    sizes = [(0.012, 0.0, 0.25, 0.15), (0.025, 0.021, 0.4, 0.15), (0.03, 0.026, 0.9, 0.3)]
    young, density = 207e9, 7850.0
    answers = ask([
        {
            "reckon": "bar-sag",
            "outside": metres(outside),
            "inside": metres(inside),
            "overhang": metres(length),
            "end_mass": f"{mass} kg",
            "young": f"{young} Pa",
            "density": f"{density} kg/m3",
        }
        for outside, inside, length, mass in sizes
    ])
    for answer, (outside, inside, length, mass) in zip(answers, sizes):
        basis, (area, second) = beam(length, 4), tube(outside, inside)
        load = density * GRAVITY * area * weight.assemble(basis)
        load[basis.nodal_dofs[0][-1]] += mass * GRAVITY
        clamped = basis.nodal_dofs[:, 0]
        free = np.setdiff1d(np.arange(basis.N), clamped)
        stiff = young * second * bending.assemble(basis)[free][:, free].tocsc()
        moved = np.zeros(basis.N)
        moved[free] = spsolve(stiff, load[free])
        assert answer["sag"] == pytest.approx(moved[basis.nodal_dofs[0][-1]], rel=1e-8)
        assert answer["bottom"] == pytest.approx(-2 * answer["sag"], rel=1e-12)
