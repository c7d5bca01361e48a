// Why texture comes back: what of a textured base shows through a wet film that levelled over it and dried.
#include <cmath>
#include <cstdio>

#include "libtexture/surface/texture.hpp"
#include "libtexture/surface/wet_film.hpp"

using namespace libtexture;

int main() {
  // Typical figures of a clear as it is sprayed (from memory): see libtexture/surface/wet_film.hpp.
  const WetFilm film{.thickness_um = 70,
                     .surface_tension_mn_per_m = 30,
                     .viscosity_pa_s = 0.2,
                     .viscosity_rise_s = 20,
                     .solids_share = 0.55};
  std::printf("wavelength mm  dies at 1/s  left in the wet top  shows when dry\n");
  for (const double wavelength_mm : {1.0, 2.0, 4.0, 8.0, 16.0})
    std::printf("%13.0f %12.4f %20.3f %15.3f\n", wavelength_mm,
                levelling_rate_per_s(wavelength_mm, film.thickness_um, film.surface_tension_mn_per_m,
                                     film.viscosity_pa_s, FilmDepth::any),
                wet_amplitude_share(film, wavelength_mm, HUGE_VAL), dry_amplitude_share(film, wavelength_mm));

  const HeightField base = synthesize({{.wavelength_mm = 3, .rms_um = 1}}, {128, 128, 0.2}, 1);
  const HeightField top = dry(base, film);
  std::printf(
      "A base of %.2f um rms at 3 mm dries to %.2f um: the film hides waves, then shrinks onto them.\n",
      base.rms_um(), top.rms_um());
}
