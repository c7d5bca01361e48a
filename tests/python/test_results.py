"""What holds for every result: dicts, tables for notebooks, pandas and xarray on demand."""

import copy
import json
import re
import subprocess
import sys
import warnings

import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES

FIELD = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)], grid=lt.Grid(rows=16, cols=32, pixel_mm=0.4), seed=1
)
READINGS = [lt.Reading(x_mm=x, y_mm=y, total_um=120 + x / 10) for x in (0, 400) for y in (0, 300)]
PANEL = EXAMPLES["Panel"]().replace(readings=READINGS)
HISTORY = lt.simulate(
    surface=FIELD, coating=lt.Coating(coats=[lt.Coat(name="clear", thickness_um=45)]), steps=[EXAMPLES["Step"]()]
)
EDGE = lt.edge_profile(
    EXAMPLES["Backing"](), EXAMPLES["Motion"](), removal_um=4.0, passes=1, clear=lt.EdgeClear(clear_um=45)
)
RESULTS = {
    "Levelled": lt.level(FIELD, EXAMPLES["Backing"](), pressure_kpa=1.5, removal_um=2.0, report_at_um=[0.5, 2.0]),
    "Pressed": lt.press(FIELD, EXAMPLES["Backing"](), pressure_kpa=1.5),
    "History": HISTORY,
    "Scratches": HISTORY.scratches[-1],
    "ScratchPopulation": HISTORY.scratches[-1].populations[0],
    "DepthLaw": lt.depth_laws(HISTORY.scratches[-1])[0],
    "EdgeProfile": EDGE,
    "EdgePressure": lt.edge_pressure(EXAMPLES["Backing"](), EXAMPLES["Motion"](), centre_mm=400, removal_um=1),
    "Film": lt.film_at(PANEL, lt.Paint(kind="factory"), x_mm=100, y_mm=100),
    "FilmPicture": lt.film_picture(PANEL, lt.Paint(kind="factory"), pixels=8),
    "RiskDraws": lt.RiskDraws.from_dict(
        {
            name: [[0.5, 0.75]] if name == "step_efficiency" else [1.0, 2.0]
            for name, member in vars(lt.RiskDraws).items()
            if isinstance(member, property)
        }
    ),
    "Catalogue": lt.Catalogue.shipped(),
}


@pytest.fixture(params=RESULTS)
def result(request):
    return RESULTS[request.param]


def test_the_dict_of_a_result_is_plain_and_gives_it_back(result):
    plain = result.to_dict()
    again = type(result).from_dict(json.loads(json.dumps(plain)))  # plain enough for JSON, and no digit lost
    assert again.to_dict() == plain


def test_the_dict_of_a_value_gives_it_back(value):
    assert type(value).from_dict(json.loads(json.dumps(value.to_dict()))) == value


def test_a_copied_result_has_the_same_dict(result):
    assert copy.deepcopy(result).to_dict() == result.to_dict()


def test_every_class_has_dicts_and_a_table_for_notebooks():
    left_out = {"NotConverged", "ProgressBar"}
    for name in set(lt.__all__) - left_out:
        member = getattr(lt, name)
        if isinstance(member, type):
            assert {"to_dict", "_repr_html_"} <= set(dir(member)), name
            assert "from_dict" in dir(member) or name == "Predicted", name  # its dict is that of its Prediction


def test_a_wrong_dict_is_named():
    plain = RESULTS["Pressed"].to_dict()
    with pytest.raises(ValueError, match="^Pressed: unknown field residuals; nearest known: residual$"):
        lt.Pressed.from_dict({**plain, "residuals": 0})
    with pytest.raises(ValueError, match="^Pressed: residual is missing$"):
        lt.Pressed.from_dict({name: value for name, value in plain.items() if name != "residual"})
    with pytest.raises(ValueError, match="^HeightField: fields must be a dict with height_um and pixel_mm"):
        lt.HeightField.from_dict({"pixel_mm": 0.2})


def test_notebooks_show_every_member_of_a_value(value):
    check_table(value)


def test_notebooks_show_every_member_of_a_result(result):
    check_table(result)


def check_table(thing):
    shown = thing._repr_html_()
    for name, member in vars(type(thing)).items():
        if isinstance(member, property):
            assert f">{name}<" in shown
    tags = re.findall(r"<(/?)(\w+)", shown)
    assert sum(1 for slash, _ in tags if slash) == sum(1 for slash, _ in tags if not slash)


def test_an_answer_is_shown_as_on_the_command_line():
    prediction = EXAMPLES["Prediction"]()
    shown = prediction._repr_html_()
    assert shown.startswith("<pre>") and "Verdict: GO WITH CARE" in shown
    assert EXAMPLES["Recommendation"]()._repr_html_().startswith("<pre>")


