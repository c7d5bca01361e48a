// The numbers "closed form" below follow from the one-layer forms of K. L. Johnson, Contact Mechanics (1985),
// and of a bonded layer under an inextensible skin; both were checked to 12 digits against the field
// equations.
#include <cmath>
#include <vector>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/layer_stack.hpp"

using namespace libtexture;

namespace {

double stiffness(const std::vector<ElasticLayer>& layers, TopFace top, double q) {
  return 1 / surface_compliance_m_per_pa(layers, top, q);
}

// A pad as it is sold: hook-and-loop on foam on hook-and-loop on a firmer foam.
const std::vector<ElasticLayer> pad{
    {0.5e6, 0.0, 1.5e-3}, {0.2e6, 0.1, 10e-3}, {0.5e6, 0.0, 1.5e-3}, {0.7e6, 0.3, 10e-3}};

}  // namespace

TEST_CASE("one layer has the stiffness of the closed forms, with and without a glued skin") {
  struct Row {
    double poisson, qt, shear_free, skin;
  };
  // k t/E, closed form; 11 decimals are given, so 1e-11.
  for (const Row& row :
       {Row{0, 0.1, 1.00000496455, 1.00125031103}, Row{0, 1, 1.02958278366, 1.12692176438},
        Row{0, 2, 1.21901889460, 1.50138941902}, Row{0.3, 0.5, 1.32947139553, 1.33179394844},
        Row{0.3, 1, 1.32158309715, 1.32158529476}, Row{0.3, 2, 1.44358359582, 1.48133425735}}) {
    const std::vector<ElasticLayer> layer{{1.0, row.poisson, 1.0}};
    CHECK(std::abs(stiffness(layer, TopFace::shear_free, row.qt) - row.shear_free) < 1e-11);
    CHECK(std::abs(stiffness(layer, TopFace::inextensible, row.qt) - row.skin) < 1e-11);
  }
}

TEST_CASE("one layer follows the closed forms for any thickness, down to nearly incompressible rubber") {
  for (const double nu : {0.0, 0.1, 0.3, 0.45, 0.499}) {
    for (const double a : {0.05, 0.3, 1.0, 3.0, 9.0}) {
      const double f = 3 - 4 * nu, modulus = 2e5, t = 7e-3, q = a / t, mu = modulus / (2 * (1 + nu));
      const std::vector<ElasticLayer> layer{{modulus, nu, t}};
      // K. L. Johnson, Contact Mechanics (1985), form of the bonded layer with a shear-free top.
      const double shear_free = modulus / (1 - nu * nu) * q / 2 *
                                (f * std::cosh(2 * a) + 2 * a * a + 5 - 12 * nu + 8 * nu * nu) /
                                (f * std::sinh(2 * a) - 2 * a);
      // Closed form from the field equations.
      const double skin = 4 * mu * (1 - nu) * q * (f * std::sinh(a) * std::cosh(a) + a) /
                          (f * f * std::sinh(a) * std::sinh(a) - a * a);
      // The right-hand sides themselves lose digits at small a and nu near .5, hence not 1e-15.
      CHECK(stiffness(layer, TopFace::shear_free, q) == Catch::Approx(shear_free).epsilon(1e-10));
      CHECK(stiffness(layer, TopFace::inextensible, q) == Catch::Approx(skin).epsilon(1e-10));
    }
  }
}

TEST_CASE("a shear-free layer of nu = .3 is softest at q t = .87, below its thin limit") {
  const std::vector<ElasticLayer> layer{{1.0, 0.3, 1.0}};
  const double least = stiffness(layer, TopFace::shear_free, 0.8698);  // closed form: 1.320165
  CHECK(std::abs(least - 1.320165) < 1e-6);
  CHECK(stiffness(layer, TopFace::shear_free, 0.8698 - 0.02) > least);
  CHECK(stiffness(layer, TopFace::shear_free, 0.8698 + 0.02) > least);
  CHECK(confined_modulus_pa(layer[0]) > least);
}

TEST_CASE("waves much longer than the stack add up the layers' thickness over confined modulus") {
  double compliance = 0;
  for (const ElasticLayer& layer : pad) compliance += layer.thickness_m / confined_modulus_pa(layer);
  for (const TopFace top : {TopFace::shear_free, TopFace::inextensible}) {
    CHECK(surface_compliance_m_per_pa(pad, top, 0) ==
          Catch::Approx(compliance).epsilon(1e-15));  // closed form
    // q t = 2.3e-4; the next term is of order (q t)^2
    CHECK(surface_compliance_m_per_pa(pad, top, 0.01) == Catch::Approx(compliance).epsilon(1e-6));
    // either side of the switch to the limit: rounding of the 2 x 2 steps
    CHECK(surface_compliance_m_per_pa(pad, top, 1e-7) == Catch::Approx(compliance).epsilon(1e-12));
  }
}

