// The least clear for a remaining texture, against closed forms and against the solver's rigid limit.
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/ideal_cut.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

TEST_CASE("a saw tooth is cut to a remaining rms by the closed form") {
  // Heights spread evenly over 0..1 (closed form): a plane at c leaves mean c - c^2/2 and mean square
  // c^2 - 2c^3/3, and takes (1 - c)^2/2.
  const int n = 16000;
  Array2d h(1, n);
  for (int i = 0; i < n; ++i) h(0, i) = (i + .5) / n;
  const IdealCut ideal(HeightField(h, 0.1));
  for (const double c : {.9, .5, .1}) {
    const double mean = c - c * c / 2, rms = std::sqrt(c * c - 2 * c * c * c / 3 - mean * mean);
    CHECK(std::abs(ideal.removal_um(rms) - (1 - c) * (1 - c) / 2) < 2e-4);  // a pixel is 1/n high
  }
  CHECK(ideal.removal_um(0) == Catch::Approx(.5).epsilon(1e-3));  // flat at the deepest valley
  CHECK(ideal.removal_um(1) == 0);
}

TEST_CASE("no lowering of a surface reaches the same rms for less") {
  // Any other way of cutting is worse (convexity, docs/physics.md): here each height loses a share of what
  // stands above a plane.
  const HeightField field =
      synthesize({{.wavelength_mm = 3, .rms_um = 1, .bandwidth_octaves = 1}}, Grid{64, 64, 0.4}, 5);
  const IdealCut ideal(field);
  for (const double plane : {-1., 0., 1.})
    for (const double share : {.3, .7, 1.}) {
      const Array2d removed = share * (field.height_um() - plane).max(0.0);
      const HeightField after(field.height_um() - removed, field.pixel_mm());
      const double bound = ideal.removal_um(after.rms_um());
      if (share == 1.)
        CHECK(bound == Catch::Approx(removed.mean()).epsilon(1e-9));
      else
        CHECK(bound < removed.mean());
    }
  CHECK_THROWS_AS(ideal.removal_um(-1), InvalidInput);
}
