// Resample: the sampling theorem, on surfaces whose waves are known.
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/resample.hpp"

using namespace libtexture;

namespace {

/// Three cosines over 12 x 18 mm, the shortest of 12/5 mm along x and 18/4 mm along y, and a mean.
HeightField waves(int rows, int cols) {
  Array2d height(rows, cols);
  for (int i = 0; i < rows; ++i)
    for (int j = 0; j < cols; ++j) {
      const double x = 2 * std::numbers::pi * j / cols, y = 2 * std::numbers::pi * i / rows;
      height(i, j) = 3 + std::cos(2 * x) + 0.5 * std::sin(5 * x + 4 * y) + 0.25 * std::cos(3 * x - y);
    }
  return HeightField(height, 12.0 / cols);
}

double greatest_difference(const HeightField& a, const HeightField& b) {
  return (a.height_um() - b.height_um()).abs().maxCoeff();
}

}  // namespace

TEST_CASE("a surface on another grid is the same function, where both grids hold its waves") {
  // To rounding: the sampling theorem is exact.
  const HeightField surface = waves(36, 24);
  for (const auto& [rows, cols] :
       {std::pair(18, 12), std::pair(27, 18), std::pair(45, 30), std::pair(72, 48)}) {
    const HeightField other = resampled(surface, rows, cols);
    CHECK(other.grid() == waves(rows, cols).grid());
    CHECK(greatest_difference(other, waves(rows, cols)) < 1e-13);
  }
  CHECK(resampled(surface, 36, 24) == surface);
}

TEST_CASE("waves that the new grid does not hold are left out, and the others stay") {
  const HeightField few = resampled(waves(36, 24), 15, 10);  // five waves along 10 pixels: two pixels each
  CHECK(few.mean_um() == Catch::Approx(3).epsilon(1e-13));
  CHECK(few.rms_um() == Catch::Approx(std::sqrt((1 + 0.25 * 0.25) / 2)).epsilon(1e-12));
}

TEST_CASE("pixels that would not be square are refused") {
  CHECK_THROWS_AS(resampled(waves(36, 24), 18, 24), InvalidInput);
}
