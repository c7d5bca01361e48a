"""The command runs from the build tree: what it prints, what it writes, and how it refuses."""

import json
import os
import re
import signal
import subprocess
import time
from pathlib import Path

import pytest

import libtexture as lt
from libtexture.command import main

JOBS = Path(__file__).parents[2] / "examples" / "jobs"
PATCH = re.compile(r"patch = \{.*?\}")


def command(*words, **options):
    return subprocess.run(
        [os.environ["LIBTEXTURE_COMMAND"], *map(str, words)], capture_output=True, text=True, **options
    )


def small_job(folder, name="rear_door", *changes):
    """An example job on a patch of 64 x 64 pixels and in 200 worlds, with changes (pattern, new) of its text."""
    text = PATCH.sub("patch = { rows = 64, cols = 64, pixel_mm = 0.4 }", (JOBS / f"{name}.toml").read_text(), count=1)
    text = text.replace("seed =", "uncertainty = { samples = 200 }\nseed =", 1)
    for pattern, new in changes:
        text, count = re.subn(pattern, new, text, count=1, flags=re.DOTALL)
        assert count == 1, pattern
    path = folder / "job.toml"
    path.write_text(text)
    return path


def test_the_version_is_the_packages():
    assert command("--version").stdout.strip() == lt.__version__


@pytest.mark.parametrize("words", [["--nonsense"], ["predict"], ["forsee", "job.toml"]])
def test_an_unknown_or_missing_word_ends_with_status_2_and_one_line(words):
    result = command(*words)
    assert result.returncode == 2
    assert result.stdout == "" and result.stderr.count("\n") == 1


def test_predict_prints_tables_of_at_most_100_columns_with_the_figures_in_both_units(tmp_path):
    path = small_job(tmp_path)
    result = command("predict", path, "--details")
    assert (result.returncode, result.stderr) == (0, "")
    assert max(map(len, result.stdout.splitlines())) <= 100
    prediction = lt.predict(lt.Job.load(path)).prediction
    (panel,) = prediction.panels
    for row in panel.steps:
        figures = rf"{row.passes} +{row.removed_um:.2f} +{row.removed_p95_um:.2f} +{row.removed_max_um:.2f}"
        mil = rf"{row.removed_um / 25.4:.3f}"  # 1 mil = 25.4 um by definition of the inch
        assert re.search(rf"^{row.name} +{figures} +{mil} +{row.clear_left_mean_um:.1f}", result.stdout, re.M)
        assert re.search(rf"^{row.name} +{row.rms_um:.3f} +{row.peak_to_valley_um:.2f}", result.stdout, re.M)
    for rule in panel.budget:
        assert f"{rule.limit_um:.1f} um" in result.stdout or rule.limit == "clear_itself"
    assert len(re.findall(r"^  binds ", result.stdout, re.M)) == 1
    assert f"Verdict: {prediction.verdict.upper()}" in result.stdout
    for caution in prediction.cautions:
        assert caution.text in " ".join(result.stdout.split())


# The two invented scenarios state in their first lines what the answer should be.
@pytest.mark.parametrize("name, verdicts", [("rear_door", {"GO", "GO WITH CARE"}), ("factory_lid", {"DO NOT SAND"})])
def test_an_example_gets_the_answer_that_its_scenario_asks_for(tmp_path, name, verdicts):
    said = command("predict", small_job(tmp_path, name)).stdout.splitlines()[0].split("   ")[0]
    assert said in verdicts


# One screen of an answer: the verdict first, the cautions last, nothing cut off.
@pytest.mark.parametrize("name", ["rear_door", "factory_lid", "bonnet", "scratched_bonnet"])
def test_predict_answers_on_one_screen(tmp_path, name):
    path = small_job(tmp_path, name)
    lines = command("predict", path).stdout.splitlines()
    assert len(lines) <= 20 and max(map(len, lines)) <= 100
    plan = lt.predict(lt.Job.load(path)).prediction
    assert lines[0].startswith(plan.verdict.upper() + "   ") and lt.Job.load(path).panel[0].name in lines[0]
    assert "Clear does not return" in lines[-1] and "licensed practice prevail" in lines[-1]


