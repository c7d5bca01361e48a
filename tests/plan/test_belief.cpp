#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/belief.hpp"

using namespace libtexture;

TEST_CASE("a log-normal belief has the quantiles of the normal distribution") {
  // Closed form: exp(+-1.959964 sd), the 2.5 % quantiles of any table of the normal distribution.
  const Belief belief = lognormal_belief(0.1, 0.7);
  CHECK(belief.median == 0.1);
  CHECK(belief.least == Catch::Approx(0.1 * std::exp(-1.959964 * 0.7)).epsilon(1e-6));
  CHECK(belief.most == Catch::Approx(0.1 * std::exp(1.959964 * 0.7)).epsilon(1e-6));
  CHECK(lognormal_belief(3, 0).least == 3);
  CHECK_THROWS_AS(lognormal_belief(-1, 0.7), InvalidInput);
}

TEST_CASE("a tabulated normal density is believed as the closed form says") {
  // Normal about ln 2 with sd .3. Trapezoid rule on eight standard deviations: exact to rounding, but for the
  // straight lines between quantiles' points.
  const auto log_density = [](double x) { return -.5 * std::pow((x - std::log(2.0)) / .3, 2); };
  const Density coarse = tabulate(log_density, -7, 7, 49);
  const auto [least, most] = support_of(coarse);
  CHECK((least < std::log(2.0) - 2.4 && most > std::log(2.0) + 2.4));
  const Belief belief = belief_of(refined(tabulate(log_density, least, most, 65), 16), 0.1);
  CHECK(belief.median == Catch::Approx(0.2).epsilon(1e-5));
  CHECK(belief.log_sd == Catch::Approx(0.3).epsilon(1e-6));
  CHECK(belief.most == Catch::Approx(0.2 * std::exp(1.959964 * 0.3)).epsilon(1e-4));
}
