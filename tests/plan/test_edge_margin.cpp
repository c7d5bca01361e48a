#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/edge_margin.hpp"

using namespace libtexture;

namespace {

Step step_of(const std::string& backing = "film on firm interface") {
  Step step;
  step.name = "level";
  step.abrasive = shipped_catalogue().abrasives.at("P2000 film");
  step.backing = shipped_catalogue().backings.at(backing);
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.passes = 8;
  return step;
}

HistoryRow row_of(double removed_um) {
  HistoryRow row;
  row.passes = 8;
  row.removed_um = removed_um;
  return row;
}

EdgeWork straddling() {
  EdgeWork work;
  work.overhang = Overhang::straddle;
  return work;
}

Budget leaving(double clear_left_least_um) {
  Budget budget;
  budget.clear_left_least_um = clear_left_least_um;
  return budget;
}

EdgeMargin margin_by(const EdgeWork& work, const Budget& budget, double clear_um, double clear_sd_um,
                     const std::vector<Step>& steps, const std::vector<HistoryRow>& rows) {
  std::vector<EdgeProfile> worn;
  for (std::size_t i = 0; i < steps.size(); ++i) worn.push_back(worn_edge(work, steps, rows, i));
  return edge_margin(work, budget, clear_um, clear_sd_um, steps, rows, worn);
}

EdgeMargin margin_of(const EdgeWork& work, const Budget& budget, double clear_um, double clear_sd_um = 0) {
  return margin_by(work, budget, clear_um, clear_sd_um, {step_of()}, {row_of(4)});
}

}  // namespace

TEST_CASE("one step's margin by best estimates is that of its edge profile") {
  // The process floor's own margin, which knows the rule of clear left only.
  const EdgeProfile profile = edge_profile(step_of().backing, step_of().motion,
                                           {.removal_um = 4, .passes = 8, .overhang = Overhang::straddle});
  for (const double clear_um : {46.0, 50.0, 54.0}) {
    const EdgeMargin margin = margin_of(straddling(), leaving(35.6), clear_um);
    REQUIRE(margin.margin_mm);
    CHECK(*margin.margin_mm == unsanded_margin_mm(profile, {.clear_um = clear_um}));
    CHECK(margin.clear_at_edge_um == Catch::Approx(0.8 * clear_um));
    CHECK(margin.peak_removal_um == profile.peak_removal_um);
  }
  CHECK(margin_of(straddling(), leaving(35.6), 100).margin_mm == 0);
}

TEST_CASE("steps add up") {
  const EdgeMargin one = margin_of(straddling(), leaving(35.6), 46);
  const EdgeMargin two =
      margin_by(straddling(), leaving(35.6), 46, 0, {step_of(), step_of()}, {row_of(2), row_of(2)});
  // The same tools all along: equal but for rounding.
  CHECK(two.peak_removal_um == Catch::Approx(one.peak_removal_um).epsilon(1e-9));
  CHECK(two.removed_area_mm2 == Catch::Approx(one.removed_area_mm2).epsilon(1e-9));
}

TEST_CASE("every rule of the budget counts at the edge, and the reserve") {
  // 7.6 um = 0.3 mil, the stricter rule of removal (common practice, no source).
  Budget removed_most;
  removed_most.clear_removed_most_um = 7.6;
  const EdgeMargin margin = margin_of(straddling(), removed_most, 200);
  REQUIRE(margin.margin_mm);
  CHECK(margin.peak_removal_um > 7.6);
  CHECK(*margin.margin_mm < 3);  // the overhung edge's peak is narrow
  Budget reserved = leaving(35.6);
  reserved.reserve_um = 2;
  CHECK(*margin_of(straddling(), reserved, 50).margin_mm >
        *margin_of(straddling(), leaving(35.6), 50).margin_mm);
}

