"""Pictures of backings and of bench runs."""

from collections.abc import Iterable, Mapping

import numpy as np
from matplotlib.axes import Axes
from matplotlib.ticker import ScalarFormatter

from .. import Backing, Bench, BenchResult
from .axes import BLACK, axes_or_new, look_of, name_text, require_some


def backing_stiffness(
    backings: Mapping[str, Backing] | Iterable[Backing],
    ax: Axes | None = None,
    *,
    wavelength_mm: tuple[float, float] = (0.3, 30),
    pressure_kpa: float = 1.5,
    clear_per_e_fold_um: float = 10.0,
) -> Axes:
    """Stiffness against wavelength, in use at a pressure. backings: name -> Backing, or a list of them. A mark with its
    wavelength is the levelling limit of each: waves longer than it take more than clear_per_e_fold_um of clear to lose
    63 % of their height (pressure over stiffness, full contact)."""
    if not isinstance(backings, Mapping):
        backings = {one.name or f"backing {number}": one for number, one in enumerate(backings, 1)}
    require_some(backings, "backing_stiffness", "backings")
    ax = axes_or_new(ax)
    waves = np.geomspace(*wavelength_mm, 400)
    limit_kpa_per_um = pressure_kpa / clear_per_e_fold_um
    for number, (name, backing) in enumerate(backings.items()):
        colour, marker, line = look_of(number)
        stiffness = backing.at_working_pressure(pressure_kpa=pressure_kpa).stiffness_kpa_per_um(waves)
        limit_mm = _levelling_limit_mm(waves, pressure_kpa / stiffness, clear_per_e_fold_um)
        is_shown = waves[0] < limit_mm < waves[-1]
        reach = f"up to {limit_mm:.2g} mm" if is_shown else "none of these" if limit_mm == waves[0] else "all of these"
        ax.loglog(waves, stiffness, color=colour, linestyle=line, linewidth=1.6, label=f"{name_text(name)}: {reach}")
        if is_shown:
            ax.plot(limit_mm, limit_kpa_per_um, marker, color=colour, markersize=7)
    ax.axhline(limit_kpa_per_um, color=BLACK, linestyle="--", linewidth=1, label="levelling limit")
    ax.set(xlabel="wavelength, mm", ylabel="stiffness, kPa/µm")
    ax.xaxis.set_major_formatter(ScalarFormatter())
    ax.set_title(
        f"At {pressure_kpa:.3g} kPa a backing levels waves up to the length that is told with its name:\n"
        f"they lose 63 % of their height for {clear_per_e_fold_um:.3g} µm of clear or less.",
        fontsize="small",
    )
    ax.legend(frameon=False, fontsize="small")
    return ax


def _levelling_limit_mm(waves_mm, clear_per_e_fold_um, limit_um):
    """The shortest wavelength whose clear per e-fold is over the limit; the first or last where all or none are."""
    over = clear_per_e_fold_um > limit_um
    if over[0] or not over.any():
        return float(waves_mm[0] if over[0] else waves_mm[-1])
    last = int(np.argmax(over))
    place = np.interp(np.log(limit_um), np.log(clear_per_e_fold_um[last - 1 : last + 1]), [0, 1])
    return float(waves_mm[last - 1] * (waves_mm[last] / waves_mm[last - 1]) ** place)


def bench_residuals(bench: Bench, result: BenchResult, ax: Axes | None = None) -> Axes:
    """What each pass removed beyond the fitted curve, a line a run. bench and result: of judge_bench(). Runs that lie
    above or below as a whole differ as discs do; a bend that all share says that the curve is not the right one."""
    ax = axes_or_new(ax)
    for number, (run, residuals_um) in enumerate(zip(bench.runs, result.residuals_um)):
        passes = np.arange(1, len(residuals_um) + 1)
        colour, _, line = look_of(number)
        name = name_text(run.name)
        ax.plot(passes, residuals_um, "o", color=colour, linestyle=line, linewidth=1, markersize=4, label=name)
    ax.axhline(0, color=BLACK, linewidth=1)
    for side in (-1, 1):
        ax.axhline(2 * side * result.residual_sd_um, color=BLACK, linestyle="--", linewidth=0.8)
    ax.set(
        xlabel="pass",
        ylabel="removed less the curve, µm",
        title=f"{name_text(bench.abrasive)}: residuals; dashed: 2 standard deviations",
    )
    ax.title.set_fontsize("small")
    ax.legend(frameon=False, fontsize="small")
    return ax
