#include <cmath>
#include <limits>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/tool/crown_contact.hpp"
#include "machine.hpp"
#include "round_plate.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

// Springs of a stiffness [Pa/m].
Backing springs(double stiffness_pa_per_m) {
  return Backing::on_springs(stiffness_pa_per_m * 1e-9);
}

// A crown whose sheet does not give: 100 mm of steel, a ten-thousandth of a per cent softer than rigid.
Crown solid(double radius_m) {
  return {radius_m, {SheetMaterial::steel, 100}};
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
  const CrownContact soft = crown_contact(machine::orbital_150_mm(), springs(1.4e7), solid(3.0));
  CHECK(std::abs(soft.radius_mm - 51) < 0.5);
  CHECK(std::abs(soft.pressure_kpa - 3.05) < 5e-3);
  CHECK_FALSE(soft.is_small);
  const CrownContact firm = crown_contact(machine::orbital_150_mm(), springs(1e8), solid(3.0));
  CHECK(std::abs(firm.radius_mm - 31) < 0.5);
  CHECK(std::abs(firm.pressure_kpa - 8.1) < 0.05);
  CHECK(firm.is_small);
  // closed form: a paraboloid; the sheet's own give is a millionth
  CHECK(firm.peak_kpa == Catch::Approx(2 * firm.pressure_kpa).epsilon(1e-6));
}

TEST_CASE("the pressure under a disc on a crown adds up to the force") {
  // p(r) = k (a_c^2 - r^2)/(2 Rc), integrated in rings: 1e-5 for 1000 rings
  const double k = 1e8, crown = 3,
               a = crown_contact(machine::orbital_150_mm(), springs(k), solid(crown)).radius_mm * 1e-3;
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
  const CrownContact contact = crown_contact(machine::orbital_150_mm(), soft_foam(3.0), solid(crown));
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
  CHECK(contact.peak_kpa == Catch::Approx(pressure(0) * 1e-3).epsilon(1e-6));
  CHECK(contact.peak_kpa < 3);
  CHECK(contact.pressure_kpa == Catch::Approx(25e-3 / (pi * a * a)).epsilon(1e-12));
  CHECK(std::abs(contact.radius_mm - 63.44) < 5e-3);  // computed apart from this code, by other halvings
  CHECK(std::abs(contact.pressure_kpa - 1.977) < 5e-4);
  CHECK(std::abs(contact.peak_kpa - 2.807) < 5e-4);
  // The first slope alone would press harder in the middle than the foam can.
  const CrownContact linear = crown_contact(machine::orbital_150_mm(), soft_foam(std::nullopt), solid(crown));
  CHECK(linear.peak_kpa > 3);
  CHECK(contact.radius_mm > linear.radius_mm);
}

TEST_CASE("a foam far from its plateau is met as a linear layer") {
  const CrownContact linear = crown_contact(machine::orbital_150_mm(), soft_foam(std::nullopt), solid(4.0));
  // The first term left out is a third of peak over plateau: 2e-6.
  const CrownContact far = crown_contact(machine::orbital_150_mm(), soft_foam(1e6), solid(4.0));
  CHECK(far.radius_mm == Catch::Approx(linear.radius_mm).epsilon(3e-6));
  CHECK(far.pressure_kpa == Catch::Approx(linear.pressure_kpa).epsilon(6e-6));
}

TEST_CASE("a flat panel, or a crown softer than the disc can notice, is touched by the whole face") {
  for (const auto& contact :
       {crown_contact(machine::orbital_150_mm(), springs(1.4e7), std::nullopt),
        crown_contact(machine::orbital_150_mm(), springs(1.4e7), solid(100.0)),
        crown_contact(machine::orbital_150_mm(), Backing::rigid(), solid(3.0)),
        crown_contact(machine::orbital_150_mm(), Backing::on_half_space(1, 0), solid(3.0))}) {
    CHECK(contact.radius_mm == Catch::Approx(75));
    CHECK(contact.pressure_kpa == Catch::Approx(pressure_kpa(machine::orbital_150_mm())));
    CHECK_FALSE(contact.is_small);
  }
  CHECK_THROWS_AS(crown_contact(machine::orbital_150_mm(), springs(1e7), Crown{-3.0}), InvalidInput);
}

