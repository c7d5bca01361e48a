"""A seed is a whole number or a numpy Generator."""

import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES


def synthesize(seed):
    band = lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)
    return lt.synthesize(bands=[band], grid=lt.Grid(rows=16, cols=32, pixel_mm=0.4), seed=seed)


def test_a_generator_gives_the_surface_of_the_number_that_it_draws():
    drawn = np.random.default_rng(7).integers(2**64, dtype=np.uint64)  # numpy's own, by another call
    assert synthesize(np.random.default_rng(7)) == synthesize(int(drawn)) == synthesize(drawn)


def test_a_generator_goes_on():
    rng = np.random.default_rng(7)
    assert synthesize(rng) != synthesize(rng)


def test_a_job_holds_the_number_that_a_generator_drew():
    job = EXAMPLES["Job"]().replace(seed=np.random.default_rng(7))
    assert job.seed == int(np.random.default_rng(7).integers(2**64, dtype=np.uint64))


@pytest.mark.parametrize("wrong", [-1, 2**64, 1.5, "seven"])
def test_what_is_no_seed_is_refused(wrong):
    with pytest.raises(ValueError, match=r"^seed must be a whole number, 0 to 2\^64 - 1, or a numpy") as refused:
        synthesize(wrong)
    assert "\n" not in str(refused.value)
    with pytest.raises(ValueError, match=r"^Job: seed must be of type int \| numpy.random.Generator"):
        EXAMPLES["Job"]().replace(seed=wrong)
