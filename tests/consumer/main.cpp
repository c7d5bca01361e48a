#include <cmath>
#include <cstdio>
#include <numbers>

#include "libtexture/surface/height_field.hpp"

int main() {
  using namespace libtexture;
  Array2d height_um(1, 64);
  for (int i = 0; i < 64; ++i) height_um(0, i) = std::sin(2 * std::numbers::pi * (i + 0.5) / 64);
  const double rms_um = HeightField(height_um, 0.1).rms_um();
  std::printf("rms %.6f um\n", rms_um);
  return std::abs(rms_um - std::sqrt(0.5)) < 1e-12 ? 0
                                                   : 1;  // closed form: a sine of amplitude 1; rounding only
}
