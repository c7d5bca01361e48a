#include <cmath>
#include <limits>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/backing.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

Skin film_of(double thickness_um) {
  Skin skin;
  skin.modulus_gpa = 4.5;  // PET film, data sheet value by ISO 527, from memory
  skin.thickness_um = thickness_um;
  skin.poisson = 0.38;
  return skin;
}

Layer foam() {
  Layer layer;
  layer.modulus_mpa = 0.2;
  layer.thickness_mm = 10;
  layer.poisson = 0.1;
  layer.plateau_kpa = 10;
  return layer;
}

Backing pad_of(const Layer& layer) {
  Backing backing;
  backing.layers = {layer};
  return backing;
}

}  // namespace

TEST_CASE("springs have one stiffness for all waves") {
  const Backing springs = Backing::on_springs(0.03);
  for (const double wavelength_mm : {0.5, 2.0, 50.0})  // closed form (Winkler)
    CHECK(stiffness_kpa_per_um(springs, wavelength_mm) == Catch::Approx(0.03).epsilon(1e-14));
  CHECK(stiffness_pa_per_m(springs, 0) == Catch::Approx(0.03e9).epsilon(1e-14));
}

TEST_CASE("a half-space has E* q/2, and nothing against uniform approach") {
  // K. L. Johnson, Contact Mechanics (1985), ch. 13
  const Backing half_space = Backing::on_half_space(1.0, 0.3);
  CHECK(stiffness_pa_per_m(half_space, 2000) == Catch::Approx(1e6 / (1 - 0.09) * 1000).epsilon(1e-14));
  CHECK(stiffness_pa_per_m(half_space, 0) == 0);
}

TEST_CASE("a rigid backing is infinitely stiff, with or without a skin") {
  Backing rigid = Backing::rigid();
  CHECK(stiffness_kpa_per_um(rigid, 1) == std::numeric_limits<double>::infinity());
  rigid.skin = film_of(75);
  CHECK(stiffness_pa_per_m(rigid, 0) == std::numeric_limits<double>::infinity());
}

TEST_CASE("a skin on springs adds the plate and the membrane") {
  struct Row {
    double thickness_um, rigidity_n_m;
  };
  // Kirchhoff plate, closed form for PET film of 4.5 GPa, nu .38; three digits given
  for (const Row& row : {Row{25, 6.85e-6}, Row{50, 5.48e-5}, Row{75, 1.85e-4}, Row{125, 8.56e-4}}) {
    Backing backing = Backing::on_springs(1e-12);  // 1 mPa/um: nothing beside the plate
    backing.skin = film_of(row.thickness_um);
    const double q = 2000;
    CHECK(stiffness_pa_per_m(backing, q) == Catch::Approx(row.rigidity_n_m * std::pow(q, 4)).epsilon(3e-3));
    const double plate = stiffness_pa_per_m(backing, q);
    backing.skin->coats_factor = 1.5;
    CHECK(stiffness_pa_per_m(backing, q) == Catch::Approx(1.5 * plate).epsilon(1e-9));
    backing.skin->coats_factor = 1;
    backing.skin->tension_n_per_m = 40;  // membrane: T q^2
    CHECK(stiffness_pa_per_m(backing, q) - plate == Catch::Approx(40 * q * q).epsilon(1e-9));
  }
}

TEST_CASE("a skin glued on a half-space holds it sideways as on a very thick layer") {
  Backing half_space = Backing::on_half_space(0.2, 0.1);
  Layer thick = foam();
  thick.thickness_mm = 1000;
  Backing layer = pad_of(thick);
  for (const double q : {100.0, 1000.0})  // q t >= 100: exp(-2 q t) is below rounding
    CHECK(stiffness_pa_per_m(layer, q) == Catch::Approx(stiffness_pa_per_m(half_space, q)).epsilon(1e-12));
  const double bare = stiffness_pa_per_m(half_space, 100);
  half_space.skin = film_of(1e-3);  // too thin to bend
  layer.skin = half_space.skin;
  // closed form: 4 mu (1-nu)/(3-4nu) over E*/2 is 4 (1-nu)^2/(3-4nu), here nu = .1
  CHECK(stiffness_pa_per_m(half_space, 100) / bare == Catch::Approx(4 * 0.81 / 2.6).epsilon(1e-6));
  CHECK(stiffness_pa_per_m(layer, 100) == Catch::Approx(stiffness_pa_per_m(half_space, 100)).epsilon(1e-12));
}

TEST_CASE("a backing against uniform approach adds its layers' thickness over confined modulus") {
  Backing pad = pad_of(foam());
  pad.layers.push_back(foam());
  const double confined = 0.2e6 * 0.9 / (1.1 * 0.8);  // closed form
  CHECK(stiffness_pa_per_m(pad, 0) == Catch::Approx(confined / 20e-3).epsilon(1e-12));
}

