"""Predicts what levelling a textured clear coat costs, before the car is touched."""

import importlib

from . import _core
from ._core import *  # noqa: F403
from ._core import __version__ as __version__

__all__ = [name for name in vars(_core) if not name.startswith("_")]

for _name in __all__:
    getattr(_core, _name).__module__ = __name__  # where people import it from, and where pickles look for it
del _name

from .progress import ProgressBar as ProgressBar  # noqa: E402
from .sweep import sweep as sweep  # noqa: E402

__all__ += ["ProgressBar", "sweep"]


def __getattr__(name):
    """What needs matplotlib or jinja2 is imported when it is first used. AttributeError where one is missing, so that
    hasattr() answers."""
    module = {"plot": "plot", "report": "report", "write_report": "report"}.get(name)
    if not module:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    try:
        found = importlib.import_module(f".{module}", __name__)
    except ModuleNotFoundError as error:
        package = error.name.partition(".")[0]
        raise AttributeError(f"{name}: needs the Python package {package}, which is not installed") from error
    return getattr(found, name) if name != module else found
