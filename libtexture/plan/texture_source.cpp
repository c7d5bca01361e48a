#include "libtexture/plan/texture_source.hpp"

#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/block_letters.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

namespace {

constexpr double near_limit = 1.1;  // a height is told to a tenth; estimate

/// Rms slope along one direction [1/mm] of an isotropic ring of unit rms: q0 sqrt(<4^-o>/2), o the octaves
/// from the dominant wavelength, normal with sd b/sqrt 8 and cut at b (docs/physics.md, equation 1).
double slope_per_rms_per_mm(const SeenTexture& seen) {
  const double b = seen.bandwidth_octaves, sd = b / std::sqrt(8.0), shift = 2 * std::numbers::ln2 * sd * sd;
  const auto within = [&](double from, double to) {
    return std::erf(to / (sd * std::numbers::sqrt2)) - std::erf(from / (sd * std::numbers::sqrt2));
  };
  const double mean_square = std::exp(2 * std::numbers::ln2 * std::numbers::ln2 * sd * sd) *
                             within(-b + shift, b + shift) / within(-b, b);
  return 2 * std::numbers::pi / seen.wavelength_mm * std::sqrt(mean_square / 2);
}

}  // namespace

void SeenTexture::validate() const {
  require_positive(letter_mm, "SeenTexture", "letter_mm");
  require_positive(distance_m, "SeenTexture", "distance_m");
  if (eye_to_paint_m)
    require(*eye_to_paint_m >= 0 && *eye_to_paint_m < distance_m, "SeenTexture", "eye_to_paint_m",
            "must be >= 0 and less than distance_m", *eye_to_paint_m);
  require_positive(wavelength_mm, "SeenTexture", "wavelength_mm");
  require_within(wavelength_mm, 0, 1000, "SeenTexture", "wavelength_mm");
  band_of(*this).validate();
}

Viewer eye_of(const SeenTexture& seen) {
  return viewer_along(seen.distance_m, seen.eye_to_paint_m);
}

double seen_slope(const SeenTexture& seen) {
  return seen.letter_mm * metre_per_mm / strokes_a_height / (2 * eye_of(seen).scene_m);
}

bool is_at_limit_of_sight(const SeenTexture& seen) {
  return seen.letter_mm <= near_limit * limit_of_sight_mm(seen.distance_m);
}

TextureBand band_of(const SeenTexture& seen) {
  TextureBand band;
  band.wavelength_mm = seen.wavelength_mm;
  band.rms_um = seen_slope(seen) / slope_per_rms_per_mm(seen) * metre_per_mm / metre_per_um;
  band.bandwidth_octaves = seen.bandwidth_octaves;
  return band;
}

double seen_log_sd() {
  return std::sqrt(.35 * .35 + .15 * .15 + .10 * .10);
}

Estimate seen_rms_um(const SeenTexture& seen) {
  seen.validate();
  constexpr double normal_reach = 1.959964;  // 97.5 % quantile of a normal distribution
  return estimate_of_log(0, normal_reach * seen_log_sd(), band_of(seen).rms_um);
}

void WetTexture::validate() const {
  film.validate();
  require(!base.empty(), "WetTexture", "base", "must hold at least one band", "none");
  for (const TextureBand& band : base) band.validate();
}

void TextureSource::validate() const {
  const int count = !bands.empty() + file.has_value() + seen.has_value() + wet_film.has_value();
  require(count == 1, "TextureSource", "bands, file, seen, wet_film", "must be exactly one of them", count);
  for (const TextureBand& band : drawn_bands(*this)) band.validate();
  if (file) require(!file->empty(), "TextureSource", "file", "must name a file", "\"\"");
  if (seen) seen->validate();
  if (wet_film) wet_film->validate();
  require_positive(scale, "TextureSource", "scale");
  require(scale <= 100, "TextureSource", "scale", "must be at most 100", scale);
  if (scale_log_sd) require_within(*scale_log_sd, 0, 2, "TextureSource", "scale_log_sd");
}

double scale_log_sd(const TextureSource& source) {
  if (source.scale_log_sd) return *source.scale_log_sd;
  if (source.seen) return seen_log_sd();
  return source.wet_film ? 0.3 : 0.1;
}

HeightField scaled(const HeightField& surface, const TextureSource& source) {
  return source.scale == 1 ? surface : HeightField(source.scale * surface.height_um(), surface.pixel_mm());
}

std::vector<TextureBand> drawn_bands(const TextureSource& source) {
  if (source.seen) return {band_of(*source.seen)};
  if (source.wet_film) return source.wet_film->base;
  return source.bands;
}

HeightField starting_surface(const TextureSource& source, const Grid& grid, std::uint64_t seed) {
  source.validate();
  require(!source.file, "TextureSource", "file", "must be read first", source.file.value_or(""));
  HeightField surface = synthesize(drawn_bands(source), grid, seed);
  return scaled(source.wet_film ? dry(surface, source.wet_film->film) : surface, source);
}

}  // namespace libtexture
