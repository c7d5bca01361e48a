#include "libtexture/plan/bump_curve.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling_curve.hpp"

namespace libtexture {

namespace {

constexpr double pixels_a_width = 5;  // half the width is told within a percent of the left height
constexpr int least_pixels = 128;     // a side: 25 widths
constexpr double least_side_mm =
    12;                             // ten times the length over which a film disc bends on its foam; estimate
constexpr double most_slender = 4;  // longer marks are cut down as if so long; estimate
constexpr double sd_of_width =
    0.424660900;                          // of a Gaussian over its full width at half height, 1/sqrt(8 ln 2)
constexpr double share_tolerance = 0.01;  // of the rms height
constexpr int points = 48;
constexpr double first_point = 0.002;   // in heights
constexpr double next_to_none = 0.002;  // left, in heights: enough is known
constexpr double none = 1e-6;           // as good as nothing, for logarithms

int power_of_two(double at_least) {
  return std::max(least_pixels, static_cast<int>(std::bit_ceil(static_cast<unsigned>(std::ceil(at_least)))));
}

HeightField bump_of(const Defect& defect, double height_um) {
  const double width_mm = *defect.width_mm, pixel_mm = width_mm / pixels_a_width;
  const double slender = std::min(most_slender, defect.length_mm.value_or(width_mm) / width_mm);
  const int cols = power_of_two(least_side_mm / pixel_mm), rows = power_of_two(least_pixels * slender);
  const double sd_x = sd_of_width * width_mm, sd_y = sd_x * slender;
  Array2d height(std::max(rows, cols), cols);
  for (Eigen::Index row = 0; row < height.rows(); ++row)
    for (Eigen::Index col = 0; col < height.cols(); ++col) {
      const double x = (static_cast<double>(col) - static_cast<double>(height.cols()) / 2) * pixel_mm / sd_x;
      const double y = (static_cast<double>(row) - static_cast<double>(height.rows()) / 2) * pixel_mm / sd_y;
      height(row, col) = height_um * std::exp(-(x * x + y * y) / 2);
    }
  return HeightField(height, pixel_mm);
}

// Between rising places by straight lines in the logarithm, as waves decay; beyond the ends as there.
template <class Place, class Value>
double read(std::size_t size, const Place& place, const Value& value, double at) {
  std::size_t above = 0;
  while (above < size && place(above) <= at) ++above;
  if (above == 0) return value(0);
  if (above == size) return value(size - 1);
  const double low = place(above - 1), share = (at - low) / (place(above) - low);
  return std::exp(std::lerp(std::log(value(above - 1)), std::log(value(above)), share));
}

}  // namespace

bool is_followed(const Defect& defect) {
  return is_above(defect) || defect.width_mm.value_or(0) >= widest_bridged_mm;
}

BumpCurve::BumpCurve(const BumpPlan& plan, const Progress& progress) {
  plan.defect.validate();
  require(is_followed(plan.defect), "BumpCurve", "defect", "must be above the paint or wide",
          "a groove that is bridged");
  const double sign = is_above(plan.defect) ? 1 : -1;
  require(!plan.factors.empty(), "BumpCurve", "factors", "must hold at least one", "none");
  require_positive(plan.most_um, "BumpCurve", "most_um");
  best_um_ = size_um(plan.defect);
  factors_ = plan.factors;
  removed_.assign(factors_.size(), {0});
  left_.assign(factors_.size(), {1});
  const DiscContact contact = disc_contact(plan.step, bump_of(plan.defect, 1).grid(), plan.crown);
  grain_um_ = grain_height_um(plan.step, contact.pressure_kpa);
  parallel_for(static_cast<int>(factors_.size()), progress, [&](int i, const Progress& part) {
    const auto node = static_cast<std::size_t>(i);
    // S/p times a factor is the same as heights times it.
    const double factor = factors_[node], height_um = factor * best_um_;
    const HeightField bump = bump_of(plan.defect, sign * height_um);
    double share_done = 0;
    LevellingCurve curve(bump, contact.backing, contact.pressure_kpa,
                         {.rms_tolerance_um = share_tolerance * bump.rms_um(),
                          .is_shape_asked = true,
                          .disc_diameter_mm = contact.footprint_mm,
                          .grain_um = factor * grain_um_},
                         [&](double) { report(part, share_done); });
    const double last = std::max(plan.most_um / best_um_, 2 * first_point);
    for (int k = 0; k < points && left_[node].back() > next_to_none; ++k) {
      const double share = static_cast<double>(k) / (points - 1);
      const double removal_um = height_um * first_point * std::pow(last / first_point, share);
      if (removal_um < (k + 1) * least_removal_um) continue;
      const HeightField now = curve.at(removal_um).surface;
      // The corner lies farthest from the bump and its repeats.
      const double about_um = now.height_um()(0, 0);
      removed_[node].push_back(std::max(removed_[node].back(), -about_um / height_um));
      const double left = (sign * now.height_um()).maxCoeff() / height_um - sign * about_um / height_um;
      left_[node].push_back(std::clamp(left, none, left_[node].back()));
      share_done = share;
      report(part, share_done);
    }
    report(part, 1);
  });
}

double BumpCurve::left_um(double height_um, double stiffness_factor, double removed_um) const {
  if (height_um <= 0 || removed_um <= 0) return std::max(0.0, height_um);
  const double factor = stiffness_factor * height_um / best_um_, removed = removed_um / height_um;
  // A node's grains are scaled along with its heights, but those of a higher mark are no coarser: each e-fold
  // of a wave costs the grains' own height of clear, docs/physics.md (19c), so that the rest is so much per
  // e-fold too many.
  const double per_fold = grain_um_ / height_um - grain_um_ / best_um_;
  const auto at_node = [&](std::size_t node) {
    const std::vector<double>&removed_at = removed_[node], &left = left_[node];
    const auto place = [&](std::size_t i) {
      return std::max(0.0, removed_at[i] - per_fold * std::log(left[i]));
    };
    return read(
        left.size(), place, [&](std::size_t i) { return left[i]; }, removed);
  };
  const auto place = [&](std::size_t node) { return std::log(factors_[node]); };
  return height_um * read(factors_.size(), place, at_node, std::log(factor));
}

std::optional<double> BumpCurve::removal_to_um(double left_um) const {
  double low = 0, high = best_um_ * removed_[factors_.size() / 2].back();
  if (this->left_um(best_um_, 1, high) > left_um) return std::nullopt;
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (low + high) / 2;
    (this->left_um(best_um_, 1, middle) > left_um ? low : high) = middle;
  }
  return high;
}

}  // namespace libtexture
