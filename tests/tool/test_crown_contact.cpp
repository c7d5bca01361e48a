#include <cmath>
#include <limits>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/crown_contact.hpp"
#include "machine.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

// Springs of a stiffness [Pa/m].
Backing springs(double stiffness_pa_per_m) {
  return Backing::on_springs(stiffness_pa_per_m * 1e-9);
}

// 5 mm of soft foam, as behind a foam-backed disc (Gibson & Ashby: plateau about .05 E, from memory).
Backing soft_foam(std::optional<double> plateau_kpa) {
  Backing backing;
  backing.layers = {{.modulus_mpa = 0.06, .thickness_mm = 5, .poisson = 0.1, .plateau_kpa = plateau_kpa}};
  return backing;
}

}  // namespace

TEST_CASE("a disc on a crown touches a smaller circle at a higher pressure") {
  // closed form: a_c = (4 F Rc/(pi k))^(1/4), 25 N on 3 m; two or three digits given
  const CrownContact soft = crown_contact(machine::orbital_150_mm(), springs(1.4e7), 3.0);
  CHECK(std::abs(soft.radius_mm - 51) < 0.5);
  CHECK(std::abs(soft.pressure_kpa - 3.05) < 5e-3);
  CHECK_FALSE(soft.is_small);
  const CrownContact firm = crown_contact(machine::orbital_150_mm(), springs(1e8), 3.0);
  CHECK(std::abs(firm.radius_mm - 31) < 0.5);
  CHECK(std::abs(firm.pressure_kpa - 8.1) < 0.05);
  CHECK(firm.is_small);
  CHECK(firm.peak_kpa == Catch::Approx(2 * firm.pressure_kpa).epsilon(1e-12));  // closed form: a paraboloid
}

TEST_CASE("the pressure under a disc on a crown adds up to the force") {
  // p(r) = k (a_c^2 - r^2)/(2 Rc), integrated in rings: 1e-5 for 1000 rings
  const double k = 1e8, crown = 3,
               a = crown_contact(machine::orbital_150_mm(), springs(k), crown).radius_mm * 1e-3;
  double force = 0;
  for (int i = 0; i < 1000; ++i) {
    const double r = a * (i + 0.5) / 1000;
    force += k * (a * a - r * r) / (2 * crown) * 2 * pi * r * a / 1000;
  }
  CHECK(force == Catch::Approx(25).epsilon(1e-5));
}

TEST_CASE("foam on a crown carries the force along its own curve, nowhere more than its plateau") {
  // p = plateau (1 - exp(-M w/(t plateau))) at every place, w falling from the middle as r^2/(2 Rc): closed
  // form, integrated in rings, 1e-5 for 1000 of them
  const double plateau = 3e3, confined = 0.06e6 * 0.9 / (1.1 * 0.8), thickness = 5e-3, crown = 3;
  const CrownContact contact = crown_contact(machine::orbital_150_mm(), soft_foam(3.0), crown);
  const double a = contact.radius_mm * 1e-3;
  const auto pressure = [&](double r) {
    const double depth = (a * a - r * r) / (2 * crown);
    return plateau * (1 - std::exp(-confined * depth / (thickness * plateau)));
  };
  double force = 0;
  for (int i = 0; i < 1000; ++i) {
    const double r = a * (i + 0.5) / 1000;
    force += pressure(r) * 2 * pi * r * a / 1000;
  }
  CHECK(force == Catch::Approx(25).epsilon(1e-5));
  CHECK(contact.peak_kpa == Catch::Approx(pressure(0) * 1e-3).epsilon(1e-9));
  CHECK(contact.peak_kpa < 3);
  CHECK(contact.pressure_kpa == Catch::Approx(25e-3 / (pi * a * a)).epsilon(1e-12));
  CHECK(std::abs(contact.radius_mm - 63.44) < 5e-3);  // computed apart from this code, by other halvings
  CHECK(std::abs(contact.pressure_kpa - 1.977) < 5e-4);
  CHECK(std::abs(contact.peak_kpa - 2.807) < 5e-4);
  // The first slope alone would press harder in the middle than the foam can.
  const CrownContact linear = crown_contact(machine::orbital_150_mm(), soft_foam(std::nullopt), crown);
  CHECK(linear.peak_kpa > 3);
  CHECK(contact.radius_mm > linear.radius_mm);
}

TEST_CASE("a foam far from its plateau is met as a linear layer") {
  const CrownContact linear = crown_contact(machine::orbital_150_mm(), soft_foam(std::nullopt), 4.0);
  // The first term left out is a third of peak over plateau: 2e-6.
  const CrownContact far = crown_contact(machine::orbital_150_mm(), soft_foam(1e6), 4.0);
  CHECK(far.radius_mm == Catch::Approx(linear.radius_mm).epsilon(3e-6));
  CHECK(far.pressure_kpa == Catch::Approx(linear.pressure_kpa).epsilon(6e-6));
}

TEST_CASE("a flat panel, or a crown softer than the disc can notice, is touched by the whole face") {
  for (const auto& contact : {crown_contact(machine::orbital_150_mm(), springs(1.4e7), std::nullopt),
                              crown_contact(machine::orbital_150_mm(), springs(1.4e7), 100.0),
                              crown_contact(machine::orbital_150_mm(), Backing::rigid(), 3.0),
                              crown_contact(machine::orbital_150_mm(), Backing::on_half_space(1, 0), 3.0)}) {
    CHECK(contact.radius_mm == Catch::Approx(75));
    CHECK(contact.pressure_kpa == Catch::Approx(pressure_kpa(machine::orbital_150_mm())));
    CHECK_FALSE(contact.is_small);
  }
  CHECK_THROWS_AS(crown_contact(machine::orbital_150_mm(), springs(1e7), -3.0), InvalidInput);
}
