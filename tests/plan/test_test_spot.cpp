#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/test_spot.hpp"
#include "libtexture/process/levelling.hpp"
#include "libtexture/process/pace.hpp"
#include "machine.hpp"
#include "ranks.hpp"

using namespace libtexture;

namespace {

/// A disc that removes .873 um a pass (wear rate .10, 25 N, 2.618 m/s, .1 m/s, 75 mm) and loads as stated, in
/// a hand and on a clear that are known: what is uncertain of the wear rate is the abrasive's .7 alone.
Job job_of(double worn_share = 1, double loading_um = 150) {
  Abrasive abrasive;
  abrasive.name = "film";
  abrasive.wear_rate_mm3_per_n_m = 0.1;
  abrasive.worn_wear_rate_mm3_per_n_m = 0.1 * worn_share;
  abrasive.loading_um = loading_um;
  Step step;
  step.name = "level";
  step.abrasive = abrasive;
  step.backing = Backing::rigid();
  step.motion = machine::orbital_150_mm();
  step.motion.force_cv = 0;
  step.passes = 4;
  Step other = step;
  other.name = "refine";
  other.abrasive.name = "other film";
  Job job = door::job();
  job.patch = {128, 128, 0.1};
  job.texture.bands = {{.wavelength_mm = 2, .rms_um = 0.5}};
  job.coating.gauge = {1.5, 1.0};
  job.uncertainty.hardness_log_sd = 0;
  Step again = step;
  again.name = "again";
  job.sequence = {Sequence{"one", {step, other, again}}};
  return job;
}

TestSpot spot_of(int passes, double removed_um, int readings, double spot_cv = 0.15) {
  TestSpot spot;
  spot.passes = passes;
  spot.before_um.assign(static_cast<std::size_t>(readings), 250);
  spot.after_um.assign(static_cast<std::size_t>(readings), 250 - removed_um);
  spot.spot_cv = spot_cv;
  return spot;
}

double removed_um(const Job& job, double wear_rate, int passes, double area_m2) {
  Step step = job.sequence[0].step[0];
  const double worn_share = step.abrasive.worn_wear_rate_mm3_per_n_m / step.abrasive.wear_rate_mm3_per_n_m;
  step.abrasive.wear_rate_mm3_per_n_m = wear_rate;
  step.abrasive.worn_wear_rate_mm3_per_n_m = wear_rate * worn_share;
  DiscUse use;
  double sum_um = 0;
  for (int pass = 0; pass < passes; ++pass) sum_um += removal_of_pass_um(step, area_m2, 200, use);
  return sum_um;
}

}  // namespace

TEST_CASE("a test spot narrows the wear rate as Bayes' rule says") {
  // Reference: scipy quad and brentq on prior x likelihood, discs that do not load: 4 passes remove 3.490659
  // um at .1; 3 um read with 5 readings of 1.5 um, scale 1 %, spots 15 %. Tolerance 1e-4: a spline through
  // 129 points, and a hundredth of what any gauge can tell.
  const TestSpotResult result = judge_test_spot(job_of(), spot_of(4, 3, 5));
  CHECK(result.expected_um == Catch::Approx(3.490659).epsilon(1e-6));
  CHECK(result.before.median == 0.1);
  CHECK(result.before.most ==
        Catch::Approx(0.1 * std::exp(1.959964 * 0.7)).epsilon(1e-6));  // normal quantile
  CHECK(result.after.median == Catch::Approx(0.08277401).epsilon(1e-4));
  CHECK(result.after.least == Catch::Approx(0.03782939).epsilon(1e-4));
  CHECK(result.after.most == Catch::Approx(0.14598148).epsilon(1e-4));
  CHECK(result.after.log_sd == Catch::Approx(0.34250851).epsilon(1e-4));
}

