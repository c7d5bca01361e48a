#include "libtexture/plan/bench.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/base/student_reach.hpp"
#include "libtexture/numerics/least_squares.hpp"

namespace libtexture {

namespace {

constexpr double significance = 0.05;
constexpr double widest_interval = 10;  // most over least; a figure known no better says nothing (estimate)

/// Removal [um] of one pass at a wear rate of 1 mm3/(N m).
double removal_at_one_um(const Bench& bench) {
  const double area_mm2 = 100 * bench.area_cm2;
  return 1e3 * bench.force_n * bench.sliding_m_per_s * bench.seconds_per_pass / area_mm2;
}

struct Curve {
  double fresh;       // w_0 [mm3/(N m)] on the bench's clear
  double worn_share;  // w_end/w_0
  double loading_um;  // V_0

  /// Clear [um] that a disc has removed after passes: dV/dn = g (w + (1 - w) exp(-V/V_0)) integrates to
  /// V = V_0 ln(1 + (exp(w g n/V_0) - 1)/w), V and g per disc area.
  double after(const Bench& bench, int passes) const {
    const double areas = bench.area_cm2 / bench.disc_area_cm2;
    const double x = fresh * removal_at_one_um(bench) * areas * passes / loading_um;
    return loading_um * std::log1p(std::expm1(worn_share * x) / worn_share) / areas;
  }
};

/// Parameters are logarithms, so that no figure turns negative; the worn share's is a logit, so that it stays
/// below 1.
Curve curve_of(const Eigen::VectorXd& p) {
  if (p.size() == 1) return {std::exp(p[0]), 1, 1};
  return {std::exp(p[0]), 1 / (1 + std::exp(-p[1])), std::exp(p[2])};
}

Eigen::VectorXd residuals_of(const Bench& bench, const Curve& curve) {
  std::vector<double> residuals;
  for (const BenchRun& run : bench.runs)
    for (std::size_t pass = 0; pass < run.removed_um.size(); ++pass) {
      const int n = static_cast<int>(pass);
      residuals.push_back(run.removed_um[pass] - (curve.after(bench, n + 1) - curve.after(bench, n)));
    }
  return Eigen::Map<Eigen::VectorXd>(residuals.data(), static_cast<Eigen::Index>(residuals.size()));
}

double total_um(const BenchRun& run) {
  return std::accumulate(run.removed_um.begin(), run.removed_um.end(), 0.0);
}

double mean_wear(const Bench& bench, const BenchRun& run) {
  return total_um(run) / (static_cast<double>(run.removed_um.size()) * removal_at_one_um(bench)) /
         hardness_wear_factor(bench.hardness_mpa);
}

struct Sample {
  double mean, variance;
  double count;
};

Sample sample_of(const std::vector<double>& values) {
  const double n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double square = 0;
  for (const double value : values) square += (value - mean) * (value - mean);
  return {mean, n > 1 ? square / (n - 1) : 0, n};
}

/// Fit of a wear rate that stays, and of one that falls; whether the second is better by more than chance.
struct Fits {
  LeastSquares constant, loading;
  double p = 1;
  bool is_loading_seen = false;
};

Fits fits_of(const Bench& bench) {
  const Residuals residuals = [&](const Eigen::VectorXd& p) { return residuals_of(bench, curve_of(p)); };
  double removed = 0, passes = 0, most = 0;
  for (const BenchRun& run : bench.runs) {
    removed += total_um(run);
    passes += static_cast<double>(run.removed_um.size());
    most = std::max(most, total_um(run));
  }
  const double wear = removed / passes / removal_at_one_um(bench);
  Fits fits;
  fits.constant = fit_least_squares(residuals, Eigen::VectorXd::Constant(1, std::log(wear)));
  // Starts where the disc has loaded half way through the longest run.
  const double loading = .5 * most * bench.area_cm2 / bench.disc_area_cm2;
  Eigen::Vector3d start(std::log(1.5 * wear), std::log(.3 / .7), std::log(loading));
  try {
    fits.loading = fit_least_squares(residuals, start);
  } catch (const NotConverged&) {
    return fits;  // a flat valley: nothing to tell loading from
  }
  const double before = fits.constant.residuals.squaredNorm(), after = fits.loading.residuals.squaredNorm();
  if (!(after > 0)) {
    fits.p = before > 0 ? 0 : 1;
  } else {
    const double f = std::max(0.0, before - after) / 2 / (after / fits.loading.degrees_of_freedom);
    fits.p = boost::math::cdf(complement(boost::math::fisher_f(2, fits.loading.degrees_of_freedom), f));
  }
  const double reach = student_reach(fits.loading.degrees_of_freedom);
  const bool is_fixed = (2 * reach * fits.loading.sd).maxCoeff() < std::log(widest_interval);
  const bool falls = curve_of(fits.loading.parameters).worn_share < 1;
  fits.is_loading_seen = fits.p < significance && is_fixed && falls;
  return fits;
}

/// How passes and discs scatter about a curve.
BenchResult scatter_of(const Bench& bench, const LeastSquares& fit, const Curve& curve) {
  BenchResult result;
  std::vector<double> log_ratio;
  Eigen::Index at = 0;
  for (const BenchRun& run : bench.runs) {
    const int passes = static_cast<int>(run.removed_um.size());
    const Eigen::VectorXd part = fit.residuals.segment(at, passes);
    at += passes;
    result.residuals_um.emplace_back(part.begin(), part.end());
    result.run_mean_mm3_per_n_m.push_back(mean_wear(bench, run));
    log_ratio.push_back(std::log(total_um(run) / curve.after(bench, passes)));
  }
  result.disc_log_sd = std::sqrt(sample_of(log_ratio).variance);
  return result;
}

/// How far the mean of the discs may lie off, at 95 %, in logarithms: what their removals scatter beyond what
/// their passes make them; 0 where one disc says nothing of it.
double disc_reach(const Bench& bench, const BenchResult& result) {
  const double discs = static_cast<double>(bench.runs.size());
  if (discs < 2) return 0;
  double by_passes = 0;
  for (const BenchRun& run : bench.runs)
    by_passes += static_cast<double>(run.removed_um.size()) *
                 std::pow(result.residual_sd_um / total_um(run), 2) / discs;
  const double variance = std::max(0.0, std::pow(result.disc_log_sd, 2) - by_passes);
  return student_reach(static_cast<int>(discs) - 1) * std::sqrt(variance / discs);
}

}  // namespace

void Bench::validate() const {
  require(!abrasive.empty(), "Bench", "abrasive", "must not be empty", "\"\"");
  require_positive(force_n, "Bench", "force_n");
  require_positive(sliding_m_per_s, "Bench", "sliding_m_per_s");
  require_positive(seconds_per_pass, "Bench", "seconds_per_pass");
  require_positive(area_cm2, "Bench", "area_cm2");
  require_positive(disc_area_cm2, "Bench", "disc_area_cm2");
  require_positive(hardness_mpa, "Bench", "hardness_mpa");
  std::size_t passes = 0;
  for (const BenchRun& run : runs) {
    require(!run.removed_um.empty(), "Bench", "runs", "must have passes", "\"" + run.name + "\" without");
    // A single pass may read below nothing where the gauge is coarse; a whole disc that adds clear is a slip.
    for (const double removed : run.removed_um) require_within(removed, -1000, 1000, "Bench", "removed_um");
    require(total_um(run) > 0, "Bench", "removed_um", "must be > 0 over the run \"" + run.name + "\"",
            total_um(run));
    passes += run.removed_um.size();
  }
  require(passes >= 4, "Bench", "runs", "must hold at least four passes", static_cast<double>(passes));
}

BenchResult judge_bench(const Bench& bench) {
  bench.validate();
  const Fits fits = fits_of(bench);
  const LeastSquares& fit = fits.is_loading_seen ? fits.loading : fits.constant;
  const Curve curve = curve_of(fit.parameters);
  const double reach = student_reach(fit.degrees_of_freedom);
  const double to_200_mpa = 1 / hardness_wear_factor(bench.hardness_mpa);

  BenchResult result = scatter_of(bench, fit, curve);
  result.is_loading_seen = fits.is_loading_seen;
  result.loading_p = fits.p;
  result.residual_sd_um = fit.residual_sd;
  const double by_discs = disc_reach(bench, result);
  result.wear_rate_mm3_per_n_m =
      estimate_of_log(fit.parameters[0], std::hypot(reach * fit.sd[0], by_discs), to_200_mpa);
  if (fits.is_loading_seen) {
    result.loading_um = estimate_of_log(fit.parameters[2], reach * fit.sd[2]);
    // The worn rate's own spread: the same fit with the worn rate in place of its share of the fresh one.
    const Residuals by_worn = [&](const Eigen::VectorXd& p) {
      return residuals_of(bench, {std::exp(p[0]), std::exp(p[1] - p[0]), std::exp(p[2])});
    };
    Eigen::VectorXd start = fit.parameters;
    start[1] = std::log(curve.fresh * curve.worn_share);
    const LeastSquares worn = fit_least_squares(by_worn, start);
    result.worn_wear_rate_mm3_per_n_m =
        estimate_of_log(worn.parameters[1], std::hypot(reach * worn.sd[1], by_discs), to_200_mpa);
  }
  return result;
}

Abrasive abrasive_of(const Bench& bench, const BenchResult& result, const Abrasive& like,
                     const std::string& source) {
  like.validate();
  Abrasive abrasive = at_grit(like, bench.grit);
  abrasive.name = bench.abrasive;
  abrasive.made_for = {bench.wetness};
  abrasive.family.clear();  // measured itself: it does not hang on its like
  const Estimate& fresh = result.wear_rate_mm3_per_n_m;
  abrasive.stated_grain_um.reset();
  abrasive.wear_rate_mm3_per_n_m = fresh.value;
  abrasive.worn_wear_rate_mm3_per_n_m =
      like.worn_wear_rate_mm3_per_n_m / like.wear_rate_mm3_per_n_m * fresh.value;
  abrasive.source = source;
  abrasive.ranges.erase("worn_wear_rate_mm3_per_n_m");
  abrasive.ranges["wear_rate_mm3_per_n_m"] = {fresh.least, fresh.most};
  if (result.is_loading_seen) {
    const Estimate& worn = result.worn_wear_rate_mm3_per_n_m;
    abrasive.worn_wear_rate_mm3_per_n_m = worn.value;
    abrasive.loading_um = result.loading_um.value;
    abrasive.ranges["worn_wear_rate_mm3_per_n_m"] = {worn.least, worn.most};
    abrasive.ranges["loading_um"] = {result.loading_um.least, result.loading_um.most};
  }
  // 1.96: the interval as the standard deviation of a normal distribution.
  const double fit_log_sd = std::log(fresh.most / fresh.least) / (2 * 1.96);
  abrasive.wear_rate_log_sd = std::hypot(fit_log_sd, result.disc_log_sd);
  abrasive.validate();
  return abrasive;
}

Estimate size_exponent(const std::vector<Bench>& benches, const std::vector<BenchResult>& results) {
  const auto n = static_cast<Eigen::Index>(benches.size());
  require(benches.size() == results.size(), "Bench", "results", "must be as many as benches",
          static_cast<double>(results.size()));
  require(n >= 3, "Bench", "benches", "must be at least three", static_cast<double>(n));
  Eigen::ArrayXd x(n), y(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    x[i] = std::log(benches[static_cast<std::size_t>(i)].grit.median_um());
    y[i] = std::log(results[static_cast<std::size_t>(i)].wear_rate_mm3_per_n_m.value);
  }
  x -= x.mean();
  y -= y.mean();
  const double spread = x.square().sum();
  require(spread > 0, "Bench", "grit", "must differ between abrasives", "one grain");
  const double slope = (x * y).sum() / spread;
  const int freedom = static_cast<int>(n) - 2;
  const double reach = student_reach(freedom) * std::sqrt((y - slope * x).square().sum() / freedom / spread);
  return {slope, slope - reach, slope + reach};
}

BenchComparison compare_benches(const Bench& first, const Bench& second) {
  const auto logs = [](const Bench& bench) {
    bench.validate();
    require(bench.runs.size() >= 2, "Bench", "runs", "must be at least two to compare",
            static_cast<double>(bench.runs.size()));
    std::vector<double> values;
    for (const BenchRun& run : bench.runs) values.push_back(std::log(mean_wear(bench, run)));
    return sample_of(values);
  };
  require(first.wetness == second.wetness, "Bench", "wetness", "must be one to compare", "two");
  const std::size_t passes = first.runs.empty() ? 0 : first.runs[0].removed_um.size();
  for (const Bench* bench : {&first, &second})
    for (const BenchRun& run : bench->runs)
      require(run.removed_um.size() == passes, "Bench", "runs",
              "must have equally many passes to compare, " + std::to_string(passes),
              static_cast<double>(run.removed_um.size()));
  const Sample a = logs(first), b = logs(second);
  const double va = a.variance / a.count, vb = b.variance / b.count;
  require(va + vb > 0, "Bench", "runs", "must differ among themselves to compare", "equal ones");
  // Welch and Satterthwaite's degrees of freedom.
  const double freedom = (va + vb) * (va + vb) / (va * va / (a.count - 1) + vb * vb / (b.count - 1));
  const boost::math::students_t student(freedom);
  const double difference = a.mean - b.mean, sd = std::sqrt(va + vb);
  BenchComparison comparison;
  comparison.p = 2 * boost::math::cdf(complement(student, std::abs(difference) / sd));
  comparison.ratio = estimate_of_log(difference, sd * boost::math::quantile(student, 1 - significance / 2));
  return comparison;
}

int runs_needed(double difference_percent, double log_sd, double power) {
  require_positive(difference_percent, "Bench", "difference_percent");
  require_positive(log_sd, "Bench", "log_sd");
  require(power > 0 && power < 1, "Bench", "power", "must be > 0 and < 1", power);
  const double difference = std::log1p(difference_percent / 100);
  const auto power_of = [&](int runs) {
    const double freedom = 2.0 * runs - 2, shift = difference / (log_sd * std::sqrt(2.0 / runs));
    if (shift > 30) return 1.0;  // beyond what the series is for; certain
    const double critical = boost::math::quantile(boost::math::students_t(freedom), 1 - significance / 2);
    const boost::math::non_central_t alternative(freedom, shift);
    return boost::math::cdf(complement(alternative, critical)) + boost::math::cdf(alternative, -critical);
  };
  constexpr int most = 10000;
  int few = 1, many = 2;
  while (many < most && power_of(many) < power) few = many, many = std::min(most, 2 * many);
  while (many - few > 1) {
    const int middle = (few + many) / 2;
    (power_of(middle) < power ? few : many) = middle;
  }
  return many;
}

}  // namespace libtexture
