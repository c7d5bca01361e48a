#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/plan/reached.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// Waves across the rows: heights A cos(2 pi x/wavelength), whose rms is A/sqrt 2 (ISO 25178-2).
HeightField waves(double amplitude_um, double wavelength_mm) {
  Array2d height(4, 256);
  for (Eigen::Index col = 0; col < height.cols(); ++col)
    height.col(col) = amplitude_um * std::cos(2 * std::numbers::pi * 0.1 * double(col) / wavelength_mm);
  return HeightField(height, 0.1);
}

Reached only(const Target& target, const HeightField& before, const HeightField& now, double touched = 1) {
  const std::vector<Reached> parts = judge_target(target, before, now, touched);
  REQUIRE(parts.size() == 1);
  return parts.front();
}

}  // namespace

TEST_CASE("a texture target judges the rms height, of its band alone where it has one") {
  const HeightField start = waves(2, 3.2), now = waves(0.5, 3.2);
  Target target;
  target.rms_um = 0.4;
  CHECK(only(target, start, now).found == Approx(0.5 / std::sqrt(2)).epsilon(1e-9));
  CHECK(only(target, start, now).is_met);
  CHECK_FALSE(only(target, start, start).is_met);
  target.band_mm = {4, 8};  // the waves are shorter
  CHECK(only(target, start, start).found == Approx(0).margin(1e-12));
  CHECK(only(target, start, start).is_met);
}

TEST_CASE("full asks for 99.5 % touched and 35 % of the starting rms, partial for half of the starting rms") {
  const HeightField start = waves(2, 3.2);
  Target full, partial;
  full.preset = TargetPreset::full;
  partial.preset = TargetPreset::partial;
  const HeightField flat = waves(0.69, 3.2), wavier = waves(0.71, 3.2);  // 35 % of 2 um is 0.7
  CHECK_FALSE(is_reached(judge_target(full, start, flat, 0.994)));
  CHECK(is_reached(judge_target(full, start, flat, 0.995)));
  CHECK_FALSE(is_reached(judge_target(full, start, wavier, 1)));
  CHECK(only(partial, start, waves(0.99, 3.2)).is_met);
  CHECK_FALSE(only(partial, start, waves(1.01, 3.2)).is_met);
}

TEST_CASE("image clarity is judged by the comb, less what scratches take") {
  // Shift of the image X = 2 f A q; a comb of .5 mm is whole to X = w/2 (closed form, checks of the optics).
  const double amplitude_um = 0.24e3 / (2 * 150 * 2 * std::numbers::pi / 3.2);
  Target target;
  target.image_clarity_percent = 90;
  const HeightField smooth = waves(0.8 * amplitude_um, 3.2), wavy = waves(2.5 * amplitude_um, 3.2);
  CHECK(only(target, wavy, smooth).found == Approx(100).margin(0.1));
  CHECK(only(target, wavy, smooth).is_met);
  CHECK_FALSE(only(target, wavy, wavy).is_met);
  const std::vector<Reached> veiled = judge_target(target, wavy, smooth, 1, 0.5);
  CHECK(veiled.front().found == Approx(50).margin(0.1));
  CHECK_FALSE(is_reached(veiled));
}

TEST_CASE("a letter is read when waves move the image by no more than its stroke") {
  // 5 arcmin letters are 8.7266 mm high at 6 m (ISO 8596); at an rms slope of 1 arcmin the image wanders
  // by 2 to an eye at the paint, and by 2 d_s/(d_v + d_s) to one before it (closed form).
  const double arcmin = std::numbers::pi / 180 / 60;
  const double amplitude_um = 1e3 * std::sqrt(2) * arcmin / (2 * std::numbers::pi / 3.2);
  Target target;
  target.letter_mm = 10;
  target.distance_m = 6;
  const HeightField flat = waves(0, 3.2), wavy = waves(amplitude_um, 3.2);
  CHECK(only(target, wavy, flat).found == Approx(8.7266).epsilon(1e-4));
  CHECK(only(target, wavy, wavy).found ==
        Approx(4 / 3. * 8.7266).epsilon(1e-4));  // a third of the way before it
  CHECK(only(target, wavy, flat).is_met);
  CHECK_FALSE(only(target, wavy, wavy).is_met);
  target.eye_to_paint_m = 0;
  CHECK(only(target, wavy, wavy).found == Approx(2 * 8.7266).epsilon(1e-4));
}

TEST_CASE("a letter is missed behind a veil in which no letter is read, on the flattest surface") {
  Target target;
  target.letter_mm = 40;
  target.distance_m = 3;
  const HeightField flat = waves(0, 3.2);
  CHECK(is_reached(judge_target(target, flat, flat, 1, 1, 0.06)));
  const Reached veiled = judge_target(target, flat, flat, 1, 1, 0.04).front();
  CHECK_FALSE(veiled.found.has_value());
  CHECK_FALSE(veiled.is_met);
}

TEST_CASE("a target of several parts is reached when all of them are") {
  const HeightField start = waves(2, 3.2), now = waves(0.1, 3.2);
  Target target;
  target.rms_um = 0.2;
  target.preset = TargetPreset::full;
  CHECK_FALSE(is_reached(judge_target(target, start, now, 0.9)));
  CHECK(is_reached(judge_target(target, start, now, 1)));
  CHECK_THROWS_AS(judge_target(target, start, now, 1.1), InvalidInput);
}

TEST_CASE("full is not reached by a disc that rides over the waves, however much it touches") {
  // A foam-backed P5000 on a factory roof: all is touched, and .242 of .266 um stay (estimate).
  Target full;
  full.preset = TargetPreset::full;
  const HeightFigures scuffed{
      .start_rms_um = 0.266, .rms_um = 0.242, .band_rms_um = 0.242, .touched_share = 1};
  const std::vector<Reached> parts = judge_heights(full, scuffed);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].is_met);
  CHECK(parts[1].asks == "preset_rms");
  CHECK(parts[1].wanted == Approx(0.35 * 0.266));
  CHECK_FALSE(parts[1].is_met);
}

TEST_CASE("the least margin of a target's heights and touch has the sign of the judgement") {
  Target target;
  target.rms_um = 0.2;
  target.preset = TargetPreset::full;
  HeightFigures figures{.start_rms_um = 1, .rms_um = 0.5, .band_rms_um = 0.15, .touched_share = 0.999};
  CHECK(height_margin(target, figures) == Approx(-0.15));  // .5 um is left of 1, and .35 may
  figures.rms_um = 0.3;
  CHECK(height_margin(target, figures) == Approx(0.004));  // touched: .999 of .995
  figures.band_rms_um = 0.3;
  CHECK(height_margin(target, figures) == Approx(-0.1));
  CHECK_FALSE(is_reached(judge_heights(target, figures)));
  target = {};
  target.preset = TargetPreset::partial;
  figures.rms_um = 0.5;
  CHECK(height_margin(target, figures) == Approx(0));  // half of 1 um
  target = {};
  target.image_clarity_percent = 50;
  CHECK(height_margin(target, figures) == -HUGE_VAL);
}
