#include "libtexture/surface/resample.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/fft.hpp"

namespace libtexture {

namespace {

// Index of a mode of one transform in another; none where one of them lacks it.
int index_in(int other_count, int index, int count) {
  const int mode = signed_mode(index, count);
  if (2 * std::abs(mode) >= std::min(count, other_count)) return -1;
  return mode < 0 ? mode + other_count : mode;
}

}  // namespace

HeightField resampled(const HeightField& surface, int rows, int cols) {
  const Grid& from = surface.grid();
  const Grid to{rows, cols, from.width_mm() / cols};
  to.validate();
  require(static_cast<long long>(rows) * from.cols == static_cast<long long>(cols) * from.rows, "resampled",
          "rows, cols", "must be in the ratio of the surface's", static_cast<double>(rows) / cols);
  if (to == from) return surface;
  const Spectrum before = spectrum_of(surface.height_um(), from.pixel_mm);
  Spectrum after(static_cast<std::size_t>(to.rows) * to.half_cols());
  const double scale = static_cast<double>(to.size()) / from.size();
  for (int row = 0; row < from.rows; ++row) {
    const int to_row = index_in(to.rows, row, from.rows);
    if (to_row < 0) continue;
    for (int col = 0; 2 * col < std::min(from.cols, to.cols); ++col)
      after[static_cast<std::size_t>(to_row) * to.half_cols() + col] =
          scale * before[static_cast<std::size_t>(row) * from.half_cols() + col];
  }
  return HeightField(values_of(std::move(after), to), to.pixel_mm);
}

}  // namespace libtexture
