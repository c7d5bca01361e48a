"""Jobs as Python sees them; reading them is tested in C++."""

import pickle
from pathlib import Path

import pytest

import libtexture as lt
from conftest import EXAMPLES

JOBS = sorted((Path(__file__).parents[2] / "examples" / "jobs").glob("*.toml"))


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_an_example_job_is_valid_and_is_its_dict(path):
    job = lt.Job.load(path)
    assert job.panel and job.sequence
    assert lt.Job.from_dict(job.to_dict()) == job


def test_a_job_of_values_can_be_changed():
    job = EXAMPLES["Job"]()
    assert job.replace(seed=2**64 - 1).seed == 2**64 - 1
    with pytest.raises(ValueError, match="panel"):
        job.replace(panel=[])


def test_a_missing_job_file_is_named():
    with pytest.raises(FileNotFoundError, match="no_such_job.toml"):
        lt.Job.load("no_such_job.toml")


def test_film_at_a_place_that_was_read_by_an_exact_gauge_is_the_reading():
    # Ordinary kriging interpolates (closed form); a gauge of stated uncertainty 0 is given .01 um.
    panel = EXAMPLES["Panel"]().replace(
        readings=[lt.Reading(x_mm=0, y_mm=0, total_um=120), lt.Reading(x_mm=400, y_mm=0, total_mil=4)]
    )
    paint = lt.Paint(kind="factory", gauge=lt.Gauge(uncertainty_um=0, gain_percent=0))
    film = lt.film_at(panel, paint, x_mm=400, y_mm=0)
    assert film.total_um == pytest.approx(101.6, abs=0.02)  # 1 mil = 25.4 um
    assert film.clear_um == pytest.approx(0.40 * film.total_um)  # 2.0 of 5.0 mil: I-CAR, published


def test_budget_rules_say_which_binds():
    # 1.4 mil left (General Motors service bulletin 86-10-24, 1986), .5 mil removed (Nissan service bulletin, 1993).
    thin, thick = (lt.budget_rules(lt.published_budget(), clear_um=clear_um) for clear_um in (45, 60))
    assert [(rule.limit, rule.removable_um) for rule in thin if rule.is_binding] == [("clear_left", pytest.approx(9.4))]
    assert [(rule.limit, rule.removable_um) for rule in thick if rule.is_binding] == [("clear_removed", 12.7)]


def test_rules_are_those_of_the_paint_until_a_job_states_its_own():
    job = EXAMPLES["Job"]().replace(budget=lt.Budget(reserve_um=3))
    for kind in ("factory", "repaint", "unknown"):
        paint = job.replace(coating=lt.Paint(kind=kind))
        assert lt.budget_of(paint) == lt.default_budget(kind).replace(reserve_um=3)
    # 1.4 mil stays, and a quarter of what is there may go (estimate): of 114 um 28.5, less the reserve.
    assert lt.removable_um(lt.budget_of(paint.replace(coating=lt.Paint(kind="repaint"))), clear_um=114) == 25.5
    own = lt.Budget(clear_removed_most_um=5)
    assert lt.budget_of(job.replace(budget=own)) == own


def test_a_first_step_without_a_rule_is_worked_to_the_target():
    job = lt.Job.load(JOBS[-1].with_name("rear_door.toml"))
    for sequence in job.sequence:
        worked = lt.worked_sequence(job, sequence=sequence.name)
        assert worked.step[0].stop == lt.target_stop(job.target) == lt.Stop(rms_um=0.2, band_mm=(1, 8))
        assert worked.step[1:] == sequence.step[1:]


SEEN = EXAMPLES["Job"]().replace(
    patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),
    texture=lt.TextureSource(seen=lt.SeenTexture(wavelength_mm=2.5, letter_mm=15, distance_m=3)),
    uncertainty=lt.Uncertainty(samples=200),
)


