"""A test spot as a page for a browser or a printer: what was believed, what was read, what is believed now."""

from . import page, plot
from .calibrate_words import beliefs, plan_rows


def calibration_page(result, spot, before, after):
    """What calibrate() made of a spot (of judge_test_spot()), with the prediction before and after it, as a page."""
    named = beliefs(result)
    return page.render(
        "calibrate.html.j2",
        seed=after.seed,
        result=result,
        spot=spot,
       
        beliefs=named,
        after=after,
        plan=plan_rows(before, after),
        pictures={"beliefs": page.chart(plot.belief_chart, named, size=(5.6, 0.9 + 0.75 * len(named)))},
    )
