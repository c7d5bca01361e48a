#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/dose.hpp"
#include "machine.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

Motion on_lanes(double step_over_mm) {
  Motion motion = machine::orbital_150_mm();
  motion.step_over_mm = step_over_mm;
  return motion;
}

CrownContact whole_face(const Motion& motion) {
  const double kpa = pressure_kpa(motion);
  return {motion.disc_diameter_mm / 2, kpa, kpa, false};
}

// On a crown that does not give the pressure is a paraboloid, its peak twice its mean (closed form, 11).
CrownContact paraboloid(double radius_mm) {
  return {radius_mm, 1, 2, radius_mm < 37.5};
}

}  // namespace

TEST_CASE("lanes at half a disc ripple from 0.64 to 1.10 of the mean, at a quarter from 0.87 to 1.04") {
  // Sum of chords, by hand: above the middle of a lane there is one chord, 2 a, over the mean pi a^2/s;
  // half-way between lanes of a there are two of sqrt(3) a. At a/2 apart, three chords and four.
  const LaneDose half = lane_dose(on_lanes(75), whole_face(on_lanes(75)));
  CHECK(half.least == Catch::Approx(2 / pi).epsilon(1e-12));
  CHECK(half.most == Catch::Approx(2 * std::sqrt(3.0) / pi).epsilon(1e-12));
  const LaneDose quarter = lane_dose(on_lanes(37.5), whole_face(on_lanes(37.5)));
  CHECK(quarter.least == Catch::Approx((1 + std::sqrt(3.0)) / pi).epsilon(1e-3));
  CHECK(quarter.most == Catch::Approx(1.04).margin(0.005));
  // Independent sums of chords on 4000 places: 0.1054 and 0.0382.
  CHECK(half.cv == Catch::Approx(0.1054).epsilon(5e-3));
  CHECK(quarter.cv == Catch::Approx(0.0382).epsilon(1e-2));
  CHECK(half.untouched_share == 0);
}

TEST_CASE("lanes a whole disc apart leave a line that is not worked") {
  const LaneDose dose = lane_dose(on_lanes(150), whole_face(on_lanes(150)));
  CHECK(dose.least == 0);
  CHECK(dose.most == Catch::Approx(4 / pi).epsilon(1e-12));
  // Closed form, mean square of a chord over its mean: 32/(3 pi^2) - 1. The chord's root at the rim, on 96
  // places: 0.5 %.
  CHECK(dose.cv == Catch::Approx(std::sqrt(32 / (3 * pi * pi) - 1)).epsilon(5e-3));
}

TEST_CASE("narrow contacts on wide lanes leave stripes, as the mean square of their profile says") {
  // A lane alone: (4/3) a p (1 - y^2/a^2)^(3/2) across it. Mean square over mean squared, less 1, for lanes
  // that do not meet: (2048/315) s/(pi^2 a) - 1 (closed form); what is not reached: 1 - 2 a/s.
  for (const double a : {28.0, 31.0, 34.0, 37.5}) {
    const LaneDose dose = lane_dose(on_lanes(75), paraboloid(a));
    CHECK(dose.cv == Catch::Approx(std::sqrt(2048 / 315.0 / (pi * pi) * 75 / a - 1)).epsilon(1e-3));
    CHECK(dose.untouched_share == Catch::Approx(1 - 2 * a / 75).margin(1e-12));
    CHECK(dose.least == Catch::Approx(0).margin(1e-12));
  }
  // A contact of 55 mm on the same lanes does no harm.
  CHECK(lane_dose(on_lanes(75), paraboloid(55)).cv == Catch::Approx(0.10).margin(0.005));
}

TEST_CASE("a sheet that gives spreads the pressure within a contact, and so its lanes") {
  const CrownContact steep = paraboloid(36), flat{36, 1, 1.5, true};
  CHECK(lane_dose(on_lanes(75), flat).cv < lane_dose(on_lanes(75), steep).cv);
  // Whatever its shape, the pressure of a lane adds up to the force: on lanes close to each other all is
  // even.
  for (const CrownContact& contact : {steep, flat, CrownContact{36, 1, 0.5, true}}) {
    const LaneDose close = lane_dose(on_lanes(4), contact);
    CHECK(close.least == Catch::Approx(1).margin(5e-3));
    CHECK(close.most == Catch::Approx(1).margin(5e-3));
  }
}

TEST_CASE("a hand that leans spreads a pass by the closed form, on a whole face and on a crown alike") {
  // A moment F e about the middle tilts the pressure by 4 e y/a^2 (rim: 4 e/a; 10 mm of 75: 0.53); on a crown
  // the contact moves by e. Each lane for itself, with standard deviation e: mean square 256/(15 pi^2)
  // (e/a)^2 s/a.
  Motion still = on_lanes(75), leaning = on_lanes(75);
  still.lean_share = 0;
  leaning.lean_share = 10.0 / 75;
  for (const CrownContact& contact : {whole_face(still), paraboloid(60)}) {
    const double a = contact.radius_mm, e = 10;
    const double lean_square = std::pow(pass_cv(leaning, contact), 2) - std::pow(pass_cv(still, contact), 2);
    CHECK(lean_square == Catch::Approx(256 / (15 * pi * pi) * e * e / (a * a) * 75 / a).epsilon(1e-9));
    // The same by adding up one lane in thin strips: tilted chords, or the slope of the moved profile.
    double strips = 0;
    for (int i = 0; i < 20000; ++i) {
      const double y = -1 + (i + 0.5) / 10000;
      const double root = std::sqrt(1 - y * y);
      const double changed = a == 75 ? 4 * e / a * y * 2 * root : e / a * 2 * 4.0 / 3 * 3 * y * root;
      strips += changed * changed * 1e-4;
    }
    const double mean = pi * a / 75;
    CHECK(lean_square == Catch::Approx(strips * a / 75 / (mean * mean)).epsilon(1e-3));
  }
}

TEST_CASE("lanes that fall elsewhere in every pass even out; the hand's own habit stays") {
  const Motion motion = on_lanes(75);
  const double one = pass_cv(motion, paraboloid(31));
  CHECK(one > 0.7);
  CHECK(dose_cv(motion, one, 1) == Catch::Approx(std::hypot(0.20, one)).epsilon(1e-12));
  CHECK(dose_cv(motion, one, 9) == Catch::Approx(std::hypot(0.20, one / 3)).epsilon(1e-12));
  CHECK(dose_cv(motion, one, 1000000) == Catch::Approx(0.20).epsilon(1e-3));
  CHECK_THROWS_AS(dose_cv(motion, one, 0), InvalidInput);
}
