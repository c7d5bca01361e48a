#pragma once
// WorldSteps: one step of a sequence as it is in each possible world.

#include <optional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/worlds.hpp"
#include "libtexture/process/disc_contact.hpp"

namespace libtexture {

/// A step in one world.
struct WorldStep {
  Step step = {};
  double pressure_kpa = 0;  ///< within the contact [kPa]
  double pass_cv = 0;       ///< spread from place to place of what a pass removes
  double stiffness_factor =
      1;                    ///< the patch's S/p_mean at its mean wavelength, world's heights, over nominal
  double defect_dwell = 0;  ///< standard normal number of the dwell at a defect
};

/// The panel that a step works on, as the steps before it left it.
struct PanelAtStep {
  Grid grid = {};                   ///< of the patch
  double wavelength_mm = 0;         ///< mean, of its texture [mm]; 0 = flat
  std::optional<Crown> crown = {};  ///< of the panel; none = flat
};

/// The step in every world, as drawn, its contact told over a nominal one.
std::vector<WorldStep> world_steps(const Worlds& worlds, const Step& step, const StepWorlds& drawn,
                                   const PanelAtStep& panel, const DiscContact& nominal,
                                   const Progress& progress = {});

}  // namespace libtexture
