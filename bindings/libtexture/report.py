"""A prediction as one page for a browser or a printer."""

from os import PathLike

from . import Comparison, Job, Predicted, Recommendation, budget_of, must_stay_um, page, plot, viewer_of
from .choice_report import comparison_page, recommendation_page
from .defect_words import way_rows
from .inputs import HABITS, input_rows
from .summary import answer, edge_lines, next_thing
from .whole_file import write_whole
from .wording import labours


def write_report(
    result: Predicted | Comparison | Recommendation, path: str | PathLike[str], job: Job | None = None
) -> None:
    """Writes what predict(), compare() or recommend() answered as an HTML page; with its job, the page says what it is
    about and what it started from."""
    pages = {Predicted: html_of, Comparison: comparison_page, Recommendation: recommendation_page}
    page_of = pages.get(type(result))
    if not page_of:
        raise TypeError(
            "write_report: result must be what predict(), compare() or recommend() answers "
            f"(got a {type(result).__name__})"
        )
    write_whole({path: page_of(result, job)})


def html_of(predicted: Predicted, job: Job | None = None) -> str:
    """The page as text."""
    prediction = predicted.prediction
    kept_um = must_stay_um(budget_of(job)) if job else 0.0
    return page.render(
        "report.html.j2",
        seed=prediction.seed,
        prediction=prediction,
        kept_um=kept_um,
        answer=answer(prediction),
        next_thing=next_thing(prediction, job),
        edges=edge_lines(prediction.panels),
        labours=labours(prediction),
        ways_of=lambda panel: way_rows(panel, "µm"),
        pictures=[panel_pictures(predicted, number, job, kept_um) for number in range(len(prediction.panels))],
        job=job,
        viewer_of=viewer_of,
        habit=HABITS[job.edge.overhang] if job else "",
        inputs=input_rows(job, [one for one in job.sequence if one.name == prediction.sequence] if job else []),
    )


# ---- Pictures


def panel_pictures(predicted, number, job, kept_um):
    """Pictures of one panel by name, as data addresses."""
    prediction, history = predicted.prediction, predicted.histories[number]
    after = history.surfaces[-1]
    index = {"refractive_index": job.coating.refractive_index} if job else {}
    strip = plot.reflection_strip(history, rows=200, cols=200, **index)
    pictures = {
        "scenes": [
            (title, page.picture(luminance))
            for title, luminance in plot.before_and_after(history, rows=640, cols=640, **index).items()
        ],
        "texture": page.chart(plot.texture_against_clear, predicted, panel=number),
        "owed": page.chart(plot.scratch_owed, prediction, panel=number),
        "bands": page.chart(plot.band_amplitudes, prediction, panel=number),
        "profile": page.chart(plot.profile_overlay, history.before, after),
        "maps": page.charts(plot.height_maps, {"before": history.before, "after": after}, 2, (7.2, 3.4)),
        "reflections": [(title, page.picture(luminance)) for title, luminance in strip.items()],
    }
    if prediction.panels[number].risk.samples:
        pictures["dots"] = page.chart(
            plot.clear_left_dots, predicted, panel=number, must_stay_um=kept_um, size=(5.6, 2.5)
        )
        pictures["split"] = page.chart(plot.clear_spent_split, prediction, panel=number, size=(5.6, 2.2))
    if job and can_be_mapped(job.panel[number]):
        pictures["film"] = page.chart(
            plot.film_map,
            job.panel[number],
            job.coating,
            kind="png",
            removed_um=prediction.panels[number].removed_um,
            clear_left_least_um=kept_um,
        )
    return pictures


def can_be_mapped(panel):
    """Whether the places of the readings span an area, those over filler left out."""
    taught = [reading for reading in panel.readings if reading.over != "filler"]
    places = [(reading.x_mm, reading.y_mm) for reading in taught if reading.x_mm is not None]
    return all(len(set(along)) > 1 for along in zip(*places)) if places else False
