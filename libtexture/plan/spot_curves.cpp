#include "libtexture/plan/spot_curves.hpp"

#include <algorithm>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/surface/slope.hpp"

namespace libtexture {
namespace {

constexpr int curves = 9;          // solved; between them splines
constexpr int curves_between = 8;  // of the splines' table, for straight lines between
constexpr int points = 24;         // removals per curve
constexpr double reach_in_valleys = 1.25;
// Of the heights: an eye tells a texture to a tenth at best.
constexpr double tolerance_share = 0.01;
constexpr double least_rms_share = 1e-3;  // below it a texture counts as gone

/// Depth [standard deviations] that one valley is expected to exceed on an area of a Gaussian surface of a
/// mean square wave number: A q^2/2/(2 pi)^1.5 u exp(-u^2/2) = 1.
double deepest_in_sd(double area_m2, double q_per_m) {
  const double count = area_m2 * q_per_m * q_per_m / 2 / std::pow(2 * std::numbers::pi, 1.5);
  double low = 1, high = 20;
  while (high - low > 1e-9) {
    const double u = (low + high) / 2;
    (count * u * std::exp(-u * u / 2) > 1 ? low : high) = u;
  }
  return low;
}

/// How much deeper the deepest valley of the spot is than that of the patch.
double valley_factor(const HeightField& surface, double area_m2) {
  const double patch_m2 =
      surface.grid().width_mm() * surface.grid().height_mm() * metre_per_mm * metre_per_mm;
  const double slope =
      std::hypot(rms_slope(surface, Direction::rows), rms_slope(surface, Direction::columns));
  if (area_m2 <= patch_m2 || !(slope > 0)) return 1;
  const double q_per_m = slope / (surface.rms_um() * metre_per_um);
  return deepest_in_sd(area_m2, q_per_m) / deepest_in_sd(patch_m2, q_per_m);
}

/// Removal at which the deepest valley is touched: least removal at a point grows as the square beyond it.
double touched_at_um(const Levelled& levelled, const HeightField& surface) {
  double last_um = 0, last_root = 0;
  for (std::size_t k = 0; k < levelled.surfaces.size(); ++k) {
    const double least = (surface.height_um() - levelled.surfaces[k].height_um()).minCoeff();
    const double root = std::sqrt(std::max(0.0, least)), at_um = levelled.removed_um[k];
    if (last_root > 0)
      return std::max(0.0, last_um - last_root * (at_um - last_um) / std::max(root - last_root, 1e-12));
    last_um = at_um;
    last_root = root;
  }
  return last_um;
}

std::vector<double> between(const std::vector<double>& values, double spacing) {
  const boost::math::interpolators::cardinal_cubic_b_spline<double> spline(values.begin(), values.end(), 0.0,
                                                                           spacing);
  std::vector<double> table;
  const int count = static_cast<int>(values.size() - 1) * curves_between + 1;
  const double most = spacing * static_cast<double>(values.size() - 1);
  for (int i = 0; i < count; ++i) table.push_back(spline(std::min(most, spacing * i / curves_between)));
  return table;
}

/// Place in a table and the part of the way to the next entry; within the table.
std::pair<std::size_t, double> place(double at, std::size_t count) {
  at = std::clamp(at, 0.0, static_cast<double>(count - 1));
  const std::size_t i = std::min(static_cast<std::size_t>(at), count - 2);
  return {i, at - static_cast<double>(i)};
}

}  // namespace

double SpotCurves::gloss_gone_at_um(double scale, double stiffness_ratio) const {
  const double at = (std::log(scale * stiffness_ratio) - least_log_ratio) / log_spacing;
  const auto [i, part] = place(at, gloss_gone_um.size());
  return scale * std::max(0.0, gloss_gone_um[i] + part * (gloss_gone_um[i + 1] - gloss_gone_um[i]));
}

double SpotCurves::rms_left_um(double scale, double stiffness_ratio, double removal_um) const {
  const double at = (std::log(scale * stiffness_ratio) - least_log_ratio) / log_spacing;
  const auto [i, part] = place(at, log_rms_left.size());
  const double point = std::max(0.0, removal_um / scale / removal_step_um);
  const std::size_t last = log_rms_left[i].size() - 2;
  const std::size_t k = std::min(static_cast<std::size_t>(point), last);
  const double on = point - static_cast<double>(k);  // beyond the end more than 1: falls on as it fell last
  const auto of_curve = [&](const std::vector<double>& curve) {
    return curve[k] + on * (curve[k + 1] - curve[k]);
  };
  const double log_left =
      of_curve(log_rms_left[i]) + part * (of_curve(log_rms_left[i + 1]) - of_curve(log_rms_left[i]));
  return scale * rms_um * std::exp(std::max(log_left, std::log(least_rms_share)));
}

SpotCurves spot_curves(const Step& step, const HeightField& surface, double area_m2, double log_reach,
                       const Progress& progress) {
  step.validate();
  require_positive(area_m2, "SpotCurves", "area_m2");
  require(log_reach > 0 && log_reach <= 5, "SpotCurves", "log_reach", "must be > 0 and <= 5", log_reach);
  require(surface.rms_um() > 0, "SpotCurves", "surface", "must have a texture", "none");
  require(step.backing.support != Support::rigid, "SpotCurves", "backing.support",
          "must not be rigid: it has no stiffness to learn", "rigid");
  const double pressure = pressure_kpa(step.motion);
  const Backing working = at_working_pressure(step.backing, pressure);
  const double patch_valley_um = surface.valley_depth_um();

  SpotCurves result;
  result.rms_um = surface.rms_um();
  result.valley_um = patch_valley_um * valley_factor(surface, area_m2);
  result.least_log_ratio = -log_reach;
  result.removal_step_um = reach_in_valleys * patch_valley_um / points;
  const double spacing = 2 * log_reach / (curves - 1);
  result.log_spacing = spacing / curves_between;
  std::vector<double> at_um;
  for (int k = 1; k <= points; ++k) at_um.push_back(k * result.removal_step_um);

  std::vector<double> gone;
  std::vector<std::vector<double>> left(points + 1);
  for (int i = 0; i < curves; ++i) {
    Backing backing = working;
    backing.stiffness_factor *= std::exp(result.least_log_ratio + i * spacing);
    const Progress part = [&](double done) { report(progress, (i + done) / curves); };
    const Levelled levelled = level(surface, backing, pressure,
                                    {.removal_um = at_um.back(),
                                     .report_at_um = at_um,
                                     .amplitude_tolerance_um = tolerance_share * patch_valley_um},
                                    part);
    const bool is_springs = backing.support == Support::springs && !backing.skin;
    const double touched =
        is_springs
            ? patch_valley_um - pressure / (*backing.spring_stiffness_kpa_per_um * backing.stiffness_factor)
            : touched_at_um(levelled, surface);
    gone.push_back(touched + result.valley_um - patch_valley_um);
    left[0].push_back(0);
    for (int k = 0; k < points; ++k)
      left[static_cast<std::size_t>(k) + 1].push_back(
          std::log(std::max(least_rms_share, levelled.rms_um[static_cast<std::size_t>(k)] / result.rms_um)));
  }
  result.gloss_gone_um = between(gone, spacing);
  for (std::vector<double>& at_one_removal : left) at_one_removal = between(at_one_removal, spacing);
  for (std::size_t i = 0; i < result.gloss_gone_um.size(); ++i) {
    std::vector<double> curve;
    for (const std::vector<double>& at_one_removal : left) curve.push_back(at_one_removal[i]);
    result.log_rms_left.push_back(curve);
  }
  return result;
}

}  // namespace libtexture
