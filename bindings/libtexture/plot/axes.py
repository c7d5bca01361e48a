"""What all pictures share: colours, and Axes with scales in micrometres and mil."""

from collections.abc import Sized
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from numpy.typing import NDArray

from .. import PanelPrediction, Predicted, Prediction
from ..wording import UM_PER_MIL

# A published palette, which colour-blind people tell apart as well (tests/python/test_plot.py names it); its yellow is
# left out, too pale on white.
COLOURS = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#000000"]
BLACK, PALE = COLOURS[6], COLOURS[5]
MARKERS = "osD^vP"  # lines differ by them where colours are not seen
LINES = ("-", "-.", (0, (6, 1, 1, 1, 1, 1)), (0, (2, 1)))  # of the first six, the next six, ...
Row = NDArray[np.object_]  # of Axes
LONGEST_NAME = 40  # letters: a title's width
MAP_COLOURS = "cividis"  # even in lightness, and read alike by colour-blind people


def name_text(name: str) -> str:
    """A name as a picture shows it: as it stands, a dollar sign too, which would be read as mathematics, and cut where
    it would leave no room for the lines."""
    shown = name if len(name) <= LONGEST_NAME else name[: LONGEST_NAME - 3] + "..."
    return shown.replace("$", r"\$")


def look_of(number: int) -> tuple[str, str, Any]:
    """Colour, mark and line of one of many things, counted from 0; two differ up to 24 of them."""
    turn = number // 6
    return COLOURS[number % 6], MARKERS[(number + turn) % 6], LINES[turn % 4]


def require_some(given: Sized, owner: str, name: str) -> None:
    """ValueError where there is nothing to draw."""
    if not len(given):
        raise ValueError(f"{owner}: {name} must hold at least one (got none)")


def panel_of(prediction: Prediction, number: int, owner: str) -> PanelPrediction:
    """A panel by its number, from 0; ValueError where there is none."""
    count = len(prediction.panels)
    if not 0 <= number < count:
        raise ValueError(f"{owner}: panel must be 0 to {count - 1}, the prediction has {count} (got {number})")
    return prediction.panels[number]


def axes_or_new(ax: Axes | None, width: float = 5.6, height: float = 3.6) -> Axes:
    """The Axes given, or new ones in the notebook's current backend; with a light frame."""
    if ax is None:
        from matplotlib import pyplot

        ax = pyplot.subplots(figsize=(width, height), layout="constrained")[1]
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    return ax


def row_or_new(axes: Row | None, count: int, width: float = 2.8, height: float = 3.0) -> Row:
    """The row of Axes given, or a new row."""
    if axes is not None:
        return np.atleast_1d(axes)
    from matplotlib import pyplot

    row: Row = pyplot.subplots(1, count, figsize=(width * count, height), layout="constrained", squeeze=False)[1][0]
    return row


def add_mil_axis(ax: Axes, axis: str) -> None:
    """A second scale in mil, opposite one in µm."""
    scales = (lambda um: um / UM_PER_MIL, lambda mil: mil * UM_PER_MIL)
    if axis == "x":
        ax.secondary_xaxis("top", functions=scales).set_xlabel("mil")
    else:
        ax.secondary_yaxis("right", functions=scales).set_ylabel("mil")


def mark_budget(ax: Axes, budget_um: float, end: str = "top") -> None:
    """A dashed line where the budget ends, if there is one; its word at the top or bottom end."""
    if budget_um <= 0:
        return
    ax.axvline(budget_um, color=BLACK, linestyle="--", linewidth=1.2)
    ax.annotate(
        "budget",
        (budget_um, 0.97 if end == "top" else 0.03),
        (-4, 0),
        xycoords=("data", "axes fraction"),
        textcoords="offset points",
        rotation=90,
        ha="right",
        va=end,
        fontsize="small",
        bbox={"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1},
    )


def legend_above(ax: Axes, columns: int) -> None:
    """A legend that hides no line."""
    ax.legend(frameon=False, ncols=columns, loc="lower center", bbox_to_anchor=(0.5, 1.0))


def prediction_of(predicted: Predicted | Prediction) -> Prediction:
    """The plain values of a Prediction or of a Predicted."""
    return predicted if isinstance(predicted, Prediction) else predicted.prediction
