#pragma once
// TextureSource: where a job's starting surface comes from: bands, a measured file, what a person sees, or a
// wet film.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/estimate.hpp"
#include "libtexture/surface/texture.hpp"
#include "libtexture/surface/viewer.hpp"
#include "libtexture/surface/wet_film.hpp"

namespace libtexture {

/// A texture judged by eye: the distance of its waves, and the smallest letters that can be read in the
/// reflection.
struct SeenTexture {
  double wavelength_mm = unset;  ///< dominant wavelength, waves counted along a ruler on the panel [mm], > 0
  double letter_mm = unset;      ///< height of the smallest letters that can be read [mm], > 0
  double distance_m = unset;     ///< whole path from the eye over the paint to the letters [m], > 0
  /// of it, from the eye to the paint [m], >= 0; none = a third of it, as viewer_along() has it
  std::optional<double> eye_to_paint_m = {};
  double bandwidth_octaves = 1.0;  ///< as of TextureBand [octaves]

  void validate() const;
  bool operator==(const SeenTexture&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("wavelength_mm", &SeenTexture::wavelength_mm),
                      required("letter_mm", &SeenTexture::letter_mm),
                      required("distance_m", &SeenTexture::distance_m),
                      optional("eye_to_paint_m", &SeenTexture::eye_to_paint_m),
                      optional("bandwidth_octaves", &SeenTexture::bandwidth_octaves)};
  }
};

/// The eye that judged a seen texture.
Viewer eye_of(const SeenTexture& seen);

/// Rms slope along one direction that a seen texture has: a letter is lost when the mirrored point wanders by
/// its stroke, a fifth of its height (ISO 8596, from memory; as smallest_letter_mm). A slope s moves a point
/// at d behind the paint by 2 s d.
double seen_slope(const SeenTexture& seen);

/// Whether the letters are as fine as normal sight reads at their distance (within 10 %, an estimate): the
/// texture is then at most what they show.
bool is_at_limit_of_sight(const SeenTexture& seen);

/// The band that a seen texture stands for: that of isotropic waves of this rms slope.
TextureBand band_of(const SeenTexture& seen);

/// Standard deviation of ln(rms) of a seen texture: readers and limits of reading .35, counting of waves .15,
/// shape of the spectrum .10, together .39: a factor of 2.2 either way in 95 % of cases. Estimate.
double seen_log_sd();

/// Rms of a seen texture [um] with its 95 % interval.
Estimate seen_rms_um(const SeenTexture& seen);

/// A texture that formed when a wet film dried over a textured base.
struct WetTexture {
  WetFilm film = {};              ///< as it was laid on
  std::vector<TextureBand> base;  ///< texture of what the film was laid on; at least one band

  void validate() const;
  bool operator==(const WetTexture&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("film", &WetTexture::film), required("base", &WetTexture::base)};
  }
};

/// What becomes of the tilt and the form of a measured map: taken out as not texture, or kept, of a map that
/// has none because it was prepared elsewhere.
enum class MapForm { removed, kept };
constexpr std::array<std::pair<MapForm, const char*>, 2> names_of(MapForm) {
  return {{{MapForm::removed, "removed"}, {MapForm::kept, "kept"}}};
}

/// Exactly one of bands, file, seen and wet_film.
struct TextureSource {
  std::vector<TextureBand> bands = {};  ///< at least one, where this is the source
  std::optional<std::string> file =
      {};  ///< a measured surface; a job file's own folder is where a relative path starts
  MapForm form = MapForm::removed;          ///< of a file: whether its plane and form are taken out
  std::optional<SeenTexture> seen = {};     ///< judged by eye
  std::optional<WetTexture> wet_film = {};  ///< what dries over a textured base
  double scale = 1;                         ///< factor on all heights, which a test spot sets, > 0 to 100
  /// Standard deviation of ln(scale), 0 to 2; none = by the source: seen_log_sd() for a seen texture, .3 for
  /// a wet film, whose viscosities are rarely known, else .1, as panels vary from place to place; estimates.
  std::optional<double> scale_log_sd = {};

  void validate() const;
  bool operator==(const TextureSource&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("bands", &TextureSource::bands),
                      optional("file", &TextureSource::file),
                      optional("form", &TextureSource::form),
                      optional("seen", &TextureSource::seen),
                      optional("wet_film", &TextureSource::wet_film),
                      optional("scale", &TextureSource::scale),
                      optional("scale_log_sd", &TextureSource::scale_log_sd)};
  }
};

/// Standard deviation of the logarithm of the texture's heights: the source's own, or by its kind.
double scale_log_sd(const TextureSource& source);

/// The surface with all heights times source.scale.
HeightField scaled(const HeightField& surface, const TextureSource& source);

/// The bands that are drawn at random: the texture's own, the seen one, or the wet film's base; none for a
/// file.
std::vector<TextureBand> drawn_bands(const TextureSource& source);

/// The starting surface on a grid. InvalidInput for a file: read_surface() of libtexture/io reads it.
HeightField starting_surface(const TextureSource& source, const Grid& grid, std::uint64_t seed);

}  // namespace libtexture
