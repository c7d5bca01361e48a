// Which step and which tool is meant: the rules of identity.hpp, and that what hangs on them follows.
#include "catch.hpp"
#include "door.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/test_spot.hpp"
#include "libtexture/plan/worlds.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/process/sequence.hpp"

using namespace libtexture;

namespace {

Backing unnamed(const std::string& like, double modulus_factor) {
  Backing backing = shipped_catalogue().backings.at(like);
  backing.name.clear();
  for (Layer& layer : backing.layers) layer.modulus_mpa *= modulus_factor;
  return backing;
}

Step step_of(const std::string& name, double force_n, int passes) {
  Step step;
  step.name = name;
  step.abrasive = shipped_catalogue().abrasives.at("P1500 film");
  step.backing = shipped_catalogue().backings.at("film on firm interface");
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.motion.force_n = force_n;
  step.passes = passes;
  return step;
}

// P1500 twice: the second step, at half the force, works until the first one's grooves are gone.
std::vector<Step> twice(const std::string& first, const std::string& second) {
  std::vector<Step> steps{step_of(first, 25, 3), step_of(second, 12, 8)};
  steps[1].stop.clear_owed_um = 0.3;
  return steps;
}

}  // namespace

TEST_CASE("a tool is known by its name, and one without a name by what it is made of") {
  const Backing named = shipped_catalogue().backings.at("film on firm interface");
  const Backing firm = unnamed("film on firm interface", 1), soft = unnamed("film on firm interface", 0.5);
  CHECK(key_of(named) == "film on firm interface");
  CHECK(key_of(firm) == key_of(unnamed("film on firm interface", 1)));
  CHECK(key_of(firm) != key_of(soft));
  CHECK(key_of(firm) != key_of(named));
  CHECK(label_of(firm) == "unnamed backing");

  Backing believed = firm;  // what a test spot teaches makes no other tool of it
  believed.stiffness_factor = 1.3, believed.stiffness_log_sd = 0.2, believed.source = "test spot";
  CHECK(key_of(believed) == key_of(firm));

  Abrasive film = shipped_catalogue().abrasives.at("P1500 film");
  film.name.clear();
  Abrasive taught = film, finer = film;
  taught.wear_rate_mm3_per_n_m *= 2;
  finer.grit = Grit("P2000");
  CHECK(key_of(taught) == key_of(film));
  CHECK(key_of(finer) != key_of(film));

  Motion driven = shipped_catalogue().motions.at("150 mm light");
  driven.name.clear();
  Motion pressed = driven, small = driven;
  pressed.force_n *= 2;
  small.disc_diameter_mm = 75;
  CHECK(key_of(pressed) == key_of(driven));
  CHECK(key_of(small) != key_of(driven));
}

TEST_CASE("titles of steps differ, and names that are given stay") {
  std::vector<Step> steps{step_of("", 25, 1), step_of("", 25, 1), step_of("P1500 film (2)", 25, 1)};
  CHECK(titles_of(steps) == std::vector<std::string>{"P1500 film", "P1500 film (3)", "P1500 film (2)"});
  CHECK(place_of(steps, "P1500 film (3)") == 1U);
  CHECK(place_of(steps, "P1500 film (2)") == 2U);
  CHECK_FALSE(place_of(steps, "P1200 film").has_value());
}

TEST_CASE("two steps with one abrasive are two steps, with or without names") {
  const Job job = door::job();
  const Coating coating{{{.name = "clear", .thickness_um = 60}}};
  const History named = simulate(surface_of(job), coating, twice("first", "second"));
  const History bare = simulate(surface_of(job), coating, twice("", ""));
  CHECK(named.steps[1].passes > 1);  // before the rule of places: 1 pass, the first one's grooves left
  CHECK(bare.steps[1].passes == named.steps[1].passes);
  CHECK(bare.removed_um() == named.removed_um());
  CHECK(bare.steps[1].clear_owed_um == named.steps[1].clear_owed_um);
  CHECK(bare.steps[0].name == "P1500 film");
  CHECK(bare.steps[1].name == "P1500 film (2)");
}

TEST_CASE("names of steps change no figure of a prediction") {
  Job named = door::job(), bare = named;
  named.uncertainty.samples = bare.uncertainty.samples = 100;
  named.sequence = {{"one", twice("first", "second")}};
  bare.sequence = {{"one", twice("", "")}};
  const Predicted a = predict(named, surface_of(named)), b = predict(bare, surface_of(bare));
  CHECK(a.draws[0].removed_um == b.draws[0].removed_um);
  CHECK(a.draws[0].debt_um == b.draws[0].debt_um);
  CHECK(a.prediction.panels[0].risk.debt_um.p50 > 0.5);  // unnamed steps once made this 0
  CHECK(b.prediction.panels[0].disc_lives[1].step == "P1500 film (2)");
}

TEST_CASE("unnamed backings share a draw only where they are made alike") {
  Job job = door::job();
  const Worlds worlds = worlds_of(job);
  Step step = step_of("level", 25, 3), other = step;
  step.backing = unnamed("film on firm interface", 1);
  other.backing = unnamed("film on firm interface", 0.5);
  CHECK(step_worlds(worlds, step, 0).stiffness_factor != step_worlds(worlds, other, 0).stiffness_factor);
  other.backing = step.backing;
  CHECK(step_worlds(worlds, step, 0).stiffness_factor == step_worlds(worlds, other, 3).stiffness_factor);
}

TEST_CASE("a test spot teaches abrasive and backing of the step by one rule") {
  Job job = door::job();
  std::vector<Step> steps = twice("", "");
  steps[0].backing = steps[1].backing = unnamed("film on firm interface", 1);
  steps[1].backing.stiffness_factor = 1.2;  // believed otherwise, and the same backing
  Step third = step_of("other backing", 25, 2);
  third.abrasive.wear_rate_mm3_per_n_m *= 1.1;  // believed otherwise, and the same abrasive
  third.abrasive.worn_wear_rate_mm3_per_n_m *= 1.1;
  steps.push_back(third);
  job.sequence = {{"one", steps}};
  TestSpot spot;
  spot.step = "P1500 film (2)";
  spot.passes = 6;
  spot.before_um = {250, 251, 249}, spot.after_um = {246, 247, 246};
  spot.gloss_gone_passes = 5;
  const SpotCurves curves = curves_of(job, spot, surface_of(job));
  const TestSpotResult result = judge_test_spot(job, spot, curves);
  CHECK(result.abrasive == "P1500 film");
  CHECK(result.backing == "unnamed backing");
  const std::vector<Step> after = calibrate(job, spot, curves).job.sequence[0].step;
  // The rounding of two parts, a family's and its own, that are put together again.
  for (const std::size_t i : {0U, 1U, 2U})
    CHECK(after[i].abrasive.wear_rate_log_sd == Catch::Approx(result.after.log_sd).epsilon(1e-12));
  for (const std::size_t i : {0U, 1U})
    CHECK(after[i].backing.stiffness_log_sd == result.stiffness_after->log_sd);
  CHECK(after[2].backing == third.backing);
}

TEST_CASE("a name stands for one tool in a job") {
  Job job = door::job();
  job.sequence = {{"one", twice("first", "second")}};
  CHECK_NOTHROW(job.validate());
  job.sequence[0].step[1].backing.layers[0].modulus_mpa *= 2;
  CHECK_THROWS_WITH(
      job.validate(),
      "Job: sequence[0].step[1].backing must have a name of its own: another tool of that name is "
      "made otherwise (got \"film on firm interface\")");
  job.sequence[0].step[1].backing.name = "a softer one";
  CHECK_NOTHROW(job.validate());
}
