"""Lengths in the wrong unit, steps and tools without a name, measured maps: what Python says of them."""

import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES


def test_a_thickness_in_mil_is_refused_with_what_to_write():
    job = EXAMPLES["Job"]()
    with pytest.raises(ValueError, match=r"clear_left_least_um must be at least 4: is it mil\? then write 35.56"):
        job.replace(budget=lt.Budget(clear_left_least_um=1.4))
    with pytest.raises(ValueError, match=r"clear_um must be at least 8: is it mil\? then write 60.96"):
        job.replace(coating=lt.Paint(kind="repaint", clear_um=2.4))
    panel = job.panel[0].replace(crown_radius_m=4000)
    with pytest.raises(ValueError, match=r"panel\[0\].crown_radius_m must be at most 200: is it mm\? then write 4 "):
        job.replace(panel=[panel])


def test_steps_are_called_by_titles_that_differ():
    step = EXAMPLES["Step"]().replace(name="")
    assert lt.titles_of([step, step]) == [step.abrasive.name, f"{step.abrasive.name} (2)"]


def test_a_measured_map_is_told_with_the_prediction(tmp_path):
    grid = lt.Grid(rows=48, cols=64, pixel_mm=0.2)
    bands = [lt.TextureBand(wavelength_mm=2.2, rms_um=0.7)]
    flat = lt.synthesize(bands=bands, grid=grid, seed=3)
    tilted = flat.height_um + np.linspace(0, 20, 64)
    lt.write_surface(lt.HeightField(height_um=tilted, pixel_mm=0.2), tmp_path / "map.csv")
    source = lt.TextureSource(file=str(tmp_path / "map.csv"))
    job = EXAMPLES["Job"]().replace(patch=grid, texture=source, uncertainty=lt.Uncertainty(samples=100))
    assert lt.surface_of(job).rms_um == pytest.approx(0.7, rel=0.05)
    notes = lt.surface_notes(job)
    assert notes[0].kind == "form_removed"
    assert notes[0].figures["tilt_um"] == pytest.approx(20, rel=0.05)
    assert notes[0] in lt.predict(job).prediction.warnings
    kept = job.replace(texture=source.replace(form="kept"))
    np.testing.assert_allclose(lt.surface_of(kept).height_um, tilted)
    assert lt.surface_notes(EXAMPLES["Job"]()) == []
    with pytest.raises(ValueError, match="states pixel_mm = 0.2, and 0.4 is asked for"):
        lt.surface_of(job.replace(patch=lt.Grid(rows=48, cols=64, pixel_mm=0.4)))
