#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

constexpr double pi = std::numbers::pi;

/// Shifts that are distributed as a Gaussian of this deviation: its quantiles.
Array2d gaussian_shifts(double deviation) {
  const int count = 20000;
  Array2d shifts(1, count);
  for (int i = 0; i < count; ++i)
    shifts(0, i) = deviation * std::numbers::sqrt2 * boost::math::erf_inv(2 * (i + 0.5) / count - 1);
  return shifts;
}

Array2d sinusoidal_shifts(double most) {
  const int count = 20000;
  Array2d shifts(1, count);
  for (int i = 0; i < count; ++i) shifts(0, i) = most * std::sin(2 * pi * (i + 0.5) / count);
  return shifts;
}

}  // namespace

// Tolerance 5e-4 below: the comb is read in 16384 places a line, and the shares are steep where a sinusoid
// turns.

TEST_CASE("a Gaussian image shift blurs a comb as its Fourier series says") {
  const std::pair<double, double> figures[] = {
      {0.1, 0.999999}, {0.3, 0.808840}, {0.5, 0.370777}, {1, 0.009157}};
  for (const auto& [s_over_w, expected] : figures) {  // closed form (series), rounded to six decimals
    for (const double comb_mm : {0.25, 2.0}) {
      CHECK(gaussian_comb_contrast(s_over_w * comb_mm, comb_mm) == Approx(expected).margin(1e-6));
      CHECK(comb_contrast(gaussian_shifts(s_over_w * comb_mm), comb_mm) == Approx(expected).margin(5e-4));
    }
  }
  CHECK(gaussian_comb_contrast(0, 0.5) == 1);
  CHECK(gaussian_comb_contrast(0.005001, 0.5) == Approx(1).epsilon(1e-12));  // where the series begins
  CHECK(gaussian_comb_contrast(50, 0.5) < 1e-15);
}

TEST_CASE("a field of random waves reads on every comb what the Gaussian closed form says") {
  const HeightField field = synthesize({{3, 0.4, 1}, {6, 0.4, 1}}, Grid{512, 512, 0.15}, 4);
  const double shift_sd_mm = 2 * 150 * rms_slope(field, Direction::rows);
  const std::vector<double> percent = image_clarity_by_comb_percent(field);
  REQUIRE(percent.size() == standard_combs_mm.size());
  for (std::size_t k = 0; k < percent.size(); ++k) {
    INFO(standard_combs_mm[k]);
    CHECK(percent[k] == image_clarity_percent(field, {.comb_mm = standard_combs_mm[k]}));
    // 3: the patch's few hundred long waves are not quite Gaussian; the slit of .03 mm takes less than 1.
    CHECK(percent[k] == Approx(100 * gaussian_comb_contrast(shift_sd_mm, standard_combs_mm[k])).margin(3));
  }
}

TEST_CASE("a sinusoidal image shift blurs a comb as its arcs say, up and down again") {
  for (const double x : {0.1, 0.3, 0.499})
    CHECK(comb_contrast(sinusoidal_shifts(x), 1) == Approx(1).margin(5e-4));
  // Closed form (below), rounded to four decimals.
  const std::pair<double, double> figures[] = {
      {0.6, 0.464559}, {0.75, 0.2163}, {0.8, 0.1609}, {1, 0.3333}, {1.2, 0.4528}};
  for (const auto& [x, expected] : figures)
    CHECK(comb_contrast(sinusoidal_shifts(x), 1) == Approx(expected).margin(5e-4));
  for (const double x : {0.55, 0.7, 0.9, 0.97})
    CHECK(comb_contrast(sinusoidal_shifts(x), 1) ==
          Approx(std::max(2 / pi * std::asin(1 / x - 1), std::abs(4 / pi * std::asin(0.5 / x) - 1)))
              .margin(5e-4));
  for (const double x : {1.1, 1.45})
    CHECK(comb_contrast(sinusoidal_shifts(x), 1) == Approx(1 - 4 / pi * std::asin(0.5 / x)).margin(5e-4));
}

