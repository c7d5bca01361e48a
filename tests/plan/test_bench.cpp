#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/bench.hpp"
#include "libtexture/process/pace.hpp"
#include "machine.hpp"

using namespace libtexture;

namespace {

constexpr double bench_area_m2 = 0.04;

/// The bench on which that motion works .04 m2.
Bench empty_bench() {
  Bench bench;
  bench.abrasive = "my film";
  bench.force_n = 25;
  bench.sliding_m_per_s = sliding_m_per_s(machine::orbital_150_mm());
  bench.seconds_per_pass = 60 * pass_minutes(machine::orbital_150_mm(), bench_area_m2);
  bench.area_cm2 = 1e4 * bench_area_m2;
  bench.disc_area_cm2 = 1e4 * disc_area_m2(machine::orbital_150_mm());
  return bench;
}

/// Passes of one disc as the process floor has them, which knows nothing of this fit.
std::vector<double> passes_of(double fresh, double worn, double loading_um, int passes,
                              double hardness_mpa = 200) {
  Step step;
  step.abrasive.name = "my film";
  step.abrasive.wear_rate_mm3_per_n_m = fresh;
  step.abrasive.worn_wear_rate_mm3_per_n_m = worn;
  step.abrasive.loading_um = loading_um;
  step.backing = Backing::rigid();
  step.motion = machine::orbital_150_mm();
  step.passes = passes;
  step.change_disc_below_share = 0;
  DiscUse use;
  std::vector<double> removed;
  for (int pass = 0; pass < passes; ++pass)
    removed.push_back(removal_of_pass_um(step, bench_area_m2, hardness_mpa, use));
  return removed;
}

Bench bench_of(const std::vector<double>& exact, int runs, double noise_um, std::uint64_t seed) {
  boost::random::mt19937_64 generator(seed);
  boost::random::normal_distribution<> normal;
  Bench bench = empty_bench();
  for (int i = 0; i < runs; ++i) {
    BenchRun run{"disc " + std::to_string(i), exact};
    for (double& removed : run.removed_um) removed += noise_um * normal(generator);
    bench.runs.push_back(run);
  }
  return bench;
}

/// Runs of four equal passes with these mean wear rates.
Bench bench_with(const std::vector<double>& wear_rates) {
  Bench bench = empty_bench();
  for (const double wear : wear_rates)
    bench.runs.push_back({"disc", std::vector<double>(4, passes_of(wear, wear, 1e6, 1)[0])});
  return bench;
}

}  // namespace

TEST_CASE("exact passes give back the wear rates and loading that the process floor made them with") {
  Bench bench = bench_of(passes_of(.1, .03, 8, 20, 150), 2, 0, 1);
  bench.hardness_mpa = 150;
  const BenchResult result = judge_bench(bench);
  REQUIRE(result.is_loading_seen);
  CHECK(result.wear_rate_mm3_per_n_m.value == Catch::Approx(.1).epsilon(1e-6));
  CHECK(result.worn_wear_rate_mm3_per_n_m.value == Catch::Approx(.03).epsilon(1e-6));
  CHECK(result.loading_um.value == Catch::Approx(8).epsilon(1e-6));
  CHECK(result.disc_log_sd == Catch::Approx(0).margin(1e-8));
}

TEST_CASE("intervals hold the truth in 95 % of 1000 benches") {
  const std::vector<double> exact = passes_of(.1, .03, 8, 12);
  int fresh = 0, worn = 0, loading = 0;
  for (std::uint64_t trial = 0; trial < 1000; ++trial) {
    const BenchResult result = judge_bench(bench_of(exact, 4, .02, 1000 + trial));
    const auto holds = [](const Estimate& estimate, double truth) {
      return estimate.least <= truth && truth <= estimate.most;
    };
    fresh += holds(result.wear_rate_mm3_per_n_m, .1);
    worn += holds(result.worn_wear_rate_mm3_per_n_m, .03);
    loading += holds(result.loading_um, 8);
  }
  CHECK((fresh >= 930 && fresh <= 970));
  CHECK((worn >= 930 && worn <= 970));
  CHECK((loading >= 930 && loading <= 970));
}

