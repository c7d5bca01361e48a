#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "steps.hpp"

using namespace libtexture;
using Catch::Approx;
using steps::step_of;

namespace {

// A disc and a polish without a word on when they end.
Job two_steps() {
  Job job = door::job();
  Step disc = step_of("P2000 film", "film on firm interface", "150 mm light", 30);
  disc.look_every_passes = 2;
  job.sequence = {{"plain", {disc, step_of("finishing polish", "polish on foam", "150 mm finishing", 2)}}};
  return job;
}

Stop stop_of(const Job& job) {
  return worked_sequence(job, job.sequence.front(), surface_of(job)).step.front().stop;
}

}  // namespace

TEST_CASE("a target says its own stop rule, all of its parts together") {
  Target target;
  target.rms_um = 0.2;
  target.band_mm = {1, 8};
  CHECK(target_stop(target) == Stop{.rms_um = 0.2, .band_mm = {{1, 8}}});
  target = {.preset = TargetPreset::partial};
  CHECK(target_stop(target) == Stop{.rms_share = 0.5});  // half of the starting rms height
  target.preset = TargetPreset::full;
  const Stop full = target_stop(target);
  CHECK(full.touched_share == 0.995);
  CHECK(full.rms_share == 0.35);
  CHECK(full.when == StopWhen::all);
  CHECK(has_no_rule(target_stop({.letter_mm = 20, .distance_m = 3})));
}

TEST_CASE("a first step with a disc and no rule stops at the target; a polish makes all its passes") {
  Job job = two_steps();
  CHECK(stop_of(job).rms_um == 0.15);
  CHECK(worked_sequence(job, job.sequence.front(), surface_of(job)).step[1] == job.sequence.front().step[1]);
  const PanelPrediction panel = predict(job, surface_of(job)).prediction.panels.front();
  CHECK(panel.steps[0].rms_um <= 0.15);
  CHECK(panel.steps[0].passes < 30);
  CHECK(panel.steps[1].passes == 2);
  // The same as with the rule copied into the step.
  Job copied = job;
  copied.sequence.front().step.front().stop.rms_um = 0.15;
  CHECK(predict(copied, surface_of(copied)).prediction.panels.front() == panel);
  // A rule of its own counts, and so does a first step that is no disc.
  job.sequence.front().step.front().stop.removed_um = 1;
  CHECK(stop_of(job) == Stop{.removed_um = 1});
  job = two_steps();
  job.sequence.front().step.erase(job.sequence.front().step.begin());
  CHECK(has_no_rule(stop_of(job)));
}

TEST_CASE("a target of sight stops at the texture that is left where it is first met") {
  Job job = two_steps();
  job.target = {.letter_mm = 15, .distance_m = 3};
  const Stop stop = stop_of(job);
  REQUIRE(stop.rms_um);
  CHECK(*stop.rms_um < 0.6);
  CHECK(*stop.rms_um > 0);
  job.target.letter_mm = 0.1;  // no eye reads that, however flat
  CHECK(has_no_rule(stop_of(job)));
}

TEST_CASE("a rule of texture that is not the target's is warned of") {
  Job job = two_steps();
  const auto warned = [&] { return stop_warnings(job.target, job.sequence.front()); };
  Stop& stop = job.sequence.front().step.front().stop;
  CHECK(warned().empty());
  stop.removed_um = 2;
  CHECK(warned().empty());
  stop = {.rms_um = 0.15};
  CHECK(warned().empty());
  stop.rms_um = 0.2;
  REQUIRE(warned().size() == 1);
  CHECK(warned().front().kind == StatementKind::stop_is_not_target);
  CHECK(warned().front().step == "P2000 film");
  stop = {.rms_um = 0.15, .band_mm = {{1, 8}}};  // counts fewer waves
  CHECK(warned().size() == 1);
  job.target = {.preset = TargetPreset::full};
  stop = {.touched_share = 0.995};  // without the texture that full asks for
  CHECK(warned().size() == 1);
  // Levelling in two steps: the last one reaches it.
  job.sequence.front().step[1].stop = target_stop(job.target);
  CHECK(warned().empty());
  job.target = {.letter_mm = 40, .distance_m = 3};
  stop = {.rms_um = 0.2};
  CHECK(warned().empty());
}
