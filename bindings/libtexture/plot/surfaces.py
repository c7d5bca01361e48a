"""Pictures of height fields."""

from collections.abc import Mapping

import numpy as np
from matplotlib.axes import Axes

from .. import HeightField
from .axes import BLACK, COLOURS, MAP_COLOURS, PALE, Row, axes_or_new, legend_above, name_text, require_some, row_or_new


def height_map(
    field: HeightField,
    ax: Axes | None = None,
    *,
    range_um: tuple[float, float] | None = None,
    title: str = "",
    colour_bar: bool = True,
) -> Axes:
    """Heights of a surface about their mean, seen from above; range_um: of colours, to compare maps."""
    ax = axes_or_new(ax, 4.2, 3.6)
    range_um = range_um or shared_range_um(field)
    width_mm, height_mm = field.grid.cols * field.pixel_mm, field.grid.rows * field.pixel_mm
    image = ax.imshow(
        field.height_um - field.mean_um,
        cmap=MAP_COLOURS,
        vmin=range_um[0],
        vmax=range_um[1],
        extent=(0, width_mm, height_mm, 0),
        interpolation="nearest",
    )
    ax.set(xlabel="mm", ylabel="mm", title=name_text(title))
    if colour_bar:
        ax.figure.colorbar(image, ax=ax, label="height about the mean, µm", shrink=0.8)
    return ax


def shared_range_um(*fields: HeightField) -> tuple[float, float]:
    """The range of heights about the mean over all the fields (lowest, highest)."""
    heights = [field.height_um - field.mean_um for field in fields]
    return float(min(map(np.min, heights))), float(max(map(np.max, heights)))


def height_maps(fields: Mapping[str, HeightField], axes: Row | None = None) -> Row:
    """Maps side by side with one range of colours. fields: title -> HeightField; returns their Axes."""
    require_some(fields, "height_maps", "fields")
    axes = row_or_new(axes, len(fields))
    range_um = shared_range_um(*fields.values())
    for ax, (title, field) in zip(axes, fields.items()):
        height_map(field, ax, range_um=range_um, title=title, colour_bar=False)
        if ax is not axes[0]:
            ax.set_ylabel("")
    axes[0].figure.colorbar(axes[0].images[0], ax=list(axes), label="height about the mean, µm", shrink=0.8)
    return axes


def profile_overlay(before: HeightField, after: HeightField, ax: Axes | None = None, *, row: int | None = None) -> Axes:
    """One row of a surface before and after, and the clear removed between them; row: its number, else the middle."""
    ax = axes_or_new(ax)
    row = before.grid.rows // 2 if row is None else row
    x_mm = (np.arange(before.grid.cols) + 0.5) * before.pixel_mm
    top, bottom = before.height_um[row] - before.mean_um, after.height_um[row] - before.mean_um
    ax.fill_between(x_mm, bottom, top, color=PALE, alpha=0.35, linewidth=0, label="removed")
    ax.plot(x_mm, top, color=BLACK, linewidth=1.2, label="before")
    ax.plot(x_mm, bottom, color=COLOURS[0], linewidth=1.6, label="after")
    ax.set(xlabel="along the surface, mm", ylabel="height, µm (0 = mean before)", xlim=(0, x_mm[-1] + x_mm[0]))
    legend_above(ax, 3)
    return ax
