"""Calibrating from Python and from the command line: what readings teach, and what the plan makes of it."""

import json
import pickle
import re

import pytest

import libtexture as lt
from test_command import command, small_job
from test_report import Page

READINGS = """# passes = 6
# step = level
when,total_um
before,262
before,260
before,261
before,261
before,259
before,262
after,256
after,254
after,256
after,255
after,254
after,257
"""


def spot_file(folder, text=READINGS):
    path = folder / "spot.csv"
    path.write_text(text)
    return path


def test_readings_narrow_the_wear_rate_and_predict_uses_it(tmp_path):
    job, path = lt.Job.load(small_job(tmp_path)), spot_file(tmp_path)
    result = lt.judge_test_spot(job, path)
    calibrated = lt.calibrate(job, path).job
    old, new = (one.sequence[0].step[0].abrasive for one in (job, calibrated))
    assert result == lt.judge_test_spot(job, lt.read_test_spot(path))
    assert new.wear_rate_mm3_per_n_m == pytest.approx(result.after.median, rel=1e-12)
    assert new.wear_rate_log_sd == result.after.log_sd < old.wear_rate_log_sd
    # As much faster as the pass is: the first pass of the step removes by the ratio of the wear rates, but for loading.
    first, second = (lt.predict(one).prediction.panels[0].passes[0].removed_um for one in (job, calibrated))
    ratio = result.after.median / result.before.median
    assert second / first == pytest.approx(ratio, rel=0.1)
    assert pickle.loads(pickle.dumps(result)) == result


def test_a_spot_teaches_of_other_grades_and_marks_that_go_of_grooves(tmp_path):
    path = small_job(tmp_path)
    job = lt.Job.load(path)
    level = job.sequence[0].step[0]
    film = lt.Catalogue.shipped().abrasives["P3000 film"]
    finer = level.replace(name="finer", abrasive=film, stop=lt.Stop(clear_owed_um=0.1))
    job = job.replace(sequence=[lt.Sequence(name="two", step=[level, finer])])
    text = READINGS.replace("# step", "# marks_gone_passes = 4\n# marks_left_passes = 3\n# step")
    result = lt.judge_test_spot(job, spot_file(tmp_path, text))
    (other,) = result.others
    assert other.abrasive == "P3000 film" and other.after.log_sd < other.before.log_sd
    assert result.groove_depth_after.log_sd < result.groove_depth_before.log_sd
    tried, kin = (step.abrasive for step in lt.calibrate(job, tmp_path / "spot.csv").job.sequence[0].step)
    assert tried.groove_depth_um == pytest.approx(result.groove_depth_after.median, rel=1e-9)
    assert kin.wear_rate_mm3_per_n_m == pytest.approx(other.after.median, rel=1e-9)
    assert (tried.family, kin.family) == (kin.family, "P2000 film")
    assert tried.wear_rate_of == kin.wear_rate_of == "this_hand"


def test_what_a_spot_needs_is_said_before_it_is_made(tmp_path):
    job = lt.Job.load(small_job(tmp_path))
    plan = lt.spot_plan(job)
    assert plan.passes > 0 and plan.log_sd_after <= 0.25 < plan.log_sd_before
    assert lt.spot_plan(job, lt.SpotAim(log_sd=0.4)).passes <= plan.passes
    (duty,) = [duty for duty in lt.predict(job).prediction.checklist if duty.kind == "make_test_spot"]
    assert duty.figures["passes"] == plan.passes and f"make {plan.passes} passes of" in duty.text


def test_a_calibrated_job_is_saved_and_read_again(tmp_path):
    calibrated = lt.calibrate(lt.Job.load(small_job(tmp_path)), spot_file(tmp_path)).job
    calibrated.save(tmp_path / "calibrated.json")
    assert lt.Job.load(tmp_path / "calibrated.json") == calibrated
    (tmp_path / "broken.json").write_text('{"schema": 1}')
    with pytest.raises(ValueError, match="broken.json:1: .*patch"):
        lt.Job.load(tmp_path / "broken.json")


def test_texture_told_at_the_spot_is_learned_as_well(tmp_path):
    job = lt.Job.load(small_job(tmp_path))
    text = READINGS.replace("# step", "# gloss_gone_passes = 4\n# rms_left_um = 0.25\n# step")
    seen = []
    result = lt.judge_test_spot(job, spot_file(tmp_path, text), progress=seen.append)
    assert result.texture_after.log_sd < result.texture_before.log_sd
    assert result.stiffness_after.log_sd < result.stiffness_before.log_sd
    assert seen and max(seen) <= 1
    calibrated = lt.calibrate(job, lt.read_test_spot(spot_file(tmp_path, text))).job
    assert calibrated.texture.scale_log_sd == result.texture_after.log_sd
    assert lt.surface_of(calibrated).rms_um == pytest.approx(result.texture_after.median, rel=1e-9)


