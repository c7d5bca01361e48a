// ToolSpread: which parts the uncertainty of an abrasive's figures has.
#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

TEST_CASE(
    "the wear rate in this hand on this clear has the hand's and the clear's part until a spot has it") {
  // Variances of independent parts add (closed form): .7 of the abrasive; a CV of .25 is sqrt(ln 1.0625) in
  // the logarithm; hardness .15 to the power 1.3; the exponent of size .25 ln(d/d_stated).
  const double force = std::log1p(.25 * .25), hardness = 1.3 * 1.3 * .15 * .15;
  Step step = step_of("P2000 film");
  const KinSpread before = wear_spread(step, {});
  CHECK(before.log_sd() == Catch::Approx(std::sqrt(.49 + force + hardness)));
  CHECK(before.common_sd == Catch::Approx(std::sqrt(.735 * .49 + force + hardness)));
  const Step fine = step_of("P3000 film");
  const double size = std::log(fine.abrasive.grit.median_um() / step.abrasive.grit.median_um());
  CHECK(wear_spread(fine, {}).own_sd == Catch::Approx(std::hypot(.7 * std::sqrt(.265), .25 * size)));
  CHECK(size_covariance(fine.abrasive, fine.abrasive, {}) == Catch::Approx(.0625 * size * size));
  CHECK(size_covariance(step.abrasive, fine.abrasive, {}) == 0);
  step.abrasive.wear_rate_of = FigureOf::this_hand;
  CHECK(wear_spread(step, {}).log_sd() == Catch::Approx(.7));
}

TEST_CASE("the deepest grooves have the parts of depth, cap, hand and clear until a spot has them") {
  // Parts as above; force and hardness count to the powers of (29), 1/4 and 1/2.
  Step step = step_of("P2000 film");
  const double depth = .25 * .25, cap = .15 * .15;
  const double hand = std::log1p(.25 * .25) / 16 + .15 * .15 / 4;
  CHECK(groove_spread(step, {}).log_sd() == Catch::Approx(std::sqrt(depth + cap + hand)));
  CHECK(groove_spread(step, {}).own_sd == Catch::Approx(std::sqrt(.6 * (depth + cap))));
  step.abrasive.groove_depth_of = FigureOf::this_hand;
  step.abrasive.groove_depth_log_sd = .1;
  step.abrasive.groove_depth_clear_share = .5;
  CHECK(groove_spread(step, {}).common_sd == Catch::Approx(.1 * std::sqrt(.5)));
  CHECK(groove_spread(step, {}).log_sd() == Catch::Approx(.1));
}
