"""What all answers have in common, as text, JSON and page: the job's note, and no name of an author, an institute or a
maker. Those stand in docs/ and tests/ only, beside the figures that they published."""

import importlib
import inspect
import json
import pkgutil
import re
from pathlib import Path

import pytest
from test_bench import bench_file
from test_calibrate import spot_file
from test_command import JOBS, command, small_job

import libtexture as lt
from libtexture.table import note

ROOT = Path(__file__).parents[2]
NAMES = """Adler Alexander Ashby Bennett Bertsekas Bugnicourt Butland Conover Figliuzzi Fritsch General\\ Motors Gibson
Hetenyi Hilferty HSE I-CAR Johnson Keer McKay NIST Nissan Okabe Orchard Polak Polonsky Porteus Rabinowicz Ribiere Steele
Westergaard""".replace("\\ ", "_").split()
NAME = re.compile(rf"\b(?:{'|'.join(name.replace('_', ' ') for name in NAMES)})\b")
# Anybody else's, by its year: "Bennett and Porteus (1961)", "Alexander 1977"; standards and laws have others.
DATED = re.compile(r"\b[A-Z][a-z]+(?: et al\.)?,? \(?(?:19|20)\d\d\b(?!/)")
WORDS = ["predict", "compare", "recommend", "calibrate", "bench", "compression"]
SOURCES = ["libtexture", "bindings", "data", "examples", "benchmarks"]


def names_in(text):
    return NAME.findall(text) + DATED.findall(text)


@pytest.fixture(scope="module")
def answers(tmp_path_factory):
    """What the words of the command print and write, by word and kind."""
    folder = tmp_path_factory.mktemp("answers")
    job, spot = small_job(folder), spot_file(folder)
    given = {"predict": [job], "compare": [job], "recommend": [job], "calibrate": [spot, job]}
    texts = {}
    for word, files in given.items():
        outputs = ["--json", folder / f"{word}.json", "--report", folder / f"{word}.html"]
        done = command(word, *files, *outputs)
        assert done.returncode == 0, done.stderr
        texts |= {(word, "text"): done.stdout}
        texts |= {(word, kind): (folder / f"{word}.{kind}").read_text(encoding="utf-8") for kind in ("json", "html")}
    bench = bench_file(folder, "mine", "P2500", [0.1, 0.11])
    written = ["--json", folder / "bench.json", "--catalogue", folder / "mine.toml"]
    texts["bench", "text"] = command("bench", bench, *written).stdout
    return texts | {("bench", path.suffix): path.read_text(encoding="utf-8") for path in written[1::2]}


def test_the_note_of_a_job_stands_above_every_answer(answers):
    told = "Invented scenario, not measured."
    for word in ("predict", "compare", "recommend", "calibrate"):
        lines = answers[word, "text"].splitlines()
        assert lines.index(told) < 5, word
        assert f'<p class="note">{told}</p>' in answers[word, "html"].partition("</h1>")[2][:200], word
        figures = json.loads(answers[word, "json"])
        results = [figures] if word != "calibrate" else [figures["before"], figures["after"]]
        assert {one["note"] for one in [figures["job"], *results]} == {told}, word


def test_a_job_without_a_note_says_nothing_in_its_place():
    job = lt.Job.load(JOBS / "rear_door.toml").replace(note=None)
    assert lt.Job.from_dict(job.to_dict()).note is None
    prediction = lt.Prediction(sequence="one")
    assert prediction.note is None and note(prediction) == ""


@pytest.mark.parametrize("text", ["", "a\tb", "\n".join("abcdefghijk")])
def test_a_note_is_a_few_lines(text):
    with pytest.raises(ValueError, match="Job: note must "):
        lt.Job.load(JOBS / "rear_door.toml").replace(note=text)


def test_every_example_says_that_it_is_invented():
    for path in JOBS.glob("*.toml"):
        assert "nvented" in lt.Job.load(path).note, path
    for word in ("bench", "compression"):
        assert "figures invented" in command(word, "--help").stdout


