"""What it costs to be rid of a defect, way by way, in words: the same on the screen, in the tables and on the page."""

from .wording import chance

WAY = "{:<32}{:>19}{:>17}{:>15}{:>17}"
NAMES = {  # by the kind of a way
    "all over": "taken out all over",
    "patch": "taken out on the patch",
    "round": "made too shallow to be seen",
    "leave": "left as it is",
}
COLUMNS = ("clear there, {um}", "minutes", "gone in", "too little left")


def way_lines(panel):
    """A row a way under a heading, for text."""
    return [line.rstrip() for line in (WAY.format(*row) for row in way_rows(panel))]


def way_rows(panel, um="um"):
    """Cells of the heading, then of each way: its name, clear, minutes, chance that it is gone, and that too little
    clear stays."""
    answer = panel.defect
    size = answer.size_um
    head = f"defect of {size.p50:.1f} ({size.p05:.1f} to {size.p95:.1f}) {um}"
    rows = [(head, *[name.format(um=um) for name in COLUMNS])]
    for way in answer.ways:
        rows.append(
            (
                NAMES[way.way],
                ranged(way.clear_um, 1),
                ranged(way.minutes, 0),
                cases(way.hidden_probability if way.way == "round" else way.gone_probability, panel),
                cases(way.short_probability, panel),
            )
        )
    return rows


def ranged(spread, decimals):
    """The median with what 90 of 100 cases have."""
    likely, low, high = (f"{value:.{decimals}f}" for value in (spread.p50, spread.p05, spread.p95))
    return likely if low == high else f"{likely} ({low} to {high})"


def cases(probability, panel):
    """A chance for a narrow cell: '38 of 100', 'all', 'none'."""
    words = chance(probability, panel.risk.samples)
    return words.split(" of ")[0] if words.startswith("none") else words.removesuffix(" cases")
