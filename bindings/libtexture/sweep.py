"""Many jobs at once, wherever there are cores."""

from collections.abc import Iterable
from concurrent.futures import Executor

from . import Job, Predicted, predict


def sweep(jobs: Iterable[Job], executor: Executor | None = None, *, threads: int | None = None) -> list[Predicted]:
    """Predicts each job by its first sequence; the predictions, in the order of the jobs.

    executor: anything with submit(), as concurrent.futures has it: threads or processes of this machine, joblib's
    loky, Dask's client.get_executor(), mpi4py.futures.MPIPoolExecutor. None: here, one after the other. The numbers do
    not depend on it. threads: what one prediction may use at most, 0 for all the machine has; by default all of them
    without an executor, and one with it, since executors keep every core busy. A file that a job names must be found
    where the work is done. The first job that fails raises its error here, and the jobs that have not begun are
    dropped."""
    if executor is None:
        return [predict(job, threads=threads or 0) for job in jobs]
    threads = 1 if threads is None else threads
    futures = [executor.submit(predict_one, job, threads) for job in jobs]
    try:
        return [future.result() for future in futures]
    finally:
        for future in futures:
            future.cancel()


def predict_one(job: Job, threads: int) -> Predicted:
    """predict() as a function of Python, which can be sent to another process by its name."""
    return predict(job, threads=threads)
