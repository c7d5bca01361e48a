"""The words of the command line, over the compiled core."""

import argparse
import importlib
import sys
from pathlib import Path

from . import Job, NotConverged, __version__, compare, predict, recommend
from . import __doc__ as description
from .bench_words import add_bench, add_compression
from .calibrate_words import add_calibrate
from .choice_table import comparison_table, recommendation_table
from .figures import figures_text
from .progress import Percentage
from .summary import summary
from .table import table
from .threads import add_threads
from .tools_words import add_tools
from .whole_file import files_of, require_apart, require_outputs, write_whole

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
    add_tools(verbs)
    return words


def add_predict(verbs):
    words = add_verb(verbs, "predict", "Predicts", "what a job costs in clear coat, and whether its budget bears it")
    words.add_argument("--sequence", metavar="NAME", default="", help="one of the job's sequences; else the first")
    words.add_argument("--details", action="store_true", help="prints every table, caution and warning too")
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
    add_threads(words)
    return words


def run_predict(options):
    def work(job, progress):
        return predict(job, sequence=options.sequence, progress=progress, threads=options.threads)

    def told(predicted, job):
        prediction = predicted.prediction
        return summary(prediction, job) + ("\n" + table(prediction, job) if options.details else "")

    run(options, "predicting", work, told, "html_of", "report")


def run_compare(options):
    def work(job, progress):
        return compare(job, progress=progress, threads=options.threads)

    def told(comparison, _):
        return comparison_table(comparison)

    run(options, "comparing", work, told, "comparison_page", "choice_report")


def run_recommend(options):
    def work(job, progress):
        return recommend(job, progress=progress, threads=options.threads)

    def told(recommendation, _):
        return recommendation_table(recommendation)

    run(options, "weighing", work, told, "recommendation_page", "choice_report")


def run(options, doing, work, told, page, pages):
    """What every verb does: checks where its files go, works, writes them, prints the text. told(result, job):
    the text; page: a function (result, job) of the module `pages`, which needs jinja2 and
    matplotlib: said before the work, not after it."""
    paths = [path for path in (options.report, options.json) if path]
    require_outputs(paths, [options.job])
    job = Job.load(options.job)
    require_apart(paths, files_of(job))
    outputs = dict.fromkeys(paths)
    page_of = options.report and getattr(importlib.import_module(f".{pages}", __package__), page)
    with Percentage(doing) as progress:
        result = work(job, progress)
    if options.report:
        outputs[options.report] = page_of(result, job)
    if options.json:
        outputs[options.json] = figures_text(result.to_dict(), job)
    write_whole(outputs)
    print(told(result, job), end="")
    if options.report:
        print(f"\nreport written to {options.report}")


LONGEST_REASON = 1000  # letters of it that are shown


def reason(error):
    """What is wrong, as one line, whatever it quotes."""
    line = "".join(letter if letter.isprintable() else "?" for letter in words_of(error))
    return line if len(line) <= LONGEST_REASON else line[:LONGEST_REASON] + "..."


def words_of(error):
    if isinstance(error, ModuleNotFoundError):
        return f"this needs the Python package {error.name.partition('.')[0]}, which is not installed"
    if isinstance(error, OSError) and error.strerror:
        return f"{error.filename}: {error.strerror}" if error.filename else error.strerror
    said = " ".join(str(error).split())
    if isinstance(error, MemoryError):
        return "the memory does not hold this: take fewer pixels, readings or samples"
    expected = isinstance(error, ValueError | OSError | NotConverged)
    return said if expected and said else f"{type(error).__name__}: {said or 'no more is known'}"


def main(arguments=None):
    """Runs the command; the exit status: 0, 130 after Ctrl-C, or 2 after one line on standard error that says what
    is wrong."""
    options = parser().parse_args(arguments)
    try:
        options.run(options)
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:  # of whatever kind: a person wants the reason, not where in our code it arose
        print(f"libtexture: {reason(error)}", file=sys.stderr)
        return 2
    return 0