TEST_CASE("with a good gauge the wear rate is what was removed over what was expected") {
  // Closed form, small errors: ln k is normal about ln(3/3.4907) with sd u sqrt(2/n)/R; the prior's pull is
  // (sd/.7)^2.
  Job job = job_of();
  job.coating.gauge = {0.01, 0};
  const TestSpotResult result = judge_test_spot(job, spot_of(4, 3, 2, 0));
  const double sd = 0.01 / 3;
  CHECK(result.after.median == Catch::Approx(0.1 * 3 / result.expected_um).epsilon(1e-4));
  CHECK(result.after.log_sd == Catch::Approx(sd).epsilon(1e-3));
  CHECK(std::log(result.after.most / result.after.least) == Catch::Approx(2 * 1.959964 * sd).epsilon(2e-3));
}

TEST_CASE("a spot whose disc loads and is changed still gives back the fresh wear rate") {
  Job job = job_of(0.3, 8);
  job.coating.gauge = {0.001, 0};
  const double truth = 0.17;
  const double removed = removed_um(job, truth, 12, 0.04);
  CHECK(removed < 12 * 0.873 * 1.7 * .9);  // it does load
  const TestSpotResult result = judge_test_spot(job, spot_of(12, removed, 1, 0));
  CHECK(result.after.median == Catch::Approx(truth).epsilon(1e-3));
}

TEST_CASE("the truths of 1000 spots fall evenly under what the spots say") {
  const Job job = job_of(0.3, 50);
  boost::random::mt19937_64 generator(20250301);
  boost::random::normal_distribution<> normal;
  const auto error = [&](double sd) { return sd * normal(generator); };
  ranks::Parts parts;
  for (int trial = 0; trial < 1000; ++trial) {
    const double truth = 0.1 * std::exp(error(0.7));
    const double removed = removed_um(job, truth, 5, 0.04) * (1 + error(0.15));
    const double scale = 1 + error(0.01);
    TestSpot spot = spot_of(5, 0, 6);
    for (double& reading : spot.before_um) reading = 250 * scale + error(1.5);
    for (double& reading : spot.after_um) reading = (250 - removed) * scale + error(1.5);
    parts.add(judge_test_spot(job, spot).after, truth);
  }
  CAPTURE(parts.counts());
  CHECK(parts.chi_square() < ranks::once_in_1000);
}

TEST_CASE("what the hand and the clear add to the wear rate is measured with it, and not drawn again") {
  // Variances of independent logarithms add (closed form): the posterior of (66) with sqrt(.7^2 + ln(1 +
  // .25^2) + (1.3 x .15)^2) = .766 in place of .7.
  Job job = job_of();
  Job unknown = job;
  for (Step& step : unknown.sequence[0].step) step.motion.force_cv = .25;
  unknown.uncertainty.hardness_log_sd = .15;
  for (Step& step : job.sequence[0].step) step.abrasive.wear_rate_log_sd = std::sqrt(.49 + .060625 + .038025);
  const TestSpot spot = spot_of(4, 3, 5);
  const TestSpotResult result = judge_test_spot(unknown, spot), expected = judge_test_spot(job, spot);
  CHECK(result.before.log_sd == Catch::Approx(expected.before.log_sd).epsilon(1e-5));
  CHECK(result.after.median == Catch::Approx(expected.after.median).epsilon(1e-5));
  CHECK(result.after.log_sd == Catch::Approx(expected.after.log_sd).epsilon(1e-5));
  const Job calibrated = calibrate(unknown, spot).job;
  CHECK(calibrated.sequence[0].step[0].abrasive.wear_rate_of == FigureOf::this_hand);
  // So a second spot by the same hand starts from what the first has left, and no wider.
  CHECK(judge_test_spot(calibrated, spot).before.log_sd == Catch::Approx(result.after.log_sd));
}