TEST_CASE("intervals hold the truth in 95 % of 1000 benches whose discs differ as well") {
  // Four discs that differ by 5 %, and that load: the usual bench.
  const std::vector<double> exact = passes_of(.1, .03, 8, 12);
  boost::random::mt19937_64 generator(9);
  boost::random::normal_distribution<> normal;
  int fresh = 0, worn = 0;
  for (std::uint64_t trial = 0; trial < 1000; ++trial) {
    Bench bench = bench_of(exact, 4, .02, 5000 + trial);
    for (BenchRun& run : bench.runs) {
      const double disc = std::exp(.05 * normal(generator));
      for (double& removed : run.removed_um) removed *= disc;
    }
    const BenchResult result = judge_bench(bench);
    fresh += result.wear_rate_mm3_per_n_m.least <= .1 && .1 <= result.wear_rate_mm3_per_n_m.most;
    worn += result.worn_wear_rate_mm3_per_n_m.least <= .03 && .03 <= result.worn_wear_rate_mm3_per_n_m.most;
  }
  // Two spreads added as if both were whole are a little wide: at least 93 % (95 less three binomial sd).
  CHECK(fresh >= 930);
  CHECK(worn >= 930);
}

TEST_CASE("loading is not told from passes that hardly reach it") {
  // Four discs of eight passes load by a twentieth of what they would: a fit finds any figure.
  int wide = 0;
  for (std::uint64_t trial = 0; trial < 200; ++trial) {
    const BenchResult result = judge_bench(bench_of(passes_of(.1, .03, 150, 8), 4, .05, 7000 + trial));
    if (!result.is_loading_seen) continue;
    wide += result.loading_um.most > 10 * result.loading_um.least ||
            result.worn_wear_rate_mm3_per_n_m.most > 10 * result.worn_wear_rate_mm3_per_n_m.least;
  }
  CHECK(wide == 0);
}

TEST_CASE("a disc that does not load is taken to load no oftener than the test's 5 %") {
  int seen = 0;
  for (std::uint64_t trial = 0; trial < 300; ++trial)
    seen += judge_bench(bench_of(passes_of(.1, .1, 1e6, 8), 3, .05, 3000 + trial)).is_loading_seen;
  CHECK(seen <= 30);  // 15 expected at most, four standard deviations of a binomial more
  const BenchResult result = judge_bench(bench_of(passes_of(.1, .1, 1e6, 8), 3, .001, 1));
  CHECK(result.wear_rate_mm3_per_n_m.value == Catch::Approx(.1).epsilon(2e-3));
}

TEST_CASE("discs that differ show in the spread of discs") {
  // Closed form: logarithms of -.1, 0 and .1 have the standard deviation .1.
  const BenchResult result = judge_bench(bench_with({.1 * std::exp(-.1), .1, .1 * std::exp(.1)}));
  CHECK(result.disc_log_sd == Catch::Approx(.1).epsilon(1e-9));
  CHECK(result.run_mean_mm3_per_n_m[2] == Catch::Approx(.1 * std::exp(.1)).epsilon(1e-9));
}

TEST_CASE("two abrasives are told apart as Welch's test does") {
  // Reference: scipy ttest_ind(log a, log b, equal_var=False): p = .008966992935605296, ratio of means of
  // logarithms 1.1756667068091036.
  const BenchComparison comparison =
      compare_benches(bench_with({.101, .095, .108, .099}), bench_with({.082, .090, .085}));
  CHECK(comparison.p == Catch::Approx(.008966992935605296).epsilon(1e-8));
  CHECK(comparison.ratio.value == Catch::Approx(1.1756667068091036).epsilon(1e-9));
  CHECK((comparison.ratio.least > 1 && comparison.ratio.most < 1.4));
}

TEST_CASE("the size exponent is the slope through logarithms") {
  // Reference: scipy linregress on ln grain, ln wear rate, t interval with 2 degrees of freedom. Medians of
  // P1200, P1500, P2000, P2500: ISO 6344-3 (from memory).
  std::vector<Bench> benches;
  std::vector<BenchResult> results;
  const double wear[] = {.13, .10, .075, .066};
  const char* grits[] = {"P1200", "P1500", "P2000", "P2500"};
  for (int i = 0; i < 4; ++i) {
    benches.push_back(bench_with({wear[i]}));
    benches.back().grit = Grit(grits[i]);
    results.push_back(judge_bench(benches.back()));
  }
  const Estimate exponent = size_exponent(benches, results);
  CHECK(exponent.value == Catch::Approx(1.1588670454606538).epsilon(1e-6));
  CHECK(exponent.least == Catch::Approx(.5928687691634488).epsilon(1e-6));
  CHECK(exponent.most == Catch::Approx(1.724865321757859).epsilon(1e-6));
}

