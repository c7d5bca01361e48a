#include "libtexture/plan/tool_spread.hpp"

#include <cmath>

namespace libtexture {

namespace {

KinSpread with(const KinSpread& spread, double common_sd, double own_sd) {
  return {std::hypot(spread.common_sd, common_sd), std::hypot(spread.own_sd, own_sd)};
}

/// What hand and clear do to a figure that goes with powers of force and hardness: all abrasives share it.
double hand_and_clear_sd(const Step& step, const Uncertainty& uncertainty, double force_exponent,
                         double hardness_exponent) {
  return std::hypot(force_exponent * log_sd_of_cv(step.motion.force_cv),
                    hardness_exponent * uncertainty.hardness_log_sd);
}

}  // namespace

double log_sd_of_cv(double cv) {
  return std::sqrt(std::log1p(cv * cv));
}

KinSpread wear_spread(const Step& step, const Uncertainty& uncertainty) {
  const Abrasive& abrasive = step.abrasive;
  const double hand = abrasive.wear_rate_of == FigureOf::this_hand
                          ? 0
                          : hand_and_clear_sd(step, uncertainty, 1, hardness_wear_exponent);
  return with(kin_spread(abrasive.wear_rate_log_sd, abrasive.wear_rate_family_share), hand,
              uncertainty.size_exponent_sd * log_size(abrasive));
}

double size_covariance(const Abrasive& one, const Abrasive& other, const Uncertainty& uncertainty) {
  const double sd = uncertainty.size_exponent_sd;
  return sd * sd * log_size(one) * log_size(other);
}

KinSpread groove_depth_spread(const Abrasive& abrasive, const Uncertainty& uncertainty) {
  return kin_spread(abrasive.groove_depth_log_sd.value_or(uncertainty.groove_depth_log_sd),
                    abrasive.groove_depth_clear_share.value_or(uncertainty.clear_share));
}

KinSpread groove_spread(const Step& step, const Uncertainty& uncertainty) {
  const KinSpread depth = groove_depth_spread(step.abrasive, uncertainty);
  if (step.abrasive.groove_depth_of == FigureOf::this_hand) return depth;
  const KinSpread cap = kin_spread(uncertainty.groove_cap_log_sd, uncertainty.clear_share);
  const double hand =
      hand_and_clear_sd(step, uncertainty, step.abrasive.groove_pressure_exponent, hardness_groove_exponent);
  return with(depth, std::hypot(cap.common_sd, hand), cap.own_sd);
}

}  // namespace libtexture
