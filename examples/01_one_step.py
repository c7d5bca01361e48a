"""One step on one patch: how much texture is left for how much clear."""

import libtexture as lt

surface = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=2.5, rms_um=0.8)], grid=lt.Grid(rows=128, cols=128, pixel_mm=0.2), seed=1
)
coating = lt.Coating(coats=[lt.Coat(name="clear", thickness_um=50)])
tools = lt.Catalogue.shipped()
step = lt.Step(
    name="level",
    abrasive=tools.abrasives["P2000 film"],
    backing=tools.backings["film on firm interface"],
    motion=tools.motions["150 mm light"],
    passes=10,
    look_every_passes=2,
    stop=lt.Stop(touched_share=0.99),
)

history = lt.simulate(surface=surface, coating=coating, steps=[step])
print("pass  clear removed um  texture left um  touched %")
for row in history.passes:
    print(f"{row.passes:4d} {row.removed_um:17.2f} {row.rms_um:16.3f} {100 * row.touched_share:10.1f}")
end = history.steps[-1]
print(
    f"Clear left: {end.clear_left_mean_um:.1f} um, {end.clear_left_least_um:.1f} um at its thinnest; "
    f"its scratches owe {end.clear_owed_um:.2f} um more."
)
