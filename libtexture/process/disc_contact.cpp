#include "libtexture/process/disc_contact.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/units.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/tool/dose.hpp"

namespace libtexture {
namespace {

constexpr double contact_share_step = 0.05;
constexpr double reference_hardness_mpa = 200;  // for which an abrasive's figures hold
constexpr double foam_density_kg_per_m3 = 60;   // of pads and interfaces; estimate 30-120
constexpr double least_dose = 0.5;   // over the mean: less than that between lanes is a stripe; estimate
constexpr double still_share = 0.1;  // a layer moves as if at rest while v^2 density/E is under this

// The mean stays below it, or the layer is refused; the middle of a contact on a crown may pass it.
bool near_plateau(const Backing& backing, double peak_kpa) {
  return std::any_of(backing.layers.begin(), backing.layers.end(), [&](const Layer& layer) {
    return layer.plateau_kpa && peak_kpa >= collapse_share * *layer.plateau_kpa;
  });
}

void warn(const Step& step, const Backing& working, const CrownContact& touch,
          std::vector<std::string>& warnings) {
  const auto say = [&](const std::string& warning) { warnings.push_back(title_of(step) + ": " + warning); };
  if (touch.is_small)
    say("on this crown the disc touches within " + to_text(touch.radius_mm, 0) +
        " mm only, under half its radius; a softer interface spreads the load");
  if (near_plateau(step.backing, touch.peak_kpa))
    say("on this crown the foam is pressed to " + to_text(touch.peak_kpa, 2) +
        " kPa in the middle, near its plateau; the mean of " + to_text(touch.pressure_kpa, 2) +
        " kPa stands for the whole face");
  const LaneDose dose = lane_dose(step.motion, touch);
  if (dose.least < least_dose)
    say("a pass leaves stripes: its contact of " + to_text(2 * touch.radius_mm, 0) + " mm on lanes " +
        to_text(step.motion.step_over_mm, 0) + " mm apart " +
        (dose.untouched_share > 0
             ? "misses " + to_text(100 * dose.untouched_share, 0) + " % of the area"
             : "removes only " + to_text(100 * dose.least, 0) + " % of its mean between lanes") +
        "; lanes of at most " + to_text(touch.radius_mm, 0) + " mm cover evenly");
  const double speed = sliding_m_per_s(step.motion);
  double softest_mpa = HUGE_VAL;
  for (const Layer& layer : working.layers) softest_mpa = std::min(softest_mpa, layer.modulus_mpa);
  if (speed * speed * foam_density_kg_per_m3 > still_share * softest_mpa * pascal_per_mpa)
    say("at this speed the softest layer's inertia matters, which is not modelled");
  const Grit& grit = step.abrasive.grit;
  if (grit.is_extrapolated())
    warnings.push_back(step.abrasive.name + ": its grain of " + to_text(grit.median_um()) +
                       " um continues the standard's table by a power law: an estimate");
}

}  // namespace

DiscContact disc_contact(const Step& step, const Grid& grid, const std::optional<Crown>& crown,
                         std::vector<std::string>* warnings) {
  const CrownContact touch = crown_contact(step.motion, step.backing, crown);
  const Backing working = at_working_pressure(step.backing, touch.pressure_kpa);
  if (warnings) warn(step, working, touch, *warnings);
  const double patch_mm = std::max(grid.width_mm(), grid.height_mm());
  const bool is_larger = patch_mm > step.motion.disc_diameter_mm;
  return {working, touch.pressure_kpa, is_larger ? std::optional(step.motion.disc_diameter_mm) : std::nullopt,
          pass_cv(step.motion, touch)};
}

double groove_depth_um(const Step& step, double pressure_kpa, double contact_share, double hardness_mpa) {
  const double rounded = std::max(1.0, std::round(contact_share / contact_share_step)) * contact_share_step;
  return groove_depth_um(step.abrasive, step.wetness, pressure_kpa, std::min(1.0, rounded), hardness_mpa);
}

double grain_height_um(const Step& step, double pressure_kpa) {
  if (step.backing.support != Support::layers) return 0;
  return groove_depth_um(step.abrasive, step.wetness, pressure_kpa, 1, reference_hardness_mpa);
}

const std::string& title_of(const Step& step) {
  return step.name.empty() ? step.abrasive.name : step.name;
}

}  // namespace libtexture
