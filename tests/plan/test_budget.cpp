#include <algorithm>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/job.hpp"

using namespace libtexture;

namespace {

BudgetRule binding(const Budget& budget, double clear_um) {
  const auto rules = budget_rules(budget, clear_um);
  CHECK(std::count_if(rules.begin(), rules.end(), [](const BudgetRule& rule) { return rule.is_binding; }) ==
        1);
  return *std::find_if(rules.begin(), rules.end(), [](const BudgetRule& rule) { return rule.is_binding; });
}

}  // namespace

TEST_CASE("a paint without a budget keeps the rules of its kind") {
  // General Motors service bulletin 86-10-24 (1986): 1.4 mil left. General Motors service manual (2000 model
  // year) and Nissan service bulletin (1993): 0.5 mil removed. Published; 1 mil = 25.4 um, here to a tenth.
  const Budget budget = default_budget(PaintKind::factory);
  CHECK(budget == published_budget());
  CHECK(budget.clear_left_least_um.value() == Catch::Approx(1.4 * 25.4).margin(.05).epsilon(0));
  CHECK(budget.clear_removed_most_um.value() == Catch::Approx(.5 * 25.4).margin(.05).epsilon(0));
}

TEST_CASE(
    "a respray may lose a quarter of its clear, and keeps what has to stay; unknown paint keeps all rules") {
  // A respray with 114 um of clear: half a mil, a rule of factory paint, is no rule of it. A quarter is an
  // estimate, no source: 28.5 um here.
  const Budget repaint = default_budget(PaintKind::repaint);
  CHECK(removable_um(repaint, 114) == Catch::Approx(28.5).epsilon(1e-12));
  const BudgetRule share = binding(repaint, 114);
  CHECK(share.limit == BudgetLimit::clear_share);
  CHECK(share.basis == BudgetBasis::estimate);
  CHECK(share.limit_share == 0.25);
  // 40 um: a quarter is 10, but no more than 4.4 may go if 35.6 has to stay.
  CHECK(removable_um(repaint, 40) == Catch::Approx(4.4).epsilon(1e-12));
  for (const double clear_um : {20., 40., 45., 60., 114., 300.}) {
    const double strictest =
        std::min(removable_um(repaint, clear_um), removable_um(published_budget(), clear_um));
    CHECK(removable_um(default_budget(PaintKind::unknown), clear_um) == Catch::Approx(strictest));
  }
}

TEST_CASE(
    "a job without a rule of its own takes those of its paint, with its reserve; a share of 1 is none") {
  Job job;
  for (const PaintKind kind : {PaintKind::factory, PaintKind::repaint, PaintKind::unknown}) {
    job.coating.kind = kind;
    CHECK(budget_of(job) == default_budget(kind));
  }
  job.budget.reserve_um = 3;
  CHECK(removable_um(budget_of(job), 60) == Catch::Approx(9.7));  // unknown: 12.7 less the reserve
  job.budget.clear_left_least_um = 20;
  CHECK(budget_of(job) == job.budget);
  job.budget = {.clear_removed_most_share = 1};
  CHECK(removable_um(budget_of(job), 60) == 60);
  CHECK(binding(budget_of(job), 60).limit == BudgetLimit::clear_itself);
}

TEST_CASE("the rule that allows least binds") {
  // 2.0 mil of factory clear = 50.8 um (I-CAR, published): 12.7 um may go, and 15.2 um would leave 35.6.
  CHECK(removable_um(published_budget(), 50.8) == Catch::Approx(12.7).epsilon(1e-14));
  CHECK(binding(published_budget(), 50.8).limit == BudgetLimit::clear_removed);
  // A thinner one is bound by what has to stay.
  CHECK(removable_um(published_budget(), 40) == Catch::Approx(4.4).epsilon(1e-12));
  CHECK(binding(published_budget(), 40).limit == BudgetLimit::clear_left);
  // One that is too thin already is short by what is missing.
  CHECK(removable_um(published_budget(), 30) == Catch::Approx(-5.6).epsilon(1e-12));
}

TEST_CASE("a budget with no rule still ends at the base coat") {
  CHECK(removable_um(Budget{}, 45) == 45);
  CHECK(binding(Budget{}, 45).basis == BudgetBasis::physics);
}

TEST_CASE("a reserve comes off every rule") {
  Budget budget = published_budget();
  budget.reserve_um = 3;
  for (const double clear_um : {30., 40., 50., 200.})
    CHECK(removable_um(budget, clear_um) == Catch::Approx(removable_um(published_budget(), clear_um) - 3));
}

