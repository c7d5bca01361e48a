"""Why texture comes back: what of a textured base shows through a wet film that levelled over it and dried."""

import math

import libtexture as lt

# Typical figures of a clear as it is sprayed (from memory): see lt.WetFilm.
film = lt.WetFilm(
    thickness_um=70, surface_tension_mn_per_m=30, viscosity_pa_s=0.2, viscosity_rise_s=20, solids_share=0.55
)
print("wavelength mm  dies at 1/s  left in the wet top  shows when dry")
for wavelength_mm in (1, 2, 4, 8, 16):
    rate_per_s = lt.levelling_rate_per_s(
        wavelength_mm=wavelength_mm,
        thickness_um=film.thickness_um,
        surface_tension_mn_per_m=film.surface_tension_mn_per_m,
        viscosity_pa_s=film.viscosity_pa_s,
        exact=True,
    )
    left = lt.wet_amplitude_share(film, wavelength_mm=wavelength_mm, time_s=math.inf)
    shown = lt.dry_amplitude_share(film, wavelength_mm=wavelength_mm)
    print(f"{wavelength_mm:13} {rate_per_s:12.4f} {left:20.3f} {shown:15.3f}")

base = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=3, rms_um=1)], grid=lt.Grid(rows=128, cols=128, pixel_mm=0.2), seed=1
)
top = lt.dry(base=base, wet_film=film)
print(
    f"A base of {base.rms_um:.2f} um rms at 3 mm dries to {top.rms_um:.2f} um: the film hides waves, then shrinks onto "
    "them."
)