def test_the_screen_shows_the_figures_of_the_risk_and_names_the_other_sequences(tmp_path):
    path = small_job(tmp_path)
    job, text = lt.Job.load(path), command("predict", path).stdout
    (panel,) = lt.predict(job).prediction.panels
    cost, left = panel.risk.removed_um, panel.risk.clear_left_um
    assert re.search(rf"clear it costs, um +{cost.p50:.1f} +{cost.p05:.1f} to {cost.p95:.1f} ", text)
    assert re.search(rf"thinnest clear left, um +{left.p50:.1f} +{left.p05:.1f} to {left.p95:.1f} ", text)
    assert f"{lt.must_stay_um(lt.budget_of(job)):.1f} must stay" in text
    assert "2 other sequences: libtexture compare" in text
    for row in panel.steps:
        assert re.search(rf"^{row.name} .* {row.passes} +{row.removed_um:.2f} +{row.gloss_20_gu:.0f}$", text, re.M)


def test_several_panels_get_a_row_each(tmp_path):
    front = '[[panel]]\nname = "front door"\narea_m2 = 1.1\nreadings = [{ total_um = 255 }]\n\n[[panel]]'
    both = (r"\[\[panel\]\]", front)
    path = small_job(tmp_path, "rear_door", both)
    lines = command("predict", path).stdout.splitlines()
    assert len(lines) <= 20
    for panel in lt.predict(lt.Job.load(path)).prediction.panels:
        cost = panel.risk.removed_um
        assert any(re.match(rf"{panel.name} +{cost.p05:.1f} to {cost.p95:.1f} um", line) for line in lines)


@pytest.mark.parametrize(
    "known, readings, mark, words",
    [("", 1, "[#--]", "estimates"), ("", 3, "[##-]", "own readings"), ("clear_um = 60", 1, "[##-]", "own readings")],
)
def test_screen_details_and_json_mark_what_the_figures_rest_on(tmp_path, known, readings, mark, words):
    listed = ", ".join(["{ total_um = 250 }"] * readings)
    path = small_job(
        tmp_path, "rear_door", (r"readings = \[.*?\n\]\n", f"readings = [{listed}]\n"), ("clear_um = 60", known)
    )
    screen = command("predict", path, "--json", tmp_path / "out.json").stdout
    assert f"Rests on {mark} {words}: " in screen and len(screen.splitlines()) <= 20
    assert f"Rests on {mark} {words}: " in command("predict", path, "--details").stdout
    assert json.loads((tmp_path / "out.json").read_text())["knowledge"] == words


# Answers that a test spot would not change.
MORE_PASSES = "ask for less of the texture to go, or allow the first step more passes"


@pytest.mark.parametrize(
    "change, words",
    [
        ((r"rms_um = 0.2(.*?)\npasses = \d+", r"rms_um = 0.02\1\npasses = 1"), MORE_PASSES),
        ((r"rms_um = 0.2", "rms_um = 100"), "nothing; keep the clear"),
        ((r"total_um = 26\d", "total_um = 800"), "take the reading of 800.0 um"),
    ],
    ids=["out of passes", "nothing to do", "odd reading"],
)
def test_the_screen_says_what_to_do_first(tmp_path, change, words):
    assert f"Do first: {words}" in command("predict", small_job(tmp_path, "rear_door", change)).stdout


def test_a_shortage_before_any_work_is_set_beside_the_one_after_it(tmp_path):
    path = small_job(tmp_path, "factory_lid")
    text = command("predict", path).stdout
    (panel,) = lt.predict(lt.Job.load(path)).prediction.panels
    before, after = panel.risk.short_before_probability, panel.risk.budget_exceeded_probability
    cases = [f"{100 * chance:.0f} of 100 cases" for chance in (after, before)]
    assert f"{cases[0]} ({cases[1]} before any work)" in text


def test_the_sequence_is_chosen_by_name(tmp_path):
    path = small_job(tmp_path, "factory_lid")
    assert 'by "polish only"' in command("predict", path, "--sequence", "polish only").stdout
    refused = command("predict", path, "--sequence", "polish onyl")
    assert refused.returncode == 2 and "polish only" in refused.stderr


def test_json_is_the_whole_prediction_and_nothing_else_is_left_beside_it(tmp_path):
    path, out = small_job(tmp_path), tmp_path / "out" / "prediction.json"
    out.parent.mkdir()
    assert command("predict", path, "--json", out).returncode == 0
    written, job = json.loads(out.read_text()), lt.Job.load(path)
    assert written.pop("version") == lt.__version__
    assert lt.Job.from_dict(written.pop("job")) == job  # what it takes to compute the figures again
    assert lt.Prediction.from_dict(written) == lt.predict(job).prediction
    assert list(out.parent.iterdir()) == [out]


