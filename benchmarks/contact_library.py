"""Contact at rest on a half-space, beside a general contact library (PyPI's tamaas) on the same problem.

    PYTHONPATH=build/default/python python3 benchmarks/contact_library.py

One thread each, in turn. Both answers are checked here, by one rule: pressures under a half-space's compliance give
displacements, and the gap that remains where they press, or a penetration, is the error over the rms height.
"""

import os

os.environ["OMP_NUM_THREADS"] = "1"  # read when the library is imported

import time

import numpy as np

import libtexture as lt

MODULUS_PA = 1e9  # plane-strain modulus E / (1 - nu^2)
GRID = lt.Grid(rows=512, cols=512, pixel_mm=0.1)
PRESSURE_KPA = 590.0
ROUNDS = 5
TOLERANCE = 1e-6  # of the other library, by its own measure: its answer is then as exact as ours, by the one below


def main():
    field = lt.synthesize(bands=[lt.TextureBand(wavelength_mm=4, rms_um=1.5, bandwidth_octaves=2)], grid=GRID, seed=1)
    works = {"libtexture": pressed_here(field), "tamaas": pressed_there(field)}
    seconds, pressures_pa = {name: [] for name in works}, {}
    for _ in range(ROUNDS):  # in turn, so that both meet the same machine
        for name, work in works.items():
            start = time.process_time()
            pressures_pa[name] = work()
            seconds[name].append(time.process_time() - start)
    print("contact at rest of a half-space, 512 x 512   seconds   error over rms   area in contact")
    for name, pressure_pa in pressures_pa.items():
        error, share = error_of(field, pressure_pa), (pressure_pa > 0).mean()
        print(f"  {name:42} {min(seconds[name]):7.2f}   {error:14.1e}   {100 * share:13.2f} %")
    ratio = min(seconds["libtexture"]) / min(seconds["tamaas"])
    print(f"  libtexture over tamaas: {ratio:.2f} of its processor time")


def pressed_here(field):
    """A layer twenty patches deep is a half-space to every wave of the patch."""
    half_space = lt.Backing(
        name="half-space", layers=[lt.Layer(thickness_mm=1000, modulus_mpa=MODULUS_PA / 1e6, poisson=0.0)]
    )
    return lambda: lt.press(field, half_space, pressure_kpa=PRESSURE_KPA, threads=1).pressure_kpa * 1e3


def pressed_there(field):
    """The same problem in metres and pascals; the surface is the indenter there, its peaks first all the same."""
    import tamaas

    tamaas.set_log_level(tamaas.LogLevel.warning)
    size_m = [GRID.rows * GRID.pixel_mm * 1e-3, GRID.cols * GRID.pixel_mm * 1e-3]
    surface_m = np.ascontiguousarray(field.height_um * 1e-6)

    def work():  # a model each time: a used one starts from its last answer
        model = tamaas.ModelFactory.createModel(tamaas.model_type.basic_2d, size_m, [GRID.rows, GRID.cols])
        model.E, model.nu = MODULUS_PA, 0.0
        solver = tamaas.PolonskyKeerRey(model, surface_m, TOLERANCE)
        solver.max_iter = 10000
        solver.solve(PRESSURE_KPA * 1e3)
        return np.array(model.traction)

    return work


def error_of(field, pressure_pa):
    """The greater of the mean gap under pressure and the greatest penetration, over the rms height."""
    q = 2 * np.pi * np.hypot(
        np.fft.fftfreq(GRID.rows, GRID.pixel_mm * 1e-3)[:, None], np.fft.rfftfreq(GRID.cols, GRID.pixel_mm * 1e-3)
    )
    with np.errstate(divide="ignore"):
        compliance = np.where(q > 0, 2 / (MODULUS_PA * q), 0)
    down_m = np.fft.irfft2(compliance * np.fft.rfft2(pressure_pa), s=pressure_pa.shape)
    gap_m = down_m - field.height_um * 1e-6
    gap_m -= (gap_m * pressure_pa).sum() / pressure_pa.sum()  # the approach: no gap where it presses, in the mean
    apart_m = (np.abs(gap_m) * pressure_pa).sum() / pressure_pa.sum()
    return max(apart_m, -gap_m.min()) / (field.rms_um * 1e-6)


if __name__ == "__main__":
    main()
