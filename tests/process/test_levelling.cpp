#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;
using std::numbers::pi;

namespace {

constexpr double pressure = 1.415;  // [kPa]

Backing film_on_foam() {
  Backing backing;
  backing.skin = Skin{.modulus_gpa = 4.5, .thickness_um = 75, .poisson = 0.38};
  backing.layers = {Layer{.modulus_mpa = 0.2, .thickness_mm = 10, .poisson = 0.1}};
  return backing;
}

// A profile worn by grains whose heights are exponential with scale `grain`: at every place the pressure goes
// as exp((height - face)/grain), there is no gap. Implicit increments, each by a dense Newton's method in the
// logarithm of the pressure; code of its own but for S(q), given as the face's compliance matrix [um/kPa].
double clear_to_fall(Eigen::VectorXd height, const Eigen::MatrixXd& compliance, double grain, double share) {
  const Eigen::Index n = height.size();
  const double increment = 0.01, tau = increment / pressure;
  const auto rms = [](const Eigen::VectorXd& h) { return std::sqrt((h.array() - h.mean()).square().mean()); };
  const double start = rms(height);
  Eigen::VectorXd log_pressure = Eigen::VectorXd::Zero(n);
  double face = height.mean(), removed = 0, last = start;
  while (rms(height) > share * start) {
    last = rms(height);
    for (int turn = 0; turn < 200; ++turn) {
      const Eigen::VectorXd p = pressure * log_pressure.array().exp();
      Eigen::MatrixXd matrix(n + 1, n + 1);
      matrix.topLeftCorner(n, n) = compliance;
      matrix.topLeftCorner(n, n).diagonal().array() += tau;
      matrix.topLeftCorner(n, n) *= p.asDiagonal();
      matrix.topLeftCorner(n, n).diagonal().array() += grain;
      matrix.col(n).head(n).setOnes();
      matrix.row(n).head(n) = p.transpose();
      matrix(n, n) = 0;
      Eigen::VectorXd residual(n + 1);
      residual.head(n) =
          height - tau * p - compliance * p - grain * log_pressure - Eigen::VectorXd::Constant(n, face);
      residual[n] = static_cast<double>(n) * pressure - p.sum();
      const Eigen::VectorXd change = matrix.partialPivLu().solve(residual);
      const double most = change.head(n).cwiseAbs().maxCoeff();
      log_pressure += std::min(1.0, 1 / std::max(1e-9, most)) * change.head(n);
      face += change[n];
      if (most < 1e-9) break;
    }
    height -= tau * pressure * log_pressure.array().exp().matrix();
    removed += increment;
  }
  return removed - increment * (share * start - rms(height)) / (last - rms(height));
}

Eigen::MatrixXd compliance_of(const Backing& backing, int n, double pixel_mm) {
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(n, n);
  for (int wave = 1; wave <= n / 2; ++wave) {
    const double give = 1 / stiffness_kpa_per_um(backing, n * pixel_mm / wave), twice = 2 * wave == n ? 1 : 2;
    for (int i = 0; i < n; ++i)
      for (int j = 0; j < n; ++j) matrix(i, j) += twice * give * std::cos(2 * pi * wave * (i - j) / n) / n;
  }
  return matrix;
}

double clear_to_fall(const HeightField& field, const Backing& backing, double grain_um, double share) {
  std::vector<double> at;
  for (int k = 1; k <= 250; ++k) at.push_back(0.02 * k);
  const Levelled levelled = level(
      field, backing, pressure,
      {.removal_um = at.back(), .report_at_um = at, .amplitude_tolerance_um = 1e-3, .grain_um = grain_um});
  std::size_t k = 0;
  while (levelled.rms_um.at(k) > share * field.rms_um()) ++k;
  const double over = share * field.rms_um() - levelled.rms_um[k];
  return at[k] - 0.02 * over / (levelled.rms_um[k - 1] - levelled.rms_um[k]);
}

}  // namespace

TEST_CASE("grains add their height's scale to the clear of every wave per e-fold, exactly in full contact") {
  // Springs in series, closed form: p/S becomes p/S + grain. In full contact each wave falls by exp(-R/(p/S +
  // grain)).
  const double grain_um = 0.25;
  for (const double wavelength_mm : {3.2, 6.4}) {
    Array2d height(1, 64);
    for (int i = 0; i < 64; ++i) height(0, i) = 0.01 * std::cos(2 * pi * i * 0.2 / wavelength_mm);
    const Levelled levelled =
        level(HeightField(height, 0.2), film_on_foam(), pressure, {.removal_um = 0.3, .grain_um = grain_um});
    const double per_fold = pressure / stiffness_kpa_per_um(film_on_foam(), wavelength_mm) + grain_um;
    CHECK(levelled.surface.rms_um() ==
          Catch::Approx(0.01 / std::sqrt(2.0) * std::exp(-0.3 / per_fold)).epsilon(1e-9));
  }
}

TEST_CASE("springs before the face stand for the grains' exact law: their clear is right within a quarter") {
  const int n = 96;
  const double pixel_mm = 0.25;
  const HeightField field = synthesize(
      {{.wavelength_mm = 3, .rms_um = 0.6}, {.wavelength_mm = 6, .rms_um = 0.3}}, Grid{1, n, pixel_mm}, 4);
  const Eigen::MatrixXd compliance = compliance_of(film_on_foam(), n, pixel_mm);
  const Eigen::VectorXd height = field.height_um().row(0).matrix().transpose();
  for (const double share : {0.5, 0.2}) {
    const double none = clear_to_fall(field, film_on_foam(), 0, share);
    for (const double grain_um : {0.12, 0.30}) {
      const double exact = clear_to_fall(height, compliance, grain_um, share) - none,
                   springs = clear_to_fall(field, film_on_foam(), grain_um, share) - none;
      INFO(share << " " << grain_um << ": " << none << " + " << exact << ", " << springs);
      CHECK(exact > 0);
      // Implicit increments of first order lag by their length, 0.01 um.
      CHECK(springs > 0.75 * exact - 0.01);
      CHECK(springs < 1.1 * exact + 0.01);
    }
  }
}

TEST_CASE("a rigid face has no grains: it is the ideal cut") {
  const HeightField field = synthesize({{.wavelength_mm = 3, .rms_um = 0.6}}, Grid{64, 64, 0.4}, 4);
  CHECK(level(field, Backing::rigid(), pressure, {.removal_um = 0.5, .grain_um = 0.3}).surface ==
        level(field, Backing::rigid(), pressure, {.removal_um = 0.5}).surface);
  CHECK_THROWS_WITH(level(field, film_on_foam(), pressure, {.removal_um = 0.5, .grain_um = -1}),
                    "LevelOptions: grain_um must be >= 0 (got -1 um)");
}
