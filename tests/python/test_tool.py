"""The tool floor as Python sees it; what the numbers should be is tested in C++."""

import numpy as np
import pytest

import libtexture as lt
from conftest import abrasive, backing, motion


def test_a_grit_is_its_name_or_its_size():
    assert lt.Grit("P1500").median_um == 12.6  # FEPA 43 / ISO 6344-3, P1500
    assert lt.Grit(median_um=3.0).median_um == 3.0
    assert repr(lt.Grit("P1500")) == "Grit('P1500')" and repr(lt.Grit(median_um=3.0)) == "Grit(median_um=3.0)"


def test_a_bare_number_is_no_grit():
    with pytest.raises(ValueError, match="3000"):
        lt.Grit("3000")


@pytest.mark.parametrize("given", [{}, {"name": "P1500", "median_um": 12.6}])
def test_a_grit_takes_one_of_name_and_size(given):
    with pytest.raises(ValueError, match="^Grit: takes either a name or median_um$"):
        lt.Grit(**given)


def test_an_abrasive_takes_a_grit_or_its_name():
    assert abrasive().grit == lt.Grit("P1200")
    assert abrasive().replace(grit=lt.Grit(median_um=3)).grit.median_um == 3
    with pytest.raises(ValueError, match="Grit"):
        abrasive().replace(grit="1500")


def test_enums_cross_as_words():
    assert abrasive().carrier == "film_disc"
    assert abrasive().made_for == ["dry", "damp"]
    with pytest.raises(
        ValueError, match=r"^Abrasive: carrier must be one of film_disc foam_disc compound \(got felt\)$"
    ):
        abrasive().replace(carrier="felt")
    with pytest.raises(ValueError, match="made_for must be of type list"):
        abrasive().replace(made_for="dry")


def test_stiffness_has_the_shape_of_the_wavelengths():
    one = backing().stiffness_kpa_per_um(2.0)
    assert isinstance(one, float)
    many = backing().stiffness_kpa_per_um(np.full((2, 1, 3), 2.0))
    np.testing.assert_array_equal(many, np.full((2, 1, 3), one))


def test_the_limits_of_a_backing():
    springs = lt.Backing.springs(stiffness_kpa_per_um=0.03)
    assert springs.stiffness_kpa_per_um(1.0) == pytest.approx(0.03, rel=1e-12)
    half_space = lt.Backing.half_space(modulus_mpa=1.0, poisson=0.0)
    # Closed form: E q/2 without a skin, poisson 0 (Johnson 1985, Contact Mechanics, from memory); q = pi/mm,
    # 1e-9 kPa/um a Pa/m.
    assert half_space.stiffness_kpa_per_um(2.0) == pytest.approx(1e6 * (np.pi / 1e-3) / 2 * 1e-9, rel=1e-12)
    assert lt.Backing.rigid().stiffness_kpa_per_um(1.0) == np.inf


def test_pressure_follows_from_force_and_disc():
    assert motion().pressure_kpa == pytest.approx(25 / (np.pi * 0.075**2) / 1e3, rel=1e-12)  # closed form
    # Closed form at spin 0: pi orbit speed.
    assert motion().sliding_m_per_s == pytest.approx(np.pi * 0.005 * 10000 / 60, rel=1e-12)
