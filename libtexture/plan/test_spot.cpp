#include "libtexture/plan/test_spot.hpp"

#include <algorithm>
#include <array>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>
#include <cmath>
#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/process/pace.hpp"

namespace libtexture {

namespace {

constexpr const char* wear_rate = "wear_rate_mm3_per_n_m";
constexpr int most_passes = 1000;

// A spot is useful where the gauge's uncertainty is below this share of what was removed: the wear rate then
// becomes about as certain as spots worked alike allow. Estimate.
constexpr double useful_share = 0.25;

constexpr double most_shift = 7;  // no wear rate is off by more than a factor of a thousand

double mean_of(const std::vector<double>& readings) {
  return std::accumulate(readings.begin(), readings.end(), 0.0) / static_cast<double>(readings.size());
}

const Sequence& sequence_of(const Job& job, const std::string& name) {
  require(!job.sequence.empty(), "Job", "sequence", "must hold the step that was tried", "none");
  if (name.empty()) return job.sequence.front();
  for (const Sequence& one : job.sequence)
    if (one.name == name) return one;
  require(false, "TestSpot", "sequence", "must be one of the job's", "\"" + name + "\"");
  return job.sequence.front();
}

const Step& step_of(const Job& job, const TestSpot& spot) {
  const Sequence& sequence = sequence_of(job, spot.sequence);
  if (spot.step.empty()) return sequence.step.front();
  for (const Step& one : sequence.step)
    if (one.name == spot.step) return one;
  require(false, "TestSpot", "step", "must be one of sequence \"" + sequence.name + "\"",
          "\"" + spot.step + "\"");
  return sequence.step.front();
}

/// What the passes remove where the wear rate is exp(shift) times the step's [um].
struct Removal {
  const Step& step;
  double area_m2;
  double hardness_mpa;

  double operator()(int passes, double shift) const {
    Step scaled = step;
    scaled.abrasive.wear_rate_mm3_per_n_m *= std::exp(shift);
    scaled.abrasive.worn_wear_rate_mm3_per_n_m *= std::exp(shift);
    DiscUse use;
    double removed_um = 0;
    for (int pass = 0; pass < passes; ++pass)
      removed_um += removal_of_pass_um(scaled, area_m2, hardness_mpa, use);
    return removed_um;
  }

  /// Fewest passes that remove so much, or most_passes.
  int passes_to(double removed_um, double shift) const {
    int few = 0, many = most_passes;
    while (many - few > 1) {
      const int middle = (few + many) / 2;
      ((*this)(middle, shift) < removed_um ? few : many) = middle;
    }
    return many;
  }
};

/// A density of ln(wear rate) relative to the step's, on a uniform grid.
struct Density {
  double least;
  double spacing;
  std::vector<double> log_density;