TEST_CASE("the slit blurs too: alone it takes nothing until it is as wide as a line") {
  const Array2d none = Array2d::Zero(1, 1);
  CHECK(comb_contrast(none, 0.125, 0.03) == Approx(1).margin(5e-4));
  CHECK(comb_contrast(none, 1, 1) == Approx(1).margin(1.5e-3));  // one place either side is lost
  // A slit of 1.5 lines: at best one line and half a gap in view (closed form): 2/3 against 1/3.
  CHECK(comb_contrast(none, 1, 1.5) == Approx(1.0 / 3).margin(1e-3));
}

TEST_CASE("a wave shifts the image by twice the focal length times its slope") {
  Array2d heights(4, 4096);  // amplitude such that the largest shift is .6 lines
  const double comb_mm = 0.5, wavelength_mm = 4096 * 0.01 / 8;
  const double amplitude_um = 0.6 * comb_mm / (2 * 150) / (2 * pi / wavelength_mm) * 1e3;
  for (int j = 0; j < 4096; ++j) heights.col(j) = amplitude_um * std::cos(2 * pi * 8 * j / 4096.0);
  const HeightField field(heights, 0.01);
  ClarityOptions options{.comb_mm = comb_mm, .slit_mm = 0};
  // Closed form as above; 512 different pixels of a wave, so that the shares come in steps of 1/512 at two
  // edges.
  CHECK(image_clarity_percent(field, options) == Approx(46.4559).margin(0.8));
  options.direction = Direction::columns;
  CHECK(image_clarity_percent(field, options) == Approx(100).margin(0.05));
}

TEST_CASE("1 um rms at 2.5 mm is lost on fine combs, and seen on coarse ones") {
  const HeightField field = synthesize({{2.5, 1.0, 0.1}}, Grid{512, 512, 0.15}, 1);
  // Closed form for a narrow ring: 2 pi/2.5 mm/sqrt 2 = 1.777e-3; the ring's width adds (.07/2)^2 of it.
  CHECK(rms_slope(field, Direction::rows) == Approx(1.777e-3).epsilon(0.02));
  const double figures[][2] = {{0.125, 0}, {0.25, 0}, {0.5, 0}, {1, 31}, {2, 88}};
  for (const auto& [comb_mm, expected] :
       figures)  // Gaussian closed form; 3: the patch's 1900 waves are not quite Gaussian
    CHECK(image_clarity_percent(field, {.comb_mm = comb_mm}) == Approx(expected).margin(3));
}

TEST_CASE("scratches veil the comb, more so from above than along the panel") {
  const HeightField flat(Array2d::Zero(8, 8), 0.1);
  ClarityOptions options{.grooves = {{0.1, 5}}};
  CHECK(image_clarity_percent(flat) == Approx(100).margin(0.05));
  const double share = specular_share(options.grooves, 45), veil = haze_share(options.grooves, 45, 0, 3);
  CHECK(image_clarity_percent(flat, options) == Approx(100 * share / (share + veil)).margin(0.05));
  const double at_45 = image_clarity_percent(flat, options);
  options.angle_deg = 75;
  CHECK(image_clarity_percent(flat, options) > at_45 + 10);
}

TEST_CASE("a tilt of half an arcminute moves a distant image by one") {
  // ISO 8596 stroke; closed form: amplitudes that reach it, in four digits.
  const double figures[][2] = {{1, 0.0231}, {2, 0.0463}, {5, 0.1157}, {10, 0.2315}};
  for (const auto& [wavelength_mm, amplitude_um] : figures) {
    Array2d heights(1, 64);
    for (int j = 0; j < 64; ++j) heights(0, j) = amplitude_um * std::cos(2 * pi * 4 * j / 64);
    const HeightField field(heights, wavelength_mm / 16);
    const double largest = image_wander_arcmin(field, Direction::rows) * std::numbers::sqrt2;
    CHECK(largest == Approx(1).epsilon(2.5e-3));
  }
}

