#include "libtexture/numerics/least_squares.hpp"

#include <Eigen/QR>
#include <cmath>
#include <limits>
#include <unsupported/Eigen/NonLinearOptimization>
#include <unsupported/Eigen/NumericalDiff>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

/// As Eigen's solver wants it.
struct Problem {
  using Scalar = double;
  using InputType = Eigen::VectorXd;
  using ValueType = Eigen::VectorXd;
  using JacobianType = Eigen::MatrixXd;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };

  const Residuals& residuals;
  int parameters;
  int observations;

  int inputs() const { return parameters; }
  int values() const { return observations; }
  int operator()(const Eigen::VectorXd& at, Eigen::VectorXd& out) const {
    out = residuals(at);
    return out.allFinite() ? 0 : -1;
  }
};

/// sqrt of the diagonal of (J'J)^-1, columns scaled so that units do not matter.
Eigen::VectorXd unit_sd(const Eigen::MatrixXd& jacobian) {
  const Eigen::Index n = jacobian.cols();
  const Eigen::VectorXd scale = jacobian.colwise().norm();
  if (!(scale.minCoeff() > 0)) return Eigen::VectorXd::Constant(n, HUGE_VAL);
  const Eigen::MatrixXd scaled = jacobian * scale.cwiseInverse().asDiagonal();
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(scaled);
  qr.setThreshold(1e-7);  // central differences are good to about 1e-10; below this a direction is not fixed
  if (qr.rank() < n) return Eigen::VectorXd::Constant(n, HUGE_VAL);
  // With J+ = (J'J)^-1 J' the rows of J+ have the lengths wanted: J+ J+' = (J'J)^-1.
  const Eigen::MatrixXd pseudo_inverse = qr.solve(Eigen::MatrixXd::Identity(jacobian.rows(), jacobian.rows()));
  return pseudo_inverse.rowwise().norm().cwiseQuotient(scale);
}

}  // namespace

LeastSquares fit_least_squares(const Residuals& residuals, const Eigen::VectorXd& start) {
  const Eigen::VectorXd first = residuals(start);
  const int n = static_cast<int>(start.size()), observations = static_cast<int>(first.size());
  require(n >= 1, "LeastSquares", "parameters", "must be at least one", n);
  require(observations > n, "LeastSquares", "observations",
          "must be more than parameters, " + std::to_string(n), observations);
  require(first.allFinite(), "LeastSquares", "start", "must give finite residuals", "others");
  using Differences = Eigen::NumericalDiff<Problem, Eigen::Central>;
  // Steps of cbrt(epsilon) are right for central differences; Eigen takes the square root of what it is
  // given.
  Differences problem(Problem{residuals, n, observations},
                      std::pow(std::numeric_limits<double>::epsilon(), 2.0 / 3));
  Eigen::LevenbergMarquardt<Differences> solver(problem);
  solver.parameters.maxfev = 10000;
  solver.parameters.xtol = solver.parameters.ftol = 1e-12;
  LeastSquares fit;
  fit.parameters = start;
  const int status = solver.minimize(fit.parameters);
  fit.residuals = residuals(fit.parameters);
  fit.degrees_of_freedom = observations - n;
  fit.residual_sd = std::sqrt(fit.residuals.squaredNorm() / fit.degrees_of_freedom);
  using Status = Eigen::LevenbergMarquardtSpace::Status;
  if (status == Status::ImproperInputParameters || status == Status::TooManyFunctionEvaluation ||
      status == Status::UserAsked || !fit.residuals.allFinite())
    throw NotConverged("least squares", static_cast<int>(solver.nfev), solver.gnorm, 1e-12);
  Eigen::MatrixXd jacobian(observations, n);
  problem.df(fit.parameters, jacobian);
  fit.sd = fit.residual_sd * unit_sd(jacobian);
  return fit;
}

}  // namespace libtexture
