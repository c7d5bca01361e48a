#include <cmath>
#include <cstring>
#include <numbers>
#include <stdexcept>

#include "battery.hpp"
#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/numerics/contact.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;

// E* q/2 [Pa/m] (Johnson, Contact Mechanics, 1985, ch. 13).
Values half_space(const Grid& grid, double modulus_pa) {
  Values stiffness;
  for (const double q : wave_numbers_per_m(grid)) stiffness.push_back(modulus_pa * q / 2);
  return stiffness;
}

struct Solved {
  Values pressure, gap;
  ContactReport report;
};

Solved press(const Grid& grid, const Values& height, const Values& stiffness, double mean_pressure,
             double tolerance = 1e-6) {
  Solved solved;
  solved.report =
      Contact(grid, stiffness).solve(height, mean_pressure, solved.pressure, solved.gap, {tolerance, 5000});
  return solved;
}

// Duality gap sum p (v - least v) with v = p/S - h, over sum(p) rms h, from the pressure alone: it bounds the
// error of the elastic energy, and is 0 only for the answer (convex quadratic programming; closed form).
double duality_gap(const Grid& grid, const Values& height, const Values& stiffness, const Values& pressure) {
  Fft fft(grid);
  Values compliance(fft.half_size()), v(pressure.size());
  for (std::size_t k = 1; k < compliance.size(); ++k) compliance[k] = 1 / stiffness[k];
  fft.filter(pressure, compliance, v);
  double least = HUGE_VAL, load = 0, work = 0, mean = 0, square = 0;
  for (std::size_t i = 0; i < v.size(); ++i) {
    v[i] -= height[i];
    least = std::min(least, v[i]);
    load += pressure[i];
    work += pressure[i] * v[i];
    mean += height[i] / static_cast<double>(v.size());
  }
  for (const double h : height) square += (h - mean) * (h - mean);
  return (work / load - least) / std::sqrt(square / static_cast<double>(v.size()));
}

double mean_of(const Values& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

const Grid rough_grid{128, 128, 0.1};
const Values rough = battery::flat_band(rough_grid, 1, 8, 1.5e-6, 7);

}  // namespace

TEST_CASE(
    "a rough surface on a half-space: pressure >= 0 of the mean asked for, no gap under it, and an outside "
    "certificate") {
  const Values stiffness = half_space(rough_grid, 1e9);
  for (const double pressure_pa : {3e4, 3e5, 1e6, 1e7}) {  // from a few summits to full contact
    const Solved solved = press(rough_grid, rough, stiffness, pressure_pa);
    INFO("pressure " << pressure_pa << " share " << solved.report.contact_share);
    int broken = 0;
    for (std::size_t i = 0; i < rough.size(); ++i)
      broken += !(solved.pressure[i] >= 0 && solved.gap[i] >= 0 && solved.pressure[i] * solved.gap[i] == 0);
    CHECK(broken == 0);
    CHECK(std::abs(mean_of(solved.pressure) / pressure_pa - 1) < 1e-13);  // rounding
    CHECK(mean_of(solved.gap) == Catch::Approx(solved.report.mean_gap).epsilon(1e-12));
    const double error = duality_gap(rough_grid, rough, stiffness, solved.pressure);
    CHECK(error <= 1e-6 * (1 + 1e-6));  // the tolerance asked for, and rounding
    CHECK(solved.report.residual == Catch::Approx(error).margin(1e-12));
    CHECK(solved.report.transform_pairs <= 100);
  }
}

TEST_CASE(
    "contact at rest: the gate of the benchmark, half-space, N = 512, about 21 % in contact, 1e-6 in at most "
    "100 pairs") {
  // Measured once and kept as a gate (DEVELOPERS.md, figures measured so far); the error is taken by a
  // checker outside the solver.
  const Grid grid{512, 512, 0.1};
  const Values height = battery::flat_band(grid, 1, 8, 1.5e-6, 1), stiffness = half_space(grid, 1e9);
  const Solved solved = press(grid, height, stiffness, 5.9e5);
  CHECK(solved.report.contact_share == Catch::Approx(.21).margin(.01));
  CHECK(duality_gap(grid, height, stiffness, solved.pressure) <= 1e-6 * (1 + 1e-6));
  CHECK(solved.report.transform_pairs <= 100);
}

TEST_CASE("contact at rest is solved as far as rounding allows") {
  const Values stiffness = half_space(rough_grid, 1e9);
  const Solved solved = press(rough_grid, rough, stiffness, 3e5, 1e-12);
  CHECK(duality_gap(rough_grid, rough, stiffness, solved.pressure) <= 1.1e-12);  // 10 % of 1e-12 for rounding
}

TEST_CASE("contact at rest of plates on springs ends with its certificate") {
  for (const double bending_n_m :
       {1e-7, 1e-5}) {  // a bending skin at rest is the hard case: thousands of pairs if stiff
    const Values stiffness = battery::plate_on_springs(rough_grid, bending_n_m, 0, 1e9, 1);
    const Solved solved = press(rough_grid, rough, stiffness, 1500);
    CHECK(duality_gap(rough_grid, rough, stiffness, solved.pressure) <= 1e-6 * (1 + 1e-6));
  }
}

