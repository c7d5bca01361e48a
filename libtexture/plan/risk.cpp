#include "libtexture/plan/risk.hpp"

#include <numeric>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

double share_of(const std::vector<double>& is_so) {
  return std::accumulate(is_so.begin(), is_so.end(), 0.0) / static_cast<double>(is_so.size());
}

}  // namespace

void PanelRisk::validate() const {
  require_within(strike_through_probability, 0, 1, "PanelRisk", "strike_through_probability");
  require_within(budget_exceeded_probability, 0, 1, "PanelRisk", "budget_exceeded_probability");
  require_within(clear_left_short_probability, 0, 1, "PanelRisk", "clear_left_short_probability");
  require_within(target_missed_probability, 0, 1, "PanelRisk", "target_missed_probability");
  require_not_negative(samples, "PanelRisk", "samples");
  require_not_negative(node_solves, "PanelRisk", "node_solves");
}

PanelRisk risk_of(const RiskDraws& draws, int node_solves) {
  const std::size_t samples = draws.removed_um.size();
  const std::vector<double>* const figures[] = {&draws.levelling_um,
                                                &draws.overshoot_um,
                                                &draws.debt_um,
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
                                                &draws.is_target_missed};
  for (const std::vector<double>* figure : figures)
    require(figure->size() == samples, "RiskDraws", "draws", "must be equally many of each figure",
            static_cast<double>(figure->size()));
  PanelRisk risk;
  risk.removed_um = spread_of(draws.removed_um);
  risk.levelling_um = spread_of(draws.levelling_um);
  risk.overshoot_um = spread_of(draws.overshoot_um);
  risk.debt_um = spread_of(draws.debt_um);
  risk.clear_left_um = spread_of(draws.clear_left_um);
  risk.clear_left_least_um = spread_of(draws.clear_left_least_um);
  risk.rms_um = spread_of(draws.rms_um);
  risk.touched_share = spread_of(draws.touched_share);
  risk.minutes = spread_of(draws.minutes);
  risk.discs = spread_of(draws.discs);
  risk.levelling_efficiency = spread_of(draws.levelling_efficiency);
  for (const std::vector<double>& step : draws.step_efficiency)
    risk.step_efficiency.push_back(spread_of(step));
  risk.strike_through_probability = share_of(draws.is_struck_through);
  risk.budget_exceeded_probability = share_of(draws.is_budget_exceeded);
  risk.clear_left_short_probability = share_of(draws.is_clear_left_short);
  risk.target_missed_probability = share_of(draws.is_target_missed);
  risk.samples = static_cast<int>(samples);
  risk.node_solves = node_solves;
  return risk;
}

}  // namespace libtexture
