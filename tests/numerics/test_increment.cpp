#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>
#include <stdexcept>
#include <vector>

#include "battery.hpp"
#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/numerics/increment.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;
constexpr double pi = std::numbers::pi;

// The gap is an estimate; with a residual of 1e-7 all of the battery is within 1e-6 from outside.
const IncrementOptions accurate{.residual_tolerance = 1e-7, .gap_tolerance = 1e-6};

struct Solved {
  Values pressure;
  IncrementReport report;
};

Solved solve(const battery::Case& c, const IncrementOptions& options = accurate) {
  Solved solved;
  solved.report = Increment(c.grid, c.stiffness).solve(c.height_m, c.removal_m, solved.pressure, options);
  return solved;
}

// A film disc on an interface pad, about: D 1.6e-4 N m, 3e7 Pa/m, 1.5 kPa, on a texture of 1 to 8 mm, 1.5 um
// rms.
battery::Case typical(int n, double removal_m) {
  const Grid grid{n, n, .1};
  return {grid, battery::flat_band(grid, 1, 8, 1.5e-6, 1),
          battery::plate_on_springs(grid, 1.6e-4, 0, 3e7, 1500), removal_m};
}

}  // namespace

TEST_CASE("a wave in full contact falls by 1/(1 + x) in one increment, x = S removal/p, for one pair") {
  // Implicit Euler (closed form). After R = Re = p/S in 1/x increments: .444444, .385543, .369711 for x = .5,
  // .1, .01.
  const Grid grid{16, 32, 1};
  Values height(grid.size());
  for (int i = 0; i < grid.size(); ++i) height[i] = 1e-6 * std::cos(2 * pi * 3 * (i % 32) / 32.);
  const double stiffness_per_m = 2e5;  // S A = .2 of the mean pressure: full contact
  struct Row {
    double x, left;
    int increments;
  };
  for (const Row& row : {Row{.5, .444444, 2}, Row{.1, .385543, 10}, Row{.01, .369711, 100}}) {
    Increment increment(grid, Values(16 * 17, stiffness_per_m));
    const double removal_m = row.x / stiffness_per_m;
    Values h = height, pressure;
    for (int k = 0; k < row.increments; ++k) {
      const auto report = increment.solve(h, removal_m, pressure, accurate);
      CHECK(report.transform_pairs == 1);
      CHECK(report.contact_share == 1);
      for (std::size_t i = 0; i < h.size(); ++i) h[i] -= removal_m * pressure[i];
    }
    const double removed_m = row.increments * removal_m;
    CHECK((h[0] + removed_m) / height[0] ==
          Catch::Approx(row.left).margin(1e-6));  // the figures have six digits
    for (std::size_t i = 0; i < h.size(); ++i)
      CHECK(std::abs(h[i] + removed_m - height[i] * std::pow(1 + row.x, -row.increments)) <
            1e-9 * 1e-6);  // rounding
  }
}

TEST_CASE("an increment removes exactly its removal on average, and nothing where the face does not reach") {
  for (const int index : {0, 3, 8, 21}) {
    const battery::Case c = battery::make_case(index);
    const Solved solved = solve(c);
    double sum = 0, untouched_low = HUGE_VAL;
    std::size_t touched = 0;
    for (std::size_t i = 0; i < solved.pressure.size(); ++i) {
      sum += solved.pressure[i];
      untouched_low = std::min(untouched_low, solved.pressure[i]);
      touched += solved.pressure[i] > 0;
    }
    const double n = static_cast<double>(solved.pressure.size());
    CHECK(std::abs(sum / n - 1) < 1e-12);  // mass balance
    CHECK(untouched_low >= 0);
    CHECK(static_cast<double>(touched) / n == solved.report.contact_share);
  }
}

TEST_CASE(
    "forty random increments: none fails, each is right to 1e-6 from outside, median at most 15 pairs, worst "
    "at most 80") {
  std::vector<int> pairs;
  for (int index = 0; index < 40; ++index) {
    const battery::Case c = battery::make_case(index);
    const Solved solved = solve(c);
    INFO("case " << index << ", " << solved.report.transform_pairs << " pairs");
    CHECK(battery::error_of(c, solved.pressure) <= 1e-6);
    pairs.push_back(solved.report.transform_pairs);
  }
  std::sort(pairs.begin(), pairs.end());
  CHECK(pairs[20] <= 15);
  CHECK(pairs[39] <= 80);
}

TEST_CASE("increments need no more than twice the pairs on a grid four times as fine") {
  const int coarse = solve(typical(128, .1e-6)).report.transform_pairs,
            fine = solve(typical(512, .1e-6)).report.transform_pairs;
  CHECK(fine <= 2 * coarse);
}

TEST_CASE("an increment gives the same bytes each time, from a used solver, and in several threads at once") {
  const battery::Case c = battery::make_case(5);
  const Solved alone = solve(c);
  const auto is_same = [&](const Values& p) {
    return std::memcmp(p.data(), alone.pressure.data(), p.size() * sizeof(double)) == 0;
  };
  Increment used(c.grid, c.stiffness);
  Values pressure;
  used.solve(battery::make_case(6).height_m, 1e-7, pressure, accurate);
  used.solve(c.height_m, c.removal_m, pressure, accurate);
  CHECK(is_same(pressure));
  std::vector<Solved> solved(4);
  const ThreadLimit four(4);
  parallel_for(4, [&](int i) { solved[i] = solve(c); });
  for (const Solved& one : solved) CHECK(is_same(one.pressure));
}

