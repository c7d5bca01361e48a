"""Choosing from Python and from the command line."""

import json
import re

import matplotlib
import numpy as np
import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES
from libtexture.choice_report import comparison_page, recommendation_page
from libtexture.choice_table import comparison_table, recommendation_table
from libtexture.inputs import input_rows, stop_words
from libtexture.table import table
from test_command import JOBS, PATCH, command, small_job
from test_report import Page

matplotlib.use("agg")
from matplotlib.figure import Figure  # noqa: E402


@pytest.fixture(scope="module")
def door(tmp_path_factory):
    return lt.Job.load(small_job(tmp_path_factory.mktemp("door"), "rear_door"))


@pytest.fixture(scope="module")
def comparison(door):
    return lt.compare(door)


def test_a_comparison_holds_every_sequence_with_its_split(door, comparison):
    assert [one.sequence for one in comparison.alternatives] == [one.name for one in door.sequence]
    for one in comparison.alternatives:
        assert one.removed_um.p05 <= one.removed_um.p50 <= one.removed_um.p95
        assert one.debt_um.p50 > 0 and one.levelling_um.p50 > 0
        assert [part.asks for part in one.target] == ["rms_um"]
    best = next(one for one in comparison.alternatives if one.sequence == comparison.best)
    assert best.more.removed_um == lt.Spread(p05=0, p50=0, p95=0) and not best.more.is_drowned
    others = {one.sequence for one in comparison.alternatives} - {comparison.best}
    spending = [one for one in comparison.findings if one.kind in ("spends_more", "spends_less", "spends_the_same")]
    assert {one.sequence for one in spending} == others and len(spending) == len(others)
    assert {one.other_sequence for one in spending} == {comparison.best}


def test_coarser_first_grits_owe_more(comparison):
    debts = [one.debt_um.p50 for one in sorted(comparison.alternatives, key=lambda one: one.first_grain_um)]
    assert debts == sorted(debts)  # the trade's rule (common practice), out of the scratch laws


def test_a_comparison_survives_a_dict_and_repeats_to_the_byte(door, comparison):
    assert lt.Comparison.from_dict(comparison.to_dict()) == comparison
    assert lt.compare(door) == comparison


def test_write_report_takes_a_comparison_and_its_charts_have_units(comparison, door, tmp_path):
    lt.write_report(comparison, tmp_path / "lesson.html", door)
    assert "Clear spent" in (tmp_path / "lesson.html").read_text(encoding="utf-8")
    ax = lt.plot.split_chart(comparison, Figure().subplots())
    assert "µm" in ax.get_xlabel()
    assert [text.get_text() for text in ax.get_legend().get_texts()] == ["levelling", "overshoot", "scratch debt"]
    widths = [bar.get_width() for bar in ax.patches]
    shown = sorted(comparison.alternatives, key=lambda one: one.rank, reverse=True)  # the best on top
    parts = ("levelling_um", "overshoot_um", "debt_um")
    assert widths == pytest.approx([getattr(one, part).p50 for part in parts for one in shown], abs=1e-12)
    ax = lt.plot.pareto_chart(comparison, Figure().subplots())
    assert "µm" in ax.get_xlabel() and "min" in ax.get_ylabel()


