#include "catch.hpp"
#include "libtexture/base/units.hpp"

using namespace libtexture;

TEST_CASE("a field's name tells its unit, the longest ending first") {
  CHECK(unit_of("force_n") == "N");
  CHECK(unit_of("feed_mm_per_s") == "mm/s");
  CHECK(unit_of("wear_rate_mm3_per_n_m") == "mm3/(N m)");
  CHECK(unit_of("passes").empty());
}

TEST_CASE("a length is said in micrometres and in mils of 25.4 um") {
  CHECK(um_and_mil(25.4) == "25.4 um (1.00 mil)");
  CHECK(um_and_mil(4.2) == "4.2 um (0.17 mil)");
}
