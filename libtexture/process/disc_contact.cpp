#include "libtexture/process/disc_contact.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/units.hpp"
#include "libtexture/process/identity.hpp"
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
          std::vector<Statement>& warnings) {
  const auto say = [&](StatementKind kind, std::map<std::string, double> figures) {
    warnings.push_back({.kind = kind, .step = title_of(step), .figures = std::move(figures)});
  };
  if (touch.is_small) say(StatementKind::contact_small, {{"radius_mm", touch.radius_mm}});
  if (near_plateau(step.backing, touch.peak_kpa))
    say(StatementKind::foam_near_plateau, {{"peak_kpa", touch.peak_kpa}, {"mean_kpa", touch.pressure_kpa}});
  const LaneDose dose = lane_dose(step.motion, touch);
  if (dose.least < least_dose) {
    std::map<std::string, double> figures{{"contact_mm", 2 * touch.radius_mm},
                                          {"lanes_mm", step.motion.step_over_mm},
                                          {"even_lanes_mm", touch.radius_mm}};
    const bool misses = dose.untouched_share > 0;
    figures.emplace(misses ? "untouched_share" : "least_dose_share",
                    misses ? dose.untouched_share : dose.least);
    say(misses ? StatementKind::lanes_miss : StatementKind::lanes_leave_stripes, std::move(figures));
  }
  const double speed = sliding_m_per_s(step.motion);
  double softest_mpa = HUGE_VAL;
  for (const Layer& layer : working.layers) softest_mpa = std::min(softest_mpa, layer.modulus_mpa);
  if (speed * speed * foam_density_kg_per_m3 > still_share * softest_mpa * pascal_per_mpa)
    say(StatementKind::inertia_left_out, {});
  const Grit& grit = step.abrasive.grit;
  if (grit.is_extrapolated())
    warnings.push_back({.kind = StatementKind::grain_extrapolated,
                        .abrasives = {label_of(step.abrasive)},
                        .figures = {{"grain_um", grit.median_um()}}});
}

}  // namespace

DiscContact disc_contact(const Step& step, const Grid& grid, const std::optional<Crown>& crown,
                         std::vector<Statement>* warnings) {
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

}  // namespace libtexture
