#include "libtexture/surface/metrology.hpp"

#include "libtexture/surface/waves.hpp"

namespace libtexture {

std::vector<double> band_rms_um(const HeightField& field, const std::vector<double>& edges_mm) {
  return Waves(field).band_rms_um(edges_mm);
}

}  // namespace libtexture
