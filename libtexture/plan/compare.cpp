#include "libtexture/plan/compare.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/pareto.hpp"

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

double mean_of(const Draws& draws) {
  return std::accumulate(draws.begin(), draws.end(), 0.0) / static_cast<double>(draws.size());
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

Alternative alternative_of(const Job& job, const Sequence& sequence, const Predicted& predicted,
                           const Worked& worked) {
  const std::vector<double> shares = area_shares(job), ones(job.panel.size(), 1.0);
  const std::vector<RiskDraws>& draws = predicted.draws;
  Alternative one;
  one.sequence = sequence.name;
  one.first_abrasive = sequence.step.front().abrasive.name;
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
               missed = &RiskDraws::is_target_missed;
  one.trouble_probability = mean_of(any_of(draws, {struck, over, missed}));
  one.strike_through_probability = mean_of(any_of(draws, {struck}));
  one.budget_exceeded_probability = mean_of(any_of(draws, {over}));
  one.target_missed_probability = mean_of(any_of(draws, {missed}));
  one.minutes = spread_of(worked.minutes);
  one.discs = spread_of(summed(draws, &RiskDraws::discs, ones));
  one.rms_um = spread_of(summed(draws, &RiskDraws::rms_um, shares));
  for (const History& history : predicted.histories) {
    one.marks_per_cm2 = std::max(one.marks_per_cm2, history.steps.back().marks_per_cm2);
    std::vector<Reached> target = judge_target(job.target, history);
    if (one.target.empty() || !is_reached(target)) one.target = std::move(target);
  }
  return one;
}

std::size_t best_of(const std::vector<Alternative>& alternatives) {
  const auto rank = [](const Alternative& one) {
    const double missed = one.target_missed_probability;
    return std::pair(missed >= target_missed_care ? missed : 0, one.removed_um.p50);
  };
  const auto is_better = [&](const Alternative& a, const Alternative& b) { return rank(a) < rank(b); };
  return static_cast<std::size_t>(std::min_element(alternatives.begin(), alternatives.end(), is_better) -
                                  alternatives.begin());
}

// With two decimals, and no "-0.00".
std::string rounded(double um) {
  const double hundredths = std::round(100 * um);
  return to_text(hundredths == 0 ? 0 : hundredths / 100, 2);
}

std::string more_or_less(double um) {
  return to_text(std::abs(um), 2) + " um " + (um < 0 ? "less" : "more");
}

std::string interval(const Spread& spread) {
  return rounded(spread.p05) + " to " + rounded(spread.p95);
}

std::string part(const Spread& spread, const char* name) {
  return rounded(spread.p50) + " um " + name + " (" + interval(spread) + ")";
}

// The part of a difference that is known worst.
std::string widest_part(const Difference& more) {
  const auto width = [](const Spread& spread) { return spread.p95 - spread.p05; };
  const std::pair<double, const char*> parts[] = {{width(more.levelling_um), "the levelling"},
                                                  {width(more.overshoot_um), "the overshoot"},
                                                  {width(more.debt_um), "the scratch debt"}};
  return std::max_element(std::begin(parts), std::end(parts))->second;
}

std::string of_100(int cases, int of) {
  if (cases == of) return "all cases";
  const double percent = 100.0 * cases / of;
  return percent > 99 ? "over 99 of 100 cases" : to_text(percent, 0) + " of 100 cases";
}

std::string finding(const Alternative& one, const std::string& best, int samples) {
  const Difference& more = one.more;
  if (more.removed_um.p05 == 0 && more.removed_um.p95 == 0)
    return one.sequence + " spends the same clear as " + best + ".";
  std::string text = one.sequence + " spends " + more_or_less(more.removed_um.p50) + " of clear than " +
                     best + " (5 to 95 %: " + interval(more.removed_um) +
                     "): " + part(more.levelling_um, "levelling") + ", " +
                     part(more.overshoot_um, "overshoot") + ", " + part(more.debt_um, "scratch debt") + ".";
  if (more.is_drowned)
    text += " The difference drowns in what is not known, most of it in " + widest_part(more) + ".";
  text += " " + best + " spends less in " + of_100(more.cheaper_worlds, more.worlds) +
          (more.worlds < samples ? " in which both meet the target." : ".");
  if (one.target_missed_probability >= target_missed_care)
    text += " " + one.sequence + " misses the target in " + to_text(100 * one.target_missed_probability, 0) +
            " of 100 cases.";
  return text;
}

void add_new(std::vector<std::string>& all, const std::vector<std::string>& some) {
  for (const std::string& one : some)
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

// Steps of the same cautions share a line; their abrasives name them, as step names repeat between sequences.
void add_cautions(Comparison& comparison, const Prediction& prediction, const Sequence& sequence) {
  add_new(comparison.warnings, prediction.warnings);
  add_new(comparison.cautions, prediction.cautions);
  std::vector<StepCautions>& all = comparison.step_cautions;
  for (std::size_t i = 0; i < prediction.step_cautions.size(); ++i) {
    const std::string& abrasive = sequence.step[i].abrasive.name;
    const auto same = std::find_if(all.begin(), all.end(), [&](const StepCautions& one) {
      return one.cautions == prediction.step_cautions[i].cautions;
    });
    if (same == all.end())
      all.push_back({abrasive, prediction.step_cautions[i].cautions});
    else if ((", " + same->step + ",").find(", " + abrasive + ",") == std::string::npos)
      same->step += ", " + abrasive;
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
  comparison.samples = static_cast<int>(predicted.front().draws.front().removed_um.size());
  comparison.removable_um = HUGE_VAL;
  for (const PanelPrediction& panel : predicted.front().prediction.panels)
    comparison.removable_um = std::min(comparison.removable_um, panel.removable_um);
  std::vector<Worked> worked;
  for (std::size_t i = 0; i < predicted.size(); ++i) {
    worked.push_back(worked_of(job, predicted[i]));
    comparison.alternatives.push_back(alternative_of(job, job.sequence[i], predicted[i], worked.back()));
    add_cautions(comparison, predicted[i].prediction, job.sequence[i]);
  }
  std::vector<Alternative>& all = comparison.alternatives;
  const std::size_t best = best_of(all);
  comparison.best = all[best].sequence;
  std::vector<std::vector<double>> costs;
  for (std::size_t i = 0; i < all.size(); ++i) {
    Alternative& one = all[i];
    one.more = difference_of(worked[i], worked[best]);
    if (i != best) comparison.findings.push_back(finding(one, comparison.best, comparison.samples));
    costs.push_back({one.removed_um.p50, one.trouble_probability, one.minutes.p50, one.discs.p50,
                     one.rms_um.p50, one.marks_per_cm2});
  }
  const std::vector<bool> front = pareto_front(costs);
  for (std::size_t i = 0; i < all.size(); ++i) all[i].is_on_front = front[i];
  return comparison;
}

Comparison compare(const Job& job, const HeightField& surface, const Progress& progress) {
  const AllPredicted all = predict_all(job, surface, progress);
  Comparison comparison = comparison_of(job, all.predicted);
  comparison.node_solves = all.node_solves;
  return comparison;
}

}  // namespace libtexture
