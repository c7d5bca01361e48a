"""What a person sees in a surface."""

from collections.abc import Iterator
from os import PathLike
from typing import Any, BinaryIO

import numpy as np
from numpy.typing import NDArray

from .. import HeightField, History, Scratches, render_reflection, specular_share_map
from ..wording import step_title
from .axes import Row, name_text, row_or_new

Picture = NDArray[np.float64]

GAMMA = 2.2  # of screens; a reflection is linear luminance


def mirrored_share(scratches: Scratches, angle_deg: float = 45) -> float:
    """Share (0 to 1) of the mirrored light that scratches leave in the mirror direction, mean over the patch."""
    return float(specular_share_map(scratches, angle_deg=angle_deg).mean())


def reflection_picture(field: HeightField, specular_share: float | Picture = 1.0, **view: Any) -> Picture:
    """A mirrored scene for a screen: (rows, cols), 0 to 1, gamma 2.2. view: as render_reflection takes it."""
    return render_reflection(field, specular_share=specular_share, **view) ** (1 / GAMMA)


def save_reflection(
    path: str | PathLike[str], field: HeightField, specular_share: float | Picture = 1.0, **view: Any
) -> None:
    """Writes a mirrored scene as a PNG file."""
    save_picture(path, render_reflection(field, specular_share=specular_share, **view))


def save_picture(path: str | PathLike[str] | BinaryIO, luminance: Picture) -> None:
    """Writes a linear luminance, 0 to 1, as a PNG file for a screen."""
    from matplotlib.image import imsave

    levels = np.round(255 * luminance ** (1 / GAMMA)).astype(np.uint8)
    imsave(path, np.dstack([levels] * 3), format="png")


def mirrored_surfaces(history: History, angle_deg: float = 45) -> Iterator[tuple[str, HeightField, float | Picture]]:
    """What reflections are drawn of: (title, surface, share of the light that stays in the mirror direction) before,
    after each step, and for an ideal flat clear. The share is a map: untouched valleys stay shiny in a matt field."""
    yield "before", history.before, 1.0
    for number, (row, surface, scratches) in enumerate(zip(history.steps, history.surfaces, history.scratches), 1):
        yield f"after {step_title(row, number)}", surface, specular_share_map(scratches, angle_deg=angle_deg)
    flat = np.zeros_like(history.before.height_um)
    yield "ideal", HeightField(height_um=flat, pixel_mm=history.before.pixel_mm), 1.0


def reflection_strip(history: History, path: str | PathLike[str] | None = None, **view: Any) -> dict[str, Picture]:
    """What a person sees before, after each step, and ideally: title -> picture (rows, cols), linear luminance 0 to 1,
    all of one scene, view and exposure. With a path, a PNG file of them side by side as well. history: of simulate(),
    or an item of Predicted.histories. view: as render_reflection takes it."""
    pictures = {
        title: render_reflection(field, specular_share=share, **view)
        for title, field, share in mirrored_surfaces(history, view.get("angle_deg", 45))
    }
    if path is not None:
        save_picture(path, np.hstack(list(pictures.values())))
    return pictures


def before_and_after(history: History, **view: Any) -> dict[str, Picture]:
    """Of the pictures of reflection_strip() the two that a customer compares: before, and after the last step."""
    share = specular_share_map(history.scratches[-1], angle_deg=view.get("angle_deg", 45))
    return {
        "before": render_reflection(history.before, specular_share=1.0, **view),
        f"after {step_title(history.steps[-1], len(history.steps))}": render_reflection(
            history.surfaces[-1], specular_share=share, **view
        ),
    }


def reflections(history: History, axes: Row | None = None, **view: Any) -> Row:
    """The pictures of reflection_strip(), on Axes: texture bends and blurs the image, scratches veil it. The patch is
    repeated over the whole picture."""
    pictures = reflection_strip(history, **{"rows": 300, "cols": 300, **view})
    axes = row_or_new(axes, len(pictures), 2.2, 2.4)
    for ax, (title, picture) in zip(axes, pictures.items()):
        ax.imshow(picture ** (1 / GAMMA), cmap="gray", vmin=0, vmax=1, interpolation="bilinear")
        ax.set_title(name_text(title), fontsize="medium")
        ax.set_xticks([])
        ax.set_yticks([])
    return axes
