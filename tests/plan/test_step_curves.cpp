// Curves between nodes, against closed forms on springs and against a run of its own.
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/step_curves.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

namespace {

CurvePlan plan_on(const Backing& backing, const std::vector<HeightField>& starts) {
  CurvePlan plan;
  plan.step.name = "level";
  plan.step.abrasive = shipped_catalogue().abrasives.at("P2500 film");
  plan.step.motion = shipped_catalogue().motions.at("150 mm light");
  plan.step.backing = backing;
  plan.step.passes = 1;
  plan.contact = {backing, 1.4, std::nullopt};
  plan.starts = starts;
  plan.stiffness_factors = {.5, std::sqrt(.5), 1, std::sqrt(2.), 2};
  plan.most_removal_um = 12;
  plan.bands_mm = {{0, HUGE_VAL}, {1, 8}};
  return plan;
}

StepCurves curves_of(const CurvePlan& plan) {
  return solve_curves({plan}).curves.front();
}

HeightField texture(double rms_um) {
  return synthesize({{.wavelength_mm = 3, .rms_um = rms_um, .bandwidth_octaves = .5}}, Grid{64, 64, 0.4}, 5);
}

}  // namespace

TEST_CASE("in full contact on springs every wave falls by exp(-k R/p), at and between nodes") {
  // Closed form, docs/physics.md (19). Heights of .01 um are in full contact with k = .5 kPa/um at 1.4 kPa.
  const HeightField field = texture(.01);
  const StepCurves curves = curves_of(plan_on(Backing::on_springs(.5), {field}));
  for (const double factor : {.5, .83, 1., 1.7})
    for (const double removed : {.01, .4, 2.3, 9.})
      // Curves are read by the logarithm, which is -c e^x over the nodes: cubics leave 0.0005 of it.
      CHECK(std::abs(curves.at(field.rms_um(), factor, removed).band_ratio[0] -
                     std::exp(-factor * .5 / 1.4 * removed)) < .002);
  CHECK(curves.at(field.rms_um(), 1, 2).contact_share == Catch::Approx(1).epsilon(1e-12));
  CHECK(curves.at(field.rms_um(), 1, 2).valley_ratio == Catch::Approx(std::exp(-.5 / 1.4 * 2)).epsilon(.01));
}

TEST_CASE("between nodes a step does what a run of its own does") {
  // Against level() itself, which the closed forms of tests/physics/test_erosion.cpp check.
  const Backing backing = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  const HeightField low = texture(.5), high = texture(.8), between = texture(.65);
  const StepCurves curves = curves_of(plan_on(backing, {low, high}));
  const double factor = 1.2;
  const HeightField scaled(between.height_um() * factor, between.pixel_mm());
  const std::vector<double> at{1.7, 3.1, 5.3};
  std::vector<double> removals;
  for (const double removed : at) removals.push_back(factor * removed);
  const Levelled levelled =
      level(scaled, backing, 1.4, {.removal_um = removals.back(), .report_at_um = removals});
  for (std::size_t k = 0; k < at.size(); ++k) {
    const StepPoint point = curves.at(between.rms_um(), factor, at[k]);
    // The nodes' own tolerance is 1 % of the start's rms; lines between starts of .5 and .8 um add as much.
    CHECK(std::abs(point.band_ratio[0] - levelled.rms_um[k] / scaled.rms_um()) < .02);
    CHECK(std::abs(point.valley_ratio - levelled.valley_depth_um[k] / scaled.valley_depth_um()) < .04);
    CHECK(std::abs(point.contact_share - levelled.contact_share[k]) < .05);
  }
}

TEST_CASE("removal quantiles have the mean that was removed, and the texture at 0 is the start") {
  const HeightField field = texture(.8);
  const StepCurves curves = curves_of(
      plan_on(at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4), {field}));
  for (const double removed : {.5, 2., 7.}) {
    const StepPoint point = curves.at(field.rms_um(), 1, removed);
    CHECK(point.removal_quantile_um.mean() ==
          Catch::Approx(removed).epsilon(.02));  // 32 levels of 4096 pixels
    CHECK(point.removal_quantile_um.minCoeff() >= 0);
  }
  const StepPoint start = curves.at(field.rms_um(), 1, 0);
  CHECK(start.band_ratio[0] == 1);
  CHECK(start.touched_share == 0);
  // Beyond the nodes the texture stays as at the last; removal goes on.
  CHECK(curves.at(field.rms_um(), 1, 500).removal_quantile_um.mean() == Catch::Approx(500).epsilon(1e-3));
}

