"""A target that asks for a mark to be gone: the command, the page, the values and what is refused."""

import re

import pytest
from conftest import EXAMPLES
from libtexture.defect_words import NAMES, cases, ranged
from libtexture.inputs import stop_words, target_words
from test_command import command, small_job
from test_report import Page

import libtexture as lt

DEFECT = r"defect = \{[^}]*\}"


def scratched(tmp_path, defect=None, *changes):
    """The example job on a small patch, its defect replaced."""
    replaced = [(DEFECT, f"defect = {defect}")] if defect else []
    return small_job(tmp_path, "scratched_bonnet", *replaced, *changes)


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    return scratched(tmp_path_factory.mktemp("scratched"))


@pytest.fixture(scope="module")
def job(path):
    return lt.Job.load(path)


@pytest.fixture(scope="module")
def predicted(job):
    return lt.predict(job)


def test_a_target_takes_a_defect_or_a_dict_of_one():
    defect = lt.Defect(depth_um=3, sd_um=0.5)
    target = lt.Target(defect=defect)
    assert lt.Target(defect={"depth_um": 3, "sd_um": 0.5}) == target
    assert target.defect == defect and target.rms_um is None
    assert lt.Target.from_dict({"defect": {"depth_um": 3, "sd_um": 0.5}}) == target
    assert lt.target_stop(target) == lt.Stop(defect_um=3)


@pytest.mark.parametrize(
    "fields, words",
    [
        ({}, "depth_um or height_um must be given, one of them and not the other"),
        ({"depth_um": 3, "height_um": 2}, "depth_um or height_um must be given, one of them and not the other"),
        ({"depth_um": -3}, r"depth_um must be > 0 \(got -3 um\)"),
        ({"depth_um": 3, "sd_um": -1}, r"sd_um must be >= 0 \(got -1 um\)"),
        ({"height_um": 30}, "width_mm must be given with height_um"),
        ({"depth_mu": 3}, "unknown field depth_mu; nearest known: depth_um"),
        ({"depth_um": "3"}, r"depth_um must be of type float \| None \(got '3'\)"),
    ],
)
def test_a_wrong_defect_is_refused_in_one_sentence(fields, words):
    with pytest.raises(ValueError, match=f"^Defect: {words}") as refused:
        lt.Target(defect=fields)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(
    "defect, words",
    [
        ("{ depth_um = 0.003 }", "target.defect.depth_um must be at least 0.02: is it mm? then write 3"),
        ("{ depth_um = 3, patch_mm = 1500 }", "target.defect.patch_mm must fit on panel[0], at most 1335 mm"),
        ("{ depth_um = 3, wide_mm = 2 }", "target.defect: unknown key 'wide_mm'; nearest known: width_mm"),
        ("{ depth_um = 3, feather_mm = 40 }", "feather_mm must come with patch_mm"),
    ],
)
def test_a_job_file_with_a_wrong_defect_is_refused_in_one_line(tmp_path, defect, words):
    refused = command("predict", scratched(tmp_path, defect))
    assert refused.returncode == 2 and words in refused.stderr and len(refused.stderr.splitlines()) == 1


def test_a_step_cannot_stop_at_a_defect_that_the_job_has_not(job):
    step = job.sequence[0].step[0].replace(stop=lt.Stop(defect_um=3))
    with pytest.raises(ValueError, match=r"sequence\[0\].step\[0\].stop.defect_um must come with target.defect"):
        job.replace(target=lt.Target(rms_um=0.2), sequence=[job.sequence[0].replace(step=[step])])


def test_the_ways_stand_on_the_screen_with_their_figures(path, predicted):
    lines = command("predict", path).stdout.splitlines()
    assert len(lines) <= 20 and max(map(len, lines)) <= 100
    (panel,) = predicted.prediction.panels
    assert [way.way for way in panel.defect.ways] == ["patch", "all over", "leave"]
    for way in panel.defect.ways:
        (row,) = [line for line in lines if line.startswith(NAMES[way.way])]
        assert ranged(way.clear_um, 1) in row and cases(way.short_probability, panel) in row
    assert any(line.startswith("defect of 3.0 (2.2 to 3.8) um") for line in lines)


