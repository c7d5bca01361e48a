"""Pictures of surfaces, plans and backings, with matplotlib.

Every function draws on the Axes it is given, or on new ones, and returns them.
"""

import numpy as np
from matplotlib.ticker import ScalarFormatter

from . import (
    HeightField,
    ScratchLimits,
    depth_laws,
    film_picture,
    render_reflection,
    specular_share_map,
    unsanded_margin_mm,
)
from .wording import UM_PER_MIL, band_words, step_title

# The palette of Okabe and Ito ("Color Universal Design", 2008), which colour-blind people tell apart as well; its
# yellow is left out, too pale on white.
COLOURS = ["#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#000000"]
MAP_COLOURS = "cividis"  # even in lightness, and read alike by colour-blind people
GAMMA = 2.2  # of screens; a reflection is linear luminance


def _axes(ax, width=5.6, height=3.6):
    """The Axes given, or new ones in the notebook's current backend; with a light frame."""
    if ax is None:
        from matplotlib import pyplot

        ax = pyplot.subplots(figsize=(width, height), layout="constrained")[1]
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    return ax


def _figure_axes(axes, count, width=2.8, height=3.0):
    """The row of Axes given, or a new row."""
    if axes is not None:
        return np.atleast_1d(axes)
    from matplotlib import pyplot

    return pyplot.subplots(1, count, figsize=(width * count, height), layout="constrained", squeeze=False)[1][0]


def _prediction(predicted):
    """The plain values of a Prediction or of a Predicted."""
    return getattr(predicted, "prediction", predicted)


def _mil_axis(ax, axis):
    """A second scale in mil, opposite one in um."""
    scales = (lambda um: um / UM_PER_MIL, lambda mil: mil * UM_PER_MIL)
    second = ax.secondary_xaxis("top", functions=scales) if axis == "x" else ax.secondary_yaxis("right", functions=scales)
    (second.set_xlabel if axis == "x" else second.set_ylabel)("mil")
    return second


# ---- Surfaces


def height_map(field, ax=None, *, range_um=None, title="", colour_bar=True):
    """Heights of a surface about their mean, seen from above; range_um: of colours, to compare maps."""
    ax = _axes(ax, 4.2, 3.6)
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
    ax.set(xlabel="mm", ylabel="mm", title=title)
    if colour_bar:
        ax.figure.colorbar(image, ax=ax, label="height about the mean, um", shrink=0.8)
    return ax


def shared_range_um(*fields):
    """The range of heights about the mean over all the fields (lowest, highest)."""
    heights = [field.height_um - field.mean_um for field in fields]
    return min(map(np.min, heights)), max(map(np.max, heights))


def height_maps(fields, axes=None):
    """Maps side by side with one range of colours. fields: title -> HeightField; returns their Axes."""
    axes = _figure_axes(axes, len(fields))
    range_um = shared_range_um(*fields.values())
    for ax, (title, field) in zip(axes, fields.items()):
        height_map(field, ax, range_um=range_um, title=title, colour_bar=False)
        if ax is not axes[0]:
            ax.set_ylabel("")
    axes[0].figure.colorbar(axes[0].images[0], ax=list(axes), label="height about the mean, um", shrink=0.8)
    return axes


def profile_overlay(before, after, ax=None, *, row=None):
    """One row of a surface before and after, and the clear removed between them; row: its number, else the middle."""
    ax = _axes(ax)
    row = before.grid.rows // 2 if row is None else row
    x_mm = (np.arange(before.grid.cols) + 0.5) * before.pixel_mm
    top, bottom = before.height_um[row] - before.mean_um, after.height_um[row] - before.mean_um
    ax.fill_between(x_mm, bottom, top, color=COLOURS[5], alpha=0.35, linewidth=0, label="removed")
    ax.plot(x_mm, top, color=COLOURS[6], linewidth=1.2, label="before")
    ax.plot(x_mm, bottom, color=COLOURS[0], linewidth=1.6, label="after")
    ax.set(xlabel="along the surface, mm", ylabel="height, um (0 = mean before)", xlim=(0, x_mm[-1] + x_mm[0]))
    ax.legend(frameon=False, ncols=3, loc="upper center", bbox_to_anchor=(0.5, 1.12))
    return ax


