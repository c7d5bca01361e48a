"""Each notebook runs from top to bottom, from any folder, within a minute, and its last cell asserts its own lesson.
In a live kernel the trainer's pictures have sliders: Debian's python3-ipywidgets, which brings a kernel (.ci/run
installs it); a run without it says so."""

import json
import re
import resource
import runpy
import warnings
from pathlib import Path

import pytest

NOTEBOOKS = Path(__file__).parents[2] / "notebooks"
RUN = runpy.run_path(str(NOTEBOOKS / "run.py"))["run"]
MOVE_ALL_SLIDERS = """
import ipywidgets

widgets = list(ipywidgets.Widget.widgets.values())
sliders = [one for one in widgets if isinstance(one, (ipywidgets.IntSlider, ipywidgets.FloatSlider))]
for slider in sliders:
    for value in (slider.min, slider.max):
        slider.value = value
print(sum(isinstance(one, ipywidgets.interactive) for one in widgets), "pictures with", len(sliders), "sliders")
"""


def processor_s():
    """Of this process and of those that it has started and ended."""
    return sum(resource.getrusage(who).ru_utime for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))


def code_cells(notebook):
    return [cell for cell in notebook["cells"] if cell["cell_type"] == "code"]


def kinds(cell):
    return [output["output_type"] for output in cell["outputs"]]


def text_of(cell):
    return "".join(line for output in cell["outputs"] for line in output.get("text", []))


NUMBER = re.compile(r"(?<![\w.])[-+]?\d+(?:\.\d+)?")


def assert_says_the_same(before, now):
    """Words alike, and numbers as far as two builds of one library agree: 5 %, or two units of the last digit. Another
    compiler's or transform's last bits move a solve within its tolerance, and a world by a look: some per cent."""
    assert [NUMBER.sub("#", line).split() for line in before.splitlines()] == [
        NUMBER.sub("#", line).split() for line in now.splitlines()
    ]
    for old, new in zip(NUMBER.findall(before), NUMBER.findall(now)):
        unit = 10.0 ** -len(new.partition(".")[2])
        assert float(old) == pytest.approx(float(new), rel=0.05, abs=2 * unit), f"{old} is {new} now:\n{now}"


@pytest.mark.parametrize("path", sorted(NOTEBOOKS.glob("*.ipynb")), ids=lambda path: path.stem)
def test_a_notebook_teaches_its_lesson(path, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    before_s = processor_s()
    cells = code_cells(RUN(path))
    # A minute is what a class waits for at most, on a machine of its own; measured: 10 to 25 s.
    assert processor_s() - before_s < 60
    assert "assert " in "".join(cells[-1]["source"])
    assert cells[-1]["outputs"][-1]["text"][-1] == "checked\n"
    # What is committed reads without being run: the same cells have drawn, and have printed the same.
    committed = code_cells(json.loads(path.read_text()))
    assert [kinds(cell) for cell in committed] == [kinds(cell) for cell in cells]
    for before, now in zip(committed, cells):
        assert_says_the_same(text_of(before), text_of(now))


def test_the_trainer_has_sliders_in_a_live_kernel(tmp_path):
    try:
        import ipykernel  # noqa: F401
        import ipywidgets  # noqa: F401
        from jupyter_client.manager import start_new_kernel
    except ModuleNotFoundError as missing:
        warnings.warn(f"the Python package {missing.name} is not installed: no sliders were tested", stacklevel=1)
        return
    sources = ["".join(cell["source"]) for cell in code_cells(json.loads((NOTEBOOKS / "trainer.ipynb").read_text()))]
    messages = []
    manager, client = start_new_kernel(cwd=str(tmp_path))
    try:
        for source in [*sources, MOVE_ALL_SLIDERS]:
            reply = client.execute_interactive(source, output_hook=messages.append, timeout=200)["content"]
            assert reply["status"] == "ok", reply
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)
    assert "error" not in [message["msg_type"] for message in messages]  # a slider's own error does not end its cell
    pictures = sum(source.count("\nexplore(") for source in sources)
    printed = "".join(message["content"]["text"] for message in messages if message["msg_type"] == "stream")
    assert f"checked\n{pictures} pictures with " in printed
