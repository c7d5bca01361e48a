"""Pictures of chances that can be counted."""

import numpy as np
from matplotlib.axes import Axes
from numpy.typing import NDArray

from .. import Predicted
from ..wording import counted
from .axes import BLACK, COLOURS, PALE, add_mil_axis, axes_or_new, panel_of

DOTS = 20


def clear_left_dots(
    predicted: Predicted, ax: Axes | None = None, *, panel: int = 0, must_stay_um: float = 0.0, dots: int = DOTS
) -> Axes:
    """The thinnest clear left as quantile dots: each stands for one of `dots` equally likely cases. Those left of the
    line, filled otherwise, have less than must_stay_um."""
    panel_of(predicted.prediction, panel, "clear_left_dots")
    left_um = quantiles(predicted.draws[panel].clear_left_um, dots)
    ax = axes_or_new(ax, 5.6, 2.6)
    line_um = must_stay_um if must_stay_um > 0 else float(left_um.min())
    x_um, heights = stacked(left_um, line_um)
    short = left_um < must_stay_um
    for chosen, face, edge in ((short, COLOURS[1], COLOURS[1]), (~short, PALE, COLOURS[0])):
        ax.scatter(x_um[chosen], heights[chosen], s=90, facecolor=face, edgecolor=edge, linewidth=1.2, zorder=3)
    if must_stay_um > 0:
        ax.axvline(must_stay_um, color=BLACK, linestyle="--", linewidth=1.2)
        words = f"{short.sum()} of {counted(dots, 'case')} under {must_stay_um:.1f} µm"
        ax.set_title(words, loc="left", fontsize="medium")
    ax.set_ylim(0, max(heights.max() + 1, 4))
    ax.set_yticks([])
    ax.spines["left"].set_visible(False)
    ax.margins(x=0.06)
    ax.set_xlabel("thinnest clear left, µm")
    add_mil_axis(ax, "x")
    return ax


def quantiles(values: NDArray[np.float64], count: int) -> NDArray[np.float64]:
    """The middles of so many equally likely parts of what was drawn."""
    return np.quantile(values, (np.arange(count) + 0.5) / count)


def stacked(values, line):
    """Dots in columns, one on the other, none across the line: places and heights, from 0.5."""
    width = max(np.ptp([*values, line]) / 11, 1e-9)
    columns = np.floor((values - line) / width)
    heights = np.empty_like(values)
    for column in np.unique(columns):
        (members,) = np.nonzero(columns == column)
        heights[members] = np.arange(len(members)) + 0.5
    return line + (columns + 0.5) * width, heights
