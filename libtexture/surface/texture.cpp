#include "libtexture/surface/texture.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <string>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

void TextureBand::validate() const {
  require_positive(wavelength_mm, "TextureBand", "wavelength_mm");
  require_within(rms_um, 0, 100, "TextureBand", "rms_um");
  require_within(bandwidth_octaves, 0.1, 4, "TextureBand", "bandwidth_octaves");
  if (lay_deg) require_within(*lay_deg, -360, 360, "TextureBand", "lay_deg");
  require_within(skewness, -0.9, 0.9, "TextureBand", "skewness");
}

void require_fits(const TextureBand& band, const Grid& grid) {
  const double shortest = 4 * grid.pixel_mm;
  const double longest = std::max(grid.width_mm(), grid.height_mm()) / 2;
  // A wave of exactly 4 pixels must not fail by the last bit of a decimal pixel.
  const double slack = 1 + 1e-12;
  require(band.wavelength_mm * slack >= shortest, "TextureBand", "wavelength_mm",
          "must be >= 4 pixels = " + to_text(shortest) + " mm", band.wavelength_mm);
  require(band.wavelength_mm <= longest * slack, "TextureBand", "wavelength_mm",
          "must be <= half the larger patch side = " + to_text(longest) + " mm", band.wavelength_mm);
}

namespace {

/// Amplitude of the mode of wave vector (x, y) [cycles/mm], up to a factor that all modes share.
double ring_amplitude(const TextureBand& band, double x, double y, bool is_profile) {
  const double frequency = std::hypot(x, y);
  const double octaves = std::log2(frequency * band.wavelength_mm);
  if (std::abs(octaves) >= band.bandwidth_octaves * (1 - 1e-12)) return 0;
  const double deviations = octaves / (band.bandwidth_octaves / 2);
  // An octave holds modes in proportion to its frequency on a profile, to the square of it on a patch.
  const double crowding = is_profile ? std::sqrt(frequency) : frequency;
  const double per_octave = std::exp(-deviations * deviations / 2);
  if (!band.lay_deg || is_profile) return per_octave / crowding;
  const double lay = *band.lay_deg * std::numbers::pi / 180;
  const double across = (y * std::cos(lay) - x * std::sin(lay)) / frequency;
  return per_octave / crowding * across * across;
}

/// Half spectrum of the band with random phases. Modes at the Nyquist frequency stay empty: a finer grid
/// would hold them twice, and without them the constant, which is empty too, is the only self-conjugate mode.
Spectrum ring(const TextureBand& band, std::uint64_t index, const Grid& grid, std::uint64_t seed) {
  Spectrum half(static_cast<std::size_t>(grid.rows) * grid.half_cols());
  for (int i = 0; i < grid.rows; ++i) {
    const int y = signed_mode(i, grid.rows);
    for (int j = 0; j < grid.half_cols(); ++j) {
      const bool is_drawn = j > 0 || y > 0;  // the other half plane holds the conjugates
      const bool is_below_nyquist = 2 * j < grid.cols && 2 * std::abs(y) < grid.rows;
      if (!is_drawn || !is_below_nyquist) continue;
      const double amplitude =
          ring_amplitude(band, j / grid.width_mm(), y / grid.height_mm(), grid.rows == 1);
      if (amplitude == 0) continue;
      const double turn =
          uniform_at({seed, index, static_cast<std::uint64_t>(j), static_cast<std::uint64_t>(y)});
      // Pixel centres lie half a pixel in: without this shift a finer grid would hold the surface elsewhere.
      const double shift = 0.5 * j / grid.cols + 0.5 * y / grid.rows;
      const auto value = std::polar(amplitude, 2 * std::numbers::pi * (turn + shift));
      half[static_cast<std::size_t>(i) * grid.half_cols() + j] = value;
      if (j == 0) half[static_cast<std::size_t>(grid.rows - i) * grid.half_cols()] = std::conj(value);
    }
  }
  return half;
}

/// Mean 0 and rms 1.
void normalize(Array2d& heights) {
  heights -= heights.mean();
  heights /= std::sqrt(heights.square().mean());
}

/// a for which (exp(a z) - 1)/a of Gaussian z of unit rms has this skewness g > 0: the log-normal
/// distribution's g^2 = (w + 2)^2 (w - 1), w = exp(a^2), solved for w.
double log_normal_shape(double skewness) {
  const double g2 = skewness * skewness;
  const double s = std::cbrt(1 + g2 / 2 + std::sqrt(g2 + g2 * g2 / 4));
  return std::sqrt(std::log(s + 1 / s - 1));
}

Array2d heights_of(const TextureBand& band, std::uint64_t index, const Grid& grid, std::uint64_t seed) {
  Array2d heights = values_of(ring(band, index, grid, seed), grid);
  const bool is_empty = (heights == 0).all();
  require(!is_empty, "TextureBand", "bandwidth_octaves", "is too narrow: no wave of the ring fits the patch",
          band.bandwidth_octaves);
  normalize(heights);
  if (band.skewness == 0) return heights * band.rms_um;
  const double a = std::copysign(log_normal_shape(std::abs(band.skewness)), band.skewness);
  heights = (a * heights).exp() / a;
  normalize(heights);
  return heights * band.rms_um;
}

}  // namespace

HeightField synthesize(const std::vector<TextureBand>& bands, const Grid& grid, std::uint64_t seed) {
  grid.validate();
  Array2d heights = Array2d::Zero(grid.rows, grid.cols);
  for (std::size_t index = 0; index < bands.size(); ++index) {
    bands[index].validate();
    require_fits(bands[index], grid);
    heights += heights_of(bands[index], index, grid, seed);
  }
  return {std::move(heights), grid.pixel_mm};
}

}  // namespace libtexture
