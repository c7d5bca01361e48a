#include "libtexture/plan/compression.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <boost/math/distributions/fisher_f.hpp>
#include <cmath>
#include <set>
#include <utility>
#include <vector>

#include "libtexture/base/error.hpp"
#include "libtexture/base/student_reach.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/numerics/least_squares.hpp"

namespace libtexture {

namespace {

Eigen::ArrayXd array_of(const std::vector<double>& values) {
  return Eigen::Map<const Eigen::ArrayXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

/// A foam that is pressed further pushes back no less; a plateau with its scatter may dip by this share of
/// the greatest force before (estimate).
constexpr double most_fall = 0.25;

void require_rising(const CompressionCurve& curve) {
  std::vector<std::pair<double, double>> rows;  // deflection and force
  for (std::size_t i = 0; i < curve.force_n.size(); ++i)
    rows.emplace_back(curve.deflection_mm[i], curve.force_n[i]);
  std::sort(rows.begin(), rows.end());
  double greatest_n = rows.front().second;
  for (const auto& [deflection_mm, force_n] : rows) {
    require(force_n >= greatest_n - most_fall * std::abs(greatest_n), "CompressionCurve", "force_n",
            "must not fall as the deflection rises, to " + to_text(deflection_mm) + " mm from " +
                to_text(greatest_n) + " N",
            force_n);
    greatest_n = std::max(greatest_n, force_n);
  }
  std::set<double> deflections(curve.deflection_mm.begin(), curve.deflection_mm.end());
  require(deflections.size() >= 3, "CompressionCurve", "deflection_mm",
          "must hold at least three that differ", std::to_string(deflections.size()));
}

}  // namespace

void CompressionCurve::validate() const {
  require_positive(thickness_mm, "CompressionCurve", "thickness_mm");
  require_positive(area_cm2, "CompressionCurve", "area_cm2");
  // From a sheet of foam to a block of it; from a stamp to a press's plate (estimates).
  require_within(thickness_mm, 0.1, 1000, "CompressionCurve", "thickness_mm");
  require_within(area_cm2, 0.01, 1e5, "CompressionCurve", "area_cm2");
  require(force_n.size() >= 4, "CompressionCurve", "force_n", "must hold at least four",
          std::to_string(force_n.size()));
  require(deflection_mm.size() == force_n.size(), "CompressionCurve", "deflection_mm",
          "must be as many as force_n", std::to_string(deflection_mm.size()));
  for (const double force : force_n)
    require(std::isfinite(force), "CompressionCurve", "force_n", "must be finite", force);
  for (const double deflection : deflection_mm)
    require_within(deflection, 0, .6 * thickness_mm, "CompressionCurve", "deflection_mm");
  require_rising(*this);
}

CompressionResult judge_compression(const CompressionCurve& curve) {
  curve.validate();
  const Eigen::ArrayXd strain = array_of(curve.deflection_mm) / curve.thickness_mm;
  const Eigen::ArrayXd stress_kpa = 10 * array_of(curve.force_n) / curve.area_cm2;
  // Through the origin; the start for both fits.
  const double slope_kpa = (strain * stress_kpa).sum() / strain.square().sum();
  require(slope_kpa > 0 && std::isfinite(slope_kpa), "CompressionCurve", "force_n",
          "must rise with deflection", slope_kpa);
  const Residuals straight = [&](const Eigen::VectorXd& p) -> Eigen::VectorXd {
    return stress_kpa - std::exp(p[0]) * strain;
  };
  const Residuals bent = [&](const Eigen::VectorXd& p) -> Eigen::VectorXd {
    const double modulus = std::exp(p[0]), plateau = std::exp(p[1]);
    return stress_kpa +
           plateau * (-modulus / plateau * strain).unaryExpr([](double x) { return std::expm1(x); });
  };
  LeastSquares fit = fit_least_squares(straight, Eigen::VectorXd::Constant(1, std::log(slope_kpa)));
  CompressionResult result;
  try {
    const Eigen::Vector2d start(std::log(1.5 * slope_kpa), std::log(1.5 * stress_kpa.abs().maxCoeff()));
    const LeastSquares with_plateau = fit_least_squares(bent, start);
    const double before = fit.residuals.squaredNorm(), after = with_plateau.residuals.squaredNorm();
    const int freedom = with_plateau.degrees_of_freedom;
    const double f = std::max(0.0, before - after) / (after / freedom);
    result.plateau_p = std::isfinite(f) ? boost::math::cdf(complement(boost::math::fisher_f(1, freedom), f))
                                        : double(before <= after);
    const double reach = student_reach(freedom) * with_plateau.sd[1];
    result.is_plateau_seen = result.plateau_p < .05 && reach < 5;  // wider than e^5 says nothing
    if (result.is_plateau_seen) {
      fit = with_plateau;
      result.plateau_kpa = estimate_of_log(fit.parameters[1], reach);
    }
  } catch (const NotConverged&) {
    // A straight line has no plateau to find.
  }
  result.residual_sd_kpa = fit.residual_sd;
  result.modulus_mpa =
      estimate_of_log(fit.parameters[0], student_reach(fit.degrees_of_freedom) * fit.sd[0], 1e-3);
  return result;
}

}  // namespace libtexture
