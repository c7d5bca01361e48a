// Possible worlds: their distributions, and that alternatives share them.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/plan/worlds.hpp"

using namespace libtexture;

namespace {

Step step_of(const std::string& abrasive, const std::string& backing, const std::string& motion) {
  Step step;
  step.abrasive = shipped_catalogue().abrasives.at(abrasive);
  step.backing = shipped_catalogue().backings.at(backing);
  step.motion = shipped_catalogue().motions.at(motion);
  step.wetness = step.abrasive.made_for.front();
  step.passes = 4;
  return step;
}

Worlds worlds_with(int samples, std::uint64_t seed = 3) {
  Job job;
  job.seed = seed;
  job.uncertainty.samples = samples;
  job.texture.bands = {{.wavelength_mm = 2.2, .rms_um = 1}};
  return worlds_of(job);
}

double sd_of(const std::vector<double>& values) {
  const double mean = mean_of(values);
  double square = 0;
  for (const double value : values) square += std::pow(value - mean, 2);
  return std::sqrt(square / static_cast<double>(values.size()));
}

std::vector<double> logs_of(std::vector<double> values) {
  for (double& value : values) value = std::log(value);
  return values;
}

double correlation_of(const std::vector<double>& a, const std::vector<double>& b) {
  const double mean_a = mean_of(a), mean_b = mean_of(b);
  double both = 0;
  for (std::size_t i = 0; i < a.size(); ++i) both += (a[i] - mean_a) * (b[i] - mean_b);
  return both / (static_cast<double>(a.size()) * sd_of(a) * sd_of(b));
}

}  // namespace

TEST_CASE("stratified normal numbers fall one into each layer of equal probability") {
  // Latin hypercube, McKay, Beckman and Conover 1979: exact.
  const int samples = 500;
  std::vector<int> layers;
  for (const double value : stratified_normals(samples, 7, "wear of x"))
    layers.push_back(static_cast<int>(samples * .5 * std::erfc(-value / std::sqrt(2.0))));
  std::sort(layers.begin(), layers.end());
  for (int i = 0; i < samples; ++i) CHECK(layers[static_cast<std::size_t>(i)] == i);
}

TEST_CASE("numbers of other names and seeds are others, and not correlated") {
  const auto a = stratified_normals(4000, 7, "a"), b = stratified_normals(4000, 7, "b"),
             c = stratified_normals(4000, 8, "a");
  CHECK(stratified_normals(4000, 7, "a") == a);
  for (const auto& other : {b, c})
    // Five standard errors of a correlation coefficient, 1/sqrt(n).
    CHECK(std::abs(std::inner_product(a.begin(), a.end(), other.begin(), 0.0)) / 4000 < 5 / std::sqrt(4000.));
}

TEST_CASE("force has mean 1 and the spreads between and within persons, wear the abrasive's") {
  const Worlds worlds = worlds_with(4000);
  const Step step = step_of("P2000 film", "film on firm interface", "150 mm light");
  const StepWorlds drawn = step_worlds(worlds, step, 0);
  // Stratified layers leave .5 % of error at most here; between (.25) and within (.15) multiply:
  // (1 + .25^2)(1 + .15^2) = 1 + cv^2 (closed form), whose sampling error is 1/sqrt(2 n) = 1.1 %.
  CHECK(mean_of(drawn.force_factor) == Catch::Approx(1).epsilon(.005));
  CHECK(sd_of(drawn.force_factor) == Catch::Approx(std::sqrt(1.0625 * 1.0225 - 1)).epsilon(.04));
  std::vector<double> log_wear;
  for (const double factor : drawn.wear_factor) log_wear.push_back(std::log(factor));
  CHECK(std::abs(mean_of(log_wear)) < .005);
  // A family's part and the abrasive's own, .6 and .36, are uncorrelated to 1/sqrt(n) = .016, which moves the
  // sum's spread by .016 x .44 = .7 % (one standard error, closed form); four of them.
  CHECK(sd_of(log_wear) == Catch::Approx(step.abrasive.wear_rate_log_sd).epsilon(.028));
}

