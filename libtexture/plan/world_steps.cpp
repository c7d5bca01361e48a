#include "libtexture/plan/world_steps.hpp"

#include <cmath>
#include <numbers>

#include "libtexture/base/parallel.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

std::vector<WorldStep> world_steps(const Worlds& worlds, const Step& step, const StepWorlds& drawn,
                                   const PanelAtStep& panel, const DiscContact& nominal,
                                   const Progress& progress) {
  const double q_per_m =
      panel.wavelength_mm > 0 ? 2 * std::numbers::pi / (panel.wavelength_mm * metre_per_mm) : 0;
  const double at_nominal = stiffness_pa_per_m(nominal.backing, q_per_m) / nominal.pressure_kpa;
  const bool has_clock_only = q_per_m == 0 || !std::isfinite(at_nominal);
  std::vector<WorldStep> all(worlds.person.size());
  const auto make = [&](std::size_t world) {
    WorldStep& one = all[world];
    one.step = in_world(step, drawn, world, panel.crown);
    const DiscContact contact = disc_contact(one.step, panel.grid, panel.crown);
    one.pressure_kpa = contact.pressure_kpa;
    one.pass_cv = contact.pass_cv;
    if (!drawn.defect_dwell.empty()) one.defect_dwell = drawn.defect_dwell[world];
    if (!has_clock_only)
      one.stiffness_factor = worlds.texture_scale[world] * stiffness_pa_per_m(contact.backing, q_per_m) /
                             contact.pressure_kpa / at_nominal;
  };
  parallel_for_small(all.size(), make, progress);
  return all;
}

}  // namespace libtexture
