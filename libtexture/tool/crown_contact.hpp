#pragma once
// CrownContact: how the flat disc of a motion, on a backing, meets a crowned panel.

#include <optional>

#include "libtexture/tool/backing.hpp"
#include "libtexture/tool/motion.hpp"
#include "libtexture/tool/sheet.hpp"

namespace libtexture {

/// How a flat disc meets a crowned panel.
struct CrownContact {
  double radius_mm = unset;     ///< contact radius, at most the disc's [mm], > 0
  double pressure_kpa = unset;  ///< mean pressure within it [kPa], > 0
  double peak_kpa = unset;      ///< pressure in its middle [kPa]; the mean where the whole face touches
  bool is_small = false;        ///< contact radius under half the disc's: warn

  void validate() const;
  bool operator==(const CrownContact&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("radius_mm", &CrownContact::radius_mm),
                      required("pressure_kpa", &CrownContact::pressure_kpa),
                      required("peak_kpa", &CrownContact::peak_kpa),
                      optional("is_small", &CrownContact::is_small)};
  }
};

/// Contact of the disc on a crowned panel (none = flat). Every place of the face is pressed in along its
/// foams' own curves, and the panel's sheet gives as a plate on the springs of its crown (docs/physics.md,
/// equations 11 to 11d), within 1 % of an independent solution; of the peak while the middle is pressed
/// hardest. A half-space follows any crown and a rigid disc none: the whole face then counts as touching.
CrownContact crown_contact(const Motion& motion, const Backing& backing, const std::optional<Crown>& crown);

}  // namespace libtexture