REFUSED = {  # name: (change of the job, words that the line must hold)
    "missing key": (("area_m2 = 0.9\n", ""), ["area_m2"]),
    "unknown key": (("crown_radius_m", "crown_radus_m"), ["crown_radus_m", "crown_radius_m"]),
    "grit of 3": (
        (
            'abrasive = "P1200 film"',
            'abrasive = { name = "x", grit = "P3", wear_rate_mm3_per_n_m = 1.0, '
            'worn_wear_rate_mm3_per_n_m = 0.1, loading_um = 9.0, made_for = ["dry"] }',
        ),
        ["grit", "P3"],
    ),
    "film of 10 m": (("total_um = 262", "total_um = 1e7"), ["total_um", "um"]),
    "negative area": (("area_m2 = 0.9", "area_m2 = -0.9"), ["area_m2", "-0.9", "m2"]),
    "NaN": (("clear_um = 60", "clear_um = nan"), ["clear_um", "nan", "um"]),
    "wrong unit": (("area_m2 = 0.9", "area_ft2 = 9.7"), ["area_ft2", "area_m2"]),
    "number as text": (("area_m2 = 0.9", 'area_m2 = "0.9 m2"'), ["area_m2"]),
    "empty readings": ((r"readings = \[.*?\n\]", "readings = []"), ["readings"]),
    "one pixel": (("rows = 64, cols = 64", "rows = 1, cols = 1"), ["cols", "4", "1"]),
    "waves finer than the pixels": (("wavelength_mm = 2.2", "wavelength_mm = 0.3"), ["0.3", "mm"]),
    "waves longer than the patch": (("wavelength_mm = 5.0", "wavelength_mm = 500.0"), ["500", "mm"]),
    "too few worlds": (("samples = 200", "samples = 5"), ["samples", "100", "5"]),
    "zero force": (
        (
            'motion = "150 mm light"',
            "motion = { disc_diameter_mm = 150.0, orbit_mm = 5.0, speed_rpm = 9000.0, "
            "force_n = 0.0, feed_mm_per_s = 50.0, step_over_mm = 75.0 }",
        ),
        ["force_n", "> 0", "0 N"],
    ),
    "a foam that collapses": (
        (
            'motion = "150 mm light"\nwetness = "damp"',
            'motion = { like = "150 mm light", force_n = 60 }\nwetness = "damp"',
        ),
        ["sequence P1200 first, panel rear door, step refine again: Backing: pressure_kpa", "kPa"],
    ),
    "text that is no TOML": (("schema = 1", "schema ="), ["job.toml"]),
}


@pytest.mark.parametrize("name", REFUSED)
def test_bad_input_is_refused_in_one_line_that_names_it_and_leaves_no_file(tmp_path, capfd, name):
    change, words = REFUSED[name]
    path = small_job(tmp_path, "rear_door", change)
    status = main(["predict", str(path), "--json", str(tmp_path / "out.json"), "--report", str(tmp_path / "out.html")])
    printed, said = capfd.readouterr()
    assert (status, printed, said.count("\n")) == (2, "", 1)
    for word in words:
        assert word in said
    assert list(tmp_path.iterdir()) == [path]


def test_a_missing_job_is_named_and_leaves_no_file(tmp_path):
    result = command("predict", "no_such_job.toml", "--report", tmp_path / "out.html")
    assert result.returncode == 2 and result.stderr.count("\n") == 1
    assert "no_such_job.toml" in result.stderr
    assert list(tmp_path.iterdir()) == []


def test_a_place_that_cannot_be_written_is_said_before_the_work(tmp_path):
    path = small_job(tmp_path).rename(tmp_path / "job_that_is_not_read.toml")
    for out in (tmp_path / "no_folder" / "out.json", tmp_path):
        result = command("predict", path, "--json", out)
        assert result.returncode == 2 and result.stderr.count("\n") == 1
        assert str(out) in result.stderr


