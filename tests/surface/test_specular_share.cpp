#include <cmath>
#include <complex>
#include <numbers>

#include "catch.hpp"
#include "libtexture/surface/specular_share.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

double wave_number_per_um(double angle_deg) {
  return 4 * std::numbers::pi * std::cos(angle_deg * std::numbers::pi / 180) / 0.55;
}

}  // namespace

TEST_CASE("no grooves mirror everything and scatter nothing") {
  CHECK(specular_share({}, 20) == 1);
  CHECK(specular_share({{0.2, 0}}, 20) == 1);
  CHECK(haze_share({}, 20, 0, 90) == 0);
}

TEST_CASE("one population of large coverage mirrors pi x/sinh(pi x)") {
  for (const double x : {0.05, 0.3, 1.0, 2.0, 3.5}) {
    const double share = specular_share({{x / wave_number_per_um(45), 60}}, 45);
    const double expected = std::numbers::pi * x / std::sinh(std::numbers::pi * x);
    CHECK(share == Approx(expected).epsilon(1e-8));  // closed form |Gamma(1 + i x)|^2; quadrature
  }
}

TEST_CASE("fine grooves mirror what Bennett and Porteus say of their rms") {
  const double depth = 0.002, k = wave_number_per_um(20);
  const double rms = depth * std::numbers::pi / std::sqrt(6);  // one finished population (closed form)
  // Bennett and Porteus (1961); the next term is of (k rms)^4/10: 1e-5 here.
  CHECK(specular_share({{depth, 60}}, 20) == Approx(std::exp(-k * k * rms * rms)).epsilon(2e-5));
}

TEST_CASE("few grooves take twice their share of the surface, and half-wave ones interfere") {
  // Sparse deep grooves: A = 1 - coverage + what the grooves themselves return, i k depth/(1 + i k depth)
  // away from it (closed form of the integral with 1 - exp(-G) = G); the next term is of coverage^2.
  const double coverage = 1e-3, depth = 0.2, k = wave_number_per_um(45);
  const std::complex<double> a =
      1.0 - std::complex<double>(0, k * depth) * coverage / std::complex<double>(1, k * depth);
  CHECK(specular_share({{depth, coverage}}, 45) == Approx(std::norm(a)).epsilon(2 * coverage * coverage));
}

TEST_CASE("scratched clear mirrors the share that its depth law says") {
  // Coverage 5 at 550 nm; computed apart from this code, as the mean of exp(-i k z) over the depth law by
  // sums of 2e6 terms (numpy); 1e-6 is what those sums are good for.
  struct Row {
    double depth_um, coverage, angle_deg, share;
  };
  for (const Row& row :
       {Row{0.125, 5, 20, 0.003420041761}, Row{0.125, 5, 45, 0.02211921608}, Row{0.125, 5, 60, 0.1015093481},
        Row{0.2, 5, 45, 0.0006256983677}, Row{0.2, 5, 60, 0.01070297688}, Row{0.2, 5, 75, 0.1818074788},
        Row{0.2, 0.05, 20, 0.9094372031}, Row{0.2, 5, 20, 3.705051969e-06}})
    CHECK(specular_share({{row.depth_um, row.coverage}}, row.angle_deg) == Approx(row.share).epsilon(1e-6));
  CHECK(specular_share({{0.2, 0.05}, {0.045, 5}}, 45) == Approx(0.4447701259).epsilon(1e-6));
  CHECK(specular_share({{0.3, 0.2}, {0.085, 3}, {0.012, 5}}, 20) == Approx(0.04709945931).epsilon(1e-6));
}

TEST_CASE(
    "a mirrored lamp is lost after the coarse grain, an outline after the finer, clear after the finest") {
  // At 45 degrees, share as above, fill .1 (closed form of the shares); three digits.
  const auto visibility = [](double depth_um, double angle_deg) {
    return lamp_visibility(specular_share({{depth_um, 5}}, angle_deg));
  };
  CHECK(visibility(0.20, 45) == Approx(0.0031).margin(6e-5));
  CHECK(visibility(0.12, 45) == Approx(0.1237).margin(6e-5));
  CHECK(visibility(0.09, 45) == Approx(0.3448).margin(6e-5));
  CHECK(visibility(0.20, 75) ==
        Approx(0.5263).margin(6e-5));  // the same coarse scratches, seen along the panel
  CHECK(lamp_visibility(0) == 0);
  CHECK(lamp_visibility(1) == 1);
}

TEST_CASE("what grooves take from the mirror they scatter, finer ones wider") {
  const std::vector<GroovePopulation> coarse{{0.2, 0.5}}, fine{{0.05, 0.5}};
  CHECK(haze_share(coarse, 20, 0, 90) == Approx(1 - specular_share(coarse, 20)).epsilon(1e-9));
  CHECK(haze_share(coarse, 20, 0, 2) + haze_share(coarse, 20, 2, 90) ==
        Approx(haze_share(coarse, 20, 0, 90)));
  const auto share_of_scatter = [](const std::vector<GroovePopulation>& grooves, double to_deg) {
    return haze_share(grooves, 20, 0, to_deg) / (1 - specular_share(grooves, 20));
  };
  CHECK(share_of_scatter(coarse, 5) > 3 * share_of_scatter(fine, 5));
  // The stated lobe of one standard deviation, 550 nm/(pi 2 x 200 nm tan 75): 68.27 % lie within it (closed
  // form).
  const double lobe_deg =
      0.55 / (std::numbers::pi * 0.4 * std::tan(75 * std::numbers::pi / 180)) * 180 / std::numbers::pi;
  CHECK(share_of_scatter(coarse, lobe_deg) == Approx(0.6826895).epsilon(1e-6));
}

TEST_CASE("grooves, angles and shares that cannot be are refused") {
  CHECK_THROWS_WITH(specular_share({{-0.1, 5}}, 20), "GroovePopulation: depth_um must be > 0 (got -0.1 um)");
  CHECK_THROWS_WITH(specular_share({{0.1, -5}}, 20), "GroovePopulation: coverage must be >= 0 (got -5)");
  CHECK_THROWS_WITH(specular_share({}, 90),
                    "specular_share: angle_deg must be >= 0 and < 90 degrees (got 90 degrees)");
  CHECK_THROWS_WITH(haze_share({}, 20, 3, 2), "haze_share: to_deg must be >= from_deg (got 2 degrees)");
  CHECK_THROWS_AS(lamp_visibility(1.1), InvalidInput);
}
