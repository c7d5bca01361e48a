"""The examples of sweeps on clusters, on a cluster of this machine. Pairs of both languages are run by CMake."""

import os
import shutil
import subprocess
import sys
import warnings
from importlib.util import find_spec
from pathlib import Path

import pytest

import libtexture as lt

ROOT = Path(__file__).parents[2]
MPI = ["mpiexec", "--oversubscribe", "-n", "3", sys.executable, "-m", "mpi4py.futures"]
NEEDED = {"sweep_dask.py": (["distributed"], [sys.executable]), "sweep_mpi.py": (["mpi4py"], MPI)}


@pytest.mark.parametrize("name", NEEDED)
def test_a_sweep_prints_a_line_a_plan(name):
    modules, command = NEEDED[name]
    missing = [module for module in modules if not find_spec(module)]
    if missing or not shutil.which(command[0]):
        warnings.warn(f"{', '.join(missing) or command[0]} is not installed: examples/{name} was not run", stacklevel=1)
        return
    as_root = {
        "OMPI_ALLOW_RUN_AS_ROOT": "1",
        "OMPI_ALLOW_RUN_AS_ROOT_CONFIRM": "1",
    }  # Open MPI asks for it in containers
    done = subprocess.run(
        [*command, str(ROOT / "examples" / name)],
        cwd=ROOT,
        env=os.environ | as_root,
        capture_output=True,
        text=True,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr
    plans = [plan.name for plan in lt.Job.load(ROOT / "examples/jobs/rear_door.toml").sequence]
    assert [line.partition(":")[0] for line in done.stdout.splitlines()] == plans


def test_every_numbered_example_is_a_pair_of_short_files():
    numbered = sorted((ROOT / "examples").glob("[0-9]*"))
    stems = {path.stem for path in numbered}
    assert {path.name for path in numbered} == {stem + ending for stem in stems for ending in (".cpp", ".py")}
    for path in [*numbered, *(ROOT / "examples").glob("sweep_*.py")]:
        assert len(path.read_text().splitlines()) < 60, path.name
