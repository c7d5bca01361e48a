// Static contact against closed forms.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/numerics/contact.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;
constexpr double pi = std::numbers::pi;

struct Solved {
  Values pressure, gap;
  ContactReport report;
};

Solved press(const Grid& grid, const Values& height, const Values& stiffness, double mean_pressure,
             double tolerance) {
  Solved solved;
  solved.report =
      Contact(grid, stiffness).solve(height, mean_pressure, solved.pressure, solved.gap, {tolerance, 5000});
  return solved;
}

// E* q/2 (Johnson, Contact Mechanics, 1985, ch. 13).
Values half_space(const Grid& grid, double modulus_pa) {
  Values stiffness;
  for (const double q : wave_numbers_per_m(grid)) stiffness.push_back(modulus_pa * q / 2);
  return stiffness;
}

Values springs(const Grid& grid, double stiffness_pa_per_m) {
  return Values(static_cast<std::size_t>(grid.rows) * grid.half_cols(), stiffness_pa_per_m);
}

double greatest(const Values& values) {
  return *std::max_element(values.begin(), values.end());
}

}  // namespace

TEST_CASE("a sinusoid on a half-space touches, presses and gapes as Westergaard says") {
  // Westergaard (1939), by Johnson (1985) sec. 13.2: p* = pi E* A/lambda, contact share (2/pi) asin
  // sqrt(p/p*), p_max = 2 sqrt(p p*); the mean gaps are that solution's, integrated.
  const int n = 256;
  const Grid grid{1, n, 0.01};
  const double modulus_pa = 1e9, amplitude_m = 1e-6,
               p_star = pi * modulus_pa * amplitude_m / (grid.width_mm() * 1e-3);
  Values height(n);
  for (int j = 0; j < n; ++j) height[j] = amplitude_m * std::cos(2 * pi * j / n);
  struct Row {
    double load, share, most_over_p_star, gap_over_2a;
  };
  for (const Row& row : {Row{.25, 1. / 3, 1, .201713}, Row{.5, .5, 1.414214, .076713}}) {
    const Solved solved = press(grid, height, half_space(grid, modulus_pa), row.load * p_star, 1e-10);
    CHECK(std::abs(solved.report.contact_share - row.share) <= 2. / n);  // a pixel at each rim
    CHECK(greatest(solved.pressure) / p_star ==
          Catch::Approx(row.most_over_p_star).epsilon(1e-3));  // of N = 256
    CHECK(solved.report.mean_gap / (2 * amplitude_m) ==
          Catch::Approx(row.gap_over_2a).epsilon(1e-3));  // of N = 256
  }
}

TEST_CASE("a sinusoid on a half-space at p* is in full contact with pressures from 0 to 2 p*") {
  const Grid grid{1, 256, 0.01};  // Westergaard (1939), by Johnson (1985) sec. 13.2
  const double p_star = pi * 1e9 * 1e-6 / (grid.width_mm() * 1e-3);
  Values height(256);
  for (int j = 0; j < 256; ++j) height[j] = 1e-6 * std::cos(2 * pi * j / 256);
  const Solved solved = press(grid, height, half_space(grid, 1e9), 1.001 * p_star, 1e-10);
  CHECK(solved.report.contact_share == 1);
  for (int j = 0; j < 256; ++j)
    CHECK(solved.pressure[j] / p_star ==
          Catch::Approx(1.001 + std::cos(2 * pi * j / 256)).margin(1e-9));  // rounding
}

TEST_CASE("a sphere on a half-space touches as Hertz says") {
  // Johnson (1985) ch. 4: a = (3 F R/4 E*)^(1/3), p0 = 3 F/(2 pi a^2), approach a^2/R: 90.8560 um, 57.8407
  // MPa, 8.25482 um for R = 1 mm, E* = 1 GPa, F = 1 N. The patch repeats, so neighbouring spheres at 12 a
  // help to carry: the peak pressure and the radius change by (a/L)^3, below the pixels' own 1 %.
  const int n = 512;
  const double radius_m = 1e-3, modulus_pa = 1e9, force_n = 1, side_m = 12 * 90.8560e-6, pixel_m = side_m / n;
  const Grid grid{n, n, pixel_m * 1e3};
  Values height(grid.size());
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j)
      height[i * n + j] =
          -(std::pow((i - n / 2) * pixel_m, 2) + std::pow((j - n / 2) * pixel_m, 2)) / (2 * radius_m);
  const Solved solved = press(grid, height, half_space(grid, modulus_pa), force_n / (side_m * side_m), 1e-9);
  const double touched_m2 = solved.report.contact_share * side_m * side_m;
  CHECK(std::sqrt(touched_m2 / pi) == Catch::Approx(90.8560e-6).epsilon(0.01));  // a pixel is 2.3 % of a
  CHECK(greatest(solved.pressure) == Catch::Approx(57.8407e6).epsilon(0.003));
  // Pressure over the whole contact is the half ellipsoid p0 sqrt(1 - (r/a)^2).
  for (int j = 0; j < 32; ++j) {
    const double r = j * pixel_m / 90.8560e-6;
    CHECK(solved.pressure[n / 2 * n + n / 2 + j] ==
          Catch::Approx(57.8407e6 * std::sqrt(1 - r * r)).epsilon(0.01));
  }
}

