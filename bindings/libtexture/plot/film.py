"""Clear left over a panel."""

from math import erfc

import numpy as np
from matplotlib.axes import Axes

from .. import Paint, Panel, film_picture, must_stay_um, published_budget
from ..inputs import total_um_of
from .axes import BLACK, MAP_COLOURS, axes_or_new, name_text

CLEAR_LEFT_LEAST_UM = must_stay_um(published_budget())
CHANCES_PERCENT = (0.01, 0.1, 0.5, 1, 2, 5, 10, 20, 35, 50, 65, 80, 90, 95, 98, 99)
CHANCE_LINES = 4  # so many at most


def film_map(
    panel: Panel,
    paint: Paint,
    ax: Axes | None = None,
    *,
    removed_um: float = 0.0,
    clear_left_least_um: float = CLEAR_LEFT_LEAST_UM,
    pixels: int = 64,
) -> Axes:
    """Clear left on a panel between its readings, once removed_um are gone; the readings with their total film; and
    lines of equal chance that less than clear_left_least_um is left (the clear at a place taken as normal). Readings
    over filler are drawn apart, as crosses: they say nothing of the clear. The others need places that span an area."""
    ax = axes_or_new(ax, 5.0, 3.8)
    picture = film_picture(panel, paint, pixels=pixels)
    left_um = picture.clear_um - removed_um
    half = picture.pixel_mm / 2
    rows, cols = left_um.shape
    x_mm, y_mm = (
        picture.corner_x_mm + picture.pixel_mm * np.arange(cols),
        picture.corner_y_mm + picture.pixel_mm * np.arange(rows),
    )
    extent = x_mm[0] - half, x_mm[-1] + half, y_mm[-1] + half, y_mm[0] - half
    image = ax.imshow(left_um, cmap=MAP_COLOURS, extent=extent, interpolation="nearest")
    said = _draw_chances(ax, x_mm, y_mm, 100 * shortfall_chance(left_um, picture.clear_sd_um, clear_left_least_um))
    for reading in panel.readings:
        if reading.x_mm is not None:
            _draw_reading(ax, reading)
    ax.set(xlabel="mm", ylabel="mm")
    ax.set_title(
        f"{name_text(panel.name)}; dots: total film as read, µm\n"
        f"{said} that less than {clear_left_least_um:.1f} µm is left",
        fontsize="medium",
        pad=16,
    )
    name = "expected clear left, µm" if removed_um else "expected clear, µm"
    ax.figure.colorbar(image, ax=ax, label=name, shrink=0.9)
    return ax


def shortfall_chance(left_um, sd_um, least_um):
    """Chance, 0 to 1, that a normal thickness is less than least_um."""
    return np.vectorize(erfc)((left_um - least_um) / (np.sqrt(2) * sd_um)) / 2


def percent_words(percent):
    """A chance in words: '0.3 %', 'under 0.1 %', 'over 99.9 %'."""
    if percent < 0.1:
        return "under 0.1 %"
    return f"{percent:.2g} %" if percent <= 99.9 else "over 99.9 %"


def _draw_chances(ax, x_mm, y_mm, chance_percent):
    """Lines of equal chance, and what they are in words."""
    inside = [level for level in CHANCES_PERCENT if chance_percent.min() < level < chance_percent.max()]
    if not inside:
        return f"chance {percent_words(chance_percent.mean())} everywhere"
    levels = inside[:: -(-len(inside) // CHANCE_LINES)]
    lines = ax.contour(x_mm, y_mm, chance_percent, levels, colors="white", linewidths=1.4, linestyles="--")
    for text in ax.clabel(lines, fmt=lambda level: f"{level:g} %", fontsize="small", colors=BLACK):
        text.set_bbox({"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1})
    return "dashed: chance"


def _draw_reading(ax, reading):
    place, is_filler = (reading.x_mm, reading.y_mm), reading.over == "filler"
    look = {"marker": "x", "color": "black"} if is_filler else {"marker": "o", "color": "white", "mec": "black"}
    ax.plot(*place, markersize=5, linestyle="none", clip_on=False, **look)
    ax.annotate(
        f"filler {total_um_of(reading):.0f}" if is_filler else f"{total_um_of(reading):.0f}",
        place,
        (0, 6),
        textcoords="offset points",
        ha="center",
        fontsize="small",
        bbox={"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1},
    )
