"""A tester's bench from Python and from the command line."""

import json
import math

import pytest

import libtexture as lt
from test_command import command

SETTINGS = {"force_n": 25, "sliding_m_per_s": 2.6, "seconds_per_pass": 20, "area_cm2": 200, "disc_area_cm2": 177}
# Removal of one pass at 1 mm3/(N m): force x speed x time/area, in um (closed form).
UM_AT_ONE = 25 * 2.6 * 20 / (200 * 100) * 1000


def bench_file(folder, name, grit, wear_rates, passes=4):
    """Runs of equal passes with these mean wear rates, one disc each; a little waver, the same for all."""
    lines = [f"# abrasive = {name}", f"# grit = {grit}", *[f"# {key} = {value}" for key, value in SETTINGS.items()]]
    lines.append("disc,pass,removed_um")
    for disc, wear in enumerate(wear_rates, 1):
        lines += [f"{disc},{n},{wear * UM_AT_ONE * (1 + 0.01 * (-1) ** n)!r}" for n in range(1, passes + 1)]
    path = folder / f"{name}.csv"
    path.write_text("\n".join(lines) + "\n")
    return path


def test_a_bench_gives_the_wear_rate_of_its_runs(tmp_path):
    bench = lt.read_bench(bench_file(tmp_path, "fine", "P2000", [0.06, 0.06, 0.06]))
    result = lt.judge_bench(bench)
    assert result.wear_rate_mm3_per_n_m.value == pytest.approx(0.06, rel=0.01)  # logarithms of wavering passes
    assert not result.is_loading_seen and math.isnan(result.loading_um.value)
    assert lt.BenchResult.from_dict(result.to_dict()).wear_rate_mm3_per_n_m == result.wear_rate_mm3_per_n_m


def test_the_command_tells_abrasives_apart_and_writes_a_catalogue_that_reads_back(tmp_path):
    paths = [
        bench_file(tmp_path, "coarse", "P1200", [0.12, 0.125, 0.119]),
        bench_file(tmp_path, "middle", "P1500", [0.10, 0.103, 0.098]),
        bench_file(tmp_path, "fine", "P2000", [0.083, 0.080, 0.082]),
    ]
    catalogue, out = tmp_path / "mine.toml", tmp_path / "out.json"
    own = '[abrasive."own"]\nlike = "P2000 film"\nloading_um = 400\n'
    catalogue.write_text(own)
    told = command("bench", *paths, "--catalogue", catalogue, "--json", out, "--source", "bench of ours, invented")
    assert (told.returncode, told.stderr) == (0, "")
    assert max(map(len, told.stdout.splitlines())) <= 100
    benches = [lt.read_bench(path) for path in paths]
    results = [lt.judge_bench(bench) for bench in benches]
    exponent = lt.size_exponent(benches, results)
    assert f"to the power {exponent.value:.2f}" in told.stdout and exponent.least > 0
    assert 0.5 < exponent.value < 1.5  # "about 1 for micro-grit" (estimate)
    assert told.stdout.count("differ") == 3
    needed = lt.runs_needed(difference_percent=10, log_sd=results[0].disc_log_sd)
    assert told.stdout.splitlines()[4].split()[-1] == str(needed)
    assert catalogue.read_text().startswith(own)  # what the file held stays as it is
    mine = lt.Catalogue.shipped().extended(catalogue).abrasives
    for bench, result in zip(benches, results):
        assert mine[bench.abrasive].wear_rate_mm3_per_n_m == result.wear_rate_mm3_per_n_m.value
        assert mine[bench.abrasive].source == "bench of ours, invented"
    written = json.loads(out.read_text())
    assert [one["bench"]["abrasive"] for one in written["benches"]] == ["coarse", "middle", "fine"]
    assert written["benches"][0]["runs_needed"] == {"difference_percent": 10, "runs": needed}
    assert lt.Estimate.from_dict(written["size_exponent"]["dry"]) == exponent
    pairs = [("coarse", "middle"), ("coarse", "fine"), ("middle", "fine")]
    assert [(one["first"], one["second"]) for one in written["comparisons"]] == pairs
    first = lt.compare_benches(benches[0], benches[1])
    assert lt.BenchComparison.from_dict(written["comparisons"][0]["comparison"]) == first
    assert f"over all 4 passes the first cuts {first.ratio.value:.3g} " in " ".join(told.stdout.split())