  double at(std::size_t i) const { return least + spacing * static_cast<double>(i); }
};

template <class LogDensity>
Density tabulate(const LogDensity& log_density, double least, double most, int points) {
  Density table{least, (most - least) / (points - 1), {}};
  for (int i = 0; i < points; ++i) table.log_density.push_back(log_density(least + table.spacing * i));
  const double peak = *std::max_element(table.log_density.begin(), table.log_density.end());
  for (double& value : table.log_density) value -= peak;
  return table;
}

/// The same density on a finer grid, its logarithm by a cubic spline.
Density refined(const Density& table, int times) {
  const boost::math::interpolators::cardinal_cubic_b_spline<double> spline(
      table.log_density.begin(), table.log_density.end(), table.least, table.spacing);
  const int points = static_cast<int>(table.log_density.size() - 1) * times + 1;
  const double most = table.at(table.log_density.size() - 1);
  return tabulate([&](double shift) { return spline(std::min(shift, most)); }, table.least, most, points);
}

/// Where the density is more than exp(-32), 8 standard deviations of a normal one, of its peak; a point more
/// each side.
std::array<double, 2> support_of(const Density& table) {
  const auto is_dense = [](double log_density) { return log_density > -32; };
  const auto& values = table.log_density;
  const auto first = std::find_if(values.begin(), values.end(), is_dense) - values.begin();
  const auto last = values.rend() - std::find_if(values.rbegin(), values.rend(), is_dense) - 1;
  return {table.least + table.spacing * static_cast<double>(first - 1),
          table.least + table.spacing * static_cast<double>(last + 1)};
}

/// Mean, spread and quantiles of a tabulated density, which vanishes at both ends: there the trapezoid rule
/// is exact but for terms that fall exponentially with the spacing.
WearRateBelief belief_of(const Density& table, double wear_rate_at_0) {
  double weight = 0, mean = 0, square = 0;
  std::vector<double> cumulative{0};
  for (std::size_t i = 0; i < table.log_density.size(); ++i) {
    const double p = std::exp(table.log_density[i]);
    const double before = i == 0 ? 0 : std::exp(table.log_density[i - 1]);
    if (i > 0) cumulative.push_back(cumulative.back() + (p + before) / 2);
    weight += p;
    mean += p * table.at(i);
    square += p * table.at(i) * table.at(i);
  }
  mean /= weight;
  const auto quantile = [&](double share) {
    const double target = share * cumulative.back();
    const auto above = std::lower_bound(cumulative.begin() + 1, cumulative.end(), target);
    const auto i = static_cast<std::size_t>(above - cumulative.begin());
    const double part = (target - cumulative[i - 1]) / (cumulative[i] - cumulative[i - 1]);
    return wear_rate_at_0 * std::exp(table.at(i - 1) + part * table.spacing);
  };
  return {quantile(.5), quantile(.025), quantile(.975), std::sqrt(square / weight - mean * mean)};
}

WearRateBelief prior_of(const Abrasive& abrasive) {
  const double reach = boost::math::quantile(boost::math::normal(), .975) * abrasive.wear_rate_log_sd;
  const double median = abrasive.wear_rate_mm3_per_n_m;
  return {median, median * std::exp(-reach), median * std::exp(reach), abrasive.wear_rate_log_sd};
}

std::string microns(double value_um) {
  return to_text(std::round(100 * value_um) / 100) + " um";
}

void require_thinner(double removed_um, double gauge_sd_um) {
  if (removed_um >= -3 * gauge_sd_um) return;
  throw InvalidInput(
      "TestSpot: after_um must not be thicker than before_um by more than 3 x the gauge's uncertainty, " +
      microns(3 * gauge_sd_um) + " (got " + microns(-removed_um) +
      "): before and after were swapped, the places differ, or the gauge was set anew in between");
}

void judge_use(TestSpotResult& result, const TestSpot& spot, const Gauge& gauge, const Removal& removal) {
  const double shift = std::log(result.after.median / result.before.median);
  const double likely_um = removal(spot.passes, shift);
  result.is_useful = result.gauge_sd_um <= useful_share * likely_um;
  result.passes_needed = spot.passes;
  result.readings_needed = static_cast<int>(std::min(spot.before_um.size(), spot.after_um.size()));
  if (!result.is_useful) {
    result.passes_needed = removal.passes_to(result.gauge_sd_um / useful_share, shift);
    const double ratio = gauge.uncertainty_um / (useful_share * likely_um);
    result.readings_needed = static_cast<int>(std::min(1e6, std::ceil(2 * ratio * ratio)));
    result.warnings.push_back(
        "The gauge is uncertain by " + microns(result.gauge_sd_um) + " of about " + microns(likely_um) +
        " removed: the spot says little. " + std::to_string(result.passes_needed) + " passes, or " +
        std::to_string(result.readings_needed) + " readings before and after, would say more.");
  }
  if (result.removed_um < 0)
    result.warnings.push_back(
        "The film reads thicker after than before, within the uncertainty of the gauge: less was "
        "removed than the gauge can tell.");
  const bool is_off = result.after.median < result.before.least || result.after.median > result.before.most;
  if (is_off)
    result.warnings.push_back(
        "The wear rate lies outside what was thought possible: check passes, force and the "
        "readings before relying on it.");
}

}  // namespace

void TestSpot::validate() const {
  require_within(passes, 1, most_passes, "TestSpot", "passes");
  require_positive(area_m2, "TestSpot", "area_m2");
  require(area_m2 <= 100, "TestSpot", "area_m2", "must be at most 100", area_m2);
  require(!before_um.empty(), "TestSpot", "before_um", "must hold at least one reading", "none");
  require(!after_um.empty(), "TestSpot", "after_um", "must hold at least one reading", "none");
  for (const double reading : before_um) require_within(reading, 1e-3, 5000, "TestSpot", "before_um");
  for (const double reading : after_um) require_within(reading, 1e-3, 5000, "TestSpot", "after_um");
  require_within(spot_cv, 0, 1, "TestSpot", "spot_cv");
}

TestSpotResult judge_test_spot(const Job& job, const TestSpot& spot) {
  job.validate();
  spot.validate();
  const Step& step = step_of(job, spot);
  const Gauge& gauge = job.coating.gauge;
  const int before = static_cast<int>(spot.before_um.size()), after = static_cast<int>(spot.after_um.size());
  const Removal removal{step, spot.area_m2, job.coating.hardness_mpa};

  TestSpotResult result;
  result.abrasive = step.abrasive.name;
  result.before = prior_of(step.abrasive);
  result.removed_um = mean_of(spot.before_um) - mean_of(spot.after_um);
  result.gauge_sd_um = removal_uncertainty_um(gauge, 0, before, after);
  result.expected_um = removal(spot.passes, 0);
  require_thinner(result.removed_um, result.gauge_sd_um);

  const double prior_sd = step.abrasive.wear_rate_log_sd;
  require_positive(prior_sd, "Abrasive", "wear_rate_log_sd");
  const auto log_density = [&](double shift) {
    const double expected = removal(spot.passes, shift);
    const double sd =
        std::hypot(removal_uncertainty_um(gauge, expected, before, after), spot.spot_cv * expected);
    const double z = (result.removed_um - expected) / sd, from_prior = shift / prior_sd;
    return -.5 * (z * z + from_prior * from_prior) - std::log(sd);
  };
  // The prior's whole width, then what the readings leave of it, twice: an exact gauge leaves little.
  const double reach = std::min(8 * prior_sd, most_shift);
  Density table = tabulate(log_density, -reach, reach, 49);
  for (const int points : {33, 129}) {
    const auto [least, most] = support_of(table);
    table = tabulate(log_density, least, most, points);
  }
  result.after = belief_of(refined(table, 16), step.abrasive.wear_rate_mm3_per_n_m);
  judge_use(result, spot, gauge, removal);
  return result;
}

Job calibrate(const Job& job, const TestSpot& spot) {
  const TestSpotResult result = judge_test_spot(job, spot);
  const double ratio = result.after.median / result.before.median;
  Job calibrated = job;
  for (Sequence& sequence : calibrated.sequence)
    for (Step& step : sequence.step) {
      Abrasive& abrasive = step.abrasive;
      if (abrasive.name != result.abrasive) continue;
      abrasive.ranges[wear_rate] = {
          abrasive.wear_rate_mm3_per_n_m * result.after.least / result.before.median,
          abrasive.wear_rate_mm3_per_n_m * result.after.most / result.before.median};
      abrasive.wear_rate_mm3_per_n_m *= ratio;
      abrasive.worn_wear_rate_mm3_per_n_m *= ratio;
      abrasive.wear_rate_log_sd = result.after.log_sd;
      abrasive.source = "test spot";
    }
  calibrated.validate();
  return calibrated;
}

}  // namespace libtexture
