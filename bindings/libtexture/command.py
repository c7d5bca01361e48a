"""The words of the command line, over the compiled core."""

import argparse
import json
import sys
from pathlib import Path

from . import Job, NotConverged, predict
from . import __doc__ as description
from . import __version__
from .bench_words import add_bench, add_compression
from .calibrate_words import add_calibrate
from .table import table
from .whole_file import require_writable, write_whole

INTERRUPTED = 130  # 128 + SIGINT, as shells say it


class Words(argparse.ArgumentParser):
    """A parser whose errors are one line."""

    def error(self, message):
        self.exit(2, f"{self.prog}: {message} ({self.prog} --help says more)\n")


def parser():
    """The command line's grammar."""
    words = Words(prog="libtexture", description=description)
    words.add_argument("--version", action="version", version=__version__)
    words.set_defaults(run=lambda _: words.print_help())
    verbs = words.add_subparsers(title="commands", metavar="COMMAND")
    add_predict(verbs)
    add_calibrate(verbs)
    add_bench(verbs)
    add_compression(verbs)
    return words


def add_predict(verbs):
    summary = "what a job costs in clear coat, and whether its budget bears it"
    words = verbs.add_parser("predict", help=summary, description=f"Predicts {summary}.")
    words.add_argument("job", metavar="JOB.toml", type=Path)
    words.add_argument("--sequence", metavar="NAME", default="", help="one of the job's sequences; else the first")
    words.add_argument("--report", metavar="FILE.html", type=Path, help="writes a page with pictures")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_predict)


def run_predict(options):
    outputs = {path: None for path in (options.report, options.json) if path}
    for path in outputs:
        require_writable(path)
    job = Job.load(options.job)
    if options.report:
        from .report import html_of  # needs jinja2 and matplotlib: said before the work, not after it
    with Percentage() as progress:
        predicted = predict(job, sequence=options.sequence, progress=progress)
    if options.report:
        outputs[options.report] = html_of(predicted, job)
    if options.json:
        outputs[options.json] = json.dumps(predicted.prediction.to_dict(), indent=2, allow_nan=False) + "\n"
    for path, content in outputs.items():
        write_whole(path, content)
    print(table(predicted.prediction), end="")
    if options.report:
        print(f"\nreport written to {options.report}")


class Percentage:
    """A line on standard error that tells how much is done, for people only."""

    def __init__(self):
        self.shown = None

    def __enter__(self):
        return self if sys.stderr.isatty() else None

    def __call__(self, share_done):
        percent = int(100 * share_done)
        if percent != self.shown:
            self.shown = percent
            print(f"\rpredicting {percent:3d} %", end="", file=sys.stderr, flush=True)

    def __exit__(self, *_):
        if self.shown is not None:
            print("\r" + " " * 16 + "\r", end="", file=sys.stderr, flush=True)


def reason(error):
    """What is wrong, as one line."""
    if isinstance(error, ModuleNotFoundError):
        return f"this needs the Python package {error.name}, which is not installed"
    if isinstance(error, OSError) and error.strerror:
        return f"{error.filename}: {error.strerror}"
    return " ".join(str(error).split())


def main(arguments=None):
    """Runs the command; the exit status: 0, 130 after Ctrl-C, or 2 after one line on standard error that says what
    is wrong."""
    options = parser().parse_args(arguments)
    try:
        options.run(options)
    except (ValueError, OSError, NotConverged, ModuleNotFoundError) as error:
        print(f"libtexture: {reason(error)}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return INTERRUPTED
    return 0
