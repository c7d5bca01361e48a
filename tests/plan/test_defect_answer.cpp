// What it takes to be rid of a defect, against arithmetic, the normal distribution and what must always hold.
#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/compare.hpp"
#include "libtexture/plan/defect_answer.hpp"
#include "libtexture/plan/recommend.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "libtexture/plan/worlds.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

Step step_of(const std::string& abrasive, const std::string& backing, const std::string& motion, int passes) {
  const Catalogue& tools = shipped_catalogue();
  Step step;
  step.abrasive = tools.abrasives.at(abrasive);
  step.name = abrasive;
  step.backing = tools.backings.at(backing);
  step.motion = tools.motions.at(motion);
  step.wetness = step.abrasive.made_for.front();
  step.passes = passes;
  step.look_every_passes = 2;
  return step;
}

Job job_of(const Defect& defect) {
  Job job = door::job();
  job.target = {.defect = defect};
  Step compound = step_of("compound", "compound on fibre", "150 mm compound", 4);
  compound.stop.clear_owed_um = 0.05;
  job.sequence = {
      {"P2500 first", {step_of("P2500 film", "film on firm interface", "150 mm light", 60), compound}}};
  return job;
}

// All but flat, worked by a hand that dwells evenly and does not lean, in lanes so close that none tells.
Job even_job(const Defect& defect) {
  Job job = job_of(defect);
  job.texture.bands = {{.wavelength_mm = 2.5, .rms_um = 1e-3}};
  for (Step& step : job.sequence.front().step) {
    Motion& motion = step.motion;
    motion.dwell_cv = motion.lean_share = 0;
    motion.feed_mm_per_s *= motion.step_over_mm;
    motion.step_over_mm = 1;
  }
  job.sequence.front().step.front().passes = 400;  // whatever the disc cuts
  return job;
}

SampledRisk sampled(const Job& job) {
  return sample_risk(job, surface_of(job), {{worked_sequence(job, job.sequence.front(), surface_of(job))}})
      .risks.front();
}

Predicted predicted(const Job& job) {
  return predict(job, surface_of(job));
}

const DefectWay& way(const Predicted& predicted, DefectWayKind kind) {
  const std::vector<DefectWay>& ways = predicted.prediction.panels.front().defect->ways;
  return *std::find_if(ways.begin(), ways.end(), [&](const DefectWay& one) { return one.way == kind; });
}

}  // namespace

TEST_CASE("what is left of a scratch is its depth less the clear that went beside it, world by world") {
  Job job = job_of({.depth_um = 3, .sd_um = 1});
  job.sequence.front().step.front().stop.removed_um = 2.5;
  const RiskDraws draws = sampled(job).draws.front();
  const std::vector<double> depth_um = worlds_of(job).defect_um;
  for (std::size_t i = 0; i < depth_um.size(); ++i)
    CHECK(draws.defect_left_um[i] ==
          Approx(std::max(0.0, depth_um[i] - draws.defect_removed_um[i])).margin(1e-9));
}

TEST_CASE("the chance that a scratch is gone is that of a normal depth to be less than what went") {
  Job job = job_of({.depth_um = 3, .sd_um = 1});
  job.uncertainty.samples = 4000;
  job.sequence.front().step.front().stop.removed_um = 2.5;
  const RiskDraws draws = sampled(job).draws.front();
  const boost::math::normal normal(3, 1);
  const double below_0 = boost::math::cdf(normal, 0);
  double expected = 0;
  for (const double removed_um : draws.defect_removed_um)
    expected += std::max(0.0, boost::math::cdf(normal, removed_um) - below_0) / (1 - below_0) / 4000;
  // Three standard errors of a share of 4000 draws are at most 3/(2 sqrt(4000)) = .024.
  CHECK(1 - mean_of(draws.is_defect_left) == Approx(expected).margin(0.024));
  CHECK(expected > 0.1);
  CHECK(expected < 0.95);
}

TEST_CASE("a scratch of 3 um costs 3 um of clear, what goes until the next look, and the refinement") {
  const Job job = even_job({.depth_um = 3, .sd_um = 0});
  const Predicted answer = predicted(job);
  const RiskDraws& draws = answer.draws.front();
  for (std::size_t i = 0; i < draws.removed_um.size(); ++i) {
    CHECK(draws.levelling_um[i] == Approx(3).epsilon(2e-3));
    CHECK(draws.removed_um[i] == Approx(3 + draws.overshoot_um[i] + draws.debt_um[i]).epsilon(2e-3));
  }
  CHECK(answer.prediction.panels.front().risk.debt_um.p50 > 0.1);
}

TEST_CASE("a depth that is known is surely taken out where the hand is even and looks") {
  const Predicted answer = predicted(even_job({.depth_um = 2, .sd_um = 0}));
  CHECK(answer.prediction.panels.front().risk.defect_left_probability == 0);
  CHECK(answer.prediction.panels.front().risk.target_missed_probability == 0);
  CHECK(way(answer, DefectWayKind::all_over).gone_probability == 1);
  CHECK(way(answer, DefectWayKind::leave).gone_probability == 0);
}

