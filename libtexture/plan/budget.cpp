#include "libtexture/plan/budget.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

constexpr double thickest_um = 5000;  // thicker films are not car paint: a slip of the unit

// 1.4 mil left and 0.5 mil removed are published rules, 0.3 mil removed common practice: docs/physics.md,
// film map and budget, names the sources.
constexpr BudgetRule known_rules[] = {{BudgetLimit::clear_left, BudgetBasis::published, 35.6, false},
                                      {BudgetLimit::clear_removed, BudgetBasis::published, 12.7, false},
                                      {BudgetLimit::clear_removed, BudgetBasis::practice, 7.6, false}};

// Of a respray, which is as thick as it was sprayed: a quarter of it may go. Estimate.
constexpr double repaint_share = 0.25;

bool limits_removal(const BudgetRule& rule) {
  return rule.limit == BudgetLimit::clear_removed || rule.limit == BudgetLimit::clear_share;
}

double allowed_um(const BudgetRule& rule, double clear_um) {
  return limits_removal(rule) ? rule.limit_um : clear_um - rule.limit_um;
}

bool limits_share(const Budget& budget) {
  return budget.clear_removed_most_share.value_or(1) < 1;
}

// Whether a rule that is on keeps another one as well.
bool implies(const BudgetRule& rule, const BudgetRule& other) {
  if (rule.limit != other.limit) return false;
  return rule.limit == BudgetLimit::clear_left ? rule.limit_um >= other.limit_um
                                               : rule.limit_um <= other.limit_um;
}

}  // namespace

void Budget::validate() const {
  if (clear_left_least_um)
    require_within(*clear_left_least_um, 0, thickest_um, "Budget", "clear_left_least_um");
  if (clear_removed_most_um) {
    require_positive(*clear_removed_most_um, "Budget", "clear_removed_most_um");
    require(*clear_removed_most_um <= thickest_um, "Budget", "clear_removed_most_um", "must be at most 5000",
            *clear_removed_most_um);
  }
  require_within(reserve_um, 0, thickest_um, "Budget", "reserve_um");
  if (clear_removed_most_share) {
    require_positive(*clear_removed_most_share, "Budget", "clear_removed_most_share");
    require_within(*clear_removed_most_share, 0, 1, "Budget", "clear_removed_most_share");
  }
}

bool has_rule(const Budget& budget) {
  return budget.clear_left_least_um || budget.clear_removed_most_um || budget.clear_removed_most_share;
}

Budget published_budget() {
  return {.clear_left_least_um = known_rules[0].limit_um,
          .clear_removed_most_um = known_rules[1].limit_um,
          .clear_left_basis = BudgetBasis::published,
          .clear_removed_basis = BudgetBasis::published};
}

Budget default_budget(PaintKind kind) {
  Budget budget = published_budget();
  if (kind == PaintKind::factory) return budget;
  budget.clear_removed_most_share = repaint_share;
  budget.clear_share_basis = BudgetBasis::estimate;
  if (kind == PaintKind::unknown) return budget;
  budget.clear_removed_most_um.reset();
  budget.clear_removed_basis = BudgetBasis::own;
  return budget;
}

std::vector<BudgetRule> budget_rules(const Budget& budget, double clear_um) {
  budget.validate();
  require_not_negative(clear_um, "Budget", "clear_um");
  std::vector<BudgetRule> rules;
  if (budget.clear_left_least_um)
    rules.push_back({BudgetLimit::clear_left, budget.clear_left_basis, *budget.clear_left_least_um});
  if (budget.clear_removed_most_um)
    rules.push_back({BudgetLimit::clear_removed, budget.clear_removed_basis, *budget.clear_removed_most_um});
  if (limits_share(budget)) {
    const double share = *budget.clear_removed_most_share;
    rules.push_back({BudgetLimit::clear_share, budget.clear_share_basis, share * clear_um});
    rules.back().limit_share = share;
  }
  rules.push_back({BudgetLimit::clear_itself, BudgetBasis::physics, 0});
  for (BudgetRule& rule : rules) rule.removable_um = allowed_um(rule, clear_um) - budget.reserve_um;
  const auto less = [](const BudgetRule& a, const BudgetRule& b) { return a.removable_um < b.removable_um; };
  std::min_element(rules.begin(), rules.end(), less)->is_binding = true;
  const std::size_t on = rules.size();
  for (BudgetRule rule : known_rules) {
    const auto implies_it = [&](const BudgetRule& other) { return implies(other, rule); };
    if (std::any_of(rules.begin(), rules.begin() + static_cast<std::ptrdiff_t>(on), implies_it)) continue;
    rule.removable_um = allowed_um(rule, clear_um) - budget.reserve_um;
    rules.push_back(rule);
  }
  return rules;
}

double removable_um(const Budget& budget, double clear_um) {
  const std::vector<BudgetRule> rules = budget_rules(budget, clear_um);
  return std::find_if(rules.begin(), rules.end(), [](const BudgetRule& rule) { return rule.is_binding; })
      ->removable_um;
}

bool is_broken(const BudgetRule& rule, double reserve_um, const ClearSpent& spent) {
  if (rule.limit == BudgetLimit::clear_share)
    return spent.removed_um + reserve_um > *rule.limit_share * spent.before_um;
  if (rule.limit == BudgetLimit::clear_removed) return spent.removed_um + reserve_um > rule.limit_um;
  return spent.left_um < rule.limit_um + reserve_um;
}

bool breaks(const Budget& budget, const ClearSpent& spent) {
  const double of_clear_um =
      limits_share(budget) ? *budget.clear_removed_most_share * spent.before_um : HUGE_VAL;
  const double most_um = std::min(of_clear_um, budget.clear_removed_most_um.value_or(HUGE_VAL));
  return spent.left_um < must_stay_um(budget) || spent.removed_um + budget.reserve_um > most_um;
}

double must_stay_um(const Budget& budget) {
  return budget.clear_left_least_um.value_or(0) + budget.reserve_um;
}

double uv_transmittance_percent(double whole_percent, double clear_um, double removed_um) {
  require_positive(whole_percent, "Budget", "whole_percent");
  require(whole_percent <= 100, "Budget", "whole_percent", "must be at most 100", whole_percent);
  require_positive(clear_um, "Budget", "clear_um");
  require_within(removed_um, 0, clear_um, "Budget", "removed_um");
  return 100 * std::pow(whole_percent / 100, 1 - removed_um / clear_um);
}

}  // namespace libtexture
