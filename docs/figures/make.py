"""Makes the pictures of the documentation from the library: python3 docs/figures/make.py, from the top of the tree."""

from pathlib import Path

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt

import libtexture as lt

HERE = Path(__file__).parent
JOB = HERE.parent.parent / "examples" / "jobs" / "rear_door.toml"
COLOURS = {"P1200 first": "#b5563c", "P2000 first": "#a5820f", "P3000 first": "#2f6f8f"}
LABEL_UP = {"P1200 first": 10, "P2000 first": 10, "P3000 first": -32}  # points, so that labels do not meet


def levelling():
    """Texture left against clear consumed, for the three sequences of the example job."""
    job = lt.Job.load(JOB)
    figure, axes = plt.subplots(figsize=(8, 4.2), layout="constrained")
    for sequence in job.sequence:
        panel = lt.predict(job, sequence=sequence.name).prediction.panels[0]
        rows = [panel.start, *panel.passes]
        colour = COLOURS[sequence.name]
        axes.plot([row.total_removed_um for row in rows], [row.rms_um for row in rows], color=colour, lw=1.8)
        axes.plot([row.total_removed_um for row in panel.steps], [row.rms_um for row in panel.steps], "o", color=colour)
        end = panel.steps[-1]
        label = f"{sequence.name}: {end.total_removed_um:.1f} um, {panel.minutes:.0f} min"
        axes.annotate(label, (end.total_removed_um, end.rms_um), (0, LABEL_UP[sequence.name]),
                      textcoords="offset points", color=colour, ha="center")
        print(f"{label}, {panel.discs} discs; texture {end.rms_um:.3f} um; steps:",
              ", ".join(f"{row.name} {row.passes} x {row.removed_um:.2f} um" for row in panel.steps))
    axes.axvline(panel.removable_um, color="0.4", ls="--", lw=1)
    axes.annotate("what the budget lets go", (panel.removable_um, panel.start.rms_um), (-6, 0),
                  textcoords="offset points", color="0.4", ha="right", va="top")
    axes.set(xlabel="clear consumed, um", ylabel="texture left, um rms", ylim=(0, None), xlim=(0, 1.06 * panel.removable_um))
    axes.spines[["top", "right"]].set_visible(False)
    axes.set_title("Three ways to level one (invented) door; a dot ends a step", loc="left", fontsize=10)
    figure.savefig(HERE / "levelling.png", dpi=110)


if __name__ == "__main__":
    levelling()
