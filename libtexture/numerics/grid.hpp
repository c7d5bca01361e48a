#pragma once
// Grid: a periodic patch of square pixels and its wave numbers.

#include <tuple>
#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// A periodic patch of rows x cols square pixels; pixel centres at (i + 1/2) pixel_mm. One row is a profile.
struct Grid {
  int rows = 0;             ///< number of rows (y), 1 to 16384
  int cols = 0;             ///< number of columns (x), 4 to 16384
  double pixel_mm = unset;  ///< side of a pixel, > 0

  int size() const { return rows * cols; }
  /// Columns of the half spectrum of a real-to-complex transform.
  int half_cols() const { return cols / 2 + 1; }
  double width_mm() const { return cols * pixel_mm; }
  double height_mm() const { return rows * pixel_mm; }

  void validate() const;
  bool operator==(const Grid&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("rows", &Grid::rows), required("cols", &Grid::cols),
                      required("pixel_mm", &Grid::pixel_mm)};
  }
};

/// Signed mode number of a transform's index: 0, 1, ..., -2, -1.
inline int signed_mode(int index, int count) {
  return index <= count / 2 ? index : index - count;
}

/// Modes of the whole spectrum that one of the half spectrum stands for: itself and its mirror image, but for
/// the first column and, where cols is even, the last.
inline int modes_of_column(const Grid& grid, int column) {
  return column == 0 || 2 * column == grid.cols ? 1 : 2;
}

/// Wave number q = 2 pi / wavelength [1/m] of each mode of the half spectrum, row by row, size rows *
/// half_cols().
std::vector<double> wave_numbers_per_m(const Grid& grid);

}  // namespace libtexture
