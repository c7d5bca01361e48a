// Figures of risk from draws that are counted by hand.
#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/risk.hpp"

using namespace libtexture;

namespace {

RiskDraws four_draws() {
  RiskDraws draws;
  for (std::vector<double>* figure :
       {&draws.removed_um, &draws.levelling_um, &draws.overshoot_um, &draws.debt_um, &draws.clear_left_um,
        &draws.clear_left_least_um, &draws.rms_um, &draws.touched_share, &draws.minutes, &draws.discs,
        &draws.levelling_efficiency, &draws.clear_before_um, &draws.removable_um})
    *figure = {4, 1, 3, 2};
  draws.is_struck_through = {0, 0, 0, 0};
  draws.is_budget_exceeded = {1, 0, 0, 0};
  draws.is_clear_left_short = {1, 0, 0, 0};
  draws.is_short_before = {1, 1, 0, 0};
  draws.is_broken_by_work = {0, 0, 1, 0};
  draws.is_target_missed = {1, 1, 1, 0};
  draws.is_target_met_before = {0, 0, 0, 1};
  return draws;
}

}  // namespace

TEST_CASE("probabilities are shares of the draws") {
  // Counted by hand from the four draws.
  const PanelRisk risk = risk_of(four_draws(), 7);
  CHECK(risk.strike_through_probability == 0);
  CHECK(risk.budget_exceeded_probability == .25);
  CHECK(risk.clear_left_short_probability == .25);
  CHECK(risk.target_missed_probability == .75);
  CHECK(risk.short_before_probability == .5);
  CHECK(risk.broken_by_work_probability == .5);  // one of the two worlds that were not short before
  CHECK(risk.target_met_before_probability == .25);
  CHECK(risk.removed_um.p50 == 2.5);
  CHECK(risk.samples == 4);
  CHECK(risk.node_solves == 7);
}

TEST_CASE("draws that are not equally many are refused, and so are probabilities outside 0 to 1") {
  RiskDraws draws = four_draws();
  draws.minutes.pop_back();
  CHECK_THROWS_AS(risk_of(draws, 0), InvalidInput);
  PanelRisk risk;
  risk.strike_through_probability = 1.1;
  CHECK_THROWS_AS(risk.validate(), InvalidInput);
}
