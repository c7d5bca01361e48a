// Quantiles against a distribution whose quantiles are known.
#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/spread.hpp"

using namespace libtexture;

TEST_CASE("the quantiles of evenly spread draws are those of the uniform distribution") {
  std::vector<double> draws;
  for (int i = 0; i <= 1000; ++i)
    draws.push_back((i * 389) % 1001 / 1000.0);  // 389 and 1001 have no common divisor
  const Spread spread = spread_of(draws);
  CHECK(spread.p05 == Catch::Approx(.05).epsilon(1e-12));  // exact: a draw lies at each
  CHECK(spread.p50 == Catch::Approx(.50).epsilon(1e-12));
  CHECK(spread.p95 == Catch::Approx(.95).epsilon(1e-12));
  CHECK(quantile_of(draws, .12345) == Catch::Approx(.12345).epsilon(1e-9));
  CHECK(mean_of(draws) == Catch::Approx(.5).epsilon(1e-12));
}

TEST_CASE("a single draw is all its quantiles, and none is refused") {
  CHECK(spread_of({3}) == Spread{3, 3, 3});
  CHECK_THROWS_AS(spread_of({}), InvalidInput);
  CHECK_THROWS_AS(mean_of({}), InvalidInput);
  CHECK_THROWS_AS(quantile_of({1, 2}, 1.5), InvalidInput);
}
