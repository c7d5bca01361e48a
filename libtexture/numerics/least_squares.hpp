#pragma once
// Least squares: the parameters that fit a curve, and how sure they are.

#include <Eigen/Core>
#include <functional>

namespace libtexture {

/// Residuals at parameters: as many as there are observations.
using Residuals = std::function<Eigen::VectorXd(const Eigen::VectorXd&)>;

/// A fit. Standard deviations are those of the linearised problem, residuals taken as independent and alike.
struct LeastSquares {
  Eigen::VectorXd parameters = {};
  Eigen::VectorXd sd = {};  ///< standard deviation of each; infinite where the observations do not fix it
  Eigen::VectorXd residuals = {};  ///< at the parameters
  double residual_sd = 0;          ///< sqrt(sum of squares/degrees_of_freedom)
  int degrees_of_freedom = 0;      ///< observations - parameters, >= 1
};

/// Fits by Levenberg and Marquardt's method (MINPACK's, through Eigen), derivatives by central differences.
/// InvalidInput with fewer than parameters + 1 observations; NotConverged where it stops short of a minimum.
LeastSquares fit_least_squares(const Residuals& residuals, const Eigen::VectorXd& start);

}  // namespace libtexture
