"""The words bench and compression: a tester's passes and a foam's curve, and what they say."""

import argparse
import sys
from importlib import import_module
from io import BytesIO
from itertools import combinations
from pathlib import Path
from tempfile import TemporaryDirectory

from . import (
    Catalogue,
    abrasive_of,
    bench_cautions,
    catalogue_entry,
    compare_benches,
    judge_bench,
    judge_compression,
    read_bench,
    read_compression,
    runs_needed,
    size_exponent,
)
from .figures import figures_text
from .table import bullets, ruled
from .whole_file import about, held, require_outputs, write_whole
from .wording import counted

DIFFERENCE_PERCENT = 10  # what a tester usually wants to tell apart
LIKE = "P2000 film"  # what is not measured is that of this abrasive, unless another is named

BENCH_FILE = """A file of one abrasive (figures invented), its settings in lines that start with #:

  # abrasive = my P2500
  # grit = P2500
  # force_n = 25
  # sliding_m_per_s = 2.6
  # seconds_per_pass = 20
  # area_cm2 = 200
  # disc_area_cm2 = 177
  # wetness = dry
  # hardness_mpa = 200
  disc,repeat,pass,removed_um
  A,1,1,0.92
  A,1,2,0.88

The grit names its system: P2500, JIS 3000, CAMI 600. area_cm2 is what a pass works, disc_area_cm2 the disc's face.
wetness is dry, damp or wet (dry unless told), hardness_mpa that of the clear (200 unless told). Each disc, and each
repeat of it, is a fresh disc, whose passes count from 1; the column repeat may be left out. Weighed instead of
measured: a column removed_mg in place of removed_um, and a line "# density_g_per_cm3 = 1.2" for the clear."""

COMPRESSION_FILE = """The file (figures invented), its settings in lines that start with #:

  # thickness_mm = 10
  # area_cm2 = 25
  force_n,deflection_mm
  5,0.3
  10,0.7
  15,1.3
  20,2.4

Thickness and area are those of the sample. Four rows or more, pressed to .6 of the thickness at most."""


def add_bench(verbs):
    summary = "wear rate and loading of abrasives from a bench's passes, and whether they differ"
    words = add_word(verbs, "bench", summary, BENCH_FILE)
    words.add_argument("data", metavar="DATA.csv", type=Path, nargs="+", help="one file an abrasive")
    words.add_argument(
        "--catalogue", metavar="FILE.toml", type=Path, help="adds the abrasives to a catalogue file, or makes one"
    )
    words.add_argument(
        "--like",
        metavar="NAME",
        default=LIKE,
        help=f"abrasive of the shipped catalogue that an entry takes what was not measured from; else {LIKE}",
    )
    words.add_argument("--source", metavar="TEXT", help="source line of the entries; else the file's name")
    words.add_argument("--plot", metavar="FILE.png", type=Path, help="draws what the fits leave, pass by pass")
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_bench)


def add_word(verbs, verb, summary, epilog):
    return verbs.add_parser(
        verb,
        help=summary,
        description=f"Tells {summary}.",
        epilog=epilog,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )


def run_bench(options):
    require_outputs([path for path in (options.catalogue, options.plot, options.json) if path], options.data)
    plot = options.plot and import_module(".plot", __package__)  # needs matplotlib: said before the work
    benches = [read_bench(path) for path in options.data]
    results = [judged(path, judge_bench, bench) for path, bench in zip(options.data, benches)]
    contents = {}
    if options.json:
        contents[options.json] = figures_text(bench_figures(benches, results))
    if options.plot:
        contents[options.plot] = residuals_picture(plot, benches, results, options.plot.suffix)
    with held(options.catalogue):
        if options.catalogue:
            require_names_apart(options.data, benches)
            contents[options.catalogue] = catalogue_with(options.catalogue, entries(options, benches, results))
        write_whole(contents)
    print(bench_table(benches, results), end="")


def judged(path, judge, data):
    with about(path):
        return judge(data)


# ---- The catalogue