# ---- Plans


def texture_against_clear(predictions, ax=None, *, panel=0):
    """Texture left against clear removed: what each um of clear buys. One line a prediction, a dot at the end of each
    step, and a bar there from the 5 % to the 95 % quantile of the clear that goes, where the prediction has them. The
    dashed line is the budget of the first, the dotted one what a plane that cuts all above it would do to its patch: no
    tool can do better (where a Predicted is given, which has the patch)."""
    ax = _axes(ax)
    given = predictions if isinstance(predictions, (list, tuple)) else [predictions]
    if hasattr(given[0], "histories"):
        ax.plot(*ideal_cut(given[0].histories[panel].before), ":", color=COLOURS[6], linewidth=1.2, label="the least that it takes")
    predictions = [_prediction(one) for one in given]
    for colour, prediction in zip(COLOURS * len(predictions), predictions):
        shown = prediction.panels[panel]
        rows = [shown.start, *shown.passes]
        removed, left = [row.total_removed_um for row in rows], [row.rms_um for row in rows]
        ax.plot(removed, left, color=colour, linewidth=1.6, label=prediction.sequence)
        ax.plot(
            [row.total_removed_um for row in shown.steps], [row.rms_um for row in shown.steps], "o", color=colour, markersize=5
        )
        if shown.risk.samples:
            spread = shown.risk.removed_um
            ax.plot([spread.p05, spread.p95], [left[-1]] * 2, color=colour, linewidth=7, alpha=0.35, solid_capstyle="butt")
    budget_um = predictions[0].panels[panel].removable_um
    if budget_um > 0:
        ax.axvline(budget_um, color=COLOURS[6], linestyle="--", linewidth=1.2)
        ax.annotate(
            "budget", (budget_um, 0.97), (-4, 0), xycoords=("data", "axes fraction"), textcoords="offset points",
            rotation=90, ha="right", va="top",
        )
    ax.set(xlabel="clear removed, mean over the patch, um", ylabel="texture left, um rms")
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    _mil_axis(ax, "x")
    ax.legend(frameon=False)
    return ax


def ideal_cut(field, points=400):
    """Mean clear removed and rms height left [um], where a plane comes down on a surface and takes off all above it."""
    heights = np.sort(field.height_um, axis=None)[::-1]
    counts = np.unique(np.geomspace(1, heights.size, points).astype(int))
    planes = heights[counts - 1]
    sums, squares = np.cumsum(heights)[counts - 1], np.cumsum(heights**2)[counts - 1]
    removed = (sums - counts * planes) / heights.size
    mean_left = heights.mean() - removed
    square_left = (np.sum(heights**2) - squares + counts * planes**2) / heights.size
    return removed, np.sqrt(np.maximum(square_left - mean_left**2, 0))


def band_amplitudes(prediction, ax=None, *, panel=0):
    """Texture left in each band of wavelengths, before and after each step."""
    ax = _axes(ax)
    prediction = _prediction(prediction)
    shown = prediction.panels[panel]
    bands = band_words(prediction.band_edges_mm)
    places = np.arange(len(bands))
    width = 0.8 / (len(shown.steps) + 1)
    for number, row in enumerate([shown.start, *shown.steps]):
        ax.bar(
            places + (number - len(shown.steps) / 2) * width,
            row.band_rms_um,
            width,
            color=COLOURS[6] if number == 0 else COLOURS[(number - 1) % 6],
            label=step_title(row, number) if number else "before",
        )
    ax.set_xticks(places, bands)
    ax.set(xlabel="wavelength, mm", ylabel="texture left, um rms")
    ax.legend(frameon=False)
    return ax


