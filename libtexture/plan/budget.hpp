#pragma once
// Budget: how much clear may be spent, rule by rule, and which rule binds.

#include <array>
#include <optional>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/paint.hpp"

namespace libtexture {

/// What a rule limits.
enum class BudgetLimit { clear_itself, clear_left, clear_removed, clear_share };
constexpr std::array<std::pair<BudgetLimit, const char*>, 4> names_of(BudgetLimit) {
  return {{{BudgetLimit::clear_itself, "clear_itself"},
           {BudgetLimit::clear_left, "clear_left"},
           {BudgetLimit::clear_removed, "clear_removed"},
           {BudgetLimit::clear_share, "clear_share"}}};
}

/// Where a rule comes from.
enum class BudgetBasis { physics, published, practice, own, estimate };
constexpr std::array<std::pair<BudgetBasis, const char*>, 5> names_of(BudgetBasis) {
  return {{{BudgetBasis::physics, "physics"},
           {BudgetBasis::published, "published"},
           {BudgetBasis::practice, "practice"},
           {BudgetBasis::own, "own"},
           {BudgetBasis::estimate, "estimate"}}};
}

/// What may be spent: each rule that is given counts, and the clear itself always does.
struct Budget {
  std::optional<double> clear_left_least_um = {};    ///< clear that stays [um], >= 0
  std::optional<double> clear_removed_most_um = {};  ///< clear that may go [um], > 0
  double reserve_um = 0;                             ///< kept for later corrections [um], >= 0
  /// clear that may go as a share of what is there at the thinnest place, > 0 to 1; 1 = no such rule
  std::optional<double> clear_removed_most_share = {};
  BudgetBasis clear_left_basis = BudgetBasis::own;     ///< where clear_left_least_um comes from
  BudgetBasis clear_removed_basis = BudgetBasis::own;  ///< where clear_removed_most_um comes from
  BudgetBasis clear_share_basis = BudgetBasis::own;    ///< where clear_removed_most_share comes from

  void validate() const;
  bool operator==(const Budget&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("clear_left_least_um", &Budget::clear_left_least_um),
                      optional("clear_removed_most_um", &Budget::clear_removed_most_um),
                      optional("reserve_um", &Budget::reserve_um),
                      optional("clear_removed_most_share", &Budget::clear_removed_most_share),
                      optional("clear_left_basis", &Budget::clear_left_basis),
                      optional("clear_removed_basis", &Budget::clear_removed_basis),
                      optional("clear_share_basis", &Budget::clear_share_basis)};
  }
};

/// Whether it limits anything itself: a reserve alone does not; a share of 1 does, and allows all the clear.
bool has_rule(const Budget& budget);

/// The two published rules, of factory paint: 35.6 um (1.4 mil) left and 12.7 um (0.5 mil) removed; sources
/// in docs/physics.md.
Budget published_budget();

/// The budget of a paint for which none is stated. Factory: the two published rules. Repaint: the published
/// one of clear left, and at most a quarter of the clear that is there (estimate). Unknown: all three, so
/// that the strictest counts.
Budget default_budget(PaintKind kind);

/// One rule, and what it allows on a given clear.
struct BudgetRule {
  BudgetLimit limit = BudgetLimit::clear_itself;  ///< what it limits
  BudgetBasis basis = BudgetBasis::physics;       ///< where it comes from
  double limit_um = 0;                            ///< the rule's figure [um]; of a share, on the given clear
  bool is_on = true;  ///< whether the job's budget counts it; others are shown for information
  /// the one that allows least of those that are on, the first where several do; in a prediction the one that
  /// the work breaks in most worlds, where it breaks any
  bool is_binding = false;
  double removable_um =
      0;  ///< clear that may be removed under it, reserve kept [um]; below 0 = already broken
  std::optional<double> limit_share = {};  ///< its figure where it is a share of the clear
  double broken_probability = 0;           ///< in a prediction: chance that it is broken after work, 0 to 1

  bool operator==(const BudgetRule&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("limit", &BudgetRule::limit),
                      optional("basis", &BudgetRule::basis),
                      optional("limit_um", &BudgetRule::limit_um),
                      optional("is_on", &BudgetRule::is_on),
                      optional("is_binding", &BudgetRule::is_binding),
                      optional("removable_um", &BudgetRule::removable_um),
                      optional("limit_share", &BudgetRule::limit_share),
                      optional("broken_probability", &BudgetRule::broken_probability)};
  }
};

/// Every rule on a clear of so much [um], >= 0, at its least: those that the budget counts, the clear itself,
/// and for information the known ones (published and practice) that those do not imply.
std::vector<BudgetRule> budget_rules(const Budget& budget, double clear_um);

/// Clear that may be removed [um]: the least of the rules that are on; below 0 = nothing, and already broken.
double removable_um(const Budget& budget, double clear_um);

/// What rules judge work by.
struct ClearSpent {
  double removed_um = 0;  ///< mean over the panel [um]
  double before_um = 0;   ///< where it is thinnest before work, mean over a disc's face [um], >= 0
  double left_um = 0;     ///< where it is thinnest after work, likewise (a gauge reads means) [um]
};

/// Whether work breaks a rule, the reserve kept.
bool is_broken(const BudgetRule& rule, double reserve_um, const ClearSpent& spent);

/// Whether work breaks a rule that is on, the reserve kept.
bool breaks(const Budget& budget, const ClearSpent& spent);

/// Clear that must stay at the thinnest place [um], reserve included; 0 where only the clear itself limits.
double must_stay_um(const Budget& budget);

/// Ultraviolet light [%] that reaches the base coat once `removed_um` of `clear_um` are gone, where the whole
/// clear lets `whole_percent` through: T0^(1 - R/h), absorbers spread evenly (Beer-Lambert). For information.
double uv_transmittance_percent(double whole_percent, double clear_um, double removed_um);

}  // namespace libtexture
