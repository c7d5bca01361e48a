"""Pages for a browser or a printer: one template each over page.html.j2, no scripts, nothing loaded from elsewhere."""

import base64
import io
from functools import partial
from importlib.resources import files

import jinja2
import matplotlib
from matplotlib.figure import Figure

from . import __version__, plot, wording
from .inputs import stop_words

TONES = {"nothing to do": "go", "go": "go", "go with care": "care", "do not sand": "stop"}  # verdict: class of the page
STYLE = {"font.size": 9, "svg.hashsalt": "libtexture"}  # the salt makes the same page the same bytes


def said(statement):
    """A statement as pages write it."""
    return statement.text_in("unicode")


def written(words):
    """A function of wording, with the symbols of print."""
    return partial(words, symbols="unicode")


def render(template, *, seed, **shown):
    """A page by the name of its template, as text."""
    page = jinja2.Environment(
        loader=jinja2.FunctionLoader(lambda name: files(__package__).joinpath(name).read_text(encoding="utf-8")),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
    )
    thickness = (wording.film, wording.film_pm, wording.film_range)
    for words in (*thickness, wording.rule_words, wording.edge_words, wording.knowledge_mark, stop_words):
        page.filters[words.__name__] = written(words)
    page.filters.update(said=said, mil=wording.mil, number_range=wording.number_range)
    return page.get_template(template).render(version=__version__, seed=seed, wording=wording, tones=TONES, **shown)


# ---- Pictures, as addresses that hold their own data


def chart(draw, *given, kind="svg", size=(5.6, 3.6), **options):
    """A drawing of one Axes: draw(*given, ax=..., **options)."""
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=size, layout="constrained")
        draw(*given, ax=figure.subplots(), **options)
        return address_of(figure, kind)


def charts(draw, given, columns, size):
    """A drawing of a row of Axes: draw(given, axes)."""
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=size, layout="constrained")
        draw(given, figure.subplots(1, columns))
        return address_of(figure, "png")


def address_of(figure, kind):
    content = io.BytesIO()
    figure.savefig(content, format=kind, dpi=160, metadata={"Date": None} if kind == "svg" else None)
    return data_address(content.getvalue(), "image/svg+xml" if kind == "svg" else "image/png")


def picture(luminance):
    """A linear luminance, 0 to 1."""
    content = io.BytesIO()
    plot.save_picture(content, luminance)
    return data_address(content.getvalue(), "image/png")


def data_address(content, kind):
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"
