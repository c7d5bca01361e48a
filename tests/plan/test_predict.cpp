#include <algorithm>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/plan/predict.hpp"

using namespace libtexture;

namespace {

// One pass of a film disc on the small door.
Job one_pass() {
  Job job = door::job();
  const Tools tools = tools_of(job);
  Step step;
  step.name = "level";
  step.abrasive = *std::find_if(tools.abrasives.begin(), tools.abrasives.end(),
                                [](const Abrasive& one) { return one.name == "P2000 film"; });
  step.backing = *std::find_if(tools.backings.begin(), tools.backings.end(),
                               [](const Backing& one) { return one.name == "film on firm interface"; });
  step.motion = tools.disc;
  step.passes = 1;
  job.sequence = {{"one pass", {step}}};
  return job;
}

Prediction prediction_of(const Job& job) {
  return predict(job, surface_of(job)).prediction;
}

const Statement* found(const std::vector<Statement>& all, StatementKind kind) {
  const auto place =
      std::find_if(all.begin(), all.end(), [&](const Statement& one) { return one.kind == kind; });
  return place == all.end() ? nullptr : &*place;
}

}  // namespace

TEST_CASE("a verdict names the rule of the budget that the worlds break, and what would settle it") {
  // Limits far on either side of what one pass does: on which side a verdict falls is arithmetic. Care begins
  // at 10 % (estimate, docs/physics.md, verdict).
  Job thin = one_pass();
  thin.budget.clear_left_least_um = 75;  // of 80, known to some um: it is the clear that decides
  const Prediction by_clear = prediction_of(thin);
  const PanelRisk& risk = by_clear.panels[0].risk;
  REQUIRE(risk.budget_exceeded_probability >= 0.1);
  CHECK(risk.clear_left_short_probability == risk.budget_exceeded_probability);
  const Statement* short_of = found(by_clear.reasons, StatementKind::too_little_left);
  REQUIRE(short_of);
  CHECK(short_of->panel == by_clear.panels[0].name);
  CHECK(short_of->figures.at("must_stay_um") == 75);
  CHECK(short_of->figures.at("budget_exceeded_probability") == risk.budget_exceeded_probability);

  Job hasty = one_pass();
  hasty.budget = {.clear_removed_most_um = 0.1};  // less than a pass takes; nothing must stay
  const Prediction by_removal = prediction_of(hasty);
  CHECK(by_removal.panels[0].risk.clear_left_short_probability == 0);
  CHECK(found(by_removal.reasons, StatementKind::too_much_removed));

  const Prediction kept = prediction_of(one_pass());
  CHECK(kept.panels[0].risk.budget_exceeded_probability < 0.1);
  CHECK(found(kept.reasons, StatementKind::budget_kept));
}

TEST_CASE("a sequence that ends with visible scratches is warned of") {
  CHECK(found(prediction_of(one_pass()).warnings, StatementKind::marks_left));
}

TEST_CASE("a reading far from the others is asked about") {
  Job job = one_pass();
  const auto with = [&](double total) {
    job.panel[0].readings.assign(4, job.panel[0].readings[0]);
    job.panel[0].readings[1].total_um = total;
    return prediction_of(job).warnings;
  };
  for (const double odd_um : {110.0, 600.0}) {
    const std::vector<Statement> warnings = with(odd_um);
    const Statement* odd = found(warnings, StatementKind::odd_reading);
    REQUIRE(odd);
    CHECK(odd->figures.at("reading_um") == odd_um);
  }
  CHECK_FALSE(found(with(240), StatementKind::odd_reading));
}

TEST_CASE("a margin along an edge that cannot be found is left out, and the prediction stands") {
  Job job = one_pass();
  job.panel[0].edge_length_m = 3;
  job.uncertainty.samples = 100;
  CHECK(prediction_of(job).panels[0].edge.has_value());
  job.coating.hardness_mpa = 0.5;  // so soft that one pass takes more than an edge is followed through
  const Prediction prediction = prediction_of(job);
  REQUIRE(prediction.panels[0].removed_um > most_edge_removal_um);
  CHECK_FALSE(prediction.panels[0].edge.has_value());
  const Statement* failed = found(prediction.warnings, StatementKind::edge_margin_failed);
  REQUIRE(failed);
  CHECK(failed->panel == "door");
  CHECK(failed->figures.at("removed_um") == prediction.panels[0].removed_um);
}
