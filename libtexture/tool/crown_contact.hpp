#pragma once
// CrownContact: how the flat disc of a motion, on a backing, meets a crowned panel.

#include <optional>

#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"

namespace libtexture {

/// How a flat disc meets a crowned panel.
struct CrownContact {
  double radius_mm;     ///< contact radius, at most the disc's [mm]
  double pressure_kpa;  ///< mean pressure within it [kPa]
  double peak_kpa;      ///< pressure in its middle [kPa]; the mean where the whole face touches
  bool is_small;        ///< contact radius under half the disc's: warn
};

/// Contact of the disc on a panel of crown radius [m], > 0 (none = flat): every place of the face is pressed
/// in along its foams' own curves (docs/physics.md, equation 11a). A half-space follows any crown and a
/// rigid disc none: the whole face then counts as touching.
CrownContact crown_contact(const Motion& motion, const Backing& backing,
                           std::optional<double> crown_radius_m);

}  // namespace libtexture
