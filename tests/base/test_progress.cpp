#include "catch.hpp"
#include "libtexture/base/progress.hpp"

using namespace libtexture;
using Catch::Approx;

TEST_CASE("progress of a part of the work runs from one share of the whole to another") {
  std::vector<double> told;
  const Progress whole = [&](double share) { told.push_back(share); };
  const Progress part = part_of(whole, 0.2, 0.6);
  part(0);
  part(0.5);
  part(1);
  CHECK(told[0] == Approx(0.2));
  CHECK(told[1] == Approx(0.4));
  CHECK(told[2] == Approx(0.6));
  CHECK_FALSE(part_of({}, 0, 1));
}

TEST_CASE("parts one after the other meet, and the last ends at 1 to the bit") {
  for (const std::size_t count : {1, 3, 7, 49}) {  // 49 x (1/49) is not 1 in doubles
    std::vector<double> told;
    const Progress whole = [&](double share) { told.push_back(share); };
    for (std::size_t i = 0; i < count; ++i)
      for (const double share : {0., 1.}) nth_part(part_of(whole, 0.1, 1), i, count)(share);
    for (std::size_t i = 1; i < count; ++i) CHECK(told[2 * i] == told[2 * i - 1]);
    CHECK(told.back() == 1);
  }
  CHECK_FALSE(nth_part({}, 0, 2));
}
