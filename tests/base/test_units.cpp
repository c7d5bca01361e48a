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
  CHECK(um_and_mil(5.9, 11.4) == "5.9 to 11.4 um (0.23 to 0.45 mil)");
  CHECK(um_and_mil(4.2, Symbols::unicode) == "4.2 \u00b5m (0.17 mil)");
}

TEST_CASE("units can be written in the signs of print") {
  CHECK(in_symbols("mm3/(N m)", Symbols::unicode) == "mm\u00b3/(N m)");
  CHECK(in_symbols("kPa/um", Symbols::unicode) == "kPa/\u00b5m");
  CHECK(in_symbols("m2", Symbols::ascii) == "m2");
}

TEST_CASE("what rounds to zero has no sign") {
  CHECK(to_text(-0.004, 2) == "0.00");
  CHECK(to_text(-0.006, 2) == "-0.01");
  CHECK(to_text(-0.2, 0) == "0");
}