def scratch_owed(prediction, ax=None, *, panel=0):
    """Clear that each step spends, of it the overshoot: what it cuts between meeting its stop rule and the next look;
    and the clear that the scratches left ask of the steps after it."""
    ax = _axes(ax)
    steps = _prediction(prediction).panels[panel].steps
    places = np.arange(len(steps))
    overshoot = [row.overshoot_um for row in steps]
    needed = [row.removed_um - past for row, past in zip(steps, overshoot)]
    ax.bar(places - 0.2, needed, 0.38, color=COLOURS[0], label="spent until the step's stop rule was met")
    ax.bar(places - 0.2, overshoot, 0.38, bottom=needed, color=COLOURS[5], label="spent past it, before the next look")
    ax.bar(
        places + 0.2, [row.clear_owed_um for row in steps], 0.38,
        facecolor="white", edgecolor=COLOURS[1], hatch="////", linewidth=1.2, label="still owed for scratches",
    )
    ax.set_xticks(places, [step_title(row, number) for number, row in enumerate(steps, 1)], rotation=20, ha="right")
    ax.set_ylabel("clear, um")
    _mil_axis(ax, "y")
    ax.legend(frameon=False)
    return ax


# ---- Tools


def backing_stiffness(backings, ax=None, *, wavelength_mm=(0.3, 30), pressure_kpa=1.5, clear_per_e_fold_um=10.0):
    """Stiffness against wavelength, in use at a pressure. backings: name -> Backing, or a list of them. A dot marks the
    levelling limit of each: waves longer than it take more than clear_per_e_fold_um of clear to lose 63 % of their
    height (pressure over stiffness, full contact)."""
    ax = _axes(ax)
    if not hasattr(backings, "items"):
        backings = {one.name or f"backing {number}": one for number, one in enumerate(backings, 1)}
    waves = np.geomspace(*wavelength_mm, 400)
    for colour, (name, backing) in zip(COLOURS * len(backings), backings.items()):
        stiffness = backing.at_working_pressure(pressure_kpa=pressure_kpa).stiffness_kpa_per_um(waves)
        ax.loglog(waves, stiffness, color=colour, linewidth=1.6, label=name)
        limit_mm = _levelling_limit_mm(waves, pressure_kpa / stiffness, clear_per_e_fold_um)
        if limit_mm is not None:
            ax.plot(limit_mm, pressure_kpa / clear_per_e_fold_um, "o", color=colour, markersize=7)
            ax.annotate(f"{limit_mm:.2g} mm", (limit_mm, pressure_kpa / clear_per_e_fold_um), (6, 6), textcoords="offset points")
    ax.axhline(pressure_kpa / clear_per_e_fold_um, color=COLOURS[6], linestyle="--", linewidth=1)
    ax.set(
        xlabel="wavelength, mm",
        ylabel="stiffness, kPa/um",
        title=f"below the dashed line a wave takes over {clear_per_e_fold_um:g} um a fold of e, at {pressure_kpa:g} kPa",
    )
    ax.title.set_fontsize("small")
    ax.xaxis.set_major_formatter(ScalarFormatter())
    ax.legend(frameon=False)
    return ax


def _levelling_limit_mm(waves_mm, clear_per_e_fold_um, limit_um):
    """The shortest wavelength whose clear per e-fold is over the limit; None where all or none are."""
    over = clear_per_e_fold_um > limit_um
    if over[0] or not over.any():
        return None
    last = int(np.argmax(over))
    place = np.interp(np.log(limit_um), np.log(clear_per_e_fold_um[last - 1 : last + 1]), [0, 1])
    return float(waves_mm[last - 1] * (waves_mm[last] / waves_mm[last - 1]) ** place)


def bench_residuals(bench, result, ax=None):
    """What each pass removed beyond the fitted curve, a line a run. bench and result: of judge_bench(). Runs that lie
    above or below as a whole differ as discs do; a bend that all share says that the curve is not the right one."""
    ax = _axes(ax)
    for number, (run, residuals_um) in enumerate(zip(bench.runs, result.residuals_um)):
        passes = np.arange(1, len(residuals_um) + 1)
        ax.plot(passes, residuals_um, "o-", color=COLOURS[number % len(COLOURS)], linewidth=1, markersize=4, label=run.name)
    ax.axhline(0, color=COLOURS[6], linewidth=1)
    for side in (-1, 1):
        ax.axhline(2 * side * result.residual_sd_um, color=COLOURS[6], linestyle="--", linewidth=0.8)
    ax.set(xlabel="pass", ylabel="removed less the curve, um", title=f"{bench.abrasive}: residuals; dashed: 2 standard deviations")
    ax.title.set_fontsize("small")
    ax.legend(frameon=False, fontsize="small")
    return ax


