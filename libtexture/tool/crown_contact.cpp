#include "libtexture/tool/crown_contact.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/plate_on_springs.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;

constexpr int radius_bits = 40;    // of the contact radius: 1e-12
constexpr int most_radii = 60;     // tried on the way
constexpr int newton_turns = 60;   // for the pressures at one radius; five are usual
constexpr double settled = 1e-13;  // their last relative change

// A disc pressed on a crown within a radius: indentation of the backing + dish of the sheet = dish of the
// crown, in the middle and where the square of the distance is half of the radius's.
class Pressing {
 public:
  Pressing(const Backing& backing, const Crown& crown)
      : backing_(backing),
        crown_radius_m_(crown.radius_m),
        springs_(crown_springs_pa_per_m(crown)),
        length_m_(std::pow(bending_stiffness_n_m(crown.sheet) / springs_, 0.25)) {
    least_plateau_pa_ = HUGE_VAL;
    for (const Layer& layer : backing.layers)
      if (layer.plateau_kpa)
        least_plateau_pa_ = std::min(least_plateau_pa_, *layer.plateau_kpa * pascal_per_kpa);
  }

  struct State {
    double force_n;
    double middle_pa;
  };

  State within(double radius_m) const {
    const PlateDish dish = plate_dish(radius_m / length_m_);
    const double crown_m = radius_m * radius_m / (2 * crown_radius_m_);
    // Pressure (1 - s)(even + ring s): even = middle, ring = 4 half-way - 2 middle.
    const double mm = (dish.middle_by_even - 2 * dish.middle_by_ring) / springs_,
                 mh = 4 * dish.middle_by_ring / springs_,
                 hm = (dish.half_way_by_even - 2 * dish.half_way_by_ring) / springs_,
                 hh = 4 * dish.half_way_by_ring / springs_;
    double middle = 0, half_way = 0;
    Approach at_middle = at(0), at_half_way = at(0);
    for (int turn = 0; turn < newton_turns; ++turn) {
      const double a = at_middle.compliance_m_per_pa + mm, d = at_half_way.compliance_m_per_pa + hh;
      const double e = crown_m - at_middle.depth_m - mm * middle - mh * half_way,
                   f = crown_m / 2 - at_half_way.depth_m - hm * middle - hh * half_way;
      const double det = a * d - mh * hm;
      const double to_middle = below_plateau(middle, (d * e - mh * f) / det),
                   to_half_way = below_plateau(half_way, (a * f - hm * e) / det);
      const double moved = std::abs(to_middle - middle) + std::abs(to_half_way - half_way);
      middle = to_middle, half_way = to_half_way;
      at_middle = at(middle), at_half_way = at(half_way);
      if (moved <= settled * (std::abs(middle) + std::abs(half_way))) break;
    }
    // Mean pressure: exactly the work over the depth where indentation falls evenly with s; what the sheet
    // bends it off from that enters by Simpson's rule.
    const double even = at_middle.depth_m != 0 ? at_middle.work_j_per_m2 / at_middle.depth_m : 0;
    const double bent = (at_half_way.depth_m - at_middle.depth_m / 2) / at_half_way.compliance_m_per_pa;
    return {pi * radius_m * radius_m * (even + 2.0 / 3 * bent), middle};
  }

 private:
  Approach at(double pressure_pa) const { return approach_at(backing_, pressure_pa / pascal_per_kpa); }

  // Newton's method from below overshoots on a curve that ends at its plateau.
  double below_plateau(double now, double change) const {
    return std::min(now + change, now + 0.9 * (least_plateau_pa_ - now));
  }

  const Backing& backing_;
  double crown_radius_m_, springs_, length_m_;
  double least_plateau_pa_;
};

}  // namespace

void CrownContact::validate() const {
  require_positive(radius_mm, "CrownContact", "radius_mm");
  require_positive(pressure_kpa, "CrownContact", "pressure_kpa");
  require_not_negative(peak_kpa, "CrownContact", "peak_kpa");
}

CrownContact crown_contact(const Motion& motion, const Backing& backing, const std::optional<Crown>& crown) {
  const double flat_kpa = pressure_kpa(motion), disc_mm = motion.disc_diameter_mm / 2;
  const CrownContact whole{disc_mm, flat_kpa, flat_kpa, false};
  backing.validate();
  if (crown) crown->validate();
  const bool has_approach = backing.support == Support::layers || backing.support == Support::springs;
  if (!crown || !has_approach) return whole;
  const Pressing pressing(backing, *crown);
  const auto force_beyond = [&](double log_radius) {
    return std::log(std::max(1e-300, pressing.within(std::exp(log_radius)).force_n) / motion.force_n);
  };
  const double disc = std::log(disc_mm * metre_per_mm);
  const double at_disc = force_beyond(disc);
  if (!(at_disc > 0)) return whole;
  // No contact is smaller than that on a sheet that does not give and a backing as stiff as at first touch.
  const double first_touch = approach_at(backing, 0).compliance_m_per_pa;
  const double least = std::log(4 * motion.force_n * crown->radius_m * first_touch / pi) / 4;
  const double at_least = force_beyond(least);
  double log_radius = least;
  if (at_least < 0) {
    std::uintmax_t turns = most_radii;
    const auto [low, high] =
        boost::math::tools::toms748_solve(force_beyond, least, disc, at_least, at_disc,
                                          boost::math::tools::eps_tolerance<double>(radius_bits), turns);
    log_radius = (low + high) / 2;
  }
  const double radius_m = std::exp(log_radius), radius_mm = radius_m / metre_per_mm;
  const double mean_kpa = motion.force_n / (pi * radius_m * radius_m) / pascal_per_kpa;
  const double middle_kpa = std::max(0.0, pressing.within(radius_m).middle_pa / pascal_per_kpa);
  return {radius_mm, mean_kpa, middle_kpa, radius_mm < disc_mm / 2};
}

}  // namespace libtexture
