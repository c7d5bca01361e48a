// Risk along computed curves, against runs of the whole sequence in the same worlds.
#include <sched.h>

#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/plan/worlds.hpp"
#include "libtexture/process/sequence.hpp"

using namespace libtexture;

namespace {

Step step_of(const std::string& abrasive, const std::string& backing, int passes, const Stop& stop) {
  Step step;
  step.abrasive = shipped_catalogue().abrasives.at(abrasive);
  step.name = abrasive;
  step.backing = shipped_catalogue().backings.at(backing);
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.wetness = step.abrasive.made_for.front();
  step.passes = passes;
  step.stop = stop;
  return step;
}

Job small_job(int samples) {
  Job job;
  job.seed = 3;
  job.patch = {48, 48, 0.4};
  Panel panel;
  panel.name = "lid";
  panel.area_m2 = .5;
  for (const double total : {190., 210., 200.}) panel.readings.push_back({.total_um = total});
  job.panel = {panel};
  job.coating = {.kind = PaintKind::repaint, .clear_um = 60};
  job.texture.bands = {{.wavelength_mm = 2.5, .rms_um = .7}};
  job.target.rms_um = .15;
  job.sequence = {{"two steps",
                   {step_of("P1200 film", "film on firm interface", 10, {.rms_um = .12}),
                    step_of("P2500 film", "film on firm interface", 6, {.clear_owed_um = .2})}}};
  job.uncertainty.samples = samples;
  return job;
}

RiskDraws draws_of(const Job& job) {
  return sample_risk(job, starting_surface(job.texture, job.patch, job.seed), {{job.sequence.front()}})
      .risks.front()
      .draws.front();
}

struct Rerun {
  std::vector<double> removed_um, levelled_um, rms_um, touched_share, minutes, discs;
  std::vector<TexturePath> paths;
};

// Every world by simulate(), as the library had it before there were curves.
Rerun simulate_worlds(const Job& job) {
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  const std::vector<Step>& steps = job.sequence.front().step;
  const Worlds worlds = worlds_of(job);
  std::vector<StepWorlds> drawn;
  for (std::size_t j = 0; j < steps.size(); ++j)
    drawn.push_back(step_worlds(worlds, steps[j], static_cast<int>(j)));
  const std::size_t count = worlds.person.size();
  Rerun rerun;
  for (auto* figure : {&rerun.removed_um, &rerun.levelled_um, &rerun.rms_um, &rerun.touched_share,
                       &rerun.minutes, &rerun.discs})
    figure->resize(count);
  rerun.paths.resize(count);
  parallel_for(static_cast<int>(count), [&](int i) {
    const auto world = static_cast<std::size_t>(i);
    std::vector<Step> own;
    for (std::size_t j = 0; j < steps.size(); ++j) own.push_back(in_world(steps[j], drawn[j], world, {}));
    const Coating coating{{{.name = "clear",
                            .thickness_um = 60,
                            .hardness_mpa = job.coating.hardness_mpa * worlds.hardness_factor[world]}}};
    const HeightField scaled(surface.height_um() * worlds.texture_scale[world], surface.pixel_mm());
    const History history = simulate(scaled, coating, own, {.area_m2 = job.panel.front().area_m2});
    rerun.paths[world] = {{0}, {history.start.rms_um}};
    for (const HistoryRow& row : history.passes) {
      rerun.paths[world].removed_um.push_back(row.total_removed_um);
      rerun.paths[world].rms_um.push_back(row.rms_um);
    }
    rerun.removed_um[world] = history.removed_um();
    rerun.levelled_um[world] = history.steps.front().removed_um;
    rerun.rms_um[world] = history.steps.back().rms_um;
    rerun.touched_share[world] = history.steps.front().touched_share;
    for (const HistoryRow& row : history.steps) {
      rerun.minutes[world] += row.minutes;
      rerun.discs[world] += row.discs;
    }
  });
  return rerun;
}

// Greatest distance of two empirical distributions (Kolmogorov and Smirnov).
double distance(std::vector<double> a, std::vector<double> b) {
  std::sort(a.begin(), a.end());
  std::sort(b.begin(), b.end());
  const auto share = [](const std::vector<double>& values, double at) {
    return static_cast<double>(std::upper_bound(values.begin(), values.end(), at + 1e-9) - values.begin()) /
           static_cast<double>(values.size());
  };
  double greatest = 0;
  for (const std::vector<double>& values : {a, b})
    for (const double at : values) greatest = std::max(greatest, std::abs(share(a, at) - share(b, at)));
  return greatest;
}

double share_within(const std::vector<double>& a, const std::vector<double>& b, double tolerance) {
  double count = 0;
  for (std::size_t i = 0; i < a.size(); ++i) count += std::abs(a[i] - b[i]) < tolerance;
  return count / static_cast<double>(a.size());
}

}  // namespace

