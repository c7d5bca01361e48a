// The formulas of scratches against a direct simulation that knows none of them: triangular grooves fall at
// random places and times on a profile while its top recedes; what is left of them is measured. Seeded
// (Boost.Random). Each figure is compared within four standard errors, measured from independent profiles,
// and the standard error itself is bounded, so that the comparison stays sharp. By chance one correct figure
// in 16 000 would fail.

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/random/exponential_distribution.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>
#include <cmath>
#include <functional>
#include <limits>

#include "catch.hpp"
#include "libtexture/process/scratches.hpp"

using namespace libtexture;

namespace {

constexpr double length_um = 400;
constexpr double spacing_um = 0.05;
constexpr int points = 8000;
constexpr int profiles = 250;
constexpr double no_cap = std::numeric_limits<double>::infinity();

struct Cut {
  GrooveFigures figures;
  double removal_um;
};

// Depth below the top at each point after the cuts, and whether a groove of the first cut is left there.
struct Profile {
  std::vector<double> depth_um = std::vector<double>(points, 0.0);
  std::vector<bool> has_first = std::vector<bool>(points, false);
};

Profile simulate(const std::vector<Cut>& cuts, double cap_in_depths, boost::random::mt19937& random) {
  Profile profile;
  double removal_to_come_um = 0;
  for (const Cut& cut : cuts) removal_to_come_um += cut.removal_um;
  for (const Cut& cut : cuts) {
    if (cut.removal_um == 0) continue;
    const double delta_um = cut.figures.depth_um;
    const double slope = std::tan(cut.figures.half_angle_deg * boost::math::constants::degree<double>());
    // K_inf = 1/chip share: removing dR takes dR length/(mean chip area), with triangles of mean area 2
    // delta^2 slope.
    const double grooves =
        cut.figures.coverage * cut.removal_um * length_um / (2 * delta_um * delta_um * slope);
    const int count = boost::random::poisson_distribution<int, double>(grooves)(random);
    boost::random::exponential_distribution<double> depth(1 / delta_um);
    boost::random::uniform_real_distribution<double> place(0, length_um);
    boost::random::uniform_real_distribution<double> time(0, cut.removal_um);
    for (int groove = 0; groove < count; ++groove) {
      const double centre_um = place(random);
      const double worn_um = removal_to_come_um - time(random);
      const double left_um = std::min(depth(random), cap_in_depths * delta_um) - worn_um;
      if (left_um <= 0) continue;
      const int first = static_cast<int>(std::ceil((centre_um - left_um * slope) / spacing_um));
      const int last = static_cast<int>(std::floor((centre_um + left_um * slope) / spacing_um));
      for (int i = first; i <= last; ++i) {
        const int point = (i % points + points) % points;
        const double here_um = left_um - std::abs(i * spacing_um - centre_um) / slope;
        profile.depth_um[point] = std::max(profile.depth_um[point], here_um);
        if (&cut == &cuts.front()) profile.has_first[point] = true;
      }
    }
    removal_to_come_um -= cut.removal_um;
  }
  return profile;
}

struct Measured {
  double mean;
  double standard_error;
};

Measured over_profiles(const std::vector<Profile>& sample,
                       const std::function<double(const Profile&)>& figure) {
  double sum = 0;
  double squares = 0;
  for (const Profile& profile : sample) {
    const double value = figure(profile);
    sum += value;
    squares += value * value;
  }
  const double n = static_cast<double>(sample.size());
  const double mean = sum / n;
  return {mean, std::sqrt((squares / n - mean * mean) / (n - 1))};
}

double mean_of(const Profile& profile, const std::function<double(double)>& of_depth) {
  double sum = 0;
  for (const double depth_um : profile.depth_um) sum += of_depth(depth_um);
  return sum / points;
}

Measured deeper(const std::vector<Profile>& sample, double z) {
  return over_profiles(
      sample, [z](const Profile& p) { return mean_of(p, [z](double d) { return d > z ? 1.0 : 0.0; }); });
}

Measured mean_depth(const std::vector<Profile>& sample) {
  return over_profiles(sample, [](const Profile& p) { return mean_of(p, [](double d) { return d; }); });
}

Measured mean_square(const std::vector<Profile>& sample) {
  return over_profiles(sample, [](const Profile& p) { return mean_of(p, [](double d) { return d * d; }); });
}

Measured first_left(const std::vector<Profile>& sample) {
  return over_profiles(sample, [](const Profile& p) {
    return static_cast<double>(std::count(p.has_first.begin(), p.has_first.end(), true)) / points;
  });
}

void check_agrees(const Measured& measured, double expected, double greatest_relative_error) {
  CAPTURE(measured.mean, measured.standard_error, expected);
  CHECK(measured.standard_error < greatest_relative_error * expected);
  CHECK(std::abs(measured.mean - expected) < 4 * measured.standard_error);
}

constexpr int level_step = 0, refine_step = 1;  // places in the sequence

GrooveFigures grooves(int step, double depth_um) {
  GrooveFigures figures;
  figures.step = step;
  figures.depth_um = depth_um;
  figures.groove_length_mm = 5;
  return figures;
}

std::vector<Profile> sample_of(const std::vector<Cut>& cuts, double cap_in_depths, unsigned seed) {
  boost::random::mt19937 random(seed);
  std::vector<Profile> sample;
  for (int i = 0; i < profiles; ++i) sample.push_back(simulate(cuts, cap_in_depths, random));
  return sample;
}

Scratches formulas_for(const std::vector<Cut>& cuts) {
  Scratches scratches;
  for (const Cut& cut : cuts) scratch(scratches, cut.figures, Array2d::Constant(1, 1, cut.removal_um));
  return scratches;
}

double second_moment_um2(const std::vector<DepthLaw>& law) {
  return std::pow(mean_depth_um(law), 2) + std::pow(1e-3 * depth_rms_nm(law), 2);
}

}  // namespace

