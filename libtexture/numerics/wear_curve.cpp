#include "libtexture/numerics/wear_curve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"

namespace libtexture {
namespace {

constexpr double safety = 0.9;
constexpr double least_change = 0.1, most_change = 3;  // from one increment to the next
constexpr double taken_back = 1.5;                     // times the error allowed
constexpr double first_share = 0.1;                    // of the rms height: the first increment tried
constexpr int most_increments = 1000;                  // a usual curve takes under 40

// Rms of the difference of two surfaces, less its mean: no error of their rms heights is larger.
double rms_difference(const AlignedVector<double>& a, const AlignedVector<double>& b) {
  LaneSum sum, squares;
  over_packs(a.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> difference = pack<W>(&a[i]) - pack<W>(&b[i]);
    sum.add(difference);
    squares.add(difference * difference);
  });
  const double n = static_cast<double>(a.size()), mean = sum.total() / n;
  return std::sqrt(std::max(0.0, squares.total() / n - mean * mean));
}

}  // namespace

WearCurve::WearCurve(const Grid& grid, const AlignedVector<double>& height,
                     const AlignedVector<double>& stiffness, double shape_tolerance, Progress progress)
    : wearing_(grid, height, stiffness, {}, std::move(progress)), shape_tolerance_(shape_tolerance) {
  require_positive(shape_tolerance, "WearCurve", "shape_tolerance");
  next_ = first_share * rms_about_mean(height.data(), height.size());
  state_ = {0, height, 1};
}

void WearCurve::step_on(double target) {
  from_ = place_;
  if (wearing_.wear_exactly(target - place_)) {
    see(place_, 0);
    place_ = target;
    return;
  }
  for (;;) {
    if (wearing_.increments() >= most_increments)
      throw NotConverged("WearCurve: shape", wearing_.increments(), shape_error_, shape_tolerance_);
    wearing_.wear(next_, true);
    const double error = rms_difference(wearing_.height(), wearing_.companion());
    const double wish =
        std::clamp(safety * std::cbrt(shape_tolerance_ / std::max(error, 1e-300)), least_change, most_change);
    const double removal = next_;
    next_ *= wish;
    if (error <= taken_back * shape_tolerance_) {
      see(place_ + Wearing::first_stage * removal, wearing_.first_clearance());
      place_ += removal;
      see(place_, wearing_.clearance());
      shape_error_ += error;
      return;
    }
    wearing_.take_back();
  }
}

void WearCurve::see(double removal, double clearance) {
  if (touched_at_) return;
  if (clearance > 0) {
    seen_at_ = {seen_at_[1], removal};
    seen_clearance_ = {seen_clearance_[1], clearance};
    seen_ = std::min(2, seen_ + 1);
    return;
  }
  const double last = seen_at_[1], fall = seen_clearance_[0] - seen_clearance_[1];
  const double further =
      seen_ == 2 && fall > 0 ? seen_clearance_[1] * (last - seen_at_[0]) / fall : (removal - last) / 2;
  touched_at_ = seen_ == 0 ? 0 : std::min(removal, last + further);
}

const ErosionState& WearCurve::at(double removal) {
  require(std::isfinite(removal) && removal > 0 && removal >= state_.removal, "WearCurve", "removal",
          "must be > 0 and not fall", removal);
  while (place_ < removal) step_on(removal);
  state_.removal = removal;
  if (place_ == removal) {
    state_.height = wearing_.height();
    state_.contact_share = wearing_.contact_share();
  } else {
    const double share = (removal - from_) / (place_ - from_);
    wearing_.read(share, state_.height);
    state_.contact_share = wearing_.contact_share_at(share);
  }
  return state_;
}

}  // namespace libtexture
