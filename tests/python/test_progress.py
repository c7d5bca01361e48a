"""Progress as a bar."""

import sys

import pytest

import libtexture as lt
from conftest import EXAMPLES


def level(**options):
    return lt.level(EXAMPLES["HeightField"](), EXAMPLES["Backing"](), pressure_kpa=1.5, removal_um=1.0, **options)


def test_true_shows_a_bar_that_ends_full(capsys):
    level(progress=True)
    shown = capsys.readouterr().err
    assert "libtexture: 100 %" in shown


def test_false_and_none_show_nothing(capsys):
    level(progress=False)
    level(progress=None)
    assert capsys.readouterr() == ("", "")


def test_a_bar_has_a_name_and_says_where_the_work_stopped(capsys):
    with pytest.raises(KeyError), lt.ProgressBar("door") as bar:
        bar(0.4)
        raise KeyError
    shown = capsys.readouterr().err
    assert "door:  40 %" in shown and "100 %" not in shown


def test_a_bar_without_tqdm_names_the_package(monkeypatch):
    monkeypatch.setitem(sys.modules, "tqdm.auto", None)
    with pytest.raises(ImportError, match="ProgressBar: needs the Python package tqdm") as caught:
        level(progress=True)
    assert caught.value.name == "tqdm"
