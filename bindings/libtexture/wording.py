"""Figures and rules in words, the same in the table and in the report. symbols: how units are written, "ascii" (um) or
"unicode" (µm)."""

from math import ceil

from ._core import _chance_text, _range_um_and_mil, _um_and_mil, _um_per_mil

UM_PER_MIL = _um_per_mil

RULES = {
    "clear_itself": "all of the clear",
    "clear_left": "at least {limit} of clear stays",
    "clear_removed": "at most {limit} of clear goes",
    "clear_share": "at most {share:.0f} % of the clear goes, {limit}",
}

BASES = {
    "physics": "what there is",
    "published": "published rule",
    "practice": "common practice",
    "own": "this job's rule",
    "estimate": "estimate",
}

ANSWERS = {
    "nothing to do": "the target is met as it is",
    "go": "the work is unlikely to break a rule",
    "go with care": "it may go wrong: settle what the reasons name first",
    "do not sand": "it is likely to break a rule, or to miss its target",
}

KNOWLEDGE = {  # what a prediction's figures rest on, from the least to the most
    "estimates": "how thick the clear is and how fast the tools cut are both assumed",
    "own readings": "of the film or the clear; how fast the tools cut is an estimate",
    "own test spot": "a tool of this sequence was tried on this paint",
}

ANSWERS_AFTER_SPOT = {**ANSWERS, "go with care": "it may still go wrong"}


def knowledge_words(knowledge, symbols="ascii"):
    """What figures rest on: '[##-] own readings: this paint was read; ...'."""
    return f"{knowledge_mark(knowledge, symbols)} {knowledge}: {KNOWLEDGE[knowledge]}"


def knowledge_mark(knowledge, symbols="ascii"):
    """A square for each level, filled up to this one: '[##-]', or '■■□'."""
    filled = list(KNOWLEDGE).index(knowledge) + 1
    empty = len(KNOWLEDGE) - filled
    return f"[{filled * '#'}{empty * '-'}]" if symbols == "ascii" else filled * "■" + empty * "□"


def mil(um, digits=2):
    """Micrometres as mil, a number without its unit."""
    return f"{um / UM_PER_MIL:.{digits}f}"


def film(um, symbols="ascii"):
    """A thickness in both units: '7.8 um (0.31 mil)'."""
    return _um_and_mil(um, symbols)


def film_pm(um, sd_um, symbols="ascii"):
    """A thickness with its standard deviation, in both units."""
    unit, pm = ("um", "+/-") if symbols == "ascii" else ("µm", "±")
    return f"{um:.1f} {pm} {sd_um:.1f} {unit} ({mil(um)} {pm} {mil(sd_um)} mil)"


def film_range(spread, symbols="ascii"):
    """The thickness that 90 of 100 cases have, in both units: '5.9 to 11.4 um (0.23 to 0.45 mil)'."""
    return _range_um_and_mil(spread.p05, spread.p95, symbols)


def letter(height_mm):
    """Height of the smallest letter that is read, in whole mm without their unit, or 'none'."""
    return "none" if height_mm is None else f"{height_mm:.0f}"


def number_range(spread):
    """What 90 of 100 cases have, in whole numbers: '3 to 4', or '3'."""
    low, high = f"{spread.p05:.0f}", f"{spread.p95:.0f}"
    return low if low == high else f"{low} to {high}"


def counted(number, word):
    """So many of something: '1 disc', '2 discs', '2 passes'; number: or a range, as text."""
    ending = "" if str(number) == "1" else "es" if word.endswith("s") else "s"
    return f"{number} {word}{ending}"


def chance(probability, samples):
    """A probability as people count: '38 of 100 cases', '4 of 1000 cases', 'none of 4000 cases'."""
    return _chance_text(probability, samples)


def rule_words(rule, symbols="ascii"):
    """A budget rule: what it asks, where it comes from."""
    share = 100 * (rule.limit_share or 0)
    return f"{RULES[rule.limit].format(limit=film(rule.limit_um, symbols), share=share)} ({BASES[rule.basis]})"


def rule_state(rule):
    """Whether a budget rule counts: 'binds', 'counts' or 'not asked'."""
    if not rule.is_on:
        return "not asked"
    return "binds" if rule.is_binding else "counts"


def variance_words(shares):
    """What makes the clear left uncertain, the largest part first."""
    parts = {
        "how much of the film is clear": shares.clear_share,
        "the film between the readings": shares.map,
        "the gauge": shares.gauge,
        "what the work removes": shares.removal,
    }
    listed = sorted(parts.items(), key=lambda part: -part[1])
    return ", ".join(f"{name} {100 * share:.0f} %" for name, share in listed)


def labours(prediction):
    """A person's time by panel, and over all where there are several: (name, minutes)."""
    named = [(panel.name, panel.labour) for panel in prediction.panels]
    return [*named, ("all panels", prediction.labour)] if len(named) > 1 else named


def disc_words(life):
    """Discs of a step, and when to change them."""
    discs = counted(life.discs, "disc") if life.discs else "a pad, not counted"
    if life.change_after_minutes is None:
        return f"{life.step}: {discs}; it keeps its cut"
    verb = "change" if life.discs else "clean"
    return f"{life.step}: {discs}; {verb} it after {life.change_after_minutes:.0f} min of sanding, sooner if it clogs"


def margin_words(margin_mm):
    """A margin along an edge, rounded up."""
    if margin_mm is None:
        return "no margin helps, the flat itself does not keep the budget"
    if margin_mm == 0:  # practice: common practice, docs/physics.md, edges and body lines
        return "the model asks for no margin, practice leaves 10 to 15 mm"
    return f"leave {ceil(margin_mm)} mm unsanded"


def edge_words(edge, habit="", symbols="ascii"):
    """What a sequence does along edges; habit: how they are worked, of inputs.HABITS, where it is known."""
    worked = f", worked with {habit}" if habit else ""
    best, sure = margin_words(edge.margin_mm), margin_words(edge.sure_margin_mm)
    return (
        f"edges{worked}: by best estimate, {best}; to be {100 * edge.confidence:.0f} % sure, {sure}. Leave the "
        f"rounding itself. Clear at the edge {film(edge.clear_at_edge_um, symbols)}, at most "
        f"{film(edge.peak_removal_um, symbols)} goes there"
    )


def band_words(edges_mm):
    """Wavelength bands: ['0.5-1', '1-2', ...]."""
    return [f"{low:g}-{high:g}" for low, high in zip(edges_mm, edges_mm[1:])]


def step_title(row, number):
    """A step's name, or its place where it has none."""
    return row.name or f"step {number}"
