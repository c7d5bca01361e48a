"""The README's Python runs as it stands, but for a smaller patch; links of all documents lead somewhere."""

import json
import re
from pathlib import Path

import libtexture as lt

ROOT = Path(__file__).parents[2]
JOB = "examples/jobs/rear_door.toml"


def test_the_python_of_the_readme_runs(tmp_path, capsys):
    blocks = re.findall(r"```python\n(.*?)```", (ROOT / "README.md").read_text(), re.DOTALL)
    assert len(blocks) == 1
    assert JOB in blocks[0]
    patch = "patch = { rows = 64, cols = 64, pixel_mm = 0.4 }"
    small, count = re.subn(r"^patch = \{.*?\}", patch, (ROOT / JOB).read_text(), flags=re.MULTILINE)
    assert count == 1
    (tmp_path / "job.toml").write_text(small)
    exec(compile(blocks[0].replace(JOB, str(tmp_path / "job.toml")), "README.md", "exec"), {})
    printed = capsys.readouterr().out
    for sequence in ("P1200 first", "P2000 first", "P3000 first"):
        assert f"{sequence}: " in printed


def test_the_readme_asks_for_the_version_that_this_is():
    major, minor, _ = lt.__version__.split(".")
    assert f"find_package(libtexture {major}.{minor} REQUIRED)" in (ROOT / "README.md").read_text()


def documents():
    """(path, its Markdown)"""
    for path in [*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")]:
        yield path, path.read_text()
    for path in ROOT.glob("notebooks/*.ipynb"):
        cells = json.loads(path.read_text())["cells"]
        yield path, "\n\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")


def anchors(markdown):
    """Of its headings, as they are commonly made: small letters, no punctuation, hyphens for spaces."""
    headings = re.findall(r"^#+ (.+)$", markdown, re.MULTILINE)
    return {re.sub(r"[^\w -]", "", heading.lower()).replace(" ", "-") for heading in headings}


def test_every_file_and_heading_that_the_documents_link_to_is_there():
    links = [(path, link) for path, text in documents() for link in re.findall(r"\]\(([^)\s]+)\)", text)]
    assert sum("#" in link for _, link in links) > 0
    for path, link in links:
        if not link.startswith("http"):
            file, _, anchor = link.partition("#")
            target = path.parent / file if file else path
            assert target.exists(), f"{path.name}: {link}"
            assert not anchor or anchor in anchors(target.read_text()), f"{path.name}: {link}"


def test_lines_of_the_documents_are_at_most_120_columns_wide():
    long = [(path.name, line) for path, text in documents() for line in text.splitlines() if len(line) > 120]
    assert not [(name, line) for name, line in long if not line.startswith("|")]  # a table's row is one line