def test_a_small_disc_is_set_against_a_large_one_at_equal_pressure(tmp_path):
    job = lt.Job.load(small_job(tmp_path, "bonnet"))
    motions = [sequence.step[0].motion for sequence in job.sequence]
    large_mm, small_mm = (motion.disc_diameter_mm for motion in motions)
    assert (large_mm, small_mm) == (150, 75)
    assert motions[0].pressure_kpa == motions[1].pressure_kpa
    comparison = lt.compare(job)
    large, small = comparison.alternatives
    # Equal pressure on the same backing levels alike: what is cut until the rule is met is the same in every world
    # that meets it before its passes run out, but for the 20 halvings of the removal by which that moment is found.
    draws = [lt.predict(job, sequence=one.name).draws[0] for one in job.sequence]
    levelled_um = np.array([one.levelling_um for one in draws])
    overshoot_um = np.array([one.overshoot_um for one in draws])
    is_met = (overshoot_um > 0).all(axis=0)
    assert is_met.mean() > 0.95
    apart_um = abs(levelled_um[0] - levelled_um[1])[is_met]
    assert (apart_um <= (levelled_um + overshoot_um).sum(axis=0)[is_met] / 2**20).all()
    assert [size.disc_diameter_mm for size in large.disc_sizes] == [150]
    assert [size.disc_diameter_mm for size in small.disc_sizes] == [75, 150]
    # Geometry: minutes of a pass are area/(feed x step-over), so that they go by the lanes sanded and the feed.
    plans = [lt.predict(job, sequence=one.sequence).prediction.panels[0] for one in (large, small)]
    pass_minutes = [plan.steps[0].minutes / plan.steps[0].passes for plan in plans]
    lanes = [1 / (motion.feed_mm_per_s * motion.step_over_mm) for motion in motions]
    assert pass_minutes[1] / pass_minutes[0] == pytest.approx(lanes[1] / lanes[0], rel=1e-9)
    # Four small discs have the area of a large one and carry the clear of one, but for the last disc of each.
    clear = [plan.steps[0].removed_um for plan in plans]
    discs = [plan.steps[0].discs for plan in plans]
    assert 4 * (discs[0] - 1) * clear[1] / clear[0] - 1 <= discs[1] <= 4 * discs[0] * clear[1] / clear[0] + 1
    assert discs[1] > discs[0] and small.labour.total_minutes > large.labour.total_minutes
    assert small.labour.masking_minutes == large.labour.masking_minutes
    text = comparison_table(comparison)
    for size in small.disc_sizes:
        figures = [f"{figure:.1f}" for figure in (size.sanding_minutes, size.looking_minutes, size.disc_change_minutes)]
        assert re.search(
            rf"^  {size.disc_diameter_mm:g} mm discs +" + " +".join(figures) + rf" +{size.discs}$", text, re.M
        )
    assert f"read off {comparison.node_solves} levelling runs" in text


def test_a_comparison_page_says_its_answer_first_with_its_reasons_and_how_sure_it_is(comparison, door):
    best = next(one for one in comparison.alternatives if one.sequence == comparison.best)
    others = [one for one in comparison.alternatives if one is not best]
    assert comparison.headline.kind in ("spends_least", "probably_spends_least", "difference_unsure")
    text = Page(comparison_page(comparison, door)).text
    order = [comparison.headline.text.rstrip("."), best.reasons[0].text_in("unicode"), "Each part is a median"]
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    assert text.count(f"more than {best.sequence}") >= len(others)  # each row says what it is set against
    assert f"about {comparison.removable_um:.1f} µm" in text


def words_of(drawing, comparison):
    figure = Figure()
    ax = figure.subplots()
    drawing(comparison, ax)
    return [label.get_text() for label in ax.get_yticklabels()]


def test_headline_table_page_and_picture_agree_on_what_was_ranked(comparison, door):
    first, second, third = comparison.alternatives
    # The third spends least, and misses the target too often to come first.
    ranked = comparison.replace(
        best=second.sequence,
        headline=lt.Statement(
            kind="spends_least", sequence=second.sequence, figures={"reaching": 2, "sequences": 3, "samples": 200}
        ),
        alternatives=[
            first.replace(rank=2, is_reaching=True),
            second.replace(rank=1, is_reaching=True),
            third.replace(rank=3, is_reaching=False, target_missed_probability=0.6, is_on_front=True),
        ],
    )
    names = [second.sequence, first.sequence, third.sequence]
    drawn = words_of(lt.plot.split_chart, ranked)
    assert [label.split("\n")[0] for label in reversed(drawn)] == names
    assert "misses the target: 60 %" in drawn[0] and all("misses" not in label for label in drawn[1:])
    table = comparison_table(ranked)
    rows = [line for line in table.splitlines() if line.startswith(tuple(names))]
    assert [next(name for name in names if row.startswith(name)) for row in rows[:3]] == names
    assert rows[2].endswith("x") and not rows[0].endswith("x")
    assert f"{second.sequence} spends least clear of the 2 of 3 that reach the target." in table
    page = Page(comparison_page(ranked, door)).text
    assert f"{second.sequence} spends least clear of the 2 of 3 that reach the target" in page
    places = [page.index(f"{name} ", page.index("Figure by figure")) for name in names]
    assert places == sorted(places)
    assert "What the others cost more" not in page


