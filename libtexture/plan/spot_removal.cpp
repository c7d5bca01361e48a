#include "libtexture/plan/spot_removal.hpp"

#include <cmath>

#include "libtexture/process/pace.hpp"

namespace libtexture {

double SpotRemoval::removed_um(int passes, double shift) const {
  Step scaled = step;
  scaled.abrasive.wear_rate_mm3_per_n_m *= std::exp(shift);
  scaled.abrasive.worn_wear_rate_mm3_per_n_m *= std::exp(shift);
  DiscUse use;
  double sum_um = 0;
  for (int pass = 0; pass < passes; ++pass) sum_um += removal_of_pass_um(scaled, area_m2, hardness_mpa, use);
  return sum_um;
}

int SpotRemoval::passes_to(double enough_um, double shift) const {
  int few = 0, many = most_spot_passes;
  while (many - few > 1) {
    const int middle = (few + many) / 2;
    (removed_um(middle, shift) < enough_um ? few : many) = middle;
  }
  return many;
}

}  // namespace libtexture
