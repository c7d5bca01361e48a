// Erosion against closed forms and independent figures.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/numerics/erosion.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;
constexpr double pi = std::numbers::pi;

double mean_of(const Values& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

double peak_to_valley(const Values& values) {
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  return *most - *least;
}

double rms(const Values& values) {
  const double mean = mean_of(values);
  double square = 0;
  for (const double value : values) square += (value - mean) * (value - mean);
  return std::sqrt(square / static_cast<double>(values.size()));
}

// One wave of amplitude 1 along a profile of unit length (pixel in m to keep wave numbers simple).
Values cosine(int n) {
  Values height(n);
  for (int j = 0; j < n; ++j) height[j] = std::cos(2 * pi * j / n);
  return height;
}
Grid profile(int n) {
  return {1, n, 1e3 / n};
}

Values springs(int n, double stiffness_over_pressure) {
  return Values(n / 2 + 1, stiffness_over_pressure);
}

// Half angle t of the contact of springs on A cos, given P (1 + tau) = load: sin t - t cos t = pi load.
// Bisection.
double half_angle(double load) {
  double low = 0, high = pi;
  while (high - low > 1e-14) {
    const double t = (low + high) / 2;
    (std::sin(t) - t * std::cos(t) < pi * load ? low : high) = t;
  }
  return low;
}

// Springs and Preston's law on A cos (closed form): P = p/(k A), tau = R/(P A), crest gap y: dy/dtau = -y +
// pi P/t, y(0) = 1 - cos t0, peak to valley/A = y + cos t + 1 until full contact at tau = 1/P - 1, then
// falling as exp(-tau). Runge-Kutta of fourth order, independent of the library.
double springs_on_cosine(double load, double removal) {
  const double full = 1 / load - 1, end = std::min(removal / load, full);
  const int steps = 2000;
  const double step = end / steps;
  const auto slope = [&](double tau, double y) {
    return -y + pi * load / half_angle(std::min(1.0, load * (1 + tau)));
  };
  double y = 1 - std::cos(half_angle(load));
  for (int k = 0; k < steps; ++k) {
    const double tau = k * step, a = slope(tau, y), b = slope(tau + step / 2, y + step / 2 * a),
                 c = slope(tau + step / 2, y + step / 2 * b), d = slope(tau + step, y + step * c);
    y += step / 6 * (a + 2 * b + 2 * c + d);
  }
  const double at_end = y + std::cos(half_angle(std::min(1.0, load * (1 + end)))) + 1;
  return at_end * std::exp(-(removal / load - end));
}

}  // namespace

TEST_CASE("springs wear a cosine as their differential equation says") {
  const int n = 512;
  struct Table {
    double load;
    double left[5];
  };
  // Closed form (docs/physics.md, springs on a cosine), the same figures by two routes.
  for (const Table& table : {Table{.1, {1.598653, 1.175341, .681916, .306154, .043029}},
                             Table{.2, {1.659827, 1.245755, .725122, .331628, .097076}}}) {
    const std::vector<double> at{.1, .25, .5, .75, 1};
    const Erosion erosion =
        erode(profile(n), cosine(n), springs(n, 1 / table.load), at, {.amplitude_tolerance = 1e-4});
    for (int k = 0; k < 5; ++k) {
      INFO("load " << table.load << " removal " << at[k]);
      CHECK(springs_on_cosine(table.load, at[k]) == Catch::Approx(table.left[k]).margin(2e-6));  // six digits
      CHECK(peak_to_valley(erosion.states[k].height) ==
            Catch::Approx(table.left[k]).margin(2e-4));  // tolerance asked, and N
    }
  }
  for (const double load : {.05, .4, .7}) {
    const Erosion erosion =
        erode(profile(n), cosine(n), springs(n, 1 / load), {.2, .6, 1.2}, {.amplitude_tolerance = 1e-4});
    for (const ErosionState& state : erosion.states) {
      INFO("load " << load << " removal " << state.removal);
      CHECK(peak_to_valley(state.height) ==
            Catch::Approx(springs_on_cosine(load, state.removal)).margin(2e-4));  // as above
    }
  }
}

TEST_CASE("springs come into full contact at R = Sv(0) - p/k, whatever the profile") {
  const int n = 512;
  Values skew = cosine(n);
  for (int j = 0; j < n; ++j) skew[j] += .3 * std::cos(4 * pi * j / n) + .2 * std::sin(6 * pi * j / n);
  const double mean = mean_of(skew), depth = mean - *std::min_element(skew.begin(), skew.end()), load = .2,
               full = depth - load;
  const Erosion erosion =
      erode(profile(n), skew, springs(n, 1 / load), {full - .02, full + .02}, {.amplitude_tolerance = 1e-4});
  CHECK(erosion.states[0].contact_share < 1);
  CHECK(erosion.states[1].contact_share == 1);
  // A cosine, P = .2: full at .8 A, with a peak to valley height of .263880 A.
  const Erosion at_full = erode(profile(n), cosine(n), springs(n, 5), {.8}, {.amplitude_tolerance = 1e-4});
  CHECK(peak_to_valley(at_full.states[0].height) ==
        Catch::Approx(.263880).margin(2e-4));  // tolerance asked, and N
}

