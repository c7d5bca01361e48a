#include "catch.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

HeightField texture(double wavelength_mm, const Grid& grid) {
  return synthesize({{.wavelength_mm = wavelength_mm, .rms_um = .6}}, grid, 3);
}

}  // namespace

TEST_CASE("a patch of nodes keeps eight pixels to a wave and 64 to a side, and its texture") {
  // Eight pixels and 64 are our rule (estimate). Fewer points of a surface that they resolve have its rms
  // height and slope (sampling theorem): 1 % for the tail of the band.
  const HeightField surface = texture(3.5, {512, 512, 0.1}), thin = node_patch(surface);
  CHECK(8 * thin.pixel_mm() <= mean_wavelength_mm(surface));
  CHECK(8 * 1.1 * thin.pixel_mm() > mean_wavelength_mm(surface));  // numbers that transform fast lie as close
  CHECK(thin.rms_um() == Approx(surface.rms_um()).epsilon(0.01));
  CHECK(mean_wavelength_mm(thin) == Approx(mean_wavelength_mm(surface)).epsilon(0.01));
  CHECK(node_patch(texture(20, {128, 256, 0.2})).grid() == Grid{64, 128, 0.4});
}

TEST_CASE("a patch of nodes keeps all pixels where its waves need them, or its sides have no common part") {
  const HeightField fine = texture(0.7, {256, 256, 0.1}), odd = texture(6, {255, 256, 0.1});
  CHECK(node_patch(fine) == fine);
  CHECK(node_patch(odd) == odd);
}