TEST_CASE("abrasives of one family cut fast or slowly together, others on their own") {
  // Closed form: correlation .735 within a family, 0 between families; a standard error is at most
  // 1/sqrt(4000) = .016 (Fisher); four of them. Exponents of size are left out.
  Worlds worlds = worlds_with(4000);
  worlds.size_exponent.assign(worlds.size_exponent.size(), 0);
  const auto logs = [&](const std::string& name) {
    return logs_of(step_worlds(worlds, step_of(name, "film on hard pad", "75 mm light"), 0).wear_factor);
  };
  const auto film = logs("P2000 film");
  CHECK(correlation_of(film, logs("P3000 film")) == Catch::Approx(.735).margin(.03));
  CHECK(correlation_of(logs("P1000 film"), logs("P3000 film")) == Catch::Approx(.735).margin(.03));
  CHECK(correlation_of(logs("P2000 foam-backed"), logs("P5000 foam-backed")) ==
        Catch::Approx(.735).margin(.03));
  CHECK(correlation_of(film, logs("compound")) == Catch::Approx(0).margin(.064));
  CHECK(correlation_of(film, logs("P3000 foam-backed")) == Catch::Approx(0).margin(.064));
}

TEST_CASE("groove depth, its cap and the room for swarf are drawn, a part of each common to the clear") {
  // Closed form: two abrasives share the part common to the clear, .4 of the variance. Sampling as above.
  const Worlds worlds = worlds_with(4000);
  const StepWorlds fine = step_worlds(worlds, step_of("P3000 film", "film on hard pad", "75 mm light"), 0),
                   other = step_worlds(worlds, step_of("compound", "film on hard pad", "75 mm light"), 1);
  const std::vector<std::pair<std::vector<double> StepWorlds::*, double>> drawn{
      {&StepWorlds::groove_factor, .25}, {&StepWorlds::cap_factor, .15}, {&StepWorlds::loading_factor, .5}};
  for (const auto& [factor, sd] : drawn) {
    CHECK(sd_of(logs_of(fine.*factor)) == Catch::Approx(sd).epsilon(.032));
    CHECK(mean_of(logs_of(fine.*factor)) == Catch::Approx(0).margin(.005));
    CHECK(correlation_of(logs_of(fine.*factor), logs_of(other.*factor)) == Catch::Approx(.4).margin(.055));
  }
  CHECK(std::abs(correlation_of(logs_of(fine.groove_factor), logs_of(fine.cap_factor))) < .064);
  const Step step = step_of("P3000 film", "film on hard pad", "75 mm light");
  const Step scaled = in_world(step, fine, 7, std::nullopt);
  CHECK(*scaled.abrasive.groove_depth_um ==
        Catch::Approx(fine.groove_factor[7] * reference_groove_depth_um(step.abrasive)));
  CHECK(scaled.abrasive.groove_depth_cap == Catch::Approx(fine.cap_factor[7] * 7));
  CHECK(scaled.abrasive.loading_um == Catch::Approx(fine.loading_factor[7] * step.abrasive.loading_um));
}

TEST_CASE("what a spot gave holds for this hand on this clear: force and hardness are not drawn again") {
  // Wear rate x force x hardness^-1.3 is what the spot has measured: log-normal with its own spread, of which
  // the force from step to step alone is drawn besides: sqrt(.23^2 + ln(1 + .15^2)) = .27, where drawing all
  // again gave .36 (closed form; sampling as above).
  const Worlds worlds = worlds_with(4000);
  Step step = step_of("P2000 film", "film on hard pad", "75 mm light");
  step.abrasive.wear_rate_log_sd = .23;
  const auto removal_sd = [&] {
    const StepWorlds drawn = step_worlds(worlds, step, 0);
    std::vector<double> logs;
    for (std::size_t i = 0; i < drawn.wear_factor.size(); ++i)
      logs.push_back(std::log(drawn.wear_factor[i] * drawn.force_factor[i]) -
                     1.3 * std::log(worlds.hardness_factor[i]));
    return sd_of(logs);
  };
  const double force = std::log1p(.25 * .25), within = std::log1p(.15 * .15), hard = 1.69 * .15 * .15;
  CHECK(removal_sd() == Catch::Approx(std::sqrt(.23 * .23 + force + hard + within)).epsilon(.04));
  step.abrasive.wear_rate_of = FigureOf::this_hand;
  CHECK(removal_sd() == Catch::Approx(std::sqrt(.23 * .23 + within)).epsilon(.04));

  // Likewise the deepest grooves: depth x cap x force^(1/4) x hardness^(-1/2), (29).
  step.abrasive.groove_depth_log_sd = .12;
  step.abrasive.groove_depth_of = FigureOf::this_hand;
  const StepWorlds drawn = step_worlds(worlds, step, 0);
  std::vector<double> deepest;
  const double between = std::sqrt(force);
  for (std::size_t i = 0; i < drawn.groove_factor.size(); ++i)
    deepest.push_back(std::log(drawn.groove_factor[i] * drawn.cap_factor[i]) +
                      .25 * between * (worlds.person[i] - between / 2) -
                      .5 * std::log(worlds.hardness_factor[i]));
  CHECK(sd_of(deepest) == Catch::Approx(.12).epsilon(.032));
}

