"""Pictures of predictions: texture, clear and scratch debt, step by step."""

from collections.abc import Sequence

import numpy as np
from matplotlib.axes import Axes
from numpy.typing import NDArray

from .. import HeightField, Predicted, Prediction
from ..wording import band_words, step_title
from .axes import (
    BLACK,
    COLOURS,
    PALE,
    add_mil_axis,
    axes_or_new,
    legend_above,
    look_of,
    mark_budget,
    name_text,
    panel_of,
    prediction_of,
    require_some,
)

Planned = Predicted | Prediction


def texture_against_clear(predictions: Planned | Sequence[Planned], ax: Axes | None = None, *, panel: int = 0) -> Axes:
    """Texture left against clear removed: what each µm of clear buys. One line a prediction, a mark at the end of each
    step. Where predictions have their risk, the band holds 90 % of the possible worlds at each removal, and the bar at
    the line's end 90 % of the clear that goes. The dashed line is the budget of the first. The dotted one is what a
    plane that cuts all above it would do to the first's patch, where a Predicted is given, which has the patch: no tool
    can do better."""
    given = predictions if isinstance(predictions, Sequence) else [predictions]
    require_some(given, "texture_against_clear", "predictions")
    panels = [panel_of(prediction_of(one), panel, "texture_against_clear") for one in given]
    ax = axes_or_new(ax)
    for number, (one, shown) in enumerate(zip(given, panels)):
        _draw_plan(ax, prediction_of(one).sequence, shown, *look_of(number))
    if isinstance(given[0], Predicted):
        bound = ideal_cut(given[0].histories[panel].before)
        ax.plot(*bound, ":", color=BLACK, linewidth=1.2, label="the least that it takes")
    mark_budget(ax, panels[0].removable_um)
    ax.set(xlabel="clear removed, mean over the patch, µm", ylabel="texture left, µm rms")
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    add_mil_axis(ax, "x")
    ax.legend(frameon=False)
    return ax


def _draw_plan(ax, name, shown, colour, marker, line):
    """One line of texture_against_clear()."""
    rows = [shown.start, *shown.passes]
    removed, left = [row.total_removed_um for row in rows], [row.rms_um for row in rows]
    ax.plot(removed, left, color=colour, linestyle=line, linewidth=1.6, label=name_text(name))
    ends = [row.total_removed_um for row in shown.steps], [row.rms_um for row in shown.steps]
    ax.plot(*ends, marker, color=colour, linestyle="none", markersize=5)
    if shown.risk.texture_left:
        at_um, spreads = zip(*((point.removed_um, point.rms_um) for point in shown.risk.texture_left))
        low, high = [spread.p05 for spread in spreads], [spread.p95 for spread in spreads]
        ax.fill_between(at_um, low, high, color=colour, alpha=0.15, linewidth=0)
    if shown.risk.samples:
        spread = shown.risk.removed_um
        ax.plot([spread.p05, spread.p95], [left[-1]] * 2, color=colour, linewidth=7, alpha=0.35, solid_capstyle="butt")


def ideal_cut(field: HeightField, points: int = 400) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Mean clear removed and rms height left [µm], where a plane comes down on a surface and takes off all above it."""
    heights = np.sort(field.height_um, axis=None)[::-1]
    counts = np.unique(np.geomspace(1, heights.size, points).astype(int))
    planes = heights[counts - 1]
    sums, squares = np.cumsum(heights)[counts - 1], np.cumsum(heights**2)[counts - 1]
    removed = (sums - counts * planes) / heights.size
    mean_left = heights.mean() - removed
    square_left = (np.sum(heights**2) - squares + counts * planes**2) / heights.size
    return removed, np.sqrt(np.maximum(square_left - mean_left**2, 0))


def band_amplitudes(prediction: Planned, ax: Axes | None = None, *, panel: int = 0) -> Axes:
    """Texture left in each band of wavelengths, before and after each step."""
    prediction = prediction_of(prediction)
    shown = panel_of(prediction, panel, "band_amplitudes")
    ax = axes_or_new(ax)
    bands = band_words(prediction.band_edges_mm)
    places = np.arange(len(bands))
    width = 0.8 / (len(shown.steps) + 1)
    for number, row in enumerate([shown.start, *shown.steps]):
        ax.bar(
            places + (number - len(shown.steps) / 2) * width,
            row.band_rms_um,
            width,
            color=COLOURS[(number - 1) % 6] if number else BLACK,
            label=f"after {name_text(step_title(row, number))}" if number else "before",
        )
    ax.set_xticks(places, bands)
    ax.set(xlabel="wavelength, mm", ylabel="texture left, µm rms")
    ax.legend(frameon=False)
    return ax


def scratch_owed(prediction: Planned, ax: Axes | None = None, *, panel: int = 0) -> Axes:
    """Clear that each step spends, of it the overshoot: what it cuts between meeting its stop rule and the next look;
    and the clear that the scratches left ask of the steps after it."""
    steps = panel_of(prediction_of(prediction), panel, "scratch_owed").steps
    ax = axes_or_new(ax)
    places = np.arange(len(steps))
    overshoot = [row.overshoot_um for row in steps]
    needed = [row.removed_um - past for row, past in zip(steps, overshoot)]
    ax.bar(places - 0.2, needed, 0.38, color=COLOURS[0], label="spent until the step's stop rule was met")
    ax.bar(places - 0.2, overshoot, 0.38, bottom=needed, color=PALE, label="spent past it, before the next look")
    ax.bar(
        places + 0.2,
        [row.clear_owed_um for row in steps],
        0.38,
        facecolor="white",
        edgecolor=COLOURS[1],
        hatch="////",
        linewidth=1.2,
        label="still owed for scratches",
    )
    names = [name_text(step_title(row, number)) for number, row in enumerate(steps, 1)]
    ax.set_xticks(places, names, rotation=20, ha="right")
    ax.set_ylabel("clear, µm")
    add_mil_axis(ax, "y")
    legend_above(ax, 1)  # over no bar
    return ax
