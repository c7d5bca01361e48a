#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/spot_curves.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/surface/texture.hpp"
#include "machine.hpp"

using namespace libtexture;

namespace {

Step step_on(const Backing& backing) {
  Step step;
  step.abrasive.name = "film";
  step.abrasive.wear_rate_mm3_per_n_m = 0.1;
  step.abrasive.worn_wear_rate_mm3_per_n_m = 0.03;
  step.abrasive.loading_um = 150;
  step.backing = backing;
  step.motion = machine::orbital_150_mm();
  step.passes = 8;
  return step;
}

Backing film_on_foam() {
  Backing backing;
  backing.skin = Skin{.modulus_gpa = 4.5, .thickness_um = 75, .poisson = 0.38};
  backing.layers = {Layer{.modulus_mpa = 0.2, .thickness_mm = 10, .poisson = 0.1, .plateau_kpa = 10}};
  return backing;
}

HeightField texture() {
  return synthesize({{.wavelength_mm = 3, .rms_um = 0.7}}, {48, 48, 0.4}, 6);
}

constexpr double patch_m2 = 48 * 0.4e-3 * 48 * 0.4e-3;

/// Levelled at another scale and stiffness by brute force, to these removals, with grains of a height [um].
Levelled by_force(const Step& step, double scale, double stiffness, double grain_um,
                  const std::vector<double>& at_um) {
  Backing backing = at_working_pressure(step.backing, pressure_kpa(step.motion));
  backing.stiffness_factor = stiffness;
  const HeightField field(scale * texture().height_um(), texture().pixel_mm());
  return level(field, backing, pressure_kpa(step.motion),
               {.removal_um = at_um.back(),
                .report_at_um = at_um,
                .amplitude_tolerance_um = 1e-3,
                .grain_um = grain_um});
}

/// The last of these removals at which a glossy valley is left.
double gloss_left_at_um(const Levelled& levelled, double scale, const std::vector<double>& at_um) {
  const Array2d start_um = scale * texture().height_um();
  double left_at_um = 0;
  for (std::size_t i = 0; i < at_um.size(); ++i)
    if ((start_um - levelled.surfaces[i].height_um()).minCoeff() <= 0) left_at_um = at_um[i];
  return left_at_um;
}

}  // namespace

TEST_CASE("on springs the last glossy valley goes at valley depth less the working deflection") {
  // R4 (docs/physics.md, levelling): full contact at R = Sv - p/k, exactly; to rounding.
  const double k = 2;  // kPa/um: a deflection of .7 um
  const Step step = step_on(Backing::on_springs(k));
  const SpotCurves curves = spot_curves(step, texture(), patch_m2, 1.5);
  const double valley_um = texture().valley_depth_um(), deflection_um = pressure_kpa(step.motion) / k;
  CHECK(curves.valley_um == valley_um);
  for (const double scale : {0.8, 1.0, 1.6})
    for (const double stiffness : {0.7, 1.0, 2.0})
      CHECK(curves.gloss_gone_at_um(scale, stiffness) ==
            Catch::Approx(std::max(0.0, scale * valley_um - deflection_um / stiffness)).epsilon(1e-12));
}

TEST_CASE("one family of curves tells every scale and stiffness: brute force agrees") {
  const Step step = step_on(film_on_foam());
  const SpotCurves curves = spot_curves(step, texture(), patch_m2, 1.5);
  const double grain_um = grain_height_um(step, pressure_kpa(step.motion));
  std::vector<double> at_um;
  for (int i = 1; i <= 60; ++i) at_um.push_back(0.06 * i);
  for (const auto& [scale, stiffness] : {std::pair(1.0, 1.0), std::pair(1.4, 0.8), std::pair(0.7, 2.2)}) {
    // The family scales the grains along with the texture.
    const Levelled levelled = by_force(step, scale, stiffness, scale * grain_um, at_um);
    for (std::size_t i = 0; i < at_um.size(); ++i)
      // Amplitudes to a hundredth, and straight lines between removals.
      CHECK(curves.rms_left_um(scale, stiffness, at_um[i]) ==
            Catch::Approx(levelled.rms_um[i]).margin(0.02).epsilon(0.02));
    // Between this removal and the next; curves know it to 2 % of the valley depth.
    const double gone_um = gloss_left_at_um(levelled, scale, at_um);
    CHECK(curves.gloss_gone_at_um(scale, stiffness) ==
          Catch::Approx(gone_um + 0.03).margin(0.03 + 0.02 * scale * texture().valley_depth_um()).epsilon(0));
    // Real grains keep their height whatever the texture's; what that moves is less than their height.
    const double true_gone_um =
        gloss_left_at_um(by_force(step, scale, stiffness, grain_um, at_um), scale, at_um);
    CHECK(std::abs(true_gone_um - gone_um) < grain_um);
  }
}

TEST_CASE("at their own removals, curves of a spot are a third as wrong as plans may be") {
  const Step step = step_on(film_on_foam());
  const SpotCurves curves = spot_curves(step, texture(), patch_m2, 1.5);
  const std::vector<double> at_um(curves.removal_um.begin() + 1, curves.removal_um.end());
  const Levelled levelled = by_force(step, 1, 1, grain_height_um(step, pressure_kpa(step.motion)), at_um);
  for (std::size_t k = 0; k < at_um.size(); ++k)
    CHECK(curves.rms_left_um(1, 1, at_um[k]) ==
          Catch::Approx(levelled.rms_um[k]).margin(rms_tolerance_um(texture()) / 3).epsilon(0));
}

TEST_CASE("a larger spot has deeper valleys, as much as the exceedances of a Gaussian surface say") {
  // Closed form: for waves of 2.5 mm (a ring so narrow that its slopes are those of one wavelength) 3.9 sigma
  // on 51 x 51 mm and 5.35 on 1.5 m2, to the figures they are stated in.
  const HeightField patch =
      synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .bandwidth_octaves = 0.2}}, {128, 128, 0.4}, 2);
  const Step step = step_on(Backing::on_springs(0.03));
  const double small = spot_curves(step, patch, 51e-3 * 51e-3, 0.1).valley_um;
  const double large = spot_curves(step, patch, 1.5, 0.1).valley_um;
  CHECK(large / small == Catch::Approx(5.35 / 3.9).epsilon(0.01));
}

TEST_CASE("curves refuse a flat surface and a rigid backing") {
  const HeightField flat(Array2d::Zero(8, 8), 0.4);
  CHECK_THROWS_AS(spot_curves(step_on(film_on_foam()), flat, 0.04, 1), InvalidInput);
  CHECK_THROWS_AS(spot_curves(step_on(Backing::rigid()), texture(), 0.04, 1), InvalidInput);
}
