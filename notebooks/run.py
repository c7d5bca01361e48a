"""Runs the code cells of notebooks in order; with --save also stores what they print and draw.

python3 notebooks/run.py [--save] notebooks/*.ipynb
"""

import argparse
import base64
import contextlib
import io
import json
from pathlib import Path

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt


def run(path):
    """The notebook (a dict) with fresh outputs, run in the working directory as it is; an error in a cell is raised."""
    notebook = json.loads(path.read_text())
    namespace = {}
    cells = [cell for cell in notebook["cells"] if cell["cell_type"] == "code"]
    for number, cell in enumerate(cells, 1):
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile("".join(cell["source"]), f"{path.name}, cell {number}", "exec"), namespace)
        cell["execution_count"] = number
        cell["outputs"] = [*stream(printed.getvalue()), *pictures()]
    return notebook


def stream(text):
    return [{"output_type": "stream", "name": "stdout", "text": text.splitlines(keepends=True)}] if text else []


def pictures():
    """The open figures as outputs; they are closed."""
    outputs = []
    for number in plt.get_fignums():
        png = io.BytesIO()
        plt.figure(number).savefig(png, format="png", dpi=72, metadata={"Software": None})
        data = {"image/png": base64.b64encode(png.getvalue()).decode(), "text/plain": ["<Figure>"]}
        outputs.append({"output_type": "display_data", "data": data, "metadata": {}})
    plt.close("all")
    return outputs


if __name__ == "__main__":
    words = argparse.ArgumentParser(description="Runs the code cells of notebooks in order.")
    words.add_argument("--save", action="store_true", help="stores in the notebooks what they print and draw")
    words.add_argument("notebooks", metavar="NOTEBOOK.ipynb", nargs="+", type=Path)
    given = words.parse_args()
    for path in given.notebooks:
        notebook = run(path)
        if given.save:
            path.write_text(json.dumps(notebook, indent=1, ensure_ascii=False) + "\n")
