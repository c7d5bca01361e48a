#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/viewer.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

/// A wave along its rows, 8 pixels a wavelength, with this amplitude.
HeightField wave(double amplitude_um, double wavelength_mm) {
  Array2d heights(4, 64);
  for (int j = 0; j < 64; ++j) heights.col(j) = amplitude_um * std::cos(2 * std::numbers::pi * j / 8);
  return {heights, wavelength_mm / 8};
}

}  // namespace

TEST_CASE("a distant letter wanders by twice the tilt, and a near one by less") {
  // A tilt of half an arcminute moves a distant image by one: .1157 um at 5 mm (closed form, ISO 8596 stroke,
  // rounded to four digits).
  const HeightField field = wave(0.1157, 5);
  const double whole = seen_wander_arcmin(field, {.viewer_m = 1, .scene_m = 1e6, .pupil_mm = 0});
  CHECK(whole * std::numbers::sqrt2 == Approx(1).epsilon(2.5e-3));
  // Closed form: the image moves by 2 tilt scene_m, seen from viewer_m + scene_m.
  CHECK(seen_wander_arcmin(field, {.viewer_m = 1, .scene_m = 2, .pupil_mm = 0}) ==
        Approx(whole * 2 / 3).epsilon(1e-5));
  CHECK(seen_wander_arcmin(field, {.viewer_m = 3, .scene_m = 1, .pupil_mm = 0}) ==
        Approx(whole / 4).epsilon(1e-5));
}

TEST_CASE("waves below the spot that the pupil sees do not move the image") {
  // 3 mm x 2/3 = 2 mm of spot: 2 J1(x)/x at x = 2 pi/wavelength (Bessel function by scipy).
  const Viewer viewer;
  const Viewer pinhole{.pupil_mm = 0};
  CHECK(seen_wander_arcmin(wave(1, 4), viewer) / seen_wander_arcmin(wave(1, 4), pinhole) ==
        Approx(0.72170).epsilon(1e-4));
}

TEST_CASE("a viewer reads letters of 5 arcminutes in a still mirror") {
  // ISO 8596; closed form: 2.9089 mm at 2 m, 8.7266 mm at 6 m.
  CHECK(seen_letter_mm(0.3, {.viewer_m = 1, .scene_m = 1}) == Approx(2.9089).margin(6e-5));
  CHECK(seen_letter_mm(0, {.viewer_m = 1, .scene_m = 5}) == Approx(8.7266).margin(6e-5));
}

TEST_CASE("waves that are too short to move a letter blur it as much") {
  // A pinhole is moved by every wave: the closed form above, whatever the pupil.
  const Viewer wide{.viewer_m = 1, .scene_m = 2, .pupil_mm = 6}, pinhole{.pupil_mm = 0};
  CHECK(seen_smear_arcmin(wave(1, 4), wide) == seen_wander_arcmin(wave(1, 4), pinhole));
  CHECK(seen_smear_arcmin(wave(1, 4), wide) > 1.5 * seen_wander_arcmin(wave(1, 4), wide));
}

TEST_CASE("a viewer behind a veil reads larger letters, or none") {
  const Viewer viewer{.viewer_m = 1, .scene_m = 1};
  CHECK(*seen_letter_mm(0.3, viewer, 0.2) > 1.5 * *seen_letter_mm(0.3, viewer));
  CHECK_FALSE(seen_letter_mm(0.3, viewer, 0.01).has_value());
}

TEST_CASE("an eye stands a third of the way before the paint unless it is said to stand elsewhere") {
  CHECK(viewer_along(3) == Viewer{});
  CHECK(viewer_along(6).viewer_m == Approx(2));
  CHECK(viewer_along(6).scene_m == Approx(4));
  CHECK(viewer_along(2, 0.5) == Viewer{.viewer_m = 0.5, .scene_m = 1.5});
  CHECK_THROWS_WITH(viewer_along(0), "viewer_along: distance_m must be > 0 (got 0 m)");
  CHECK_THROWS_WITH(viewer_along(2, 3), "Viewer: scene_m must be > 0 (got -1 m)");
}

TEST_CASE("a viewer who cannot be is refused") {
  CHECK_THROWS_WITH((Viewer{.viewer_m = -1}.validate()), "Viewer: viewer_m must be >= 0 (got -1 m)");
  CHECK_THROWS_WITH((Viewer{.scene_m = -2}.validate()), "Viewer: scene_m must be > 0 (got -2 m)");
  CHECK_THROWS_AS(seen_letter_mm(1, {.pupil_mm = -1}), InvalidInput);
}
