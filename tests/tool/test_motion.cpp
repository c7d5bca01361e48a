#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/motion.hpp"
#include "machine.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

Motion small() {
  Motion motion = machine::orbital_150_mm();
  motion.disc_diameter_mm = 75;
  motion.orbit_mm = 3;
  motion.force_n = 8;
  motion.feed_mm_per_s = 80;
  motion.step_over_mm = 37;
  return motion;
}

// Mean |v_o + v_r| over the disc and over the angle between the two velocities, by brute force.
double mean_sliding_m_per_s(const Motion& m) {
  const int n = 400;
  const double orbital = pi * m.orbit_mm * 1e-3 * m.speed_rpm / 60, spin = 2 * pi * m.spin_rpm / 60;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    const double r = std::sqrt((i + 0.5) / n) * m.disc_diameter_mm * 0.5e-3;  // equal areas
    for (int j = 0; j < n; ++j) {
      const double angle = 2 * pi * (j + 0.5) / n;
      sum += std::hypot(orbital + spin * r * std::cos(angle), spin * r * std::sin(angle));
    }
  }
  return sum / (n * n);
}

// Mean square of a wave left under a disc that follows its mean and tilt, over the wave's own mean square:
// brute force over the disc's area and over the phase of the wave.
double share_not_followed(double q, double radius) {
  const int n = 200;
  double left = 0, whole = 0;
  for (const double phase : {0.0, pi / 2}) {
    double area = 0, mean = 0, tilt = 0, inertia = 0, square = 0;
    for (int i = 0; i < n; ++i) {
      for (int j = 0; j < n; ++j) {
        const double x = radius * (2 * (i + 0.5) / n - 1), y = radius * (2 * (j + 0.5) / n - 1);
        if (x * x + y * y > radius * radius) continue;
        const double w = std::cos(q * x + phase);
        area += 1, mean += w, tilt += w * x, inertia += x * x, square += w * w;
      }
    }
    whole += square / area;
    left += (square - mean * mean / area - tilt * tilt / inertia) / area;
  }
  return left / whole;
}

}  // namespace

TEST_CASE("pressure is force over the disc's face") {
  // closed form
  CHECK(disc_area_m2(machine::orbital_150_mm()) == Catch::Approx(pi * 0.075 * 0.075));
  CHECK(pressure_kpa(machine::orbital_150_mm()) ==
        Catch::Approx(1.415).epsilon(5e-4));                          // 25 N, 150 mm; four digits given
  CHECK(pressure_kpa(small()) == Catch::Approx(1.81).epsilon(2e-3));  // 8 N, 75 mm; three digits given
  Motion motion = machine::orbital_150_mm();  // 10 to 50 N: .6 to 2.8 kPa; one decimal given
  motion.force_n = 10;
  CHECK(std::abs(pressure_kpa(motion) - 0.6) < 0.05);
  motion.force_n = 50;
  CHECK(std::abs(pressure_kpa(motion) - 2.8) < 0.05);
}

TEST_CASE("sliding speed of an orbital disc is pi d n, and a little more when it spins") {
  CHECK(sliding_m_per_s(machine::orbital_150_mm()) ==
        Catch::Approx(2.618).epsilon(1e-4));                             // closed form; four digits given
  CHECK(sliding_m_per_s(small()) == Catch::Approx(1.57).epsilon(1e-3));  // closed form; three digits given
  for (const auto& [rpm, tolerance] : {std::pair{180.0, 1e-3}, {400.0, 0.02}, {800.0, 0.05}}) {
    Motion spinning = machine::orbital_150_mm();
    spinning.spin_rpm = rpm;  // kinematics by brute force; the formula leaves out (v_r/v_o)^4 and on
    CHECK(sliding_m_per_s(spinning) == Catch::Approx(mean_sliding_m_per_s(spinning)).epsilon(tolerance));
    CHECK(sliding_m_per_s(spinning) > sliding_m_per_s(machine::orbital_150_mm()));
  }
}

TEST_CASE("sliding speed of a rotary disc is two thirds of its rim's") {
  Motion rotary = machine::orbital_150_mm();
  rotary.orbit_mm = 0;
  rotary.speed_rpm = 1500;
  CHECK(sliding_m_per_s(rotary) == Catch::Approx(2.0 / 3 * 2 * pi * 25 * 0.075));  // closed form
}

TEST_CASE("one overlapped pass of 25 N at .1 mm3/(N m) removes .873 um, whatever the disc's diameter") {
  CHECK(std::abs(removal_per_pass_um(machine::orbital_150_mm(), 0.1) - 0.873) <
        5e-4);  // closed form; three digits given
  CHECK(removal_per_pass_um(small(), 0.1) ==
        Catch::Approx(0.42).epsilon(0.015));  // closed form; two digits given
  Motion wide = machine::orbital_150_mm();
  wide.disc_diameter_mm = 200;
  CHECK(removal_per_pass_um(wide, 0.1) ==
        Catch::Approx(removal_per_pass_um(machine::orbital_150_mm(), 0.1)).epsilon(1e-14));
}

TEST_CASE("a pass over 0.25 m2 takes 33 s with the large disc and 84 s with the small") {
  CHECK(pass_minutes(machine::orbital_150_mm(), 0.25) * 60 ==
        Catch::Approx(100 / 3.).epsilon(1e-12));                   // closed form
  CHECK(std::abs(pass_minutes(small(), 0.25) * 60 - 84.5) < 0.5);  // closed form, rounded to 1 s
}

TEST_CASE("a freely tilting disc follows waves longer than itself and levels shorter ones") {
  struct Row {
    double wavelength_mm, share;
  };
  // closed form, three digits given; and brute force over the disc on a 200 x 200 raster, good to about 1e-3
  for (const Row& row : {Row{300, 0.075}, Row{150, 0.585}, Row{30 * pi, 0.981}, Row{40, 0.998}}) {
    const double q = 2 * pi / (row.wavelength_mm * 1e-3);
    CHECK(std::abs(footprint_factor(q, 150) - row.share) < 5e-4);
    CHECK(std::abs(footprint_factor(q, 150) - share_not_followed(q, 0.075)) < 2e-3);
  }
}

TEST_CASE("the footprint of very long waves falls as (q a)^4/64, without a jump") {
  CHECK(footprint_factor(0, 150) == 0);
  // closed form: the next term is -7 x^2/72 of it; rounding 2e-6 at .01
  for (const double x : {1e-4, 0.00999, 0.01001, 0.1})
    CHECK(footprint_factor(x / 0.075, 150) == Catch::Approx(std::pow(x, 4) / 64).epsilon(x * x / 10 + 2e-6));
}

TEST_CASE("a motion names what is wrong with it") {
  Motion motion = machine::orbital_150_mm();
  motion.force_n = -3;
  CHECK_THROWS_WITH(motion.validate(), "Motion: force_n must be > 0 (got -3 N)");
  CHECK_THROWS_AS(pressure_kpa(motion), InvalidInput);
  motion = machine::orbital_150_mm();
  motion.step_over_mm = 151;
  CHECK_THROWS_WITH(motion.validate(),
                    "Motion: step_over_mm must be at least 0.1 and at most the disc's diameter (got 151 mm)");
  motion = machine::orbital_150_mm();
  motion.orbit_mm = 0;
  motion.spin_rpm = 100;
  CHECK_THROWS_WITH(motion.validate(),
                    "Motion: spin_rpm must be 0 for a rotary machine (orbit_mm = 0) (got 100 1/min)");
  motion.orbit_mm = 0.1;
  motion.spin_rpm = 400;
  CHECK_THROWS_AS(motion.validate(), InvalidInput);
}
