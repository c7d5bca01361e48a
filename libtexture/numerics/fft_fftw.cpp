// The default transform: FFTW 3, estimated plans.
#include <fftw3.h>

#include <map>
#include <mutex>
#include <utility>

#include "libtexture/numerics/fft.hpp"

namespace libtexture {
namespace {

std::mutex& planner() {  // FFTW's planner is not thread-safe; executing a plan is
  static std::mutex mutex;
  return mutex;
}

fftw_complex* raw(Spectrum& half) {
  return reinterpret_cast<fftw_complex*>(half.data());
}

}  // namespace

struct Fft::Plans {
  fftw_plan forward;
  fftw_plan inverse;

  Plans(const Grid& grid, Spectrum& half) {
    AlignedVector<double> values(grid.size());
    const std::lock_guard lock(planner());
    // The destination of the forward transform is never its source, and callers keep their input.
    forward = fftw_plan_dft_r2c_2d(grid.rows, grid.cols, values.data(), raw(half),
                                   FFTW_ESTIMATE | FFTW_PRESERVE_INPUT);
    inverse = fftw_plan_dft_c2r_2d(grid.rows, grid.cols, raw(half), values.data(),
                                   FFTW_ESTIMATE | FFTW_DESTROY_INPUT);
  }
  Plans(const Plans&) = delete;
  Plans& operator=(const Plans&) = delete;
  ~Plans() {
    const std::lock_guard lock(planner());
    fftw_destroy_plan(forward);
    fftw_destroy_plan(inverse);
  }
};

namespace {

// Planning costs as much as several transforms, and most calls are of one or two shapes: plans are estimated,
// so that a kept one is as a new one, and executing one is thread-safe.
template <class Plans>
std::shared_ptr<Plans> plans_of(const Grid& grid, Spectrum& half) {
  static std::mutex mutex;
  static std::map<std::pair<int, int>, std::shared_ptr<Plans>> kept;
  constexpr std::size_t most_kept = 16;
  const std::lock_guard lock(mutex);
  std::shared_ptr<Plans>& plans = kept[{grid.rows, grid.cols}];
  if (!plans) plans = std::make_shared<Plans>(grid, half);
  const std::shared_ptr<Plans> found = plans;
  if (kept.size() > most_kept) kept.clear();
  return found;
}

}  // namespace

Fft::Fft(const Grid& grid)
    : real_size_(grid.size()),
      half_size_(static_cast<std::size_t>(grid.rows) * grid.half_cols()),
      work_(half_size_) {
  plans_ = plans_of<Plans>(grid, work_);
}
Fft::~Fft() = default;
Fft::Fft(Fft&&) noexcept = default;
Fft& Fft::operator=(Fft&&) noexcept = default;

void Fft::forward(const AlignedVector<double>& values, Spectrum& half) const {
  fftw_execute_dft_r2c(plans_->forward, const_cast<double*>(values.data()), raw(half));
}

void Fft::inverse_unscaled(Spectrum& half, AlignedVector<double>& values) const {
  fftw_execute_dft_c2r(plans_->inverse, raw(half), values.data());
}

}  // namespace libtexture