def require_names_apart(paths, benches):
    """ValueError where two files are of one abrasive: a catalogue holds it once."""
    seen = {}
    for path, bench in zip(paths, benches):
        if bench.abrasive in seen:
            raise ValueError(f'{path}: abrasive "{bench.abrasive}" is that of {seen[bench.abrasive]} as well')
        seen[bench.abrasive] = path


def entries(options, benches, results):
    """The abrasives as a catalogue holds them."""
    known = Catalogue.shipped().abrasives
    if options.like not in known:
        raise ValueError(f'--like must name an abrasive of the shipped catalogue (got "{options.like}")')
    return [
        abrasive_of(
            bench,
            result,
            like=known[options.like],
            source=options.source or f"wear rate: bench, {path.name}; the rest as {options.like}, estimate",
        )
        for path, bench, result in zip(options.data, benches, results)
    ]


def catalogue_with(path, abrasives):
    """The text of a catalogue file with abrasives added to what it holds. ValueError where it is no catalogue, or holds
    one of them already."""
    text = path.read_text(encoding="utf-8") if path.exists() else ""
    if text:
        Catalogue.shipped().extended(path)
    for abrasive in abrasives:
        longer = f"{text}\n{catalogue_entry(abrasive)}" if text else catalogue_entry(abrasive)
        if not is_catalogue(longer):  # both parts are valid alone, so that they hold the same table
            raise ValueError(f'{path}: holds the abrasive "{abrasive.name}" already')
        text = longer
    return text


def is_catalogue(text):
    with TemporaryDirectory() as folder:
        path = Path(folder, "catalogue.toml")
        path.write_text(text, encoding="utf-8")
        try:
            Catalogue.shipped().extended(path)
        except ValueError:
            return False
    return True


# ---- What the runs say


def bench_figures(benches, results):
    """Every figure, as plain values."""
    compared = [(first, second, *compared_or_why_not(first, second)) for first, second in combinations(benches, 2)]
    return {
        "benches": [
            {
                "bench": bench.to_dict(),
                "result": result.to_dict(),
                "runs_needed": {"difference_percent": DIFFERENCE_PERCENT, "runs": needed_runs(result)},
            }
            for bench, result in zip(benches, results)
        ],
        "comparisons": [
            {
                "first": first.abrasive,
                "second": second.abrasive,
                "comparison": told and told.to_dict(),
                "why_not": why_not,
            }
            for first, second, told, why_not in compared
        ],
        "cautions": [caution.to_dict() for caution in all_cautions(benches)],
        "size_exponent": {wetness: one.to_dict() for wetness, one in size_exponents(benches, results).items()},
    }


def needed_runs(result):
    """Runs that a difference needs; None where one disc says nothing of how discs differ."""
    if result.disc_log_sd <= 0:
        return None
    return runs_needed(difference_percent=DIFFERENCE_PERCENT, log_sd=result.disc_log_sd)


def compared_or_why_not(first, second):
    """A comparison and None, or None and why there is none."""
    try:
        return compare_benches(first, second), None
    except ValueError as error:
        return None, str(error)


def size_exponents(benches, results):
    """How wear rate goes with grain size, by wetness: of those with three abrasives or more that differ in grain."""
    exponents = {}
    for wetness in dict.fromkeys(bench.wetness for bench in benches):
        alike = [(bench, result) for bench, result in zip(benches, results) if bench.wetness == wetness]
        if len(alike) > 2 and len({bench.grit.median_um for bench, _ in alike}) > 1:
            exponents[wetness] = size_exponent(*map(list, zip(*alike)))
    return exponents


def bench_table(benches, results):
    """Figures of each abrasive, pairs that differ, and how many runs a difference needs."""
    columns = [
        ("wear rate", "fresh", "mm3/(N m)", 11),
        ("", "95 % from", "", 11),
        ("", "to", "", 10),
        ("loaded", "rate", "mm3/(N m)", 11),
        ("", "by", "um", 10),
        ("spread", "passes", "um", 10),
        ("", "discs", "%", 8),
        ("", "runs", f"for {DIFFERENCE_PERCENT} %", 10),
    ]
    rows = [bench_row(bench, result) for bench, result in zip(benches, results)]
    exponents = size_exponents(benches, results)
    said = [
        *map(loading_words, benches, results),
        *[comparison_words(first, second) for first, second in combinations(benches, 2)],
        *[exponent_words(wetness, exponent) for wetness, exponent in exponents.items()],
    ]
    parts = [
        ruled("Bench", columns, rows, "abrasive"),
        bullets("What the runs say", said),
        bullets("Cautions", all_cautions(benches)),
    ]
    return "\n\n".join(parts) + "\n"


