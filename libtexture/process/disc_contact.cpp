#include "libtexture/process/disc_contact.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/units.hpp"
#include "libtexture/process/scratches.hpp"

namespace libtexture {
namespace {

constexpr double contact_share_step = 0.05;
constexpr double foam_density_kg_per_m3 = 60;  // of pads and interfaces; estimate 30-120
constexpr double still_share = 0.1;  // a layer moves as if at rest while v^2 density/E is under this

void warn(const Step& step, const Backing& working, const CrownContact& crown,
          std::vector<std::string>& warnings) {
  if (crown.is_small)
    warnings.push_back(step.name + ": on this crown the disc touches within " + to_text(crown.radius_mm) +
                       " mm only, under half its radius; a softer interface spreads the load");
  const double speed = sliding_m_per_s(step.motion);
  for (const Layer& layer : working.layers)
    if (speed * speed * foam_density_kg_per_m3 > still_share * layer.modulus_mpa * pascal_per_mpa)
      warnings.push_back(step.name +
                         ": at this speed the softest layer's inertia matters, which is not modelled");
}

}  // namespace

DiscContact disc_contact(const Step& step, const Grid& grid, std::optional<double> crown_radius_m,
                         std::vector<std::string>* warnings) {
  // A half-space follows any crown and a rigid disc none: the crown's closed form is for springs of finite
  // stiffness.
  const double springs = stiffness_pa_per_m(step.backing, 0);
  const bool has_crown = crown_radius_m && springs > 0 && std::isfinite(springs);
  const CrownContact crown =
      has_crown ? crown_contact(step.motion, springs, crown_radius_m)
                : CrownContact{step.motion.disc_diameter_mm / 2, pressure_kpa(step.motion), false};
  const Backing working = at_working_pressure(step.backing, crown.pressure_kpa);
  if (warnings) warn(step, working, crown, *warnings);
  const double patch_mm = std::max(grid.width_mm(), grid.height_mm());
  const bool is_larger = patch_mm > step.motion.disc_diameter_mm;
  return {working, crown.pressure_kpa,
          is_larger ? std::optional(step.motion.disc_diameter_mm) : std::nullopt};
}

double groove_depth_um(const Step& step, double pressure_kpa, double contact_share, double hardness_mpa) {
  const double rounded = std::max(1.0, std::round(contact_share / contact_share_step)) * contact_share_step;
  return groove_depth_um(step.abrasive, step.wetness, pressure_kpa, std::min(1.0, rounded), hardness_mpa);
}

const std::string& title_of(const Step& step) {
  return step.name.empty() ? step.abrasive.name : step.name;
}

}  // namespace libtexture
