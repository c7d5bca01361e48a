#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/surface/gloss.hpp"
#include "libtexture/surface/reflection.hpp"
#include "libtexture/surface/slope.hpp"
#include "libtexture/surface/specular_share.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

constexpr double pi = std::numbers::pi;
const Array2d shiny = Array2d::Constant(1, 1, 1.0);
const HeightField flat(Array2d::Zero(8, 8), 1);
const ReflectionView view{.rows = 256, .cols = 256};  // pixels of 1.95 mm on the surface, 5.9 mm on the scene

Array2d share_of_grooves(double depth_um) {
  return Array2d::Constant(1, 1, specular_share({{depth_um, 5}}, 45));
}

/// The picture's part that shows a place of the scene: 3 x 3 pixels. The scene looks three times smaller (3 m
/// to 1 m).
Eigen::Array33d around(const Array2d& picture, double right_mm, double up_mm) {
  const double pixel_mm = 500.0 / 256;
  const auto row = static_cast<Eigen::Index>(std::lround(127.5 - up_mm / 3 / pixel_mm));
  const auto col = static_cast<Eigen::Index>(std::lround(127.5 + right_mm / 3 / pixel_mm));
  return picture.block<3, 3>(row - 1, col - 1);
}

/// Contrast of the middle lamp against the wall between it and the next.
double lamp_contrast(const Array2d& picture) {
  const double lamp = around(picture, 0, shelf::lamp_up_mm).mean();
  const double wall = around(picture, shelf::lamp_spacing_mm / 2, shelf::lamp_up_mm).mean();
  return (lamp - wall) / (lamp + wall);
}

/// How far the plumb line wanders from side to side [arcmin, from the eye], between two heights of the scene.
double line_wobble(const Array2d& picture, double bottom_mm, double top_mm) {
  const double pixel_mm = 500.0 / 256;
  std::vector<double> middles;
  for (int row = static_cast<int>(127.5 - top_mm / 3 / pixel_mm); row <= 127.5 - bottom_mm / 3 / pixel_mm;
       ++row) {
    const int from = static_cast<int>(127.5 + (shelf::line_right_mm - 60) / 3 / pixel_mm);
    double weight = 0, moment = 0;
    for (int col = from; col < from + 20; ++col) {
      const double light = picture(row, col) - picture(row, from);
      weight += light;
      moment += light * col;
    }
    middles.push_back(moment / weight);
  }
  const auto [least, most] = std::minmax_element(middles.begin(), middles.end());
  return (*most - *least) * std::atan(pixel_mm / 1000) * 180 * 60 / pi;
}

/// A scene whose luminance tells the place: rising to the right, or upwards.
Scene ramp(bool is_upwards) {
  Array2d luminance(256, 256);
  for (int i = 0; i < 256; ++i)
    for (int j = 0; j < 256; ++j) luminance(i, j) = 0.2 + 0.6 * (is_upwards ? 255 - i : j) / 255;
  return {luminance, 400};
}

/// Place in the ramp [mm] that the middle of the picture shows.
double place_seen(const HeightField& field, ReflectionView from, bool is_upwards) {
  from.rows = from.cols = 3;
  from.body_luminance = 0;
  const Scene scene = ramp(is_upwards);
  const double luminance = render_reflection(field, shiny, from, scene)(1, 1);
  return ((luminance - 0.2) / 0.6 - 0.5) * 400 * 255 / 256;
}

/// A wave sin(2 pi x/wavelength), steepest at the origin, with this slope there; along x or along y.
HeightField wave(double slope_at_origin, double wavelength_mm, Direction direction) {
  const int count = 64;
  Array2d heights(count, count);
  for (int i = 0; i < count; ++i)
    for (int j = 0; j < count; ++j)
      heights(i, j) = slope_at_origin * wavelength_mm * 1e3 / (2 * pi) *
                      std::sin(2 * pi * ((direction == Direction::rows ? j : i) + 0.5) / count);
  return {heights, wavelength_mm / count};
}

}  // namespace

