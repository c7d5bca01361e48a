#include "catch.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/texture.hpp"
#include "machine.hpp"

using namespace libtexture;

namespace {

const Grid grid{64, 64, 0.4};
const Coating coating{{{.name = "clear", .thickness_um = 60}}};

HeightField texture(double rms_um) {
  return synthesize({{.wavelength_mm = 3, .rms_um = rms_um}}, grid, 1);
}

HeightField flat() {
  return HeightField(Array2d::Zero(grid.rows, grid.cols), grid.pixel_mm);
}

Step some_step() {
  Step step;
  step.name = "level";
  step.abrasive.name = "some film";
  step.abrasive.grit = Grit("P1500");
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  step.abrasive.worn_wear_rate_mm3_per_n_m = 0.1;  // never loads: all passes alike
  step.abrasive.loading_um = 150;
  step.backing = Backing::on_springs(0.05);
  step.motion = machine::orbital_150_mm();
  step.passes = 8;
  return step;
}

double pass_um(const Step& step) {
  DiscUse use;
  return removal_of_pass_um(step, SimulateOptions{}.area_m2, coating.clear().hardness_mpa, use);
}

}  // namespace

TEST_CASE("a step without a stop rule makes all its passes, each of the removal that its pace gives") {
  const Step step = some_step();
  const History history = simulate(texture(.6), coating, {step});
  REQUIRE(history.passes.size() == 8);
  CHECK(history.steps.size() == 1);
  for (int k = 0; k < 8; ++k) {
    CHECK(history.passes[k].passes == k + 1);
    CHECK(history.passes[k].removed_um == Catch::Approx((k + 1) * pass_um(step)).epsilon(1e-9));
    CHECK(history.passes[k].overshoot_um == 0);
  }
}

TEST_CASE("what a look comes too late for is overshoot, in the first pass as in a later one") {
  // Closed form: the rule is a removal, so that all beyond it was cut too far.
  Step step = some_step();
  const double pass = pass_um(step);
  for (const double stop_um : {.1 * pass, 1.5 * pass, 3.2 * pass})
    for (const int look : {1, 3}) {
      step.stop.removed_um = stop_um;
      step.look_every_passes = look;
      const HistoryRow row = simulate(flat(), coating, {step}).steps.back();
      CHECK(row.passes % look == 0);
      CHECK(row.removed_um - look * pass < stop_um);  // the look before had not met it
      CHECK(row.overshoot_um == Catch::Approx(row.removed_um - stop_um).epsilon(1e-9));
    }
}

TEST_CASE("a step stops at a look that meets its rule, not between two") {
  Step step = some_step();
  step.passes = 60;
  step.look_every_passes = 2;
  step.stop.rms_um = .3;
  const History history = simulate(texture(.6), coating, {step});
  const HistoryRow& end = history.steps.back();
  REQUIRE(end.passes % 2 == 0);
  CHECK(end.rms_um <= .3);
  CHECK(history.passes[end.passes - 3].rms_um > .3);
}

TEST_CASE("rules end a step by any of them or, where that is stated, by all of them") {
  Step step = some_step();
  const double pass = pass_um(step);
  const auto passes = [&](const Stop& stop) {
    step.stop = stop;
    return simulate(texture(.6), coating, {step}).steps.front().passes;
  };
  // By hand: a removal is met within the pass that it falls in; so small a share of texture is never left.
  CHECK(passes({.rms_share = 1e-6, .removed_um = 2.5 * pass}) == 3);
  CHECK(passes({.rms_share = 1e-6, .removed_um = 2.5 * pass, .when = StopWhen::all}) == 8);
  CHECK(passes({.rms_share = 1, .removed_um = 2.5 * pass}) == 0);
  CHECK(passes({.rms_share = 1, .removed_um = 2.5 * pass, .when = StopWhen::all}) == 3);
  step.stop = {.rms_share = 1.5};
  CHECK_THROWS_WITH(step.validate(), "Stop: rms_share must be > 0 and <= 1 (got 1.5)");
}

TEST_CASE("a step whose rule is met before its first pass is left out, and says so") {
  Step level = some_step(), polish = some_step();
  level.stop.rms_um = .15;
  polish.name = "polish";
  polish.passes = 1;
  const History history = simulate(texture(.1), coating, {level, polish});
  REQUIRE(history.steps.size() == 2);
  CHECK(history.steps[0].passes == 0);
  CHECK(history.steps[0].removed_um == 0);
  CHECK(history.steps[0].discs == 0);
  CHECK(history.steps[0].minutes == 0);
  CHECK(history.steps[0].clear_owed_um == 0);
  REQUIRE(history.warnings.size() == 1);
  CHECK(history.warnings[0] == Statement{.kind = StatementKind::step_not_worked, .step = "level"});
  CHECK(history.steps[1].total_removed_um == Catch::Approx(pass_um(polish)).epsilon(1e-9));
}

TEST_CASE("removal of the steps adds up, and the least clear stands over the deepest valley left") {
  const HeightField before = texture(.6);
  Step first = some_step(), second = some_step();
  second.name = "refine";
  second.abrasive.grit = Grit("P3000");
  first.passes = 3;
  second.passes = 2;
  const History history = simulate(before, coating, {first, second});
  const HistoryRow& end = history.steps[1];
  CHECK(end.total_removed_um == Catch::Approx(history.steps[0].removed_um + end.removed_um).epsilon(1e-12));
  CHECK(end.clear_left_mean_um == Catch::Approx(60 - end.total_removed_um).epsilon(1e-12));
  // docs/physics.md (2): the clear's lower face is flat.
  CHECK(end.clear_left_least_um ==
        Catch::Approx(60 + history.surfaces[1].height_um().minCoeff() - before.mean_um()).epsilon(1e-12));
  CHECK(end.clear_left_least_um < end.clear_left_mean_um);
}

TEST_CASE("clear that is struck through is an answer, below zero") {
  Step step = some_step();
  const Coating thin{{{.name = "clear", .thickness_um = 2}}};
  CHECK(simulate(flat(), thin, {step}).steps.back().clear_left_mean_um ==
        Catch::Approx(2 - 8 * pass_um(step)).epsilon(1e-9));
}

TEST_CASE("a pass of less than a nanometre is refused by the step's name") {
  Step step = some_step();
  step.abrasive.wear_rate_mm3_per_n_m = step.abrasive.worn_wear_rate_mm3_per_n_m = 1e-6;
  CHECK_THROWS_AS(simulate(texture(.6), coating, {step}), InvalidInput);
}
