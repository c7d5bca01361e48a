"""Progress as a bar."""

import sys

import pytest

import libtexture as lt
from libtexture.progress import Percentage, part_of
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


def test_works_one_after_the_other_make_one_progress_from_0_to_1():
    seen = []
    for part in range(4):
        for share_done in (0.0, 0.5, 1.0):
            part_of(seen.append, part, 4)(share_done)
    assert seen == sorted(seen) and (seen[0], seen[-1]) == (0, 1)
    assert part_of(None, 0, 4) is None


def test_the_commands_line_of_progress_is_wiped_whole(capsys):
    line = Percentage("calibrating")
    line(0.999)
    line(1.0)
    line.__exit__()
    shown = capsys.readouterr().err.split("\r")
    assert shown[1:3] == ["calibrating  99 %", "calibrating 100 %"]
    assert shown[3:] == [" " * len("calibrating 100 %"), ""]
