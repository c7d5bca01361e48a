#pragma once
// SpotPlan: how many passes or readings a test spot needs, before it is made.

#include <optional>
#include <string>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/job.hpp"

namespace libtexture {

/// The spot that is thought of, and how well the wear rate is to be known by it.
struct SpotAim {
  std::string sequence = {};  ///< of the job; empty = its first
  std::string step = {};      ///< name of the step to try; empty = the sequence's first
  double log_sd = 0.25;   ///< of ln(wear rate) after the spot, > 0 to 2: .25 is a factor of 1.6 in 95 of 100
                          ///< cases; estimate of what a plan is worth
  int readings = 6;       ///< before, and as many after, 1 to 1000
  int passes = 6;         ///< made, where the readings are asked for, 1 to 1000
  double area_m2 = 0.04;  ///< of the spot [m2], > 0 to 100
  double spot_cv = 0.15;  ///< how much spots worked alike differ, as in TestSpot

  void validate() const;
  bool operator==(const SpotAim&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("sequence", &SpotAim::sequence), optional("step", &SpotAim::step),
                      optional("log_sd", &SpotAim::log_sd),     optional("readings", &SpotAim::readings),
                      optional("passes", &SpotAim::passes),     optional("area_m2", &SpotAim::area_m2),
                      optional("spot_cv", &SpotAim::spot_cv)};
  }
};

/// What the spot needs.
struct SpotPlan {
  std::string abrasive = {};  ///< name of the abrasive that would be tried
  double log_sd_before = 0;   ///< of ln(wear rate), in this hand on this clear, before the spot
  double least_log_sd = 0;    ///< after the aim's passes, with any number of readings: what spot_cv leaves
  std::optional<int> passes =
      {};  ///< with the aim's readings; 0 = known so well already; none = no number does
  std::optional<int> slow_passes = {};      ///< the same, where the disc cuts as slowly as 1 of 10 would
  int aim_readings = 0;                     ///< those of the aim
  double removed_um = 0;                    ///< what `passes` are expected to remove [um]
  std::optional<int> readings = {};         ///< before, and after, with the aim's passes; as for passes
  std::optional<double> log_sd_after = {};  ///< of ln(wear rate), expected after `passes`

  bool operator==(const SpotPlan&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("abrasive", &SpotPlan::abrasive),
                      optional("log_sd_before", &SpotPlan::log_sd_before),
                      optional("least_log_sd", &SpotPlan::least_log_sd),
                      optional("passes", &SpotPlan::passes),
                      optional("slow_passes", &SpotPlan::slow_passes),
                      optional("aim_readings", &SpotPlan::aim_readings),
                      optional("removed_um", &SpotPlan::removed_um),
                      optional("readings", &SpotPlan::readings),
                      optional("log_sd_after", &SpotPlan::log_sd_after)};
  }
};

/// What a spot of the job needs so that its wear rate is known as the aim asks, by film readings alone: what
/// Bayes' rule leaves where the removal is the one that is expected (docs/physics.md, test spot).
/// InvalidInput where the job has no such step.
SpotPlan spot_plan(const Job& job, const SpotAim& aim = {});

/// The same for a step, on paint of that hardness and gauge; the aim's names are not looked at.
SpotPlan spot_plan_of(const Step& step, const Paint& paint, const Uncertainty& uncertainty,
                      const SpotAim& aim = {});

}  // namespace libtexture
