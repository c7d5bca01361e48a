#include "libtexture/plan/node_patch.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/surface/resample.hpp"

namespace libtexture {

namespace {

// Tests and docs/physics.md show what that moves.
constexpr double pixels_a_wave = 8;
constexpr int pixels_a_side = 64;

// Even, and of small factors: transforms of other lengths take longer.
bool is_fast(int count) {
  if (count % 2 != 0) return false;
  for (const int factor : {2, 3, 5})
    while (count % factor == 0) count /= factor;
  return count == 1;
}

}  // namespace

HeightField node_patch(const HeightField& surface) {
  const Grid& grid = surface.grid();
  const int parts = std::gcd(grid.rows, grid.cols);  // squares along the shorter side of which both are whole
  const int rows = grid.rows / parts, cols = grid.cols / parts;
  const double by_waves = parts * grid.pixel_mm * pixels_a_wave / mean_wavelength_mm(surface);
  const double by_side = static_cast<double>(pixels_a_side) / std::min(rows, cols);
  for (int n = 1; n < parts; ++n)
    if (n >= std::max(by_waves, by_side) && is_fast(n * rows) && is_fast(n * cols))
      return resampled(surface, n * rows, n * cols);
  return surface;
}

}  // namespace libtexture
