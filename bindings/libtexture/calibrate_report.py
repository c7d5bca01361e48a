"""A test spot as a page for a browser or a printer: what was believed, what was read, what is believed now."""

from . import page, plot
from .calibrate_words import beliefs, plan_rows
from .inputs import input_rows


def calibration_page(result, moved, spot, before, after, job=None):
    """What calibrate() made of a spot (of judge_test_spot() and what_moved_belief()), with the prediction before and
    after it, as a page; with its job, the page says what it started from."""
    named = beliefs(result, "unicode")
    worked = [one for one in job.sequence if one.name == after.sequence] if job else []
    return page.render(
        "calibrate.html.j2",
        seed=after.seed,
        result=result,
        moved=moved,
        spot=spot,
        readings=[", ".join(f"{um:g}" for um in read) for read in (spot.before_um, spot.after_um)],
        beliefs=named,
        after=after,
        plan=plan_rows(before, after, "unicode"),
        inputs=input_rows(job, worked),
        pictures={"beliefs": page.chart(plot.belief_chart, named, size=(5.6, 0.9 + 0.75 * len(named)))},
    )
