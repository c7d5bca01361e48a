"""Levelling and sequences as Python sees them; what the numbers should be is tested in C++."""

import pickle
import signal
import sys
import threading
import time
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import pytest

import libtexture as lt
from conftest import EXAMPLES

BACKING = EXAMPLES["Backing"]()  # stiff enough to bridge the valleys: full contact would need no iterations
FIELD = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)], grid=lt.Grid(rows=32, cols=64, pixel_mm=0.4), seed=1
)
COATING = lt.Coating(coats=[lt.Coat(name="clear", thickness_um=45)])


def level(**options):
    return lt.level(FIELD, BACKING, **{"pressure_kpa": 1.5, "removal_um": 2.0, **options})


def simulate(**options):
    return lt.simulate(surface=FIELD, coating=COATING, steps=[EXAMPLES["Step"]()], **options)


def test_a_levelled_patch_has_lost_the_mean_removal():
    result = level(report_at_um=[0.5, 2.0])
    # Both are promises of level(): the mean of the pressure is exactly 1. Tolerance: rounding of a sum.
    assert result.removal_map_um.mean() == pytest.approx(2.0, rel=1e-9)
    np.testing.assert_allclose(result.surface.height_um, FIELD.height_um - result.removal_map_um, atol=1e-9)
    assert list(result.removed_um) == pytest.approx([0.5, 2.0])
    assert result.rms_um[0] > result.rms_um[1] == pytest.approx(result.surface.rms_um)


def test_maps_and_lists_of_a_result_are_views_that_keep_it_alive():
    result = level()
    for values in (result.removal_map_um, result.rms_um, result.surface.height_um):
        assert not values.flags.writeable and not values.flags.owndata
    assert np.shares_memory(result.removal_map_um, result.removal_map_um)
    removal, expected = result.removal_map_um, result.removal_map_um.copy()
    del result
    level()
    np.testing.assert_array_equal(removal, expected)


def test_results_survive_pickling():
    result, history = level(), simulate()
    again = pickle.loads(pickle.dumps(result))
    assert again.surface == result.surface and again.residual == result.residual
    np.testing.assert_array_equal(again.removal_map_um, result.removal_map_um)
    again = pickle.loads(pickle.dumps(history))
    assert again.passes == history.passes and again.surfaces == history.surfaces
    np.testing.assert_array_equal(
        again.scratches[0].populations[0].removal_um, history.scratches[0].populations[0].removal_um
    )


def test_a_history_has_a_row_a_pass_and_a_row_a_step():
    history = simulate()
    assert [row.passes for row in history.passes] == [1, 2]
    assert history.steps == [history.passes[-1]]
    assert history.surfaces[0].rms_um == pytest.approx(history.steps[0].rms_um)
    assert set(history.steps[0].to_dict()) > {"name", "passes", "removed_um", "clear_left_mean_um", "gloss_20_gu"}


def test_a_row_says_what_is_seen_in_the_surface_and_the_scratches_of_that_moment():
    limits = lt.ScratchLimits(visible_depth_um=0.2, marks_per_cm2=5)
    viewer = lt.Viewer(viewer_m=0.5, scene_m=4)
    history = simulate(scratch_limits=limits, viewer=viewer)
    row, surface, scratches = history.steps[0], history.surfaces[0], history.scratches[0]
    share = float(lt.specular_share_map(scratches, angle_deg=45).mean())
    assert row.lamp_visibility == pytest.approx(lt.lamp_visibility(share), rel=1e-12)
    assert row.image_wander_arcmin == lt.seen_wander_arcmin(surface, viewer)
    assert row.smallest_letter_mm == lt.seen_letter_mm(
        lt.seen_smear_arcmin(surface, viewer), viewer, row.lamp_visibility
    )
    # Scratches take the same share of the contrast of every comb.
    smooth = lt.image_clarity_by_comb_percent(surface)
    assert row.image_clarity_by_comb_percent[2] == row.image_clarity_percent
    kept = [seen / clear for seen, clear in zip(row.image_clarity_by_comb_percent, smooth) if clear > 0.1]
    assert kept == pytest.approx([kept[0]] * len(kept), rel=1e-12) and 0 < kept[0] < 1
    # What the row owes takes care of each population alone, by the caller's own limits; together they need a little
    # more.
    alone = lt.clear_owed_by_population_um(scratches, limits=limits)
    assert max(alone) <= row.clear_owed_um < max(alone) + 0.1
    assert row.clear_owed_um < simulate().steps[0].clear_owed_um
    for name in ("scratch_rms_nm", "deepest_scratch_um", "marks_per_cm2", "clear_owed_um", "stray_marks_per_dm2"):
        assert row.to_dict()[name] > 0, name


