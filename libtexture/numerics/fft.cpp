#include "libtexture/numerics/fft.hpp"

namespace libtexture {

std::size_t Fft::real_size() const {
  return real_size_;
}
std::size_t Fft::half_size() const {
  return half_size_;
}

void Fft::inverse(Spectrum& half, AlignedVector<double>& values) const {
  inverse_unscaled(half, values);
  const double scale = 1.0 / static_cast<double>(real_size_);
  for (double& value : values) value *= scale;
}

void Fft::filter(const AlignedVector<double>& in, const AlignedVector<double>& multiplier,
                 AlignedVector<double>& out) {
  forward(in, work_);
  const double scale = 1.0 / static_cast<double>(real_size_);
  for (std::size_t k = 0; k < half_size_; ++k) work_[k] *= multiplier[k] * scale;
  inverse_unscaled(work_, out);
}

Spectrum spectrum_of(const Array2d& values, double pixel_mm) {
  const Grid grid{static_cast<int>(values.rows()), static_cast<int>(values.cols()), pixel_mm};
  const Fft fft(grid);
  const AlignedVector<double> copy(values.data(), values.data() + values.size());
  Spectrum half(fft.half_size());
  fft.forward(copy, half);
  return half;
}

Array2d values_of(Spectrum half, const Grid& grid) {
  const Fft fft(grid);
  AlignedVector<double> values(fft.real_size());
  fft.inverse(half, values);
  return Eigen::Map<const Array2d>(values.data(), grid.rows, grid.cols);
}

}  // namespace libtexture
