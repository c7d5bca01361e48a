#include "libtexture/plan/teach.hpp"

#include <cmath>
#include <string>

#include "libtexture/plan/belief.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

std::array<double, 2> range_of(double median, double log_sd) {
  const Belief belief = lognormal_belief(median, log_sd);
  return {belief.least, belief.most};
}

template <class Change>
void for_each_step(Job& job, const Change& change) {
  for (Sequence& sequence : job.sequence)
    for (Step& step : sequence.step) change(step);
}

std::string source_of(const Abrasive& abrasive, const Abrasive& tried) {
  return key_of(abrasive) == key_of(tried) ? "test spot" : "test spot with " + label_of(tried);
}

}  // namespace

void teach_wear(Step& step, const Abrasive& tried, const Lesson& lesson, const Uncertainty& uncertainty) {
  Abrasive& abrasive = step.abrasive;
  if (family_key_of(abrasive) != family_key_of(tried)) return;
  const Taught taught =
      key_of(abrasive) == key_of(tried)
          ? taught_itself(lesson)
          : taught_kin(lesson, wear_spread(step, uncertainty), size_covariance(tried, abrasive, uncertainty));
  abrasive.wear_rate_mm3_per_n_m *= std::exp(taught.shift);
  abrasive.worn_wear_rate_mm3_per_n_m *= std::exp(taught.shift);
  abrasive.wear_rate_log_sd = taught.spread.log_sd();
  abrasive.wear_rate_family_share = taught.spread.share();
  abrasive.wear_rate_of = FigureOf::this_hand;
  abrasive.stated_grain_um.reset();  // what the spot taught is of this grain
  abrasive.ranges["wear_rate_mm3_per_n_m"] =
      range_of(abrasive.wear_rate_mm3_per_n_m, abrasive.wear_rate_log_sd);
  abrasive.source = source_of(abrasive, tried);
}

void teach_grooves(Step& step, const Abrasive& tried, const Lesson& lesson, const Uncertainty& uncertainty) {
  Abrasive& abrasive = step.abrasive;
  const Taught taught = key_of(abrasive) == key_of(tried)
                            ? taught_itself(lesson)
                            : taught_kin(lesson, groove_spread(step, uncertainty));
  abrasive.groove_depth_um = reference_groove_depth_um(abrasive) * std::exp(taught.shift);
  abrasive.groove_depth_log_sd = taught.spread.log_sd();
  abrasive.groove_depth_clear_share = taught.spread.share();
  abrasive.groove_depth_of = FigureOf::this_hand;
  abrasive.ranges["groove_depth_um"] = range_of(*abrasive.groove_depth_um, *abrasive.groove_depth_log_sd);
  abrasive.source = source_of(abrasive, tried);
}

void teach_wear(Job& job, const Step& tried, const Lesson& lesson) {
  const Abrasive of = tried.abrasive;  // as it was: the job's own changes below
  for_each_step(job, [&](Step& step) { teach_wear(step, of, lesson, job.uncertainty); });
}

void teach_grooves(Job& job, const Step& tried, const Lesson& lesson) {
  const Abrasive of = tried.abrasive;
  for_each_step(job, [&](Step& step) { teach_grooves(step, of, lesson, job.uncertainty); });
}

}  // namespace libtexture
