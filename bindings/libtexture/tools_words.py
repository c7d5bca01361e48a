"""The word tools: the catalogue's abrasives, backings and motions, with what each is for."""

from pathlib import Path

from . import Catalogue
from .table import bullets

# A wave counts as levelled where 10 um of clear or less take 63 % of its height, as in plot.backing_stiffness().
PRESSURE_KPA, CLEAR_PER_E_FOLD_UM = 1.5, 10
WAVES_MM = [0.3 * 100 ** (number / 200) for number in range(201)]  # as that draws
CARRIERS = {"film_disc": "film disc", "foam_disc": "foam-backed disc", "compound": "compound or polish"}


def add_tools(verbs):
    summary = "the tools that a job may name, with what each is for"
    words = verbs.add_parser("tools", help=summary, description=f"Lists {summary}.")
    words.add_argument("words", metavar="WORD", nargs="*", help="lists only names that hold one of these, 3000 say")
    words.add_argument("--catalogue", metavar="FILE.toml", type=Path, help="a catalogue file of your own, added")
    words.set_defaults(run=run_tools)


def run_tools(options):
    catalogue = Catalogue.shipped()
    if options.catalogue:
        catalogue = catalogue.extended(options.catalogue)
    lists = [
        ("Abrasives", catalogue.abrasives, abrasive_use),
        ("Backings", catalogue.backings, backing_use),
        ("Motions", catalogue.motions, motion_use),
    ]
    parts = [bullets(title, tool_lines(tools, use, options.words)) for title, tools, use in lists]
    shown = [part for part in parts if part]
    if not shown:
        raise ValueError(f"no tool's name holds {' or '.join(options.words)}; libtexture tools lists all")
    print("\n\n".join(shown))


def tool_lines(tools, use, words):
    wanted = [word.lower() for word in words]
    return [
        f"{name}: {use(tool)}"
        for name, tool in tools.items()
        if not wanted or any(word in name.lower() for word in wanted)
    ]


def abrasive_use(abrasive):
    wetness = " or ".join(abrasive.made_for)
    return f"{CARRIERS.get(abrasive.carrier, abrasive.carrier)}, grain {abrasive.grit.median_um:.3g} um, used {wetness}"


def backing_use(backing):
    if backing.support == "rigid":
        return "rigid: cuts the highest points alone"
    working = backing.at_working_pressure(pressure_kpa=PRESSURE_KPA)
    needed_kpa_per_um = PRESSURE_KPA / CLEAR_PER_E_FOLD_UM
    levelled_mm = [wave for wave in WAVES_MM if working.stiffness_kpa_per_um(wave) >= needed_kpa_per_um]
    if not levelled_mm:
        return "follows all waves: for refining and polishing"
    if levelled_mm[-1] == WAVES_MM[-1]:
        return f"levels waves of {WAVES_MM[-1]:.2g} mm and longer"
    return f"levels waves of up to {levelled_mm[-1]:.2g} mm, follows longer ones"


def motion_use(motion):
    drive = f"orbit of {motion.orbit_mm:g} mm" if motion.orbit_mm else "rotary"
    return f"disc of {motion.disc_diameter_mm:g} mm, {drive}, {motion.speed_rpm:g} per min, {motion.force_n:g} N"
