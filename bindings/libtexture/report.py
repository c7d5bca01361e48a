"""A prediction as one page for a browser or a printer."""

from os import PathLike

from . import Comparison, Job, Predicted, Recommendation, page, plot
from .choice_report import comparison_page, recommendation_page
from .whole_file import write_whole
from .wording import labours


def write_report(
    result: Predicted | Comparison | Recommendation, path: str | PathLike[str], job: Job | None = None
) -> None:
    """Writes what predict(), compare() or recommend() answered as an HTML page; with its job, the page says what it is
    about, and shows what a prediction started from."""
    pages = {Comparison: comparison_page, Recommendation: recommendation_page}
    write_whole(path, pages.get(type(result), html_of)(result, job))


def html_of(predicted: Predicted, job: Job | None = None) -> str:
    """The page as text."""
    prediction = predicted.prediction
    return page.render(
        "report.html.j2",
        seed=prediction.seed,
        prediction=prediction,
        labours=labours(prediction),
        pictures=[panel_pictures(predicted, number, job) for number in range(len(prediction.panels))],
        job=job,
        steps=steps_of(job, prediction.sequence),
        texture=texture_words(job.texture) if job else "",
        target=target_words(job.target) if job else "",
    )


# ---- Pictures


def panel_pictures(predicted, number, job):
    """Pictures of one panel by name, as data addresses."""
    prediction, history = predicted.prediction, predicted.histories[number]
    after = history.surfaces[-1]
    strip = plot.reflection_strip(history, rows=360, cols=360)
    pictures = {
        "texture": page.chart(plot.texture_against_clear, predicted, panel=number),
        "owed": page.chart(plot.scratch_owed, prediction, panel=number),
        "bands": page.chart(plot.band_amplitudes, prediction, panel=number),
        "profile": page.chart(plot.profile_overlay, history.before, after),
        "maps": page.charts(plot.height_maps, {"before": history.before, "after": after}, 2, (7.2, 3.4)),
        "reflections": [(title, page.picture(luminance)) for title, luminance in strip.items()],
    }
    if job and can_be_mapped(job.panel[number]):
        removed_um = prediction.panels[number].removed_um
        pictures["film"] = page.chart(plot.film_map, job.panel[number], job.coating, removed_um=removed_um, kind="png")
    return pictures


def can_be_mapped(panel):
    """Whether the readings' places span an area."""
    places = [(reading.x_mm, reading.y_mm) for reading in panel.readings if reading.x_mm is not None]
    return all(len(set(along)) > 1 for along in zip(*places)) if places else False


# ---- Words


def steps_of(job, sequence):
    return next(one.step for one in job.sequence if one.name == sequence) if job else []


def texture_words(source):
    """Where the starting texture comes from."""
    if source.bands:
        return f"drawn at random: {wave_words(source.bands)}"
    if source.file:
        return f"from {source.file}"
    if source.seen:
        return "guessed from what is seen in it"
    film = source.wet_film.film
    return (
        f"a wet film of {film.thickness_um:g} µm with {100 * film.solids_share:g} % solids that flowed out and dried over "
        f"a base drawn at random: {wave_words(source.wet_film.base)}"
    )


def wave_words(bands):
    return ", ".join(f"{band.rms_um:g} µm rms about {band.wavelength_mm:g} mm" for band in bands)


def target_words(target):
    """What is to be reached."""
    band = f", {target.band_mm[0]:g} to {target.band_mm[1]:g} mm" if target.band_mm else ""
    parts = [
        target.rms_um is not None and f"at most {target.rms_um:g} µm rms of texture{band}",
        target.preset and f"{target.preset} levelling",
        target.image_clarity_percent is not None and f"image clarity of {target.image_clarity_percent:g} % or more",
        target.letter_mm is not None and f"letters of {target.letter_mm:g} mm readable",
    ]
    return ", ".join(part for part in parts if part)