TEST_CASE("a perfect mirror shows the scene where it is, as bright as Fresnel says") {
  // Fresnel's share of n = 1.5 at 45 degrees; the scene's own luminances and places, surface/scene.hpp.
  int told = 0;
  const Array2d picture = render_reflection(flat, shiny, view, shelf_scene(), [&](double) { ++told; });
  CHECK(told == view.rows);
  const double f = fresnel(45, 1.5);
  // The middle of the picture is wall; 1.5 % since the 3 x 3 pixels see it at 45 +- .2 degrees.
  const double wall = (f * shelf::wall_luminance + 0.002) / (f + 0.002);
  CHECK(around(picture, 0, 0).mean() == Approx(wall).epsilon(0.015));
  CHECK(around(picture, 0, shelf::lamp_up_mm).minCoeff() == 1);
  const double edge = shelf::lamp_diameter_mm / 2;
  CHECK(around(picture, edge - 20, shelf::lamp_up_mm).minCoeff() > 0.9);
  CHECK(around(picture, edge + 20, shelf::lamp_up_mm).maxCoeff() < 0.15);
  CHECK(place_seen(flat, {}, false) == Approx(0).margin(0.01));
  CHECK(place_seen(flat, {}, true) == Approx(0).margin(0.01));
}

TEST_CASE("a tilt moves the image by twice its angle, along and, shortened, across the line of sight") {
  // Closed form of reflection: 2 m x 2 x slope along, times cos 45 degrees across. The ramp's steps and the
  // wave's curvature over 16 rays of one pixel leave 1 %.
  ReflectionView sharp;
  sharp.width_mm = 3;  // pixels of 1 mm
  sharp.pupil_mm = 0;
  const double slope = 5e-3;
  CHECK(place_seen(wave(slope, 60, Direction::rows), sharp, true) == Approx(-2 * 2000 * slope).epsilon(0.01));
  CHECK(place_seen(wave(slope, 60, Direction::rows), sharp, false) == Approx(0).margin(0.05));
  CHECK(place_seen(wave(slope, 60, Direction::columns), sharp, false) ==
        Approx(2 * 2000 * slope * std::cos(pi / 4)).epsilon(0.01));
  CHECK(place_seen(wave(slope, 60, Direction::columns), sharp, true) == Approx(0).margin(0.05));
}

TEST_CASE("short waves bend the image less than long ones, as the pupil's spot on the surface says") {
  ReflectionView close;
  close.width_mm = 0.3;  // pixels of .1 mm
  // Spot of 3 mm x 2/(1 + 2) = 2 mm; 2 J1(x)/x at x = pi 2/wavelength (closed form, Bessel function by
  // scipy). The rays stand for the disc to 1e-4; the pixel takes 1e-3.
  const double whole = 2 * 2000 * 5e-3 * std::cos(pi / 4);
  CHECK(place_seen(wave(5e-3, 4, Direction::columns), close, false) / whole == Approx(0.72170).epsilon(3e-3));
  CHECK(place_seen(wave(5e-3, 8, Direction::columns), close, false) / whole == Approx(0.92485).epsilon(3e-3));
}

TEST_CASE(
    "a lamp is lost after the coarse step, has an outline after refinement, and is sharp after polish") {
  // Common practice, no source; groove depths of 0.2, 0.12 and 0.0035 um at coverage 5 are estimates. A
  // lamp shows above 0.05.
  const Grid grid{256, 256, 0.2};
  const HeightField before = synthesize({{2.5, 0.7, 1}, {8, 0.5, 1}}, grid, 1);
  const HeightField levelled = synthesize({{8, 0.1, 1}}, grid, 1);
  const Array2d ideal = render_reflection(flat, shiny, view);
  const Array2d coarse = render_reflection(levelled, share_of_grooves(0.2), view);
  const Array2d refined = render_reflection(levelled, share_of_grooves(0.12), view);
  const Array2d polished = render_reflection(levelled, share_of_grooves(0.0035), view);
  CHECK(std::abs(lamp_contrast(coarse)) < 0.05);
  CHECK(lamp_contrast(refined) > 0.05);
  CHECK(lamp_contrast(refined) < 0.3);
  CHECK(lamp_contrast(polished) > 0.95 * lamp_contrast(ideal));

  // Sharp: about the lamps the polished picture is nearer to the ideal one than the untouched texture's by
  // far.
  const Array2d untouched = render_reflection(before, shiny, view);
  const auto error = [&](const Array2d& picture) {
    return (picture - ideal).middleRows(60, 25).abs().mean();
  };
  CHECK(error(polished) < 0.5 * error(untouched));
}

