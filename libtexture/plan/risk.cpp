#include "libtexture/plan/risk.hpp"

#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/spread.hpp"

namespace libtexture {

namespace {

double count_of(const std::vector<double>& is_so) {
  return std::accumulate(is_so.begin(), is_so.end(), 0.0);
}

// Of the worlds in which no rule is broken before any work; 0 where it is in all.
double share_by_work(const RiskDraws& draws) {
  const double kept = static_cast<double>(draws.is_short_before.size()) - count_of(draws.is_short_before);
  return kept > 0 ? count_of(draws.is_broken_by_work) / kept : 0;
}

}  // namespace

void PanelRisk::validate() const {
  require_within(strike_through_probability, 0, 1, "PanelRisk", "strike_through_probability");
  require_within(budget_exceeded_probability, 0, 1, "PanelRisk", "budget_exceeded_probability");
  require_within(clear_left_short_probability, 0, 1, "PanelRisk", "clear_left_short_probability");
  require_within(short_before_probability, 0, 1, "PanelRisk", "short_before_probability");
  require_within(broken_by_work_probability, 0, 1, "PanelRisk", "broken_by_work_probability");
  require_within(target_met_before_probability, 0, 1, "PanelRisk", "target_met_before_probability");
  require_within(target_missed_probability, 0, 1, "PanelRisk", "target_missed_probability");
  if (defect_left_probability)
    require_within(*defect_left_probability, 0, 1, "PanelRisk", "defect_left_probability");
  require_not_negative(samples, "PanelRisk", "samples");
  require_not_negative(node_solves, "PanelRisk", "node_solves");
}

PanelRisk risk_of(const RiskDraws& draws, int node_solves) {
  const std::size_t samples = draws.removed_um.size();
  const std::vector<double>* const figures[] = {&draws.levelling_um,
                                                &draws.overshoot_um,
                                                &draws.debt_um,
                                                &draws.clear_before_um,
                                                &draws.removable_um,
                                                &draws.clear_left_um,
                                                &draws.clear_left_least_um,
                                                &draws.rms_um,
                                                &draws.touched_share,
                                                &draws.minutes,
                                                &draws.discs,
                                                &draws.levelling_efficiency,
                                                &draws.is_struck_through,
                                                &draws.is_budget_exceeded,
                                                &draws.is_clear_left_short,
                                                &draws.is_short_before,
                                                &draws.is_broken_by_work,
                                                &draws.is_target_missed,
                                                &draws.is_target_met_before};
  for (const std::vector<double>* figure : figures)
    require(figure->size() == samples, "RiskDraws", "draws", "must be equally many of each figure",
            static_cast<double>(figure->size()));
  for (const std::vector<double>* figure :
       {&draws.defect_left_um, &draws.defect_removed_um, &draws.is_defect_left})
    require(figure->empty() || figure->size() == samples, "RiskDraws", "draws",
            "must be as many of a defect as of the other figures, or none",
            static_cast<double>(figure->size()));
  PanelRisk risk;
  risk.removed_um = spread_of(draws.removed_um);
  risk.levelling_um = spread_of(draws.levelling_um);
  risk.overshoot_um = spread_of(draws.overshoot_um);
  risk.debt_um = spread_of(draws.debt_um);
  risk.clear_before_um = spread_of(draws.clear_before_um);
  risk.removable_um = spread_of(draws.removable_um);
  risk.clear_left_um = spread_of(draws.clear_left_um);
  risk.clear_left_least_um = spread_of(draws.clear_left_least_um);
  risk.rms_um = spread_of(draws.rms_um);
  risk.touched_share = spread_of(draws.touched_share);
  risk.minutes = spread_of(draws.minutes);
  risk.discs = spread_of(draws.discs);
  risk.levelling_efficiency = spread_of(draws.levelling_efficiency);
  for (const std::vector<double>& step : draws.step_efficiency)
    risk.step_efficiency.push_back(spread_of(step));
  risk.strike_through_probability = mean_of(draws.is_struck_through);
  risk.budget_exceeded_probability = mean_of(draws.is_budget_exceeded);
  risk.clear_left_short_probability = mean_of(draws.is_clear_left_short);
  risk.short_before_probability = mean_of(draws.is_short_before);
  risk.broken_by_work_probability = share_by_work(draws);
  risk.target_met_before_probability = mean_of(draws.is_target_met_before);
  risk.target_missed_probability = mean_of(draws.is_target_missed);
  if (!draws.defect_left_um.empty()) {
    risk.defect_left_um = spread_of(draws.defect_left_um);
    risk.defect_left_probability = mean_of(draws.is_defect_left);
  }
  risk.samples = static_cast<int>(samples);
  risk.node_solves = node_solves;
  return risk;
}

}  // namespace libtexture
