#include "libtexture/plan/spot_plan.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/spot_removal.hpp"
#include "libtexture/plan/test_spot.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

constexpr double slow_normal = -1.2816;  // 1 of 10 normal numbers is below
constexpr int most_readings = 1000000;

/// Fewest of 1 to `most` that do; none where not even `most` does.
template <class Does>
std::optional<int> fewest(int most, const Does& does) {
  int few = 0, many = 1;
  while (!does(many)) {
    if (many == most) return std::nullopt;
    few = many;
    many = std::min(most, 2 * many);
  }
  while (many - few > 1) {
    const int middle = few + (many - few) / 2;
    (does(middle) ? many : few) = middle;
  }
  return many;
}

// A spot of one step, thought of.
struct Thought {
  SpotRemoval removal;
  const Gauge& gauge;
  const SpotAim& aim;
  double log_sd_before;

  /// What Bayes' rule leaves of ln(wear rate) where the passes remove what a wear rate exp(shift) times the
  /// step's does.
  double log_sd_after(int passes, int readings, double shift = 0) const {
    const SpotReadings read{.passes = passes,
                            .removed_um = removal.removed_um(passes, shift),
                            .before = readings,
                            .after = readings,
                            .gauge = gauge,
                            .spot_cv = aim.spot_cv};
    return belief_of(wear_density(removal, read, log_sd_before, {33, 33, 33}), 1).log_sd;
  }

  std::optional<int> passes(double shift) const {
    if (log_sd_before <= aim.log_sd) return 0;
    return fewest(most_spot_passes,
                  [&](int passes) { return log_sd_after(passes, aim.readings, shift) <= aim.log_sd; });
  }

  std::optional<int> readings() const {
    if (log_sd_before <= aim.log_sd) return 0;
    return fewest(most_readings,
                  [&](int readings) { return log_sd_after(aim.passes, readings) <= aim.log_sd; });
  }
};

}  // namespace

void SpotAim::validate() const {
  require(log_sd > 0 && log_sd <= 2, "SpotAim", "log_sd", "must be > 0 and <= 2", log_sd);
  require_within(readings, 1, 1000, "SpotAim", "readings");
  require_within(passes, 1, most_spot_passes, "SpotAim", "passes");
  require(area_m2 > 0 && area_m2 <= 100, "SpotAim", "area_m2", "must be > 0 and at most 100", area_m2);
  require_within(spot_cv, 0, 1, "SpotAim", "spot_cv");
}

SpotPlan spot_plan_of(const Step& step, const Paint& paint, const Uncertainty& uncertainty,
                      const SpotAim& aim) {
  aim.validate();
  const double before = wear_spread(step, uncertainty).log_sd();
  const Thought spot{{step, aim.area_m2, paint.hardness_mpa}, paint.gauge, aim, before};
  SpotPlan plan;
  plan.abrasive = label_of(step.abrasive);
  plan.log_sd_before = before;
  if (before > 0) plan.least_log_sd = spot.log_sd_after(aim.passes, most_readings);
  plan.aim_readings = aim.readings;
  plan.passes = spot.passes(0);
  plan.slow_passes = spot.passes(slow_normal * before);
  plan.readings = spot.readings();
  if (plan.passes && *plan.passes > 0) {
    plan.removed_um = spot.removal.removed_um(*plan.passes);
    plan.log_sd_after = spot.log_sd_after(*plan.passes, aim.readings);
  }
  return plan;
}

SpotPlan spot_plan(const Job& job, const SpotAim& aim) {
  job.validate();
  return spot_plan_of(tried_step(job, aim.sequence, aim.step, "SpotAim"), job.coating, job.uncertainty, aim);
}

}  // namespace libtexture
