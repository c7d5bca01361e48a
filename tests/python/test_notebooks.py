"""Each notebook runs from top to bottom; its last cell asserts its own lesson."""

import runpy
from pathlib import Path

import pytest

NOTEBOOKS = Path(__file__).parents[2] / "notebooks"
RUN = runpy.run_path(str(NOTEBOOKS / "run.py"))["run"]


@pytest.mark.parametrize("path", sorted(NOTEBOOKS.glob("*.ipynb")), ids=lambda path: path.stem)
def test_a_notebook_teaches_its_lesson(path):
    cells = [cell for cell in RUN(path)["cells"] if cell["cell_type"] == "code"]
    assert "assert " in "".join(cells[-1]["source"])
    assert cells[-1]["outputs"][-1]["text"][-1] == "checked\n"
