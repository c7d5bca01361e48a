"""A prediction as text, at most 100 columns wide."""

import textwrap

from .defect_words import way_lines
from .inputs import HABITS
from .wording import (
    ANSWERS,
    band_words,
    chance,
    counted,
    disc_words,
    edge_words,
    film,
    film_pm,
    film_range,
    knowledge_words,
    letter,
    mil,
    number_range,
    rule_state,
    rule_words,
    step_title,
    variance_words,
)

WIDTH = 100
NAME_WIDTH = 18
SURE_WIDTH = 32


def table(prediction, job=None):
    """The whole prediction as text; with its job it says how edges are worked."""
    parts = []
    for number, panel in enumerate(prediction.panels):
        parts += [
            heading(panel, prediction),
            not number and note(prediction),
            clear_table(panel),
            texture_table(panel, prediction.band_edges_mm),
            sight_table(panel),
            risk_table(panel),
            defect_block(panel),
        ]
    parts.append(labour_table(prediction))
    parts += [discs_and_edges(panel, job) for panel in prediction.panels]
    parts.append(bullets("Before the first pass", prediction.checklist))
    parts.append(cautions(prediction))
    parts += [budget(panel) for panel in prediction.panels]
    parts.append(outcome(prediction))
    return "\n\n".join(filter(None, parts)) + "\n"


def heading(panel, prediction):
    title = f"{panel.name}, {panel.area_m2:g} m2, by {prediction.sequence}"
    clear = film_pm(panel.clear_um, panel.clear_sd_um)
    return f"{title}\n{'=' * len(title)}\nthinnest reading {film(panel.total_film_least_um)}, clear there {clear}"


def note(answer):
    """What the job says of its figures, of whatever has a note."""
    return "\n".join(textwrap.fill(line, WIDTH) for line in (answer.note or "").splitlines())


CLEAR = [  # group, heading, unit, width, figure of a step's row
    ("", "passes", "", 7, lambda row: f"{row.passes}"),
    ("removed", "mean", "um", 8, lambda row: f"{row.removed_um:.2f}"),
    ("", "95th", "um", 7, lambda row: f"{row.removed_p95_um:.2f}"),
    ("", "max", "um", 7, lambda row: f"{row.removed_max_um:.2f}"),
    ("", "mean", "mil", 7, lambda row: mil(row.removed_um, 3)),
    ("left", "mean", "um", 8, lambda row: f"{row.clear_left_mean_um:.1f}"),
    ("", "least", "um", 7, lambda row: f"{row.clear_left_least_um:.1f}"),
    ("", "least", "mil", 7, lambda row: mil(row.clear_left_least_um)),
    ("touched", "share", "%", 9, lambda row: f"{100 * row.touched_share:.1f}"),
    ("", "discs", "", 7, lambda row: f"{row.discs}"),
    ("", "time", "min", 7, lambda row: f"{row.minutes:.1f}"),
]

SIGHT = [
    ("scratch", "rms", "nm", 9, lambda row: f"{row.scratch_rms_nm:.1f}"),
    ("", "deepest", "um", 9, lambda row: f"{row.deepest_scratch_um:.2f}"),
    ("visible", "marks", "1/cm2", 9, lambda row: f"{row.marks_per_cm2:,.0f}"),
    ("stray", "marks", "1/dm2", 7, lambda row: f"{row.stray_marks_per_dm2:.2f}"),
    ("gloss", "20 deg", "GU", 8, lambda row: f"{row.gloss_20_gu:.0f}"),
    ("lamp", "stands", "out %", 8, lambda row: f"{100 * row.lamp_visibility:.0f}"),
    ("clarity", ".5 mm", "%", 9, lambda row: f"{row.image_clarity_percent:.0f}"),
    ("image", "wander", "arcmin", 8, lambda row: f"{row.image_wander_arcmin:.1f}"),
    ("letter", "read", "mm", 8, lambda row: letter(row.smallest_letter_mm)),
]


def texture_columns(edges_mm):
    return [
        ("all", "rms", "um", 8, lambda row: f"{row.rms_um:.3f}"),
        ("", "p-v", "um", 7, lambda row: f"{row.peak_to_valley_um:.2f}"),
        *[
            (
                "" if band else "rms by mm",
                words,
                "um",
                7 if band else 10,
                lambda row, band=band: f"{row.band_rms_um[band]:.3f}",
            )
            for band, words in enumerate(band_words(edges_mm))
        ],
        ("clear", "owed", "um", 9, lambda row: f"{row.clear_owed_um:.2f}"),
    ]


def by_step(columns, panel):
    """Rows of figures, one a step."""
    return [(step_title(row, number), *figures(columns, row)) for number, row in enumerate(panel.steps, 1)]


