"""A sweep gives the same numbers wherever it runs. joblib and Dask are Debian's python3-joblib and python3-distributed
(.ci/run installs them); a run without them says so and tests threads and processes."""

import multiprocessing
import warnings
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from contextlib import contextmanager

import pytest

import libtexture as lt
from conftest import EXAMPLES

JOBS = [EXAMPLES["Job"]().replace(patch=lt.Grid(rows=32, cols=32, pixel_mm=0.5), seed=seed) for seed in (1, 2, 3)]
EXPECTED = lt.sweep(JOBS)


@contextmanager
def loky():
    from joblib.externals.loky import get_reusable_executor

    with get_reusable_executor(max_workers=2) as executor:
        yield executor


@contextmanager
def dask():
    from distributed import Client, LocalCluster

    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster) as client:
        yield client.get_executor()


EXECUTORS = {
    "threads": lambda: ThreadPoolExecutor(2),
    # A forked process could inherit a lock that another thread of the tests holds.
    "processes": lambda: ProcessPoolExecutor(2, multiprocessing.get_context("spawn")),
    "joblib": loky,
    "dask": dask,
}


@pytest.mark.parametrize("name", EXECUTORS)
def test_the_numbers_do_not_depend_on_the_executor(name):
    try:
        with EXECUTORS[name]() as executor:
            results = lt.sweep(JOBS, executor)
    except ModuleNotFoundError as missing:
        warnings.warn(
            f"the Python package {missing.name} is not installed: no sweep on {name} was tested", stacklevel=1
        )
        return
    for result, expected in zip(results, EXPECTED, strict=True):  # in order, and to the last bit
        assert result.to_dict() == expected.to_dict()
        assert [history.to_dict() for history in result.histories] == [
            history.to_dict() for history in expected.histories
        ]
    assert EXPECTED[0].histories[0].before != EXPECTED[1].histories[0].before  # the jobs do differ


def test_no_jobs_are_no_predictions():
    assert lt.sweep([]) == []


class OneAtATime(Executor):
    """Runs the first call at once, and never the others."""

    def __init__(self):
        self.futures = []

    def submit(self, function, *given):
        future = Future()
        if not self.futures:
            try:
                future.set_result(function(*given))
            except (ValueError, OSError) as error:
                future.set_exception(error)
        self.futures.append(future)
        return future


class Recorder(OneAtATime):
    """Notes what the first call is given."""

    def submit(self, function, *given):
        self.given = given
        return super().submit(function, *given)


@pytest.mark.parametrize(("asked", "used"), [({}, 1), ({"threads": 2}, 2), ({"threads": 0}, 0)])
def test_each_job_of_an_executor_uses_one_thread_unless_told_otherwise(asked, used):
    executor = Recorder()
    lt.sweep(JOBS[:1], executor, **asked)
    assert executor.given == (JOBS[0], used)


def test_a_job_that_fails_raises_and_drops_those_that_have_not_begun():
    broken = JOBS[0].replace(texture=lt.TextureSource(file="no_such_surface.csv"))
    executor = OneAtATime()
    with pytest.raises((ValueError, OSError), match="no_such_surface.csv"):
        lt.sweep([broken, *JOBS], executor)
    assert all(future.cancelled() for future in executor.futures[1:])
