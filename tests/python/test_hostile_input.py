"""Files that no person would write, and slips that everybody makes: each ends in one line and status 2."""

import json
import os

import numpy as np
import pytest
from libtexture.command import main
from test_command import small_job

import libtexture as lt

MOST_LETTERS = 1200  # of a message: what it quotes is cut


def refusal(capfd, *words):
    """The one line that a command ends in."""
    status = main([str(word) for word in words])
    printed, said = capfd.readouterr()
    assert (status, printed, said.count("\n")) == (2, "", 1), said
    assert said.startswith("libtexture: ") and said[:-1].isprintable() and len(said) < MOST_LETTERS
    return said[len("libtexture: ") : -1]


# ---- Files of every kind


def special(folder, kind):
    path = folder / "in.toml"
    if kind == "pipe":
        os.mkfifo(path)
    elif kind == "folder":
        path.mkdir()
    else:
        path.symlink_to({"loop": "in.toml", "device": "/dev/zero", "memory": "/proc/self/mem"}[kind])
    return path


@pytest.mark.parametrize("kind", ["pipe", "folder", "loop", "device", "memory"])
def test_only_regular_files_are_read(tmp_path, capfd, kind):
    path = special(tmp_path, kind)
    good = small_job(tmp_path)
    for words in (["predict", path], ["bench", path], ["compression", path]):
        assert "in.toml" in refusal(capfd, *words)
    spot = tmp_path / "spot.csv"
    spot.symlink_to(path.name)
    assert "spot.csv" in refusal(capfd, "calibrate", spot, good)
    job = small_job(tmp_path, "rear_door", ("seed =", 'catalogue = "in.toml"\nseed ='))
    assert "in.toml" in refusal(capfd, "predict", job)


def test_a_name_that_is_too_long_for_a_file_is_refused(tmp_path, capfd):
    job = small_job(tmp_path, "rear_door", ("seed =", f'catalogue = "{"x" * 5000}"\nseed ='))
    assert "job.toml:" in refusal(capfd, "predict", job)


@pytest.mark.parametrize("nested", ["a" + ".a" * 14600 + " = 1\n", "[a" + ".a" * 14600 + "]\n", "a = " + "[" * 100000])
def test_what_is_nested_very_deep_is_refused_by_line(tmp_path, capfd, nested):
    (tmp_path / "deep.toml").write_text("# a job or a catalogue\n" + nested)
    assert "deep.toml:2: " in refusal(capfd, "predict", tmp_path / "deep.toml")
    job = small_job(tmp_path, "rear_door", ("seed =", 'catalogue = "deep.toml"\nseed ='))
    assert "deep.toml:2: " in refusal(capfd, "predict", job)


def test_a_saved_job_is_refused_by_line(tmp_path, capfd):
    path = tmp_path / "job.json"
    lt.Job.load(small_job(tmp_path)).save(path)
    text = path.read_text()
    deep = "[" * 200000 + "]" * 200000
    for old, new, words in (
        ('"schema": 1', f'"schema": {deep}', "nested at most 32 deep"),
        ('"schema": 1', '"schema": 1,\n  "schema": 1', "key 'schema' stands twice in one table"),
        ('"schema": 1', '"schema": [[1]]', "schema: must be a whole number (got a list of 1)"),
        ('"seed": ', '"seed": -', "seed: must be a whole number from 0 to 18446744073709551615"),
        ('"panel": [', '"panel": ]', "must be JSON"),
    ):
        assert old in text
        path.write_text(text.replace(old, new, 1))
        said = refusal(capfd, "predict", path)
        number = int(said.removeprefix(f"{path}:").split(":")[0])
        assert words in said and 1 <= number <= text.count("\n") + 2


