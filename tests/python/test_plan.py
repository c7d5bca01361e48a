"""Jobs as Python sees them; reading them is tested in C++."""

from pathlib import Path

import pytest

import libtexture as lt
from conftest import EXAMPLES

JOBS = sorted((Path(__file__).parents[2] / "examples" / "jobs").glob("*.toml"))


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_an_example_job_is_valid_and_is_its_dict(path):
    job = lt.Job.load(path)
    assert job.panel and job.sequence
    assert lt.Job.from_dict(job.to_dict()) == job


def test_a_job_of_values_can_be_changed():
    job = EXAMPLES["Job"]()
    assert job.replace(seed=2**64 - 1).seed == 2**64 - 1
    with pytest.raises(ValueError, match="panel"):
        job.replace(panel=[])


def test_a_missing_job_file_is_named():
    with pytest.raises(FileNotFoundError, match="no_such_job.toml"):
        lt.Job.load("no_such_job.toml")