def test_the_front_is_shown_only_where_it_tells_sequences_apart(comparison, door):
    def with_front(*is_on):
        return comparison.replace(
            alternatives=[one.replace(is_on_front=on) for one, on in zip(comparison.alternatives, is_on)]
        )

    for pareto, is_shown in ((with_front(True, True, True), False), (with_front(True, False, True), True)):
        assert ("Pareto front" in comparison_table(pareto)) == is_shown
        assert ("on the Pareto front" in Page(comparison_page(pareto, door)).text) == is_shown


def test_nothing_to_do_is_said_by_every_command(door):
    idle = door.replace(target=lt.Target(rms_um=5.0))
    plan = lt.predict(idle).prediction
    assert plan.verdict == "nothing to do" and plan.reasons[0].kind == "target_met_before"
    every = lt.compare(idle)
    assert every.headline.kind == "all_meet_before"
    for text in (table(plan, idle), comparison_table(every), Page(comparison_page(every, idle)).text):
        assert "nothing to do" in text.lower()
    advice = lt.recommend(idle, passes_most=20)
    assert advice.verdict == "nothing to do" and not advice.recommended
    for text in (recommendation_table(advice), Page(recommendation_page(advice, idle)).text):
        assert "nothing to do" in text.lower()


def test_every_page_says_what_it_started_from(comparison, door):
    text = " ".join(Page(comparison_page(comparison, door)).text.split())
    for panel in door.panel:
        for reading in panel.readings:
            assert f"{reading.total_um:.0f}" in text
    rows = dict(input_rows(door, door.sequence))
    assert f"{door.coating.gauge.uncertainty_um:g} µm" in rows["gauge"]
    for sequence in door.sequence:
        for number, step in enumerate(sequence.step):
            words = rows[f"{sequence.name}: {step.name}"]
            end = stop_words(step, "unicode", number == 0)
            for told in (step.abrasive.name, step.backing.name, f"{step.motion.force_n:g} N", end):
                assert told in words
            assert words in text
    for statement in comparison.step_cautions + comparison.warnings:
        assert statement.text_in("unicode") in text
    assert "a factor of two either way" in text


def test_a_step_ends_at_the_first_of_its_stop_rules_or_with_its_passes(door):
    step = door.sequence[0].step[0].replace(look_every_passes=2)
    assert stop_words(step.replace(stop=lt.Stop(), passes=3)) == "all 3 passes are made"
    assert stop_words(step.replace(stop=lt.Stop()), is_first=True) == "look every 2 passes until the target is met"
    whole = lt.Stop(touched_share=0.995, rms_share=0.35, when="all")
    assert stop_words(step.replace(stop=whole)) == (
        "look every 2 passes until 99.5 % are touched and at most 35 % of the texture before is left"
    )
    both = lt.Stop(touched_share=0.95, removed_um=4.0)
    assert stop_words(step.replace(stop=both)) == (
        "look every 2 passes until 95 % are touched or 4 um of clear are removed"
    )


def test_a_first_step_that_does_not_do_is_shown_with_its_whole_reason():
    why = lt.Statement(kind="too_many_passes", figures={"passes": 388, "limit": 30})
    first_steps = [lt.FirstStep(abrasive=name, is_reaching=False, reasons=[why]) for name in ("fine", "finer")]
    advice = EXAMPLES["Recommendation"]().replace(first_steps=first_steps)
    assert f"  - fine, finer: {why}\n" in recommendation_table(advice)
    assert Page(recommendation_page(advice)).text.count(f"no. {why}") == 2


def test_the_front_from_python():
    assert lt.pareto_front([[1, 2], [2, 1], [2, 2]]) == [True, True, False]


def test_a_target_is_judged_from_python():
    flat = lt.HeightField(height_um=np.zeros((1, 8)), pixel_mm=0.5)
    (part,) = lt.judge_target(lt.Target(rms_um=0.1), before=flat, now=flat, touched_share=1.0)
    assert part.asks == "rms_um" and part.is_met


def test_tables_are_at_most_100_columns_wide(comparison):
    text = comparison_table(comparison)
    assert max(map(len, text.splitlines())) <= 100
    for one in comparison.alternatives:
        assert re.search(rf"^{one.sequence} +{one.removed_um.p50:.2f} ", text, re.M)


