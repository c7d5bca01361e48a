#include "libtexture/plan/compare.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>

#include "libtexture/base/chance.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/pareto.hpp"
#include "libtexture/plan/spread.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

using Draws = std::vector<double>;
using Figure = Draws RiskDraws::*;

constexpr double fewest_worlds = 0.05;  // a share; fewer say nothing of a 5 % quantile (estimate)

// One sequence on all panels, world by world.
struct Worked {
  Draws removed_um, levelling_um, overshoot_um, debt_um, minutes, is_target_missed;
};

Draws summed(const std::vector<RiskDraws>& panels, Figure figure, const std::vector<double>& weights) {
  Draws sum((panels.front().*figure).size(), 0.0);
  for (std::size_t p = 0; p < panels.size(); ++p)
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += weights[p] * (panels[p].*figure)[i];
  return sum;
}

// 1 in worlds where it happens on any panel, by any of the figures.
Draws any_of(const std::vector<RiskDraws>& panels, const std::vector<Figure>& figures) {
  Draws any((panels.front().*figures.front()).size(), 0.0);
  for (const RiskDraws& panel : panels)
    for (const Figure figure : figures)
      for (std::size_t i = 0; i < any.size(); ++i) any[i] = std::max(any[i], (panel.*figure)[i]);
  return any;
}

// 1 in worlds in which the work breaks a rule on a panel, and no panel is short before any work.
Draws newly_broken(const std::vector<RiskDraws>& panels) {
  Draws broken = any_of(panels, {&RiskDraws::is_broken_by_work});
  const Draws is_short = any_of(panels, {&RiskDraws::is_short_before});
  for (std::size_t i = 0; i < broken.size(); ++i) broken[i] *= 1 - is_short[i];
  return broken;
}

