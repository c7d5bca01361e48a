#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/belief_moved.hpp"

using namespace libtexture;

namespace {

Job spot_job() {
  Job job = door::job();
  const Catalogue& catalogue = shipped_catalogue();
  Step step;
  step.name = "level";
  step.abrasive = catalogue.abrasives.at("P2000 film");
  step.backing = catalogue.backings.at("film on firm interface");
  step.motion = catalogue.motions.at("150 mm light");
  step.passes = 12;
  job.sequence = {{"one", {step}}};
  return job;
}

TestSpot spot_that_removed(double removed_um) {
  TestSpot spot;
  spot.passes = 12;
  spot.before_um.assign(8, 250);
  spot.after_um.assign(8, 250 - removed_um);
  return spot;
}

StatementKind moved_by(const Job& job, const TestSpot& spot) {
  return what_moved_belief(job, spot, curves_of(job, spot, surface_of(job))).kind;
}

}  // namespace

TEST_CASE(
    "what moved the belief is what the figures say: readings alone, glossy valleys, or the texture left") {
  const Job job = spot_job();
  const double expected_um = judge_test_spot(job, spot_that_removed(5)).expected_um;
  TestSpot spot = spot_that_removed(expected_um / 3);
  const Statement readings = what_moved_belief(job, spot);
  CHECK(readings.kind == StatementKind::belief_by_readings);
  CHECK(readings.figures.at("readings_ratio") < 0.8);
  CHECK(readings.figures.count("all_ratio") == 0);
  // Readings that say what was expected, and valleys that go far later: the valleys moved it.
  spot = spot_that_removed(expected_um);
  spot.gloss_gone_passes = 11;
  spot.gloss_left_passes = 10;
  spot.gloss_log_sd = 0.02;
  const Statement looks = what_moved_belief(job, spot, curves_of(job, spot, surface_of(job)));
  CHECK(looks.kind == StatementKind::belief_by_looks);
  CHECK(looks.figures.at("all_ratio") != looks.figures.at("readings_ratio"));
  // Readings that say a third, and valleys that go where those lead to expect: the readings moved it.
  spot = spot_that_removed(expected_um / 3);
  spot.gloss_left_passes = 1;
  spot.gloss_gone_passes.reset();
  CHECK(moved_by(job, spot) == StatementKind::belief_by_readings);
}
