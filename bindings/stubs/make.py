"""Writes the stubs of libtexture and libtexture._core: make.py PACKAGE_FOLDER"""

import re
import sys
import tempfile
from pathlib import Path

import pybind11_stubgen

import libtexture
from libtexture import _core

# The package says where people import its names from; the stub is that of the module that holds them.
for name in dir(_core):
    if getattr(getattr(_core, name), "__module__", None) == libtexture.__name__:
        getattr(_core, name).__module__ = _core.__name__

with tempfile.TemporaryDirectory() as folder:
    pybind11_stubgen.main([_core.__name__, "--output-dir", folder, "--exit-code"])
    stub = Path(folder, "libtexture", "_core.pyi").read_text(encoding="utf-8")

# What the generator cannot know: == takes anything (and answers NotImplemented), a converted array takes what numpy
# converts, and our Sequence is not that of typing.
stub = re.sub(r"def __eq__\(self(?:: [\w.]+)?, arg0: \w[\w.]*\)", "def __eq__(self, arg0: object)", stub)
stub = stub.replace(
    "__hash__: typing.ClassVar[None] = None", "__hash__: typing.ClassVar[None] = None  # type: ignore[assignment]"
)
stub = stub.replace("numpy.ndarray[numpy.float64]", "numpy.typing.ArrayLike").replace(
    "import numpy\n", "import numpy\nimport numpy.typing\n", 1
)
stub = stub.replace("os.PathLike", "str | os.PathLike[str]")
progress = "progress: bool | collections.abc.Callable[[float], object] | None = None"
stub = re.sub(r"\bprogress: .*? = None", progress, stub)  # work tells all callers alike how far it is
stub = stub.replace("self: typing.Sequence", "self").replace("typing.Sequence", "Sequence")
# Bare containers of values that hold anything.
stub = re.sub(r"(?<=[:>] )dict(?=[,):])", "dict[str, typing.Any]", stub)
stub = re.sub(r"(?<=[:>] )tuple(?=[,):])", "tuple[typing.Any, ...]", stub)
stub = re.sub(r"(?<=[\[:>|] )numpy\.ndarray(?![\[\w])", "numpy.typing.NDArray[numpy.float64]", stub)
stub = re.sub(r"float\[\d+\]", "float", stub)  # a list of so many
# A list given may be any sequence, so that a list of int does for one of float; a list that is answered is a list.
stub = re.sub(
    r"^ *def .*(?= ->)",
    lambda given: given[0].replace(": list[", ": collections.abc.Sequence["),
    stub,
    flags=re.MULTILINE,
)
stub = stub.replace("import numpy\n", "import collections.abc\nimport numpy\n", 1)
stub = stub.replace("**changes)", "**changes: typing.Any)")
stub = re.sub(r"^__all__.*\n", "", stub, flags=re.MULTILINE)  # the module has none

names = "".join(f'    "{name}",\n' for name in sorted(libtexture.__all__))
package = f"""\
from . import plot as plot
from . import report as report
from ._core import *
from ._core import __version__ as __version__
from .progress import ProgressBar as ProgressBar
from .report import write_report as write_report
from .sweep import sweep as sweep

__all__ = [
{names}]
"""
Path(sys.argv[1], "_core.pyi").write_text(stub, encoding="utf-8")
Path(sys.argv[1], "__init__.pyi").write_text(package, encoding="utf-8")
