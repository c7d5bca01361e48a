#include <algorithm>

#include "catch.hpp"
#include "libtexture/plan/checklist.hpp"

using namespace libtexture;

namespace {

Step step_of(Wetness wetness, Carrier carrier) {
  Step step;
  step.name = "level";
  step.wetness = wetness;
  step.abrasive.carrier = carrier;
  return step;
}

std::vector<StatementKind> kinds_of(const std::vector<Statement>& list) {
  std::vector<StatementKind> kinds;
  for (const Statement& one : list) kinds.push_back(one.kind);
  return kinds;
}

bool holds(const std::vector<Statement>& list, StatementKind kind) {
  const auto kinds = kinds_of(list);
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace

TEST_CASE("before the plan comes what the trade does first") {
  // Common practice, no source: wash, strip wax and polish, mask, light, test spot.
  Panel panel;
  panel.edge_length_m = 3.8;
  const auto list = checklist_of({panel, panel}, {step_of(Wetness::dry, Carrier::film_disc)});
  CHECK(kinds_of(list) == std::vector<StatementKind>{StatementKind::wash, StatementKind::strip,
                                                     StatementKind::mask_edges, StatementKind::set_light,
                                                     StatementKind::make_test_spot,
                                                     StatementKind::connect_extraction});
  CHECK(list[2].figures.at("edge_length_m") == 7.6);
  CHECK(list[4].step == "level");
}

TEST_CASE("extraction is for dry sanding, a residual-current device for water") {
  const auto extraction = StatementKind::connect_extraction, plugs = StatementKind::keep_plugs_dry;
  const auto dry = checklist_of({}, {step_of(Wetness::dry, Carrier::film_disc)});
  const auto damp = checklist_of({}, {step_of(Wetness::damp, Carrier::foam_disc)});
  const auto compound = checklist_of({}, {step_of(Wetness::dry, Carrier::compound)});
  CHECK((holds(dry, extraction) && !holds(dry, plugs)));
  CHECK((!holds(damp, extraction) && holds(damp, plugs)));
  CHECK((!holds(compound, extraction) && !holds(compound, plugs)));
}

TEST_CASE("the checklist says what a test spot takes, and what it would give, where that was reckoned") {
  // A factor of 95 of 100 cases is exp(1.96 sd) (normal quantile).
  const std::vector<Step> steps{step_of(Wetness::dry, Carrier::film_disc)};
  const SpotPlan plan{
      .log_sd_before = .7, .passes = 7, .aim_readings = 6, .removed_um = 4.25, .log_sd_after = .25};
  const auto planned = checklist_of({}, steps, plan);
  const Statement& spot = planned[4];
  REQUIRE(spot.kind == StatementKind::make_test_spot);
  CHECK(spot.figures.at("passes") == 7);
  CHECK(spot.figures.at("readings") == 6);
  CHECK(spot.figures.at("factor_before") == Catch::Approx(3.94).epsilon(.002));
  CHECK(spot.figures.at("factor_after") == Catch::Approx(1.63).epsilon(.002));
  const auto unplanned = checklist_of({}, steps, SpotPlan{.passes = 0});
  CHECK(unplanned[4].figures.empty());
}