def test_no_letter_is_read_in_a_matt_surface():
    row = simulate().steps[0]  # P1500 film: a lamp is lost (common practice, no source)
    assert row.lamp_visibility < 0.05 and row.smallest_letter_mm is None
    assert "smallest_letter_mm" not in row.to_dict()
    assert lt.HistoryRow.from_dict(row.to_dict()) == row


def test_the_index_of_the_clear_sets_the_gloss_of_a_row():
    # Closed form: Fresnel against glass of 1.567 (ISO 2813); 92.667 GU at 20 degrees.
    assert simulate(refractive_index=1.54).start.gloss_20_gu == pytest.approx(92.667, abs=1e-3)


JOB = EXAMPLES["Job"]().replace(patch=lt.Grid(rows=32, cols=32, pixel_mm=0.5), uncertainty=lt.Uncertainty(samples=200))
STEP = EXAMPLES["Step"]()
TWO_WAYS = JOB.replace(
    sequence=[JOB.sequence[0], lt.Sequence(name="two steps", step=[STEP, STEP.replace(name="again")])]
)
FEW = {"passes_most": 2}  # leaves few first steps to recommend
SPOT = lt.TestSpot(passes=2, before_um=[262, 260], after_um=[256, 254], gloss_gone_passes=2, rms_left_um=0.3)
PLACES = [lt.Reading(x_mm=x_mm, y_mm=y_mm, total_um=200) for x_mm, y_mm in [(100, 100), (400, 100), (250, 300)]]
SHARED_WORK = {
    "synthesize": lambda: lt.synthesize(bands=[lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)], grid=FIELD.grid, seed=3),
    "surface_of": lambda: lt.surface_of(JOB).to_dict(),
    "level": lambda: level().to_dict(),
    "press": lambda: lt.press(FIELD, BACKING, pressure_kpa=1.5).to_dict(),
    "simulate": lambda: simulate().to_dict(),
    "predict": lambda: lt.predict(JOB).to_dict(),
    "compare": lambda: lt.compare(TWO_WAYS).to_dict(),
    "recommend": lambda: lt.recommend(JOB, **FEW).to_dict(),
    "judge_test_spot": lambda: lt.judge_test_spot(JOB, SPOT).to_dict(),
    "calibrate": lambda: lt.calibrate(JOB, SPOT).to_dict(),
    "edge_profile": lambda: edge().to_dict(),
    "film_picture": lambda: lt.film_picture(EXAMPLES["Panel"]().replace(readings=PLACES), JOB.coating).to_dict(),
    "band_rms_um": lambda: list(lt.band_rms_um(FIELD, edges_mm=[0.5, 1, 2, 4])),
    "slope": lambda: lt.slope(FIELD).tolist(),
    "image_clarity_percent": lambda: lt.image_clarity_percent(FIELD),
    "image_clarity_by_comb_percent": lambda: lt.image_clarity_by_comb_percent(FIELD),
    "specular_share_map": lambda: lt.specular_share_map(simulate().scratches[0]).tolist(),
    "render_reflection": lambda: lt.render_reflection(FIELD, rows=48, cols=32).tolist(),
}