@pytest.mark.parametrize("verb", ["predict", "compare", "recommend", "calibrate"])
def test_an_output_is_neither_an_input_nor_the_other_output(tmp_path, capfd, verb):
    (tmp_path / "mine.toml").write_text("")
    path = small_job(tmp_path, "rear_door", ("seed =", 'catalogue = "mine.toml"\nseed ='))
    before = path.read_text()
    link = tmp_path / "link.toml"
    link.symlink_to(path)
    out, mine, spot = tmp_path / "out", tmp_path / "mine.toml", tmp_path / "spot.csv"
    spot.write_text("# passes = 6\nwhen,total_um\nbefore,261\nafter,255\n")
    inputs = [str(spot), str(path)] if verb == "calibrate" else [str(path)]
    for words in (
        ["--json", path],
        ["--report", link],
        ["--json", mine],
        ["--json", out, "--report", tmp_path / "." / "out"],
    ):
        assert main([verb, *inputs, *map(str, words)]) == 2
        printed, said = capfd.readouterr()
        assert (printed, said.count("\n")) == ("", 1)
        assert str(words[1]) in said and "writ" in said
    assert (path.read_text(), mine.read_text(), out.exists()) == (before, "", False)


def test_ctrl_c_ends_quietly_with_status_130(tmp_path):
    path = small_job(
        tmp_path, "rear_door", ("rows = 64, cols = 64, pixel_mm = 0.4", "rows = 1024, cols = 1024, pixel_mm = 0.1")
    )
    out = tmp_path / "out.json"
    words = [os.environ["LIBTEXTURE_COMMAND"], "predict", path, "--json", out]
    running = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    while (
        b"_core" not in Path(f"/proc/{running.pid}/maps").read_bytes()
    ):  # until the interpreter has loaded the package
        time.sleep(0.02)
    time.sleep(0.5)
    running.send_signal(signal.SIGINT)
    stdout, stderr = running.communicate(timeout=60)
    assert (running.returncode, stdout, stderr) == (130, "", "")
    assert not out.exists()


def test_importing_the_package_needs_numpy_only():
    script = (
        "import sys, libtexture; print([name for name in ('matplotlib', 'jinja2', 'scipy') if name in sys.modules])"
    )
    result = subprocess.run([os.sys.executable, "-c", script], capture_output=True, text=True)
    assert result.stdout.strip() == "[]"


WET = """[texture.wet_film.film]
thickness_um = 70
surface_tension_mn_per_m = 30
viscosity_pa_s = 0.2
viscosity_rise_s = 20
solids_share = 0.55

[[texture.wet_film.base]]
wavelength_mm = 3
rms_um = 1.5

"""


def test_a_texture_can_be_what_dries_over_a_base(tmp_path):
    path = small_job(tmp_path, "rear_door", (r"\[texture\].*?(?=\[target\])", WET))
    result = command("predict", path, "--json", tmp_path / "out.json")
    assert result.returncode == 0, result.stderr
    (panel,) = json.loads((tmp_path / "out.json").read_text())["panels"]
    film = lt.Job.load(path).texture.wet_film.film
    # At 3 mm the film keeps (1 - solids) of the base at least, and less than all of it (physics.md, equation 59).
    shown = lt.dry_amplitude_share(film, wavelength_mm=3)
    assert 0.45 < shown < 1
    # The base's band is an octave wide, and shorter waves show less: within a fifth of its middle wave.
    assert panel["start"]["rms_um"] == pytest.approx(1.5 * shown, rel=0.2)


def test_a_film_that_cannot_be_is_named(tmp_path):
    bad = WET.replace("solids_share = 0.55", "solids_share = 1.2")
    result = command("predict", small_job(tmp_path, "rear_door", (r"\[texture\].*?(?=\[target\])", bad)))
    assert result.returncode == 2 and result.stderr.count("\n") == 1
    assert "solids_share must be > 0 and <= 1 (got 1.2)" in result.stderr


def test_the_visible_limit_and_the_viewer_are_the_jobs(tmp_path):
    def owed_and_letter(name, *settings):
        folder = tmp_path / name
        folder.mkdir()
        path = small_job(folder, "rear_door", *settings)
        assert command("predict", path, "--json", folder / "out.json").returncode == 0
        (panel,) = json.loads((folder / "out.json").read_text())["panels"]
        return panel["passes"][0]["clear_owed_um"], panel["start"]["smallest_letter_mm"]

    keys = "scratch_limits = { visible_depth_um = 0.3 }\nviewer = { viewer_m = 1, scene_m = 5 }\n"
    usual, own = owed_and_letter("usual"), owed_and_letter("own", (r"(?m)^patch", keys + "patch"))
    # The cap decides what a fresh population owes: .2 um less where .3 um, not .1 um, is the limit (equation 37).
    assert usual[0] - own[0] == pytest.approx(0.2, abs=0.01)
    assert own[1] > 1.8 * usual[1]  # twice the way, and more of it behind the panel
