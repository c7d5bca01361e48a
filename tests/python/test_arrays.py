"""Arrays cross to numpy without a copy and are not converted silently."""

import gc

import numpy as np
import pytest

import libtexture as lt


def test_heights_are_a_read_only_view_of_the_field(field):
    first, second = field.height_um, field.height_um
    assert np.shares_memory(first, second)
    assert first.base is field
    assert not first.flags.writeable
    assert first.dtype == np.float64 and first.flags.c_contiguous and first.shape == (4, 32)
    with pytest.raises(ValueError):
        first[0, 0] = 1


def test_a_view_keeps_its_field_alive(field):
    expected = field.height_um.copy()
    other = lt.HeightField(height_um=expected, pixel_mm=0.2)
    heights = other.height_um
    del other
    gc.collect()
    [lt.HeightField(height_um=np.zeros((4, 32)), pixel_mm=0.2) for _ in range(100)]  # would land in freed memory
    np.testing.assert_array_equal(heights, expected)


def test_a_field_does_not_change_with_the_array_it_was_made_of():
    heights = np.ones((4, 8))
    field = lt.HeightField(height_um=heights, pixel_mm=0.2)
    heights[:] = 5
    assert field.mean_um == 1


def test_one_dimension_is_a_profile():
    assert lt.HeightField(height_um=np.arange(8.0), pixel_mm=0.2).height_um.shape == (1, 8)


@pytest.mark.parametrize(
    "heights, message",
    [
        (np.ones((4, 8), dtype=np.float32), r"must be a numpy array of float64.*\(got float32\)"),
        (np.ones((8, 4)).T, r"must be in C order.*\(got strides"),
        (np.ones((4, 16))[:, ::2], r"must be in C order"),
        ([[1.0] * 8] * 4, r"must be a numpy array.*\(got list\)"),
        (np.ones((1, 4, 8)), r"must have 2 dimensions.*\(got 3\)"),
        (np.ones((4, 2)), r"cols must be between 4 and 16384"),
        (np.full((4, 8), np.inf), r"height_um\[0, 0\] must be finite"),
    ],
)
def test_an_unsuitable_array_is_refused_with_what_is_needed(heights, message):
    with pytest.raises(ValueError, match=message):
        lt.HeightField(height_um=heights, pixel_mm=0.2)


def test_an_open_patch_is_refused_with_the_reason():
    with pytest.raises(ValueError, match="periodic must be True.*Fourier.*mirror or detrend"):
        lt.HeightField(height_um=np.ones((4, 8)), pixel_mm=0.2, periodic=False)


def test_figures_are_those_of_numpy():
    rng = np.random.default_rng(1)
    heights = rng.normal(size=(16, 32))
    field = lt.HeightField(height_um=heights, pixel_mm=0.2)
    # Reference: numpy. Tolerance: a few rounding errors of a sum of 512 numbers of size 1.
    assert field.rms_um == pytest.approx(heights.std(), rel=1e-13)
    assert field.peak_to_valley_um == pytest.approx(np.ptp(heights), rel=1e-15)
    assert field.valley_depth_um == pytest.approx(heights.mean() - heights.min(), rel=1e-13)