TEST_CASE("a spot with P2000 teaches of P3000, by the rule of two correlated normal numbers") {
  // Closed form: with correlation c and equal spreads sd, the other's log moves by c times the first's, and
  // its variance falls to sd^2 (1 - c^2 (1 - after^2/sd^2)). Strangers learn nothing.
  Job job = job_of();
  std::vector<Step>& steps = job.sequence[0].step;
  for (Step& step : steps) step.abrasive.family = "film";
  steps[2].abrasive.name = "compound";
  steps[2].abrasive.family = "";
  const TestSpot spot = spot_of(8, 3, 6);
  const TestSpotResult result = judge_test_spot(job, spot);
  const double c = steps[0].abrasive.wear_rate_family_share, sd = .7;
  const double moved = std::log(result.after.median / result.before.median);
  REQUIRE(result.others.size() == 1);
  const TaughtAbrasive& other = result.others[0];
  CHECK(other.abrasive == "other film");
  CHECK(other.after.median == Catch::Approx(0.1 * std::exp(c * moved)));
  CHECK(other.after.log_sd ==
        Catch::Approx(std::sqrt(sd * sd * (1 - c * c) + c * c * result.after.log_sd * result.after.log_sd)));
  CHECK(other.after.log_sd < .8 * other.before.log_sd);  // from a factor of two to one of 1.7
  const Job calibrated = calibrate(job, spot).job;
  const Abrasive& kin = calibrated.sequence[0].step[1].abrasive;
  CHECK(kin.wear_rate_mm3_per_n_m == Catch::Approx(other.after.median));
  CHECK(kin.wear_rate_log_sd == Catch::Approx(other.after.log_sd));
  CHECK(kin.source == "test spot with film");
  CHECK(calibrated.sequence[0].step[2] == job.sequence[0].step[2]);
  // A spot with the kin goes on from there, and narrows the first too.
  TestSpot second = spot_of(8, 4, 6);
  second.step = "refine";
  CHECK(judge_test_spot(calibrated, second).others.at(0).after.log_sd < result.after.log_sd);
}

TEST_CASE("marks that are long in going say that the grooves are deep, and that the next step cuts slowly") {
  Job job = job_of();
  for (Step& step : job.sequence[0].step) step.abrasive.groove_depth_um = .16;
  job.sequence[0].step[1].abrasive.wear_rate_log_sd = .3;
  TestSpot spot = spot_of(8, 6, 6);
  const auto seen = [&](std::optional<int> gone, std::optional<int> left) {
    spot.marks_gone_passes = gone;
    spot.marks_left_passes = left;
    return judge_test_spot(job, spot);
  };
  // .16 um x 7 less .1 um owes 1.02 um, 1.2 passes of .873 um (arithmetic).
  const TestSpotResult soon = seen(1, {}), likely = seen(2, {}), late = seen(4, 3), never = seen({}, 4);
  CHECK(soon.groove_depth_after->median < likely.groove_depth_after->median);
  CHECK(likely.groove_depth_after->median < late.groove_depth_after->median);
  CHECK(late.groove_depth_after->median < never.groove_depth_after->median);
  CHECK(late.groove_depth_after->log_sd < late.groove_depth_before->log_sd);
  REQUIRE(late.others.size() == 1);
  CHECK(late.others[0].abrasive == "other film");
  CHECK(late.others[0].after.median < late.others[0].before.median);
  CHECK(soon.others[0].after.median > soon.others[0].before.median);

  spot.marks_left_passes = 3;
  spot.marks_gone_passes = 4;
  const Job calibrated = calibrate(job, spot).job;
  const std::vector<Step>& steps = calibrated.sequence[0].step;
  CHECK(*steps[0].abrasive.groove_depth_um == Catch::Approx(late.groove_depth_after->median));
  CHECK(*steps[0].abrasive.groove_depth_log_sd == Catch::Approx(late.groove_depth_after->log_sd));
  CHECK(steps[0].abrasive.groove_depth_of == FigureOf::this_hand);
  CHECK(steps[1].abrasive.wear_rate_mm3_per_n_m == Catch::Approx(late.others[0].after.median));
  // The other abrasive's grooves share the part of this clear: they move the same way, less far.
  const double own = *steps[0].abrasive.groove_depth_um / .16,
               shared = *steps[1].abrasive.groove_depth_um / .16;
  CHECK((1 < shared && shared < own));

  spot.step = "again";
  CHECK_THROWS_WITH(judge_test_spot(job, spot),
                    "TestSpot: marks_gone_passes must be left out where no step follows \"again\" (got 4)");
  spot.marks_left_passes = 4;
  CHECK_THROWS_WITH(spot.validate(), "TestSpot: marks_left_passes must be between 0 and 3 (got 4)");
}