def all_cautions(benches):
    """Cautions of the benches, each once."""
    cautions = []
    for wetness in dict.fromkeys(bench.wetness for bench in benches):
        cautions += [one for one in bench_cautions(wetness=wetness) if one not in cautions]
    return cautions


def bench_row(bench, result):
    fresh = result.wear_rate_mm3_per_n_m
    loaded = ("-", "-")
    if result.is_loading_seen:
        loaded = (f"{result.worn_wear_rate_mm3_per_n_m.value:.3g}", f"{result.loading_um.value:.3g}")
    return (
        bench.abrasive,
        f"{fresh.value:.3g}",
        f"{fresh.least:.3g}",
        f"{fresh.most:.3g}",
        *loaded,
        f"{result.residual_sd_um:.2g}",
        f"{100 * result.disc_log_sd:.1f}",
        f"{needed_runs(result) or '-'}",
    )


def loading_words(bench, result):
    if not result.is_loading_seen:
        return (
            f"{bench.abrasive}: no loading can be told (p = {result.loading_p:.2g}); a catalogue entry takes that of "
            "the abrasive it is like."
        )
    return (
        f"{bench.abrasive}: the disc loads (p = {result.loading_p:.2g}): its cut falls to "
        f"{estimate_words(result.worn_wear_rate_mm3_per_n_m)} mm3/(N m), 63 % of the way after "
        f"{estimate_words(result.loading_um)} um of clear over the disc's face."
    )


def estimate_words(estimate):
    return f"{estimate.value:.3g} (95 %: {estimate.least:.3g} to {estimate.most:.3g})"


def comparison_words(first, second):
    names = f"{first.abrasive} and {second.abrasive}"
    told, why_not = compared_or_why_not(first, second)
    if not told:
        return f"{names} cannot be compared: {why_not}."
    differ = "differ" if told.p < 0.05 else "cannot be told apart"
    over = counted(len(first.runs[0].removed_um), "pass")
    return (
        f"{names} {differ}: over all {over} the first cuts {estimate_words(told.ratio)} times as fast as the second, "
        f"p = {told.p:.2g}."
    )


def exponent_words(wetness, exponent):
    if exponent.least <= 0 <= exponent.most:
        return (
            f"How wear rate goes with grain size ({wetness}) cannot be told: the power lies between "
            f"{exponent.least:.2f} and {exponent.most:.2f} (95 %)."
        )
    interval = f"95 %: {exponent.least:.2f} to {exponent.most:.2f}"
    return f"Wear rate goes with grain size ({wetness}) to the power {exponent.value:.2f} ({interval})."


def residuals_picture(plot, benches, results, ending):
    """The bytes of a picture file of that ending."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(5.6, 3.6 * len(benches)), layout="constrained")
    for bench, result, ax in zip(benches, results, figure.subplots(len(benches), squeeze=False)[:, 0]):
        plot.bench_residuals(bench, result, ax)
    content = BytesIO()
    figure.savefig(content, format=ending.removeprefix(".") or "png")
    return content.getvalue()


# ---- Foams


def add_compression(verbs):
    summary = "modulus and plateau of a foam from a curve of force and deflection"
    words = add_word(verbs, "compression", summary, COMPRESSION_FILE)
    words.add_argument("data", metavar="DATA.csv", type=Path)
    words.add_argument("--json", metavar="FILE", type=Path, help="writes every figure")
    words.set_defaults(run=run_compression)


def run_compression(options):
    require_outputs([options.json] if options.json else [], [options.data])
    curve = read_compression(options.data)
    result = judged(options.data, judge_compression, curve)
    if options.json:
        write_whole({options.json: figures_text({"curve": curve.to_dict(), "result": result.to_dict()})})
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
