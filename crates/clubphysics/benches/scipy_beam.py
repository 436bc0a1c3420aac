"""Times scipy on the eigenproblem of `vibration.rs`: 60 freedoms, cubic elements, a body at the tip.

pip install numpy scipy; python3 benches/scipy_beam.py
The matrices are built here from the same table, so that the frequencies can be compared too.
"""
import timeit

import numpy as np
import scipy
from scipy import linalg
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import eigsh

POSITION_M = np.array([0, 0.2, 0.4, 0.6, 0.8, 0.96])
STIFFNESS_N_M2 = np.array([80.0, 68, 55, 42, 29, 24])
MASS_KG_M = np.array([128.0, 124, 118, 110, 100, 95]) / 1000
CLAMP_M, TIP_M, ELEMENTS = 0.127, 0.96, 30
HEAD_KG, OFFSET_M, INERTIA_KG_M2 = 0.256, 0.012, 2.5e-4


def matrices():
    """Stiffness and mass, the clamped node left out; kinks of the table are nodes, as far as 30 elements go."""
    ends = [CLAMP_M] + [x for x in POSITION_M if CLAMP_M < x < TIP_M] + [TIP_M]
    counts = [1] * (len(ends) - 1)
    for _ in range(ELEMENTS - len(counts)):
        counts[int(np.argmax([(b - a) / n for a, b, n in zip(ends, ends[1:], counts)]))] += 1
    nodes = [CLAMP_M]
    for a, b, n in zip(ends, ends[1:], counts):
        nodes += list(a + (b - a) * np.arange(1, n + 1) / n)
    size = 2 * len(nodes)
    stiffness, mass = np.zeros((size, size)), np.zeros((size, size))
    points, weights = np.polynomial.legendre.leggauss(5)
    for e, (a, b) in enumerate(zip(nodes, nodes[1:])):
        h = b - a
        for point, weight in zip(points, weights):
            s = (1 + point) / 2
            shape = np.array([1 + s * s * (2 * s - 3), h * s * (1 - s) ** 2, s * s * (3 - 2 * s), h * s * s * (s - 1)])
            bend = np.array([(12 * s - 6) / h**2, (6 * s - 4) / h, (6 - 12 * s) / h**2, (6 * s - 2) / h])
            at, part = a + h * s, slice(2 * e, 2 * e + 4)
            stiffness[part, part] += np.interp(at, POSITION_M, STIFFNESS_N_M2) * weight * h / 2 * np.outer(bend, bend)
            mass[part, part] += np.interp(at, POSITION_M, MASS_KG_M) * weight * h / 2 * np.outer(shape, shape)
    mass[-2, -2] += HEAD_KG
    mass[-2, -1] += HEAD_KG * OFFSET_M
    mass[-1, -2] += HEAD_KG * OFFSET_M
    mass[-1, -1] += INERTIA_KG_M2 + HEAD_KG * OFFSET_M**2
    return stiffness[2:, 2:], mass[2:, 2:]


def banded(matrix):
    """Lower band form of scipy, half-bandwidth three."""
    return np.array([np.append(np.diagonal(matrix, -k), np.zeros(k)) for k in range(4)])


def inverse_iteration(band, mass, steps=12):
    """scipy's banded Cholesky with inverse iteration: what the crate does, in numpy."""
    factor = linalg.cholesky_banded(band, lower=True, check_finite=False)
    x = np.zeros(len(mass))
    x[-2] = 1
    x = linalg.cho_solve_banded((factor, True), x, check_finite=False)
    for _ in range(steps):
        inertia = mass @ x
        scale = 1 / np.sqrt(x @ inertia)
        inertia = inertia * scale
        x = linalg.cho_solve_banded((factor, True), inertia, check_finite=False)
        flexibility = inertia @ x
    return 1 / np.sqrt(flexibility)


def main():
    stiffness, mass = matrices()
    band = banded(stiffness)
    sparse_k, sparse_m = csc_matrix(stiffness), csc_matrix(mass)
    ways = {
        "eigh, dense, first mode only": lambda: linalg.eigh(stiffness, mass, subset_by_index=[0, 0])[0][0] ** 0.5,
        "eigh, dense, three modes": lambda: linalg.eigh(stiffness, mass, subset_by_index=[0, 2])[0][0] ** 0.5,
        "eigh, dense, all modes": lambda: linalg.eigh(stiffness, mass)[0][0] ** 0.5,
        "eigsh, sparse, shift-invert, first mode": lambda: eigsh(sparse_k, 1, sparse_m, sigma=0)[0][0] ** 0.5,
        "cholesky_banded + 12 inverse steps": lambda: inverse_iteration(band, mass),
    }
    print("scipy", scipy.__version__, "numpy", np.__version__, "freedoms", len(mass))
    for name, way in ways.items():
        best = min(timeit.repeat(way, number=50, repeat=9)) / 50
        print(f"{name:42s} {best * 1e3:8.4f} ms   {way() * 30 / np.pi:.6f} cpm")


main()