TEST_CASE("a gauge that resolves 1 um says little of 1 um removed, and the result says what would") {
  Job job = job_of();
  job.coating.gauge = {1, 1};
  const TestSpotResult weak = judge_test_spot(job, spot_of(1, 1, 1));
  CHECK_FALSE(weak.is_useful);
  REQUIRE(weak.warnings.size() == 1);
  CHECK(weak.warnings[0].kind == StatementKind::spot_says_little);
  CHECK(weak.warnings[0].figures.at("gauge_sd_um") == weak.gauge_sd_um);
  CHECK(weak.after.log_sd > 0.5);
  // Its own advice, followed, makes it useful; less does not.
  const double per_pass = 0.873 * weak.after.median / 0.1;
  CHECK(judge_test_spot(job, spot_of(weak.passes_needed, weak.passes_needed * per_pass, 1)).after.log_sd <
        0.35);
  CHECK(judge_test_spot(job, spot_of(1, per_pass, weak.readings_needed)).after.log_sd < 0.35);
  CHECK(weak.passes_needed * per_pass == Catch::Approx(4 * std::sqrt(2.0)).margin(per_pass).epsilon(0));
}

TEST_CASE(
    "a film that reads thicker after is information within the gauge's uncertainty, and a mix-up beyond") {
  // Three times the gauge's uncertainty is our rule (estimate); sqrt(2) x 1.5 um by (64), arithmetic.
  const TestSpotResult little = judge_test_spot(job_of(), spot_of(1, -1, 1));
  CHECK(little.removed_um == Catch::Approx(-1));
  CHECK(little.after.median < 0.1);
  CHECK(little.warnings.size() == 2);
  CHECK_THROWS_WITH(
      judge_test_spot(job_of(), spot_of(4, -7, 1)),
      "TestSpot: after_um must not be thicker than before_um by more than 3 x the gauge's uncertainty, "
      "6.36 um (got 7 um): before and after were swapped, the places differ, or the gauge was set anew in "
      "between");
}

TEST_CASE("calibrating changes the wear rate of that abrasive in every step, and nothing else") {
  // The figures of the job are those of job_of(), worn over fresh 0.3; the rest is arithmetic.
  const Job job = job_of(0.3);
  const TestSpot spot = spot_of(6, 8, 6);
  const TestSpotResult result = judge_test_spot(job, spot);
  const Job calibrated = calibrate(job, spot).job;
  for (const int i : {0, 2}) {
    const Abrasive& abrasive = calibrated.sequence[0].step[static_cast<std::size_t>(i)].abrasive;
    CHECK(abrasive.wear_rate_mm3_per_n_m == Catch::Approx(result.after.median).epsilon(1e-14));
    CHECK(abrasive.worn_wear_rate_mm3_per_n_m == Catch::Approx(.3 * result.after.median).epsilon(1e-14));
    CHECK(abrasive.wear_rate_log_sd == result.after.log_sd);
    CHECK(abrasive.source == "test spot");
  }
  CHECK(calibrated.sequence[0].step[1] == job.sequence[0].step[1]);
  CHECK(calibrated.panel == job.panel);
  // A second spot narrows it further.
  CHECK(judge_test_spot(calibrated, spot).after.log_sd < result.after.log_sd);
}