def test_the_command_shows_belief_and_plan_before_and_after(tmp_path):
    path, saved, out = small_job(tmp_path), tmp_path / "calibrated.json", tmp_path / "out.json"
    told = command("calibrate", spot_file(tmp_path), path, "--save", saved, "--json", out)
    assert (told.returncode, told.stderr) == (0, "")
    assert max(map(len, told.stdout.splitlines()[:-1])) <= 100  # the last names the file
    result = lt.judge_test_spot(lt.Job.load(path), tmp_path / "spot.csv")
    figures = [f"{figure:.3g}" for figure in (result.before.median, result.before.least, result.before.most)]
    assert re.search(r"^wear rate, mm3/\(N m\) +" + " +".join(map(re.escape, figures)), told.stdout, re.M)
    assert re.search(r"^verdict +\w+", told.stdout, re.M)
    written = json.loads(out.read_text())
    assert set(written) == {"version", "seed", "job", "readings", "test_spot", "moved", "before", "after"}
    after = lt.Prediction.from_dict(written["after"])
    assert "Verdict after the spot: " + after.verdict.upper() in told.stdout
    assert "settle what the reasons name first" not in told.stdout  # a spot was worked
    for statement in (after.reasons[0], after.cautions[0], after.step_cautions[0], after.warnings[0]):
        assert statement.text in " ".join(told.stdout.split())
    assert lt.TestSpotResult.from_dict(written["test_spot"]) == result
    moved = lt.what_moved_belief(lt.Job.load(path), tmp_path / "spot.csv")
    assert moved.kind == "belief_by_readings" and moved.text in " ".join(told.stdout.split())
    again = command("predict", saved, "--json", tmp_path / "again.json")
    assert again.returncode == 0
    again = json.loads((tmp_path / "again.json").read_text())
    assert {name: again[name] for name in written["after"]} == written["after"]


def test_a_gauge_too_coarse_for_the_spot_is_warned_of_with_what_would_do(tmp_path):
    text = "# passes = 1\n# step = level\nwhen,total_um\nbefore,261\nafter,260\n"
    told = command("calibrate", spot_file(tmp_path, text), small_job(tmp_path))
    assert told.returncode == 0
    (warning,) = lt.judge_test_spot(lt.Job.load(tmp_path / "job.toml"), tmp_path / "spot.csv").warnings
    assert warning.kind == "spot_says_little" and warning.text in " ".join(told.stdout.split())


def test_the_command_writes_a_page_of_what_was_learned(tmp_path):
    path, shown = small_job(tmp_path), tmp_path / "spot.html"
    text = READINGS.replace("# step", "# gloss_gone_passes = 4\n# gloss_left_passes = 3\n# step")
    figures = tmp_path / "spot.json"
    told = command("calibrate", spot_file(tmp_path, text), path, "--report", shown, "--json", figures)
    assert (told.returncode, told.stderr) == (0, "")
    written = json.loads(figures.read_text())
    result, after = lt.TestSpotResult.from_dict(written["test_spot"]), lt.Prediction.from_dict(written["after"])
    page = Page(shown.read_text(encoding="utf-8"))
    for belief in (result.before, result.after, result.texture_before, result.texture_after, result.stiffness_after):
        for figure in (belief.median, belief.least, belief.most):
            assert f"{figure:.3g}" in page.text
    now, gauge = result.after.median / result.before.median, result.removed_um / result.expected_um
    order = [  # the verdict after the spot, then what the spot says, then what it was told of
        after.verdict.capitalize(),
        after.reasons[0].text_in("unicode"),
        f"Wear rate is now believed {now:.2f} times what it was before the spot",
        f"the gauge alone says {gauge:.2f} times",
        lt.Statement.from_dict(written["moved"]).text,
        "6 readings before: 262, 260, 261, 261, 259, 262 µm; 6 after: 256, 254, 256, 255, 254, 257 µm",
        "last glossy valley gone after 4 passes",
        "glossy valleys still seen after 3 passes",
        "over budget, %",
        after.step_cautions[0].text,
        "What it started from",
    ]
    body = page.text[page.text.index("after a test spot with") :]
    places = [body.index(words) for words in order]
    assert places == sorted(places)
    images = [attributes for tag, attributes in page.tags if tag == "img"]
    assert images and all(image["src"].startswith("data:") and image["alt"] for image in images)
    assert not {tag for tag, _ in page.tags} & {"script", "link", "iframe"}


