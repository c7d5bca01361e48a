"""What a test spot taught."""

from collections.abc import Sequence

from matplotlib.axes import Axes

from .. import Belief
from .axes import COLOURS, axes_or_new, legend_above, require_some

BEFORE = "0.55"  # grey: what is over


def belief_chart(named: Sequence[tuple[str, str, Belief, Belief]], ax: Axes | None = None) -> Axes:
    """What is believed of each figure before and after a test spot, as multiples of the median before; the line holds
    95 %. named: a sequence of (name, unit, Belief before, Belief after)."""
    require_some(named, "belief_chart", "named")
    ax = axes_or_new(ax)
    for row, (_, _, old, new) in enumerate(named):
        for shift, belief, colour, when in ((0.16, old, BEFORE, "before"), (-0.16, new, COLOURS[0], "after")):
            least, median, most = (figure / old.median for figure in (belief.least, belief.median, belief.most))
            label = f"{when} the spot" if row == 0 else None
            ax.plot([least, most], [-row + shift] * 2, color=colour, linewidth=3, solid_capstyle="round", label=label)
            ax.plot(median, -row + shift, "o", color=colour, markersize=7)
    ax.set_xscale("log")
    ax.xaxis.set_major_formatter(lambda ratio, _: f"{ratio:g}")
    ax.xaxis.set_minor_formatter(lambda ratio, _: f"{ratio:g}" if round(ratio, 3) in (0.3, 0.5, 2, 3, 5) else "")
    ax.set_yticks([-row for row in range(len(named))], [name for name, *_ in named])
    ax.set_ylim(-len(named) + 0.5, 0.5)
    ax.set_xlabel("times the median before the spot (dot: median; line: 95 %)")
    legend_above(ax, 2)
    return ax
