#include "libtexture/surface/wet_film.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

void WetFilm::validate() const {
  require_positive(thickness_um, "WetFilm", "thickness_um");
  require(thickness_um <= 5000, "WetFilm", "thickness_um", "must be <= 5000 um", thickness_um);
  require_positive(surface_tension_mn_per_m, "WetFilm", "surface_tension_mn_per_m");
  require_positive(viscosity_pa_s, "WetFilm", "viscosity_pa_s");
  require_positive(viscosity_rise_s, "WetFilm", "viscosity_rise_s");
  require(solids_share > 0 && solids_share <= 1, "WetFilm", "solids_share", "must be > 0 and <= 1",
          solids_share);
}

namespace {

/// (sinh x cosh x - x)/(cosh^2 x + x^2) in falling exponentials, which do not overflow.
double any_depth_factor(double x) {
  const double e = std::exp(-2 * x);
  const double below = (1 + e) * (1 + e) / 4 + x * x * e;
  // Small x: the difference loses its digits; its series to x^7 is exact to 1e-13 here.
  const double above = x < 0.03 ? e * (2 * x * x * x / 3) * (1 + x * x / 5 + 2 * x * x * x * x / 105)
                                : (1 - e * e) / 4 - x * e;
  return above / below;
}

/// Rate [1/s] in SI units.
double rate(double q, double h, double sigma, double eta, FilmDepth depth) {
  if (depth == FilmDepth::thin) return sigma * h * h * h * q * q * q * q / (3 * eta);
  return sigma * q / (2 * eta) * any_depth_factor(q * h);
}

double starting_rate(const WetFilm& film, double q) {
  return rate(q, film.thickness_um * metre_per_um, film.surface_tension_mn_per_m * 1e-3, film.viscosity_pa_s,
              FilmDepth::any);
}

double wet_share(const WetFilm& film, double q, double time_s) {
  const double rise = film.viscosity_rise_s;
  return std::exp(starting_rate(film, q) * rise * std::expm1(-time_s / rise));
}

double dry_share(const WetFilm& film, double q) {
  const double wet = wet_share(film, q, std::numeric_limits<double>::infinity());
  return film.solids_share * wet + (1 - film.solids_share);
}

double wave_number(double wavelength_mm) {
  return 2 * std::numbers::pi / (wavelength_mm * metre_per_mm);
}

}  // namespace

double levelling_rate_per_s(double wavelength_mm, double thickness_um, double surface_tension_mn_per_m,
                            double viscosity_pa_s, FilmDepth depth) {
  require_positive(wavelength_mm, "levelling_rate_per_s", "wavelength_mm");
  require_positive(thickness_um, "levelling_rate_per_s", "thickness_um");
  require_positive(surface_tension_mn_per_m, "levelling_rate_per_s", "surface_tension_mn_per_m");
  require_positive(viscosity_pa_s, "levelling_rate_per_s", "viscosity_pa_s");
  return rate(wave_number(wavelength_mm), thickness_um * metre_per_um, surface_tension_mn_per_m * 1e-3,
              viscosity_pa_s, depth);
}

double wet_amplitude_share(const WetFilm& film, double wavelength_mm, double time_s) {
  film.validate();
  require_positive(wavelength_mm, "wet_amplitude_share", "wavelength_mm");
  require(time_s >= 0, "wet_amplitude_share", "time_s", "must be >= 0", time_s);
  return wet_share(film, wave_number(wavelength_mm), time_s);
}

double dry_amplitude_share(const WetFilm& film, double wavelength_mm) {
  film.validate();
  require_positive(wavelength_mm, "dry_amplitude_share", "wavelength_mm");
  return dry_share(film, wave_number(wavelength_mm));
}

HeightField dry(const HeightField& base, const WetFilm& film) {
  film.validate();
  Spectrum half = spectrum_of(base.height_um(), base.pixel_mm());
  const std::vector<double> q = wave_numbers_per_m(base.grid());
  for (std::size_t k = 1; k < half.size(); ++k) half[k] *= dry_share(film, q[k]);
  return {values_of(std::move(half), base.grid()), base.pixel_mm()};
}

}  // namespace libtexture