// Worlds in which both meet the target; all where too few do.
std::vector<std::size_t> fair_worlds(const Worked& a, const Worked& b) {
  std::vector<std::size_t> fair, all(a.removed_um.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  std::copy_if(all.begin(), all.end(), std::back_inserter(fair), [&](std::size_t world) {
    return a.is_target_missed[world] == 0 && b.is_target_missed[world] == 0;
  });
  return static_cast<double>(fair.size()) < fewest_worlds * static_cast<double>(all.size()) ? all : fair;
}

Difference difference_of(const Worked& a, const Worked& b) {
  const std::vector<std::size_t> worlds = fair_worlds(a, b);
  const auto more_of = [&](Draws Worked::*figure) {
    Draws more;
    for (const std::size_t world : worlds) more.push_back((a.*figure)[world] - (b.*figure)[world]);
    return more;
  };
  const Draws removed_um = more_of(&Worked::removed_um);
  Difference more{.removed_um = spread_of(removed_um),
                  .levelling_um = spread_of(more_of(&Worked::levelling_um)),
                  .overshoot_um = spread_of(more_of(&Worked::overshoot_um)),
                  .debt_um = spread_of(more_of(&Worked::debt_um)),
                  .minutes = spread_of(more_of(&Worked::minutes)),
                  .worlds = static_cast<int>(worlds.size())};
  more.is_drowned = more.removed_um.p05 < 0 && more.removed_um.p95 > 0;
  more.cheaper_worlds =
      static_cast<int>(std::count_if(removed_um.begin(), removed_um.end(), [](double um) { return um > 0; }));
  return more;
}

std::vector<double> area_shares(const Job& job) {
  std::vector<double> shares;
  double sum = 0;
  for (const Panel& panel : job.panel) sum += panel.area_m2;
  for (const Panel& panel : job.panel) shares.push_back(panel.area_m2 / sum);
  return shares;
}

Worked worked_of(const Job& job, const Predicted& predicted) {
  const std::vector<double> shares = area_shares(job), ones(job.panel.size(), 1.0);
  const std::vector<RiskDraws>& draws = predicted.draws;
  return {summed(draws, &RiskDraws::removed_um, shares),   summed(draws, &RiskDraws::levelling_um, shares),
          summed(draws, &RiskDraws::overshoot_um, shares), summed(draws, &RiskDraws::debt_um, shares),
          summed(draws, &RiskDraws::minutes, ones),        any_of(draws, {&RiskDraws::is_target_missed})};
}

// A panel's best estimate; a defect is no part of the surface: half of the worlds have less of it left.
std::vector<Reached> judge_panel(const Target& target, const History& history, const RiskDraws& draws) {
  const std::optional<Target> rest = without_defect(target);
  std::vector<Reached> parts;
  if (rest) parts = judge_target(*rest, history);
  if (target.defect) parts.push_back(judge_defect(target, quantile_of(draws.defect_left_um, 0.5)));
  return parts;
}

Alternative alternative_of(const Job& job, const Sequence& sequence, const Predicted& predicted,
                           const Worked& worked) {
  const std::vector<double> shares = area_shares(job), ones(job.panel.size(), 1.0);
  const std::vector<RiskDraws>& draws = predicted.draws;
  Alternative one;
  one.sequence = sequence.name;
  one.first_abrasive = label_of(sequence.step.front().abrasive);
  one.first_grain_um = sequence.step.front().abrasive.grit.median_um();
  one.verdict = predicted.prediction.verdict;
  one.reasons = predicted.prediction.reasons;
  one.labour = predicted.prediction.labour;
  one.disc_sizes = predicted.prediction.disc_sizes;
  one.removed_um = spread_of(worked.removed_um);
  one.levelling_um = spread_of(worked.levelling_um);
  one.overshoot_um = spread_of(worked.overshoot_um);
  one.debt_um = spread_of(worked.debt_um);
  const Figure struck = &RiskDraws::is_struck_through, over = &RiskDraws::is_budget_exceeded,
               by_work = &RiskDraws::is_broken_by_work, missed = &RiskDraws::is_target_missed;
  one.trouble_probability = mean_of(any_of(draws, {struck, by_work, missed}));
  one.strike_through_probability = mean_of(any_of(draws, {struck}));
  one.budget_exceeded_probability = mean_of(any_of(draws, {over}));
  const double kept = 1 - mean_of(any_of(draws, {&RiskDraws::is_short_before}));
  one.broken_by_work_probability = kept > 0 ? mean_of(newly_broken(draws)) / kept : 0;
  one.target_missed_probability = mean_of(any_of(draws, {missed}));
  one.is_reaching = as_counted(one.target_missed_probability) < target_missed_care;
  one.minutes = spread_of(worked.minutes);
  one.discs = spread_of(summed(draws, &RiskDraws::discs, ones));
  one.rms_um = spread_of(summed(draws, &RiskDraws::rms_um, shares));
  for (std::size_t p = 0; p < predicted.histories.size(); ++p) {
    const History& history = predicted.histories[p];
    one.marks_per_cm2 = std::max(one.marks_per_cm2, history.steps.back().marks_per_cm2);
    std::vector<Reached> target = judge_panel(job.target, history, predicted.draws[p]);
    if (one.target.empty() || !is_reached(target)) one.target = std::move(target);
  }
  return one;
}

// Places of the alternatives, the best first.
std::vector<std::size_t> ranking_of(const std::vector<Alternative>& alternatives) {
  const auto costs = [&](std::size_t place) {
    const Alternative& one = alternatives[place];
    return std::pair(one.is_reaching ? 0 : one.target_missed_probability, one.removed_um.p50);
  };
  std::vector<std::size_t> places(alternatives.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::stable_sort(places.begin(), places.end(),
                   [&](std::size_t a, std::size_t b) { return costs(a) < costs(b); });
  return places;
}

// Where the target is met before any work on every panel of every sequence there is nothing to rank.
bool is_nothing_to_do(const std::vector<Alternative>& alternatives) {
  return std::all_of(alternatives.begin(), alternatives.end(),
                     [](const Alternative& one) { return one.verdict == Verdict::nothing_to_do; });
}

Statement drowning(const Alternative& one, const std::string& best) {
  const auto width = [](const Spread& spread) { return spread.p95 - spread.p05; };
  return {.kind = StatementKind::difference_unsure,
          .sequence = one.sequence,
          .other_sequence = best,
          .figures = {{"levelling_width_um", width(one.more.levelling_um)},
                      {"overshoot_width_um", width(one.more.overshoot_um)},
                      {"debt_width_um", width(one.more.debt_um)}}};
}

// What was ranked and what came first.
Statement headline_of(const Comparison& comparison, const Alternative& best) {
  const std::vector<Alternative>& all = comparison.alternatives;
  const auto reaching =
      std::count_if(all.begin(), all.end(), [](const Alternative& one) { return one.is_reaching; });
  if (is_nothing_to_do(all)) return {.kind = StatementKind::all_meet_before};
  Statement headline{.sequence = best.sequence};
  headline.figures["sequences"] = static_cast<double>(all.size());
  if (reaching == 0) {
    headline.kind = StatementKind::none_reaches;
    headline.figures["target_missed_probability"] = best.target_missed_probability;
    headline.figures["samples"] = comparison.samples;
    return headline;
  }
  if (reaching == 1 && all.size() > 1) {
    headline.kind = StatementKind::alone_reaches;
    return headline;
  }
  const bool is_unsure = std::any_of(
      all.begin(), all.end(), [](const Alternative& one) { return one.is_reaching && one.more.is_drowned; });
  // The least median is not always the one that spends less in most worlds.
  const auto outdone = std::find_if(all.begin(), all.end(), [](const Alternative& one) {
    return one.is_reaching && one.more.is_drowned && 2 * one.more.cheaper_worlds < one.more.worlds;
  });
  if (outdone != all.end()) return drowning(*outdone, best.sequence);
  headline.kind = is_unsure ? StatementKind::probably_spends_least : StatementKind::spends_least;
  if (static_cast<std::size_t>(reaching) < all.size())
    headline.figures["reaching"] = static_cast<double>(reaching);
  return headline;
}

void add_spread(std::map<std::string, double>& figures, const std::string& name, const Spread& spread) {
  figures[name + "_um"] = spread.p50;
  figures[name + "_p05_um"] = spread.p05;
  figures[name + "_p95_um"] = spread.p95;
}

// How much more or less clear an alternative spends than the best, and on what.
Statement difference_finding(const Alternative& one, const std::string& best) {
  const Difference& more = one.more;
  const double median_um = more.removed_um.p50;
  Statement finding{.kind = median_um < 0 ? StatementKind::spends_less : StatementKind::spends_more,
                    .sequence = one.sequence,
                    .other_sequence = best};
  add_spread(finding.figures, "more", more.removed_um);
  add_spread(finding.figures, "levelling", more.levelling_um);
  add_spread(finding.figures, "overshoot", more.overshoot_um);
  add_spread(finding.figures, "debt", more.debt_um);
  finding.figures["less_um"] = -median_um;
  return finding;
}

// In how many worlds the best one spends less than an alternative.
Statement paired_finding(const Alternative& one, const std::string& best, int samples) {
  const double worlds = one.more.worlds;
  Statement finding{
      .kind = StatementKind::cheaper_in,
      .sequence = best,
      .other_sequence = one.sequence,
      .figures = {{"cheaper_probability", one.more.cheaper_worlds / worlds}, {"samples", worlds}}};
  if (worlds < samples) finding.figures["fair_worlds"] = worlds;
  return finding;
}

// What an alternative costs more than the best, and how sure that is.
std::vector<Statement> findings_of(const Alternative& one, const std::string& best, int samples) {
  const Difference& more = one.more;
  if (more.removed_um.p05 == 0 && more.removed_um.p95 == 0)
    return {{.kind = StatementKind::spends_the_same, .sequence = one.sequence, .other_sequence = best}};
  std::vector<Statement> findings;
  if (!one.is_reaching)
    findings.push_back(
        {.kind = StatementKind::misses_target,
         .sequence = one.sequence,
         .figures = {{"target_missed_probability", one.target_missed_probability}, {"samples", samples}}});
  findings.push_back(difference_finding(one, best));
  if (more.is_drowned) findings.push_back(drowning(one, best));
  findings.push_back(paired_finding(one, best, samples));
  return findings;
}

// Steps of the same caution share a statement; their abrasives name them, as step names repeat between
// sequences.
void add_step_cautions(std::vector<Statement>& all, const Sequence& sequence) {
  for (const Step& step : sequence.step)
    for (const Statement& caution : cautions_of(step)) {
      auto same = std::find_if(all.begin(), all.end(),
                               [&](const Statement& one) { return one.kind == caution.kind; });
      if (same == all.end()) same = all.insert(all.end(), {.kind = caution.kind});
      std::vector<std::string>& abrasives = same->abrasives;
      const std::string label = label_of(step.abrasive);
      if (std::find(abrasives.begin(), abrasives.end(), label) == abrasives.end()) abrasives.push_back(label);
    }
}

}  // namespace

Comparison comparison_of(const Job& job, const std::vector<Predicted>& predicted) {
  require(!predicted.empty() && predicted.size() == job.sequence.size(), "compare", "predicted",
          "must be one per sequence of the job", static_cast<double>(predicted.size()));
  for (const Predicted& one : predicted)
    require(one.draws.size() == job.panel.size() && one.histories.size() == job.panel.size(), "compare",
            "predicted", "must have draws and a history per panel", static_cast<double>(one.draws.size()));
  Comparison comparison;
  comparison.seed = job.seed;
  comparison.note = job.note;
  comparison.samples = static_cast<int>(predicted.front().draws.front().removed_um.size());
  comparison.removable_um = HUGE_VAL;
  for (const PanelPrediction& panel : predicted.front().prediction.panels)
    comparison.removable_um = std::min(comparison.removable_um, panel.removable_um);
  std::vector<Worked> worked;
  for (std::size_t i = 0; i < predicted.size(); ++i) {
    worked.push_back(worked_of(job, predicted[i]));
    comparison.alternatives.push_back(alternative_of(job, job.sequence[i], predicted[i], worked.back()));
    add_new(comparison.warnings, predicted[i].prediction.warnings);
    add_new(comparison.cautions, predicted[i].prediction.cautions);
    add_step_cautions(comparison.step_cautions, job.sequence[i]);
  }
  std::vector<Alternative>& all = comparison.alternatives;
  comparison.short_before_probability =
      mean_of(any_of(predicted.front().draws, {&RiskDraws::is_short_before}));
  const std::vector<std::size_t> ranking = ranking_of(all);
  for (std::size_t place = 0; place < ranking.size(); ++place)
    all[ranking[place]].rank = static_cast<int>(place) + 1;
  const std::size_t best = ranking.front();
  comparison.best = all[best].sequence;
  std::vector<std::vector<double>> costs;
  for (std::size_t i = 0; i < all.size(); ++i) {
    Alternative& one = all[i];
    one.more = difference_of(worked[i], worked[best]);
    costs.push_back({one.removed_um.p50, one.trouble_probability, one.minutes.p50, one.discs.p50,
                     one.rms_um.p50, one.marks_per_cm2});
  }
  const std::vector<bool> front = pareto_front(costs);
  for (std::size_t i = 0; i < all.size(); ++i) all[i].is_on_front = front[i];
  for (const std::size_t i : ranking)
    if (i != best)
      for (Statement& finding : findings_of(all[i], comparison.best, comparison.samples))
        comparison.findings.push_back(std::move(finding));
  comparison.headline = headline_of(comparison, all[best]);
  return comparison;
}

Comparison compare(const Job& job, const HeightField& surface, const Progress& progress) {
  const AllPredicted all = predict_all(job, surface, progress);
  Comparison comparison = comparison_of(job, all.predicted);
  comparison.node_solves = all.node_solves;
  return comparison;
}

}  // namespace libtexture
