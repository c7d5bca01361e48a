#include <cmath>
#include <complex>
#include <numbers>

#include "catch.hpp"
#include "libtexture/numerics/fft.hpp"
#include "libtexture/surface/metrology.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

const Grid patch{256, 256, 0.2};

double skewness_of(const HeightField& field) {
  return (field.height_um() - field.mean_um()).cube().mean() / std::pow(field.rms_um(), 3);
}

/// Mean square slopes along x and y, up to a common factor.
std::pair<double, double> slope_powers(const HeightField& field) {
  const Grid& grid = field.grid();
  const Spectrum half = spectrum_of(field.height_um(), field.pixel_mm());
  double along_x = 0, along_y = 0;
  for (int i = 0; i < grid.rows; ++i)
    for (int j = 0; j < grid.half_cols(); ++j) {
      const double power =
          (j == 0 ? 1 : 2) * std::norm(half[static_cast<std::size_t>(i * grid.half_cols() + j)]);
      along_x += power * j * j;
      along_y += power * signed_mode(i, grid.rows) * signed_mode(i, grid.rows);
    }
  return {along_x, along_y};
}

}  // namespace

TEST_CASE("a band has the rms asked for and no mean, on patches and profiles, skewed or not") {
  for (const Grid& grid : {patch, Grid{1, 512, 0.1}, Grid{120, 90, 0.3}, Grid{31, 64, 0.25}})
    for (const double skewness : {0.0, -0.5}) {
      const HeightField field =
          synthesize({{.wavelength_mm = 2.5, .rms_um = 0.8, .skewness = skewness}}, grid, 7);
      CHECK(field.rms_um() == Approx(0.8).epsilon(1e-9));  // as promised
      CHECK(std::abs(field.mean_um()) < 1e-12);            // rounding
    }
}

TEST_CASE("one seed gives the same surface on a finer grid") {
  const std::vector<TextureBand> bands{
      {.wavelength_mm = 1.6, .rms_um = 1, .bandwidth_octaves = 1},
      {.wavelength_mm = 4, .rms_um = 0.5, .bandwidth_octaves = 2, .lay_deg = 30}};
  for (const int rows : {1, 40}) {
    const HeightField coarse = synthesize(bands, Grid{rows, 64, 0.4}, 3);
    const HeightField fine = synthesize(bands, Grid{rows == 1 ? 1 : 3 * rows, 3 * 64, 0.4 / 3}, 3);
    // Three pixels to one: the middle one of the three has the coarse pixel's centre.
    double worst = 0;
    for (int i = 0; i < rows; ++i)
      for (int j = 0; j < 64; ++j)
        worst = std::max(worst, std::abs(coarse.height_um()(i, j) -
                                         fine.height_um()(rows == 1 ? 0 : 3 * i + 1, 3 * j + 1)));
    CHECK(worst < 1e-12);  // the same sum of waves: rounding only
  }
}

TEST_CASE("seeds and places in the list make different waves, and the same seed the same") {
  const TextureBand band{.wavelength_mm = 2.5, .rms_um = 1};
  CHECK(synthesize({band}, patch, 1) == synthesize({band}, patch, 1));
  CHECK(!(synthesize({band}, patch, 1) == synthesize({band}, patch, 2)));
  // Two independent bands add in squares: sqrt 2 within a few per cent (some 1500 waves), not 2.
  CHECK(synthesize({band, band}, patch, 1).rms_um() == Approx(std::numbers::sqrt2).epsilon(0.05));
}

TEST_CASE("the rms height per octave is a Gaussian of the bandwidth stated") {
  for (const double octaves : {0.5, 1.0, 2.0}) {
    const double wavelength = 2.5, half = std::pow(2, octaves / 2), whole = half * half;
    const HeightField field = synthesize({{wavelength, 1.0, octaves}}, patch, 5);
    const auto rms = band_rms_um(
        field, {wavelength / whole, wavelength / half, wavelength, wavelength * half, wavelength * whole});
    // Closed form: the square of the Gaussian has the integral erf(u/deviation); cut at two deviations.
    const double inner = std::erf(1) / std::erf(2) / 2, outer = 0.5 - inner;
    const double expected[] = {outer, inner, inner, outer};
    // The long side is sampled by few waves of the patch: 4 % of the band's variance.
    for (std::size_t k = 0; k < 4; ++k) CHECK(rms[k] * rms[k] == Approx(expected[k]).margin(0.04));
  }
}