def figures(columns, row):
    return [figure(row) for *_, figure in columns]


def clear_table(panel):
    total = (
        "all steps",
        f"{sum(row.passes for row in panel.steps)}",
        f"{panel.removed_um:.2f}",
        "",
        f"{panel.removed_max_um:.2f}",
        mil(panel.removed_um, 3),
        f"{panel.clear_left_mean_um:.1f}",
        f"{panel.clear_left_least_um:.1f}",
        mil(panel.clear_left_least_um),
        "",
        f"{panel.discs}",
        f"{panel.minutes:.1f}",
    )
    return ruled("Best estimate", CLEAR, [*by_step(CLEAR, panel), total])


def texture_table(panel, edges_mm):
    columns = texture_columns(edges_mm)
    rows = [("before", *figures(columns, panel.start)), *by_step(columns, panel)]
    note = "p-v: peak to valley. Clear owed: what taking out the scratches still asks for."
    return ruled("Texture left", columns, rows) + "\n" + note


def sight_table(panel):
    rows = [("before", *figures(SIGHT, panel.start)), *by_step(SIGHT, panel)]
    note = (
        "Deepest: one regular groove a dm2 is deeper. A lamp can be made out from about 5 %, and no letter is\n"
        "read below it. Gloss leaves out diffuse light: a matt clear reads a few GU more at 60 degrees."
    )
    return ruled("What is seen", SIGHT, rows) + "\n" + note


SURE = [  # name, unit, decimals, spread of a risk, whether mil are shown as well
    ("clear removed, mean", "um", 1, lambda risk: risk.removed_um, True),
    ("  until the texture was met", "um", 1, lambda risk: risk.levelling_um, False),
    ("  from then to the next look", "um", 1, lambda risk: risk.overshoot_um, False),
    ("  to take out scratches", "um", 1, lambda risk: risk.debt_um, False),
    ("thinnest clear left anywhere", "um", 1, lambda risk: risk.clear_left_least_um, True),
    ("texture left, rms", "um", 3, lambda risk: risk.rms_um, False),
    ("touched by the first step", "%", 1, lambda risk: percent(risk.touched_share), False),
    ("least clear needed/spent", "%", 0, lambda risk: percent(risk.levelling_efficiency), False),
    ("discs", "", 0, lambda risk: risk.discs, False),
    ("machine time", "min", 0, lambda risk: risk.minutes, False),
]
QUANTILES = [
    ("", "", "", 5),
    ("5 %", "", "", 9),
    ("50 %", "", "", 9),
    ("95 %", "", "", 9),
    ("5 to 95 %, mil", "", "", 18),
]


def risk_table(panel):
    """How sure it is: quantiles of what may happen, and chances of what may go wrong."""
    risk = panel.risk
    if not risk.samples:
        return ""
    efficiencies = [
        (f"  by {step_title(row, number)}", "%", 0, lambda _, spread=spread: percent(spread), False)
        for number, (row, spread) in enumerate(zip(panel.steps, risk.step_efficiency), 1)
    ]
    place = next(i for i, row in enumerate(SURE) if row[0].startswith("least clear needed")) + 1
    rows = [sure_row(risk, *row) for row in [*SURE[:place], *efficiencies, *SURE[place:]]]
    chances = [
        f"Struck through somewhere on {panel.area_m2:g} m2: {chance(risk.strike_through_probability, risk.samples)}; "
        f"too little clear before any work: {chance(risk.short_before_probability, risk.samples)}; "
        f"budget exceeded after it: {chance(risk.budget_exceeded_probability, risk.samples)}; "
        f"target missed: {chance(risk.target_missed_probability, risk.samples)}.",
        f"Variance of the clear left: {variance_words(risk.variance_shares)}.",
        f"From {risk.samples} possible worlds, read off {risk.node_solves} levelling runs.",
    ]
    wrapped = [textwrap.fill(sentence, WIDTH) for sentence in chances]
    return "\n".join([ruled("How sure", QUANTILES, rows, "", SURE_WIDTH), *wrapped])


def sure_row(risk, name, unit, decimals, spread_of, has_mil):
    spread = spread_of(risk)
    in_mil = f"{mil(spread.p05)} to {mil(spread.p95)}" if has_mil else ""
    return (name, unit, *[f"{figure:.{decimals}f}" for figure in (spread.p05, spread.p50, spread.p95)], in_mil)


def percent(spread):
    return spread.replace(p05=100 * spread.p05, p50=100 * spread.p50, p95=100 * spread.p95)