TEST_CASE("simulated grooves of one growing step follow the depth law") {
  for (const double removal_um : {0.06, 0.8}) {  // barely begun, and finished
    const std::vector<Cut> cuts{{grooves(level_step, 0.2), removal_um}};
    const auto sample = sample_of(cuts, no_cap, 11);
    const auto law = depth_laws(formulas_for(cuts));
    for (const double z : {0.0, 0.2, 0.5}) check_agrees(deeper(sample, z), deeper_share(law, z), 0.02);
    check_agrees(mean_depth(sample), mean_depth_um(law), 0.01);
    check_agrees(mean_square(sample), second_moment_um2(law), 0.02);
  }
}

TEST_CASE(
    "simulated removal by a finer step leaves the survivors that the formula leaves, under the new grooves") {
  for (const double refinement_um : {0.15, 0.5}) {
    const std::vector<Cut> cuts{{grooves(level_step, 0.2), 0.8},
                                {grooves(refine_step, 0.085), refinement_um}};
    const auto sample = sample_of(cuts, no_cap, 12);
    const Scratches scratches = formulas_for(cuts);
    const auto law = depth_laws(scratches);
    check_agrees(first_left(sample), -std::expm1(-coverage_map(scratches, 0)(0, 0)), 0.02);
    for (const double z : {0.1, 0.3}) check_agrees(deeper(sample, z), deeper_share(law, z), 0.02);
    check_agrees(mean_depth(sample), mean_depth_um(law), 0.01);
    check_agrees(mean_square(sample), second_moment_um2(law), 0.03);
  }
}

TEST_CASE("simulated patches whose pixels are worked unevenly mix by area") {
  const std::vector<double> levelled_um{0.6, 0.6, 0.3, 0.0};
  const std::vector<double> refined_um{0.5, 0.1, 0.0, 0.0};
  Scratches scratches;
  scratch(scratches, grooves(level_step, 0.2), Eigen::Map<const Array2d>(levelled_um.data(), 1, 4));
  scratch(scratches, grooves(refine_step, 0.085), Eigen::Map<const Array2d>(refined_um.data(), 1, 4));
  const auto law = depth_laws(scratches);

  boost::random::mt19937 random(13);
  std::vector<Profile> sample;
  for (int i = 0; i < profiles; ++i) {
    Profile patch;
    patch.depth_um.clear();
    for (std::size_t pixel = 0; pixel < 4; ++pixel) {
      const Profile part = simulate(
          {{grooves(level_step, 0.2), levelled_um[pixel]}, {grooves(refine_step, 0.085), refined_um[pixel]}},
          no_cap, random);
      for (int point = 0; point < points; point += 4) patch.depth_um.push_back(part.depth_um[point]);
    }
    sample.push_back(patch);
  }
  for (const double z : {0.0, 0.1, 0.3}) check_agrees(deeper(sample, z), deeper_share(law, z), 0.01);
  check_agrees(mean_depth(sample), mean_depth_um(law), 0.01);
  check_agrees(mean_square(sample), second_moment_um2(law), 0.02);
}

TEST_CASE("a cap on the groove depth takes away what is stated") {
  // Depths cut at c delta: a finished population after removal R has, at depth z, K_inf (exp(-x) - exp(-c)(1
  // + c - x)), x = (R + z)/delta < c (closed form). The library leaves the second term out; here is what that
  // costs.
  const double cap = 7;
  const auto capped_over = [&](double x) {
    return x < cap ? 5 * (std::exp(-x) - std::exp(-cap) * (1 + cap - x)) : 0.0;
  };
  const auto capped_deeper = [&](double z) { return -std::expm1(-capped_over(z / 0.2)); };
  using boost::math::quadrature::gauss_kronrod;
  const double mean_um = gauss_kronrod<double, 31>::integrate(capped_deeper, 0.0, cap * 0.2);
  const double square_um2 = gauss_kronrod<double, 31>::integrate(
      [&](double z) { return 2 * z * capped_deeper(z); }, 0.0, cap * 0.2);

  const std::vector<Cut> fresh{{grooves(level_step, 0.2), 1.6}};
  const auto fresh_sample = sample_of(fresh, cap, 14);
  check_agrees(deeper(fresh_sample, 0.6), capped_deeper(0.6), 0.02);
  check_agrees(mean_depth(fresh_sample), mean_um, 0.01);
  check_agrees(mean_square(fresh_sample), square_um2, 0.02);
  const auto law = depth_laws(formulas_for(fresh));
  CHECK(mean_um / mean_depth_um(law) == Catch::Approx(0.96).margin(0.005));
  const double rms_nm = 1e3 * std::sqrt(square_um2 - mean_um * mean_um);
  CHECK(rms_nm / depth_rms_nm(law) == Catch::Approx(0.90).margin(0.005));

  const std::vector<Cut> worn{{grooves(level_step, 0.2), 1.6}, {grooves(refine_step, 0.04), 0.8}};
  const auto worn_sample = sample_of(worn, cap, 15);
  check_agrees(first_left(worn_sample), -std::expm1(-capped_over(4)), 0.03);
  CHECK(capped_over(4) / coverage_map(formulas_for(worn), 0)(0, 0) == Catch::Approx(0.80).margin(0.005));
}
