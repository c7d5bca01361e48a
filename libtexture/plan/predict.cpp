#include "libtexture/plan/predict.hpp"

#include <algorithm>
#include <future>
#include <optional>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/checklist.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/judge.hpp"
#include "libtexture/plan/knowledge.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/odd_readings.hpp"
#include "libtexture/plan/plausible.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/plan/seen_target.hpp"
#include "libtexture/plan/target_stop.hpp"
#include "libtexture/plan/worked_panel.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/resample.hpp"

namespace libtexture {
namespace {

// Shares of the time, for progress, as measured on a patch of 512 x 512.
constexpr double edges_work = 0.05;
constexpr double target_work = 0.05;  // where a stop rule has to be found first

// Filler counts as thick as can be.
const Reading& least_reading(const Panel& panel) {
  const auto film_um = [](const Reading& reading) { return teaches(reading) ? total_um(reading) : HUGE_VAL; };
  return *std::min_element(panel.readings.begin(), panel.readings.end(),
                           [&](const Reading& a, const Reading& b) { return film_um(a) < film_um(b); });
}

PanelPrediction predict_panel(const Panel& panel, const Job& job, const Film& film, const History& history) {
  PanelPrediction result;
  result.name = panel.name;
  result.area_m2 = panel.area_m2;
  result.total_film_least_um =
      patch_place_mm(job.target.defect) ? film.total_um : total_um(least_reading(panel));
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
  result.budget = budget_rules(budget_of(job), film.clear_um);
  result.removable_um = removable_um(budget_of(job), film.clear_um);
  for (const HistoryRow& row : history.steps) {
    result.discs += row.discs;
    result.minutes += row.minutes;
  }
  return result;
}

const HistoryRow& most_removing(const std::vector<HistoryRow>& rows) {
  return *std::max_element(rows.begin(), rows.end(), [](const HistoryRow& a, const HistoryRow& b) {
    return a.removed_um < b.removed_um;
  });
}

// What each step wears off along an edge; in `failed`, where one cannot be followed, which and why.
std::vector<EdgeProfile> worn_edges(Statement& failed, const Job& job, const std::vector<Step>& steps,
                                    const PanelPrediction& panel, const Progress& progress) {
  std::vector<EdgeProfile> worn;
  for (std::size_t i = 0; i < steps.size(); ++i) try {
      failed.step = panel.steps[i].name;
      worn.push_back(worn_edge(job.edge, steps, panel.steps, i, nth_part(progress, i, steps.size())));
    } catch (const NotConverged& error) {
      failed.figures = {{"residual", error.residual}, {"tolerance", error.tolerance}};
      break;
    } catch (const InvalidInput&) {
      break;  // a section that cannot be resolved with these tools, say; the job itself is validated
    }
  return worn;
}

// The margin along a panel's edges; none, and why in `failed`, where it cannot be found: everything else of a
// prediction stands without it.
std::optional<EdgeMargin> edge_margin_or(Statement& failed, const Job& job, const std::vector<Step>& steps,
                                         const PanelPrediction& panel, const Progress& progress) {
  if (panel.removed_um > most_edge_removal_um) {
    failed.step = most_removing(panel.steps).name;
    failed.figures = {{"removed_um", panel.removed_um}, {"most_um", most_edge_removal_um}};
    return std::nullopt;
  }
  const std::vector<EdgeProfile> worn = worn_edges(failed, job, steps, panel, progress);
  if (worn.size() < steps.size()) return std::nullopt;
  return edge_margin(job.edge, budget_of(job), panel.clear_um, panel.clear_sd_um, steps, panel.steps, worn);
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
  if (!std::all_of(steps.begin(), steps.end(),
                   [](const Step& step) { return has_edge_profile(step.backing); })) {
    warnings.push_back({.kind = StatementKind::edge_margin_left_out, .panel = panel.name});
    return;
  }
  Statement failed{.kind = StatementKind::edge_margin_failed, .panel = panel.name};
  result.edge = edge_margin_or(failed, job, steps, result, progress);
  if (!result.edge) warnings.push_back(failed);
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
  parallel_for(static_cast<int>(runs), progress, [&](int i, const Progress& part) {
    const auto run = static_cast<std::size_t>(i);
    const Sequence& sequence = sequences[run / panels];
    const Panel panel =
        worked_panel(job.panel[run % panels], job.target.defect, sequence.step.front().motion);
    const Film film = film_worked(panel, job.coating, job.target.defect);
    const Coating coating{{{.name = "clear",
                            .thickness_um = film.clear_um,
                            .uncertainty_um = film.clear_sd_um,
                            .hardness_mpa = job.coating.hardness_mpa}}};
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

// What the worlds make of a panel, and the verdict on it.
Judgement judge_panel(const Job& job, const Panel& panel, const FilmVariance& film, const RiskDraws& draws,
                      const std::vector<double>& band_edges_mm, PanelPrediction& result) {
  std::vector<double> taken_um;
  for (std::size_t world = 0; world < draws.clear_left_um.size(); ++world)
    taken_um.push_back(draws.clear_before_um[world] - draws.clear_left_um[world]);
  result.risk.variance_shares = variance_shares(film, taken_um);
  const Budget budget = budget_of(job);
  count_broken(result.budget, budget.reserve_um, draws);
  return judge(result, budget, job.target, band_edges_mm, odd_readings(panel, job.coating.gauge));
}

// A prediction from its histories and its risk; film: by panel.
Predicted predicted_of(const Job& job, const Sequence& sequence, const std::vector<FilmVariance>& film,
                       std::vector<History> histories, SampledRisk sampled, const Progress& progress) {
  Predicted predicted;
  Prediction& prediction = predicted.prediction;
  prediction.sequence = sequence.name;
  prediction.seed = job.seed;
  prediction.note = job.note;
  prediction.knowledge = knowledge_of(job, sequence);
  prediction.band_edges_mm = histories.front().band_edges_mm;
  add_letter_warnings(job, prediction.warnings);
  add_new(prediction.warnings, stop_warnings(job.target, sequence));
  add_new(prediction.warnings, unusual_lengths(job));
  std::vector<Judgement> judgements;
  const Step& first = sequence.step.front();
  for (std::size_t i = 0; i < job.panel.size(); ++i) {
    const Panel& panel = job.panel[i];
    const Panel worked = worked_panel(panel, job.target.defect, first.motion);
    const Film thinnest = film_worked(panel, job.coating, job.target.defect);
    prediction.panels.push_back(predict_panel(panel, job, thinnest, histories[i]));
    PanelPrediction& result = prediction.panels.back();
    add_labour(worked, job, sequence.step, result, prediction.warnings,
               nth_part(progress, i, job.panel.size()));
    add(prediction.labour, result.labour);
    for (const DiscSizeMinutes& size :
         minutes_by_disc_size(job.labour, worked.area_m2, sequence.step, histories[i].steps))
      add(prediction.disc_sizes, size);
    prediction.discs += result.discs;
    prediction.minutes += result.minutes;
    for (const Statement& warning : histories[i].warnings) {
      prediction.warnings.push_back(warning);
      prediction.warnings.back().panel = panel.name;
    }
    result.risk = risk_of(sampled.draws[i], sampled.node_solves);
    result.risk.texture_left = std::move(sampled.texture_left[i]);
    if (job.target.defect) result.defect = defect_answer(job, i, sampled, first.motion);
    judgements.push_back(
        judge_panel(job, panel, film[i], sampled.draws[i], prediction.band_edges_mm, result));
    add_marks_warning(job.scratch_limits, result, prediction.warnings);
  }
  Judgement judgement = worst_of(judgements);
  prediction.verdict = judgement.verdict;
  prediction.reasons = std::move(judgement.reasons);
  prediction.discs_spread = total_of(sampled.draws, &RiskDraws::discs);
  prediction.minutes_spread = total_of(sampled.draws, &RiskDraws::minutes);
  prediction.checklist = checklist_of(worked_job(job, first.motion).panel, sequence.step,
                                      spot_plan_of(sequence.step.front(), job.coating, job.uncertainty));
  prediction.cautions = general_cautions();
  for (const Step& step : sequence.step) add_new(prediction.step_cautions, cautions_of(step));
  predicted.histories = std::move(histories);
  predicted.draws = std::move(sampled.draws);
  return predicted;
}

// The surface of best estimates: the nodes' pixels where they hold all waves but what plans may err by.
HeightField rows_surface(const HeightField& surface) {
  const HeightField nodes = node_patch(surface);
  const double left_out_um2 = std::pow(surface.rms_um(), 2) - std::pow(nodes.rms_um(), 2);
  return left_out_um2 <= std::pow(rms_tolerance_um(surface), 2) ? nodes : surface;
}

// Maps of a history on the grid of the surface that it is a history of.
void bring_to(History& history, const HeightField& surface) {
  const int rows = surface.grid().rows, cols = surface.grid().cols;
  for (HeightField& one : history.surfaces) one = resampled(one, rows, cols);
  for (Scratches& scratches : history.scratches)
    for (ScratchPopulation& population : scratches.populations) {
      const HeightField removal(population.removal_um, history.before.pixel_mm());
      population.removal_um = resampled(removal, rows, cols).height_um().max(0.0);
    }
  history.before = surface;
}

struct Work {
  std::vector<std::vector<History>> histories;  // by sequence
  SampledRisks sampling;
};

// Best estimates and worlds side by side: each of them has stretches for one thread.
Work work_of(const Job& job, const HeightField& surface, const std::vector<Sequence>& sequences,
             const Progress& progress) {
  Work work;
  std::packaged_task<void(const Progress&)> make_histories([&](const Progress& part) {
    work.histories = histories_of(job, rows_surface(surface), sequences, part);
  });
  const std::shared_future<void> histories_made = make_histories.get_future();
  std::vector<SampledSequence> sampled;
  for (std::size_t i = 0; i < sequences.size(); ++i)
    sampled.push_back({sequences[i], [&, i] {
                         histories_made.get();
                         return mirrored_light(depth_laws(work.histories[i].front().scratches.back()));
                       }});
  // The worlds wait for the best estimates alone, which begin first: a single thread ends them first too.
  parallel_for(2, progress, [&](int i, const Progress& part) {
    if (i == 0) {
      make_histories(part);
      histories_made.get();  // throws what stopped it
    } else
      work.sampling = sample_risk(job, surface, sampled, part);
  });
  return work;
}

AllPredicted predict_these(const Job& job, const HeightField& surface, const std::vector<Sequence>& stated,
                           const Progress& progress) {
  const double found_by = needs_curve(job.target) ? target_work : 0;
  std::vector<Sequence> sequences;
  for (const Sequence& sequence : stated)
    sequences.push_back(worked_sequence(
        job, sequence, surface, nth_part(part_of(progress, 0, found_by), sequences.size(), stated.size())));
  for (Sequence& sequence : sequences) sequence.step = with_titles(std::move(sequence.step));
  Work work = work_of(job, surface, sequences, part_of(progress, found_by, 1 - edges_work));
  std::vector<FilmVariance> film;
  for (const Panel& panel : job.panel) film.push_back(film_variance(panel, job.coating, job.seed));
  const Progress edges = part_of(progress, 1 - edges_work, 1);
  AllPredicted all;
  all.node_solves = work.sampling.node_solves;
  all.predicted.resize(sequences.size());
  parallel_for(static_cast<int>(sequences.size()), edges, [&](int sequence, const Progress& part) {
    const auto i = static_cast<std::size_t>(sequence);
    all.predicted[i] = predicted_of(job, sequences[i], film, std::move(work.histories[i]),
                                    std::move(work.sampling.risks[i]), part);
    for (History& history : all.predicted[i].histories) bring_to(history, surface);
    report(part, 1);
  });
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