def test_answers_name_no_author_institute_or_maker(answers):
    for kind, text in answers.items():
        assert not names_in(text), kind
    for words in [["--help"], *[[word, "--help"] for word in WORDS]]:
        assert not names_in(command(*words).stdout), words
    catalogue = lt.Catalogue.shipped()
    for tools in (catalogue.abrasives, catalogue.backings, catalogue.motions):
        for tool in tools.values():
            assert not names_in(f"{tool!r} {json.dumps(tool.to_dict())}"), tool.name


def test_doc_strings_name_no_author_institute_or_maker():
    modules = [lt, *[importlib.import_module(f"libtexture.{one.name}") for one in submodules()]]
    docs = {place: doc for module in modules for place, doc in doc_strings(module, module.__name__, set())}
    assert docs["libtexture.Layer.plateau_kpa"] and docs["libtexture.gloss_gu"]  # properties and functions are reached
    assert not {place: names for place, doc in docs.items() if (names := names_in(doc))}


def submodules():
    return [one for one in pkgutil.iter_modules(lt.__path__) if not one.name.startswith("__")]


def doc_strings(thing, place, seen):
    """(place, doc string) of a thing and of all that it holds, each once."""
    if id(thing) in seen:
        return
    seen.add(id(thing))
    yield place, inspect.getdoc(thing) or ""
    if inspect.ismodule(thing) or inspect.isclass(thing):
        for name, held in vars(thing).items():
            is_ours = inspect.isclass(held) or callable(held) or isinstance(held, (property, staticmethod))
            if is_ours and getattr(held, "__module__", "libtexture").startswith("libtexture"):
                yield from doc_strings(held, f"{place}.{name}", seen)


def test_sources_and_file_names_name_no_author_institute_or_maker():
    """What no run reaches, an error's sentence say, is found in the sources."""
    found = {}
    for folder in SOURCES:
        for path in sorted((ROOT / folder).rglob("*")):
            if path.suffix not in (".hpp", ".cpp", ".py", ".pyi", ".toml", ".j2", ".txt"):
                continue
            if names := names_in(path.read_text(encoding="utf-8")):
                found[str(path.relative_to(ROOT))] = names
    assert not found
    parts = [part for name in NAMES for part in re.split(r"[ _-]", name.lower()) if len(part) > 3]
    files = [path for folder in (*SOURCES, "docs", "tests", "notebooks") for path in (ROOT / folder).rglob("*")]
    assert not [path.name for path in files if set(re.split(r"[^a-z]", path.stem.lower())) & set(parts)]


@pytest.mark.parametrize("text", ["by Bennett and Porteus", "Somebody (1999)", "Nobody et al. 2003", "HSE limits"])
def test_a_name_is_found(text):
    assert names_in(text) and not names_in("ISO 2360:2003, Directive 2002/44/EC, EN 149, 1 mil = 25.4 um")


def test_every_name_of_the_list_stands_in_documents_or_tests():
    """So that the list holds nothing that nobody could leak."""
    paths = [*(ROOT / "docs").rglob("*.md"), *(ROOT / "tests").rglob("*.cpp"), *(ROOT / "tests").rglob("*.py")]
    text = "\n".join(path.read_text(encoding="utf-8") for path in paths if path != Path(__file__))
    assert not [name for name in NAMES if name.replace("_", " ") not in text]


def test_cautions_stand_where_work_starts(answers):
    """In what the command prints, in the documents that send people to a spot, a bench or a panel, and in what the
    notebooks and examples print."""
    prevail = "licensed practice prevail"
    for kind, text in answers.items():
        if kind[1] in ("text", "html", "json", ".json"):
            assert prevail in text, kind
    tutorial = (ROOT / "docs" / "tutorial.md").read_text(encoding="utf-8")
    sections = {part.splitlines()[0]: " ".join(part.split()) for part in tutorial.split("\n## ")}
    assert all(prevail in sections[name] for name in ("7. The test spot", "9. Your own discs: the bench"))
    assert prevail in " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
    for path in (ROOT / "notebooks").glob("*.ipynb"):
        assert "cautions" in "".join(
            line for cell in json.loads(path.read_text())["cells"] for line in cell["source"]
        ), path
    for stem in ("04_test_spot", "06_edge"):
        for ending in (".cpp", ".py"):
            assert "cautions" in (ROOT / "examples" / f"{stem}{ending}").read_text(), stem