def test_a_patch_costs_less_time_and_leaving_it_nothing(predicted):
    patch, all_over, leave = predicted.prediction.panels[0].defect.ways
    assert patch.minutes.p95 < all_over.minutes.p05
    assert leave.clear_um == lt.Spread(p05=0, p50=0, p95=0) and leave.gone_probability == 0
    assert patch.gone_probability > 0.9
    # Arithmetic: its depth, what goes until the next look, and the grooves.
    risk = predicted.prediction.panels[0].risk
    assert patch.clear_um.p50 == pytest.approx(3 + risk.overshoot_um.p50 + risk.debt_um.p50, abs=0.4)
    assert risk.defect_left_probability == pytest.approx(1 - patch.gone_probability)
    assert risk.target_missed_probability == risk.defect_left_probability


def test_the_page_shows_the_ways_and_what_is_said_of_them(job, predicted, tmp_path):
    lt.write_report(predicted, tmp_path / "bonnet.html", job)
    page = Page((tmp_path / "bonnet.html").read_text(encoding="utf-8"))
    (panel,) = predicted.prediction.panels
    assert "The defect, way by way" in page.text and "Taking out a defect: bonnet" in page.text
    for way in panel.defect.ways:
        assert NAMES[way.way] in page.text and ranged(way.clear_um, 1) in page.text
    for note in panel.defect.notes:
        assert note.text_in("unicode") in page.text
    assert target_words(job.target) in page.text and "is gone" in target_words(job.target)
    details = command("predict", scratched(tmp_path), "--details").stdout
    assert "".join(panel.defect.notes[0].text.split()) in "".join(details.split())
    assert max(map(len, details.splitlines())) <= 100


def test_a_prediction_with_a_defect_survives_a_dict(predicted):
    prediction = predicted.prediction
    assert lt.Prediction.from_dict(prediction.to_dict()) == prediction
    assert "defect" not in EXAMPLES["PanelPrediction"]().to_dict()


def test_several_panels_answer_on_one_screen(tmp_path):
    lid = '[[panel]]\nname = "lid"\narea_m2 = 0.7\nreadings = [{ total_um = 119 }]\n\n[[panel]]'
    path = scratched(tmp_path, "{ depth_um = 3, patch_mm = 200 }", (r"\[\[panel\]\]", lid))
    assert len(command("predict", path).stdout.splitlines()) <= 20
    assert all(panel.defect for panel in lt.predict(lt.Job.load(path)).prediction.panels)


def test_where_the_clear_is_too_thin_the_answer_is_to_leave_it(tmp_path):
    thin = (r"total_um = 1\d\d", "total_um = 92")
    path = scratched(tmp_path, "{ depth_um = 6, sd_um = 0.5, patch_mm = 200 }", thin)
    text = command("predict", path).stdout
    assert text.startswith("DO NOT SAND") and "Do first: leave the defect" in text
    advised = command("recommend", path).stdout
    assert advised.startswith("Verdict: DO NOT SAND") and "Leave the defect: taking it out would cost" in advised


def test_compare_ranks_by_whether_the_defect_goes(tmp_path, job):
    first, *others = job.sequence[0].step
    short = job.sequence[0].replace(name="too short", step=[first.replace(passes=2), *others])
    comparison = lt.compare(job.replace(sequence=[short, job.sequence[0]]))
    assert comparison.best == "P3000 first"
    missed, reached = comparison.alternatives
    assert not missed.is_reaching and missed.removed_um.p50 < reached.removed_um.p50
    assert [part.asks for part in reached.target] == ["defect"] and reached.target[0].is_met
    assert not missed.target[0].is_met


def test_a_nib_is_cut_down_by_film_and_followed_by_a_soft_disc(tmp_path):
    nib = "{ height_um = 20, width_mm = 0.5, patch_mm = 100 }"
    film = [
        (r'"P3000 foam-backed"', '"P2000 film"'),
        (r'"foam-backed disc on pad"', '"film on firm interface"'),
        (r'"damp"', '"dry"'),
    ]
    hard = lt.predict(lt.Job.load(scratched(tmp_path, nib, *film))).prediction.panels[0]
    soft = lt.predict(lt.Job.load(scratched(tmp_path, nib))).prediction.panels[0]
    assert hard.defect.ways[0].gone_probability > 0.9 > 0.5 > soft.defect.ways[0].gone_probability
    assert hard.risk.levelling_um.p50 < 3
    assert "a mark 20 µm high" in target_words(lt.Job.load(scratched(tmp_path, nib)).target)


def test_a_stop_at_a_defect_is_said(job):
    step = lt.worked_sequence(job).step[0]
    assert step.stop == lt.Stop(defect_um=3)
    assert re.search(r"until the defect is gone, by 3 um as best estimate$", stop_words(step))
