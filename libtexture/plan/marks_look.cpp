#include "libtexture/plan/marks_look.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "libtexture/process/disc_contact.hpp"

namespace libtexture {

namespace {

constexpr int points = 129;  // a spacing of a tenth of a standard deviation
constexpr double reach = 6;  // standard deviations of a prior
constexpr double least_sd = 1e-3;
constexpr double least_um = 1e-3;  // gone at once

/// ln(clear) that fresh marks owe where they are exp(shift) times as deep.
double log_owed(const MarksLook& look, double shift) {
  const Step& step = look.marked_by;
  const double depth_um =
      std::exp(shift) * groove_depth_um(step, pressure_kpa(step.motion), 1, look.next.hardness_mpa);
  Scratches scratches;
  scratch(scratches, groove_figures(0, step.abrasive, step.motion, depth_um),
          Array2d::Constant(1, 1, look.marked_um));
  return std::log(std::max(least_um, clear_owed_um(scratches, Marks::all, look.limits)));
}

double log_removed(const MarksLook& look, int passes, double shift) {
  return passes > 0 ? std::log(look.next.removed_um(passes, shift)) : -HUGE_VAL;
}

Density empty(double sd) {
  const double most = reach * std::max(sd, least_sd);
  return {-most, 2 * most / (points - 1), std::vector<double>(points, 0.0)};
}

double prior(double shift, double sd) {
  const double z = shift / std::max(sd, least_sd);
  return std::exp(-.5 * z * z);
}

void to_logarithms(Density& density) {
  const double peak = *std::max_element(density.log_density.begin(), density.log_density.end());
  for (double& value : density.log_density) value = std::log(std::max(1e-300, value / peak));
}

}  // namespace

MarksSeen judge_marks(const MarksLook& look) {
  Density depth = empty(look.depth_log_sd), wear = empty(look.wear_log_sd);
  std::vector<double> owed;
  for (std::size_t i = 0; i < points; ++i) owed.push_back(log_owed(look, depth.at(i)));
  const double width = look.log_sd * std::sqrt(2.0);
  const int left_passes = look.left_passes.value_or(look.gone_passes.value_or(1) - 1);
  for (std::size_t k = 0; k < points; ++k) {
    const double shift = wear.at(k);
    const double left = log_removed(look, left_passes, shift);
    const double gone = look.gone_passes ? log_removed(look, *look.gone_passes, shift) : HUGE_VAL;
    for (std::size_t i = 0; i < points; ++i) {
      const double chance = std::erfc((owed[i] - gone) / width) - std::erfc((owed[i] - left) / width);
      const double weight =
          prior(depth.at(i), look.depth_log_sd) * prior(shift, look.wear_log_sd) * std::max(1e-300, chance);
      depth.log_density[i] += weight;
      wear.log_density[k] += weight;
    }
  }
  to_logarithms(depth);
  to_logarithms(wear);
  return {belief_of(depth, 1), belief_of(wear, 1)};
}

}  // namespace libtexture
