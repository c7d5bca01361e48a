// A levelling curve against level(), which the closed forms of tests/physics/test_erosion.cpp check.
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

namespace {

const HeightField field =
    synthesize({{.wavelength_mm = 3, .rms_um = .8, .bandwidth_octaves = .5}}, Grid{64, 64, 0.4}, 5);

}  // namespace

TEST_CASE("a levelling curve reads as level() does, to the accuracy asked, in far fewer pairs") {
  const Backing backing = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  const std::vector<double> at{.4, 1, 2.2, 5};
  const Levelled levelled = level(field, backing, 1.4,
                                  {.removal_um = at.back(),
                                   .report_at_um = at,
                                   .amplitude_tolerance_um = 5e-3,
                                   .disc_diameter_mm = 20,
                                   .grain_um = .2});
  const double tolerance_um = rms_tolerance_um(field);
  CHECK(tolerance_um == Catch::Approx(.01 * field.rms_um()));
  LevellingCurve curve(field, backing, 1.4,
                       {.rms_tolerance_um = tolerance_um, .disc_diameter_mm = 20, .grain_um = .2});
  for (std::size_t k = 0; k < at.size(); ++k) {
    const CurvePoint point = curve.at(at[k]);
    CHECK(std::abs(point.surface.rms_um() - levelled.rms_um[k]) < tolerance_um);
    CHECK(std::abs(point.contact_share - levelled.contact_share[k]) < .05);
  }
  CHECK(3 * curve.transform_pairs() < levelled.transform_pairs);
}

TEST_CASE("a levelling curve on a rigid backing is the ideal cut") {
  const Backing rigid = Backing::rigid();
  const Levelled cut = level(field, rigid, 1.4, {.removal_um = 1});
  LevellingCurve curve(field, rigid, 1.4, {.rms_tolerance_um = .01});
  CHECK(curve.at(1).surface == cut.surface);
  CHECK_THROWS_AS(curve.at(0), InvalidInput);
  CHECK_THROWS_AS(LevellingCurve(field, rigid, 1.4, {}), InvalidInput);
}

TEST_CASE("on springs the last place is touched at valley depth less the working deflection, to 2 %") {
  // Closed form R4 (docs/physics.md, levelling): full contact at R = Sv - p/k. The curve reads it on between
  // its increments; 2 % of the valley depth is less than an eye tells from a wiped panel.
  for (const double k : {0.8, 1.0, 1.6, 3.0}) {
    LevellingCurve curve(field, Backing::on_springs(k), 1.4, {.rms_tolerance_um = rms_tolerance_um(field)});
    const double valley_um = field.valley_depth_um(), touched_um = valley_um - 1.4 / k;
    curve.at(0.01);
    CHECK_FALSE(curve.touched_at_um());  // not worn as far
    curve.at(1.5 * valley_um);
    REQUIRE(curve.touched_at_um());
    CHECK(*curve.touched_at_um() == Catch::Approx(touched_um).margin(0.02 * valley_um));
  }
  LevellingCurve soft(field, Backing::on_springs(0.1), 1.4, {.rms_tolerance_um = 0.01});
  soft.at(0.1);
  CHECK(*soft.touched_at_um() == 0);  // full contact from the start
}

TEST_CASE("where the share touched is asked for, the removal that touches nearly all is found to 2 %") {
  // Against level() with increments ten times as fine, whose own stories are in tests/stories.
  const HeightField peel =
      synthesize({{.wavelength_mm = 3, .rms_um = 0.8, .bandwidth_octaves = 1}}, Grid{96, 96, 0.4}, 5);
  const Backing backing = Backing::on_springs(1);
  const auto touched_after = [&](const HeightField& surface) {
    return (peel.height_um() - surface.height_um() > 0.05).cast<double>().mean();
  };
  LevellingCurve fine(peel, backing, 1.4, {.rms_tolerance_um = 1e-4, .is_shape_asked = true});
  LevellingCurve asked(peel, backing, 1.4,
                       {.rms_tolerance_um = rms_tolerance_um(peel), .is_shape_asked = true});
  const auto removal_to = [&](LevellingCurve& curve) {
    double removal_um = 0.1;
    while (touched_after(curve.at(removal_um).surface) < 0.99 && removal_um < 20) removal_um += 0.002;
    return removal_um;
  };
  const double truth_um = removal_to(fine);
  REQUIRE(truth_um < 20);
  // Looks come a pass apart, a third of this removal and more.
  CHECK(removal_to(asked) == Catch::Approx(truth_um).epsilon(0.02));
}
