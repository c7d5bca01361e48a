"""The page stands alone, and says first what a person asks first."""

import re
from html.parser import HTMLParser
from pathlib import Path
from types import SimpleNamespace

import pytest
from conftest import EXAMPLES
from libtexture.inputs import HABITS
from libtexture.summary import answer
from libtexture.wording import KNOWLEDGE, edge_words, knowledge_mark, margin_words, step_title

import libtexture as lt

ROOT = Path(__file__).parents[2]
READINGS = [lt.Reading(x_mm=x, y_mm=y, total_um=118 + x / 100) for x in (0, 400) for y in (0, 300)]
JOB = EXAMPLES["Job"]().replace(
    patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),
    panel=[EXAMPLES["Panel"]().replace(name="door <left> & bonnet", readings=READINGS)],
)


class Page(HTMLParser):
    """Tags with their attributes, and the text in order."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.words = [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return " ".join(" ".join(self.words).split())


@pytest.fixture(scope="module")
def predicted():
    return lt.predict(JOB)


@pytest.fixture(scope="module")
def page(predicted, tmp_path_factory):
    path = tmp_path_factory.mktemp("report") / "report.html"
    lt.write_report(predicted, path, JOB)
    return Page(path.read_text(encoding="utf-8"))


def test_the_page_runs_nothing_and_loads_nothing(page):
    names = {tag for tag, _ in page.tags}
    assert not names & {"script", "link", "iframe", "object", "embed"}
    for tag, attributes in page.tags:
        assert not any(name.startswith("on") for name in attributes)
        for name in ("src", "href", "srcset", "data", "action"):
            assert attributes.get(name, "data:").startswith("data:"), (tag, attributes)
    assert "url(" not in page.text and "@import" not in page.text


def test_every_picture_is_in_the_page_and_has_words_for_those_who_cannot_see_it(page):
    pictures = [attributes for tag, attributes in page.tags if tag == "img"]
    assert len(pictures) >= 7  # charts, maps, a reflection before and one a step, the film
    assert all(picture["src"].startswith("data:image/") and picture["alt"] for picture in pictures)


def test_the_answer_comes_first_then_the_figures_the_inputs_and_the_limits(page, predicted):
    prediction = predicted.prediction
    (panel,) = prediction.panels
    order = [
        prediction.verdict.capitalize(),
        answer(prediction),
        f"{panel.risk.removed_um.p05:.1f} to {panel.risk.removed_um.p95:.1f} µm",
        "Step by step",
        "Budget, rule by rule",
        prediction.reasons[0].text_in("unicode"),
        prediction.cautions[0].text,
        "What it started from",
        "How far to trust it",
        f"libtexture {lt.__version__}, seed {prediction.seed}",
    ]
    body = page.text[page.text.index("Levelling the clear coat") :]
    places = [body.index(words) for words in order]
    assert places == sorted(places)


def test_the_answer_carries_the_mark_of_what_its_figures_rest_on(page, predicted):
    assert predicted.prediction.knowledge == "own readings"  # the clear is known, no spot was worked
    assert "Its figures rest on ■■□ own readings" in page.text


def test_each_level_of_knowledge_has_a_mark_of_its_own():
    marks = [knowledge_mark(level, "unicode") for level in KNOWLEDGE]
    assert marks == ["■□□", "■■□", "■■■"]
    assert [lt.Prediction(knowledge=level).to_dict()["knowledge"] for level in KNOWLEDGE] == list(KNOWLEDGE)
    with pytest.raises(ValueError, match="own test spot"):
        lt.Prediction(knowledge="hearsay")


def test_names_of_the_user_are_text_not_markup(page):
    assert "door <left> & bonnet" in page.text
    assert "left" not in {tag for tag, _ in page.tags}


def test_without_its_job_the_page_leaves_the_inputs_out(predicted, tmp_path):
    lt.write_report(predicted, tmp_path / "report.html")
    text = Page((tmp_path / "report.html").read_text(encoding="utf-8")).text
    assert "What it started from" not in text and predicted.prediction.verdict.capitalize() in text


def test_a_report_of_something_else_is_refused(predicted, tmp_path):
    with pytest.raises(TypeError, match=r"^write_report: result must be what predict\(\).*got a Prediction"):
        lt.write_report(predicted.prediction, tmp_path / "report.html")
    assert not list(tmp_path.iterdir())


def test_a_margin_is_told_with_the_habit_that_it_is_for():
    edge = lt.EdgeMargin(margin_mm=3.2, sure_margin_mm=None, confidence=0.95)
    words = edge_words(edge, HABITS["straddle"])
    assert "worked with half of the disc over the edge: by best estimate, leave 4 mm unsanded" in words  # rounded up
    assert "95 % sure, no margin helps" in words
    # 10 to 15 mm: common practice (docs/physics.md, edges and body lines).
    assert margin_words(0) == "the model asks for no margin, practice leaves 10 to 15 mm"


def test_the_same_prediction_gives_the_same_page(predicted):
    assert lt.report.html_of(predicted, JOB) == lt.report.html_of(predicted, JOB)


def test_the_strip_ends_with_the_ideal_and_every_row_says_what_is_seen(page, predicted):
    (panel,) = predicted.prediction.panels
    words = [attributes["alt"] for tag, attributes in page.tags if attributes.get("alt", "").startswith("Reflection")]
    titles = [step_title(row, number) for number, row in enumerate(panel.steps, 1)]
    large, strip = words[:2], words[2:]
    assert large == ["Reflection before", f"Reflection after {titles[-1]}"]  # what a customer compares, side by side
    assert strip == ["Reflection before", *(f"Reflection after {title}" for title in titles), "Reflection ideal"]
    for heading, figure in (("clarity 0.5 mm %", "image_clarity_percent"), ("letter mm", "smallest_letter_mm")):
        cells = [attributes for tag, attributes in page.tags if tag == "td" and attributes.get("data-of") == heading]
        assert len(cells) == 1 + len(panel.steps), figure


def test_a_step_that_leaves_the_panel_matt_says_that_no_letter_is_read(page, predicted):
    (panel,) = predicted.prediction.panels
    cells = page.text.split("What an eye sees in it")[1]
    assert panel.steps[0].smallest_letter_mm is None and " none " in cells


def test_the_reflections_have_the_index_of_the_jobs_clear(predicted):
    def mirrored(index):
        job = JOB.replace(coating=JOB.coating.replace(refractive_index=index))
        tags = Page(lt.report.html_of(predicted, job)).tags
        return [one["src"] for _, one in tags if one.get("alt", "").startswith("Reflection")]

    # One exposure takes out how much is mirrored (54), but not how much of the paint is seen beside it.
    assert all(usual != own for usual, own in zip(mirrored(1.5), mirrored(1.54)))


def test_the_page_says_how_high_the_letters_of_the_mirrored_sign_are(page):
    scene = (ROOT / "libtexture" / "surface" / "scene.hpp").read_text(encoding="utf-8")
    heights = re.findall(r'{([\d.]+), -[\d.]+, "[A-Z ]+"}', scene)
    assert f"letters {', '.join(heights[:-1])} and {heights[-1]} mm high" in page.text
    assert len(heights) == 5


def test_ranges_and_chances_stand_in_the_answer_where_the_prediction_has_them(predicted):
    (panel,) = predicted.prediction.panels
    risk = lt.PanelRisk(
        removed_um=lt.Spread(p05=6.1, p50=7.7, p95=9.8),
        clear_left_um=lt.Spread(p05=21.0, p50=30.0, p95=38.0),
        minutes=lt.Spread(p05=31, p50=40, p95=52),
        budget_exceeded_probability=0.12,
        short_before_probability=0.03,
        broken_by_work_probability=0.09,
        removable_um=lt.Spread(p05=0.0, p50=7.2, p95=12.7),
        variance_shares=lt.VarianceShares(clear_share=0.83, map=0.1, gauge=0.04, removal=0.03),
        strike_through_probability=0.01,
        target_missed_probability=0.3,
        samples=100,
    )
    prediction = predicted.prediction.replace(panels=[panel.replace(risk=risk)])
    shown = SimpleNamespace(prediction=prediction, histories=predicted.histories, draws=predicted.draws)
    text = Page(lt.report.html_of(shown, JOB)).text
    for words in (
        "6.1 to 9.8 µm (0.24 to 0.39 mil)",
        "21.0 to 38.0 µm",
        "Machine time",
        "31 to 52 min and",
        "Over budget in 12 of 100 cases (30 of 1000 cases before any work, of the rest 90 of 1000 cases by the work)",
        "about 7.2 µm (0.28 mil) may go",
        "how much of the film is clear 83 %, the film between the readings 10 %, the gauge 4 %",
        "struck through somewhere (no clear left) in 10 of 1000 cases",
        "target missed in 30 of 100 cases",
    ):
        assert words in text
    assert text.index("6.1 to 9.8 µm") < text.index("What the work buys")


def test_what_must_stay_is_the_budgets_with_its_reserve():
    assert lt.must_stay_um(lt.Budget(clear_left_least_um=40, reserve_um=3)) == 43
    assert lt.must_stay_um(lt.Budget(clear_removed_most_um=10, reserve_um=3)) == 3
