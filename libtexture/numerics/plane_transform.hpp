#pragma once
// PlaneTransform: the real two-dimensional transform of the library's own, which needs no other library.

#include <complex>
#include <memory>

#include "libtexture/numerics/array.hpp"
#include "libtexture/numerics/line_transform.hpp"

namespace libtexture {

/// Transforms of one shape, of arrays on boundaries of 16 bytes. Not shared between threads: each thread
/// makes its own.
class PlaneTransform {
 public:
  PlaneTransform(int rows, int cols);

  /// `half`, shape (rows, cols / 2 + 1) = sum of `values`, shape (rows, cols), times exp(-i q x): not scaled.
  void forward(const double* values, std::complex<double>* half);
  /// `values` = rows * cols times the values of the half spectrum, which is destroyed.
  void inverse(std::complex<double>* half, double* values);

 private:
  void transform_columns(std::complex<double>* half, LineTransform::Direction direction);
  void separate(std::complex<double>* row) const;
  void merge(std::complex<double>* row) const;
  void forward_odd(const double* values, std::complex<double>* half, int lines);
  void inverse_odd(const std::complex<double>* half, double* values, int lines);

  int rows_, cols_, half_cols_;
  std::shared_ptr<const LineTransform> row_, column_;
  std::vector<Turn> turns_;  // exp(-2 pi i k / cols), where cols is even
  AlignedVector<double> work_;
  AlignedVector<std::complex<double>> wide_;  // complex rows, where cols is odd
};

}  // namespace libtexture
