#pragma once
// Fft: the real two-dimensional transform, behind which FFTW or the library's own PlaneTransform does the work.

#include <complex>
#include <memory>

#include "libtexture/numerics/array.hpp"
#include "libtexture/numerics/grid.hpp"

namespace libtexture {

using Spectrum = AlignedVector<std::complex<double>>;

/// Transforms of one grid shape. Plans are estimated, not measured, so that runs repeat to the last bit.
/// Not shared between threads: each thread makes its own.
class Fft {
 public:
  explicit Fft(const Grid& grid);
  ~Fft();
  Fft(Fft&&) noexcept;
  Fft& operator=(Fft&&) noexcept;

  std::size_t real_size() const;  ///< rows * cols
  std::size_t half_size() const;  ///< rows * (cols / 2 + 1)

  /// Half spectrum of `values` (real_size() numbers, row by row), not scaled: H = sum h exp(-i q x).
  void forward(const AlignedVector<double>& values, Spectrum& half) const;

  /// The values again, scaled by 1/(rows cols); `half` is destroyed.
  void inverse(Spectrum& half, AlignedVector<double>& values) const;

  /// As inverse(), but rows cols times too large: for callers that fold the scale into a multiplier.
  void inverse_unscaled(Spectrum& half, AlignedVector<double>& values) const;

  /// values -> multiplier(q) values in Fourier space: one transform pair. `in` and `out` may be the same
  /// vector. multiplier: half_size() real numbers.
  void filter(const AlignedVector<double>& in, const AlignedVector<double>& multiplier,
              AlignedVector<double>& out);

 private:
  struct Plans;
  std::shared_ptr<Plans> plans_;
  std::size_t real_size_;
  std::size_t half_size_;
  Spectrum work_;
};

/// Half spectrum of an array held by a caller (allocates; for set-up and evaluation, not for inner loops).
Spectrum spectrum_of(const Array2d& values, double pixel_mm);

/// The array of a half spectrum, scaled by 1/(rows cols).
Array2d values_of(Spectrum half, const Grid& grid);

}  // namespace libtexture
