// The licence-free transform: Eigen's own, row by row and column by column.
#include <unsupported/Eigen/FFT>

#include "libtexture/numerics/fft.hpp"

namespace libtexture {

struct Fft::Plans {
  int rows;
  int cols;
  int half_cols;
  Eigen::FFT<double> engine;
  std::vector<double> row;
  std::vector<std::complex<double>> row_half, column, column_out;

  explicit Plans(const Grid& grid)
      : rows(grid.rows),
        cols(grid.cols),
        half_cols(grid.half_cols()),
        row(cols),
        row_half(half_cols),
        column(rows),
        column_out(rows) {
    engine.SetFlag(Eigen::FFT<double>::HalfSpectrum);
    engine.SetFlag(Eigen::FFT<double>::Unscaled);
  }

  template <class Transform>
  void each_column(Spectrum& half, Transform&& transform) {
    if (rows == 1) return;
    for (int j = 0; j < half_cols; ++j) {
      for (int i = 0; i < rows; ++i) column[i] = half[static_cast<std::size_t>(i) * half_cols + j];
      transform(column_out, column);
      for (int i = 0; i < rows; ++i) half[static_cast<std::size_t>(i) * half_cols + j] = column_out[i];
    }
  }
};

Fft::Fft(const Grid& grid)
    : plans_(std::make_shared<Plans>(grid)),
      real_size_(grid.size()),
      half_size_(static_cast<std::size_t>(grid.rows) * grid.half_cols()),
      work_(half_size_) {}
Fft::~Fft() = default;
Fft::Fft(Fft&&) noexcept = default;
Fft& Fft::operator=(Fft&&) noexcept = default;

void Fft::forward(const AlignedVector<double>& values, Spectrum& half) const {
  Plans& p = *plans_;
  for (int i = 0; i < p.rows; ++i) {
    std::copy_n(values.data() + static_cast<std::size_t>(i) * p.cols, p.cols, p.row.begin());
    p.engine.fwd(p.row_half, p.row);
    std::copy_n(p.row_half.begin(), p.half_cols, half.data() + static_cast<std::size_t>(i) * p.half_cols);
  }
  p.each_column(half, [&](auto& out, const auto& in) { p.engine.fwd(out, in); });
}

void Fft::inverse_unscaled(Spectrum& half, AlignedVector<double>& values) const {
  Plans& p = *plans_;
  p.each_column(half, [&](auto& out, const auto& in) { p.engine.inv(out, in); });
  for (int i = 0; i < p.rows; ++i) {
    std::copy_n(half.data() + static_cast<std::size_t>(i) * p.half_cols, p.half_cols, p.row_half.begin());
    p.engine.inv(p.row, p.row_half, p.cols);
    std::copy_n(p.row.begin(), p.cols, values.data() + static_cast<std::size_t>(i) * p.cols);
  }
}

}  // namespace libtexture