# ---- Marks and edges


def scratch_populations(history, ax=None, *, depth_um=None, limits=None):
    """Scratches after each step: the share of the surface that lies in a groove deeper than a depth. A finer step takes
    the deep end of the line down and leaves its own, shallower grooves. history: of simulate(), or an item of
    Predicted.histories; depth_um: the deepest shown; limits: the ScratchLimits whose visible depth is marked."""
    ax = _axes(ax)
    limits = limits or ScratchLimits()
    depth_um = depth_um or 1.1 * max(row.deepest_scratch_um for row in history.steps)
    depths_um = np.linspace(0, depth_um, 300)
    for number, (row, scratches) in enumerate(zip(history.steps, history.scratches), 1):
        share = sum(law.area_share * deeper_share(law.grooves, depths_um) for law in depth_laws(scratches))
        ax.semilogy(depths_um, 100 * share, color=COLOURS[(number - 1) % 6], linewidth=1.6, label=f"after {step_title(row, number)}")
    ax.axvline(limits.visible_depth_um, color=COLOURS[6], linestyle="--", linewidth=1.2)
    ax.annotate(
        "visible", (limits.visible_depth_um, 0.03), (4, 0), xycoords=("data", "axes fraction"), textcoords="offset points",
        rotation=90, va="bottom",
    )
    ax.set(xlabel="depth, um", ylabel="surface in deeper grooves, %", xlim=(0, depth_um), ylim=(1e-4, 110))
    ax.legend(loc="upper right", framealpha=0.85, edgecolor="none")
    return ax


def deeper_share(grooves, depth_um):
    """Share of an area in a groove deeper than a depth, where depths of each population are exponential about its mean and
    populations lie over each other at random."""
    return 1 - np.exp(-sum(one.coverage * np.exp(-depth_um / one.depth_um) for one in grooves))


def edge_section(profile, ax=None, *, clear=None, to_mm=60.0):
    """Clear removed near an edge, over the distance from it. clear: an EdgeClear, then the clear itself is shown, before
    and after, with the margin that must stay unsanded to keep what it asks for."""
    ax = _axes(ax)
    if clear is None:
        ax.fill_between(profile.distance_mm, 0, profile.removal_um, color=COLOURS[5], alpha=0.35, linewidth=0)
        ax.plot(profile.distance_mm, profile.removal_um, color=COLOURS[0], linewidth=1.6)
        ax.set(xlabel="distance from the edge, mm", ylabel="clear removed, um", ylim=(0, None))
    else:
        _draw_clear_at_edge(ax, profile, clear)
    ax.set_xlim(min(profile.distance_mm[0], 0), min(to_mm, profile.distance_mm[-1]))
    _mil_axis(ax, "y")
    return ax


def _draw_clear_at_edge(ax, profile, clear):
    """The clear before and after, what must be left, and the margin."""
    rise = np.clip(profile.distance_mm / clear.taper_mm, 0, 1)
    before_um = clear.clear_um * (clear.share_at_edge + (1 - clear.share_at_edge) * rise)
    after_um = before_um - clear.removal_factor * profile.removal_um
    ax.fill_between(profile.distance_mm, after_um, before_um, color=COLOURS[5], alpha=0.35, linewidth=0, label="removed")
    ax.plot(profile.distance_mm, before_um, color=COLOURS[6], linewidth=1.2, label="clear before")
    ax.plot(profile.distance_mm, after_um, color=COLOURS[0], linewidth=1.6, label="after, sanded up to the edge")
    ax.axhline(clear.clear_left_least_um, color=COLOURS[1], linestyle="--", linewidth=1.2, label="must be left")
    margin_mm = unsanded_margin_mm(profile, clear)
    if 0 < margin_mm < np.inf:
        ax.axvspan(0, margin_mm, facecolor="none", edgecolor=COLOURS[4], hatch="///", linewidth=0, label=f"leave {margin_mm:.1f} mm")
    ax.set(xlabel="distance from the edge, mm", ylabel="clear, um", ylim=(min(0, after_um.min()), 1.1 * clear.clear_um))
    ax.legend(loc="lower right", framealpha=0.85, edgecolor="none", fontsize="small")


