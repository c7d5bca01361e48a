#pragma once
// Judge: the verdict on a panel and on a whole plan, with its reasons, from what happens in the worlds.

#include <vector>

#include "libtexture/plan/prediction.hpp"
#include "libtexture/plan/reached.hpp"

namespace libtexture {

/// Chances from which a plan needs care, and from which it is off; each is judged as it is printed, rounded
/// to whole cases (as_counted()). Estimates: clear does not come back, so a strike-through weighs more than a
/// budget that is broken, which weighs more than a target that is missed.
struct ChanceLimits {
  double care = 0;
  double off = 0;
};
inline constexpr ChanceLimits strike_through_limits{0.005, 0.05};
inline constexpr ChanceLimits budget_limits{0.10, 0.50};  ///< of a rule that the work breaks
inline constexpr ChanceLimits target_limits{target_missed_care, 0.50};
/// From this chance that too little clear is there before any work nothing should be taken (estimate).
inline constexpr double short_before_off = 0.50;
/// From this chance that the target is met before any work there is nothing to do (estimate).
inline constexpr double met_before_enough = 0.80;
/// Texture that is left although all is touched, and that people still see in a mirrored letter [um rms];
/// estimate.
inline constexpr double waves_left_um = 0.3;

/// A verdict and what it rests on.
struct Judgement {
  Verdict verdict = Verdict::nothing_to_do;
  std::vector<Statement> reasons = {};
};

/// Counts in how many worlds each rule of a panel is broken, and marks as binding the one that the work
/// breaks most often: among the worlds in which enough clear is there before any work, or in all where those
/// are fewer than half. Where none is broken the mark stays where it is.
void count_broken(std::vector<BudgetRule>& rules, double reserve_um, const RiskDraws& draws);

/// The verdict on a panel whose rules are counted. The work is judged by what it adds: in how many of the
/// worlds that have enough clear before any work it breaks a rule. Where that asks for care, and half of all
/// worlds or more end with a rule broken, it is off: it adds to a shortage. What makes the clear left
/// uncertain is named where the budget is in question, with what would show it. odd: readings that do not
/// belong to the others; band_edges_mm: of the panel's rows.
Judgement judge(const PanelPrediction& panel, const Budget& budget, const Target& target,
                const std::vector<double>& band_edges_mm, const std::vector<Statement>& odd);

/// The worst of all verdicts; all reasons in their order, a target that is mostly missed first.
Judgement worst_of(const std::vector<Judgement>& panels);

}  // namespace libtexture
