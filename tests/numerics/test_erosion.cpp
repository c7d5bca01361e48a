#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <cstring>
#include <numbers>
#include <set>
#include <stdexcept>

#include "battery.hpp"
#include "catch.hpp"
#include "libtexture/base/error.hpp"
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

double least(const Values& values) {
  return *std::min_element(values.begin(), values.end());
}
double peak_to_valley(const Values& values) {
  return *std::max_element(values.begin(), values.end()) - least(values);
}
double valley_depth(const Values& values) {
  return mean_of(values) - least(values);
}

double rms(const Values& values) {
  const double mean = mean_of(values);
  double square = 0;
  for (const double value : values) square += (value - mean) * (value - mean);
  return std::sqrt(square / static_cast<double>(values.size()));
}

// Heights in um on a plate with springs, at 1.5 kPa.
const Grid grid{32, 32, .2};
const Values height_um = [] {
  Values height = battery::flat_band(grid, 1.5, 6.4, 1.5e-6, 3);
  for (double& h : height) h *= 1e6;
  return height;
}();
const Values stiffness_per_um = [] {
  Values stiffness = battery::plate_on_springs(grid, 3e-5, 0, 3e7, 1500);
  for (double& s : stiffness) s *= 1e-6;
  return stiffness;
}();

}  // namespace

TEST_CASE("an eroded surface has lost its removal, nothing but its removal, and no more than was there") {
  const Erosion erosion = erode(grid, height_um, stiffness_per_um, {.3, 1, 2.5});
  const double mean_before = mean_of(height_um), deepest = valley_depth(height_um);
  for (const ErosionState& state : erosion.states) {
    CHECK(std::abs(mean_before - mean_of(state.height) - state.removal) <
          1e-12 * state.removal + 1e-14);  // mass balance
    int risen = 0;
    for (std::size_t i = 0; i < height_um.size(); ++i) risen += state.height[i] > height_um[i];
    CHECK(risen == 0);
    // Until the deepest valley is touched, the valley keeps its height: Sv(R) + R = Sv(0) (closed form).
    if (least(state.height) == least(height_um))
      CHECK(std::abs(valley_depth(state.height) + state.removal - deepest) < 1e-12);
  }
  CHECK(least(erosion.states[0].height) == least(height_um));  // .3 um does not reach it
}

TEST_CASE(
    "the error that an erosion reports is within the tolerance, and covers the error against a far finer "
    "run") {
  const std::vector<double> at{.5, 1.5};
  const Erosion usual = erode(grid, height_um, stiffness_per_um, at, {.amplitude_tolerance = 2e-3});
  ErosionOptions fine_options{.amplitude_tolerance = 1e-4};
  fine_options.increment = {.residual_tolerance = 1e-7, .gap_tolerance = 1e-7};
  const Erosion fine = erode(grid, height_um, stiffness_per_um, at, fine_options);
  CHECK(usual.amplitude_error <= 2e-3);
  CHECK(fine.amplitude_error <= 1e-4);
  CHECK(fine.increments > usual.increments);
  for (std::size_t k = 0; k < at.size(); ++k) {
    CHECK(std::abs(rms(usual.states[k].height) - rms(fine.states[k].height)) < 2e-3);
    CHECK(std::abs(peak_to_valley(usual.states[k].height) - peak_to_valley(fine.states[k].height)) < 2e-3);
    CHECK(std::abs(valley_depth(usual.states[k].height) - valley_depth(fine.states[k].height)) < 2e-3);
  }
}

TEST_CASE("the curve of texture against removal depends on S/p alone: units and scale move nothing") {
  // R is the natural clock (closed form, docs/physics.md 16): heights in nm with S/p per nm are the same
  // problem.
  Values height_nm = height_um, stiffness_per_nm = stiffness_per_um;
  for (double& h : height_nm) h *= 1024;  // powers of two, so that not even rounding differs
  for (double& s : stiffness_per_nm) s /= 1024;
  const Erosion in_um = erode(grid, height_um, stiffness_per_um, {.5, 1}, {.amplitude_tolerance = 1. / 512});
  const Erosion in_nm = erode(grid, height_nm, stiffness_per_nm, {512, 1024}, {.amplitude_tolerance = 2});
  for (int k = 0; k < 2; ++k)
    CHECK(rms(in_nm.states[k].height) == Catch::Approx(1024 * rms(in_um.states[k].height)).epsilon(1e-10));
}

TEST_CASE("an erosion gives the same bytes each time") {
  const Erosion one = erode(grid, height_um, stiffness_per_um, {1}),
                two = erode(grid, height_um, stiffness_per_um, {1});
  CHECK(std::memcmp(one.states[0].height.data(), two.states[0].height.data(),
                    height_um.size() * sizeof(double)) == 0);
}

TEST_CASE("truncation of a cosine leaves what the plane leaves") {
  // Closed form: R/A = (sin t - t cos t)/pi, peak to valley/A = 1 + cos t.
  const int n = 8192;
  Values height(n);
  for (int j = 0; j < n; ++j) height[j] = std::cos(2 * pi * j / n);
  const Erosion erosion = truncate(height, {.1, .25, .5, .75});
  const double wanted[] = {1.527410, 1.143154, .671326, .300121};
  for (int k = 0; k < 4; ++k)
    CHECK(peak_to_valley(erosion.states[k].height) ==
          Catch::Approx(wanted[k]).margin(2e-6));  // six digits; N
  const Erosion flat = truncate(height, {1});
  CHECK(peak_to_valley(flat.states[0].height) < 1e-12);
  CHECK(flat.states[0].contact_share == Catch::Approx(1).margin(2. / n));
}

