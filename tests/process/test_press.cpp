#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/process/press.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

TEST_CASE(
    "a wave under a quarter of its full-contact pressure touches a third of a half-space, as Westergaard has "
    "it") {
  // Westergaard (1939; Johnson, Contact Mechanics 1985, sec. 13.2, published): p* = pi E* A/wavelength.
  const double wavelength_mm = 25.6, amplitude_um = 1, modulus_mpa = 1;
  Array2d height(1, 256);
  for (int j = 0; j < 256; ++j)
    height(0, j) = amplitude_um * std::cos(2 * std::numbers::pi * (j + 0.5) / 256);
  const double full_kpa = std::numbers::pi * modulus_mpa * amplitude_um / wavelength_mm;  // MPa um/mm = kPa
  const Pressed pressed =
      press(HeightField(height, 0.1), Backing::on_half_space(modulus_mpa, 0), full_kpa / 4);
  CHECK(std::abs(pressed.contact_share - 1.0 / 3) <= 2.0 / 256);  // the grid knows no less
  CHECK(pressed.pressure_kpa.maxCoeff() ==
        Catch::Approx(full_kpa).epsilon(2e-3));  // checks 1e-3 at N=256; peak lies between pixels
  CHECK(pressed.pressure_kpa.mean() == Catch::Approx(full_kpa / 4).epsilon(1e-12));
  CHECK(pressed.mean_gap_um == Catch::Approx(2 * amplitude_um * 0.201713).epsilon(1e-2));
}

TEST_CASE("a flat surface is pressed evenly all over, on any grid") {
  for (const Grid& grid : {Grid{63, 61, .1}, Grid{64, 64, .1}, Grid{1, 37, .1}})
    for (const double height_um : {0.0, 7.0}) {
      const HeightField flat(Array2d::Constant(grid.rows, grid.cols, height_um), grid.pixel_mm);
      const Pressed pressed = press(flat, Backing::on_half_space(1, 0), 3);
      CHECK((pressed.pressure_kpa - 3).abs().maxCoeff() < 1e-12);  // rounding
      CHECK(pressed.contact_share == 1);
    }
}

TEST_CASE("a rigid face cannot be pressed, and a pressure must be given") {
  const HeightField field = synthesize({{.wavelength_mm = 2, .rms_um = 1}}, Grid{32, 32, 0.2}, 1);
  CHECK_THROWS_WITH(press(field, Backing::rigid(), 1),
                    "press: backing must not be rigid: it touches in a point (got rigid)");
  CHECK_THROWS_WITH(press(field, Backing::on_springs(0.03), 0),
                    "press: pressure_kpa must be > 0 (got 0 kPa)");
}