# ---- What a person sees


def mirrored_share(scratches, angle_deg=45):
    """Share (0 to 1) of the mirrored light that scratches leave in the mirror direction, mean over the patch."""
    return float(specular_share_map(scratches, angle_deg=angle_deg).mean())


def reflection_picture(field, specular_share=1.0, **view):
    """A mirrored scene for a screen: (rows, cols), 0 to 1, gamma 2.2. view: as render_reflection takes it."""
    return render_reflection(field, specular_share=specular_share, **view) ** (1 / GAMMA)


def save_reflection(path, field, specular_share=1.0, **view):
    """Writes a mirrored scene as a PNG file."""
    save_picture(path, render_reflection(field, specular_share=specular_share, **view))


def save_picture(path, luminance):
    """Writes a linear luminance, 0 to 1, as a PNG file for a screen."""
    from matplotlib.image import imsave

    levels = np.round(255 * luminance ** (1 / GAMMA)).astype(np.uint8)
    imsave(path, np.dstack([levels] * 3), format="png")


def mirrored_surfaces(history, angle_deg=45):
    """What reflections are drawn of: (title, surface, share of the light that stays in the mirror direction) before,
    after each step, and for an ideal flat clear. The share is a map: untouched valleys stay shiny in a matt field."""
    yield "before", history.before, 1.0
    for number, (row, surface, scratches) in enumerate(zip(history.steps, history.surfaces, history.scratches), 1):
        yield f"after {step_title(row, number)}", surface, specular_share_map(scratches, angle_deg=angle_deg)
    flat = np.zeros_like(history.before.height_um)
    yield "ideal", HeightField(height_um=flat, pixel_mm=history.before.pixel_mm), 1.0


def reflection_strip(history, path=None, **view):
    """What a person sees before, after each step, and ideally: title -> picture (rows, cols), linear luminance 0 to 1,
    all of one scene, view and exposure. With a path, a PNG file of them side by side as well. history: of simulate(), or
    an item of Predicted.histories. view: as render_reflection takes it."""
    pictures = {
        title: render_reflection(field, specular_share=share, **view)
        for title, field, share in mirrored_surfaces(history, view.get("angle_deg", 45))
    }
    if path is not None:
        save_picture(path, np.hstack(list(pictures.values())))
    return pictures


def reflections(history, axes=None, **view):
    """The pictures of reflection_strip(), on Axes: texture bends and blurs the image, scratches veil it. The patch is
    repeated over the whole picture."""
    pictures = reflection_strip(history, **{"rows": 300, "cols": 300, **view})
    axes = _figure_axes(axes, len(pictures), 2.2, 2.4)
    for ax, (title, picture) in zip(axes, pictures.items()):
        ax.imshow(picture ** (1 / GAMMA), cmap="gray", vmin=0, vmax=1, interpolation="bilinear")
        ax.set_title(title, fontsize="medium")
        ax.set_xticks([])
        ax.set_yticks([])
    return axes


# ---- Film