TEST_CASE("the removal that reaches an rms height is found on the curve, and the surface there has it") {
  // Against level() itself; the nodes' own tolerance is 1 % of the start's 0.8 um.
  const Backing backing = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  const HeightField field = texture(.8);
  const CurvePlan plan = plan_on(backing, {field});
  const StepCurves curves = curves_of(plan);
  const double removed = curves.removal_to_um(field.rms_um(), .3);
  CHECK(std::abs(surfaces_after(plan, field, {removed}).front().rms_um() - .3) < .01);
  CHECK(surfaces_after(plan, field, {0}).front().rms_um() == field.rms_um());
  CHECK_THROWS_AS(curves_of(plan_on(backing, {})), InvalidInput);
}

TEST_CASE(
    "plans on the same contact, grains and starts share all nodes, and read the same bytes as by "
    "themselves") {
  // The clear removed is the clock (docs/physics.md, how fast R runs): the wear rate moves nothing, and a
  // softer clear with its deeper grooves only what counts as touched.
  const Backing backing = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  const HeightField field = texture(.8);
  CurvePlan coarse = plan_on(backing, {field}), hard = coarse, short_one = coarse, other = coarse,
            fine = coarse;
  hard.step.abrasive.wear_rate_mm3_per_n_m *= 2;
  hard.hardness_mpa = 600;
  short_one.most_removal_um = 2.5;
  other.contact.pressure_kpa = 1.5;
  fine.step.abrasive = shipped_catalogue().abrasives.at("P3000 film");
  const std::vector<CurvePlan> plans{coarse, hard, short_one, other, fine};
  const SolvedCurves solved = solve_curves(plans);
  CHECK(solved.solves ==
        15);  // five factors, shared by three of them; five of another pressure, five of a finer grain
  for (std::size_t i = 0; i < plans.size(); ++i) {
    const StepCurves alone = curves_of(plans[i]);
    CHECK(alone.most_removal_um() == solved.curves[i].most_removal_um());
    for (const double removed : {.3, 1.1, 2.4, 8.}) {
      const StepPoint a = alone.at(.8, 1.1, removed), b = solved.curves[i].at(.8, 1.1, removed);
      CHECK(a.band_ratio[0] == b.band_ratio[0]);
      CHECK(a.touched_share == b.touched_share);
      CHECK(a.contact_share == b.contact_share);
      CHECK((a.removal_quantile_um == b.removal_quantile_um).all());
    }
  }
  // Shallower grooves count a shallower cut as touched.
  CHECK(solved.curves[1].at(.8, 1, 1).touched_share > solved.curves[0].at(.8, 1, 1).touched_share);
  CHECK(solved.curves[1].at(.8, 1, 1).band_ratio[0] == solved.curves[0].at(.8, 1, 1).band_ratio[0]);
  // Finer grains give less, and leave less texture for the same clear.
  CHECK(solved.curves[4].at(.8, 1, 1).band_ratio[0] < solved.curves[0].at(.8, 1, 1).band_ratio[0]);
}

TEST_CASE("an rms height that is never reached costs no more clear than what comes within 1 % of the least") {
  const Backing backing = at_working_pressure(shipped_catalogue().backings.at("film on firm interface"), 1.4);
  CurvePlan plan = plan_on(backing, {texture(.8)});
  plan.stiffness_factors = {1};
  plan.most_removal_um = 400;  // far beyond flat
  const StepCurves curves = curves_of(plan);
  const double rms = plan.starts[0].rms_um(), far = curves.removal_to_um(rms, 0);
  CHECK(far < curves.most_removal_um());
  CHECK(rms * curves.at(rms, 1, far).band_ratio[0] <=
        1.02 * rms * curves.at(rms, 1, curves.most_removal_um()).band_ratio[0] + 1e-6);
  CHECK(surfaces_after(plan, plan.starts[0], {far}).front().rms_um() < .02 * rms);
}
