#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"

using namespace libtexture;

TEST_CASE("every piece of work is done once, on any number of threads") {
  for (const int threads : {0, 1, 3}) {
    std::vector<int> done(100, 0);
    parallel_for(100, threads, [&](int i) { ++done[static_cast<std::size_t>(i)]; });
    CHECK(done == std::vector<int>(100, 1));
  }
  std::vector<int> done(1000, 0);  // not a multiple of what a task takes in a row
  parallel_for_small(done.size(), [&](std::size_t i) { ++done[i]; });
  CHECK(done == std::vector<int>(1000, 1));
  parallel_for(0, 0, [](int) { FAIL("nothing to do"); });
}

TEST_CASE("the first failure by index comes out, and threads below zero are refused") {
  CHECK_THROWS_WITH(parallel_for(1, 2, [](int) { throw std::runtime_error("broken"); }), "broken");
  CHECK_THROWS_WITH(parallel_for(1, -1, [](int) {}), "parallel_for: threads must be >= 0 (0 = all) (got -1)");
}
