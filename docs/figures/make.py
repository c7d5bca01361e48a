"""Makes the pictures of the documentation from the library: python3 docs/figures/make.py, from the top of the tree."""

from pathlib import Path

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt

import libtexture as lt

HERE = Path(__file__).parent
JOB = HERE.parent.parent / "examples" / "jobs" / "rear_door.toml"


def levelling(plans):
    """Texture left against clear consumed, for the three sequences of the example job."""
    figure, axes = plt.subplots(figsize=(8, 4.2), layout="constrained")
    lt.plot.texture_against_clear(plans, axes)
    axes.set_title("Three ways to level one (invented) door; a mark ends a step", loc="left", fontsize=10)
    figure.savefig(HERE / "levelling.png", dpi=110)
    for plan in plans:
        panel = plan.prediction.panels[0]
        steps = ", ".join(f"{row.name} {row.passes} x {row.removed_um:.2f} um" for row in panel.steps)
        print(
            f"{plan.prediction.sequence}: {panel.removed_um:.1f} um, {panel.minutes:.0f} min, "
            f"{panel.discs} discs: {steps}"
        )


def reflections(plan):
    """The mirrored scene before, after each step, and ideally."""
    axes = lt.plot.reflections(plan.histories[0], rows=420, cols=420)
    axes[0].figure.savefig(HERE / "reflections.png", dpi=160)


if __name__ == "__main__":
    job = lt.Job.load(JOB)
    plans = [lt.predict(job, sequence=sequence.name) for sequence in job.sequence]
    levelling(plans)
    reflections(plans[-1])
