#include "libtexture/plan/texture_source.hpp"

#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

void SeenTexture::validate() const {
  require_positive(letter_mm, "SeenTexture", "letter_mm");
  require_positive(distance_m, "SeenTexture", "distance_m");
  require_within(wavelength_mm, 0, 1000, "SeenTexture", "wavelength_mm");
  band_of(*this).validate();
}

TextureBand band_of(const SeenTexture& seen) {
  const double stroke_angle = seen.letter_mm * metre_per_mm / 5 / seen.distance_m;
  const double amplitude_mm = stroke_angle / 2 * seen.wavelength_mm / (2 * std::numbers::pi);
  TextureBand band;
  band.wavelength_mm = seen.wavelength_mm;
  band.rms_um = amplitude_mm * metre_per_mm / metre_per_um / std::numbers::sqrt2;
  band.bandwidth_octaves = seen.bandwidth_octaves;
  return band;
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
  return source.wet_film ? dry(surface, source.wet_film->film) : surface;
}

}  // namespace libtexture
