#include "libtexture/surface/slope.hpp"

#include "libtexture/base/error.hpp"

namespace libtexture {

Array2d slope(const HeightField& field, Direction direction, double footprint_mm) {
  require_not_negative(footprint_mm, "slope", "footprint_mm");
  return Waves(field).slope(direction, SpotMean(field.grid(), footprint_mm));
}

double rms_slope(const HeightField& field, Direction direction, double footprint_mm) {
  require_not_negative(footprint_mm, "slope", "footprint_mm");
  return Waves(field).rms_slope(direction, SpotMean(field.grid(), footprint_mm));
}

}  // namespace libtexture
