#include "libtexture/numerics/plane_transform.hpp"

#include <algorithm>

namespace libtexture {
namespace {

using Pair [[gnu::vector_size(16)]] = double;
constexpr int block_lines = 4;

Pair pair_at(const double* p) { Pair v; __builtin_memcpy(&v, __builtin_assume_aligned(p, 16), 16); return v; }
void put(Pair v, double* p) { __builtin_memcpy(__builtin_assume_aligned(p, 16), &v, 16); }

// interleaved memory -> element blocks [re lines][im lines]
template <bool Swap>
void load(const double* from, std::size_t step, std::size_t apart, int places, int lines, double* to) {
  step *= 2, apart *= 2;
  if (lines % 2 == 0) {
    for (int k = 0; k < places; ++k, from += step, to += 2 * lines)
      for (int l = 0; l < lines; l += 2) {
        const Pair a = pair_at(from + l * apart), b = pair_at(from + (l + 1) * apart);
        put(Pair{a[0], b[0]}, to + l + (Swap ? lines : 0));
        put(Pair{a[1], b[1]}, to + l + (Swap ? 0 : lines));
      }
    return;
  }
  for (int k = 0; k < places; ++k, from += step, to += 2 * lines)
    for (int l = 0; l < lines; ++l) {
      to[l + (Swap ? lines : 0)] = from[l * apart];
      to[l + (Swap ? 0 : lines)] = from[l * apart + 1];
    }
}
// split [re places*lines][im places*lines] -> interleaved memory
template <bool Swap>
void store(const double* from, std::size_t im, double* to, std::size_t step, std::size_t apart, int places, int lines) {
  step *= 2, apart *= 2;
  const double* re_at = Swap ? from + im : from;
  const double* im_at = Swap ? from : from + im;
  if (lines % 2 == 0) {
    for (int k = 0; k < places; ++k, to += step, re_at += lines, im_at += lines)
      for (int l = 0; l < lines; l += 2) {
        const Pair re = pair_at(re_at + l), imag = pair_at(im_at + l);
        put(Pair{re[0], imag[0]}, to + l * apart);
        put(Pair{re[1], imag[1]}, to + (l + 1) * apart);
      }
    return;
  }
  for (int k = 0; k < places; ++k, to += step, re_at += lines, im_at += lines)
    for (int l = 0; l < lines; ++l) {
      to[l * apart] = re_at[l];
      to[l * apart + 1] = im_at[l];
    }
}

template <class Work>
void over_blocks(int count, Work&& work) {
  int first = 0;
  for (; first + block_lines <= count; first += block_lines) work(first, block_lines);
  for (; first < count; ++first) work(first, 1);
}

}  // namespace

PlaneTransform::PlaneTransform(int rows, int cols)
    : rows_(rows), cols_(cols), half_cols_(cols / 2 + 1),
      row_(LineTransform::of(cols % 2 == 0 ? cols / 2 : cols)), column_(LineTransform::of(rows)) {
  if (cols % 2 == 0)
    for (int k = 0; 4 * k <= cols; ++k) turns_.push_back(turn_of(k, cols));
  const std::size_t longest = std::max(rows, row_->length()) + 1;
  buffer_.resize(2 * block_lines * longest);
  other_.resize(2 * block_lines * longest);
}

void PlaneTransform::transform_columns(std::complex<double>* half, bool inverse) {
  if (rows_ == 1) return;
  auto* raw = reinterpret_cast<double*>(half);
  over_blocks(half_cols_, [&](int first, int lines) {
    double* at = raw + 2 * first;
    inverse ? load<true>(at, half_cols_, 1, rows_, lines, buffer_.data()) : load<false>(at, half_cols_, 1, rows_, lines, buffer_.data());
    const double* z = column_->transform(buffer_.data(), other_.data(), lines);
    const std::size_t im = static_cast<std::size_t>(rows_) * lines;
    inverse ? store<true>(z, im, at, half_cols_, 1, rows_, lines) : store<false>(z, im, at, half_cols_, 1, rows_, lines);
  });
}

void PlaneTransform::forward(const double* values, std::complex<double>* half) {
  auto* raw = reinterpret_cast<double*>(half);
  const int h = row_->length();
  over_blocks(rows_, [&](int first, int lines) {
    const double* row = values + static_cast<std::size_t>(first) * cols_;
    double* out = raw + 2 * static_cast<std::size_t>(first) * half_cols_;
    const std::size_t im = static_cast<std::size_t>(h) * lines;
    if (cols_ % 2) {
      for (int k = 0; k < h; ++k) for (int l = 0; l < lines; ++l) {
        buffer_[2 * lines * k + l] = row[l * cols_ + k]; buffer_[2 * lines * k + lines + l] = 0; }
      store<false>(row_->transform(buffer_.data(), other_.data(), lines), im, out, 1, half_cols_, half_cols_, lines);
      return;
    }
    load<false>(row, 1, cols_ / 2, h, lines, buffer_.data());
    double* z = row_->transform(buffer_.data(), other_.data(), lines);
    double* x = z == buffer_.data() ? other_.data() : buffer_.data();
    const std::size_t xim = im + lines;
    for (int l = 0; l < lines; ++l) {
      x[l] = z[l] + z[im + l]; x[xim + l] = 0;
      x[h * lines + l] = z[l] - z[im + l]; x[xim + h * lines + l] = 0;
    }
    for (int k = 1; 2 * k <= h; ++k) {
      const double c = .5 * turns_[k].re, s = .5 * turns_[k].im;
      double* __restrict x1 = x + k * lines; double* __restrict x2 = x + (h - k) * lines;
      const double* z1 = z + k * lines; const double* z2 = z + (h - k) * lines;
      for (int l = 0; l < lines; ++l) {
        const double sr = .5 * (z1[l] + z2[l]), si = .5 * (z1[im + l] - z2[im + l]);
        const double dr = z1[l] - z2[l], di = z1[im + l] + z2[im + l];
        // t = -i w d
        const double tr = s * dr + c * di, ti = s * di - c * dr;
        x2[l] = sr - tr; x2[xim + l] = ti - si;
        x1[l] = sr + tr; x1[xim + l] = si + ti;
      }
    }
    store<false>(x, xim, out, 1, half_cols_, half_cols_, lines);
  });
  transform_columns(half, false);
}

void PlaneTransform::inverse(std::complex<double>* half, double* values) {
  transform_columns(half, true);
  auto* raw = reinterpret_cast<double*>(half);
  const int h = row_->length();
  over_blocks(rows_, [&](int first, int lines) {
    double* row = values + static_cast<std::size_t>(first) * cols_;
    const double* in = raw + 2 * static_cast<std::size_t>(first) * half_cols_;
    const std::size_t im = static_cast<std::size_t>(h) * lines;
    double* b = buffer_.data();
    if (cols_ % 2) {
      for (int l = 0; l < lines; ++l) {
        const double* x = in + 2 * l * half_cols_;
        b[lines + l] = x[0]; b[l] = 0;
        for (int k = 1; k < half_cols_; ++k) {
          b[2 * lines * k + lines + l] = b[2 * lines * (h - k) + lines + l] = x[2 * k];
          b[2 * lines * k + l] = x[2 * k + 1]; b[2 * lines * (h - k) + l] = -x[2 * k + 1];
        }
      }
      const double* z = row_->transform(b, other_.data(), lines) + im;
      for (int k = 0; k < h; ++k) for (int l = 0; l < lines; ++l) row[l * cols_ + k] = z[k * lines + l];
      return;
    }
    double* x = other_.data();
    load<true>(in, 1, half_cols_, half_cols_, lines, x);  // [im][re]
    for (int l = 0; l < lines; ++l) {
      const double a = x[lines + l], c = x[2 * lines * h + lines + l];
      b[lines + l] = a + c; b[l] = a - c;
    }
    for (int k = 1; 2 * k <= h; ++k) {
      const double c = turns_[k].re, s = turns_[k].im;
      const double* x1 = x + 2 * k * lines; const double* x2 = x + 2 * (h - k) * lines;
      double* __restrict b1 = b + 2 * k * lines; double* __restrict b2 = b + 2 * (h - k) * lines;
      for (int l = 0; l < lines; ++l) {
        const double sr = x1[lines + l] + x2[lines + l], si = x1[l] - x2[l];
        const double dr = x1[lines + l] - x2[lines + l], di = x1[l] + x2[l];
        // t = i conj(w) d,  conj w = c - i s: i c + s
        const double tr = s * dr - c * di, ti = s * di + c * dr;
        b2[lines + l] = sr - tr; b2[l] = ti - si;
        b1[lines + l] = sr + tr; b1[l] = si + ti;
      }
    }
    const double* z = row_->transform(b, other_.data(), lines);
    store<true>(z, im, row, 1, cols_ / 2, h, lines);
  });
}

}  // namespace libtexture
