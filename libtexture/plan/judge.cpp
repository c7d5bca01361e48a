#include "libtexture/plan/judge.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "libtexture/base/chance.hpp"

namespace libtexture {

namespace {

constexpr double worth_saying = 0.01;  // chance that too little clear is there before any work; estimate

Verdict verdict_by(double probability, const ChanceLimits& limits) {
  const double counted = as_counted(probability);
  if (counted >= limits.off) return Verdict::do_not_sand;
  return counted >= limits.care ? Verdict::go_with_care : Verdict::go;
}

const BudgetRule& binding(const PanelPrediction& panel) {
  return *std::find_if(panel.budget.begin(), panel.budget.end(),
                       [](const BudgetRule& rule) { return rule.is_binding; });
}

// One panel on its way to its verdict.
class Judge {
 public:
  Judge(const PanelPrediction& panel, const Budget& budget, const Target& target)
      : panel_(panel), risk_(panel.risk), budget_(budget), target_(target) {}

  Judgement take() { return std::move(judgement_); }

  bool say_nothing_to_do() {
    if (as_counted(risk_.target_met_before_probability) < met_before_enough) return false;
    say(Verdict::nothing_to_do,
        {.kind = StatementKind::target_met_before,
         .figures = {{"target_met_before_probability", risk_.target_met_before_probability},
                     {"samples", risk_.samples}}});
    return true;
  }

  void say_target() {
    const Verdict verdict = verdict_by(risk_.target_missed_probability, target_limits);
    if (verdict == Verdict::go) return;
    say(verdict, {.kind = verdict == Verdict::do_not_sand ? StatementKind::target_mostly_missed
                                                          : StatementKind::target_missed,
                  .figures = {{"target_missed_probability", risk_.target_missed_probability},
                              {"samples", risk_.samples}}});
  }

  void say_strike_through() {
    const Verdict verdict = verdict_by(risk_.strike_through_probability, strike_through_limits);
    if (verdict == Verdict::go) return;
    say(verdict, {.kind = StatementKind::clear_struck_through,
                  .figures = {{"strike_through_probability", risk_.strike_through_probability},
                              {"area_m2", worked_area_m2()},
                              {"samples", risk_.samples}}});
  }

  void say_short_before() {
    if (!is_short_before_said()) return;
    const bool is_off = as_counted(risk_.short_before_probability) >= short_before_off;
    say(is_off ? Verdict::do_not_sand : Verdict::go,
        {.kind = StatementKind::clear_short_before,
         .figures = {{"short_before_probability", risk_.short_before_probability},
                     {"must_stay_um", must_stay_um(budget_)},
                     {"samples", risk_.samples}}});
  }

  void say_budget() {
    if (risk_.short_before_probability == 1) return;  // nothing is left that work could break
    say(budget_verdict(), budget_reason());
  }

  // Where the work is off although it would take out the defect, the defect stays.
  void say_leave_it() {
    if (!panel_.defect || judgement_.verdict != Verdict::do_not_sand) return;
    say(Verdict::do_not_sand,
        {.kind = StatementKind::defect_leave_it,
         .figures = {{"clear_um", panel_.defect->ways.front().clear_um.p50},
                     {"short_probability", panel_.defect->ways.front().short_probability},
                     {"samples", risk_.samples}}});
  }

  void say_what_would_help() {
    const bool is_broken = as_counted(risk_.broken_by_work_probability) >= budget_limits.care;
    if (!is_broken && as_counted(risk_.short_before_probability) < budget_limits.care) return;
    Statement advice{.kind = StatementKind::removal_unsure};
    const VarianceShares& shares = risk_.variance_shares;
    const std::pair<double, StatementKind> parts[] = {{shares.clear_share, StatementKind::clear_share_unsure},
                                                      {shares.map, StatementKind::film_between_unsure},
                                                      {shares.gauge, StatementKind::gauge_unsure},
                                                      {shares.removal, StatementKind::removal_unsure}};
    // A limit on what goes, in micrometres, asks nothing of the clear that is there.
    if (!is_broken || binding(panel_).limit != BudgetLimit::clear_removed) {
      const auto& largest = *std::max_element(std::begin(parts), std::end(parts));
      if (largest.first == 0) return;
      advice = {.kind = largest.second, .figures = {{"variance_share", largest.first}}};
    }
    say(Verdict::go, advice);
  }

  void say_waves_left(const std::vector<double>& band_edges_mm) {
    if (target_.preset != TargetPreset::full || risk_.rms_um.p50 < waves_left_um || panel_.steps.empty())
      return;
    Statement left{.kind = StatementKind::waves_left, .figures = {{"rms_um", risk_.rms_um.p50}}};
    const std::vector<double>& bands = panel_.steps.back().band_rms_um;
    const auto strongest =
        static_cast<std::size_t>(std::max_element(bands.begin(), bands.end()) - bands.begin());
    if (strongest + 1 < band_edges_mm.size())
      left.figures["wavelength_mm"] = std::sqrt(band_edges_mm[strongest] * band_edges_mm[strongest + 1]);
    say(Verdict::go, left);
  }