TEST_CASE("the exponent of size is one number a world, and counts the more the further the grain is away") {
  // Closed form: ln(factor) adds the exponent's draw, sd 0.25, times ln(d/d_stated), independent of the
  // wear's own; grains of ISO 6344-3, from memory. Stratified draws: 1 % of the spread.
  Worlds worlds = worlds_with(4000);
  Worlds sure = worlds;
  sure.size_exponent.assign(sure.size_exponent.size(), 0);
  const auto of_size = [&](const std::string& name) {
    const Step step = step_of(name, "film on firm interface", "150 mm light");
    const auto with = step_worlds(worlds, step, 0).wear_factor,
               without = step_worlds(sure, step, 0).wear_factor;
    std::vector<double> logs;
    for (std::size_t i = 0; i < with.size(); ++i) logs.push_back(std::log(with[i] / without[i]));
    return logs;
  };
  const auto stated = of_size("P2000 film"), fine = of_size("P3000 film"), coarse = of_size("P1000 film");
  CHECK(*std::max_element(stated.begin(), stated.end()) == Catch::Approx(0).margin(1e-12));
  CHECK(sd_of(fine) == Catch::Approx(0.25 * std::log(10.3 / 7.3)).epsilon(.01));
  CHECK(sd_of(coarse) == Catch::Approx(0.25 * std::log(18.3 / 10.3)).epsilon(.01));
  for (std::size_t i = 0; i < fine.size(); ++i)
    CHECK(fine[i] * coarse[i] <= 0);  // what slows one quickens the other
}

TEST_CASE("an abrasive is the same in all places and sequences, and a person is the same in all steps") {
  const Worlds worlds = worlds_with(1000);
  const Step film = step_of("P2500 film", "film on firm interface", "150 mm light");
  const Step other = step_of("P3000 film", "film on hard pad", "75 mm light");
  CHECK(step_worlds(worlds, film, 0).wear_factor == step_worlds(worlds, film, 3).wear_factor);
  CHECK(step_worlds(worlds, film, 0).wear_factor != step_worlds(worlds, other, 0).wear_factor);
  const auto a = step_worlds(worlds, film, 0).force_factor, b = step_worlds(worlds, film, 1).force_factor;
  double both = 0;
  for (std::size_t i = 0; i < a.size(); ++i) both += std::log(a[i]) * std::log(b[i]);
  CHECK(both / 1000 > .8 * std::log1p(.25 * .25));  // the person's share of the variance is common to both
}

TEST_CASE("nobody presses a foam until it collapses") {
  const Step step = step_of("P3000 foam-backed", "foam-backed disc on pad", "75 mm light");
  for (const double factor : {.5, 1., 2., 5., 100.}) {
    const Step scaled = in_world(step, {{factor}, {1}, {1}, {1}, {1}, {1}}, 0, std::nullopt);
    CHECK_NOTHROW(at_working_pressure(scaled.backing, pressure_kpa(scaled.motion)));
    CHECK(scaled.motion.force_n <= factor * step.motion.force_n);
    CHECK_NOTHROW(scaled.validate());
  }
  CHECK(in_world(step, {{.5}, {1}, {1}, {1}, {1}, {1}}, 0, std::nullopt).motion.force_n ==
        .5 * step.motion.force_n);
}

TEST_CASE("a drawn force stays within what a motion may press with, on both sides") {
  // The limits of Motion itself (estimates): what is drawn beyond them was refused by a number nobody wrote.
  Step step = step_of("P2000 film", "film on firm interface", "150 mm light");
  step.motion.force_n = 1.2 * least_force_n;
  const Step light = in_world(step, {{.1}, {1}, {1}, {1}, {1}, {1}}, 0, std::nullopt);
  CHECK(light.motion.force_n == least_force_n);
  CHECK_NOTHROW(light.validate());
  step.backing = Backing::on_springs(.5);
  step.motion.force_n = 0.9 * most_force_n;
  const Step heavy = in_world(step, {{3}, {1}, {1}, {1}, {1}, {1}}, 0, std::nullopt);
  CHECK(heavy.motion.force_n == most_force_n);
  CHECK_NOTHROW(heavy.validate());
}

TEST_CASE("an uncertainty outside its range is refused") {
  CHECK_THROWS_WITH(Uncertainty{.samples = 99}.validate(),
                    "Uncertainty: samples must be between 100 and 1e+06 (got 99)");
  CHECK_THROWS_AS(Uncertainty{.force_within_cv = 1.1}.validate(), InvalidInput);
  CHECK_THROWS_AS((Uncertainty{.hardness_log_sd = unset}.validate()), InvalidInput);
}
