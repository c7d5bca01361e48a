"""Comparisons and recommendations as text, at most 100 columns wide."""

import textwrap

from .inputs import stop_words
from .table import TIME_COLUMNS, WIDTH, bullets, cautions, note, ruled, size_rows, time_row
from .wording import ANSWERS, film

COSTS = [  # group, heading, unit, width
    ("clear", "spent", "um", 8),
    ("", "5 to 95 %", "um", 12),
    ("of it", "level", "um", 6),
    ("", "past", "um", 6),
    ("", "debt", "um", 6),
    ("trouble", "chance", "%", 8),
    ("time", "", "min", 6),
    ("discs", "", "", 6),
    ("texture", "left", "um", 8),
    ("marks", "left", "1/cm2", 8),
    ("", "", "", 2),
]
NAME_WIDTH = 23
COSTS_NOTE = (
    "Medians over the same possible worlds, in the order of the ranking. Past: cut after the target was\n"
    "met, before the next look. Debt: cut by the later steps for scratches."
)
FRONT_NOTE = (
    "* on the Pareto front: no other is as good in clear, trouble, time, discs, texture and marks, and better in one."
)
MISSED_NOTE = "x misses the target too often."

TIME_NOTE = "Best estimates. Looking: wiping included. Edges: by hand, along the length that a panel states."


def comparison_table(comparison):
    """The whole comparison as text."""
    parts = [note(comparison), *tables(comparison), cautions(comparison), outcome(comparison)]
    return "\n\n".join(filter(None, parts)) + "\n"


def recommendation_table(recommendation):
    """The whole recommendation as text; its answer last, where a terminal stands, but "do not sand" first."""
    comparison = recommendation.comparison
    is_off = recommendation.verdict == "do not sand"
    compared = (
        [*tables(comparison), bullets("What the others cost", comparison.findings)] if comparison.alternatives else []
    )
    chosen = plan_of(recommendation)
    parts = [
        is_off and advice(recommendation),
        note(recommendation),
        first_steps(recommendation),
        *compared,
        chosen and plan("What it would take" if is_off else "Plan", chosen),
        cautions(comparison) or bullets("Cautions for the job", recommendation.cautions),
        not is_off and advice(recommendation),
    ]
    return "\n\n".join(filter(None, parts)) + "\n"


def plan_of(recommendation):
    """The recommended sequence; None where none reaches the target."""
    named = [sequence for sequence in recommendation.sequences if sequence.name == recommendation.recommended]
    return named[0] if named else None


def tables(comparison):
    has_front = front_distinguishes(comparison)
    rows = [costs_row(one, has_front) for one in ranked(comparison)]
    is_any_missed = not all(one.is_reaching for one in comparison.alternatives)
    marks = " ".join(filter(None, [has_front and FRONT_NOTE, is_any_missed and MISSED_NOTE]))
    notes = "\n".join(filter(None, [COSTS_NOTE, textwrap.fill(marks, WIDTH)]))
    nodes = (
        f"\nFrom {comparison.samples} possible worlds, read off {comparison.node_solves} levelling runs."
        if comparison.node_solves
        else ""
    )
    return [
        ruled("Sequences compared", COSTS, rows, "sequence", NAME_WIDTH) + "\n" + notes + nodes,
        ruled("A person's time", TIME_COLUMNS, time_rows(comparison), "sequence", NAME_WIDTH) + "\n" + TIME_NOTE,
    ]


def ranked(comparison):
    """The alternatives, the best first."""
    return sorted(comparison.alternatives, key=lambda one: one.rank)


def front_distinguishes(comparison):
    """Whether the Pareto front tells alternatives apart: not where all are on it."""
    return not all(one.is_on_front for one in comparison.alternatives)


def time_rows(comparison):
    """A person's time by sequence, and of it by disc size where sizes differ."""
    sizes = {size.disc_diameter_mm for one in comparison.alternatives for size in one.disc_sizes}
    rows = []
    for one in ranked(comparison):
        rows.append(time_row(one.sequence, one.labour, sum(size.discs for size in one.disc_sizes)))
        if len(sizes) > 1:
            rows += size_rows(one.disc_sizes)
    return rows


def costs_row(one, has_front):
    return (
        one.sequence,
        f"{one.removed_um.p50:.2f}",
        f"{one.removed_um.p05:.1f} to {one.removed_um.p95:.1f}",
        f"{one.levelling_um.p50:.2f}",
        f"{one.overshoot_um.p50:.2f}",
        f"{one.debt_um.p50:.2f}",
        f"{100 * one.trouble_probability:.1f}",
        f"{one.minutes.p50:.0f}",
        f"{one.discs.p50:.0f}",
        f"{one.rms_um.p50:.3f}",
        f"{one.marks_per_cm2:.2g}",
        ("*" if has_front and one.is_on_front else "") + ("" if one.is_reaching else "x"),
    )


def first_steps(recommendation):
    columns = [
        ("grain", "median", "um", 8),
        ("clear", "to level", "um", 10),
        ("passes", "", "", 8),
        ("discs", "", "", 7),
        ("time", "", "min", 7),
        ("reaches", "target", "", 9),
    ]
    rows = [
        (
            first.abrasive,
            f"{first.grain_um:.1f}",
            f"{first.levelling_um:.2f}" if first.backing else "",
            f"{first.passes}" if first.passes else "",
            f"{first.discs:.0f}" if first.passes else "",
            f"{first.minutes:.0f}" if first.passes else "",
            "yes" if first.is_reaching else "no",
        )
        for first in recommendation.first_steps
    ]
    table = ruled("First steps weighed", columns, rows, "finest first", NAME_WIDTH)
    return "\n".join(filter(None, [table, bullets("Why not:", refusals(recommendation.first_steps))]))


def refusals(first_steps):
    """Why first steps do not reach the target, those of the same reasons together."""
    alike = []
    for first in first_steps:
        if first.is_reaching:
            continue
        names = next((names for names, reasons in alike if reasons == first.reasons), None)
        if names is None:
            alike.append(([first.abrasive], first.reasons))
        else:
            names.append(first.abrasive)
    return [f"{', '.join(names)}: {' '.join(map(str, reasons))}" for names, reasons in alike]


def plan(title, sequence):
    lines = [f"{title}: {sequence.name}"]
    for number, step in enumerate(sequence.step, 1):
        tools = f"{step.abrasive.name} on {step.backing.name}, {step.motion.name}, {step.wetness}"
        lines += [f"  {number}. {tools}:", f"     {stop_words(step)}"]
    return "\n".join(lines)


def outcome(comparison):
    best = next(one for one in comparison.alternatives if one.sequence == comparison.best)
    if best.verdict == "nothing to do":
        return bullets(str(comparison.headline), best.reasons)
    title = (
        f"{textwrap.fill(str(comparison.headline), WIDTH)}\n"
        f"Clear it spends: {film(best.removed_um.p50)}, 5 to 95 %: {best.removed_um.p05:.1f} to "
        f"{best.removed_um.p95:.1f} um\nVerdict on it: {best.verdict.upper()} ({ANSWERS[best.verdict]})"
    )
    return bullets(title, [*best.reasons, *comparison.findings])


def advice(recommendation):
    title = f"Verdict: {recommendation.verdict.upper()}"
    if recommendation.recommended and recommendation.verdict != "do not sand":
        title += f", with {recommendation.recommended}"
    return bullets(title, recommendation.reasons)
