// SpotPlan: what is said before a spot is what the spot then gives.
#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/spot_plan.hpp"
#include "libtexture/plan/spot_removal.hpp"
#include "libtexture/plan/test_spot.hpp"

using namespace libtexture;

namespace {

Job job_with(double gauge_um, double gain_percent = 0) {
  Step step;
  step.name = "level";
  step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
  step.backing = shipped_catalogue().backings.at("film on firm interface");
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.passes = 4;
  Job job = door::job();
  job.coating.gauge = {.uncertainty_um = gauge_um, .gain_percent = gain_percent};
  job.sequence = {{"one", {step}}};
  return job;
}

/// A spot of the expected removal: what the plan reckons with.
TestSpot as_expected(const Job& job, int passes, int readings) {
  const SpotRemoval removal{job.sequence[0].step[0], .04, job.coating.hardness_mpa};
  TestSpot spot;
  spot.passes = passes;
  spot.before_um.assign(static_cast<std::size_t>(readings), 250);
  spot.after_um.assign(static_cast<std::size_t>(readings), 250 - removal.removed_um(passes));
  return spot;
}

}  // namespace

TEST_CASE("a spot made as planned gives the accuracy that was asked for, and one of a pass less does not") {
  // judge_test_spot sums finer and starts from readings: 1 %.
  const Job job = job_with(1.5, 1);
  for (const double aim : {.2, .25, .35}) {
    const SpotPlan plan = spot_plan(job, {.log_sd = aim});
    REQUIRE((plan.passes && *plan.passes > 1 && plan.log_sd_after));
    CHECK(*plan.log_sd_after <= aim);
    const auto after = [&](int passes) {
      return judge_test_spot(job, as_expected(job, passes, 6)).after.log_sd;
    };
    CHECK(after(*plan.passes) == Catch::Approx(*plan.log_sd_after).epsilon(.01));
    CHECK(after(*plan.passes - 1) > .99 * aim);
    const SpotPlan by_readings = spot_plan(job, {.log_sd = aim, .passes = *plan.passes});
    REQUIRE(by_readings.readings);
    CHECK(*by_readings.readings <= 6);  // as many as the passes were planned with
    CHECK(plan.slow_passes.value_or(1000) > *plan.passes);
  }
}

TEST_CASE("passes grow with the gauge's uncertainty, readings with its square") {
  // Closed form: the gauge's part goes as u sqrt(2/readings)/removal; the disc hardly loads here.
  Job job = job_with(1);
  job.sequence[0].step[0].abrasive.loading_um = 1e5;
  Job twice = job;
  twice.coating.gauge.uncertainty_um = 2;
  const SpotPlan one = spot_plan(job), two = spot_plan(twice);
  CHECK(*two.passes == Catch::Approx(2 * *one.passes).margin(1).epsilon(0));
  CHECK(*two.readings == Catch::Approx(4 * *one.readings).margin(4).epsilon(0));
}

TEST_CASE("no gauge makes up for spots that differ, and what is known needs no spot") {
  // Two normal numbers (closed form): 1/sqrt(1/.767^2 + 1/.15^2) = .147 is the least, but that the spread of
  // spots goes with the removal, not with its logarithm: 3 %. .767 = sqrt(.7^2 + ln(1 + .25^2) + (1.3 x
  // .15)^2).
  Job job = job_with(1.5);
  job.sequence[0].step[0].abrasive.loading_um = 1e6;
  const SpotPlan plan = spot_plan(job, {.log_sd = .13});
  CHECK(plan.log_sd_before == Catch::Approx(std::sqrt(.49 + std::log(1.0625) + .038025)).epsilon(1e-6));
  CHECK(plan.least_log_sd == Catch::Approx(.1472).epsilon(.03));
  CHECK_FALSE(plan.passes);
  CHECK_FALSE(plan.readings);
  const SpotPlan known = spot_plan(job, {.log_sd = .8});
  CHECK(known.passes == 0);
  CHECK(known.readings == 0);
}

TEST_CASE("a plan for a spot names a step of the job, and figures that can be") {
  CHECK_THROWS_WITH(spot_plan(job_with(1), {.step = "finish"}),
                    "SpotAim: step must be one of sequence \"one\" (got \"finish\")");
  CHECK_THROWS_WITH(spot_plan(job_with(1), {.readings = 0}),
                    "SpotAim: readings must be between 1 and 1000 (got 0)");
}
