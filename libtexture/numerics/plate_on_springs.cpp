#include "libtexture/numerics/plate_on_springs.hpp"

#include <algorithm>
#include <array>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;
using Complex = std::complex<double>;

// 1/(q^4 + 1) is the imaginary part of 1/(q^2 + z^2) with z^2 = -i: the plate's deflection is that of the
// membrane equation (z^2 - Laplacian) u = load.
const Complex z = std::polar(1.0, -pi / 4);

// Modified Bessel functions by their integrals, which the trapezoid rule takes to rounding: a periodic
// integrand, and one that falls doubly exponentially.
Complex bessel_i0(Complex x) {
  constexpr int points = 64;
  Complex sum = 0;
  for (int k = 0; k < points; ++k) sum += std::exp(x * std::cos(2 * pi * k / points));
  return sum / double{points};
}

std::array<Complex, 2> bessel_k0_k1(Complex x) {
  constexpr double spacing = 1.0 / 32, negligible = 45;  // exp(-45) is under rounding
  Complex k0 = std::exp(-x) / 2.0, k1 = k0;
  for (double t = spacing; x.real() * (std::cosh(t) - 1) < negligible; t += spacing) {
    const Complex term = std::exp(-x * std::cosh(t));
    k0 += term;
    k1 += term * std::cosh(t);
  }
  return {spacing * k0, spacing * k1};
}

// A load s^power within s = 1: what the membrane would do under it alone, its slope along r at the rim, and
// the part of I0 that joins it to the plate outside.
class Load {
 public:
  Load(int power, double radius) : power_(power), radius_(radius) {
    const auto [k0, k1] = bessel_k0_k1(z * radius);
    const Complex slope =
        power == 0 ? 0.0
                   : 2.0 * power / radius / (z * z) + (power == 2 ? 32 / std::pow(radius, 3) : 0.0) / z4_;
    joined_ = -radius * (z * k1 * alone(1) + k0 * slope);
  }

  double deflection(double s) const {
    return (alone(s) + joined_ * bessel_i0(z * radius_ * std::sqrt(s))).imag();
  }

 private:
  // Load, Laplacian of the load, and Laplacian of that, each over one more z^2.
  Complex alone(double s) const {
    const double r2 = radius_ * radius_;
    const std::array<double, 3> load{1, s, s * s}, once{0, 4 / r2, 16 * s / r2}, twice{0, 0, 64 / (r2 * r2)};
    const auto p = static_cast<std::size_t>(power_);
    return load[p] / (z * z) + once[p] / z4_ + twice[p] / (z4_ * z * z);
  }

  static constexpr double z4_ = -1;  // z^4
  int power_;
  double radius_;
  Complex joined_;
};

PlateDish exact_dish(double radius) {
  const std::array<Load, 3> loads{Load(0, radius), Load(1, radius), Load(2, radius)};
  const auto deeper = [&](std::size_t power, double s) {
    return loads[power].deflection(s) - loads[power].deflection(1);
  };
  return {deeper(0, 0) - deeper(1, 0), deeper(1, 0) - deeper(2, 0), deeper(0, .5) - deeper(1, .5),
          deeper(1, .5) - deeper(2, .5)};
}

// The dish over what bends it: by bending alone it grows as the fourth power of the radius, and as the
// logarithm of the length; on springs alone it is the load itself. Closer to the middle of a length the
// closed form is a small difference of great numbers.
constexpr double least = 0.2, most = 30;  // lengths
constexpr int intervals = 160;
constexpr std::array by_logarithm{1.0 / 16, 1.0 / 48, 1.0 / 32,
                                  1.0 / 96};  // closed form: plate without springs

double growth_of(double radius) {
  const double fourth = std::pow(radius, 4);
  return fourth / (1 + fourth);
}

std::array<double, 4> parts_of(const PlateDish& dish) {
  return {dish.middle_by_even, dish.middle_by_ring, dish.half_way_by_even, dish.half_way_by_ring};
}

class Table {
 public:
  Table() {
    std::array<std::vector<double>, 4> values;
    for (int i = 0; i <= intervals; ++i) {
      const double radius = least * std::exp(i * spacing);
      const std::array<double, 4> parts = parts_of(exact_dish(radius));
      for (std::size_t part = 0; part < 4; ++part) values[part].push_back(parts[part] / growth_of(radius));
    }
    for (const std::vector<double>& part : values)
      curves_.emplace_back(part.begin(), part.end(), 0.0, spacing);
  }

  double at(std::size_t part, double radius) const {
    const double place = std::clamp(std::log(radius / least), 0.0, intervals * spacing);
    const double beyond = by_logarithm[part] * std::max(0.0, std::log(least / radius));
    return growth_of(radius) * (curves_[part](place) + beyond);
  }

 private:
  static inline const double spacing = std::log(most / least) / intervals;
  std::vector<boost::math::interpolators::cardinal_cubic_b_spline<double>> curves_;
};

}  // namespace

PlateDish plate_dish(double radius_in_lengths) {
  require_positive(radius_in_lengths, "plate on springs", "radius_in_lengths");
  static const Table table;
  const auto part = [&](std::size_t k) { return table.at(k, radius_in_lengths); };
  return {part(0), part(1), part(2), part(3)};
}

}  // namespace libtexture
