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
    told = command("bench", *paths, "--catalogue", catalogue, "--json", out, "--source", "bench of ours, invented")
    assert (told.returncode, told.stderr) == (0, "")
    assert max(map(len, told.stdout.splitlines())) <= 100
    benches = [lt.read_bench(path) for path in paths]
    results = [lt.judge_bench(bench) for bench in benches]
    exponent = lt.size_exponent(benches, results)
    assert f"to the power {exponent.value:.2f}" in told.stdout
    assert 0.5 < exponent.value < 1.5  # "about 1 for micro-grit" (estimate)
    assert told.stdout.count("differ") == 3
    needed = lt.runs_needed(difference_percent=10, log_sd=results[0].disc_log_sd)
    assert told.stdout.splitlines()[4].split()[-1] == str(needed)
    mine = lt.Catalogue.shipped().extended(catalogue).abrasives
    for bench, result in zip(benches, results):
        assert mine[bench.abrasive].wear_rate_mm3_per_n_m == result.wear_rate_mm3_per_n_m.value
        assert mine[bench.abrasive].source == "bench of ours, invented"
    assert [one["bench"]["abrasive"] for one in json.loads(out.read_text())] == ["coarse", "middle", "fine"]


def test_equal_abrasives_are_not_told_apart(tmp_path):
    paths = [bench_file(tmp_path, name, "P1500", [0.10, 0.11, 0.09]) for name in ("one", "other")]
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
    assert json.loads((tmp_path / "out.json").read_text())["plateau_kpa"]["value"] == pytest.approx(10, rel=1e-6)
