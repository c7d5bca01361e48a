#include "libtexture/tool/motion.hpp"

#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;

double disc_radius_m(const Motion& motion) {
  return 0.5 * motion.disc_diameter_mm * metre_per_mm;
}

double orbital_speed_m_per_s(const Motion& motion) {
  return pi * motion.orbit_mm * metre_per_mm * motion.speed_rpm / 60;
}

// <v_r^2> over the disc of its free turning [m2/s2].
double mean_square_spin(const Motion& motion) {
  const double rim = 2 * pi * motion.spin_rpm / 60 * disc_radius_m(motion);
  return rim * rim / 2;
}

}  // namespace

void Motion::validate() const {
  require_positive(disc_diameter_mm, "Motion", "disc_diameter_mm");
  require_not_negative(orbit_mm, "Motion", "orbit_mm");
  require_positive(speed_rpm, "Motion", "speed_rpm");
  require_positive(force_n, "Motion", "force_n");
  require_positive(feed_mm_per_s, "Motion", "feed_mm_per_s");
  // Ten times and more beyond any tool of the trade, an arm and a walk: a slip of the unit (estimates).
  require_within(disc_diameter_mm, 1, 1000, "Motion", "disc_diameter_mm");
  require_within(orbit_mm, 0, 100, "Motion", "orbit_mm");
  require_within(speed_rpm, 1, 1e5, "Motion", "speed_rpm");
  require_within(force_n, least_force_n, most_force_n, "Motion", "force_n");
  require_within(feed_mm_per_s, 0.1, 1e4, "Motion", "feed_mm_per_s");
  require(step_over_mm >= 0.1 && step_over_mm <= disc_diameter_mm, "Motion", "step_over_mm",
          "must be at least 0.1 and at most the disc's diameter", step_over_mm);
  require_not_negative(spin_rpm, "Motion", "spin_rpm");
  if (orbit_mm == 0)
    require(spin_rpm == 0, "Motion", "spin_rpm", "must be 0 for a rotary machine (orbit_mm = 0)", spin_rpm);
  else
    require(mean_square_spin(*this) <= 4 * std::pow(orbital_speed_m_per_s(*this), 2), "Motion", "spin_rpm",
            "must turn the disc slower than about twice its orbital speed", spin_rpm);
  require_within(force_cv, 0, 1, "Motion", "force_cv");  // beyond 1 most of the work would be no work
  require_within(dwell_cv, 0, 1, "Motion", "dwell_cv");
  require_within(lean_share, 0, 0.25, "Motion", "lean_share");  // beyond it the other rim lifts off
}

double disc_area_m2(const Motion& motion) {
  motion.validate();
  return pi * std::pow(disc_radius_m(motion), 2);
}

double pressure_kpa(const Motion& motion) {
  return motion.force_n / disc_area_m2(motion) / pascal_per_kpa;
}

double sliding_m_per_s(const Motion& motion) {
  motion.validate();
  if (motion.orbit_mm == 0) return 2.0 / 3.0 * (2 * pi * motion.speed_rpm / 60) * disc_radius_m(motion);
  const double orbital = orbital_speed_m_per_s(motion);
  return orbital * (1 + mean_square_spin(motion) / (4 * orbital * orbital));
}

double removal_per_pass_um(const Motion& motion, double wear_rate_mm3_per_n_m) {
  require_positive(wear_rate_mm3_per_n_m, "removal per pass", "wear_rate_mm3_per_n_m");
  const double volume_mm3_per_s = wear_rate_mm3_per_n_m * motion.force_n * sliding_m_per_s(motion);
  const double removal_mm = volume_mm3_per_s / (motion.feed_mm_per_s * motion.step_over_mm);
  return removal_mm * metre_per_mm / metre_per_um;
}

double pass_minutes(const Motion& motion, double area_m2) {
  motion.validate();
  require_positive(area_m2, "pass", "area_m2");
  const double covered_m2_per_s = motion.feed_mm_per_s * motion.step_over_mm * metre_per_mm * metre_per_mm;
  return area_m2 / covered_m2_per_s / 60;
}

double footprint_factor(double q_per_m, double disc_diameter_mm) {
  require_not_negative(q_per_m, "footprint", "q_per_m");
  require_positive(disc_diameter_mm, "footprint", "disc_diameter_mm");
  const double x = q_per_m * 0.5 * disc_diameter_mm * metre_per_mm;
  if (x < 0.01) return x * x * x * x / 64;  // the leading term: the formula below would cancel to rounding
  const double mean = 2 * boost::math::cyl_bessel_j(1, x) / x;
  const double tilt = 4 * boost::math::cyl_bessel_j(2, x) / x;
  return 1 - mean * mean - tilt * tilt;
}

}  // namespace libtexture
