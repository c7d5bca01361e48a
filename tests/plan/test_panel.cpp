#include "catch.hpp"
#include "libtexture/plan/panel.hpp"

using namespace libtexture;

namespace {

Reading of_um(double value) {
  Reading reading;
  reading.total_um = value;
  return reading;
}

Reading of_mil(double value) {
  Reading reading;
  reading.total_mil = value;
  return reading;
}

}  // namespace

TEST_CASE("a panel that is read over filler alone says nothing of its clear") {
  Panel panel;
  panel.name = "sill";
  panel.area_m2 = 0.2;
  panel.readings = {{.total_um = 800, .over = ReadingOver::filler}};
  CHECK_FALSE(teaches(panel.readings.front()));
  CHECK_THROWS_WITH(
      panel.validate(),
      "Panel: readings must hold at least one reading that is not over filler (got filler alone)");
  panel.readings.push_back({.total_um = 120});
  CHECK_NOTHROW(panel.validate());
}

TEST_CASE("a reading in mil is the same film in micrometres") {
  CHECK(total_um(of_mil(10)) == Catch::Approx(254).epsilon(1e-15));  // 1 mil = 25.4 um, exact
  CHECK(total_um(of_um(254)) == 254);
}

TEST_CASE("a reading has one thickness, and a whole place or none") {
  Reading reading = of_um(120);
  reading.total_mil = 4.7;
  CHECK_THROWS_WITH(reading.validate(),
                    "Reading: total_um or total_mil must be given, exactly one of them (got both)");
  CHECK_THROWS_WITH(Reading().validate(),
                    "Reading: total_um or total_mil must be given, exactly one of them (got neither)");
  reading = of_um(120);
  reading.x_mm = 5;
  CHECK_THROWS_WITH(reading.validate(),
                    "Reading: x_mm and y_mm must be given both or neither (got x_mm alone)");
  reading.y_mm = 5;
  CHECK_NOTHROW(reading.validate());
}

TEST_CASE("a film of 10 m is refused in either unit") {
  CHECK_THROWS_WITH(of_um(1e7).validate(), "Reading: total_um must be at most 5000 (got 1e+07 um)");
  CHECK_THROWS_AS(of_mil(1e7 / 25.4).validate(), InvalidInput);
  CHECK_THROWS_WITH(of_um(-120).validate(), "Reading: total_um must be > 0 (got -120 um)");
}

TEST_CASE("a panel has an area and at least one reading") {
  Panel panel;
  panel.name = "door";
  panel.area_m2 = 0.9;
  CHECK_THROWS_WITH(panel.validate(), "Panel: readings must hold at least one reading (got none)");
  panel.readings = {of_um(120)};
  CHECK_NOTHROW(panel.validate());
  panel.area_m2 = 0;
  CHECK_THROWS_WITH(panel.validate(), "Panel: area_m2 must be > 0 (got 0 m2)");
  panel.area_m2 = 900;
  CHECK_THROWS_WITH(panel.validate(), "Panel: area_m2 must be between 0.0001 and 100 (got 900 m2)");
}
