"""A test spot as a page for a browser or a printer: what was believed, what was read, what is believed now."""

from . import page, plot
from .calibrate_words import beliefs, plan_rows


def calibration_page(result, spot, before, after, job):
    """What calibrate() made of a spot (of judge_test_spot()), with the prediction before and after it, as a page."""
    named = beliefs(result)
    return page.render(
        "calibrate.html.j2", seed=after.seed, result=result, spot=spot, job=job, beliefs=named, after=after,
        plan=plan_rows(before, after),
        pictures={"beliefs": page.chart(belief_chart, named, size=(5.6, 0.9 + 0.75 * len(named)))},
    )


def belief_chart(named, ax):
    """What is believed of each figure before and after the spot, as multiples of the median before."""
    for row, (name, _, old, new) in enumerate(named):
        for shift, belief, colour, when in ((0.16, old, "0.55", "before"), (-0.16, new, plot.COLOURS[0], "after")):
            least, median, most = (figure / old.median for figure in (belief.least, belief.median, belief.most))
            ax.plot([least, most], [-row + shift] * 2, color=colour, lw=3, solid_capstyle="round", label=f"{when} the spot" if row == 0 else None)
            ax.plot(median, -row + shift, "o", color=colour, ms=7)
    ax.set_xscale("log")
    ax.xaxis.set_major_formatter(lambda ratio, _: f"{ratio:g}")
    ax.xaxis.set_minor_formatter(lambda ratio, _: f"{ratio:g}" if round(ratio, 3) in (0.3, 0.5, 2, 3, 5) else "")
    ax.set_yticks([-row for row in range(len(named))], [name for name, *_ in named])
    ax.set_ylim(-len(named) + 0.5, 0.5)
    ax.set_xlabel("times the median before the spot (dot: median; line: 95 %)")
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    ax.legend(frameon=False, loc="lower center", bbox_to_anchor=(0.5, 1), ncols=2)
    return ax