@pytest.mark.parametrize("encoding", ["latin-1", "utf-16"])
def test_a_table_in_another_encoding_is_told_so(tmp_path, capfd, encoding):
    path, job = tmp_path / "spot.csv", small_job(tmp_path)
    path.write_bytes("# passes = 6\n# step = glätten\nwhen,total_µm\nbefore,262\nafter,256\n".encode(encoding))
    for words in (["calibrate", path, job], ["bench", path], ["compression", path]):
        assert "must be UTF-8: save the file in that encoding" in refusal(capfd, *words)
    surface = tmp_path / "map.csv"
    surface.write_bytes("1,2,3,4\n# Tür\n".encode(encoding))
    with pytest.raises(ValueError, match="must be UTF-8"):
        lt.read_surface(surface, pixel_mm=0.1)


def test_an_abrasive_named_with_an_umlaut_works(tmp_path):
    from test_bench import bench_file

    path = bench_file(tmp_path, "Müller P1500", "P1500", [0.1, 0.11])
    assert main(["bench", str(path), "--catalogue", str(tmp_path / "c.toml"), "--json", str(tmp_path / "o.json")]) == 0
    assert "Müller P1500" in lt.Catalogue.shipped().extended(tmp_path / "c.toml").abrasives


def test_messages_show_no_control_characters_and_are_cut(tmp_path, capfd):
    path = small_job(tmp_path)
    refusal(capfd, "predict", path, "--sequence", "\x1b[31mred\u202e")
    for key in ('"\\u001b[31m"', '"\\u202e"', "x" * 1000000):
        job = small_job(tmp_path, "rear_door", ("seed =", key.replace("\\", "\\\\") + " = 1\nseed ="))
        assert "unknown key" in refusal(capfd, "predict", job)
    named = small_job(tmp_path, "rear_door", ('name = "rear door"', r'name = "door\\u202e"'))
    assert "without control characters" in refusal(capfd, "predict", named)
    missing = small_job(tmp_path, "rear_door", (r"\[coating\].*?(?=\n\[)", ""))
    assert "job.toml:1: missing key 'coating'" in refusal(capfd, "predict", missing)


def test_very_many_readings_are_refused_before_the_work(tmp_path, capfd):
    many = "readings = [" + "262, " * 300000 + "]"
    job = small_job(tmp_path, "rear_door", (r"readings = \[.*?\n\]", many))
    assert "Panel: readings must hold at most 2000 (got 300000)" in refusal(capfd, "predict", job)


def test_whatever_goes_wrong_is_one_line(tmp_path, capfd, monkeypatch):
    def fail(*_, **__):
        raise failure

    path = small_job(tmp_path)
    monkeypatch.setattr("libtexture.command.predict", fail)
    for failure, words in (
        (RuntimeError("two\nlines \x1b[31m"), "RuntimeError: two lines ?[31m"),
        (MemoryError(), "the memory does not hold this"),
        (KeyError("x" * 100000), "KeyError"),
    ):
        assert words in refusal(capfd, "predict", path)


def test_late_rules_of_fits_name_their_file(tmp_path, capfd):
    foam = tmp_path / "foam.csv"
    foam.write_text("# thickness_mm = 10\n# area_cm2 = 25\nforce_n,deflection_mm\n20,1\n15,2\n10,3\n5,4\n")
    assert "foam.csv:3: CompressionCurve: force_n must not fall" in refusal(capfd, "compression", foam)
    spot = tmp_path / "spot.csv"
    spot.write_text("# passes = 6\n# step = polsih\nbefore,after\n262,256\n260,254\n")
    assert "spot.csv: TestSpot: step" in refusal(capfd, "calibrate", spot, small_job(tmp_path))


def test_a_masked_array_is_refused():
    heights = np.ma.masked_array(np.ones((4, 8)), mask=np.eye(4, 8))
    with pytest.raises(ValueError, match=r"without a mask.*\(got a masked array\)"):
        lt.HeightField(height_um=heights, pixel_mm=0.2)
    assert lt.HeightField(height_um=heights.filled(0), pixel_mm=0.2).mean_um < 1


# ---- What people type


