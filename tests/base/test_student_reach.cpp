#include "catch.hpp"
#include "libtexture/base/student_reach.hpp"

using namespace libtexture;

TEST_CASE("Student's t says how many standard deviations hold 95 %") {
  // Any printed table of Student's t (from memory): 12.706, 2.228, 1.960.
  CHECK(student_reach(1) == Catch::Approx(12.706).margin(5e-4).epsilon(0));
  CHECK(student_reach(10) == Catch::Approx(2.228).margin(5e-4).epsilon(0));
  CHECK(student_reach(1000000) == Catch::Approx(1.960).margin(5e-4).epsilon(0));
}
