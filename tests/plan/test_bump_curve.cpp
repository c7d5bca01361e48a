// A bump that is cut down, against closed forms and what the trade knows.
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/process/disc_contact.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

Step step_on(const Backing& backing, const std::string& abrasive = "P2000 film") {
  Step step;
  step.abrasive = shipped_catalogue().abrasives.at(abrasive);
  step.wetness = step.abrasive.made_for.front();
  step.backing = backing;
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.passes = 10;
  return step;
}

Step film() {
  return step_on(shipped_catalogue().backings.at("film on firm interface"));
}

}  // namespace

TEST_CASE("on springs a nib is cut down as exp(-k R/p), however far it stands out") {
  // Springs do not feel their neighbours: dz/dR = -k z/p about a mark whose own load does not tell (closed
  // form).
  const double k_kpa_per_um = 0.4;
  const Step step = step_on(Backing::on_springs(k_kpa_per_um));
  const double p_kpa = pressure_kpa(step.motion);
  for (const double height_um : {2.0, 40.0}) {
    const BumpCurve curve({.defect = {.height_um = height_um, .width_mm = 0.5}, .step = step, .most_um = 20});
    for (const double removed_um : {1.0, 3.0, 8.0})
      CHECK(curve.left_um(height_um, 1, removed_um) / height_um ==
            Approx(std::exp(-k_kpa_per_um * removed_um / p_kpa)).margin(0.02));
  }
}

TEST_CASE("a run lower than the backing gives under the disc fades by the decay of its waves, added up") {
  // Full contact: each wave decays by exp(-R/(p/S + delta)), docs/physics.md (19c). At the middle of a round
  // Gaussian of standard deviation s the waves are spread as s^2 q exp(-s^2 q^2/2) dq (Hankel transform).
  const Step step = film();
  const Defect run{.height_um = 0.8, .width_mm = 4, .level_within_um = 0.1};
  const BumpCurve curve({.defect = run, .step = step, .most_um = 20});
  const DiscContact contact = disc_contact(step, Grid{128, 128, 0.8}, std::nullopt);
  REQUIRE(!contact.footprint_mm);
  const double s = 4e-3 / std::sqrt(8 * std::log(2.0));
  const double delta_um = grain_height_um(step, contact.pressure_kpa);
  for (const double removed_um : {0.5, 2.0, 6.0, 15.0}) {
    const auto wave = [&](double q) {
      const double give_um = contact.pressure_kpa * 1e3 / stiffness_pa_per_m(contact.backing, q) * 1e6;
      return s * s * q * std::exp(-s * s * q * q / 2) * std::exp(-removed_um / (give_um + delta_um));
    };
    const double share = boost::math::quadrature::gauss_kronrod<double, 61>::integrate(wave, 1e-6, 10 / s);
    CHECK(curve.left_um(0.8, 1, removed_um) / 0.8 == Approx(share).margin(0.02));
  }
}

TEST_CASE("a rigid face cuts a mark off before it touches the paint about it") {
  const Step step = step_on(Backing::rigid());
  const BumpCurve curve({.defect = {.height_um = 20, .width_mm = 0.5}, .step = step, .most_um = 10});
  CHECK(curve.left_um(20, 1, 0) == 20);
  CHECK(*curve.removal_to_um(0.5) < 0.01);
}

TEST_CASE("height and stiffness count together, so that what is read between nodes is what is solved there") {
  const Defect nib{.height_um = 20, .width_mm = 0.5};
  const BumpCurve nodes({.defect = nib, .step = film(), .factors = {0.5, 0.8, 1.25, 2}, .most_um = 20});
  Defect higher = nib;
  higher.height_um = 30;
  const BumpCurve direct({.defect = higher, .step = film(), .most_um = 20});
  for (const double removed_um : {0.1, 0.5, 2.0, 4.0})
    CHECK(nodes.left_um(30, 1, removed_um) ==
          Approx(direct.left_um(30, 1, removed_um)).epsilon(0.05).margin(0.05));
}

TEST_CASE("a nib goes for two micrometres on a film disc, a run costs more than a clear has") {
  // Common practice, no source: nibs are cut down with a film disc or a block before the panel is touched,
  // and runs are taken down with a hard block alone, as a pad follows them.
  const BumpCurve nib({.defect = {.height_um = 20, .width_mm = 0.5}, .step = film(), .most_um = 40});
  CHECK(*nib.removal_to_um(0.5) < 2);
  const Backing pad = shipped_catalogue().backings.at("foam-backed disc on pad");
  const BumpCurve soft({.defect = {.height_um = 20, .width_mm = 0.5},
                        .step = step_on(pad, "P3000 foam-backed"),
                        .most_um = 40});
  CHECK(soft.removal_to_um(0.5).value_or(40) > 5 * *nib.removal_to_um(0.5));
  const BumpCurve run(
      {.defect = {.height_um = 30, .width_mm = 10, .length_mm = 60}, .step = film(), .most_um = 40});
  CHECK(!run.removal_to_um(0.5));
}

TEST_CASE("what stands falls with the clear that goes, and a higher mark never costs less") {
  const BumpCurve curve(
      {.defect = {.height_um = 20, .width_mm = 0.5}, .step = film(), .factors = {0.5, 1, 2}, .most_um = 20});
  double last = 20;
  for (double removed_um = 0; removed_um < 20; removed_um += 0.25) {
    const double left_um = curve.left_um(20, 1, removed_um);
    CHECK(left_um <= last);
    CHECK(curve.left_um(25, 1, removed_um) >= left_um - 1e-9);
    last = left_um;
  }
  CHECK_THROWS_AS(BumpCurve({.defect = {.depth_um = 3}, .step = film(), .most_um = 20}), InvalidInput);
}

TEST_CASE(
    "a groove of half a millimetre is bridged, one for one; a wide one is followed and costs far more") {
  // Bridged: depth less removal (closed form), by film and by the catalogue's softest disc, while it is deep.
  const Step soft = step_on(shipped_catalogue().backings.at("foam-backed disc on pad"), "P3000 foam-backed");
  for (const Step& step : {film(), soft}) {
    const BumpCurve narrow({.defect = {.depth_um = 3, .width_mm = 0.5}, .step = step, .most_um = 20});
    for (const double removed_um : {0.5, 1.0, 1.5})
      CHECK(narrow.left_um(3, 1, removed_um) == Approx(3 - removed_um).margin(0.1));
  }
  const BumpCurve wide({.defect = {.depth_um = 3, .width_mm = 6}, .step = soft, .most_um = 20});
  CHECK(wide.left_um(3, 1, 3) > 2.5);
}