TEST_CASE("risk along curves agrees with running the whole sequence again in every world") {
  const Job job = small_job(200);
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  const SampledRisk sampled = sample_risk(job, surface, {{job.sequence.front()}}).risks.front();
  const RiskDraws& fast = sampled.draws.front();
  const Rerun slow = simulate_worlds(job);
  // Two samples of 200 of one distribution differ by more than .136 in 5 % of cases (Kolmogorov and Smirnov,
  // 1.36 sqrt(2/n)). These share their worlds, so half of that is asked
  // of what is counted in passes; small errors of rms shift a distribution that is narrow about the rule.
  CHECK(distance(fast.removed_um, slow.removed_um) < .068);
  CHECK(distance(fast.minutes, slow.minutes) < .068);
  CHECK(distance(fast.discs, slow.discs) < .068);
  CHECK(distance(fast.rms_um, slow.rms_um) < .136);
  CHECK(share_within(fast.removed_um, slow.removed_um, .02) > .9);
  CHECK(share_within(fast.minutes, slow.minutes, 1e-6) > .9);
  CHECK(share_within(fast.rms_um, slow.rms_um, .02) > .95);
  CHECK(share_within(fast.touched_share, slow.touched_share, .02) > .95);
  for (std::size_t i = 0; i < fast.removed_um.size(); ++i)
    CHECK(fast.levelling_um[i] + fast.overshoot_um[i] + fast.debt_um[i] ==
          Catch::Approx(fast.removed_um[i]).epsilon(1e-12));
}

TEST_CASE("the curve of texture against clear has the quantiles of running every world again") {
  Job job = small_job(100);
  for (Step& step : job.sequence.front().step) {  // the same looks, each after four times as many, thinner
    step.motion.feed_mm_per_s *= 4;               // passes: reruns tell their texture after whole passes only
    step.passes *= 4;
    step.look_every_passes *= 4;
  }
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  const SampledRisk sampled = sample_risk(job, surface, {{job.sequence.front()}}).risks.front();
  const Rerun slow = simulate_worlds(job);
  // At equal removals, to the 0.02 um of the ends in the case above.
  const std::vector<TextureLeft>&curve = sampled.texture_left.front(), again = texture_left(slow.paths);
  REQUIRE(curve.size() == again.size());
  const double spacing_um = again[1].removed_um;
  for (const TextureLeft& point : curve) {
    const double at = std::min(point.removed_um / spacing_um, static_cast<double>(again.size()) - 1.001);
    const auto low = static_cast<std::size_t>(at);
    const auto rerun = [&](double Spread::*share) {
      return std::lerp(again[low].rms_um.*share, again[low + 1].rms_um.*share, at - static_cast<double>(low));
    };
    CHECK(std::abs(point.rms_um.p05 - rerun(&Spread::p05)) < .02);
    CHECK(std::abs(point.rms_um.p50 - rerun(&Spread::p50)) < .02);
    CHECK(std::abs(point.rms_um.p95 - rerun(&Spread::p95)) < .02);
  }
  // Both end where 95 of the 100 worlds have ended, which a single world moves by a look: its four passes.
  const Step& step = job.sequence.front().step.front();
  const double look_um =
      step.look_every_passes * removal_per_pass_um(step.motion, step.abrasive.wear_rate_mm3_per_n_m);
  CHECK(std::abs(curve.back().removed_um - again.back().removed_um) < look_um);
}

TEST_CASE("the same seed gives the same bytes on one processor as on all") {
  const Job job = small_job(300);
  const RiskDraws all = draws_of(job);
  cpu_set_t before, one;
  REQUIRE(sched_getaffinity(0, sizeof before, &before) == 0);
  CPU_ZERO(&one);
  for (int cpu = 0; cpu < CPU_SETSIZE && CPU_COUNT(&one) == 0; ++cpu)
    if (CPU_ISSET(cpu, &before)) CPU_SET(cpu, &one);
  REQUIRE(sched_setaffinity(0, sizeof one, &one) == 0);
  const RiskDraws alone = draws_of(job);
  REQUIRE(sched_setaffinity(0, sizeof before, &before) == 0);
  CHECK(alone == all);
  Job other = job;
  other.seed = 4;
  CHECK_FALSE(draws_of(other) == all);
}

TEST_CASE("more clear never raises any risk, world by world") {
  Job job = small_job(300);
  RiskDraws last;
  for (const double clear_um : {30., 45., 60., 90.}) {
    job.coating.clear_um = clear_um;
    const RiskDraws draws = draws_of(job);
    for (std::size_t i = 0; i < last.removed_um.size(); ++i) {
      CHECK(draws.is_struck_through[i] <= last.is_struck_through[i]);
      CHECK(draws.is_budget_exceeded[i] <= last.is_budget_exceeded[i]);
      CHECK(draws.is_target_missed[i] == last.is_target_missed[i]);
      CHECK(draws.clear_left_least_um[i] > last.clear_left_least_um[i]);
    }
    last = draws;
  }
}

TEST_CASE("hardly any clear is struck through in every world, and plenty in none") {
  Job job = small_job(300);
  for (TextureBand& band : job.texture.bands) band.rms_um *= 4;
  job.coating.clear_um = 8;  // less than the valleys are deep (10.4 um) before anything is cut
  CHECK(mean_of(draws_of(job).is_struck_through) > .99);
  CHECK(mean_of(draws_of(job).is_budget_exceeded) == 1);
  job.coating.clear_um = 150;
  CHECK(mean_of(draws_of(job).is_struck_through) == 0);
}

