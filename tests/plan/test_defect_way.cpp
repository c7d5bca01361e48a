#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/plan/defect_way.hpp"

using namespace libtexture;
using Catch::Approx;

TEST_CASE("a groove hides where its flanks turn the mirrored image by less than sight resolves") {
  // Law of reflection: a facet tilted by s turns a ray by 2 s; of a path that lies all beyond the panel the
  // eye sees all of it. Normal sight resolves 1 arcmin (ISO 8596).
  const double arcmin = std::numbers::pi / 180 / 60;
  const Viewer at_the_paint{.viewer_m = 0, .scene_m = 2};
  const Defect etched{.depth_um = 2, .width_mm = 5};
  CHECK(*hidden_depth_um(etched, at_the_paint) == Approx(arcmin / 2 * 2500));
  const Viewer usual;  // a third of the path before the panel
  CHECK(*hidden_depth_um(etched, usual) == Approx(arcmin / 2 * 3 / 2 * 2500));
  CHECK(*hidden_depth_um({.depth_um = 2, .width_mm = 10}, usual) ==
        Approx(2 * *hidden_depth_um(etched, usual)));
}

TEST_CASE("nobody knows what rounding does to a line, to a groove of unknown width, or to a nib") {
  const Viewer usual;
  const double resolved = 1000 * std::tan(std::numbers::pi / 180 / 60);  // at 1 m
  CHECK(!hidden_depth_um({.depth_um = 3}, usual));
  CHECK(!hidden_depth_um({.depth_um = 3, .width_mm = 0.99 * resolved}, usual));
  CHECK(hidden_depth_um({.depth_um = 3, .width_mm = 1.01 * resolved}, usual));
  CHECK(!hidden_depth_um({.height_um = 30, .width_mm = 10}, usual));
}

TEST_CASE("the job's own way comes first, and rounding where it is known what it hides") {
  using Kind = DefectWayKind;
  const Viewer usual;
  CHECK(sampled_ways({.depth_um = 3}, usual) == std::vector{Kind::all_over});
  CHECK(sampled_ways({.depth_um = 3, .patch_mm = 200}, usual) == std::vector{Kind::patch, Kind::all_over});
  const Defect etched{.depth_um = 3, .width_mm = 5, .patch_mm = 200};
  CHECK(sampled_ways(etched, usual) == std::vector{Kind::patch, Kind::all_over, Kind::round});
  CHECK(!worked_as(Kind::all_over, etched).patch_mm);
  CHECK(worked_as(Kind::round, etched) == etched);
  CHECK(done_at_um(Kind::round, etched, usual) == hidden_depth_um(etched, usual));
  CHECK(done_at_um(Kind::patch, {.depth_um = 3}, usual) == 0);
  CHECK(done_at_um(Kind::patch, etched, usual) == 0.1);  // a disc follows it, so that it never quite goes
}
