#pragma once
// Sheet: what a panel is made of, and how it gives where a disc presses on its crown.

#include <array>
#include <optional>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// What a panel is made of.
enum class SheetMaterial { steel, aluminium, plastic };
constexpr std::array<std::pair<SheetMaterial, const char*>, 3> names_of(SheetMaterial) {
  return {{{SheetMaterial::steel, "steel"},
           {SheetMaterial::aluminium, "aluminium"},
           {SheetMaterial::plastic, "plastic"}}};
}

/// The sheet of a panel.
struct Sheet {
  /// steel, aluminium or plastic: 210, 70 or 2 GPa (metals: handbook values, from memory; plastic: estimate,
  /// 1 to 3)
  SheetMaterial material = SheetMaterial::steel;
  /// [mm], 0.1 to 100; none = 0.7 for steel, 1.0 for aluminium, 3.0 for plastic (estimates); thick = it does
  /// not give
  std::optional<double> thickness_mm = {};

  void validate() const;
  bool operator==(const Sheet&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("material", &Sheet::material), optional("thickness_mm", &Sheet::thickness_mm)};
  }
};

/// A panel's crown: the mean radius of its curvature, and the sheet that is curved.
struct Crown {
  double radius_m = unset;  ///< square root of the product of the main radii [m], > 0
  Sheet sheet = {};         ///< what the panel is made of

  void validate() const;
  bool operator==(const Crown&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("radius_m", &Crown::radius_m), optional("sheet", &Crown::sheet)};
  }
};

/// Bending stiffness of a sheet [N m]: E t^3/(12 (1 - nu^2)).
double bending_stiffness_n_m(const Sheet& sheet);

/// Stiffness of a crowned sheet against waves much longer than its length (D/k)^(1/4), the springs k that a
/// shallow spherical shell rests on [Pa/m]: E t/R^2 (docs/physics.md, equation 11b).
double crown_springs_pa_per_m(const Crown& crown);

}  // namespace libtexture