TEST_CASE("truncation of Gaussian heights leaves what the plane leaves") {
  // Closed form: a plane at z sigma removes R/s = phi(z) - z Q(z) and leaves Sq^2/s^2 = Phi - z phi + z^2 Q -
  // (R/s)^2.
  const int n = 1 << 18;
  const boost::math::normal normal;
  Values height(n);
  for (int i = 0; i < n; ++i) height[i] = quantile(normal, (i + .5) / n);
  const Erosion erosion = truncate(height, {.008491, .083315, .398942, 1.083315});
  const double left[] = {.979896, .866653, .583819, .261531}, z[] = {2, 1, 0, -1};
  for (int k = 0; k < 4; ++k) {
    const Values& worn = erosion.states[k].height;
    CHECK(rms(worn) == Catch::Approx(left[k]).margin(5e-5));  // R has six digits, the tails end at 4.6 sigma
    CHECK(*std::max_element(worn.begin(), worn.end()) ==
          Catch::Approx(z[k]).margin(2e-4));  // dz = dR/Q, Q(2) = .023
  }
}

TEST_CASE("no process leaves less than truncation for the same removal, and a stiff one nears it") {
  // Truncation is the rigid limit: of all cuts of one mean removal it leaves the least peak-to-valley height.
  const std::vector<double> at{.5, 1, 2};
  const Erosion rigid = truncate(height_um, at), elastic = erode(grid, height_um, stiffness_per_um, at);
  for (std::size_t k = 0; k < at.size(); ++k)
    CHECK(peak_to_valley(elastic.states[k].height) > peak_to_valley(rigid.states[k].height));
  Values stiff = stiffness_per_um;
  for (double& s : stiff) s *= 1e4;
  const Erosion near = erode(grid, height_um, stiff, at);
  for (std::size_t k = 0; k < at.size(); ++k)
    CHECK(peak_to_valley(near.states[k].height) ==
          Catch::Approx(peak_to_valley(rigid.states[k].height)).margin(.01));  // 1e4 times stiffer
}

TEST_CASE("a dust nib is cut down like any peak, to the tolerance asked") {
  // Common trouble of sprayed paint (common practice, no source): a grain a few pixels wide that stands far
  // above the texture. All the load begins on it, so that the first increments have to be small.
  for (const double nib_um : {10, 50}) {
    Values height = height_um;
    for (int i = 0; i < grid.rows; ++i)
      for (int j = 0; j < grid.cols; ++j)
        height[static_cast<std::size_t>(i) * grid.cols + j] +=
            nib_um * std::exp(-(std::pow(i - 16, 2) + std::pow(j - 16, 2)) / 2);
    const Erosion erosion = erode(grid, height, stiffness_per_um, {3}, {.amplitude_tolerance = 5e-3});
    CHECK(erosion.amplitude_error <= 5e-3);
    CHECK(std::abs(mean_of(height) - mean_of(erosion.states[0].height) - 3) <
          1e-12 * nib_um);                                                          // mass balance
    CHECK(peak_to_valley(erosion.states[0].height) < .2 * peak_to_valley(height));  // 3 um hold the whole nib
  }
}

TEST_CASE("an erosion that cannot meet its tolerance says so, and progress may stop it") {
  CHECK_THROWS_AS(
      erode(grid, height_um, stiffness_per_um, {1}, {.amplitude_tolerance = 1e-5, .most_halvings = 1}),
      NotConverged);
  CHECK_THROWS_AS(
      erode(grid, height_um, stiffness_per_um, {1}, {}, [](double) { throw std::runtime_error("stop"); }),
      std::runtime_error);
}

TEST_CASE("an erosion tells how far it is, in every run, and never falls back") {
  std::vector<double> told;
  const auto erode_to = [&](double tolerance) {
    told.clear();
    return erode(grid, height_um, stiffness_per_um, {1, 3}, {.amplitude_tolerance = tolerance},
                 [&](double share) { told.push_back(share); });
  };
  for (const double tolerance : {5e-3, 1e-4}) {
    const Erosion erosion = erode_to(tolerance);
    // Once a solver iteration, which takes a pair or, in full contact, a report of its own.
    CHECK(told.size() >= static_cast<std::size_t>(erosion.increments));
    CHECK(std::is_sorted(told.begin(), told.end()));
    CHECK(told.front() == 0);
    CHECK(told.back() > .9);  // the rest would have been further halvings
    CHECK(told.back() <= 1);
    CHECK(std::set<double>(told.begin(), told.end()).size() > 4);
  }
}

TEST_CASE("an erosion refuses removals that do not rise and tolerances that are not positive") {
  CHECK_THROWS_AS(erode(grid, height_um, stiffness_per_um, {}), InvalidInput);
  CHECK_THROWS_WITH(erode(grid, height_um, stiffness_per_um, {2, 1}),
                    "erode: at must be > 0 and rising (got 1)");
  CHECK_THROWS_AS(erode(grid, height_um, stiffness_per_um, {1}, {.amplitude_tolerance = 0}), InvalidInput);
  CHECK_THROWS_AS(truncate(height_um, {-1}), InvalidInput);
}
