// The transform of the library's own, which no other licence binds.
#include "libtexture/numerics/fft.hpp"
#include "libtexture/numerics/plane_transform.hpp"

namespace libtexture {

struct Fft::Plans : PlaneTransform {
  using PlaneTransform::PlaneTransform;
};

Fft::Fft(const Grid& grid)
    : plans_(std::make_shared<Plans>(grid.rows, grid.cols)),
      real_size_(grid.size()),
      half_size_(static_cast<std::size_t>(grid.rows) * grid.half_cols()),
      work_(half_size_) {}
Fft::~Fft() = default;
Fft::Fft(Fft&&) noexcept = default;
Fft& Fft::operator=(Fft&&) noexcept = default;

void Fft::forward(const AlignedVector<double>& values, Spectrum& half) const {
  plans_->forward(values.data(), half.data());
}

void Fft::inverse_unscaled(Spectrum& half, AlignedVector<double>& values) const {
  plans_->inverse(half.data(), values.data());
}

}  // namespace libtexture
