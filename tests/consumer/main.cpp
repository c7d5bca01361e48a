#include <cmath>
#include <cstdio>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/io/values.hpp"
#include "libtexture/surface/texture.hpp"

int main() {
  using namespace libtexture;
  const HeightField field = synthesize({{.wavelength_mm = 2.5, .rms_um = 1.0}}, {64, 64, 0.2}, 1);
  const auto& [name, motion] = *shipped_catalogue().motions.begin();
  std::printf("rms %.6f um\n%s %s\n", field.rms_um(), name.c_str(), to_json(motion).dump().c_str());
  return std::abs(field.rms_um() - 1) < 1e-9 ? 0 : 1;  // the promise of synthesize
}
