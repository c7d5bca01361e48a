from . import plot as plot
from . import report as report
from ._core import *
from ._core import __version__ as __version__
from .progress import ProgressBar as ProgressBar
from .report import write_report as write_report
from .sweep import sweep as sweep
