#include <algorithm>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/recommend.hpp"

using namespace libtexture;

namespace {

Recommendation advice_for(const Job& job, const Tools& tools, const WorkLimits& limits = {}) {
  return recommend(job, surface_of(job), tools, limits);
}

const Statement* found(const std::vector<Statement>& all, StatementKind kind) {
  const auto place =
      std::find_if(all.begin(), all.end(), [&](const Statement& one) { return one.kind == kind; });
  return place == all.end() ? nullptr : &*place;
}

// Some of the catalogue's discs, with all its compounds and backings.
Tools discs_of(const Job& job, const std::vector<std::string>& names) {
  Tools tools = tools_of(job);
  std::vector<Abrasive> kept;
  for (const Abrasive& one : tools.abrasives)
    if (one.carrier == Carrier::compound || std::find(names.begin(), names.end(), one.name) != names.end())
      kept.push_back(one);
  tools.abrasives = kept;
  return tools;
}

const Alternative& first_with(const Recommendation& advice, const std::string& abrasive) {
  for (const Alternative& one : advice.comparison.alternatives)
    if (one.first_abrasive == abrasive) return one;
  FAIL(abrasive << " was not compared");
  return advice.comparison.alternatives.front();
}

}  // namespace

TEST_CASE(
    "finer first spends less clear where the texture is short and shallow: overshoot and debt are smaller") {
  // The trainer's demonstration (common practice, no source): it has to come out of the computation.
  const Job job = door::job();
  const Recommendation advice = advice_for(job, discs_of(job, {"P1200 film", "P2000 film", "P3000 film"}));
  CHECK(advice.finest == "P3000 film first");
  CHECK(advice.recommended == advice.finest);
  CHECK(advice.comparison.best == advice.finest);
  const Alternative fine = first_with(advice, "P3000 film"), middle = first_with(advice, "P2000 film"),
                    coarse = first_with(advice, "P1200 film");
  CHECK(fine.debt_um.p50 < middle.debt_um.p50);
  CHECK(middle.debt_um.p50 < coarse.debt_um.p50);
  CHECK(fine.removed_um.p50 < coarse.removed_um.p50);
  CHECK(coarse.more.debt_um.p50 > 0);
  CHECK(found(advice.reasons, StatementKind::finest_is_cheapest));
  CHECK_FALSE(advice.cautions.empty());
  CHECK_FALSE(advice.comparison.step_cautions.empty());
}

TEST_CASE(
    "where the texture is long and the panel crowned, the finest disc takes too long, and a coarser one is "
    "the finest that works") {
  Job job = door::job();
  job.patch.pixel_mm = 1;
  job.panel[0].crown_radius_m = 3;
  job.coating.clear_um = 100;
  job.texture.bands[0].wavelength_mm = 8;
  job.texture.bands[0].rms_um = 0.5;
  job.budget.clear_removed_most_share = 1;  // no rule
  const Recommendation advice = advice_for(job, discs_of(job, {"P1000 film", "P3000 film"}));
  CHECK(advice.finest == "P1000 film first");
  REQUIRE(advice.first_steps.front().abrasive == "P3000 film");
  CHECK_FALSE(advice.first_steps.front().is_reaching);
  const Statement* slow = found(advice.reasons, StatementKind::too_many_minutes);
  if (!slow) slow = found(advice.reasons, StatementKind::too_many_passes);
  REQUIRE(slow);
  CHECK(slow->abrasives == std::vector<std::string>{"P3000 film"});
}

TEST_CASE("finest first is said not to be the cheapest where its backing levels for more clear") {
  // Foam-backed P3000 reaches a short texture, but its backing follows the waves that a film spans.
  Job job = door::job();
  job.patch.pixel_mm = 0.25;
  job.texture.bands[0].wavelength_mm = 2;
  job.texture.bands[0].rms_um = 0.4;
  job.target.rms_um = 0.12;
  const Recommendation advice = advice_for(job, discs_of(job, {"P3000 foam-backed", "P2000 film"}));
  REQUIRE(advice.comparison.alternatives.size() == 2);
  CHECK(advice.finest == "P3000 foam-backed first");
  CHECK(first_with(advice, "P3000 foam-backed").levelling_um.p50 >
        first_with(advice, "P2000 film").levelling_um.p50);
  CHECK(first_with(advice, "P3000 foam-backed").debt_um.p50 < first_with(advice, "P2000 film").debt_um.p50);
  CHECK(advice.comparison.best == "P2000 film first");
  CHECK(advice.recommended == "P2000 film first");  // the finest surely spends more
  const Statement* dearer = found(advice.reasons, StatementKind::finest_is_not_cheapest);
  REQUIRE(dearer);
  CHECK(dearer->sequence == advice.finest);
  CHECK(dearer->other_sequence == advice.comparison.best);
  CHECK(found(advice.reasons, StatementKind::spends_more));  // by how much
}

TEST_CASE("do not sand comes first, with the reason, where the clear is thin: the factory lid") {
  Job job = load_job(std::string(LIBTEXTURE_SOURCE_DIR) + "/examples/jobs/factory_lid.toml");
  job.patch = {64, 64, 0.4};
  job.uncertainty.samples = 400;
  const Recommendation advice = advice_for(job, discs_of(job, {"P1200 film", "P3000 film"}));
  CHECK(advice.verdict == Verdict::do_not_sand);
  CHECK(advice.reasons.front().kind == StatementKind::budget_bears_none);
  CHECK(advice.reasons.size() >= 2);
}

