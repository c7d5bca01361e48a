#include "libtexture/surface/specular_share.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <complex>
#include <numbers>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

using Complex = std::complex<double>;
constexpr double degree = std::numbers::pi / 180;

/// Depth beyond which less than 1e-17 of the surface lies.
double deepest_um(const std::vector<GroovePopulation>& grooves) {
  double deepest = 0;
  for (const auto& [depth, coverage] : grooves)
    if (coverage > 0) deepest = std::max(deepest, depth * std::log(1 + 1e17 * coverage));
  return deepest;
}

/// Share of the surface that lies deeper than z.
double share_deeper(const std::vector<GroovePopulation>& grooves, double z_um) {
  double grooves_deeper = 0;
  for (const auto& [depth, coverage] : grooves) grooves_deeper += coverage * std::exp(-z_um / depth);
  return -std::expm1(-grooves_deeper);
}

Complex mean_phase(const std::vector<GroovePopulation>& grooves, double k_per_um) {
  const auto integrand = [&](double z) { return std::polar(share_deeper(grooves, z), -k_per_um * z); };
  // One wave at a time: no panel holds more than one turn of the phase.
  const double deepest = deepest_um(grooves);
  const int panels = 1 + static_cast<int>(k_per_um * deepest / (2 * std::numbers::pi));
  Complex integral = 0;
  for (int i = 0; i < panels; ++i)
    integral += boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
        integrand, deepest * i / panels, deepest * (i + 1) / panels, 12, 1e-11);
  return 1.0 - Complex(0, k_per_um) * integral;
}

}  // namespace

double specular_share(const std::vector<GroovePopulation>& grooves, double angle_deg, double wavelength_nm) {
  for (const GroovePopulation& population : grooves) population.validate();
  require(angle_deg >= 0 && angle_deg < 90, "specular_share", "angle_deg", "must be >= 0 and < 90 degrees",
          angle_deg);
  require_positive(wavelength_nm, "specular_share", "wavelength_nm");
  const double k_per_um = 4 * std::numbers::pi * std::cos(angle_deg * degree) / (wavelength_nm * 1e-3);
  return std::min(1.0, std::norm(mean_phase(grooves, k_per_um)));
}

double haze_share(const std::vector<GroovePopulation>& grooves, double angle_deg, double from_deg,
                  double to_deg, double flank_deg) {
  require_not_negative(from_deg, "haze_share", "from_deg");
  require(to_deg >= from_deg, "haze_share", "to_deg", "must be >= from_deg", to_deg);
  require(flank_deg > 0 && flank_deg < 90, "haze_share", "flank_deg", "must be > 0 and < 90 degrees",
          flank_deg);
  const double scattered = 1 - specular_share(grooves, angle_deg);
  constexpr double grazing = 90 * degree;
  const double from = std::min(from_deg * degree, grazing), to = std::min(to_deg * degree, grazing);
  double within = 0, coverages = 0;
  for (const auto& [depth, coverage] : grooves) {
    const double width_um = 2 * depth * std::tan(flank_deg * degree);
    const double lobe = light_wavelength_nm * 1e-3 / (std::numbers::pi * width_um) * std::numbers::sqrt2;
    within += coverage * (std::erf(to / lobe) - std::erf(from / lobe)) / std::erf(grazing / lobe);
    coverages += coverage;
  }
  return coverages == 0 ? 0 : scattered * within / coverages;
}

double lamp_visibility(double specular_share, double fill) {
  require_within(specular_share, 0, 1, "lamp_visibility", "specular_share");
  require_within(fill, 0, 1, "lamp_visibility", "fill");
  if (specular_share == 0) return 0;
  return specular_share / (specular_share + 2 * fill * (1 - specular_share));
}

}  // namespace libtexture
