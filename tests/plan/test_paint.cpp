#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/paint.hpp"

using namespace libtexture;

TEST_CASE(
    "a removal between two readings is as uncertain as sqrt 2 readings, and its scale by gain x removal") {
  // Closed form: R = before - after.
  Gauge gauge;
  gauge.uncertainty_um = 1.5;
  gauge.gain_percent = 0;
  CHECK(removal_uncertainty_um(gauge, 5) == Catch::Approx(1.5 * std::sqrt(2.0)).epsilon(1e-14));
  CHECK(removal_uncertainty_um(gauge, 5, 4, 4) == Catch::Approx(1.5 / std::sqrt(2.0)).epsilon(1e-14));
  CHECK(removal_uncertainty_um(gauge, 5, 1000000000, 1) == Catch::Approx(1.5).epsilon(1e-8));
  // A scale that is 3 % off puts 100 um off by 3 um, but a removal of 5 um by .15 um only.
  gauge.uncertainty_um = 0;
  gauge.gain_percent = 3;
  CHECK(removal_uncertainty_um(gauge, 5) == Catch::Approx(.15).epsilon(1e-14));
  CHECK_THROWS_WITH(removal_uncertainty_um(gauge, 5, 0, 1), "Gauge: readings before must be >= 1 (got 0)");
}

TEST_CASE("an uncertainty of the clear comes with the clear, and is smaller") {
  Paint paint;
  paint.clear_uncertainty_um = 5;
  CHECK_THROWS_WITH(paint.validate(), "Paint: clear_uncertainty_um must come with clear_um (got 5 um)");
  paint.clear_um = 4;
  CHECK_THROWS_WITH(paint.validate(), "Paint: clear_uncertainty_um must be less than clear_um (got 5 um)");
  paint.clear_um = 60;
  CHECK_NOTHROW(paint.validate());
  paint.clear_um = 6000;
  CHECK_THROWS_WITH(paint.validate(), "Paint: clear_um must be at most 5000 (got 6000 um)");
}

TEST_CASE("the index of the clear is that of a clear coat") {
  // Clear coats have 1.50 to 1.54 (from memory); water 1.33 and flint glass 1.7 are none.
  Paint paint;
  paint.refractive_index = 1.54;
  CHECK_NOTHROW(paint.validate());
  for (const double index : {1.33, 1.8}) {
    paint.refractive_index = index;
    CHECK_THROWS_AS(paint.validate(), InvalidInput);
  }
}
