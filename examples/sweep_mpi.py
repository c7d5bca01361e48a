"""Each plan of the door on several patches of the same texture, on the ranks of an MPI job. Rank 0 hands out work:

mpiexec -n 3 python3 -m mpi4py.futures examples/sweep_mpi.py
"""

from statistics import mean, stdev

from mpi4py.futures import MPIPoolExecutor

import libtexture as lt

SEEDS = range(1, 5)


def main() -> None:
    job = lt.Job.load("examples/jobs/rear_door.toml").replace(patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4))
    jobs = [job.replace(sequence=[plan], seed=seed) for plan in job.sequence for seed in SEEDS]
    with MPIPoolExecutor() as executor:
        results = lt.sweep(jobs, executor)
    for number, plan in enumerate(job.sequence):
        removed_um = [one.prediction.panels[0].removed_um for one in results[number * len(SEEDS) :][: len(SEEDS)]]
        print(f"{plan.name}: {mean(removed_um):.1f} um of clear go, +- {stdev(removed_um):.1f} from patch to patch")


if __name__ == "__main__":  # the other ranks import this file
    main()
