"""Pictures of alternatives side by side."""

import numpy as np
from matplotlib.axes import Axes

from .. import Comparison, Predicted, Prediction
from .axes import (
    BLACK,
    COLOURS,
    add_mil_axis,
    axes_or_new,
    look_of,
    mark_budget,
    name_text,
    panel_of,
    prediction_of,
    require_some,
)

Planned = Predicted | Prediction

PARTS = (  # of the clear spent: field, word, colour, hatch: told apart without colour as well
    ("levelling_um", "levelling", COLOURS[0], ""),
    ("overshoot_um", "overshoot", COLOURS[4], "...."),
    ("debt_um", "scratch debt", COLOURS[1], "////"),
)
LEAST_LABEL = 0.04  # of the width: less has no room for its figure


def split_chart(comparison: Comparison, ax: Axes | None = None) -> Axes:
    """Clear spent by each alternative, split in levelling, overshoot and scratch debt (medians), in the order of the
    ranking, the best on top; those that miss the target too often say so. The line under each bar holds 90 % of the
    possible worlds; dashed: the budget."""
    require_some(comparison.alternatives, "split_chart", "comparison.alternatives")
    shown = sorted(comparison.alternatives, key=lambda one: one.rank, reverse=True)
    return _draw_split(axes_or_new(ax, 4.8, 3.0), [(_name_of(one), one) for one in shown], comparison.removable_um)


def clear_spent_split(prediction: Planned, ax: Axes | None = None, *, panel: int = 0) -> Axes:
    """The same of one panel of a prediction: a bar, its line, and what may go by half of the cases."""
    plan = prediction_of(prediction)
    risk = panel_of(plan, panel, "clear_spent_split").risk
    return _draw_split(axes_or_new(ax, 5.6, 1.8), [(name_text(plan.sequence), risk)], risk.removable_um.p50)


def _draw_split(ax, named, removable_um):
    """A bar for each (name, spreads of the clear that it spends), from the bottom up."""
    places = np.arange(len(named))
    start = np.zeros(len(named))
    least_um = LEAST_LABEL * max([removable_um, *(spent.removed_um.p95 for _, spent in named)])
    for field, word, colour, hatch in PARTS:
        widths = np.array([getattr(spent, field).p50 for _, spent in named])
        bars = ax.barh(
            places, widths, 0.56, left=start, color=colour, hatch=hatch, edgecolor="white", linewidth=0.8, label=word
        )
        texts = [f"{width:.1f}" if width > least_um else "" for width in widths]
        ax.bar_label(
            bars,
            texts,
            label_type="center",
            fontsize="small",
            color="white" if colour == COLOURS[0] else "black",
            bbox=None if colour == COLOURS[0] else {"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1},
        )
        start += np.maximum(widths, 0)
    for place, (_, spent) in zip(places, named):
        spread = spent.removed_um
        ax.plot([spread.p05, spread.p95], [place - 0.38] * 2, color=BLACK, linewidth=1.4, solid_capstyle="butt")
        ax.plot(spread.p50, place - 0.38, "o", color=BLACK, markersize=3.5)
    mark_budget(ax, removable_um, "bottom")
    ax.set_yticks(places, [name for name, _ in named])
    ax.set_ylim(-0.7, len(named) - 0.5)
    ax.set_xlim(left=0)
    ax.set_xlabel("clear spent, µm (medians; line: 5 to 95 %)")
    add_mil_axis(ax, "x")
    ax.legend(
        frameon=False,
        ncols=3,
        loc="upper center",
        bbox_to_anchor=(0.4, 0),
        borderaxespad=5.5,
        fontsize="small",
        columnspacing=1.2,
    )
    return ax


def _name_of(one):
    """A sequence, and how often it misses the target where that is too often."""
    missed = f"\nmisses the target: {100 * one.target_missed_probability:.0f} %"
    return name_text(one.sequence) + ("" if one.is_reaching else missed)


def pareto_chart(comparison: Comparison, ax: Axes | None = None) -> Axes:
    """Time against clear spent, medians with the range of 90 % of the worlds. Full marks are on the Pareto front: no
    other alternative is as good in clear, trouble, time, discs, texture and marks, and better in one."""
    require_some(comparison.alternatives, "pareto_chart", "comparison.alternatives")
    ax = axes_or_new(ax)
    for number, one in enumerate(comparison.alternatives):
        colour, marker, _ = look_of(number)
        clear, minutes = one.removed_um, one.minutes
        ax.errorbar(
            clear.p50,
            minutes.p50,
            xerr=[[clear.p50 - clear.p05], [clear.p95 - clear.p50]],
            yerr=[[minutes.p50 - minutes.p05], [minutes.p95 - minutes.p50]],
            fmt=marker,
            markersize=8,
            color=colour,
            markerfacecolor=colour if one.is_on_front else "white",
            elinewidth=0.8,
            label=f"{name_text(one.sequence)}, trouble {100 * one.trouble_probability:.0f} %",
        )
    ax.set(xlabel="clear spent, µm", ylabel="machine time, min")
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    add_mil_axis(ax, "x")
    ax.legend(frameon=False, loc="upper center", bbox_to_anchor=(0.5, 0), borderaxespad=5, fontsize="small")
    return ax