TEST_CASE("a sphere on a half-space approaches as Hertz says") {
  // The approach a^2/R = (9 F^2/(16 R E*^2))^(1/3) is told against the free surface far away, which a
  // periodic patch has not. To first order the patch adds a displacement c F. From the forces f, 2f, 4f it
  // falls out.
  const int n = 512;
  const double radius_m = 1e-3, modulus_pa = 1e9, side_m = 1.2e-3, pixel_m = side_m / n;
  const Grid grid{n, n, pixel_m * 1e3};
  Values height(grid.size());
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j)
      height[i * n + j] =
          -(std::pow((i - n / 2) * pixel_m, 2) + std::pow((j - n / 2) * pixel_m, 2)) / (2 * radius_m);
  // Mean face height is 0 (S(0) has no meaning): where the summit meets it is the approach, up to c F.
  const auto approach = [&](double force_n) {
    const Solved solved =
        press(grid, height, half_space(grid, modulus_pa), force_n / (side_m * side_m), 1e-9);
    double height_mean = 0;
    for (const double h : height) height_mean += h / grid.size();
    return -(solved.report.mean_gap + height_mean);  // depth of the summit (height 0) in the mean face
  };
  const auto hertz = [&](double force_n) {  // Johnson (1985) ch. 4; 8.25482 um at 1 N
    return std::cbrt(9 * force_n * force_n / (16 * radius_m * modulus_pa * modulus_pa));
  };
  const double f = .25, one = approach(f), two = approach(2 * f), four = approach(4 * f);
  CHECK(hertz(1) == Catch::Approx(8.25482e-6).epsilon(1e-6));
  const double wanted = hertz(4 * f) - 4 * hertz(2 * f) + 4 * hertz(f);
  CHECK(four - 4 * two + 4 * one ==
        Catch::Approx(wanted).epsilon(0.01));  // contact radius of 28 pixels and more
}

TEST_CASE("springs press where the surface stands above one height, by that much") {
  // Closed form: p = k max(0, h - z), z by the mean; here cos: sin t - t cos t = pi P with P = p_mean/(k A).
  const int n = 512;
  const Grid grid{1, n, 0.01};
  Values height(n);
  const double amplitude_m = 1e-6, k = 1e9, t = 1.1, load = (std::sin(t) - t * std::cos(t)) / pi;
  for (int j = 0; j < n; ++j) height[j] = amplitude_m * std::cos(2 * pi * j / n);
  const Solved solved = press(grid, height, springs(grid, k), load * k * amplitude_m, 1e-12);
  CHECK(solved.report.contact_share == Catch::Approx(t / pi).margin(2. / n));  // a pixel at each rim
  // The trapezoid rule over a kinked integrand errs by (1/N)^2 or so: 1e-4.
  for (int j = 0; j < n; ++j)
    CHECK(solved.pressure[j] == Catch::Approx(k * std::max(0.0, height[j] - amplitude_m * std::cos(t)))
                                    .margin(1e-4 * k * amplitude_m));
}

TEST_CASE("a crest on springs carries its line load on the half-width (3 rho P'/2k)^(1/3)") {
  // Closed form: p = k (a^2 - x^2)/(2 rho), P' = 2 k a^3/(3 rho), p_max = k a^2/(2 rho): why body lines burn
  // through.
  const int n = 2048;
  const double pixel_m = 5e-6, rho = 3e-3, k = 3e7, load_n_per_m = 2;
  const Grid grid{1, n, pixel_m * 1e3};
  Values height(n);
  for (int j = 0; j < n; ++j) height[j] = -std::pow((j - n / 2) * pixel_m, 2) / (2 * rho);
  const double a = std::cbrt(3 * rho * load_n_per_m / (2 * k));
  const Solved solved = press(grid, height, springs(grid, k), load_n_per_m / (n * pixel_m), 1e-12);
  CHECK(solved.report.contact_share * n * pixel_m / 2 == Catch::Approx(a).margin(pixel_m));
  CHECK(greatest(solved.pressure) ==
        Catch::Approx(k * a * a / (2 * rho)).epsilon(1e-4));  // (pixel/a)^2 = 4e-5
}
