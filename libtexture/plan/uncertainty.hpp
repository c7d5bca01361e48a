#pragma once
// Uncertainty: how many possible worlds a prediction is drawn from, and the spreads that no other table
// holds.

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// The table [uncertainty] of a job; what is not given is an estimate. The spreads of wear rates, of
/// stiffness, of force between persons and of local dwell stand with the abrasives, backings and motions,
/// that of the texture with its source; those of the clear follow from the readings.
struct Uncertainty {
  int samples = 4000;  ///< possible worlds that are drawn, 100 to 1000000; 4000 fix a 5 % quantile's share to
                       ///< .35 % (one standard error, binomial)
  double force_within_cv = 0.15;   ///< spread of one person's force from step to step, 0 to 1; estimate
  double hardness_log_sd = 0.15;   ///< standard deviation of ln(the clear's hardness), 0 to 1; estimate: 150
                                   ///< to 270 MPa about 200
  double size_exponent_sd = 0.25;  ///< standard deviation of the exponent by which wear rates go with the
                                   ///< grain, where they were stated for another one, 0 to 1; estimate
  double groove_depth_log_sd = 0.25;  ///< standard deviation of ln(groove depth), 0 to 1; estimate
  double groove_cap_log_sd = 0.15;    ///< of ln(deepest groove over the mean), 0 to 1; estimate
  double loading_log_sd = 0.5;        ///< of ln(room for swarf), 0 to 1; estimate
  double clear_share = 0.4;  ///< share of these three variances that all abrasives on one clear have in
                             ///< common, 0 to 1; estimate

  void validate() const;
  bool operator==(const Uncertainty&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("samples", &Uncertainty::samples),
                      optional("force_within_cv", &Uncertainty::force_within_cv),
                      optional("hardness_log_sd", &Uncertainty::hardness_log_sd),
                      optional("size_exponent_sd", &Uncertainty::size_exponent_sd),
                      optional("groove_depth_log_sd", &Uncertainty::groove_depth_log_sd),
                      optional("groove_cap_log_sd", &Uncertainty::groove_cap_log_sd),
                      optional("loading_log_sd", &Uncertainty::loading_log_sd),
                      optional("clear_share", &Uncertainty::clear_share)};
  }
};

}  // namespace libtexture
