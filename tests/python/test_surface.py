"""The surface floor as Python sees it; what the numbers should be is tested in C++."""

import threading
import warnings

import numpy as np
import pytest

import libtexture as lt

GRID = lt.Grid(rows=128, cols=128, pixel_mm=0.2)
BAND = lt.TextureBand(wavelength_mm=2.5, rms_um=1.0, bandwidth_octaves=1.0)


def test_a_synthesized_surface_has_the_rms_asked():
    field = lt.synthesize(bands=[BAND], grid=GRID, seed=1)
    assert field.grid == GRID
    assert field.rms_um == pytest.approx(1.0, rel=1e-9)  # the promise of synthesize


def test_band_rms_adds_up_to_the_rms():
    field = lt.synthesize(bands=[BAND], grid=GRID, seed=1)
    bands = lt.band_rms_um(field, edges_mm=[0.2, 1, 2, 4, 8, np.inf])
    assert isinstance(bands, np.ndarray) and bands.shape == (5,)
    assert np.hypot.reduce(bands) == pytest.approx(field.rms_um, rel=1e-12)  # Parseval; rounding only


def test_synthesis_in_many_threads_gives_the_bytes_of_one():
    expected = [lt.synthesize(bands=[BAND], grid=GRID, seed=seed) for seed in range(4)]
    results = [None] * 4

    def work(seed):
        results[seed] = lt.synthesize(bands=[BAND], grid=GRID, seed=seed)

    threads = [threading.Thread(target=work, args=(seed,)) for seed in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert results == expected


def test_a_coating_knows_its_total():
    coats = [lt.Coat(name="clear", thickness_um=45), lt.Coat(name="base", thickness_um=15)]
    assert lt.Coating(coats=coats).total_um == 60
    with pytest.raises(ValueError, match="coats"):
        lt.Coating(coats=[])


def test_levelling_rates_come_for_a_number_or_an_array():
    film = dict(thickness_um=50, surface_tension_mn_per_m=30, viscosity_pa_s=1)
    one = lt.levelling_rate_per_s(wavelength_mm=1, **film)
    both = lt.levelling_rate_per_s(wavelength_mm=[[1, 2]], **film)
    assert isinstance(one, float)
    # Closed form (Orchard 1962): sigma h^3 q^4/(3 eta), so a wave twice as long dies 16 times slower.
    assert one == pytest.approx(30e-3 * 50e-6**3 * (2 * np.pi / 1e-3) ** 4 / 3, rel=1e-12)
    assert both.shape == (1, 2) and both[0, 0] / both[0, 1] == pytest.approx(16, rel=1e-12)
    assert lt.levelling_rate_per_s(wavelength_mm=1, exact=True, **film) < one


def test_a_dry_film_shows_each_wave_of_the_base_by_its_share(field):
    film = lt.WetFilm(
        thickness_um=60, surface_tension_mn_per_m=30, viscosity_pa_s=0.2, viscosity_rise_s=20, solids_share=0.55
    )
    share = lt.dry_amplitude_share(film, wavelength_mm=6.4)  # the only wave of the field
    np.testing.assert_allclose(lt.dry(base=field, wet_film=film).height_um, share * field.height_um, atol=1e-12)


def test_gloss_and_image_clarity_of_a_smooth_clear():
    # ISO 2813: 100 GU is glass of index 1.567; Fresnel at 20 degrees for index 1.5 gives 82.045.
    assert lt.gloss_gu(angle_deg=20, refractive_index=1.5) == pytest.approx(82.045, abs=0.001)
    flat = lt.HeightField(height_um=np.zeros((4, 64)), pixel_mm=0.2)
    assert lt.image_clarity_percent(flat, comb_mm=0.5, slit_mm=0.0) == pytest.approx(100, abs=1e-9)
    with pytest.raises(ValueError, match="^image_clarity_percent: unknown field com_mm; nearest known: comb_mm$"):
        lt.image_clarity_percent(flat, com_mm=0.5)


def test_the_slope_of_a_wave_is_its_derivative(field):
    # Closed form: d/dx sin(2 pi x/L) in um per um, L = 32 pixels of 200 um.
    phase = 2 * np.pi * (np.arange(32) + 0.5) / 32
    np.testing.assert_allclose(lt.slope(field)[0], 2 * np.pi / 6400 * np.cos(phase), atol=1e-15)
    assert lt.rms_slope(field, direction="columns") == pytest.approx(0, abs=1e-15)


def test_a_gloss_beyond_its_formula_comes_with_a_warning():
    with pytest.warns(UserWarning, match="roughness_nm of 200 nm at 20 degrees is beyond what the formula knows"):
        gloss_gu = lt.gloss_gu(angle_deg=20, refractive_index=1.5, roughness_nm=200)
    assert gloss_gu < 0.02 * lt.gloss_gu(angle_deg=20, refractive_index=1.5)
    assert not lt.gloss_knows_roughness(angle_deg=20, roughness_nm=200)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        lt.gloss_gu(angle_deg=20, refractive_index=1.5, roughness_nm=50)


@pytest.mark.parametrize(
    "call, message",
    [
        (lambda: lt.gloss_gu(angle_deg=20, refractive_index=1.0), "refractive_index must be > 1 and <= 4"),
        (lambda: lt.gloss_gu(angle_deg=90, refractive_index=1.5), "angle_deg must be >= 0 and < 90 degrees"),
        (lambda: lt.specular_share([], angle_deg=-1), "angle_deg must be >= 0 and < 90 degrees"),
        (lambda: lt.Viewer(viewer_m=-1), "viewer_m must be >= 0"),
        (lambda: lt.Viewer(scene_m=-1), "scene_m must be > 0"),
        (lambda: lt.smallest_letter_mm(wander_arcmin=1, distance_m=0), "distance_m must be > 0"),
        (lambda: wet_film(solids_share=0), "solids_share must be > 0 and <= 1"),
        (lambda: wet_film(solids_share=1.1), "solids_share must be > 0 and <= 1"),
        (lambda: wet_film(viscosity_pa_s=0), "viscosity_pa_s must be > 0"),
    ],
)
def test_what_cannot_be_is_refused_by_field_and_rule(call, message):
    with pytest.raises(ValueError, match=message):
        call()


@pytest.mark.parametrize("bad", [{"distance_mm": 0}, {"comb_mm": -1}, {"angle_deg": 90}])
def test_a_clarity_set_up_that_cannot_be_is_refused(field, bad):
    with pytest.raises(ValueError, match=next(iter(bad))):
        lt.image_clarity_percent(field, **bad)


@pytest.mark.parametrize("bad", [{"viewer_m": 0}, {"scene_m": -2}, {"angle_deg": 89}, {"refractive_index": 1.0}])
def test_a_view_that_cannot_be_is_refused(field, bad):
    with pytest.raises(ValueError, match=next(iter(bad))):
        lt.render_reflection(field, **bad)


def wet_film(**changes):
    film = {"thickness_um": 60, "surface_tension_mn_per_m": 30, "viscosity_pa_s": 0.2, "viscosity_rise_s": 20}
    return lt.WetFilm(**{**film, "solids_share": 0.55, **changes})
