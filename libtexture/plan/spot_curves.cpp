#include "libtexture/plan/spot_curves.hpp"

#include <algorithm>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling_curve.hpp"

namespace libtexture {
namespace {

constexpr int curves = 9;          // solved; between them splines
constexpr int curves_between = 8;  // of the splines' table, for straight lines between
// Removals of a curve: close ones until all is touched, which takes a valley depth at most, then wider ones.
constexpr int close_points = 32, wide_points = 20;
constexpr double close_reach = 1.1, wide_reach = 10;  // in valley depths
constexpr double least_rms_share = 1e-3;              // below it a texture counts as gone

/// How much deeper the deepest valley of the spot is than that of the patch.
double valley_factor(const HeightField& surface, double area_m2) {
  const double patch_m2 =
      surface.grid().width_mm() * surface.grid().height_mm() * metre_per_mm * metre_per_mm;
  if (area_m2 <= patch_m2) return 1;
  const double wavelength_mm = mean_wavelength_mm(surface);
  return deepest_valley_in_sd(area_m2, wavelength_mm) / deepest_valley_in_sd(patch_m2, wavelength_mm);
}

/// Removals at which a curve is known, from 0.
std::vector<double> removals_um(double valley_um) {
  std::vector<double> at_um;
  for (int k = 0; k <= close_points; ++k) at_um.push_back(close_reach * valley_um * k / close_points);
  const double ratio = std::pow(wide_reach / close_reach, 1.0 / wide_points);
  for (int k = 0; k < wide_points; ++k) at_um.push_back(at_um.back() * ratio);
  return at_um;
}

/// A solved curve.
struct Curve {
  double touched_at_um = 0;           // removal at which the deepest valley is touched
  std::vector<double> log_left = {};  // ln(rms/rms of the start)
};

Curve curve_at(const HeightField& patch, const Backing& backing, const Step& step,
               const std::vector<double>& at_um, const Progress& progress) {
  const double pressure = pressure_kpa(step.motion);
  double share_done = 0;
  LevellingCurve levelling(
      patch, backing, pressure,
      {.rms_tolerance_um = rms_tolerance_um(patch), .grain_um = grain_height_um(step, pressure)},
      [&](double) { report(progress, share_done); });
  Curve curve;
  for (const double removal_um : at_um) {
    const double left_um = levelling.at(removal_um).surface.rms_um();
    curve.log_left.push_back(std::log(std::max(least_rms_share, left_um / patch.rms_um())));
    report(progress, share_done = removal_um / at_um.back());
  }
  curve.touched_at_um = levelling.touched_at_um().value_or(at_um.back());
  return curve;
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
  if (spring_deflection_um) return std::max(0.0, scale * valley_um - *spring_deflection_um / stiffness_ratio);
  const double at = (std::log(scale * stiffness_ratio) - least_log_ratio) / log_spacing;
  const auto [i, part] = place(at, gloss_gone_um.size());
  return scale * std::max(0.0, gloss_gone_um[i] + part * (gloss_gone_um[i + 1] - gloss_gone_um[i]));
}

double SpotCurves::rms_left_um(double scale, double stiffness_ratio, double removed_um) const {
  const double at = (std::log(scale * stiffness_ratio) - least_log_ratio) / log_spacing;
  const auto [i, part] = place(at, log_rms_left.size());
  const double at_um = std::max(0.0, removed_um / scale);
  const auto above = std::upper_bound(removal_um.begin() + 1, removal_um.end() - 1, at_um);
  const auto k = static_cast<std::size_t>(above - removal_um.begin()) - 1;
  // Beyond the end more than 1: falls on as it fell last.
  const double on = (at_um - removal_um[k]) / (removal_um[k + 1] - removal_um[k]);
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
  const HeightField patch = node_patch(surface);
  const double patch_valley_um = patch.valley_depth_um();

  SpotCurves result;
  result.rms_um = surface.rms_um();
  result.valley_um = surface.valley_depth_um() * valley_factor(surface, area_m2);
  result.least_log_ratio = -log_reach;
  result.removal_um = removals_um(patch_valley_um);
  if (working.support == Support::springs && !working.skin)
    result.spring_deflection_um =
        pressure / (*working.spring_stiffness_kpa_per_um * working.stiffness_factor);
  const double spacing = 2 * log_reach / (curves - 1);
  result.log_spacing = spacing / curves_between;
  const std::vector<double> at_um(result.removal_um.begin() + 1, result.removal_um.end());

  std::vector<Curve> solved(curves);
  parallel_for(curves, progress, [&](int i, const Progress& part) {
    Backing backing = working;
    backing.stiffness_factor *= std::exp(result.least_log_ratio + i * spacing);
    solved[static_cast<std::size_t>(i)] = curve_at(patch, backing, step, at_um, part);
  });
  std::vector<double> gone;
  std::vector<std::vector<double>> left(result.removal_um.size());
  for (const Curve& curve : solved) {
    gone.push_back(curve.touched_at_um + result.valley_um - patch_valley_um);
    left[0].push_back(0);
    for (std::size_t k = 0; k < at_um.size(); ++k) left[k + 1].push_back(curve.log_left[k]);
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
