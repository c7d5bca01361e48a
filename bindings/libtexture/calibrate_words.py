"""The word calibrate: a test spot's readings, what they teach, and the plan before and after."""

import textwrap
from importlib import import_module
from pathlib import Path

from . import Job, _core, calibrate, predict, read_test_spot
from .figures import figures_text
from .progress import Percentage, part_of
from .table import WIDTH, bullets, cautions, note, ruled
from .threads import add_threads
from .whole_file import about, files_of, require_apart, require_outputs, write_whole
from .wording import ANSWERS_AFTER_SPOT, film


def add_calibrate(verbs):
    summary = "what a test spot's readings say of wear rate, texture and backing, and of the plan"
    words = verbs.add_parser("calibrate", help=summary, description=f"Tells {summary}.")
    words.add_argument("readings", metavar="READINGS.csv", type=Path)
    words.add_argument("job", metavar="JOB.toml", type=Path)
    words.add_argument("--sequence", metavar="NAME", default="", help="the sequence to predict; else the spot's own")
    words.add_argument("--save", metavar="JOB.json", type=Path, help="writes the calibrated job, which predict reads")
    words.add_argument("--report", metavar="FILE.html", type=Path, help="writes a page with pictures")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    add_threads(words)
    words.set_defaults(run=run_calibrate)


def run_calibrate(options):
    outputs = [path for path in (options.save, options.report, options.json) if path]
    require_outputs(outputs, [options.readings, options.job])
    if options.readings.suffix in (".toml", ".json") or options.job.suffix == ".csv":
        raise ValueError(
            f"{options.readings} and {options.job}: the readings come first, then the job: "
            "libtexture calibrate READINGS.csv JOB.toml"
        )
    if options.save and options.save.suffix != ".json":
        raise ValueError(f"--save must name a file that ends in .json (got {options.save})")
    # The page needs jinja2 and matplotlib: said before the work, not after it.
    pages = options.report and import_module(".calibrate_report", __package__)
    job, spot = Job.load(options.job), read_test_spot(options.readings)
    require_apart(outputs, files_of(job))
    with Percentage("calibrating") as progress:
        sequence = options.sequence or spot.sequence
        with about(options.readings):
            result, moved, calibrated, before, after = learn(job, spot, sequence, progress, options.threads)
    contents = {}
    if options.report:
        contents[options.report] = pages.calibration_page(result, moved, spot, before, after, job)
    if options.json:
        figures = {"readings": spot, "test_spot": result, "moved": moved, "before": before, "after": after}
        contents[options.json] = figures_text({name: one.to_dict() for name, one in figures.items()}, job)
    if options.save:
        contents[options.save] = _core._saved_text(calibrated, options.save)
    write_whole(contents)
    print(calibration_table(result, moved, before, after), end="")
    if options.save:
        print(f"\ncalibrated job written to {options.save}")
    if options.report:
        print(f"\nreport written to {options.report}")


def learn(job, spot, sequence, progress, threads=0):
    """What the spot says, what of it moved the belief, the job with it, and the predictions before and after it."""
    calibration = calibrate(job, spot, progress=part_of(progress, 0, 3), threads=threads)
    before, after = (
        predict(each, sequence=sequence, progress=part_of(progress, part, 3), threads=threads).prediction
        for part, each in enumerate((job, calibration.job), start=1)
    )
    return calibration.result, calibration.moved, calibration.job, before, after


def calibration_table(result, moved, before, after):
    """What the spot says, and the prediction before and after it; the verdict last, where a terminal stands."""
    title = f"Test spot with {result.abrasive}"
    removed = (
        f"removed {film(result.removed_um)}, gauge uncertain by {film(result.gauge_sd_um)}; "
        f"{film(result.expected_um)} was expected"
    )
    verdict = f"Verdict after the spot: {after.verdict.upper()} ({ANSWERS_AFTER_SPOT[after.verdict]})"
    parts = [
        f"{title}\n{'=' * len(title)}",
        note(after),
        removed,
        belief_table(result),
        textwrap.fill(str(moved), WIDTH),
        bullets("Warnings of the spot", result.warnings),
        side_by_side(before, after),
        cautions(after),
        bullets(verdict, after.reasons),
    ]
    return "\n\n".join(filter(None, parts)) + "\n"


def belief_table(result):
    columns = [
        ("before", "median", "", 11),
        ("", "95 % from", "", 11),
        ("", "to", "", 9),
        ("after", "median", "", 11),
        ("", "95 % from", "", 11),
        ("", "to", "", 9),
    ]
    rows = [
        (
            f"{name}, {unit}",
            *[f"{figure:.3g}" for belief in pair for figure in (belief.median, belief.least, belief.most)],
        )
        for name, unit, *pair in beliefs(result)
    ]
    return ruled("What is believed", columns, rows, "", 38)


def beliefs(result, symbols="ascii"):
    """What the spot tells of: (name, unit, belief before, belief after)."""
    wear, um = ("mm3/(N m)", "um") if symbols == "ascii" else ("mm³/(N m)", "µm")
    named = [
        ("wear rate", wear, result.before, result.after),
        ("texture", f"{um} rms", result.texture_before, result.texture_after),
        ("backing's stiffness", "times catalogue's", result.stiffness_before, result.stiffness_after),
        ("groove depth", um, result.groove_depth_before, result.groove_depth_after),
        *[(f"of {other.abrasive}", wear, other.before, other.after) for other in result.others],
    ]
    return [row for row in named if row[2] is not None]


def side_by_side(before, after):
    columns = [("before", "", "", 18), ("after", "", "", 18)]
    return ruled(f"By {before.sequence}", columns, plan_rows(before, after), "panel", 30)


def plan_rows(before, after, symbols="ascii"):
    """The plan before and after the spot: (what, before, after), in words."""
    rows, um = [], "um" if symbols == "ascii" else "µm"
    for pair in zip(before.panels, after.panels):

        def line(name, word, pair=pair):
            return (f"  {name}", *[word(panel) for panel in pair])

        rows += [
            (pair[0].name, "", ""),
            line(f"clear removed, {um}", lambda panel: f"{panel.removed_um:.2f}"),
            line(f"least clear left, {um}", lambda panel: f"{panel.clear_left_least_um:.1f}"),
            line("passes", lambda panel: f"{sum(row.passes for row in panel.steps)}"),
            line("discs", lambda panel: f"{panel.discs}"),
            line("sanding, min", lambda panel: f"{panel.minutes:.0f}"),
        ]
        if all(panel.risk.samples for panel in pair):
            rows += [
                line(f"removed, 90 of 100, {um}", lambda panel: spread_words(panel.risk.removed_um, 1)),
                line("sanding, 90 of 100, min", lambda panel: spread_words(panel.risk.minutes, 0)),
                line("over budget, %", lambda panel: f"{100 * panel.risk.budget_exceeded_probability:.0f}"),
                line("struck through, %", lambda panel: f"{100 * panel.risk.strike_through_probability:.1f}"),
                line("target missed, %", lambda panel: f"{100 * panel.risk.target_missed_probability:.0f}"),
            ]
    return [*rows, ("verdict", before.verdict, after.verdict)]


def spread_words(spread, decimals):
    return f"{spread.p05:.{decimals}f} to {spread.p95:.{decimals}f}"