def test_the_page_says_first_that_a_spot_says_little_and_what_would_do(tmp_path):
    text = "# passes = 1\n# step = level\nwhen,total_um\nbefore,261\nafter,260\n"
    shown = tmp_path / "spot.html"
    assert command("calibrate", spot_file(tmp_path, text), small_job(tmp_path), "--report", shown).returncode == 0
    words = " ".join(Page(shown.read_text(encoding="utf-8")).text.split())
    warning = lt.judge_test_spot(lt.Job.load(tmp_path / "job.toml"), tmp_path / "spot.csv").warnings[0]
    assert words.index("The spot says little") < words.index(warning.text_in("unicode"))
    assert warning.kind == "spot_says_little" and warning.figures["passes_needed"] > 1


REFUSED = {  # name: (text of the readings, words that the line must hold)
    "thicker after": ("# passes = 6\nwhen,total_um\nbefore,250\nafter,262\n", ["after_um", "thicker", "swapped"]),
    "reading below zero": ("# passes = 6\nwhen,total_um\nbefore,-250\nafter,240\n", ["spot.csv:3", "total_um", "-250"]),
    "no reading after": ("# passes = 6\nwhen,total_um\nbefore,250\n", ["after_um"]),
    "no passes": ("when,total_um\nbefore,250\nafter,240\n", ["passes"]),
    "a step that is not there": ("# passes = 6\n# step = levle\nwhen,total_um\nbefore,250\nafter,240\n", ["levle"]),
    "a spread above 1": ("# passes = 6\n# spot_cv = 15\nwhen,total_um\nbefore,250\nafter,240\n", ["spot_cv", "15"]),
    "gone after more passes than were made": (
        "# passes = 6\n# gloss_gone_passes = 7\nwhen,total_um\nbefore,250\nafter,240\n",
        ["gloss_gone_passes", "7"],
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_readings_are_refused_in_one_line(tmp_path, name):
    text, words = REFUSED[name]
    told = command("calibrate", spot_file(tmp_path, text), small_job(tmp_path), "--save", tmp_path / "out.json")
    assert (told.returncode, told.stdout, told.stderr.count("\n")) == (2, "", 1)
    for word in words:
        assert word in told.stderr
    assert not (tmp_path / "out.json").exists()


def test_a_confidence_outside_0_to_1_is_refused(tmp_path):
    told = command("predict", small_job(tmp_path, "rear_door", (r"\[budget\]", "[edge]\nconfidence = 1.5\n\n[budget]")))
    assert told.returncode == 2 and "confidence" in told.stderr and "1.5" in told.stderr


def test_the_plan_says_minutes_discs_edges_and_what_to_do_first(tmp_path):
    path = small_job(tmp_path, "rear_door", (r"\[budget\]", "[labour]\nlook_minutes = 2.0\n\n[budget]"))
    job = lt.Job.load(path)
    assert job.labour.look_minutes == 2
    told, prediction = command("predict", path, "--details"), lt.predict(job).prediction
    panel = prediction.panels[0]
    figures = [panel.labour.sanding_minutes, panel.labour.looking_minutes, panel.labour.disc_change_minutes]
    assert re.search(rf"^{panel.name} +" + " +".join(f"{figure:.1f}" for figure in figures), told.stdout, re.M)
    assert f"{prediction.labour.total_minutes:.0f} min of work" in told.stdout
    for step in panel.disc_lives:
        assert f"  - {step.step}: " in told.stdout
    assert "edges, worked with the disc kept on the flat: " in told.stdout and panel.edge.confidence == 0.95
    assert "Before the first pass" in told.stdout and prediction.checklist[0].text[:40] in told.stdout


def test_a_calibration_holds_the_result_the_job_and_what_moved_the_belief(tmp_path):
    job, spot = lt.Job.load(small_job(tmp_path)), lt.read_test_spot(spot_file(tmp_path))
    calibration = lt.calibrate(job, spot)
    assert calibration.result == lt.judge_test_spot(job, spot)
    assert calibration.moved == lt.what_moved_belief(job, spot)
    assert lt.Calibration.from_dict(calibration.to_dict()) == calibration


def test_a_calibration_taken_for_a_job_as_before_still_works_and_warns(tmp_path):
    job = lt.Job.load(small_job(tmp_path))
    calibration = lt.calibrate(job, spot_file(tmp_path))
    with pytest.warns(DeprecationWarning, match=r"write \.job"):
        assert calibration.panel == job.panel
    with pytest.warns(DeprecationWarning, match=r"write \.job"):
        assert lt.surface_of(calibration) == lt.surface_of(calibration.job)
    with pytest.raises(AttributeError, match="'Calibration' object has no attribute 'colour'"):
        calibration.colour
