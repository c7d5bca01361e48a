"""Files and plain values."""

import numpy as np
import pytest

import libtexture as lt
from conftest import motion


@pytest.mark.parametrize("ending", ["npy", "csv"])
def test_a_surface_file_gives_the_same_numbers_back(field, tmp_path, ending):
    path = tmp_path / f"door.{ending}"
    lt.write_surface(field, path)
    assert lt.read_surface(path, pixel_mm=0.2) == field


def test_numpy_reads_what_we_write_and_we_read_what_numpy_writes(field, tmp_path):
    lt.write_surface(field, tmp_path / "ours.npy")
    np.testing.assert_array_equal(np.load(tmp_path / "ours.npy"), field.height_um)
    np.save(tmp_path / "theirs.npy", field.height_um)
    assert lt.read_surface(tmp_path / "theirs.npy", pixel_mm=0.2) == field


def test_a_missing_file_is_named(tmp_path):
    with pytest.raises(FileNotFoundError, match="no_such.npy"):
        lt.read_surface(tmp_path / "no_such.npy", pixel_mm=0.2)


def test_the_shipped_catalogue_holds_valid_tools():
    catalogue = lt.Catalogue.shipped()
    assert catalogue.abrasives and catalogue.backings and catalogue.motions
    for tools in (catalogue.abrasives, catalogue.backings, catalogue.motions):
        for name, tool in tools.items():
            assert tool.name == name
            assert eval(repr(tool), vars(lt)) == tool


def test_a_catalogue_is_extended_by_a_file(tmp_path):
    path = tmp_path / "own.toml"
    path.write_text('[motion."slow"]\nfeed_mm_per_s = 10\n')
    with pytest.raises(ValueError, match="own.toml:1.*disc_diameter_mm"):
        lt.Catalogue.shipped().extended(path)
    lines = [f"{key} = {value}" for key, value in motion().to_dict().items() if isinstance(value, (int, float))]
    path.write_text('[motion."slow"]\n' + "\n".join(lines))
    assert lt.Catalogue.shipped().extended(path).motions["slow"].force_n == motion().force_n


def test_a_value_is_its_dict(value):
    if not hasattr(value, "to_dict"):
        assert isinstance(value, (lt.HeightField, lt.Grit))
        return
    assert type(value).from_dict(value.to_dict()) == value


def test_a_wrong_dict_is_answered_with_the_path():
    with pytest.raises(ValueError, match=r"skin\.modulus_gpa"):
        lt.Backing.from_dict({"skin": {"modulus_gpa": "stiff", "thickness_um": 75, "poisson": 0.4}})