TEST_CASE("readings in mil are the same readings") {
  Job job = small_job(200);
  const RiskDraws in_um = draws_of(job);
  for (Reading& reading : job.panel.front().readings)
    reading = {.total_um = {}, .total_mil = *reading.total_um / 25.4};  // exact: 1 inch = 25.4 mm
  const RiskDraws in_mil = draws_of(job);
  CHECK(in_mil.removed_um == in_um.removed_um);
  CHECK(share_within(in_mil.clear_left_least_um, in_um.clear_left_least_um, 1e-9) == 1);
}

TEST_CASE("no cut is more efficient than a plane, and a rigid backing is all but as efficient") {
  Job job = small_job(200);
  const RiskDraws soft = draws_of(job);
  for (std::size_t i = 0; i < soft.removed_um.size(); ++i) {
    CHECK(soft.levelling_efficiency[i] <= 1);
    CHECK(soft.levelling_efficiency[i] >= 0);
    for (const auto& step : soft.step_efficiency) CHECK(step[i] <= 1);
  }
  // A rigid face cuts by a plane: the bound itself, docs/physics.md. Between removals a cubic errs by 1 %.
  job.sequence.front().step.resize(1);
  job.sequence.front().step.front().backing = Backing::rigid();
  const RiskDraws rigid = draws_of(job);
  // Worlds that went on after it was flat are left out: that clear is wasted.
  for (std::size_t i = 0; i < rigid.removed_um.size(); ++i)
    if (rigid.rms_um[i] > .01) CHECK(rigid.levelling_efficiency[i] == Catch::Approx(1).epsilon(.02));
  // The stiffer the backing, the nearer.
  CHECK(mean_of(soft.levelling_efficiency) < mean_of(rigid.levelling_efficiency));
}

TEST_CASE("a pass count leaves the removal open, a texture rule leaves the passes open") {
  Job job = small_job(300);
  job.sequence.front().step.resize(1);
  job.texture.scale_log_sd = 0;
  Step& step = job.sequence.front().step.front();
  step.backing.stiffness_log_sd = 0;
  step.motion.force_cv = 0;
  job.uncertainty.force_within_cv = 0;
  step.passes = 3;
  step.stop = {};
  const RiskDraws counted = draws_of(job);
  CHECK(quantile_of(counted.minutes, 0) == quantile_of(counted.minutes, 1));
  CHECK(quantile_of(counted.removed_um, .95) > 2 * quantile_of(counted.removed_um, .05));
  step.passes = 200;
  step.stop.rms_um = .12;
  const RiskDraws ruled = draws_of(job);
  // Same S/p and texture in every world: the moment is at the same removal; what differs is the next look.
  CHECK(quantile_of(ruled.levelling_um, .95) ==
        Catch::Approx(quantile_of(ruled.levelling_um, .05)).epsilon(.001));
  CHECK(quantile_of(ruled.minutes, .95) > 2 * quantile_of(ruled.minutes, .05));
  for (const double touched : ruled.is_target_missed) CHECK(touched == 0);
}

TEST_CASE("sequences sampled side by side share what their first steps have in common, and change no byte") {
  Job job = small_job(200);
  const Step coarse = job.sequence.front().step[0], refine = job.sequence.front().step[1];
  Step longer = coarse;
  longer.abrasive.wear_rate_mm3_per_n_m *= .5;
  longer.passes = 30;
  const Sequence first{"in two steps", {coarse, refine}}, second{"in one", {longer}};
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  const SampledRisks both = sample_risk(job, surface, {{first}, {second}});
  const SampledRisks one = sample_risk(job, surface, {{first}}),
                     other = sample_risk(job, surface, {{second}});
  CHECK(both.risks[0].draws == one.risks[0].draws);
  CHECK(both.risks[1].draws == other.risks[0].draws);
  CHECK(both.risks[0].node_solves == one.node_solves);
  CHECK(both.risks[1].node_solves == other.node_solves);
  CHECK(both.node_solves == one.node_solves + other.node_solves - 5);  // the first step's five values of S/p
}

TEST_CASE("every step tells each block of worlds, planned and marched, and every panel's worst") {
  // A rigid plate takes no solver iteration, and nothing is uncertain: only the blocks grow with the worlds.
  const auto reports = [](int samples) {
    Job job = small_job(samples);
    job.texture.scale_log_sd = 0;
    job.uncertainty.hardness_log_sd = job.uncertainty.force_within_cv = 0;
    for (Step& step : job.sequence.front().step) {
      step.backing = Backing::rigid();
      step.abrasive.wear_rate_log_sd = step.motion.force_cv = 0;
    }
    int told = 0;
    double last = 0;
    sample_risk(job, starting_surface(job.texture, job.patch, job.seed), {{job.sequence.front()}},
                [&](double share) {
                  ++told;
                  CHECK(share >= last);
                  last = share;
                });
    CHECK(last == 1);
    return told;
  };
  CHECK(reports(10 * 64) - reports(2 * 64) == (10 - 2) * (2 + 2 + 1));
}
