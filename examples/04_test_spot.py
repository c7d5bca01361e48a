"""A test spot: readings before and after, and what is seen, make the plan's figures surer."""

import libtexture as lt

tools = lt.Catalogue.shipped()
level = lt.Step(
    name="level",
    abrasive=tools.abrasives["P2000 film"],
    backing=tools.backings["film on firm interface"],
    motion=tools.motions["150 mm light"],
    passes=12,
    look_every_passes=2,
    stop=lt.Stop(touched_share=0.995),
)
# A bonnet judged by eye: letters of 25 mm can just be read in it, 2 m away, the eye at half a metre.
seen = lt.SeenTexture(wavelength_mm=3, letter_mm=25, distance_m=2, eye_to_paint_m=0.5)
rms = lt.seen_rms_um(seen)
print(f"By eye the texture is {rms.value:.2f} um rms, in 95 % of cases {rms.least:.2f} to {rms.most:.2f} um.")
job = lt.Job(
    schema=1,
    note="Invented scenario, not measured.",
    patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),
    panel=[lt.Panel(name="bonnet", area_m2=1.2, readings=[lt.Reading(total_um=124), lt.Reading(total_um=118)])],
    coating=lt.Paint(kind="factory", gauge=lt.Gauge(uncertainty_um=1.0)),
    texture=lt.TextureSource(seen=seen),
    target=lt.Target(preset="full"),
    sequence=[lt.Sequence(name="P2000 first", step=[level])],
)

# Six passes on 20 by 20 cm; the last glossy valley was gone after the fifth.
before_um, after_um = [121, 120, 122, 121, 119, 121], [117, 116, 119, 117, 116, 117]
spot = lt.TestSpot(passes=6, before_um=before_um, after_um=after_um, gloss_gone_passes=5)
calibration = lt.calibrate(job, spot)
result = calibration.result
print(
    f"{job.note} {result.removed_um:.1f} um gone, known to {result.gauge_sd_um:.1f} um; "
    f"{result.expected_um:.1f} um was expected."
)
for name, old, new in [
    ("wear rate, mm3/(N m)", result.before, result.after),
    ("texture, um rms", result.texture_before, result.texture_after),
    ("stiffness over catalogue's", result.stiffness_before, result.stiffness_after),
]:
    assert old and new  # None where the readings say nothing of it
    print(
        f"{name:27} {old.median:5.3f} ({old.least:5.3f} to {old.most:5.3f})  ->  "
        f"{new.median:5.3f} ({new.least:5.3f} to {new.most:5.3f})"
    )
for warning in result.warnings:
    print(warning)

for when, one in [("before", job), ("after", calibration.job)]:
    prediction = lt.predict(one).prediction
    panel = prediction.panels[0]
    print(
        f"{when}: {panel.removed_um:.1f} um of clear, {panel.steps[0].passes} passes, "
        f"{panel.labour.total_minutes:.0f} min"
    )
print(*prediction.cautions, *prediction.step_cautions, sep="\n- ")
