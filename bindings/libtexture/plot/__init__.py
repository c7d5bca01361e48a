"""Pictures of surfaces, plans, tools and choices, with matplotlib.

Every function draws on the Axes it is given, or on new ones, and returns them.
"""

from .axes import COLOURS
from .beliefs import belief_chart
from .chances import clear_left_dots
from .choices import PARTS, clear_spent_split, pareto_chart, split_chart
from .edges import edge_section
from .film import film_map
from .marks import scratch_populations
from .plans import band_amplitudes, ideal_cut, scratch_owed, texture_against_clear
from .reflections import (
    before_and_after,
    mirrored_share,
    reflection_picture,
    reflection_strip,
    reflections,
    save_picture,
    save_reflection,
)
from .surfaces import height_map, height_maps, profile_overlay, shared_range_um
from .tools import backing_stiffness, bench_residuals

__all__ = [
    "COLOURS",
    "PARTS",
    "backing_stiffness",
    "band_amplitudes",
    "before_and_after",
    "belief_chart",
    "bench_residuals",
    "clear_left_dots",
    "clear_spent_split",
    "edge_section",
    "film_map",
    "height_map",
    "height_maps",
    "ideal_cut",
    "mirrored_share",
    "pareto_chart",
    "profile_overlay",
    "reflection_picture",
    "reflection_strip",
    "reflections",
    "save_picture",
    "save_reflection",
    "scratch_owed",
    "scratch_populations",
    "shared_range_um",
    "split_chart",
    "texture_against_clear",
]
