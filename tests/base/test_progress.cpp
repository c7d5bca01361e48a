#include <atomic>

#include "catch.hpp"
#include "libtexture/base/parallel.hpp"
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

TEST_CASE("parts on several threads tell their mean, which never falls") {
  double last = 0;
  std::atomic<int> inside{0};
  const Progress whole = [&](double share) {
    CHECK(++inside == 1);  // one at a time
    CHECK(share >= last);
    last = share;
    --inside;
  };
  JoinedProgress joined(whole, 8);
  parallel_for(8, 4, [&](int i) {
    const Progress part = joined.part(static_cast<std::size_t>(i));
    for (const double share : {0.0, 0.7, 0.3, 1.0}) part(share);
  });
  CHECK(last == Approx(1));
}

TEST_CASE("a report that throws stops every part") {
  struct Stopped {};
  const Progress whole = [](double) { throw Stopped(); };
  JoinedProgress joined(whole, 2);
  CHECK_THROWS_AS(joined.part(0)(0.5), Stopped);
  CHECK_THROWS_AS(joined.part(1)(0.1), Stopped);
}
