"""Three first grits on one door (invented), in the same possible worlds: what each spends on levelling, on overshoot
and on the scratches that its first disc leaves, and how sure the differences are."""

import libtexture as lt

job = lt.Job.load("examples/jobs/rear_door.toml")
job = job.replace(
    patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),  # coarse, so that this takes seconds
    uncertainty=lt.Uncertainty(samples=1000),
)
comparison = lt.compare(job)
for one in comparison.alternatives:
    clear = one.removed_um
    print(
        f"{one.sequence}: {clear.p50:.1f} um of clear (5 to 95 %: {clear.p05:.1f} to {clear.p95:.1f}): levelling "
        f"{one.levelling_um.p50:.1f}, overshoot {one.overshoot_um.p50:.1f}, debt {one.debt_um.p50:.1f}; "
        f"{one.minutes.p50:.0f} minutes{'' if one.is_on_front else '; beaten in everything'}"
    )
for finding in comparison.findings:
    print(finding)
