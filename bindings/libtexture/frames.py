"""Results as tables of pandas and labelled maps of xarray, which are imported when they are asked for."""

import importlib
from dataclasses import dataclass

import numpy as np

from . import (
    Comparison,
    EdgePressure,
    EdgeProfile,
    FilmPicture,
    HeightField,
    History,
    Levelled,
    PanelPrediction,
    Predicted,
    Prediction,
    Pressed,
    RiskDraws,
)
from .wording import band_words


def needed(name, owner):
    """A package, or ImportError that names it."""
    try:
        return importlib.import_module(name)
    except ImportError as error:
        raise ImportError(f"{owner}: needs the Python package {name}, which is not installed", name=name) from error


# ---- pandas


def to_pandas(result):
    """A DataFrame: a row a pass (History and predictions), a report (Levelled), a draw (RiskDraws), an alternative
    (Comparison) or a distance (edges)."""
    pandas = needed("pandas", "to_pandas")
    return pandas.DataFrame(TABLES[type(result)](result))


def history_rows(history):
    return rows_of([history.start, *history.passes], list(history.band_edges_mm))


def prediction_rows(prediction):
    return [
        {"panel": panel.name, **row}
        for panel in prediction.panels
        for row in rows_of([panel.start, *panel.passes], prediction.band_edges_mm)
    ]


def rows_of(passes, edges_mm=None):
    """Rows of a history as dicts, a column a band."""
    rows = []
    for number, row in enumerate(passes):
        plain = {"pass": number, **row.to_dict()}
        bands = plain.pop("band_rms_um")
        names = band_words(edges_mm) if edges_mm is not None else range(1, len(bands) + 1)
        plain.update(
            {
                f"rms_um_{name}_mm" if edges_mm is not None else f"rms_um_band_{name}": rms
                for name, rms in zip(names, bands)
            }
        )
        rows.append(plain)
    return rows


def columns(*names):
    return lambda result: {name: np.array(getattr(result, name)) for name in names}


def draw_columns(draws):
    """A row a draw, a column a figure; efficiencies of the steps are numbered."""
    properties = [name for name, member in vars(RiskDraws).items() if isinstance(member, property)]
    figures = {name: np.array(getattr(draws, name)) for name in properties if name != "step_efficiency"}
    steps = enumerate(draws.step_efficiency, 1)
    return {**figures, **{f"step_{number}_efficiency": np.array(values) for number, values in steps}}


def alternative_rows(comparison):
    """Rows of a comparison; quantiles are columns of their own."""
    rows = []
    for one in comparison.alternatives:
        row = {}
        for name, value in one.to_dict().items():
            spread = value if isinstance(value, dict) and "p05" in value else None
            row.update(
                {f"{name}_{quantile}": figure for quantile, figure in spread.items()} if spread else {name: value}
            )
        rows.append(row)
    return rows


TABLES = {
    Comparison: alternative_rows,
    History: history_rows,
    Prediction: prediction_rows,
    Predicted: lambda predicted: prediction_rows(predicted.prediction),
    RiskDraws: draw_columns,
    PanelPrediction: lambda panel: rows_of([panel.start, *panel.passes]),
    Levelled: columns("removed_um", "rms_um", "peak_to_valley_um", "valley_depth_um", "contact_share", "touched_share"),
    EdgeProfile: columns("distance_mm", "removal_um"),
    EdgePressure: columns("distance_mm", "pressure_kpa"),
}

# ---- xarray


@dataclass
class Maps:
    """Maps of one grid: name -> (rows, cols)."""

    maps: dict
    pixel_mm: float | None = None
    corner_mm: tuple | None = None  # x, y of the centre of the first pixel; None: half a pixel, as everywhere


def to_xarray(result):
    """A Dataset of maps with the coordinates x_mm, y_mm of pixel centres, or row and col where they are not known."""
    xarray = needed("xarray", "to_xarray")
    shown = MAPS[type(result)](result)
    rows, cols = next(iter(shown.maps.values())).shape
    if shown.pixel_mm is None:
        return xarray.Dataset({name: (("row", "col"), values, attributes(name)) for name, values in shown.maps.items()})
    left, top = shown.corner_mm or (shown.pixel_mm / 2, shown.pixel_mm / 2)
    return xarray.Dataset(
        {name: (("y_mm", "x_mm"), values, attributes(name)) for name, values in shown.maps.items()},
        coords={
            "y_mm": ("y_mm", top + shown.pixel_mm * np.arange(rows), {"units": "mm"}),
            "x_mm": ("x_mm", left + shown.pixel_mm * np.arange(cols), {"units": "mm"}),
        },
    )


def attributes(name):
    return {"units": "kPa" if name.endswith("_kpa") else "um"}


def film_maps(picture):
    names = ("total_um", "total_sd_um", "clear_um", "clear_sd_um")
    maps = {name: getattr(picture, name) for name in names}
    return Maps(maps, picture.pixel_mm, (picture.corner_x_mm, picture.corner_y_mm))


MAPS = {
    HeightField: lambda field: Maps({"height_um": field.height_um}, field.pixel_mm),
    Levelled: lambda result: Maps(
        {"height_um": result.surface.height_um, "removal_map_um": result.removal_map_um}, result.surface.pixel_mm
    ),
    Pressed: lambda result: Maps({"pressure_kpa": result.pressure_kpa}),
    FilmPicture: film_maps,
}
