"""The page stands alone, and says first what a person asks first."""

from html.parser import HTMLParser

import pytest

import libtexture as lt
from conftest import EXAMPLES

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
        prediction.reasons[0],
        f"{panel.removed_um:.1f} µm",
        "Step by step",
        "Budget, rule by rule",
        prediction.cautions[0],
        "What it started from",
        "How far to trust it",
        f"libtexture {lt.__version__}, seed {prediction.seed}",
    ]
    body = page.text[page.text.index("Levelling the clear coat") :]
    places = [body.index(words) for words in order]
    assert places == sorted(places)


def test_names_of_the_user_are_text_not_markup(page):
    assert "door <left> & bonnet" in page.text
    assert "left" not in {tag for tag, _ in page.tags}


def test_without_its_job_the_page_leaves_the_inputs_out(predicted, tmp_path):
    lt.write_report(predicted, tmp_path / "report.html")
    text = Page((tmp_path / "report.html").read_text(encoding="utf-8")).text
    assert "What it started from" not in text and predicted.prediction.verdict.capitalize() in text


def test_the_same_prediction_gives_the_same_page(predicted):
    assert lt.report.html_of(predicted, JOB) == lt.report.html_of(predicted, JOB)
