#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/compression.hpp"
#include "libtexture/tool/backing.hpp"

using namespace libtexture;

namespace {

/// A sample of 10 mm and 25 cm2 up to 40 % strain.
CompressionCurve curve_of(double modulus_kpa, double plateau_kpa, double noise_kpa, std::uint64_t seed,
                          int points = 30) {
  boost::random::mt19937_64 generator(seed);
  boost::random::normal_distribution<> normal;
  CompressionCurve curve;
  curve.thickness_mm = 10;
  curve.area_cm2 = 25;
  for (int i = 1; i <= points; ++i) {
    const double strain = .4 * i / points;
    const double stress = std::isinf(plateau_kpa)
                              ? modulus_kpa * strain
                              : -plateau_kpa * std::expm1(-modulus_kpa * strain / plateau_kpa);
    curve.deflection_mm.push_back(10 * strain);
    curve.force_n.push_back((stress + noise_kpa * normal(generator)) * 2.5);  // 1 kPa on 25 cm2 = 2.5 N
  }
  return curve;
}

}  // namespace

TEST_CASE("an exact curve gives back its modulus and plateau") {
  const CompressionResult result = judge_compression(curve_of(200, 10, 0, 1));
  CHECK(result.is_plateau_seen);
  CHECK(result.modulus_mpa.value == Catch::Approx(.2).epsilon(1e-8));
  CHECK(result.plateau_kpa.value == Catch::Approx(10).epsilon(1e-8));
}

TEST_CASE("a curve that no foam has is refused") {
  const auto refused = [](auto change) {
    CompressionCurve curve = curve_of(200, 10, 0, 1, 6);
    change(curve);
    CHECK_THROWS_AS(judge_compression(curve), InvalidInput);
  };
  refused([](CompressionCurve& curve) { std::reverse(curve.force_n.begin(), curve.force_n.end()); });
  refused([](CompressionCurve& curve) { curve.deflection_mm.assign(6, 2.0); });
  for (const double area_cm2 : {1e300, 1e-300, -1.0})
    refused([&](CompressionCurve& curve) { curve.area_cm2 = area_cm2; });
  // On a plateau the force scatters: here by a tenth of it.
  CompressionCurve curve = curve_of(200, 10, 0, 1);
  curve.force_n[25] *= 0.9;
  CHECK_NOTHROW(judge_compression(curve));
}

TEST_CASE("a foam measured so approaches as a backing of that layer does") {
  // The backing floor's own curve, nu = 0: strain at 5 kPa.
  const CompressionResult result = judge_compression(curve_of(200, 10, 0, 1));
  Layer layer;
  layer.modulus_mpa = result.modulus_mpa.value;
  layer.plateau_kpa = result.plateau_kpa.value;
  layer.thickness_mm = 10;
  layer.poisson = 0;
  Backing backing;
  backing.layers = {layer};
  const double strain = mean_approach_um(backing, 5) / 1e4;
  CHECK(-10 * std::expm1(-200 * strain / 10) == Catch::Approx(5).epsilon(1e-8));
}

TEST_CASE("intervals of modulus and plateau hold the truth in 95 % of 1000 samples") {
  int modulus = 0, plateau = 0;
  for (int trial = 0; trial < 1000; ++trial) {
    const CompressionResult result =
        judge_compression(curve_of(200, 10, .3, 100 + static_cast<std::uint64_t>(trial)));
    modulus += result.modulus_mpa.least <= .2 && .2 <= result.modulus_mpa.most;
    plateau += result.plateau_kpa.least <= 10 && 10 <= result.plateau_kpa.most;
  }
  CHECK((modulus >= 930 && modulus <= 970));
  CHECK((plateau >= 930 && plateau <= 970));
}

TEST_CASE("a straight curve shows a plateau as often as chance does, 5 %") {
  // An F test at 5 %: binomial of 500, four standard deviations; half of the chance fits bend the other way.
  int seen = 0;
  for (int trial = 0; trial < 500; ++trial)
    seen += judge_compression(curve_of(200, HUGE_VAL, .3, 5000 + static_cast<std::uint64_t>(trial)))
                .is_plateau_seen;
  CHECK(seen <= 45);
  const CompressionResult straight = judge_compression(curve_of(200, HUGE_VAL, 0.01, 1));
  CHECK(straight.modulus_mpa.value == Catch::Approx(.2).epsilon(1e-3));
}

TEST_CASE("a bad curve is refused") {
  CompressionCurve curve = curve_of(200, 10, 0, 1);
  curve.deflection_mm.back() = 8;
  CHECK_THROWS_WITH(judge_compression(curve),
                    "CompressionCurve: deflection_mm must be between 0 and 6 (got 8 mm)");
  curve.deflection_mm.pop_back();
  CHECK_THROWS_WITH(judge_compression(curve),
                    "CompressionCurve: deflection_mm must be as many as force_n (got 29)");
}
