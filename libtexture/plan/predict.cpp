#include "libtexture/plan/predict.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/sequence.hpp"

namespace libtexture {
namespace {

constexpr double care_share = 0.8;  // a plan that spends more of what may go needs care; estimate

// Clear where the film is thinnest: at the least reading, or anywhere where readings have no place.
Film thinnest_film(const Panel& panel, const Paint& paint) {
  const FilmMap map = film_map(panel, paint);
  const auto least =
      std::min_element(panel.readings.begin(), panel.readings.end(),
                       [](const Reading& a, const Reading& b) { return total_um(a) < total_um(b); });
  return least->x_mm ? film_at(map, {*least->x_mm, *least->y_mm}) : film_anywhere(map);
}

PanelPrediction predict_panel(const Panel& panel, const Job& job, const Film& film, const History& history) {
  PanelPrediction result;
  result.name = panel.name;
  result.area_m2 = panel.area_m2;
  result.total_film_least_um = HUGE_VAL;
  for (const Reading& reading : panel.readings)
    result.total_film_least_um = std::min(result.total_film_least_um, total_um(reading));
  result.clear_um = film.clear_um;
  result.clear_sd_um = film.clear_sd_um;
  result.start = history.start;
  result.steps = history.steps;
  result.passes = history.passes;
  const HistoryRow& end = history.steps.back();
  result.removed_um = end.total_removed_um;
  result.removed_max_um = (history.before.height_um() - history.surfaces.back().height_um()).maxCoeff();
  result.clear_left_mean_um = end.clear_left_mean_um;
  result.clear_left_least_um = end.clear_left_least_um;
  result.budget = budget_rules(job.budget, film.clear_um);
  result.removable_um = removable_um(job.budget, film.clear_um);
  for (const HistoryRow& row : history.steps) {
    result.discs += row.discs;
    result.minutes += row.minutes;
  }
  return result;
}

// The worse of two verdicts stays.
void judge(Prediction& prediction, const PanelPrediction& panel) {
  const std::string spent = panel.name + ": " + um_and_mil(panel.removed_um) + " of clear would go, and " +
                            um_and_mil(std::max(0.0, panel.removable_um)) + " may";
  Verdict verdict = Verdict::go;
  if (panel.clear_left_least_um <= 0) {
    verdict = Verdict::do_not_sand;
    prediction.reasons.push_back(panel.name + ": the sequence strikes through the clear");
  } else if (panel.removed_um > panel.removable_um) {
    verdict = Verdict::do_not_sand;
    prediction.reasons.push_back(spent);
  } else {
    const bool is_near = panel.removed_um > care_share * panel.removable_um;
    const bool is_unsure = panel.removed_um > panel.removable_um - panel.clear_sd_um;
    verdict = is_near || is_unsure ? Verdict::go_with_care : Verdict::go;
    prediction.reasons.push_back(
        spent + (is_unsure ? "; the clear is known to " + um_and_mil(panel.clear_sd_um) + " only" : ""));
  }
  prediction.verdict = std::max(prediction.verdict, verdict);
}

}  // namespace

const Sequence& sequence_named(const Job& job, const std::string& name) {
  require(!job.sequence.empty(), "Job", "sequence", "must hold at least one sequence", "none");
  if (name.empty()) return job.sequence.front();
  std::vector<std::string> names;
  for (const Sequence& sequence : job.sequence) {
    if (sequence.name == name) return sequence;
    names.push_back(sequence.name);
  }
  const std::string nearest = nearest_word(name, names.data(), names.data() + names.size());
  require(false, "Job", "sequence",
          "must be one of the job's" + (nearest.empty() ? "" : "; nearest: " + nearest), name);
  return job.sequence.front();
}

Predicted predict(const Job& job, const HeightField& surface, const std::string& sequence,
                  const Progress& progress) {
  job.validate();
  const Sequence& chosen = sequence_named(job, sequence);
  Predicted predicted;
  Prediction& prediction = predicted.prediction;
  prediction.sequence = chosen.name;
  prediction.verdict = Verdict::go;
  prediction.seed = job.seed;
  double done = 0;
  for (const Panel& panel : job.panel) {
    const Film film = thinnest_film(panel, job.coating);
    const Coating coating{{{.name = "clear",
                            .thickness_um = film.clear_um,
                            .uncertainty_um = film.clear_sd_um,
                            .hardness_mpa = job.coating.hardness_mpa}}};
    const double share = 1.0 / static_cast<double>(job.panel.size());
    const Progress part =
        progress ? Progress([&](double panel_done) { progress(done + share * panel_done); }) : Progress();
    History history = simulate(surface, coating, chosen.step,
                               {.area_m2 = panel.area_m2,
                                .crown_radius_m = panel.crown_radius_m,
                                .scratch_limits = job.scratch_limits,
                                .viewer = job.viewer},
                               part);
    done += share;
    prediction.panels.push_back(predict_panel(panel, job, film, history));
    judge(prediction, prediction.panels.back());
    prediction.discs += prediction.panels.back().discs;
    prediction.minutes += prediction.panels.back().minutes;
    for (const std::string& warning : history.warnings)
      prediction.warnings.push_back(panel.name + ": " + warning);
    prediction.band_edges_mm = history.band_edges_mm;
    predicted.histories.push_back(std::move(history));
  }
  prediction.cautions = general_cautions();
  for (const Step& step : chosen.step)
    prediction.step_cautions.push_back({title_of(step), cautions_of(step)});
  return predicted;
}

}  // namespace libtexture