TEST_CASE("to be surer, or with a clear known less well, more is left unsanded") {
  EdgeWork work = straddling();
  const auto sure = [&](double confidence, double sd_um) {
    work.confidence = confidence;
    return margin_of(work, leaving(35.6), 54, sd_um).sure_margin_mm.value_or(HUGE_VAL);
  };
  CHECK(sure(0.5, 2) == margin_of(work, leaving(35.6), 54).margin_mm);  // median of a normal: best estimates
  CHECK(sure(0.95, 2) > sure(0.8, 2));
  CHECK(sure(0.95, 3) > sure(0.95, 1));
  // Closed form: far from the edge 54 - 35.6 - 4 um are to spare; clear known to 10 um leaves that chance at
  // Phi(1.44) = .925, so no margin helps at 95 % and one does at 90 %.
  CHECK(std::isinf(sure(0.95, 10)));
  CHECK(std::isfinite(sure(0.9, 10)));
}

TEST_CASE(
    "the margin is that at which the chance to keep the budget, drawn at random, is the one asked for") {
  // By formula here: with the removal all but even at the place, P(share clear - r > 35.6) at the margin.
  EdgeWork work = straddling();
  work.confidence = 0.9;
  const double clear_um = 50, sd_um = 3;
  const EdgeMargin margin = margin_of(work, leaving(35.6), clear_um, sd_um);
  REQUIRE(margin.sure_margin_mm);
  const double x = *margin.sure_margin_mm;
  REQUIRE((x > 1 && x < 25));
  const EdgeProfile profile = edge_profile(step_of().backing, step_of().motion,
                                           {.removal_um = 4, .passes = 8, .overhang = Overhang::straddle});
  std::size_t k = 0;
  while (profile.distance_mm[k] < x) ++k;
  const double share = 0.8 + 0.2 * x / 25, r = profile.removal_um[k];
  // Dwell, lanes at half a disc (0.105 a pass, closed form: test_dose), and a lean of 0.07 of the radius that
  // tilts the innermost lane, whose middle is 37.5 mm from the edge, by 4 e/a at its rim.
  const double spread = std::sqrt(0.04 + 0.105 * 0.105 / 8 + std::pow(4 * 0.07 * (37.5 - x) / 75, 2));
  const double z = (share * clear_um - r - 35.6) / std::hypot(share * sd_um, spread * r);
  CHECK(0.5 * std::erfc(-z / std::sqrt(2.0)) ==
        Catch::Approx(0.9).margin(0.005).epsilon(0));  // a pixel's width
}

TEST_CASE("a hand that leans asks for more margin along an overhung edge, and moves no best estimate") {
  const auto leaning = [](double lean_share) {
    Step step = step_of();
    step.motion.lean_share = lean_share;
    return margin_by(straddling(), leaving(35.6), 50, 1, {step}, {row_of(4)});
  };
  // 10 mm off the middle of a disc of 75 mm: 0.53 of the mean pressure more at the rim (closed form, 4 e/a).
  const EdgeMargin still = leaning(0), leans = leaning(10.0 / 75);
  CHECK(still.margin_mm == leans.margin_mm);
  REQUIRE((still.sure_margin_mm && leans.sure_margin_mm));
  CHECK(*leans.sure_margin_mm > *still.sure_margin_mm);
}

TEST_CASE("an edge's margin refuses what it cannot know") {
  EdgeWork work;
  work.confidence = 1.2;
  CHECK_THROWS_WITH(work.validate(), "EdgeWork: confidence must be >= .5 and < 1 (got 1.2)");
  Step rigid = step_of();
  rigid.backing = Backing::rigid();
  CHECK_FALSE(has_edge_profile(rigid.backing));
  CHECK_THROWS_AS(margin_by({}, {}, 50, 0, {rigid}, {row_of(4)}), InvalidInput);
  CHECK_THROWS_AS(edge_margin({}, {}, 50, 0, {step_of()}, {}, {}), InvalidInput);
  CHECK_THROWS_AS(edge_margin({}, {}, 50, 0, {step_of()}, {row_of(4)}, {}), InvalidInput);
}

TEST_CASE("a margin that cannot be found names the step") {
  CHECK_THROWS_WITH(margin_by(straddling(), leaving(35.6), 60, 0, {step_of()}, {row_of(1001)}),
                    "edge, step level: EdgeOptions: removal_um must be > 0 and <= 1000 (got 1001 um)");
}
