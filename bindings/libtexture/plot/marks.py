"""Pictures of scratches."""

import numpy as np
from matplotlib.axes import Axes

from .. import History, ScratchLimits, depth_laws
from ..wording import step_title
from .axes import BLACK, COLOURS, axes_or_new, legend_above, name_text


def scratch_populations(
    history: History, ax: Axes | None = None, *, depth_um: float | None = None, limits: ScratchLimits | None = None
) -> Axes:
    """Scratches after each step: the share of the surface that lies in a groove deeper than a depth. A finer step takes
    the deep end of the line down and leaves its own, shallower grooves. history: of simulate(), or an item of
    Predicted.histories; depth_um: the deepest shown; limits: the ScratchLimits whose visible depth is marked."""
    ax = axes_or_new(ax)
    limits = limits or ScratchLimits()
    depth_um = depth_um or 1.1 * max(row.deepest_scratch_um for row in history.steps)
    depths_um = np.linspace(0, depth_um, 300)
    for number, (row, scratches) in enumerate(zip(history.steps, history.scratches), 1):
        share = sum(law.area_share * deeper_share(law.grooves, depths_um) for law in depth_laws(scratches))
        ax.semilogy(
            depths_um,
            100 * share,
            color=COLOURS[(number - 1) % 6],
            linewidth=1.6,
            label=f"after {name_text(step_title(row, number))}",
        )
    ax.axvline(limits.visible_depth_um, color=BLACK, linestyle="--", linewidth=1.2, label="visible from here on")
    ax.set(xlabel="depth, µm", ylabel="surface in deeper grooves, %", xlim=(0, depth_um), ylim=(1e-4, 110))
    legend_above(ax, 3)
    return ax


def deeper_share(grooves, depth_um):
    """Share of an area in a groove deeper than a depth, where depths of each population are exponential about its mean
    and populations lie over each other at random."""
    return 1 - np.exp(-sum(one.coverage * np.exp(-depth_um / one.depth_um) for one in grooves))