TEST_CASE("contact at rest of nasty surfaces: pixel noise, a step, a nib, a scratch, a texture of 1 nm") {
  Values noise(rough.size()), step(rough.size(), 0.0), nib = rough, scratch = rough, faint = rough;
  for (std::size_t i = 0; i < rough.size(); ++i) {
    const auto row = static_cast<int>(i) / rough_grid.cols, col = static_cast<int>(i) % rough_grid.cols;
    noise[i] = 1e-6 * (uniform_at({1, i}) - .5);
    if (col >= 64) step[i] = 10e-6;
    if (std::hypot(row - 64, col - 64) < 3) nib[i] += 30e-6;
    if (row == 64) scratch[i] -= 10e-6;
    faint[i] *= 1e-9 / 1.5e-6;
  }
  const Values stiffness = half_space(rough_grid, 1e9);
  for (const Values* height : {&noise, &step, &nib, &scratch, &faint})
    for (const double pressure_pa : {1e3, 3e5}) {
      const Solved solved = press(rough_grid, *height, stiffness, pressure_pa);
      CHECK(duality_gap(rough_grid, *height, stiffness, solved.pressure) <= 1e-6 * (1 + 1e-6));
      CHECK(solved.report.transform_pairs <= 100);
    }
}

TEST_CASE("contact at rest of a flat surface is the mean pressure everywhere, without a gap") {
  const Solved solved = press(rough_grid, Values(rough.size(), 3e-6), half_space(rough_grid, 1e9), 1500);
  for (const double p : solved.pressure) CHECK(p == Catch::Approx(1500).epsilon(1e-14));  // rounding
  CHECK(solved.report.contact_share == 1);
  CHECK(solved.report.mean_gap == 0);
}

TEST_CASE("contact at rest of a profile is the contact of the same profile repeated in rows") {
  const Grid profile{1, 256, 0.1}, sheet{4, 256, 0.1};
  Values line(256), rows;
  for (int j = 0; j < 256; ++j)
    line[j] = 1e-6 * (std::cos(2 * std::numbers::pi * 3 * j / 256) +
                      .4 * std::sin(2 * std::numbers::pi * 11 * j / 256));
  for (int i = 0; i < 4; ++i) rows.insert(rows.end(), line.begin(), line.end());
  const Solved one = press(profile, line, half_space(profile, 1e9), 2e5, 1e-13);
  const Solved four = press(sheet, rows, half_space(sheet, 1e9), 2e5, 1e-13);
  // The certificate bounds the energy, so pressures agree to the root of it: 1e-6 leaves a margin over 3e-7.
  for (std::size_t i = 0; i < rows.size(); ++i)
    CHECK(std::abs(four.pressure[i] - one.pressure[i % 256]) <= 1e-6 * 2e5);
}

TEST_CASE("contact at rest gives the same bytes each time and in several threads at once") {
  const Values stiffness = half_space(rough_grid, 1e9);
  const Solved alone = press(rough_grid, rough, stiffness, 3e5);
  std::vector<Solved> solved(4);
  const ThreadLimit four(4);
  parallel_for(4, [&](int i) { solved[i] = press(rough_grid, rough, stiffness, 3e5); });
  for (const Solved& one : solved)
    CHECK(std::memcmp(one.pressure.data(), alone.pressure.data(), rough.size() * sizeof(double)) == 0);
}

TEST_CASE("contact at rest that runs out of pairs says so with its numbers, and progress may stop it") {
  Contact contact(rough_grid, half_space(rough_grid, 1e9));
  Values pressure, gap;
  try {
    contact.solve(rough, 3e5, pressure, gap, {1e-6, 10});
    FAIL("ten pairs are not enough");
  } catch (const NotConverged& stopped) {
    CHECK(stopped.iterations >= 10);
    CHECK(stopped.residual > 1e-6);
    CHECK(stopped.tolerance == 1e-6);
  }
  int calls = 0;
  const auto solved = contact.solve(rough, 3e5, pressure, gap, {}, [&](double) { ++calls; });
  CHECK(solved.iterations == calls);
  CHECK_THROWS_AS(
      contact.solve(rough, 3e5, pressure, gap, {}, [](double) { throw std::runtime_error("stop"); }),
      std::runtime_error);
}

TEST_CASE("contact at rest refuses what it cannot solve") {
  Values pressure, gap, stiffness = half_space(rough_grid, 1e9);
  Contact contact(rough_grid, stiffness);
  CHECK_THROWS_WITH(contact.solve(rough, -1, pressure, gap), "Contact: mean_pressure must be > 0 (got -1)");
  CHECK_THROWS_AS(contact.solve(Values(5), 1, pressure, gap), InvalidInput);
  CHECK_THROWS_AS(Contact(rough_grid, Values(5)), InvalidInput);
  stiffness[3] = 0;
  CHECK_THROWS_AS(Contact(rough_grid, stiffness), InvalidInput);
}