def film_map(panel, paint, ax=None, *, removed_um=0.0, pixels=64):
    """Clear left on a panel between its readings, once removed_um are gone; the readings with their total film. They
    need places that span an area."""
    ax = _axes(ax, 5.0, 3.8)
    picture = film_picture(panel, paint, pixels=pixels)
    left_um = picture.clear_um - removed_um
    half = picture.pixel_mm / 2
    rows, cols = left_um.shape
    right, bottom = picture.corner_x_mm + cols * picture.pixel_mm - half, picture.corner_y_mm + rows * picture.pixel_mm - half
    image = ax.imshow(
        left_um, cmap=MAP_COLOURS, extent=(picture.corner_x_mm - half, right, bottom, picture.corner_y_mm - half),
        interpolation="nearest",
    )
    for reading in panel.readings:
        if reading.x_mm is None:
            continue
        total_um = reading.total_um if reading.total_um is not None else reading.total_mil * UM_PER_MIL
        ax.plot(reading.x_mm, reading.y_mm, "o", markerfacecolor="white", markeredgecolor="black", markersize=5, clip_on=False)
        ax.annotate(
            f"{total_um:.0f}", (reading.x_mm, reading.y_mm), (0, 6), textcoords="offset points", ha="center", fontsize="small",
            bbox={"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1},
        )
    ax.set(xlabel="mm", ylabel="mm")
    ax.set_title(f"{panel.name}: clear left; readings: total film, um", fontsize="medium", pad=16)
    ax.figure.colorbar(image, ax=ax, label="expected clear left, um", shrink=0.9)
    return ax


# ---- Choosing


PARTS = (  # of the clear spent: field, word, colour, hatch: told apart without colour as well
    ("levelling_um", "levelling", COLOURS[0], ""),
    ("overshoot_um", "overshoot", COLOURS[4], "...."),
    ("debt_um", "scratch debt", COLOURS[1], "////"),
)


def split_chart(comparison, ax=None):
    """Clear spent by each alternative, split in levelling, overshoot and scratch debt (medians), coarsest first grit on
    top. The line under each bar holds 90 % of the possible worlds; dashed: the budget."""
    ax = _axes(ax, 4.8, 3.0)
    shown = sorted(comparison.alternatives, key=lambda one: one.first_grain_um)
    places = np.arange(len(shown))
    start = np.zeros(len(shown))
    for field, word, colour, hatch in PARTS:
        widths = np.array([getattr(one, field).p50 for one in shown])
        bars = ax.barh(places, widths, 0.56, left=start, color=colour, hatch=hatch, edgecolor="white", linewidth=0.8, label=word)
        texts = [f"{width:.1f}" if width >= 0.25 else "" for width in widths]
        ax.bar_label(bars, texts, label_type="center", fontsize="small", color="white" if colour == COLOURS[0] else "black",
                     bbox=None if colour == COLOURS[0] else {"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1})
        start += np.maximum(widths, 0)
    for place, one in zip(places, shown):
        spread = one.removed_um
        ax.plot([spread.p05, spread.p95], [place - 0.38] * 2, color=COLOURS[6], linewidth=1.4, solid_capstyle="butt")
        ax.plot(spread.p50, place - 0.38, "o", color=COLOURS[6], markersize=3.5)
    if comparison.removable_um > 0:
        ax.axvline(comparison.removable_um, color=COLOURS[6], linestyle="--", linewidth=1.2)
        ax.annotate(
            "budget", (comparison.removable_um, 1), (-4, -2), xycoords=("data", "axes fraction"), textcoords="offset points",
            rotation=90, ha="right", va="top", fontsize="small",
        )
    ax.set_yticks(places, [one.sequence for one in shown])
    ax.set_ylim(-0.7, len(shown) - 0.5)
    ax.set_xlim(left=0)
    ax.set_xlabel("clear spent, um (medians; line: 5 to 95 %)")
    _mil_axis(ax, "x")
    ax.legend(frameon=False, ncols=3, loc="upper center", bbox_to_anchor=(0.4, -0.24), fontsize="small", columnspacing=1.2)
    return ax


def pareto_chart(comparison, ax=None):
    """Time against clear spent, medians with the range of 90 % of the worlds. Full dots are on the Pareto front: no other
    alternative is as good in clear, trouble, time, discs, texture and marks, and better in one."""
    ax = _axes(ax)
    for colour, one in zip(COLOURS * len(comparison.alternatives), comparison.alternatives):
        clear, minutes = one.removed_um, one.minutes
        ax.errorbar(
            clear.p50, minutes.p50, xerr=[[clear.p50 - clear.p05], [clear.p95 - clear.p50]],
            yerr=[[minutes.p50 - minutes.p05], [minutes.p95 - minutes.p50]], fmt="o", markersize=8, color=colour,
            markerfacecolor=colour if one.is_on_front else "white", elinewidth=0.8,
            label=f"{one.sequence}, trouble {100 * one.trouble_probability:.0f} %",
        )
    ax.set(xlabel="clear spent, um", ylabel="machine time, min")
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    _mil_axis(ax, "x")
    ax.legend(frameon=False, fontsize="small")
    return ax
