"""Near an edge: what an overhung disc takes off, and the margin to leave unsanded so that enough clear stays."""

import libtexture as lt

tools = lt.Catalogue.shipped()
disc = tools.motions["150 mm light"]
clear = lt.EdgeClear(clear_um=50)  # thinner towards the edge: an estimate, see its fields
print("4 um off the flat, 50 um of clear there, 35.6 um to be left:")
for name in ("film on hard pad", "film on firm interface", "film on soft interface"):
    for overhang in ("none", "straddle"):
        profile = lt.edge_profile(tools.backings[name], disc, removal_um=4, overhang=overhang, clear=clear)
        print(
            f"  {name:23} {overhang:9} at most {profile.peak_removal_um:5.1f} um go; leave {profile.margin_mm:4.1f} mm"
        )

# The same as a plan asks it: every rule of the budget, and a confidence.
step = lt.Step(
    name="level",
    abrasive=tools.abrasives["P2000 film"],
    backing=tools.backings["film on firm interface"],
    motion=disc,
    passes=8,
    stop=lt.Stop(removed_um=4),
)
job = lt.Job(
    schema=1,
    note="Invented scenario, not measured.",
    patch=lt.Grid(rows=64, cols=64, pixel_mm=0.4),
    panel=[lt.Panel(name="wing", area_m2=0.5, edge_length_m=2.4, readings=[lt.Reading(total_um=140)])],
    coating=lt.Paint(kind="repaint", clear_um=55, clear_uncertainty_um=3),
    texture=lt.TextureSource(bands=[lt.TextureBand(wavelength_mm=3, rms_um=0.7)]),
    target=lt.Target(preset="partial"),
    edge=lt.EdgeWork(overhang="straddle", confidence=0.9),
    sequence=[lt.Sequence(name="P2000 only", step=[step])],
)
plan = lt.predict(job).prediction
edge = plan.panels[0].edge
assert edge is not None  # as the panel gives the length of its edges
margins = [
    "the flat does not keep the budget" if margin is None else f"{margin:.1f} mm"
    for margin in (edge.margin_mm, edge.sure_margin_mm)
]
print(
    f"{job.panel[0].name}: margin {margins[0]} by best estimates; to be {100 * edge.confidence:.0f} % sure: "
    f"{margins[1]}"
)
print(job.note, *plan.cautions, *plan.step_cautions, sep="\n- ")