@pytest.mark.parametrize("name", SHARED_WORK)
def test_threads_that_share_their_inputs_give_the_results_of_one_after_the_other(name):
    work = SHARED_WORK[name]
    expected = work()
    with ThreadPoolExecutor(4) as pool:
        assert list(pool.map(lambda _: work(), range(4))) == [expected] * 4  # to the last bit


HISTORY = simulate()
UNLOCKED_WORK = {**SHARED_WORK, "specular_share_map": lambda: lt.specular_share_map(HISTORY.scratches[0])}


@pytest.mark.parametrize("name", UNLOCKED_WORK)
def test_other_threads_of_python_run_on_while_it_works(name):
    turns, work_goes_on = [], True

    def take_turns():
        while work_goes_on:
            turns.append(None)
            time.sleep(0)  # hands the interpreter's lock back

    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000)  # nobody is made to hand it over: the work itself must
    other = threading.Thread(target=take_turns)
    other.start()
    try:
        for _ in range(1000):  # short work may end before the machine lets the other thread on
            before = len(turns)
            UNLOCKED_WORK[name]()
            if len(turns) > before:
                break
        else:
            pytest.fail("the work kept the lock")
    finally:
        work_goes_on = False
        sys.setswitchinterval(interval)
        other.join()


LONG_WORK = {
    "level": lambda **watch: level(amplitude_tolerance_um=1e-4, **watch),
    "press": lambda **watch: lt.press(FIELD, BACKING, pressure_kpa=1.5, **watch),
    "simulate": lambda **watch: simulate(**watch),
    "predict": lambda **watch: lt.predict(JOB, **watch),
    "compare": lambda **watch: lt.compare(TWO_WAYS, **watch),
    "recommend": lambda **watch: lt.recommend(JOB, **FEW, **watch),
    "judge_test_spot": lambda **watch: lt.judge_test_spot(JOB, SPOT, **watch),
    "calibrate": lambda **watch: lt.calibrate(JOB, SPOT, **watch),
    "what_moved_belief": lambda **watch: lt.what_moved_belief(JOB, SPOT, **watch),
    "edge_profile": lambda **watch: edge(**watch),
    "render_reflection": lambda **watch: lt.render_reflection(FIELD, rows=300, cols=300, **watch),
}


@pytest.mark.parametrize("name", LONG_WORK)
def test_the_bytes_do_not_depend_on_how_many_threads_long_work_may_use(name):
    one, three = (plain(LONG_WORK[name](threads=threads)) for threads in (1, 3))
    assert one == three
    with pytest.raises(ValueError, match=r"threads must be >= 0 \(0 = all the machine has\) \(got -1\)"):
        LONG_WORK[name](threads=-1)


def plain(result):
    return result.tolist() if isinstance(result, np.ndarray) else result.to_dict()


@pytest.mark.parametrize("name", LONG_WORK)
def test_progress_is_told_shares_that_never_fall_and_end_at_1(name):
    shares = []
    LONG_WORK[name](progress=shares.append)
    assert shares == sorted(shares)
    assert shares[0] >= 0 and shares[-1] == 1
    assert name == "press" or len(set(shares)) > 10  # a contact at rest has no clock


class Stopped(Exception):
    pass


