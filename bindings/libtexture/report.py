"""A prediction as one page for a browser or a printer: no scripts, nothing loaded from elsewhere."""

import base64
import io
from importlib.resources import files

import jinja2
import matplotlib
from matplotlib.figure import Figure

from . import __version__, plot, wording
from .whole_file import write_whole

STYLE = {"font.size": 9, "svg.hashsalt": "libtexture"}  # the salt makes the same page the same bytes


def write_report(predicted, path, job=None):
    """Writes a prediction (of predict()) as an HTML page; with its job, the page shows what it started from as well."""
    write_whole(path, html_of(predicted, job))


def html_of(predicted, job=None):
    """The page as text."""
    prediction = predicted.prediction
    page = jinja2.Environment(autoescape=True, trim_blocks=True, lstrip_blocks=True, undefined=jinja2.StrictUndefined)
    page.filters.update(film=film, film_pm=film_pm, mil=wording.mil)
    template = page.from_string(files(__package__).joinpath("report.html.j2").read_text(encoding="utf-8"))
    with matplotlib.rc_context(STYLE):
        pictures = [
            panel_pictures(prediction, number, history, job) for number, history in enumerate(predicted.histories)
        ]
    return template.render(
        prediction=prediction,
        pictures=pictures,
        labours=wording.labours(prediction),
        job=job,
        steps=steps_of(job, prediction.sequence),
        texture=texture_words(job.texture) if job else "",
        target=target_words(job.target) if job else "",
        version=__version__,
        wording=wording,
    )


# ---- Pictures


def panel_pictures(prediction, number, history, job):
    """Pictures of one panel by name, as data addresses."""
    after = history.surfaces[-1]
    pictures = {
        "texture": chart(plot.texture_against_clear, prediction, panel=number),
        "owed": chart(plot.scratch_owed, prediction, panel=number),
        "bands": chart(plot.band_amplitudes, prediction, panel=number),
        "profile": chart(plot.profile_overlay, history.before, after),
        "maps": map_pair(history.before, after),
        "reflections": [(title, picture(field, share)) for title, field, share in mirrored(history)],
    }
    if job and can_be_mapped(job.panel[number]):
        removed_um = prediction.panels[number].removed_um
        pictures["film"] = chart(plot.film_map, job.panel[number], job.coating, removed_um=removed_um, kind="png")
    return pictures


def chart(draw, *given, kind="svg", **options):
    """A drawing of one Axes."""
    figure = Figure(figsize=(5.6, 3.6), layout="constrained")
    draw(*given, ax=figure.subplots(), **options)
    return address_of(figure, kind)


def map_pair(before, after):
    figure = Figure(figsize=(7.2, 3.4), layout="constrained")
    plot.height_maps({"before": before, "after": after}, figure.subplots(1, 2))
    return address_of(figure, "png")


def address_of(figure, kind):
    content = io.BytesIO()
    figure.savefig(content, format=kind, dpi=160, metadata={"Date": None} if kind == "svg" else None)
    return data_address(content.getvalue(), "image/svg+xml" if kind == "svg" else "image/png")


def mirrored(history):
    """What is mirrored: (title, surface, share of the light that stays in the mirror direction)."""
    yield "before", history.before, 1.0
    for number, row in enumerate(history.steps, 1):
        title = f"after {wording.step_title(row, number)}"
        yield title, history.surfaces[number - 1], plot.mirrored_share(history.scratches[number - 1])


def picture(field, share):
    content = io.BytesIO()
    plot.save_reflection(content, field, share, rows=360, cols=360)
    return data_address(content.getvalue(), "image/png")


def data_address(content, kind):
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"


def can_be_mapped(panel):
    """Whether the readings' places span an area."""
    places = [(reading.x_mm, reading.y_mm) for reading in panel.readings if reading.x_mm is not None]
    return all(len(set(along)) > 1 for along in zip(*places)) if places else False


# ---- Words


def film(um):
    return wording.film(um).replace("um", "µm")


def film_pm(um, sd_um):
    return wording.film_pm(um, sd_um).replace("+/-", "±").replace("um", "µm")


def steps_of(job, sequence):
    return next(one.step for one in job.sequence if one.name == sequence) if job else []


def texture_words(source):
    """Where the starting texture comes from."""
    if source.bands:
        waves = [f"{band.rms_um:g} µm rms about {band.wavelength_mm:g} mm" for band in source.bands]
        return "drawn at random: " + ", ".join(waves)
    if source.file:
        return f"from {source.file}"
    if source.seen:
        return "guessed from what is seen in it"
    return "a wet film that flowed out and dried"


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
