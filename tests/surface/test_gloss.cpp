#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/gloss.hpp"

using namespace libtexture;
using Catch::Approx;

TEST_CASE("the standard's glass mirrors what Fresnel says, and reads 100 by definition") {
  // ISO 2813 index 1.567; closed form (Fresnel), figures to the six digits computed.
  const std::pair<double, double> figures[] = {{20, 0.049078}, {60, 0.100056}, {85, 0.619148}};
  for (const auto& [angle_deg, expected] : figures) {
    CHECK(fresnel(angle_deg, 1.567) == Approx(expected).margin(6e-7));
    CHECK(gloss_gu(angle_deg, 1.567) == Approx(100).epsilon(1e-14));
  }
  CHECK(fresnel(0, 1.5) == Approx(0.04).epsilon(1e-14));  // closed form ((n - 1)/(n + 1))^2
  const double brewster_deg = std::atan(1.5) * 45 / std::atan(1);
  // Closed form: at Brewster's angle only one polarisation is mirrored, ((n^2 - 1)/(n^2 + 1))^2 of it.
  CHECK(fresnel(brewster_deg, 1.5) == Approx(0.5 * std::pow(1.25 / 3.25, 2)).epsilon(1e-12));
}

TEST_CASE("a perfect surface of clear coat reads what ISO 2813 implies for its index") {
  const double figures[][3] = {{20, 82.045, 87.318}, {60, 89.137, 92.431}, {85, 98.975, 99.318}};
  for (const auto& [angle_deg, at_150, at_152] : figures) {  // closed form, rounded to three decimals
    CHECK(gloss_gu(angle_deg, 1.50) == Approx(at_150).margin(6e-4));
    CHECK(gloss_gu(angle_deg, 1.52) == Approx(at_152).margin(6e-4));
  }
}

TEST_CASE("an even roughness takes from the gloss what Bennett and Porteus say") {
  // Bennett and Porteus (1961) at 550 nm; closed form, rounded to six decimals.
  const double figures[][3] = {{0, 0.811548, 0.271153}, {20, 0.831615, 0.315875}, {60, 0.949136, 0.721612}};
  for (const auto& [angle_deg, at_20_nm, at_50_nm] : figures) {
    CHECK(gloss_gu(angle_deg, 1.5, 20) / gloss_gu(angle_deg, 1.5) == Approx(at_20_nm).margin(6e-7));
    CHECK(gloss_gu(angle_deg, 1.5, 50) / gloss_gu(angle_deg, 1.5) == Approx(at_50_nm).margin(6e-7));
  }
  CHECK(gloss_of_share_gu(20, 1.5, 0.5) == Approx(gloss_gu(20, 1.5) / 2).epsilon(1e-14));
}

TEST_CASE("a roughness that takes nearly all the gloss is told") {
  CHECK(gloss_knows_roughness(20, 50));
  CHECK(!gloss_knows_roughness(20, 200));
  CHECK(gloss_knows_roughness(75, 200));  // a flat angle forgives: phase 1.18
}

TEST_CASE("an angle, an index or a roughness that cannot be is refused") {
  CHECK_THROWS_WITH(gloss_gu(90, 1.5), "gloss_gu: angle_deg must be >= 0 and < 90 degrees (got 90 degrees)");
  CHECK_THROWS_WITH(gloss_gu(20, 1.5, -1), "gloss_gu: roughness_nm must be >= 0 (got -1 nm)");
  CHECK_THROWS_WITH(fresnel(20, 1.0), "fresnel: refractive_index must be > 1 and <= 4 (got 1)");
  CHECK_THROWS_AS(gloss_gu(20, 0.9), InvalidInput);
  CHECK_THROWS_AS(gloss_gu(-1, 1.5), InvalidInput);
  CHECK_THROWS_AS(gloss_of_share_gu(20, 1.5, 1.1), InvalidInput);
}
