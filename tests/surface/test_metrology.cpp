#include <cmath>
#include <limits>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/surface/metrology.hpp"

using namespace libtexture;
using Catch::Approx;

TEST_CASE("the bands of a surface add up to its rms") {
  for (const auto& [rows, cols] : {std::pair{1, 64}, {24, 33}, {15, 20}}) {
    Array2d heights(rows, cols);
    for (Eigen::Index i = 0; i < heights.size(); ++i)
      heights.data()[i] = 3 + uniform_at({2, static_cast<std::uint64_t>(i)});
    const HeightField field(heights, 0.1);
    double power = 0;
    for (const double rms :
         band_rms_um(field, {0.01, 0.3, 0.5, 1, 2, std::numeric_limits<double>::infinity()}))
      power += rms * rms;
    CHECK(std::sqrt(power) == Approx(field.rms_um()).epsilon(1e-12));  // Parseval (closed form); rounding
  }
}

TEST_CASE("a cosine lies in the band that holds its wavelength, with amplitude/sqrt 2") {
  Array2d heights(6, 80);
  for (int j = 0; j < 80; ++j) heights.col(j) = 2.0 * std::cos(2 * std::numbers::pi * 4 * j / 80.0);
  const auto rms =
      band_rms_um(HeightField(heights, 0.1), {0.5, 1, 1.9, 2.1, 10});  // 8 mm patch, 4 waves: 2 mm
  CHECK(rms[2] == Approx(std::numbers::sqrt2).epsilon(1e-12));         // closed form; rounding
  for (const std::size_t empty : {0, 1, 3}) CHECK(rms[empty] < 1e-12);
}

TEST_CASE("a wavelength on an edge belongs to the longer band") {
  Array2d heights(1, 64);
  for (int j = 0; j < 64; ++j) heights(0, j) = std::cos(2 * std::numbers::pi * 8 * j / 64.0);
  const auto rms = band_rms_um(HeightField(heights, 0.25), {1, 2, 4});  // wavelength exactly 2 mm
  CHECK(rms[0] < 1e-12);
  CHECK(rms[1] == Approx(1 / std::numbers::sqrt2).epsilon(1e-12));
}

TEST_CASE("edges must be two or more positive wavelengths that increase") {
  const HeightField field(Array2d::Zero(4, 4), 0.1);
  CHECK_THROWS_WITH(band_rms_um(field, {1}),
                    "band_rms_um: edges_mm must hold at least two wavelengths (got 1 mm)");
  CHECK_THROWS_WITH(band_rms_um(field, {1, 1}), "band_rms_um: edges_mm must increase (got 1 mm)");
  CHECK_THROWS_WITH(band_rms_um(field, {0, 1}), "band_rms_um: edges_mm must be > 0 (got 0 mm)");
}
