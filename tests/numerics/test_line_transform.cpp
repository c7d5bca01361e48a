#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include <vector>

#include "catch.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/numerics/line_transform.hpp"

using namespace libtexture;

namespace {

using Line = std::vector<std::complex<double>>;
using Direction = LineTransform::Direction;
using LongLine = std::vector<std::complex<long double>>;

constexpr double epsilon = std::numeric_limits<double>::epsilon();

Line noise(int length, int key) {
  Line line;
  for (int k = 0; k < length; ++k)
    line.emplace_back(uniform_at({2, std::uint64_t(key), std::uint64_t(k)}) - 0.5,
                      uniform_at({3, std::uint64_t(key), std::uint64_t(k)}) - 0.5);
  return line;
}

std::complex<long double> turn_by_definition(long long numerator, long long denominator) {
  const long double angle = -2 * std::numbers::pi_v<long double> *
                            static_cast<long double>(numerator % denominator) /
                            static_cast<long double>(denominator);
  return {std::cos(angle), std::sin(angle)};
}

LongLine transform_by_definition(const Line& line) {
  const auto length = static_cast<long long>(line.size());
  LongLine sums(line.size());
  for (long long k = 0; k < length; ++k)
    for (long long j = 0; j < length; ++j)
      sums[k] += std::complex<long double>(line[j]) * turn_by_definition(j * k, length);
  return sums;
}

// Lines one after another, with a gap that nothing may be written to, through the transform.
std::vector<Line> transformed(const std::vector<Line>& lines, Direction direction) {
  const int length = static_cast<int>(lines.front().size()), count = static_cast<int>(lines.size());
  const LineTransform transform(length);
  AlignedVector<std::complex<double>> block(static_cast<std::size_t>(count) * (length + 1), 77.0);
  for (int line = 0; line < count; ++line)
    std::copy(lines[line].begin(), lines[line].end(), block.begin() + line * (length + 1));
  AlignedVector<double> work(transform.work_size(count));
  const Lines where{reinterpret_cast<double*>(block.data()), 1, length + 1};
  transform.transform(where, where, count, direction, work);
  std::vector<Line> results;
  for (int line = 0; line < count; ++line) {
    const auto first = block.begin() + line * (length + 1);
    results.emplace_back(first, first + length);
    CHECK(first[length] == 77.0);
  }
  return results;
}

template <class Truth>
double relative_error(const Line& line, const Truth& truth) {
  long double error = 0, size = 0;
  for (std::size_t k = 0; k < line.size(); ++k) {
    error += std::norm(std::complex<long double>(line[k]) - std::complex<long double>(truth[k]));
    size += std::norm(std::complex<long double>(truth[k]));
  }
  return static_cast<double>(std::sqrt(error / size));
}

}  // namespace

TEST_CASE("a line's transform is the sum that defines it, whatever primes divide its length") {
  for (const int length :
       {1,  2,  3,  4,  5,  6,  7,  8,  9,  10, 11, 12, 13, 15, 16,  17,  18,  20,  21,  24,
        25, 27, 30, 32, 35, 40, 45, 49, 55, 60, 64, 72, 77, 97, 100, 121, 125, 128, 150, 210}) {
    const Line line = noise(length, length);
    const Line result = transformed({line}, Direction::forward).front();
    // Johnson and Frigo, "Implementing FFTs in practice", numerical accuracy: the relative error of random
    // lines grows as eps sqrt(log n). The definition's sums over a prime p of 7 or more grow as eps sqrt(p):
    // 97 is the greatest here.
    INFO("length " << length);
    CHECK(relative_error(result, transform_by_definition(line)) < 4 * epsilon);
  }
}

TEST_CASE("forward and back gives a line times its length") {
  for (const int length : {1, 4, 7, 30, 64, 81, 143, 512, 1000}) {
    const Line line = noise(length, length);
    Line back = transformed({transformed({line}, Direction::forward).front()}, Direction::inverse).front();
    for (std::complex<double>& z : back) z /= length;
    CHECK(relative_error(back, line) < 6 * epsilon);  // rounding, twice
  }
}

TEST_CASE("a line gives the same bytes, whatever lines stand beside it") {
  for (const int length : {4, 7, 15, 22, 60, 128}) {
    std::vector<Line> lines;
    for (int count = 1; count <= 16; ++count) {
      lines.push_back(noise(length, count));
      for (const Direction direction : {Direction::forward, Direction::inverse}) {
        const std::vector<Line> together = transformed(lines, direction);
        for (int line = 0; line < count; ++line)
          CHECK(together[line] == transformed({lines[line]}, direction).front());
      }
    }
  }
}

TEST_CASE("lines may lie across memory and go elsewhere, and stay as they were") {
  constexpr int length = 12, count = 4, apart = 7;
  AlignedVector<std::complex<double>> from(length * apart), to(length * count);
  std::vector<Line> lines;
  for (int line = 0; line < count; ++line) {
    lines.push_back(noise(length, line));
    for (int k = 0; k < length; ++k) from[k * apart + line] = lines[line][k];
  }
  const auto before = from;
  const LineTransform transform(length);
  AlignedVector<double> work(transform.work_size(count));
  transform.transform({reinterpret_cast<double*>(from.data()), apart, 1},
                      {reinterpret_cast<double*>(to.data()), 1, length}, count, Direction::forward, work);
  CHECK(from == before);
  for (int line = 0; line < count; ++line)
    CHECK(Line(to.begin() + line * length, to.begin() + (line + 1) * length) ==
          transformed({lines[line]}, Direction::forward).front());
}

TEST_CASE("turns are right to the last digit, and quarter turns exact") {
  for (const int denominator : {1, 3, 7, 8, 12, 1000, 16384})
    for (int numerator = 0; numerator < denominator; ++numerator) {
      const Turn turn = turn_of(numerator, denominator);
      const std::complex<long double> truth = turn_by_definition(numerator, denominator);
      // Half a last digit of numbers of up to 1, and what the longer format itself rounds.
      CHECK(std::abs(turn.re - truth.real()) < 0.51L * epsilon);
      CHECK(std::abs(turn.im - truth.imag()) < 0.51L * epsilon);
    }
  CHECK((turn_of(0, 4).re == 1 && turn_of(0, 4).im == 0));
  CHECK((turn_of(1, 4).re == 0 && turn_of(1, 4).im == -1));
  CHECK((turn_of(2, 4).re == -1 && turn_of(2, 4).im == 0));
  CHECK((turn_of(3, 4).re == 0 && turn_of(3, 4).im == 1));
}