TEST_CASE("splitting a layer in two of the same material changes nothing") {
  auto split = pad;
  split[1].thickness_m = 3e-3;
  split.insert(split.begin() + 1, {0.2e6, 0.1, 7e-3});
  for (const TopFace top : {TopFace::shear_free, TopFace::inextensible})
    for (const double q : {1.0, 50.0, 300.0, 1000.0, 6000.0})  // closed form; rounding
      CHECK(stiffness(split, top, q) == Catch::Approx(stiffness(pad, top, q)).epsilon(1e-12));
}

TEST_CASE("a very thick layer is a half-space, and nothing overflows") {
  for (const double nu : {0.0, 0.3, 0.49}) {
    const double modulus = 1e6, q = 1000;
    // K. L. Johnson, Contact Mechanics (1985), ch. 13: E* q/2 shear-free. Closed form under a skin: 4 mu
    // (1-nu) q/(3-4nu).
    const double shear_free = modulus / (1 - nu * nu) * q / 2;
    const double skin = 2 * modulus / (1 + nu) * (1 - nu) * q / (3 - 4 * nu);
    for (const double thickness : {0.03, 1.0, 1e6}) {  // q t = 30, 1e3, 1e9: exp(-2 q t) is below rounding
      const std::vector<ElasticLayer> layer{{modulus, nu, thickness}};
      CHECK(stiffness(layer, TopFace::shear_free, q) == Catch::Approx(shear_free).epsilon(1e-14));
      CHECK(stiffness(layer, TopFace::inextensible, q) == Catch::Approx(skin).epsilon(1e-14));
    }
  }
}

TEST_CASE("a thicker layer of nu = 0 is softer, down to the half-space") {
  const double q = 500;
  for (const TopFace top : {TopFace::shear_free, TopFace::inextensible}) {
    double before = stiffness({{1e6, 0.0, 1e-4}}, top, q);
    for (const double thickness : {3e-4, 1e-3, 3e-3, 1e-2}) {
      const double now = stiffness({{1e6, 0.0, thickness}}, top, q);
      CHECK(now < before);
      before = now;
    }
    CHECK(before > stiffness({{1e6, 0.0, 1.0}}, top, q));
  }
}

TEST_CASE("short waves feel the top layer only, long waves feel the order of layers not at all") {
  const ElasticLayer soft{0.06e6, 0.1, 5e-3}, firm{0.7e6, 0.3, 5e-3};
  const auto compliance = [](const std::vector<ElasticLayer>& layers, double q) {
    return surface_compliance_m_per_pa(layers, TopFace::shear_free, q);
  };
  // 1 mm waves: q t = 31, so exp(-2 q t) is nothing; the half-space of the top layer, K. L. Johnson (1985),
  // ch. 13
  const double q = 6283;
  CHECK(1 / compliance({soft, firm}, q) == Catch::Approx(0.06e6 / (1 - 0.01) * q / 2).epsilon(1e-12));
  CHECK(1 / compliance({firm, soft}, q) == Catch::Approx(0.7e6 / (1 - 0.09) * q / 2).epsilon(1e-12));
  CHECK(compliance({soft, firm}, 0) == Catch::Approx(compliance({firm, soft}, 0)).epsilon(1e-15));
}

TEST_CASE("a skin and a stiffer layer anywhere can only stiffen the stack") {
  for (const double q : {10.0, 100.0, 800.0, 3000.0}) {
    CHECK(stiffness(pad, TopFace::inextensible, q) > stiffness(pad, TopFace::shear_free, q));
    for (std::size_t i = 0; i < pad.size(); ++i) {  // strain energy grows with any modulus
      auto stiffer = pad;
      stiffer[i].modulus_pa *= 1.1;
      CHECK(stiffness(stiffer, TopFace::shear_free, q) >=
            stiffness(pad, TopFace::shear_free, q) * (1 - 1e-14));
    }
  }
}

TEST_CASE("a layer stack names what is wrong with it") {
  CHECK_THROWS_WITH(surface_compliance_m_per_pa({}, TopFace::shear_free, 1),
                    "layer stack: layers must hold at least one layer (got none)");
  CHECK_THROWS_WITH(surface_compliance_m_per_pa({{1e6, 0.5, 1e-3}}, TopFace::shear_free, 1),
                    "ElasticLayer: poisson must be 0 to < 0.5 (got 0.5)");
  CHECK_THROWS_AS(surface_compliance_m_per_pa({{0, 0.3, 1e-3}}, TopFace::shear_free, 1), InvalidInput);
  CHECK_THROWS_AS(surface_compliance_m_per_pa(pad, TopFace::shear_free, -1), InvalidInput);
}
