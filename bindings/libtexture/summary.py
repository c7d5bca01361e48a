"""A prediction on one screen: the verdict and its reason first, then what the work costs; at most 20 lines."""

import textwrap
from math import ceil

from . import budget_of, must_stay_um
from .defect_words import way_lines
from .table import WIDTH
from .wording import chance, counted, film, knowledge_words, number_range, step_title

LINES = 20  # one screen
PRACTICE_MARGIN_MM = 15  # 10 to 15 mm along edges: common practice, docs/physics.md

REASONS = {  # by the kind of a reason, the one that decides first; {chance}: of its own probability
    "target_mostly_missed": "The target is missed in {chance}: the clear would be spent for nothing.",
    "clear_struck_through": "The clear is struck through somewhere in {chance}.",
    "too_little_left": "Too little clear stays after the work in {chance}.",
    "too_much_removed": "More clear goes than may in {chance}.",
    "clear_short_before": "Too little clear is there before any work in {chance}.",
    "target_missed": "The target is missed in {chance}.",
    "target_met_before": "The target is met before any work in {chance}.",
    "budget_kept": "The work breaks a rule of the budget in {chance}.",
}

PROBABILITIES = {
    "target_mostly_missed": "target_missed_probability",
    "clear_struck_through": "strike_through_probability",
    "clear_short_before": "short_before_probability",
    "target_missed": "target_missed_probability",
    "target_met_before": "target_met_before_probability",
}

NEXT = {  # by the kind of advice among the reasons
    "clear_share_unsure": "learn the clear's thickness (records, ultrasonic)",
    "film_between_unsure": "read the film at more places",
    "gauge_unsure": "read each place several times, or with a better gauge",
}
TEST_SPOT = "a test spot"


def summary(prediction, job):
    """The answer in at most 20 lines of at most 100 columns."""
    panels = prediction.panels
    head = [heading(prediction, job), *first_line(prediction.note), *reason_lines(prediction)]
    head += wrapped(f"Rests on {knowledge_words(prediction.knowledge)}.")
    figures = panel_figures(panels[0], job) if len(panels) == 1 else panel_rows(prediction)
    if len(panels) == 1 and panels[0].defect:
        figures += way_lines(panels[0])
    tail = [*edge_lines(panels), *wrapped("Do first: " + next_thing(prediction, job))]
    tail += ["Clear does not return; dust, solvents harm (--details). Local codes and licensed practice prevail."]
    room = LINES - len(head) - len(figures) - len(tail)
    steps = step_rows(panels[0], step_list(prediction, job), room) if len(panels) == 1 and room > 2 else []
    return "\n".join([*head, *figures, *steps, *tail]) + "\n"


def heading(prediction, job):
    names = ", ".join(f"{panel.name} {panel.area_m2:g} m2" for panel in prediction.panels)
    others = len(job.sequence) - 1
    more = f" ({counted(others, 'other sequence')}: libtexture compare)" if others else ""
    line = f'{prediction.verdict.upper()}   {names}, by "{prediction.sequence}"{more}'
    return textwrap.shorten(line, WIDTH, placeholder=" ...") if len(line) > WIDTH else line


def first_line(note):
    return [textwrap.shorten(note.splitlines()[0], WIDTH, placeholder=" ...")] if note else []


def wrapped(text):
    return textwrap.wrap(text, WIDTH)


def reason_lines(prediction):
    """The reason that decides, by the words above."""
    reason = deciding(prediction)
    if not reason:
        return []
    return wrapped(reason_words(prediction, reason))


def reason_words(prediction, reason):
    named = f"{reason.panel}: " if len(prediction.panels) > 1 else ""
    return named + REASONS[reason.kind].format(chance=chance_of(reason) + before_words(reason))


def deciding(prediction):
    return min((one for one in prediction.reasons if one.kind in REASONS), key=rank, default=None)


def answer(prediction):
    """The verdict as a sentence or two, for a page."""
    reason = deciding(prediction)
    panels = prediction.panels
    if len(panels) > 1 or not panels[0].risk.samples:
        return reason_words(prediction, reason) if reason else ""
    risk = panels[0].risk
    cost = f"{risk.removed_um.p50:.1f} µm of clear ({risk.removed_um.p05:.1f} to {risk.removed_um.p95:.1f})"
    work = "Taking the defect out of" if panels[0].defect else "Levelling"
    spent = f"{work} the {panels[0].name} by “{prediction.sequence}” will probably cost {cost}."
    return " ".join([spent, *([reason_words(prediction, reason)] if reason else [])])


def rank(reason):
    """Where a reason stands; a shortage before any work decides only where it is likelier than not."""
    is_likely = reason.figures.get("short_before_probability", 1) >= 0.5
    return list(REASONS).index(reason.kind) + (0 if is_likely else len(REASONS))


def chance_of(reason):
    """The chance of a reason; of a budget that may be short before any work, in all cases."""
    figures = reason.figures
    if "budget_exceeded_probability" in figures:
        return chance(figures["budget_exceeded_probability"], int(figures["worlds"]))
    return chance(figures[PROBABILITIES.get(reason.kind, "broken_by_work_probability")], int(figures["samples"]))


def before_words(reason):
    """In how many of these cases a rule is broken before any work."""
    figures = reason.figures
    if "kept_worlds" not in figures:
        return ""
    before = chance(1 - figures["kept_worlds"] / figures["worlds"], int(figures["worlds"]))
    return f" ({before} before any work)"