TEST_CASE("letters of 5 arcminutes are read in a still mirror, larger ones where the image wanders") {
  CHECK(smallest_letter_mm(0, 2) ==
        Approx(2.9089).margin(6e-5));  // ISO 8596; closed form, rounded to four decimals
  CHECK(smallest_letter_mm(0.5, 6) == Approx(8.7266).margin(6e-5));
  CHECK(smallest_letter_mm(3, 2) == Approx(3 * 2.9089).epsilon(1e-4));  // our rule; the tangent bends little
  CHECK(limit_of_sight_mm(2) == smallest_letter_mm(0, 2));
}

TEST_CASE("a veil lets only larger letters be read, and in the end none") {
  // Acuity of normal eyes by contrast C [%] at L = 100 cd/m2, L/(1.6293 C^-0.3234 (0.8034 C^-0.1876 +
  // L^(1/4))^4): a published fit to Landolt rings (Ikeda, Noda and Yamaguchi; the formula is read from a
  // collection of lighting formulas, not from the paper), as its value at 100 % over that at C. One power of
  // the contrast follows it within 7 % from 100 to 1000 cd/m2.
  const double figures[][2] = {{0.05, 3.49}, {0.10, 2.58}, {0.20, 1.92}, {0.40, 1.45}, {0.80, 1.09}};
  for (const auto& [contrast, growth] : figures)
    CHECK(*smallest_letter_mm(0, 2, contrast) / limit_of_sight_mm(2) == Approx(growth).epsilon(0.07));
  // A lamp can be made out from about .05 (estimate, docs/physics.md 50): below it no letter is read, however
  // still the mirror.
  CHECK_FALSE(smallest_letter_mm(0, 2, 0.049).has_value());
  CHECK_FALSE(smallest_letter_mm(0, 2, 0).has_value());
  // Strokes that the wander asks for are wide enough to be told behind a thin veil.
  CHECK(smallest_letter_mm(3, 2, 0.5) == smallest_letter_mm(3, 2));
  CHECK_THROWS_WITH(smallest_letter_mm(0, 2, 1.5),
                    "smallest_letter_mm: contrast must be between 0 and 1 (got 1.5)");
}

TEST_CASE("a surface of unlike parts mirrors the mean of their light") {
  const std::vector<GroovePopulation> coarse{{0.2, 5}};
  const MirroredLight whole = mirrored_light({{coarse, 1}}),
                      half = mirrored_light({{{}, 0.5}, {coarse, 0.5}});
  CHECK(whole.specular == specular_share(coarse, 45));
  CHECK(half.specular == Approx((1 + whole.specular) / 2));
  CHECK(half.veil == Approx(whole.veil / 2));
  CHECK(half.contrast() == lamp_visibility(half.specular));
  const HeightField flat(Array2d::Zero(1, 64), 0.1);
  CHECK(100 * whole.clarity_share() ==
        Approx(image_clarity_percent(flat, {.grooves = coarse})).epsilon(1e-3));
  CHECK(mirrored_light({DepthLaw{}}).clarity_share() == 1);
}

TEST_CASE("a comb, a slit or an angle that cannot be is refused") {
  const HeightField flat(Array2d::Zero(1, 4), 0.1);
  CHECK_THROWS_WITH(image_clarity_percent(flat, {.comb_mm = 0}),
                    "ClarityOptions: comb_mm must be > 0 (got 0 mm)");
  CHECK_THROWS_WITH(image_clarity_percent(flat, {.distance_mm = -1}),
                    "ClarityOptions: distance_mm must be > 0 (got -1 mm)");
  CHECK_THROWS_AS(image_clarity_percent(flat, {.angle_deg = 90}), InvalidInput);
  CHECK_THROWS_AS(comb_contrast(Array2d(), 1), InvalidInput);
  CHECK_THROWS_AS(smallest_letter_mm(-1, 2), InvalidInput);
}
