#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/scene.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

double at(const Scene& scene, double right_mm, double up_mm) {
  const double per_mm = static_cast<double>(scene.luminance.cols()) / scene.width_mm;
  const auto half = static_cast<double>(scene.luminance.cols()) / 2;
  return scene.luminance(static_cast<Eigen::Index>(half - up_mm * per_mm),
                         static_cast<Eigen::Index>(half + right_mm * per_mm));
}

}  // namespace

TEST_CASE("the scene holds lamps on a shelf, a plumb line and rings, before a dark wall") {
  const Scene scene = shelf_scene();
  scene.validate();
  for (const int k : {-2, -1, 0, 1, 2}) {
    CHECK(at(scene, k * shelf::lamp_spacing_mm, shelf::lamp_up_mm) == 1);
    CHECK(at(scene, k * shelf::lamp_spacing_mm, shelf::lamp_up_mm + 65) == shelf::wall_luminance);
  }
  for (const double up : {shelf::line_top_mm - 5, 0.0, shelf::line_bottom_mm + 40}) {
    CHECK(at(scene, shelf::line_right_mm, up) == Approx(0.8));
    CHECK(at(scene, shelf::line_right_mm + shelf::line_width_mm, up) == shelf::wall_luminance);
  }
}

TEST_CASE("a ring is a Landolt ring: stroke and gap a fifth of the diameter") {
  const Scene scene = shelf_scene();
  // The first ring: 150 mm, from -390 mm, open to the right (ISO 8596, proportions from memory).
  const double right = -390 + 75;
  for (const double radius : {48.0, 60.0, 72.0}) {
    CHECK(at(scene, right - radius, shelf::rings_up_mm) == Approx(0.02));
    CHECK(at(scene, right, shelf::rings_up_mm + radius) == Approx(0.02));
    CHECK(at(scene, right + radius, shelf::rings_up_mm) == Approx(0.4));       // the gap
    CHECK(at(scene, right + radius, shelf::rings_up_mm + 12) == Approx(0.4));  // 15 mm to either side
  }
  CHECK(at(scene, right + 57, shelf::rings_up_mm + 18) == Approx(0.02));
  CHECK(at(scene, right, shelf::rings_up_mm + 42) == Approx(0.4));
  CHECK(at(scene, right, shelf::rings_up_mm + 78) == Approx(0.4));
}

TEST_CASE("the lamps' area is that of five discs") {
  // Closed form pi 60^2 each; blended edges keep it to well below 1 %.
  const Scene scene = shelf_scene();
  const double pixel_mm = scene.width_mm / static_cast<double>(scene.luminance.cols());
  const double area = static_cast<double>((scene.luminance > 0.9).count()) * pixel_mm * pixel_mm;
  CHECK(area == Approx(5 * 3.14159265 * 60 * 60).epsilon(0.03));  // pixels that an edge crosses are left out
}

TEST_CASE("the mean of the scene is the fill that lamp visibility takes") {
  CHECK(shelf_scene().luminance.mean() == Approx(0.1).margin(0.01));
}

TEST_CASE("a scene must be lit between 0 and 1") {
  CHECK_THROWS_WITH((Scene{Array2d(), 10}.validate()),
                    "Scene: luminance must hold at least one pixel (got none)");
  CHECK_THROWS_AS((Scene{Array2d::Constant(2, 2, 1.5), 10}.validate()), InvalidInput);
  CHECK_THROWS_WITH((Scene{Array2d::Zero(2, 2), 0}.validate()), "Scene: width_mm must be > 0 (got 0 mm)");
}
