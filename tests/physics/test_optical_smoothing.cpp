// Optical smoothing: the same physics, measured by others on glass under flexible laps.
//
// Sources: Mehta and Reid, "Mathematical model for optical smoothing prediction of high-spatial-frequency
// surface errors" (the bridging model: plate equation with shear, compressive pitch, Preston's law), abstract
// read; Kim, Park, An and Burge, "Parametric smoothing model for visco-elastic polishing tools", Optics
// Express 18 (2010), from memory; Shu, Kim, Martin and Burge, "Correlation-based smoothing model for optical
// polishing", Optics Express 21, 28771 (2013), abstract read. In all of them the ripple lost per depth
// removed, the smoothing factor, is a straight line in the ripple.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/numerics/erosion.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;
constexpr double pi = std::numbers::pi;

/// A lap: a plate with bending and shear stiffness whose facing of pitch yields under pressure.
struct Lap {
  double bending_n_m, shear_n_per_m, pitch_pa_per_m;

  /// Pressure per height of a ripple of wave number q: the plate bends and shears, the pitch is pressed in;
  /// all three give, one behind the other (the bridging model).
  double stiffness_pa_per_m(double q) const {
    return 1 / (1 / (bending_n_m * std::pow(q, 4)) + 1 / (shear_n_per_m * q * q) + 1 / pitch_pa_per_m);
  }
};

// A pitch lap on an aluminium plate of 10 mm, pressed with 2 kPa on a mirror with a ripple of 40 mm:
// estimates, of the size that the papers work with. Any lap will do: the straight line needs no figure of it.
constexpr Lap lap{.bending_n_m = 6.5e3, .shear_n_per_m = 2.2e8, .pitch_pa_per_m = 2e10};
constexpr double wavelength_m = 0.04, pressure_pa = 2000;
constexpr int pixels = 64;

Values stiffness_per_m() {
  Values stiffness(pixels / 2 + 1, 0.0);
  for (int k = 1; k <= pixels / 2; ++k)
    stiffness[k] = lap.stiffness_pa_per_m(2 * pi * k / wavelength_m) / pressure_pa;
  return stiffness;
}

double peak_to_valley_m(const Values& height) {
  const auto [least, most] = std::minmax_element(height.begin(), height.end());
  return *most - *least;
}

Erosion polished(double ripple_m, double depth_m) {
  Values height(pixels);
  for (int j = 0; j < pixels; ++j) height[j] = ripple_m / 2 * std::cos(2 * pi * j / pixels);
  return erode({1, pixels, 1e3 * wavelength_m / pixels}, height, stiffness_per_m(), {depth_m},
               {.amplitude_tolerance = 1e-4 * ripple_m});
}

double smoothing_factor(double ripple_m, double depth_m) {
  return (ripple_m - peak_to_valley_m(polished(ripple_m, depth_m).states.front().height)) / depth_m;
}

}  // namespace

TEST_CASE(
    "the ripple that a flexible lap takes per depth is a straight line in the ripple, with slope 1/Re") {
  const double slope_per_m = lap.stiffness_pa_per_m(2 * pi / wavelength_m) / pressure_pa;  // 1/Re = S/p
  const double contact_m = 2 / slope_per_m;  // peak to valley up to which the lap touches all of a ripple
  const double depth_m = 1e-4 / slope_per_m;
  // A finite depth bends the line: (1 - exp(-x))/x = 1 - x/2 of it, x = 1e-4.
  for (const double share : {0.01, 0.1, 0.5, 1.0}) {
    const double ripple_m = share * contact_m;
    CHECK(smoothing_factor(ripple_m, depth_m) == Catch::Approx(slope_per_m * ripple_m).epsilon(1e-4));
  }
  // No floor: measured laps stop smoothing at a ripple that the model lets go to nothing (docs/physics.md,
  // limits).
  CHECK(smoothing_factor(1e-6 * contact_m, depth_m) ==
        Catch::Approx(slope_per_m * 1e-6 * contact_m).epsilon(1e-4));
}

TEST_CASE("a ripple too high for the lap to touch its valleys falls by less than the straight line") {
  // The pressure cannot be negative in a valley: the crests carry the load, and lose depth over contact share
  // at most.
  const double slope_per_m = lap.stiffness_pa_per_m(2 * pi / wavelength_m) / pressure_pa;
  const double ripple_m = 8 / slope_per_m, depth_m = 0.01 / slope_per_m;
  const double factor = smoothing_factor(ripple_m, depth_m);
  CHECK(factor < slope_per_m * ripple_m);
  CHECK(factor > 1);  // valleys stay where they are: at least the mean comes off the crests
}