SLIPS = {  # change of the job: what the line tells the user to write
    ("area_m2 = 0.9", "area_m2 = 0,9"): "write 0.9, not 0,9",
    ("total_um = 262", "total_um = 262,5"): "write 262.5, not 262,5",
    ('name = "rear door"', "name = “rear door”"): "straight quotes",
    ('name = "rear door"', "name = rear door"): 'put texts in quotes: name = "rear door"',
    ("area_m2 = 0.9", 'area_m2 = "0,9"'): "write 0.9, without quotes",
    ("area_m2 = 0.9", "area_m2 = 0.9 m2"): "write the number alone, 0.9",
    (r"patch = \{.*?\}", ""): "missing key 'patch': write patch = {",
    ('abrasive = "P1200 film"', 'abrasive = "1200"'): '"P1200 film"',
    ('motion = "150 mm light"', 'motion = "slow"'): "libtexture tools",
}


@pytest.mark.parametrize("slip", SLIPS)
def test_a_common_slip_is_answered_with_what_to_write(tmp_path, capfd, slip):
    said = refusal(capfd, "predict", small_job(tmp_path, "rear_door", slip))
    assert said.startswith(f"{tmp_path / 'job.toml'}:") and SLIPS[slip] in said


def test_files_of_calibrate_in_the_wrong_order_are_told_so(tmp_path, capfd):
    spot = tmp_path / "spot.csv"
    spot.write_text("# passes = 6\nbefore,after\n262,256\n")
    said = refusal(capfd, "calibrate", small_job(tmp_path), spot)
    assert "the readings come first, then the job: libtexture calibrate READINGS.csv JOB.toml" in said


def test_readings_may_be_numbers_or_a_file(tmp_path):
    (tmp_path / "door.csv").write_text("Nr;Thickness (µm)\n1;262\n2;248,5\n")
    for readings in ("[262, 248.5]", '"door.csv"'):
        path = small_job(tmp_path, "rear_door", (r"readings = \[.*?\n\]", f"readings = {readings}"))
        assert [one.total_um for one in lt.Job.load(path).panel[0].readings] == [262, 248.5]
    assert [one.total_um for one in lt.read_readings(tmp_path / "door.csv")] == [262, 248.5]


def test_the_tools_of_the_catalogue_are_listed_with_what_each_is_for(tmp_path, capfd):
    assert main(["tools"]) == 0
    lines = " ".join(capfd.readouterr().out.split())
    shipped = lt.Catalogue.shipped()
    for name in [*shipped.abrasives, *shipped.backings, *shipped.motions]:
        assert f"- {name}: " in lines
    (tmp_path / "mine.toml").write_text('[abrasive."my P3000"]\nlike = "P2000 film"\ngrit = "P3000"\n')
    assert main(["tools", "3000", "--catalogue", str(tmp_path / "mine.toml")]) == 0
    listed = capfd.readouterr().out
    assert "my P3000: film disc" in listed and "P2000" not in listed and "Motions" not in listed
    assert "libtexture tools lists all" in refusal(capfd, "tools", "zzz")


# ---- Names in pictures


def test_a_name_with_dollars_or_without_end_fails_no_page(tmp_path):
    import matplotlib

    matplotlib.use("agg")
    from libtexture.plot.axes import name_text

    assert name_text("$x$") == r"\$x\$" and len(name_text("x" * 200)) == 40
    path = small_job(
        tmp_path,
        "rear_door",
        ('name = "rear door"', r'name = "$\\\\undefinedmacro{$ ' + "long " * 30 + '"'),
        ('name = "P1200 first"', 'name = "$a$ b $c"'),
    )
    page = tmp_path / "page.html"
    assert main(["predict", str(path), "--report", str(page), "--json", str(tmp_path / "o.json")]) == 0
    assert page.stat().st_size > 10000
    assert json.loads((tmp_path / "o.json").read_text())["panels"][0]["name"].startswith("$\\undefinedmacro{$")


def test_a_name_of_a_page_is_of_200_letters_at_most(tmp_path, capfd):
    path = small_job(tmp_path, "rear_door", ('name = "rear door"', f'name = "{"x" * 10000}"'))
    assert "must be at most 200 letters long" in refusal(capfd, "predict", path)
