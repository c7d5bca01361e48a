#pragma once
// DiscContact: how the disc of a step meets a panel: pressure, foam at that pressure, footprint, groove
// depth.

#include <optional>
#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/numerics/grid.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/tool/crown_contact.hpp"

namespace libtexture {

/// A spot is touched when cut by more than so many mean groove depths.
inline constexpr double touched_in_depths = 0.5;

/// How the disc of a step meets the panel.
struct DiscContact {
  Backing backing;                     ///< with the foam's tangent modulus at the pressure
  double pressure_kpa;                 ///< mean pressure within the contact [kPa]
  std::optional<double> footprint_mm;  ///< disc diameter, where the patch is larger than the disc [mm]
  double pass_cv = 0;                  ///< spread from place to place of what a pass removes
};

/// The contact on a crown (none = flat). Limits that the model comes near are added to warnings, where
/// given. InvalidInput where a foam collapses under the pressure.
DiscContact disc_contact(const Step& step, const Grid& grid, const std::optional<Crown>& crown,
                         std::vector<Statement>* warnings = nullptr);

/// Mean groove depth [um] at a contact share, 0 to 1, rounded to steps of .05 (1.3 % of depth at most), so
/// that passes in like contact share one population of grooves.
double groove_depth_um(const Step& step, double pressure_kpa, double contact_share, double hardness_mpa);

/// Scale of the heights of a step's grains [um] at a mean pressure [kPa], > 0: that of its grooves' depths in
/// full contact and a clear of the reference hardness (docs/physics.md, equation 19c). 0 on springs, a
/// half-space and a rigid support: ideal faces, which have no grains.
double grain_height_um(const Step& step, double pressure_kpa);

}  // namespace libtexture
