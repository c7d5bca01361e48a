"""Each plan of the door on several patches of the same texture, on a Dask cluster.

python3 examples/sweep_dask.py                              # a cluster of this machine
python3 examples/sweep_dask.py tcp://scheduler.example:8786 # yours; libtexture must be installed on its workers
"""

import sys
from statistics import mean, stdev

from distributed import Client, LocalCluster

import libtexture as lt

SEEDS = range(1, 5)


def main() -> None:
    job = lt.Job.load("examples/jobs/rear_door.toml").replace(patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4))
    jobs = [job.replace(sequence=[plan], seed=seed) for plan in job.sequence for seed in SEEDS]
    with Client(sys.argv[1] if len(sys.argv) > 1 else LocalCluster(n_workers=2, dashboard_address=None)) as client:
        results = lt.sweep(jobs, client.get_executor())
    for number, plan in enumerate(job.sequence):
        removed_um = [one.prediction.panels[0].removed_um for one in results[number * len(SEEDS) :][: len(SEEDS)]]
        print(f"{plan.name}: {mean(removed_um):.1f} um of clear go, +- {stdev(removed_um):.1f} from patch to patch")


if __name__ == "__main__":  # worker processes import this file
    main()
