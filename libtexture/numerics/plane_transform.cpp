#include "libtexture/numerics/plane_transform.hpp"

#include <algorithm>

namespace libtexture {
namespace {

constexpr int most_lines = 16;

template <class Work>
void over_blocks(int count, Work&& work) {
  for (int first = 0, lines = most_lines; first < count; lines /= 2)
    for (; first + lines <= count; first += lines) work(first, lines);
}

double* raw(std::complex<double>* numbers) {
  return reinterpret_cast<double*>(numbers);
}

}  // namespace

PlaneTransform::PlaneTransform(int rows, int cols)
    : rows_(rows),
      cols_(cols),
      half_cols_(cols / 2 + 1),
      row_(LineTransform::of(cols % 2 == 0 ? cols / 2 : cols)),
      column_(LineTransform::of(rows)),
      work_(std::max(row_->work_size(most_lines), column_->work_size(most_lines))) {
  for (int k = 0; cols % 2 == 0 && 4 * k <= cols; ++k) turns_.push_back(turn_of(k, cols));
}

// Even numbers of columns: neighbours are taken as one complex number, and what they give is taken apart after.
// With Z of the pairs: E, O = (Z_k +- conj Z_h-k) / 2, and X_k = E - i exp(-2 pi i k / cols) O.
void PlaneTransform::separate(std::complex<double>* row) const {
  const int pairs = cols_ / 2;
  const std::complex<double> z = row[0];
  row[0] = z.real() + z.imag();
  row[pairs] = z.real() - z.imag();
  double *low = raw(row), *high = raw(row + pairs);
  for (int k = 1; 2 * k <= pairs; ++k) {
    low += 2;
    high -= 2;
    const double sum_re = 0.5 * (low[0] + high[0]), sum_im = 0.5 * (low[1] - high[1]);
    const double re = 0.5 * (low[0] - high[0]), im = 0.5 * (low[1] + high[1]);
    const double turned_re = turns_[k].im * re + turns_[k].re * im;
    const double turned_im = turns_[k].im * im - turns_[k].re * re;
    high[0] = sum_re - turned_re;
    high[1] = turned_im - sum_im;
    low[0] = sum_re + turned_re;
    low[1] = sum_im + turned_im;
  }
}

void PlaneTransform::merge(std::complex<double>* row) const {
  const int pairs = cols_ / 2;
  const double first = row[0].real(), last = row[pairs].real();
  row[0] = {first + last, first - last};
  double *low = raw(row), *high = raw(row + pairs);
  for (int k = 1; 2 * k <= pairs; ++k) {
    low += 2;
    high -= 2;
    const double sum_re = low[0] + high[0], sum_im = low[1] - high[1];
    const double re = low[0] - high[0], im = low[1] + high[1];
    const double turned_re = turns_[k].im * re - turns_[k].re * im;
    const double turned_im = turns_[k].im * im + turns_[k].re * re;
    high[0] = sum_re - turned_re;
    high[1] = turned_im - sum_im;
    low[0] = sum_re + turned_re;
    low[1] = sum_im + turned_im;
  }
}

void PlaneTransform::transform_columns(std::complex<double>* half, Direction direction) {
  if (rows_ == 1) return;
  over_blocks(half_cols_, [&](int first, int lines) {
    const Lines columns{raw(half + first), half_cols_, 1};
    column_->transform(columns, columns, lines, direction, work_);
  });
}

void PlaneTransform::forward(const double* values, std::complex<double>* half) {
  over_blocks(rows_, [&](int first, int lines) {
    const double* from = values + static_cast<std::size_t>(first) * cols_;
    std::complex<double>* to = half + static_cast<std::size_t>(first) * half_cols_;
    const Lines pairs{const_cast<double*>(from), 1, cols_ / 2};
    row_->transform(pairs, {raw(to), 1, half_cols_}, lines, Direction::forward, work_);
    for (int line = 0; line < lines; ++line) separate(to + static_cast<std::size_t>(line) * half_cols_);
  });
  transform_columns(half, Direction::forward);
}

void PlaneTransform::inverse(std::complex<double>* half, double* values) {
  transform_columns(half, Direction::inverse);
  over_blocks(rows_, [&](int first, int lines) {
    std::complex<double>* from = half + static_cast<std::size_t>(first) * half_cols_;
    for (int line = 0; line < lines; ++line) merge(from + static_cast<std::size_t>(line) * half_cols_);
    const Lines pairs{values + static_cast<std::size_t>(first) * cols_, 1, cols_ / 2};
    row_->transform({raw(from), 1, half_cols_}, pairs, lines, Direction::inverse, work_);
  });
}

}  // namespace libtexture
