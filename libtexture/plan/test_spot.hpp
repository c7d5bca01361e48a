#pragma once
// TestSpot: passes made and film read before and after, which narrow what is known of the wear rate.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/job.hpp"

namespace libtexture {

/// A spot of the panel on which a step of the job was tried.
struct TestSpot {
  std::string sequence = {};  ///< of the job; empty = its first
  std::string step = {};      ///< name of the step that was tried; empty = the sequence's first
  int passes = 0;             ///< overlapped passes made with fresh discs, 1 to 1000
  double area_m2 = 0.04;      ///< area of the spot, which sets how discs load [m2], > 0 to 100; estimate
  std::vector<double> before_um = {};  ///< readings of the total film before, all over the spot [um]
  std::vector<double> after_um = {};   ///< readings after, at the same places [um]
  double spot_cv = 0.15;  ///< how much spots worked alike differ, coefficient of variation, 0 to 1; estimate
                          ///< (one person's force)

  void validate() const;
  bool operator==(const TestSpot&) const = default;
  static constexpr auto fields() {
    return std::tuple{optional("sequence", &TestSpot::sequence),   optional("step", &TestSpot::step),
                      required("passes", &TestSpot::passes),       optional("area_m2", &TestSpot::area_m2),
                      required("before_um", &TestSpot::before_um), required("after_um", &TestSpot::after_um),
                      optional("spot_cv", &TestSpot::spot_cv)};
  }
};

/// What a wear rate [mm3/(N m)] is believed to be.
struct WearRateBelief {
  double median = 0;  ///< half as likely above as below
  double least = 0;   ///< 2.5 % lie below
  double most = 0;    ///< 2.5 % lie above
  double log_sd = 0;  ///< standard deviation of ln(wear rate)

  bool operator==(const WearRateBelief&) const = default;
  static constexpr auto fields() {
    return std::tuple{optional("median", &WearRateBelief::median), optional("least", &WearRateBelief::least),
                      optional("most", &WearRateBelief::most), optional("log_sd", &WearRateBelief::log_sd)};
  }
};

/// What a test spot says.
struct TestSpotResult {
  std::string abrasive = {};   ///< name of the abrasive that was tried
  double removed_um = 0;       ///< mean before - mean after [um]; below 0 = it reads thicker after
  double gauge_sd_um = 0;      ///< standard uncertainty of it from the gauge [um]
  double expected_um = 0;      ///< what the job's wear rate would remove [um]
  WearRateBelief before = {};  ///< the job's
  WearRateBelief after = {};   ///< with the test spot, as of fresh discs
  bool is_useful = true;       ///< the gauge leaves the wear rate less uncertain than the spot itself, by far
  int passes_needed = 0;       ///< with as many readings, so many passes make the spot useful; at most 1000
  int readings_needed = 0;     ///< with as many passes, so many readings before, and after, do
  std::vector<std::string> warnings = {};  ///< one sentence each

  bool operator==(const TestSpotResult&) const = default;
  static constexpr auto fields() {
    return std::tuple{optional("abrasive", &TestSpotResult::abrasive),
                      optional("removed_um", &TestSpotResult::removed_um),
                      optional("gauge_sd_um", &TestSpotResult::gauge_sd_um),
                      optional("expected_um", &TestSpotResult::expected_um),
                      optional("before", &TestSpotResult::before),
                      optional("after", &TestSpotResult::after),
                      optional("is_useful", &TestSpotResult::is_useful),
                      optional("passes_needed", &TestSpotResult::passes_needed),
                      optional("readings_needed", &TestSpotResult::readings_needed),
                      optional("warnings", &TestSpotResult::warnings)};
  }
};

/// Bayes' rule for ln(wear rate), by the trapezoid rule on a grid: the prior is normal about the abrasive's
/// own with its wear_rate_log_sd; the mean removal is normal about that of the passes, discs loading and
/// being changed, with the gauge's uncertainty, its scale, and spot_cv (docs/physics.md). InvalidInput where
/// the job has no such step, and where the film reads thicker after by more than three times the gauge's
/// uncertainty: then readings were mixed up.
TestSpotResult judge_test_spot(const Job& job, const TestSpot& spot);

/// The job with what the test spot says of the wear rate, in every step that uses the abrasive of that name:
/// fresh and worn wear rate by the ratio of the medians, wear_rate_log_sd, and the range of the wear rate.
/// Further spots narrow it further.
Job calibrate(const Job& job, const TestSpot& spot);

}  // namespace libtexture