@pytest.mark.parametrize("name", LONG_WORK)
def test_an_exception_of_any_report_stops_the_work_and_no_more_are_told(name):
    every_report = []
    LONG_WORK[name](progress=every_report.append)
    for part in range(6):
        last = max(1, len(every_report) * part // 5)  # the first and the very last too
        reports = []

        def stop(share, reports=reports, last=last):
            reports.append(share)
            if len(reports) == last:
                raise Stopped

        with pytest.raises(Stopped):
            LONG_WORK[name](progress=stop)
        assert len(reports) == last


class CtrlC(threading.Thread):
    """Sends a signal once some reports have come, and counts those that come before it."""

    def __init__(self, reports, after):
        super().__init__()
        self.reports, self.after, self.work_goes_on, self.seen = reports, after, True, None

    def run(self):
        while len(self.reports) < self.after and self.work_goes_on:
            time.sleep(0)  # hands the interpreter's lock back
        self.seen = len(self.reports)
        if self.work_goes_on:
            signal.pthread_kill(threading.main_thread().ident, signal.SIGINT)


@pytest.mark.parametrize("name", LONG_WORK)
def test_ctrl_c_stops_work_at_its_next_report(name):
    all_reports = []
    LONG_WORK[name](progress=all_reports.append)
    assert len(all_reports) > 3, "a test of stopping needs work that goes on"
    reports = []  # list.append runs no bytecode of Python, so that nothing but the work itself can see the signal
    previous = signal.signal(signal.SIGINT, signal.default_int_handler)
    ctrl_c = CtrlC(reports, 1)
    try:
        with pytest.raises(KeyboardInterrupt):
            ctrl_c.start()
            LONG_WORK[name](progress=reports.append)
            ctrl_c.work_goes_on = False
    finally:
        ctrl_c.work_goes_on = False
        ctrl_c.join()
        signal.signal(signal.SIGINT, previous)
    # A report comes with each solver iteration. One more may come between the count and the signal.
    assert len(reports) <= ctrl_c.seen + 1
    assert len(reports) < len(all_reports)


def test_unknown_and_missing_options_are_named():
    with pytest.raises(ValueError, match="^level: unknown field removal_mm; nearest known: removal_um$"):
        level(removal_mm=1)
    with pytest.raises(ValueError, match="^level: removal_um is missing$"):
        lt.level(FIELD, BACKING, pressure_kpa=1.5)


def test_a_solve_that_cannot_reach_its_tolerance_says_how_far_it_came():
    with pytest.raises(lt.NotConverged, match="did not converge") as caught:
        level(amplitude_tolerance_um=1e-14)
    assert caught.value.iterations > 0
    assert caught.value.residual > caught.value.tolerance > 0


def edge(**options):
    return lt.edge_profile(EXAMPLES["Backing"](), EXAMPLES["Motion"](), **{"removal_um": 4.0, "passes": 2, **options})


def test_an_edge_profile_has_arrays_by_distance_and_a_margin_where_clear_was_given():
    clear = lt.EdgeClear(clear_um=45)
    bare, result = edge(), edge(overhang="straddle", clear=clear)
    assert bare.margin_mm is None
    assert result.margin_mm == lt.unsanded_margin_mm(result, clear)
    assert result.distance_mm.shape == result.removal_um.shape
    assert result.removal_um.max() == result.peak_removal_um
    assert result.removal_um[-1] == pytest.approx(4.0, rel=0.01)  # the flat; tested closer in C++
    again = pickle.loads(pickle.dumps(result))
    np.testing.assert_array_equal(again.removal_um, result.removal_um)
    assert again.margin_mm == result.margin_mm


def test_an_edge_pressure_is_that_of_one_place_of_the_disc():
    pressure = lt.edge_pressure(EXAMPLES["Backing"](), EXAMPLES["Motion"](), centre_mm=400, removal_um=1)
    assert pressure.pressure_kpa == pytest.approx(EXAMPLES["Motion"]().pressure_kpa, rel=1e-5)
    assert pressure.line_load_n_per_mm == 0
    assert pickle.loads(pickle.dumps(pressure)).plate_slope == pressure.plate_slope


def test_edges_refuse_unknown_words_and_stop_when_progress_raises():
    with pytest.raises(ValueError, match="overhang"):
        edge(overhang="half")
    with pytest.raises(ValueError, match="EdgeOptions: removal_um"):
        edge(removal_um=-1)

    def stop(share_done):
        raise KeyError("stop")

    with pytest.raises(KeyError):
        edge(progress=stop)
