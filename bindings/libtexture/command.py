"""The words of the command line, over the compiled core."""

import argparse
import importlib
import json
import sys
from pathlib import Path

from . import Job, NotConverged, compare, predict, recommend
from . import __doc__ as description
from . import __version__
from .bench_words import add_bench, add_compression
from .calibrate_words import add_calibrate
from .choice_table import comparison_table, recommendation_table
from .table import table
from .whole_file import require_apart, require_outputs, write_whole

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
    add_compare(verbs)
    add_recommend(verbs)
    add_calibrate(verbs)
    add_bench(verbs)
    add_compression(verbs)
    return words


def add_predict(verbs):
    words = add_verb(verbs, "predict", "Predicts", "what a job costs in clear coat, and whether its budget bears it")
    words.add_argument("--sequence", metavar="NAME", default="", help="one of the job's sequences; else the first")
    words.set_defaults(run=run_predict)


def add_compare(verbs):
    words = add_verb(
        verbs, "compare", "Compares", "all sequences of a job: clear, trouble, time, discs, texture, marks"
    )
    words.set_defaults(run=run_compare)


def add_recommend(verbs):
    summary = "the finest first disc that reaches a job's target, with what follows it, or not to sand"
    words = add_verb(verbs, "recommend", "Recommends", summary)
    words.set_defaults(run=run_recommend)


def add_verb(verbs, verb, does, summary):
    words = verbs.add_parser(verb, help=summary, description=f"{does} {summary}.")
    words.add_argument("job", metavar="JOB.toml", type=Path)
    words.add_argument("--report", metavar="FILE.html", type=Path, help="writes a page with pictures")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    return words


def run_predict(options):
    def work(job, progress):
        return predict(job, sequence=options.sequence, progress=progress)

    run(options, "predicting", work, table, "html_of", "report", lambda predicted: predicted.prediction)


def run_compare(options):
    def work(job, progress):
        return compare(job, progress=progress)

    run(options, "comparing", work, comparison_table, "comparison_page", "choice_report")


def run_recommend(options):
    def work(job, progress):
        return recommend(job, progress=progress)

    run(options, "weighing", work, recommendation_table, "recommendation_page", "choice_report")


def run(options, doing, work, table_of, page, pages, values_of=lambda result: result):
    """What every verb does: checks where its files go, works, writes them, prints the table. page: a function
    (result, job) of the module `pages`, which needs jinja2 and matplotlib: said before the work, not after it.
    values_of: what of the result is plain values."""
    paths = [path for path in (options.report, options.json) if path]
    require_outputs(paths, [options.job])
    job = Job.load(options.job)
    require_apart(paths, [path for path in (job.texture.file, job.catalogue) if path])
    outputs = dict.fromkeys(paths)
    page_of = options.report and getattr(importlib.import_module(f".{pages}", __package__), page)
    with Percentage(doing) as progress:
        result = work(job, progress)
    if options.report:
        outputs[options.report] = page_of(result, job)
    if options.json:
        outputs[options.json] = json.dumps(values_of(result).to_dict(), indent=2, allow_nan=False) + "\n"
    for path, content in outputs.items():
        write_whole(path, content)
    print(table_of(values_of(result)), end="")
    if options.report:
        print(f"\nreport written to {options.report}")


class Percentage:
    """A line on standard error that tells how much is done, for people only."""

    def __init__(self, doing):
        self.doing = doing
        self.shown = None

    def __enter__(self):
        return self if sys.stderr.isatty() else None

    def __call__(self, share_done):
        percent = int(100 * share_done)
        if percent != self.shown:
            self.shown = percent
            print(f"\r{self.doing} {percent:3d} %", end="", file=sys.stderr, flush=True)

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