def test_what_was_not_measured_is_that_of_a_known_abrasive(tmp_path):
    path, catalogue = bench_file(tmp_path, "mine", "P3000", [0.06, 0.063]), tmp_path / "mine.toml"
    assert command("bench", path, "--catalogue", catalogue, "--like", "P3000 film").returncode == 0
    mine = lt.Catalogue.shipped().extended(catalogue).abrasives["mine"]
    assert mine.source == "wear rate: bench, mine.csv; the rest as P3000 film, estimate"
    known = lt.Catalogue.shipped().abrasives["P3000 film"]
    assert mine.groove_depth_um == pytest.approx(known.groove_depth_um, rel=1e-12)  # same grit: rounding only


def test_a_catalogue_is_added_to_or_left_as_it_is(tmp_path):
    path, other = bench_file(tmp_path, "mine", "P2500", [0.1, 0.11]), tmp_path / "again.csv"
    other.write_text(path.read_text())
    catalogue = tmp_path / "mine.toml"
    for held, files, words in (
        ('[abrasive."mine"]\nlike = "P2000 film"\n', [path], [str(catalogue), "mine", "already"]),
        ('[abrasive]\nmine = { like = "P2000 film" }\n', [path], [str(catalogue), "mine", "already"]),
        ("schema = 1\n", [path], ["mine.toml:1", "schema"]),
        ("", [path, other], [str(other), "mine", str(path)]),
    ):
        catalogue.write_text(held)
        told = command("bench", *files, "--catalogue", catalogue, "--json", tmp_path / "out.json")
        assert (told.returncode, told.stdout, told.stderr.count("\n")) == (2, "", 1)
        assert all(word in told.stderr for word in words), told.stderr
        assert catalogue.read_text() == held and not (tmp_path / "out.json").exists()
    told = command("bench", path, "--catalogue", tmp_path / "new.toml", "--like", "P2000 flim")
    assert told.returncode == 2 and "P2000 flim" in told.stderr and not (tmp_path / "new.toml").exists()


def test_small_figures_stand_apart_and_a_loading_disc_has_its_interval(tmp_path):
    def wear(loaded_um):  # mm3/(N m): falls e-fold over .06 um of clear on the disc
        return 1.234e-4 * (0.3 + 0.7 * math.exp(-loaded_um / 0.06))

    lines = bench_file(tmp_path, "slow", "P2000", [1e-4]).read_text().splitlines()[:7] + ["disc,pass,removed_um"]
    for disc in (1, 2):
        loaded_um = 0.0
        for number in range(1, 13):
            removed_um = wear(loaded_um) * UM_AT_ONE * (1 + 0.005 * (-1) ** (number + disc))
            loaded_um += removed_um * SETTINGS["area_cm2"] / SETTINGS["disc_area_cm2"]
            lines.append(f"{disc},{number},{removed_um!r}")
    path = tmp_path / "slow.csv"
    path.write_text("\n".join(lines) + "\n")
    result = lt.judge_bench(lt.read_bench(path))
    assert result.is_loading_seen
    told = command("bench", path).stdout
    rate = result.wear_rate_mm3_per_n_m
    figures = [f"{figure:.3g}" for figure in (rate.value, rate.least, rate.most)]
    assert told.splitlines()[4].split()[1:4] == figures
    loading = result.loading_um
    assert f"{loading.value:.3g} (95 %: {loading.least:.3g} to {loading.most:.3g}) um" in " ".join(told.split())


