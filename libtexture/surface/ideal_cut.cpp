#include "libtexture/surface/ideal_cut.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "libtexture/base/error.hpp"

namespace libtexture {

IdealCut::IdealCut(const HeightField& field) {
  const Array2d& h = field.height_um();
  n_ = static_cast<double>(h.size());
  height_.assign(h.data(), h.data() + h.size());
  const double mean = h.mean();  // so that the squares do not cancel
  for (double& height : height_) height -= mean;
  std::sort(height_.begin(), height_.end(), std::greater<>());
  sum_ = squares_ = {0};
  for (const double height : height_) {
    sum_.push_back(sum_.back() + height);
    squares_.push_back(squares_.back() + height * height);
  }
}

double IdealCut::rms_under(std::size_t count, double plane) const {
  const double cut = static_cast<double>(count);
  const double mean = (cut * plane + sum_.back() - sum_[count]) / n_;
  const double square = (cut * plane * plane + squares_.back() - squares_[count]) / n_;
  return std::sqrt(std::max(0.0, square - mean * mean));
}

double IdealCut::removal_um(double rms_um) const {
  require_not_negative(rms_um, "IdealCut", "rms_um");
  if (rms_under(0, 0) <= rms_um) return 0;
  // The plane lies between the heights of ranks low and high.
  std::size_t low = 0, high = height_.size() - 1;
  while (high - low > 1) {
    const std::size_t middle = (low + high) / 2;
    (rms_under(middle, height_[middle]) > rms_um ? low : high) = middle;
  }
  double above = height_[low], below = height_[high];
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (above + below) / 2;
    (rms_under(high, middle) > rms_um ? above : below) = middle;
  }
  return (sum_[high] - static_cast<double>(high) * below) / n_;
}

}  // namespace libtexture
