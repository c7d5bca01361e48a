#include "libtexture/surface/metrology.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

namespace {

void require_edges(const std::vector<double>& edges_mm) {
  const auto count = static_cast<double>(edges_mm.size());
  require(edges_mm.size() >= 2, "band_rms_um", "edges_mm", "must hold at least two wavelengths", count);
  for (std::size_t i = 0; i < edges_mm.size(); ++i) {
    require(edges_mm[i] > 0, "band_rms_um", "edges_mm", "must be > 0", edges_mm[i]);
    require(i == 0 || edges_mm[i] > edges_mm[i - 1], "band_rms_um", "edges_mm", "must increase", edges_mm[i]);
  }
}

}  // namespace

std::vector<double> band_rms_um(const HeightField& field, const std::vector<double>& edges_mm) {
  require_edges(edges_mm);
  const Grid& grid = field.grid();
  const Spectrum half = spectrum_of(field.height_um(), field.pixel_mm());
  std::vector<double> power(edges_mm.size() - 1);
  for (int i = 0; i < grid.rows; ++i) {
    for (int j = 0; j < grid.half_cols(); ++j) {
      if (i == 0 && j == 0) continue;  // the mean is no wave
      const double frequency = std::hypot(signed_mode(i, grid.rows) / grid.height_mm(), j / grid.width_mm());
      const auto above = std::upper_bound(edges_mm.begin(), edges_mm.end(), 1 / frequency);
      if (above == edges_mm.begin() || above == edges_mm.end()) continue;
      power[static_cast<std::size_t>(above - edges_mm.begin()) - 1] +=
          modes_of_column(grid, j) * std::norm(half[static_cast<std::size_t>(i) * grid.half_cols() + j]);
    }
  }
  for (double& value : power) value = std::sqrt(value) / grid.size();
  return power;
}

}  // namespace libtexture
