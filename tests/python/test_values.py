"""What holds for every value class."""

import copy
import pickle

import pytest

import libtexture as lt


def test_a_value_equals_its_pickle_and_its_copy(value):
    assert pickle.loads(pickle.dumps(value)) == value
    assert copy.deepcopy(value) == value


def test_a_value_differs_from_other_things(value):
    assert value != "something else"


def test_the_repr_of_a_value_is_its_constructor_call(value):
    if isinstance(value, lt.HeightField):
        assert repr(value) == "<HeightField: 4 x 32 pixels of 0.2 mm, rms 0.707107 um>"
    else:
        assert eval(repr(value), vars(lt)) == value


def test_fields_are_read_only(value):
    for name in properties(value):
        with pytest.raises(AttributeError):
            setattr(value, name, getattr(value, name))


def test_constructors_take_keywords_only(value):
    with pytest.raises(TypeError):
        type(value)(1, 2, 3)


def test_an_unknown_keyword_is_answered_with_the_nearest_field():
    with pytest.raises(ValueError, match="^Grid: unknown field pixle_mm; nearest known: pixel_mm$"):
        lt.Grid(rows=4, cols=32, pixle_mm=0.2)


def test_a_missing_field_is_named():
    with pytest.raises(ValueError, match="^Grid: pixel_mm is missing$"):
        lt.Grid(rows=4, cols=32)


def test_a_value_out_of_range_is_named_with_its_rule():
    with pytest.raises(ValueError, match=r"^Grid: pixel_mm must be > 0 \(got -1 mm\)$"):
        lt.Grid(rows=4, cols=32, pixel_mm=-1)


def test_a_value_of_another_type_is_named_with_the_type():
    with pytest.raises(ValueError, match=r"^Grid: rows must be of type int \(got 4.5\)$"):
        lt.Grid(rows=4.5, cols=32, pixel_mm=0.2)


def test_replace_changes_some_fields_and_checks_the_rules_again():
    grid = lt.Grid(rows=4, cols=32, pixel_mm=0.2)
    assert grid.replace(rows=8) == lt.Grid(rows=8, cols=32, pixel_mm=0.2)
    with pytest.raises(ValueError, match="rows must be between"):
        grid.replace(rows=0)


def test_every_public_thing_is_documented_and_lives_in_the_package(value):
    cls = type(value)
    assert cls.__module__ == "libtexture"
    assert cls.__doc__ and cls.__init__.__doc__.startswith("__init__(self")
    for name in properties(value):
        assert getattr(cls, name).__doc__, name


def test_every_name_of_the_package_is_documented():
    for name in lt.__all__:
        assert getattr(lt, name).__doc__, name


def properties(value):
    return [name for name, member in vars(type(value)).items() if isinstance(member, property)]


def test_a_value_whose_constructor_never_ran_is_refused():
    with pytest.raises(TypeError, match="Grid: __init__ was not called"):
        lt.Grid.__new__(lt.Grid).to_dict()
