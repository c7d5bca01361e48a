#include "catch.hpp"
#include "libtexture/base/chance.hpp"
#include "libtexture/base/error.hpp"

using namespace libtexture;

TEST_CASE("a chance is counted in whole cases, of 1000 where it is small") {
  CHECK(chance_text(0.37, 4000) == "37 of 100 cases");
  CHECK(chance_text(0.1, 4000) == "10 of 100 cases");
  CHECK(chance_text(0.0042, 4000) == "4 of 1000 cases");
}

TEST_CASE("never and always are said only of what never or always happened") {
  CHECK(chance_text(0, 4000) == "none of 4000 cases");
  CHECK(chance_text(0.0003, 4000) == "under 1 of 1000 cases");
  CHECK(chance_text(0.998, 4000) == "over 99 of 100 cases");
  CHECK(chance_text(1, 4000) == "all cases");
}

TEST_CASE("a chance is judged as it is printed") {
  for (const double probability : {0.0, 0.00449, 0.00451, 0.0996, 0.1049, 0.4949, 0.4951, 0.7, 1.0}) {
    INFO(probability);
    CHECK(chance_text(as_counted(probability), 4000).substr(0, 3) ==
          chance_text(probability, 4000).substr(0, 3));
  }
  // 14 of 4000 worlds short of a half print as "50 of 100", and so does a half.
  CHECK(as_counted(0.4965) == as_counted(0.5));
  CHECK_THROWS_AS(as_counted(1.1), InvalidInput);
}
