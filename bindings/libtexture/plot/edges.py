"""Sections across edges."""

import numpy as np
from matplotlib.axes import Axes

from .. import EdgeClear, EdgeProfile, unsanded_margin_mm
from .axes import BLACK, COLOURS, PALE, add_mil_axis, axes_or_new


def edge_section(
    profile: EdgeProfile, ax: Axes | None = None, *, clear: EdgeClear | None = None, to_mm: float = 60.0
) -> Axes:
    """Clear removed near an edge, over the distance from it. clear: an EdgeClear, then the clear itself is shown,
    before and after, with the margin that must stay unsanded to keep what it asks for."""
    ax = axes_or_new(ax)
    if clear is None:
        ax.fill_between(profile.distance_mm, 0, profile.removal_um, color=PALE, alpha=0.35, linewidth=0)
        ax.plot(profile.distance_mm, profile.removal_um, color=COLOURS[0], linewidth=1.6)
        ax.set(xlabel="distance from the edge, mm", ylabel="clear removed, µm", ylim=(0, None))
    else:
        _draw_clear_at_edge(ax, profile, clear)
    ax.set_xlim(min(profile.distance_mm[0], 0), min(to_mm, profile.distance_mm[-1]))
    add_mil_axis(ax, "y")
    return ax


def _draw_clear_at_edge(ax, profile, clear):
    """The clear before and after, what must be left, and the margin."""
    rise = np.clip(profile.distance_mm / clear.taper_mm, 0, 1)
    before_um = clear.clear_um * (clear.share_at_edge + (1 - clear.share_at_edge) * rise)
    after_um = before_um - clear.removal_factor * profile.removal_um
    ax.fill_between(profile.distance_mm, after_um, before_um, color=PALE, alpha=0.35, linewidth=0, label="removed")
    ax.plot(profile.distance_mm, before_um, color=BLACK, linewidth=1.2, label="clear before")
    ax.plot(profile.distance_mm, after_um, color=COLOURS[0], linewidth=1.6, label="after, sanded up to the edge")
    ax.axhline(clear.clear_left_least_um, color=COLOURS[1], linestyle="--", linewidth=1.2, label="must be left")
    margin_mm = unsanded_margin_mm(profile, clear)
    if 0 < margin_mm < np.inf:
        ax.axvspan(
            0,
            margin_mm,
            facecolor="none",
            edgecolor=COLOURS[4],
            hatch="///",
            linewidth=0,
            label=f"leave {margin_mm:.1f} mm",
        )
    ax.set(xlabel="distance from the edge, mm", ylabel="clear, µm", ylim=(min(0, after_um.min()), 1.1 * clear.clear_um))
    ax.legend(loc="lower right", framealpha=0.85, edgecolor="none", fontsize="small")
