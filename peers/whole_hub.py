"""A whole hub on a shaft by finite elements, for comparing with rings slice by slice.

Two bodies of revolution in the r-z plane, eight-node elements, no friction along the joint. The
joint is closed at every pair of nodes; the force that closes it is looked at afterwards, and none
may pull. E, ν, ρ as the program's steel.
"""

from dataclasses import dataclass

import numpy as np
import scipy.sparse as sparse
from scipy.sparse.linalg import spsolve
from skfem import Basis, BilinearForm, ElementQuadS2, ElementVector, LinearForm, MeshQuad

YOUNG, POISSON, DENSITY = 207e9, 0.292, 7800.0


@dataclass
class Hub:
    """Sizes in metres; a flange of no length is none."""

    joint: float
    outside: float
    length: float
    flange_outside: float = 0.0
    flange_length: float = 0.0
    beyond: float = 0.0  # the shaft runs on by so much at both ends


@BilinearForm
def stiffness(u, v, w):
    """Axisymmetric elasticity over a full turn."""
    r = w.x[0]
    lame, shear = YOUNG * POISSON / (1 + POISSON) / (1 - 2 * POISSON), YOUNG / 2 / (1 + POISSON)

    def strain(field):
        grad, radial = field.grad, field[0]
        return grad[0, 0], grad[1, 1], radial / r, grad[0, 1] + grad[1, 0]

    a, b = strain(u), strain(v)
    direct = sum(x * y for x, y in zip(a[:3], b[:3]))
    return 2 * np.pi * r * (lame * sum(a[:3]) * sum(b[:3]) + 2 * shear * direct + shear * a[3] * b[3])


@LinearForm
def turning(v, w):
    """Centrifugal load for one rad/s."""
    return 2 * np.pi * w.x[0] ** 2 * DENSITY * v[0]


def lines(start, end, step):
    return np.linspace(start, end, max(2, int(round((end - start) / step)) + 1))


def along(hub, step):
    """Stations of the joint; the flange begins at one."""
    barrel = hub.length - hub.flange_length
    parts = [lines(0, barrel, step)]
    if hub.flange_length:
        parts.append(lines(barrel, hub.length, step)[1:])
    return np.concatenate(parts)


def hub_mesh(hub, step):
    inside, outside = hub.joint / 2, hub.outside / 2
    r, z = lines(inside, outside, step), along(hub, step)
    if not hub.flange_length:
        return MeshQuad.init_tensor(r, z)
    r = np.concatenate([r, lines(outside, hub.flange_outside / 2, step)[1:]])
    mesh = MeshQuad.init_tensor(r, z)
    middle = mesh.p[:, mesh.t].mean(axis=1)
    empty = (middle[0] > outside) & (middle[1] < hub.length - hub.flange_length)
    return mesh.remove_elements(np.nonzero(empty)[0]).remove_unused_nodes()


def shaft_mesh(hub, step):
    z = along(hub, step)
    if hub.beyond:
        run = lines(0, hub.beyond, step)[1:]
        z = np.concatenate([-run[::-1], z, hub.length + run])
    return MeshQuad.init_tensor(lines(0, hub.joint / 2, step), z)


def body(mesh):
    basis = Basis(mesh, ElementVector(ElementQuadS2()))
    return basis, stiffness.assemble(basis), turning.assemble(basis)


def radial_at(basis, radius, length):
    """Degrees of freedom of the radial displacement at the joint, by their place along it."""
    places = basis.doflocs
    # A vector's degrees of freedom stand in pairs at one place: the first is radial.
    at = np.abs(places[0] - radius) < 1e-9
    at &= (places[1] > -1e-9) & (places[1] < length + 1e-9)
    radial = np.nonzero(at)[0]
    radial = radial[np.isin(radial, radial_dofs(basis))]
    return radial[np.argsort(places[1, radial])]


def radial_dofs(basis):
    nodal, facet = basis.nodal_dofs, basis.facet_dofs
    return np.concatenate([nodal[0], facet[0]])


def normal_force(hub, interference, speed=0.0, step=0.0025):
    """All that presses on the joint, N, and the least force at any of its nodes."""
    (hub_basis, hub_k, hub_f), (shaft_basis, shaft_k, shaft_f) = (
        body(mesh(hub, step)) for mesh in (hub_mesh, shaft_mesh)
    )
    size = hub_k.shape[0]
    matrix = sparse.block_diag([hub_k, shaft_k]).tocsr()
    load = speed**2 * np.concatenate([hub_f, shaft_f])
    of_hub = radial_at(hub_basis, hub.joint / 2, hub.length)
    of_shaft = size + radial_at(shaft_basis, hub.joint / 2, hub.length)
    assert len(of_hub) == len(of_shaft)
    # u_hub = u_shaft + i/2 at the joint; the shaft's axis stays; neither body slides along.
    axis = size + np.nonzero(np.abs(shaft_basis.doflocs[0]) < 1e-12)[0]
    axis = axis[np.isin(axis - size, radial_dofs(shaft_basis))]
    held = np.concatenate([axis, [hub_basis.nodal_dofs[1][0], size + shaft_basis.nodal_dofs[1][0]]])
    free = np.setdiff1d(np.arange(matrix.shape[0]), np.concatenate([of_hub, held]))
    gap = np.zeros(matrix.shape[0])
    gap[of_hub] = interference / 2
    to_free = {dof: k for k, dof in enumerate(free)}
    rows = np.concatenate([free, of_hub])
    columns = np.concatenate([np.arange(len(free)), [to_free[dof] for dof in of_shaft]])
    bring = sparse.csr_matrix((np.ones(len(rows)), (rows, columns)), (matrix.shape[0], len(free)))
    moved = spsolve((bring.T @ matrix @ bring).tocsc(), bring.T @ (load - matrix @ gap))
    displacement = bring @ moved + gap
    force = (matrix @ displacement - load)[of_hub]
    return force.sum(), force.min()