TEST_CASE("foam softens towards its plateau: texture feels the slope of its curve") {
  const Backing pad = pad_of(foam());
  const Backing working = at_working_pressure(pad, 4);
  CHECK(working.layers[0].modulus_mpa == Catch::Approx(0.2 * 0.6));  // closed form: E (1 - p/plateau)
  CHECK_FALSE(working.layers[0].plateau_kpa.has_value());
  CHECK(stiffness_kpa_per_um(working, 5) == Catch::Approx(0.6 * stiffness_kpa_per_um(pad, 5)).epsilon(1e-12));
  Layer linear = foam();
  linear.plateau_kpa.reset();
  CHECK(at_working_pressure(pad_of(linear), 40) == pad_of(linear));
}

TEST_CASE("foam near its plateau is refused: it collapses") {
  CHECK_NOTHROW(at_working_pressure(pad_of(foam()), 8.999));
  CHECK_THROWS_WITH(
      at_working_pressure(pad_of(foam()), 9),
      "Backing: pressure_kpa must be < 9, .9 of the plateau of the 0.2 MPa layer: the layer collapses; "
      "densification is not modelled (got 9 kPa)");
  CHECK_THROWS_AS(mean_approach_um(pad_of(foam()), 9), InvalidInput);
}

TEST_CASE("the mean approach has the slope that the working stiffness says") {
  // Closed form: (10) is the slope of (9), docs/physics.md.
  Backing pad = pad_of(foam());
  pad.layers.push_back(foam());
  pad.layers.back().plateau_kpa.reset();
  CHECK(mean_approach_um(pad, 0) == 0);
  for (const double p : {0.5, 2.0, 6.0}) {
    const double step = 1e-3;  // central difference: relative error of order (step/(plateau - p))^2 = 6e-8
    const double slope = (mean_approach_um(pad, p + step) - mean_approach_um(pad, p - step)) / (2 * step);
    CHECK(slope == Catch::Approx(1e9 / stiffness_pa_per_m(at_working_pressure(pad, p), 0)).epsilon(1e-6));
  }
}

TEST_CASE(
    "the mean approach of springs is pressure over stiffness, of a rigid backing nothing, of a half-space "
    "unbounded") {
  CHECK(mean_approach_um(Backing::on_springs(0.03), 1.5) == Catch::Approx(50).epsilon(1e-12));  // closed form
  CHECK(mean_approach_um(Backing::rigid(), 1.5) == 0);
  CHECK_THROWS_WITH(mean_approach_um(Backing::on_half_space(1, 0), 1.5),
                    "Backing: support must have a finite mean approach (got half_space)");
}

TEST_CASE("a backing names what is wrong with it") {
  CHECK_THROWS_WITH(Backing{}.validate(), "Backing: layers must hold at least one layer (got none)");
  CHECK_THROWS_WITH(Backing::on_springs(0),
                    "Backing: spring_stiffness_kpa_per_um must be > 0 (got 0 kPa/um)");
  CHECK_THROWS_WITH(Backing::on_half_space(1, 0.5),
                    "Backing: half_space_poisson must be 0 to < 0.5 (got 0.5)");
  CHECK_THROWS_WITH(Backing::on_half_space(-1, 0.3),
                    "Backing: half_space_modulus_mpa must be > 0 (got -1 MPa)");
  Backing backing = pad_of(foam());
  backing.spring_stiffness_kpa_per_um = 1;
  CHECK_THROWS_WITH(
      backing.validate(),
      "Backing: spring_stiffness_kpa_per_um must be left out unless support is springs (got 1 kPa/um)");
  backing = Backing::rigid();
  backing.layers = {foam()};
  CHECK_THROWS_WITH(backing.validate(),
                    "Backing: layers must be left out unless support is layers (got 1 layers)");
  backing = pad_of(foam());
  backing.layers[0].thickness_mm = 0;
  CHECK_THROWS_WITH(stiffness_pa_per_m(backing, 1), "Layer: thickness_mm must be > 0 (got 0 mm)");
  backing = pad_of(foam());
  backing.skin = film_of(75);
  backing.skin->coats_factor = 0.5;
  CHECK_THROWS_WITH(backing.validate(), "Skin: coats_factor must be between 1 and 100 (got 0.5)");
  CHECK_THROWS_AS(stiffness_kpa_per_um(pad_of(foam()), 0), InvalidInput);
}

TEST_CASE("the stiffness factor multiplies the stiffness to every wave and divides the approach") {
  for (Backing backing : {pad_of(foam()), Backing::on_springs(0.03)}) {
    if (backing.support == Support::layers) backing.skin = film_of(75);
    Backing twice = backing;
    twice.stiffness_factor = 2;
    for (const double q : {0.0, 100.0, 3000.0})
      CHECK(stiffness_pa_per_m(twice, q) == Catch::Approx(2 * stiffness_pa_per_m(backing, q)).epsilon(1e-14));
    CHECK(mean_approach_um(twice, 4) == Catch::Approx(mean_approach_um(backing, 4) / 2).epsilon(1e-14));
    CHECK(at_working_pressure(twice, 4).stiffness_factor == 2);
  }
  Backing backing = pad_of(foam());
  backing.stiffness_factor = 0;
  CHECK_THROWS_WITH(backing.validate(), "Backing: stiffness_factor must be > 0 (got 0)");
  backing.stiffness_factor = 1;
  backing.stiffness_log_sd = -1;
  CHECK_THROWS_WITH(backing.validate(), "Backing: stiffness_log_sd must be between 0 and 5 (got -1)");
}