TEST_CASE("a spot names a step of the job") {
  TestSpot spot = spot_of(4, 3, 5);
  spot.step = "refine";
  CHECK(judge_test_spot(job_of(), spot).abrasive == "other film");
  spot.step = "finish";
  CHECK_THROWS_WITH(judge_test_spot(job_of(), spot),
                    "TestSpot: step must be one of sequence \"one\" (got \"finish\")");
  spot.sequence = "two";
  CHECK_THROWS_WITH(judge_test_spot(job_of(), spot),
                    "TestSpot: sequence must be one of the job's (got \"two\")");
  spot = spot_of(0, 3, 5);
  CHECK_THROWS_WITH(judge_test_spot(job_of(), spot), "TestSpot: passes must be between 1 and 1000 (got 0)");
  spot = spot_of(4, 3, 0);
  CHECK_THROWS_WITH(judge_test_spot(job_of(), spot),
                    "TestSpot: before_um must hold at least one reading (got none)");
}

namespace {

/// A job whose first step works a small patch on springs or on film and foam, and what is known before.
Job textured_job(const Backing& backing, double scale_sd, double stiffness_sd) {
  Job job = job_of(0.3);
  job.patch.rows = job.patch.cols = 24;
  job.patch.pixel_mm = 0.5;
  job.texture.bands[0].wavelength_mm = 5;
  job.texture.bands[0].rms_um = 0.7;
  job.texture.scale_log_sd = scale_sd;
  job.coating.gauge = {1.0, 1.0};
  for (Step& step : job.sequence[0].step) {
    step.backing = backing;
    step.backing.stiffness_log_sd = stiffness_sd;
    step.abrasive.wear_rate_log_sd = 0.5;
  }
  return job;
}

Backing film_on_foam() {
  Backing backing;
  backing.skin = Skin{.modulus_gpa = 4.5, .thickness_um = 75, .poisson = 0.38};
  backing.layers = {Layer{.modulus_mpa = 0.1, .thickness_mm = 10, .poisson = 0.1}};
  return backing;
}

constexpr double patch_m2 = 24 * 0.5e-3 * 24 * 0.5e-3;

/// A spot on a panel with a truth of its own, drawn from what is known before: brute force, no curves.
struct Truth {
  double wear, scale, stiffness;
};

TestSpot simulated(const Job& job, const HeightField& surface, const Truth& truth,
                   boost::random::mt19937_64& generator) {
  boost::random::normal_distribution<> normal;
  const int passes = 6, readings = 8;
  TestSpot spot = spot_of(passes, 0, readings, 0.1);
  spot.area_m2 = patch_m2;
  const auto removed = [&](int n) { return n > 0 ? removed_um(job, 0.1 * truth.wear, n, patch_m2) : 0; };
  const double hand = 1 + spot.spot_cv * normal(generator), gain = 1 + 0.01 * normal(generator);
  for (double& reading : spot.before_um) reading += normal(generator);
  for (double& reading : spot.after_um) reading += normal(generator) - removed(passes) * hand * gain;

  const Step& step = job.sequence[0].step[0];
  Backing backing = step.backing;
  backing.stiffness_factor = truth.stiffness;
  const HeightField field(truth.scale * surface.height_um(), surface.pixel_mm());
  const double pressure = pressure_kpa(step.motion);
  if (backing.support != Support::springs) {
    const Levelled after =
        level(field, backing, pressure, {.removal_um = removed(passes), .amplitude_tolerance_um = 0.01});
    spot.rms_left_um = after.surface.rms_um() * std::exp(spot.rms_left_log_sd * normal(generator));
    return spot;
  }
  // Springs leave next to no texture once all is touched: there the last glossy valley tells.
  const double k = *backing.spring_stiffness_kpa_per_um * truth.stiffness;
  const double gone_um = std::max(1e-3, field.valley_depth_um() - pressure / k) *
                         std::exp(spot.gloss_log_sd * normal(generator));
  int gone = 1;
  while (gone <= passes && removed(gone) < gone_um) ++gone;
  if (gone <= passes)
    spot.gloss_gone_passes = gone;
  else
    spot.gloss_left_passes = passes;
  return spot;
}

}  // namespace

