#pragma once
// Motion: the machine and the hand: disc, orbit, speed, force, feed, lanes; pressure and speed follow.

#include <string>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// What a motion may press with [N], and what is drawn at random stays within: the least is a tenth of a
/// gram, less than any disc weighs, the most ten times what an arm and a machine press with; estimates.
inline constexpr double least_force_n = 0.001, most_force_n = 500;

/// How the disc is driven over the panel.
struct Motion {
  std::string name = {};            ///< as in the catalogue; may be empty
  double disc_diameter_mm = unset;  ///< [mm], 1 to 1000
  double orbit_mm = unset;          ///< diameter of the orbit [mm], 0 to 100; 0 = rotary
  double speed_rpm =
      unset;  ///< orbits (or turns, where orbit_mm = 0) per minute under load [1/min], 1 to 100 000
  double force_n = unset;        ///< normal force, machine's weight included [N], > 0 to 500
  double feed_mm_per_s = unset;  ///< travel along a lane [mm/s], .1 to 10 000
  double step_over_mm = unset;   ///< distance of lanes [mm], .1 to disc_diameter_mm
  double spin_rpm = 0;     ///< free turning under load [1/min]; about 180 (50-400), estimate; 0 if rotary
  double force_cv = 0.25;  ///< spread of force between persons, coefficient of variation, 0 to 1; estimate
  /// spread of local dwell by the hand, 0 to 1; estimate. Lanes and lean come on top: see dose_cv()
  double dwell_cv = 0.20;
  /// how far off the disc's centre the hand presses, over the disc's radius, standard deviation, 0 to 0.25;
  /// estimate: 5 mm on a disc of 150 mm, 0.27 of the mean pressure more at one rim
  double lean_share = 0.07;
  std::string source = "estimate";  ///< where the figures come from

  void validate() const;
  bool operator==(const Motion&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("name", &Motion::name),
                      required("disc_diameter_mm", &Motion::disc_diameter_mm),
                      required("orbit_mm", &Motion::orbit_mm),
                      required("speed_rpm", &Motion::speed_rpm),
                      required("force_n", &Motion::force_n),
                      required("feed_mm_per_s", &Motion::feed_mm_per_s),
                      required("step_over_mm", &Motion::step_over_mm),
                      optional("spin_rpm", &Motion::spin_rpm),
                      optional("force_cv", &Motion::force_cv),
                      optional("dwell_cv", &Motion::dwell_cv),
                      optional("lean_share", &Motion::lean_share),
                      optional("source", &Motion::source)};
  }
};

/// Disc face [m2].
double disc_area_m2(const Motion& motion);

/// Mean pressure on a flat panel [kPa]: force / disc face.
double pressure_kpa(const Motion& motion);

/// Mean sliding speed [m/s]: v_o (1 + <v_r^2>/(4 v_o^2)), v_o = pi orbit speed, <v_r^2> = (spin R)^2/2
/// (directions are uncorrelated; within 6 % of the exact mean while <v_r^2> <= 4 v_o^2, beyond which a motion
/// is refused); rotary: 2/3 omega R.
double sliding_m_per_s(const Motion& motion);

/// Mean removal of one overlapped pass [um] at a specific wear rate [mm3/(N m)]: wear F v/(feed step_over).
double removal_per_pass_um(const Motion& motion, double wear_rate_mm3_per_n_m);

/// Time of one pass over an area [min]: area/(feed step_over).
double pass_minutes(const Motion& motion, double area_m2);

/// Share of a wave's stiffness that a freely tilting disc keeps: F(x) = 1 - (2 J1(x)/x)^2 - (4 J2(x)/x)^2
/// with x = q a. 0 at q = 0, towards 1 for waves shorter than the disc.
double footprint_factor(double q_per_m, double disc_diameter_mm);

}  // namespace libtexture