TEST_CASE("the user's own rules count, and the known ones are shown beside them") {
  Budget budget;
  budget.clear_removed_most_um = 5;
  const auto rules = budget_rules(budget, 50);
  REQUIRE(rules.size() == 3);
  CHECK(rules[0].basis == BudgetBasis::own);
  CHECK((rules[0].is_on && rules[0].is_binding && rules[0].removable_um == 5));
  CHECK((rules[1].is_on && rules[1].limit == BudgetLimit::clear_itself));
  CHECK((!rules[2].is_on && !rules[2].is_binding));
  CHECK(rules[2].removable_um == Catch::Approx(14.4));  // 50 - 35.6
  budget.clear_removed_most_um = 10;
  const auto wider = budget_rules(budget, 50);
  REQUIRE(wider.size() == 4);
  CHECK(wider[3].limit_um == 7.6);  // 0.3 mil: common practice, no source
  CHECK(wider[3].basis == BudgetBasis::practice);
}

TEST_CASE("a known rule that a budget implies is not shown beside it") {
  Budget budget;
  budget.clear_removed_most_um = 7.6;  // stricter than 12.7, the same as common practice
  budget.clear_left_least_um = 40;     // more than 35.6
  const auto rules = budget_rules(budget, 50);
  REQUIRE(rules.size() == 3);
  for (const BudgetRule& rule : rules) CHECK(rule.is_on);
}

TEST_CASE("a rule carries where it comes from, whatever its figure") {
  Budget budget{.clear_left_least_um = published_budget().clear_left_least_um};
  CHECK(budget_rules(budget, 50)[0].basis == BudgetBasis::own);
  for (const BudgetRule& rule : budget_rules(published_budget(), 50))
    if (rule.is_on && rule.limit != BudgetLimit::clear_itself) CHECK(rule.basis == BudgetBasis::published);
}

TEST_CASE("thinning the clear lets ultraviolet light through by Beer and Lambert's law") {
  // Closed form T0^(1 - R/h), absorbers spread evenly: 1 % through 45 um becomes 3.67 % when 12.7 um are
  // gone.
  CHECK(uv_transmittance_percent(1, 45, 12.7) == Catch::Approx(3.67).margin(.005).epsilon(0));
  CHECK(uv_transmittance_percent(1, 45, 0) == Catch::Approx(1).epsilon(1e-14));
  CHECK(uv_transmittance_percent(1, 45, 45) == Catch::Approx(100).epsilon(1e-14));
  // Two halves of a clear multiply to the whole.
  CHECK(uv_transmittance_percent(1, 45, 22.5) == Catch::Approx(10).epsilon(1e-14));
  CHECK_THROWS_WITH(uv_transmittance_percent(1, 45, 46),
                    "Budget: removed_um must be between 0 and 45 (got 46 um)");
}

TEST_CASE("a budget refuses absurd numbers") {
  CHECK_THROWS_AS(budget_rules(Budget{-1, {}, 0}, 50), InvalidInput);
  CHECK_THROWS_AS(budget_rules(Budget{{}, 0, 0}, 50), InvalidInput);
  CHECK_THROWS_AS(budget_rules(Budget{{}, {}, -1}, 50), InvalidInput);
  for (const double share : {-1., 0., 1.1})
    CHECK_THROWS_AS(budget_rules(Budget{.clear_removed_most_share = share}, 50), InvalidInput);
  CHECK_THROWS_WITH(removable_um(Budget{}, -1), "Budget: clear_um must be >= 0 (got -1 um)");
}

TEST_CASE("work breaks a budget by the mean that goes or by the least that stays, reserve kept") {
  const Budget budget{.clear_left_least_um = 35.6, .clear_removed_most_um = 12.7, .reserve_um = 3};
  CHECK_FALSE(breaks(budget, {9.6, 60, 38.7}));
  CHECK(breaks(budget, {9.8, 60, 38.7}));   // 12.7 - 3 = 9.7 may go
  CHECK(breaks(budget, {9.6, 60, 38.5}));   // 35.6 + 3 = 38.6 must stay
  CHECK_FALSE(breaks({}, {100, 100, .1}));  // no rule but the clear itself
  CHECK(breaks({}, {1, 1, -.1}));
  const Budget quarter{.reserve_um = 3, .clear_removed_most_share = .25};
  CHECK_FALSE(breaks(quarter, {11.9, 60, 48}));  // 15 - 3 = 12 may go of 60
  CHECK(breaks(quarter, {12.1, 60, 48}));
  // Rule by rule the same, whichever it is.
  for (const Budget& one : {budget, quarter, Budget{}})
    for (const ClearSpent& spent :
         {ClearSpent{9.6, 60, 38.7}, {9.8, 60, 38.7}, {12.1, 60, 48}, {1, 1, -.1}}) {
      bool is_any = false;
      for (const BudgetRule& rule : budget_rules(one, spent.before_um))
        is_any = is_any || (rule.is_on && is_broken(rule, one.reserve_um, spent));
      CHECK(is_any == breaks(one, spent));
    }
}
