"""Every equation that the code cites is in docs/physics.md, under a number that no other equation has."""

import re
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
EQUATION = re.compile(r"^ {4}\((\d+[a-z]?)\) ", re.MULTILINE)
# "docs/physics.md (51), (52)" or "docs/physics.md, equation 4"
CITATION = re.compile(r"docs/physics\.md,? (?:equation \d+[a-z]?|\(\d+[a-z]?\)(?:(?:,| to| and) \(\d+[a-z]?\))*)")


def equations():
    return Counter(EQUATION.findall((ROOT / "docs" / "physics.md").read_text(encoding="utf-8")))


def citations():
    """(file, number) of every citation; comments are read across their line ends."""
    for folder in ("libtexture", "bindings", "tests", "examples"):
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