TEST_CASE("a half-space wears a cosine as an independent code says") {
  // p/p* = .25 (p* = pi E* A/lambda: Johnson 1985 sec. 13.2). No closed form: an independent implicit code,
  // extrapolated; it states 1e-3.
  const int n = 512;
  const Grid grid = profile(n);
  Values stiffness;
  for (const double q : wave_numbers_per_m(grid))
    stiffness.push_back(4 * q / (2 * pi));  // S A = p* = 4 p at the wave
  const std::vector<double> at{.1, .25, .5, .75, 1};
  const double left[] = {1.65076, 1.25581, .76347, .37526, .11842},
               rms_left[] = {.59350, .45003, .25772, .11543, .04097};
  const Erosion erosion = erode(grid, cosine(n), stiffness, at, {.amplitude_tolerance = 2e-4});
  for (int k = 0; k < 5; ++k) {
    INFO("removal " << at[k]);
    CHECK(peak_to_valley(erosion.states[k].height) == Catch::Approx(left[k]).margin(1e-3));
    CHECK(rms(erosion.states[k].height) == Catch::Approx(rms_left[k]).margin(1e-3));
  }
}

TEST_CASE("springs wear a two-level step by the step-height law of chemical-mechanical planarization") {
  // Closed form: up-areas cover rho; above hc = p/(rho k) they carry all: dh/dR = -1/rho; below, h = hc
  // exp(-(R - Rc) k/p), Rc = rho (h0 - hc). h0 = 10, rho = .3, p/k = 2: hc 6.666667, Rc 1.0, R(h = 1)
  // = 4.794240.
  const int n = 100;
  Values height(n, 0.0);
  for (int j = 0; j < 30; ++j) height[j] = 10;
  const Erosion erosion =
      erode(profile(n), height, springs(n, .5), {.5, 1, 4.794240}, {.amplitude_tolerance = 1e-3});
  CHECK(peak_to_valley(erosion.states[0].height) ==
        Catch::Approx(10 - .5 / .3).margin(1e-3));  // tolerance asked
  CHECK(peak_to_valley(erosion.states[1].height) == Catch::Approx(6.666667).margin(1e-3));
  CHECK(peak_to_valley(erosion.states[2].height) == Catch::Approx(1).margin(1e-3));
}

TEST_CASE("in full contact each wave falls by exactly exp(-R S/p)") {
  // Closed form: A(R) = A(0) exp(-R/Re), Re = p/S, for as long as the pressure is nowhere negative.
  const int n = 64;
  const Grid grid = profile(n);
  Values stiffness, height(n);
  for (const double q : wave_numbers_per_m(grid)) stiffness.push_back(.05 * std::pow(q / (2 * pi), 2));
  for (int j = 0; j < n; ++j)
    height[j] = 3 * std::cos(2 * pi * j / n) + 2 * std::cos(4 * pi * j / n) + .5 * std::sin(6 * pi * j / n);
  const Erosion erosion = erode(grid, height, stiffness, {2, 10});
  CHECK(erosion.amplitude_error == 0);
  for (const ErosionState& state : erosion.states) {
    CHECK(state.contact_share == 1);
    const double r = state.removal;
    for (int j = 0; j < n; ++j) {
      const double wanted = 3 * std::exp(-.05 * r) * std::cos(2 * pi * j / n) +
                            2 * std::exp(-.2 * r) * std::cos(4 * pi * j / n) +
                            .5 * std::exp(-.45 * r) * std::sin(6 * pi * j / n) - r;
      CHECK(std::abs(state.height[j] - wanted) < 1e-9);
    }
  }
}

TEST_CASE("a wave is in full contact from the start if and only if S A <= p") {
  const int n = 128;  // closed form
  for (const double load : {.97, 1.03}) {
    const Erosion erosion =
        erode(profile(n), cosine(n), springs(n, 1 / load), {1e-3}, {.amplitude_tolerance = 1e-5});
    CHECK((erosion.states[0].contact_share == 1) == (load > 1));
  }
}

TEST_CASE(
    "a surface that starts in full contact may leave it: short waves that filled a valley decay first") {
  // p = p0 + S h with S h of a long wave = -b and of a short wave +c at the place: the short one decays
  // faster, so that the pressure passes through 1 - b exp(-sR) + c exp(-4sR) < 0 (closed form). Exact
  // exponentials there would be wrong.
  const int n = 128;
  const Grid grid = profile(n);
  Values stiffness, height(n);
  for (const double q : wave_numbers_per_m(grid)) stiffness.push_back(std::pow(q / (2 * pi), 4));
  const double b = 1.25, c = .35, rate = 16;  // S of wave 2 = 16, of wave 1 = 1
  for (int j = 0; j < n; ++j) height[j] = b * std::cos(2 * pi * j / n) + c / rate * std::cos(4 * pi * j / n);
  const auto least_pressure = [&](double r) { return 1 - b * std::exp(-r) + c * std::exp(-rate * r); };
  REQUIRE(least_pressure(0) > 0);
  REQUIRE(least_pressure(.1) < 0);
  REQUIRE(least_pressure(1) > 0);
  const Erosion erosion = erode(grid, height, stiffness, {.1, 1}, {.amplitude_tolerance = 1e-4});
  CHECK(erosion.states[0].contact_share < 1);
  for (const ErosionState& state : erosion.states)
    CHECK(std::abs(mean_of(state.height) + state.removal) < 1e-12);
  // Far later it is in full contact again, and its long wave decays: within what the short time out of
  // contact took.
  CHECK(erosion.states[1].contact_share == 1);
}
