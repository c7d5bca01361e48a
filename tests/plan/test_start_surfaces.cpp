#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/start_surfaces.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

HeightField texture(double rms_um) {
  return synthesize({{.wavelength_mm = 3, .rms_um = rms_um, .bandwidth_octaves = .5}}, Grid{64, 64, 0.4}, 5);
}

CurvePlan plan_of(const HeightField& start) {
  CurvePlan plan;
  plan.step.abrasive = shipped_catalogue().abrasives.at("P2500 film");
  plan.step.motion = shipped_catalogue().motions.at("150 mm light");
  plan.step.passes = 1;
  plan.contact = {at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4), 1.4,
                  std::nullopt};
  plan.starts = {start};
  plan.stiffness_factors = {1};
  plan.most_removal_um = 8;
  plan.bands_mm = {{0, HUGE_VAL}};
  return plan;
}

}  // namespace

TEST_CASE("between points values go straight, beyond them they stay") {
  // Arithmetic on a straight line.
  const std::vector<double> x{1, 2, 4}, y{10, 20, 0};
  CHECK(between(x, y, 0) == 10);
  CHECK(between(x, y, 1.5) == Approx(15));
  CHECK(between(x, y, 3) == Approx(10));
  CHECK(between(x, y, 9) == 0);
}

TEST_CASE("the ideal cut of a start is the plane cut's, and in proportion to its height") {
  // Closed form, docs/physics.md (70): the least removal by which a plane leaves half of the rms height.
  const HeightField field = texture(.8), half = texture(.4);
  const StartSurfaces starts({half, field});
  CHECK(starts.ideal_removal_um(.8, .5) == Approx(IdealCut(field).removal_um(.4)).epsilon(1e-9));
  CHECK(starts.ideal_removal_um(.4, .5) == Approx(starts.ideal_removal_um(.8, .5) / 2).epsilon(1e-6));
  CHECK(starts.ideal_removal_um(.8, 1) == Approx(0).margin(1e-9));
}

TEST_CASE("the next step's starts span what the worlds leave") {
  // The worlds' ends are made by hand, 0.2 to 0.497 um; that a start is chosen every 0.35 of ln(rms) is our
  // rule (estimate), and the ends of the span are met within the nodes' tolerance, 1 % of the start's 0.8 um.
  const CurvePlan plan = plan_of(texture(.8));
  const StepCurves curves = solve_curves({plan}).curves.front();
  StepEnds ends;
  for (int i = 0; i < 100; ++i) {
    ends.start_rms_um.push_back(.8);
    ends.end_rms_um.push_back(.2 + .003 * i);
  }
  int solves = 0;
  std::vector<double> told;
  const Progress progress = [&](double share) { told.push_back(share); };
  const StartSurfaces starts = next_starts(plan, curves, ends, solves, progress);
  CHECK(told.size() > 4);  // more than once a surface
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.back() == 1);
  CHECK(solves == 1);                    // all from one start, on one run
  REQUIRE(starts.rms_um().size() == 4);  // .35 apart in ln(rms) over ln(.497/.2)
  CHECK(starts.rms_um().front() == Approx(.2).margin(.01));
  CHECK(starts.rms_um().back() == Approx(.497).margin(.01));
  ends.end_rms_um.assign(100, .3);
  CHECK(next_starts(plan, curves, ends, solves).rms_um().size() == 1);
  ends.end_rms_um.assign(100, 0);  // flat in every world
  CHECK(next_starts(plan, curves, ends, solves).surfaces().front() == plan.starts.front());
}