@pytest.mark.parametrize("eye_to_paint_m", [None, 0.5])
def test_letters_that_are_typed_are_those_of_the_first_row(eye_to_paint_m):
    seen = SEEN.texture.seen.replace(eye_to_paint_m=eye_to_paint_m)
    job = SEEN.replace(texture=lt.TextureSource(seen=seen))
    (panel,) = lt.predict(job).prediction.panels
    # The patch has whole waves only, ten of 2.5 mm to its side: their slope is that of the band within 1 %.
    assert panel.start.smallest_letter_mm == pytest.approx(15, rel=0.01)
    eye = lt.viewer_of(job)
    assert (eye.viewer_m, eye.scene_m) == pytest.approx((0.5, 2.5) if eye_to_paint_m else (1, 2))


def test_letters_finer_than_eyes_read_are_asked_about():
    # 5 arcmin at 3 m are 4.4 mm (ISO 8596).
    fine = SEEN.replace(
        texture=lt.TextureSource(seen=SEEN.texture.seen.replace(letter_mm=3)),
        target=lt.Target(letter_mm=2, distance_m=3),
    )
    kinds = ("seen_letter_fine", "target_letter_fine")
    asked = [warning for warning in lt.predict(fine).prediction.warnings if warning.kind in kinds]
    assert tuple(warning.kind for warning in asked) == kinds
    assert asked[0].figures["limit_mm"] == pytest.approx(4.4, abs=0.05)
    assert "Letters of 3 mm at 3 m are at or below the limit of sight, 4.4 mm" in asked[0].text
    assert not any(warning.kind in kinds for warning in lt.predict(SEEN).prediction.warnings)


def test_a_letter_target_is_missed_in_every_world_where_the_panel_ends_matt():
    job = SEEN.replace(target=lt.Target(letter_mm=40, distance_m=3))
    (panel,) = lt.predict(job).prediction.panels
    assert panel.steps[-1].smallest_letter_mm is None
    assert panel.risk.target_missed_probability == 1


def test_the_index_of_the_clear_is_the_jobs():
    job = SEEN.replace(coating=SEEN.coating.replace(refractive_index=1.54))
    (panel,) = lt.predict(job).prediction.panels
    assert panel.start.gloss_20_gu == pytest.approx(92.667, abs=1e-3)  # closed form: Fresnel, ISO 2813


def test_risk_has_quantiles_in_order_and_draws_that_add_up():
    job = EXAMPLES["Job"]().replace(uncertainty=lt.Uncertainty(samples=200))
    predicted = lt.predict(job)
    (panel,), (draws,) = predicted.prediction.panels, predicted.draws
    for spread in (panel.risk.removed_um, panel.risk.clear_left_least_um, panel.risk.levelling_efficiency):
        assert spread.p05 <= spread.p50 <= spread.p95
    assert panel.risk.samples == len(draws.removed_um) == 200
    assert draws.levelling_um + draws.overshoot_um + draws.debt_um == pytest.approx(draws.removed_um)
    assert sum(draws.is_target_missed) / 200 == panel.risk.target_missed_probability
    assert (pickle.loads(pickle.dumps(predicted)).draws[0].removed_um == draws.removed_um).all()


def test_a_panel_that_has_reached_its_target_is_left_as_it_is():
    job = lt.Job.load(JOBS[-1].with_name("rear_door.toml"))
    bands = [lt.TextureBand(wavelength_mm=2.5, rms_um=0.03)]
    level = job.sequence[0].step[0].replace(stop=lt.Stop(rms_um=0.2))
    finish = job.sequence[0].step[-1].replace(stop=lt.Stop(clear_owed_um=0))
    job = job.replace(
        patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),
        texture=lt.TextureSource(bands=bands),
        target=lt.Target(rms_um=0.2),
        sequence=[lt.Sequence(name="nothing to do", step=[level, finish])],
        uncertainty=lt.Uncertainty(samples=200),
    )
    prediction = lt.predict(job).prediction
    (panel,) = prediction.panels
    assert [step.passes for step in panel.steps] == [0, 0]
    assert panel.removed_um == 0 and panel.risk.removed_um.p95 == 0  # in no world
    assert panel.edge is None and panel.disc_lives == []
    assert sum(warning.kind == "step_not_worked" for warning in prediction.warnings) == 2
    assert lt.Prediction.from_dict(prediction.to_dict()) == prediction
