"""What commands write: all files of a command or none, links followed, and one writer at a time."""

import os
import resource
import subprocess
import sys

import pytest
from libtexture.command import main
from libtexture.whole_file import held, write_whole
from test_bench import bench_file
from test_command import command

import libtexture as lt


def test_all_files_are_written_or_none(tmp_path):
    first, second = tmp_path / "first.json", tmp_path / "no_folder" / "second.json"
    first.write_text("old")
    with pytest.raises(ValueError, match="second.json"):
        write_whole({first: "new", second: "new"})
    assert first.read_text() == "old" and list(tmp_path.iterdir()) == [first]


def test_a_full_disk_is_told_with_the_name_of_the_file(tmp_path):
    # A limit on the size of files, as a full disk, lets a write fail half way; Python leaves its signal aside.
    out = tmp_path / "out.json"
    out.write_text("old")
    script = f"""
import resource
from libtexture.whole_file import write_whole
resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
try:
    write_whole({{{str(out)!r}: "x" * 5000}})
except ValueError as error:
    print(error)
"""
    told = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True).stdout
    assert told == f"cannot write {out}: File too large\n"
    assert out.read_text() == "old" and list(tmp_path.iterdir()) == [out]
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[0] != 1000


@pytest.mark.parametrize("place", ["/dev/full", "/dev/stdout", "loop"])  # standard output is a pipe here
def test_what_is_no_file_is_refused_before_the_work(tmp_path, place):
    (tmp_path / "loop").symlink_to("loop")
    told = command("predict", "no_such_job.toml", "--json", tmp_path / place)
    assert told.returncode == 2 and f"{place}: is not a file" in told.stderr


def test_a_link_is_followed_and_a_file_keeps_its_rights(tmp_path):
    target, link = tmp_path / "target.json", tmp_path / "link.json"
    target.write_text("old")
    target.chmod(0o600)
    link.symlink_to(target.name)
    write_whole({link: "new"})
    assert link.is_symlink() and target.read_text() == "new" and target.stat().st_mode & 0o777 == 0o600


def test_two_processes_that_add_to_one_catalogue_lose_nothing(tmp_path):
    catalogue = tmp_path / "mine.toml"
    names = [f"abrasive {number}" for number in range(4)]
    words = [os.environ["LIBTEXTURE_COMMAND"], "bench", "--catalogue", str(catalogue)]
    files = [bench_file(tmp_path, name, "P2000", [0.06, 0.066]) for name in names]
    running = [subprocess.Popen([*words, str(path)], stdout=subprocess.DEVNULL) for path in files]
    assert [one.wait(timeout=120) for one in running] == [0] * len(running)
    assert set(names) <= set(lt.Catalogue.shipped().extended(catalogue).abrasives)


def test_a_file_is_held_by_one_process_at_a_time(tmp_path):
    script = f"from libtexture.whole_file import held\nwith held({str(tmp_path / 'a')!r}): print('held')"
    with held(tmp_path / "a"):
        waiting = subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True)
        with pytest.raises(subprocess.TimeoutExpired):
            waiting.communicate(timeout=1.5)
    assert waiting.communicate(timeout=60)[0] == "held\n"


def test_a_picture_that_cannot_be_drawn_leaves_nothing_written(tmp_path, capfd):
    path = bench_file(tmp_path, "fine", "P2000", [0.06, 0.066])
    outputs = {word: tmp_path / name for word, name in (("--json", "o.json"), ("--catalogue", "c.toml"))}
    words = [str(word) for pair in outputs.items() for word in pair]
    assert main(["bench", str(path), *words, "--plot", str(tmp_path / "x.xyz")]) == 2
    printed, said = capfd.readouterr()
    assert printed == "" and said.count("\n") == 1 and "xyz" in said
    assert list(tmp_path.iterdir()) == [path]