TEST_CASE("a crowned sheet gives: the disc touches more of it, as an independent solution finds") {
  // Shallow spherical shell (Reissner 1946, from memory): a plate of D = E t^3/(12 (1 - nu^2)) on springs
  // E t/R^2; steel of 0.7 mm on 4 m: 6.6 N m and 9.2e6 Pa/m (closed form).
  const Crown door{4, {}};
  CHECK(bending_stiffness_n_m(door.sheet) == Catch::Approx(6.596).epsilon(1e-3));
  CHECK(crown_springs_pa_per_m(door) == Catch::Approx(9.19e6).epsilon(1e-3));
  // The same contact by finite volumes in 0.75 mm rings, rings that would pull let go; second order,
  // so about (ring/radius)^2, 0.1 %.
  const round_plate::Rings rings{440, 0.75e-3};
  Motion motion = machine::orbital_150_mm();
  motion.disc_diameter_mm = 200;  // wider than any of these contacts
  for (const double stiffness : {1.5e7, 5e7, 2e8})
    for (const Crown& crown :
         {Crown{3, {}}, Crown{4, {}}, Crown{5, {}}, Crown{4, {SheetMaterial::aluminium, {}}},
          Crown{4, {SheetMaterial::plastic, {}}}}) {
      const Eigen::MatrixXd plate =
          round_plate::stiffness(rings, bending_stiffness_n_m(crown.sheet), crown_springs_pa_per_m(crown));
      const round_plate::Contact other = round_plate::press(rings, 100, plate, stiffness, crown.radius_m, 25);
      const CrownContact contact = crown_contact(motion, springs(stiffness), crown);
      const double mean_kpa = 25e-3 / (pi * other.radius * other.radius);
      INFO(stiffness << " " << crown.radius_m << " " << other.radius);
      CHECK(contact.radius_mm == Catch::Approx(other.radius * 1e3).epsilon(5e-3));
      CHECK(contact.pressure_kpa == Catch::Approx(mean_kpa).epsilon(0.01));
      // A sheet that is all but flattened is pressed hardest half way out: its middle matters to nobody.
      if (other.middle * 1e-3 > mean_kpa)
        CHECK(contact.peak_kpa == Catch::Approx(other.middle * 1e-3).epsilon(0.01));
    }
}

TEST_CASE(
    "the sheet halves the pressure of a hard disc on a door and hardly moves that of a soft interface") {
  // Figures of an independent axially symmetric contact (linear layers, 0.7 mm of steel, 25 N): hard disc on
  // 4 m 28 -> 36 mm and 9.8 -> 6.1 kPa, on 5 m 8.8 -> 4.7 kPa. The hook-and-loop under both is linear.
  const Backing hard = shipped_catalogue().backings.at("film on hard pad");
  const auto on = [&](const Backing& backing, const Crown& crown) {
    return crown_contact(machine::orbital_150_mm(), backing, crown);
  };
  CHECK(on(hard, solid(4)).radius_mm == Catch::Approx(28).epsilon(0.02));
  CHECK(on(hard, solid(4)).pressure_kpa == Catch::Approx(9.8).epsilon(0.03));
  CHECK(on(hard, {4, {}}).radius_mm == Catch::Approx(36).epsilon(0.02));
  CHECK(on(hard, {4, {}}).pressure_kpa == Catch::Approx(6.1).epsilon(0.02));
  CHECK(on(hard, {5, {}}).pressure_kpa == Catch::Approx(4.7).epsilon(0.02));
  const Backing soft = shipped_catalogue().backings.at("film on soft interface");
  CHECK(on(soft, {4, {}}).pressure_kpa > 0.85 * on(soft, solid(4)).pressure_kpa);
}

TEST_CASE("under a small contact the sheet's bending counts, not its springs alone") {
  // Springs E t/R^2 in series with the pad, as if bending did nothing: closed form (11) gives 62 mm and 2.1
  // kPa for the hard pad (2.0e8 Pa/m) on 4 m, a third of the pressure that bending leaves.
  const double pad = 2e8, sheet = crown_springs_pa_per_m({4, {}});
  const CrownContact springs_only =
      crown_contact(machine::orbital_150_mm(), springs(1 / (1 / pad + 1 / sheet)), solid(4));
  const CrownContact both = crown_contact(machine::orbital_150_mm(), springs(pad), Crown{4, {}});
  CHECK(springs_only.radius_mm > 1.5 * both.radius_mm);
  CHECK(springs_only.pressure_kpa < 0.4 * both.pressure_kpa);
}

TEST_CASE("a softer sheet is touched further out at a lower pressure, and a thick one as if it were solid") {
  double radius_mm = crown_contact(machine::orbital_150_mm(), springs(2e8), solid(4)).radius_mm;
  for (const double thickness_mm : {2.0, 1.2, 0.9, 0.7}) {
    const double next =
        crown_contact(machine::orbital_150_mm(), springs(2e8), Crown{4, {SheetMaterial::steel, thickness_mm}})
            .radius_mm;
    CHECK(next > radius_mm);
    radius_mm = next;
  }
}

TEST_CASE("foam on a sheet that gives carries the force, nowhere more than its plateau") {
  // Pressure (1 - s)(middle + (4 half-way - 2 middle) s) is not asked for here: only what bounds it.
  for (const double force_n : {15.0, 25.0, 35.0}) {
    Motion motion = machine::orbital_150_mm();
    motion.force_n = force_n;
    const CrownContact gives = crown_contact(motion, soft_foam(3.0), Crown{3, {}}),
                       not_at_all = crown_contact(motion, soft_foam(3.0), solid(3));
    CHECK(gives.radius_mm > not_at_all.radius_mm);
    CHECK(gives.peak_kpa < not_at_all.peak_kpa);
    CHECK(gives.peak_kpa < 3);
  }
}