TEST_CASE("with a lay the slopes across it hold five times the power of those along it") {
  // Closed form for variance cos^4 of the direction: <cos^6>/<cos^4 sin^2> = (5/16)/(1/16); lattice of waves:
  // 3 %.
  const auto [x, y] = slope_powers(synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .lay_deg = 0}}, patch, 1));
  CHECK(y / x == Approx(5).epsilon(0.03));
  const auto [x90, y90] =
      slope_powers(synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .lay_deg = 90}}, patch, 1));
  CHECK(x90 / y90 == Approx(5).epsilon(0.03));
  const auto [x45, y45] =
      slope_powers(synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .lay_deg = 45}}, patch, 1));
  CHECK(x45 / y45 == Approx(1).epsilon(0.03));
}

TEST_CASE("crests run along a slanted lay, angles counted from rows to columns") {
  const HeightField field = synthesize({{.wavelength_mm = 2.5, .rms_um = 1, .lay_deg = 45}}, patch, 1);
  const Array2d& h = field.height_um();
  double along = 0, across = 0;
  for (int i = 0; i < 255; ++i)
    for (int j = 0; j < 255; ++j) {
      along += std::pow(h(i + 1, j + 1) - h(i, j), 2);
      across += std::pow(h(i + 1, j) - h(i, j + 1), 2);
    }
  CHECK(across > 3 * along);  // 5 for infinitely fine pixels (closed form above); finite differences blunt it
}

TEST_CASE("heights are as skew as asked") {
  for (const double asked : {-0.8, -0.3, 0.6}) {
    double mean = 0;
    for (const std::uint64_t seed : {1, 2, 3, 4})
      mean +=
          skewness_of(synthesize({{.wavelength_mm = 1.6, .rms_um = 1, .skewness = asked}}, patch, seed)) / 4;
    CHECK(mean == Approx(asked).margin(
                      0.06));  // some 4000 cells together: sampling spread sqrt(6/4000) = .04, times 1.5
  }
}

TEST_CASE("a band that the grid cannot hold is refused with the limit") {
  const Grid grid{64, 32, 0.2};
  CHECK_THROWS_WITH(synthesize({{.wavelength_mm = 0.3, .rms_um = 1}}, grid, 1),
                    "TextureBand: wavelength_mm must be >= 4 pixels = 0.8 mm (got 0.3 mm)");
  CHECK_THROWS_WITH(synthesize({{.wavelength_mm = 10, .rms_um = 1}}, grid, 1),
                    "TextureBand: wavelength_mm must be <= half the larger patch side = 6.4 mm (got 10 mm)");
  CHECK_THROWS_WITH(
      synthesize({{.wavelength_mm = 5.0, .rms_um = 1, .bandwidth_octaves = 0.1}}, grid, 1),
      "TextureBand: bandwidth_octaves is too narrow: no wave of the ring fits the patch (got 0.1 octaves)");
  CHECK_NOTHROW(synthesize({{.wavelength_mm = 0.8, .rms_um = 1}}, grid, 1));
  CHECK_NOTHROW(synthesize({{.wavelength_mm = 6.4, .rms_um = 1}}, grid, 1));
}

TEST_CASE("a band out of range is refused by name, rule and value") {
  CHECK_THROWS_WITH(TextureBand{}.validate(), "TextureBand: wavelength_mm must be > 0 (got nan mm)");
  CHECK_THROWS_WITH((TextureBand{2, 101}.validate()),
                    "TextureBand: rms_um must be between 0 and 100 (got 101 um)");
  CHECK_THROWS_WITH((TextureBand{2, 1, 5}.validate()),
                    "TextureBand: bandwidth_octaves must be between 0.1 and 4 (got 5 octaves)");
  CHECK_THROWS_AS((TextureBand{2, 1, 1, 400.0}.validate()), InvalidInput);
  CHECK_THROWS_WITH((TextureBand{2, 1, 1, {}, -1}.validate()),
                    "TextureBand: skewness must be between -0.9 and 0.9 (got -1)");
}