TEST_CASE("a target out of reach is an answer that names the waves in the way and what would help") {
  Job job = door::job();
  job.patch.pixel_mm = 1;
  job.texture.bands[0].wavelength_mm = 10;
  job.target.rms_um = 0.05;
  const Recommendation advice = advice_for(job, discs_of(job, {"P2000 foam-backed", "P3000 foam-backed"}));
  CHECK(advice.verdict == Verdict::do_not_sand);
  CHECK(advice.recommended.empty());
  CHECK(advice.sequences.empty());
  CHECK(advice.reasons.front().kind == StatementKind::no_tool_reaches);
  for (const StatementKind kind :
       {StatementKind::clear_runs_out, StatementKind::waves_resist, StatementKind::stiffer_backing_helps}) {
    const Statement* reason = found(advice.reasons, kind);
    REQUIRE(reason);
    CHECK(reason->abrasives == std::vector<std::string>{"P3000 foam-backed", "P2000 foam-backed"});
  }
  CHECK_FALSE(advice.cautions.empty());
}

TEST_CASE("every kind of target finds its first step") {
  for (int kind = 0; kind < 4; ++kind) {
    Job job = door::job();
    job.target = {};
    if (kind == 0) job.target.preset = TargetPreset::full;
    if (kind == 1) job.target.preset = TargetPreset::partial;
    if (kind == 2) job.target.image_clarity_percent = 60;
    if (kind == 3) {
      job.target.letter_mm = 40;
      job.target.distance_m = 3;
    }
    const Recommendation advice = advice_for(job, discs_of(job, {"P2000 film"}));
    INFO("kind " << kind);
    REQUIRE(advice.comparison.alternatives.size() == 1);
    CHECK(is_reached(advice.comparison.alternatives[0].target));
    CHECK(advice.comparison.alternatives[0].target_missed_probability < 0.5);
  }
}

TEST_CASE("full is not answered by a disc that follows the waves") {
  // A factory roof with long, shallow waves: a foam-backed P5000 touches all of it and levels nothing.
  Job job = door::job();
  job.coating = {.kind = PaintKind::factory, .clear_um = 50};
  job.patch.pixel_mm = 0.5;
  job.texture.bands[0] = {.wavelength_mm = 4, .rms_um = 0.27};
  job.target = {.preset = TargetPreset::full};
  const Recommendation advice = advice_for(job, discs_of(job, {"P5000 foam-backed", "P3000 film"}));
  for (const FirstStep& first : advice.first_steps)
    if (first.abrasive == "P5000 foam-backed") {
      CHECK_FALSE(first.is_reaching);
      // Its texture goes in the end, by 30 um of clear where 12.7 may (computed), not by 0.1.
      CHECK(found(first.reasons, StatementKind::too_dear));
    }
  CHECK(advice.recommended != "P5000 foam-backed first");
}

TEST_CASE("a first step whose grooves nothing at hand reaches is out, with that reason") {
  const Job job = door::job();
  const Recommendation advice =
      advice_for(job, discs_of(job, {"P1200 film", "P3000 film"}), {.grain_ratio_most = 1.2});
  for (const FirstStep& first : advice.first_steps) {
    CHECK_FALSE(first.is_reaching);
    CHECK(found(first.reasons, StatementKind::grooves_unreached));
  }
}

TEST_CASE("predict and recommend give the same verdict on the same plan, for the same reasons") {
  Job job = door::job();
  job.patch = {320, 320, 0.08};  // thinned for the best estimates of a recommendation
  job.uncertainty.samples = 200;
  const Recommendation advice = advice_for(job, discs_of(job, {"P3000 film"}));
  REQUIRE(advice.sequences.size() == 1);
  job.sequence = advice.sequences;
  const Prediction plan = predict(job, surface_of(job)).prediction;
  CHECK(plan.verdict == advice.verdict);
  CHECK(plan.reasons == advice.comparison.alternatives.front().reasons);
}

TEST_CASE("where the texture meets the target as it is, nothing is recommended") {
  Job job = door::job();
  job.target.rms_um = 2;
  const Recommendation advice = advice_for(job, discs_of(job, {"P3000 film"}));
  CHECK(advice.verdict == Verdict::nothing_to_do);
  CHECK(advice.recommended.empty());
  CHECK(advice.reasons.front().kind == StatementKind::target_met_before);
}

TEST_CASE("tools without a disc cannot begin") {
  const Job job = door::job();
  CHECK_THROWS_WITH(advice_for(job, discs_of(job, {})),
                    "recommend: tools must hold at least one disc (got none)");
}

TEST_CASE("progress rises to the end and may stop the work") {
  const Job job = door::job();
  double last = 0;
  recommend(job, surface_of(job), discs_of(job, {"P2000 film"}), {}, [&](double done) {
    CHECK(done >= last);
    CHECK(done <= 1);
    last = done;
  });
  CHECK(last == 1);
  struct Stopped {};
  CHECK_THROWS_AS(
      recommend(job, surface_of(job), discs_of(job, {"P2000 film"}), {}, [](double) { throw Stopped(); }),
      Stopped);
}