TEST_CASE("as many runs are needed as tables of the t test's power say") {
  // J. Cohen, Statistical Power Analysis for the Behavioral Sciences (1988), from memory: two-sided 5 %,
  // power 80 %: 64 a group for a difference of .5 standard deviations, 26 for .8.
  CHECK(runs_needed(10, std::log(1.1) / .5) == 64);
  CHECK(runs_needed(10, std::log(1.1) / .8) == 26);
  // Reference: scipy nct and t.
  CHECK(runs_needed(10, .10) == 19);
  CHECK(runs_needed(10, .03) == 3);
  CHECK(runs_needed(10, 1e-4) == 2);
}

TEST_CASE("a bench makes an abrasive that says how sure it is") {
  const Bench bench = bench_of(passes_of(.1, .03, 8, 12), 4, .02, 7);
  const BenchResult result = judge_bench(bench);
  Abrasive like;
  like.name = "known film";
  like.grit = Grit("P1000");
  like.carrier = Carrier::foam_disc;
  like.wear_rate_mm3_per_n_m = .05;
  like.worn_wear_rate_mm3_per_n_m = .01;
  like.loading_um = 300;
  like.stray_marks_per_dm2_um = .02;
  like.groove_depth_um = .1;
  const Abrasive abrasive = abrasive_of(bench, result, like, "bench, invented");
  // What was not measured is the known one's, at this grain: scratches ...
  CHECK(abrasive.carrier == Carrier::foam_disc);
  CHECK(abrasive.stray_marks_per_dm2_um == .02);
  CHECK(*abrasive.groove_depth_um ==
        Catch::Approx(.1 * bench.grit.median_um() / Grit("P1000").median_um()).epsilon(1e-12));
  // ... and, where no loading is seen, that too.
  const Bench steady = bench_of(passes_of(.1, .1, 1e6, 8), 3, .001, 1);
  const Abrasive unloaded = abrasive_of(steady, judge_bench(steady), like, "bench, invented");
  CHECK(unloaded.loading_um ==
        Catch::Approx(300 * bench.grit.median_um() / Grit("P1000").median_um()).epsilon(1e-12));
  CHECK(unloaded.worn_wear_rate_mm3_per_n_m ==
        Catch::Approx(.2 * unloaded.wear_rate_mm3_per_n_m).epsilon(1e-12));
  CHECK(abrasive.name == "my film");
  CHECK(abrasive.wear_rate_mm3_per_n_m == result.wear_rate_mm3_per_n_m.value);
  CHECK(abrasive.loading_um == result.loading_um.value);
  CHECK_FALSE(abrasive.stated_grain_um);  // a bench measures at this grain
  CHECK((abrasive.wear_rate_log_sd > 0 && abrasive.wear_rate_log_sd < .1));
  CHECK(abrasive.source == "bench, invented");
}

TEST_CASE("a bench refuses what it cannot judge") {
  Bench bench = bench_with({.1});
  bench.runs[0].removed_um.pop_back();
  CHECK_THROWS_WITH(judge_bench(bench), "Bench: runs must hold at least four passes (got 3)");
  bench.runs[0].removed_um = {1, 1, -5, 1};
  CHECK_THROWS_WITH(judge_bench(bench), "Bench: removed_um must be > 0 over the run \"disc\" (got -2 um)");
  CHECK_THROWS_WITH(compare_benches(bench_with({.1, .11}), bench_with({.1})),
                    "Bench: runs must be at least two to compare (got 1)");
  Bench damp = bench_with({.1, .11});
  damp.wetness = Wetness::damp;
  CHECK_THROWS_WITH(compare_benches(bench_with({.1, .11}), damp),
                    "Bench: wetness must be one to compare (got two)");
}
