#include <string>

#include "catch.hpp"
#include "folder.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/test_spot_file.hpp"

using namespace libtexture;

namespace {

TestSpot spot_of(std::string_view text) {
  const Folder folder;
  return read_test_spot(folder.file("spot.csv", text));
}

std::string error_of(std::string_view text) {
  try {
    spot_of(text);
  } catch (const InvalidInput& error) {
    const std::string what = error.what();
    return what.substr(what.find(".csv") + 4);
  }
  return "none";
}

}  // namespace

TEST_CASE("readings may stand side by side, with heads and words in capitals") {
  for (const char* text :
       {"# passes = 6\nBefore;After\n262,5;256\n260;254\n258;\n",
        "# passes = 6\nWhen\tTotal (um)\nBefore\t262,5\nBEFORE\t260\nbefore\t258\nAfter\t256\n"
        "after\t254\n"}) {
    const TestSpot spot = spot_of(text);
    CHECK(spot.before_um == std::vector<double>{262.5, 260, 258});
    CHECK(spot.after_um == std::vector<double>{256, 254});
  }
  CHECK(error_of("# passes = 6\nwhen,before\nbefore,262\n") ==
        ":2: columns before and after stand in place of when and total_um");
}

TEST_CASE("a rule of a test spot names the line") {
  CHECK(error_of("# step = a\n# passes = 0\nbefore,after\n262,256\n") ==
        ":2: TestSpot: passes must be between 1 and 1000 (got 0)");
  CHECK(error_of("# passes = 6\nwhen,total_um\nvorher,262\n") ==
        ":3: when must be before or after (got \"vorher\")");
}

TEST_CASE("readings in both units become a test spot") {
  const TestSpot spot = spot_of(
      "# passes = 6\n# step = level\n# area_m2 = "
      "0.09\nwhen,total_um,total_mil\nbefore,262,\nafter,,10\nbefore,260,\n");
  CHECK(spot.passes == 6);
  CHECK(spot.step == "level");
  CHECK(spot.area_m2 == 0.09);
  CHECK(spot.spot_cv == TestSpot().spot_cv);
  CHECK(spot.before_um == std::vector<double>{262, 260});
  REQUIRE(spot.after_um.size() == 1);
  CHECK(spot.after_um[0] == Catch::Approx(254).epsilon(1e-15));  // 1 mil = 25.4 um, exact
}

TEST_CASE("a bad test spot file is refused by line") {
  const std::string head = "# passes = 6\nwhen,total_um\n";
  CHECK(error_of("when,total_um\nbefore,1\n") == ":1: a line \"# passes = ...\" must be given");
  CHECK(error_of("# passes = 1.5\nwhen,total_um\nbefore,1\n") ==
        ":1: passes must be a whole number (got 1.5)");
  CHECK(error_of(head + "later,260\n") == ":3: when must be before or after (got \"later\")");
  CHECK(error_of(head + "before,thick\n") == ":3: total_um must be a number (got \"thick\")");
  CHECK(error_of(head + "before,260\nafter,-1\n") == ":4: Reading: total_um must be > 0 (got -1 um)");
  CHECK(error_of(head + "before,260\n") ==
        ":2: TestSpot: after_um must hold at least one reading (got none)");
  CHECK_THROWS_AS(read_test_spot("no such file.csv"), FileMissing);
}
