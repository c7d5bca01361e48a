#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/least_squares.hpp"

using namespace libtexture;

TEST_CASE("a national institute's reference fit comes out as certified") {
  // NIST Statistical Reference Datasets, Misra1a, y = b1 (1 - exp(-b2 x)): data and certified values from
  // memory; scipy finds the certified sum of squares on these data. Both of NIST's starting points.
  Eigen::VectorXd x(14), y(14);
  x << 77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0;
  y << 10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78;
  const Residuals residuals = [&](const Eigen::VectorXd& b) -> Eigen::VectorXd {
    return b[0] * (1 - (-b[1] * x.array()).exp()) - y.array();
  };
  for (const Eigen::Vector2d& start : {Eigen::Vector2d(500, 1e-4), Eigen::Vector2d(250, 5e-4)}) {
    const LeastSquares fit = fit_least_squares(residuals, start);
    CHECK(fit.parameters[0] == Catch::Approx(2.3894212918e2).epsilon(1e-6));
    CHECK(fit.parameters[1] == Catch::Approx(5.5015643181e-4).epsilon(1e-6));
    CHECK(fit.sd[0] == Catch::Approx(2.7070075241).epsilon(1e-5));
    CHECK(fit.sd[1] == Catch::Approx(7.2668688436e-6).epsilon(1e-5));
    CHECK(fit.residual_sd == Catch::Approx(1.0187876330e-1).epsilon(1e-8));
    CHECK(fit.degrees_of_freedom == 12);
  }
}

TEST_CASE("a parameter that the observations do not fix is infinitely uncertain") {
  const Residuals residuals = [](const Eigen::VectorXd& b) -> Eigen::VectorXd {
    return Eigen::Vector4d(1, 2, 3, 5) * (b[0] + b[1]) - Eigen::Vector4d(1, 2, 3, 4);
  };
  const LeastSquares fit = fit_least_squares(residuals, Eigen::Vector2d(0, 0));
  CHECK(std::isinf(fit.sd[0]));
  CHECK(std::isinf(fit.sd[1]));
}

TEST_CASE("as many parameters as observations fit anything, and are refused") {
  const Residuals residuals = [](const Eigen::VectorXd& b) -> Eigen::VectorXd { return b; };
  CHECK_THROWS_WITH(fit_least_squares(residuals, Eigen::Vector2d(1, 1)),
                    "LeastSquares: observations must be more than parameters, 2 (got 2)");
}