def ruled(title, columns, rows, row_word="step", name_width=NAME_WIDTH):
    """A table: a title and three lines of heading over a rule; names on the left, figures on the right."""
    widths = [column[3] for column in columns]

    def line(cells):
        name = cells[0] if len(cells[0]) <= name_width else cells[0][: name_width - 1] + "~"
        return f"{name:<{name_width}}" + "".join(f"{cell:>{width}}" for cell, width in zip(cells[1:], widths))

    names = [title, row_word, ""]
    header = [line((names[level], *[column[level] for column in columns])).rstrip() for level in range(3)]
    header = [heading for heading in header if heading]
    return "\n".join([*header, "-" * (name_width + sum(widths)), *[line(row).rstrip() for row in rows]])


def defect_block(panel):
    """The ways with what is said of them; empty without a defect."""
    if not panel.defect:
        return ""
    notes = [
        textwrap.fill(f"- {note}", WIDTH, subsequent_indent="  ") for note in (str(one) for one in panel.defect.notes)
    ]
    return "\n".join([*way_lines(panel), *notes])


def labour_table(prediction):
    """A person's time by panel, and of it by disc size where steps differ in it."""
    rows = [time_row(panel.name, panel.labour, panel.discs) for panel in prediction.panels]
    if len(rows) > 1:
        rows.append(time_row("all panels", prediction.labour, prediction.discs))
    if len(prediction.disc_sizes) > 1:
        rows += size_rows(prediction.disc_sizes)
    return ruled("A person's time", TIME_COLUMNS, rows, "panel")


TIME_COLUMNS = [
    ("", "sanding", "min", 9),
    ("", "looking", "min", 9),
    ("disc", "changes", "min", 9),
    ("", "edges", "min", 8),
    ("", "masking", "min", 9),
    ("", "cleaning", "min", 10),
    ("", "total", "min", 8),
    ("", "discs", "", 7),
]


def time_row(name, labour, discs):
    minutes = [
        labour.sanding_minutes,
        labour.looking_minutes,
        labour.disc_change_minutes,
        labour.edge_minutes,
        labour.masking_minutes,
        labour.cleaning_minutes,
        labour.total_minutes,
    ]
    return (name, *[f"{figure:.1f}" for figure in minutes], f"{discs}")


def size_rows(sizes):
    """What goes by the discs' size: edges, masking and cleaning do not."""
    return [
        (
            f"  {size.disc_diameter_mm:g} mm discs",
            *[f"{figure:.1f}" for figure in (size.sanding_minutes, size.looking_minutes, size.disc_change_minutes)],
            *[""] * 4,
            f"{size.discs}",
        )
        for size in sizes
    ]


def cautions(answer):
    """Cautions by step and for the job, and warnings, of whatever has them."""
    parts = [
        bullets("Cautions by step", answer.step_cautions),
        bullets("Cautions for the job", answer.cautions),
        bullets("Warnings", answer.warnings),
    ]
    return "\n\n".join(filter(None, parts))


def discs_and_edges(panel, job):
    """When discs are changed on a panel, and the margin to leave along its edges."""
    lines = [disc_words(life) for life in panel.disc_lives]
    if panel.edge:
        lines.append(edge_words(panel.edge, job and HABITS[job.edge.overhang]))
    return bullets(f"Discs and edges of {panel.name}", lines)


def budget(panel):
    if panel.risk.samples:
        would_go, may_go = film_range(panel.risk.removed_um), film_range(panel.risk.removable_um)
        lines = [
            f"Budget of {panel.name}, in 90 of 100 cases: {would_go} would go,",
            f"{may_go} may; rule by rule, by the best estimate of the clear:",
        ]
    else:
        may_go = film(max(0.0, panel.removable_um))
        lines = [f"Budget of {panel.name}: {film(panel.removed_um)} would go, about {may_go} may"]
    lines += [f"  {rule_state(rule):<9} {film(rule.removable_um):>20} by: {rule_words(rule)}" for rule in panel.budget]
    return "\n".join(lines)


def outcome(prediction):
    discs, minutes = number_range(prediction.discs_spread), number_range(prediction.minutes_spread)
    work = (
        f"All panels: {counted(discs, 'disc')}, {minutes} min of machine time (90 of 100 cases), "
        f"about {prediction.labour.total_minutes:.0f} min of work"
    )
    verdict = f"Verdict: {prediction.verdict.upper()} ({ANSWERS[prediction.verdict]})"
    rests_on = textwrap.fill(f"Rests on {knowledge_words(prediction.knowledge)}", WIDTH)
    return bullets(f"{work}\n{rests_on}\n{verdict}", prediction.reasons)


def bullets(title, sentences):
    """A list under a title; sentences: statements, or words."""
    if not sentences:
        return ""
    wrap = textwrap.TextWrapper(WIDTH, initial_indent="  - ", subsequent_indent="    ")
    return "\n".join([title, *[wrap.fill(str(sentence)) for sentence in sentences]])
