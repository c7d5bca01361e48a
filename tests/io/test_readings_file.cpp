#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/readings_file.hpp"

using namespace libtexture;

namespace {

std::vector<Reading> readings_of(std::string_view text) {
  const Folder folder;
  return read_readings(folder.file("door.csv", text));
}

}  // namespace

TEST_CASE("readings come as a hand, a spreadsheet or a gauge writes them") {
  for (const std::string_view text :
       {"total_um\n262\n248.5\n", "No;Date;Thickness (\u00b5m)\n1;1.2.;262\n2;1.2.;248,5\n",
        "sep=;\r\nReading;Unit\r\n262;um\r\n248,5;um\r\n", "Total_um\tnote\n262\tleft\n\t\n248,5\tright\n"}) {
    INFO(text);
    const std::vector<Reading> readings = readings_of(text);
    REQUIRE(readings.size() == 2);
    CHECK(total_um(readings[0]) == 262);
    CHECK(total_um(readings[1]) == 248.5);
  }
}

TEST_CASE("readings keep their place, their unit, and what lies under them") {
  const std::vector<Reading> readings =
      readings_of("x_mm,y_mm,total_mil,over\n10,20,10.3,panel\n,,15.5,filler\n");
  CHECK(readings[0] == Reading{.x_mm = 10, .y_mm = 20, .total_mil = 10.3});
  CHECK(readings[1] == Reading{.total_mil = 15.5, .over = ReadingOver::filler});
}

TEST_CASE("a bad file of readings is refused by line") {
  CHECK_THROWS_WITH(readings_of("number,date\n1,2\n"),
                    Catch::Matchers::EndsWith(":1: a column total_um or total_mil must hold the readings"));
  CHECK_THROWS_WITH(
      readings_of("total_um\n262\n9.8\n"),
      Catch::Matchers::EndsWith(":3: Reading: total_um must be at least 15: is it mil or mm? (got 9.8 um)"));
  CHECK_THROWS_WITH(readings_of("value,unit\n262,nm\n"),
                    Catch::Matchers::EndsWith(":2: unit must be um or mil (got \"nm\")"));
  CHECK_THROWS_AS(read_readings("/nowhere/door.csv"), FileMissing);
}