def test_a_comparison_is_a_frame_with_a_row_an_alternative():
    comparison = EXAMPLES["Comparison"]()
    if not has("pandas", comparison.to_pandas):
        return
    frame = comparison.to_pandas()
    assert list(frame["sequence"]) == ["one step"]
    assert list(frame["removed_um_p50"]) == [comparison.alternatives[0].removed_um.p50]


def test_a_tool_is_shown_by_its_name_and_a_grit_by_its_grade():
    step = EXAMPLES["Step"]().replace(backing=EXAMPLES["Backing"]().replace(name="firm <pad>"))
    for shown in (step._repr_html_(), lt.Sequence(name="one", step=[step])._repr_html_()):
        assert ">P1200 film<" in shown and ">firm &lt;pad&gt;<" in shown
    assert ">P1200<" in EXAMPLES["Abrasive"]()._repr_html_()


def test_names_are_escaped_in_tables():
    assert "<b>" not in EXAMPLES["Coat"]().replace(name="<b>clear</b>")._repr_html_()


# pandas and xarray are Debian's python3-pandas and python3-xarray (.ci/run installs them). Without them, what is
# checked is the error that names them.


def has(package, subject):
    try:
        __import__(package)
    except ImportError:
        with pytest.raises(ImportError, match=f"needs the Python package {package}, which is not installed"):
            subject()
        warnings.warn(f"python3-{package} is not installed: only its error was tested", stacklevel=2)
        return False
    return True


def test_a_history_is_a_frame_with_a_row_a_pass():
    if not has("pandas", HISTORY.to_pandas):
        return
    frame = HISTORY.to_pandas()
    assert list(frame["removed_um"])[1:] == [row.removed_um for row in HISTORY.passes]
    assert list(frame["rms_um"])[0] == HISTORY.start.rms_um
    bands = [name for name in frame if name.startswith("rms_um_")]
    assert bands[0] == "rms_um_0.5-1_mm" and len(bands) == len(HISTORY.band_edges_mm) - 1
    assert list(frame[bands].iloc[-1]) == HISTORY.passes[-1].band_rms_um


def test_other_results_are_frames_of_their_rows():
    if not has("pandas", EDGE.to_pandas):
        return
    np.testing.assert_array_equal(EDGE.to_pandas()["removal_um"], EDGE.removal_um)
    np.testing.assert_array_equal(RESULTS["Levelled"].to_pandas()["rms_um"], RESULTS["Levelled"].rms_um)
    prediction = EXAMPLES["Prediction"]()
    assert set(prediction.to_pandas()["panel"]) == {"door"}
    assert len(EXAMPLES["PanelPrediction"]().to_pandas()) == 1
    draws = RESULTS["RiskDraws"].to_pandas()
    assert list(draws["removed_um"]) == [1.0, 2.0] and list(draws["step_1_efficiency"]) == [0.5, 0.75]


def test_a_field_is_a_labelled_map_with_pixel_centres():
    if not has("xarray", FIELD.to_xarray):
        return
    maps = FIELD.to_xarray()
    assert maps["height_um"].dims == ("y_mm", "x_mm") and maps["height_um"].attrs["units"] == "um"
    assert float(maps["x_mm"][0]) == 0.2 and float(maps["y_mm"][-1]) == pytest.approx(15.5 * 0.4)
    np.testing.assert_array_equal(maps["height_um"].values, FIELD.height_um)
    levelled, picture = RESULTS["Levelled"].to_xarray(), RESULTS["FilmPicture"].to_xarray()
    assert set(levelled) == {"height_um", "removal_map_um"}
    assert float(picture["x_mm"][0]) == RESULTS["FilmPicture"].corner_x_mm
    assert RESULTS["Pressed"].to_xarray()["pressure_kpa"].dims == ("row", "col")


@pytest.mark.parametrize("name, package", [("plot", "matplotlib"), ("report", "jinja2"), ("write_report", "jinja2")])
def test_what_needs_a_missing_package_is_an_attribute_that_is_not_there(name, package):
    script = f"""
import sys
sys.modules["{package}"] = None
import libtexture as lt
assert not hasattr(lt, "{name}")
try:
    lt.{name}
except AttributeError as error:
    print(error)
"""
    told = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert told.stdout == f"{name}: needs the Python package {package}, which is not installed\n", told.stderr


@pytest.mark.parametrize("package, subject", [("pandas", HISTORY.to_pandas), ("xarray", FIELD.to_xarray)])
def test_a_missing_package_is_named(monkeypatch, package, subject):
    monkeypatch.setitem(sys.modules, package, None)
    with pytest.raises(ImportError, match=f"needs the Python package {package}, which is not installed"):
        subject()
