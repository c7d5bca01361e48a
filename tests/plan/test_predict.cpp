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

bool holds(const std::vector<std::string>& sentences, const std::string& words) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& sentence) { return sentence.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("a verdict names the rule of the budget that the worlds break, and what would settle it") {
  Job thin = one_pass();
  thin.budget.clear_left_least_um = 75;  // of 80, known to some um: it is the clear that decides
  const Prediction by_clear = prediction_of(thin);
  const PanelRisk& risk = by_clear.panels[0].risk;
  REQUIRE(risk.budget_exceeded_probability >= 0.1);
  CHECK(risk.clear_left_short_probability == risk.budget_exceeded_probability);
  CHECK(holds(by_clear.reasons, "mostly because too little stays"));
  CHECK(holds(by_clear.reasons, "75.0 um (2.95 mil) must"));
  CHECK(holds(by_clear.reasons, "More readings"));

  Job hasty = one_pass();
  hasty.budget.clear_removed_most_um = 0.1;  // less than a pass takes
  const Prediction by_removal = prediction_of(hasty);
  CHECK(by_removal.panels[0].risk.clear_left_short_probability == 0);
  CHECK(holds(by_removal.reasons, "mostly because too much goes"));

  const Prediction kept = prediction_of(one_pass());
  CHECK(kept.panels[0].risk.budget_exceeded_probability < 0.1);
  CHECK_FALSE(holds(kept.reasons, "mostly"));
}

TEST_CASE("a sequence that ends with visible scratches is warned of") {
  CHECK(holds(prediction_of(one_pass()).warnings, "visible scratches per cm2 are left"));
}

TEST_CASE("a reading far from the others is asked about") {
  Job job = one_pass();
  const auto with = [&](double total) {
    job.panel[0].readings.assign(4, job.panel[0].readings[0]);
    job.panel[0].readings[1].total_um = total;
    return prediction_of(job).warnings;
  };
  CHECK(holds(with(110), "a reading of 110.0 um"));
  CHECK(holds(with(600), "a reading of 600.0 um"));
  CHECK_FALSE(holds(with(240), "a reading of"));
}
