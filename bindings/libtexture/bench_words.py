"""The words bench and compression: a tester's passes and a foam's curve, and what they say."""

import json
import sys
from itertools import combinations
from pathlib import Path

from . import (
    abrasive_of,
    catalogue_entry,
    compare_benches,
    judge_bench,
    judge_compression,
    read_bench,
    read_compression,
    runs_needed,
    size_exponent,
)
from .table import bullets, ruled
from .whole_file import require_outputs, write_whole

DIFFERENCE_PERCENT = 10  # what a tester usually wants to tell apart
CARRIERS = ("film_disc", "foam_disc", "compound")


def add_bench(verbs):
    summary = "wear rate and loading of abrasives from a bench's passes, and whether they differ"
    words = verbs.add_parser("bench", help=summary, description=f"Tells {summary}.")
    words.add_argument("data", metavar="DATA.csv", type=Path, nargs="+", help="one file an abrasive")
    words.add_argument("--catalogue", metavar="FILE.toml", type=Path, help="writes the abrasives as a catalogue")
    words.add_argument("--carrier", choices=CARRIERS, default="film_disc", help="of the catalogue's entries")
    words.add_argument("--source", metavar="TEXT", help="source line of the entries; else the file's name")
    words.add_argument("--plot", metavar="FILE.png", type=Path, help="draws what the fits leave, pass by pass")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_bench)


def run_bench(options):
    require_outputs([path for path in (options.catalogue, options.plot, options.json) if path], options.data)
    benches = [read_bench(path) for path in options.data]
    results = [judge_bench(bench) for bench in benches]
    if options.catalogue:
        entries = [
            catalogue_entry(
                abrasive_of(bench, result, carrier=options.carrier, source=options.source or f"bench, {path.name}")
            )
            for path, bench, result in zip(options.data, benches, results)
        ]
        write_whole(options.catalogue, "\n".join(entries))
    if options.plot:
        write_residuals(benches, results, options.plot)
    if options.json:
        figures = [{"bench": bench.to_dict(), "result": result.to_dict()} for bench, result in zip(benches, results)]
        write_whole(options.json, json.dumps(figures, indent=2, allow_nan=False) + "\n")
    print(bench_table(benches, results), end="")


def bench_table(benches, results):
    """Figures of each abrasive, pairs that differ, and how many runs a difference needs."""
    columns = [
        ("wear rate", "fresh", "mm3/(N m)", 11),
        ("", "95 % from", "", 11),
        ("", "to", "", 8),
        ("loaded", "rate", "mm3/(N m)", 11),
        ("", "by", "um", 8),
        ("spread", "passes", "um", 9),
        ("", "discs", "%", 7),
        ("", "runs", f"for {DIFFERENCE_PERCENT} %", 9),
    ]
    rows = [bench_row(bench, result) for bench, result in zip(benches, results)]
    parts = [ruled("Bench", columns, rows, "abrasive")]
    notes = [comparison(first, second) for first, second in combinations(benches, 2)]
    if len({bench.grit.median_um for bench in benches}) > 1 and len(benches) > 2:
        exponent = size_exponent(benches, results)
        notes.append(
            f"Wear rate goes with grain size to the power {exponent.value:.2f} (95 %: {exponent.least:.2f} to {exponent.most:.2f})."
        )
    parts.append(bullets("What the runs say", [*map(loading_words, benches, results), *notes]))
    return "\n\n".join(parts) + "\n"


def bench_row(bench, result):
    fresh = result.wear_rate_mm3_per_n_m
    loaded = ("-", "-")
    if result.is_loading_seen:
        loaded = (f"{result.worn_wear_rate_mm3_per_n_m.value:.3g}", f"{result.loading_um.value:.3g}")
    needed = "-"
    if result.disc_log_sd > 0:
        needed = f"{runs_needed(difference_percent=DIFFERENCE_PERCENT, log_sd=result.disc_log_sd)}"
    return (
        bench.abrasive,
        f"{fresh.value:.3g}",
        f"{fresh.least:.3g}",
        f"{fresh.most:.3g}",
        *loaded,
        f"{result.residual_sd_um:.3f}",
        f"{100 * result.disc_log_sd:.1f}",
        needed,
    )


def loading_words(bench, result):
    if result.is_loading_seen:
        return f"{bench.abrasive}: the disc loads (p = {result.loading_p:.2g})."
    return (
        f"{bench.abrasive}: no loading can be told (p = {result.loading_p:.2g}); a catalogue entry takes the usual one."
    )


def comparison(first, second):
    names = f"{first.abrasive} and {second.abrasive}"
    try:
        told = compare_benches(first, second)
    except ValueError as error:
        return f"{names} cannot be compared: {error}."
    ratio = f"{told.ratio.value:.2f} times (95 %: {told.ratio.least:.2f} to {told.ratio.most:.2f})"
    differ = "differ" if told.p < 0.05 else "cannot be told apart"
    return f"{names} {differ}: the first cuts {ratio}, p = {told.p:.2g}."


def write_residuals(benches, results, path):
    from matplotlib.figure import Figure

    from . import plot

    figure = Figure(figsize=(5.6, 3.6 * len(benches)), layout="constrained")
    for bench, result, ax in zip(benches, results, figure.subplots(len(benches), squeeze=False)[:, 0]):
        plot.bench_residuals(bench, result, ax)
    figure.savefig(path)


def add_compression(verbs):
    summary = "modulus and plateau of a foam from a curve of force and deflection"
    words = verbs.add_parser("compression", help=summary, description=f"Tells {summary}.")
    words.add_argument("data", metavar="DATA.csv", type=Path)
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_compression)


def run_compression(options):
    require_outputs([options.json] if options.json else [], [options.data])
    curve = read_compression(options.data)
    result = judge_compression(curve)
    if options.json:
        write_whole(options.json, json.dumps(result.to_dict(), indent=2, allow_nan=False) + "\n")
    sys.stdout.write(compression_words(curve, result))


def compression_words(curve, result):
    """The figures, and the layer of a backing that they make."""
    modulus = result.modulus_mpa
    lines = [f"modulus {modulus.value:.3g} MPa (95 %: {modulus.least:.3g} to {modulus.most:.3g})"]
    layer = f"modulus_mpa = {modulus.value:.3g}, thickness_mm = {curve.thickness_mm:g}, poisson = 0.1"
    if result.is_plateau_seen:
        plateau = result.plateau_kpa
        lines.append(f"plateau {plateau.value:.3g} kPa (95 %: {plateau.least:.3g} to {plateau.most:.3g})")
        layer += f", plateau_kpa = {plateau.value:.3g}"
    else:
        lines.append(f"no plateau can be told (p = {result.plateau_p:.2g})")
    lines.append(f"spread about the curve {result.residual_sd_kpa:.2g} kPa")
    return "\n".join([*lines, f"as a layer: {{ {layer} }}   # Poisson's ratio: estimate"]) + "\n"
