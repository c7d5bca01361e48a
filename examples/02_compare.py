"""Three first grits on one patch, each followed by what its scratches need.

What differs is the clear for those scratches, and what is cut past the stop rule before the next look: the levelling
itself costs all of them the same.
"""

import libtexture as lt

tools = lt.Catalogue.shipped()


def step_of(abrasive, backing, stop, look_every_passes):
    abrasive = tools.abrasives[abrasive]
    return lt.Step(
        name=abrasive.name,
        abrasive=abrasive,
        backing=tools.backings[backing],
        motion=tools.motions["150 mm light"],
        wetness=abrasive.made_for[0],
        passes=40,
        look_every_passes=look_every_passes,
        stop=stop,
    )


surface = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=3.5, rms_um=0.8)], grid=lt.Grid(rows=128, cols=128, pixel_mm=0.2), seed=1
)
coating = lt.Coating(coats=[lt.Coat(name="clear", thickness_um=50)])
flat = lt.Stop(rms_um=0.1)
film = "film on firm interface"
refine = step_of("P3000 foam-backed", "foam-backed disc on pad", lt.Stop(clear_owed_um=0.1), 1)
compound = step_of("compound", "compound on fibre", lt.Stop(clear_owed_um=0.05), 1)
sequences = [
    [step_of("P1200 film", film, flat, 2), refine, compound],
    [step_of("P2000 film", film, flat, 2), refine, compound],
    [step_of("P3000 film", film, flat, 2), compound],
]
for steps in sequences:
    history = lt.simulate(surface=surface, coating=coating, steps=steps)
    print(f"{steps[0].name:10} first: {history.removed_um:.2f} um of clear")
    for row in history.steps:
        print(
            f"    {row.name:18} {row.passes:2d} passes  {row.removed_um:.2f} um, "
            f"of it past the rule {row.overshoot_um:.2f}, texture left {row.rms_um:.3f} um"
        )
