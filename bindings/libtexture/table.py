"""A prediction as text, at most 100 columns wide."""

import textwrap

from .wording import (
    ANSWERS,
    band_words,
    chance,
    disc_words,
    edge_words,
    film,
    film_pm,
    film_range,
    labours,
    mil,
    number_range,
    rule_state,
    rule_words,
    step_title,
)

WIDTH = 100
NAME_WIDTH = 18


def table(prediction):
    """The whole prediction as text."""
    parts = []
    for panel in prediction.panels:
        parts += [
            heading(panel, prediction),
            clear_table(panel),
            texture_table(panel, prediction.band_edges_mm),
            sight_table(panel),
            risk_table(panel),
        ]
    parts.append(labour_table(prediction))
    parts += [discs_and_edges(panel) for panel in prediction.panels]
    parts.append(bullets("Before the first pass", prediction.checklist))
    parts.append(bullets("Cautions by step", [f"{said.step}: {' '.join(said.cautions)}" for said in prediction.step_cautions]))
    parts.append(bullets("Cautions for the job", prediction.cautions))
    parts.append(bullets("Warnings", prediction.warnings))
    parts += [budget(panel) for panel in prediction.panels]
    parts.append(outcome(prediction))
    return "\n\n".join(filter(None, parts)) + "\n"


def heading(panel, prediction):
    title = f"{panel.name}, {panel.area_m2:g} m2, by {prediction.sequence}"
    clear = film_pm(panel.clear_um, panel.clear_sd_um)
    return f"{title}\n{'=' * len(title)}\nthinnest reading {film(panel.total_film_least_um)}, clear there {clear}"


def clear_table(panel):
    columns = [  # group, heading, unit, width
        ("", "passes", "", 7),
        ("removed", "mean", "um", 8),
        ("", "95th", "um", 7),
        ("", "max", "um", 7),
        ("", "mean", "mil", 7),
        ("left", "mean", "um", 8),
        ("", "least", "um", 7),
        ("", "least", "mil", 7),
        ("touched", "share", "%", 9),
        ("", "discs", "", 7),
        ("", "time", "min", 7),
    ]
    rows = [
        (
            step_title(row, number),
            f"{row.passes}",
            f"{row.removed_um:.2f}",
            f"{row.removed_p95_um:.2f}",
            f"{row.removed_max_um:.2f}",
            mil(row.removed_um, 3),
            *clear_left(row.clear_left_mean_um, row.clear_left_least_um),
            f"{100 * row.touched_share:.1f}",
            f"{row.discs}",
            f"{row.minutes:.1f}",
        )
        for number, row in enumerate(panel.steps, 1)
    ]
    total = (
        "all steps",
        f"{sum(row.passes for row in panel.steps)}",
        f"{panel.removed_um:.2f}",
        "",
        f"{panel.removed_max_um:.2f}",
        mil(panel.removed_um, 3),
        *clear_left(panel.clear_left_mean_um, panel.clear_left_least_um),
        "",
        f"{panel.discs}",
        f"{panel.minutes:.1f}",
    )
    return ruled("Best estimate", columns, [*rows, total])


def clear_left(mean_um, least_um):
    return f"{mean_um:.1f}", f"{least_um:.1f}", mil(least_um)


def texture_table(panel, edges_mm):
    bands = band_words(edges_mm)
    columns = [
        ("all", "rms", "um", 8),
        ("", "p-v", "um", 7),
        *[("rms by mm" if number == 0 else "", band, "um", 10 if number == 0 else 7) for number, band in enumerate(bands)],
        ("clear", "owed", "um", 9),
    ]
    rows = [
        (
            step_title(row, number) if number else "before",
            f"{row.rms_um:.3f}",
            f"{row.peak_to_valley_um:.2f}",
            *[f"{rms:.3f}" for rms in row.band_rms_um],
            f"{row.clear_owed_um:.2f}",
        )
        for number, row in enumerate([panel.start, *panel.steps])
    ]
    note = "p-v: peak to valley. Clear owed: what taking out the scratches still asks for."
    return ruled("Texture left", columns, rows) + "\n" + note


