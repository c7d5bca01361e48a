"""One valid value of every bound class, for the tests that hold for all of them."""

import inspect

import numpy as np
import pytest

import libtexture as lt

WAVES = np.sin(2 * np.pi * (np.arange(32) + 0.5) / 32) * np.ones((4, 1))

EXAMPLES = {
    "Grid": lambda: lt.Grid(rows=4, cols=32, pixel_mm=0.2),
    "HeightField": lambda: lt.HeightField(height_um=WAVES, pixel_mm=0.2),
}

CLASSES = [
    name
    for name, member in inspect.getmembers(lt, inspect.isclass)
    if name in lt.__all__ and not issubclass(member, Exception)
]


@pytest.fixture(params=CLASSES)
def value(request):
    return EXAMPLES[request.param]()


@pytest.fixture
def field():
    return EXAMPLES["HeightField"]()
