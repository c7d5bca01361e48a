"""One valid value of every value class, for the tests that hold for all of them; and what the tests do without."""

import inspect
import shutil

import numpy as np
import pytest

import libtexture as lt

WAVES = np.sin(2 * np.pi * (np.arange(32) + 0.5) / 32) * np.ones((4, 1))
CHROMIUM = shutil.which("chromium")


def pytest_terminal_summary(terminalreporter):
    if not CHROMIUM:
        terminalreporter.write_line("left out: test_report_in_browser.py needs Debian's package chromium")


def backing():
    return lt.Backing(
        skin=lt.Skin(modulus_gpa=4.5, thickness_um=75, poisson=0.38),
        layers=[lt.Layer(modulus_mpa=0.3, thickness_mm=10, poisson=0.1)],
    )


def abrasive():
    return lt.Abrasive(
        name="P1200 film",
        grit="P1200",
        wear_rate_mm3_per_n_m=0.1,
        worn_wear_rate_mm3_per_n_m=0.02,
        loading_um=20.0,
        made_for=("dry", "damp"),
        ranges={"loading_um": (10, 40)},
    )


def motion():
    return lt.Motion(disc_diameter_mm=150, orbit_mm=5, speed_rpm=10000, force_n=25, feed_mm_per_s=50, step_over_mm=75)


def panel():
    return lt.Panel(name="door", area_m2=0.9, readings=[lt.Reading(total_um=120)])


def texture():
    return lt.TextureSource(bands=[lt.TextureBand(wavelength_mm=2.2, rms_um=0.7)])


