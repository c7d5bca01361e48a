#pragma once
// Waves: a surface's spectrum, from which its bands, its slopes and what is seen in it are read.

#include <array>
#include <utility>
#include <vector>

#include "libtexture/numerics/fft.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The direction one looks along: x (along rows) or y (along columns).
enum class Direction { rows, columns };
constexpr std::array<std::pair<Direction, const char*>, 2> names_of(Direction) {
  return {{{Direction::rows, "rows"}, {Direction::columns, "columns"}}};
}

/// How much of each wave of a grid the mean over a round spot keeps: 2 J1(x)/x, x = pi diameter/wavelength.
/// It depends on nothing else, so that one serves all surfaces of a grid. docs/physics.md (55).
class SpotMean {
 public:
  /// A point, which keeps every wave.
  SpotMean() = default;
  /// diameter_mm >= 0; 0 = a point.
  SpotMean(const Grid& grid, double diameter_mm);

  /// The share that is kept of the wave at a place of the half spectrum, row by row; below 0 where it is
  /// turned over.
  double kept(std::size_t mode) const { return kept_.empty() ? 1 : kept_[mode]; }

 private:
  std::vector<double> kept_;
};

/// The waves of a surface, from one forward transform.
class Waves {
 public:
  explicit Waves(const HeightField& field);

  /// Rms height [um] between neighbouring edges, as band_rms_um().
  std::vector<double> band_rms_um(const std::vector<double>& edges_mm) const;
  /// Slope (rows, cols) of the surface under a spot, as slope(): one inverse transform.
  Array2d slope(Direction direction, const SpotMean& spot = {}) const;
  /// Its root mean square, by Parseval's theorem: no transform.
  double rms_slope(Direction direction, const SpotMean& spot = {}) const;

 private:
  Grid grid_;
  Spectrum half_;
};

}  // namespace libtexture