TEST_CASE("straight lines are straight only where the texture went") {
  // Texture on the far half of a patch as large as the picture: the plumb line's upper part. Common practice,
  // no source; an eye sees 1 arcmin (ISO 8596).
  const Grid grid{512, 512, 1};
  Array2d heights = synthesize({{8, 1.5, 1}}, grid, 1).height_um();
  heights.rightCols(256) = 0;
  const Array2d picture = render_reflection({heights, 1}, shiny, view);
  CHECK(line_wobble(picture, 40, 200) > 1);
  CHECK(line_wobble(picture, -480, -60) < 0.1);
}

TEST_CASE("untouched valleys show as shiny spots in a matt field") {
  // Common practice, no source: what an untouched valley looks like. A groove depth of 0.2 um at coverage 5
  // keeps 0.06 % of the light at 45 degrees (closed form pi x/sinh(pi x), docs/physics.md, optics); that the
  // spots stand out four times and the field varies by a tenth is an estimate.
  const Grid grid{256, 256, 0.2};
  const HeightField field = synthesize({{6, 0.7, 1}}, grid, 1);
  const double matt = specular_share({{0.2, 5}}, 45);
  const Array2d mixed = (field.height_um() < -0.9).select(Array2d::Constant(256, 256, 1.0), matt);
  const Array2d even = Array2d::Constant(256, 256, matt);
  // Over the lamp: spots as bright as the lamp, in a field of the scene's mean.
  const auto lamp = [](const Array2d& picture) { return picture.block(60, 123, 11, 11).eval(); };
  const auto spots = lamp(render_reflection(field, mixed, view)),
             field_alone = lamp(render_reflection(field, even, view));
  CHECK(spots.maxCoeff() > 4 * spots.minCoeff());
  CHECK(field_alone.maxCoeff() < 1.1 * field_alone.minCoeff());
}

TEST_CASE("the picture does not depend on the threads, and a patch repeats") {
  const Grid grid{64, 64, 0.4};
  const HeightField field = synthesize({{3, 1, 1}}, grid, 2);
  const auto picture_on = [&](int threads) {
    const ThreadLimit limit(threads);
    return render_reflection(field, shiny, view);
  };
  const Array2d picture = picture_on(1);
  CHECK((picture == picture_on(3)).all());
  const Array2d fourfold = field.height_um().replicate(2, 2);
  const Array2d repeated = render_reflection({fourfold, 0.4}, shiny, view);
  CHECK((picture - repeated).abs().maxCoeff() < 1e-4);  // slopes are kept in single precision
}

TEST_CASE("a profile is a surface that is the same along its columns") {
  Array2d heights(1, 64);
  for (int j = 0; j < 64; ++j) heights(0, j) = std::sin(2 * pi * j / 16);
  const Array2d profile = render_reflection({heights, 0.5}, shiny, view);
  const Array2d patch = render_reflection({Array2d(heights.replicate(8, 1)), 0.5}, shiny, view);
  CHECK((profile - patch).abs().maxCoeff() < 1e-4);  // slopes are kept in single precision
}

TEST_CASE("a view or a share that cannot be is refused") {
  CHECK_THROWS_WITH(render_reflection(flat, Array2d::Constant(2, 3, 1.0)),
                    "render_reflection: specular_share must be (1, 1) or of the surface's shape (got 2 x 3)");
  CHECK_THROWS_AS(render_reflection(flat, Array2d::Constant(1, 1, 1.5)), InvalidInput);
  ReflectionView bad;
  bad.viewer_m = 0;
  CHECK_THROWS_WITH(render_reflection(flat, shiny, bad), "ReflectionView: viewer_m must be > 0 (got 0 m)");
  bad = {};
  bad.angle_deg = 80;
  CHECK_THROWS_WITH(
      render_reflection(flat, shiny, bad),
      "ReflectionView: width_mm must keep the picture's top below 85 degrees from the surface's normal (got "
      "500 mm)");
}