TEST_CASE("the truths of wear, texture and stiffness fall evenly under what 1000 spots say of them") {
  for (const Backing& backing : {Backing::on_springs(2), film_on_foam()}) {
    const Job job = textured_job(backing, 0.3, 0.5);
    const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
    boost::random::mt19937_64 generator(77);
    boost::random::normal_distribution<> normal;
    TestSpot likely = spot_of(6, 5, 8);
    likely.area_m2 = patch_m2;
    likely.rms_left_um = 0.3;
    const SpotCurves curves = curves_of(job, likely, surface);
    ranks::Parts wear, scale, stiffness;
    double narrowed = 0;
    const int cases = 1000;
    for (int trial = 0; trial < cases; ++trial) {
      const Truth truth{std::exp(0.5 * normal(generator)), std::exp(0.3 * normal(generator)),
                        std::exp(0.5 * normal(generator))};
      TestSpot spot = simulated(job, surface, truth, generator);
      const TestSpotResult result = judge_test_spot(job, spot, curves);
      wear.add(result.after, 0.1 * truth.wear);
      scale.add(*result.texture_after, surface.rms_um() * truth.scale);
      stiffness.add(*result.stiffness_after, truth.stiffness);
      narrowed += result.texture_after->log_sd / cases;
    }
    CAPTURE(wear.counts(), scale.counts(), stiffness.counts(), narrowed);
    for (const ranks::Parts& parts : {wear, scale, stiffness})
      CHECK(parts.chi_square() < ranks::once_in_1000);
    CHECK(narrowed < 0.27);  // from .3: it does learn
  }
}

TEST_CASE("glossy valleys that go early say that the texture is shallow, late that it is deep") {
  const Job job = textured_job(Backing::on_springs(2), 0.3, 0.1);
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  TestSpot spot = spot_of(10, 8, 20);
  spot.area_m2 = patch_m2;
  spot.gloss_gone_passes = 2;
  const SpotCurves curves = curves_of(job, spot, surface);
  const auto rms = [&](std::optional<int> gone, std::optional<int> left) {
    spot.gloss_gone_passes = gone;
    spot.gloss_left_passes = left;
    return judge_test_spot(job, spot, curves).texture_after->median;
  };
  CHECK(rms(2, {}) < rms(3, {}));
  CHECK(rms(3, {}) < rms(5, {}));
  CHECK(rms(5, {}) < rms({}, 10));
  CHECK(judge_test_spot(job, spot, curves).texture_after->log_sd < 0.3);
}

TEST_CASE("calibrating with texture narrows the job's texture and that backing, and goes on from there") {
  Job job = textured_job(Backing::on_springs(2), 0.3, 0.5);
  job.sequence[0].step[1].backing = Backing::on_springs(5);
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  TestSpot spot = spot_of(10, 8, 20);
  spot.area_m2 = patch_m2;
  spot.gloss_gone_passes = 3;
  spot.rms_left_um = 0.1;
  const SpotCurves curves = curves_of(job, spot, surface);
  const TestSpotResult result = judge_test_spot(job, spot, curves);
  const Job calibrated = calibrate(job, spot, curves).job;
  CHECK(calibrated.texture.scale == Catch::Approx(result.texture_after->median / surface.rms_um()));
  CHECK(calibrated.texture.scale_log_sd == result.texture_after->log_sd);
  CHECK(calibrated.sequence[0].step[0].backing.stiffness_factor ==
        Catch::Approx(result.stiffness_after->median));
  CHECK(calibrated.sequence[0].step[1].backing == job.sequence[0].step[1].backing);
  // The saved figures are where a second spot starts from.
  const HeightField known = starting_surface(calibrated.texture, calibrated.patch, calibrated.seed);
  CHECK(known.rms_um() == Catch::Approx(result.texture_after->median).epsilon(1e-9));
  const TestSpotResult second = judge_test_spot(calibrated, spot, curves_of(calibrated, spot, known));
  CHECK(second.texture_before->median == Catch::Approx(result.texture_after->median).epsilon(1e-9));
  CHECK(second.stiffness_before->median == Catch::Approx(result.stiffness_after->median).epsilon(1e-9));
  CHECK(second.texture_after->log_sd < result.texture_after->log_sd);
}

