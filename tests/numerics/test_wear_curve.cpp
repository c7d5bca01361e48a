// A curve's accuracy, against erode(), which halves its increments until amplitudes stand.
#include <algorithm>
#include <cmath>
#include <cstring>

#include "battery.hpp"
#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"
#include "libtexture/numerics/wear_curve.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;

struct Case {
  Grid grid;
  Values height_um, stiffness_per_um;
};

Case plate_case(int seed, double bending_n_m, double springs_pa_per_m) {
  Case c{{64, 64, .3}, {}, {}};
  c.height_um = battery::flat_band(c.grid, 2, 8, 1.5e-6, seed);
  for (double& h : c.height_um) h *= 1e6;
  c.stiffness_per_um = battery::plate_on_springs(c.grid, bending_n_m, 0, springs_pa_per_m, 1500);
  for (double& s : c.stiffness_per_um) s *= 1e-6;
  return c;
}

double rms(const Values& height) {
  return rms_about_mean(height.data(), height.size());
}

double mean(const Values& height) {
  double sum = 0;
  for (const double h : height) sum += h;
  return sum / static_cast<double>(height.size());
}

}  // namespace

TEST_CASE("a curve keeps its tolerance of rms heights, and its shape error is a bound, at all removals") {
  // Against erode() to 5 nm of all amplitudes. Soft, usual and stiff backings: contact of a tenth to all of it.
  for (const auto& [bending, springs] : {std::pair{3e-5, 3e7}, std::pair{1.2e-4, 6e6}, std::pair{2e-3, 3e7}}) {
    const Case c = plate_case(3, bending, springs);
    const double tolerance = .01 * rms(c.height_um);
    const std::vector<double> at{.2, .7, 1.6, 4};
    const Erosion fine =
        erode(c.grid, c.height_um, c.stiffness_per_um, at, {.amplitude_tolerance = 5e-3});
    WearCurve curve(c.grid, c.height_um, c.stiffness_per_um, tolerance, {});
    for (std::size_t k = 0; k < at.size(); ++k) {
      const ErosionState& state = curve.at(at[k]);
      CHECK(std::abs(rms(state.height) - rms(fine.states[k].height)) < tolerance);
      // Valleys, of which a plan takes the least clear, to 1 % of the texture's depth (estimate: gauges read
      // to 1 um).
      const double valley = mean(state.height) - *std::min_element(state.height.begin(), state.height.end());
      const Values& true_height = fine.states[k].height;
      const double true_valley =
          mean(true_height) - *std::min_element(true_height.begin(), true_height.end());
      CHECK(std::abs(valley - true_valley) < .05);
      CHECK(std::abs(mean(c.height_um) - mean(state.height) - at[k]) < 1e-12);  // mass balance
      double squares = 0;
      int risen = 0;
      for (std::size_t i = 0; i < c.height_um.size(); ++i) {
        risen += state.height[i] > c.height_um[i] + 1e-12;
        squares += std::pow(state.height[i] - true_height[i], 2);
      }
      CHECK(risen == 0);
      CHECK(std::sqrt(squares / static_cast<double>(c.height_um.size())) < curve.shape_error() + 5e-3);
    }
    CHECK(curve.wearing().transform_pairs() < fine.transform_pairs);
  }
}

TEST_CASE("what a curve gives at one removal does not depend on how far it goes on, nor on the run") {
  const Case c = plate_case(5, 3e-5, 3e7);
  WearCurve one(c.grid, c.height_um, c.stiffness_per_um, .015, {});
  WearCurve far(c.grid, c.height_um, c.stiffness_per_um, .015, {});
  const Values at_one = one.at(.9).height;
  const Values again = far.at(.9).height;
  far.at(5);
  CHECK(std::memcmp(at_one.data(), again.data(), at_one.size() * sizeof(double)) == 0);
}

TEST_CASE("in full contact a curve is exact: every wave falls by exp(-S R)") {
  // Closed form, docs/physics.md (19).
  Case c = plate_case(7, 3e-5, 3e7);
  for (double& h : c.height_um) h *= 1e-4;
  const double springs = 1;  // per um, for all waves
  std::fill(c.stiffness_per_um.begin(), c.stiffness_per_um.end(), springs);
  WearCurve curve(c.grid, c.height_um, c.stiffness_per_um, 1e-4, {});
  for (const double removal : {.1, .5, 2.})
    CHECK(rms(curve.at(removal).height) ==
          Catch::Approx(rms(c.height_um) * std::exp(-springs * removal)).epsilon(1e-9));
  CHECK(curve.wearing().transform_pairs() == 1);
}

TEST_CASE("a curve refuses removals that fall and a tolerance that is not positive") {
  const Case c = plate_case(3, 3e-5, 3e7);
  WearCurve curve(c.grid, c.height_um, c.stiffness_per_um, .1, {});
  curve.at(.5);
  CHECK_THROWS_AS(curve.at(.4), InvalidInput);
  CHECK_THROWS_AS(WearCurve(c.grid, c.height_um, c.stiffness_per_um, 0, {}), InvalidInput);
}
