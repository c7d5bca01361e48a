#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/tool/sheet.hpp"

using namespace libtexture;

TEST_CASE("a sheet bends and rests on the springs of its crown by the closed forms of a shallow shell") {
  // E t^3/(12 (1 - nu^2)) and E t/R^2 (closed form; Reissner's shallow spherical shell), by hand for steel of
  // 210 GPa and 0.3, aluminium of 70 GPa and 0.33; three digits given.
  CHECK(bending_stiffness_n_m({}) == Catch::Approx(6.60).epsilon(2e-3));
  CHECK(crown_springs_pa_per_m({4, {}}) == Catch::Approx(9.19e6).epsilon(2e-3));
  const Sheet aluminium{SheetMaterial::aluminium, 1.2};
  CHECK(bending_stiffness_n_m(aluminium) == Catch::Approx(11.3).epsilon(2e-3));
  CHECK(crown_springs_pa_per_m({5, aluminium}) == Catch::Approx(3.36e6).epsilon(2e-3));
}

TEST_CASE("a stronger crown makes the same sheet stiffer, a thinner sheet softer") {
  CHECK(crown_springs_pa_per_m({2, {}}) == Catch::Approx(4 * crown_springs_pa_per_m({4, {}})).epsilon(1e-12));
  const Sheet thin{SheetMaterial::steel, 0.35};
  CHECK(crown_springs_pa_per_m({4, thin}) ==
        Catch::Approx(crown_springs_pa_per_m({4, {}}) / 2).epsilon(1e-12));
  CHECK(bending_stiffness_n_m(thin) == Catch::Approx(bending_stiffness_n_m({}) / 8).epsilon(1e-12));
}

TEST_CASE("a sheet thinner than foil or thicker than a casting, or a crown without radius, is refused") {
  CHECK_THROWS_WITH((Sheet{SheetMaterial::steel, 0.02}.validate()),
                    "Sheet: thickness_mm must be between 0.1 and 100 (got 0.02 mm)");
  CHECK_THROWS_WITH((Crown{0, {}}.validate()), "Crown: radius_m must be > 0 (got 0 m)");
}
