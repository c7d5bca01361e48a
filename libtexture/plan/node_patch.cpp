#include "libtexture/plan/node_patch.hpp"

#include <algorithm>

#include "libtexture/plan/panel_cells.hpp"

namespace libtexture {

namespace {

// Tests and docs/physics.md show what that moves.
constexpr double pixels_a_wave = 8;
constexpr int pixels_a_side = 64;

}  // namespace

HeightField node_patch(const HeightField& surface) {
  HeightField patch = surface;
  const double longest_mm = mean_wavelength_mm(patch) / pixels_a_wave;
  while (2 * patch.pixel_mm() <= longest_mm && patch.grid().rows % 2 == 0 && patch.grid().cols % 2 == 0 &&
         std::min(patch.grid().rows, patch.grid().cols) >= 2 * pixels_a_side) {
    const auto every_second = [](int count) { return Eigen::seqN(0, count / 2, 2); };
    const Array2d kept = patch.height_um()(every_second(patch.grid().rows), every_second(patch.grid().cols));
    patch = HeightField(kept, 2 * patch.pixel_mm());
  }
  return patch;
}

}  // namespace libtexture