def test_a_power_of_grain_size_that_could_be_nought_is_not_told(tmp_path):
    grits = {"a": ("P1000", 0.1), "b": ("P1200", 0.13), "c": ("P2000", 0.09)}
    paths = [bench_file(tmp_path, name, grit, [wear, 1.02 * wear]) for name, (grit, wear) in grits.items()]
    benches = [lt.read_bench(path) for path in paths]
    exponent = lt.size_exponent(benches, [lt.judge_bench(bench) for bench in benches])
    assert exponent.least < 0 < exponent.most
    told = " ".join(command("bench", *paths).stdout.split())
    assert "How wear rate goes with grain size (dry) cannot be told" in told and "to the power" not in told
    # A wet one is no part of it: two dry ones are too few for a line with something left to judge it by.
    paths[2].write_text(paths[2].read_text().replace("disc,pass", "# wetness = wet\ndisc,pass"))
    assert "grain size" not in command("bench", *paths).stdout


@pytest.mark.parametrize("word, read", [("bench", lt.read_bench), ("compression", lt.read_compression)])
def test_help_shows_a_file_that_reads(tmp_path, word, read):
    lines = command(word, "--help").stdout.splitlines()
    first = next(number for number, line in enumerate(lines) if line.startswith("  # "))
    shown = [line.strip() for line in lines[first : lines.index("", first)]]
    if word == "bench":  # whose sample has too few passes for a fit
        shown += ["A,1,3,0.85", "A,1,4,0.83"]
    path = tmp_path / "shown.csv"
    path.write_text("\n".join(shown) + "\n")
    read(path)


def test_equal_abrasives_are_not_told_apart(tmp_path):
    paths = [bench_file(tmp_path, name, "P2500", [0.10, 0.11, 0.09]) for name in ("one", "other")]
    assert "cannot be told apart" in command("bench", *paths).stdout


def test_residuals_are_drawn(tmp_path):
    import matplotlib

    matplotlib.use("agg")
    path = bench_file(tmp_path, "fine", "P2000", [0.06, 0.066])
    bench = lt.read_bench(path)
    result = lt.judge_bench(bench)
    ax = lt.plot.bench_residuals(bench, result)
    drawn = [list(line.get_ydata()) for line in ax.lines if line.get_marker() == "o"]
    assert drawn == result.residuals_um
    assert ax.get_xlabel() == "pass" and ax.get_ylabel().endswith("µm")
    told = command("bench", path, "--plot", tmp_path / "residuals.png")
    assert told.returncode == 0 and (tmp_path / "residuals.png").read_bytes()[:4] == b"\x89PNG"


def test_a_bad_bench_is_refused_in_one_line(tmp_path):
    path = tmp_path / "bad.csv"
    path.write_text("disc,pass,removed_um\nA,1,1\n")
    told = command("bench", path, "--catalogue", tmp_path / "out.toml")
    assert (told.returncode, told.stdout) == (2, "")
    assert told.stderr.count("\n") == 1 and "bad.csv:1" in told.stderr
    assert not (tmp_path / "out.toml").exists()


def test_a_compression_curve_gives_a_layer(tmp_path):
    # stress = plateau (1 - exp(-E strain/plateau)) (docs/physics.md, bench) with .2 MPa, 10 kPa on 25 cm2: 2.5 N a kPa.
    strains = [0.02 * n for n in range(1, 21)]
    rows = [f"{10 * e!r},{2.5 * 10 * (1 - math.exp(-200 * e / 10))!r}" for e in strains]
    path = tmp_path / "foam.csv"
    path.write_text("# thickness_mm = 10\n# area_cm2 = 25\ndeflection_mm,force_n\n" + "\n".join(rows) + "\n")
    told = command("compression", path, "--json", tmp_path / "out.json")
    assert (told.returncode, told.stderr) == (0, "")
    assert "modulus_mpa = 0.2, thickness_mm = 10, poisson = 0.1, plateau_kpa = 10 }" in told.stdout
    assert json.loads((tmp_path / "out.json").read_text())["result"]["plateau_kpa"]["value"] == pytest.approx(
        10, rel=1e-6
    )