  void say_odd(const std::vector<Statement>& odd, Verdict verdict) {
    for (const Statement& reading : odd) say(verdict, reading);
  }

 private:
  // Of a patch to the square centimetre.
  double worked_area_m2() const {
    return panel_.defect ? std::round(panel_.defect->worked_area_m2 * 1e4) / 1e4 : panel_.area_m2;
  }

  bool is_short_before_said() const { return as_counted(risk_.short_before_probability) >= worth_saying; }

  void say(Verdict verdict, Statement reason) {
    judgement_.verdict = std::max(judgement_.verdict, verdict);
    reason.panel = panel_.name;
    judgement_.reasons.push_back(std::move(reason));
  }

  // The work is judged by what it adds; where it adds to a shortage, by what all comes to as well.
  Verdict budget_verdict() const {
    const Verdict added = verdict_by(risk_.broken_by_work_probability, budget_limits);
    const bool is_mostly_broken = as_counted(risk_.budget_exceeded_probability) >= budget_limits.off;
    return added == Verdict::go_with_care && is_mostly_broken ? Verdict::do_not_sand : added;
  }

  // By the rule that binds, so that table and verdict name the same.
  StatementKind budget_kind() const {
    if (as_counted(risk_.broken_by_work_probability) < budget_limits.care) return StatementKind::budget_kept;
    const BudgetLimit limit = binding(panel_).limit;
    const bool is_by_removal = limit == BudgetLimit::clear_removed || limit == BudgetLimit::clear_share;
    return is_by_removal ? StatementKind::too_much_removed : StatementKind::too_little_left;
  }

  Statement budget_reason() const {
    const double kept = std::round(risk_.samples * (1 - risk_.short_before_probability));
    Statement reason{.kind = budget_kind(),
                     .figures = {{"broken_by_work_probability", risk_.broken_by_work_probability},
                                 {"samples", kept},
                                 {"removed_p05_um", risk_.removed_um.p05},
                                 {"removed_p95_um", risk_.removed_um.p95},
                                 {"removable_p05_um", risk_.removable_um.p05},
                                 {"removable_p95_um", risk_.removable_um.p95},
                                 {"clear_left_p05_um", risk_.clear_left_um.p05},
                                 {"clear_left_p95_um", risk_.clear_left_um.p95},
                                 {"must_stay_um", must_stay_um(budget_)}}};
    if (is_short_before_said())
      reason.figures.insert({{"kept_worlds", kept},
                             {"worlds", risk_.samples},
                             {"budget_exceeded_probability", risk_.budget_exceeded_probability}});
    return reason;
  }

  const PanelPrediction& panel_;
  const PanelRisk& risk_;
  const Budget& budget_;
  const Target& target_;
  Judgement judgement_;
};

}  // namespace

void count_broken(std::vector<BudgetRule>& rules, double reserve_um, const RiskDraws& draws) {
  const std::size_t worlds = draws.removed_um.size();
  const auto short_before = std::count(draws.is_short_before.begin(), draws.is_short_before.end(), 1.0);
  const bool is_mostly_short = 2 * static_cast<std::size_t>(short_before) > worlds;
  std::size_t most = 0;
  std::size_t binding = rules.size();
  for (std::size_t i = 0; i < rules.size(); ++i) {
    std::size_t broken = 0, counted = 0;
    for (std::size_t world = 0; world < worlds; ++world) {
      const ClearSpent spent{draws.removed_um[world], draws.clear_before_um[world],
                             draws.clear_left_um[world]};
      if (!is_broken(rules[i], reserve_um, spent)) continue;
      ++broken;
      if (is_mostly_short || draws.is_short_before[world] == 0) ++counted;
    }
    rules[i].broken_probability = static_cast<double>(broken) / static_cast<double>(worlds);
    if (!rules[i].is_on || counted <= most) continue;
    most = counted;
    binding = i;
  }
  if (binding == rules.size()) return;
  for (std::size_t i = 0; i < rules.size(); ++i) rules[i].is_binding = i == binding;
}

Judgement judge(const PanelPrediction& panel, const Budget& budget, const Target& target,
                const std::vector<double>& band_edges_mm, const std::vector<Statement>& odd) {
  Judge judge(panel, budget, target);
  if (judge.say_nothing_to_do()) {
    judge.say_odd(odd, Verdict::nothing_to_do);
    return judge.take();
  }
  judge.say_target();
  judge.say_strike_through();
  judge.say_short_before();
  judge.say_budget();
  judge.say_leave_it();
  judge.say_what_would_help();
  judge.say_waves_left(band_edges_mm);
  judge.say_odd(odd, Verdict::go_with_care);
  return judge.take();
}

Judgement worst_of(const std::vector<Judgement>& panels) {
  Judgement worst;
  for (const Judgement& one : panels) {
    worst.verdict = std::max(worst.verdict, one.verdict);
    worst.reasons.insert(worst.reasons.end(), one.reasons.begin(), one.reasons.end());
  }
  std::stable_partition(worst.reasons.begin(), worst.reasons.end(), [](const Statement& reason) {
    return reason.kind == StatementKind::target_mostly_missed;
  });
  return worst;
}

}  // namespace libtexture
