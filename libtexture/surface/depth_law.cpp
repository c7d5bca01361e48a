#include "libtexture/surface/depth_law.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {
namespace {

double deeper_share_unchecked(const std::vector<DepthLaw>& parts, double depth_um) {
  double share = 0;
  for (const DepthLaw& part : parts) {
    double over = 0;  // mean number of grooves over a point that reach below the depth
    for (const GroovePopulation& grooves : part.grooves)
      over += grooves.coverage * std::exp(-depth_um / grooves.depth_um);
    share -= part.area_share * std::expm1(-over);
  }
  return share;
}

// Below this depth less than e^-40 of the area is left out.
double greatest_depth_um(const std::vector<DepthLaw>& parts) {
  double depth_um = 0;
  for (const DepthLaw& part : parts)
    for (const GroovePopulation& grooves : part.grooves)
      depth_um = std::max(depth_um, grooves.depth_um * (40 + std::log(std::max(1.0, grooves.coverage))));
  return depth_um;
}

// int z^power P(depth > z) dz.
double moment(const std::vector<DepthLaw>& parts, int power) {
  const double most_um = greatest_depth_um(parts);
  if (most_um == 0) return 0;
  const auto integrand = [&](double z) { return std::pow(z, power) * deeper_share_unchecked(parts, z); };
  return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(integrand, 0.0, most_um, 12, 1e-9);
}

}  // namespace

void GroovePopulation::validate() const {
  require_positive(depth_um, "GroovePopulation", "depth_um");
  require_not_negative(coverage, "GroovePopulation", "coverage");
}

void validate(const std::vector<DepthLaw>& parts) {
  double total = 0;
  for (const DepthLaw& part : parts) {
    require_within(part.area_share, 0, 1, "DepthLaw", "area_share");
    total += part.area_share;
    for (const GroovePopulation& grooves : part.grooves) grooves.validate();
  }
  require(std::abs(total - 1) <= 1e-9, "DepthLaw", "area_share", "must sum to 1 over the parts", total);
}

double deeper_share(const std::vector<DepthLaw>& parts, double depth_um) {
  validate(parts);
  require_not_negative(depth_um, "deeper_share", "depth_um");
  return deeper_share_unchecked(parts, depth_um);
}

double unmarked_share(const std::vector<DepthLaw>& parts) {
  validate(parts);
  return 1 - deeper_share_unchecked(parts, 0);
}

double mean_depth_um(const std::vector<DepthLaw>& parts) {
  validate(parts);
  return moment(parts, 0);
}

double depth_rms_nm(const std::vector<DepthLaw>& parts) {
  validate(parts);
  const double mean_um = moment(parts, 0);
  return 1e3 * std::sqrt(std::max(0.0, 2 * moment(parts, 1) - mean_um * mean_um));
}

}  // namespace libtexture