TEST_CASE("an increment that continues from the face before needs fewer pairs and gives the same answer") {
  battery::Case c = typical(128, .1e-6);
  Increment increment(c.grid, c.stiffness);
  IncrementOptions continued = accurate;
  continued.is_continued = true;
  Values pressure;
  increment.solve(c.height_m, c.removal_m, pressure, continued);
  for (std::size_t i = 0; i < pressure.size(); ++i) c.height_m[i] -= c.removal_m * pressure[i];
  const Solved afresh = solve(c);
  CHECK(increment.solve(c.height_m, c.removal_m, pressure, continued).transform_pairs <
        afresh.report.transform_pairs);
  CHECK(battery::error_of(c, pressure) <= 1e-6);
  std::fill(c.height_m.begin(), c.height_m.end(), 0.0);  // continuing on another surface is slower, not wrong
  increment.solve(c.height_m, c.removal_m, pressure, continued);
  for (const double p : pressure) CHECK(std::abs(p - 1) < 1e-4);  // sum of waves at a residual of 1e-7
}

TEST_CASE("increments of nasty surfaces: a nib, a step, pixel noise, a scratch, a texture of 1 nm") {
  battery::Case base = typical(128, .2e-6), nib = base, step = base, noise = base, scratch = base,
                faint = base;
  for (int i = 0; i < base.grid.size(); ++i) {
    const int row = i / base.grid.cols, col = i % base.grid.cols;
    if (std::hypot(row - 64, col - 64) < 3) nib.height_m[i] += 30e-6;
    step.height_m[i] = col < 64 ? 0 : 10e-6;
    noise.height_m[i] = 2e-6 * (uniform_at({3, static_cast<std::uint64_t>(i)}) - .5);
    if (row == 64) scratch.height_m[i] -= 10e-6;
    faint.height_m[i] *= 1e-9 / 1.5e-6;
  }
  for (const battery::Case* c : {&nib, &step, &noise, &scratch, &faint}) {
    const Solved solved = solve(*c);
    INFO("case " << (c - &nib) << ", " << solved.report.transform_pairs << " pairs");
    CHECK(battery::error_of(*c, solved.pressure) <= 1e-6);
  }
}

TEST_CASE("a flat surface is worn evenly") {
  battery::Case c = typical(32, .5e-6);
  std::fill(c.height_m.begin(), c.height_m.end(), 4e-6);
  for (const double p : solve(c).pressure) CHECK(p == Catch::Approx(1).epsilon(1e-12));  // rounding
}

TEST_CASE("the increment of a profile is that of the same profile repeated in rows") {
  const Grid line_grid{1, 128, .1}, sheet_grid{4, 128, .1};
  const Values line = battery::flat_band(line_grid, .5, 6, 2e-6, 4);
  Values sheet;
  for (int i = 0; i < 4; ++i) sheet.insert(sheet.end(), line.begin(), line.end());
  const IncrementOptions tight{.residual_tolerance = 1e-10, .gap_tolerance = 1e-10};
  const Solved one =
      solve({line_grid, line, battery::plate_on_springs(line_grid, 1.6e-4, 0, 3e7, 1500), .1e-6}, tight);
  const Solved four =
      solve({sheet_grid, sheet, battery::plate_on_springs(sheet_grid, 1.6e-4, 0, 3e7, 1500), .1e-6}, tight);
  CHECK(one.report.contact_share < 1);
  for (std::size_t i = 0; i < sheet.size(); ++i)
    CHECK(std::abs(four.pressure[i] - one.pressure[i % 128]) < 1e-6);  // solver, tight
}

TEST_CASE("an increment that runs out of pairs says so with its numbers, and progress may stop it") {
  const battery::Case c = typical(64, .05e-6);
  try {
    solve(c, {.residual_tolerance = 1e-9, .gap_tolerance = 1e-9, .most_pairs = 4});
    FAIL("four pairs are not enough");
  } catch (const NotConverged& stopped) {
    CHECK(stopped.iterations == 4);
    CHECK(stopped.residual > 1e-9);
  }
  Increment increment(c.grid, c.stiffness);
  Values pressure;
  int calls = 0;
  const int pairs =
      increment.solve(c.height_m, c.removal_m, pressure, accurate, [&](double) { ++calls; }).transform_pairs;
  CHECK(calls == pairs - 1);
  CHECK_THROWS_AS(increment.solve(c.height_m, c.removal_m, pressure, accurate,
                                  [](double) { throw std::runtime_error("stop"); }),
                  std::runtime_error);
}

TEST_CASE("an increment refuses what it cannot solve") {
  const battery::Case c = typical(16, 1e-6);
  Values pressure, stiffness = c.stiffness;
  CHECK_THROWS_WITH(Increment(c.grid, stiffness).solve(c.height_m, 0, pressure),
                    "Increment: removal must be > 0 (got 0)");
  stiffness[7] = -1;
  CHECK_THROWS_AS(Increment(c.grid, stiffness), InvalidInput);
  CHECK_THROWS_AS(Increment(c.grid, Values(3)), InvalidInput);
}
