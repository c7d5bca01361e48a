"""The pages as a browser shows them, on a phone, on a screen and on paper. Needs Chromium: see conftest.py."""

import json
import re
import subprocess

import pytest

import libtexture as lt
from conftest import CHROMIUM, EXAMPLES
from libtexture.calibrate_report import calibration_page

# A frame page that loads the report at a width and writes down what it finds. Paper: the rules for print made rules for
# all, at what A4 leaves between margins of 14 mm.
FRAME = """<!DOCTYPE html><meta charset="utf-8"><iframe id="frame" style="border:0" width="%(width)d" height="2000"
src="%(page)s.html"></iframe><pre id="found"></pre><script>
frame.onload = () => {
  const page = frame.contentDocument;
  if (%(is_paper)s)
    for (const rule of page.styleSheets[0].cssRules)
      if (rule.media && rule.media.mediaText === "print") rule.media.mediaText = "all";
  const pictures = [...page.images];
  const edge = page.documentElement.clientWidth;
  const isScrolled = element =>
    element.closest(".wide") && getComputedStyle(element.closest(".wide")).overflowX === "auto";
  found.textContent = JSON.stringify({
    width: page.documentElement.scrollWidth,
    beyond: [...page.body.querySelectorAll("*")].filter(
      one => one.getBoundingClientRect().right > edge + 1 && !isScrolled(one)).map(one => one.tagName),
    pictures: pictures.length,
    loaded: pictures.filter(picture => picture.naturalWidth > 0).length,
    fetched: frame.contentWindow.performance.getEntriesByType("resource").map(one => one.name.slice(0, 80)),
    title: page.title,
  });
};
</script>"""

WIDTHS = {"phone": 390, "screen": 1200, "paper": 688}  # CSS pixels; A4 less margins: 182 mm x 96/25.4
pytestmark = pytest.mark.skipif(not CHROMIUM, reason="needs Debian's package chromium")

PAGES = {"predict": 8, "compare": 2, "recommend": 1, "calibrate": 1}  # verb: pictures at least
JOB = EXAMPLES["Job"]().replace(patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4))
SPOT = lt.TestSpot(passes=6, before_um=[121, 120, 122], after_um=[117, 116, 118], gloss_gone_passes=5)


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("page")
    predicted = lt.predict(JOB)
    lt.write_report(predicted, folder / "predict.html", JOB)
    lt.write_report(lt.compare(JOB), folder / "compare.html", JOB)
    small = JOB.replace(patch=lt.Grid(rows=32, cols=32, pixel_mm=0.4), uncertainty=lt.Uncertainty(samples=200))
    lt.write_report(lt.recommend(small, passes_most=20), folder / "recommend.html", small)
    calibration = lt.calibrate(JOB, SPOT)
    after = lt.predict(calibration.job).prediction
    spot_page = calibration_page(calibration.result, calibration.moved, SPOT, predicted.prediction, after, JOB)
    (folder / "calibrate.html").write_text(spot_page, encoding="utf-8")
    return folder


def chromium(folder, address, *options):
    words = [
        CHROMIUM,
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
    ]
    words += [
        f"--user-data-dir={folder / 'profile'}",
        "--hide-scrollbars",
        "--enable-logging=stderr",
        *options,
        address,
    ]
    return subprocess.run(words, capture_output=True, text=True, timeout=120)


@pytest.mark.parametrize("medium", WIDTHS)
@pytest.mark.parametrize("page", PAGES)
def test_a_page_fits_and_shows_its_pictures_and_fetches_nothing(folder, page, medium):
    frame = folder / f"{page}_{medium}.html"
    frame.write_text(FRAME % {"page": page, "width": WIDTHS[medium], "is_paper": str(medium == "paper").lower()})
    shown = chromium(
        folder,
        frame.as_uri(),
        "--allow-file-access-from-files",
        "--virtual-time-budget=20000",
        "--window-size=1300,2100",
        "--dump-dom",
    )
    found = json.loads(re.search(r'<pre id="found">(.+?)</pre>', shown.stdout, re.DOTALL).group(1))
    assert found["title"]
    assert found["width"] <= WIDTHS[medium] and found["beyond"] == []
    assert found["pictures"] == found["loaded"] >= PAGES[page]
    assert [name for name in found["fetched"] if not name.startswith("data:")] == []
    assert "CONSOLE" not in shown.stderr, shown.stderr


@pytest.mark.parametrize("page", PAGES)
def test_a_page_prints(folder, page):
    paper = folder / f"{page}.pdf"
    shown = chromium(folder, (folder / f"{page}.html").as_uri(), f"--print-to-pdf={paper}", "--no-pdf-header-footer")
    assert paper.read_bytes().startswith(b"%PDF"), shown.stderr
    assert "CONSOLE" not in shown.stderr