# ---- One panel

FIGURE = "{:<26}{:>8}   {:<18}{}"


def panel_figures(panel, job):
    """The figures of one panel: likely, range, limit."""
    risk = panel.risk
    lines = [FIGURE.format("", "likely", "90 of 100 cases", "limit")]
    lines.append(figure("clear it costs, um", risk.removed_um, 1, f"about {risk.removable_um.p50:.1f} may go"))
    lines.append(figure("thinnest clear left, um", risk.clear_left_um, 1, must_stay(job)))
    lines.append(figure("texture left, um rms", risk.rms_um, 2, f"{panel.start.rms_um:.2f} now{wanted(job)}"))
    lines.append(figure("machine time, min", risk.minutes, 0, f"about {panel.labour.total_minutes:.0f} of work in all"))
    if not panel.defect:  # whose ways need the line
        lines.append(figure("discs", risk.discs, 0, ""))
    lines.append(
        f"Where it goes: about {risk.levelling_um.p50:.1f} um levels, {risk.overshoot_um.p50:.1f} goes before the next "
        f"look, {risk.debt_um.p50:.1f} takes out scratches."
    )
    return [line.rstrip() for line in lines]


def figure(name, spread, decimals, limit):
    likely, low, high = (f"{value:.{decimals}f}" for value in (spread.p50, spread.p05, spread.p95))
    return FIGURE.format(name, likely, low if low == high else f"{low} to {high}", limit)


def must_stay(job):
    """What the budget keeps, its reserve with it."""
    kept_um = must_stay_um(budget_of(job))
    return f"{kept_um:.1f} must stay" if kept_um > 0 else ""


def wanted(job):
    return f", {job.target.rms_um:g} wanted" if job.target.rms_um else ""


def step_list(prediction, job):
    return next(one.step for one in job.sequence if one.name == prediction.sequence)


STEP = "{:<18}{:<26}{:>8}{:>12}{:>14}"


def step_rows(panel, steps, room):
    """A row a step under a heading, as many as there is room for."""
    rows = [
        STEP.format(
            step_title(row, number)[:17],
            step.abrasive.name[:25],
            row.passes,
            f"{row.removed_um:.2f}",
            f"{row.gloss_20_gu:.0f}",
        )
        for number, (row, step) in enumerate(zip(panel.steps, steps), 1)
    ]
    head = STEP.format("step", "disc or pad", "passes", "clear, um", "gloss after")
    if len(rows) + 1 > room:
        rows = [*rows[: room - 2], f"and {len(rows) - room + 2} more (--details)"]
    return [head, *rows]


# ---- Several panels

PANEL = "{:<22}{:>16}{:>22}{:>16}{:>10}"


def panel_rows(prediction):
    """A row a panel, and the whole."""
    lines = [PANEL.format("90 of 100 cases", "clear it costs", "thinnest clear left", "machine time", "discs")]
    for panel in prediction.panels[: LINES // 2]:
        risk = panel.risk
        cells = [f"{spread.p05:.1f} to {spread.p95:.1f} um" for spread in (risk.removed_um, risk.clear_left_um)]
        lines.append(
            PANEL.format(panel.name[:21], *cells, f"{number_range(risk.minutes)} min", number_range(risk.discs))
        )
    whole = [f"{number_range(prediction.minutes_spread)} min", number_range(prediction.discs_spread)]
    lines.append(PANEL.format("all panels", "", "", *whole))
    return lines


# ---- Edges, and what comes next


def edge_lines(panels):
    """What to leave along edges: never less than practice does."""
    margins = [panel.edge.sure_margin_mm for panel in panels if panel.edge]
    if not margins:
        return []
    if None in margins:
        return ["Edges: leave 10 to 15 mm, by hand only; even so the budget may not be kept along them."]
    if max(margins) > PRACTICE_MARGIN_MM:
        return [f"Edges: leave {ceil(max(margins))} mm unsanded, and work them by hand."]
    return ["Edges: leave 10 to 15 mm unsanded, and work them by hand."]


def next_thing(prediction, job=None):
    """What to do first, or instead; with its job it sees whether the first step runs out of passes."""
    if prediction.verdict == "nothing to do":
        return "nothing; keep the clear"
    if prediction.verdict == "do not sand" and all(panel.defect for panel in prediction.panels):
        return "leave the defect, or try another first step (libtexture recommend)"
    if is_missed(prediction):
        is_short = job is not None and is_out_of_passes(prediction, job)
        more = "allow the first step more passes" if is_short else "try another first step"
        return f"ask for less of the texture to go, or {more} (libtexture recommend)"
    odd = [reason for reason in prediction.reasons if reason.kind == "odd_reading"]
    if odd:
        reading = film(odd[0].figures["reading_um"])
        return f"take the reading of {reading} again; over filler, mark it so (over = 'filler')"
    named = [NEXT[reason.kind] for reason in prediction.reasons if reason.kind in NEXT]
    return ", then ".join([*named[:1], TEST_SPOT]) + " (libtexture calibrate)"


def is_missed(prediction):
    """Whether the verdict is due to a target that is mostly missed."""
    reason = deciding(prediction)
    return reason is not None and reason.kind == "target_mostly_missed"


def is_out_of_passes(prediction, job):
    """Whether the first step, which levels, uses all its passes on a panel, by best estimates."""
    most = step_list(prediction, job)[0].passes
    return any(panel.steps[0].passes >= most for panel in prediction.panels)
