"""One increment of levelling against scipy's quasi-Newton minimiser: another method for the same convex function."""

import numpy as np
import pytest
from scipy.optimize import minimize

from libtexture import _core

SIZE = 24


def wave_numbers():
    """Lengths of the wave vectors of the full spectrum, a pixel being 1."""
    along = 2 * np.pi * np.fft.fftfreq(SIZE)
    return np.hypot(along[:, None], along[None, :])


def pressure_by_scipy(height, stiffness, removal):
    """Minimises 1/2 <u, S u> + |(h - u)+|^2/(2 removal) + sum(u) over the face height u; the pressure is
    (h - u)+/removal. stiffness: on the full spectrum."""

    def function(face):
        face = face.reshape(SIZE, SIZE)
        pull = np.fft.ifft2(stiffness * np.fft.fft2(face)).real
        depth = np.maximum(height - face, 0)
        value = 0.5 * np.sum(face * pull) + np.sum(depth**2) / (2 * removal) + np.sum(face)
        return value, (pull - depth / removal + 1).ravel()

    start = np.full(SIZE * SIZE, height.mean() - removal)
    options = {"maxiter": 20000, "maxfun": 40000, "maxcor": 50, "ftol": 1e-16, "gtol": 1e-10}
    found = minimize(function, start, jac=True, method="L-BFGS-B", options=options)
    assert np.abs(found.jac).max() < 1e-6
    return np.maximum(height - found.x.reshape(SIZE, SIZE), 0) / removal


@pytest.mark.parametrize("removal", [0.05, 0.5, 3.0])  # from contact on the peaks to contact everywhere
def test_an_increment_is_the_minimum_that_scipy_finds(removal):
    height = np.random.default_rng(5).normal(size=(SIZE, SIZE))
    stiffness = 2 * wave_numbers() + wave_numbers() ** 4  # springs of a half-space and a plate; S(0) = 0
    half = np.ascontiguousarray(stiffness[:, : SIZE // 2 + 1])
    pressure = _core._increment(height, half, removal)
    # Tolerance 1e-5 of the mean pressure: how far apart two minimisers stop on one function, both asked for far less.
    np.testing.assert_allclose(pressure, pressure_by_scipy(height, stiffness, removal), atol=1e-5)
    assert pressure.mean() == pytest.approx(1, rel=1e-12)
