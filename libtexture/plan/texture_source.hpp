#pragma once
// TextureSource: where a job's starting surface comes from: bands, a measured file, what a person sees, or a
// wet film.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/surface/texture.hpp"
#include "libtexture/surface/wet_film.hpp"

namespace libtexture {

/// A texture judged by eye: the distance of its waves, and the smallest letters that can be read in the
/// reflection.
struct SeenTexture {
  double wavelength_mm = unset;  ///< dominant wavelength, by a ruler on the panel [mm], > 0
  double letter_mm = unset;      ///< height of the smallest letters that can be read [mm], > 0
  double distance_m =
      unset;  ///< from the eye over the paint to the letters, most of it behind the paint [m], > 0
  double bandwidth_octaves = 1.0;  ///< as of TextureBand [octaves]

  void validate() const;
  bool operator==(const SeenTexture&) const = default;
  static constexpr auto fields() {
    return std::tuple{required("wavelength_mm", &SeenTexture::wavelength_mm),
                      required("letter_mm", &SeenTexture::letter_mm),
                      required("distance_m", &SeenTexture::distance_m),
                      optional("bandwidth_octaves", &SeenTexture::bandwidth_octaves)};
  }
};

/// The band that a seen texture stands for. A letter's stroke is a fifth of its height (ISO 8596, from
/// memory); it is lost when waves shift it by its own width, that is, at a slope of half the angle under
/// which it is seen. A wave of that slope has the amplitude slope x wavelength/(2 pi), and an rms of that
/// over sqrt 2. A rough guide: estimate.
TextureBand band_of(const SeenTexture& seen);

/// A texture that formed when a wet film dried over a textured base.
struct WetTexture {
  WetFilm film = {};              ///< as it was laid on
  std::vector<TextureBand> base;  ///< texture of what the film was laid on; at least one band

  void validate() const;
  bool operator==(const WetTexture&) const = default;
  static constexpr auto fields() {
    return std::tuple{required("film", &WetTexture::film), required("base", &WetTexture::base)};
  }
};

/// Exactly one of these.
struct TextureSource {
  std::vector<TextureBand> bands = {};  ///< at least one, where this is the source
  std::optional<std::string> file =
      {};  ///< a measured surface; a job file's own folder is where a relative path starts
  std::optional<SeenTexture> seen = {};     ///< judged by eye
  std::optional<WetTexture> wet_film = {};  ///< what dries over a textured base

  void validate() const;
  bool operator==(const TextureSource&) const = default;
  static constexpr auto fields() {
    return std::tuple{optional("bands", &TextureSource::bands), optional("file", &TextureSource::file),
                      optional("seen", &TextureSource::seen), optional("wet_film", &TextureSource::wet_film)};
  }
};

/// The bands that are drawn at random: the texture's own, the seen one, or the wet film's base; none for a
/// file.
std::vector<TextureBand> drawn_bands(const TextureSource& source);

/// The starting surface on a grid. InvalidInput for a file: read_surface() of libtexture/io reads it.
HeightField starting_surface(const TextureSource& source, const Grid& grid, std::uint64_t seed);

}  // namespace libtexture
