#include "libtexture/surface/coating.hpp"

#include "libtexture/base/error.hpp"

namespace libtexture {

void Coat::validate() const {
  require(!name.empty(), "Coat", "name", "must not be empty", "\"\"");
  require_positive(thickness_um, "Coat", "thickness_um");
  require(thickness_um <= 5000, "Coat", "thickness_um", "must be <= 5000 um", thickness_um);
  require_not_negative(uncertainty_um, "Coat", "uncertainty_um");
  require_positive(hardness_mpa, "Coat", "hardness_mpa");
}

double Coating::total_um() const {
  double total = 0;
  for (const Coat& coat : coats) total += coat.thickness_um;
  return total;
}

void Coating::validate() const {
  require(!coats.empty(), "Coating", "coats", "must hold at least one coat", "none");
  for (const Coat& coat : coats) coat.validate();
}

}  // namespace libtexture
