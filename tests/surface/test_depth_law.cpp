#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/expint.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/depth_law.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {
std::vector<DepthLaw> one_population(double coverage, double depth_um) {
  return {DepthLaw{{{depth_um, coverage}}}};
}
}  // namespace

TEST_CASE("overlapping random grooves have the mean depth and the roughness of the Boolean model") {
  // Closed form (Poisson number of triangles over a point), evaluated with scipy: figures in three decimals,
  // so that half of the last one is the tolerance.
  struct Row {
    double coverage, rms, mean;
  };
  for (const Row& row : {Row{.01, .141, .010}, Row{.1, .434, .098}, Row{1, 1.071, .797}, Row{2, 1.221, 1.319},
                         Row{5, 1.280, 2.188}}) {
    const double depth_um = 0.2;
    const auto law = one_population(row.coverage, depth_um);
    CHECK(depth_rms_nm(law) / (1e3 * depth_um) == Approx(row.rms).margin(5.1e-4));
    CHECK(mean_depth_um(law) / depth_um == Approx(row.mean).margin(5.1e-4));
  }
}

TEST_CASE("the mean depth is the entire exponential integral of the coverage") {
  // Closed form: int_0^inf 1 - exp(-K exp(-z)) dz = ln K + gamma + E1(K). Tolerance: the quadrature's.
  const double gamma = boost::math::constants::euler<double>();
  for (const double coverage : {.001, .3, 5., 40., 1e4})
    CHECK(mean_depth_um(one_population(coverage, 1)) ==
          Approx(std::log(coverage) + gamma + boost::math::expint(1, coverage)).epsilon(1e-8));
}

TEST_CASE("very many grooves leave the roughness of the Gumbel distribution") {
  // Closed form: the deepest of many exponential depths is Gumbel distributed, standard deviation pi/sqrt 6.
  CHECK(depth_rms_nm(one_population(1e6, 1)) ==
        Approx(1e3 * boost::math::constants::pi<double>() / std::sqrt(6.)).epsilon(1e-6));
}

TEST_CASE("populations over each other add their coverages") {
  const std::vector<DepthLaw> split{DepthLaw{{{0.2, 2}, {0.2, 3}}}};
  CHECK(deeper_share(split, 0.3) == Approx(-std::expm1(-5 * std::exp(-1.5))).epsilon(1e-14));
  CHECK(depth_rms_nm(split) == Approx(depth_rms_nm(one_population(5, 0.2))).epsilon(1e-12));
  CHECK(unmarked_share(split) == Approx(std::exp(-5.)).epsilon(1e-12));
}

TEST_CASE("unlike parts mix by area, roughness included") {
  const std::vector<DepthLaw> half_marked{DepthLaw{{{0.2, 5}}, 0.25}, DepthLaw{{}, 0.75}};
  const auto marked = one_population(5, 0.2);
  const double mean_um = mean_depth_um(marked);
  const double rms_um = 1e-3 * depth_rms_nm(marked);
  CHECK(mean_depth_um(half_marked) == Approx(0.25 * mean_um).epsilon(1e-9));
  CHECK(unmarked_share(half_marked) == Approx(0.75 + 0.25 * std::exp(-5.)).epsilon(1e-12));
  // Variance of a mixture (closed form): within the parts and between them.
  const double variance = 0.25 * rms_um * rms_um + 0.25 * 0.75 * mean_um * mean_um;
  CHECK(depth_rms_nm(half_marked) == Approx(1e3 * std::sqrt(variance)).epsilon(1e-8));
}

TEST_CASE("a fine population beside a coarse one is resolved") {
  // 20 times finer: the sum of the two closed forms where they lie side by side.
  const std::vector<DepthLaw> parts{DepthLaw{{{0.24, 5}}, 0.5}, DepthLaw{{{0.012, 5}}, 0.5}};
  const double unit = mean_depth_um(one_population(5, 1));
  CHECK(mean_depth_um(parts) == Approx(unit * (0.12 + 0.006)).epsilon(1e-9));
}

TEST_CASE("an unmarked surface is smooth") {
  CHECK(mean_depth_um({DepthLaw{}}) == 0);
  CHECK(depth_rms_nm({DepthLaw{}}) == 0);
  CHECK(unmarked_share({DepthLaw{}}) == 1);
}

TEST_CASE("a depth law out of range is refused") {
  CHECK_THROWS_WITH(mean_depth_um(one_population(-1, 0.2)),
                    "GroovePopulation: coverage must be >= 0 (got -1)");
  CHECK_THROWS_WITH(mean_depth_um(one_population(1, 0)), "GroovePopulation: depth_um must be > 0 (got 0 um)");
  CHECK_THROWS_AS(mean_depth_um({DepthLaw{{}, 0.5}}), InvalidInput);
  CHECK_THROWS_AS(mean_depth_um({}), InvalidInput);
  CHECK_THROWS_AS(deeper_share({DepthLaw{}}, -0.1), InvalidInput);
}
