"""What an answer started from, in words: the same rows on every page, in the symbols of print."""

from . import Job, Sequence, Step, budget_of, titles_of, viewer_along
from .wording import UM_PER_MIL, counted, film

PRINT = "unicode"
HABITS = {"none": "the disc kept on the flat", "straddle": "half of the disc over the edge"}  # EdgeWork.overhang


def input_rows(job: Job | None, sequences: list[Sequence]) -> list[tuple[str, str]]:
    """Rows (what, in words) of a job and of the sequences that were worked; none without a job."""
    if job is None:
        return []
    gauge, limits = job.coating.gauge, job.scratch_limits
    patch = f"patch of {job.patch.rows} × {job.patch.cols} pixels of {job.patch.pixel_mm:g} mm"
    rows = [(panel.name, panel_words(panel)) for panel in job.panel]
    rows += [
        ("gauge", f"one reading uncertain by {gauge.uncertainty_um:g} µm, its scale by {gauge.gain_percent:g} %"),
        ("paint", paint_words(job.coating)),
        ("texture", f"{texture_words(job.texture)}; {patch}"),
        ("target", target_words(job.target)),
        ("budget", budget_words(budget_of(job))),
        ("visible", f"grooves deeper than {limits.visible_depth_um:g} µm; {limits.marks_per_cm2:g} per cm² may stay"),
        ("edges", f"worked with {HABITS[job.edge.overhang]}, rounded by {job.edge.radius_mm:g} mm"),
    ]
    for sequence in sequences:
        names = titles_of(sequence.step)
        prefix = f"{sequence.name}: " if len(sequences) > 1 else ""
        rows += [
            (f"{prefix}{name}", step_words(step, number == 0))
            for number, (name, step) in enumerate(zip(names, sequence.step))
        ]
    return rows


def panel_words(panel):
    crown = "flat"
    if panel.crown_radius_m:
        thickness = f" of {panel.sheet.thickness_mm:g} mm" if panel.sheet.thickness_mm else ""
        crown = f"crown of {panel.crown_radius_m:g} m, {panel.sheet.material}{thickness}"
    edges = f", {panel.edge_length_m:g} m of edges" if panel.edge_length_m else ""
    total_um = [total_um_of(reading) for reading in panel.readings if reading.over != "filler"]
    filler_um = [total_um_of(reading) for reading in panel.readings if reading.over == "filler"]
    listed, over_filler = (", ".join(f"{um:.0f}" for um in read) for read in (total_um, filler_um))
    read = f"{counted(len(total_um), 'reading')} of the total film: {listed} µm, thinnest {film(min(total_um), PRINT)}"
    left_out = f"; over filler, left out: {over_filler} µm" if filler_um else ""
    return f"{panel.area_m2:g} m², {crown}{edges}; {read}{left_out}"


def total_um_of(reading):
    """A reading in micrometres, whichever unit it came in."""
    return reading.total_um if reading.total_um is not None else reading.total_mil * UM_PER_MIL


def paint_words(paint):
    clear = "clear not known"
    if paint.clear_um:
        sure = f", uncertain by {film(paint.clear_uncertainty_um, PRINT)}" if paint.clear_uncertainty_um else ""
        clear = f"clear stated as {film(paint.clear_um, PRINT)}{sure}"
    return f"{paint.kind}, {clear}, hardness {paint.hardness_mpa:g} MPa, refractive index {paint.refractive_index:g}"


def texture_words(source):
    """Where the starting texture comes from."""
    factor = f", heights times {source.scale:.3g} by test spots" if source.scale != 1 else ""
    return origin_words(source) + factor


def origin_words(source):
    if source.bands:
        return f"drawn at random: {wave_words(source.bands)}"
    if source.file:
        form = "its tilt and form taken out" if source.form == "removed" else "as it is"
        return f"measured, from {source.file}, {form}"
    if source.seen:
        seen = source.seen
        return f"judged by eye: waves about {seen.wavelength_mm:g} mm long, {letter_words(seen)}"
    wet = source.wet_film.film
    return (
        f"a wet film of {wet.thickness_um:g} µm with {100 * wet.solids_share:g} % solids that flowed out and dried "
        f"over a base drawn at random: {wave_words(source.wet_film.base)}"
    )


def wave_words(bands):
    return ", ".join(f"{band.rms_um:g} µm rms about {band.wavelength_mm:g} mm" for band in bands)


def letter_words(read):
    """Letters that are read, and from where: of a SeenTexture or a Target."""
    eye = viewer_along(read.distance_m, read.eye_to_paint_m)
    return (
        f"letters of {read.letter_mm:g} mm readable, {eye.viewer_m:.3g} m from the eye to the paint and "
        f"{eye.scene_m:.3g} m from the paint to them"
    )


