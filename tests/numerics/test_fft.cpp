#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/numerics/fft.hpp"

using namespace libtexture;

namespace {

AlignedVector<double> noise(std::size_t n) {
  AlignedVector<double> values(n);
  for (std::size_t i = 0; i < n; ++i) values[i] = uniform_at({1, i}) - 0.5;
  return values;
}

}  // namespace

TEST_CASE("a transform and its inverse give the values back, whatever the shape") {
  for (const auto& [rows, cols] : {std::pair{1, 16}, {8, 8}, {5, 9}, {12, 7}}) {
    Fft fft(Grid{rows, cols, 0.1});
    const auto values = noise(fft.real_size());
    Spectrum half(fft.half_size());
    AlignedVector<double> back(fft.real_size());
    fft.forward(values, half);
    fft.inverse(half, back);
    for (std::size_t i = 0; i < values.size(); ++i) CHECK(std::abs(back[i] - values[i]) < 1e-14);  // rounding
  }
}

TEST_CASE("a cosine has one mode, of half its amplitude times the number of points") {
  const Grid grid{4, 16, 0.1};
  Array2d values(grid.rows, grid.cols);
  for (int j = 0; j < grid.cols; ++j)
    values.col(j) = 2.0 * std::cos(2 * std::numbers::pi * 3 * j / grid.cols);
  const Spectrum half = spectrum_of(values, grid.pixel_mm);
  CHECK(std::abs(half[3] - std::complex<double>(grid.size(), 0)) < 1e-12);  // closed form; rounding
  CHECK(std::abs(half[2]) < 1e-12);
}

TEST_CASE("a filter of ones changes nothing and may work in place") {
  Fft fft(Grid{6, 10, 0.1});
  const auto values = noise(fft.real_size());
  auto out = values;
  fft.filter(out, AlignedVector<double>(fft.half_size(), 1.0), out);
  for (std::size_t i = 0; i < values.size(); ++i) CHECK(std::abs(out[i] - values[i]) < 1e-14);  // rounding
}
