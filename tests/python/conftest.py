"""One valid value of every value class, for the tests that hold for all of them."""

import inspect

import numpy as np
import pytest

import libtexture as lt

WAVES = np.sin(2 * np.pi * (np.arange(32) + 0.5) / 32) * np.ones((4, 1))



def backing():
    return lt.Backing(
        skin=lt.Skin(modulus_gpa=4.5, thickness_um=75, poisson=0.38),
        layers=[lt.Layer(modulus_mpa=0.3, thickness_mm=10, poisson=0.1)],
    )


def abrasive():
    return lt.Abrasive(
        name="P1500 film",
        grit="P1500",
        wear_rate_mm3_per_n_m=0.1,
        worn_wear_rate_mm3_per_n_m=0.02,
        loading_um=20.0,
        made_for=("dry", "damp"),
        ranges={"loading_um": (10, 40)},
    )


def motion():
    return lt.Motion(
        disc_diameter_mm=150, orbit_mm=5, speed_rpm=10000, force_n=25, feed_mm_per_s=50, step_over_mm=75
    )


EXAMPLES = {
    "Grid": lambda: lt.Grid(rows=4, cols=32, pixel_mm=0.2),
    "HeightField": lambda: lt.HeightField(height_um=WAVES, pixel_mm=0.2),
    "TextureBand": lambda: lt.TextureBand(wavelength_mm=2.5, rms_um=1.0, lay_deg=30),
    "Coat": lambda: lt.Coat(name="clear", thickness_um=45, uncertainty_um=5),
    "Coating": lambda: lt.Coating(coats=[lt.Coat(name="clear", thickness_um=45)]),
    "WetFilm": lambda: lt.WetFilm(
        thickness_um=60, surface_tension_mn_per_m=30, viscosity_pa_s=0.2, viscosity_rise_s=20, solids_share=0.55
    ),
    "Grit": lambda: lt.Grit("P1500"),
    "Abrasive": abrasive,
    "Skin": lambda: lt.Skin(modulus_gpa=4.5, thickness_um=75, poisson=0.38),
    "Layer": lambda: lt.Layer(modulus_mpa=0.3, thickness_mm=10, poisson=0.1, plateau_kpa=12),
    "Backing": backing,
    "Motion": motion,
    "GroovePopulation": lambda: lt.GroovePopulation(depth_um=0.2, coverage=5),
}

CLASSES = [
    name
    for name, member in inspect.getmembers(lt, inspect.isclass)
    if name in lt.__all__ and "replace" in vars(member) or name in ("HeightField", "Grit")
]


@pytest.fixture(params=CLASSES)
def value(request):
    return EXAMPLES[request.param]()


@pytest.fixture
def field():
    return EXAMPLES["HeightField"]()