TEST_CASE("a deeper scratch never costs less clear nor less time, in any world") {
  const RiskDraws shallow = sampled(job_of({.depth_um = 2, .sd_um = 0.5})).draws.front();
  const RiskDraws deep = sampled(job_of({.depth_um = 3, .sd_um = 0.5})).draws.front();
  for (std::size_t i = 0; i < shallow.removed_um.size(); ++i) {
    CHECK(deep.levelling_um[i] >= shallow.levelling_um[i]);
    CHECK(deep.minutes[i] >= shallow.minutes[i]);
  }
  CHECK(mean_of(deep.levelling_um) == Approx(mean_of(shallow.levelling_um) + 1).epsilon(0.1));
}

TEST_CASE("a long scratch is gone where the texture lies lowest, a short one wherever it lies") {
  Job job = job_of({.depth_um = 2, .sd_um = 0});
  const double point_um = mean_of(sampled(job).draws.front().levelling_um);
  job.target.defect->length_mm = 100;
  const double long_um = mean_of(sampled(job).draws.front().levelling_um);
  CHECK(long_um > point_um + 0.1);
  CHECK(long_um < point_um + 4 * 0.6);  // no place of a texture of .6 um rms lies deeper than 4 of that
}

TEST_CASE("a patch never takes more minutes or discs than the whole panel") {
  const Job job = job_of({.depth_um = 3, .sd_um = 0.5, .patch_mm = 200});
  const SampledRisk risk = sampled(job);
  REQUIRE(risk.other_ways.size() == 1);
  REQUIRE(risk.other_ways.front().way == DefectWayKind::all_over);
  const RiskDraws &patch = risk.draws.front(), &all_over = risk.other_ways.front().draws.front();
  for (std::size_t i = 0; i < patch.minutes.size(); ++i) {
    CHECK(patch.minutes[i] <= all_over.minutes[i]);
    CHECK(patch.discs[i] <= all_over.discs[i]);
  }
  // The same sequence all over, asked for by itself, is the way that was sampled beside.
  Job whole = job;
  whole.target.defect->patch_mm.reset();
  CHECK(mean_of(sampled(whole).draws.front().minutes) == Approx(mean_of(all_over.minutes)).epsilon(0.02));
}

TEST_CASE("rounding an etch mark spends less than taking it out, and hides it") {
  Job job = job_of({.depth_um = 2, .sd_um = 0.3, .width_mm = 2});
  job.sequence.front().step.front().passes = 400;  // whatever the disc cuts
  const Predicted answer = predicted(job);
  const DefectWay &out = way(answer, DefectWayKind::all_over), &round = way(answer, DefectWayKind::round);
  CHECK(round.clear_um.p50 < out.clear_um.p50);
  CHECK(round.left_um.p95 <= *answer.prediction.panels.front().defect->hidden_um * 1.001);
  CHECK(*round.hidden_probability > 0.95);
  CHECK(round.gone_probability < out.gone_probability);
}

TEST_CASE("a feather shows where it is short: a closed form of its slope") {
  Job job = job_of({.depth_um = 3, .sd_um = 0, .patch_mm = 100, .feather_mm = 5});
  const DefectAnswer steep = *predicted(job).prediction.panels.front().defect;
  const double slope = steep.ways.front().clear_um.p50 * 1e-3 / 5;
  CHECK(*steep.feather_shift_arcmin == Approx(2 * slope * 2 / 3 * 180 * 60 / std::numbers::pi));
  CHECK(steep.notes.front().kind == StatementKind::feather_shows);
  job.target.defect->feather_mm = 75;
  CHECK(predicted(job).prediction.panels.front().defect->notes.front().kind == StatementKind::feather_hidden);
}

TEST_CASE("where the clear is too thin the answer is to leave the scratch") {
  Job job = job_of({.depth_um = 6, .sd_um = 1});
  job.coating = {.kind = PaintKind::factory};
  job.panel.front().readings = {{.total_um = 95}, {.total_um = 92}, {.total_um = 97}};
  const Prediction prediction = predicted(job).prediction;
  CHECK(prediction.verdict == Verdict::do_not_sand);
  const auto says = [](const std::vector<Statement>& reasons, StatementKind kind) {
    return std::any_of(reasons.begin(), reasons.end(),
                       [&](const Statement& one) { return one.kind == kind; });
  };
  CHECK(says(prediction.reasons, StatementKind::defect_leave_it));
  const Recommendation advice = recommend(job, surface_of(job), tools_of(job));
  CHECK(advice.verdict == Verdict::do_not_sand);
  CHECK(says(advice.reasons, StatementKind::defect_leave_it));
}

TEST_CASE(
    "recommend takes out a scratch with the finest disc that the budget bears, and stops when it is gone") {
  const Job job = job_of({.depth_um = 2, .sd_um = 0.3, .patch_mm = 200});
  const Recommendation advice = recommend(job, surface_of(job), tools_of(job));
  REQUIRE(!advice.recommended.empty());
  CHECK(advice.verdict != Verdict::do_not_sand);
  CHECK(advice.sequences.front().step.front().stop == Stop{.defect_um = 2});
  for (const Alternative& one : advice.comparison.alternatives) {
    CHECK(one.target_missed_probability < 0.2);
    CHECK(one.target.back().asks == "defect");
    CHECK(one.target.back().is_met);
  }
}
