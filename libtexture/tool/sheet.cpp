#include "libtexture/tool/sheet.hpp"

#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

struct Material {
  double modulus_gpa, poisson, thickness_mm;
};

Material material_of(const Sheet& sheet) {
  switch (sheet.material) {
    case SheetMaterial::aluminium:
      return {70, 0.33, 1.0};
    case SheetMaterial::plastic:
      return {2, 0.4, 3.0};
    default:
      return {210, 0.3, 0.7};
  }
}

double thickness_m(const Sheet& sheet) {
  return sheet.thickness_mm.value_or(material_of(sheet).thickness_mm) * metre_per_mm;
}

}  // namespace

void Sheet::validate() const {
  // From a foil to a casting: beyond it a slip of the unit (estimates).
  if (thickness_mm) require_within(*thickness_mm, 0.1, 100, "Sheet", "thickness_mm");
}

void Crown::validate() const {
  require_positive(radius_m, "Crown", "radius_m");
  sheet.validate();
}

double bending_stiffness_n_m(const Sheet& sheet) {
  sheet.validate();
  const Material material = material_of(sheet);
  return material.modulus_gpa * pascal_per_gpa * std::pow(thickness_m(sheet), 3) /
         (12 * (1 - material.poisson * material.poisson));
}

double crown_springs_pa_per_m(const Crown& crown) {
  crown.validate();
  return material_of(crown.sheet).modulus_gpa * pascal_per_gpa * thickness_m(crown.sheet) /
         (crown.radius_m * crown.radius_m);
}

}  // namespace libtexture