EXAMPLES = {
    "Grid": lambda: lt.Grid(rows=4, cols=32, pixel_mm=0.2),
    "HeightField": lambda: lt.HeightField(height_um=WAVES, pixel_mm=0.2),
    "TextureBand": lambda: lt.TextureBand(wavelength_mm=2.5, rms_um=1.0, lay_deg=30),
    "Coat": lambda: lt.Coat(name="clear", thickness_um=45, uncertainty_um=5),
    "Coating": lambda: lt.Coating(coats=[lt.Coat(name="clear", thickness_um=45)]),
    "WetFilm": lambda: lt.WetFilm(
        thickness_um=60, surface_tension_mn_per_m=30, viscosity_pa_s=0.2, viscosity_rise_s=20, solids_share=0.55
    ),
    "Viewer": lambda: lt.Viewer(viewer_m=0.8, scene_m=3),
    "Grit": lambda: lt.Grit("P2500"),
    "Abrasive": abrasive,
    "Skin": lambda: lt.Skin(modulus_gpa=4.5, thickness_um=75, poisson=0.38),
    "Layer": lambda: lt.Layer(modulus_mpa=0.3, thickness_mm=10, poisson=0.1, plateau_kpa=12),
    "Backing": backing,
    "Motion": motion,
    "Stop": lambda: lt.Stop(touched_share=0.99, rms_um=0.1, band_mm=(1, 8), when="all"),
    "Step": lambda: lt.Step(
        name="level", abrasive=abrasive(), backing=backing(), motion=motion(), passes=2, stop=lt.Stop(rms_um=0.01)
    ),
    "GrooveFigures": lambda: lt.GrooveFigures(step=0, depth_um=0.2, groove_length_mm=5),
    "ScratchLimits": lambda: lt.ScratchLimits(marks_per_cm2=2),
    "HistoryRow": lambda: lt.HistoryRow(name="level", passes=3, band_rms_um=[0.1, 0.2]),
    "Reading": lambda: lt.Reading(total_um=120, over="filler"),
    "Panel": panel,
    "Sheet": lambda: lt.Sheet(material="aluminium", thickness_mm=1.2),
    "Crown": lambda: lt.Crown(radius_m=4, sheet=lt.Sheet(material="plastic")),
    "CrownContact": lambda: lt.CrownContact(radius_mm=36, pressure_kpa=6.1, peak_kpa=10.5, is_small=True),
    "LaneDose": lambda: lt.LaneDose(least=0.64, most=1.1, cv=0.105),
    "SeenTexture": lambda: lt.SeenTexture(wavelength_mm=2.5, letter_mm=10, distance_m=3),
    "WetTexture": lambda: lt.WetTexture(
        film=EXAMPLES["WetFilm"](), base=[lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)]
    ),
    "TextureSource": texture,
    "Gauge": lambda: lt.Gauge(uncertainty_um=3),
    "Paint": lambda: lt.Paint(kind="repaint", clear_um=60),
    "Defect": lambda: lt.Defect(depth_um=3, sd_um=0.5, patch_mm=200),
    "Target": lambda: lt.Target(rms_um=0.15, band_mm=(1, 8)),
    "Budget": lambda: lt.Budget(clear_left_least_um=35, clear_removed_most_share=0.2),
    "Uncertainty": lambda: lt.Uncertainty(samples=200, hardness_log_sd=0.2),
    "Sequence": lambda: lt.Sequence(name="one step", step=[EXAMPLES["Step"]()]),
    "Job": lambda: lt.Job(
        schema=1,
        patch=lt.Grid(rows=128, cols=128, pixel_mm=0.1),
        panel=[panel()],
        coating=lt.Paint(kind="factory"),
        texture=texture(),
        target=lt.Target(preset="full"),
        sequence=[EXAMPLES["Sequence"]()],
    ),
    "EdgeClear": lambda: lt.EdgeClear(clear_um=50, taper_mm=20),
    "Estimate": lambda: lt.Estimate(value=0.1, least=0.08, most=0.13),
    "TestSpot": lambda: lt.TestSpot(
        passes=6, before_um=[262, 260], after_um=[256, 254], gloss_gone_passes=5, rms_left_um=0.3
    ),
    "Belief": lambda: lt.Belief(median=0.1, least=0.05, most=0.2, log_sd=0.35),
    "TaughtAbrasive": lambda: lt.TaughtAbrasive(abrasive="P3000 film", after=EXAMPLES["Belief"]()),
    "SpotAim": lambda: lt.SpotAim(log_sd=0.3, readings=8),
    "SpotPlan": lambda: lt.SpotPlan(abrasive="P1200 film", log_sd_before=0.7, passes=8, removed_um=4.2),
    "TestSpotResult": lambda: lt.TestSpotResult(
        abrasive="P1200 film",
        after=EXAMPLES["Belief"](),
        texture_after=EXAMPLES["Belief"](),
        others=[EXAMPLES["TaughtAbrasive"]()],
    ),
    "Calibration": lambda: lt.Calibration(
        result=EXAMPLES["TestSpotResult"](), moved=EXAMPLES["Statement"](), job=EXAMPLES["Job"]()
    ),
    "BenchRun": lambda: lt.BenchRun(name="A", removed_um=[0.9, 0.8, 0.7, 0.6]),
    "Bench": lambda: lt.Bench(
        abrasive="my film",
        grit="P2000",
        force_n=25,
        sliding_m_per_s=2.6,
        seconds_per_pass=20,
        area_cm2=200,
        disc_area_cm2=177,
        runs=[EXAMPLES["BenchRun"]()],
    ),
    "BenchResult": lambda: lt.BenchResult(
        wear_rate_mm3_per_n_m=EXAMPLES["Estimate"](),
        worn_wear_rate_mm3_per_n_m=EXAMPLES["Estimate"](),
        loading_um=EXAMPLES["Estimate"](),
        is_loading_seen=True,
        residuals_um=[[0.1, -0.1], [0.2]],
    ),
    "BenchComparison": lambda: lt.BenchComparison(ratio=EXAMPLES["Estimate"](), p=0.03),
    "CompressionCurve": lambda: lt.CompressionCurve(
        thickness_mm=10, area_cm2=25, force_n=[20, 28, 30, 31], deflection_mm=[0.5, 1, 1.5, 2]
    ),
    "CompressionResult": lambda: lt.CompressionResult(
        modulus_mpa=EXAMPLES["Estimate"](), plateau_kpa=EXAMPLES["Estimate"](), is_plateau_seen=True
    ),
    "EdgeWork": lambda: lt.EdgeWork(overhang="straddle", confidence=0.9),
    "EdgeMargin": lambda: lt.EdgeMargin(peak_removal_um=5, margin_mm=3.5, confidence=0.95),
    "Labour": lambda: lt.Labour(look_minutes=1),
    "LabourMinutes": lambda: lt.LabourMinutes(sanding_minutes=30, total_minutes=45),
    "DiscSizeMinutes": lambda: lt.DiscSizeMinutes(disc_diameter_mm=75, discs=2, sanding_minutes=12),
    "DiscLife": lambda: lt.DiscLife(step="level", discs=2, change_after_minutes=12),
    "BudgetRule": lambda: lt.BudgetRule(limit="clear_left", basis="published", limit_um=35.6, removable_um=12),
    "Statement": lambda: lt.Statement(
        kind="odd_reading", panel="door", figures={"reading_um": 393.7, "usual_um": 205.0}
    ),
    "Spread": lambda: lt.Spread(p05=6, p50=8, p95=11),
    "TextureLeft": lambda: lt.TextureLeft(removed_um=1.5, rms_um=lt.Spread(p05=0.2, p50=0.3, p95=0.4)),
    "VarianceShares": lambda: lt.VarianceShares(clear_share=0.8, map=0.1, gauge=0.04, removal=0.06),
    "PanelRisk": lambda: lt.PanelRisk(
        removed_um=lt.Spread(p05=6, p50=8, p95=11),
        budget_exceeded_probability=0.1,
        short_before_probability=0.04,
        variance_shares=EXAMPLES["VarianceShares"](),
        samples=1000,
        node_solves=40,
    ),
    "DefectWay": lambda: lt.DefectWay(way="patch", clear_um=EXAMPLES["Spread"](), gone_probability=0.99),
    "DefectAnswer": lambda: lt.DefectAnswer(
        size_um=EXAMPLES["Spread"](), worked_area_m2=0.06, ways=[EXAMPLES["DefectWay"]()], feather_mm=75
    ),
    "PanelPrediction": lambda: lt.PanelPrediction(
        name="door", removed_um=8.5, budget=[EXAMPLES["BudgetRule"]()], steps=[EXAMPLES["HistoryRow"]()]
    ),
    "Prediction": lambda: lt.Prediction(
        sequence="one step",
        verdict="go with care",
        reasons=[EXAMPLES["Statement"]()],
        panels=[EXAMPLES["PanelPrediction"]()],
        step_cautions=[lt.Statement(kind="dust_harms", step="level")],
    ),
    "Reached": lambda: lt.Reached(asks="rms_um", wanted=0.2, found=0.17, is_met=True),
    "Difference": lambda: lt.Difference(removed_um=lt.Spread(p05=-1, p50=1, p95=3), is_drowned=True),
    "Alternative": lambda: lt.Alternative(
        sequence="one step", verdict="go", more=EXAMPLES["Difference"](), target=[EXAMPLES["Reached"]()]
    ),
    "Comparison": lambda: lt.Comparison(
        alternatives=[EXAMPLES["Alternative"]()], best="one step", findings=[EXAMPLES["Statement"]()]
    ),
    "FirstStep": lambda: lt.FirstStep(abrasive="P1200 film", grain_um=15.3, passes=4, is_reaching=True),
    "Recommendation": lambda: lt.Recommendation(
        verdict="go",
        recommended="one step",
        first_steps=[EXAMPLES["FirstStep"]()],
        sequences=[EXAMPLES["Sequence"]()],
        comparison=EXAMPLES["Comparison"](),
    ),
    "Machine": lambda: lt.Machine(disc="75 mm light"),
    "GroovePopulation": lambda: lt.GroovePopulation(depth_um=0.2, coverage=5),
}

CLASSES = [
    name
    for name, member in inspect.getmembers(lt, inspect.isclass)
    if name in lt.__all__ and "replace" in vars(member) or name in ("HeightField", "Grit")
]


@pytest.fixture(params=CLASSES)
def value(request):
    return EXAMPLES[request.param]()


@pytest.fixture
def field():
    return EXAMPLES["HeightField"]()
