// Kinship: what a measurement of one figure says of its kin, against conditioning of normal numbers.
#include <Eigen/Dense>
#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/kinship.hpp"

using namespace libtexture;

namespace {

const std::vector<KinSpread> kin{{.6, .35}, {.5, .2}, {.7, .4}};

/// Covariance of the kin, with what two of them have in common besides.
Eigen::MatrixXd covariance_of(double besides_01 = 0) {
  Eigen::MatrixXd covariance(3, 3);
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
      covariance(i, j) = kin[a].common_sd * kin[b].common_sd + (i == j ? kin[a].own_sd * kin[a].own_sd : 0);
    }
  covariance(0, 1) += besides_01;
  covariance(1, 0) += besides_01;
  return covariance;
}

struct Normal {
  Eigen::VectorXd mean;
  Eigen::MatrixXd covariance;
};

/// Normal numbers once one of them is read with an error: the conditional normal distribution (closed form,
/// any textbook of multivariate statistics).
Normal conditioned(const Normal& prior, int which, double read, double error_sd) {
  const Eigen::VectorXd column = prior.covariance.col(which);
  const double variance = column(which) + error_sd * error_sd;
  return {prior.mean + column * (read - prior.mean(which)) / variance,
          prior.covariance - column * column.transpose() / variance};
}

double sd_of(const Normal& normal, int i) {
  return std::sqrt(normal.covariance(i, i));
}

}  // namespace

TEST_CASE("a spread's parts add as squares") {
  CHECK(kin_spread(.7, .735).log_sd() == Catch::Approx(.7));
  CHECK(kin_spread(.7, .735).share() == Catch::Approx(.735));
  CHECK(kin_spread(.7, .735).common_sd == Catch::Approx(.6).epsilon(.001));  // .6^2/.7^2 = .7347, arithmetic
  CHECK(KinSpread{}.share() == 0);
}

TEST_CASE("what is learned of one is learned of its kin as of correlated normal numbers") {
  // Both sides are closed forms: 1e-12 is rounding.
  Normal exact{Eigen::VectorXd::Zero(3), covariance_of()};
  exact = conditioned(exact, 0, .8, .2);
  const Lesson first{kin[0], exact.mean(0), sd_of(exact, 0)};
  std::vector<Taught> taught{taught_itself(first), taught_kin(first, kin[1]), taught_kin(first, kin[2])};
  for (int i = 0; i < 3; ++i) {
    const Taught& one = taught[static_cast<std::size_t>(i)];
    CHECK(one.shift == Catch::Approx(exact.mean(i)).epsilon(1e-12));
    CHECK(one.spread.log_sd() == Catch::Approx(sd_of(exact, i)).epsilon(1e-12));
    for (int j = 0; j < i; ++j)
      CHECK(one.spread.common_sd * taught[static_cast<std::size_t>(j)].spread.common_sd ==
            Catch::Approx(exact.covariance(i, j)).epsilon(1e-12));
  }
  // A second one, of other kin, goes on from there.
  const Eigen::VectorXd mean = exact.mean;
  exact = conditioned(exact, 1, -.3, .25);
  const Lesson second{taught[1].spread, exact.mean(1) - mean(1), sd_of(exact, 1)};
  for (const int i : {0, 2}) {
    const Taught again = taught_kin(second, taught[static_cast<std::size_t>(i)].spread);
    CHECK(again.shift == Catch::Approx(exact.mean(i) - mean(i)).epsilon(1e-12));
    CHECK(again.spread.log_sd() == Catch::Approx(sd_of(exact, i)).epsilon(1e-12));
  }
}

TEST_CASE("what two have in common besides counts for them") {
  Normal exact{Eigen::VectorXd::Zero(3), covariance_of(.03)};
  exact = conditioned(exact, 0, .8, .2);
  const Taught taught = taught_kin({kin[0], exact.mean(0), sd_of(exact, 0)}, kin[1], .03);
  CHECK(taught.shift == Catch::Approx(exact.mean(1)).epsilon(1e-12));
  CHECK(taught.spread.log_sd() == Catch::Approx(sd_of(exact, 1)).epsilon(1e-12));
}

TEST_CASE("nothing is learned of strangers, nor from a lesson on what was sure") {
  const Lesson lesson{{0, .5}, .4, .1};
  const Taught stranger = taught_kin(lesson, kin[1]);
  CHECK(stranger.shift == 0);
  CHECK(stranger.spread.log_sd() == Catch::Approx(kin[1].log_sd()));
  CHECK(taught_kin({{0, 0}, 0, 0}, kin[1]).spread.common_sd == kin[1].common_sd);
  CHECK(taught_itself({{0, 0}, 0, 0}).spread.log_sd() == 0);
}
