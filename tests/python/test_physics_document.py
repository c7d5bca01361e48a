"""Every equation that the code cites is in docs/physics.md, under a number that no other equation has; the tables there
hold the catalogue's figures."""

import re
from collections import Counter
from pathlib import Path

import pytest

import libtexture as lt

ROOT = Path(__file__).parents[2]
EQUATION = re.compile(r"^ {4}\((\d+[a-z]?)\) ", re.MULTILINE)
# "docs/physics.md (51), (52)" or "docs/physics.md, equation 4"
CITATION = re.compile(r"docs/physics\.md,? (?:equation \d+[a-z]?|\(\d+[a-z]?\)(?:(?:,| to| and) \(\d+[a-z]?\))*)")


def equations():
    return Counter(EQUATION.findall((ROOT / "docs" / "physics.md").read_text(encoding="utf-8")))


def citations():
    """(file, number) of every citation; comments are read across their line ends."""
    for folder in ("libtexture", "bindings", "tests", "examples", "data", "benchmarks"):
        for path in sorted((ROOT / folder).rglob("*")):
            if path.suffix not in (".hpp", ".cpp", ".py", ".toml") or path == Path(__file__):
                continue
            text = re.sub(r"\n\s*(?:///?|#) ?", " ", path.read_text(encoding="utf-8"))
            for citation in CITATION.findall(text):
                for number in re.findall(r"\d+[a-z]?", citation):
                    yield path.relative_to(ROOT), number


def test_no_two_equations_have_one_number():
    counts = equations()
    assert len(counts) > 60
    assert not [number for number, count in counts.items() if count > 1]


def test_every_section_ends_with_what_is_not_modelled():
    _, *sections = (ROOT / "docs" / "physics.md").read_text(encoding="utf-8").split("\n## ")
    assert len(sections) > 10
    ends = {section.splitlines()[0]: section.rstrip().split("\n\n")[-1] for section in sections}
    assert not [name for name, end in ends.items() if "Not modelled: " not in end]


def test_every_equation_that_the_code_cites_is_there():
    known, cited = equations(), list(citations())
    assert len(cited) > 15
    assert not [(str(path), number) for path, number in cited if number not in known]


def rows_of(section):
    """Rows of abrasives in a section's tables: the catalogue's name, and the first number of each further cell with its
    last digit's half as a tolerance."""
    text = (ROOT / "docs" / "physics.md").read_text(encoding="utf-8").split(f"\n## {section}\n")[1].split("\n## ")[0]
    words = {"film ": "{} film", "foam-backed ": "{} foam-backed", "compound": "compound", "polish": "finishing polish"}
    for line in text.splitlines():
        name, *cells = [cell.strip() for cell in line.strip("|").split("|")]
        kind = next((word for word in words if name.startswith(word)), None)
        if not line.startswith("| ") or kind is None:
            continue
        grade = re.search(r"P\d+", name)
        numbers = [re.search(r"\d*\.?\d+", cell).group() for cell in cells]
        halves = [0.51 * 10.0 ** -len(number.partition(".")[2]) for number in numbers]
        yield words[kind].format(grade and grade.group()), [*zip(map(float, numbers), halves)]


def test_the_tables_of_abrasives_are_the_catalogues():
    tools = lt.Catalogue.shipped().abrasives
    paces, grooves = dict(rows_of("How fast R runs")), dict(rows_of("Scratches"))
    assert set(paces) == set(grooves) == set(tools)
    for name, tool in tools.items():
        found = [tool.grit.median_um, tool.wear_rate_mm3_per_n_m, tool.loading_um]
        found.append(tool.worn_wear_rate_mm3_per_n_m / tool.wear_rate_mm3_per_n_m)
        for (stated, half), figure in zip(paces[name][0 if "P" in name else 1 :], found[0 if "P" in name else 1 :]):
            assert stated == pytest.approx(figure, abs=half), name
        depth_um = tool.groove_depth_um
        share = lt.specular_share(grooves=[lt.GroovePopulation(depth_um=depth_um, coverage=5)], angle_deg=20)
        gloss_gu = share * lt.gloss_gu(angle_deg=20, refractive_index=1.5)
        owed_um = max(0, 7 * depth_um - 0.1)  # (37), the cap ruling
        figures = [depth_um, owed_um, tool.stray_marks_per_dm2_um, gloss_gu]
        for (stated, half), figure in zip(grooves[name], figures):
            assert stated == pytest.approx(figure, abs=half), name
