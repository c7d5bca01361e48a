"""The word calibrate: a test spot's readings, what they teach, and the plan before and after."""

import json
from pathlib import Path

from . import Job, calibrate, judge_test_spot, predict, read_test_spot
from .table import bullets, ruled
from .whole_file import require_outputs, write_whole
from .wording import film


def add_calibrate(verbs):
    summary = "what a test spot's readings say of wear rate, texture and backing, and of the plan"
    words = verbs.add_parser("calibrate", help=summary, description=f"Tells {summary}.")
    words.add_argument("readings", metavar="READINGS.csv", type=Path)
    words.add_argument("job", metavar="JOB.toml", type=Path)
    words.add_argument("--sequence", metavar="NAME", default="", help="the sequence to predict; else the spot's own")
    words.add_argument("--save", metavar="JOB.json", type=Path, help="writes the calibrated job, which predict reads")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_calibrate)


def run_calibrate(options):
    require_outputs([path for path in (options.save, options.json) if path], [options.readings, options.job])
    if options.save and options.save.suffix != ".json":
        raise ValueError(f"--save must name a file that ends in .json (got {options.save})")
    job, spot = Job.load(options.job), read_test_spot(options.readings)
    result = judge_test_spot(job, spot)
    calibrated = calibrate(job, spot)
    sequence = options.sequence or spot.sequence
    before, after = (predict(one, sequence=sequence).prediction for one in (job, calibrated))
    if options.save:
        calibrated.save(options.save)
    if options.json:
        figures = {"test_spot": result.to_dict(), "before": before.to_dict(), "after": after.to_dict()}
        write_whole(options.json, json.dumps(figures, indent=2, allow_nan=False) + "\n")
    print(calibration_table(result, before, after), end="")
    if options.save:
        print(f"\ncalibrated job written to {options.save}")


def calibration_table(result, before, after):
    """What the spot says, and the prediction before and after it."""
    title = f"Test spot with {result.abrasive}"
    removed = (
        f"removed {film(result.removed_um)}, gauge uncertain by {film(result.gauge_sd_um)}; "
        f"{film(result.expected_um)} was expected"
    )
    parts = [f"{title}\n{'=' * len(title)}\n{removed}", belief_table(result), bullets("Warnings", result.warnings)]
    parts.append(side_by_side(before, after))
    return "\n\n".join(filter(None, parts)) + "\n"


def belief_table(result):
    columns = [
        ("before", "median", "", 11), ("", "95 % from", "", 11), ("", "to", "", 9),
        ("after", "median", "", 11), ("", "95 % from", "", 11), ("", "to", "", 9),
    ]
    named = [
        ("wear, mm3/(N m)", result.before, result.after),
        ("texture, um rms", result.texture_before, result.texture_after),
        ("stiffness, ratio", result.stiffness_before, result.stiffness_after),
    ]
    rows = [
        (name, *[f"{figure:.3g}" for belief in pair for figure in (belief.median, belief.least, belief.most)])
        for name, *pair in named
        if pair[0] is not None
    ]
    return ruled("What is believed", columns, rows, "")


def side_by_side(before, after):
    columns = [("before", "", "", 16), ("after", "", "", 16)]
    rows = []
    for old, new in zip(before.panels, after.panels):
        pair = (old, new)
        rows += [
            (old.name, "", ""),
            ("  clear removed um", *[f"{panel.removed_um:.2f}" for panel in pair]),
            ("  least left um", *[f"{panel.clear_left_least_um:.1f}" for panel in pair]),
            ("  passes", *[f"{sum(row.passes for row in panel.steps)}" for panel in pair]),
            ("  discs", *[f"{panel.discs}" for panel in pair]),
            ("  sanding min", *[f"{panel.minutes:.0f}" for panel in pair]),
        ]
        if old.risk.samples and new.risk.samples:
            rows += [
                ("  removed, 90 % um", *[f"{panel.risk.removed_um.p05:.1f} to {panel.risk.removed_um.p95:.1f}" for panel in pair]),
                ("  minutes, 90 %", *[f"{panel.risk.minutes.p05:.0f} to {panel.risk.minutes.p95:.0f}" for panel in pair]),
                ("  over budget %", *[f"{100 * panel.risk.budget_exceeded_probability:.0f}" for panel in pair]),
                ("  struck through %", *[f"{100 * panel.risk.strike_through_probability:.1f}" for panel in pair]),
            ]
    rows.append(("verdict", before.verdict, after.verdict))
    return ruled(f"By {before.sequence}"[:18], columns, rows, "panel")
