"""What the library has to say crosses as values, and as the words that C++ gives them."""

import pytest

import libtexture as lt

ODD = lt.Statement(kind="odd_reading", panel="door", figures={"reading_um": 393.7, "usual_um": 205.0})


def test_a_statement_is_its_kind_what_it_is_about_and_its_figures():
    assert (ODD.kind, ODD.panel, ODD.figures) == ("odd_reading", "door", {"reading_um": 393.7, "usual_um": 205.0})
    assert str(ODD) == ODD.text == ODD.text_in("ascii")
    assert ODD.text.startswith("door: One reading is 393.7 um (15.50 mil) among others of about 205.0 um (8.07 mil).")
    assert "393.7 µm (15.50 mil)" in ODD.text_in("unicode")


def test_its_dict_keeps_kind_figures_and_words_and_reads_back():
    written = ODD.to_dict()
    assert written["kind"] == "odd_reading" and written["figures"] == ODD.figures and written["text"] == ODD.text
    assert lt.Statement.from_dict(written) == ODD
    # The words follow from the figures, whatever the dict says.
    assert lt.Statement.from_dict({**written, "text": "all is well"}).text == ODD.text


@pytest.mark.parametrize("figures", [{}, {"reading_um": 393.7}])
def test_one_that_lacks_a_figure_is_refused(figures):
    with pytest.raises(ValueError, match="^Statement: figures must hold all that .*usual_um"):
        lt.Statement(kind="odd_reading", figures=figures)


def test_an_unknown_kind_is_refused_with_the_known_ones():
    with pytest.raises(ValueError, match="^Statement: kind must be one of .*odd_reading"):
        lt.Statement(kind="odd")
