#include "libtexture/numerics/plane_transform.hpp"

#include <algorithm>
#include <cstring>
#include <memory>
#include <utility>

namespace libtexture {
namespace {

using Direction = LineTransform::Direction;

// Rows of a power of two share few places of a cache, so that few of them fit; of columns, many together read
// whole cache lines.
constexpr int most_rows = 8;
constexpr int most_columns = 16;

template <class Work>
void over_blocks(int count, int most_lines, Work&& work) {
  for (int first = 0, lines = most_lines; first < count; lines /= 2)
    for (; first + lines <= count; first += lines) work(first, lines);
}

double* raw(std::complex<double>* numbers) {
  return reinterpret_cast<double*>(numbers);
}

using Pair [[gnu::vector_size(16)]] = double;
Pair load(const double* place) {
  Pair numbers;
  std::memcpy(&numbers, std::assume_aligned<sizeof(Pair)>(place), sizeof(Pair));
  return numbers;
}
void store(const Pair& numbers, double* place) {
  std::memcpy(std::assume_aligned<sizeof(Pair)>(place), &numbers, sizeof(Pair));
}

// Calls part(Z_k, conj Z_h-k, exp(-2 pi i k / cols)), which gives two parts: their sum becomes the new number
// k and the mirror image of their difference h - k.
template <class Part>
void each_mirrored_pair(double* row, const std::vector<Turn>& turns, int pairs, Part&& part) {
  double *low = row, *high = row + 2 * pairs;
  const Turn* turn = turns.data();
  for (int k = 1; 2 * k <= pairs; ++k) {
    low += 2;
    high -= 2;
    const Pair mirrored = load(high);
    const auto [even, odd] = part(load(low), Pair{mirrored[0], -mirrored[1]}, *++turn);
    const Pair back = even - odd;
    store(Pair{back[0], -back[1]}, high);
    store(even + odd, low);
  }
}

}  // namespace

PlaneTransform::PlaneTransform(int rows, int cols)
    : rows_(rows),
      cols_(cols),
      half_cols_(cols / 2 + 1),
      row_(LineTransform::of(cols % 2 == 0 ? cols / 2 : cols)),
      column_(LineTransform::of(rows)),
      work_(std::max(row_->work_size(most_rows), column_->work_size(most_columns))) {
  if (cols % 2 == 1) wide_.resize(static_cast<std::size_t>(most_rows) * cols);
  for (int k = 0; cols % 2 == 0 && 4 * k <= cols; ++k) turns_.push_back(turn_of(k, cols));
}

// Neighbours x_2j, x_2j+1 of a row are taken as one complex number z_j. Of its transform Z, of length h, the
// even numbers have E_k = (Z_k + conj Z_h-k) / 2 and the odd ones O_k = -i (Z_k - conj Z_h-k) / 2, so that
// X_k = E_k + exp(-2 pi i k / cols) O_k, and X_h-k is the mirror image of their difference.
void PlaneTransform::separate(std::complex<double>* row) const {
  const int pairs = cols_ / 2;
  const std::complex<double> z = row[0];
  row[0] = z.real() + z.imag();
  row[pairs] = z.real() - z.imag();
  each_mirrored_pair(raw(row), turns_, pairs, [](Pair low, Pair high, const Turn& turn) {
    const Pair difference = 0.5 * (low - high);
    return std::pair{0.5 * (low + high),
                     turn.im * difference + turn.re * Pair{difference[1], -difference[0]}};
  });
}

void PlaneTransform::merge(std::complex<double>* row) const {
  const int pairs = cols_ / 2;
  const double first = row[0].real(), last = row[pairs].real();
  row[0] = {first + last, first - last};
  each_mirrored_pair(raw(row), turns_, pairs, [](Pair low, Pair high, const Turn& turn) {
    const Pair difference = low - high;
    return std::pair{low + high, turn.im * difference + turn.re * Pair{-difference[1], difference[0]}};
  });
}

void PlaneTransform::transform_columns(std::complex<double>* half, Direction direction) {
  if (rows_ == 1) return;
  over_blocks(half_cols_, most_columns, [&](int first, int lines) {
    const Lines columns{raw(half + first), half_cols_, 1};
    column_->transform(columns, columns, lines, direction, work_);
  });
}

// Even numbers of columns: a row is transformed as half as many complex numbers. Odd ones: as complex numbers
// without imaginary parts, in `wide_`.
void PlaneTransform::forward(const double* values, std::complex<double>* half) {
  over_blocks(rows_, most_rows, [&](int first, int lines) {
    const double* from = values + static_cast<std::size_t>(first) * cols_;
    std::complex<double>* to = half + static_cast<std::size_t>(first) * half_cols_;
    if (cols_ % 2 == 1) return forward_odd(from, to, lines);
    const Lines pairs{const_cast<double*>(from), 1, cols_ / 2};
    row_->transform(pairs, {raw(to), 1, half_cols_}, lines, Direction::forward, work_);
    for (int line = 0; line < lines; ++line) separate(to + static_cast<std::size_t>(line) * half_cols_);
  });
  transform_columns(half, Direction::forward);
}

void PlaneTransform::inverse(std::complex<double>* half, double* values) {
  transform_columns(half, Direction::inverse);
  over_blocks(rows_, most_rows, [&](int first, int lines) {
    std::complex<double>* from = half + static_cast<std::size_t>(first) * half_cols_;
    double* to = values + static_cast<std::size_t>(first) * cols_;
    if (cols_ % 2 == 1) return inverse_odd(from, to, lines);
    for (int line = 0; line < lines; ++line) merge(from + static_cast<std::size_t>(line) * half_cols_);
    row_->transform({raw(from), 1, half_cols_}, {to, 1, cols_ / 2}, lines, Direction::inverse, work_);
  });
}

void PlaneTransform::forward_odd(const double* values, std::complex<double>* half, int lines) {
  const Lines wide{raw(wide_.data()), 1, cols_};
  std::copy_n(values, static_cast<std::size_t>(lines) * cols_, wide_.begin());
  row_->transform(wide, wide, lines, Direction::forward, work_);
  for (int line = 0; line < lines; ++line)
    std::copy_n(wide_.begin() + line * cols_, half_cols_, half + static_cast<std::size_t>(line) * half_cols_);
}

void PlaneTransform::inverse_odd(const std::complex<double>* half, double* values, int lines) {
  for (int line = 0; line < lines; ++line, half += half_cols_) {
    std::complex<double>* row = wide_.data() + static_cast<std::size_t>(line) * cols_;
    row[0] = half[0].real();
    for (int k = 1; k < half_cols_; ++k) {
      row[k] = half[k];
      row[cols_ - k] = std::conj(half[k]);
    }
  }
  const Lines wide{raw(wide_.data()), 1, cols_};
  row_->transform(wide, wide, lines, Direction::inverse, work_);
  for (std::size_t k = 0; k < static_cast<std::size_t>(lines) * cols_; ++k) values[k] = wide_[k].real();
}

}  // namespace libtexture
