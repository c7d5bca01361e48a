#include "libtexture/tool/crown_contact.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;

// Pressure in the middle of a contact that lies within the disc: F = 2 pi Rc x the work of pressing in to it.
double peak_kpa_on_crown(const Backing& backing, double force_n, double crown_radius_m) {
  const double work_j_per_m2 = force_n / (2 * pi * crown_radius_m);
  // A foam yields more than its first slope says: linear springs give a bound from above.
  double high = std::sqrt(2 * work_j_per_m2 * stiffness_pa_per_m(backing, 0)) / pascal_per_kpa;
  bool is_linear = true;
  for (const Layer& layer : backing.layers) {
    if (!layer.plateau_kpa) continue;
    is_linear = false;
    high = std::min(high, *layer.plateau_kpa);
  }
  if (is_linear) return high;
  double low = 0;
  for (int halving = 0; halving < 50; ++halving) {
    const double middle = (low + high) / 2;
    (approach_at(backing, middle).work_j_per_m2 < work_j_per_m2 ? low : high) = middle;
  }
  return low;
}

}  // namespace

CrownContact crown_contact(const Motion& motion, const Backing& backing,
                           std::optional<double> crown_radius_m) {
  const double flat_kpa = pressure_kpa(motion), disc_mm = motion.disc_diameter_mm / 2;
  const CrownContact whole{disc_mm, flat_kpa, flat_kpa, false};
  if (crown_radius_m) require_positive(*crown_radius_m, "crown contact", "crown_radius_m");
  const double springs = stiffness_pa_per_m(backing, 0);
  if (!crown_radius_m || springs == 0 || std::isinf(springs)) return whole;
  const double peak_kpa = peak_kpa_on_crown(backing, motion.force_n, *crown_radius_m);
  const double radius_m = std::sqrt(2 * *crown_radius_m * approach_at(backing, peak_kpa).depth_m);
  const double radius_mm = radius_m / metre_per_mm;
  if (!(radius_mm < disc_mm)) return whole;
  const double mean_kpa = motion.force_n / (pi * radius_m * radius_m) / pascal_per_kpa;
  return {radius_mm, mean_kpa, peak_kpa, radius_mm < disc_mm / 2};
}

}  // namespace libtexture
