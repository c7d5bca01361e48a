#include "catch.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/process/levelling_curve.hpp"
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

TEST_CASE("a patch of nodes levels as the whole surface does, to the accuracy of plans") {
  // Against the same surface on twelve times the pixels.
  const HeightField surface = texture(3.5, {512, 512, 0.1});
  const Backing film = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  const CurveOptions asked{.rms_tolerance_um = rms_tolerance_um(surface)};
  LevellingCurve whole(surface, film, 1.4, asked), nodes(node_patch(surface), film, 1.4, asked);
  for (const double removal_um : {0.4, 0.8, 1.6, 3.2})
    CHECK(nodes.at(removal_um).surface.rms_um() ==
          Approx(whole.at(removal_um).surface.rms_um()).margin(rms_tolerance_um(surface)).epsilon(0));
  // The last place goes at its depth less what the face follows; fewer pixels see less of the depth.
  const auto followed_um = [](const LevellingCurve& curve, const HeightField& field) {
    return field.valley_depth_um() - *curve.touched_at_um();
  };
  CHECK(followed_um(nodes, node_patch(surface)) ==
        Approx(followed_um(whole, surface)).margin(0.02 * surface.valley_depth_um()));
}

TEST_CASE("a patch of nodes keeps all pixels where its waves need them, or its sides have no common part") {
  const HeightField fine = texture(0.7, {256, 256, 0.1}), odd = texture(6, {255, 256, 0.1});
  CHECK(node_patch(fine) == fine);
  CHECK(node_patch(odd) == odd);
}
