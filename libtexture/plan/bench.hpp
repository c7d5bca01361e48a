#pragma once
// Bench: an abrasive's wear rate and loading from a tester's passes, and whether abrasives differ.

#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/estimate.hpp"
#include "libtexture/tool/abrasive.hpp"

namespace libtexture {

/// A disc from fresh: what each pass removed, in order.
struct BenchRun {
  std::string name = {};  ///< of the disc
  std::vector<double> removed_um =
      {};  ///< mean clear removed by each pass, from the first [um], at least one

  bool operator==(const BenchRun&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &BenchRun::name), required("removed_um", &BenchRun::removed_um)};
  }
};

/// One abrasive on the bench: every pass alike, every run a fresh disc.
struct Bench {
  std::string abrasive = {};             ///< name that the catalogue entry will have
  Grit grit = Grit::of_median_um(10.3);  ///< grain size
  Wetness wetness = Wetness::dry;        ///< how wet the runs were worked
  double force_n = unset;                ///< [N], > 0
  double sliding_m_per_s = unset;        ///< mean sliding speed [m/s], > 0
  double seconds_per_pass = unset;       ///< [s], > 0
  double area_cm2 = unset;               ///< area that a pass works [cm2], > 0
  double disc_area_cm2 = unset;          ///< face of the disc, which loads [cm2], > 0
  double hardness_mpa = 200;             ///< indentation hardness of the clear [MPa], > 0
  std::vector<BenchRun> runs = {};       ///< at least one, four passes or more in all

  void validate() const;
  bool operator==(const Bench&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("abrasive", &Bench::abrasive),
                      required("grit", &Bench::grit),
                      optional("wetness", &Bench::wetness),
                      required("force_n", &Bench::force_n),
                      required("sliding_m_per_s", &Bench::sliding_m_per_s),
                      required("seconds_per_pass", &Bench::seconds_per_pass),
                      required("area_cm2", &Bench::area_cm2),
                      required("disc_area_cm2", &Bench::disc_area_cm2),
                      optional("hardness_mpa", &Bench::hardness_mpa),
                      required("runs", &Bench::runs)};
  }
};

/// What the runs say, for a clear of 200 MPa.
struct BenchResult {
  Estimate wear_rate_mm3_per_n_m = {};       ///< fresh
  Estimate worn_wear_rate_mm3_per_n_m = {};  ///< loaded; unset where no loading is seen
  Estimate loading_um = {};  ///< clear removed per disc area over which the cut falls (1/e) [um]; likewise
  bool is_loading_seen =
      false;  ///< F test against a wear rate that stays: p < .05, and no interval is wider than tenfold
  double loading_p = 1;                                ///< p value of that test
  double residual_sd_um = 0;                           ///< spread of passes about the curve [um]
  std::vector<std::vector<double>> residuals_um = {};  ///< removed - curve, by run and pass [um]
  std::vector<double> run_mean_mm3_per_n_m = {};       ///< each run's own mean wear rate, all passes
  double disc_log_sd = 0;  ///< standard deviation of ln(run's removal/curve's); 0 with one run

  bool operator==(const BenchResult&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("wear_rate_mm3_per_n_m", &BenchResult::wear_rate_mm3_per_n_m),
                      optional("worn_wear_rate_mm3_per_n_m", &BenchResult::worn_wear_rate_mm3_per_n_m),
                      optional("loading_um", &BenchResult::loading_um),
                      optional("is_loading_seen", &BenchResult::is_loading_seen),
                      optional("loading_p", &BenchResult::loading_p),
                      optional("residual_sd_um", &BenchResult::residual_sd_um),
                      optional("residuals_um", &BenchResult::residuals_um),
                      optional("run_mean_mm3_per_n_m", &BenchResult::run_mean_mm3_per_n_m),
                      optional("disc_log_sd", &BenchResult::disc_log_sd)};
  }
};

/// Fits w_end + (w_0 - w_end) exp(-V/V_0) to all runs, integrated over each pass exactly. Intervals of the
/// rates hold what passes and discs scatter, each with Student's t for their number; with one disc the discs'
/// part is not known and is left out. That of loading takes passes as independent.
BenchResult judge_bench(const Bench& bench);

/// The abrasive as a catalogue holds it: rates with their ranges, wear_rate_log_sd from the fit and the
/// spread of discs. What was not measured is that of `like`, a known abrasive of the same carrier, in the
/// bench's grit: scratches, and where no loading is seen the share of the fresh rate that stays, and loading.
Abrasive abrasive_of(const Bench& bench, const BenchResult& result, const Abrasive& like,
                     const std::string& source);

/// How wear rate goes with grain size: exponent of wear ~ grain^exponent by a straight line through
/// logarithms. InvalidInput with fewer than three abrasives, or all of one grain.
Estimate size_exponent(const std::vector<Bench>& benches, const std::vector<BenchResult>& results);

/// Welch's t test of the logarithms of two abrasives' runs: mean wear rates over all passes, loading
/// included.
struct BenchComparison {
  Estimate ratio = {};  ///< mean wear rate of the first over that of the second
  double p = 1;         ///< chance of such a difference, or a greater one, between equal abrasives

  bool operator==(const BenchComparison&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("ratio", &BenchComparison::ratio), optional("p", &BenchComparison::p)};
  }
};
/// InvalidInput with fewer than two runs each, runs of different numbers of passes, or different wetness.
BenchComparison compare_benches(const Bench& first, const Bench& second);

/// Runs of each abrasive that a two-sided t test at 5 % needs to find a difference [%], > 0, with a chance of
/// `power`, where ln(wear rate) spreads by `log_sd` between discs: noncentral t distribution. At most 10000.
int runs_needed(double difference_percent, double log_sd, double power = 0.8);

}  // namespace libtexture
