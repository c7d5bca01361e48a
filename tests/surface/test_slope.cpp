#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/slope.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

/// cos(2 pi (x/2.4 + y/1.2)) um on 12 x 24 pixels of .2 mm.
double phase(int i, int j) {
  return 2 * std::numbers::pi * ((j + 0.5) * 0.2 / 2.4 + (i + 0.5) * 0.2 / 1.2);
}

HeightField slanted_wave() {
  Array2d heights(12, 24);
  for (int i = 0; i < 12; ++i)
    for (int j = 0; j < 24; ++j) heights(i, j) = std::cos(phase(i, j));
  return {heights, 0.2};
}

}  // namespace

TEST_CASE("the slope of a wave is its derivative at every pixel") {
  const HeightField field = slanted_wave();
  const Array2d x = slope(field, Direction::rows), y = slope(field, Direction::columns);
  for (int i = 0; i < 12; ++i)
    for (int j = 0; j < 24; ++j) {  // closed form; rounding
      CHECK(x(i, j) == Approx(-2 * std::numbers::pi / 2.4 * 1e-3 * std::sin(phase(i, j))).margin(1e-16));
      CHECK(y(i, j) == Approx(-2 * std::numbers::pi / 1.2 * 1e-3 * std::sin(phase(i, j))).margin(1e-16));
    }
  CHECK(rms_slope(field, Direction::rows) == Approx(2 * std::numbers::pi / 2.4 * 1e-3 / std::numbers::sqrt2));
}

TEST_CASE("a profile has no slope along its column, and waves of two pixels none at all") {
  Array2d heights(1, 8);
  heights << 1, -1, 1, -1, 1, -1, 1, -1;
  CHECK((slope({heights, 0.1}, Direction::rows) == 0).all());
  CHECK((slope({heights, 0.1}, Direction::columns) == 0).all());
}

TEST_CASE("a round spot blunts a wave as the mean over the spot does") {
  const HeightField field = slanted_wave();
  const double wavelength_mm = 1 / std::hypot(1 / 2.4, 1 / 1.2), spot_mm = 0.8;
  // Mean of a wave over a disc by chords (its own definition), 20 000 of them: 1e-6.
  double sum = 0, area = 0;
  for (int k = 0; k < 20000; ++k) {
    const double u = ((k + 0.5) / 10000 - 1) * spot_mm / 2;
    const double chord = std::sqrt(spot_mm * spot_mm / 4 - u * u);
    sum += chord * std::cos(2 * std::numbers::pi * u / wavelength_mm);
    area += chord;
  }
  CHECK(rms_slope(field, Direction::rows, spot_mm) / rms_slope(field, Direction::rows) ==
        Approx(sum / area).epsilon(1e-5));
  CHECK_THROWS_AS(slope(field, Direction::rows, -1), InvalidInput);
}
