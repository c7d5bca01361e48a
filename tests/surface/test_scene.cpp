#include <algorithm>
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

TEST_CASE("the scene holds lamps on a shelf, a plumb line and a sign, before a dark wall") {
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

TEST_CASE("the sign's rows are as high as stated, with strokes of a fifth of it") {
  // ISO 8596: the smallest letter that normal sight reads has 5 arcmin, its strokes 1 arcmin. Edges are
  // blended over a pixel of 1.5 mm, half of it at either side.
  const Scene scene = shelf_scene();
  const double pixel_mm = scene.width_mm / static_cast<double>(scene.luminance.cols());
  const double half = (shelf::sign_luminance + shelf::board_luminance) / 2;
  for (const shelf::SignRow& row : shelf::sign_rows) {
    INFO(row.words);
    const double stroke_mm = row.height_mm / 5;
    double top = -HUGE_VAL, bottom = HUGE_VAL;
    for (double up = row.up_mm - 7; up < row.up_mm + row.height_mm + 7; up += pixel_mm)
      for (double right = shelf::sign_right_mm; right < shelf::sign_right_mm + 700; right += pixel_mm)
        if (at(scene, right, up) > half) top = std::max(top, up), bottom = std::min(bottom, up);
    CHECK(bottom == Approx(row.up_mm).margin(1.5 * pixel_mm));
    CHECK(top - bottom + pixel_mm == Approx(row.height_mm).margin(1.5 * pixel_mm));
    // Halfway up, the first letters' outermost stroke is upright but for the T's, in the middle of it.
    const bool is_t = row.words.front() == 'T';
    int bright = 0;
    const double left = shelf::sign_right_mm + (is_t ? stroke_mm : -stroke_mm);
    for (double right = left; right < left + 3 * stroke_mm; right += pixel_mm)
      bright += at(scene, right, row.up_mm + 1.6 * stroke_mm) > half;
    CHECK(bright * pixel_mm == Approx(stroke_mm).margin(1.5 * pixel_mm));
  }
}

TEST_CASE("the sign's rows fall in height, apart from each other, on the board") {
  // ISO 3, series R5: a factor of 10^(1/5), rounded.
  const Scene scene = shelf_scene();
  for (std::size_t i = 0; i < shelf::sign_rows.size(); ++i) {
    const shelf::SignRow& row = shelf::sign_rows[i];
    CHECK(at(scene, shelf::sign_right_mm - 15, row.up_mm + row.height_mm / 2) == shelf::board_luminance);
    CHECK(at(scene, shelf::sign_right_mm + 100, row.up_mm - 10) == shelf::board_luminance);
    if (i == 0) continue;
    const shelf::SignRow& above = shelf::sign_rows[i - 1];
    CHECK(above.height_mm / row.height_mm == Approx(std::pow(10, 0.2)).epsilon(0.02));
    CHECK(above.up_mm > row.up_mm + row.height_mm);
  }
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