TEST_CASE("a spot that tells of texture needs its curves, and looks that fit its passes") {
  const Job job = textured_job(Backing::on_springs(2), 0.3, 0.5);
  TestSpot spot = spot_of(4, 3, 5);
  spot.rms_left_um = 0.3;
  CHECK_THROWS_WITH(judge_test_spot(job, spot),
                    "TestSpot: curves must be given where texture is told (got none)");
  spot.gloss_gone_passes = 5;
  CHECK_THROWS_WITH(spot.validate(), "TestSpot: gloss_gone_passes must be between 1 and 4 (got 5)");
  spot.gloss_gone_passes = 3;
  spot.gloss_left_passes = 3;
  CHECK_THROWS_WITH(spot.validate(), "TestSpot: gloss_left_passes must be between 0 and 2 (got 3)");
  spot.gloss_left_passes = 2;
  spot.rms_left_um = -1;
  CHECK_THROWS_WITH(spot.validate(), "TestSpot: rms_left_um must be > 0 (got -1 um)");
}

namespace {

bool warns(const TestSpotResult& result, StatementKind kind) {
  return std::any_of(result.warnings.begin(), result.warnings.end(),
                     [&](const Statement& one) { return one.kind == kind; });
}

}  // namespace

TEST_CASE("more texture left than there was is refused, and a belief that leaves its prior is warned of") {
  const Job job = textured_job(film_on_foam(), .3, .4);
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  TestSpot spot = spot_of(6, 3.5, 8);
  spot.area_m2 = patch_m2;
  spot.rms_left_um = 0.4;
  const SpotCurves curves = curves_of(job, spot, surface);
  const auto judged = [&](double rms_left_um) {
    spot.rms_left_um = rms_left_um;
    return judge_test_spot(job, spot, curves);
  };
  // What these tools leave by the job's own figures is no surprise.
  const double expected_um = curves.rms_left_um(1, 1, 3.5);
  const TestSpotResult usual = judged(expected_um);
  for (const StatementKind kind : {StatementKind::wear_rate_unexpected, StatementKind::texture_unexpected,
                                   StatementKind::stiffness_unexpected})
    CHECK_FALSE(warns(usual, kind));
  // 300 nm typed into a field of um: more than there was by any belief of 0.7 um rms.
  CHECK_THROWS_WITH(judged(300), Catch::Contains("rms_left_um must not be more than there was, 0.7") &&
                                     Catch::Contains("if it is in nm, write 0.3 (got 300 um)"));
  CHECK_NOTHROW(judged(surface.rms_um()));  // nothing levelled: possible
  // A thousandth of what was expected, and nothing at all: beliefs run to where the search ends.
  for (const double left_um : {expected_um / 1000, 1e-300}) {
    const TestSpotResult off = judged(left_um);
    REQUIRE(warns(off, StatementKind::stiffness_unexpected));
    const auto warning = std::find_if(off.warnings.begin(), off.warnings.end(), [](const Statement& one) {
      return one.kind == StatementKind::stiffness_unexpected;
    });
    CHECK(warning->figures.at("prior_sds") > 2);
    CHECK(warning->figures.at("ratio") > 1);
  }
  CHECK(judged(1e-300).warnings.back().figures.count("edge_ratio") == 1);
}

TEST_CASE("a wear rate that leaves its prior is warned of with or without a look at the texture") {
  // Ten times what was expected lies ln(10)/0.7 = 3.3 standard deviations off; the belief goes most of the
  // way.
  const TestSpotResult off = judge_test_spot(job_of(), spot_of(4, 34.9, 20));
  REQUIRE(warns(off, StatementKind::wear_rate_unexpected));
  CHECK(off.warnings.back().figures.at("prior_sds") > 2);
  CHECK(off.warnings.back().figures.at("ratio") == Catch::Approx(off.after.median / off.before.median));
  CHECK_FALSE(warns(judge_test_spot(job_of(), spot_of(4, 3.5, 20)), StatementKind::wear_rate_unexpected));
}
