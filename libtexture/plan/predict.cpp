#include "libtexture/plan/predict.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/checklist.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {
namespace {

// Chances from which a plan needs care, and from which it is off (estimates: clear does not come back, so a
// strike-through weighs more than a budget that is exceeded, which more than a target that is missed).
struct ChanceLimits {
  double care, off;
};
constexpr ChanceLimits strike_through{0.005, 0.05};
constexpr ChanceLimits budget_exceeded{0.10, 0.50};

constexpr double odd_reading_factor = 2;  // from the median: to look at again; estimate
// Shares of the time, for progress, as measured on a patch of 512 x 512: the best estimates, and the edges.
constexpr double nominal_work = 0.4, edges_work = 0.02;

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

Verdict verdict_by(double probability, const ChanceLimits& limits) {
  if (probability >= limits.off) return Verdict::do_not_sand;
  return probability >= limits.care ? Verdict::go_with_care : Verdict::go;
}

// A person's work around the sanding: minutes, discs, and the edges where the panel states them.
void add_labour(const Panel& panel, const Job& job, const std::vector<Step>& steps, PanelPrediction& result,
                std::vector<Statement>& warnings, const Progress& progress) {
  const double edge_length_m = panel.edge_length_m.value_or(0);
  result.labour = labour_of(job.labour, panel.area_m2, edge_length_m, steps, result.steps);
  result.disc_lives = disc_lives(steps, result.steps, job.coating.hardness_mpa);
  if (edge_length_m <= 0 || result.removed_um == 0) return;
  if (panel.crown_radius_m)
    warnings.push_back({.kind = StatementKind::edge_margin_of_flat,
                        .panel = panel.name,
                        .figures = {{"crown_radius_m", *panel.crown_radius_m}}});
  if (std::all_of(steps.begin(), steps.end(),
                  [](const Step& step) { return has_edge_profile(step.backing); }))
    result.edge =
        edge_margin(job.edge, job.budget, result.clear_um, result.clear_sd_um, steps, result.steps, progress);
  else
    warnings.push_back({.kind = StatementKind::edge_margin_left_out, .panel = panel.name});
}

// What the budget says of the worlds: how often it is exceeded, by which rule, and what would settle it.
Statement budget_reason(const PanelPrediction& panel, const Budget& budget) {
  const PanelRisk& risk = panel.risk;
  const double exceeded = risk.budget_exceeded_probability;
  const bool is_kept = exceeded < budget_exceeded.care;
  const bool is_by_removal = 2 * risk.clear_left_short_probability < exceeded;
  return {.kind = is_kept         ? StatementKind::budget_kept
                  : is_by_removal ? StatementKind::too_much_removed
                                  : StatementKind::too_little_left,
          .figures = {{"budget_exceeded_probability", exceeded},
                      {"samples", risk.samples},
                      {"removed_p05_um", risk.removed_um.p05},
                      {"removed_p95_um", risk.removed_um.p95},
                      {"clear_left_p05_um", risk.clear_left_um.p05},
                      {"clear_left_p95_um", risk.clear_left_um.p95},
                      {"must_stay_um", must_stay_um(budget)},
                      {"removable_um", std::max(0.0, panel.removable_um)}}};
}

// The worse of two verdicts stays.
void judge(Prediction& prediction, const PanelPrediction& panel, const Budget& budget) {
  const PanelRisk& risk = panel.risk;
  const auto say = [&](Verdict verdict, Statement reason) {
    prediction.verdict = std::max(prediction.verdict, verdict);
    reason.panel = panel.name;
    prediction.reasons.push_back(std::move(reason));
  };
  const double samples = risk.samples;
  const Verdict by_strike = verdict_by(risk.strike_through_probability, strike_through);
  if (by_strike != Verdict::go)
    say(by_strike, {.kind = StatementKind::clear_struck_through,
                    .figures = {{"strike_through_probability", risk.strike_through_probability},
                                {"area_m2", panel.area_m2},
                                {"samples", samples}}});
  say(verdict_by(risk.budget_exceeded_probability, budget_exceeded), budget_reason(panel, budget));
  if (risk.target_missed_probability >= target_missed_care)
    say(Verdict::go_with_care,
        {.kind = StatementKind::target_missed,
         .figures = {{"target_missed_probability", risk.target_missed_probability}, {"samples", samples}}});
}

// A sequence that ends before its scratches are gone.
void add_marks_warning(const ScratchLimits& limits, const PanelPrediction& panel,
                       std::vector<Statement>& warnings) {
  const HistoryRow& end = panel.steps.back();
  if (panel.removed_um > 0 && end.marks_per_cm2 > limits.marks_per_cm2)
    warnings.push_back(
        {.kind = StatementKind::marks_left,
         .panel = panel.name,
         .figures = {{"marks_per_cm2", end.marks_per_cm2}, {"limit_per_cm2", limits.marks_per_cm2}}});
}

// Readings far from the others: a unit that slipped, filler, or a place that was sanded before.
void add_reading_warnings(const Panel& panel, std::vector<Statement>& warnings) {
  std::vector<double> sorted;
  for (const Reading& reading : panel.readings) sorted.push_back(total_um(reading));
  if (sorted.size() < 3) return;
  std::sort(sorted.begin(), sorted.end());
  const double usual = sorted[sorted.size() / 2];
  for (const double total : {sorted.front(), sorted.back()})
    if (total * odd_reading_factor < usual || total > odd_reading_factor * usual)
      warnings.push_back({.kind = StatementKind::odd_reading,
                          .panel = panel.name,
                          .figures = {{"reading_um", total}, {"usual_um", usual}}});
}

// Letters finer than eyes read: the unit may be wrong.
void add_letter_warnings(const Job& job, std::vector<Statement>& warnings) {
  const auto ask = [&](StatementKind kind, double letter_mm, double distance_m) {
    warnings.push_back({.kind = kind,
                        .figures = {{"letter_mm", letter_mm},
                                    {"distance_m", distance_m},
                                    {"limit_mm", limit_of_sight_mm(distance_m)}}});
  };
  if (job.texture.seen && is_at_limit_of_sight(*job.texture.seen))
    ask(StatementKind::seen_letter_fine, job.texture.seen->letter_mm, job.texture.seen->distance_m);
  if (job.target.letter_mm && *job.target.letter_mm < limit_of_sight_mm(*job.target.distance_m))
    ask(StatementKind::target_letter_fine, *job.target.letter_mm, *job.target.distance_m);
}

// What discs and minutes of all panels are, world by world.
Spread total_of(const std::vector<RiskDraws>& panels, std::vector<double> RiskDraws::*figure) {
  std::vector<double> total(panels.front().removed_um.size(), 0.0);
  for (const RiskDraws& draws : panels)
    for (std::size_t world = 0; world < total.size(); ++world) total[world] += (draws.*figure)[world];
  return spread_of(std::move(total));
}

// Best estimates: every sequence on every panel, by sequence.
std::vector<std::vector<History>> histories_of(const Job& job, const HeightField& surface,
                                               const std::vector<Sequence>& sequences,
                                               const Progress& progress) {
  const std::size_t panels = job.panel.size(), runs = sequences.size() * panels;
  std::vector<std::optional<History>> made(runs);
  parallel_for(static_cast<int>(runs), 0, progress, [&](int i, const Progress& part) {
    const auto run = static_cast<std::size_t>(i);
    const Panel& panel = job.panel[run % panels];
    const Film film = thinnest_film(panel, job.coating);
    const Coating coating{{{.name = "clear",
                            .thickness_um = film.clear_um,
                            .uncertainty_um = film.clear_sd_um,
                            .hardness_mpa = job.coating.hardness_mpa}}};
    const Sequence& sequence = sequences[run / panels];
    made[run] = working_at("sequence " + sequence.name + ", panel " + panel.name + ", ", [&] {
      return simulate(surface, coating, sequence.step,
                      {.area_m2 = panel.area_m2,
                       .crown_radius_m = panel.crown_radius_m,
                       .sheet = panel.sheet,
                       .rms_tolerance_share = plan_tolerance_share,
                       .refractive_index = job.coating.refractive_index,
                       .scratch_limits = job.scratch_limits,
                       .viewer = viewer_of(job)},
                      part);
    });
  });
  std::vector<std::vector<History>> histories(sequences.size());
  for (std::size_t run = 0; run < runs; ++run) histories[run / panels].push_back(std::move(*made[run]));
  return histories;
}

// A prediction from its histories and its risk.
Predicted predicted_of(const Job& job, const Sequence& sequence, std::vector<History> histories,
                       SampledRisk sampled, const Progress& progress) {
  Predicted predicted;
  Prediction& prediction = predicted.prediction;
  prediction.sequence = sequence.name;
  prediction.verdict = Verdict::go;
  prediction.seed = job.seed;
  prediction.note = job.note;
  prediction.band_edges_mm = histories.front().band_edges_mm;
  add_letter_warnings(job, prediction.warnings);
  for (std::size_t i = 0; i < job.panel.size(); ++i) {
    const Panel& panel = job.panel[i];
    prediction.panels.push_back(predict_panel(panel, job, thinnest_film(panel, job.coating), histories[i]));
    PanelPrediction& result = prediction.panels.back();
    add_reading_warnings(panel, prediction.warnings);
    add_labour(panel, job, sequence.step, result, prediction.warnings,
               nth_part(progress, i, job.panel.size()));
    add(prediction.labour, result.labour);
    for (const DiscSizeMinutes& size :
         minutes_by_disc_size(job.labour, panel.area_m2, sequence.step, histories[i].steps))
      add(prediction.disc_sizes, size);
    prediction.discs += result.discs;
    prediction.minutes += result.minutes;
    for (const Statement& warning : histories[i].warnings) {
      prediction.warnings.push_back(warning);
      prediction.warnings.back().panel = panel.name;
    }
    result.risk = risk_of(sampled.draws[i], sampled.node_solves);
    result.risk.texture_left = std::move(sampled.texture_left[i]);
    judge(prediction, result, job.budget);
    add_marks_warning(job.scratch_limits, result, prediction.warnings);
  }
  prediction.discs_spread = total_of(sampled.draws, &RiskDraws::discs);
  prediction.minutes_spread = total_of(sampled.draws, &RiskDraws::minutes);
  prediction.checklist = checklist_of(job.panel, sequence.step);
  prediction.cautions = general_cautions();
  for (const Step& step : sequence.step) add_new(prediction.step_cautions, cautions_of(step));
  predicted.histories = std::move(histories);
  predicted.draws = std::move(sampled.draws);
  return predicted;
}

AllPredicted predict_these(const Job& job, const HeightField& surface, const std::vector<Sequence>& sequences,
                           const Progress& progress) {
  auto histories = histories_of(job, surface, sequences, part_of(progress, 0, nominal_work));
  std::vector<SampledSequence> sampled;
  for (std::size_t i = 0; i < sequences.size(); ++i)
    sampled.push_back({sequences[i], mirrored_light(depth_laws(histories[i].front().scratches.back()))});
  SampledRisks sampling = sample_risk(job, surface, sampled, part_of(progress, nominal_work, 1 - edges_work));
  const Progress edges = part_of(progress, 1 - edges_work, 1);
  AllPredicted all;
  all.node_solves = sampling.node_solves;
  for (std::size_t i = 0; i < sequences.size(); ++i)
    all.predicted.push_back(predicted_of(job, sequences[i], std::move(histories[i]),
                                         std::move(sampling.risks[i]), nth_part(edges, i, sequences.size())));
  report(progress, 1);
  return all;
}

}  // namespace

const Sequence& sequence_named(const Job& job, const std::string& name) {
  require(!job.sequence.empty(), "Job", "sequence", "must hold at least one sequence", "none");
  if (name.empty()) return job.sequence.front();
  std::string names;
  for (const Sequence& sequence : job.sequence) {
    if (sequence.name == name) return sequence;
    names.append(names.empty() ? "" : ", ").append(sequence.name);
  }
  require(false, "Job", "sequence", "must be one of the job's: " + names, name);
  return job.sequence.front();
}

Predicted predict(const Job& job, const HeightField& surface, const std::string& sequence,
                  const Progress& progress) {
  job.validate();
  return std::move(predict_these(job, surface, {sequence_named(job, sequence)}, progress).predicted.front());
}

AllPredicted predict_all(const Job& job, const HeightField& surface, const Progress& progress) {
  job.validate();
  require(!job.sequence.empty(), "Job", "sequence", "must hold at least one sequence", "none");
  return predict_these(job, surface, job.sequence, progress);
}

}  // namespace libtexture