def risk_table(panel):
    """How sure it is: quantiles of what may happen, and chances of what may go wrong."""
    risk = panel.risk
    if not risk.samples:
        return ""
    rows = [  # name, unit, decimals, spread, whether mil are shown as well
        ("clear removed, mean", "um", 1, risk.removed_um, True),
        ("  until the texture was met", "um", 1, risk.levelling_um, False),
        ("  from then to the next look", "um", 1, risk.overshoot_um, False),
        ("  to take out scratches", "um", 1, risk.debt_um, False),
        (f"thinnest clear left on {panel.area_m2:g} m2", "um", 1, risk.clear_left_least_um, True),
        ("texture left, rms", "um", 3, risk.rms_um, False),
        ("touched by the first step", "%", 1, percent(risk.touched_share), False),
        ("least clear needed/spent", "%", 0, percent(risk.levelling_efficiency), False),
        ("discs", "", 0, risk.discs, False),
        ("machine time", "min", 0, risk.minutes, False),
    ]

    def line(name, unit, decimals, spread, has_mil):
        figures = "".join(f"{figure:>9.{decimals}f}" for figure in (spread.p05, spread.p50, spread.p95))
        in_mil = f"  ({mil(spread.p05)} to {mil(spread.p95)} mil)" if has_mil else ""
        return f"{name:<32}{unit:>4}{figures}{in_mil}".rstrip()

    title = f"{'How sure':<36}{'5 %':>9}{'50 %':>9}{'95 %':>9}"
    chances = [
        f"Struck through somewhere on {panel.area_m2:g} m2: {chance(risk.strike_through_probability, risk.samples)}; "
        f"budget exceeded: {chance(risk.budget_exceeded_probability, risk.samples)}; "
        f"target missed: {chance(risk.target_missed_probability, risk.samples)}.",
        f"From {risk.samples} possible worlds, read off {risk.node_solves} levelling runs.",
    ]
    wrapped = [textwrap.fill(sentence, WIDTH) for sentence in chances]
    return "\n".join([title, "-" * len(title), *[line(*row) for row in rows], *wrapped])


def percent(spread):
    return spread.replace(p05=100 * spread.p05, p50=100 * spread.p50, p95=100 * spread.p95)


def sight_table(panel):
    columns = [
        ("scratch", "rms", "nm", 9),
        ("", "deepest", "um", 9),
        ("visible", "marks", "1/cm2", 9),
        ("stray", "marks", "1/dm2", 7),
        ("gloss", "20 deg", "GU", 8),
        ("lamp", "stands", "out %", 8),
        ("clarity", ".5 mm", "%", 9),
        ("image", "wander", "arcmin", 8),
        ("letter", "read", "mm", 8),
    ]
    rows = [
        (
            step_title(row, number) if number else "before",
            f"{row.scratch_rms_nm:.1f}",
            f"{row.deepest_scratch_um:.2f}",
            f"{row.marks_per_cm2:,.0f}",
            f"{row.stray_marks_per_dm2:.2f}",
            f"{row.gloss_20_gu:.0f}",
            f"{100 * row.lamp_visibility:.0f}",
            f"{row.image_clarity_percent:.0f}",
            f"{row.image_wander_arcmin:.1f}",
            f"{row.smallest_letter_mm:.0f}",
        )
        for number, row in enumerate([panel.start, *panel.steps])
    ]
    note = "Deepest: one regular groove a dm2 is deeper. A lamp can be made out from about 5 %."
    return ruled("What is seen", columns, rows) + "\n" + note


def ruled(title, columns, rows, row_word="step", name_width=NAME_WIDTH):
    """A table: a title and three lines of heading over a rule; names on the left, figures on the right."""
    widths = [column[3] for column in columns]

    def line(cells):
        name = cells[0] if len(cells[0]) <= name_width else cells[0][: name_width - 1] + "~"
        return f"{name:<{name_width}}" + "".join(f"{cell:>{width}}" for cell, width in zip(cells[1:], widths))

    names = [title, row_word, ""]
    header = [line((names[level], *[column[level] for column in columns])).rstrip() for level in range(3)]
    return "\n".join([*header, "-" * (name_width + sum(widths)), *[line(row).rstrip() for row in rows]])


def labour_table(prediction):
    parts = ["sanding", "looking", "disc change", "edge", "masking", "cleaning", "total"]
    columns = [(*(["disc", "change"] if part == "disc change" else ["", part]), "min", 10) for part in parts]
    rows = [
        (name, *[f"{getattr(labour, part.replace(' ', '_') + '_minutes'):.1f}" for part in parts])
        for name, labour in labours(prediction)
    ]
    return ruled("A person's time", columns, rows, "panel")


def discs_and_edges(panel):
    """When discs are changed on a panel, and the margin to leave along its edges."""
    lines = [disc_words(life) for life in panel.disc_lives]
    if panel.edge:
        lines.append(edge_words(panel.edge))
    return bullets(f"Discs and edges of {panel.name}", lines)


def budget(panel):
    may_go = film(max(0.0, panel.removable_um))
    would_go = film_range(panel.risk.removed_um) if panel.risk.samples else film(panel.removed_um)
    lines = [f"Budget of {panel.name}: {would_go} would go, about {may_go} may"]
    lines += [
        f"  {rule_state(rule):<9} {film(rule.removable_um):>20} by: {rule_words(rule)}" for rule in panel.budget
    ]
    return "\n".join(lines)


def outcome(prediction):
    discs, minutes = number_range(prediction.discs_spread), number_range(prediction.minutes_spread)
    work = (
        f"All panels: {discs} discs, {minutes} min of machine time (90 of 100 cases), "
        f"about {prediction.labour.total_minutes:.0f} min of work"
    )
    verdict = f"Verdict: {prediction.verdict.upper()} ({ANSWERS[prediction.verdict]})"
    return bullets(f"{work}\n{verdict}", prediction.reasons)


def bullets(title, sentences):
    if not sentences:
        return ""
    wrap = textwrap.TextWrapper(WIDTH, initial_indent="  - ", subsequent_indent="    ")
    return "\n".join([title, *map(wrap.fill, sentences)])