def target_words(target):
    """What is to be reached."""
    band = f", {target.band_mm[0]:g} to {target.band_mm[1]:g} mm" if target.band_mm else ""
    parts = [
        target.rms_um is not None and f"at most {target.rms_um:g} µm rms of texture{band}",
        target.preset and f"{target.preset} levelling",
        target.image_clarity_percent is not None and f"image clarity of {target.image_clarity_percent:g} % or more",
        target.letter_mm is not None and letter_words(target),
        target.defect and defect_words(target.defect),
    ]
    return ", ".join(part for part in parts if part)


def defect_words(defect):
    """The mark that is to be gone, and where it is worked."""
    if defect.depth_um is not None:
        size = f"a mark {defect.depth_um:g} µm deep"
    else:
        size = f"a mark {defect.height_um:g} µm high, level within {defect.level_within_um:g} µm"
    sure = "known to a quarter (estimate)" if defect.sd_um is None else f"uncertain by {defect.sd_um:g} µm"
    feather = "the disc's radius" if defect.feather_mm is None else f"{defect.feather_mm:g} mm"
    parts = [
        f"{size}, {sure}, is gone",
        defect.width_mm is not None and f"it is {defect.width_mm:g} mm across",
        defect.length_mm is not None and f"{defect.length_mm:g} mm long",
        defect.x_mm is not None and f"at x {defect.x_mm:g} mm, y {defect.y_mm:g} mm",
        defect.patch_mm is not None and f"worked on a patch of {defect.patch_mm:g} mm that fades over {feather}",
    ]
    return ", ".join(part for part in parts if part)


def budget_words(budget):
    parts = [
        budget.clear_left_least_um is not None and f"at least {film(budget.clear_left_least_um, PRINT)} of clear stays",
        budget.clear_removed_most_um is not None and f"at most {film(budget.clear_removed_most_um, PRINT)} of it goes",
        budget.clear_removed_most_share is not None and share_words(budget.clear_removed_most_share),
        f"{film(budget.reserve_um, PRINT)} kept for later corrections",
    ]
    return ", ".join(part for part in parts if part)


def share_words(share):
    return "all of it may go" if share == 1 else f"at most {100 * share:.0f} % of it goes"


def step_words(step: Step, is_first: bool = False) -> str:
    """Tools, motion and end of a step; is_first: of its sequence."""
    motion = step.motion
    backing = step.backing.name or "unnamed, as the job states it"
    factor = f" (stiffness times {step.backing.stiffness_factor:.3g})" if step.backing.stiffness_factor != 1 else ""
    drive = f"{motion.orbit_mm:g} mm orbit" if motion.orbit_mm else "rotary"
    return (
        f"{step.abrasive.name}, {step.wetness}; backing: {backing}{factor}; motion: "
        f"{motion.disc_diameter_mm:g} mm disc, {drive}, {motion.speed_rpm:g} per min, {motion.force_n:g} N, "
        f"{motion.feed_mm_per_s:g} mm/s along lanes {motion.step_over_mm:g} mm apart; "
        f"{stop_words(step, PRINT, is_first)}; at most {counted(step.passes, 'pass')}"
    )


def stop_words(step: Step, symbols: str = "ascii", is_first: bool = False) -> str:
    """When a step ends: at the first look at which one of these is met, or all; is_first: of a job's sequence."""
    stop, um = step.stop, "um" if symbols == "ascii" else "µm"
    band = f" from {stop.band_mm[0]:g} to {stop.band_mm[1]:g} mm" if stop.band_mm else ""
    ends = [
        stop.touched_share is not None and f"{100 * stop.touched_share:g} % are touched",
        stop.rms_um is not None and f"at most {stop.rms_um:.3g} {um} rms of texture{band} is left",
        stop.rms_share is not None and f"at most {100 * stop.rms_share:g} % of the texture before is left",
        stop.removed_um is not None and f"{stop.removed_um:g} {um} of clear are removed",
        stop.clear_owed_um is not None and owed_words(stop.clear_owed_um, um),
        stop.defect_um is not None and f"the defect is gone, by {stop.defect_um:.3g} {um} as best estimate",
    ]
    look = "each pass" if step.look_every_passes == 1 else f"every {step.look_every_passes} passes"
    if not any(ends):
        is_disc = step.abrasive.carrier != "compound"
        return f"look {look} until the target is met" if is_first and is_disc else f"all {step.passes} passes are made"
    joined = " and " if stop.when == "all" else " or "
    return f"look {look} until {joined.join(end for end in ends if end)}"


def owed_words(clear_owed_um, um):
    if clear_owed_um == 0:
        return "no scratch of before is seen"
    return f"the scratches of before ask for {clear_owed_um:g} {um} or less"
