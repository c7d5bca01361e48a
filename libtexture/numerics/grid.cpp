#include "libtexture/numerics/grid.hpp"

#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

void Grid::validate() const {
  require_within(rows, 1, 16384, "Grid", "rows");
  require_within(cols, 4, 16384, "Grid", "cols");
  require_positive(pixel_mm, "Grid", "pixel_mm");
}

std::vector<double> wave_numbers_per_m(const Grid& grid) {
  const double step_x = 2 * std::numbers::pi / (grid.width_mm() * metre_per_mm);
  const double step_y = 2 * std::numbers::pi / (grid.height_mm() * metre_per_mm);
  std::vector<double> q;
  q.reserve(static_cast<std::size_t>(grid.rows) * grid.half_cols());
  for (int i = 0; i < grid.rows; ++i)
    for (int j = 0; j < grid.half_cols(); ++j)
      q.push_back(std::hypot(signed_mode(i, grid.rows) * step_y, j * step_x));
  return q;
}

}  // namespace libtexture
