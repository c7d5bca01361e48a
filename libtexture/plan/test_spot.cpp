#include "libtexture/plan/test_spot.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/marks_look.hpp"
#include "libtexture/plan/plausible.hpp"
#include "libtexture/plan/spot_removal.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/plan/teach.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

namespace {

// A spot is useful where the gauge's uncertainty is below this share of what was removed: the wear rate then
// becomes about as certain as spots worked alike allow. Estimate.
constexpr double useful_share = 0.25;

// Curves and grids reach so many standard deviations of a prior, and so far at most.
constexpr double prior_reach = 4.5, most_log_ratio = 3;

// A belief whose median moved by more of its prior's standard deviations is warned of, and one that is still
// so dense, in logarithms below its peak, where the search ends. At the prior's own reach it is 10 below.
constexpr double unexpected_sds = 2, log_density_at_edge = -8;

// More texture left than there was is refused from so many standard deviations on, of both figures together.
constexpr double impossible_sds = 3;

constexpr int fineness = 16;  // points of a belief's density per point of its table

const Sequence& sequence_of(const Job& job, const std::string& name, const char* owner = "TestSpot") {
  require(!job.sequence.empty(), "Job", "sequence", "must hold the step that was tried", "none");
  if (name.empty()) return job.sequence.front();
  for (const Sequence& one : job.sequence)
    if (one.name == name) return one;
  require(false, owner, "sequence", "must be one of the job's", "\"" + name + "\"");
  return job.sequence.front();
}

const Step& step_of(const Job& job, const TestSpot& spot) {
  return tried_step(job, spot.sequence, spot.step, "TestSpot");
}

/// The step after the tried one; none where it is the last.
const Step* step_after(const Job& job, const TestSpot& spot) {
  const Sequence& sequence = sequence_of(job, spot.sequence);
  const std::ptrdiff_t next = &step_of(job, spot) - sequence.step.data() + 1;
  return next < std::ssize(sequence.step) ? &sequence.step[static_cast<std::size_t>(next)] : nullptr;
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

/// What is told of the three figures, as a function of their logarithms.
class Likelihood {
 public:
  Likelihood(const Step& step, const TestSpot& spot, const Paint& paint, const SpotCurves& curves,
             double removed_um)
      : spot_(spot),
        curves_(curves),
        removal_{step, spot.area_m2, paint.hardness_mpa},
        readings_{.passes = spot.passes,
                  .removed_um = removed_um,
                  .before = static_cast<int>(spot.before_um.size()),
                  .after = static_cast<int>(spot.after_um.size()),
                  .gauge = paint.gauge,
                  .spot_cv = spot.spot_cv} {}

  double of_readings(double shift) const { return log_likelihood(removal_, readings_, shift); }
  Density wear(double prior_sd) const { return wear_density(removal_, readings_, prior_sd); }

  /// Removals of a wear rate, which all scales and stiffnesses share; of the looks, logarithms.
  struct Removals {
    double all_um = 0, log_gloss_left = -HUGE_VAL, log_gloss_gone = HUGE_VAL;
  };
  Removals removals_of(double shift) const {
    const auto log_removal = [&](int passes) {
      return passes > 0 ? std::log(removal_.removed_um(passes, shift)) : -HUGE_VAL;
    };
    Removals removals;
    removals.all_um = removal_.removed_um(spot_.passes, shift);
    if (spot_.gloss_gone_passes) {
      removals.log_gloss_gone = log_removal(*spot_.gloss_gone_passes);
      removals.log_gloss_left = log_removal(*spot_.gloss_gone_passes - 1);
    }
    if (spot_.gloss_left_passes) removals.log_gloss_left = log_removal(*spot_.gloss_left_passes);
    return removals;
  }

  double log_gloss_gone(double scale, double stiffness) const {
    constexpr double least_um = 1e-3;  // touched at once
    return std::log(std::max(least_um, curves_.gloss_gone_at_um(scale, stiffness)));
  }

  double of_texture(const Removals& removals, double scale, double stiffness, double log_gone) const {
    double sum = 0;
    if (spot_.gloss_gone_passes || spot_.gloss_left_passes) {
      const double width = spot_.gloss_log_sd * std::sqrt(2.0);
      const double chance = std::erfc((log_gone - removals.log_gloss_gone) / width) -
                            std::erfc((log_gone - removals.log_gloss_left) / width);
      sum += std::log(std::max(1e-300, chance));
    }
    if (spot_.rms_left_um) {
      const double left_um = curves_.rms_left_um(scale, stiffness, removals.all_um);
      const double z = std::log(*spot_.rms_left_um / left_um) / spot_.rms_left_log_sd;
      sum -= .5 * z * z;
    }
    return sum;
  }

 private:
  const TestSpot& spot_;
  const SpotCurves& curves_;
  SpotRemoval removal_;
  SpotReadings readings_;
};

double log_normal_prior(double shift, double sd) {
  return -.5 * (shift / sd) * (shift / sd);
}

/// Marginal densities of ln(wear rate), ln(scale) and ln(stiffness).
struct Marginals {
  Density wear, scale, stiffness;
};

std::array<double, 2> reach_of(double log_sd) {
  const double reach = std::min(prior_reach * std::max(log_sd, 1e-3), most_log_ratio);
  return {-reach, reach};
}

/// sum = ln(exp(sum) + exp(log_term)); terms below exp(-37) of the sum are lost in rounding anyway.
void add_log(double& sum, double log_term) {
  if (log_term < sum - 37) return;
  const double peak = std::max(sum, log_term), other = std::min(sum, log_term);
  sum = peak + std::log1p(std::exp(other - peak));
}

Marginals marginals_on(const Likelihood& likelihood, const std::array<std::array<double, 2>, 3>& ranges,
                       const std::array<double, 3>& prior_sd, int points) {
  const auto count = static_cast<std::size_t>(points);
  const auto empty = [&](std::size_t axis) {
    const auto [least, most] = ranges[axis];
    return Density{least, (most - least) / (points - 1), std::vector<double>(count, -HUGE_VAL)};
  };
  Marginals result{empty(0), empty(1), empty(2)};
  struct Pair {
    std::size_t j, k;
    double scale, stiffness, log_prior, log_gone;
  };
  std::vector<Pair> pairs;
  for (std::size_t j = 0; j < count; ++j)
    for (std::size_t k = 0; k < count; ++k) {
      const double log_scale = result.scale.at(j), log_stiffness = result.stiffness.at(k);
      const double scale = std::exp(log_scale), stiffness = std::exp(log_stiffness);
      pairs.push_back(
          {j, k, scale, stiffness,
           log_normal_prior(log_scale, prior_sd[1]) + log_normal_prior(log_stiffness, prior_sd[2]),
           likelihood.log_gloss_gone(scale, stiffness)});
    }
  for (std::size_t i = 0; i < count; ++i) {
    const double shift = result.wear.at(i);
    const double of_wear = likelihood.of_readings(shift) + log_normal_prior(shift, prior_sd[0]);
    const Likelihood::Removals removals = likelihood.removals_of(shift);
    for (const Pair& pair : pairs) {
      const double log_density = of_wear + pair.log_prior +
                                 likelihood.of_texture(removals, pair.scale, pair.stiffness, pair.log_gone);
      add_log(result.wear.log_density[i], log_density);
      add_log(result.scale.log_density[pair.j], log_density);
      add_log(result.stiffness.log_density[pair.k], log_density);
    }
  }
  for (Density* density : {&result.wear, &result.scale, &result.stiffness}) {
    const double peak = *std::max_element(density->log_density.begin(), density->log_density.end());
    for (double& value : density->log_density) value = std::max(-700.0, value - peak);
  }
  return result;
}

/// Where the density is more than exp(-12.5), 5 standard deviations of a normal one, of its peak.
std::array<double, 2> narrowed(const Density& table, const std::array<double, 2>& range) {
  std::size_t first = table.log_density.size(), last = 0;
  for (std::size_t i = 0; i < table.log_density.size(); ++i)
    if (table.log_density[i] > -12.5) {
      first = std::min(first, i);
      last = i;
    }
  return {std::max(range[0], table.at(first) - table.spacing),
          std::min(range[1], table.at(last) + table.spacing)};
}

Marginals marginals_of(const Likelihood& likelihood, const Density& wear, double wear_sd, double scale_sd,
                       double stiffness_sd) {
  const std::array<double, 3> prior_sd{wear_sd, std::max(scale_sd, 1e-3), std::max(stiffness_sd, 1e-3)};
  std::array<std::array<double, 2>, 3> ranges{narrowed(wear, {-HUGE_VAL, HUGE_VAL}), reach_of(scale_sd),
                                              reach_of(stiffness_sd)};
  Marginals result = marginals_on(likelihood, ranges, prior_sd, 25);
  ranges = {narrowed(result.wear, ranges[0]), narrowed(result.scale, ranges[1]),
            narrowed(result.stiffness, ranges[2])};
  return marginals_on(likelihood, ranges, prior_sd, 33);
}

/// Says where a belief left its prior, or lies where the search ends.
void judge_belief(StatementKind kind, const Belief& before, const Belief& after, const Density& density,
                  std::vector<Statement>& warnings) {
  const double log_ratio = std::log(after.median / before.median);
  const double prior_sds = std::abs(log_ratio) / std::max(before.log_sd, 1e-3);
  const auto& values = density.log_density;
  const bool is_low = values.front() > log_density_at_edge, is_high = values.back() > log_density_at_edge;
  if (prior_sds <= unexpected_sds && !is_low && !is_high) return;
  Statement warning{.kind = kind, .figures = {{"ratio", std::exp(log_ratio)}, {"prior_sds", prior_sds}}};
  if (is_low || is_high) warning.figures["edge_ratio"] = std::exp(density.at(is_low ? 0 : values.size() - 1));
  warnings.push_back(std::move(warning));
}

/// More texture left than there was is not possible: a slip of the unit.
void require_less_left(const TestSpot& spot, double rms_um, double scale_sd) {
  if (!spot.rms_left_um) return;
  const double most_um = rms_um * std::exp(impossible_sds * std::hypot(scale_sd, spot.rms_left_log_sd));
  require(*spot.rms_left_um <= most_um, "TestSpot", "rms_left_um",
          "must not be more than there was, " + microns(rms_um) + " and at most " + microns(most_um) +
              "; if it is in nm, write " + to_text(*spot.rms_left_um / 1000),
          *spot.rms_left_um);
}

void judge_use(TestSpotResult& result, const TestSpot& spot, const Gauge& gauge, const SpotRemoval& removal) {
  const double shift = std::log(result.after.median / result.before.median);
  const double likely_um = removal.removed_um(spot.passes, shift);
  result.is_useful = result.gauge_sd_um <= useful_share * likely_um;
  result.passes_needed = spot.passes;
  result.readings_needed = static_cast<int>(std::min(spot.before_um.size(), spot.after_um.size()));
  if (!result.is_useful) {
    result.passes_needed = removal.passes_to(result.gauge_sd_um / useful_share, shift);
    const double ratio = gauge.uncertainty_um / (useful_share * likely_um);
    result.readings_needed = static_cast<int>(std::min(1e6, std::ceil(2 * ratio * ratio)));
    result.warnings.push_back(
        {.kind = StatementKind::spot_says_little,
         .figures = {{"gauge_sd_um", result.gauge_sd_um},
                     {"removed_um", likely_um},
                     {"passes_needed", static_cast<double>(result.passes_needed)},
                     {"readings_needed", static_cast<double>(result.readings_needed)}}});
  }
  if (result.removed_um < 0) result.warnings.push_back({.kind = StatementKind::film_thicker_after});
}

/// Readings of the whole film, as those of a panel.
void require_readings(const std::vector<double>& readings_um, std::string_view field) {
  const PlausibleRange& film = plausible_range("panel.readings.total_um");
  for (const double reading : readings_um) {
    require(reading >= film.least, "TestSpot", field,
            "must be at least " + to_text(film.least) + ": is it mil or mm?", reading);
    require(reading <= film.most, "TestSpot", field, "must be at most " + to_text(film.most), reading);
  }
}

double log_ratio(const Belief& before, const Belief& after) {
  return std::log(after.median / before.median);
}

/// The job once the wear rate that the spot gave is in it.
Job with_wear(const Job& job, const TestSpot& spot, const TestSpotResult& result) {
  const Step& step = step_of(job, spot);
  Job taught = job;
  teach_wear(
      taught, step,
      {wear_spread(step, job.uncertainty), log_ratio(result.before, result.after), result.after.log_sd});
  return taught;
}

bool looks_for_marks(const TestSpot& spot) {
  return spot.marks_gone_passes || spot.marks_left_passes;
}

/// The look at marks, where the job has learned from the readings already.
MarksLook marks_look(const Job& job, const TestSpot& spot, double removed_um) {
  const Step& step = step_of(job, spot);
  const Step* next = step_after(job, spot);
  require(next, "TestSpot", spot.marks_gone_passes ? "marks_gone_passes" : "marks_left_passes",
          "must be left out where no step follows \"" + title_of(step) + "\"",
          spot.marks_gone_passes.value_or(spot.marks_left_passes.value_or(0)));
  return {.marked_by = step,
          .marked_um = removed_um,
          .next = {*next, spot.area_m2, job.coating.hardness_mpa},
          .gone_passes = spot.marks_gone_passes,
          .left_passes = spot.marks_left_passes,
          .limits = job.scratch_limits,
          .log_sd = std::hypot(spot.marks_log_sd, spot.spot_cv),
          .depth_log_sd = groove_spread(step, job.uncertainty).log_sd(),
          .wear_log_sd = wear_spread(*next, job.uncertainty).log_sd()};
}

/// The job once it has learned from the look at marks too.
void learn_from_marks(Job& job, const TestSpot& spot, double removed_um) {
  const MarksLook look = marks_look(job, spot, removed_um);
  const MarksSeen seen = judge_marks(look);
  teach_wear(job, look.next.step,
             {wear_spread(look.next.step, job.uncertainty), std::log(seen.wear.median), seen.wear.log_sd});
  teach_grooves(
      job, look.marked_by,
      {groove_spread(look.marked_by, job.uncertainty), std::log(seen.depth.median), seen.depth.log_sd});
}

Belief wear_belief(const Step& step, const Uncertainty& uncertainty) {
  return lognormal_belief(step.abrasive.wear_rate_mm3_per_n_m, wear_spread(step, uncertainty).log_sd());
}

/// The abrasives of a job, once each, with a step that uses them.
std::map<std::string, const Step*> steps_by_abrasive(const Job& job) {
  std::map<std::string, const Step*> steps;
  for (const Sequence& sequence : job.sequence)
    for (const Step& step : sequence.step) steps.emplace(key_of(step.abrasive), &step);
  return steps;
}

/// What of grooves and of other abrasives is believed before and after.
void add_taught(TestSpotResult& result, const Job& job, const Job& taught, const TestSpot& spot) {
  const auto before = steps_by_abrasive(job), after = steps_by_abrasive(taught);
  const std::string tried = key_of(step_of(job, spot).abrasive);
  for (const auto& [key, step] : before) {
    const Belief old = wear_belief(*step, job.uncertainty),
                 now = wear_belief(*after.at(key), taught.uncertainty);
    if (key != tried && old != now) result.others.push_back({label_of(step->abrasive), old, now});
  }
  if (!looks_for_marks(spot)) return;
  const auto depth = [](const Step& step, const Uncertainty& uncertainty) {
    return lognormal_belief(reference_groove_depth_um(step.abrasive),
                            groove_spread(step, uncertainty).log_sd());
  };
  result.groove_depth_before = depth(*before.at(tried), job.uncertainty);
  result.groove_depth_after = depth(*after.at(tried), taught.uncertainty);
}

/// The job with wear rates and grooves as the spot teaches them.
Job with_abrasives(const Job& job, const TestSpot& spot, const TestSpotResult& result) {
  Job taught = with_wear(job, spot, result);
  if (looks_for_marks(spot)) learn_from_marks(taught, spot, result.expected_um);
  return taught;
}

}  // namespace

void TestSpot::validate() const {
  require_within(passes, 1, most_spot_passes, "TestSpot", "passes");
  require_positive(area_m2, "TestSpot", "area_m2");
  require(area_m2 <= 100, "TestSpot", "area_m2", "must be at most 100", area_m2);
  require(!before_um.empty(), "TestSpot", "before_um", "must hold at least one reading", "none");
  require(!after_um.empty(), "TestSpot", "after_um", "must hold at least one reading", "none");
  require_readings(before_um, "before_um");
  require_readings(after_um, "after_um");
  require_within(spot_cv, 0, 1, "TestSpot", "spot_cv");
  if (gloss_gone_passes) require_within(*gloss_gone_passes, 1, passes, "TestSpot", "gloss_gone_passes");
  if (gloss_left_passes)
    require_within(*gloss_left_passes, 0, gloss_gone_passes ? *gloss_gone_passes - 1 : passes, "TestSpot",
                   "gloss_left_passes");
  require_within(gloss_log_sd, 0.01, 2, "TestSpot", "gloss_log_sd");
  if (rms_left_um) require_positive(*rms_left_um, "TestSpot", "rms_left_um");
  require_within(rms_left_log_sd, 0.01, 2, "TestSpot", "rms_left_log_sd");
  if (marks_gone_passes)
    require_within(*marks_gone_passes, 1, most_spot_passes, "TestSpot", "marks_gone_passes");
  if (marks_left_passes)
    require_within(*marks_left_passes, 0, marks_gone_passes ? *marks_gone_passes - 1 : most_spot_passes,
                   "TestSpot", "marks_left_passes");
  require_within(marks_log_sd, 0.01, 2, "TestSpot", "marks_log_sd");
}

const Step& tried_step(const Job& job, const std::string& sequence_name, const std::string& step,
                       const char* owner) {
  const Sequence& sequence = sequence_of(job, sequence_name, owner);
  if (step.empty()) return sequence.step.front();
  const auto place = place_of(sequence.step, step);
  require(place.has_value(), owner, "step", "must be one of sequence \"" + sequence.name + "\"",
          "\"" + step + "\"");
  return sequence.step[*place];
}

bool tells_texture(const TestSpot& spot) {
  return spot.gloss_gone_passes || spot.gloss_left_passes || spot.rms_left_um;
}

SpotCurves curves_of(const Job& job, const TestSpot& spot, const HeightField& surface,
                     const Progress& progress) {
  job.validate();
  spot.validate();
  const Step& step = step_of(job, spot);
  const double reach = prior_reach * std::hypot(scale_log_sd(job.texture), step.backing.stiffness_log_sd);
  return spot_curves(step, surface, spot.area_m2, std::clamp(reach, 0.1, most_log_ratio), progress);
}

TestSpotResult judge_test_spot(const Job& job, const TestSpot& spot, const SpotCurves& curves) {
  job.validate();
  spot.validate();
  const Step& step = step_of(job, spot);
  const Gauge& gauge = job.coating.gauge;
  const int before = static_cast<int>(spot.before_um.size()), after = static_cast<int>(spot.after_um.size());
  const SpotRemoval removal{step, spot.area_m2, job.coating.hardness_mpa};

  TestSpotResult result;
  result.abrasive = label_of(step.abrasive);
  result.backing = label_of(step.backing);
  const double wear_sd = wear_spread(step, job.uncertainty).log_sd();
  result.before = lognormal_belief(step.abrasive.wear_rate_mm3_per_n_m, wear_sd);
  result.removed_um = mean_of(spot.before_um) - mean_of(spot.after_um);
  result.gauge_sd_um = removal_uncertainty_um(gauge, 0, before, after);
  result.expected_um = removal.removed_um(spot.passes);
  require_thinner(result.removed_um, result.gauge_sd_um);

  require_positive(wear_sd, "Abrasive", "wear_rate_log_sd");
  const Likelihood likelihood(step, spot, job.coating, curves, result.removed_um);
  const Density wear = likelihood.wear(wear_sd);
  std::vector<Statement> moved;
  if (!tells_texture(spot)) {
    result.after = belief_of(refined(wear, fineness), result.before.median);
    judge_belief(StatementKind::wear_rate_unexpected, result.before, result.after, wear, moved);
  } else {
    require(!curves.gloss_gone_um.empty(), "TestSpot", "curves", "must be given where texture is told",
            "none");
    const double scale_sd = scale_log_sd(job.texture), stiffness_sd = step.backing.stiffness_log_sd;
    require_less_left(spot, curves.rms_um, scale_sd);
    result.texture_before = lognormal_belief(curves.rms_um, scale_sd);
    result.stiffness_before = lognormal_belief(step.backing.stiffness_factor, stiffness_sd);
    const Marginals marginals = marginals_of(likelihood, wear, wear_sd, scale_sd, stiffness_sd);
    result.after = belief_of(refined(marginals.wear, fineness), result.before.median);
    result.texture_after = belief_of(refined(marginals.scale, fineness), curves.rms_um);
    result.stiffness_after = belief_of(refined(marginals.stiffness, fineness), step.backing.stiffness_factor);
    judge_belief(StatementKind::wear_rate_unexpected, result.before, result.after, marginals.wear, moved);
    judge_belief(StatementKind::texture_unexpected, *result.texture_before, *result.texture_after,
                 marginals.scale, moved);
    judge_belief(StatementKind::stiffness_unexpected, *result.stiffness_before, *result.stiffness_after,
                 marginals.stiffness, moved);
  }
  judge_use(result, spot, gauge, removal);
  result.warnings.insert(result.warnings.end(), moved.begin(), moved.end());
  add_taught(result, job, with_abrasives(job, spot, result), spot);
  return result;
}

Job learned_from(const Job& job, const TestSpot& spot, const TestSpotResult& result) {
  const std::string backing_key = key_of(step_of(job, spot).backing);
  Job calibrated = with_abrasives(job, spot, result);
  for (Sequence& sequence : calibrated.sequence)
    for (Step& step : sequence.step)
      if (result.stiffness_after && key_of(step.backing) == backing_key) {
        step.backing.stiffness_factor *= result.stiffness_after->median / result.stiffness_before->median;
        step.backing.stiffness_log_sd = result.stiffness_after->log_sd;
      }
  if (result.texture_after) {
    calibrated.texture.scale *= result.texture_after->median / result.texture_before->median;
    calibrated.texture.scale_log_sd = result.texture_after->log_sd;
  }
  calibrated.validate();
  return calibrated;
}

}  // namespace libtexture
