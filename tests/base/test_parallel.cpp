#include <algorithm>
#include <atomic>
#include <chrono>
#include <mutex>
#include <set>
#include <thread>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"

using namespace libtexture;

TEST_CASE("every piece of work is done once, on any number of threads") {
  for (const int threads : {0, 1, 3}) {
    std::vector<int> done(100, 0);
    const ThreadLimit limit(threads);
    parallel_for(100, [&](int i) { ++done[static_cast<std::size_t>(i)]; });
    CHECK(done == std::vector<int>(100, 1));
  }
  std::vector<int> done(1000, 0);  // not a multiple of what a task takes in a row
  parallel_for_small(done.size(), [&](std::size_t i) { ++done[i]; });
  CHECK(done == std::vector<int>(1000, 1));
  parallel_for(0, [](int) { FAIL("nothing to do"); });
}

TEST_CASE("many small pieces tell how far they are once a task, and the last that all is done") {
  std::vector<double> told;
  parallel_for_small(
      1000, [](std::size_t) {}, [&](double share) { told.push_back(share); });
  REQUIRE(told.size() == 16);  // 1000 in tasks of 64
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.back() == 1);
}

TEST_CASE("the first failure by index comes out, and threads below zero are refused") {
  CHECK_THROWS_WITH(parallel_for(1, [](int) { throw std::runtime_error("broken"); }), "broken");
  CHECK_THROWS_WITH(ThreadLimit(-1),
                    "parallel work: threads must be >= 0 (0 = all the machine has) (got -1)");
}

// How many threads take part where each of many tasks waits for as many as can be there.
int threads_at_work() {
  std::mutex mutex;
  std::set<std::thread::id> seen;
  parallel_for(64, [&](int) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
    const std::lock_guard lock(mutex);
    seen.insert(std::this_thread::get_id());
  });
  return static_cast<int>(seen.size());
}

TEST_CASE("a limit holds for the work inside it and no longer, and the lower of two holds") {
  const ThreadLimit six(6);
  CHECK(threads_at_work() == 6);
  {
    const ThreadLimit two(2);
    CHECK(threads_at_work() == 2);
    const ThreadLimit none(0), nine(9);
    CHECK(threads_at_work() == 2);
  }
  CHECK(threads_at_work() == 6);
}

TEST_CASE("a thread that one task has done with works on another's") {
  const ThreadLimit two(2);
  int at_work = 0;
  parallel_for(2, [&](int i) {
    if (i == 0) return;
    while (at_work < 2) at_work = threads_at_work();  // alone until the first task's thread is idle
  });
  CHECK(at_work == 2);
}

TEST_CASE("work inside parallel work shares its threads: never more at once than allowed") {
  const auto most_at_once = [](int threads, int outer) {
    std::atomic<int> now{0}, most{0};
    const Progress whole = [](double) {};
    const ThreadLimit limit(threads);
    parallel_for(outer, whole, [&](int, const Progress&) {
      parallel_for(4, [&](int) {
        const int running = ++now;
        for (int seen = most; running > seen && !most.compare_exchange_weak(seen, running);) {
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
        --now;
      });
    });
    return most.load();
  };
  CHECK(most_at_once(1, 3) == 1);
  CHECK(most_at_once(2, 5) <= 2);
  CHECK(most_at_once(4, 2) <= 4);
}

TEST_CASE("tasks on several threads tell their mean, which never falls, from the calling thread") {
  const std::thread::id here = std::this_thread::get_id();
  std::vector<double> told;
  const Progress whole = [&](double share) {
    CHECK(std::this_thread::get_id() == here);
    told.push_back(share);
  };
  const ThreadLimit four(4);
  parallel_for(8, whole, [](int, const Progress& part) {
    for (const double share : {0.0, 0.7, 0.3, 1.0}) part(share);
  });
  CHECK(told.size() == 8 * 4);  // each report is told on
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.back() == 1);
  parallel_for(2, Progress(), [](int, const Progress& part) { CHECK_FALSE(part); });
}

TEST_CASE("a report that throws stops every task, and a task that throws ends the telling") {
  struct Stopped {};
  int told = 0;
  const Progress whole = [&](double) {
    if (++told == 3) throw Stopped();
  };
  const auto work_on = [](int, const Progress& part) {
    for (;;) part(0.5);
  };
  const ThreadLimit four(4);
  CHECK_THROWS_AS(parallel_for(4, whole, work_on), Stopped);
  CHECK(told == 3);
  CHECK_THROWS_WITH(parallel_for(2, whole, [](int, const Progress&) { throw std::runtime_error("broken"); }),
                    "broken");
}
