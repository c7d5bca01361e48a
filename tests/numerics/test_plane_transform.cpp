#include <cmath>
#include <limits>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/numerics/fft.hpp"
#include "libtexture/numerics/plane_transform.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;

constexpr double epsilon = std::numeric_limits<double>::epsilon();

Values noise(int rows, int cols) {
  Values values(static_cast<std::size_t>(rows) * cols);
  for (std::size_t i = 0; i < values.size(); ++i) values[i] = uniform_at({4, i}) - 0.5;
  return values;
}

Spectrum forward(int rows, int cols, const Values& values) {
  Spectrum half(static_cast<std::size_t>(rows) * (cols / 2 + 1));
  PlaneTransform(rows, cols).forward(values.data(), half.data());
  return half;
}

std::complex<long double> turn(long long numerator, long long denominator) {
  const long double angle = -2 * std::numbers::pi_v<long double> *
                            static_cast<long double>(numerator % denominator) /
                            static_cast<long double>(denominator);
  return {std::cos(angle), std::sin(angle)};
}

// The wave exp(-i q x) at one place, for all modes of the half spectrum: what a single peak of 1 there has.
Spectrum spectrum_of_peak(int rows, int cols, int row, int col) {
  Spectrum half;
  for (int i = 0; i < rows; ++i)
    for (int j = 0; j <= cols / 2; ++j)
      half.emplace_back(turn(static_cast<long long>(i) * row, rows) *
                        turn(static_cast<long long>(j) * col, cols));
  return half;
}

template <class Numbers>
double relative_error(const Numbers& numbers, const Numbers& truth) {
  double error = 0, size = 0;
  for (std::size_t k = 0; k < numbers.size(); ++k) {
    error += std::norm(numbers[k] - truth[k]);
    size += std::norm(truth[k]);
  }
  return std::sqrt(error / size);
}

struct Shape {
  int rows, cols;
};
constexpr Shape small_shapes[] = {{1, 4}, {1, 5},  {1, 15}, {1, 16}, {2, 4},  {3, 4},   {5, 9},  {7, 7},
                                  {8, 8}, {6, 10}, {12, 7}, {9, 25}, {13, 6}, {11, 14}, {20, 30}};
constexpr Shape used_shapes[] = {{64, 64},   {96, 120},  {1, 1000},  {81, 81},
                                 {125, 200}, {256, 256}, {384, 512}, {1, 16384}};

}  // namespace

TEST_CASE("a patch's transform is the sum that defines it") {
  for (const auto& [rows, cols] : small_shapes) {
    const Values values = noise(rows, cols);
    std::vector<std::complex<long double>> sums(static_cast<std::size_t>(rows) * (cols / 2 + 1));
    for (int row = 0; row < rows; ++row)
      for (int col = 0; col < cols; ++col)
        for (int i = 0; i < rows; ++i)
          for (int j = 0; j <= cols / 2; ++j)
            sums[i * (cols / 2 + 1) + j] += static_cast<long double>(values[row * cols + col]) *
                                            turn(static_cast<long long>(i) * row, rows) *
                                            turn(static_cast<long long>(j) * col, cols);
    INFO(rows << " x " << cols);
    // Rounding: error growth as eps sqrt(log n), see test_line_transform.cpp.
    CHECK(relative_error(forward(rows, cols, values), Spectrum(sums.begin(), sums.end())) < 3 * epsilon);
  }
}

TEST_CASE("a single peak has all waves, each of its phase") {
  for (const auto& [rows, cols] : {Shape{8, 8}, {9, 15}, {64, 48}, {1, 243}, {100, 100}})
    for (const auto& [row, col] : {std::pair{0, 0}, {rows - 1, 3}, {rows / 2, cols - 2}}) {
      Values peak(static_cast<std::size_t>(rows) * cols, 0.0);
      peak[static_cast<std::size_t>(row) * cols + col] = 1;
      // Closed form; a product of a few rounded turns.
      CHECK(relative_error(forward(rows, cols, peak), spectrum_of_peak(rows, cols, row, col)) < 4 * epsilon);
    }
}

TEST_CASE("a cosine has two modes, which are each other's mirror image") {
  for (const auto& [rows, cols] : {Shape{16, 32}, {15, 27}, {1, 50}, {60, 90}}) {
    const int i = rows / 3, j = cols / 4;
    Values values;
    for (int row = 0; row < rows; ++row)
      for (int col = 0; col < cols; ++col)
        values.push_back(static_cast<double>(
            (turn(static_cast<long long>(i) * row, rows) * turn(static_cast<long long>(j) * col, cols))
                .real()));
    Spectrum truth(static_cast<std::size_t>(rows) * (cols / 2 + 1), 0.0);
    truth[static_cast<std::size_t>(i) * (cols / 2 + 1) + j] = rows * cols / 2.0;  // closed form
    CHECK(relative_error(forward(rows, cols, values), truth) < 4 * epsilon);      // rounding
  }
}

TEST_CASE("a patch and its spectrum hold the same energy (Parseval)") {
  for (const auto& [rows, cols] : used_shapes) {
    const Values values = noise(rows, cols);
    const Spectrum half = forward(rows, cols, values);
    const Grid grid{rows, cols, 1};
    long double of_values = 0, of_modes = 0;
    for (const double value : values) of_values += static_cast<long double>(value) * value;
    for (std::size_t k = 0; k < half.size(); ++k)
      of_modes += modes_of_column(grid, static_cast<int>(k % grid.half_cols())) *
                  std::norm(std::complex<long double>(half[k]));
    // The spectrum's error is independent of it, so that far less than its relative error of a few eps is
    // left.
    CHECK(std::abs(static_cast<double>(of_modes / (of_values * grid.size()) - 1)) < 2 * epsilon);
  }
}

TEST_CASE("errors of a patch there and back grow as the root of the logarithm of its size") {
  for (const int n : {4, 8, 16, 32, 64, 128, 256, 512, 1024}) {
    const Values values = noise(n, n);
    Spectrum half(static_cast<std::size_t>(n) * (n / 2 + 1));
    Values back(values.size());
    PlaneTransform transform(n, n);
    transform.forward(values.data(), half.data());
    transform.inverse(half.data(), back.data());
    for (double& value : back) value /= n * n;
    // The law: fftw.org/accuracy/method.html. The factor is what is measured, 0.4, and a half more.
    CHECK(relative_error(back, values) < 0.6 * epsilon * std::sqrt(std::log2(n * n)));
  }
}

TEST_CASE("a patch's transform agrees with that of the build, FFTW unless another was asked for") {
  for (const auto& [rows, cols] : used_shapes) {
    const Fft fft(Grid{rows, cols, 1});
    const Values values = noise(rows, cols);
    const Spectrum own = forward(rows, cols, values);
    Spectrum half(fft.half_size());
    fft.forward(values, half);
    CHECK(relative_error(own, half) < 4 * epsilon);  // the rounding of both
    Values back(values.size()), own_back(values.size());
    Spectrum copy = half;
    fft.inverse_unscaled(half, back);
    PlaneTransform(rows, cols).inverse(copy.data(), own_back.data());
    CHECK(relative_error(own_back, back) < 4 * epsilon);
  }
}
