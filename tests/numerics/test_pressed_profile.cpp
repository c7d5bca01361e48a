#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/pressed_profile.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

constexpr int cols = 1000;
constexpr double pixel = 1e-4;

double place(int i) {
  return (i + 0.5 - 0.5 * cols) * pixel;
}

AlignedVector<double> stiffness(double springs, double bending) {
  AlignedVector<double> values;
  for (const double q : wave_numbers_per_m(Grid{1, cols, pixel * 1e3}))
    values.push_back(springs + bending * q * q * q * q);
  return values;
}

AlignedVector<double> ones() {
  return AlignedVector<double>(cols, 1.0);
}

}  // namespace

TEST_CASE("a crest on springs carries its load on the half-width and at the peak of the closed form") {
  // Closed form: a = (3 rho P'/2k)^(1/3), p_max = k a^2/2rho.
  const double k = 3e7, rho = 0.05, load = 100;
  AlignedVector<double> crest, pressure;
  for (int i = 0; i < cols; ++i) crest.push_back(-place(i) * place(i) / (2 * rho));
  PressedProfile profile(cols, pixel, stiffness(k, 0));
  PlateLine plate;
  const PressedReport report = profile.solve(crest, ones(), 1e-7 / k, {.force = load}, plate, pressure);
  const double half_width = std::cbrt(3 * rho * load / (2 * k)),
               peak = k * half_width * half_width / (2 * rho);
  int touching = 0;
  double total = 0, most = 0;
  for (const double p : pressure) {
    touching += p > 0;
    total += p * pixel;
    most = std::max(most, p);
  }
  CHECK(total == Approx(load).epsilon(2e-6));  // asked: 1e-6
  CHECK(most ==
        Approx(peak).epsilon(1e-4));  // half a pixel beside the crest; the sum over pixels is of second order
  CHECK(std::abs(touching * pixel / 2 - half_width) <= pixel);
  CHECK(plate.height == Approx(-peak / k).epsilon(1e-4));
  CHECK(report.residual <= 1e-7);
  CHECK(report.balance <= 1e-6);
}

TEST_CASE("a plate on springs that is held on one line sinks as the line load of the closed form says") {
  // w0 = P'/(2 sqrt2 D^(1/4) k^(3/4)) (Hetenyi, Beams on Elastic Foundation; closed form).
  const double k = 3e7, bending = 2e-4, load = 50;
  AlignedVector<double> line(cols, -HUGE_VAL), pressure;
  line[cols / 2] = 0;
  PressedProfile profile(cols, pixel, stiffness(k, bending));
  PlateLine plate;
  profile.solve(line, ones(), 1e-14, {.force = load}, plate, pressure);
  const double sinks = load / (2 * std::sqrt(2.0) * std::pow(bending, 0.25) * std::pow(k, 0.75));
  CHECK(-plate.height ==
        Approx(sinks).epsilon(1e-3));  // a line of one pixel, a twentieth of the bending length, squared
  CHECK(pressure[cols / 2] == Approx(load / pixel).epsilon(2e-6));
}

TEST_CASE("a plate on a flat profile presses evenly, whatever its face") {
  AlignedVector<double> flat(cols, 0.0), pressure;
  PressedProfile profile(cols, pixel, stiffness(3e7, 2e-4));
  PlateLine plate;
  const double force = 25;
  profile.solve(flat, ones(), 1e-12, {.force = force, .is_tilting = true}, plate, pressure);
  for (int i = 0; i < cols; i += 50) CHECK(pressure[i] == Approx(force / (cols * pixel)).epsilon(1e-6));
}

TEST_CASE("a tilting plate lies down on a slope, and balances beside a crest") {
  AlignedVector<double> pressure, slope, crest, weight;
  for (int i = 0; i < cols; ++i) {
    slope.push_back(0.05 * place(i));
    crest.push_back(-std::pow(place(i) - 0.01, 2) / 0.1);
    weight.push_back(std::sqrt(std::max(0.0, 0.02 * 0.02 - place(i) * place(i))));
  }
  PressedProfile profile(cols, pixel, stiffness(3e7, 2e-4));
  PlateLine plate;
  profile.solve(slope, weight, 1e-11, {.force = 1, .is_tilting = true}, plate, pressure);
  CHECK(plate.slope == Approx(0.05).epsilon(1e-4));
  profile.solve(crest, weight, 1e-11, {.force = 1, .is_tilting = true}, plate, pressure);
  double force = 0, moment = 0;
  for (int i = 0; i < cols; ++i) {
    force += weight[i] * pressure[i] * pixel;
    moment += weight[i] * pressure[i] * place(i) * pixel;
  }
  CHECK(force == Approx(1).epsilon(2e-6));
  CHECK(std::abs(moment) < 1e-4 * 0.25 * cols * pixel);  // asked: 1e-4 of force x quarter row
  // The crest is a parabola of radius .05 m, 10 mm beside the middle: it is met where it is as steep as the
  // plate.
  CHECK(plate.slope == Approx(0.01 / 0.05).epsilon(0.02));
}

TEST_CASE("a pressed profile that cannot be is refused, and one that runs out of work says so") {
  AlignedVector<double> flat(cols, 0.0), nothing(cols, -HUGE_VAL), bump(cols, -1e-3), pressure;
  for (int i = 0; i < cols; i += 7) bump[i] = 1e-6 * i;
  PressedProfile profile(cols, pixel, stiffness(3e7, 2e-4));
  PlateLine plate;
  CHECK_THROWS_AS(profile.solve(flat, ones(), 0, {.force = 1}, plate, pressure), InvalidInput);
  CHECK_THROWS_AS(profile.solve(flat, ones(), 1e-12, {.force = 0}, plate, pressure), InvalidInput);
  CHECK_THROWS_AS(profile.solve(nothing, ones(), 1e-12, {.force = 1}, plate, pressure), InvalidInput);
  CHECK_THROWS_AS(profile.solve(bump, ones(), 1e-12, {.force = 1}, plate, pressure, {.most_pairs = 4}),
                  NotConverged);
  CHECK_THROWS_AS(PressedProfile(cols, pixel, AlignedVector<double>(3, 1.0)), InvalidInput);
  CHECK_THROWS_AS(PressedProfile(cols, pixel, stiffness(0, 2e-4)), InvalidInput);
}
