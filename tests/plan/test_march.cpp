#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/march.hpp"
#include "libtexture/process/pace.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// One world on springs, on a texture so shallow that it is in full contact: the closed form of
// docs/physics.md (19) holds, rms falls by exp(-k R/p).
struct Spring {
  Job job = door::job();
  Worlds worlds;
  std::vector<std::array<double, 2>> bands{{0, HUGE_VAL}};
  HeightField field;
  CurvePlan plan;
  WorldState start;

  Spring() : field(surface()) {
    worlds.texture_scale = {1};
    worlds.hardness_factor = {1};
    worlds.person = {0};
    plan.step.name = "level";
    plan.step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
    plan.step.motion = shipped_catalogue().motions.at("150 mm light");
    plan.step.backing = Backing::on_springs(.5);
    plan.step.passes = 40;
    plan.contact = {plan.step.backing, pressure_kpa(plan.step.motion), std::nullopt};
    plan.starts = {field};
    plan.stiffness_factors = {1};
    plan.most_removal_um = 40;
    plan.bands_mm = bands;
    start.band_um = band_rms_of(field, bands);
    start.valley_um = field.valley_depth_um();
  }

  static HeightField surface() {
    return synthesize({{.wavelength_mm = 2.5, .rms_um = .01}}, Grid{64, 64, 0.4}, 5);
  }

  WorldState marched(const Step& step, int place, double pass_cv = 0) const {
    const March march{job, worlds, bands, start.band_um[0]};
    WorldState state = start;
    march.step(0, job.panel.front(), {step, plan.contact.pressure_kpa, pass_cv, 1},
               solve_curves({plan}).curves.front(), StartSurfaces({field}), place, state);
    return state;
  }
};

double pass_um(const Spring& spring, int passes) {
  DiscUse use;
  double removed = 0;
  for (int i = 0; i < passes; ++i)
    removed += removal_of_pass_um(spring.plan.step, spring.job.panel.front().area_m2,
                                  spring.job.coating.hardness_mpa, use);
  return removed;
}

}  // namespace

TEST_CASE("a rule of texture is met where the closed form says, and the rest to the look is overshoot") {
  const Spring spring;
  Step step = spring.plan.step;
  step.stop.rms_um = .004;
  step.look_every_passes = 2;
  const WorldState end = spring.marched(step, 0);
  const double met_um = std::log(.01 / .004) * spring.plan.contact.pressure_kpa / .5;
  CHECK(end.levelling_um == Approx(met_um).epsilon(.01));  // cubic between nodes: .002, see test_step_curves
  int passes = 0;
  while (pass_um(spring, passes) < met_um) passes += 2;
  CHECK(end.removed_um == Approx(pass_um(spring, passes)).epsilon(1e-12));
  CHECK(end.overshoot_um == Approx(end.removed_um - end.levelling_um).epsilon(1e-12));
  CHECK(end.debt_um == 0);
  CHECK(end.minutes == Approx(passes * pass_minutes(step.motion, .9)));
}

TEST_CASE("rules are met by any of them or by all, and a share of texture is one of the start") {
  const Spring spring;
  Step step = spring.plan.step;
  const auto end = [&](const Stop& stop) {
    step.stop = stop;
    return spring.marched(step, true);
  };
  const double early_um = end({.rms_share = .8}).removed_um, late_um = end({.rms_share = .2}).removed_um;
  REQUIRE(early_um < late_um);
  // Closed form (19): rms falls by exp(-k R/p), so a share of .2 takes ln 5/ln 1.25 = 7.2 times as much as
  // .8; passes are whole.
  CHECK(late_um / early_um == Approx(std::log(5) / std::log(1.25)).epsilon(.15));
  CHECK(end({.rms_um = .002}).removed_um == late_um);  // .2 of .01 um
  CHECK(end({.rms_um = .002, .rms_share = .8}).removed_um == early_um);
  CHECK(end({.rms_um = .002, .rms_share = .8, .when = StopWhen::all}).removed_um == late_um);
}

TEST_CASE("a later step without a rule of texture is scratch debt, all of it") {
  const Spring spring;
  Step step = spring.plan.step;
  step.passes = 3;
  const WorldState end = spring.marched(step, 1);
  CHECK(end.debt_um == Approx(pass_um(spring, 3)).epsilon(1e-12));
  CHECK(end.levelling_um == 0);
  CHECK(end.overshoot_um == 0);
}

TEST_CASE(
    "what a step removes spreads by the hand's dwell, and by its lanes the less the more passes it makes") {
  const Spring spring;
  Step step = spring.plan.step;
  // Independent parts add as squares; lanes that fall elsewhere in each of n passes are divided by n (closed
  // form).
  for (const int passes : {1, 4}) {
    step.passes = passes;
    const WorldState end = spring.marched(step, 1, 0.6);
    CHECK(end.removed_sd_um / end.removed_um == Approx(std::sqrt(0.04 + 0.36 / passes)).epsilon(1e-12));
  }
}

TEST_CASE("a step without a rule levels until the job's target was met") {
  Spring spring;
  spring.job.target.rms_um = .005;
  Step step = spring.plan.step;
  step.passes = 12;
  const WorldState end = spring.marched(step, 0);
  CHECK(end.levelling_um ==
        Approx(std::log(.01 / .005) * spring.plan.contact.pressure_kpa / .5).epsilon(.01));
  CHECK(end.removed_um == Approx(pass_um(spring, 12)).epsilon(1e-12));
}

TEST_CASE("a scratch loses depth one for one with the clear beside it, and the step ends when it is gone") {
  Spring spring;
  spring.job.target = {.defect = Defect{.depth_um = 3, .sd_um = 0}};
  spring.worlds.defect_um = {3};
  spring.worlds.defect_rank = {0.5};
  spring.start.defect_left_um = 3;
  Step step = spring.plan.step;
  step.motion.dwell_cv = 0;
  step.passes = 2;
  const WorldState shallow = spring.marched(step, 0);
  // Closed form: depth less removal; the texture, .01 um rms, is all that a place differs by.
  CHECK(shallow.defect_left_um == Approx(3 - pass_um(spring, 2)).margin(0.03));
  CHECK(shallow.defect_removed_um == Approx(3 - shallow.defect_left_um).epsilon(1e-12));
  step.passes = 60;
  step.stop.defect_um = 3;
  const WorldState gone = spring.marched(step, 0);
  int passes = 0;
  while (pass_um(spring, passes) < 3.03) ++passes;
  CHECK(gone.defect_left_um <= 0);
  CHECK(gone.removed_um == Approx(pass_um(spring, passes)).epsilon(1e-12));
  CHECK(gone.levelling_um == Approx(3).margin(0.03));
}