def test_the_command_compares_and_writes_figures_and_a_page_that_stands_alone(tmp_path):
    job = small_job(tmp_path, "rear_door")
    figures, lesson = tmp_path / "all.json", tmp_path / "lesson.html"
    result = command("compare", job, "--json", figures, "--report", lesson)
    assert (result.returncode, result.stderr) == (0, "")
    assert "Clear it spends: " in result.stdout and "Cautions for the job" in result.stdout
    written = json.loads(figures.read_text())
    assert lt.Job.from_dict(written.pop("job")) == lt.Job.load(job) and written.pop("version") == lt.__version__
    written = lt.Comparison.from_dict(written)
    page = Page(lesson.read_text(encoding="utf-8"))
    images = [attributes for tag, attributes in page.tags if tag == "img"]
    assert images[0]["alt"].startswith("Clear spent by each first grit, split in levelling, overshoot and scratch debt")
    assert all(image["src"].startswith("data:") and image["alt"] for image in images)
    assert not {tag for tag, _ in page.tags} & {"script", "link", "iframe"}
    for one in written.alternatives:
        assert one.sequence in page.text
    for caution in written.cautions:
        assert caution.text in page.text


def test_the_command_says_do_not_sand_first_where_the_clear_is_thin(tmp_path):
    job = small_job(tmp_path, "factory_lid")
    result = command("recommend", job, "--json", tmp_path / "all.json", "--report", tmp_path / "page.html")
    assert (result.returncode, result.stderr) == (0, "")
    assert result.stdout.startswith("Verdict: DO NOT SAND\n  - ")
    assert result.stdout.lower().count("do not sand") == 1  # the verdict says it
    assert "Plan: " not in result.stdout  # no plan is offered, only what it would take
    advice = json.loads((tmp_path / "all.json").read_text())
    assert advice["verdict"] == "do not sand" and advice["reasons"] and advice["seed"] == lt.Job.load(job).seed
    body = Page((tmp_path / "page.html").read_text(encoding="utf-8")).text.split("How to level")[1]
    assert body.lower().count("do not sand") == 1


def test_a_recommendation_has_a_plan_that_can_be_put_into_a_job(door):
    advice = lt.recommend(door, passes_most=20)
    assert advice.recommended in [sequence.name for sequence in advice.sequences]
    assert max(map(len, recommendation_table(advice).splitlines())) <= 100
    planned = door.replace(sequence=list(advice.sequences))
    assert lt.predict(planned, sequence=advice.recommended).prediction.sequence == advice.recommended
    for sequence in advice.sequences:
        *looked, last = sequence.step
        assert all(stop_words(step).startswith("look ") for step in looked)
        assert last.abrasive.name == "finishing polish" and last.passes >= 1  # nobody sees when fine haze is gone
    assert advice.cautions


def test_a_users_own_catalogue_is_chosen_from(tmp_path, door):
    tools = tmp_path / "tools.toml"
    tools.write_text('[abrasive."own P2500"]\nlike = "P2500 film"\nloading_um = 400\n')
    advice = lt.recommend(door.replace(catalogue=str(tools)), passes_most=20)
    assert "own P2500" in [first.abrasive for first in advice.first_steps]


@pytest.mark.parametrize("limits", [{"passes_most": 0}, {"discs_per_m2_most": -1}, {"pases_most": 3}])
def test_limits_that_make_no_sense_are_refused(door, limits):
    with pytest.raises((ValueError, TypeError)) as error:
        lt.recommend(door, **limits)
    assert str(error.value).count("\n") == 0


def test_a_machine_that_nobody_knows_is_refused_by_name(door):
    with pytest.raises(ValueError, match="Machine: disc: .*150 mm light"):
        lt.recommend(door, machine=lt.Machine(disc="150 mm lihgt"))


@pytest.mark.parametrize("verb", ["compare", "recommend"])
def test_bad_input_ends_with_status_2_and_one_line(tmp_path, verb):
    broken = small_job(tmp_path, "rear_door", (r"rms_um = 0.2 #", "rms_um = -0.2 #"))
    for words in ([verb, broken], [verb, tmp_path / "none.toml"], [verb]):
        result = command(*words)
        assert result.returncode == 2
        assert result.stdout == "" and result.stderr.count("\n") == 1


def test_compare_needs_a_sequence(tmp_path):
    text = PATCH.sub("patch = { rows = 64, cols = 64, pixel_mm = 0.4 }", (JOBS / "rear_door.toml").read_text(), count=1)
    path = tmp_path / "bare.toml"
    path.write_text(text.split("[[sequence]]")[0])
    result = command("compare", path)
    assert result.returncode == 2
    assert result.stderr == "libtexture: Job: sequence must hold at least one sequence (got none)\n"
