#pragma once
// Texture: bands of waves, and the surface that they make.

#include <cstdint>
#include <optional>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// One band of texture: a log-normal ring of the spectrum with random phases. The rms height per octave of
/// wavelength is a Gaussian in log2(wavelength) about wavelength_mm with standard deviation
/// bandwidth_octaves/2, cut at two standard deviations (half a per cent of the variance lies beyond).
struct TextureBand {
  double wavelength_mm = unset;  ///< dominant wavelength [mm], > 0
  double rms_um = unset;         ///< root mean square height of the band [um], >= 0, at most 100
  double bandwidth_octaves =
      1.0;  ///< full width of the ring at one standard deviation either side [octaves], .1 to 4
  std::optional<double> lay_deg =
      {};               ///< direction that crests run along, 0 = along rows [degrees]; none = isotropic
  double skewness = 0;  ///< of heights, -.9 to .9; < 0: rounded cells and narrow valleys

  void validate() const;
  bool operator==(const TextureBand&) const = default;
  static constexpr auto fields() {
    return FieldTable{
        required("wavelength_mm", &TextureBand::wavelength_mm), required("rms_um", &TextureBand::rms_um),
        optional("bandwidth_octaves", &TextureBand::bandwidth_octaves),
        optional("lay_deg", &TextureBand::lay_deg), optional("skewness", &TextureBand::skewness)};
  }
};

/// Throws InvalidInput where the grid cannot resolve a band (wavelength under 4 pixels) or hold it (over half
/// the larger side).
void require_fits(const TextureBand& band, const Grid& grid);

/// The surface of some bands on a grid; the rms of each band is as asked to 1e-9 (relative), the mean is 0.
/// One seed gives the same surface on a finer grid of the same size and for any number of threads, as long as
/// the coarse grid resolves the whole ring (wavelength_mm >= 2^(1 + bandwidth_octaves) pixels). Lay:
/// amplitudes are weighted by cos^2 of the angle between the wave vector and the normal of the lay (our
/// choice; the lay is a direction of crests as in ISO 21920-1); a profile (one row) has no room for it and
/// ignores it. Skewness: z -> sign (exp(sign a z) - 1)/a of the band at unit rms, a monotone map that makes
/// Gaussian heights log-normal with exactly this skewness (a patch of few waves scatters about it); it adds
/// weak overtones to the ring. InvalidInput where the grid cannot resolve a band (wavelength under 4 pixels)
/// or hold it (over half the larger side).
HeightField synthesize(const std::vector<TextureBand>& bands, const Grid& grid, std::uint64_t seed);

}  // namespace libtexture
