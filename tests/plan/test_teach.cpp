// Teach: which steps of a job a lesson reaches.
#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/teach.hpp"
#include "libtexture/plan/tool_spread.hpp"

using namespace libtexture;

namespace {

Job job_with(const std::vector<std::string>& abrasives) {
  Job job = door::job();
  std::vector<Step> steps;
  for (const std::string& name : abrasives) {
    Step step;
    step.abrasive = shipped_catalogue().abrasives.at(name);
    step.backing = shipped_catalogue().backings.at("film on firm interface");
    step.motion = shipped_catalogue().motions.at("150 mm light");
    step.passes = 2;
    steps.push_back(step);
  }
  job.sequence = {{"one", steps}};
  return job;
}

const Abrasive& abrasive_at(const Job& job, std::size_t i) {
  return job.sequence[0].step[i].abrasive;
}

}  // namespace

TEST_CASE("a lesson on wear reaches the family, as this hand gets it from this clear, and nobody else") {
  Job job = job_with({"P2000 film", "P3000 film", "P3000 foam-backed", "compound"});
  const Job before = job;
  const Step tried = job.sequence[0].step[0];
  const KinSpread spread = wear_spread(tried, job.uncertainty);
  teach_wear(job, tried, {spread, -.5, .2});
  CHECK(abrasive_at(job, 0).wear_rate_mm3_per_n_m == Catch::Approx(.082 * std::exp(-.5)));
  CHECK(abrasive_at(job, 0).worn_wear_rate_mm3_per_n_m == Catch::Approx(.0246 * std::exp(-.5)));
  CHECK(abrasive_at(job, 0).wear_rate_log_sd == Catch::Approx(.2));
  // Normal quantile: 95 of 100 within 1.96 standard deviations.
  CHECK(std::log(abrasive_at(job, 0).ranges.at("wear_rate_mm3_per_n_m")[1] /
                 abrasive_at(job, 0).wear_rate_mm3_per_n_m) == Catch::Approx(1.96 * .2).epsilon(1e-3));
  const Taught kin = taught_kin({spread, -.5, .2}, wear_spread(before.sequence[0].step[1], job.uncertainty));
  CHECK(abrasive_at(job, 1).wear_rate_mm3_per_n_m ==
        Catch::Approx(abrasive_at(before, 1).wear_rate_mm3_per_n_m * std::exp(kin.shift)));
  CHECK(abrasive_at(job, 1).wear_rate_log_sd == Catch::Approx(kin.spread.log_sd()));
  CHECK(abrasive_at(job, 1).wear_rate_family_share == Catch::Approx(kin.spread.share()));
  CHECK_FALSE(abrasive_at(job, 1).stated_grain_um);
  for (const std::size_t i : {0, 1}) CHECK(abrasive_at(job, i).wear_rate_of == FigureOf::this_hand);
  for (const std::size_t i : {2, 3}) CHECK(abrasive_at(job, i) == abrasive_at(before, i));
}

TEST_CASE("a lesson on grooves reaches all abrasives, which share a part on one clear") {
  Job job = job_with({"P2000 film", "compound"});
  const Step tried = job.sequence[0].step[0];
  const KinSpread spread = groove_spread(tried, job.uncertainty);
  const KinSpread other = groove_spread(job.sequence[0].step[1], job.uncertainty);
  teach_grooves(job, tried, {spread, .3, .1});
  CHECK(*abrasive_at(job, 0).groove_depth_um == Catch::Approx(.164 * std::exp(.3)));
  CHECK(*abrasive_at(job, 0).groove_depth_log_sd == Catch::Approx(.1));
  const Taught kin = taught_kin({spread, .3, .1}, other);
  CHECK(*abrasive_at(job, 1).groove_depth_um == Catch::Approx(.0125 * std::exp(kin.shift)));
  CHECK(groove_spread(job.sequence[0].step[1], job.uncertainty).log_sd() ==
        Catch::Approx(kin.spread.log_sd()));
  CHECK(abrasive_at(job, 1).wear_rate_of == FigureOf::any_hand);
}
